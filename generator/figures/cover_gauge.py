"""A nail with marks, pushed into wet mortar: to the mesh, to the upright bar, and through to the board behind."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.callouts import Callout, column_height, right_column, row_below, row_height
from generator.figures.ink import Ink
from generator.figures.layout import Block
from generator.figures.page import MARGIN, Page, note_height, note_lines
from generator.figures.people import fist
from generator.figures.scene import VIEW, Circle, Element, Group, Point, Polyline, Scene
from generator.figures.shown import shown
from generator.figures.view import View
from generator.words import Words

NEEDS = (
    "mesh_cover",
    "inside_mesh_thickness",
    "outside_mesh_thickness",
    "bar_cover_inside",
    "bar_diameter",
    "hoop_diameter",
    "wall_thickness",
)

_NAIL, _HEAD, _GRIP = 0.0026, 0.009, 0.055
"""Thickness, head and free length of the nail as drawn, metres."""
_BOARD, _WIRE, _MESH_GAP = 0.014, 0.0012, 0.013
_LEFT = 0.10
"""Room for the hand beside the deepest nail, metres."""
_LEVELS = (0.132, 0.086, 0.04)
_LOW, _HIGH = -0.035, 0.165
_COLUMN = 104.0
_ROWS = (14.0, 32.0, 50.0)
_OF_MESH = ("mesh_cover", "wall_thickness")
"""What the nail measures in a wall of mesh alone."""


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one wall.

    Args:
        values: numbers of the wall, by the names in `NEEDS`.
        words: language of its texts.
    """
    return _CoverGauge(values, words).scene()


