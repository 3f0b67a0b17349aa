"""Circular Concrete Tanks Without Prestressing, Portland Cement Association, 1993: fixed foot, free top.

Ring tension: Table A-1 (page A-2), rows 0.4, 0.8, 1.6 and 2.0 read in print; the other rows, moments and shears are
from memory and were checked against an independent solution. The print has three figures; the printed table and the
exact solution differ by up to 0.006 (ring), 0.0015 (moment, rows up to 0.8), 0.0006 (moment) and 0.002 (shear).
"""

import numpy as np
import pytest

from generator.calculations.shell import foot_moment, foot_shear, wall_forces

RING_READ_IN_PRINT = {
    0.4: [0.149, 0.134, 0.120, 0.101, 0.082, 0.066, 0.049, 0.029, 0.014, 0.004],
    0.8: [0.263, 0.239, 0.215, 0.190, 0.160, 0.130, 0.096, 0.063, 0.034, 0.010],
    1.6: [0.265, 0.268, 0.268, 0.266, 0.250, 0.226, 0.185, 0.134, 0.075, 0.023],
    2.0: [0.234, 0.251, 0.273, 0.285, 0.285, 0.274, 0.232, 0.172, 0.104, 0.031],
}
RING_FROM_MEMORY = {
    4.0: [0.067, 0.164, 0.256, 0.339, 0.403, 0.429, 0.409, 0.334, 0.210, 0.073],
    6.0: [0.018, 0.119, 0.234, 0.344, 0.441, 0.504, 0.514, 0.447, 0.301, 0.112],
    8.0: [-0.011, 0.104, 0.218, 0.335, 0.443, 0.534, 0.575, 0.530, 0.381, 0.151],
    12.0: [-0.005, 0.097, 0.202, 0.312, 0.429, 0.543, 0.628, 0.633, 0.494, 0.211],
    16.0: [0.000, 0.099, 0.199, 0.304, 0.412, 0.531, 0.641, 0.687, 0.582, 0.265],
}
MOMENT_FROM_MEMORY = {
    0.8: [0.0011, 0.0037, 0.0063, 0.0080, 0.0070, 0.0023, -0.0068, -0.0224, -0.0465, -0.0795],
    1.6: [0.0011, 0.0041, 0.0075, 0.0107, 0.0121, 0.0111, 0.0058, -0.0051, -0.0232, -0.0505],
    2.0: [0.0010, 0.0035, 0.0068, 0.0099, 0.0120, 0.0115, 0.0075, -0.0021, -0.0185, -0.0436],
    4.0: [0.0003, 0.0015, 0.0028, 0.0047, 0.0066, 0.0077, 0.0069, 0.0023, -0.0080, -0.0268],
    6.0: [0.0001, 0.0003, 0.0008, 0.0019, 0.0032, 0.0046, 0.0051, 0.0029, -0.0041, -0.0187],
    8.0: [0.0000, 0.0001, 0.0002, 0.0008, 0.0016, 0.0028, 0.0038, 0.0029, -0.0022, -0.0146],
    12.0: [0.0000, -0.0001, 0.0001, 0.0002, 0.0003, 0.0013, 0.0023, 0.0026, -0.0005, -0.0104],
    16.0: [0.0000, 0.0000, -0.0001, -0.0002, -0.0001, 0.0004, 0.0013, 0.0019, 0.0001, -0.0079],
}
SHEAR_FROM_MEMORY = {
    0.8: 0.374, 1.6: 0.317, 2.0: 0.299, 4.0: 0.236, 6.0: 0.197, 8.0: 0.174, 12.0: 0.145, 16.0: 0.127,
}  # fmt: skip
SUSPECTED_SLIP = (6.0, 0)
"""The top of row 6 prints .018; the exact solution gives .003."""


@pytest.mark.parametrize("shape", [*RING_READ_IN_PRINT, *RING_FROM_MEMORY])
def test_ring_tension_of_a_fixed_foot(shape: float) -> None:
    printed = np.array({**RING_READ_IN_PRINT, **RING_FROM_MEMORY}[shape])
    difference = np.abs(wall_forces(shape, np.arange(10) / 10, "fixed").ring - printed)
    if shape == SUSPECTED_SLIP[0]:
        difference[SUSPECTED_SLIP[1]] = 0
    assert difference.max() <= 0.006


@pytest.mark.parametrize("shape", MOMENT_FROM_MEMORY)
def test_moment_of_a_fixed_foot(shape: float) -> None:
    found = wall_forces(shape, np.arange(1, 11) / 10, "fixed").moment
    assert np.abs(found - MOMENT_FROM_MEMORY[shape]).max() <= (0.0015 if shape < 1 else 0.00065)


@pytest.mark.parametrize("shape", SHEAR_FROM_MEMORY)
def test_outward_push_of_a_fixed_foot(shape: float) -> None:
    assert foot_shear(shape) == pytest.approx(SHEAR_FROM_MEMORY[shape], abs=0.002)


# ------------------------------------------------ derived beside the print: high walls, hinged feet, closed forms

