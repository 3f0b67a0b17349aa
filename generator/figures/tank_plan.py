"""The tank from above, without its roof: four circles told apart, the pipes through the wall, and the manhole."""

from __future__ import annotations

import math
from collections.abc import Mapping

from generator.figures.callouts import Callout, left_column, right_column
from generator.figures.cut_parts import pipe, points_at
from generator.figures.ink import HatchKind, Ink
from generator.figures.layout import Block
from generator.figures.page import MARGIN, Page, heading_height, note_height, note_lines
from generator.figures.scene import (
    VIEW,
    Circle,
    Dimension,
    Group,
    Hatch,
    Label,
    Line,
    Point,
    Polyline,
    Scene,
    on_circle,
)
from generator.figures.shown import shown
from generator.figures.tank_section import MANHOLE
from generator.figures.things import FOOT_LENGTH, feet
from generator.words import Words

NEEDS = (
    "inside_diameter",
    "frame_diameter",
    "outside_diameter",
    "base_diameter",
    "overflow_bore",
    "outlet_bore",
    "drain_bore",
)

_BASE = 100.0
"""Radius of the base, paper units."""
_ROW, _FIRST_ROW = 24.0, 30.0
_PAST = 13.0
"""How far pipes reach past the base, paper units."""
_DIRECTIONS: Mapping[str, float] = {"overflow": 35.0, "outlet": -25.0, "washout": 205.0}
"""Where the pipes leave the tank, degrees from the right."""
_MANHOLE = 128.0
_MOST = 66.0
_ASIDE = 66.0
"""Paper below the rows where their texts stand beside them."""
_LONGEST_FOOT = 30.0


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one tank.

    Args:
        values: numbers of the tank, by the names in `NEEDS`.
        words: language of its texts.
    """
    return _Plan(values, words).scene()


class _Plan:
    def __init__(self, values: Mapping[str, float], words: Words) -> None:
        self._values = values
        self._words = words
        self._radii = {which: values[f"{which}_diameter"] / 2 for which in ("inside", "frame", "outside", "base")}
        self._unit = self._radii["base"] / _BASE
        self._bores = {
            "overflow": values["overflow_bore"] / 1000,
            "outlet": values["outlet_bore"] / 1000,
            "washout": values["drain_bore"] / 1000,
        }
        self._head = words.say("figure.tank-plan.from_above")
        self._note = note_lines(words.say("figure.tank-plan.note"))

    def scene(self) -> Scene:
        words = self._words
        self._in_rows = self._rows_fit()
        self._top = MARGIN + heading_height(self._head) + _PAST
        rows_end = self._top + 2 * _BASE + _FIRST_ROW + 3 * _ROW + (0 if self._in_rows else _ASIDE)
        self._page = page = Page(self._unit, rows_end + 8 + note_height(self._note) + MARGIN)
        self._middle = (VIEW / 2, self._top + _BASE)
        self._centre = page.at(*self._middle)
        page.heading(1, self._head, MARGIN)
        self._draw_circles()
        self._draw_pipes()
        self._draw_manhole()
        self._draw_feet()
        self._measure()
        self._name_parts()
        page.note(self._note, rows_end + 8)
        return page.scene(words.say("figure.tank-plan.title"), words.say("figure.tank-plan.description"), words)

    def _on(self, radius: float, degrees: float) -> Point:
        """A point of the paper; the radius in metres."""
        x, y = on_circle((0.0, 0.0), radius / self._unit, degrees)
        return self._middle[0] + x, self._middle[1] - y

    def _ring(self, outer: float, inner: float) -> tuple[Point, ...]:
        """The outline of a ring, cut open at one place, so that marks fill it but not its middle."""
        steps = range(61)
        return tuple(on_circle(self._centre, outer, 6.0 * step) for step in steps) + tuple(
            on_circle(self._centre, inner, 360 - 6.0 * step) for step in steps
        )

    def _draw_circles(self) -> None:
        page, radii, centre = self._page, self._radii, self._centre
        water = tuple(on_circle(centre, radii["inside"], 6.0 * step) for step in range(60))
        page.add(
            Group("base", (Circle(centre, radii["base"], Ink.CONCRETE),)),
            Group("wall", (Circle(centre, radii["outside"], Ink.MORTAR_CUT),)),
            Hatch(self._ring(radii["outside"], radii["inside"]), HatchKind.MORTAR),
            Group("water", (Circle(centre, radii["inside"], Ink.BODY), Hatch(water, HatchKind.WATER))),
            Group("frame", (Circle(centre, radii["frame"], Ink.FRAME_LINE),)),
        )

    def _draw_pipes(self) -> None:
        page, radii = self._page, self._radii
        for name, degrees in _DIRECTIONS.items():
            end = radii["base"] + _PAST * self._unit
            start = 0.0 if name == "washout" else radii["inside"] - 0.02
            bore = max(min(self._bores[name], 0.3 * radii["inside"]), 2.5 * self._unit)
            way = tuple(on_circle(self._centre, radius, degrees) for radius in (start, end))
            parts: list[Circle | Polyline | Line] = [pipe(way, bore)]
            if name == "washout":
                parts.append(Circle(self._centre, 0.8 * bore, Ink.STEEL_EDGE))
            if name == "overflow":
                turn = math.radians(degrees + 90)
                across = (bore * math.cos(turn), bore * math.sin(turn))
                parts.append(
                    Line(
                        (way[1][0] - across[0], way[1][1] - across[1]),
                        (way[1][0] + across[0], way[1][1] + across[1]),
                        Ink.SCREEN,
                    )
                )
            page.add(Group(name, tuple(parts)))

    def _hole(self) -> tuple[Point, float]:
        """Middle and half side of the manhole, metres."""
        inside = self._radii["inside"]
        return on_circle(self._centre, 0.55 * inside, _MANHOLE), min(MANHOLE, 0.5 * inside) / 2

    def _draw_manhole(self) -> None:
        (x, y), half = self._hole()
        squares = []
        for side in (half + 0.12 * half, half):
            corners = ((x - side, y - side), (x + side, y - side), (x + side, y + side), (x - side, y + side))
            squares.append(Polyline(corners, Ink.BODY, closed=True))
        self._page.add(Group("manhole", tuple(squares)))

    def _draw_feet(self) -> None:
        """A pair of feet beside the base, where somebody stands and looks."""
        length = FOOT_LENGTH / self._unit
        if length <= _LONGEST_FOOT:
            self._page.add(feet(self._page.at(VIEW / 2 + _BASE + 18, self._top + 2 * _BASE)))

    def _measure(self) -> None:
        """Each diameter on its own row; the numbers stand in the rows if they find room there, else beside them."""
        page, words = self._page, self._words
        down = self._top + 2 * _BASE + _FIRST_ROW
        aside: tuple[list[Callout], list[Callout]] = ([], [])
        for row, (which, radius) in enumerate(self._radii.items()):
            level = down + row * _ROW
            ends = [(self._centre[0] + side * radius, self._centre[1]) for side in (-1, 1)]
            text = words.say_one_of("figure.tank-plan", which)
            number = shown(f"{which}_diameter", self._values, words)
            labels: tuple[Label, ...] = ()
            if self._in_rows:
                labels = page.row(text, number, VIEW / 2, level - 5.5)
            else:
                side = row % 2
                block = Block.of(text, number, most=_MOST, anchor="start" if side else "end")
                aside[side].append(Callout(block, (VIEW / 2 + (2 * side - 1) * (radius / self._unit - 12), level)))
            page.add(Dimension(ends[0], ends[1], -(level - self._middle[1]) * self._unit, labels))
        if not self._in_rows:
            top, foot = down - 18, down + 3 * _ROW + _ASIDE
            left_column(page, aside[0], VIEW / 2 - _BASE - 8, top, foot)
            right_column(page, aside[1], VIEW / 2 + _BASE + 8, top, foot)
            points_at(page, [callout.target for side in aside for callout in side])

    def _rows_fit(self) -> bool:
        """Whether each text fits between the arrowheads of its own row; lines of larger circles run further out."""
        for which, radius in self._radii.items():
            text = self._words.say_one_of("figure.tank-plan", which)
            number = shown(f"{which}_diameter", self._values, self._words)
            width = Block.of(text, most=VIEW).width() + Block.of("", number, most=VIEW).width() + 5
            if width > 2 * radius / self._unit - 20:
                return False
        return True

    def _name_parts(self) -> None:
        page = self._page
        (x, y), half = self._hole()
        hole = ((x - 0.9 * half) / self._unit, page.height - y / self._unit)
        past = self._radii["base"] + 0.6 * _PAST * self._unit
        left = [
            self._name("manhole", hole, left=True),
            self._name("washout_pipe", self._on(past, _DIRECTIONS["washout"]), left=True),
            self._name("base", self._on((self._radii["base"] + self._radii["outside"]) / 2, 168), left=True),
        ]
        right = [
            self._name("overflow_pipe", self._on(past, _DIRECTIONS["overflow"]), left=False),
            self._name("outlet_pipe", self._on(past, _DIRECTIONS["outlet"]), left=False),
            self._name("wall", self._on((self._radii["inside"] + self._radii["outside"]) / 2, 5), left=False),
        ]
        top, foot = self._top - 4, self._top + 1.75 * _BASE
        left_column(page, left, VIEW / 2 - _BASE - 8, top, foot)
        right_column(page, right, VIEW / 2 + _BASE + 8, top, foot)
        points_at(page, [callout.target for callout in (*left, *right)])

    def _name(self, part: str, target: Point, *, left: bool) -> Callout:
        block = Block.of(self._words.say_one_of("figure.part", part), most=_MOST, anchor="end" if left else "start")
        return Callout(block, target)
