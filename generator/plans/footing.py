"""The foot of the wall: starter bars against the bending, ring bars in the base's edge against the outward push."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from generator.calculations import BOOK
from generator.calculations.ring_levels import allowed_steel_stress
from generator.formula import whole_up
from generator.plans.hoops import bar_area
from generator.plans.refused import NoPlanError
from generator.plans.shape import Shape
from generator.plans.shop import Bar, Shop
from generator.plans.wall import MESH_COVER, Wall

CLOSEST_STARTERS = 0.10
THINNEST, THICKEST = 6.0, 12.0
MOST_RING_BARS = 6
BASE_THICKNESS, THICK_BASE, THICK_BASE_FROM = 100.0, 120.0, 12.0
"""Concrete under a village tank, under a larger one [mm], and the volume above which it is the thicker one [m3]."""
_NAMES = (
    "shape_number", "foot_moment", "foot_push", "starter_depth", "starter_steel_needed", "starter_spacing",
    "base_ring_pull", "base_ring_steel",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Footing:
    """What ties the wall to its base.

    Args:
        bar: of the starters and of the ring in the base.
        spacing: widest distance between starters [m].
        ring_bars: bars round the edge of the base.
        base_thickness: of the concrete [mm].
        values: what the calculation module says about it, by name.
    """

    bar: Bar
    spacing: float
    ring_bars: int
    base_thickness: float
    values: Mapping[str, float]


def footing_for(shape: Shape, wall: Wall, shop: Shop) -> Footing:
    """The thinnest starters that stand far enough apart for mortar, and as many ring bars as the push needs.

    Args:
        shape: of the tank.
        wall: on the base.
        shop: its bars.

    Raises:
        NoPlanError: the shop has no bar that is strong enough.
    """
    bars = {bar.diameter: bar for bar in sorted(shop.bars, key=lambda bar: (not bar.ribbed, bar.length))}
    for size in sorted(bars):
        if not THINNEST <= size <= THICKEST:
            continue
        bar = bars[size]
        values = BOOK.evaluate(
            {
                "inside_diameter": shape.inside_diameter,
                "water_depth": shape.water_depth,
                "wall_thickness": wall.thickness,
                "bar_cover_inside": MESH_COVER + wall.inside.thickness,
                "starter_diameter": bar.diameter,
                "steel_working_stress": allowed_steel_stress(bar.ribbed),
            },
            _NAMES,
        )
        count = int(whole_up(values["base_ring_steel"] / bar_area(bar)))
        if values["starter_spacing"] >= CLOSEST_STARTERS - 1e-9 and count <= MOST_RING_BARS:
            thick = shape.volume > THICK_BASE_FROM
            return Footing(
                bar, values["starter_spacing"], max(1, count), THICK_BASE if thick else BASE_THICKNESS, values
            )
    raise NoPlanError("foot_too_weak")
