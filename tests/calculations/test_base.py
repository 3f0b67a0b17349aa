"""The base: dug earth, stone, mesh, floor, starters, concrete. Examples are geometry and counting, done by hand."""

from math import pi

import pytest
from hypothesis import given

from generator.calculations import BOOK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

BY_HAND: list[Example] = [
    (
        "excavation_volume", {"base_diameter": 3.4, "topsoil_depth": 90, "stone_thickness": 160}, "2.27",
    ),  # 0.7854 x 11.56 = 9.0792 m2; x 0.25 m
    (
        "stone_volume", {"base_diameter": 3.4, "stone_thickness": 160, "stone_ramming": 15}, "1.67",
    ),  # 9.0792 x 0.16 x 1.15 = 1.6706
    ("base_mesh_area", {"base_diameter": 3.4, "base_mesh_lap": 11}, "10.1"),  # 9.0792 x 1.11 = 10.078
    ("floor_fall_height", {"inside_radius": 1.55, "floor_fall": 1.5}, "23"),  # 1550 x 0.015 = 23.25
    (
        "floor_mortar_volume", {"floor_area": 7.5, "floor_mortar_thickness": 40, "floor_fall_height": 24}, "0.420",
    ),  # 40 + 16 = 56 mm on average; 7.5 x 0.056
    (
        "floor_mesh_area",
        {"floor_area": 7.5, "inside_diameter": 3.1, "mesh_turn_up": 0.35, "base_mesh_lap": 11},
        "12.1",
    ),  # 3.1416 x 3.1 x 0.35 = 3.4086; 10.9086 x 1.11 = 12.1086
    ("starter_count", {"ring_length": 9.7, "starter_spacing": 0.23}, "43"),  # 9.7 / 0.23 = 42.2
    ("starter_length", {"starter_leg": 0.35, "lap_diameters": 55, "starter_diameter": 6}, "0.68"),  # 0.35 + 0.33
    ("starter_total_length", {"starter_count": 43, "starter_length": 0.68}, "29.2"),  # 29.24
    (
        "concrete_dry_volume", {"base_concrete_volume": 1.1, "concrete_waste": 7}, "1.813",
    ),  # 1.1 x 1.07 = 1.177; x 1.54 = 1.81258
    (
        "concrete_cement_volume",
        {"concrete_dry_volume": 1.82, "concrete_sand_parts": 2.5, "concrete_stone_parts": 3.5},
        "0.260",
    ),  # 1.82 / 7
    ("concrete_cement_mass", {"concrete_cement_volume": 0.26}, "374"),  # 0.26 x 1440 = 374.4
    ("concrete_cement_bags", {"concrete_cement_mass": 374.4}, "8"),  # 7.49
    (
        "concrete_sand_volume",
        {"concrete_cement_volume": 0.26, "concrete_sand_parts": 2.5, "sand_bulking": 22},
        "0.79",
    ),  # 0.65 x 1.22 = 0.793
    ("concrete_stone_volume", {"concrete_cement_volume": 0.26, "concrete_stone_parts": 3.5}, "0.91"),
    ("base_mass", {"base_concrete_volume": 1.1}, "2640"),  # 1.1 x 2400
]  # fmt: skip
TANK_PART = {
    "topsoil_depth": 90.0, "stone_thickness": 160.0, "stone_ramming": 15.0, "base_mesh_lap": 11.0,
    "floor_mortar_thickness": 40.0, "floor_fall": 1.5, "mesh_turn_up": 0.35, "starter_leg": 0.35,
    "concrete_sand_parts": 2.0, "concrete_stone_parts": 3.5, "concrete_waste": 7.0,
}  # fmt: skip
WARN_ONLY = {"starter_leg"}


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


