"""What lies in the thickness of the wall, layer by layer; and why it is thicker at a lap and thickest at an angle.

All three pictures are a piece of the wall seen from above, water on the left, and have one scale.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TypeAlias

from generator.figures.callouts import Callout, right_column
from generator.figures.cut_parts import box, mesh_line, paper, points_at
from generator.figures.ink import HatchKind, Ink
from generator.figures.layout import Block
from generator.figures.page import MARGIN, Page, heading_height, note_height, note_lines
from generator.figures.scene import (
    VIEW,
    Circle,
    Dimension,
    Element,
    Group,
    Hatch,
    Point,
    Polyline,
    Scene,
    on_circle,
)
from generator.figures.shown import shown
from generator.words import Words

NEEDS = (
    "mesh_cover",
    "inside_mesh_thickness",
    "bar_diameter",
    "hoop_diameter",
    "outside_mesh_thickness",
    "angle_leg",
    "angle_thickness",
    "wall_build_up",
    "wall_build_up_at_lap",
    "wall_build_up_at_angle",
    "wall_thickness",
)

LAYERS = (
    "mesh_cover",
    "inside_mesh_thickness",
    "bar_diameter",
    "hoop_diameter",
    "outside_mesh_thickness",
    "mesh_cover",
)
"""From the water outward."""
_NAMES = ("cover", "inside_mesh", "bar", "hoop", "outside_mesh", "cover_outside")

HOOP = 3
LAPPED = (HOOP, 1, 4)
"""Layers that can lie twice; the hoop first, where several are as thick."""

FINGER = 19.0
"""Width of a finger as drawn, mm: a usual one; no number of the course."""

_Row: TypeAlias = tuple[str, str] | Block
"""A name and its number: on one line, or as a block of several."""

_WALL, _MOST_SCALE = 118.0, 2.6
"""Widest wall, and most paper units for a millimetre."""
_LEFT = 62.0
_WATER = 48.0
_SLAB = 46.0
_ABOVE = 24.0
"""Paper above a piece of wall for its whole thickness."""
_TAIL = 21.0
"""From a measured layer to its text: the arrow may stand outside."""


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one wall.

    Args:
        values: numbers of the tank, by the names in `NEEDS`.
        words: language of its texts.
    """
    return _BuildUp(values, words).scene()


