"""A platform cut fully into a slope, seen from the side; and the same tank on half a platform of fill, failing.

Fill gives way under one half of a base and not under the other: that is how tanks on hills fail.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

from generator.figures.callouts import Callout, row_above, row_below
from generator.figures.ink import HatchKind, Ink, Letter
from generator.figures.layout import Block
from generator.figures.page import MARGIN, Page, heading_height
from generator.figures.people import PERSON_HEIGHT, arrow, person
from generator.figures.scene import VIEW, Circle, Group, Hatch, Line, Point, Polyline, Scene
from generator.figures.shown import shown
from generator.figures.view import View
from generator.formula import show_full
from generator.words import Words

NEEDS = (
    "ground_slope",
    "platform_width",
    "base_diameter",
    "outside_diameter",
    "wall_height",
    "working_room",
    "cut_height",
    "cut_batter",
    "cut_back_width",
    "ditch_setback",
)

_DITCH = 0.4
"""Width of the ditch as drawn, metres: a spade and a half; no number of the course."""
_BASE, _ROOF = 0.1, 0.06
"""Thickness of base and roof as drawn, metres."""
_BAND = 9.0
"""Marked earth below the surface, paper units."""
_ROWS = (24.0, 42.0)
"""Arrowed lines below the platform, paper units."""
_LEAST_CUT = 0.02
"""A cut lower than this is level ground and is not measured, metres."""
_AHEAD, _BEHIND = 20.0, 14.0
_WATCHER = 0.9
"""Ground above the ditch for the person who shows the size, metres: out of the way of bank and overflow."""
_SKY = 12.0


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one tank.

    Args:
        values: numbers of the tank, by the names in `NEEDS`.
        words: language of its texts.
    """
    return _CutPlatform(values, words).scene()


