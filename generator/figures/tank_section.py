"""The whole tank cut through the middle: stone bed, base, floor, wall, pipes, water and roof, all to one scale."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from typing import TypeAlias

from generator.calculations.bands import VILLAGE_SPAN
from generator.figures.callouts import (
    Callout,
    column_height,
    left_column,
    row_above,
    row_below,
    row_height,
)
from generator.figures.cut_parts import (
    MELON,
    box,
    concrete,
    melon,
    mortar,
    paper,
    pipe,
    points_at,
    stones,
    water_mark,
)
from generator.figures.fonts import Anchor
from generator.figures.ink import HatchKind, Ink
from generator.figures.layout import Block
from generator.figures.page import MARGIN, Page, note_height, note_lines
from generator.figures.people import PERSON_HEIGHT, person
from generator.figures.scene import VIEW, Dimension, Element, Group, Hatch, Line, Point, Polyline, Scene
from generator.figures.shown import shown
from generator.figures.things import BUCKET_HEIGHT, bucket
from generator.words import Words

NEEDS = (
    "inside_diameter",
    "outside_diameter",
    "base_diameter",
    "wall_height",
    "water_depth",
    "overflow_drop",
    "base_concrete_thickness",
    "stone_thickness",
    "floor_mortar_thickness",
    "floor_fall_height",
    "roof_thickness",
    "overflow_bore",
    "outlet_bore",
    "drain_bore",
    "dead_storage_height",
)

ROOF_KIND = "roof_kind"
"""Name of the number that says which roof is drawn: 0 flat, 1 dome, 2 cone, 3 ribs, 4 column. Without it the roof is
flat; a dome, where the tank is wider than the course lets a village span flat."""
FLAT, DOME, CONE, RIBS, COLUMN = range(5)
ROOF_NEEDS: Mapping[int, tuple[str, ...]] = {
    FLAT: (),
    DOME: ("roof_rise",),
    CONE: ("roof_rise",),
    RIBS: ("rib_spacing", "rib_depth"),
    COLUMN: ("column_width", "column_head_diameter"),
}
"""What a roof is drawn from beside the numbers in `NEEDS`."""

COVE = 0.075
"""Leg of the cove as drawn, metres: what is usual; no number of the course."""
MANHOLE = 0.6
"""Clear way of the manhole as drawn, metres: what is usual; no number of the course."""
RIM = 0.1
_RIB_WIDTH = 0.1

_Named: TypeAlias = tuple[Block, Point]
"""A text, and the part that it names: x and y as in the drawing."""

_LEFT, _DIMENSIONS = 60.0, 32.0
"""Paper for the texts on the left, and for the arrowed lines beside the tank."""
_ZONE = VIEW - MARGIN - _LEFT - _DIMENSIONS
_LINE_OF_TEXT = 21.0
_FOR_ACROSS = 40.0
"""Water this deep, in paper units, has room for a line of text above the arrowed line."""
_HIGHEST = 250.0
_GROUND = 15.0
_FAN = 16.0
_STEP = 9.0
"""From one arrowed line to the next, paper units."""
_SMALL_TANK = 0.9
"""Beside a wall lower than this a bucket shows the size, else a person; metres."""


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one tank.

    Args:
        values: numbers of the tank, by the names in `NEEDS`; `ROOF_KIND` may say which roof, and the roof's own numbers
            in `ROOF_NEEDS` must then be there.
        words: language of its texts.
    """
    return _Section(values, words).scene()


def _usual_roof(values: Mapping[str, float]) -> int:
    wide = values["inside_diameter"] > VILLAGE_SPAN
    return DOME if wide and all(name in values for name in ROOF_NEEDS[DOME]) else FLAT


