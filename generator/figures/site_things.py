"""Things of a building site seen from the side: bags of cement, planks on blocks, a sheet, stones, drops."""

from __future__ import annotations

from collections.abc import Sequence

from generator.figures.fault_parts import Uneven
from generator.figures.ink import HatchKind, Ink
from generator.figures.scene import Element, Group, Line, Point
from generator.figures.view import View

BAG_LONG, BAG_HIGH = 0.66, 0.15
"""Size of a full cement bag that lies, as drawn, metres."""
PLANK, BLOCK = 0.04, 0.11
"""Thickness of planks, and height of the blocks below them, as drawn, metres."""


def bag(view: View, x: float, y: float, long: float = BAG_LONG, high: float = BAG_HIGH) -> Group:
    """A bag that lies on its side.

    Args:
        view: the picture.
        x: its middle, metres.
        y: what it lies on, metres.
        long: its length, metres.
        high: its height, metres.
    """
    half = long / 2
    outline = (
        (-half + 0.03, 0.0), (half - 0.03, 0.0), (half, 0.3 * high), (half, 0.7 * high), (half - 0.03, high),
        (-half + 0.03, high), (-half, 0.7 * high), (-half, 0.3 * high),
    )  # fmt: skip
    seams = tuple(
        view.line(
            (x + side * (half - 0.05), y + 0.2 * high), (x + side * (half - 0.05), y + 0.8 * high), Ink.THING_LINE
        )
        for side in (-1.0, 1.0)
    )
    return Group("bag", (view.shape(*((x + a, y + b) for a, b in outline), ink=Ink.CLOTH), *seams))


def stack(view: View, left: float, foot: float, wide: int, high: int) -> None:
    """Bags in rows, every second row shifted by half a bag."""
    for row in range(high):
        shift = BAG_LONG / 2 if row % 2 else 0.0
        for number in range(wide - row % 2):
            view.page.add(bag(view, left + shift + (number + 0.5) * BAG_LONG, foot + row * BAG_HIGH))


def planks(view: View, left: float, right: float, foot: float) -> Group:
    """A floor of planks on blocks.

    Args:
        view: the picture.
        left: its edges, metres.
        right: the other edge.
        foot: what the blocks stand on.
    """
    count = max(2, round((right - left) / 0.6))
    middles = [left + 0.12 + (right - left - 0.24) * step / (count - 1) for step in range(count)]
    blocks = [view.box(x - 0.09, foot, x + 0.09, foot + BLOCK, Ink.STONE) for x in middles]
    return Group("planks", (*blocks, view.box(left, foot + BLOCK, right, foot + BLOCK + PLANK, Ink.WOOD)))


def sheet(view: View, points: Sequence[Point]) -> Group:
    """A plastic sheet over something, seen from its edge."""
    return Group("sheet", (view.path(*points, ink=Ink.LINED), view.path(*points, ink=Ink.WATER)))


def drops(view: View, places: Sequence[Point], long: float = 0.1) -> Group:
    """Falling drops."""
    parts: tuple[Element, ...] = tuple(Line(view.at(x, y), view.at(x, y - long), Ink.WATER_LINE) for x, y in places)
    return Group("drops", parts)


def stones(view: View, left: float, right: float, foot: float, high: float, name: str = "stones") -> Group:
    """Stones packed side by side."""
    uneven = Uneven(name)
    count = max(2, round((right - left) / (1.5 * high)))
    parts = []
    for number in range(count):
        a, b = (left + (right - left) * (number + step) / count for step in (0.04, 0.96))
        cut = (b - a) * 0.2
        top = foot + high * uneven.between(0.85, 1.0)
        parts.append(
            view.shape(
                (a, foot),
                (b, foot),
                (b - cut * uneven.between(0.2, 1), top),
                (a + cut * uneven.between(0.2, 1), top),
                ink=Ink.STONE,
            )
        )
    return Group("stones", tuple(parts))


def cut_bucket(view: View, x: float, y: float, high: float, level: float) -> Group:
    """A bucket cut through, with water in it.

    Args:
        view: the picture.
        x: middle of its bottom, metres.
        y: what it stands on, metres.
        high: its height, metres.
        level: height of the water above its bottom, metres.
    """
    low, top = 0.34 * high, 0.47 * high
    wide = low + (top - low) * level / high
    body = view.shape((x - low, y), (x + low, y), (x + top, y + high), (x - top, y + high), ink=Ink.BODY)
    water = ((x - low, y), (x + low, y), (x + wide, y + level), (x - wide, y + level))
    surface = view.line((x - wide, y + level), (x + wide, y + level), Ink.WATER_LINE)
    rim = view.box(x - top - 0.02 * high, y + high - 0.05 * high, x + top + 0.02 * high, y + high, Ink.THING)
    if not level:
        return Group("bucket", (body, rim))
    sides = (
        view.line((x - top, y + high), (x - low, y), Ink.FACE),
        view.line((x + top, y + high), (x + low, y), Ink.FACE),
    )
    return Group(
        "bucket",
        (body, view.shape(*water, ink=Ink.WATER_BODY), view.marks(*water, kind=HatchKind.WATER), surface, *sides),
    )
