"""One hoop lap, near: two ends side by side, tied three times; and one tie, nearer still."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

from generator.figures.ink import Ink
from generator.figures.layout import Block
from generator.figures.page import MARGIN, Page, heading_height
from generator.figures.scene import VIEW, Dimension, Element, Group, Point, Polyline, Rect, Scene
from generator.figures.shown import shown
from generator.figures.things import HAND_LENGTH, hand
from generator.words import Words

NEEDS = ("lap_length", "hoop_diameter", "bar_spacing", "bar_diameter")
"""Beside them `bars_between` and `angle_leg`, where a tank has angles; a small one has bars alone."""

TIE_WIRE = 0.0012
"""Thickness of black tying wire as drawn, metres: what is usual for this work; no number of the course."""

_LAP = 204.0
"""Length of the lap, paper units."""
_UP, _DOWN = 30.0, 40.0
"""How far upright bars show above and below the hoop."""
_OFF = 24.0
_FOREARM = 0.3
_TIE_BAR = 26.0
"""Thickness of a bar in the picture of one tie, paper units."""
_TIE_SIDE = 120.0
_ABOVE_TIE, _BELOW_TIE = 10.0, 3.0
_TWISTS, _ENDS = 5, 2.2
"""Turns of the twisted wire, and length of its ends in thicknesses of the wire."""


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one tank.

    Args:
        values: numbers of the tank, by the names in `NEEDS`.
        words: language of its texts.
    """
    return _HoopLap(values, words).scene()


