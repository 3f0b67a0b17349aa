"""Forces in a cylindrical tank wall full of water: ring tension, moment and shear at every level.

A wall that is held at its foot can't widen there: it bends, and the ring tension is lower near the foot and a little
higher further up than in a wall whose foot slides freely. How much depends on one number, K = H^2 / (D t).

Equation of a uniform wall, x up from the foot: D w'''' + (E t / R^2) w = weight of water x (H - x), with the ring
tension T = E t w / R. The modulus cancels. [1]_, [2]_

References:
    .. [1] Theory of Plates and Shells, section 117, equation 275 (read at second hand).
    .. [2] Circular Concrete Tanks Without Prestressing, Portland Cement Association, 1993, Table A-1: the solution here
       with Poisson's ratio 0.2 reproduces its ring tension within 0.006 (one cell excepted), see `tests/published`.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Literal

import numpy as np

from generator.formula import OutOfRangeError

Foot = Literal["free", "hinged", "fixed"]
POISSON = 0.2
"""Poisson's ratio of mortar; 0.2 reproduces the printed tables, 0 does not."""
LOWEST_SHAPE, HIGHEST_SHAPE = 0.05, 400.0

Array = np.ndarray[Any, np.dtype[np.float64]]


@dataclass(frozen=True, slots=True)
class WallForces:
    """Coefficients at each level asked for; depth is counted from the water surface.

    Args:
        depth: share of the water depth, 0 at the surface, 1 at the foot.
        ring: ring tension / (weight of water x depth of water x radius).
        moment: moment up the wall / (weight of water x depth of water^3); negative = tension on the water face.
        shear_at_foot: outward push of the foot / (weight of water x depth of water^2).
    """

    depth: Array
    ring: Array
    moment: Array
    shear_at_foot: float


def shape_number(water_depth: float, inside_diameter: float, wall_thickness: float) -> float:
    """K = H^2 / (D t), all in metres.

    Example:
        >>> round(shape_number(2.0, 2.5, 0.04), 6)
        40.0
    """
    return water_depth**2 / (inside_diameter * wall_thickness)


def wall_forces(shape: float, depths: Array, foot: Foot) -> WallForces:
    """Solution of a uniform wall with a free top.

    Args:
        shape: K = H^2 / (D t) [-], 0.05 to 400.
        depths: where to read, as shares of the water depth from the surface [-], 0 to 1.
        foot: `free` slides, `hinged` is held in place, `fixed` is held and can't turn.

    Raises:
        OutOfRangeError: a shape outside the range.

    Example:
        >>> forces = wall_forces(16.0, np.array([0.7]), "fixed")
        >>> round(float(forces.ring[0]), 3)
        0.689
    """
    if not LOWEST_SHAPE <= shape <= HIGHEST_SHAPE:
        raise OutOfRangeError(
            f"H^2 / (D t) = {shape:.4g} is outside {LOWEST_SHAPE:g} to {HIGHEST_SHAPE:g}; ask a licensed engineer"
        )
    depths = np.asarray(depths, dtype=float)
    if foot == "free":
        return WallForces(depths, depths.copy(), np.zeros_like(depths), 0.0)
    b = (12 * (1 - POISSON**2) * shape**2) ** 0.25
    # four terms that die away from the foot (x = 0) and from the top (x = 1): well conditioned for every shape
    turn = 1 if foot == "fixed" else 2
    rows = np.vstack([_terms(0.0, b, 0), _terms(0.0, b, turn), _terms(1.0, b, 2), _terms(1.0, b, 3)])
    right = np.array([-1.0, 1.0 / b if turn == 1 else 0.0, 0.0, 0.0])
    weights = np.linalg.solve(rows, right)
    x = 1 - depths
    ring = depths + weights @ _terms(x, b, 0)
    bending = weights @ _terms(x, b, 2) * b**2
    shear = float(_terms(0.0, b, 3) @ weights) * b**3
    return WallForces(depths, ring, -bending / (4 * b**4), -shear / (4 * b**4))


def _terms(x: float | Array, b: float, order: int) -> Array:
    """The four terms' derivatives of an order at x (a column for each x), divided by b^order to stay near 1."""
    root = complex(-1, 1)
    from_foot = root**order * np.exp(root * b * x)
    from_top = (-root) ** order * np.exp(root * b * (1 - x))
    return np.array([from_foot.real, from_foot.imag, from_top.real, from_top.imag])


def ring_envelope(shape: float, depths: Array) -> Array:
    """The larger of the hinged and the fixed foot at each level: a real joint lies between them.

    Args:
        shape: as in `wall_forces`.
        depths: as in `wall_forces`.
    """
    return np.maximum(wall_forces(shape, depths, "hinged").ring, wall_forces(shape, depths, "fixed").ring)


def foot_moment(shape: float) -> float:
    """Moment at a fixed foot / (weight of water x depth of water^3), as a positive number; tension on the water face.

    Example:
        >>> round(foot_moment(40.0), 5)
        0.00337
    """
    return -float(wall_forces(shape, np.array([1.0]), "fixed").moment[0])


def foot_shear(shape: float) -> float:
    """Outward push of a fixed foot / (weight of water x depth of water^2).

    Example:
        >>> round(foot_shear(40.0), 4)
        0.0821
    """
    return wall_forces(shape, np.array([1.0]), "fixed").shear_at_foot


def deepest_ring(shape: float) -> tuple[float, float]:
    """The largest ring coefficient of the envelope and the depth where it stands.

    Example:
        >>> value, depth = deepest_ring(40.0)
        >>> 0.8 < value < 0.95 and 0.7 < depth < 0.95
        True
    """
    depths = np.linspace(0, 1, 401)
    ring = ring_envelope(shape, depths)
    best = int(np.argmax(ring))
    return float(ring[best]), float(depths[best])
