"""`register tank`: a numbered tank, its plan, who built and who checked it, hold points, leak tests, photos."""

from __future__ import annotations

import hashlib
import json
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import click

from generator import VERSION
from generator.commands.course import file_bytes
from generator.commands.register_common import CERTIFICATE, DAY, FILE_IN, TANK, TEXT, Desk, job
from generator.problems import Problem, ProblemsError, RefusedError
from generator.registry import (
    HOLD_POINTS,
    VERDICTS,
    NewTank,
    add_holder,
    add_photo,
    add_tank,
    holders,
    record_leak_test,
    sign_hold_point,
    tank_report,
)
from generator.registry.tables import PARTS

MOST_AHEAD = timedelta(days=90)
"""From entering a tank, whose number is painted on it, to the first day of work."""
LARGEST_PHOTO = 200_000_000


@click.group("tank")
def tank_jobs() -> None:
    """Enter tanks and sign what was checked on them."""


@tank_jobs.command("add")
@click.argument("place", type=TEXT)
@click.argument("plan", type=FILE_IN)
@click.option("--started-on", type=DAY, required=True, help="First day of work, as 2031-05-04.")
@job
def add(desk: Desk, place: str, plan: Path, started_on: date) -> int:
    """Enter a tank at a PLACE (down to the village, no closer) with its PLAN (what 'plan --json' wrote).

    Example: python3 tankschool.py register tank add "Lower Terrace" plan.json --started-on 2031-08-01
    """
    if started_on > desk.now.date() + MOST_AHEAD:
        raise click.UsageError(f"{started_on} is more than {MOST_AHEAD.days} days away: look at the year.")
    data = _plan(plan)
    new = NewTank(place, data, VERSION, data["tank"]["volume_m3"], data["tank"]["wall_height_m"], started_on)
    with desk.registry() as registry:
        number = add_tank(registry, new, by=desk.by(registry), now=desk.now)
    warned = data["result"] == "engineer"
    text = desk.words.say("register.done.tank", number=number)
    if warned:
        text = f"{text}\n{desk.words.say('register.engineer_first')}"
    return desk.done(text, number=number, engineer=warned)


def _plan(path: Path) -> Any:
    """A plan as data.

    Raises:
        ProblemsError: it is none.
        RefusedError: the plan itself is a refusal.
    """
    fix = "write it anew: 'plan ... --json'"
    try:
        data = json.loads(file_bytes(path).decode("utf-8-sig"))
    except (UnicodeDecodeError, ValueError, RecursionError):
        what = "this is no plan as data"
        raise ProblemsError([Problem(str(path), 0, 0, "not-a-plan", what, fix)]) from None
    if not isinstance(data, dict) or data.get("format") != 1:
        what = "this is no plan as data of format 1"
        raise ProblemsError([Problem(str(path), 0, 0, "not-a-plan", what, fix)])
    if data.get("result") == "refused":
        raise RefusedError(
            "this plan is a refusal: the tank must not be built so; plan smaller tanks, or ask an engineer"
        )
    tank = data.get("tank")
    sizes = [tank.get(name) for name in ("volume_m3", "wall_height_m")] if isinstance(tank, dict) else [None]
    if data.get("result") not in ("village", "engineer") or not all(
        isinstance(size, int | float) and not isinstance(size, bool) for size in sizes
    ):
        what = "the plan does not say its result, volume_m3 and wall_height_m"
        raise ProblemsError([Problem(str(path), 0, 0, "not-a-plan", what, fix)])
    return data


@tank_jobs.command("holder")
@click.argument("tank", type=TANK)
@click.argument("certificate", type=CERTIFICATE)
@click.argument("part", type=click.Choice(PARTS))
@job
def holder(desk: Desk, tank: str, certificate: str, part: str) -> int:
    """Note the holder of a CERTIFICATE who built, or who checked, a TANK.

    Example: python3 tankschool.py register tank holder WKLP-T000003-CC WKLP-C000012-PM built
    """
    with desk.registry() as registry:
        add_holder(registry, tank, certificate, part, by=desk.by(registry), now=desk.now)
    said = desk.words.say_one_of("register.choice", part)
    return desk.done(
        desk.words.say("register.done.holder", tank=tank, number=certificate, part=said), tank=tank,
        certificate=certificate, part=part,
    )  # fmt: skip


