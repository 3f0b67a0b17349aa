"""Mesh. Examples are strips, areas and wire, worked by hand."""

from math import pi

import pytest
from hypothesis import given

from generator.calculations import BOOK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

BY_HAND: list[Example] = [
    ("mesh_turns_length", {"ring_length": 9.84, "mesh_lap": 0.17}, "10.01"),  # 9.84 + 0.17
    ("mesh_pieces", {"ring_length": 16.3, "mesh_roll_length": 15.5, "mesh_lap": 0.17}, "2"),  # 16.3 / 15.33 = 1.06
    ("mesh_strip_length", {"ring_length": 16.3, "mesh_pieces": 2, "mesh_lap": 0.17}, "16.64"),  # 16.3 + 2 x 0.17
    ("mesh_rows", {"wall_height": 1.45, "mesh_roll_width": 0.75, "mesh_lap": 0.15}, "3"),  # 1.30 / 0.60 = 2.2
    ("mesh_wall_area", {"ring_length": 9.84, "wall_height": 1.45}, "14.3"),  # 14.27
    (
        "mesh_layer_area", {"mesh_strip_length": 10, "wall_height": 1.45, "mesh_rows": 3, "mesh_lap": 0.15}, "17.5",
    ),  # 10 x (1.45 + 2 x 0.15)
    ("mesh_area", {"mesh_layer_area": 17.5, "mesh_layers_inside": 1, "mesh_layers_outside": 2}, "52.5"),  # 3 x 17.5
    (
        "mesh_rolls",
        {"mesh_rows": 3, "mesh_layers_inside": 1, "mesh_layers_outside": 2, "mesh_pieces": 1, "mesh_strip_length": 10,
         "mesh_roll_length": 25}, "5",
    ),  # 9 strips, 2 from a roll
    ("mesh_mass_per_area", {"mesh_wire_diameter": 1.8, "mesh_wire_spacing": 20}, "2.00"),  # 3.24 / 162 x 100 wires
    ("mesh_steel_area", {"mesh_wire_diameter": 2, "mesh_wire_spacing": 25}, "125.7"),  # 3.1416 mm2 x 40 wires
    (
        "volume_fraction",
        {"mesh_steel_area": 125.7, "mesh_layers_inside": 1, "mesh_layers_outside": 1, "wall_thickness": 50}, "1.01",
    ),  # 2 layers x 2 ways x 125.7 = 502.8 in 50 000 mm2
    ("specific_surface", {"volume_fraction": 1.01, "mesh_wire_diameter": 2}, "0.020"),  # 4 x 0.0101 / 2
]  # fmt: skip
TANK_PART = {
    "mesh_layers_inside": 2.0, "mesh_layers_outside": 1.0, "mesh_lap": 0.21, "mesh_roll_width": 0.75,
    "mesh_roll_length": 10.0, "mesh_wire_diameter": 1.22, "mesh_wire_spacing": 19.0,
}  # fmt: skip
LIMITS_PART = {"volume_fraction"}  # more wire lets no mortar through
STRIPS = (
    "inside_diameter", "mesh_cover", "inside_mesh_thickness", "bar_diameter", "wall_height", "mesh_lap",
    "mesh_roll_width", "mesh_roll_length", "mesh_layers_inside", "mesh_layers_outside",
)  # fmt: skip


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


def test_strips_edge_to_edge_leave_the_wall_without_a_strip() -> None:
    """Derived: 1.45 m are not quite two widths of 0.75 m, and three strips once they lap."""
    values = {"wall_height": 1.45, "mesh_roll_width": 0.75, "mesh_lap": 0.15}
    assert read_wrong("rows_without_lap", values, "mesh_rows") == 2


def test_pieces_and_strips_that_only_touch_leave_the_laps_out() -> None:
    """By hand: 12 m round in two pieces with 0.25 m of lap each; three strips in 1.5 m."""
    strip = {"ring_length": 12, "mesh_pieces": 2, "mesh_lap": 0.25}
    assert shown("mesh_strip_length", strip) == "12.50"
    assert read_wrong("laps_of_pieces_forgotten", strip, "mesh_strip_length") == 12
    layer = {"mesh_strip_length": 12.5, "wall_height": 1.5, "mesh_rows": 3, "mesh_lap": 0.25}
    assert shown("mesh_layer_area", layer) == "25.0"
    assert read_wrong("mesh_edge_laps_forgotten", layer, "mesh_layer_area") == 18.75


