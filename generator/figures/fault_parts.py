"""What drawings of faults share: wet sacks, drops, running rust, mesh cracks, a pipe end, and the line below."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

from generator.figures.ink import HatchKind, Ink
from generator.figures.layout import Box
from generator.figures.page import MARGIN, Page, note_height, note_lines
from generator.figures.scene import VIEW, Arc, Circle, Element, Group, Hatch, Point, Polyline, Rect, Scene
from generator.formula import Stream
from generator.words import Words

MESH_OPENING = 0.012
"""Usual opening of the mesh as drawn, metres; no number of the course."""


class Uneven:
    """Small differences that make drawn plaster, cracks and earth look like themselves; the same on every machine."""

    def __init__(self, name: str) -> None:
        self._stream = Stream(f"uneven|{name}")

    def between(self, low: float, high: float) -> float:
        """The next number of a range."""
        return low + (high - low) * self._stream.below(1001) / 1000


def task(words: Words) -> tuple[str, ...]:
    """The line below every such drawing: one place is wrong."""
    return note_lines(words.say("figure.spot.note"))


def task_height(lines: Sequence[str]) -> float:
    """Paper that `task` needs, with a gap above and the margin below."""
    return 4.0 + note_height(lines) + MARGIN


def finished(page: Page, key: str, lines: Sequence[str], words: Words) -> Scene:
    """The scene, with its task at the foot of the paper."""
    page.note(lines, page.height - MARGIN - note_height(lines))
    return page.scene(
        words.say_one_of("figure", f"{key}.title"), words.say_one_of("figure", f"{key}.description"), words
    )


def paper(page: Page, left: float, top: float, right: float, foot: float) -> Box:
    """A box from paper units, counted from the left and from the top."""
    (x1, y1), (x2, y2) = page.at(left, foot), page.at(right, top)
    return Box(x1, y1, x2, y2)


def rect(page: Page, left: float, top: float, right: float, foot: float, ink: Ink) -> Rect:
    """A rectangle from paper units."""
    return Rect(page.at(left, foot), (right - left) * page.unit, (foot - top) * page.unit, ink)


def line(page: Page, points: Sequence[Point], ink: Ink, *, closed: bool = False) -> Polyline:
    """A line from point to point, paper units."""
    return Polyline(tuple(page.at(*point) for point in points), ink, closed)


def marks(page: Page, left: float, top: float, right: float, foot: float, kind: HatchKind) -> Hatch:
    """A marked rectangle from paper units."""
    return Hatch(tuple(page.at(*point) for point in ((left, foot), (right, foot), (right, top), (left, top))), kind)


def ground(page: Page, left: float, top: float, right: float, foot: float) -> tuple[Element, ...]:
    """Earth below a level line."""
    return marks(page, left, top, right, foot, HatchKind.GROUND), line(page, ((left, top), (right, top)), Ink.GROUND)


def torn(page: Page, x: float, top: float, foot: float) -> Polyline:
    """A torn edge from top to foot: the work goes on there."""
    count = max(4, round((foot - top) / 14))
    points = [(x + (2.5 if step % 2 else -2.5), top + (foot - top) * step / count) for step in range(count + 1)]
    return line(page, points, Ink.BREAK)


def drop(page: Page, x: float, top: float, size: float = 6.0) -> Polyline:
    """One drop of water, its tip up."""
    round_part = [
        (x + size * 0.42 * math.cos(turn), top + size * 0.66 + size * 0.36 * math.sin(turn))
        for turn in (math.radians(degrees) for degrees in range(-20, 201, 22))
    ]
    return line(page, [(x, top), *round_part], Ink.WATER_BODY, closed=True)


def puddle(page: Page, x: float, y: float, half: float, deep: float) -> Group:
    """Water that stands on the ground, seen a little from above."""
    outline = [(x + half * math.cos(math.radians(d)), y + deep * math.sin(math.radians(d))) for d in range(0, 360, 15)]
    strokes = [
        line(page, [(x - half * wide, y + deep * up), (x + half * wide, y + deep * up)], Ink.WATER)
        for up, wide in ((-0.4, 0.6), (0.05, 0.75), (0.5, 0.55))
    ]
    return Group("puddle", (line(page, outline, Ink.WATER_BODY, closed=True), *strokes))


def sack(page: Page, left: float, top: float, right: float, foot: float, *, wet: bool = True) -> Group:
    """A sack hung over the wall; a wet one carries the level strokes of water and drips."""
    wide, high = right - left, foot - top
    wave = [(right - wide * step / 8, foot - high * 0.05 * (1 - math.cos(step * math.pi / 2)) / 2) for step in range(9)]
    cloth = line(
        page, [(left, top), (right, top), (right - 0.02 * wide, top + high * 0.5), *wave], Ink.CLOTH, closed=True
    )
    folds = [
        line(page, [(left + wide * at, top + 3), (left + wide * (at + 0.03), top + high * down)], Ink.THING_LINE)
        for at, down in ((0.24, 0.35), (0.5, 0.22), (0.76, 0.4))
    ]
    parts: list[Element] = [cloth, *folds]
    if wet:
        parts.append(marks(page, left + 3, top + high * 0.3, right - 3, foot - high * 0.08, HatchKind.WATER))
        parts += [drop(page, left + wide * at, foot + 1.5) for at in (0.2, 0.52, 0.82)]
    return Group("sack", tuple(parts))


def pipe_end(page: Page, x: float, y: float, radius: float, *, plugged: bool = False) -> Group:
    """A pipe that comes straight out of the wall, with a neat collar of mortar round it."""
    parts: list[Element] = [
        Circle(page.at(x, y), 1.7 * radius * page.unit, Ink.MORTAR_CUT),
        Circle(page.at(x, y), radius * page.unit, Ink.STEEL_EDGE),
    ]
    if plugged:
        side = 0.55 * radius
        parts.append(rect(page, x - side, y - side, x + side, y + side, Ink.STEEL_EDGE))
    else:
        parts.append(Circle(page.at(x, y), 0.72 * radius * page.unit, Ink.STEEL))
    return Group("pipe", tuple(parts))


def chalk_line(page: Page, left: float, right: float, y: float) -> Group:
    """A level line of chalk with the mark where it was measured."""
    x = (left + right) / 2
    return Group(
        "chalk",
        (
            line(page, [(left, y), (right, y)], Ink.STRING),
            line(page, [(x, y), (x - 6, y - 11), (x + 6, y - 11)], Ink.STRING, closed=True),
        ),
    )


def float_marks(page: Page, x: float, y: float, wide: float) -> Group:
    """Round sweeps that a wooden float leaves, one beside the other like scales of a fish."""
    arcs: list[Element] = []
    gap = wide / 3
    for row, (count, down) in enumerate(((3, -0.42), (2, 0.0), (3, 0.42))):
        for number in range(count):
            centre = page.at(x + (number - (count - 1) / 2) * gap, y + (down + 0.3) * wide)
            for ring in (0.24, 0.36, 0.48):
                arcs.append(Arc(centre, ring * gap * 1.1 * page.unit, 22.0 + 5 * row, 136.0, Ink.BREAK))
    return Group("float-marks", tuple(arcs))


def mud(page: Page, x: float, foot: float, wide: float) -> Group:
    """Mud that rain has splashed against the foot of a wall: blobs thrown up, the larger ones low."""
    uneven = Uneven("mud")
    blobs: list[Element] = []
    for number in range(26):
        up = uneven.between(0.0, 1.0) ** 1.7
        across, size = uneven.between(-0.5, 0.5) * wide * (1 - 0.4 * up), (3.4 - 2.4 * up) * uneven.between(0.7, 1.2)
        middle = (x + across, foot - 4 - up * 44)
        blobs.append(line(page, list(_blob(middle, size, f"mud {number}")), Ink.EARTH_DROP, closed=True))
    return Group("mud", tuple(blobs))


def rust_run(page: Page, left: float, right: float, top: float, long: float) -> Group:
    """Rust along a bar that lies too near the face, and its runs down the wall."""
    uneven = Uneven("rust")
    parts: list[Element] = []
    wide = right - left
    edge = [(left + wide * step / 16, top - uneven.between(1.0, 3.2)) for step in range(17)]
    back = [(x, 2 * top - y + uneven.between(0.5, 2.0)) for x, y in reversed(edge)]
    for at, share in ((0.1, 0.55), (0.27, 1.0), (0.44, 0.45), (0.62, 0.85), (0.8, 0.62), (0.92, 0.3)):
        x, end = left + wide * at, top + long * share
        thick = 3.6 * (0.6 + 0.5 * share)
        tongue = [(x - thick, top), (x - thick * 0.55, top + 0.5 * (end - top)), (x - thick * 0.5, end - 4), (x, end)]
        tongue += [(x + thick * 0.5, end - 4), (x + thick * 0.45, top + 0.5 * (end - top)), (x + thick, top)]
        parts.append(line(page, tongue, Ink.RUST, closed=True))
    parts.append(line(page, [*edge, *back], Ink.RUST, closed=True))
    return Group("rust", tuple(parts))


def mesh_cracks(page: Page, x: float, y: float, half_wide: float, half_high: float) -> Group:
    """Fine cracks in squares: the mesh shows through the plaster above it."""
    uneven = Uneven("mesh cracks")
    gap = MESH_OPENING / page.unit
    parts: list[Element] = []
    for upright in (False, True):
        reach, length = (half_wide, half_high) if upright else (half_high, half_wide)
        for number in range(-int(reach / gap), int(reach / gap) + 1):
            off = number * gap
            half = length * math.sqrt(max(0.0, 1 - (off / reach) ** 2)) * uneven.between(0.8, 1.0)
            start = -half
            while start < half - gap:
                end = min(half, start + gap * round(uneven.between(2.0, 7.0)))
                points = [
                    (along, off + uneven.between(-0.45, 0.45))
                    for along in (start + (end - start) * step / 4 for step in range(5))
                ]
                placed = [(x + b, y + a) if upright else (x + a, y + b) for a, b in points]
                parts.append(line(page, placed, Ink.CRACK))
                start = end + gap * uneven.between(0.2, 1.0)
    return Group("mesh-cracks", tuple(parts))


def woven(
    page: Page, x: float, top: float, foot: float, thick: float, bulge: Sequence[tuple[float, float]] = ()
) -> Group:
    """Mesh cut across: a wire that goes to and fro, and the round cut wires that it holds.

    Args:
        page: the drawing.
        x: middle of the mesh, paper units; so are the next three.
        top: where it begins.
        foot: where it ends.
        thick: thickness of the mesh.
        bulge: from height to height of a belly, as pairs (height, how far the mesh stands off to the right there).
    """
    steps = max(4, round((foot - top) / max(6.0, thick)))

    def off(down: float) -> float:
        for (high, first), (low, last) in pairwise(bulge):
            if high <= down <= low:
                return first + (last - first) * (down - high) / (low - high)
        return 0.0

    levels = [top + (foot - top) * step / steps for step in range(steps + 1)]
    points = [(x + off(down) + thick * (-0.25 if step % 2 else 0.25), down) for step, down in enumerate(levels)]
    cut = [
        Circle(
            page.at(x + off(down) + thick * (0.25 if step % 2 else -0.25), down),
            min(1.9, thick / 4) * page.unit,
            Ink.STEEL,
        )
        for step, down in enumerate(levels[1:-1], start=1)
    ]
    return Group("mesh", (line(page, points, Ink.WIRE), *cut))


def tie(page: Page, x: float, top: float, foot: float, *, tail: bool = True) -> Group:
    """Tie wire round two bars that lie level, side by side, and its twisted end where there is room."""
    turns = [line(page, [(x + shift - 1, top - 1), (x + shift + 1, foot + 1)], Ink.WIRE) for shift in (-1.5, 1.5)]
    end = [line(page, [(x, foot + 1), (x + 1.4, foot + 3), (x - 1.2, foot + 5)], Ink.WIRE)] if tail else []
    return Group("tie", (*turns, *end))


def slots(count: int, left: float = MARGIN, right: float = VIEW - MARGIN) -> Iterator[tuple[float, float]]:
    """Left and right edges of so many equal places in a row."""
    wide = (right - left) / count
    for place in range(count):
        yield left + place * wide, left + (place + 1) * wide


def _blob(middle: Point, size: float, name: str) -> Iterator[Point]:
    uneven = Uneven(name)
    for step in range(7):
        turn = 2 * math.pi * step / 7
        reach = size * uneven.between(0.7, 1.15)
        yield middle[0] + reach * math.cos(turn), middle[1] + reach * math.sin(turn)
