"""A plan is told in every language: each section, each kind of tank, each refusal; nothing is left untranslated."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from generator import curriculum
from generator.calculations.bands import RefusedGround
from generator.plans import (
    USUAL_SHOP,
    Bar,
    Crew,
    NoPlanError,
    Plan,
    RoofKind,
    Site,
    Wish,
    as_text,
    litres_for_people,
    make_plan,
    outside,
    read_prices,
    sections,
    trough_for,
    trough_sections,
)
from generator.plans.as_text import WIDTH, width_of
from generator.words import Words

ROOT = Path(__file__).parents[2]
PRICES = read_prices(
    "prices.yaml",
    b"""
format: 1
currency: coins
prices: {cement: 9.5, sand: 30, stone: 28, steel: 1.4, mesh: 2, wire: 2.2, lime: 0.5, mason: 12, labourer: 7, load: 0.4}
other_tanks: [{name: plastic, litres: 9000, price: 2100, life_years: 12}]
""",
)
LITRES, NEED = litres_for_people(30, 45, 12, 0.003)
KINDS = [
    Wish(1500.0),
    Wish(4000.0, prices=PRICES),
    Wish(LITRES, need=NEED),
    Wish(9000.0, Site(slope=12, soil="medium_clay"), Crew(masons=6)),
    Wish(9000.0, wished_hoops=(Bar(diameter=6), 0.2), sand_moisture=6),
    Wish(30_000.0, Site(ground_water=0.4)),
    *(Wish(8000.0, roof=kind) for kind in RoofKind),
]
REFUSALS = [
    Wish(60_000.0),
    Wish(9000.0, Site(ground=(RefusedGround.PEAT,))),
    Wish(9000.0, Site(people_below=True, slope=20)),
    Wish(9000.0, width_limit=1.5),
    Wish(9000.0, height_limit=0.5),
    *(Wish(9000.0, shop=USUAL_SHOP.model_copy(update={part: ()})) for part in ("bars", "meshes", "angles")),
]


def languages() -> Iterator[tuple[str, Words]]:
    loaded = curriculum.load(ROOT)
    assert loaded.content is not None, loaded.problems
    yield from loaded.content.words.items()


WORDS = dict(languages())


@pytest.mark.parametrize("language", sorted(WORDS))
@pytest.mark.parametrize("wish", KINDS + REFUSALS)
def test_every_kind_of_tank_and_every_no_can_be_told(wish: Wish, language: str) -> None:
    text = as_text(make_plan(wish), WORDS[language])
    assert "{" not in text
    assert "plan." not in text
    assert all(width_of(line) <= WIDTH + 20 for line in text.splitlines())


def test_hindi_is_hindi_but_for_units_and_the_names_of_sources() -> None:
    for section in sections(make_plan(KINDS[3]), WORDS["hi"]):
        assert any("ऀ" <= sign <= "ॿ" for sign in section.heading)
        for line in section.lines:
            latin = sum("a" <= sign.lower() <= "z" for sign in line)
            assert latin < 0.3 * len(line), line


def test_every_source_of_a_plan_is_told_in_every_language() -> None:
    """English says it as the calculations do; other languages keep only the names of books and standards."""
    for wish in KINDS:
        english, hindi = (sections(make_plan(wish), WORDS[code])[-1] for code in ("en", "hi"))
        assert english.key == hindi.key == "sources"
        found = {check.source for check in make_plan(wish).checks}  # type: ignore[union-attr]
        assert found <= {row[1] for row in english.rows}
        for row, other in zip(english.rows, hindi.rows, strict=True):
            assert any("ऀ" <= sign <= "ॿ" for sign in other[1]), row


@pytest.mark.parametrize("language", sorted(WORDS))
def test_a_refusal_of_an_option_names_it_its_range_and_who_to_ask(language: str) -> None:
    text = outside("--slope", 45, 0, 30, "degrees").text(WORDS[language])
    assert "--slope" in text
    assert "45" in text
    assert "30" in text
    assert ("engineer" if language == "en" else "इंजीनियर") in text


def test_a_bill_without_a_price_says_so_and_has_no_total() -> None:
    few = PRICES.model_copy(update={"prices": {"cement": 9.5}})
    text = as_text(make_plan(Wish(4000.0, prices=few)), WORDS["en"])
    assert "No price for" in text
    assert "All together" not in text
    assert "All together" in as_text(make_plan(Wish(4000.0, prices=PRICES)), WORDS["en"])


def test_sand_and_stone_are_paid_by_the_cubic_metre_that_their_price_is_for() -> None:
    plan = make_plan(Wish(8000.0, prices=PRICES))
    assert isinstance(plan, Plan)
    assert plan.bill is not None
    for name, volume, price in (("sand", plan.materials.sand, 30), ("stone", plan.materials.stone, 28)):
        (line,) = (each for each in plan.bill.lines if each.name == name)
        assert line.cost is not None
        assert volume * price <= float(line.cost) < (volume + 0.1) * price
        assert line.cost == line.packages * price


@pytest.mark.parametrize("language", sorted(WORDS))
def test_money_is_told_to_the_hundredth_and_the_own_tank_in_the_readers_language(language: str) -> None:
    (money,) = (each for each in sections(make_plan(KINDS[1]), WORDS[language]) if each.key == "money")
    assert all(re.fullmatch(r"[0-9,]+\.[0-9]{2}", row[column]) for row in money.rows for column in (2, 3))
    assert not any(re.search(r"\.[0-9]{3}", line) for line in money.lines)
    (own,) = (line for line in money.lines if line.startswith(WORDS[language].say("plan.this_tank")))
    assert "ferrocement" not in own


@pytest.mark.parametrize("language", sorted(WORDS))
def test_seven_hold_points_have_room_for_a_name_and_a_date(language: str) -> None:
    (points,) = (each for each in sections(make_plan(KINDS[1]), WORDS[language]) if each.key == "hold_points")
    assert len(points.rows) == 7
    assert all(row[3].startswith("____") and row[4].startswith("____") for row in points.rows)


@pytest.mark.parametrize("language", sorted(WORDS))
def test_a_trough_can_be_told_and_a_huge_one_is_several(language: str) -> None:
    told = trough_sections(trough_for(250, USUAL_SHOP), WORDS[language])
    assert [section.key for section in told] == ["trough", "checks", "cautions"]
    with pytest.raises(NoPlanError) as refused:
        trough_for(2800, USUAL_SHOP)
    assert "2" in refused.value.text(WORDS[language])


@pytest.mark.parametrize("language", sorted(WORDS))
@pytest.mark.parametrize(("litres", "hoops", "angles"), [(1000, False, False), (3000, True, False), (8000, True, True)])
def test_a_part_that_a_tank_has_not_is_neither_counted_bought_scheduled_nor_looked_at(
    language: str, litres: float, hoops: bool, angles: bool
) -> None:
    words = WORDS[language]
    plan = make_plan(Wish(litres, prices=PRICES))
    told = {section.key: section for section in sections(plan, words)}
    firsts = {row[0] for section in told.values() for row in section.rows}
    assert (words.say("plan.count.angles") in firsts) == angles
    assert (words.say("plan.material.steel") in firsts) == (words.say("plan.item.steel") in firsts) == angles
    assert (words.say("plan.count.hoops") in firsts) == (words.say("plan.count.uprights") in firsts) == hoops
    calendar = [row[1] for row in told["calendar"].rows]
    assert (words.say("job.bend_hoops") in calendar) == (words.say("job.frame_and_hoops") in calendar) == hoops
    assert words.say("job.mesh_and_fittings") in calendar
    if not hoops:
        of_hoops = {"en": "hoop", "hi": "रिंग में"}[language]
        assert not any(of_hoops in line.lower() for line in told["cutting"].lines)
        looked_at = " ".join(row[2] for row in told["hold_points"].rows)
        assert words.say("plan.hold_mesh_cage") in looked_at
        assert words.say("plan.hold.hold_cage") not in looked_at


@pytest.mark.parametrize("language", sorted(WORDS))
def test_other_hoops_have_one_gap_where_all_zones_are_alike(language: str) -> None:
    plan = make_plan(Wish(3000.0))
    assert isinstance(plan, Plan)
    alike = [len({round(zone.spacing, 3) for zone in other.zones}) == 1 for other in plan.wall.others]
    assert any(alike)
    (why,) = (each for each in sections(plan, WORDS[language]) if each.key == "why")
    said = {WORDS[language].say("plan.other_hoops", bar="", spacings="").strip()[:10]}
    lines = [line for line in why.lines if line[:10] in said]
    assert [" / " not in line for line in lines] == alike
