"""The frame from above: where angles and bars stand on the ring, and which diameter is which.

In the upper picture everything stands to scale, but the wall of a tank is so thin that its three circles all but touch.
The lower picture is a piece of the wall, larger, where inside face, middle of the bars and outside face come apart.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from generator.figures.ink import HatchKind, Ink
from generator.figures.layout import Block
from generator.figures.page import DISC, MARGIN, Page, heading_height, note_height, note_lines
from generator.figures.scene import (
    VIEW,
    ArcDimension,
    Circle,
    Dimension,
    Group,
    Hatch,
    Line,
    Point,
    Polyline,
    Rect,
    Scene,
    on_circle,
)
from generator.figures.shown import shown
from generator.figures.things import FOOT_LENGTH, feet
from generator.words import Words

NEEDS = (
    "inside_diameter",
    "frame_diameter",
    "outside_diameter",
    "angle_count",
    "angle_spacing",
    "angle_chord",
    "bars_between",
    "angle_leg",
    "bar_diameter",
    "hoop_diameter",
    "mesh_cover",
    "inside_mesh_thickness",
    "outside_mesh_thickness",
)

_RING = 106.0
"""Radius of the outside of the wall, paper units."""
_ARC_OFF, _CHORD_OFF = 13.0, 17.0
_ROW, _FIRST_ROW = 24.0, 27.0
_WALL, _SLAB = 96.0, 56.0
"""Thickness and height of the piece of wall in the lower picture, paper units."""
_WATER = 54.0
_MARKED = 17.0
"""Direction from the centre to the piece of wall that the lower picture shows, degrees."""
_MOST_NAME = 106.0
_LONGEST_FOOT = 66.0
"""Feet longer than this, in paper units, don't fit into the ring."""
_FOOT_TO_NAME = 34.0
"""Feet longer than this are known without a name, which would find no room beside them."""


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one tank.

    Args:
        values: numbers of the tank, by the names in `NEEDS`.
        words: language of its texts.
    """
    return _RingPlan(values, words).scene()


class _RingPlan:
    def __init__(self, values: Mapping[str, float], words: Words) -> None:
        self._values = values
        self._words = words
        self._inside, self._frame, self._outside = (
            values[f"{which}_diameter"] / 2 for which in ("inside", "frame", "outside")
        )
        self._count = round(values["angle_count"])
        self._between = round(values["bars_between"])
        self._heads = (words.say("figure.ring-plan.from_above"), words.say("figure.ring-plan.wall_larger"))
        self._chord = Block.of(words.say("figure.ring-plan.by_tape"), shown("angle_chord", values, words), most=120)
        self._note = note_lines(words.say("figure.ring-plan.note"))
        self._faces = (
            Block.of(words.say("figure.ring-plan.inside_face"), most=_MOST_NAME, anchor="end"),
            Block.of(words.say("figure.ring-plan.bar_middle"), most=200),
            Block.of(words.say("figure.ring-plan.outside_face"), most=_MOST_NAME, anchor="start"),
        )

    def scene(self) -> Scene:
        self._ring_top = MARGIN + heading_height(self._heads[0]) + 20 + _ARC_OFF
        rows_end = self._ring_top + 2 * _RING + _FIRST_ROW + 2 * _ROW
        self._second = rows_end + 13
        self._slab_top = self._second + heading_height(self._heads[1]) + 4
        side = max(self._faces[0].height(), self._faces[2].height())
        self._middle_face = self._slab_top + _SLAB + 8 + side
        note_top = self._middle_face + 6 + self._faces[1].height() + 4
        self._page = Page(self._outside / _RING, note_top + note_height(self._note) + MARGIN)
        self._centre = self._page.at(VIEW / 2, self._ring_top + _RING)
        self._page.heading(1, self._heads[0], MARGIN)
        self._draw_ring()
        self._measure_gap()
        self._measure_diameters()
        self._name_steel()
        self._draw_feet()
        self._mark_wall()
        self._page.heading(2, self._heads[1], self._second)
        self._draw_wall()
        self._page.note(self._note, note_top)
        return self._page.scene(
            self._words.say("figure.ring-plan.title"), self._words.say("figure.ring-plan.description"), self._words
        )

    def _directions(self) -> tuple[list[float], list[float]]:
        """Directions of angles and bars; the top of the picture is the middle between two angles."""
        gap = 360 / self._count
        angles = [90 + gap * (place + 0.5) for place in range(self._count)]
        small = gap / (self._between + 1)
        return angles, [angle + small * step for angle in angles for step in range(1, self._between + 1)]

    def _draw_ring(self) -> None:
        page, unit = self._page, self._page.unit
        page.add(Circle(self._centre, self._inside, Ink.FACE), Circle(self._centre, self._outside, Ink.FACE))
        angles, bars = self._directions()
        gap = 2 * math.pi * self._frame / (self._count * (self._between + 1))
        dot = max(self._values["bar_diameter"] / 2000, min(2.3 * unit, 0.3 * gap))
        leg = max(self._values["angle_leg"] / 1000, min(12.0 * unit, 0.8 * gap))
        page.add(
            *(Group("bar", (Circle(on_circle(self._centre, self._frame, bar), dot, Ink.STEEL),)) for bar in bars),
            *(Group("angle", (self._angle(angle, leg),)) for angle in angles),
        )

    def _angle(self, degrees: float, leg: float) -> Polyline:
        """The L of an angle: heel outwards, its middle on the frame ring."""
        turn = math.radians(degrees)
        out, along = (math.cos(turn), math.sin(turn)), (-math.sin(turn), math.cos(turn))
        x, y = on_circle(self._centre, self._frame, degrees)
        half, thin = leg / 2, leg * 0.26
        corners = (
            (half, -half),
            (half, half),
            (half - thin, half),
            (half - thin, thin - half),
            (-half, thin - half),
            (-half, -half),
        )
        return Polyline(
            tuple((x + a * out[0] + b * along[0], y + a * out[1] + b * along[1]) for a, b in corners),
            Ink.STEEL,
            closed=True,
        )

    def _measure_gap(self) -> None:
        page, unit = self._page, self._page.unit
        gap = 360 / self._count
        right, left = (on_circle(self._centre, self._frame, 90 + side * gap / 2) for side in (-1, 1))
        over = self._outside - self._frame
        along = shown("angle_spacing", self._values, self._words)
        name = self._words.say("figure.ring-plan.along_the_ring")
        labels = page.row(name, along, VIEW / 2, self._ring_top - _ARC_OFF - 9)
        page.add(
            ArcDimension(self._centre, self._frame, 90 - gap / 2, gap, over + _ARC_OFF * unit, labels),
            Dimension(right, left, _CHORD_OFF * unit),
        )
        chord_down = (page.height * unit - right[1]) / unit + _CHORD_OFF
        page.text(self._chord, [(VIEW / 2, chord_down + below) for below in (4, 8, 14, 20, 28, 40)])

    def _measure_diameters(self) -> None:
        page, unit, words = self._page, self._page.unit, self._words
        names = (
            ("inside_diameter", words.say("figure.ring-plan.inside"), self._inside),
            ("frame_diameter", words.say("figure.ring-plan.frame"), self._frame),
            ("outside_diameter", words.say("figure.ring-plan.outside"), self._outside),
        )
        middle_down = self._ring_top + _RING
        for row, (quantity, name, radius) in enumerate(names):
            down = self._ring_top + 2 * _RING + _FIRST_ROW + row * _ROW
            ends = [(self._centre[0] + side * radius, self._centre[1]) for side in (-1, 1)]
            labels = page.row(name, shown(quantity, self._values, words), VIEW / 2, down - 5.5)
            page.add(Dimension(ends[0], ends[1], -(down - middle_down) * unit, labels))

    def _name_steel(self) -> None:
        page = self._page
        angles, bars = self._directions()
        downs = [self._ring_top + step for step in range(0, 60, 4)]
        angle = min(angles, key=lambda degrees: abs(_turned(degrees - 143)))
        name = Block.of(self._words.say("figure.part.angle"), most=60, anchor="start")
        page.text(name, [(MARGIN, down) for down in downs], on_circle(self._centre, self._frame, angle))
        if bars:
            bar = min(bars, key=lambda degrees: abs(_turned(degrees - 37)))
            name = Block.of(self._words.say("figure.part.bar"), most=60, anchor="end")
            page.text(name, [(VIEW - MARGIN, down) for down in downs], on_circle(self._centre, self._frame, bar))

    def _draw_feet(self) -> None:
        page = self._page
        length = FOOT_LENGTH / page.unit
        middle = self._ring_top + _RING
        x = VIEW / 2
        if length <= _LONGEST_FOOT:
            page.add(feet(page.at(x, middle + 10 + length)))
        if length <= _FOOT_TO_NAME:
            name = Block.of(self._words.say("figure.part.feet"), most=64, anchor="start")
            page.text(name, [(x + length * 0.46 + 8, middle + 10 + step) for step in range(0, 60, 4)])

    def _mark_wall(self) -> None:
        """Ties the lower picture to its place on the ring."""
        page, unit = self._page, self._page.unit
        out = min(_RING - 27, self._inside / unit - DISC - 5)  # inside the wall, however thick it is
        x, y = on_circle(self._centre, out * unit, _MARKED)
        page.disc(2, x / unit, page.height - y / unit)
        near, far = (on_circle(self._centre, off * unit, _MARKED) for off in (out + 12, _RING - 1))
        page.add(Line(near, far, Ink.LEADER))

    def _draw_wall(self) -> None:
        page, values = self._page, self._values
        scale = _WALL / (self._outside - self._inside)
        left, top, foot = (VIEW - _WALL) / 2, self._slab_top, self._slab_top + _SLAB
        right, middle = left + _WALL, left + (self._frame - self._inside) * scale

        def column(start: float, end: float) -> tuple[Point, Point, Point, Point]:
            return page.at(start, foot), page.at(end, foot), page.at(end, top), page.at(start, top)

        def millimetres(name: str) -> float:
            return values[name] / 1000 * scale

        hoop = middle + millimetres("bar_diameter") / 2
        hoop_end = hoop + millimetres("hoop_diameter")
        page.add(
            Hatch(column(left - _WATER, left), HatchKind.WATER),
            Hatch(column(left, right), HatchKind.MORTAR),
            Line(page.at(left, top), page.at(left, foot), Ink.FACE),
            Line(page.at(right, top), page.at(right, foot), Ink.FACE),
            self._mesh(left + millimetres("mesh_cover"), millimetres("inside_mesh_thickness")),
            self._mesh(
                right - millimetres("mesh_cover") - millimetres("outside_mesh_thickness"),
                millimetres("outside_mesh_thickness"),
            ),
            Rect(page.at(hoop, foot), (hoop_end - hoop) * page.unit, _SLAB * page.unit, Ink.STEEL_EDGE),
            Circle(page.at(middle, (top + foot) / 2), millimetres("bar_diameter") / 2 * page.unit, Ink.STEEL),
        )
        water = Block.of(self._words.say("figure.part.water"), most=_MOST_NAME, anchor="end")
        page.text(water, [(left - _WATER - 8, (top + foot - water.height()) / 2)])
        for block, x, down in zip(
            self._faces, (left, middle, right), (foot + 8, self._middle_face + 6, foot + 8), strict=True
        ):
            page.add(Line(page.at(x, foot + 1), page.at(x, down - 1), Ink.LEADER))
            nudge = {"end": 5.0, "middle": 0.0, "start": -5.0}[block.anchor]
            page.text(block, [(x + nudge, down)])

    def _mesh(self, left: float, thickness: float) -> Group:
        """Woven wire cut across: a wire that goes to and fro between the faces of the mesh, round cut wires."""
        page, steps = self._page, 8
        pitch = _SLAB / steps
        points = tuple(
            page.at(left + thickness * (0.25 if step % 2 else 0.75), self._slab_top + step * pitch)
            for step in range(steps + 1)
        )
        cut = tuple(
            Circle(
                page.at(left + thickness * (0.75 if step % 2 else 0.25), self._slab_top + step * pitch),
                min(1.8, thickness / 5) * page.unit,
                Ink.STEEL,
            )
            for step in range(1, steps)
        )
        return Group("mesh", (Polyline(points, Ink.WIRE), *cut))


def _turned(degrees: float) -> float:
    """A difference of directions, -180 to 180."""
    return (degrees + 180) % 360 - 180
