"""The frame cut open and laid flat: angles, bars, hoops at their gaps, and no two neighbouring laps in one line.

Only as much of the ring is drawn as shows three laps in turn; the torn edges say that it goes on.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

from generator.figures.ink import HatchKind, Ink
from generator.figures.layout import Block
from generator.figures.page import MARGIN, Page, note_height, note_lines
from generator.figures.scene import VIEW, Dimension, Group, Hatch, Line, Polyline, Rect, Scene
from generator.figures.shown import shown
from generator.figures.things import BUCKET_HEIGHT, bucket
from generator.words import Words

NEEDS = (
    "wall_height",
    "angle_count",
    "angle_spacing",
    "angle_leg",
    "bars_between",
    "bar_spacing",
    "bar_diameter",
    "hoop_count",
    "hoop_spacing_closing",
    "hoop_diameter",
    "lap_length",
)

TURNS = 3
"""Laps stand in so many places in turn."""
CLEAR_LAPS = 1.0
"""Least way between the laps of neighbouring hoops, in laps: more than one."""

_LEFT, _RIGHT = 66.0, 74.0
"""Paper beside the steel for the wall's height and the hoop gap."""
_EDGE = 0.22
"""Piece of the next bay shown beyond the torn edge, bays."""
_GROUND = 13.0
_LEADER = 24.0
_GAP_ROW = 13.0
"""Paper for the arrowed lines above the wall."""
_BAYS_FOR_BUCKET = 3
"""With fewer, a bucket would hide what is shown."""
_LOWEST = 74.0
"""Height that the wall is drawn with at least, paper units, if leaving out bays can give it."""


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one tank.

    Args:
        values: numbers of the tank, by the names in `NEEDS`.
        words: language of its texts.
    """
    return _Elevation(values, words).scene()


class _Elevation:
    def __init__(self, values: Mapping[str, float], words: Words) -> None:
        self._values = values
        self._words = words
        self._count = round(values["angle_count"])
        self._between = round(values["bars_between"])
        self._hoops = round(values["hoop_count"])
        self._bay = values["angle_spacing"]
        self._height = values["wall_height"]
        self._lap = values["lap_length"]
        self._step = self._lap_step()
        self._lap_bays = max(1, math.ceil(self._lap / self._bay))
        self._bays = self._shown_bays()
        self._whole = self._bays == self._count
        edge = 0.0 if self._whole else _EDGE
        self._unit = self._unit_of(self._bays)
        self._wall = self._height / self._unit
        self._left = _LEFT + edge * self._bay / self._unit

    def _unit_of(self, bays: int) -> float:
        edges = 0.0 if bays == self._count else 2 * _EDGE
        return (bays + edges) * self._bay / (VIEW - _LEFT - _RIGHT)

    def _shown_bays(self) -> int:
        """Enough bays for three laps in turn, but fewer where the wall would become a thin strip."""
        least = max(2, self._lap_bays)
        most = min(self._count, (TURNS - 1) * self._step + self._lap_bays)
        return next((bays for bays in range(most, least, -1) if self._height / self._unit_of(bays) >= _LOWEST), least)

    def _lap_step(self) -> int:
        """Bays from the lap of one hoop to the lap of the next: so many that more than one lap lies between them."""
        wanted = math.floor((1 + CLEAR_LAPS) * self._lap / self._bay) + 1
        return max(1, min(wanted, self._count // TURNS))

    def scene(self) -> Scene:
        words, values = self._words, self._values
        half = (VIEW - _LEFT - _RIGHT) / 2
        self._gap_texts = [
            Block.of(
                words.say("figure.frame-elevation.angle_gap"), shown("angle_spacing", values, words), most=half - 8
            )
        ]
        if self._between:
            bar_gap = Block.of(
                words.say("figure.frame-elevation.bar_gap"), shown("bar_spacing", values, words), most=half - 8
            )
            self._gap_texts.append(bar_gap)
        note = words.say("figure.frame-elevation.whole" if self._whole else "figure.frame-elevation.part")
        self._note = note_lines(note)
        self._names = [
            Block.of(words.say("figure.part.lap"), most=100),
            Block.of(words.say("figure.part.angle"), most=84),
        ]
        if self._between:
            self._names.append(Block.of(words.say("figure.part.bar"), most=84))
        self._top = MARGIN + max(block.height() for block in self._gap_texts) + 5 + _GAP_ROW + 4
        self._foot = self._top + self._wall
        self._names_top = self._foot + _GROUND + _LEADER
        note_top = self._names_top + max(block.height() for block in self._names) + 5
        self._page = Page(self._unit, note_top + note_height(self._note) + MARGIN)
        self._draw_ground()
        self._draw_uprights()
        self._draw_hoops()
        self._measure_gaps()
        self._measure_heights()
        self._name_steel()
        self._page.note(self._note, note_top)
        return self._page.scene(
            words.say("figure.frame-elevation.title"), words.say("figure.frame-elevation.description"), words
        )

    def _x(self, bays: float) -> float:
        """Paper units from the left edge to a place counted in bays from the first angle."""
        return self._left + bays * self._bay / self._unit

    def _level(self, hoop: int) -> float:
        """Paper units from the top edge to a hoop, counted from the foot."""
        return self._foot - hoop * self._values["hoop_spacing_closing"] / self._unit

    def _thick(self, name: str, least: float) -> float:
        """A thickness in paper units, as it is or just so thick that it shows."""
        return max(self._values[name] / 1000 / self._unit, least)

    def _draw_ground(self) -> None:
        page = self._page
        left, right, foot = MARGIN, VIEW - MARGIN, self._foot + 1.5
        corners = (
            page.at(left, foot + _GROUND - 2),
            page.at(right, foot + _GROUND - 2),
            page.at(right, foot),
            page.at(left, foot),
        )
        page.add(Hatch(corners, HatchKind.GROUND), Line(corners[3], corners[2], Ink.GROUND))

    def _draw_uprights(self) -> None:
        page = self._page
        small = self._bay / self._unit / (self._between + 1)
        bar = min(self._thick("bar_diameter", 1.4), 0.4 * small)
        angle = min(self._thick("angle_leg", 7.5), 0.6 * small)
        for x in self._bar_places():
            box = Rect(page.at(x - bar / 2, self._foot), bar * self._unit, self._height, Ink.STEEL)
            page.add(Group("bar", (box,)))
        for number in range(self._bays + 1):
            x = self._x(number)
            heel = Rect(page.at(x - angle / 2, self._foot), 0.25 * angle * self._unit, self._height, Ink.STEEL)
            box = Rect(page.at(x - angle / 2, self._foot), angle * self._unit, self._height, Ink.STEEL_EDGE)
            page.add(Group("angle", (box, heel)))

    def _bar_places(self) -> Iterator[float]:
        first, last = (0, self._bays) if self._whole else (-1, self._bays + 1)
        for bay in range(first, last):
            for place in range(1, self._between + 1):
                x = self._x(bay + place / (self._between + 1))
                if _LEFT < x < VIEW - _RIGHT:
                    yield x

    def _draw_hoops(self) -> None:
        page = self._page
        gap = self._values["hoop_spacing_closing"] / self._unit
        thick = min(self._thick("hoop_diameter", 1.3), 0.25 * gap)
        beside = min(max(thick, 2.8), 0.4 * gap)
        left, right = _LEFT, VIEW - _RIGHT
        for hoop in range(self._hoops):
            level = self._level(hoop)
            long = Rect(page.at(left, level + thick / 2), (right - left) * self._unit, thick * self._unit, Ink.STEEL)
            page.add(Group("hoop", (long,)))
            middle = self._lap_middle(hoop)
            if middle is not None:
                # The second end runs beside the first; both are drawn a little thicker, or nobody would see them.
                start = middle - self._lap / self._unit / 2
                ends = tuple(
                    Rect(page.at(start, line + beside / 3), self._lap, beside / 1.5 * self._unit, Ink.STEEL)
                    for line in (level, level + (beside if hoop == self._hoops - 1 else -beside))
                )
                page.add(Group("lap", ends))
        if not self._whole:
            page.add(self._torn(left), self._torn(right))

    def _lap_middle(self, hoop: int) -> float | None:
        """Where a hoop's lap is, paper units; none if that part of the ring is not drawn."""
        first = (hoop % TURNS) * self._step
        return self._x(first + self._lap_bays / 2) if first + self._lap_bays <= self._bays else None

    def _torn(self, x: float) -> Polyline:
        page, count = self._page, 10
        high, low = self._top - 3, self._foot + 1
        points = tuple(
            page.at(x + (2.5 if step % 2 else -2.5), high + (low - high) * step / count) for step in range(count + 1)
        )
        return Polyline(points, Ink.BREAK)

    def _measure_gaps(self) -> None:
        """The gap of two angles in the first bay, the gap of two bars in the last one."""
        self._measure(self._x(0), self._x(1), self._gap_texts[0], left=True)
        if self._between:
            share = 1 / (self._between + 1)
            start = self._bays - 1 + share * ((self._between + 1) // 2)
            self._measure(self._x(start), self._x(start + share), self._gap_texts[1], left=False)

    def _measure(self, start: float, end: float, text: Block, *, left: bool) -> None:
        page = self._page
        page.add(Dimension(page.at(start, self._top), page.at(end, self._top), _GAP_ROW * self._unit))
        border, half = (VIEW + _LEFT - _RIGHT) / 2, text.width() / 2
        centre = (start + end) / 2
        x = min(centre, border - 4 - half) if left else max(centre, border + 4 + half)
        x = min(max(x, _LEFT + half), VIEW - _RIGHT - half)
        page.text(text, [(x, self._top - _GAP_ROW - 5 - text.height())])

    def _measure_heights(self) -> None:
        """The wall's height on the left; on the right the gap of two hoops, and above it what a hoop is."""
        page, words, values = self._page, self._words, self._values
        page.add(Dimension(page.at(_LEFT, self._top), page.at(_LEFT, self._foot), -8 * self._unit))
        name = words.say("figure.frame-elevation.wall_height")
        wall = Block.of(name, shown("wall_height", values, words), most=46, anchor="end")
        self._beside(wall, _LEFT - 13, (self._top + self._foot) / 2)
        right = VIEW - _RIGHT
        low = max(0, self._hoops // 2 - 1)
        levels = (self._level(low + 1), self._level(low))
        page.add(Dimension(page.at(right, levels[0]), page.at(right, levels[1]), 10 * self._unit))
        name = words.say("figure.frame-elevation.hoop_gap")
        gap = Block.of(name, shown("hoop_spacing_closing", values, words), most=46, anchor="start")
        self._beside(gap, right + 16, sum(levels) / 2)
        hoop = Block.of(words.say("figure.part.hoop"), most=48, anchor="start")
        tops = [(right + 14, self._top - 14 - step) for step in range(0, int(self._top), 4)]
        page.text(hoop, tops, page.at(right, self._level(self._hoops - 1)))

    def _beside(self, text: Block, x: float, middle: float) -> None:
        """A text beside the middle of what it measures, or as far up as it must go to stay off the ground."""
        top = middle - text.height() / 2
        self._page.text(text, [(x, top - step) for step in range(0, max(1, int(top)), 3)])

    def _name_steel(self) -> None:
        page = self._page
        small = self._bay / self._unit / (self._between + 1)
        targets = [
            page.at(self._x(self._lap_bays / 2), self._level(0)),
            page.at(self._x((self._bays + 1) // 2), self._foot - 1),
        ]
        if self._between:
            targets.append(page.at(self._x(self._bays - 1) + small, self._foot - 1))
        share = (VIEW - 2 * MARGIN) / len(targets)
        for place, (name, target) in enumerate(zip(self._names, targets, strict=True)):
            low, high = MARGIN + place * share + name.width() / 2, MARGIN + (place + 1) * share - name.width() / 2 - 4
            x = min(max(target[0] / self._unit, low), high)
            page.text(name, [(x, self._names_top)], target)
        size = BUCKET_HEIGHT / self._unit
        if self._bays >= _BAYS_FOR_BUCKET and 1.4 * size < self._wall:
            page.add(bucket(page.at(self._x(0.37 * self._bays), self._foot + 1)))