def test_the_floor_holds_as_much_mortar_as_a_hollow_cone_leaves() -> None:
    """Independent: rings of the floor, thinnest in the middle."""
    radius, thin, fall, rings = 1.6, 0.04, 0.03, 4000
    step = radius / rings
    volume = sum(2 * pi * (n + 0.5) * step * step * (thin + fall * (n + 0.5) * step / radius) for n in range(rings))
    values = {"floor_area": pi * radius**2, "floor_mortar_thickness": 40.0, "floor_fall_height": 30.0}
    assert BOOK.evaluate(values, ["floor_mortar_volume"])["floor_mortar_volume"] == pytest.approx(volume, rel=1e-6)


def test_a_ring_that_closes_has_as_many_starters_as_gaps() -> None:
    values = {"ring_length": 9.0, "starter_spacing": 0.3}
    assert shown("starter_count", values) == "30"
    assert read_wrong("one_starter_more_as_in_a_row", values, "starter_count") == 31
    assert read_wrong("last_gap_of_the_ring_left_wide", {**values, "ring_length": 9.2}, "starter_count") == 30


def test_a_spacing_of_nothing_breaks_nothing_and_shows_that_thicker_starters_are_needed() -> None:
    """Thin starters at a deep foot: the spacing is 0, and the count is one for each 10 mm."""
    assert shown("starter_count", {"ring_length": 9.0, "starter_spacing": 0}) == "900"


@given(values=givens("starter_leg", "lap_diameters", "starter_diameter"))
def test_a_starter_holds_by_a_whole_lap_in_the_wall(values: dict[str, float]) -> None:
    length = BOOK.evaluate(values, ["starter_length"])["starter_length"]
    lap = values["lap_diameters"] * values["starter_diameter"] / 1000
    assert length - values["starter_leg"] == pytest.approx(lap)
    assert read_wrong("starter_leg_forgotten", values, "starter_length") == pytest.approx(lap)
    two_legs = 2 * values["starter_leg"] + lap
    assert read_wrong("starter_leg_at_both_ends", values, "starter_length") == pytest.approx(two_legs)
    both = {**values, "starter_count": 20.0}
    assert read_wrong("starters_counted_up_the_wall_only", both, "starter_total_length") == pytest.approx(20 * lap)


MIX = ("concrete_sand_parts", "concrete_stone_parts", "concrete_waste", "base_concrete_thickness")


@given(values=givens(*MIX))
def test_dry_parts_of_concrete_add_up_to_what_is_shared_out(values: dict[str, float]) -> None:
    seeds = {**values, "base_diameter": 3.4, "sand_bulking": 0.0}
    found = BOOK.evaluate(seeds, ["concrete_sand_volume", "concrete_stone_volume"])
    parts = (found["concrete_cement_volume"], found["concrete_sand_volume"], found["concrete_stone_volume"])
    assert sum(parts) == pytest.approx(found["concrete_dry_volume"])


def test_what_wrong_ideas_make_of_pit_stone_and_mesh() -> None:
    pit = {"base_diameter": 4.0, "outside_diameter": 3.0, "topsoil_depth": 100.0, "stone_thickness": 200.0}
    assert shown("excavation_volume", pit) == "3.77"  # 12.566 x 0.3
    assert read_wrong("topsoil_left_under_the_base", pit, "excavation_volume") == pytest.approx(2.513, abs=5e-4)
    assert read_wrong("stone_forgotten_in_the_pit", pit, "excavation_volume") == pytest.approx(1.257, abs=5e-4)
    assert read_wrong("pit_as_wide_as_the_tank", pit, "excavation_volume") == pytest.approx(2.121, abs=5e-4)
    stone = {"base_diameter": 4.0, "stone_thickness": 200.0, "stone_ramming": 25.0}
    assert shown("stone_volume", stone) == "3.14"
    assert read_wrong("ramming_forgotten", stone, "stone_volume") == pytest.approx(2.513, abs=5e-4)
    mesh = {"base_diameter": 4.0, "inside_radius": 1.5, "base_mesh_lap": 10.0}
    assert read_wrong("base_mesh_laps_forgotten", mesh, "base_mesh_area") == pytest.approx(4 * pi)
    assert read_wrong("base_mesh_ends_inside_the_wall", mesh, "base_mesh_area") == pytest.approx(2.25 * 1.1 * pi)


