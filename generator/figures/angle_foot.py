"""The edge of the base cut through: an angle's foot and a starter stand in it before the concrete is poured.

Starters stand near the water side, where the foot of the wall is pulled when the tank is full; their legs are turned
into the base. An angle never goes through the base: water and rust would follow it.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from generator.calculations import BOOK
from generator.figures.callouts import Callout, column_height, left_column, right_column, row_below, row_height
from generator.figures.cut_parts import MELON, concrete, melon, mesh_line, pipe, points_at, stones
from generator.figures.fonts import Anchor
from generator.figures.ink import HatchKind, Ink
from generator.figures.layout import Block
from generator.figures.page import MARGIN, Page, note_height, note_lines
from generator.figures.scene import VIEW, Circle, Dimension, Group, Hatch, Point, Polyline, Rect, Scene
from generator.figures.shown import shown
from generator.figures.things import HAND_LENGTH, hand
from generator.formula import show
from generator.words import Words

NEEDS = (
    "angle_foot",
    "angle_leg",
    "angle_thickness",
    "base_concrete_thickness",
    "base_projection",
    "stone_thickness",
    "starter_leg",
    "starter_length",
    "starter_diameter",
    "hoop_diameter",
    "hoop_spacing_closing",
    "mesh_cover",
    "inside_mesh_thickness",
    "bar_diameter",
)

_LEFT, _RIGHT = 84.0, 96.0
_ZONE = VIEW - _LEFT - _RIGHT
_HIGHEST = 250.0
_GROUND = 13.0
_FOOT_OFF, _UNDER_OFF, _BASE_OFF = 9.0, 18.0, 10.0
"""Arrowed lines beside what they measure, paper units."""
_FAN = 18.0
_OUTSIDE = 0.15
"""How far the base is drawn beyond the hoops, metres; beyond it a torn edge says that it goes on."""
_ABOVE = 0.08
"""Angle shown above the starter's end, metres."""


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one tank.

    Args:
        values: numbers of the tank, by the names in `NEEDS`.
        words: language of its texts.
    """
    return _Foot(values, words).scene()


class _Foot:
    """x counts from the water side of the angle outward, y from the top of the base, metres."""

    def __init__(self, values: Mapping[str, float], words: Words) -> None:
        self._values = values
        self._words = words
        self._base = values["base_concrete_thickness"] / 1000
        self._stone = values["stone_thickness"] / 1000
        self._foot = values["angle_foot"]
        self._leg = values["angle_leg"] / 1000
        self._starter = values["starter_diameter"] / 1000
        self._turned = values["starter_leg"]
        self._upright = values["starter_length"] - values["starter_leg"]
        self._edge = self._leg + values["hoop_diameter"] / 1000 + min(values["base_projection"], _OUTSIDE)
        self._whole = values["base_projection"] <= _OUTSIDE
        self._inner = -self._turned - 0.08
        self._starter_x = -self._starter / 2
        # The leg lies in the middle of the base, above the stones in any case.
        self._leg_y = -max(self._starter, 0.55 * self._base)
        self._top = self._upright + self._leg_y + _ABOVE
        self._bottom = -max(self._base, self._foot) - self._stone
        self._unit = max((self._edge - self._inner) / _ZONE, (self._top - self._bottom) / (_HIGHEST - _GROUND))
        self._zone_top = 0.0
        self._zone_left = _LEFT

    def scene(self) -> Scene:
        words = self._words
        through = self._foot >= self._base
        note = note_lines(words.say("figure.angle-foot.through" if through else "figure.angle-foot.note"))
        left, right, below = self._left_texts(), self._right_texts(through=through), self._names_below()
        tall = (self._top - self._bottom) / self._unit + _GROUND
        self._zone_top = MARGIN + MELON + 6
        more = max(0.0, max(column_height(left), column_height(right)) + 4 - tall)
        self._zone_top += more
        foot = self._down(self._bottom) + _GROUND
        below_top = foot + _FAN
        note_top = below_top + row_height(below) + 6
        self._page = page = Page(self._unit, note_top + note_height(note) + MARGIN)
        self._draw_ground(foot)
        self._draw_steel()
        self._measure(through=through)
        named = self._left_texts(), self._right_texts(through=through), self._names_below()
        left_column(page, named[0], _LEFT - 22, MARGIN + MELON, foot)
        right_column(page, named[1], VIEW - _RIGHT + 26, MARGIN + MELON, foot)
        row_below(page, named[2], below_top)
        points_at(page, [callout.target for side in named for callout in side])
        page.add(melon(page, VIEW - MARGIN - MELON, MARGIN))
        page.note(note, note_top)
        return page.scene(words.say("figure.angle-foot.title"), words.say("figure.angle-foot.description"), words)

    def _x(self, x: float) -> float:
        spare = _ZONE - (self._edge - self._inner) / self._unit
        return self._zone_left + spare / 2 + (x - self._inner) / self._unit

    def _down(self, y: float) -> float:
        return self._zone_top + (self._top - y) / self._unit

    def _at(self, x: float, y: float) -> Point:
        return self._page.at(self._x(x), self._down(y))

    def _draw_ground(self, foot: float) -> None:
        page, unit = self._page, self._unit
        (x1, low), (x2, high) = self._at(self._inner, -self._base - self._stone), self._at(self._edge, -self._base)
        under = page.at(0, foot)[1]
        right = x2 + 16 * unit
        level = high + 0.4 * self._base
        beside = ((x2, low), (x2, level), (right, level), (right, under)) if self._whole else ((x2, low), (x2, under))
        ground = ((x1, low), *beside, (x1, under))
        surface = (Polyline(ground[1:4], Ink.GROUND),) if self._whole else ()
        page.add(
            Group("ground", (Hatch(ground, HatchKind.GROUND), *surface)),
            stones(x1, x2, low, high, unit),
            concrete(x1, x2, high, self._at(0, 0)[1], unit),
        )
        for x in (self._inner, *(() if self._whole else (self._edge,))):
            page.add(self._torn(x, foot))

    def _torn(self, x: float, foot: float) -> Polyline:
        """There the base goes on."""
        page, high = self._page, self._down(0)
        points = tuple(
            page.at(self._x(x) + (2.5 if step % 2 else -2.5), high + (foot - high) * step / 8) for step in range(9)
        )
        return Polyline(points, Ink.BREAK)

    def _draw_steel(self) -> None:
        page, values, unit = self._page, self._values, self._unit
        low, high = self._at(0, -self._foot), self._at(self._leg, self._top)
        thin = max(values["angle_thickness"] / 1000, 1.2 * unit)
        # The leg that faces us, and the other one as its dark edge, on the outside where the hoops are.
        face = Rect(low, high[0] - low[0], high[1] - low[1], Ink.STEEL_EDGE)
        heel = Rect((high[0] - thin, low[1]), thin, high[1] - low[1], Ink.STEEL)
        page.add(Group("angle", (face, heel)))
        hoop = values["hoop_diameter"] / 1000
        for level in self._hoops():
            page.add(Group("hoop", (Circle(self._at(self._leg + hoop / 2, level), hoop / 2, Ink.STEEL),)))
        mesh = values["inside_mesh_thickness"] / 1000
        x = -self._starter - mesh / 2
        page.add(mesh_line((self._at(x, 0.0), self._at(x, self._top)), mesh, unit))
        path = (
            self._at(self._starter_x, self._leg_y + self._upright),
            self._at(self._starter_x, self._leg_y),
            self._at(self._starter_x - self._turned, self._leg_y),
        )
        page.add(Group("starter", (pipe(path, max(self._starter, 2.2 * unit), Ink.STEEL),)))

    def _hoops(self) -> list[float]:
        """Levels of the hoops above the base; the lowest one lies on it."""
        gap, low = self._values["hoop_spacing_closing"], self._values["hoop_diameter"] / 2000
        return [low + gap * number for number in range(math.floor((self._top - low) / gap) + 1)]

    def _measure(self, *, through: bool) -> None:
        page, unit = self._page, self._unit
        edge, leg, x = self._edge, self._leg, self._starter_x
        page.add(Dimension(self._at(leg, 0.0), self._at(leg, -self._foot), _FOOT_OFF * unit))
        if not through:
            page.add(Dimension(self._at(leg, -self._foot), self._at(leg, -self._base), _UNDER_OFF * unit))
        page.add(
            Dimension(self._at(edge, 0.0), self._at(edge, -self._base), _BASE_OFF * unit),
            Dimension(self._at(x, self._leg_y), self._at(x - self._turned, self._leg_y), self._leg_y - 9 * unit),
            Dimension(self._at(x, self._leg_y + self._upright), self._at(x, self._leg_y), -self._upright_offset()),
        )
        self._hand()

    def _upright_offset(self) -> float:
        return self._turned + 14 * self._unit

    def _hand(self) -> None:
        """An open hand over the starter's leg, where it has room between the arrowed lines."""
        length = HAND_LENGTH / self._unit
        wide = 0.78 * self._turned / self._unit
        tall = (self._leg_y + self._upright) / self._unit - 26
        if 0.8 * length < wide and 1.15 * length < tall:
            x = self._x(self._starter_x - 0.5 * self._turned) + 0.05 * length
            self._page.add(hand(self._page.at(x, self._down(0.0) - 22 - 0.15 * length), forearm=0.15))

    def _left_texts(self) -> list[Callout]:
        words = self._words
        upright = words.with_unit(show(self._upright, 2), BOOK.entry("starter_length").unit)
        x = self._x(self._starter_x) - self._upright_offset() / self._unit
        return [
            Callout(self._text("upright", upright, "end"), (x, self._down(self._leg_y + 0.6 * self._upright))),
            Callout(
                self._text("starter_leg", shown("starter_leg", self._values, words), "end"),
                (self._x(self._starter_x - 0.8 * self._turned), self._down(9 * self._unit)),
            ),
        ]

    def _right_texts(self, *, through: bool) -> list[Callout]:
        values, words = self._values, self._words
        found = [
            Callout(
                self._text("foot", shown("angle_foot", values, words), "start"),
                (self._x(self._leg) + _FOOT_OFF, self._down(-0.3 * self._foot)),
            ),
            Callout(
                self._text("base", shown("base_concrete_thickness", values, words), "start"),
                (self._x(self._edge) + _BASE_OFF, self._down(-0.4 * self._base)),
            ),
        ]
        found += [
            Callout(
                Block.of(words.say("figure.part.angle"), most=62, anchor="start"),
                (self._x(0.7 * self._leg), self._down(0.55 * self._top)),
            ),
            Callout(
                Block.of(words.say("figure.part.hoop"), most=62, anchor="start"),
                (self._x(self._leg + values["hoop_diameter"] / 2000), self._down(self._hoops()[-1])),
            ),
        ]
        if not through:
            under = (self._down(-self._foot) + self._down(-self._base)) / 2
            found.append(Callout(self._text("under", "", "start"), (self._x(self._leg) + _UNDER_OFF, under)))
        return found

    def _text(self, key: str, number: str, anchor: Anchor) -> Block:
        return Block.of(self._words.say_one_of("figure.angle-foot", key), number, most=62, anchor=anchor)

    def _names_below(self) -> list[Callout]:
        words = self._words

        def name(part: str, x: float, y: float) -> Callout:
            return Callout(Block.of(words.say_one_of("figure.part", part), most=70), (self._x(x), self._down(y)))

        return [
            name("starter", self._starter_x - 0.85 * self._turned, self._leg_y),
            name("stone_bed", -0.25 * self._turned, -self._base - self._stone / 2),
            name("ground", 0.5 * self._edge, -self._base - self._stone - 6 * self._unit),
        ]
