"""The foot of the wall cut through, near: starter, mesh that turns up, day joint, cove and floor.

Here most tanks leak, because the full wall bulges and the base holds its foot. The cove lies on rough, damp mortar,
with the mesh carried through behind it; a loose triangle stuck on later keeps no water.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from generator.figures.callouts import Callout, column_height, left_column, right_column
from generator.figures.cut_parts import MELON, box, concrete, melon, mesh_line, mortar, pipe, points_at, stones
from generator.figures.fonts import Anchor
from generator.figures.ink import HatchKind, Ink
from generator.figures.layout import Block
from generator.figures.page import MARGIN, Page, note_height, note_lines
from generator.figures.scene import VIEW, Circle, Dimension, Group, Hatch, Point, Polyline, Scene
from generator.figures.shown import shown
from generator.figures.tank_section import COVE
from generator.figures.things import HAND_LENGTH, hand
from generator.words import Words

NEEDS = (
    "wall_thickness",
    "mesh_cover",
    "inside_mesh_thickness",
    "outside_mesh_thickness",
    "bar_diameter",
    "hoop_diameter",
    "hoop_spacing_closing",
    "starter_diameter",
    "starter_length",
    "starter_leg",
    "mesh_turn_up",
    "floor_mortar_thickness",
    "floor_fall_height",
    "floor_fall",
    "base_concrete_thickness",
    "base_projection",
)

RING_BAR = 0.010
"""Thickness of the base's ring bars as drawn, metres: what is usual; no number of the course."""