class _CutPlatform:
    def __init__(self, values: Mapping[str, float], words: Words) -> None:
        self._values = values
        self._words = words
        self._slope = math.tan(math.radians(values["ground_slope"]))
        self._width = values["platform_width"]
        self._bank_top = self._width + values["cut_back_width"]
        self._ditch = self._bank_top + values["ditch_setback"]
        self._downhill = max(1.0, 0.35 * self._width)
        self._watcher = self._ditch + _DITCH + 0.55 * _WATCHER
        across = self._downhill + self._ditch + _DITCH + _WATCHER
        self._unit = across / (VIEW - _AHEAD - _BEHIND)
        self._end = self._ditch + _DITCH + _WATCHER + (_BEHIND - MARGIN) * self._unit
        self._start = -self._downhill - (_AHEAD - MARGIN) * self._unit
        self._heads = (words.say("figure.cut-platform.right"), words.say("figure.cut-platform.wrong"))

    def _say(self, name: str, value: str = "", most: float = 80.0) -> Block:
        return Block.of(self._words.say_one_of("figure.part", name), value, most=most)

    def _at(self, x: float, y: float) -> Point:
        """Paper units of a place that is so far right of the platform's outer edge and above it, metres."""
        return _AHEAD + (self._downhill + x) / self._unit, self._level - y / self._unit

    def _points(self, *places: Point) -> tuple[Point, ...]:
        return self._view.all_at(*places)

    def scene(self) -> Scene:
        values, words, unit = self._values, self._words, self._unit
        batter = words.with_unit(show_full(values["cut_batter"]), "m")
        named = {
            "overflow": self._say("overflow_path", most=74),
            "cut": self._say("cut_height", shown("cut_height", values, words), most=66),
            "bank": self._say("bank", batter, most=86),
            "ditch": self._say("drain_ditch", shown("ditch_setback", values, words), most=72),
        }
        above = max(block.height() for block in named.values())
        top = self._watcher * self._slope + PERSON_HEIGHT
        high = max(values["wall_height"] + _BASE + _ROOF, self._end * self._slope, top) / unit
        sky_top = MARGIN + heading_height(self._heads[0]) + above
        self._level = sky_top + _SKY + 16 + high
        low = max(-self._start * self._slope / unit + _BAND, _ROWS[1] + 6)
        below = self._level + low + 12
        measured = {
            "platform": self._say("platform", shown("platform_width", values, words), most=130),
            "room": self._say("working_room", shown("working_room", values, words), most=130),
        }
        second = below + max(block.height() for block in measured.values()) + 8
        wrong_top = second + heading_height(self._heads[1])
        self._wrong_level, wrong_foot = self._wrong_levels(wrong_top)
        self._page = page = Page(unit, wrong_foot + MARGIN)
        self._view = View(page, *self._at(0.0, 0.0), 1 / unit)
        page.heading(1, self._heads[0], MARGIN)
        self._draw_ground()
        self._draw_tank()
        self._measure()
        middle_of_bank = self._at((self._width + self._bank_top) / 2, self._bank_top * self._slope / 2)
        callouts = [
            Callout(named["overflow"], self._at(-0.12 * self._downhill, -0.12 * self._downhill * self._slope)),
            Callout(named["bank"], middle_of_bank),
            Callout(named["ditch"], self._at(self._ditch + _DITCH / 2, self._ditch * self._slope - 0.1)),
        ]
        if values["cut_height"] > _LEAST_CUT:
            callouts.append(Callout(named["cut"], self._at(self._width, 0.5 * values["cut_height"])))
        row_above(page, callouts, sky_top)
        room = self._width - values["working_room"] / 2
        row_below(
            page,
            [
                Callout(measured["platform"], (self._at(0.35 * self._width, 0)[0], self._level + _ROWS[0])),
                Callout(measured["room"], (self._at(room, 0)[0], self._level + _ROWS[1])),
            ],
            below,
        )
        page.heading(2, self._heads[1], second)
        self._draw_wrong()
        return page.scene(words.say("figure.cut-platform.title"), words.say("figure.cut-platform.description"), words)

    def _surface(self) -> Iterator[Point]:
        slope, width = self._slope, self._width
        yield self._start, self._start * slope
        yield 0.0, 0.0
        yield width, 0.0
        yield self._bank_top, self._bank_top * slope
        yield self._ditch, self._ditch * slope
        yield self._ditch + 0.25 * _DITCH, self._ditch * slope - 0.7 * _DITCH
        yield self._ditch + 0.75 * _DITCH, self._ditch * slope - 0.7 * _DITCH
        yield self._ditch + _DITCH, (self._ditch + _DITCH) * slope
        yield self._end, self._end * slope

    def _draw_ground(self) -> None:
        surface = list(self._surface())
        page, band = self._page, _BAND * self._unit
        lower = [(x, y - band) for x, y in reversed(surface)]
        page.add(Hatch(self._points(*surface, *lower), HatchKind.GROUND))
        page.add(Group("ground", (Polyline(self._points(*surface), Ink.GROUND),)))
        if self._values["cut_height"] > _LEAST_CUT:
            top = (self._bank_top, self._bank_top * self._slope)
            page.add(Group("old ground", (self._view.line((0.0, 0.0), top, Ink.BREAK),)))
        water = [surface[5], surface[6], (surface[6][0], surface[6][1] + 0.12), (surface[5][0], surface[5][1] + 0.12)]
        page.add(Group("drain ditch", (Hatch(self._points(*water), HatchKind.WATER),)))

    def _draw_tank(self) -> None:
        values, page, unit = self._values, self._page, self._unit
        middle, top = self._width / 2, _BASE + values["wall_height"]
        base, tank = values["base_diameter"] / 2, values["outside_diameter"] / 2
        slab = self._points((middle - base, 0), (middle + base, 0), (middle + base, _BASE), (middle - base, _BASE))
        wall = self._points((middle - tank, _BASE), (middle + tank, _BASE), (middle + tank, top), (middle - tank, top))
        roof = self._points(
            (middle - tank, top), (middle + tank, top), (middle + tank, top + _ROOF), (middle - tank, top + _ROOF)
        )
        page.add(
            Group("base", (Polyline(slab, Ink.BODY, closed=True), Hatch(slab, HatchKind.MORTAR))),
            Group("tank", (Polyline(wall, Ink.BODY, closed=True), Polyline(roof, Ink.BODY, closed=True))),
        )
        # The overflow falls free into a lined channel that runs off the platform and on down the hill.
        pipe = 0.07
        level, left = top - 0.15, middle - tank
        out = left - min(0.3, 0.5 * (left - 0.02))
        mouth = self._points(
            (left, level), (left, level + pipe), (out - pipe, level + pipe), (out - pipe, level - 0.12)
        )
        inner = self._points((out, level - 0.12), (out, level))
        lined = self._points((out + 0.1, 0.03), (0.0, 0.03), (self._start, self._start * self._slope + 0.03))
        lift, slope = 7 * unit, self._slope
        first, last = (share * self._start for share in (0.25, 0.75))
        flow = self._points((first, first * slope + lift), (last, last * slope + lift))
        page.add(person(self._view.at(self._watcher, self._watcher * slope), -1.0))
        page.add(
            Group(
                "overflow",
                (
                    Polyline((*mouth, *inner), Ink.STEEL_EDGE, closed=True),
                    self._view.line((out - pipe / 2, level - 0.16), (out - pipe / 2, 0.08), Ink.WATER),
                    Polyline(lined, Ink.LINED),
                    arrow(flow, 3.2 * unit),
                ),
            )
        )

    def _measure(self) -> None:
        page, unit, width, view = self._page, self._unit, self._width, self._view
        room = self._values["working_room"]
        page.add(view.measure((0, 0), (width, 0), -_ROWS[0]), view.measure((width - room, 0), (width, 0), -_ROWS[1]))
        level = self._ditch * self._slope
        above = 14.0 if self._values["cut_height"] > 17 * unit else 26.0  # clear of the arrows of a low cut
        page.add(view.measure((self._bank_top, level), (self._ditch, level), above))
        if self._values["cut_height"] > _LEAST_CUT:
            page.add(view.measure((width, 0), (width, self._values["cut_height"]), 0.0))

    def _wrong_levels(self, top: float) -> tuple[float, float]:
        """Level of the half-filled platform and lower edge of its picture."""
        slope = self._wrong_slope()
        level = top + max(76.0, 160 * slope + 4)
        return level, level + 165 * slope + _BAND + 2

    def _wrong_slope(self) -> float:
        return math.tan(math.radians(max(self._values["ground_slope"], 20)))

    def _draw_wrong(self) -> None:
        """Paper units only: this picture shows what happens, and measures nothing."""
        page, level, slope, middle = self._page, self._wrong_level, self._wrong_slope(), VIEW / 2
        half = 56.0
        back = 1.12 * half
        steep = math.tan(math.atan(slope) + math.radians(20))
        toe = -half * steep / (steep - slope)

        def at(x: float, up: float) -> Point:
            return page.at(middle + x, level - up)

        def all_at(*points: Point) -> tuple[Point, ...]:
            return tuple(at(*point) for point in points)

        surface = [(-165.0, -165 * slope), (0.0, 0.0), (half, 0.0), (back, back * slope), (160.0, 160 * slope)]
        lower = [(x, y - _BAND) for x, y in reversed(surface)]
        page.add(Hatch(all_at(*surface, *lower), HatchKind.GROUND), Polyline(all_at(*surface), Ink.GROUND))
        heap = [(0.0, 0.0), (-0.5 * half, -4.0), (-half, -9.0), (0.5 * (toe - half), -9 + (toe * slope + 9) * 0.42)]
        fill = [*heap, (toe, toe * slope)]
        stones = [
            Circle(at(x, y), 1.7 * self._unit, Ink.THING)
            for x in range(int(toe), -8, 7)
            for y in (0.62 * x * slope - 4, 0.85 * x * slope - 1)
            if x * slope + 3 < y < -7 - max(0.0, (-half - x) * 0.8)
        ]
        page.add(Group("fill", (Polyline(all_at(*fill), Ink.THING, closed=True), *stones)))
        turn = math.radians(9)

        def leaning(*points: Point) -> tuple[Point, ...]:
            return all_at(
                *(
                    (x * math.cos(turn) - up * math.sin(turn), x * math.sin(turn) + up * math.cos(turn) - 1)
                    for x, up in points
                )
            )

        crack = leaning((-22, 4), (-17, 13), (-25, 20), (-17, 28), (-24, 38))
        leak = [
            Polyline(leaning((-40, 9 - step), (-49, 4 - 2 * step), (-58 - 2 * step, -12 - step)), Ink.WATER_LINE)
            for step in (0, 3, 6)
        ]
        page.add(
            Group(
                "leaning tank",
                (
                    Polyline(leaning((-48, 0), (48, 0), (48, 4), (-48, 4)), Ink.BODY, closed=True),
                    Polyline(leaning((-40, 4), (40, 4), (40, 54), (-40, 54)), Ink.BODY, closed=True),
                    Polyline(crack, Ink.GROUND),
                    *leak,
                ),
            )
        )
        page.add(Group("cross", (Line(at(-58, -12), at(58, 68), Ink.CROSS), Line(at(-58, 68), at(58, -12), Ink.CROSS))))
        spot = at(-0.8 * half, -0.5 * (7 + 0.8 * half * slope))
        tops = [(x, level - up) for up in range(40, -200, -6) for x in (52, 70, 40)]
        page.text(self._say("fill", most=70), tops, spot)
        wrong = Block(((self._words.say("figure.part.wrong_word"), Letter.HEADING),))
        page.text(wrong, [(x, level + down) for down in range(24, 140, 6) for x in (292, 306, 270)])
