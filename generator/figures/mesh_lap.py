"""Two strips of mesh over each other, tied along both edges; and two layers whose laps don't lie above each other."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

from generator.figures.callouts import Callout, row_below, row_height
from generator.figures.cut_parts import points_at
from generator.figures.ink import Ink
from generator.figures.layout import Block
from generator.figures.page import MARGIN, Page, heading_height, note_height, note_lines
from generator.figures.scene import VIEW, Circle, Dimension, Element, Group, Line, Polyline, Scene
from generator.figures.shown import shown
from generator.figures.things import HAND_LENGTH, hand
from generator.words import Words

NEEDS = ("mesh_lap", "mesh_wire_spacing")

TIE_GAP = 0.15
"""From tie to tie as drawn, metres: what is usual for mesh; no number of the course."""

_LAP = 104.0
"""Length of the lap, paper units."""
_SHEET = 92.0
"""Height of the strips in the picture, paper units."""
_OFF = 15.0
_FINEST = 5.0
"""Wires closer than this, in paper units, run together: then only some are drawn."""
_LAYERS = 34.0
"""From layer to layer in the second picture, paper units."""
_EDGE = 4.0


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one mesh.

    Args:
        values: numbers of the tank, by the names in `NEEDS`.
        words: language of its texts.
    """
    return _MeshLap(values, words).scene()