class _BuildUp:
    """Places across the wall are millimetres from its wet face."""

    def __init__(self, values: Mapping[str, float], words: Words) -> None:
        self._values = values
        self._words = words
        self._scale = min(_MOST_SCALE, _WALL / values["wall_thickness"])
        self._unit = 0.001 / self._scale
        self._heads = [words.say_one_of("figure.wall-build-up", place) for place in ("between", "at_lap", "at_angle")]
        self._note = note_lines(words.say("figure.wall-build-up.note"))
        self._thickest = max(LAPPED, key=lambda layer: values[LAYERS[layer]])

    def scene(self) -> Scene:
        words, values = self._words, self._values
        # Both covers are measured; their number stands once.
        numbers = [*(shown(layer, values, words) for layer in LAYERS[:-1]), ""]
        rows = [
            self._text(words.say_one_of("figure.wall-build-up", name), number, end)
            for name, number, (_, end) in zip(_NAMES, numbers, self._edges(), strict=True)
        ]
        pitches = [self._height(row) + 4 for row in rows]
        first = MARGIN + heading_height(self._heads[0]) + _ABOVE
        second = first + _SLAB + sum(pitches) + 10
        lap = second + heading_height(self._heads[1]) + _ABOVE
        third = lap + _SLAB + 10
        angle = third + heading_height(self._heads[2]) + _ABOVE
        tall = max(_SLAB, values["angle_leg"] * self._scale + 16)
        finished = self._text(
            words.say("figure.wall-build-up.finished"), shown("wall_thickness", values, words), values["wall_thickness"]
        )
        finish = angle + tall + 12 + self._height(finished) / 2
        note_top = finish + self._height(finished) / 2 + 6
        self._page = page = Page(self._unit, note_top + note_height(self._note) + MARGIN)
        page.heading(1, self._heads[0], MARGIN)
        page.heading(2, self._heads[1], second)
        page.heading(3, self._heads[2], third)
        self._piece(first, _SLAB, list(self._between(first)))
        self._layers(first + _SLAB, rows, pitches)
        self._piece(lap, _SLAB, list(self._lapped(lap)))
        self._piece(angle, tall, list(self._at_angle(angle, tall)))
        for top, name in ((first, "wall_build_up"), (lap, "wall_build_up_at_lap"), (angle, "wall_build_up_at_angle")):
            self._whole(top, name)
        self._measure(0.0, values["wall_thickness"], angle + tall, finish, finished)
        self._name_parts(lap, angle, tall)
        water = Block.of(words.say("figure.part.water"), most=_WATER)
        page.add(paper(page, _LEFT - _WATER / 2, angle + tall / 2 - 10, water.width() + 4, 20.0))
        page.add(*water.labels(page.at(_LEFT - _WATER / 2, angle + tall / 2 - 9), self._unit))
        self._finger(first + _SLAB + 14, sum(pitches) - 22)
        page.note(self._note, note_top)
        return page.scene(words.say("figure.wall-build-up.title"), words.say("figure.wall-build-up.description"), words)

    def _x(self, millimetres: float) -> float:
        return _LEFT + millimetres * self._scale

    def _edges(self, doubled: int | None = None) -> list[tuple[float, float]]:
        """Where each layer starts and ends; one of them may lie twice."""
        found: list[tuple[float, float]] = []
        place = 0.0
        for number, layer in enumerate(LAYERS):
            thick = self._values[layer] * (2 if number == doubled else 1)
            found.append((place, place + thick))
            place += thick
        return found

    def _text(self, name: str, number: str, end: float) -> _Row:
        """Name and number on one line, or below each other where that is too wide."""
        most = VIEW - MARGIN - self._x(end) - _TAIL
        block = Block.of(name, number, most=most, anchor="start")
        return (name, number) if number and self._row_width((name, number)) <= most else block

    def _height(self, row: _Row) -> float:
        return row.height() if isinstance(row, Block) else 18.0

    def _put(self, row: _Row, x: float, middle: float) -> None:
        """A text whose left edge and whose middle are given."""
        page = self._page
        if isinstance(row, Block):
            page.add(*row.labels(page.at(x, middle - row.height() / 2), self._unit))
        else:
            page.add(*page.row(*row, x + self._row_width(row) / 2, middle + 5))

    def _rect(self, start: float, end: float, top: float, foot: float, ink: Ink) -> Polyline:
        (x1, y1), (x2, y2) = self._page.at(self._x(start), foot), self._page.at(self._x(end), top)
        return box(x1, x2, y1, y2, ink)

    def _piece(self, top: float, tall: float, steel: list[Element]) -> None:
        """A piece of the finished wall with water before it."""
        page, thick = self._page, self._values["wall_thickness"]
        foot = top + tall
        wall = self._rect(0, thick, top, foot, Ink.MORTAR_CUT)
        water = (
            page.at(_LEFT - _WATER, foot),
            page.at(_LEFT, foot),
            page.at(_LEFT, top),
            page.at(_LEFT - _WATER, top),
        )
        page.add(Group("water", (Hatch(water, HatchKind.WATER),)))
        page.add(Group("wall", (wall, Hatch(wall.points, HatchKind.MORTAR))))
        page.add(*steel)

    def _mesh(self, start: float, end: float, top: float, foot: float) -> Group:
        page, middle = self._page, self._x((start + end) / 2)
        points = (page.at(middle, foot - 2), page.at(middle, top + 2))
        return mesh_line(points, (end - start) / 1000, self._unit, 6.0)

    def _hoop(self, start: float, end: float, top: float, foot: float) -> Group:
        return Group("hoop", (self._rect(start, end, top, foot, Ink.STEEL_EDGE),))

    def _bar(self, start: float, end: float, down: float) -> Group:
        centre = self._page.at(self._x((start + end) / 2), down)
        return Group("upright", (Circle(centre, (end - start) / 2000, Ink.STEEL),))

    def _between(self, top: float) -> Iterator[Element]:
        _, inside, bar, hoop, outside, _ = self._edges()
        foot = top + _SLAB
        yield self._hoop(*hoop, top, foot)
        yield self._mesh(*inside, top, foot)
        yield self._mesh(*outside, top, foot)
        yield self._bar(*bar, top + _SLAB / 2)

    def _lapped(self, top: float) -> Iterator[Element]:
        """Two ends side by side: of the hoop, or of the mesh if that is thicker."""
        _, inside, bar, hoop, outside, _ = self._edges(self._thickest)
        foot = top + _SLAB
        ends = ((top, foot - 0.22 * _SLAB), (top + 0.22 * _SLAB, foot))
        for number, (start, end), thing in ((3, hoop, self._hoop), (1, inside, self._mesh), (4, outside, self._mesh)):
            if number == self._thickest:
                middle = (start + end) / 2
                yield Group("lap", (thing(start, middle, *ends[0]), thing(middle, end, *ends[1])))
            else:
                yield thing(start, end, top, foot)
        yield self._bar(*bar, top + _SLAB / 2)

    def _at_angle(self, top: float, tall: float) -> Iterator[Element]:
        """An angle in the place of the bar: the heel lies against the hoop."""
        values, foot = self._values, top + tall
        leg, thin = values["angle_leg"], values["angle_thickness"]
        start = values["mesh_cover"] + values["inside_mesh_thickness"]
        hoop = start + leg
        mesh = hoop + values["hoop_diameter"]
        yield self._hoop(hoop, mesh, top, foot)
        yield self._mesh(values["mesh_cover"], start, top, foot)
        yield self._mesh(mesh, mesh + values["outside_mesh_thickness"], top, foot)
        low = (top + foot + leg * self._scale) / 2
        corners = ((0.0, 0.0), (leg, 0.0), (leg, leg), (leg - thin, leg), (leg - thin, thin), (0.0, thin))
        shape = tuple(self._page.at(self._x(start + across), low - up * self._scale) for across, up in corners)
        yield Group("angle", (Polyline(shape, Ink.STEEL, closed=True),))

    def _layers(self, foot: float, rows: list[_Row], pitches: list[float]) -> None:
        """Each layer measured on a step of its own, the outermost first, so that no line runs through a text."""
        down = foot
        edges = list(zip(self._edges(), rows, pitches, strict=True))
        for (start, end), row, pitch in reversed(edges):
            down += pitch
            self._measure(start, end, foot, down - pitch / 2, row)

    def _measure(self, start: float, end: float, foot: float, down: float, row: _Row) -> None:
        """A distance below a piece of wall, its text to the right."""
        page = self._page
        first, last = page.at(self._x(start), foot), page.at(self._x(end), foot)
        page.add(Dimension(first, last, -(down - foot) * self._unit))
        self._put(row, self._x(end) + _TAIL, down)

    def _whole(self, top: float, name: str) -> None:
        """What a place needs, measured above the piece of wall."""
        page, thick = self._page, self._values[name]
        page.add(Dimension(page.at(_LEFT, top), page.at(self._x(thick), top), 11 * self._unit))
        row = self._words.say("figure.wall-build-up.needed"), shown(name, self._values, self._words)
        self._put(row, self._x(thick) + _TAIL, top - 11)

    def _row_width(self, row: tuple[str, str]) -> float:
        name, number = row
        return Block.of(name, most=VIEW).width() + Block.of("", number, most=VIEW).width() + 5

    def _name_parts(self, lap: float, angle: float, tall: float) -> None:
        page, words = self._page, self._words
        most = VIEW - MARGIN - self._x(self._values["wall_thickness"]) - _TAIL
        edge = self._x(self._values["wall_thickness"]) + _TAIL
        start, end = self._edges(self._thickest)[self._thickest]
        text = "two_hoops" if self._thickest == HOOP else "two_meshes"
        lapped = Block.of(words.say_one_of("figure.wall-build-up", text), most=most, anchor="start")
        leg = self._values["angle_leg"]
        corner = self._values["mesh_cover"] + self._values["inside_mesh_thickness"] + leg
        heel = (self._x(corner - self._values["angle_thickness"] / 2), angle + tall / 2)
        named = [
            (Callout(lapped, (self._x(start + 0.75 * (end - start)), lap + 0.85 * _SLAB)), lap, _SLAB),
            (Callout(Block.of(words.say("figure.part.angle"), most=most, anchor="start"), heel), angle, tall),
        ]
        for callout, top, high in named:
            right_column(page, [callout], edge, top - 4, top + max(high, callout.block.height()) + 4)
            points_at(page, [callout.target])

    def _finger(self, top: float, room: float) -> None:
        """The end of a finger, at the same scale, left of the measured layers."""
        page = self._page
        half = FINGER / 2 * self._scale
        x = MARGIN + 1 + half
        name = Block.of(self._words.say("figure.part.finger"), most=_LEFT - MARGIN - 8, anchor="start")
        long = min(room - name.height(), 3.2 * half)
        outline = [page.at(x - half, top + long), page.at(x - half, top + half)]
        outline += [on_circle(page.at(x, top + half), half * self._unit, 180 - 20 * step) for step in range(1, 9)]
        outline += [page.at(x + half, top + half), page.at(x + half, top + long)]
        nail = self._nail(x, top + 0.25 * half, 0.6 * half)
        page.add(Group("finger", (Polyline(tuple(outline), Ink.THING, closed=True), nail)))
        page.add(*name.labels(page.at(MARGIN, top + long + 3), self._unit))

    def _nail(self, x: float, top: float, half: float) -> Polyline:
        page = self._page
        points: list[Point] = [page.at(x - half, top + 2.2 * half), page.at(x - half, top + half)]
        points += [on_circle(page.at(x, top + half), half * self._unit, 180 - 30 * step) for step in range(1, 6)]
        points += [page.at(x + half, top + half), page.at(x + half, top + 2.2 * half)]
        return Polyline(tuple(points), Ink.THING, closed=True)
