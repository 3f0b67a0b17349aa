"""A tank kept wet: sacking on the wall, plastic over it, water every day, and the days crossed off."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from generator.figures.callouts import Callout, row_above, row_below, row_height
from generator.figures.ink import HatchKind, Ink, Letter
from generator.figures.layout import Block
from generator.figures.page import MARGIN, Page, heading_height
from generator.figures.people import PERSON_HEIGHT, limb, person
from generator.figures.scene import VIEW, Element, Group, Label, Line, Point, Rect, Scene
from generator.figures.shown import shown
from generator.figures.view import View
from generator.words import Words

NEEDS = ("outside_diameter", "wall_height", "curing_days", "curing_water_daily")

_ROOM, _BASE, _BASE_EDGE, _ROOF = 1.15, 0.1, 0.15, 0.06
"""Room for the person, and base and roof as drawn, metres."""
_SIDE = 0.35
_MOST_HIGH = 160.0
_BAND, _SKY = 8.0, 14.0
_SACK = 0.55
"""Width of a sack as drawn, metres."""
_BARE, _SHEETED = 0.14, 0.50
"""Shares of the wall's picture where the wall is still bare, and from where plastic lies over the sacks."""
_WEEK, _CELL = 7, 28.0
_CROSSED = 5
"""Days crossed off in the picture."""
_REACH = 0.33


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one tank.

    Args:
        values: numbers of the tank, by the names in `NEEDS`.
        words: language of its texts.
    """
    return _CuringCover(values, words).scene()


class _CuringCover:
    def __init__(self, values: Mapping[str, float], words: Words) -> None:
        self._values = values
        self._words = words
        self._half = values["outside_diameter"] / 2
        self._wall = values["wall_height"]
        self._high = max(self._wall + _ROOF + 0.03, PERSON_HEIGHT + 0.45 - _BASE)
        across = 2 * self._half + _ROOM + _SIDE
        self._unit = max(across / (VIEW - 2 * MARGIN), self._high / _MOST_HIGH)
        self._days = round(values["curing_days"])

    def scene(self) -> Scene:
        words, unit = self._words, self._unit
        heads = (words.say("figure.curing-cover.wrapped"), words.say("figure.curing-cover.days"))
        above, below = self._above(), self._below()
        days = self._named("days_wet", "curing_days", 200, (0.0, 0.0)).block
        first = MARGIN + heading_height(heads[0]) + row_height(above)
        floor = first + _SKY + self._high / unit
        row = floor + _BASE / unit + _BAND + 10
        second = row + row_height(below) + 8
        weeks = second + heading_height(heads[1])
        lines = -(-self._days // _WEEK)
        text = weeks + lines * _CELL + 4
        self._page = page = Page(unit, text + days.height() + MARGIN)
        spare = VIEW - (2 * self._half + _ROOM + _SIDE) / unit
        self._view = View(page, spare / 2 + (_ROOM + self._half) / unit, floor, 1 / unit)
        page.heading(1, heads[0], MARGIN)
        self._draw_tank()
        self._draw_person()
        row_above(page, [Callout(one.block, self._view.paper(*one.target)) for one in above], first)
        row_below(page, [Callout(one.block, self._view.paper(*one.target)) for one in below], row)
        page.heading(2, heads[1], second)
        self._draw_days(weeks)
        page.add(*days.labels(page.at(VIEW / 2, text), unit))
        return page.scene(words.say("figure.curing-cover.title"), words.say("figure.curing-cover.description"), words)

    def _named(self, name: str, value: str, most: float, target: Point) -> Callout:
        number = shown(value, self._values, self._words) if value else ""
        return Callout(Block.of(self._words.say_one_of("figure.curing-cover", name), number, most=most), target)

    def _across(self, share: float) -> float:
        """A place on the wall, metres from the middle, from its left edge (0) to its right one (1)."""
        return self._half * (2 * share - 1)

    def _above(self) -> list[Callout]:
        """Names above; places in metres from the middle of the wall's foot."""
        return [
            self._named("water", "curing_water_daily", 100, self._can()),
            self._named("sacks", "", 90, (self._across(0.4), 0.8 * self._wall)),
            self._named("plastic", "", 110, (self._across(0.8), 0.7 * self._wall)),
        ]

    def _below(self) -> list[Callout]:
        return [
            self._named("bare", "", 100, (self._across(0.5 * _BARE), 0.25 * self._wall)),
            self._named("rope", "", 120, (self._across(0.72), self._ropes()[0])),
        ]

    def _ropes(self) -> tuple[float, float]:
        return 0.22 * self._wall, 0.86 * self._wall

    def _can(self) -> Point:
        """Where water is poured: at the rim, or as high as a person reaches."""
        return -self._half - 0.08, min(self._wall + 0.14, PERSON_HEIGHT + 0.2 - _BASE)

    def _draw_tank(self) -> None:
        view, half, wall, unit = self._view, self._half, self._wall, self._unit
        left, right, band = -half - _ROOM, half + _SIDE, _BASE + _BAND * unit
        base = half + _BASE_EDGE
        top = wall + _ROOF
        view.page.add(
            view.marks((left, -_BASE), (right, -_BASE), (right, -band), (left, -band), kind=HatchKind.GROUND),
            view.line((left, -_BASE), (right, -_BASE), Ink.GROUND),
            Group("base", (view.box(-base, -_BASE, base, 0, Ink.BODY),)),
            Group("wall", (view.box(-half, 0, half, wall, Ink.BODY),)),
            Group("sacks", tuple(self._sacks())),
            Group("plastic", tuple(self._plastic())),
            Group("roof", (view.box(-half - 0.02, wall, half + 0.02, top, Ink.CLOTH),)),
        )

    def _sacks(self) -> Iterator[Element]:
        """Sacks hang side by side from the rim to the foot, wet: drops fall from them."""
        view, wall = self._view, self._wall
        start, end = self._across(_BARE), self._half
        count = max(3, round((end - start) / _SACK))
        wide = (end - start) / count
        for number in range(count):
            left = start + number * wide
            right = left + wide
            hem = 0.015 * wall
            edge = [(right - wide * step / 6, hem + (0.02 if step % 2 else 0.0)) for step in range(7)]
            yield view.shape((left, wall), (right, wall), *edge, ink=Ink.CLOTH)
            for share in (0.3, 0.65):
                x = left + share * wide
                for low in (0.2, 0.5, 0.72):
                    yield view.line((x, (low + 0.06) * wall), (x, low * wall), Ink.WATER)

    def _plastic(self) -> Iterator[Element]:
        """A sheet over the sacks, tied with ropes; its near edge is pulled back to show what lies below."""
        view, wall, half = self._view, self._wall, self._half
        start = self._across(_SHEETED)
        fold = 0.06 * half
        edge = [(start + (fold if step % 2 else 0.0), wall * step / 6) for step in range(7)]
        yield view.shape((half + 0.02, 0.0), (half + 0.02, wall), *reversed(edge), ink=Ink.PLASTIC)
        count = 4
        for number in range(1, count + 1):
            x = start + fold + (half - start - fold) * number / (count + 1)
            yield view.path((x, 0.02), (x + 0.2 * fold, 0.5 * wall), (x, wall - 0.02), ink=Ink.BREAK)
        for level in self._ropes():
            yield view.line((start + 0.4 * fold, level), (half + 0.02, level), Ink.GROUND)

    def _draw_person(self) -> None:
        """Someone pours water on the sacks from a can."""
        view, (x, y) = self._view, self._can()
        hand = (x - 0.24, y - 0.02)
        view.page.add(person(view.at(hand[0] - _REACH, -_BASE), 1.0, [view.at(*hand)]))
        can = view.shape(
            (x - 0.23, y + 0.10), (x - 0.06, y + 0.13), (x - 0.01, y - 0.05), (x - 0.20, y - 0.10), ink=Ink.THING
        )
        spout = limb(view.all_at((x - 0.03, y + 0.03), (x + 0.07, y + 0.03)), 0.03, Ink.THING)
        drops: list[Element] = [
            Line(view.at(x + 0.09 + 0.02 * step, y), view.at(x + 0.11 + 0.03 * step, y - 0.12), Ink.WATER)
            for step in range(4)
        ]
        view.page.add(Group("can", (can, spout)), Group("drops", tuple(drops)))

    def _draw_days(self, top: float) -> None:
        """A box for every day, seven in a row; the first ones are crossed off, the others carry their number."""
        page, unit = self._page, self._unit
        wide = (VIEW - 2 * MARGIN) / _WEEK
        for day in range(self._days):
            line, place = divmod(day, _WEEK)
            left, down = MARGIN + place * wide, top + line * _CELL
            box = Rect(page.at(left + 2, down + _CELL - 2), (wide - 4) * unit, (_CELL - 4) * unit, Ink.BODY)
            page.add(Group("day", (box,)))
            if day < _CROSSED:
                corners = (
                    (left + 6, down + 5, left + wide - 6, down + _CELL - 5),
                    (left + 6, down + _CELL - 5, left + wide - 6, down + 5),
                )
                strokes = tuple(Line(page.at(a, b), page.at(c, d), Ink.GROUND) for a, b, c, d in corners)
                page.add(Group("crossed off", strokes))
            else:
                page.add(Label(page.at(left + wide / 2, down + _CELL / 2 + 5), str(day + 1), "middle", Letter.NAME))
