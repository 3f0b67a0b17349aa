"""Domes and cones: sums by hand, a ring that is left out, and a dome cut into rings and added up."""

from math import acos, cos, pi, sin

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations import BOOK
from generator.calculations.shell_roof import dome_forces, edge_slope
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

TANK_PART = {"roof_rise_parts": 7.0}
BY_HAND: list[Example] = [
    ("roof_rise", {"inside_diameter": 4, "roof_rise_parts": 8}, "0.50"),  # 4 / 8
    ("dome_sphere_radius", {"inside_radius": 2, "roof_rise": 0.5}, "4.25"),  # (4 + 0.25) / 1
    ("dome_area", {"inside_radius": 2, "roof_rise": 0.5}, "13.35"),  # 3.1416 x 4.25 = 13.352
    ("dome_weight", {"dome_area": 10, "roof_thickness": 50, "roof_live_load": 1, "inside_radius": 1},
     "15.1"),  # 1.2 x 10 + 3.14
    ("dome_edge_pull", {"dome_weight": 20, "dome_sphere_radius": 4.25, "roof_rise": 0.5, "inside_radius": 2},
     "5.97"),  # 20 x 3.75 / 2 = 37.5; 37.5 / 6.2832
    ("dome_ring_steel", {"dome_edge_pull": 11.5, "steel_working_stress": 115}, "100.0"),  # 11 500 / 115
    ("cone_slope_length", {"inside_radius": 1.2, "roof_rise": 0.5}, "1.30"),  # 1.44 + 0.25 = 1.69 = 1.3 x 1.3
    ("cone_area", {"inside_radius": 1.2, "cone_slope_length": 1.3}, "4.90"),  # 3.1416 x 1.56 = 4.901
    ("cone_weight", {"cone_area": 5, "roof_thickness": 40, "roof_live_load": 0.75, "inside_radius": 1.2},
     "8.2"),  # 0.96 x 5 + 0.75 x 4.524 = 4.80 + 3.39
    ("cone_edge_pull", {"cone_weight": 8.2, "inside_radius": 1.2, "roof_rise": 0.5}, "3.13"),  # 9.84 / 3.1416
    ("cone_ring_steel", {"cone_edge_pull": 2.3, "steel_working_stress": 115}, "20.0"),  # 2300 / 115
]  # fmt: skip


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


WRONG = [
    ("rise_from_radius", {"inside_radius": 2, "inside_diameter": 4, "roof_rise_parts": 8}, "roof_rise", 0.25),
    ("rise_part_read_as_hundredths", {"inside_diameter": 4, "roof_rise_parts": 8}, "roof_rise", 0.32),  # 4 x 8 / 100
    ("dome_area_as_flat", {"inside_radius": 2, "roof_rise": 0.5}, "dome_area", 12.566),  # 3.1416 x 4
    ("dome_pull_as_cone", {"dome_weight": 20, "inside_radius": 2, "roof_rise": 0.5, "dome_sphere_radius": 4.25},
     "dome_edge_pull", 12.732),  # 20 x 2 / 3.1416
    ("edge_ring_left_to_the_wall", {"cone_weight": 8.2, "inside_radius": 1.2, "roof_rise": 0.5},
     "cone_edge_pull", 1.305),  # 8.2 / 6.2832
    ("cone_slope_as_radius", {"inside_radius": 1.2, "roof_rise": 0.5}, "cone_slope_length", 1.2),
    ("dome_live_load_forgotten",
     {"dome_area": 10, "roof_thickness": 50, "roof_live_load": 1, "inside_radius": 1}, "dome_weight", 12.0),
    ("dome_string_as_long_as_the_radius", {"inside_radius": 2, "roof_rise": 0.5}, "dome_sphere_radius", 2.0),
    ("dome_ring_halved_between_two_sides", {"dome_edge_pull": 11.5, "steel_working_stress": 115},
     "dome_ring_steel", 50.0),
    ("cone_area_as_flat", {"inside_radius": 1.2, "cone_slope_length": 1.3}, "cone_area", 4.524),  # 3.1416 x 1.44
    ("cone_live_load_forgotten",
     {"cone_area": 5, "roof_thickness": 40, "roof_live_load": 0.75, "inside_radius": 1.2}, "cone_weight", 4.8),
    ("cone_ring_taken_from_a_dome", {"cone_edge_pull": 4.6, "dome_edge_pull": 2.3, "steel_working_stress": 115},
     "cone_ring_steel", 20.0),
]  # fmt: skip


