"""Angles, bars and ties. Examples are lengths, masses and counts, worked by hand."""

import pytest
from hypothesis import given

from generator.calculations import BOOK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

BY_HAND: list[Example] = [
    ("angle_length", {"wall_height": 1.35, "angle_foot": 0.09}, "1.44"),  # 1.35 + 0.09
    ("angle_mass_per_metre", {"angle_leg": 40, "angle_thickness": 5}, "2.94"),  # 75 x 5 = 375 mm2; x 0.00785
    ("angle_total_length", {"angle_count": 13, "angle_length": 1.44}, "18.7"),  # 13 x 1.44 = 18.72
    ("angle_mass", {"angle_total_length": 18.72, "angle_mass_per_metre": 1.11}, "20.8"),  # 18.72 x 1.11 = 20.78
    ("bar_length", {"wall_height": 1.35, "bar_foot": 0.35, "bar_into_roof": 0.25}, "1.95"),  # the three together
    ("bar_total_length", {"bar_count": 26, "bar_length": 1.95}, "50.7"),  # 26 x 1.95
    ("bar_mass", {"bar_total_length": 50.7, "bar_mass_per_metre": 0.222}, "11.3"),  # 50.7 x 0.222 = 11.26
    ("steel_mass", {"angle_mass": 20.8, "bar_mass": 11.3, "hoop_mass": 41.2}, "73.3"),  # the three together
    ("tie_count", {"angle_count": 13, "bar_count": 26, "hoop_count": 14}, "546"),  # 39 x 14
    (
        "tying_wire_mass", {"tie_count": 546, "mesh_area": 44}, "3.5",
    ),  # 546 x 0.3 m = 164 m; 44 x 25 x 0.2 m = 220 m; 384 m at 9.2 g
]  # fmt: skip
TANK_PART = {"angle_thickness": 4.0, "angle_foot": 0.09, "bar_foot": 0.35, "bar_into_roof": 0.15}
FRAME = (
    "inside_diameter", "mesh_cover", "inside_mesh_thickness", "bar_diameter", "angle_spacing_limit",
    "bar_spacing_limit", "wall_height", "hoop_spacing", "angle_leg", "angle_thickness", "angle_foot", "bar_foot",
    "bar_into_roof", "hoop_diameter", "lap_diameters", "stock_length", "mesh_lap", "mesh_roll_width",
    "mesh_roll_length",
    "mesh_layers_inside", "mesh_layers_outside",
)  # fmt: skip


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


def test_an_upright_without_a_foot_stands_on_the_base_like_a_bottle() -> None:
    assert read_wrong("angle_foot_forgotten", {"wall_height": 1.35, "angle_foot": 0.09}, "angle_length") == 1.35
    values = {"wall_height": 1.35, "bar_foot": 0.35, "bar_into_roof": 0.25}
    assert read_wrong("bar_foot_forgotten", values, "bar_length") == pytest.approx(1.6)


def test_an_angle_is_two_legs_and_one_corner() -> None:
    """Derived: 40 x 40 x 5 is 2.94 kg/m; a flat bar of 40 x 5 is 1.57, two of them 3.14."""
    values = {"angle_leg": 40, "angle_thickness": 5}
    assert read_wrong("angle_weighed_as_flat_bar", values, "angle_mass_per_metre") == pytest.approx(1.57)
    assert read_wrong("angle_corner_counted_twice", values, "angle_mass_per_metre") == pytest.approx(3.14)


def test_wire_by_the_tonne_runs_out() -> None:
    """Derived: 73.3 kg of steel would get 0.81 kg, and the cage takes 3.5 kg."""
    values = {"tie_count": 546, "mesh_area": 44, "steel_mass": 73.3}
    assert read_wrong("wire_by_the_tonne_of_steel", values, "tying_wire_mass") == pytest.approx(0.806, abs=0.001)
    assert read_wrong("mesh_ties_forgotten", values, "tying_wire_mass") == pytest.approx(1.507, abs=0.001)


def test_uprights_and_hoops_cross_they_do_not_add_up() -> None:
    values = {"angle_count": 13, "bar_count": 26, "hoop_count": 14}
    assert read_wrong("ties_added_not_multiplied", values, "tie_count") == 53
    assert read_wrong("ties_on_bars_only", values, "tie_count") == 364


@pytest.mark.parametrize(
    ("name", "values"),
    [
        ("angle_length", {"wall_height": 1.35, "angle_foot": 0.02}),
        ("bar_length", {"wall_height": 1.35, "bar_foot": 0.0, "bar_into_roof": 0.1}),
    ],
)
def test_a_foot_too_short_to_hold_is_refused(name: str, values: dict[str, float]) -> None:
    with pytest.raises(OutOfRangeError, match=r"_foot = .* is outside .*licensed engineer"):
        BOOK.evaluate(values, [name])


@given(values=givens(*FRAME))
def test_the_whole_weighs_what_its_parts_weigh(values: dict[str, float]) -> None:
    found = BOOK.work_out(values, ["steel_mass", "tying_wire_mass"], check=False)
    by_hand = (
        found["angle_count"] * (values["wall_height"] + values["angle_foot"]) * found["angle_mass_per_metre"]
        + found["bar_count"] * found["bar_length"] * found["bar_mass_per_metre"]
        + found["hoop_mass"]
    )
    assert found["steel_mass"] == pytest.approx(by_hand)
    assert found["tie_count"] == (found["angle_count"] + found["bar_count"]) * found["hoop_count"]
    assert found["tying_wire_mass"] > 0.0091 * 0.3 * found["tie_count"]


@given(values=givens(*FRAME))
def test_longer_feet_never_weigh_less(values: dict[str, float]) -> None:
    more = {**values, "angle_foot": 0.3, "bar_foot": 0.8}
    one, other = (BOOK.work_out(v, ["steel_mass"], check=False)["steel_mass"] for v in (values, more))
    assert other >= one
