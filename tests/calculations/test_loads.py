"""Carrying. Examples are small sums worked by hand."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations import BOOK
from generator.calculations.lifting import Material, loads_of
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, on_the_tape, read_wrong, shown

BY_HAND: list[Example] = [
    ("sand_mass", {"sand_volume_damp": 1.15}, "1840"),  # 1.15 x 1600
    ("bought_cement_mass", {"cement_bags": 13}, "650"),  # 13 x 50
    (
        "material_mass",
        {"bought_cement_mass": 650, "sand_mass": 1840, "carried_water": 430, "carry_mass": 2215}, "5135",
    ),  # 650 + 1840 + 430 + 2215
    ("load_count", {"material_mass": 5135, "load_mass": 27}, "191"),  # 190.2
    ("loads_per_day", {"carriers": 7, "trips_per_day": 3}, "21"),
    ("carrying_days", {"load_count": 191, "loads_per_day": 21}, "10"),  # 9.1
    ("pickup_trips", {"material_mass": 5135, "pickup_load": 850}, "7"),  # 6.04
    ("bag_parts", {"load_mass": 27}, "2"),  # 50 / 27 = 1.9
    ("cement_loads", {"cement_bags": 13, "load_mass": 27, "bag_parts": 2}, "26"),  # every bag in two parts
    ("site_ready_day", {"digging_duration": 3, "carrying_days": 10}, "10"),  # side by side: the longer one
]  # fmt: skip

TANK_PART = {
    "load_mass": 27.0, "trips_per_day": 3.0, "carriers": 7.0, "carried_water": 430.0, "carry_mass": 2215.0,
    "pickup_load": 850.0,
}  # fmt: skip
AFTER_PART = {
    "sand_mass", "bought_cement_mass", "material_mass", "load_count", "carrying_days", "pickup_trips", "cement_loads",
    "site_ready_day",
}  # fmt: skip


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


@pytest.mark.parametrize(
    ("load", "bags", "loads"),
    [(10, 4, 20), (16, 4, 16), (25, 4, 8), (49, 4, 8), (50, 4, 4), (99, 4, 4), (100, 5, 3), (180, 7, 3)],
)
def test_bags_are_carried_whole_or_in_equal_parts(load: float, bags: float, loads: float) -> None:
    """10 kg: five parts; 16: four; 25 and 49: two; 50 and 99: one bag; 100: two bags; 180: three bags."""
    assert BOOK.evaluate({"load_mass": load, "cement_bags": bags}, ["cement_loads"])["cement_loads"] == loads


@given(load=on_the_tape("load_mass"), bags=st.integers(1, 100))
def test_the_book_and_the_table_of_loads_agree_on_cement(load: float, bags: int) -> None:
    found = BOOK.evaluate({"load_mass": load, "cement_bags": float(bags)}, ["cement_loads"])["cement_loads"]
    assert loads_of([Material("cement", 50.0 * bags, piece=50)], load).loads == found


def test_the_last_load_is_carried_too() -> None:
    values = {"material_mass": 5135.0, "load_mass": 27.0}
    assert shown("load_count", values) == "191"
    assert read_wrong("loads_rounded_down", values, "load_count") == 190


def test_water_is_carried_like_everything_else() -> None:
    values = {"bought_cement_mass": 650, "sand_mass": 1840, "carried_water": 900, "carry_mass": 0}
    right = BOOK.evaluate(values, ["material_mass"])["material_mass"]
    assert right - read_wrong("water_not_carried", values, "material_mass") == 900


def test_a_bag_is_not_for_one_back() -> None:
    values = {"cement_bags": 13.0, "load_mass": 27.0}
    assert shown("cement_loads", values) == "26"
    assert read_wrong("one_man_one_bag", values, "cement_loads") == 13
    assert read_wrong("bags_mixed_by_weight", values, "cement_loads") == 25  # 650 / 27 = 24.1


def test_digging_and_carrying_go_on_side_by_side() -> None:
    values = {"digging_duration": 4.0, "carrying_days": 3.0}
    assert shown("site_ready_day", values) == "4"
    assert read_wrong("days_added_not_side_by_side", values, "site_ready_day") == 7


def test_a_cubic_metre_of_sand_is_no_tonne() -> None:
    assert read_wrong("sand_as_light_as_water", {"sand_volume_damp": 2}, "sand_mass") == 2000
    assert shown("sand_mass", {"sand_volume_damp": 2}) == "3200"


@pytest.mark.parametrize(("name", "bad"), [("load_mass", 9), ("load_mass", 201), ("carriers", 0)])
def test_impossible_carrying_is_refused(name: str, bad: float) -> None:
    values = {"material_mass": 5000, "load_mass": 25, "carriers": 3, "trips_per_day": 2, name: bad}
    with pytest.raises(OutOfRangeError, match=name):
        BOOK.evaluate(values, ["carrying_days"])