def test_what_wrong_ideas_make_of_strips_and_wire() -> None:
    """By hand: 9 m of ring by 0.6 m of strip; wire of 2 mm every 20 mm."""
    rows = {"ring_length": 9, "wall_height": 1.4, "mesh_roll_width": 0.8, "mesh_lap": 0.2}
    assert shown("mesh_rows", rows) == "2"
    assert read_wrong("mesh_hung_upright", rows, "mesh_rows") == 15
    wire = {"mesh_wire_diameter": 2, "mesh_wire_spacing": 20}
    right = BOOK.evaluate(wire, ["mesh_mass_per_area"])["mesh_mass_per_area"]
    assert read_wrong("mesh_weighed_by_thickness", wire, "mesh_mass_per_area") == pytest.approx(right / 2)
    assert read_wrong("mesh_wire_taken_as_square", wire, "mesh_steel_area") == pytest.approx(200)


def test_ends_of_rolls_are_no_strips() -> None:
    values = {"mesh_rows": 3, "mesh_layers_inside": 1, "mesh_layers_outside": 2, "mesh_pieces": 1,
              "mesh_strip_length": 10, "mesh_roll_length": 25, "mesh_roll_width": 0.75, "mesh_area": 52.5}  # fmt: skip
    assert read_wrong("mesh_shared_by_roll_area", values, "mesh_rolls") == 3


def test_a_layer_for_two_faces_leaves_one_face_bare() -> None:
    values = {"mesh_layer_area": 17.5, "mesh_layers_inside": 1, "mesh_layers_outside": 2}
    assert read_wrong("one_layer_for_two_faces", values, "mesh_area") == 17.5
    assert read_wrong("outside_layers_forgotten", values, "mesh_area") == 17.5


def test_wire_of_both_ways_is_halved_by_the_mistake_only() -> None:
    values = {"mesh_steel_area": 125.7, "mesh_layers_inside": 1, "mesh_layers_outside": 1, "wall_thickness": 50}
    right = BOOK.evaluate(values, ["volume_fraction"])["volume_fraction"]
    assert read_wrong("mesh_share_halved", values, "volume_fraction") == pytest.approx(right / 2)


def test_laps_all_on_one_line_lie_in_the_wall_together() -> None:
    """Derived: 8 mm of hoop and 5 and 4 mm of mesh, where staggered laps put in 8 mm only."""
    values = {"wall_build_up": 35, "hoop_diameter": 8, "inside_mesh_thickness": 5, "outside_mesh_thickness": 4}
    assert shown("wall_build_up_at_lap", values) == "43"
    assert read_wrong("laps_all_on_one_line", values, "wall_build_up_at_lap") == 52


def test_a_lap_of_a_lath_plasterer_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match=r"mesh_lap = 0.05 .*licensed engineer"):
        BOOK.evaluate({"ring_length": 9.84, "mesh_lap": 0.05}, ["mesh_turns_length"])


def test_wire_too_dense_for_mortar_is_refused() -> None:
    values = {"mesh_steel_area": 1000, "mesh_layers_inside": 2, "mesh_layers_outside": 2, "wall_thickness": 40}
    with pytest.raises(OutOfRangeError, match="volume_fraction = 20 %"):
        BOOK.evaluate(values, ["volume_fraction"])


@given(values=givens(*STRIPS))
def test_strips_reach_the_top_and_one_fewer_would_not(values: dict[str, float]) -> None:
    found = BOOK.evaluate(values, ["mesh_rows"])
    rows, gain = found["mesh_rows"], values["mesh_roll_width"] - values["mesh_lap"]
    assert rows * gain + values["mesh_lap"] >= values["wall_height"] - 1e-6
    assert rows == 1 or (rows - 1) * gain + values["mesh_lap"] < values["wall_height"]


@given(values=givens(*STRIPS))
def test_rolls_are_enough_and_a_piece_fits_its_roll(values: dict[str, float]) -> None:
    found = BOOK.evaluate(values, ["mesh_rolls", "mesh_area", "mesh_wall_area"])
    piece = found["mesh_strip_length"] / found["mesh_pieces"]
    layers = values["mesh_layers_inside"] + values["mesh_layers_outside"]
    assert piece <= values["mesh_roll_length"] * (1 + 1e-8)
    from_one = int(values["mesh_roll_length"] / piece + 1e-8)
    assert found["mesh_rolls"] * from_one >= found["mesh_rows"] * layers * found["mesh_pieces"]
    assert found["mesh_area"] > found["mesh_wall_area"] * layers


@given(values=givens("mesh_wire_diameter", "mesh_wire_spacing"))
def test_mass_and_area_of_wire_are_the_same_steel(values: dict[str, float]) -> None:
    """Two ways of wire at 7850 kg/m3; the rule d x d / 162 is 0.12 % high."""
    found = BOOK.evaluate(values, ["mesh_mass_per_area", "mesh_steel_area"])
    assert found["mesh_mass_per_area"] == pytest.approx(2 * found["mesh_steel_area"] * 7850e-6, rel=0.0013)
    wires = 1000 / values["mesh_wire_spacing"]
    assert found["mesh_steel_area"] == pytest.approx(wires * pi * values["mesh_wire_diameter"] ** 2 / 4)