class _CoverGauge:
    def __init__(self, values: Mapping[str, float], words: Words) -> None:
        self._values = values
        self._words = words
        self._mesh = values["mesh_cover"] / 1000
        self._bar = values["bar_cover_inside"] / 1000
        self._wall = values["wall_thickness"] / 1000
        self._hooped = "hoop_diameter" in values  # a tank of mesh alone has neither hoops nor upright bars
        self._hoop = self._bar + values["bar_diameter"] / 1000
        self._names = ("mesh_cover", "bar_cover_inside", "wall_thickness") if self._hooped else _OF_MESH
        self._depths = tuple(values[name] / 1000 for name in self._names)
        self._levels = _LEVELS if self._hooped else (_LEVELS[0], _LEVELS[-1])
        self._rows = _ROWS[: len(self._names)]
        self._nail = self._wall + _GRIP
        across = _GRIP + self._wall - self._mesh + _LEFT - 0.045 + self._wall + _BOARD
        self._unit = across / (VIEW - _COLUMN - 2 * MARGIN)

    def scene(self) -> Scene:
        words, unit = self._words, self._unit
        if self._hooped:
            nail, told = words.say("figure.cover-gauge.nail"), words.say("figure.cover-gauge.description")
        else:
            nail = words.say("figure.cover-gauge.nail_of_mesh")
            told = words.say("figure.cover-gauge.description_of_mesh")
        column = VIEW - _COLUMN + 12
        blocks = [
            Block.of(
                words.say_one_of("figure.cover-gauge", name),
                shown(name, self._values, words),
                most=VIEW - column - 3,
                anchor="start",
            )
            for name in self._names
        ]
        column_top = MARGIN
        needed = column_height([Callout(block, (0.0, 0.0)) for block in blocks])
        note = note_lines(words.say("figure.cover-gauge.note"))
        top = max(MARGIN + self._rows[-1] + 12, MARGIN + needed * 0.4)
        level = top + _HIGH / unit
        row = level - _LOW / unit + 14
        below = self._below()
        note_top = row + row_height(below) + 5
        self._page = page = Page(unit, note_top + note_height(note) + MARGIN)
        face = VIEW - _COLUMN - MARGIN - (self._wall + _BOARD) / unit
        self._view = View(page, face, level, 1 / unit)
        self._draw_wall()
        self._draw_nails()
        for depth, offset in zip(self._depths, self._rows, strict=True):
            page.add(self._view.measure((0.0, _HIGH), (depth, _HIGH), offset))
        found = [
            Callout(block, (self._view.paper(depth / 2, _HIGH)[0], top - offset))
            for block, depth, offset in zip(blocks, self._depths, self._rows, strict=True)
        ]
        right_column(page, found, column, column_top, row - 6)
        row_below(page, [Callout(one.block, self._view.paper(*one.target)) for one in below], row)
        page.text(
            Block.of(nail, most=96),
            [(x, down) for x in (58, 52) for down in range(int(MARGIN), int(top + 60), 5)],
            self._view.at(self._mesh - 0.65 * self._nail, _LEVELS[0] + _NAIL / 2),
        )
        page.note(note, note_top)
        return page.scene(words.say("figure.cover-gauge.title"), told, words)

    def _below(self) -> list[Callout]:
        """Names of what the wall is made of; places in metres from its inside face."""
        low = _LOW + 0.006
        bar = self._values["bar_diameter"] / 1000
        hoop = self._values.get("hoop_diameter", 0.0) / 1000

        def named(name: str, most: float, target: Point) -> Callout:
            return Callout(Block.of(self._words.say_one_of("figure.part", name), most=most), target)

        steel = [
            named("bar", 60, (self._bar + bar / 2, low)),
            named("hoop", 50, (self._hoop + hoop / 2, -0.018)),
        ]
        return [
            named("inside_face", 80, (0.0, low)),
            named("mesh", 56, (self._mesh + _WIRE, low + 0.003)),
            *(steel if self._hooped else ()),
            named("backing_board", 70, (self._wall + _BOARD / 2, low)),
        ]

    def _draw_wall(self) -> None:
        view, wall, bar = self._view, self._wall, self._values["bar_diameter"] / 1000
        inside = self._values["inside_mesh_thickness"] / 1000
        outside = self._values["outside_mesh_thickness"] / 1000
        view.page.add(
            Group("backing board", (view.box(wall, _LOW, wall + _BOARD, _HIGH, Ink.WOOD),)),
            Group("mortar", view.cut_box(0.0, _LOW, wall, _HIGH)),
        )
        outer = self._wall - self._mesh - outside
        if self._hooped:
            hoop = self._values["hoop_diameter"] / 1000
            rings = tuple(Circle(view.at(self._hoop + hoop / 2, y), hoop / 2, Ink.STEEL_EDGE) for y in (-0.018, 0.11))
            view.page.add(
                Group("bar", (view.box(self._bar, _LOW, self._bar + bar, _HIGH, Ink.STEEL_EDGE),)),
                *(Group("hoop", (ring,)) for ring in rings),
            )
            outer = self._hoop + hoop
        for left, thick in ((self._mesh, inside), (outer, outside)):
            view.page.add(Group("mesh", tuple(self._wires(left, min(thick, wall - left)))))

    def _wires(self, left: float, thick: float) -> list[Element]:
        """Wires of a mesh cut across: one upright line and a row of dots; thick mesh has a second one."""
        view, found = self._view, list[Element]()
        lines = (left + _WIRE / 2,) if thick < 3.5 * _WIRE else (left + _WIRE / 2, left + thick - _WIRE / 2)
        for line in lines:
            found.append(view.line((line, _LOW), (line, _HIGH), Ink.WIRE))
            level = _LEVELS[0] - round((_LEVELS[0] - _LOW) / _MESH_GAP - 0.5) * _MESH_GAP
            while level < _HIGH - _WIRE:
                found.append(Circle(view.at(line, level), _WIRE, Ink.STEEL))
                level += _MESH_GAP
        return found

    def _draw_nails(self) -> None:
        """Each nail has the same three marks; where it stops, its own mark is at the face of the mortar."""
        view = self._view
        for depth, level in zip(self._depths, self._levels, strict=True):
            back = depth - self._nail
            half = _NAIL / 2
            body = view.shape(
                (back, level - half), (depth - 0.004, level - half), (depth, level), (depth - 0.004, level + half),
                (back, level + half), ink=Ink.STEEL_EDGE,
            )  # fmt: skip
            head = view.box(back - 0.002, level - _HEAD / 2, back, level + _HEAD / 2, Ink.STEEL)
            marks = tuple(
                Polyline(view.all_at((depth - mark, level - 2 * half), (depth - mark, level + 2 * half)), Ink.GROUND)
                for mark in self._depths
            )
            view.page.add(Group("nail", (body, head, *marks)))
        back = self._wall - self._nail
        view.page.add(fist(view.at(back - 0.002, _LEVELS[2]), view.at(back - 0.035, _LEVELS[2] - 0.072), 0.05))
