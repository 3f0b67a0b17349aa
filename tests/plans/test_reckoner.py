"""The ready reckoner says what the plans say, and gives no bars to a tank that an engineer signs first."""

from __future__ import annotations

from itertools import pairwise
from math import pi
from pathlib import Path

import pytest

from generator.calculations.bands import Band
from generator.curriculum import load
from generator.plans import Plan, Reckoner, Wish, as_data, make_plan, make_reckoner, reckoner_sections
from generator.plans.reckoner import LARGER_SIZES, VILLAGE_SIZES, ReckonerRow
from generator.words import Words

ROWS = {row.cubic_metres: row for row in make_reckoner().rows}


@pytest.fixture(scope="module")
def words() -> dict[str, Words]:
    loaded = load(Path(__file__).parents[2])
    assert loaded.content is not None, loaded.problems
    return dict(loaded.content.words)


def test_it_runs_from_1_to_50_cubic_metres_and_villages_end_at_12() -> None:
    found = make_reckoner()
    assert [row.cubic_metres for row in found.rows] == [*VILLAGE_SIZES, *LARGER_SIZES]
    assert (found.rows[0].cubic_metres, found.rows[-1].cubic_metres) == (1, 50)
    assert [row.cubic_metres for row in found.village] == list(range(1, 13))


@pytest.mark.parametrize("row", ROWS.values(), ids=ROWS)
def test_a_row_says_what_the_plan_of_its_tank_says(row: ReckonerRow) -> None:
    plan = make_plan(Wish(1000.0 * row.cubic_metres))
    assert isinstance(plan, Plan)
    data = as_data(plan)
    tank, counts = data["tank"], data["counts"]
    assert (row.inside_diameter, row.outside_diameter) == (tank["inside_diameter_m"], tank["outside_diameter_m"])
    assert (row.water_depth, row.wall_height) == (tank["water_depth_m"], tank["wall_height_m"])
    assert (row.wall_thickness, row.bags, row.tonnes) == (
        tank["wall_thickness_mm"], counts["cement_bags"], counts["tonnes"],
    )  # fmt: skip
    assert (row.bars is not None) is (plan.judgement.band is Band.VILLAGE)
    if row.bars is not None:
        assert sum(run.count for run in row.bars.runs) == counts["hoops"]
        assert row.bars.uprights == (counts["uprights"] if data["hoops"] else 0)
        assert (row.bars.angles, row.bars.starters) == (counts["angles"], counts["starters"])


@pytest.mark.parametrize("row", ROWS.values(), ids=ROWS)
def test_a_tank_holds_its_water_and_its_hoops_close_the_wall(row: ReckonerRow) -> None:
    assert pi / 4 * row.inside_diameter**2 * row.water_depth >= row.cubic_metres
    assert row.outside_diameter == pytest.approx(row.inside_diameter + 2 * row.wall_thickness / 1000)
    if row.bars is not None and row.bars.hoop is not None:
        gaps = sum(run.count * run.spacing for run in row.bars.runs) - row.bars.runs[0].spacing
        assert gaps == pytest.approx(row.wall_height)
        assert all(low.spacing < high.spacing for low, high in pairwise(row.bars.runs))
    if row.bars is not None and row.bars.hoop is None:
        assert row.cubic_metres <= 2
        assert row.bars.mesh_layers >= 1
        assert row.bars.mesh.square


def test_a_larger_tank_never_takes_less() -> None:
    for one, other in pairwise(make_reckoner().rows):
        assert other.bags >= one.bags
        assert other.tonnes > one.tonnes


def test_rows_come_back_from_the_kept_file_as_they_were() -> None:
    assert Reckoner.model_validate_json(make_reckoner().model_dump_json()) == make_reckoner()


@pytest.mark.parametrize("language", ["en", "hi"])
def test_bars_stand_only_in_the_village_tables(language: str, words: dict[str, Words]) -> None:
    found = {section.key: section for section in reckoner_sections(make_reckoner(), words[language])}
    own = words[language]
    bar = own.say("plan.bar_plain", size="").strip()
    assert len(found["schedule"].rows) == len(found["village"].rows) == 12
    assert any(bar in cell for row in found["schedule"].rows for cell in row)
    larger = found["larger"]
    assert not any(bar in cell for row in larger.rows for cell in row)
    assert len(larger.rows[0]) == len(found["village"].rows[0])
    assert larger.lines == (own.say("plan.reckoner.no_bars"),)
    assert found["use"].lines[0] == own.say("band.policy")
    assert len(found["cautions"].lines) >= 10
    for section in found.values():
        assert all(len(row) == len(section.head) for row in section.rows)
