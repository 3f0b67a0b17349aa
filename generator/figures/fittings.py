"""Every pipe of a tank where it belongs: inlet, overflow, outlet, washout and vent, seen through the cut tank."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from generator.figures.callouts import Callout, row_above, row_below, row_height
from generator.figures.ink import HatchKind, Ink
from generator.figures.layout import Block
from generator.figures.page import MARGIN, Page, note_height, note_lines
from generator.figures.people import arrow, limb, person
from generator.figures.scene import VIEW, Element, Group, Point, Scene
from generator.figures.shown import shown
from generator.figures.things import BUCKET_HEIGHT, bucket
from generator.figures.view import View
from generator.words import Words

NEEDS = (
    "inside_diameter",
    "outside_diameter",
    "wall_height",
    "water_depth",
    "overflow_bore",
    "outlet_bore",
    "drain_bore",
    "vent_bore",
    "dead_storage_height",
)

_ROOF, _BASE, _BASE_EDGE = 0.05, 0.18, 0.12
_BOX, _BOX_HIGH, _VENT = 0.40, 0.34, 0.30
"""Silt trap and vent as drawn, metres."""
_LEFT, _RIGHT = 1.25, 0.75
"""Room for the person at the tap and for the lined channel, metres."""
_SUMP, _SUMP_WIDE = 0.06, 0.35
_FREE_FALL = 0.3
"""Air between the end of the overflow and the channel, as drawn, metres."""
_PIPE_WALL = 1.3
"""Outside over inside of a pipe, as drawn."""
_THINNEST = 3.0
_MOST_HIGH = 210.0
_BAND, _SKY = 8.0, 16.0
_MEASURED = 0.03
"""A lower height is not measured, metres."""


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one tank.

    Args:
        values: numbers of the tank, by the names in `NEEDS`.
        words: language of its texts.
    """
    return _Fittings(values, words).scene()


