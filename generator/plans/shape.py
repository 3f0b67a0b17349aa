"""From litres to a shape: how wide and how deep, under the site's limits, never smaller than asked.

A village tank grows in both ways at once: each shape of the ladder is at least as wide and as deep as the one before,
so a larger wish never needs less steel. Radius and depth come out in whole centimetres, as a stick and a tape set them.
"""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from math import pi

from generator.calculations.bands import ENGINEER_DEPTH, ENGINEER_VOLUME
from generator.formula import whole_up
from generator.plans.refused import NoPlanError, outside

LEAST_LITRES, MOST_LITRES = 500.0, 100_000.0
"""What a plan can be asked for; above 50 000 L only smaller tanks are offered."""
CENTIMETRE = 0.01
ROUNDING = 1.02
"""A shape rounded up to the tape by less than this still counts as the tank that was asked for."""
LEAST_DEPTH, MOST_DEPTH = 0.40, float(ENGINEER_DEPTH)
LEAST_DIAMETER, MOST_DIAMETER = 0.80, 8.0
_LADDER = ((0.80, 0.95), (1.56, 1.06), (3.10, 1.58), (5.60, 2.00), (6.20, 2.00))
"""Inside diameter and water depth between which the ladder climbs: low enough for the bands of this course, and never
so flat that the roof and the floor cost more than the wall."""


@dataclass(frozen=True, slots=True)
class Shape:
    """The room for the water.

    Args:
        inside_diameter: wet face to wet face [m].
        water_depth: floor to overflow [m].
        overflow_drop: overflow to the top of the wall [m].
        column_width: of a column in the middle, 0 for none [m].
        asked: volume that it was made for; 0 where the sizes themselves were asked for [m3].
    """

    inside_diameter: float
    water_depth: float
    overflow_drop: float
    column_width: float = 0.0
    asked: float = 0.0

    @property
    def wall_height(self) -> float:
        """Floor to the top of the wall [m]."""
        return round(self.water_depth + self.overflow_drop, 4)

    @property
    def volume(self) -> float:
        """Water in the full tank [m3]."""
        return pi / 4 * (self.inside_diameter**2 - self.column_width**2) * self.water_depth

    @property
    def counted(self) -> float:
        """Volume that its band is judged by: what was asked for, where the tape added only a little to it [m3]."""
        return self.asked if 0 < self.volume <= self.asked * ROUNDING else self.volume


def shape_for(
    volume: float,
    overflow_drop: float,
    *,
    column_width: float = 0.0,
    most_diameter: float | None = None,
    most_height: float | None = None,
) -> Shape:
    """The smallest shape of the ladder that holds a volume; under a site's limit, the smallest that keeps to it.

    Args:
        volume: [m3], 0.5 to 50.
        overflow_drop: [m].
        column_width: of a column in the middle [m].
        most_diameter: site's limit of the inside diameter [m].
        most_height: site's limit of the wall's height [m].

    Raises:
        NoPlanError: no shape keeps to the limits; the message says which limit, and what it would have to be.

    Example:
        >>> shape = shape_for(9.0, 0.15)
        >>> shape.volume >= 9.0, shape.inside_diameter, shape.water_depth
        (True, 2.8, 1.47)
    """
    if not LEAST_LITRES / 1000 <= volume <= float(ENGINEER_VOLUME):
        raise outside("volume", volume, LEAST_LITRES / 1000, float(ENGINEER_VOLUME), "m3")
    steps = shape_ladder()
    held = [pi / 4 * (diameter**2 - column_width**2) * depth for diameter, depth in steps]
    place = bisect_left(held, volume - 1e-9)
    diameter, depth = steps[place]
    widest = MOST_DIAMETER if most_diameter is None else min(MOST_DIAMETER, most_diameter)
    deepest = MOST_DEPTH if most_height is None else min(MOST_DEPTH, most_height - overflow_drop)
    if depth > deepest + 1e-9:
        depth = _whole_centimetres(deepest)
        diameter = _diameter_of(volume, depth, column_width)
    if diameter > widest + 1e-9:
        diameter = 2 * _whole_centimetres(widest / 2)
        depth = _depth_of(volume, diameter, column_width)
    shape = Shape(diameter, depth, overflow_drop, column_width, volume)
    if (
        diameter > widest + 1e-9
        or not LEAST_DEPTH - 1e-9 <= depth <= deepest + 1e-9
        or diameter < LEAST_DIAMETER - 1e-9
    ):
        raise _refusal(volume, overflow_drop, column_width, widest, deepest)
    return shape


def _refusal(volume: float, drop: float, column: float, widest: float, deepest: float) -> NoPlanError:
    """Which limit is too tight, and what it would have to be."""
    if deepest < LEAST_DEPTH:
        return NoPlanError("wall_too_low", height=f"{LEAST_DEPTH + drop:.2f}")
    wide = _diameter_of(volume, _whole_centimetres(deepest), column)
    return NoPlanError(
        "does_not_fit", volume=f"{volume:g}", height=f"{deepest + drop:.2f}", wide=f"{wide:.2f}", limit=f"{widest:.2f}"
    )


def _whole_centimetres(length: float) -> float:
    return int(length / CENTIMETRE + 1e-6) * CENTIMETRE


def _diameter_of(volume: float, depth: float, column: float) -> float:
    """Diameter whose radius is a whole centimetre, rounded up."""
    radius = (volume / (pi * depth) + column**2 / 4) ** 0.5
    return round(2 * whole_up(radius / CENTIMETRE) * CENTIMETRE, 4)


def _depth_of(volume: float, diameter: float, column: float) -> float:
    return round(whole_up(volume / (pi / 4 * (diameter**2 - column**2)) / CENTIMETRE) * CENTIMETRE, 4)


@cache
def shape_ladder() -> tuple[tuple[float, float], ...]:
    """All shapes of the ladder, inside diameter and water depth: each at least as large as the one before [m]."""
    found: list[tuple[float, float]] = []
    depth = _LADDER[0][1]
    for (low, shallow), (high, deep) in pairwise(_LADDER):
        for step in range(round((high - low) / (2 * CENTIMETRE)) + 1):
            diameter = round(low + 2 * CENTIMETRE * step, 4)
            wanted = round(shallow + (deep - shallow) * (diameter - low) / (high - low), 2)
            while depth < wanted - 1e-9:
                found.append((diameter, depth))
                depth = round(depth + CENTIMETRE, 4)
            found.append((diameter, depth))
    return tuple(dict.fromkeys(found))