class _MeshLap:
    def __init__(self, values: Mapping[str, float], words: Words) -> None:
        self._values = values
        self._words = words
        self._unit = values["mesh_lap"] / _LAP
        self._first, self._last = (VIEW - _LAP) / 2, (VIEW + _LAP) / 2
        spacing = values["mesh_wire_spacing"] / 1000 / self._unit
        self._every = max(1, math.ceil(_FINEST / spacing))
        self._spacing = spacing * self._every
        self._heads = words.say("figure.mesh-lap.strips"), words.say("figure.mesh-lap.layers")

    def scene(self) -> Scene:
        words = self._words
        note = note_lines(words.say("figure.mesh-lap.fine" if self._every > 1 else "figure.mesh-lap.every"))
        lap = Block.of(words.say("figure.part.lap"), shown("mesh_lap", self._values, words), most=150)
        text_top = MARGIN + heading_height(self._heads[0])
        self._top = text_top + lap.height() + 8 + _OFF
        self._foot = self._top + _SHEET
        names_top = self._foot + 16
        named = self._names()
        hand_size = HAND_LENGTH / self._unit
        hand_top = names_top + row_height(named) + 6
        second = hand_top + (1.15 * hand_size if hand_size <= _LAP * 1.3 else 0.0) + 8
        self._layers_top = second + heading_height(self._heads[1]) + 36
        note_top = self._layers_top + 2 * _LAYERS + 8
        self._page = page = Page(self._unit, note_top + note_height(note) + MARGIN)
        page.heading(1, self._heads[0], MARGIN)
        self._draw_strips()
        page.add(
            Dimension(page.at(self._first, self._top), page.at(self._last, self._top), _OFF * self._unit),
        )
        page.text(lap, [(VIEW / 2, text_top + 2)])
        row_below(page, named, names_top)
        points_at(page, [callout.target for callout in named])
        if hand_size <= _LAP * 1.3:
            page.add(hand(page.at(VIEW / 2, hand_top + hand_size), forearm=0.15))
        page.heading(2, self._heads[1], second)
        self._draw_layers()
        page.note(note, note_top)
        return page.scene(words.say("figure.mesh-lap.title"), words.say("figure.mesh-lap.description"), words)

    def _names(self) -> list[Callout]:
        words = self._words
        strip = words.say("figure.mesh-lap.strip")
        low = self._foot - 6
        return [
            Callout(Block.of(strip, most=90), (0.45 * self._first, low)),
            Callout(Block.of(words.say("figure.part.tie_wire"), most=90), (VIEW / 2, self._tie_rows()[-1])),
            Callout(Block.of(strip, most=90), (VIEW - 0.45 * self._first, low)),
        ]

    def _draw_strips(self) -> None:
        """One strip comes from the left, the other, a little lower, from the right; the wires of both show."""
        page = self._page
        left = self._strip(MARGIN, self._last, self._top + 2, 0.0)
        right = self._strip(self._first, VIEW - MARGIN, self._top + 6, 0.42)
        page.add(Group("strip", tuple(left)), Group("strip", tuple(right)))
        page.add(self._torn(MARGIN), self._torn(VIEW - MARGIN))
        for x in (self._first + 5, self._last - 5):
            for down in self._tie_rows():
                page.add(Group("tie", tuple(self._tie(x, down))))
        for down in self._tie_rows()[-1:]:
            page.add(Group("tie", tuple(self._tie(VIEW / 2, down))))

    def _tie_rows(self) -> list[float]:
        gap = TIE_GAP / self._unit
        count = max(1, math.floor((_SHEET - 20) / gap))
        start = (self._top + self._foot - gap * (count - 1)) / 2 if count > 1 else self._top + 0.35 * _SHEET
        rows = [start + gap * number for number in range(count)]
        return rows if count > 1 else [rows[0], self._foot - 16]

    def _strip(self, left: float, right: float, top: float, shift: float) -> Iterator[Element]:
        """Upright wires from its cut edge on, and level wires; the cut edge is a wire."""
        page, foot = self._page, self._foot - 4 + shift * 8
        from_left = left <= MARGIN
        ink = Ink.WIRE if from_left else Ink.WIRE_SECOND
        edge = right if from_left else left
        step = -self._spacing if from_left else self._spacing
        x = edge
        while left - 1e-9 <= x <= right + 1e-9:
            yield Line(page.at(x, top), page.at(x, foot), ink)
            x += step
        down = top + (0.3 + shift) * min(self._spacing, 0.5 * _SHEET)
        while down < foot:
            yield Line(page.at(left, down), page.at(right, down), ink)
            down += self._spacing

    def _torn(self, x: float) -> Polyline:
        page, count = self._page, 10
        high, low = self._top, self._foot
        inward = 2.5 if x < VIEW / 2 else -2.5
        points = tuple(
            page.at(x + (inward if step % 2 else 0.0), high + (low - high) * step / count) for step in range(count + 1)
        )
        return Polyline(points, Ink.BREAK)

    def _tie(self, x: float, down: float) -> Iterator[Element]:
        """A loop of wire, and its twisted ends."""
        page = self._page
        yield Circle(page.at(x, down), 3.4 * self._unit, Ink.TIE)
        twist = tuple(
            page.at(x + 3 + step * 1.6, down + 3 + step * 1.6 + (1.4 if step % 2 else -1.4)) for step in range(4)
        )
        yield Polyline(twist, Ink.TIE_LINE)

    def _draw_layers(self) -> None:
        """Both layers from their edge: the lap of the second lies more than a lap beside that of the first."""
        page, lap = self._page, _LAP
        starts = (MARGIN + 14, VIEW - MARGIN - 14 - lap)
        for number, start in enumerate(starts):
            down = self._layers_top + number * _LAYERS
            ends = ((MARGIN, start + lap, down), (start, VIEW - MARGIN, down + _EDGE))
            lines = tuple(
                Line(page.at(left, level), page.at(right, level), ink)
                for (left, right, level), ink in zip(ends, (Ink.EDGE_LINE, Ink.EDGE_SECOND), strict=True)
            )
            page.add(Group("layer", lines))
            page.add(Dimension(page.at(start, down), page.at(start + lap, down), 9 * self._unit))
            name = self._words.say("figure.mesh-lap.layer", number=number + 1)
            block = Block.of(name, most=120)
            x = (start + lap + VIEW) / 2 if number == 0 else start / 2
            page.text(block, [(x, down - 24), (x, down + 8)])