class _HoopLap:
    def __init__(self, values: Mapping[str, float], words: Words) -> None:
        self._values = values
        self._words = words
        self._unit = values["lap_length"] / _LAP
        self._bar = values["hoop_diameter"] / 1000 / self._unit
        self._first, self._last = (VIEW - _LAP) / 2, (VIEW + _LAP) / 2
        self._heads = (words.say("figure.hoop-lap.lap"), words.say("figure.hoop-lap.tie_larger"))

    def scene(self) -> Scene:
        words = self._words
        lap = Block.of(words.say("figure.part.lap"), shown("lap_length", self._values, words), most=180)
        end = words.say("figure.hoop-lap.end")
        side = (VIEW - 3 * MARGIN) / 3
        names = [Block.of(text, most=side - 6) for text in (end, words.say("figure.part.tie_wire"), end)]
        palm = HAND_LENGTH / self._unit
        text_top = MARGIN + heading_height(self._heads[0])
        level = text_top + lap.height() + 8 + _OFF + self._bar
        names_top = level + self._bar + _DOWN + 10
        hand_top = names_top + max(name.height() for name in names) + 4
        second = hand_top + palm * (1 + _FOREARM) + 6
        tie_top = second + heading_height(self._heads[1])
        self._page = page = Page(self._unit, tie_top + self._tie_height())
        page.heading(1, self._heads[0], MARGIN)
        self._draw_uprights(level)
        self._draw_ends(level)
        page.add(
            Dimension(
                page.at(self._first, level - self._bar), page.at(self._last, level - self._bar), _OFF * self._unit
            )
        )
        page.text(lap, [(VIEW / 2, text_top + 2)])
        targets = (
            page.at(self._first, level - self._bar / 2),
            page.at(VIEW / 2 + self._tail(), level + self._bar + self._tail()),
            page.at(self._last, level + self._bar / 2),
        )
        for place, (name, target) in enumerate(zip(names, targets, strict=True)):
            page.text(name, [(MARGIN + side / 2 + place * (side + MARGIN / 2), names_top)], target)
        page.add(hand(page.at(VIEW / 2, hand_top + palm), forearm=_FOREARM))
        page.heading(2, self._heads[1], second)
        self._draw_tie(tie_top)
        return page.scene(words.say("figure.hoop-lap.title"), words.say("figure.hoop-lap.description"), words)

    def _draw_uprights(self, level: float) -> None:
        """Upright bars cross behind the hoop at their own gap; one stands in the middle of a gap beside the lap."""
        page = self._page
        upright = "bar_diameter" if self._values.get("bars_between", 1) else "angle_leg"
        thick = self._values[upright] / 1000 / self._unit
        gap = self._values["bar_spacing"] / self._unit
        x = VIEW / 2 - gap / 2 - gap * math.floor((VIEW / 2 - gap / 2 - MARGIN - thick) / gap)
        while x < VIEW - MARGIN - thick:
            low = page.at(x - thick / 2, level + _DOWN)
            page.add(Group("bar", (Rect(low, thick * self._unit, (_UP - 8 + _DOWN) * self._unit, Ink.STEEL_EDGE),)))
            x += gap

    def _draw_ends(self, level: float) -> None:
        """The end that comes from the right lies above, the one from the left below."""
        page, unit, thick = self._page, self._unit, self._bar
        upper = Rect(page.at(self._first, level), (VIEW - self._first) * unit, thick * unit, Ink.STEEL_EDGE)
        lower = Rect(page.at(0, level + thick), self._last * unit, thick * unit, Ink.STEEL_EDGE)
        page.add(Group("end", (upper,)), Group("end", (lower,)))
        inset = min(16.0, _LAP / 8)
        for x in (self._first + inset, VIEW / 2, self._last - inset):
            page.add(Group("tie", tuple(self._small_tie(x, level))))

    def _tail(self) -> float:
        return 6.0

    def _small_tie(self, x: float, level: float) -> Iterator[Element]:
        page, thick, tail = self._page, self._bar, self._tail()
        for shift in (-1.6, 1.6):
            yield Polyline(
                (page.at(x + shift - 1, level - thick - 1), page.at(x + shift + 1, level + thick + 1)), Ink.WIRE
            )
        points = [page.at(x, level + thick + 1)]
        points += [
            page.at(x + step * tail / 4 + (1.2 if step % 2 else -1.2), level + thick + step * tail / 4)
            for step in range(1, 5)
        ]
        yield Polyline(tuple(points), Ink.WIRE)

    def _large_wire(self) -> float:
        """Thickness of the wire in the picture of one tie, in the same scale as its bars."""
        return TIE_WIRE * 1000 / self._values["hoop_diameter"] * _TIE_BAR

    def _tie_height(self) -> float:
        return _ABOVE_TIE + 2 * _TIE_BAR + _BELOW_TIE + (_TWISTS + _ENDS) * self._large_wire() + 2 * MARGIN

    def _draw_tie(self, top: float) -> None:
        """Two turns of wire round both bars and a twisted end, so many times larger that the wire shows as a band."""
        page = self._page
        bar, middle = _TIE_BAR, VIEW / 2
        wire = self._large_wire()
        level = top + _ABOVE_TIE + bar
        left, right = middle - _TIE_SIDE, middle + _TIE_SIDE
        for low in (level, level + bar):
            edges = (*self._torn(right, low - bar, low), *reversed(self._torn(left, low - bar, low)))
            page.add(Polyline(edges, Ink.STEEL_EDGE, closed=True))
        for shift in (-1.6 * wire, 0.4 * wire):
            page.add(self._band(middle + shift, level - bar - 2, middle + shift + 1.4 * wire, level + bar + 2, wire))
        foot = level + bar + _BELOW_TIE
        turns = [
            self._band(middle - 0.9 * wire, foot + step * wire, middle + 0.9 * wire, foot + (step + 0.9) * wire, wire)
            for step in range(_TWISTS)
        ]
        last = foot + _TWISTS * wire
        ends = [self._band(middle, last, middle + side * 2.6 * wire, last + _ENDS * wire, wire) for side in (-1, 1)]
        page.add(Group("twist", (*ends, *turns)))

    def _torn(self, x: float, high: float, low: float) -> tuple[Point, ...]:
        """A torn edge, from the top down: the bar goes on."""
        return tuple(self._page.at(x + (4.0 if step % 2 else 0.0), high + (low - high) * step / 4) for step in range(5))

    def _band(self, x1: float, down1: float, x2: float, down2: float, thick: float) -> Polyline:
        """A piece of wire between two points, with both its edges."""
        page, half = self._page, thick / 2
        corners: tuple[Point, ...] = (
            page.at(x1 - half, down1),
            page.at(x1 + half, down1),
            page.at(x2 + half, down2),
            page.at(x2 - half, down2),
        )
        return Polyline(corners, Ink.WIRE_SOLID, closed=True)
