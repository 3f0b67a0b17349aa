"""Cover. Examples are subtractions and the chance of finding nothing, worked by hand."""

import pytest
from hypothesis import given
from scipy.stats import binom

from generator.calculations import BOOK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

BY_HAND: list[Example] = [
    ("least_cover_expected", {"nominal_cover": 9, "cover_tolerance": 4}, "5"),  # 9 - 4
    ("cover_missing", {"nominal_cover": 9, "cover_tolerance": 6}, "2"),  # 5 + 6 = 11, more than 8; 11 - 9
    ("thin_share_seen", {"thin_readings": 3, "readings_taken": 25}, "12"),  # 3 / 25
    ("thin_share_possible", {"readings_taken": 10}, "25.9"),  # 0.741 ten times by itself is 0.050
    ("thin_area_possible", {"thin_share_possible": 25.9, "mesh_wall_area": 14}, "3.6"),  # 0.259 x 14 = 3.63
    ("readings_needed", {"thin_share_wanted": 10}, "29"),  # 0.9 by itself 28 times is 0.0523, 29 times 0.0471
    ("area_per_reading", {"mesh_wall_area": 14, "readings_taken": 40}, "0.35"),  # 14 / 40
    ("thickness_error", {"measured_thickness": 47, "wall_thickness": 55}, "8"),  # 55 - 47
    ("thickness_error_share", {"thickness_error": 8, "wall_thickness": 50}, "16"),  # 8 / 50
]
TANK_PART = {
    "readings_taken": 23.0, "thin_readings": 2.0, "nominal_cover": 7.0, "cover_tolerance": 4.0,
    "thin_share_wanted": 7.0, "measured_thickness": 47.0,
}  # fmt: skip


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


def test_a_plan_of_8_is_enough_for_a_crew_within_3() -> None:
    assert shown("cover_missing", {"nominal_cover": 8, "cover_tolerance": 3}) == "0"
    assert shown("cover_missing", {"nominal_cover": 5, "cover_tolerance": 0}) == "3"


def test_ten_good_readings_prove_less_than_a_tenth_or_nothing_at_all() -> None:
    values = {"readings_taken": 10, "thin_readings": 0}
    assert read_wrong("good_readings_prove_the_whole_wall", values, "thin_share_possible") == 0
    assert read_wrong("one_reading_stands_for_its_share", values, "thin_share_possible") == pytest.approx(10)
    assert read_wrong("readings_as_one_over_share", {"thin_share_wanted": 10}, "readings_needed") == 10
    assert read_wrong("readings_as_the_share", {"thin_share_wanted": 6}, "readings_needed") == 6
    values = {"thin_readings": 3, "readings_taken": 25}
    assert read_wrong("thin_count_taken_for_percent", values, "thin_share_seen") == 3


def test_the_plan_is_not_the_thinnest_place() -> None:
    values = {"nominal_cover": 9, "cover_tolerance": 4}
    assert read_wrong("plan_taken_for_least_cover", values, "least_cover_expected") == 9
    assert read_wrong("tolerance_added_to_cover", values, "least_cover_expected") == 13
    assert read_wrong("cover_planned_without_tolerance", values, "cover_missing") == 0
    assert read_wrong("whole_tolerance_added", {"nominal_cover": 7, "cover_tolerance": 4}, "cover_missing") == 4


def test_eight_millimetres_off_are_not_eight_percent_of_a_thin_wall() -> None:
    values = {"measured_thickness": 40, "wall_thickness": 48}
    assert read_wrong("millimetres_off_called_percent", values, "thickness_error_share") == 8
    assert read_wrong("error_shared_by_what_was_measured", values, "thickness_error_share") == pytest.approx(20)


def test_four_readings_are_no_check() -> None:
    with pytest.raises(OutOfRangeError, match=r"readings_taken = 4 is outside 5 to 300.*licensed engineer"):
        BOOK.evaluate({"readings_taken": 4}, ["thin_share_possible"])


@given(values=givens("readings_taken"))
def test_the_share_is_the_one_that_leaves_one_chance_in_twenty(values: dict[str, float]) -> None:
    """Independent: the binomial's chance of no thin reading."""
    share = BOOK.evaluate(values, ["thin_share_possible"])["thin_share_possible"] / 100
    assert binom.pmf(0, values["readings_taken"], share) == pytest.approx(0.05, rel=1e-9)


@given(values=givens("thin_share_wanted"))
def test_readings_needed_are_the_fewest_that_do(values: dict[str, float]) -> None:
    share, count = values["thin_share_wanted"] / 100, BOOK.evaluate(values, ["readings_needed"])["readings_needed"]
    assert (1 - share) ** count <= 0.05 * (1 + 1e-9) < (1 - share) ** (count - 1)


@given(values=givens("nominal_cover", "cover_tolerance"))
def test_what_is_missing_makes_every_place_deep_enough(values: dict[str, float]) -> None:
    found = BOOK.evaluate(values, ["cover_missing", "least_cover_expected"])
    planned = values["nominal_cover"] + found["cover_missing"]
    assert planned - values["cover_tolerance"] >= 5
    assert planned >= 8
