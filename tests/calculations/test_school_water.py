"""A school's water: the balance of a week, hour by hour, and what a wrong idea would leave dry."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations import BOOK
from tests.calculations.worked import Example, read_wrong, shown

BY_HAND: list[Example] = [
    ("cool_season_need", {"people": 190, "cool_litres_each": 3.5}, "665.0"),  # 570 + 95
    (
        "school_day_storage", {"daily_need": 1140, "spring_daily_yield": 960, "school_hours": 5}, "940.0",
    ),  # 1140 - 5 x 40
    (
        "school_week_storage", {"school_day_storage": 940, "daily_shortfall": 180, "school_days": 6}, "1840.0",
    ),  # 940 + 5 x 180
    (
        "school_week_spare", {"daily_need": 1140, "spring_daily_yield": 960, "school_days": 5}, "1020.0",
    ),  # 6720 - 5700
]  # fmt: skip

TANK_PART = {"cool_litres_each": 4.5, "school_hours": 5.5, "school_days": 6.0}
WARN_ONLY = {"cool_litres_each"}
SCHOOL: dict[str, float] = {"daily_need": 1140, "spring_daily_yield": 960, "school_hours": 6, "school_days": 5}


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


@given(
    need=st.integers(40, 200).map(lambda tens: tens * 10.0),
    brings=st.integers(20, 200).map(lambda tens: tens * 10.0),
    hours=st.integers(3, 12),
    days=st.integers(1, 7),
)
def test_the_week_walked_hour_by_hour_falls_just_as_low(need: float, brings: float, hours: int, days: int) -> None:
    """A full tank that spills what it can't hold, drawn evenly in school hours; the lowest water is the storage."""
    below = lowest = 0.0
    for hour in range(24 * days):
        below += (need / hours if hour % 24 < hours else 0.0) - brings / 24
        below = max(0.0, below)
        lowest = max(lowest, below)
    values = {"daily_need": need, "spring_daily_yield": brings, "school_hours": hours, "school_days": days}
    found = BOOK.evaluate(values, ["school_week_storage"])["school_week_storage"]
    assert found == pytest.approx(lowest, abs=1e-6)


def test_a_week_with_nothing_over_never_fills_again() -> None:
    assert shown("school_week_spare", {**SCHOOL, "spring_daily_yield": 800}) == "0.0"


def test_nights_before_they_come_empty_the_tank_by_the_last_bell() -> None:
    right = BOOK.evaluate(SCHOOL, ["school_week_storage"])["school_week_storage"]
    assert right - read_wrong("last_night_counted_too", SCHOOL, "school_week_storage") == pytest.approx(960 * 18 / 24)


def test_a_cool_day_taken_for_a_hot_one_is_too_little_by_the_thirst() -> None:
    values: dict[str, float] = {"people": 190, "litres_each": 6, "cool_litres_each": 3.5}
    assert read_wrong("cool_season_for_the_hot", values, "people_need") == pytest.approx(665)
    assert BOOK.evaluate(values, ["people_need"])["people_need"] == pytest.approx(1140)
