"""Round flat slabs: moments under an even load, with and without a column in the middle.

Statics of thin elastic plates; a moment per metre of width is given as a share of load x radius^2. The values say how
hard a flat roof is bent; whether a roof may be built is decided from them and the section's strength.

References:
    .. [1] Civil Engineering Handbook, 2nd ed., page 47-50, equations 47.72 to 47.76 (read in print).
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Literal

import numpy as np

from generator.formula import OutOfRangeError

Edge = Literal["hinged", "fixed"]
POISSON = 0.2
NARROWEST_HEAD, WIDEST_HEAD = 0.02, 0.35


def clamped_moments(radius_share: float) -> tuple[float, float]:
    """Radial and ring moment of a slab fixed at its edge, as shares of load x radius^2. Equation 47.72 of [1]_.

    Args:
        radius_share: distance from the middle / radius [-], 0 to 1.

    Example:
        >>> radial, ring = clamped_moments(1.0)
        >>> radial, round(ring, 6)
        (-0.125, -0.025)
    """
    square = radius_share**2
    return (1 + POISSON - square * (3 + POISSON)) / 16, (1 + POISSON - square * (1 + 3 * POISSON)) / 16


def hinged_moments(radius_share: float) -> tuple[float, float]:
    """Radial and ring moment of a slab that lies on its edge, as shares of load x radius^2. Equation 47.75 of [1]_.

    Args:
        radius_share: distance from the middle / radius [-], 0 to 1.

    Example:
        >>> hinged_moments(0.0)
        (0.2, 0.2)
    """
    square = radius_share**2
    return (3 + POISSON) * (1 - square) / 16, (3 + POISSON - square * (1 + 3 * POISSON)) / 16


@dataclass(frozen=True, slots=True)
class ColumnSlab:
    """A slab with a column in the middle, shares of load x radius^2.

    Args:
        column_load: load on the column, the area over its head included.
        head_moment: radial moment at the column head; negative = tension on **top**.
        edge_moment: radial moment at the outer edge.
        field_moment: largest radial moment between, tension below.
        field_at: where it stands, distance from the middle / radius.
    """

    column_load: float
    head_moment: float
    edge_moment: float
    field_moment: float
    field_at: float


@cache
def column_slab(head_share: float, edge: Edge) -> ColumnSlab:
    """Moments of a slab on a stiff round column head whose slab can't turn there.

    Args:
        head_share: column head diameter / slab diameter [-], 0.02 to 0.35.
        edge: how the wall holds the slab's outer edge.

    Raises:
        OutOfRangeError: a head outside the range.

    Example:
        >>> slab = column_slab(0.15, "fixed")
        >>> round(slab.column_load, 3), round(slab.head_moment, 4), round(slab.edge_moment, 4)
        (1.007, -0.1088, -0.049)
    """
    if not NARROWEST_HEAD <= head_share <= WIDEST_HEAD:
        raise OutOfRangeError(f"column head / slab = {head_share:.3g} is outside the range; ask a licensed engineer")
    # w = r^4/64 + A + B ln r + C r^2 + E r^2 ln r with load, stiffness and radius 1; r from the head's edge to 1
    b = head_share
    slope_at_head = [0, 1 / b, 2 * b, 2 * b * np.log(b) + b]
    level_at_head = [1, np.log(b), b**2, b**2 * np.log(b)]
    level_at_edge = [1.0, 0.0, 1.0, 0.0]
    last = [0.0, 1.0, 2.0, 1.0] if edge == "fixed" else list(_radial(1.0))
    last_load = 1 / 16 if edge == "fixed" else _radial_load(1.0)
    rows = np.array([slope_at_head, level_at_head, level_at_edge, last])
    weights = np.linalg.solve(rows, -np.array([b**3 / 16, b**4 / 64, 1 / 64, last_load]))
    places = np.linspace(b, 1, 2001)
    radial = -np.array([_radial_load(r) + _radial(r) @ weights for r in places])
    best = int(np.argmax(radial))
    # the shear at the head's rim goes into the column: V = -(r/2 + 4 E / r) times the girth, and the load on the head
    column = -2 * np.pi * b * (b / 2 + 4 * weights[3] / b) + np.pi * b**2
    return ColumnSlab(
        float(column), float(radial[0]), float(radial[-1]), float(radial[best]), float(places[best])
    )  # fmt: skip


def _radial(r: float) -> np.ndarray[tuple[int], np.dtype[np.float64]]:
    """Curvature + Poisson x slope / r of the four terms without load."""
    return np.array(
        [
            0.0,
            (POISSON - 1) / r**2,
            2 * (1 + POISSON),
            2 * np.log(r) * (1 + POISSON) + 3 + POISSON,
        ]
    )


def _radial_load(r: float) -> float:
    return r**2 * (3 + POISSON) / 16