_LEFT, _RIGHT = 82.0, 98.0
_ZONE = VIEW - _LEFT - _RIGHT
_HIGHEST = 300.0
_INSIDE, _OUTSIDE = 0.27, 0.12
"""How far the drawing reaches from the wall, metres; beyond it base and floor go on."""
_STONES = 0.07
"""Upper part of the stone bed that is drawn, metres."""
_ABOVE = 0.06


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one tank.

    Args:
        values: numbers of the tank, by the names in `NEEDS`.
        words: language of its texts.
    """
    return _Joint(values, words).scene()


class _Joint:
    """x counts from the wet face of the wall outward, y from the top of the base concrete, metres."""

    def __init__(self, values: Mapping[str, float], words: Words) -> None:
        self._values = values
        self._words = words
        self._wall = values["wall_thickness"] / 1000
        self._hooped = "hoop_diameter" in values  # a tank of mesh alone has neither hoops nor upright bars
        self._base = values["base_concrete_thickness"] / 1000
        self._floor = (values["floor_mortar_thickness"] + values["floor_fall_height"]) / 1000
        self._turn_up = values["mesh_turn_up"]
        self._mesh_level = min(0.5 * self._floor, values["floor_mortar_thickness"] / 2000)
        self._outer = self._wall + min(values["base_projection"], _OUTSIDE)
        self._edge_shown = values["base_projection"] <= _OUTSIDE
        self._top = self._mesh_level + self._turn_up + _ABOVE
        self._bottom = -self._base - _STONES
        self._unit = max((_INSIDE + self._outer) / _ZONE, (self._top - self._bottom) / _HIGHEST)
        self._zone_top = 0.0

    def scene(self) -> Scene:
        words = self._words
        note = note_lines(words.say("figure.wall-floor-joint.note"))
        thick = Block.of(words.say("figure.part.wall"), shown("wall_thickness", self._values, words), most=110)
        first = MARGIN + thick.height() + 26
        tall = (self._top - self._bottom) / self._unit
        self._zone_top = first
        short = max(
            column_height(self._left()) - (first - MARGIN - thick.height()),
            column_height(self._right()) - (first - MARGIN - 2 * MELON),
        )
        self._zone_top = first + max(0.0, short + 4 - tall)
        foot = self._down(self._bottom)
        self._page = page = Page(self._unit, foot + 10 + note_height(note) + MARGIN)
        self._draw_base()
        self._draw_wall()
        self._draw_steel()
        self._draw_joint()
        self._measure(thick)
        self._draw_hand()
        sides = self._left(), self._right()
        left_column(page, sides[0], _LEFT - 4, MARGIN + thick.height(), foot + 2)
        right_column(page, sides[1], VIEW - _RIGHT + 21, MARGIN + 2 * MELON, foot + 2)
        points_at(page, [callout.target for side in sides for callout in side])
        page.add(melon(page, VIEW - MARGIN - MELON, MARGIN))
        page.note(note, foot + 10)
        told = (
            words.say("figure.wall-floor-joint.description")
            if self._hooped
            else words.say("figure.wall-floor-joint.description_of_mesh")
        )
        return page.scene(words.say("figure.wall-floor-joint.title"), told, words)

    def _x(self, x: float) -> float:
        spare = _ZONE - (_INSIDE + self._outer) / self._unit
        return _LEFT + spare / 2 + (x + _INSIDE) / self._unit

    def _down(self, y: float) -> float:
        return self._zone_top + (self._top - y) / self._unit

    def _at(self, x: float, y: float) -> Point:
        return self._page.at(self._x(x), self._down(y))

    def _floor_top(self, x: float) -> float:
        """The finished floor falls away from the wall."""
        return self._floor + x * self._values["floor_fall"] / 100

    def _draw_base(self) -> None:
        page, unit = self._page, self._unit
        (x1, low), (x2, high) = self._at(-_INSIDE, self._bottom), self._at(self._outer, -self._base)
        page.add(stones(x1, x2, low, high, unit), concrete(x1, x2, high, self._at(0, 0)[1], unit))
        floor = [(-_INSIDE, 0.0), (0.0, 0.0), (0.0, self._floor), (-_INSIDE, self._floor_top(-_INSIDE))]
        water = [(-_INSIDE, self._floor_top(-_INSIDE)), (0.0, self._floor), (0.0, self._top), (-_INSIDE, self._top)]
        page.add(
            Group("water", (Hatch(tuple(self._at(*point) for point in water), HatchKind.WATER),)),
            mortar([self._at(*point) for point in floor], "floor"),
        )
        self._torn(-_INSIDE, self._floor_top(-_INSIDE))
        if not self._edge_shown:
            self._torn(self._outer, 0.0)

    def _torn(self, x: float, top: float) -> None:
        """A white strip with a torn edge: there the base goes on."""
        page, count = self._page, 8
        high, low = self._down(top) - 2, self._down(self._bottom) + 2
        points = tuple(
            page.at(self._x(x) + (2.5 if step % 2 else -2.5), high + (low - high) * step / count)
            for step in range(count + 1)
        )
        page.add(Polyline(points, Ink.BREAK))

    def _draw_wall(self) -> None:
        page = self._page
        wall = [(0.0, 0.0), (self._wall, 0.0), (self._wall, self._top), (0.0, self._top)]
        page.add(mortar([self._at(*point) for point in wall], "wall"))
        leg = min(COVE, self._turn_up / 2)
        corner = self._floor
        cove = [(0.0, corner), (0.0, corner + leg)]
        centre = (-leg, corner + leg)
        for step in range(1, 9):
            turn = math.radians(-90 * step / 9)
            cove.append((centre[0] + leg * math.cos(turn), centre[1] + leg * math.sin(turn)))
        cove.append((-leg, self._floor_top(-leg)))
        page.add(mortar([self._at(*point) for point in cove], "cove"))

    def _places(self) -> tuple[float, float, float, float]:
        """Across the wall: middle of the inside mesh, water side of the bars, of the hoops, of the outside mesh."""
        values = self._values
        cover = values["mesh_cover"]
        bar = cover + values["inside_mesh_thickness"]
        hoop = bar + (values["bar_diameter"] if self._hooped else values["starter_diameter"])
        outside = hoop + (values["hoop_diameter"] if self._hooped else 0.0)
        return tuple(place / 1000 for place in (cover + values["inside_mesh_thickness"] / 2, bar, hoop, outside))  # type: ignore[return-value]

    def _hoops(self) -> list[float]:
        if not self._hooped:
            return []
        gap, half = self._values["hoop_spacing_closing"], self._values["hoop_diameter"] / 2000
        return [half + gap * number for number in range(math.floor((self._top - 2 * half) / gap) + 1)]

    def _draw_steel(self) -> None:
        page, values, unit = self._page, self._values, self._unit
        inside, bar, hoop, outside = self._places()
        thick = values["bar_diameter"] / 1000
        (x1, low), (x2, high) = self._at(bar, 0.0), self._at(bar + thick, self._top)
        if self._hooped:
            page.add(Group("upright", (box(x1, x2, low, high, Ink.STEEL_EDGE),)))
        half = values.get("hoop_diameter", 0.0) / 2000
        page.add(*(Group("hoop", (Circle(self._at(hoop + half, level), half, Ink.STEEL),)) for level in self._hoops()))
        outer = values["outside_mesh_thickness"] / 1000
        page.add(mesh_line((self._at(outside + outer / 2, 0.0), self._at(outside + outer / 2, self._top)), outer, unit))
        inner = values["inside_mesh_thickness"] / 1000
        page.add(mesh_line((self._at(inside, 0.0), self._at(inside, self._top)), inner, unit))
        # The floor's mesh runs to the wall and turns up before the wall's own mesh.
        bend = values["mesh_cover"] / 2000
        path = (
            self._at(-_INSIDE, self._mesh_level),
            self._at(bend, self._mesh_level),
            self._at(bend, self._mesh_level + self._turn_up),
        )
        page.add(Group("turned-up", (Polyline(path, Ink.MESH_TURNED),)))
        starter = values["starter_diameter"] / 1000
        x = bar + starter / 2
        level = self._starter_level()
        up = min(self._starter_end(), self._top - 0.01)
        reach = max(x - values["starter_leg"], -_INSIDE)
        bent = (self._at(x, up), self._at(x, level), self._at(reach, level))
        page.add(Group("starter", (pipe(bent, max(starter, 2.0 * unit), Ink.STEEL),)))
        for across in (0.3, 0.75):
            spot = self._ring_bar(across)
            page.add(Group("ring-bar", (Circle(self._at(*spot), RING_BAR / 2, Ink.STEEL),)))

    def _starter_level(self) -> float:
        """Height of the starter's leg: in the middle of the base."""
        return -max(2 * self._values["starter_diameter"] / 1000, 0.5 * self._base)

    def _starter_end(self) -> float:
        return self._values["starter_length"] - self._values["starter_leg"] + self._starter_level()

    def _ring_bar(self, across: float) -> Point:
        """Two bars that run round the base under and just outside the wall."""
        return self._wall + across * (self._outer - self._wall), -min(0.6 * self._base, self._base - RING_BAR)

    def _draw_joint(self) -> None:
        """The top of the base, left rough: the line between two days of work."""
        page, count = self._page, 10
        first, last = self._x(0.0), self._x(self._wall)
        points = tuple(
            page.at(first + (last - first) * step / count, self._down(0.0) + (1.6 if step % 2 else -1.6))
            for step in range(count + 1)
        )
        page.add(Group("day-joint", (Polyline(points, Ink.JOINT),)))

    def _measure(self, thick: Block) -> None:
        page = self._page
        page.add(
            Dimension(self._at(0.0, self._top), self._at(self._wall, self._top), 12 * self._unit),
            Dimension(
                self._at(0.0, self._mesh_level),
                self._at(0.0, self._mesh_level + self._turn_up),
                self._turn_up_offset() * self._unit,
            ),
            Dimension(self._at(self._outer, 0.0), self._at(self._outer, -self._base), 8 * self._unit),
        )
        x = self._x(self._wall / 2)
        top = self._down(self._top) - 19 - thick.height()
        page.text(thick, [(x - aside, top) for aside in range(0, 100, 6)])

    def _turn_up_offset(self) -> float:
        return min(COVE / self._unit + 12, 0.45 * _INSIDE / self._unit)

    def _draw_hand(self) -> None:
        """An open hand in the tank, beside the turned-up mesh."""
        length = HAND_LENGTH / self._unit
        left, right = self._x(-_INSIDE), self._x(0.0) - self._turn_up_offset() - 4
        if 0.8 * length < right - left and 1.2 * length < (self._top - self._floor) / self._unit - 8:
            down = self._down(self._floor_top(-_INSIDE)) - 6 - 0.15 * length
            self._page.add(hand(self._page.at((left + right) / 2 + 0.09 * length, down), forearm=0.15))

    def _left(self) -> list[Callout]:
        values, words = self._values, self._words
        x = self._x(0.0) - self._turn_up_offset()
        turned = Block.of(
            words.say("figure.wall-floor-joint.turned_up"),
            shown("mesh_turn_up", values, words),
            most=_LEFT - 12,
            anchor="end",
        )
        leg = min(COVE, self._turn_up / 2)
        starter = self._starter_level()
        return [
            Callout(turned, (x, self._down(self._mesh_level + 0.94 * self._turn_up))),
            self._name("cove", (-0.2 * leg, self._floor + 0.2 * leg), "end"),
            self._name(
                "floor_mortar", (-0.9 * _INSIDE, (self._mesh_level + self._floor_top(-0.9 * _INSIDE)) / 2), "end"
            ),
            self._name("floor_mesh", (-0.82 * _INSIDE, self._mesh_level), "end"),
            self._name("starter", (max(-0.9 * _INSIDE, -0.7 * values["starter_leg"]), starter), "end"),
        ]

    def _right(self) -> list[Callout]:
        values, words = self._values, self._words
        _, bar, hoop, outside = self._places()
        base = Block.of(
            words.say("figure.part.base"),
            shown("base_concrete_thickness", values, words),
            most=_RIGHT - 28,
            anchor="start",
        )
        hoops = self._hoops()
        found = [
            self._name("mesh", (outside + values["outside_mesh_thickness"] / 2000, 0.92 * self._top), "start"),
            *(
                self._name("hoop", (hoop + values["hoop_diameter"] / 2000, level), "start")
                for level in hoops[len(hoops) // 2 :][:1]
            ),
            self._name("day_joint", (self._wall, 0.0), "start"),
            Callout(base, (self._x(self._outer) + 8, self._down(-0.4 * self._base))),
            self._name("ring_bars", self._ring_bar(0.75), "start"),
            self._name("stone_bed", (0.9 * self._outer, -self._base - 0.6 * _STONES), "start"),
        ]
        end = self._starter_end()
        # A longer starter stands before the bar up to the edge of the picture.
        if self._hooped and end < self._top - 0.05:
            place = (bar + values["bar_diameter"] / 2000, (end + self._top) / 2)
            found.append(self._name("bar", place, "start"))
        return found

    def _name(self, part: str, target: Point, anchor: Anchor) -> Callout:
        most = _LEFT - 12 if anchor == "end" else _RIGHT - 28
        block = Block.of(self._words.say_one_of("figure.part", part), most=most, anchor=anchor)
        return Callout(block, (self._x(target[0]), self._down(target[1])))
