"""`plan`: a tank or a trough from litres, people or a place, as text or as data."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import click

from generator import curriculum, plans
from generator.calculations import BOOK
from generator.calculations.bands import RefusedGround
from generator.calculations.soils import Soil
from generator.commands.course import file_bytes
from generator.commands.tool import content_option, json_option, language_option, say_json
from generator.plans import Bar, Crew, NoPlanError, Plan, Prices, Refusal, RoofKind, Shop, Site, Wish, Zone
from generator.problems import ExitCode, ProblemsError, RefusedError
from generator.sheets import booklet_pdf
from generator.words import Words

_PEOPLE = ("people", "dry_days", "litres_each")
_HOOPS = re.compile(r"(\d+(?:\.\d+)?)(r?)@(\d+(?:\.\d+)?)")


@click.command()
@click.option("--litres", type=float, help="Water to keep [L], 500 to 100000; of a trough, 40 to 3000.")
@click.option("--people", type=float, help="People who drink; with --dry-days and --litres-each.")
@click.option("--dry-days", type=float, help="Days without rain.")
@click.option("--litres-each", type=float, help="Water for one person and day [L].")
@click.option("--spring", type=float, default=0.0, help="What the spring still gives in the dry days [L/s].")
@click.option("--place", type=click.Path(dir_okay=False, path_type=Path), help="A place's YAML file.")
@click.option("--trough", is_flag=True, help="A drinking trough and not a tank.")
@click.option("--have", type=click.Path(dir_okay=False, path_type=Path), help="What the shop sells (YAML).")
@click.option("--prices", type=click.Path(dir_okay=False, path_type=Path), help="Your own prices (YAML).")
@click.option("--width-limit", type=float, help="Room for the finished wall, outer face to outer face [m].")
@click.option("--height-limit", type=float, help="Highest wall [m].")
@click.option("--stock-length", type=float, help="Bars are cut to this length for carrying [m], 4 to 12.")
@click.option("--hoops", help="Hoops to be judged, such as 8@0.12 or, ribbed, 8r@0.12 [mm @ m].")
@click.option("--roof", type=click.Choice([kind.value for kind in RoofKind]), help="Kind of roof.")
@click.option("--sand-moisture", type=float, help="Water in the sand [% of its dry mass].")
@click.option("--inflow", type=float, default=0.5, show_default=True, help="Most that the inlet brings [L/s].")
@click.option("--downhill-people", is_flag=True, help="People live or go to school below, in the water's path.")
@click.option("--slope", type=float, default=0.0, help="Slope of the ground [degrees], 0 to 30.")
@click.option("--zone", "zones", multiple=True, type=click.Choice([zone.value for zone in Zone]),
              help="Strong earthquakes, snow or hard frost; may be given twice.")  # fmt: skip
@click.option("--soil", type=click.Choice([soil.value for soil in Soil]), help="Ground under the base.")
@click.option("--wet-soil", is_flag=True, help="Water stands at the base or near it, in any season.")
@click.option("--ground-water", type=float, default=0.0, help="How high water can stand above the base's foot [m].")
@click.option("--bad-ground", multiple=True, type=click.Choice([ground.value for ground in RefusedGround]),
              help="Anything of this under any part; may be given twice.")  # fmt: skip
@click.option("--masons", type=int, default=2, show_default=True, help="Masons in the crew.")
@click.option("--labourers", type=int, default=4, show_default=True, help="Labourers in the crew.")
@click.option("--load", type=float, default=30.0, show_default=True, help="What one person carries up [kg].")
@click.option("--working-days", type=int, default=6, show_default=True, help="Days worked in a week.")
@click.option("--rain", type=float, default=0.1, show_default=True, help="Share of outdoor days that rain takes.")
@click.option("--pdf", type=click.Path(dir_okay=False, path_type=Path), help="Write the build booklet to this file.")
@language_option
@content_option
@json_option
def plan(language: str, content: Path, as_json: bool, pdf: Path | None, **options: Any) -> int:
    """Plan a tank or a trough that a builder can build from, or say no and why.

    Example: python3 tankschool.py plan --people 30 --dry-days 45 --litres-each 12 --spring 0.003
    """
    _one_way_in(options)
    if options["trough"] and pdf is not None:
        raise click.UsageError("--pdf is the booklet of a tank; a trough's plan fits on a page of text.")
    words, version = _words(content, language)
    try:
        shop = _shop(options)
        if options["trough"]:
            return _trough(options["litres"], shop, words, as_json=as_json)
        result = plans.make_plan(_wish(options, shop))
    except NoPlanError as refused:
        raise RefusedError(refused.text(words)) from None
    if pdf is not None and isinstance(result, Plan):
        _write(pdf, booklet_pdf(result, words, version))
    if as_json:
        say_json(plans.as_data(result))
    elif pdf is None or isinstance(result, Refusal):
        click.echo(plans.as_text(result, words), nl=False)
    else:
        click.echo(f"{words.say('command.wrote')} {pdf}")
    return ExitCode.REFUSED if isinstance(result, Refusal) else ExitCode.GOOD


def _one_way_in(options: Mapping[str, Any]) -> None:
    """Litres, or people, or a place: one of them, and whole."""
    counted = [name for name in _PEOPLE if options[name] is not None]
    ways = [options["litres"] is not None, bool(counted), options["place"] is not None]
    if sum(ways) != 1:
        raise click.UsageError("Say one of: --litres, or --people with --dry-days and --litres-each, or --place FILE.")
    if counted and len(counted) < 3:
        missing = [
            f"--{name.replace('_', '-')}" for name in ("people", "dry_days", "litres_each") if name not in counted
        ]
        raise click.UsageError(f"{' and '.join(missing)} belongs to it: people x litres each x dry days.")
    if options["spring"] and not counted:
        raise click.UsageError("--spring is taken off what people draw: give --people, --dry-days, --litres-each.")
    if options["trough"] and options["litres"] is None:
        raise click.UsageError("--trough needs --litres: what the herd drinks at once.")
    if options["place"] is not None and (options["width_limit"] is not None or options["height_limit"] is not None):
        raise click.UsageError("--place fixes the sizes: leave out --width-limit and --height-limit.")


def _write(path: Path, data: bytes) -> None:
    """Whole or not at all: a booklet that the disk cut short must not be built from."""
    fresh = path.with_name(f"{path.name}.part")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        fresh.write_bytes(data)
        fresh.replace(path)
    finally:
        fresh.unlink(missing_ok=True)


def _words(content: Path, language: str) -> tuple[Words, str]:
    loaded = curriculum.load(content)
    if loaded.content is None:
        raise ProblemsError(loaded.problems)
    words = loaded.content.words.get(language)
    if words is None:
        raise click.UsageError(f"There is no language '{language}'. There are: {', '.join(loaded.content.words)}.")
    return words, loaded.content.course.version


def _shop(options: Mapping[str, Any]) -> Shop:
    path, length = options["have"], options["stock_length"]
    shop = plans.USUAL_SHOP if path is None else plans.read_shop(str(path), file_bytes(path))
    if length is None:
        return shop
    if not 4 <= length <= 12:
        raise plans.outside("--stock-length", length, 4, 12, "m")
    return shop.cut_to(length)


def _trough(litres: float, shop: Shop, words: Words, *, as_json: bool) -> int:
    trough = plans.trough_for(litres, shop)
    if as_json:
        say_json(plans.trough_data(trough))
    else:
        click.echo(plans.sections_text(plans.trough_sections(trough, words)), nl=False)
    return ExitCode.GOOD


def _wish(options: Mapping[str, Any], shop: Shop) -> Wish:
    place: dict[str, float] = {}
    need: dict[str, float] = {}
    hoops = _hoops(options["hoops"], shop)
    if options["place"] is not None:
        place = plans.read_place(str(options["place"]), file_bytes(options["place"]))
        litres = plans.litres_of_place(place)
        hoops = hoops or plans.hoops_of_place(place)
    elif options["people"] is not None:
        litres, need = plans.litres_for_people(
            options["people"], options["dry_days"], options["litres_each"], options["spring"]
        )
    else:
        litres = options["litres"]
    site = Site(
        people_below=options["downhill_people"],
        slope=options["slope"],
        zones=tuple(Zone(zone) for zone in options["zones"]),
        ground=tuple(RefusedGround(ground) for ground in options["bad_ground"]),
        soil=options["soil"] or "",
        wet_soil=options["wet_soil"],
        ground_water=options["ground_water"],
    )
    crew = Crew(options["masons"], options["labourers"], options["load"], options["working_days"], options["rain"])
    return Wish(
        litres, site, crew, shop, RoofKind(options["roof"]) if options["roof"] else None, options["width_limit"],
        options["height_limit"], hoops, options["sand_moisture"], options["inflow"], _prices(options["prices"]), place,
        need,
    )  # fmt: skip


def _prices(path: Path | None) -> Prices | None:
    return None if path is None else plans.read_prices(str(path), file_bytes(path))


def _hoops(text: str | None, shop: Shop) -> tuple[Bar, float] | None:
    if text is None:
        return None
    found = _HOOPS.fullmatch(text.strip())
    if found is None:
        raise click.UsageError(f"'{text}' is no hoop and spacing: write mm @ m, such as 8@0.12 or, ribbed, 8r@0.12.")
    diameter, ribbed, spacing = float(found[1]), bool(found[2]), float(found[3])
    limits = BOOK.givens["hoop_diameter"]
    if not limits.low <= diameter <= limits.high:
        raise plans.outside("--hoops", diameter, limits.low, limits.high, "mm")
    length = max((bar.length for bar in shop.bars if bar.diameter == diameter), default=12.0)
    return Bar(diameter=diameter, ribbed=ribbed, length=length), spacing
