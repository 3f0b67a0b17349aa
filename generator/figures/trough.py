"""A half-round trough, cut across and from the side, with its bed and its ties; a goat shows how large it is."""

from __future__ import annotations

import math
from collections.abc import Mapping

from generator.figures.callouts import Callout, row_above, row_below, row_height
from generator.figures.ink import HatchKind, Ink
from generator.figures.layout import Block
from generator.figures.page import MARGIN, Page, heading_height
from generator.figures.people import GOAT_SHOULDER, goat
from generator.figures.scene import VIEW, Circle, Element, Group, Point, Scene, on_circle
from generator.figures.shown import shown
from generator.figures.view import View
from generator.words import Words

NEEDS = (
    "trough_radius",
    "trough_length",
    "trough_wall_thickness",
    "trough_bed_angle",
    "trough_tie_spacing",
    "trough_rim_gap",
)

_GROUND_TO_RIM = 0.38
"""Height of a rim that goats drink over, as drawn, metres."""
_LEAST_UNDER = 0.06
"""Bed below the lowest line, as drawn, metres."""
_GOAT_ROOM, _EDGE = 1.15, 0.12
_LEAST_BED = 15.0
"""A narrower bed than this many degrees is no bed but a line."""
_BAND, _SKY = 8.0, 26.0
_MOST_HIGH = 190.0
_TIE = 2.4
"""Thickness of a tie bar as drawn, paper units."""


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one trough.

    Args:
        values: numbers of the trough, by the names in `NEEDS`.
        words: language of its texts.
    """
    return _Trough(values, words).scene()


class _Trough:
    def __init__(self, values: Mapping[str, float], words: Words) -> None:
        self._values = values
        self._words = words
        self._radius = values["trough_radius"]
        self._length = values["trough_length"]
        self._thick = values["trough_wall_thickness"] / 1000
        self._outer = self._radius + self._thick
        self._bed = values["trough_bed_angle"] if values["trough_bed_angle"] >= _LEAST_BED else 0.0
        self._ground = -max(_GROUND_TO_RIM, self._outer + _LEAST_UNDER)
        self._water = -min(values["trough_rim_gap"], 0.9 * self._radius)
        across = max(self._length + 2 * self._thick + _GOAT_ROOM + _EDGE, 2 * self._outer + 0.8)
        high = max(0.0, self._ground + 1.6 * GOAT_SHOULDER) - self._ground
        self._unit = max(across / (VIEW - 2 * MARGIN), (high - self._ground) / _MOST_HIGH)

    def scene(self) -> Scene:
        words, unit = self._words, self._unit
        heads = (words.say("figure.trough.across"), words.say("figure.trough.along"))
        above, below, along, under = self._above(), self._below(), self._along(), self._under()
        first = MARGIN + heading_height(heads[0]) + row_height(above)
        rim = first + _SKY
        first_row = rim - self._ground / unit + _BAND + 10
        second = first_row + row_height(below) + 8
        second_top = second + heading_height(heads[1]) + row_height(along)
        goat_high = self._ground + 1.55 * GOAT_SHOULDER
        side_rim = second_top + max(_SKY, goat_high / unit + 6)
        row = side_rim - self._ground / unit + _BAND + 28
        self._page = page = Page(unit, row + row_height(under) + MARGIN)
        self._cross = View(page, VIEW / 2, rim, 1 / unit)
        whole = (self._length + 2 * self._thick + _GOAT_ROOM + _EDGE) / unit
        self._side = View(page, (VIEW - whole) / 2 + (_GOAT_ROOM + self._thick) / unit, side_rim, 1 / unit)
        page.heading(1, heads[0], MARGIN)
        self._draw_across()
        page.heading(2, heads[1], second)
        self._draw_along()
        for view, found, put, level in (
            (self._cross, above, row_above, first),
            (self._cross, below, row_below, first_row),
            (self._side, along, row_above, second_top),
            (self._side, under, row_below, row),
        ):
            put(page, [Callout(one.block, view.paper(*one.target)) for one in found], level)
        return page.scene(words.say("figure.trough.title"), words.say("figure.trough.description"), words)

    def _named(self, name: str, value: str, most: float, target: Point) -> Callout:
        number = shown(value, self._values, self._words) if value else ""
        return Callout(Block.of(self._words.say_one_of("figure.part", name), number, most=most), target)

    def _above(self) -> list[Callout]:
        """Names above the cut trough; places in metres from the middle between the rims."""
        side = on_circle((0.0, 0.0), self._radius + self._thick / 2, 180 + 24)
        return [
            self._named("trough_wall", "trough_wall_thickness", 82, side),
            self._named("trough_radius", "trough_radius", 110, (self._radius / 2, 14 * self._unit)),
            self._named("rim_bar", "", 100, (self._radius + self._thick / 2, -0.012)),
        ]

    def _below(self) -> list[Callout]:
        found = [self._named("water", "", 70, (-0.3 * self._radius, 0.6 * self._water - 0.4 * self._radius))]
        bed = (0.5 * self._outer * math.sin(math.radians(self._bed / 2)), -self._outer - 0.03)
        name = "bed" if self._bed else "line_support"
        found.append(self._named(name, "", 150, bed if self._bed else (0.0, -self._outer)))
        return found

    def _along(self) -> list[Callout]:
        ties = self._ties()
        first = ties[0]
        found = [self._named("tie", "", 96, (first, 0.0))]
        if len(ties) > 1:
            found.append(
                self._named("tie_to_tie", "trough_tie_spacing", 80, ((ties[-2] + ties[-1]) / 2, 14 * self._unit))
            )
        return found

    def _under(self) -> list[Callout]:
        level = self._ground - (_BAND + 14) * self._unit
        return [self._named("trough_length", "trough_length", 130, (self._length / 2, level))]

    def _ties(self) -> list[float]:
        """Places of the ties: their own gap apart, in the middle of the trough."""
        gap = self._values["trough_tie_spacing"]
        count = max(1, math.floor(self._length / gap + 1e-9))
        first = (self._length - (count - 1) * gap) / 2
        return [first + gap * number for number in range(count)]

    def _draw_across(self) -> None:
        view, radius, outer, ground = self._cross, self._radius, self._outer, self._ground
        reach = outer + 0.3
        band = ground - _BAND * self._unit
        view.page.add(
            view.marks((-reach, ground), (reach, ground), (reach, band), (-reach, band), kind=HatchKind.GROUND),
            view.line((-reach, ground), (reach, ground), Ink.GROUND),
        )
        if self._bed:
            half = self._bed / 2
            rest = [on_circle((0.0, 0.0), outer, 270 - half + self._bed * step / 24) for step in range(25)]
            foot = max(outer * math.sin(math.radians(half)) * 1.15, 0.05)
            view.page.add(Group("bed", view.cut((-foot, ground), *rest, (foot, ground))))
        else:
            stand = [(-0.06, ground), (0.06, ground), (0.02, -outer), (-0.02, -outer)]
            view.page.add(Group("bed", view.cut(*stand)))
        inner_arc = [on_circle((0.0, 0.0), radius, 180 + 180 * step / 36) for step in range(37)]
        outer_arc = [on_circle((0.0, 0.0), outer, 360 - 180 * step / 36) for step in range(37)]
        view.page.add(Group("trough", view.cut(*inner_arc, *outer_arc)))
        half = math.sqrt(max(0.0, radius**2 - self._water**2))
        begin = math.degrees(math.atan2(self._water, -half)) % 360
        wet = [on_circle((0.0, 0.0), radius, begin + (540 - 2 * begin) * step / 30) for step in range(31)]
        view.page.add(
            Group("water", (view.marks(*wet, kind=HatchKind.WATER),)),
            view.line((-half, self._water), (half, self._water), Ink.WATER),
        )
        bars = tuple(
            Circle(view.at(side * (radius + self._thick / 2), -0.012), max(0.004, 1.2 * self._unit), Ink.STEEL)
            for side in (-1, 1)
        )
        tie = _TIE * self._unit / 2
        view.page.add(
            Group("tie", (view.box(-outer + 0.01, -0.012 - tie, outer - 0.01, -0.012 + tie, Ink.STEEL),)),
            Group("rim bar", bars),
            view.measure((0.0, 0.0), (radius, 0.0), 14),
        )

    def _draw_along(self) -> None:
        view, length, thick, ground = self._side, self._length, self._thick, self._ground
        left, right = -_GOAT_ROOM - thick, length + thick + _EDGE
        band = ground - _BAND * self._unit
        view.page.add(
            view.marks((left, ground), (right, ground), (right, band), (left, band), kind=HatchKind.GROUND),
            view.line((left, ground), (right, ground), Ink.GROUND),
        )
        under = -self._outer * math.cos(math.radians(self._bed / 2)) if self._bed else -self._outer
        bed = view.cut_box(-thick, ground, length + thick, under)
        shell = view.box(-thick, -self._outer, length + thick, 0.0, Ink.BODY)
        view.page.add(Group("trough", (shell,)), Group("bed", bed))
        tie = _TIE * self._unit / 2
        ties = [view.box(x - tie, -0.02, x + tie, 0.018, Ink.STEEL) for x in self._ties()]
        view.page.add(*(Group("tie", (one,)) for one in ties))
        view.page.add(goat(view.at(-thick - 0.16 - 1.56 * GOAT_SHOULDER + 0.13, ground)))
        self._measure()

    def _measure(self) -> None:
        view, ties = self._side, self._ties()
        found: list[Element] = [view.measure((0.0, self._ground), (self._length, self._ground), -_BAND - 14)]
        if len(ties) > 1:
            found.append(view.measure((ties[-2], 0.0), (ties[-1], 0.0), 14))
        view.page.add(*found)
