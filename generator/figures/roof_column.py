"""A flat roof on a column with cap and pad; over the column the roof bends the other way, so its steel lies on top."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.callouts import Callout, row_above, row_below, row_height
from generator.figures.ink import HatchKind, Ink, Letter
from generator.figures.layout import Block
from generator.figures.page import MARGIN, Page, heading_height, note_height, note_lines
from generator.figures.people import person
from generator.figures.scene import VIEW, Circle, Element, Group, Line, Scene
from generator.figures.shown import shown
from generator.figures.view import View
from generator.words import Words

NEEDS = (
    "inside_diameter",
    "outside_diameter",
    "wall_height",
    "roof_thickness",
    "column_width",
    "column_head_diameter",
)

_PIPE = 0.15
"""Width of the column where none is given, as drawn, metres."""
_PAD, _PAD_DEPTH, _BASE, _BASE_EDGE = 3.0, 0.2, 0.1, 0.25
"""Pad in widths of the column, its depth, thickness and edge of the base, as drawn."""
_WATCHER = 1.0
_MOST_HIGH = 170.0
_BAND, _SKY = 8.0, 30.0
_THINNEST = 5.0
_TOP_STEEL = 0.3
"""Reach of the top steel beyond the cap, as drawn, in inside radii."""
_LARGE_SLAB, _LARGE_COLUMN = 30.0, 34.0
_LARGE_BAR = 3.0


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one tank.

    Args:
        values: numbers of the tank, by the names in `NEEDS`.
        words: language of its texts.
    """
    return _RoofColumn(values, words).scene()


