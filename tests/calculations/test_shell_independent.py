"""The wall's shell held to another way of solving it: four first-order equations, stepped by scipy, for both feet.

D w'''' + (E t / R^2) w = water weight x (H - x), x up from the foot. With height, water weight and radius 1, w for the
ring tension and b^4 = 12 (1 - nu^2) K^2, the height stretched to s = b x: w'''' = 4 (1 - s / b - w).
"""

from functools import cache

import numpy as np
import pytest
from scipy.integrate import solve_bvp

from generator.calculations import shell
from generator.calculations.shell import Foot, deepest_ring, foot_moment, foot_shear, ring_envelope, wall_forces
from generator.formula import OutOfRangeError

SHAPES = [0.4, 1.6, 4.0, 9.0, 20.0, 60.0, 140.0, 270.0]


@cache
def solved(shape: float, foot: str) -> tuple[np.ndarray, np.ndarray, np.ndarray, float]:
    """Places up from the foot, ring, moment and push of the foot."""
    b = (12 * (1 - 0.2**2) * shape**2) ** 0.25

    def equations(s, y):  # type: ignore[no-untyped-def]
        return np.vstack([y[1], y[2], y[3], 4 * (1 - s / b - y[0])])

    def ends(a, b):  # type: ignore[no-untyped-def]
        return np.array([a[0], a[1] if foot == "fixed" else a[2], b[2], b[3]])

    s = np.linspace(0, b, 1000)
    found = solve_bvp(equations, ends, s, np.zeros((4, s.size)), tol=1e-8, max_nodes=20_000)
    assert found.success
    y = found.sol(s)
    return s / b, y[0], -y[2] / (4 * b**2), float(-y[3][0] / (4 * b))


@pytest.mark.parametrize("foot", ["fixed", "hinged"])
@pytest.mark.parametrize("shape", SHAPES)
def test_a_wall_agrees_with_a_numerical_solution_within_a_ten_thousandth_of_its_peak(shape: float, foot: Foot) -> None:
    x, ring, moment, push = solved(shape, foot)
    forces = wall_forces(shape, 1 - x, foot)
    assert np.abs(forces.ring - ring).max() <= 1e-4 * np.abs(ring).max()
    assert np.abs(forces.moment - moment).max() <= 1e-4 * np.abs(moment).max()
    assert forces.shear_at_foot == pytest.approx(abs(push), rel=1e-4)


@pytest.mark.parametrize("shape", SHAPES)
def test_what_is_read_off_the_wall_is_the_larger_foot_and_the_fixed_foot(shape: float) -> None:
    x, fixed, moment, push = solved(shape, "fixed")
    hinged = solved(shape, "hinged")[1]
    larger = np.maximum(fixed, hinged)
    assert np.abs(ring_envelope(shape, 1 - x) - larger).max() <= 1e-4 * larger.max()
    assert foot_moment(shape) == pytest.approx(-moment[0], rel=1e-4)
    assert foot_shear(shape) == pytest.approx(abs(push), rel=1e-4)
    assert deepest_ring(shape)[0] == pytest.approx(larger.max(), rel=2e-4)


@pytest.mark.parametrize("foot", ["free", "hinged", "fixed"])
@pytest.mark.parametrize("shape", SHAPES)
def test_the_water_s_whole_push_goes_into_the_hoops_and_the_foot(shape: float, foot: Foot) -> None:
    """Statics: along one upright strip the push of the water, 1/2, is what rings and foot hold together."""
    x = np.linspace(0, 1, 8001)
    forces = wall_forces(shape, x, foot)
    assert np.trapezoid(forces.ring, x) + forces.shear_at_foot == pytest.approx(0.5, abs=1e-6)


@pytest.mark.parametrize("shape", SHAPES)
def test_turning_about_the_foot_balances(shape: float) -> None:
    """Statics: water turns the strip by 1/6, the rings turn it back, the fixed foot holds the rest."""
    x = np.linspace(0, 1, 8001)
    for foot in ("hinged", "fixed"):
        forces = wall_forces(shape, 1 - x, foot)  # type: ignore[arg-type]
        assert np.trapezoid(forces.ring * x, x) - forces.moment[0] == pytest.approx(1 / 6, abs=1e-6)


def test_without_sideways_squeeze_the_print_would_not_come_out(monkeypatch: pytest.MonkeyPatch) -> None:
    """Poisson's ratio 0.2 gives Table A-1 (row 1.6) within 0.006; 0 does not give its foot moment .0505."""
    assert foot_moment(1.6) == pytest.approx(0.0505, abs=0.0006)
    monkeypatch.setattr(shell, "POISSON", 0.0)
    assert abs(foot_moment(1.6) - 0.0505) > 0.0006


@pytest.mark.parametrize("shape", [0.049, 401.0, float("nan")])
def test_a_shape_that_is_not_solved_is_refused(shape: float) -> None:
    with pytest.raises(OutOfRangeError, match="licensed engineer"):
        wall_forces(shape, np.array([0.5]), "fixed")
