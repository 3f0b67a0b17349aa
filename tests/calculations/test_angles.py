"""Angles: the derived mass decides, the recalled one warns, and small tanks need none."""

from math import pi

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations import BOOK
from generator.calculations.angles import ANGLES, EqualAngle, angle_for, equal_angles, foot_depth, mass_in_doubt
from generator.formula import OutOfRangeError, Status

some_angles = st.builds(EqualAngle, st.integers(20, 65), st.integers(3, 8))


@pytest.mark.parametrize(("angle", "recalled"), ANGLES)
def test_the_recalled_table_agrees_with_the_derived_mass(angle: EqualAngle, recalled: float) -> None:
    assert not mass_in_doubt(angle, recalled)
    assert ANGLES[0][1].source.status is Status.FROM_MEMORY


def test_half_an_angle_and_a_number_that_is_none_are_in_doubt() -> None:
    angle = EqualAngle(35, 5)
    assert mass_in_doubt(angle, angle.mass / 2)
    assert mass_in_doubt(angle, float("nan"))


@given(some_angles)
def test_the_table_and_the_learner_s_formula_are_one(angle: EqualAngle) -> None:
    values = {"angle_leg": angle.leg, "angle_thickness": angle.thickness}
    assert BOOK.evaluate(values, ["angle_mass_per_metre"])["angle_mass_per_metre"] == pytest.approx(angle.mass)


@pytest.mark.parametrize("size", [(25.0, 3.0), (40.0, 5.0), (65.0, 6.0)])
def test_stiffness_by_a_sum_over_thin_slices(size: tuple[float, float]) -> None:
    leg, thick = size
    y = (np.arange(200_000) + 0.5) * leg / 200_000
    width = np.where(y < thick, leg, thick)
    middle = (width * y).sum() / width.sum()
    assert EqualAngle(leg, thick).stiffness == pytest.approx(
        (width * (y - middle) ** 2).sum() * leg / 200_000, rel=1e-4
    )


@pytest.mark.parametrize(("leg", "thickness"), [(25, 13), (25, 0), (float("nan"), 3), (-30, 3)])
def test_what_is_no_angle_is_refused(leg: float, thickness: float) -> None:
    with pytest.raises(OutOfRangeError, match="is no angle"):
        EqualAngle(leg, thickness)


@pytest.mark.parametrize(
    ("diameter", "height", "leg"), [(1.5, 1.25, None), (2.9, 1.7, 25), (4.2, 2.02, 30), (5.7, 2.17, 30), (1.2, 1.9, 25)]
)
def test_angles_of_whole_tanks(diameter: float, height: float, leg: float | None) -> None:
    """Tanks of about 2, 10, 25 and 50 m3, the smallest of them without angles; and a narrow, tall one."""
    choice = angle_for(diameter, height)
    assert (choice.leg if choice else None) == leg


@given(st.floats(0.6, 8.0), st.floats(0.4, 2.4))
def test_every_tank_of_the_course_gets_an_angle_or_none_and_small_ones_none(diameter: float, height: float) -> None:
    choice = angle_for(diameter, height)
    if choice is None:
        assert pi / 4 * diameter**2 * height <= 5 + 1e-6
        assert height <= 1.5 + 1e-6
    else:
        assert choice.leg * 80 >= height * 1000 - 1e-6
        assert 0.05 <= choice.foot <= 0.15
        assert 25 <= choice.leg <= 65
        assert 3 <= choice.thickness <= 8


@pytest.mark.parametrize(("diameter", "height"), [(9.0, 2.0), (4.0, 2.6), (0.0, 1.5), (float("nan"), 1.5)])
def test_a_tank_outside_the_course_is_refused(diameter: float, height: float) -> None:
    with pytest.raises(OutOfRangeError, match="licensed engineer"):
        angle_for(diameter, height)


def test_a_foot_never_goes_through_the_base() -> None:
    for thickness in range(100, 400, 7):
        assert thickness / 1000 - foot_depth(thickness) >= 0.05 - 1e-9
    with pytest.raises(OutOfRangeError, match="thicken the edge"):
        foot_depth(90)


@given(some_angles, st.lists(some_angles, max_size=6))
def test_a_stand_in_is_as_stiff_and_as_thick_and_the_lightest_stands_first(
    wanted: EqualAngle, sold: list[EqualAngle]
) -> None:
    found = equal_angles(wanted, sold)
    assert all(angle.stiffness >= wanted.stiffness - 1e-6 and angle.thickness >= wanted.thickness for angle in found)
    assert [angle.mass for angle in found] == sorted(angle.mass for angle in found)
    assert wanted in equal_angles(wanted, [*sold, wanted])
