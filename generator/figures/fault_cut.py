"""Faults to find where a wall was sawn through: a hole behind a bar, steel too near the face.

Four pieces of wall lie side by side, nearly as large as they are: from the wet face to the dry one mesh, an upright
bar, a hoop, mesh, and mortar all round.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from generator.figures.areas import Spot, add_area
from generator.figures.fault_parts import Uneven, finished, line, paper, rect, slots, task, task_height, woven
from generator.figures.ink import HatchKind, Ink
from generator.figures.page import DISC, MARGIN, Page
from generator.figures.scene import Circle, Group, Hatch, Scene
from generator.words import Words

_NEEDS = ("mesh_cover", "inside_mesh_thickness", "bar_diameter", "hoop_diameter", "outside_mesh_thickness")
_THICK = 96.0
"""Thickness of the wall, paper units."""
_LONG = 108.0
"""Length of a piece along the wall, paper units."""


class _Piece:
    """One piece of wall, sawn level.

    Args:
        page: the drawing.
        values: numbers of the tank.
        left: its wet face, paper units.
        top: one sawn end.
    """

    def __init__(self, page: Page, values: Mapping[str, float], left: float, top: float) -> None:
        self.page, self.left, self.top = page, left, top
        self.right, self.foot = left + _THICK, top + _LONG
        self.scale = 0.001 / page.unit
        self.cover, self.inside, self.bar, self.hoop, self.outside = (values[name] * self.scale for name in _NEEDS)

    def mortar(self) -> None:
        """The wall without its steel."""
        corners = ((self.left, self.foot), (self.right, self.foot), (self.right, self.top), (self.left, self.top))
        self.page.add(
            rect(self.page, self.left, self.top, self.right, self.foot, Ink.MORTAR_CUT),
            Hatch(tuple(self.page.at(*corner) for corner in corners), HatchKind.MORTAR),
        )

    def steel(self, shift: float = 0.0, *, bar: bool = True) -> None:
        """Mesh, bar, hoop and mesh at their places, or all moved towards the dry face.

        Args:
            shift: paper units.
            bar: whether the saw went through an upright bar, or between two.
        """
        page, end = self.page, self.foot
        first = self.left + self.cover + shift
        page.add(woven(page, first + self.inside / 2, self.top, end, self.inside))
        middle, y = first + self.inside + self.bar / 2, (self.top + end) / 2
        hoop = middle + self.bar / 2
        page.add(Group("hoop", (rect(page, hoop, self.top, hoop + self.hoop, end, Ink.STEEL_EDGE),)))
        self.at = (middle, y)
        if bar:
            page.add(Group("bar", (Circle(page.at(middle, y), self.bar / 2 * page.unit, Ink.STEEL),)))
        page.add(woven(page, hoop + self.hoop + self.outside / 2, self.top, end, self.outside))

    def wire(self) -> None:
        """A tie round bar and hoop."""
        x, y = self.at
        reach = self.bar / 2 + 1.5
        for off in (-2.0, 2.0):
            ends = ((x - reach, y + off - 1.5), (x + self.bar / 2 + self.hoop + 2, y + off + 1.5))
            self.page.add(Group("tie", (line(self.page, ends, Ink.WIRE),)))

    def hole(self) -> None:
        """Where no mortar came behind the bar: empty, with an uneven edge."""
        uneven = Uneven("hole")
        x, y = self.at
        size = max(0.6 * self.bar, 12.0)
        middle = (x - 0.5 * self.bar - 0.3 * size, y + 0.3 * self.bar)
        points = [
            (
                max(self.left + 2.0, middle[0] + size * uneven.between(0.8, 1.1) * math.cos(turn)),
                middle[1] + 1.1 * size * uneven.between(0.8, 1.1) * math.sin(turn),
            )
            for turn in (2 * math.pi * step / 13 for step in range(13))
        ]
        bar = Circle(self.page.at(x, y), self.bar / 2 * self.page.unit, Ink.STEEL)
        self.page.add(Group("hole", (line(self.page, points, Ink.HOLE, closed=True), bar)))


def _pieces(key: str, values: Mapping[str, float], words: Words, order: tuple[str, ...]) -> Scene:
    lines = task(words)
    thick = sum(values[name] for name in _NEEDS) + values["mesh_cover"]
    top, row = MARGIN + 4, _LONG + 16
    page = Page(thick / 1000 / _THICK, top + 2 * row + task_height(lines))
    cells = [(left, top + number * row, right) for number in (0, 1) for left, right in slots(2)]
    for name, (left, high, right) in zip(order, cells, strict=True):
        start = left + 2 * DISC + (right - left - 2 * DISC - _THICK) / 2
        piece = _Piece(page, values, start, high)
        piece.mortar()
        if name == "hole":
            piece.steel()
            piece.hole()
        elif name == "thin-cover":
            piece.steel(shift=piece.cover + max(0.3 * piece.outside, 2.0))
        elif name == "between-bars":
            piece.steel(bar=False)
        else:
            piece.steel()
            if name == "tied":
                piece.wire()
        box = paper(page, piece.left - 2, piece.top, piece.right + 2, piece.foot)
        add_area(page, name, box, (start - DISC - 8, high + DISC))
    return finished(page, key, lines, words)


def _spot(fault: str, key: str) -> Spot:
    def paint(values: Mapping[str, float], words: Words, order: tuple[str, ...]) -> Scene:
        return _pieces(key, values, words, order)

    return Spot(key, _NEEDS, (fault, "plain", "tied", "between-bars"), paint)


VOID = _spot("hole", "fault-void")
THIN_COVER = _spot("thin-cover", "fault-thin-cover")
