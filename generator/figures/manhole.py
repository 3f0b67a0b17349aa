"""The manhole: a raised rim, a lid that turns down over it and locks, and beside it the vent with its mesh."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from generator.figures.callouts import Callout, row_above, row_below, row_height
from generator.figures.ink import Ink
from generator.figures.layout import Block
from generator.figures.page import MARGIN, Page
from generator.figures.people import limb
from generator.figures.scene import VIEW, Circle, Element, Group, Point, Polyline, Scene, on_circle
from generator.figures.shown import shown
from generator.figures.things import bucket
from generator.figures.view import View
from generator.words import Words

NEEDS = ("roof_thickness", "vent_bore")

_CLEAR, _RIM, _RIM_HIGH = 0.30, 0.055, 0.10
"""Half the opening, thickness and height of the rim as drawn, metres: usual practice, no numbers of the course."""
_LID, _TURNED_DOWN, _SLACK = 0.014, 0.05, 0.012
_LEFT, _RIGHT = -0.92, 0.80
"""Ends of the drawn roof, metres from the middle of the opening; farther right for a wide vent."""
_VENT_AT = 0.60
_PIPE_WALL = 1.2
_SKY = 14.0
_BELOW = 0.06


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one tank.

    Args:
        values: numbers of the tank, by the names in `NEEDS`.
        words: language of its texts.
    """
    return _Manhole(values, words).scene()


class _Manhole:
    def __init__(self, values: Mapping[str, float], words: Words) -> None:
        self._values = values
        self._words = words
        self._roof = values["roof_thickness"] / 1000
        self._vent = _PIPE_WALL * values["vent_bore"] / 1000
        self._right = max(_RIGHT, self._mouth() + self._vent / 2 + 0.06)
        self._unit = (self._right - _LEFT) / (VIEW - 2 * MARGIN)
        self._vent_high = max(0.26, 2.3 * self._vent)
        self._outer = _CLEAR + _RIM + _SLACK

    def scene(self) -> Scene:
        words, unit = self._words, self._unit
        above, below = self._above(), self._below()
        top = MARGIN + row_height(above)
        level = top + _SKY + max(self._vent_high, 0.34) / unit
        row = level + (self._roof + _BELOW) / unit
        self._page = page = Page(unit, row + row_height(below) + MARGIN)
        self._view = View(page, MARGIN - _LEFT / unit, level, 1 / unit)
        self._draw_roof()
        page.add(bucket(self._view.at(-0.66, 0.0)))
        page.add(Group("lid", tuple(self._lid())), Group("lock", tuple(self._lock())))
        page.add(Group("vent", tuple(self._draw_vent())))
        row_above(page, [Callout(one.block, self._view.paper(*one.target)) for one in above], top)
        row_below(page, [Callout(one.block, self._view.paper(*one.target)) for one in below], row)
        return page.scene(words.say("figure.manhole.title"), words.say("figure.manhole.description"), words)

    def _named(self, name: str, value: str, most: float, target: Point) -> Callout:
        number = shown(value, self._values, self._words) if value else ""
        return Callout(Block.of(self._words.say_one_of("figure.part", name), number, most=most), target)

    def _above(self) -> list[Callout]:
        return [
            self._named("lid", "", 110, (-0.12, _RIM_HIGH + _LID)),
            self._named("lock", "", 60, (self._outer + 0.03, 0.045)),
            self._named("vent_mesh", "vent_bore", 130, (self._mouth(), self._mouth_level())),
        ]

    def _below(self) -> list[Callout]:
        return [
            self._named("raised_rim", "", 100, (-_CLEAR - _RIM / 2, 0.5 * _RIM_HIGH)),
            self._named("opening", "", 130, (0.0, -0.2 * self._roof)),
            self._named("roof", "roof_thickness", 70, (self._right - 0.08, -self._roof / 2)),
        ]

    def _draw_roof(self) -> None:
        """Roof and rim are one piece on each side of the opening; both ends are torn, for the roof goes on."""
        view, roof = self._view, self._roof
        for side, end in ((-1.0, _LEFT + 0.02), (1.0, self._right - 0.02)):
            inner, outer = side * _CLEAR, side * (_CLEAR + _RIM)
            torn = [(end + (0.012 if step % 2 else -0.012) * side, -roof * step / 4) for step in range(5)]
            outline = (
                (inner, -roof),
                (inner, _RIM_HIGH),
                (outer, _RIM_HIGH),
                (outer, 0.012),
                (outer + side * 0.02, 0.0),
            )
            view.page.add(Group("roof", view.cut(*outline, *torn)))

    def _lid(self) -> Iterator[Element]:
        """Sheet steel that lies on the rim and turns down outside it, with two handles."""
        view, outer = self._view, self._outer
        low, high = _RIM_HIGH + 0.002, _RIM_HIGH + 0.002 + _LID
        down = low - _TURNED_DOWN
        yield view.shape(
            (-outer - _LID, down), (-outer, down), (-outer, low), (outer, low), (outer, down), (outer + _LID, down),
            (outer + _LID, high), (-outer - _LID, high), ink=Ink.STEEL_EDGE,
        )  # fmt: skip
        for x in (-0.17, 0.17):
            handle = ((x - 0.06, high), (x - 0.05, high + 0.05), (x + 0.05, high + 0.05), (x + 0.06, high))
            yield limb(view.all_at(*handle), 0.012, Ink.STEEL_EDGE)

    def _lock(self) -> Iterator[Element]:
        """A padlock through an eye of the lid and an eye in the rim."""
        view, x = self._view, self._outer + 0.032
        bow = [on_circle((x, 0.058), 0.018, 180 - 20 * step) for step in range(10)]
        yield limb(view.all_at((x - 0.018, 0.035), *bow, (x + 0.018, 0.035)), 0.008, Ink.STEEL_EDGE)
        yield view.box(x - 0.03, -0.008, x + 0.03, 0.042, Ink.STEEL)
        yield Circle(view.at(x, 0.02), 0.006, Ink.BODY)

    def _mouth(self) -> float:
        return _VENT_AT + max(0.09, 1.6 * self._vent)

    def _mouth_level(self) -> float:
        return self._vent_high - self._vent / 2 - max(0.07, 0.9 * self._vent)

    def _draw_vent(self) -> Iterator[Element]:
        view, thick = self._view, self._vent
        top, end, mouth = self._vent_high - thick / 2, self._mouth_level(), self._mouth()
        places = ((_VENT_AT, -self._roof - 0.03), (_VENT_AT, top), (mouth, top), (mouth, end))
        yield limb(view.all_at(*places), thick, Ink.STEEL_EDGE)
        half = thick / 2 + 0.008
        yield view.line((mouth - half, end), (mouth + half, end), Ink.SCREEN)
        yield Polyline(view.all_at((mouth - half, end + 0.02), (mouth + half, end + 0.02)), Ink.WIRE)
        for step in range(5):
            x = mouth - half + half * step / 2
            yield view.line((x, end), (x, end + 0.02), Ink.WIRE)