class _Fittings:
    def __init__(self, values: Mapping[str, float], words: Words) -> None:
        self._values = values
        self._words = words
        self._radius = values["inside_diameter"] / 2
        self._outside = values["outside_diameter"] / 2
        self._wall = values["wall_height"]
        self._water = values["water_depth"]
        self._dead = min(values["dead_storage_height"], self._water)
        across = 2 * self._outside + _LEFT + _RIGHT
        self._high = max(self._wall + _ROOF + _BOX_HIGH + 0.1, 1.6 - _BASE)
        self._unit = max(across / (VIEW - 2 * MARGIN), (self._high + _BASE) / _MOST_HIGH)
        self._over = min(self._pipe("overflow_bore"), self._wall - self._water)
        self._in = min(0.6 * self._over, 0.05 + self._unit)
        self._elbow = self._outside + 0.12 + self._over

    def _pipe(self, bore: str) -> float:
        """Outside of a pipe as drawn, metres."""
        return max(_PIPE_WALL * self._values[bore] / 1000, _THINNEST * self._unit)

    def scene(self) -> Scene:
        words, unit = self._words, self._unit
        above, below = self._above(), self._below()
        note = note_lines(words.say("figure.fittings.note"))
        top = MARGIN + row_height(above)
        floor = top + _SKY + self._high / unit
        row = floor + _BASE / unit + _BAND + 12
        note_top = row + row_height(below) + 5
        self._page = page = Page(unit, note_top + note_height(note) + MARGIN)
        spare = VIEW - (2 * self._outside + _LEFT + _RIGHT) / unit
        self._view = View(page, spare / 2 + (_LEFT + self._outside) / unit, floor, 1 / unit)
        self._draw_tank()
        page.add(Group("inlet", tuple(self._inlet())), Group("vent", tuple(self._vent())))
        page.add(Group("overflow", tuple(self._overflow())), Group("outlet", tuple(self._outlet())))
        page.add(Group("washout", tuple(self._washout())))
        if self._dead > _MEASURED:
            page.add(self._view.measure((self._measured_at(), 0), (self._measured_at(), self._dead), 0))
        row_above(page, [Callout(one.block, self._view.paper(*one.target)) for one in above], top)
        row_below(page, [Callout(one.block, self._view.paper(*one.target)) for one in below], row)
        page.note(note, note_top)
        return page.scene(words.say("figure.fittings.title"), words.say("figure.fittings.description"), words)

    def _named(self, name: str, value: str, most: float, target: Point) -> Callout:
        number = shown(value, self._values, self._words) if value else ""
        return Callout(Block.of(self._words.say_one_of("figure.part", name), number, most=most), target)

    def _above(self) -> list[Callout]:
        roof = self._wall + _ROOF
        return [
            self._named("inlet", "", 126, (self._box_left() + 0.1, roof + 0.6 * _BOX_HIGH)),
            self._named("vent", "vent_bore", 84, (self._vent_at(), roof + self._vent_high())),
            self._named("overflow", "overflow_bore", 112, (self._outside + 0.06, self._water + self._over / 2)),
        ]

    def _below(self) -> list[Callout]:
        found = [
            self._named(
                "outlet", "outlet_bore", 62, (-self._outside - 0.08, self._dead + self._pipe("outlet_bore") / 2)
            ),
            self._named("washout", "drain_bore", 92, (0.4 * self._radius, -_SUMP - 0.02)),
            self._named("free_fall", "", 88, (self._elbow, -_BASE + 0.6 * _FREE_FALL)),
        ]
        if self._dead > _MEASURED:
            found.append(self._named("above_floor", "dead_storage_height", 82, (self._measured_at(), self._dead / 2)))
        return found

    def _measured_at(self) -> float:
        return -self._radius + min(0.25, 0.3 * self._radius)

    def _vent_high(self) -> float:
        return max(_VENT, 2.2 * self._pipe("vent_bore"))

    def _sump(self) -> float:
        return min(_SUMP_WIDE, 0.6 * self._radius)

    def _box_left(self) -> float:
        return -self._outside + 0.02

    def _vent_at(self) -> float:
        return max(0.25 * self._radius, self._box_left() + _BOX + 0.1)

    def _draw_tank(self) -> None:
        view, unit, radius, outside = self._view, self._unit, self._radius, self._outside
        left, right, band = -outside - _LEFT, outside + _RIGHT, _BASE + _BAND * unit
        base, half = outside + _BASE_EDGE, 0.5 * self._sump()
        fall = -0.5 * _SUMP
        floor = [(-radius, 0.0), (-half, fall), (-half, -_SUMP), (half, -_SUMP), (half, fall), (radius, 0.0)]
        water = [*floor, (radius, self._water), (-radius, self._water)]
        slab = [(-base, -_BASE), (base, -_BASE), (base, 0.0), (outside, 0.0), *reversed(floor)]
        view.page.add(
            view.marks((left, -_BASE), (right, -_BASE), (right, -band), (left, -band), kind=HatchKind.GROUND),
            view.line((left, -_BASE), (right, -_BASE), Ink.GROUND),
            Group("water", (view.marks(*water, kind=HatchKind.WATER),)),
            view.line((-radius, self._water), (radius, self._water), Ink.WATER),
            Group("base", view.cut(*slab, (-outside, 0.0), (-base, 0.0))),
        )
        for low, high in ((-outside, -radius), (radius, outside)):
            view.page.add(Group("wall", view.cut_box(low, 0.0, high, self._wall)))
        view.page.add(Group("roof", view.cut_box(-outside, self._wall, outside, self._wall + _ROOF)))
        view.page.add(person(view.at(-outside - 0.95, -_BASE)))

    def _tube(self, *places: Point, thick: float) -> Element:
        return limb(self._view.all_at(*places), thick, Ink.STEEL_EDGE)

    def _inlet(self) -> Iterator[Element]:
        """A box on the roof: water comes in over a screen, silt stays on its bottom, and a raised pipe leads down."""
        view, left = self._view, self._box_left()
        right, low = left + _BOX, self._wall + _ROOF
        high, wall = low + _BOX_HIGH, 0.03
        level = low + 0.14
        yield view.box(left, low, right, high, Ink.BODY)
        yield view.marks(
            (left + wall, level),
            (right - wall, level),
            (right - wall, low + 0.05),
            (left + wall, low + 0.05),
            kind=HatchKind.WATER,
        )
        yield from view.cut_box(left + wall, low, right - wall, low + 0.05)
        pipe = right - 0.11
        yield self._tube(
            (pipe, level), (pipe, self._wall - min(0.06, 0.5 * (self._wall - self._water))), thick=self._in
        )
        yield view.line((left, low + 0.68 * _BOX_HIGH), (right, low + 0.5 * _BOX_HIGH), Ink.SCREEN)
        end = left - min(0.5, _LEFT - 0.2)
        mouth = left + 0.1
        yield self._tube((end, high + 0.03), (mouth, high + 0.01), (mouth, high - 0.06), thick=self._in)

    def _vent(self) -> Iterator[Element]:
        thick = self._pipe("vent_bore")
        x, low = self._vent_at(), self._wall + _ROOF
        bend = max(0.10, 1.7 * thick)
        top = low + self._vent_high() - thick / 2
        yield self._tube((x, low - _ROOF), (x, top), (x + bend, top), (x + bend, top - max(0.1, thick)), thick=thick)
        end = top - max(0.1, thick)
        yield self._view.line((x + bend - thick / 2, end), (x + bend + thick / 2, end), Ink.SCREEN)

    def _overflow(self) -> Iterator[Element]:
        view, thick = self._view, self._over
        level, end = self._water + thick / 2, -_BASE + max(_FREE_FALL, 0.0)
        x = self._elbow
        end = min(end, level - 1.2 * thick)
        yield self._tube((self._radius, level), (x, level), (x, end), thick=thick)
        yield view.line((x - thick / 2, end), (x + thick / 2, end), Ink.SCREEN)
        for shift in (-0.2, 0.2):
            yield view.line((x + shift * thick, end - 0.03), (x + shift * thick, -_BASE + 0.05), Ink.WATER)
        far = self._outside + _RIGHT
        yield view.path(
            (x - 0.12, -_BASE + 0.10), (x - 0.10, -_BASE + 0.02), (far - 0.02, -_BASE + 0.01), ink=Ink.LINED
        )
        lift = -_BASE + 0.03 + 6 * self._unit
        if far - x - 0.12 > 12 * self._unit:
            yield arrow(view.all_at((x + 0.12, lift), (far - 0.03, lift)), 3.2 * self._unit)

    def _outlet(self) -> Iterator[Element]:
        """A pipe through the wall, with its collar in the mortar and a tap outside."""
        view, thick, outside = self._view, self._pipe("outlet_bore"), self._outside
        level = self._dead + thick / 2
        end = -outside - 0.22
        yield self._tube((-self._radius + 0.06, level), (end, level), thick=thick)
        collar = (self._radius + outside) / 2
        half = min(2.2 * thick, thick + 0.05)
        yield view.box(-collar - 0.012, level - half, -collar + 0.012, level + half, Ink.STEEL)
        yield self._tube((end, level), (end - 0.04, level), (end - 0.05, level - 0.06 - thick), thick=thick)
        yield view.line((end + 0.05, level + thick / 2), (end + 0.05, level + thick / 2 + 0.05), Ink.GROUND)
        yield view.line((end, level + thick / 2 + 0.05), (end + 0.1, level + thick / 2 + 0.05), Ink.GROUND)
        if level + _BASE - thick - 0.08 > BUCKET_HEIGHT:
            yield bucket(view.at(end - 0.05, -_BASE))

    def _washout(self) -> Iterator[Element]:
        """A pipe from the lowest point, in the middle, closed by a cap that a spanner opens."""
        view, thick = self._view, min(self._pipe("drain_bore"), _BASE - _SUMP)
        level = -_SUMP - thick / 2
        start, end = 0.0, self._outside + 0.5 * (_BASE_EDGE + 0.12)
        yield self._tube((start, -_SUMP + 0.01), (start, level), (end, level), thick=thick)
        yield view.box(end, level - 0.7 * thick, end + 0.05, level + 0.7 * thick, Ink.STEEL)
