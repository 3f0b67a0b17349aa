"""Props under a wet roof, seen through the cut tank: what both the flat roof and the dome have in common."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence

from generator.calculations.props import prop_grid
from generator.figures.callouts import Callout, row_above, row_below, row_height
from generator.figures.ink import HatchKind, Ink
from generator.figures.layout import Block
from generator.figures.page import MARGIN, Page, note_height, note_lines
from generator.figures.people import limb, person
from generator.figures.scene import VIEW, Circle, Element, Group, Point, Scene
from generator.figures.shown import shown
from generator.figures.view import View
from generator.words import Words

NEEDS = (
    "inside_diameter",
    "outside_diameter",
    "wall_height",
    "roof_thickness",
    "prop_spacing",
    "sole_plate_side",
)

_PROP, _JOIST, _BOARD, _SOLE, _WEDGE, _BRACE = 0.09, 0.10, 0.03, 0.035, 0.035, 0.045
"""Usual timber sizes as drawn, metres; no numbers of the course."""
_BOARD_WIDTH = 0.15
_BASE, _BASE_EDGE = 0.1, 0.25
_WATCHER = 1.0
"""Room beside the tank for the person who stands outside, metres."""
_CLEAR = 0.1
"""From the wall to the first prop, metres."""
_MOST_HIGH = 190.0
"""Height of the picture at most, paper units."""
_BAND, _ROW, _SKY = 8.0, 22.0, 18.0
_THINNEST = 3.0
"""Boards and roofs are drawn no thinner, paper units."""
_RING_BARS = 3


class RoofProps:
    """The drawing of one roof on its props.

    Args:
        values: numbers of the tank, by the names in `NEEDS`; for a dome also `roof_rise`.
        words: language of its texts.
        dome: whether the roof is a dome.
    """

    def __init__(self, values: Mapping[str, float], words: Words, *, dome: bool) -> None:
        self._values = values
        self._words = words
        self._dome = dome
        self._radius = values["inside_diameter"] / 2
        self._outside = values["outside_diameter"] / 2
        self._wall = values["wall_height"]
        self._rise = values["roof_rise"] if dome else 0.0
        across = 2 * (self._outside + _BASE_EDGE) + _WATCHER
        high = max(self._wall + self._rise, 1.65) + 0.1
        self._unit = max(across / (VIEW - 2 * MARGIN - 24 * dome), high / _MOST_HIGH)
        self._roof = max(values["roof_thickness"] / 1000, _THINNEST * self._unit)
        self._board = max(_BOARD, 0.6 * _THINNEST * self._unit)
        self._props = tuple(
            east for east, north in prop_grid(values["inside_diameter"], values["prop_spacing"], _CLEAR) if north == 0
        )

    def scene(self, title: str, description: str) -> Scene:
        """The finished drawing.

        Args:
            title: what it shows, one line.
            description: for who can't see it.
        """
        words, unit = self._words, self._unit
        above, below = self._above(), self._below()
        note = note_lines(words.say("figure.part.nobody_below"))
        top = MARGIN + row_height(above) + _SKY
        floor = top + (max(self._wall + self._rise, 1.55) + self._roof) / unit
        row = floor + _BASE / unit + _BAND + _ROW + 8
        note_top = row + row_height(below) + 5
        self._page = page = Page(unit, note_top + note_height(note) + MARGIN)
        across = (2 * (self._outside + _BASE_EDGE) + _WATCHER) / unit
        middle = (VIEW - across - 20 * self._dome) / 2 + (_WATCHER + _BASE_EDGE + self._outside) / unit
        self._view = View(page, middle, floor, 1 / unit)
        self._draw_ground()
        self._draw_timber()
        self._draw_roof()
        self._measure()
        row_above(page, self._placed(above), top - _SKY)
        row_below(page, self._placed(below), row)
        page.note(note, note_top)
        return page.scene(title, description, words)

    def _named(self, name: str, value: str, most: float, place: Point) -> Callout:
        number = shown(value, self._values, self._words) if value else ""
        return Callout(Block.of(self._words.say_one_of("figure.part", name), number, most=most), place)

    def _placed(self, callouts: Sequence[Callout]) -> list[Callout]:
        return [Callout(callout.block, self._view.paper(*callout.target)) for callout in callouts]

    def _above(self) -> list[Callout]:
        """Names of what lies above; places in metres from the middle of the floor."""
        outer = 0.5 * self._radius
        roof = self._under(outer) + self._roof / 2
        found = [self._named("wet_roof", "roof_thickness", 82, (outer, roof))]
        joist = -0.5 * self._radius
        place = (joist, self._under(joist) - self._board - 0.5 * min(_JOIST, 0.3 * self._wall))
        if self._dome:
            ring = -(self._radius + self._outside) / 2
            found += [
                self._named("boards_on_curve", "", 92, place),
                self._named("edge_ring", "", 70, (ring, self._wall + self._roof / 2)),
                self._named("rise", "roof_rise", 70, (self._rise_at(), self._wall + self._rise / 2)),
            ]
        else:
            found += [
                self._named("boards", "", 66, (0.0, self._under(0.0) - self._board / 2)),
                self._named("joist", "", 92, place),
            ]
        return found

    def _rise_at(self) -> float:
        """Where the arrowed line of the rise stands, metres from the middle."""
        return self._outside + 14 * self._unit

    def _below(self) -> list[Callout]:
        props, foot = self._props, _SOLE + _WEDGE
        found = [
            self._named("sole_board", "sole_plate_side", 84, (props[0], _SOLE / 2)),
            self._named("prop", "", 84, (props[-1], foot + 0.25 * (self._prop_top(props[-1]) - foot))),
        ]
        if len(props) > 1:
            middle = len(props) // 2
            between = (props[middle - 1] + props[middle]) / 2
            found.append(self._named("prop_to_prop", "prop_spacing", 76, (between, -_BASE - (_BAND + 12) * self._unit)))
            share = 0.5
            (x1, y1), (x2, y2) = self._brace(len(props) - 2)
            found.append(self._named("brace", "", 74, (x1 + share * (x2 - x1), y1 + share * (y2 - y1))))
        return found

    def _under(self, x: float) -> float:
        """Level of the roof's lower face."""
        if not self._dome:
            return self._wall
        ball = (self._radius**2 + self._rise**2) / (2 * self._rise)
        return self._wall + self._rise - ball + math.sqrt(max(0.0, ball**2 - x**2))

    def _prop_top(self, x: float) -> float:
        return self._under(x) - self._board - min(_JOIST, 0.3 * self._wall)

    def _brace(self, bay: int) -> tuple[Point, Point]:
        """Ends of the slanted brace of a bay."""
        left, right = self._props[bay], self._props[bay + 1]
        foot = _SOLE + _WEDGE

        def level(x: float, share: float) -> float:
            return foot + share * (self._prop_top(x) - foot)

        low, high = (0.12, 0.88) if bay % 2 else (0.88, 0.12)
        return (left, level(left, low)), (right, level(right, high))

    def _draw_ground(self) -> None:
        view, unit = self._view, self._unit
        left, right = -self._outside - _BASE_EDGE - _WATCHER, self._outside + _BASE_EDGE
        band = _BASE + _BAND * unit
        base = self._outside + _BASE_EDGE - 0.05
        earth = view.marks((left, -_BASE), (right, -_BASE), (right, -band), (left, -band), kind=HatchKind.GROUND)
        view.page.add(
            earth,
            view.line((left, -_BASE), (right, -_BASE), Ink.GROUND),
            Group("base", view.cut_box(-base, -_BASE, base, 0)),
            person(view.at(-base - 0.55, -_BASE)),
        )
        for side in (-1, 1):
            low, high = sorted((side * self._radius, side * self._outside))
            view.page.add(Group("wall", view.cut_box(low, 0, high, self._wall)))

    def _draw_timber(self) -> None:
        view = self._view
        for bay in range(len(self._props) - 1):
            ends = view.all_at(*self._brace(bay))
            view.page.add(Group("brace", (limb(ends, _BRACE, Ink.WOOD),)))
        for x in self._props:
            view.page.add(Group("prop", tuple(self._prop(x))))
        joist = [(x, self._under(x) - self._board) for x in self._steps(self._radius - 0.01)]
        deep = min(_JOIST, 0.3 * self._wall)
        lower = [(x, y - deep) for x, y in reversed(joist)]
        view.page.add(Group("joist", (view.shape(*joist, *lower, ink=Ink.WOOD),)))
        view.page.add(Group("boards", tuple(self._boards())))

    def _prop(self, x: float) -> Iterator[Element]:
        view, half = self._view, self._values["sole_plate_side"] / 2
        top = self._prop_top(x)
        yield view.box(x - half, 0, x + half, _SOLE, Ink.WOOD)
        foot = _SOLE + _WEDGE
        yield view.shape((x - 0.09, _SOLE), (x + 0.09, _SOLE), (x + 0.09, foot), ink=Ink.WOOD)
        yield view.shape((x - 0.09, _SOLE), (x - 0.09, foot), (x + 0.09, foot), ink=Ink.WOOD)
        yield view.box(x - _PROP / 2, foot, x + _PROP / 2, top, Ink.WOOD)

    def _boards(self) -> Iterator[Element]:
        count = max(2, round(2 * self._radius / _BOARD_WIDTH))
        width = 2 * self._radius / count
        for number in range(count):
            left = -self._radius + number * width
            right = left + width
            points = ((left, self._under(left)), (right, self._under(right)))
            low = tuple((x, y - self._board) for x, y in reversed(points))
            yield self._view.shape(*points, *low, ink=Ink.WOOD)

    def _steps(self, reach: float) -> list[float]:
        count = 40 if self._dome else 1
        return [-reach + 2 * reach * step / count for step in range(count + 1)]

    def _draw_roof(self) -> None:
        view = self._view
        lower = [(x, self._under(x)) for x in self._steps(self._radius)]
        if self._dome:
            upper = [(x * (1 + 0.02), y + self._roof) for x, y in lower]
            edge = self._wall
            outline = [(-self._outside, edge), *lower, (self._outside, edge), (self._outside, edge + self._roof)]
            outline += [*reversed(upper[1:-1]), (-self._outside, edge + self._roof)]
        else:
            top = self._wall + self._roof
            outline = [
                (-self._outside, self._wall),
                (self._outside, self._wall),
                (self._outside, top),
                (-self._outside, top),
            ]
        view.page.add(Group("roof", view.cut(*outline)))
        if self._dome:
            thick = self._outside - self._radius
            for side in (-1, 1):
                bars = tuple(
                    Circle(
                        view.at(
                            side * (self._radius + thick * (0.25 + 0.5 * number / (_RING_BARS - 1))),
                            self._wall + self._roof * (0.35 + 0.3 * (number % 2)),
                        ),
                        max(0.004, 1.1 * self._unit),
                        Ink.STEEL,
                    )
                    for number in range(_RING_BARS)
                )
                view.page.add(Group("edge ring", bars))

    def _measure(self) -> None:
        view, props = self._view, self._props
        if len(props) > 1:
            middle = len(props) // 2
            left, right = props[middle - 1], props[middle]
            depth = _BASE / self._unit + _BAND + 12
            view.page.add(view.measure((left, 0), (right, 0), -depth))
        if self._dome:
            crown = self._wall + self._rise
            far = self._rise_at()
            view.page.add(view.line((0, crown), (far, crown), Ink.MEASURE))
            view.page.add(view.measure((self._outside, self._wall), (self._outside, crown), -14))
