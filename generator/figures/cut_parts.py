"""Parts of a tank that is cut through: stones, concrete, mortar, mesh, pipes; and the cut melon that explains a cut.

Masons who have never seen a section know a cut melon: the same word and the same look stand beside every cut.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

from generator.figures.ink import HatchKind, Ink
from generator.figures.page import Page
from generator.figures.scene import Circle, Element, Group, Hatch, Line, Point, Polyline, Rect, on_circle

_UNEVEN = (0.14, 0.05, 0.2, 0.0, 0.11, 0.17, 0.03, 0.09, 0.22, 0.07)
"""How far corners of stones stand back, in turn; the same stones on every paper."""
_SEEDS = ((-0.45, 0.16), (-0.22, 0.3), (0.0, 0.2), (0.24, 0.32), (0.46, 0.17), (0.02, 0.45))
MELON = 17.0
"""Half the width of the cut melon, paper units."""


def box(left: float, right: float, low: float, high: float, ink: Ink) -> Polyline:
    """A rectangle from its four edges, metres of the scene."""
    return Polyline(((left, low), (right, low), (right, high), (left, high)), ink, closed=True)


def stones(left: float, right: float, low: float, high: float, unit: float) -> Group:
    """Stones packed by hand, standing close, in one or two courses.

    Args:
        left: edge of the bed, metres of the scene; so are the next three.
        right: edge of the bed.
        low: its underside.
        high: its top.
        unit: metres of one paper unit.
    """
    courses = 2 if (high - low) / unit > 26 else 1
    tall = (high - low) / courses
    count = max(2, math.ceil((right - left) / max(0.8 * tall, 5 * unit)))
    parts: list[Element] = []
    for course in range(courses):
        edges = [left + (right - left) * _edge(number, count, course) for number in range(count + 1)]
        for number in range(count):
            wide = edges[number + 1] - edges[number]
            foot = low + course * tall
            back = [_UNEVEN[(3 * number + 5 * course + corner) % len(_UNEVEN)] for corner in range(6)]
            corners = (
                (edges[number] + back[0] * wide, foot),
                (edges[number + 1] - back[1] * wide, foot + back[2] * tall * 0.4),
                (edges[number + 1], foot + (0.4 + back[3]) * tall),
                (edges[number + 1] - back[4] * wide, foot + tall),
                (edges[number] + back[5] * wide, foot + tall - back[1] * tall * 0.4),
                (edges[number], foot + (0.4 + back[2]) * tall),
            )
            parts.append(Polyline(corners, Ink.STONE, closed=True))
    return Group("stone-bed", tuple(parts))


def _edge(number: int, count: int, course: int) -> float:
    """Where the joint between two stones is, as a share of the bed."""
    if number in (0, count):
        return number / count
    return (number + 0.5 * course * (number % 2) + _UNEVEN[number % len(_UNEVEN)] - 0.1) / count


def concrete(left: float, right: float, low: float, high: float, unit: float, name: str = "base") -> Group:
    """Concrete cut through: grey, with pieces of gravel where they have room.

    Args:
        left: edge, metres of the scene; so are the next three.
        right: edge.
        low: underside.
        high: top.
        unit: metres of one paper unit.
        name: of the part.
    """
    return Group(name, (box(left, right, low, high, Ink.CONCRETE), *gravel(left, right, low, high, unit)))


def gravel(left: float, right: float, low: float, high: float, unit: float) -> Iterator[Element]:
    """Corners of gravel inside a rectangle."""
    size, gap = 3.2 * unit, 15 * unit
    rows = math.floor((high - low - 2 * unit) / (8 * unit))
    for row in range(rows):
        y = low + (row + 0.5) * (high - low) / rows
        x = left + (0.4 + 0.5 * (row % 2)) * gap
        number = row
        while x < right - 2 * size:
            turn = 360 * _UNEVEN[number % len(_UNEVEN)]
            up = y + (_UNEVEN[(number + 4) % len(_UNEVEN)] - 0.1) * 6 * unit
            corners = tuple(on_circle((x, up), size * 0.7, turn + 120 * corner) for corner in range(3))
            if low + size < up < high - size:
                yield Polyline(corners, Ink.GRAVEL, closed=True)
            x += gap * (0.85 + _UNEVEN[(number + 2) % len(_UNEVEN)])
            number += 1


def mortar(corners: Sequence[Point], name: str) -> Group:
    """Mortar cut through: a grey surface with dots where they have room."""
    outline = tuple(corners)
    return Group(name, (Polyline(outline, Ink.MORTAR_CUT, closed=True), Hatch(outline, HatchKind.MORTAR)))


def mesh_line(points: Sequence[Point], thick: float, unit: float, pitch: float = 7.0) -> Group:
    """Mesh cut across: a wire that goes to and fro, and round cut wires in its bends.

    Args:
        points: the middle of the mesh from end to end, metres of the scene.
        thick: thickness of all the mesh there, metres.
        unit: metres of one paper unit.
        pitch: from bend to bend, paper units.
    """
    wave: list[Point] = []
    cut: list[Element] = []
    sign = 1.0
    for start, end in pairwise(points):
        length = math.dist(start, end)
        steps = max(1, round(length / (pitch * unit)))
        along = ((end[0] - start[0]) / length, (end[1] - start[1]) / length)
        across = (-along[1], along[0])
        for step in range(steps):
            way = length * step / steps
            middle = (start[0] + along[0] * way, start[1] + along[1] * way)
            off = sign * thick / 4
            wave.append((middle[0] + across[0] * off, middle[1] + across[1] * off))
            dot = (middle[0] - across[0] * off, middle[1] - across[1] * off)
            cut.append(Circle(dot, max(0.9 * unit, min(1.8 * unit, thick / 5)), Ink.STEEL))
            sign = -sign
    wave.append(points[-1])
    return Group("mesh", (Polyline(tuple(wave), Ink.WIRE), *cut))


def pipe(points: Sequence[Point], bore: float, ink: Ink = Ink.STEEL_EDGE) -> Polyline:
    """A pipe or a bar with both its edges and square elbows.

    Args:
        points: its middle from end to end, metres of the scene.
        bore: its thickness, metres.
        ink: how it is drawn.
    """
    ways = [((b[0] - a[0]) / math.dist(a, b), (b[1] - a[1]) / math.dist(a, b)) for a, b in pairwise(points)]
    left: list[Point] = []
    right: list[Point] = []
    for point, (x1, y1), (x2, y2) in zip(points, [ways[0], *ways], [*ways, ways[-1]], strict=True):
        share = bore / 2 / (1 + x1 * x2 + y1 * y2)
        across = (-(y1 + y2) * share, (x1 + x2) * share)
        left.append((point[0] + across[0], point[1] + across[1]))
        right.append((point[0] - across[0], point[1] - across[1]))
    return Polyline((*left, *reversed(right)), ink, closed=True)


def water_mark(middle: Point, unit: float, half: float) -> Group:
    """The level mark of water: a line, and a triangle that stands on it."""
    x, y = middle
    triangle = ((x, y + 0.5 * unit), (x - 4 * unit, y + 6.5 * unit), (x + 4 * unit, y + 6.5 * unit))
    return Group(
        "water-level",
        (Line((x - half, y), (x + half, y), Ink.WATER_LINE), Polyline(triangle, Ink.WATER_LINE, closed=True)),
    )


def melon(page: Page, x: float, down: float) -> Group:
    """Half a melon, cut side to the front: what a cut is.

    Args:
        page: the drawing.
        x: its middle, paper units.
        down: its flat top, paper units.
    """
    unit = page.unit
    centre = page.at(x, down)

    def half(radius: float, ink: Ink) -> Polyline:
        points = tuple(on_circle(centre, radius * unit, 180 + step * 15) for step in range(13))
        return Polyline(points, ink, closed=True)

    seeds = tuple(
        Circle((centre[0] + a * MELON * unit, centre[1] - b * MELON * unit), 1.1 * unit, Ink.STEEL) for a, b in _SEEDS
    )
    return Group("melon", (half(MELON, Ink.STONE), half(MELON - 3.5, Ink.BODY), *seeds))


def points_at(page: Page, targets: Sequence[Point]) -> None:
    """Puts a dot at the end of each leading line, so that it is clear which surface is meant; paper units."""
    page.add(*(Circle(page.at(*target), 1.7 * page.unit, Ink.LEADER_DOT) for target in targets))


def paper(page: Page, x: float, down: float, width: float, height: float) -> Rect:
    """White paper behind a text that stands on marks; paper units, its middle above."""
    return Rect(page.at(x - width / 2, down + height), width * page.unit, height * page.unit, Ink.PAPER)
