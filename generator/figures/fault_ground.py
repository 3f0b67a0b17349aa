"""Faults to find on the ground: a hoop that is not round, a tank whose edge stands on loose fill."""

from __future__ import annotations

import math
from collections.abc import Mapping

from generator.figures.areas import Spot, add_area
from generator.figures.fault_parts import Uneven, finished, line, paper, rect, slots, task, task_height
from generator.figures.ink import HatchKind, Ink
from generator.figures.page import DISC, MARGIN, Page
from generator.figures.scene import VIEW, Circle, Element, Group, Hatch, Point, Scene
from generator.words import Words

_HOOP = 74.0
"""Radius of a hoop, paper units."""
_OVAL = 0.11
"""How much longer and shorter the two ways across an oval hoop are, as a share."""


def _bent_hoop(values: Mapping[str, float], words: Words, order: tuple[str, ...]) -> Scene:
    """Four hoops on the ground, seen from above; the same two sticks are tried in each, one across the other."""
    lines = task(words)
    row = 2 * _HOOP * (1 + _OVAL) + 8
    page = Page(values["frame_diameter"] / 2 / _HOOP, MARGIN + 2 * row + task_height(lines))
    cells = [(left, MARGIN + number * row, right) for number in (0, 1) for left, right in slots(2)]
    for number, (name, (left, top, right)) in enumerate(zip(order, cells, strict=True)):
        x, y = (left + right) / 2, top + row / 2
        oval = _OVAL if name == "oval-hoop" else 0.0
        turned = (25.0, 115.0, 205.0, 295.0)[number]
        page.add(Group("hoop", tuple(_hoop(page, (x, y), oval, turned))))
        for degrees in (0.0, 90.0):
            turn = math.radians(degrees)
            along, half = (math.cos(turn), math.sin(turn)), _HOOP - 2.5
            side = (-along[1] * 2.4, along[0] * 2.4)
            ends = [(x + sign * half * along[0], y + sign * half * along[1]) for sign in (-1, 1)]
            stick = [(ends[0][0] + side[0], ends[0][1] + side[1]), (ends[1][0] + side[0], ends[1][1] + side[1])]
            stick += [(ends[1][0] - side[0], ends[1][1] - side[1]), (ends[0][0] - side[0], ends[0][1] - side[1])]
            page.add(Group("stick", (line(page, stick, Ink.WOOD, closed=True),)))
        reach = 0.62 * _HOOP
        box = paper(page, x - reach, y - reach, x + reach, y + reach)
        corner = -1 if left < VIEW / 2 - 1 else 1
        add_area(page, name, box, (x + corner * 0.98 * _HOOP, y - 0.88 * _HOOP))
    return finished(page, "fault-bent-hoop", lines, words)


def _hoop(page: Page, middle: Point, oval: float, lap: float) -> list[Element]:
    """A ring of bar, as two edges, and its lap."""

    def at(degrees: float, off: float) -> Point:
        turn = math.radians(degrees)
        wide, high = _HOOP * (1 + oval) + off, _HOOP * (1 - oval) + off
        return middle[0] + wide * math.cos(turn), middle[1] + high * math.sin(turn)

    around = [at(step * 4.0, 0.0) for step in range(91)]
    second = [at(lap + step * 4.0, 3.2) for step in range(9)]
    ends = [line(page, [at(lap + step * 16, -1.8), at(lap + step * 16, 5)], Ink.WIRE) for step in (0.2, 1.0, 1.8)]
    return [line(page, around, Ink.HOOP_LINE), line(page, second, Ink.HOOP_LINE), *ends]


BENT_HOOP = Spot("fault-bent-hoop", ("frame_diameter",), ("oval-hoop", "round-1", "round-2", "round-3"), _bent_hoop)


_TALL = 74.0
_GROUND = 44.0


def _fill(values: Mapping[str, float], words: Words, order: tuple[str, ...]) -> Scene:
    """Four tanks from the side, the ground below them cut open."""
    lines = task(words)
    wide, high = values["base_diameter"], values["wall_height"]
    slab = values["base_concrete_thickness"] / 1000
    unit = max(wide / 84.0, (high + slab) / (_TALL - 5))
    row = _TALL + _GROUND + 16
    page = Page(unit, MARGIN + 2 * row + task_height(lines))
    cells = [(left, MARGIN + number * row, right) for number in (0, 1) for left, right in slots(2)]
    for name, (left, top, right) in zip(order, cells, strict=True):
        x, foot = (left + right) / 2 + 6, top + _TALL + 12
        half = wide / unit / 2
        _PLACES[name](page, left + 4, right - 4, x, foot, half)
        _tank(page, values, x, foot)
        box = paper(page, left + 6, foot - 6, right - 6, foot + _GROUND)
        add_area(page, name, box, (left + DISC + 4, top + DISC + 4))
    return finished(page, "fault-fill-under-edge", lines, words)


