"""First filling and leak test. Examples are subtraction and division, worked by hand."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations import BOOK
from generator.calculations.leak_judgement import allowed_fall
from generator.calculations.leak_test import HAIR_CRACK, LONG_SOAK, SHORT_SOAK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

BY_HAND: list[Example] = [
    ("corrected_fall", {"tank_fall": 44.5, "control_fall": 38}, "6.5"),
    ("daily_fall", {"corrected_fall": 6.5, "test_days": 9}, "0.72"),  # 6.5 / 9 = 0.722
    ("fall_allowed", {"water_depth": 0.65}, "0.65"),  # a thousandth of 650 mm
    ("fall_allowed", {"water_depth": 1.4}, "1.00"),  # a thousandth is 1.4, the other limit is less
    ("leak_litres", {"daily_fall": 0.72, "floor_area": 7.3}, "5.3"),  # 0.72 x 7.3 = 5.26
    ("leak_share", {"leak_litres": 5.26, "tank_litres": 11300}, "0.047"),  # 526 / 11300 = 0.0465
    ("stage_height", {"water_depth": 1.55, "stage_count": 6}, "0.26"),  # 0.258
    ("first_filling_days", {"stage_count": 6, "stage_wait": 2}, "12"),
    ("water_soak_days", {"hair_crack_width": 0.05}, "7"),
    ("proving_days", {"first_filling_days": 12, "water_soak_days": 7, "test_days": 9}, "28"),
]
TANK_PART = {"tank_fall": 43.5, "control_fall": 36.0, "test_days": 9.0, "stage_count": 7.0, "stage_wait": 2.0,
             "hair_crack_width": 0.15}  # fmt: skip
AFTER_PART = {"stage_height", "leak_share", "fall_allowed"}
WARN_ONLY = {"water_soak_days"}
WARN_ONLY_VALUES = [HAIR_CRACK, SHORT_SOAK, LONG_SOAK]


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


@given(values=givens("tank_fall", "control_fall", "test_days", "inside_diameter"), depth=st.floats(0.4, 0.95))
def test_a_share_of_the_water_is_a_share_of_the_depth_whatever_the_width(
    values: dict[str, float], depth: float
) -> None:
    """Derived: in a straight-sided tank x % a day is x % of the depth a day."""
    if values["inside_diameter"] < 0.65:
        values["inside_diameter"] = 0.65
    found = BOOK.evaluate({**values, "water_depth": depth}, ["leak_share", "daily_fall"])
    assert found["leak_share"] == pytest.approx(found["daily_fall"] / (depth * 1000) * 100)


def test_a_tank_that_only_evaporates_does_not_leak() -> None:
    values = {"tank_fall": 52.5, "control_fall": 52.5, "test_days": 7}
    assert BOOK.evaluate(values, ["daily_fall"])["daily_fall"] == 0
    assert read_wrong("evaporation_counted_as_leak", values, "daily_fall") == 7.5
    assert read_wrong("guess_in_place_of_a_control", values, "daily_fall") == 2.5


def test_a_guess_hides_a_leak_in_cool_weather() -> None:
    """By hand: 20 mm less 6 mm in 10 days is 1.4 mm a day; 5 mm a day guessed takes all of it away."""
    values = {"tank_fall": 20, "control_fall": 6, "test_days": 10}
    assert shown("daily_fall", {"corrected_fall": 14, "test_days": 10}) == "1.40"
    assert read_wrong("guess_in_place_of_a_control", values, "daily_fall") == 0


@given(depth=st.floats(0.1, 2.2))
def test_the_book_and_the_judgement_allow_the_same(depth: float) -> None:
    found = BOOK.evaluate({"water_depth": depth}, ["fall_allowed"])["fall_allowed"]
    assert found == pytest.approx(allowed_fall(depth))
    assert read_wrong("larger_limit_taken", {"water_depth": depth}, "fall_allowed") >= found
    assert read_wrong("thousandth_read_as_hundredth", {"water_depth": depth}, "fall_allowed") == pytest.approx(
        depth * 10
    )


def test_as_many_marks_as_stages_leave_one_stage_fewer() -> None:
    """By hand: five marks with one at the floor leave four steps of 0.35 m in 1.4 m."""
    seeds = {"water_depth": 1.4, "stage_count": 5}
    assert read_wrong("floor_counted_as_a_mark", seeds, "stage_height") == pytest.approx(0.35)


def test_the_fall_of_all_days_is_not_the_fall_of_one() -> None:
    values = {"corrected_fall": 6.5, "test_days": 9}
    assert read_wrong("whole_fall_in_one_day", values, "daily_fall") == 6.5
    seeds = {"leak_litres": 5, "tank_litres": 10000, "test_days": 9}
    assert read_wrong("share_of_the_whole_test", seeds, "leak_share") == pytest.approx(0.45)


@pytest.mark.parametrize(("width", "days"), [(0, "7"), (0.1, "7"), (0.15, "21"), (0.2, "21")])
def test_wider_cracks_soak_longer(width: float, days: str) -> None:
    assert shown("water_soak_days", {"hair_crack_width": width}) == days


@pytest.mark.parametrize(
    ("name", "value"), [("hair_crack_width", 0.3), ("test_days", 3), ("stage_count", 2), ("tank_fall", -4)]
)
def test_what_the_course_does_not_judge_goes_to_an_engineer(name: str, value: float) -> None:
    with pytest.raises(OutOfRangeError, match="licensed engineer"):
        BOOK.evaluate({**TANK_PART, name: value})