def test_what_wrong_ideas_make_of_the_floor() -> None:
    fall = {"inside_radius": 1.4, "inside_diameter": 2.8, "floor_fall": 2.0}
    assert shown("floor_fall_height", fall) == "28"
    assert read_wrong("fall_over_the_whole_width", fall, "floor_fall_height") == pytest.approx(56)
    assert read_wrong("fall_the_same_for_every_floor", fall, "floor_fall_height") == pytest.approx(20)
    mortar = {"floor_area": 6.0, "floor_mortar_thickness": 40.0, "floor_fall_height": 30.0}
    assert shown("floor_mortar_volume", mortar) == "0.360"
    assert read_wrong("fall_forgotten_in_the_floor", mortar, "floor_mortar_volume") == pytest.approx(0.24)
    assert read_wrong("floor_thickness_in_centimetres", mortar, "floor_mortar_volume") == pytest.approx(3.6)
    mesh = {"floor_area": 6.0, "inside_diameter": 2.8, "mesh_turn_up": 0.3, "base_mesh_lap": 10.0}
    assert read_wrong("floor_mesh_not_turned_up", mesh, "floor_mesh_area") == pytest.approx(6.6)
    assert read_wrong("floor_mesh_laps_forgotten", mesh, "floor_mesh_area") == pytest.approx(6 + 0.84 * pi)


def test_what_wrong_ideas_make_of_the_concrete() -> None:
    dry = {"base_concrete_volume": 1.0, "concrete_waste": 10.0}
    assert read_wrong("concrete_boxes_thought_to_add_up", dry, "concrete_dry_volume") == pytest.approx(1.1)
    assert read_wrong("concrete_loss_forgotten", dry, "concrete_dry_volume") == pytest.approx(1.54)
    mix = {"concrete_dry_volume": 4.2, "concrete_sand_parts": 2.0, "concrete_stone_parts": 4.0}
    assert shown("concrete_cement_volume", mix) == "0.600"
    assert read_wrong("cement_part_not_counted", mix, "concrete_cement_volume") == pytest.approx(0.7)
    assert read_wrong("stone_part_not_counted", mix, "concrete_cement_volume") == pytest.approx(1.4)
    parts = {
        "concrete_cement_volume": 0.6,
        "concrete_sand_parts": 2.0,
        "concrete_stone_parts": 4.0,
        "sand_bulking": 25.0,
    }
    assert shown("concrete_sand_volume", parts) == "1.50"
    assert read_wrong("damp_concrete_sand_taken_as_dry", parts, "concrete_sand_volume") == pytest.approx(1.2)
    assert read_wrong("stone_given_as_much_as_sand", parts, "concrete_stone_volume") == pytest.approx(1.2)
    assert read_wrong("concrete_bags_rounded_down", {"concrete_cement_mass": 374.0}, "concrete_cement_bags") == 7
    assert read_wrong("base_weighed_as_water", {"base_concrete_volume": 1.3}, "base_mass") == pytest.approx(1300)


@pytest.mark.parametrize(
    ("name", "bad"), [("topsoil_depth", 40), ("stone_thickness", 60), ("mesh_turn_up", 0.1), ("floor_fall", 0.2)]
)
def test_a_base_that_would_not_hold_is_refused(name: str, bad: float) -> None:
    with pytest.raises(OutOfRangeError, match=rf"{name}.*licensed engineer"):
        BOOK.evaluate({**TANK_PART, "base_diameter": 3.4, "inside_diameter": 2.9, name: bad},
                      ["excavation_volume", "floor_mesh_area", "floor_fall_height"])  # fmt: skip
