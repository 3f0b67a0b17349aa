"""Wind and ground water: sums by hand, wrong ideas, and a body cut into slices and added up."""

from math import pi

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations import BOOK
from generator.calculations.stability import ROUND_BODY, UPLIFT_SAFETY_USUAL, WIND_SAFETY_USUAL
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, read_wrong, shown

TANK_PART = {"wind_pressure": 0.8, "ground_friction": 0.4, "ground_water_height": 0.5}
AFTER_PART = {"empty_weight"}
WARN_ONLY = {"wind_force", "overturning_safety", "sliding_safety"}
WARN_ONLY_VALUES = [ROUND_BODY, WIND_SAFETY_USUAL, UPLIFT_SAFETY_USUAL]
"""Wind and floating: no number of these decides that a tank is safe."""
BY_HAND: list[Example] = [
    ("empty_weight", {"wall_mortar_volume": 1.0, "base_concrete_volume": 1.5}, "60.0"),  # 24 x 2.5
    ("wind_force", {"wind_pressure": 1, "outside_diameter": 3, "wall_height": 2}, "4.80"),  # 0.8 x 1 x 3 x 2
    ("overturning_safety", {"empty_weight": 60, "base_diameter": 3.6, "wind_force": 4.8, "wall_height": 2},
     "22.5"),  # 60 x 1.8 = 108 against 4.8 x 1 = 4.8
    ("sliding_safety", {"empty_weight": 60, "ground_friction": 0.4, "wind_force": 4.8}, "5.0"),  # 24 / 4.8
    ("uplift_force",
     {"ground_water_height": 0.6, "base_diameter": 4, "outside_diameter": 3, "base_concrete_thickness": 200},
     "52.4"),  # 12.566 x 0.2 + 7.069 x 0.4 = 5.341 m3; x 9.81
    ("uplift_safety", {"empty_weight": 60, "uplift_force": 50}, "1.20"),  # 60 / 50
]  # fmt: skip


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


BODY = {"wall_mortar_volume": 1.0, "base_concrete_volume": 1.5, "tank_volume": 10.0}
SUNK = {"ground_water_height": 0.6, "base_diameter": 4.0, "outside_diameter": 3.0, "base_concrete_thickness": 200.0}
WIND = {"empty_weight": 60.0, "base_diameter": 3.6, "wind_force": 4.8, "wall_height": 2.0, "ground_friction": 0.4}
WRONG = [
    ("full_tank_stands_in_the_wind", BODY, "empty_weight", 158.1),  # 60 + 98.1
    ("only_the_wall_weighs", BODY, "empty_weight", 24.0),
    ("wind_on_the_whole_round", {"wind_pressure": 1, "outside_diameter": 3, "wall_height": 2}, "wind_force",
     15.08),  # 4.8 x 3.1416
    ("wind_tips_at_full_height", WIND, "overturning_safety", 11.25),
    ("slides_only_if_heavier_than_wind", WIND, "sliding_safety", 12.5),  # 60 / 4.8
    ("ground_water_from_the_floor", SUNK, "uplift_force", 27.74),  # 7.069 x 0.4 x 9.81
    ("uplift_of_the_base_alone", SUNK, "uplift_force", 24.66),  # 12.566 x 0.2 x 9.81
    ("floating_ratio_upside_down", {"empty_weight": 60, "uplift_force": 50}, "uplift_safety", 0.8333),
]  # fmt: skip


@pytest.mark.parametrize(("mistake", "values", "asked", "answer"), WRONG)
def test_what_someone_with_a_wrong_idea_answers(
    mistake: str, values: dict[str, float], asked: str, answer: float
) -> None:
    assert read_wrong(mistake, values, asked) == pytest.approx(answer, rel=1e-3)


def test_the_least_that_is_usual_only_warns() -> None:
    assert (float(WIND_SAFETY_USUAL), float(UPLIFT_SAFETY_USUAL), float(ROUND_BODY)) == (1.5, 1.2, 0.8)


def test_a_storm_beyond_the_course_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match=r"wind_pressure = 3 kN/m\*\*2 is outside 0\.3 to 2\.5.*engineer"):
        BOOK.evaluate({"wind_pressure": 3, "outside_diameter": 3, "wall_height": 2}, ["wind_force"])


@given(water=st.floats(0.05, 2.4), base=st.floats(1.0, 9.4), wall=st.floats(0.6, 8.2), thick=st.floats(75, 300))
def test_uplift_is_the_weight_of_the_slices_that_stand_in_the_water(
    water: float, base: float, wall: float, thick: float
) -> None:
    """Independent: 40 000 flat slices from the underside of the base up to the ground water."""
    heights = (np.arange(40_000) + 0.5) * water / 40_000
    across = np.where(heights < thick / 1000, base, wall)
    slices = float(np.sum(pi * across**2 / 4) * water / 40_000)
    assert BOOK.quantities["uplift_force"].function(water, base, wall, thick) == pytest.approx(9.81 * slices, rel=2e-3)


@given(pressure=st.floats(0.3, 2.5), width=st.floats(0.7, 8.2), height=st.floats(0.4, 2.4), weight=st.floats(1, 600))
def test_tipping_is_the_slices_turning_over_the_edge(
    pressure: float, width: float, height: float, weight: float
) -> None:
    """Independent: each slice of wind times its height, against the weight over half the base."""
    base = width + 0.4
    steps = (np.arange(2000) + 0.5) * height / 2000
    turning = float(np.sum(0.8 * pressure * width * steps) * height / 2000)
    force = BOOK.quantities["wind_force"].function(pressure, width, height)
    assert force == pytest.approx(0.8 * pressure * width * height)
    safety = BOOK.quantities["overturning_safety"].function(weight, base, force, height)
    assert safety == pytest.approx(weight * base / 2 / turning, rel=1e-6)


@given(water=st.floats(0.05, 2.2), thick=st.floats(75, 300))
def test_higher_ground_water_lifts_more(water: float, thick: float) -> None:
    lift = BOOK.quantities["uplift_force"].function
    assert lift(water + 0.1, 4.0, 3.0, thick) > lift(water, 4.0, 3.0, thick)
    assert lift(water, 4.2, 3.0, thick) > lift(water, 4.0, 3.0, thick)


@given(weight=st.floats(1, 600), friction=st.floats(0.3, 0.45), wind=st.floats(0.04, 40))
def test_a_heavier_tank_on_rougher_ground_in_less_wind_stands_better(
    weight: float, friction: float, wind: float
) -> None:
    slide, tip = (BOOK.quantities[name].function for name in ("sliding_safety", "overturning_safety"))
    assert slide(weight * 1.1, friction, wind) > slide(weight, friction, wind) > slide(weight, friction, wind * 1.1)
    assert slide(weight, friction + 0.05, wind) > slide(weight, friction, wind)
    assert tip(weight, 4.0, wind, 2.0) > tip(weight, 3.8, wind, 2.0) > tip(weight, 3.8, wind, 2.2)
