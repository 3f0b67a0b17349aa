"""Ring tension from the shell itself at any level, the largest of a height zone, and other hoops of equal strength.

What `plan` uses where the page reads the tables of `ring_strength`. Both come from `shell`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from generator.calculations.ring_strength import (
    PLAIN_STEEL_STRESS,
    RIBBED_STEEL_STRESS,
    TAPE_STEP,
    WATER_WEIGHT,
    WIDEST_HOOPS,
)
from generator.calculations.shell import Array, wall_forces
from generator.calculations.shell import shape_number as wall_shape
from generator.formula import OutOfRangeError, whole_down


@dataclass(frozen=True, slots=True)
class RingTension:
    """Ring tension at chosen levels, all in kN per metre of height.

    Args:
        heights: above the floor [m].
        free: if the foot could slide.
        hinged: if the foot is held in place but may turn.
        fixed: if the foot is held and can't turn.
        demand: the larger of hinged and fixed, never below nothing: what the hoops must bear.
    """

    heights: Array
    free: Array
    hinged: Array
    fixed: Array
    demand: Array


def ring_tension(
    water_depth: float, inside_diameter: float, wall_thickness: float, heights: Sequence[float]
) -> RingTension:
    """Ring tension at any levels from the shell itself, without tables.

    Args:
        water_depth: [m], above 0.
        inside_diameter: [m], above 0.
        wall_thickness: [mm], above 0.
        heights: levels above the floor [m]; above the water the value at its surface stands.

    Raises:
        OutOfRangeError: a size that is not above 0, or a shape that the shell solution does not cover.

    Example:
        >>> found = ring_tension(1.7, 3.2, 48, [0.5])
        >>> round(float(found.free[0]), 1), round(float(found.demand[0]), 1)
        (18.8, 20.6)
    """
    if not min(water_depth, inside_diameter, wall_thickness) > 0:
        raise OutOfRangeError("a tank needs water, a width and a wall above 0; ask a licensed engineer")
    levels = np.asarray(heights, dtype=float)
    shares = np.clip(1 - levels / water_depth, 0.0, 1.0)
    shape = wall_shape(water_depth, inside_diameter, wall_thickness / 1000)
    foot = float(WATER_WEIGHT) * water_depth * inside_diameter / 2
    hinged, fixed = (wall_forces(shape, shares, "hinged").ring, wall_forces(shape, shares, "fixed").ring)
    demand = np.maximum(np.maximum(hinged, fixed), 0.0)  # a real joint lies between the two
    return RingTension(levels, shares * foot, hinged * foot, fixed * foot, demand * foot)


def zone_tension(
    water_depth: float, inside_diameter: float, wall_thickness: float, from_height: float, to_height: float
) -> float:
    """Ring tension that the hoops of one height zone must bear: the largest in the zone.

    Below the most loaded level the largest of the whole wall is kept, since a joint at the foot may give way a little.

    Args:
        water_depth: [m].
        inside_diameter: [m].
        wall_thickness: [mm].
        from_height: foot of the zone above the floor [m].
        to_height: top of the zone above the floor [m].

    Returns:
        [kN per metre of height].

    Raises:
        OutOfRangeError: an empty zone, or as `ring_tension`.

    Example:
        >>> round(zone_tension(1.7, 3.2, 48, 0.0, 0.4), 1) == round(zone_tension(1.7, 3.2, 48, 0.0, 1.8), 1)
        True
    """
    if not 0 <= from_height < to_height:
        raise OutOfRangeError(f"a zone from {from_height:g} m to {to_height:g} m is empty; ask a licensed engineer")
    whole = _whole_wall(water_depth, inside_diameter, wall_thickness)
    worst = float(whole.heights[int(np.argmax(whole.demand))])
    if from_height < worst:
        return float(whole.demand.max())
    inside = (whole.heights >= from_height) & (whole.heights <= to_height)
    ends = ring_tension(water_depth, inside_diameter, wall_thickness, [from_height, to_height]).demand
    return float(max(ends.max(), whole.demand[inside].max(initial=0.0)))


@lru_cache(maxsize=1 << 8)
def _whole_wall(water_depth: float, inside_diameter: float, wall_thickness: float) -> RingTension:
    """Ring tension at 401 levels: every zone of a wall reads the same ones."""
    return ring_tension(water_depth, inside_diameter, wall_thickness, np.linspace(0, water_depth, 401).tolist())


def free_ring_tension(water_depth: float, inside_diameter: float, height: float) -> float:
    """Ring tension at one level if the foot could slide: it needs no shell.

    Args:
        water_depth: [m], above 0.
        inside_diameter: [m], above 0.
        height: above the floor [m].

    Returns:
        [kN per metre of height].

    Example:
        >>> round(free_ring_tension(1.7, 3.2, 0.5), 1)
        18.8
    """
    share = min(max(1 - height / water_depth, 0.0), 1.0)
    return share * (float(WATER_WEIGHT) * water_depth * inside_diameter / 2)


def allowed_steel_stress(ribbed: bool) -> float:
    """Working stress of hoop steel [MPa]: 130 ribbed, 115 plain. Steel of unknown kind counts as plain.

    Example:
        >>> allowed_steel_stress(ribbed=False)
        115.0
    """
    return float(RIBBED_STEEL_STRESS if ribbed else PLAIN_STEEL_STRESS)


def equal_steel(
    hoop_diameter: float,
    spacing: float,
    sold: Sequence[tuple[float, bool]],
    ribbed: bool,
    closest: float = 0.05,
) -> tuple[tuple[float, bool, float], ...]:
    """Hoops from what the shop sells that bear as much as the planned ones; empty means: an honest no.

    A ribbed bar for a plain one may stand wider by the working stresses' ratio, a plain one for a ribbed one closer.

    Args:
        hoop_diameter: planned hoop [mm].
        spacing: planned distance from hoop to hoop [m].
        sold: thickness [mm] and whether ribbed, of each bar that the shop has.
        ribbed: whether the planned hoop is ribbed.
        closest: least distance that mortar still fills [m].

    Returns:
        Thickness, whether ribbed, and spacing in steps of 5 mm, never over 0.2 m; least steel first.

    Example:
        >>> equal_steel(8, 0.12, [(6, False), (10, True), (4, False)], ribbed=False)
        ((10, True, 0.2), (6, False, 0.065))
    """
    found = []
    for diameter, kind in sold:
        strength = (diameter / hoop_diameter) ** 2 * allowed_steel_stress(kind) / allowed_steel_stress(ribbed)
        wide = min(float(WIDEST_HOOPS), round(whole_down(spacing * strength / TAPE_STEP) * TAPE_STEP, 3))
        if wide >= closest:
            found.append((diameter, kind, wide))
    return tuple(sorted(found, key=lambda hoop: (hoop[0] ** 2 / hoop[2], hoop[0])))
