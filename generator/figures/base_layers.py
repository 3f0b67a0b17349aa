"""What the tank stands on: each layer ends before the one below, like an open stair from the ground up to the floor."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.callouts import Callout, column_height, left_column, right_column
from generator.figures.cut_parts import concrete, mesh_line, mortar, points_at, stones
from generator.figures.ink import HatchKind, Ink
from generator.figures.layout import Block
from generator.figures.page import MARGIN, Page, note_height, note_lines
from generator.figures.scene import VIEW, Dimension, Group, Hatch, Point, Polyline, Scene
from generator.figures.shown import shown
from generator.figures.things import HAND_LENGTH, hand
from generator.words import Words

NEEDS = ("stone_thickness", "base_concrete_thickness", "floor_mortar_thickness")

_LEFT, _RIGHT = 96.0, 104.0
_ZONE = VIEW - _LEFT - _RIGHT
_HIGHEST, _HAND = 160.0, 92.0
"""Height of all layers, and of the hand beside them, at most; paper units."""
_ENDS = {"stone": 0.86, "concrete": 0.64, "mesh": 0.44, "mortar": 0.24}
"""How far each layer reaches from the left, as a share of the picture."""
_GROUND = 36.0
_OFF = 9.0
_MESH = 0.006
"""Thickness of the mesh as drawn, metres; no number of the course."""


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one base.

    Args:
        values: numbers of the tank, by the names in `NEEDS`.
        words: language of its texts.
    """
    return _Layers(values, words).scene()


class _Layers:
    """y counts from the ground up, metres."""

    def __init__(self, values: Mapping[str, float], words: Words) -> None:
        self._values = values
        self._words = words
        self._stone = values["stone_thickness"] / 1000
        self._concrete = self._stone + values["base_concrete_thickness"] / 1000
        self._mortar = self._concrete + values["floor_mortar_thickness"] / 1000
        self._mesh = (self._concrete + self._mortar) / 2
        self._unit = max(self._mortar / _HIGHEST, HAND_LENGTH / _HAND)
        self._ground_down = 0.0

    def scene(self) -> Scene:
        words = self._words
        note = note_lines(words.say("figure.base-layers.note"))
        left, right = self._left(), self._right()
        tall = self._mortar / self._unit
        need = max(
            column_height(right) - _GROUND + 4, column_height(left) + HAND_LENGTH / self._unit * 1.15 + 8, tall + 18
        )
        self._ground_down = MARGIN + need + 6
        foot = self._ground_down + _GROUND
        self._page = page = Page(self._unit, foot + 8 + note_height(note) + MARGIN)
        self._draw_layers(foot)
        self._measure()
        left, right = self._left(), self._right()
        hand_top = self._ground_down - 1.15 * HAND_LENGTH / self._unit
        left_column(page, left, _LEFT - 22, MARGIN, hand_top - 4)
        right_column(page, right, VIEW - _RIGHT + 6, MARGIN, foot)
        points_at(page, [callout.target for callout in (*left, *right)])
        size = HAND_LENGTH / self._unit
        page.add(hand(page.at(MARGIN + 2 + 0.46 * size, self._ground_down - 0.15 * size), forearm=0.15))
        page.note(note, foot + 8)
        return page.scene(words.say("figure.base-layers.title"), words.say("figure.base-layers.description"), words)

    def _x(self, share: float) -> float:
        return _LEFT + share * _ZONE

    def _down(self, y: float) -> float:
        return self._ground_down - y / self._unit

    def _at(self, share: float, y: float) -> Point:
        return self._page.at(self._x(share), self._down(y))

    def _draw_layers(self, foot: float) -> None:
        page, unit = self._page, self._unit
        left, low = self._at(0.0, 0.0)
        corners = (
            page.at(_LEFT - 14, foot),
            page.at(self._x(1.0), foot),
            self._at(1.0, 0.0),
            page.at(_LEFT - 14, self._ground_down),
        )
        page.add(Group("ground", (Hatch(corners, HatchKind.GROUND), Polyline(corners[2:], Ink.GROUND))))
        page.add(
            stones(left, self._at(_ENDS["stone"], 0)[0], low, self._at(0, self._stone)[1], unit),
            concrete(
                left,
                self._at(_ENDS["concrete"], 0)[0],
                self._at(0, self._stone)[1],
                self._at(0, self._concrete)[1],
                unit,
            ),
        )
        end = _ENDS["mortar"]
        floor = [(0.0, self._concrete), (end, self._concrete), (end, self._mortar), (0.0, self._mortar)]
        page.add(mortar([self._at(*point) for point in floor], "floor"))
        page.add(
            mesh_line(
                (self._at(0.0, self._mesh), self._at(_ENDS["mesh"], self._mesh)), max(_MESH, 3.2 * unit), unit, 6.0
            )
        )
        page.add(self._torn())

    def _torn(self) -> Polyline:
        """On the left all layers go on."""
        page, count = self._page, 12
        high, low = self._down(self._mortar) - 2, self._ground_down + 1
        return Polyline(
            tuple(
                page.at(_LEFT + (2.5 if step % 2 else -2.5), high + (low - high) * step / count)
                for step in range(count + 1)
            ),
            Ink.BREAK,
        )

    def _measure(self) -> None:
        page, unit = self._page, self._unit
        page.add(
            Dimension(self._at(0.0, self._mortar), self._at(0.0, self._concrete), -_OFF * unit),
            Dimension(
                self._at(_ENDS["concrete"], self._concrete), self._at(_ENDS["concrete"], self._stone), _OFF * unit
            ),
            Dimension(self._at(_ENDS["stone"], self._stone), self._at(_ENDS["stone"], 0.0), _OFF * unit),
        )

    def _left(self) -> list[Callout]:
        floor = Block.of(
            self._words.say("figure.part.floor_mortar"),
            shown("floor_mortar_thickness", self._values, self._words),
            most=_LEFT - 26,
            anchor="end",
        )
        return [Callout(floor, (_LEFT - _OFF, self._down((self._mortar + self._concrete) / 2)))]

    def _right(self) -> list[Callout]:
        values, words = self._values, self._words
        most = _RIGHT - 12

        def name(part: str, number: str, x: float, y: float) -> Callout:
            block = Block.of(words.say_one_of("figure.part", part), number, most=most, anchor="start")
            return Callout(block, (x, self._down(y)))

        return [
            name("floor_mesh", "", self._x(0.75 * _ENDS["mesh"] + 0.25 * _ENDS["mortar"]), self._mesh),
            name(
                "base",
                shown("base_concrete_thickness", values, words),
                self._x(_ENDS["concrete"]) + _OFF,
                (self._concrete + self._stone) / 2,
            ),
            name("stone_bed", shown("stone_thickness", values, words), self._x(_ENDS["stone"]) + _OFF, self._stone / 2),
            name("ground", "", self._x(0.93), -10 * self._unit),
        ]
