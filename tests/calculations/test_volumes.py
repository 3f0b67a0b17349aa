"""Volumes. Examples are geometry, worked by hand for 2.60 m inside, a wall of 1.40 m and 1.25 m of water."""

from math import pi

import pytest
from hypothesis import given

from generator.calculations import BOOK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

TANK = {"inside_diameter": 2.6, "wall_height": 1.4, "overflow_drop": 0.15}
BY_HAND: list[Example] = [
    ("floor_area", {"inside_diameter": 2.6}, "5.31"),  # 3.1416 x 1.3 x 1.3
    ("water_depth", {"wall_height": 1.4, "overflow_drop": 0.15}, "1.25"),  # 1.40 - 0.15
    ("tank_volume", TANK, "6.64"),  # 5.309 x 1.25
    ("tank_litres", {"tank_volume": 6.64}, "6640"),  # 6.64 x 1000
    ("water_depth_for_volume", {"wanted_volume": 6, "floor_area": 5.31}, "1.13"),  # 6 / 5.31
    ("wall_mortar_volume", {"inside_diameter": 2.6, "wall_thickness": 60, "wall_height": 1.4}, "0.702"),
    # ring of 2.66 m at mid-wall: 3.1416 x 2.66 = 8.357 m; x 0.06 x 1.4
    ("base_concrete_volume", {"base_diameter": 3.3, "base_concrete_thickness": 100}, "0.86"),  # 8.553 m2 x 0.1
    ("trough_volume", {"trough_radius": 0.4, "trough_length": 2.5}, "0.628"),  # half of 3.1416 x 0.16 x 2.5
]


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


@pytest.mark.parametrize(
    ("mistake", "asked", "wrong_answer"),
    [
        ("diameter_taken_for_radius", "floor_area", 21.24),
        ("area_as_a_square", "floor_area", 6.76),
        ("wall_height_taken_for_water", "tank_volume", 7.43),
        ("cubic_metre_as_hundred_litres", "tank_litres", 663.7),
    ],
)
def test_wrong_answers_that_masons_give(mistake: str, asked: str, wrong_answer: float) -> None:
    """Derived for the same tank: true are 5.31 m2, 6.64 m3 and 6637 L."""
    assert read_wrong(mistake, TANK, asked) == pytest.approx(wrong_answer, rel=1e-3)


def test_a_trough_is_neither_a_log_nor_a_box() -> None:
    """Derived for 0.4 m and 2.5 m: true are 0.628 m3; a whole log holds 1.257, a box 0.8 m3."""
    trough = {"trough_radius": 0.4, "trough_length": 2.5}
    assert read_wrong("trough_as_a_whole_log", trough, "trough_volume") == pytest.approx(1.256637)
    assert read_wrong("trough_as_a_box", trough, "trough_volume") == pytest.approx(0.8)


def test_water_reckoned_between_the_outer_faces_is_nine_parts_in_a_hundred_too_much() -> None:
    """Derived: 2.72 for 2.60 m makes the volume 1.094 times too large."""
    values = {"inside_diameter": 2.6, "wall_thickness": 60, "wall_height": 1.4, "overflow_drop": 0.15}
    right = BOOK.evaluate(values, ["tank_volume"])["tank_volume"]
    assert read_wrong("outside_taken_for_water", values, "tank_volume") / right == pytest.approx(1.094, abs=5e-4)


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ({"inside_diameter": 6.5, "wall_height": 2.0, "overflow_drop": 0.1}, "tank_volume = 63.0478 m**3 is outside"),
        ({"inside_diameter": 3, "wall_height": 2.4, "overflow_drop": 0.05}, "water_depth = 2.35 m is outside"),
    ],
)
def test_a_tank_larger_than_the_course_is_refused_with_who_to_ask(values: dict[str, float], said: str) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        BOOK.evaluate(values, ["tank_volume"])
    assert said in str(refused.value)
    assert "licensed engineer" in str(refused.value)


@given(values=givens("inside_diameter"))
def test_twice_as_wide_holds_four_times(values: dict[str, float]) -> None:
    across = values["inside_diameter"]
    if across <= 4:
        one, two = (BOOK.evaluate({"inside_diameter": d}, ["floor_area"])["floor_area"] for d in (across, 2 * across))
        assert two == pytest.approx(4 * one)


@given(values=givens("wall_height", "overflow_drop", "inside_diameter"))
def test_the_depth_for_a_volume_gives_that_volume_back(values: dict[str, float]) -> None:
    found = BOOK.work_out(values, ["tank_volume"], check=False)
    volume = {"wanted_volume": found["tank_volume"], "floor_area": found["floor_area"]}
    again = BOOK.work_out(volume, ["water_depth_for_volume"], check=False)
    assert again["water_depth_for_volume"] == pytest.approx(found["water_depth"])


@given(values=givens("inside_diameter", "wall_height"))
def test_the_wall_is_the_difference_of_two_cylinders(values: dict[str, float]) -> None:
    seeds = {**values, "wall_thickness": 50}
    wall = BOOK.work_out(seeds, ["wall_mortar_volume"], check=False)["wall_mortar_volume"]
    inner, outer = values["inside_diameter"], values["inside_diameter"] + 0.1
    assert wall == pytest.approx(pi / 4 * (outer**2 - inner**2) * values["wall_height"])
