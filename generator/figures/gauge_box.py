"""A box that sand is measured with: its inside from above, and how it is struck off level."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.callouts import Callout, right_column, row_below
from generator.figures.ink import HatchKind, Ink
from generator.figures.layout import Block
from generator.figures.page import MARGIN, Page, heading_height
from generator.figures.people import arrow, fist
from generator.figures.scene import VIEW, Circle, Group, Point, Scene
from generator.figures.shown import shown
from generator.figures.things import HAND_LENGTH, hand
from generator.figures.view import View
from generator.words import Words

NEEDS = ("box_length", "box_width", "box_depth")

_PLANK = 0.025
_HANDLE, _HANDLE_THICK = 0.12, 0.03
"""Handles beyond the box as drawn, metres."""
_COLUMN = 86.0
"""Paper for the texts on the right."""
_ROW = 16.0
_STICK, _STICK_HIGH, _HEAP = 0.03, 0.085, 0.07
_HAND_ABOVE = 0.16


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one box.

    Args:
        values: numbers of the box, by the names in `NEEDS`.
        words: language of its texts.
    """
    return _GaugeBox(values, words).scene()


class _GaugeBox:
    def __init__(self, values: Mapping[str, float], words: Words) -> None:
        self._values = values
        self._words = words
        self._length = values["box_length"]
        self._width = values["box_width"]
        self._depth = values["box_depth"]
        across = self._length + 2 * (_PLANK + _HANDLE)
        self._unit = max(across / (VIEW - _COLUMN - 3 * MARGIN), max(self._width, self._depth) / 190)

    def _say(self, name: str, value: str = "", most: float = _COLUMN - 14, *, start: bool = True) -> Block:
        number = shown(value, self._values, self._words) if value else ""
        text = self._words.say_one_of("figure.gauge-box", name)
        return Block.of(text, number, most=most, anchor="start" if start else "middle")

    def scene(self) -> Scene:
        words, unit = self._words, self._unit
        heads = (words.say("figure.gauge-box.above"), words.say("figure.gauge-box.level"))
        length = self._say("length", "box_length", 160, start=False)
        first = MARGIN + heading_height(heads[0]) + 4
        high = (self._width + 2 * _PLANK) / unit
        row = first + high + _ROW + 14
        second = row + length.height() + 6
        second_top = second + heading_height(heads[1])
        rim = second_top + (_STICK_HIGH + _HAND_ABOVE) / unit
        self._page = page = Page(unit, rim + (self._depth + _PLANK) / unit + 10 + MARGIN)
        left = (VIEW - _COLUMN - self._length / unit) / 2
        self._above = View(page, left, first + high - _PLANK / unit, 1 / unit)
        self._side = View(page, left, rim + self._depth / unit, 1 / unit)
        page.heading(1, heads[0], MARGIN)
        self._draw_above()
        page.heading(2, heads[1], second)
        self._draw_side()
        edge = VIEW - _COLUMN + 8
        middle = self._above.paper(self._length / 2, -_PLANK)[0], row - 14
        row_below(page, [Callout(length, middle)], row)
        width_at = self._above.paper(self._measured_at(), self._width / 2)
        right_column(page, [Callout(self._say("width", "box_width"), width_at)], edge, first, row)
        named = [
            Callout(self._say("heap"), self._side.paper(0.86 * self._length, self._depth + 0.55 * _HEAP)),
            Callout(self._say("depth", "box_depth"), self._side.paper(self._measured_at(), self._depth / 2)),
        ]
        right_column(page, named, edge, second_top, page.height - MARGIN)
        stick = Block.of(words.say("figure.gauge-box.stick"), most=96)
        places = [(x, second_top + down) for down in range(0, 60, 4) for x in (60, 56)]
        page.text(stick, places, self._side.at(self._stick(), self._depth + 0.5 * _STICK_HIGH))
        return page.scene(words.say("figure.gauge-box.title"), words.say("figure.gauge-box.description"), words)

    def _measured_at(self) -> float:
        return self._length + _PLANK + _HANDLE + 6 * self._unit

    def _stick(self) -> float:
        return 0.55 * self._length

    def _draw_above(self) -> None:
        """The box from above, empty, an open hand in it."""
        view, length, width = self._above, self._length, self._width
        for low in (-_PLANK, width):
            box = view.box(-_PLANK - _HANDLE, low, length + _PLANK + _HANDLE, low + _PLANK, Ink.WOOD)
            view.page.add(Group("plank", (box,)))
        for left in (-_PLANK, length):
            view.page.add(Group("plank", (view.box(left, 0, left + _PLANK, width, Ink.WOOD),)))
        view.page.add(hand(view.at(length / 2, 0.5 * (width - 0.97 * HAND_LENGTH)), forearm=0.02))
        across = _PLANK + _HANDLE + 6 * self._unit
        view.page.add(
            view.measure((0, -_PLANK), (length, -_PLANK), -_ROW),
            view.measure((length, 0), (length, width), -across / self._unit),
        )

    def _draw_side(self) -> None:
        """The box cut through: left of the stick the sand is level, right of it the heap is pushed over the rim."""
        view, length, depth, stick = self._side, self._length, self._depth, self._stick()
        sand: list[Point] = [(0, 0), (length, 0), (length, depth), (length + 0.01, depth + 0.02)]
        sand += [(0.9 * length, depth + 0.6 * _HEAP), (stick + 0.1 * length, depth + _HEAP)]
        sand += [(stick + _STICK / 2, depth + 0.75 * _HEAP), (stick + _STICK / 2, depth), (0, depth)]
        view.page.add(
            Group("sand", view.cut(*sand, kind=HatchKind.MORTAR, ink=Ink.THING)),
            Group("plank", (view.box(-_PLANK, -_PLANK, 0, depth, Ink.WOOD),)),
            Group("plank", (view.box(length, -_PLANK, length + _PLANK, depth, Ink.WOOD),)),
            Group("plank", (view.box(-_PLANK, -_PLANK, length + _PLANK, 0, Ink.WOOD),)),
        )
        for left, right in ((-_PLANK - _HANDLE, -_PLANK), (length + _PLANK, length + _PLANK + _HANDLE)):
            high = 0.7 * depth
            view.page.add(Group("handle", (view.box(left, high, right, high + _HANDLE_THICK, Ink.WOOD),)))
        grains = [
            Circle(view.at(length + _PLANK + away, depth - fallen), 1.3 * self._unit, Ink.THING)
            for away, fallen in ((0.012, -0.01), (0.03, 0.02), (0.022, 0.06), (0.045, 0.05), (0.05, 0.09))
        ]
        top = depth + _STICK_HIGH
        board = view.box(stick - _STICK / 2, depth, stick + _STICK / 2, top, Ink.WOOD)
        grip, elbow = view.at(stick, top), view.at(stick - 0.06, top + _HAND_ABOVE)
        view.page.add(
            Group("grains", tuple(grains)),
            Group("stick", (board,)),
            fist(grip, elbow),
            arrow(
                view.all_at((stick + 0.07, top + 0.04), (stick + 0.07 + 30 * self._unit, top + 0.04)), 4 * self._unit
            ),
        )
        across = _PLANK + _HANDLE + 6 * self._unit
        view.page.add(view.measure((length, 0), (length, depth), -across / self._unit))
