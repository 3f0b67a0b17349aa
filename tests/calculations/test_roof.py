"""Flat roofs on the wall alone: sums by hand, forgotten loads, and what span and thickness do."""

import pytest
from hypothesis import given

from generator.calculations import BOOK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

TANK_PART = {"roof_thickness": 45.0, "roof_live_load": 1.0, "roof_cover": 10.0, "roof_bar_diameter": 6.0}
BY_HAND: list[Example] = [
    ("roof_load", {"roof_thickness": 50, "roof_live_load": 0.75}, "1.95"),  # 24 x 0.05 + 0.75
    ("flat_roof_moment", {"roof_load": 2, "inside_radius": 1.5}, "0.90"),  # 0.2 x 2 x 2.25
    ("flat_roof_stress", {"flat_roof_moment": 0.6, "roof_thickness": 60}, "1.00"),  # 6 x 600 / 3600
    ("roof_steel_depth", {"roof_thickness": 50, "roof_cover": 8, "roof_bar_diameter": 6}, "39.0"),  # 50 - 8 - 3
    ("flat_roof_steel_needed", {"flat_roof_moment": 0.414, "steel_working_stress": 115, "roof_steel_depth": 40},
     "100.0"),  # 414 000 / (115 x 0.9 x 40 = 4140)
]  # fmt: skip


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


WRONG = [
    ("flat_roof_from_diameter", {"roof_load": 2, "inside_diameter": 3.0}, "flat_roof_moment", 3.6),  # 0.2 x 2 x 9
    ("people_forgotten_on_the_roof", {"roof_thickness": 50, "roof_live_load": 0.75}, "roof_load", 1.2),  # 24 x 0.05
    ("thicker_roof_weighs_nothing_more", {"roof_thickness": 50, "roof_live_load": 0.75}, "roof_load", 0.75),
    ("roof_cover_forgotten", {"roof_thickness": 50, "roof_cover": 8, "roof_bar_diameter": 6}, "roof_steel_depth", 50),
    ("six_forgotten_in_the_roof", {"flat_roof_moment": 0.6, "roof_thickness": 60}, "flat_roof_stress", 1 / 6),
    ("roof_steel_allowed_to_its_breaking",
     {"flat_roof_moment": 0.783, "steel_working_stress": 115, "roof_steel_depth": 40},
     "flat_roof_steel_needed", 100.0),  # 783 000 / (217.5 x 36)
]  # fmt: skip


@pytest.mark.parametrize(("mistake", "values", "asked", "answer"), WRONG)
def test_what_someone_with_a_wrong_idea_answers(
    mistake: str, values: dict[str, float], asked: str, answer: float
) -> None:
    assert read_wrong(mistake, values, asked) == pytest.approx(answer)


@pytest.mark.parametrize("thickness", [25, 110])
def test_a_roof_thinner_or_thicker_than_the_course_s_is_refused(thickness: float) -> None:
    with pytest.raises(OutOfRangeError, match=r"roof_thickness = .* outside 30 to 100 mm.*licensed engineer"):
        BOOK.evaluate({"roof_thickness": thickness, "roof_live_load": 1}, ["roof_load"])


ROOF = ("inside_diameter", "roof_thickness", "roof_live_load", "roof_cover", "roof_bar_diameter",
        "steel_working_stress")  # fmt: skip


@given(values=givens(*ROOF))
def test_twice_the_span_bends_four_times_as_hard(values: dict[str, float]) -> None:
    span = min(values["inside_diameter"], 4.0)
    small, large = (
        BOOK.evaluate({**values, "inside_diameter": size}, ["flat_roof_stress", "flat_roof_steel_needed"])
        for size in (span, 2 * span)
    )
    for name in ("flat_roof_moment", "flat_roof_stress", "flat_roof_steel_needed"):
        assert large[name] == pytest.approx(4 * small[name])


@given(values=givens(*ROOF))
def test_a_thicker_roof_is_heavier_but_stressed_less(values: dict[str, float]) -> None:
    thin, thick = (
        BOOK.evaluate({**values, "roof_thickness": mm}, ["flat_roof_stress"])
        for mm in (min(values["roof_thickness"], 90), min(values["roof_thickness"], 90) + 10)
    )
    assert thick["roof_load"] > thin["roof_load"]
    assert thick["flat_roof_stress"] < thin["flat_roof_stress"]
