"""Circles of a round tank. Examples are geometry, worked by hand for an inside diameter of 2.60 m."""

from math import pi

import pytest
from hypothesis import given

from generator.calculations import BOOK
from tests.calculations.worked import Example, givens, read_wrong, shown

STEEL = {"mesh_cover": 5.0, "inside_mesh_thickness": 6.0, "bar_diameter": 6.0}
BY_HAND: list[Example] = [
    ("inside_radius", {"inside_diameter": 2.6}, "1.300"),  # half
    ("frame_diameter", {"inside_diameter": 2.6, **STEEL}, "2.628"),  # 2600 + 2 x (5 + 6) + 6 = 2628 mm
    ("frame_radius", {"frame_diameter": 2.628}, "1.314"),  # half
    ("ring_length", {"frame_diameter": 2.6}, "8.168"),  # 22/7 gives 8.171; 3.1416 x 2.6 = 8.168
    ("outside_diameter", {"inside_diameter": 2.6, "wall_thickness": 60}, "2.720"),  # 2600 + 60 + 60
    ("base_diameter", {"outside_diameter": 2.72, "base_projection": 0.3}, "3.32"),  # 2.72 + 0.30 + 0.30
]
CIRCLE = ("inside_diameter", *STEEL)


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


def test_three_times_across_is_37_cm_short() -> None:
    """Derived: 7.80 for 8.17 m."""
    assert read_wrong("ring_as_three_diameters", {"frame_diameter": 2.6}, "ring_length") == pytest.approx(7.80)


@given(values=givens(*CIRCLE))
def test_the_frame_ring_lies_outside_the_water_by_cover_mesh_and_half_a_bar(values: dict[str, float]) -> None:
    found = BOOK.evaluate(values, ["frame_radius", "inside_radius"])
    layers = values["mesh_cover"] + values["inside_mesh_thickness"] + values["bar_diameter"] / 2
    assert found["frame_radius"] - found["inside_radius"] == pytest.approx(layers / 1000, abs=1e-12)


@given(values=givens(*CIRCLE))
def test_a_rope_round_the_ring_cut_in_pi_is_the_way_across(values: dict[str, float]) -> None:
    found = BOOK.evaluate(values, ["ring_length"])
    assert found["ring_length"] / pi == pytest.approx(found["frame_diameter"])
