"""Plastering day. Sums are worked by hand."""

import pytest
from hypothesis import given

from generator.calculations import BOOK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

BY_HAND: list[Example] = [
    ("plaster_area_outside", {"outside_diameter": 2.5, "wall_height": 2}, "15.7"),  # 3.1416 x 5
    ("plaster_area_inside", {"inside_diameter": 2.4, "wall_height": 2}, "15.1"),  # 3.1416 x 4.8
    ("coat_area", {"plaster_area_outside": 15.7, "plaster_area_inside": 15.1, "coat_faces": 2}, "30.8"),  # both
    ("masons_needed", {"coat_area": 30.8, "mason_day_area": 4, "coat_days": 0.5}, "16"),  # 30.8 / 2 = 15.4
    (
        "coat_batches",
        {"coat_area": 15, "coat_thickness": 20, "mortar_waste": 10, "batch_volume": 0.09}, "4",
    ),  # 0.33 / 0.09 = 3.7
    ("batches_in_time", {"coat_days": 0.75, "batch_minutes": 25}, "14"),  # 6 h = 360 min; 14.4
    ("mixing_crew", {"coat_batches": 30, "batches_in_time": 14}, "3"),  # 2.1
    (
        "batch_placing_time", {"batch_cover_area": 6, "masons_needed": 3, "mason_day_area": 4}, "240",
    ),  # 6 of 12 m2 a day: half of 8 h
    ("wet_lots", {"batch_placing_time": 100, "placing_minutes": 30}, "4"),  # 3.3
]  # fmt: skip
TANK_PART = {
    "mason_day_area": 3.5, "coat_days": 0.75, "coat_faces": 2.0, "batch_minutes": 27.0, "placing_minutes": 25.0,
}  # fmt: skip
AFTER_PART = {
    "plaster_area_outside", "coat_area", "masons_needed", "coat_batches", "mixing_crew", "batch_placing_time",
}  # fmt: skip
"""Need a wall that this course allows."""
WARN_ONLY = {"mason_day_area", "masons_needed", "batch_placing_time", "wet_lots"}
"""How much one mason covers is recalled: it plans a crew."""


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


def test_a_first_coat_never_takes_longer_than_a_day() -> None:
    with pytest.raises(OutOfRangeError, match="coat_days"):
        BOOK.evaluate({"coat_area": 15, "mason_day_area": 4, "coat_days": 2}, ["masons_needed"])


def test_mortar_that_lay_for_an_hour_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="placing_minutes"):
        BOOK.evaluate({"batch_placing_time": 100, "placing_minutes": 60}, ["wet_lots"])


def test_the_speed_of_a_house_wall_leaves_half_of_the_coat_open() -> None:
    """Derived: 15 m2 in a day: 4 masons at 4 m2, 2 at the 10 m2 of house plaster."""
    day = {"coat_area": 15, "mason_day_area": 4, "coat_days": 1}
    assert shown("masons_needed", day) == "4"
    assert read_wrong("house_plaster_rate_taken", day, "masons_needed") == 2
    assert read_wrong("masons_rounded_down", day, "masons_needed") == 3


def test_a_round_wall_is_shorter_than_four_straight_ones() -> None:
    wall = {"inside_diameter": 2.4, "wall_height": 2}
    assert read_wrong("round_wall_as_four_walls", wall, "plaster_area_inside") == pytest.approx(19.2)


def test_a_coat_that_just_fills_its_batches_takes_no_more() -> None:
    coat = {"coat_area": 10, "coat_thickness": 18, "mortar_waste": 0, "batch_volume": 0.09}
    assert shown("coat_batches", coat) == "2"


DAY = ("mason_day_area", "coat_days", "batch_minutes", "placing_minutes", "coat_thickness", "mortar_waste")


@given(values=givens(*DAY))
def test_the_crew_closes_the_coat_in_its_time(values: dict[str, float]) -> None:
    seeds = {**values, "coat_area": 14.7, "batch_volume": 0.0917}
    found = BOOK.evaluate(seeds, ["masons_needed", "mixing_crew", "wet_lots"])
    assert found["masons_needed"] * values["mason_day_area"] * values["coat_days"] >= 14.7 * (1 - 1e-8)
    assert found["mixing_crew"] * found["batches_in_time"] >= found["coat_batches"]
    assert found["batches_in_time"] * values["batch_minutes"] <= values["coat_days"] * 480 * (1 + 1e-8)
    assert found["batch_placing_time"] / found["wet_lots"] <= values["placing_minutes"] * (1 + 1e-8)


@given(values=givens("inside_diameter", "wall_height"))
def test_the_outer_face_is_the_larger(values: dict[str, float]) -> None:
    outer = {**values, "outside_diameter": values["inside_diameter"] + 0.1}
    found = BOOK.evaluate(outer, ["plaster_area_outside", "plaster_area_inside"])
    assert found["plaster_area_outside"] > found["plaster_area_inside"]
