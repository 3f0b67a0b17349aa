"""What a column does to the ground through the base, and how wide a pad it needs.

Ordinary functions beside the graph: `plan` uses them; a learner is told to put a pad under every column.
"""

from math import pi, sqrt

from generator.calculations.ring_strength import WATER_WEIGHT
from generator.calculations.roof import MORTAR_WEIGHT
from generator.formula import OutOfRangeError, whole_up


def column_foot_pressure(column_load: float, column_width: float, base_thickness: float, water_depth: float) -> float:
    """Ground pressure under a column that stands on the base without a pad, spread at 45 degrees through the base.

    Args:
        column_load: [kN].
        column_width: round column [m].
        base_thickness: [mm].
        water_depth: [m]; its weight is added.

    Returns:
        [kN/m2].

    Raises:
        OutOfRangeError: a size that is not above 0.

    Example:
        >>> round(column_foot_pressure(13, 0.2, 75, 0))
        135
    """
    if not min(column_width, base_thickness) > 0 or min(column_load, water_depth) < 0:
        raise OutOfRangeError("a column needs a width and a base above 0; ask a licensed engineer")
    spread = column_width + 2 * base_thickness / 1000
    return column_load / (pi * spread**2 / 4) + float(WATER_WEIGHT) * water_depth


def column_pad_side(column_load: float, allowed_pressure: float, water_depth: float, pad_thickness: float) -> float:
    """Side of a square pad under the column that keeps the ground pressure allowed, rounded up to 50 mm.

    Args:
        column_load: [kN].
        allowed_pressure: of the ground [kN/m2].
        water_depth: [m].
        pad_thickness: [mm].

    Returns:
        Side [m].

    Raises:
        OutOfRangeError: the water and the pad alone are as much as the ground may bear.

    Example:
        >>> round(column_pad_side(15, 100, 1.7, 200), 2)
        0.45
    """
    left = allowed_pressure - float(WATER_WEIGHT) * water_depth - float(MORTAR_WEIGHT) * pad_thickness / 1000
    if left <= 0 or column_load < 0:
        raise OutOfRangeError("the ground is too weak for this column; ask a licensed engineer")
    return float(whole_up(sqrt(column_load / left) / 0.05)) * 0.05