def _tank(page: Page, values: Mapping[str, float], x: float, foot: float) -> None:
    unit = page.unit
    slab = max(values["base_concrete_thickness"] / 1000 / unit, 5.0)
    half, wall = values["base_diameter"] / unit / 2, values["outside_diameter"] / unit / 2
    top = foot - slab - values["wall_height"] / unit
    page.add(
        Group(
            "tank",
            (
                rect(page, x - half, foot - slab, x + half, foot, Ink.CONCRETE),
                rect(page, x - wall, top, x + wall, foot - slab, Ink.WALL_FACE),
                rect(page, x - wall - 2, top - 3.5, x + wall + 2, top, Ink.CONCRETE),
                rect(page, x - 7, top - 7, x + 7, top - 3.5, Ink.STEEL),
                rect(page, x - 0.5 * wall - 1.6, foot - slab - 9, x - 0.5 * wall + 1.6, foot - slab - 4, Ink.STEEL),
            ),
        )
    )


def _earth(page: Page, points: list[Point], low: float) -> None:
    """Ground as it grew, below a line from left to right."""
    corners = [*points, (points[-1][0], low), (points[0][0], low)]
    page.add(Hatch(tuple(page.at(*point) for point in corners), HatchKind.GROUND), line(page, points, Ink.GROUND))


def _level_ground(page: Page, left: float, right: float, x: float, foot: float, half: float) -> None:
    del x, half
    _earth(page, [(left, foot), (right, foot)], foot + _GROUND)


def _stone_bed(page: Page, left: float, right: float, x: float, foot: float, half: float) -> None:
    """A trench dug to firm ground below the whole base, packed with stones."""
    deep, edge = 13.0, half + 7
    dug = [
        (left, foot),
        (x - edge, foot),
        (x - edge, foot + deep),
        (x + edge, foot + deep),
        (x + edge, foot),
        (right, foot),
    ]
    _earth(page, dug, foot + _GROUND)
    count = max(5, round(2 * edge / 11))
    uneven = Uneven("bed")
    parts: list[Element] = []
    for left_edge, right_edge in slots(count, x - edge, x + edge):
        stone = [(left_edge + 0.5, foot + deep - 0.5), (right_edge - 0.5, foot + deep - 0.5)]
        stone += [(right_edge - uneven.between(0.5, 2), foot + 0.8), (left_edge + uneven.between(0.5, 2), foot + 0.8)]
        parts.append(line(page, stone, Ink.STONE, closed=True))
    page.add(Group("stones", tuple(parts)))


def _wide_cut(page: Page, left: float, right: float, x: float, foot: float, half: float) -> None:
    """A slope cut back far enough: the whole base on the cut, a drain at the foot of the bank, room in front."""
    del half
    rise = 34.0
    bank = x - 64
    points = [
        (left, foot - rise),
        (left + 2, foot - rise),
        (bank - 4, foot),
        (bank - 2, foot + 6),
        (bank + 5, foot + 6),
    ]
    points += [(bank + 7, foot), (right - 12, foot), (right, foot + 16)]
    _earth(page, points, foot + _GROUND)


def _edge_on_fill(page: Page, left: float, right: float, x: float, foot: float, half: float) -> None:
    """A slope cut too little: the spoil was thrown forward, and the base reaches out over it."""
    rise, bank = 34.0, x - 64
    start = x + 0.18 * half
    slope = 0.52
    end = right
    points = [(left, foot - rise), (left + 2, foot - rise), (bank - 4, foot), (start, foot)]
    points.append((end, foot + (end - start) * slope))
    _earth(page, points, foot + _GROUND)
    brow = min(x + half + 6, right - 10)
    toe = min(foot + _GROUND - 4, foot + (end - start) * slope)
    outline = [(start, foot), (brow, foot), (end, min(toe, foot + 22)), (end, toe)]
    uneven = Uneven("fill")
    page.add(line(page, outline, Ink.LOOSE, closed=True))
    parts: list[Element] = []
    for row in range(7):
        y = foot + 3.2 + row * 5.2
        inner = start + (y - foot) / slope + 3
        outer = brow + (end - brow) * (y - foot) / 22 if y < foot + 22 else end
        count = int((outer - inner) / 6.0)
        for number in range(max(0, count)):
            size = uneven.between(1.1, 2.3)
            middle = (inner + (number + 0.5) * 6.0 + uneven.between(-0.8, 0.8), y + uneven.between(-0.8, 0.8))
            parts.append(Circle(page.at(*middle), size * page.unit, Ink.STONE))
    page.add(Group("fill", tuple(parts)))


_PLACES = {
    "edge-on-fill": _edge_on_fill,
    "level-ground": _level_ground,
    "stone-bed": _stone_bed,
    "wide-cut": _wide_cut,
}

FILL_UNDER_EDGE = Spot(
    "fault-fill-under-edge",
    ("base_diameter", "wall_height", "outside_diameter", "base_concrete_thickness"),
    tuple(_PLACES),
    _fill,
)