class _Section:
    """x counts from the middle of the tank, y from the finished floor at the wall, metres."""

    def __init__(self, values: Mapping[str, float], words: Words) -> None:
        self._values = values
        self._words = words
        self._left_x, self._zone_top = _LEFT + _DIMENSIONS, 0.0
        self._kind = round(values.get(ROOF_KIND, _usual_roof(values)))
        if self._kind not in ROOF_NEEDS:
            raise KeyError(f"{ROOF_KIND} {self._kind}")
        self._inside, self._outside, self._base = (
            values[f"{which}_diameter"] / 2 for which in ("inside", "outside", "base")
        )
        self._height, self._depth = values["wall_height"], values["water_depth"]
        self._fall = values["floor_fall_height"] / 1000
        self._concrete = -values["floor_mortar_thickness"] / 1000 - self._fall
        self._stone = self._concrete - values["base_concrete_thickness"] / 1000
        self._bottom = self._stone - values["stone_thickness"] / 1000
        self._ground = self._concrete - 0.35 * values["base_concrete_thickness"] / 1000
        self._bores = {name: values[f"{name}_bore"] / 1000 for name in ("overflow", "outlet", "drain")}
        self._bores["overflow"] = min(self._bores["overflow"], 0.9 * values["overflow_drop"])
        self._bores["outlet"] = min(self._bores["outlet"], 0.5 * self._depth)
        self._out = self._outside + max(0.1, self._bores["overflow"])
        self._person = self._height >= _SMALL_TANK
        self._size_high = PERSON_HEIGHT if self._person else BUCKET_HEIGHT
        half = 0.22 if self._person else 0.17
        self._beside = max(self._base, self._out + self._bores["overflow"] / 2) + half + 0.03
        self._right = self._beside + half
        self._rim_top = self._roof_top(self._manhole()[0] if self._kind in (DOME, CONE) else 0.0) + RIM + 0.05
        self._top = max(self._rim_top, self._roof_top(0.0), self._ground + self._size_high)
        self._unit = max(
            (self._right + self._base) / _ZONE, (self._top - self._bottom) / (_HIGHEST - _GROUND), 0.6 / _ZONE
        )

    def scene(self) -> Scene:
        words, unit = self._words, self._unit
        self._note = note_lines(words.say("figure.tank-section.note"))
        deep, wide = self._depth / unit, 2 * self._inside / unit
        self._across_middle = -0.5 * self._inside if self._kind == COLUMN else 0.0
        if self._kind == COLUMN:
            wide = wide / 2 - self._values["column_head_diameter"] / unit
        self._across_inside = deep >= _FOR_ACROSS and wide >= self._row_width("inside_diameter") + 22
        left, above, below = self._beside_it(), self._names_above(), self._names_below()
        row_foot = MARGIN + MELON + 2 + row_height(self._callouts(above))
        tall = (self._top - self._bottom) / unit + _GROUND
        self._zone_top = row_foot + _FAN + max(0.0, column_height(self._callouts(left)) - tall)
        foot = self._down(self._bottom) + _GROUND
        below_top = foot + _FAN
        note_top = below_top + row_height(self._callouts(below)) + 6
        self._page = page = Page(unit, note_top + note_height(self._note) + MARGIN)
        self._draw_ground(foot)
        self._draw_tank()
        self._draw_pipes()
        self._draw_size()
        self._draw_dimensions()
        named = [self._callouts(side) for side in (left, above, below)]
        left_column(page, named[0], _LEFT - 2, row_foot + 2, foot + 2)
        row_above(page, named[1], row_foot)
        row_below(page, named[2], below_top)
        points_at(page, [callout.target for side in named for callout in side])
        page.add(melon(page, VIEW - MARGIN - MELON, MARGIN))
        page.note(self._note, note_top)
        return page.scene(words.say("figure.tank-section.title"), words.say("figure.tank-section.description"), words)

    def _x(self, x: float) -> float:
        return self._left_x + (x + self._base) / self._unit

    def _down(self, y: float) -> float:
        return self._zone_top + (self._top - y) / self._unit

    def _at(self, x: float, y: float) -> Point:
        """A point of the scene, metres."""
        return self._page.at(self._x(x), self._down(y))

    def _paper(self, x: float, y: float) -> Point:
        """A point in paper units."""
        return self._x(x), self._down(y)

    def _many(self, points: Sequence[Point]) -> tuple[Point, ...]:
        return tuple(self._at(*point) for point in points)

    def _box(self, edges: tuple[float, float, float, float], ink: Ink) -> Polyline:
        left, right, low, high = edges
        (x1, y1), (x2, y2) = self._at(left, low), self._at(right, high)
        return box(x1, x2, y1, y2, ink)

    # The roof.

    def _roof_under(self, x: float) -> float:
        """Height of the roof's underside."""
        if self._kind not in (DOME, CONE):
            return self._height
        rise, half = self._values["roof_rise"], self._outside
        share = min(1.0, abs(x) / half)
        if self._kind == CONE:
            return self._height + rise * (1 - share)
        radius = (half**2 + rise**2) / (2 * rise)
        return self._height + rise - radius + math.sqrt(max(0.0, radius**2 - (share * half) ** 2))

    def _roof_top(self, x: float) -> float:
        return self._roof_under(x) + self._values["roof_thickness"] / 1000

    def _manhole(self) -> tuple[float, float]:
        """Left and right edge of the clear way; off the middle, where no column stands."""
        half = min(MANHOLE, 0.5 * self._inside) / 2
        middle = -0.5 * self._inside
        return middle - half, middle + half

    def _roof(self) -> Iterator[Element]:
        steps = [self._outside * (step / 24 - 1) for step in range(49)]
        under = [(x, self._roof_under(x)) for x in steps]
        over = [(x, self._roof_top(x)) for x in reversed(steps)]
        yield mortar(self._many([*under, *over]), "roof")
        if self._kind == RIBS:
            depth = self._values["rib_depth"] / 1000
            gap, half = self._values["rib_spacing"], min(_RIB_WIDTH, 0.4 * self._values["rib_spacing"]) / 2
            reach = math.floor((self._inside - half) / gap)
            for number in range(-reach, reach + 1):
                x = number * gap
                ribs = self._many(
                    [
                        (x - half, self._height - depth),
                        (x + half, self._height - depth),
                        (x + half, self._height),
                        (x - half, self._height),
                    ]
                )
                yield mortar(ribs, "rib")
        if self._kind == COLUMN and self._values["column_width"] > 0:
            yield self._column()
        yield self._rim()

    def _column(self) -> Element:
        half = self._values["column_width"] / 2
        head = max(half, min(self._values["column_head_diameter"] / 2, 0.9 * self._inside))
        flare = self._height - min(head - half, 0.4 * self._height)
        right = [(half, -self._fall), (half, flare), (head, self._height)]
        left = [(-x, y) for x, y in reversed(right)]
        return Group("column", (Polyline(self._many([*right, *left]), Ink.CONCRETE, closed=True),))

    def _rim(self) -> Element:
        left, right = self._manhole()
        wall = 0.05
        level = max(self._roof_top(left), self._roof_top(right)) + RIM
        parts: list[Element] = []
        for inner, outer in ((left, left - wall), (right, right + wall)):
            corners = [
                (outer, self._roof_top(outer)),
                (inner, self._roof_top(inner)),
                (inner, level),
                (outer, level),
            ]
            parts.append(Polyline(self._many(corners), Ink.MORTAR_CUT, closed=True))
        hole = [
            (left, self._roof_under(left)),
            (right, self._roof_under(right)),
            (right, self._roof_top(right)),
            (left, self._roof_top(left)),
        ]
        parts.append(Polyline(self._many(hole), Ink.BODY, closed=True))
        lid = [
            (left - wall - 0.03, level - 0.05),
            (left - wall - 0.03, level + 0.03),
            (right + wall + 0.03, level + 0.03),
            (right + wall + 0.03, level - 0.05),
        ]
        parts.append(Polyline(self._many(lid), Ink.STEEL_LINE))
        return Group("manhole", tuple(parts))

    # The rest of the tank.

    def _draw_ground(self, foot: float) -> None:
        """Ground all round the base: a trough in it holds base and stones."""
        page = self._page
        left, right = self._left_x - _DIMENSIONS, self._x(self._right)
        level, bottom = self._down(self._ground), self._down(self._bottom)
        edges = self._x(-self._base), self._x(self._base)
        outline = [
            (left, level),
            (edges[0], level),
            (edges[0], bottom),
            (edges[1], bottom),
            (edges[1], level),
            (right, level),
            (right, foot),
            (left, foot),
        ]
        points = tuple(page.at(*point) for point in outline)
        page.add(
            Group(
                "ground",
                (
                    Hatch(points, HatchKind.GROUND),
                    Polyline(points[:6], Ink.GROUND),
                ),
            )
        )

    def _draw_tank(self) -> None:
        page, unit = self._page, self._unit
        (x1, y1), (x2, y2) = self._at(-self._base, self._bottom), self._at(self._base, self._stone)
        page.add(stones(x1, x2, y1, y2, unit))
        page.add(concrete(x1, x2, y2, self._at(0, self._concrete)[1], unit))
        inside, outside = self._inside, self._outside
        water = [(-inside, 0), (0, -self._fall), (inside, 0), (inside, self._depth), (-inside, self._depth)]
        page.add(Group("water", (Hatch(self._many(water), HatchKind.WATER),)))
        floor = [(-inside, self._concrete), (inside, self._concrete), (inside, 0), (0, -self._fall), (-inside, 0)]
        page.add(mortar(self._many(floor), "floor"))
        for side in (-1, 1):
            wall = [
                (side * inside, self._concrete),
                (side * outside, self._concrete),
                (side * outside, self._height),
                (side * inside, self._height),
            ]
            page.add(mortar(self._many(wall), "wall"))
        leg = min(COVE, 0.3 * inside)
        for side in (-1, 1):
            foot = (side * (inside - leg), -self._fall * leg / inside)
            cove = [(side * inside, 0), (side * inside, leg), (side * (inside - 0.35 * leg), 0.35 * leg), foot]
            page.add(mortar(self._many(cove), "cove"))
        page.add(*self._roof())
        half = min(14 * unit, 0.3 * inside)
        page.add(water_mark(self._at(0.55 * inside, self._depth), unit, half))
        page.add(Line(self._at(-inside, self._depth), self._at(inside, self._depth), Ink.WATER_LINE))

    def _outlet_level(self) -> float:
        bore = self._bores["outlet"]
        return min(self._values["dead_storage_height"], self._depth - bore) + bore / 2

    def _drain_level(self) -> float:
        return self._concrete - max(self._bores["drain"], self._values["base_concrete_thickness"] / 1000) / 2

    def _pipe(self, name: str, points: Sequence[Point], bore: float, *more: Element) -> Group:
        return Group(name, (pipe(self._many(points), max(bore, 2.5 * self._unit)), *more))

    def _draw_pipes(self) -> None:
        page = self._page
        inside, outside = self._inside, self._outside
        bore = self._bores["overflow"]
        level, end = self._depth + bore / 2, self._overflow_end()
        screen = Line(self._at(self._out - bore, end), self._at(self._out + bore, end), Ink.SCREEN)
        page.add(self._pipe("overflow", [(inside - 0.01, level), (self._out, level), (self._out, end)], bore, screen))
        bore, level = self._bores["outlet"], self._outlet_level()
        tap = outside + 0.45 * (self._out - outside)
        page.add(self._pipe("outlet", [(inside - 0.05, level), (tap, level)], bore, *self._tap(tap, level, bore)))
        bore, level = self._bores["drain"], self._drain_level()
        end = -self._base - 0.06
        page.add(
            self._pipe(
                "washout",
                [(0, -self._fall + 0.003), (0, level), (end, level)],
                bore,
                *self._tap(end, level, bore),
            )
        )

    def _overflow_end(self) -> float:
        """The pipe ends above the ground, so that everybody sees when it runs."""
        return min(self._depth - 0.05, self._ground + 0.15)

    def _tap(self, x: float, level: float, bore: float) -> Iterator[Element]:
        """A valve: a thick piece with a handle."""
        size = min(max(bore, 3.5 * self._unit), 17 * self._unit)  # a wide one would reach into the names beside it
        yield self._box((x - 0.4 * size, x + 0.4 * size, level - 0.8 * size, level + 0.8 * size), Ink.STEEL_EDGE)
        high = level + 1.5 * size
        yield Line(self._at(x, level + 0.8 * size), self._at(x, high), Ink.STEEL_LINE)
        yield Line(self._at(x - size, high), self._at(x + size, high), Ink.STEEL_LINE)

    def _draw_size(self) -> None:
        page = self._page
        foot = self._at(self._beside, self._ground)
        if self._person:
            x, y = foot
            page.add(person(foot, -1.0, [(x - 0.06, y + 0.72), (x + 0.08, y + 0.72)]))
        else:
            page.add(bucket(foot))

    # What is measured, and names.

    def _dimension(self, low: float, high: float, place: int) -> Dimension:
        return Dimension(
            self._at(-self._outside, high), self._at(-self._outside, low), -(5 + place * _STEP) * self._unit
        )

    def _draw_dimensions(self) -> None:
        page = self._page
        page.add(
            self._dimension(self._depth, self._height, 0),
            self._dimension(0, self._depth, 1),
            self._dimension(0, self._height, 2),
        )
        level = self._across_level()
        page.add(Dimension(self._at(-self._inside, level), self._at(self._inside, level), 0.0))
        if self._across_inside:
            centre, base = self._x(self._across_middle), self._down(level) - 5
            page.add(paper(page, centre, base - 16, self._row_width("inside_diameter") + 6, _LINE_OF_TEXT))
            page.add(*page.row(*self._texts("inside_diameter"), centre, base))

    def _row_width(self, name: str) -> float:
        """Paper that a name and its number need on one line."""
        text, number = self._texts(name)
        return Block.of(text, most=VIEW).width() + Block.of("", number, most=VIEW).width() + 5

    def _texts(self, name: str) -> tuple[str, str]:
        return self._words.say_one_of("figure.tank-section", name), shown(name, self._values, self._words)

    def _across_level(self) -> float:
        """The arrowed line across the tank, so far down that its text finds room below the water's level."""
        return self._depth - 30 * self._unit if self._across_inside else 0.4 * self._depth

    def _column_x(self, place: int) -> float:
        """Where an arrowed line beside the wall stands."""
        return -self._outside - (5 + place * _STEP) * self._unit

    def _beside_it(self) -> list[_Named]:
        found = [
            self._measured("wall_height", (self._column_x(2), 0.75 * self._height)),
            self._measured("water_depth", (self._column_x(1), 0.35 * self._depth)),
            self._name("washout_pipe", (-self._base - 0.03, self._drain_level()), "end"),
            self._name("stone_bed", (-0.96 * self._base, (self._stone + self._bottom) / 2), "end"),
            self._name("ground", (-self._base + 4 * self._unit, self._bottom - 8 * self._unit), "end"),
        ]
        if not self._across_inside:
            found.append(self._measured("inside_diameter", (-0.6 * self._inside, self._across_level())))
        return found

    def _names_above(self) -> list[_Named]:
        left, right = self._manhole()
        level = max(self._roof_top(left), self._roof_top(right)) + RIM
        x = 0.05 * self._inside
        return [
            self._measured("overflow_drop", (self._column_x(0), (self._depth + self._height) / 2), "middle"),
            self._name("manhole", ((left + right) / 2, level + 0.03)),
            self._name("roof", (x, (self._roof_under(x) + self._roof_top(x)) / 2)),
            self._name("water", (0.75 * self._inside, self._depth - 3 * self._unit)),
            self._name("wall", ((self._inside + self._outside) / 2, 0.6 * self._depth)),
            self._name("overflow_pipe", (self._out, self._depth - 0.25 * (self._depth - self._overflow_end()))),
        ]

    def _names_below(self) -> list[_Named]:
        bore = self._bores["overflow"]
        tap = self._outside + 0.3 * (self._out - self._outside - bore / 2)
        return [
            self._name("cove", (-self._inside + 0.02, 0.02)),
            self._name("floor", (-0.3 * self._inside, (-0.7 * self._fall + self._concrete) / 2)),
            self._name("base", (0.4 * self._base, (self._concrete + self._stone) / 2)),
            self._name("outlet_pipe", (tap, self._outlet_level())),
        ]

    def _measured(self, name: str, target: Point, anchor: Anchor = "end") -> _Named:
        text, number = self._texts(name)
        return Block.of(text, number, most=54, anchor=anchor), target

    def _callouts(self, named: Sequence[_Named]) -> list[Callout]:
        return [Callout(block, self._paper(*target)) for block, target in named]

    def _name(self, part: str, target: Point, anchor: Anchor = "middle") -> _Named:
        return Block.of(
            self._words.say_one_of("figure.part", part), most=66 if anchor == "middle" else 54, anchor=anchor
        ), target