HIGH_WALLS = {
    20.0: ([0.711, 0.646, 0.513, 0.319, 0.110], 0.722, 0.716, 0.00647, 0.1140),
    32.0: ([0.779, 0.763, 0.659, 0.447, 0.168], 0.782, 0.764, 0.00416, 0.0914),
    40.0: ([0.792, 0.802, 0.724, 0.515, 0.203], 0.806, 0.784, 0.00337, 0.0821),
    56.0: ([0.789, 0.837, 0.807, 0.623, 0.267], 0.840, 0.812, 0.00244, 0.0699),
    80.0: ([0.772, 0.842, 0.867, 0.735, 0.350], 0.870, 0.839, 0.00173, 0.0588),
}
"""Derived with another solver, fixed foot: ring at .75 to .95, the largest and its depth, foot moment, foot push."""
HIGH_WALLS_RECALLED = {
    20.0: [0.716, 0.654, 0.520, 0.325, 0.115],
    32.0: [0.782, 0.768, 0.663, 0.459, 0.182],
    40.0: [0.800, 0.805, 0.731, 0.530, 0.217],
    56.0: [0.763, 0.838, 0.824, 0.636, 0.285],
}
"""From memory, the supplement of the same tables: not to be reproduced, see the test."""
HINGED = {
    4.0: ([0.017, 0.136, 0.254, 0.367, 0.468, 0.545, 0.579, 0.552, 0.446, 0.255], 0.136),
    8.0: ([-0.015, 0.095, 0.207, 0.324, 0.445, 0.564, 0.662, 0.699, 0.622, 0.385], 0.096),
}
"""Derived with another solver: ring from the surface to 0.9, and the push of the foot."""
NEAR_THE_FOOT = np.array([0.75, 0.80, 0.85, 0.90, 0.95])


@pytest.mark.parametrize("shape", HIGH_WALLS)
def test_high_walls_with_a_fixed_foot(shape: float) -> None:
    ring, largest, depth, moment, push = HIGH_WALLS[shape]
    assert wall_forces(shape, NEAR_THE_FOOT, "fixed").ring == pytest.approx(ring, abs=0.00051)
    levels = np.linspace(0, 1, 4001)
    fine = wall_forces(shape, levels, "fixed").ring
    assert (fine.max(), levels[int(fine.argmax())]) == pytest.approx((largest, depth), abs=0.001)
    assert foot_moment(shape) == pytest.approx(moment, abs=0.0000051)
    assert foot_shear(shape) == pytest.approx(push, abs=0.000051)


@pytest.mark.parametrize("shape", HIGH_WALLS_RECALLED)
def test_recalled_rows_of_high_walls_lie_over_the_solution_near_the_foot(shape: float) -> None:
    """Up to .018 too high at .80 to .95, which is safe; .763 at .75 of row 56 is .026 too low: a slip to reject."""
    over = np.array(HIGH_WALLS_RECALLED[shape]) - wall_forces(shape, NEAR_THE_FOOT, "fixed").ring
    assert over[1:].min() > 0
    assert over[1:].max() <= 0.0185
    if shape == 56.0:
        assert over[0] == pytest.approx(-0.026, abs=0.001)
    else:
        assert 0 < over[0] <= 0.009


@pytest.mark.parametrize("shape", HINGED)
def test_walls_with_a_hinged_foot(shape: float) -> None:
    ring, push = HINGED[shape]
    found = wall_forces(shape, np.arange(10) / 10, "hinged")
    assert found.ring == pytest.approx(ring, abs=0.00051)
    assert found.shear_at_foot == pytest.approx(push, abs=0.00051)


def test_the_suspected_slip_of_row_6_is_not_reproduced() -> None:
    """Prints .018 at the surface; two solvers give .003."""
    assert wall_forces(6.0, np.array([0.0]), "fixed").ring[0] == pytest.approx(0.003, abs=0.0005)


@pytest.mark.parametrize(("shape", "error"), [(0.8, 0.09), (2.0, 0.043), (3.0, 0.016), (4.0, 0.005), (16.0, 0.0001)])
def test_the_closed_form_of_a_long_wall_holds_from_shape_3_on(shape: float, error: float) -> None:
    """Theory of Plates and Shells, section 117 (second hand); how far it goes wrong is derived."""
    b = (12 * 0.96 * shape**2) ** 0.25
    moment = (1 - 1 / b) / (2 * shape * (12 * 0.96) ** 0.5)
    off = abs(moment / foot_moment(shape) - 1)
    assert off <= error
    if shape < 3:
        assert off > 0.8 * error


@pytest.mark.parametrize(("shape", "foot", "over"), [
    (8.0, "fixed", 0.045), (40.0, "fixed", 0.043), (100.0, "fixed", 0.043), (0.8, "fixed", 0.265),
    (8.0, "hinged", 0.068), (40.0, "hinged", 0.067), (100.0, "hinged", 0.067),
])  # fmt: skip
def test_depth_times_radius_is_no_safe_bound_level_by_level(shape: float, foot: str, over: float) -> None:
    """Derived: a held wall passes it by so much of the free foot's tension; at shape 0.8 right at the surface."""
    levels = np.linspace(0, 1, 2001)
    found = wall_forces(shape, levels, foot).ring - levels  # type: ignore[arg-type]
    assert found.max() == pytest.approx(over, abs=0.0006)