class _RoofColumn:
    def __init__(self, values: Mapping[str, float], words: Words) -> None:
        self._values = values
        self._words = words
        self._radius = values["inside_diameter"] / 2
        self._outside = values["outside_diameter"] / 2
        self._wall = values["wall_height"]
        self._head = min(values["column_head_diameter"], values["inside_diameter"]) / 2
        self._column = min(values["column_width"] or _PIPE, values["column_head_diameter"]) / 2
        across = 2 * (self._outside + _BASE_EDGE) + _WATCHER
        self._unit = max(across / (VIEW - 2 * MARGIN), max(self._wall, 1.6) / _MOST_HIGH)
        self._roof = max(values["roof_thickness"] / 1000, _THINNEST * self._unit)

    def scene(self) -> Scene:
        words, unit = self._words, self._unit
        above, below = self._above(), self._below()
        heads = tuple(words.say_one_of("figure.roof-column", name) for name in ("whole", "right", "wrong"))
        note = note_lines(words.say("figure.roof-column.note"))
        top = MARGIN + heading_height(heads[0]) + row_height(above)
        floor = top + _SKY + (max(self._wall, 1.6 - _BASE) + self._roof) / unit
        row = floor + (_BASE + _PAD_DEPTH) / unit + 14
        second = row + row_height(below) + 8
        large = _LARGE_SLAB + _LARGE_COLUMN
        large_names = self._large_names()
        second_top = second + heading_height(heads[1]) + row_height(large_names)
        third = second_top + 14 + large + 8
        third_top = third + heading_height(heads[2])
        note_top = third_top + 12 + large + 6
        self._page = page = Page(unit, note_top + note_height(note) + MARGIN)
        across = (2 * (self._outside + _BASE_EDGE) + _WATCHER) / unit
        middle = (VIEW - across) / 2 + (_WATCHER + _BASE_EDGE + self._outside) / unit
        self._view = View(page, middle, floor, 1 / unit)
        page.heading(1, heads[0], MARGIN)
        self._draw_tank()
        self._draw_column()
        row_above(page, [Callout(one.block, self._view.paper(*one.target)) for one in above], top)
        row_below(page, [Callout(one.block, self._view.paper(*one.target)) for one in below], row)
        page.heading(2, heads[1], second)
        self._draw_large(second_top + 14, cracked=False)
        row_above(
            page,
            [Callout(one.block, (one.target[0], second_top + 14 + one.target[1])) for one in large_names],
            second_top,
        )
        page.heading(3, heads[2], third)
        self._draw_large(third_top + 12, cracked=True)
        page.note(note, note_top)
        return page.scene(words.say("figure.roof-column.title"), words.say("figure.roof-column.description"), words)

    def _named(self, name: str, value: str, most: float, target: tuple[float, float]) -> Callout:
        number = shown(value, self._values, self._words) if value else ""
        return Callout(Block.of(self._words.say_one_of("figure.part", name), number, most=most), target)

    def _above(self) -> list[Callout]:
        """Names above; places in metres from the middle of the floor."""
        high = self._wall + self._roof
        return [
            self._named("roof", "roof_thickness", 80, (-0.6 * self._radius, self._wall + self._roof / 2)),
            self._named("cap", "column_head_diameter", 96, (0.0, high + 14 * self._unit)),
            self._named("top_steel", "", 110, (self._head + 0.2 * self._radius, high - 0.25 * self._roof)),
        ]

    def _below(self) -> list[Callout]:
        width = "column_width" if self._values["column_width"] else ""
        return [
            self._named("wall", "", 80, (-(self._radius + self._outside) / 2, 0.3 * self._wall)),
            self._named("pad", "", 110, (-0.7 * _PAD * self._column, -_BASE)),
            self._named("column", width, 90, (0.5 * self._column, 0.35 * self._wall)),
        ]

    def _draw_tank(self) -> None:
        view, unit = self._view, self._unit
        base = self._outside + _BASE_EDGE - 0.05
        left, right, band = -base - _WATCHER, base, _BASE + _BAND * unit
        view.page.add(
            view.marks((left, -_BASE), (right, -_BASE), (right, -band), (left, -band), kind=HatchKind.GROUND),
            view.line((left, -_BASE), (right, -_BASE), Ink.GROUND),
            person(view.at(-base - 0.5, -_BASE)),
        )
        pad = min(_PAD * self._column, 0.8 * self._radius)
        outline = ((-base, 0.0), (-base, -_BASE), (-pad, -_BASE), (-pad, -_PAD_DEPTH), (pad, -_PAD_DEPTH))
        view.page.add(Group("base", view.cut(*outline, (pad, -_BASE), (base, -_BASE), (base, 0.0))))
        for low, high in ((-self._outside, -self._radius), (self._radius, self._outside)):
            view.page.add(Group("wall", view.cut_box(low, 0, high, self._wall)))

    def _draw_column(self) -> None:
        view, wall, head, column = self._view, self._wall, self._head, self._column
        neck = wall - min(max(head - column, 0.02), 0.35 * wall)
        shaft = ((-column, 0.0), (column, 0.0), (column, neck), (head, wall), (-head, wall), (-column, neck))
        top = wall + self._roof
        view.page.add(
            Group("column", view.cut(*shaft)),
            Group("roof", view.cut_box(-self._outside, wall, self._outside, top)),
        )
        thick = 1.5 * self._unit
        reach = min(head + _TOP_STEEL * self._radius, 0.95 * self._radius)
        high, low = top - 0.25 * self._roof, wall + 0.22 * self._roof
        view.page.add(
            Group("top steel", (view.box(-reach, high - thick / 2, reach, high + thick / 2, Ink.STEEL),)),
            Group(
                "bottom steel", (view.box(-self._radius, low - thick / 2, self._radius, low + thick / 2, Ink.STEEL),)
            ),
            view.measure((-head, top), (head, top), 14),
        )
        if self._values["column_width"] and self._values["column_width"] <= 2 * head:
            view.page.add(view.measure((-column, 0.5 * neck), (column, 0.5 * neck), 0))

    def _large_names(self) -> list[Callout]:
        """Names of the large picture; their places count from its upper edge, paper units."""
        return [
            self._named("bottom_steel", "", 120, (46.0, 0.76 * _LARGE_SLAB)),
            self._named("top_steel", "", 140, (VIEW / 2 + 60, 0.22 * _LARGE_SLAB)),
        ]

    def _draw_large(self, top: float, *, cracked: bool) -> None:
        """A piece of the roof over the column, thick enough to see which steel lies where."""
        page, middle, half = self._page, VIEW / 2, VIEW / 2 - 22
        view = View(page, middle, top + _LARGE_SLAB, 1.0)
        cap, shaft = 52.0, 22.0
        high = _LARGE_SLAB
        sag = 5.0 if cracked else 0.0
        upper = [(-half, high - sag), (0.0, high + sag / 3), (half, high - sag)]
        lower = [(half, -sag), (cap, 0.0), (-cap, 0.0), (-half, -sag)]
        column = [
            (-cap, 0.0),
            (cap, 0.0),
            (shaft, -20.0),
            (shaft, -_LARGE_COLUMN),
            (-shaft, -_LARGE_COLUMN),
            (-shaft, -20.0),
        ]
        page.add(Group("column", view.cut(*column)), Group("slab", view.cut(*upper, *lower)))
        bars: list[Element] = [self._bar(view, -half, half, 0.24 * high, sag)]
        if not cracked:
            bars.append(self._bar(view, -118, 118, 0.78 * high, 0.0))
            bars += [Circle(view.at(x, 0.78 * high - 4), 2 * self._unit, Ink.STEEL) for x in range(-108, 109, 27)]
        bars += [
            Circle(view.at(x, 0.24 * high + 4 - sag * abs(x) / half), 2 * self._unit, Ink.STEEL)
            for x in range(-135, 136, 27)
        ]
        page.add(Group("steel", tuple(bars)))
        if cracked:
            cracks = [
                view.path(
                    (x, high + 1.5), (x + 2.5, 0.8 * high), (x - 2, 0.62 * high), (x + 1, 0.45 * high), ink=Ink.GROUND
                )
                for x in (-50, -18, 16, 49)
            ]
            page.add(Group("cracks", tuple(cracks)))
            cross = [(-26.0, -6.0, 26.0, high + 6), (-26.0, high + 6, 26.0, -6.0)]
            page.add(
                Group("cross", tuple(Line(view.at(140 + a, b), view.at(140 + c, d), Ink.CROSS) for a, b, c, d in cross))
            )
            wrong = Block(((self._words.say("figure.part.wrong_word"), Letter.HEADING),))
            page.text(wrong, [(VIEW - 60, top + _LARGE_SLAB + step) for step in range(10, 30, 3)])

    def _bar(self, view: View, left: float, right: float, level: float, sag: float) -> Element:
        low, high = level - _LARGE_BAR / 2, level + _LARGE_BAR / 2
        return view.shape(
            (left, low - sag),
            (0.0, low),
            (right, low - sag),
            (right, high - sag),
            (0.0, high),
            (left, high - sag),
            ink=Ink.STEEL,
        )