@pytest.mark.parametrize(("mistake", "values", "asked", "answer"), WRONG)
def test_what_someone_with_a_wrong_idea_answers(
    mistake: str, values: dict[str, float], asked: str, answer: float
) -> None:
    assert read_wrong(mistake, values, asked) == pytest.approx(answer, rel=1e-3)


def test_a_dome_flatter_or_higher_than_the_course_s_is_refused() -> None:
    for parts in (4, 11):
        with pytest.raises(OutOfRangeError, match=r"roof_rise_parts.*licensed engineer"):
            BOOK.evaluate({"inside_diameter": 4, "roof_rise_parts": parts}, ["roof_rise"])
    for slope in (-0.1, 1.6):
        with pytest.raises(OutOfRangeError, match="licensed engineer"):
            dome_forces(0.84, 2.7, slope)
    for rise in (0, 1.6):
        with pytest.raises(OutOfRangeError, match="licensed engineer"):
            edge_slope(1.5, rise)


@given(values=givens("inside_diameter", "roof_rise_parts", "roof_thickness", "roof_live_load"))
def test_a_cone_pulls_more_than_a_dome_and_a_flatter_roof_more_than_a_high_one(values: dict[str, float]) -> None:
    asked = ["dome_edge_pull", "cone_edge_pull", "dome_area", "cone_area"]
    high = BOOK.evaluate({**values, "roof_rise_parts": min(values["roof_rise_parts"], 9)}, asked)
    flat = BOOK.evaluate({**values, "roof_rise_parts": min(values["roof_rise_parts"], 9) + 1}, asked)
    assert high["cone_edge_pull"] > high["dome_edge_pull"]
    assert flat["dome_edge_pull"] > high["dome_edge_pull"]
    assert flat["cone_edge_pull"] > high["cone_edge_pull"]
    assert high["dome_area"] > high["cone_area"] > pi * values["inside_diameter"] ** 2 / 4


@given(radius=st.floats(0.3, 4.0), parts=st.floats(5, 10))
def test_the_dome_s_area_and_edge_pull_by_rings_added_up(radius: float, parts: float) -> None:
    """Independent: the cap as 20 000 rings; the edge pull from the force down the slope, N cos(slope) radius."""
    rise = 2 * radius / parts
    sphere = BOOK.quantities["dome_sphere_radius"].function(radius, rise)
    slope = edge_slope(radius, rise)
    assert sphere * sin(slope) == pytest.approx(radius)
    angles = (np.arange(20_000) + 0.5) * slope / 20_000
    area = float(np.sum(2 * pi * sphere**2 * np.sin(angles)) * slope / 20_000)
    assert BOOK.quantities["dome_area"].function(radius, rise) == pytest.approx(area, rel=1e-6)
    down, round_it = dome_forces(1.0, sphere, slope)
    pull = BOOK.quantities["dome_edge_pull"].function(area, sphere, rise, radius)
    assert pull == pytest.approx(down * cos(slope) * radius, rel=1e-6)
    assert round_it > 0, "a dome of this rise is pressed all over"


def test_a_dome_steeper_than_51_8_degrees_is_pulled_round_its_edge() -> None:
    """Derived: cos x = 1 / (1 + cos x), so cos x = (sqrt(5) - 1) / 2."""
    turn = acos((5**0.5 - 1) / 2)
    assert turn * 180 / pi == pytest.approx(51.83, abs=0.01)
    assert dome_forces(1, 1, turn)[1] == pytest.approx(0, abs=1e-12)
    assert edge_slope(1.0, 1.0) == pytest.approx(pi / 2)
    assert edge_slope(1.0, 2 / 5) < turn, "the highest rise of the course"