@tank_jobs.command("hold-point")
@click.argument("tank", type=TANK)
@click.argument("point", type=click.Choice(HOLD_POINTS))
@click.argument("verdict", type=click.Choice(VERDICTS))
@click.option("--note", type=TEXT, help="What was seen; needed unless it is good.")
@job
def hold_point(desk: Desk, tank: str, point: str, verdict: str, note: str | None) -> int:
    """Sign one of the seven hold points of a TANK; no work goes on past one that is not good.

    Example: python3 tankschool.py register tank hold-point WKLP-T000003-CC ground good --by 9
    """
    with desk.registry() as registry:
        by = desk.by(registry)
        sign_hold_point(registry, tank, point, verdict, note=note or "", by=by, now=desk.now)
    said, result = desk.words.say_one_of("register.choice", point), desk.words.say_one_of("register.choice", verdict)
    text = desk.words.say("register.done.hold_point", tank=tank, point=said, verdict=result)
    return desk.done(text, tank=tank, point=point, verdict=verdict)


@tank_jobs.command("leak-test")
@click.argument("tank", type=TANK)
@click.option("--hours", type=click.FloatRange(0, 2000, min_open=True), required=True, help="How long it stood [h].")
@click.option("--drop", type=click.FloatRange(-1000, 5000), required=True,
              help="How far the water fell, rain and evaporation taken out [mm].")  # fmt: skip
@click.option("--tight/--not-tight", required=True, default=None, help="The checker's verdict.")
@click.option("--note", type=TEXT, help="What was seen: damp spots, weather.")
@job
def leak_test(desk: Desk, tank: str, hours: float, drop: float, tight: bool, note: str | None) -> int:
    """Record a leak test of a TANK, with the verdict of whoever checks it.

    Example: python3 tankschool.py register tank leak-test WKLP-T000003-CC --hours 48 --drop 2 --tight --by 9
    """
    with desk.registry() as registry:
        by = desk.by(registry)
        record_leak_test(registry, tank, hours=hours, drop_mm=drop, tight=tight, note=note or "", by=by, now=desk.now)
    said = desk.words.say("register.tight") if tight else desk.words.say("register.not_tight")
    return desk.done(desk.words.say("register.done.leak_test", tank=tank, verdict=said), tank=tank, tight=tight)


@tank_jobs.command("photo")
@click.argument("tank", type=TANK)
@click.argument("photo", type=FILE_IN)
@click.option("--caption", type=TEXT, required=True, help="What it shows; no people.")
@click.option("--point", type=click.Choice(HOLD_POINTS), help="The hold point that it belongs to.")
@job
def photographed(desk: Desk, tank: str, photo: Path, caption: str, point: str | None) -> int:
    """Note the hash of a PHOTO of a TANK: the photo itself stays with you, and can be shown later to be the same.

    Example: python3 tankschool.py register tank photo WKLP-T000003-CC cage.jpg --caption "cage before mortar" --by 9
    """
    if not photo.stat().st_size:
        raise RefusedError(f"'{photo}' is empty: copy the photo again")
    if photo.stat().st_size > LARGEST_PHOTO:
        raise RefusedError(f"'{photo}' is larger than {LARGEST_PHOTO} bytes: that is no photo")
    with photo.open("rb") as file:
        found = hashlib.file_digest(file, "sha256").hexdigest()
    with desk.registry() as registry:
        add_photo(registry, tank, found, caption, point=point, by=desk.by(registry), now=desk.now)
    return desk.done(desk.words.say("register.done.photo", tank=tank, hash=found), tank=tank, sha256=found)


@tank_jobs.command("list")
@job
def listed(desk: Desk) -> int:
    """Show every tank: place, size, hold points, leak test, who built and checked, complaints.

    Example: python3 tankschool.py register tank list
    """
    with desk.registry() as registry:
        return desk.table(tank_report(registry))


@tank_jobs.command("people")
@click.argument("tank", type=TANK)
@job
def led(desk: Desk, tank: str) -> int:
    """Show who built and who checked a TANK.

    Example: python3 tankschool.py register tank people WKLP-T000003-CC
    """
    with desk.registry() as registry:
        return desk.holders(holders(registry, tank=tank))
