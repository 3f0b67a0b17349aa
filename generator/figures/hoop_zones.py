"""The wall laid flat with every hoop at its level, closer together below than above, and the pull that they carry.

Beside the wall stands the pull of the water on a ring: nothing at the level of the water, most at the foot. Near a
foot that is held by the base the real pull is smaller, and a little above it larger; steel is chosen by `plan`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from generator.calculations import BOOK
from generator.figures.callouts import Callout, column_height, left_column, right_column
from generator.figures.cut_parts import box, points_at
from generator.figures.ink import HatchKind, Ink
from generator.figures.layout import Block
from generator.figures.page import MARGIN, Page, note_height, note_lines
from generator.figures.scene import VIEW, Dimension, Element, Group, Hatch, Line, Polyline, Rect, Scene
from generator.figures.shown import shown
from generator.figures.things import BUCKET_HEIGHT, HAND_LENGTH, bucket, hand
from generator.formula import show
from generator.words import Words

NEEDS = ("wall_height", "water_depth", "hoop_gaps", "hoop_spacing_closing", "hoop_diameter")

ZONE_COUNT = "zone_count"
"""Name of the number of zones; with it come `zone_1_top`, `zone_1_gaps`, `zone_1_spacing` and so on, from below."""
MOST_ZONES = 4
PULL = "ring_tension_free"
"""Where it is among the numbers, the pull of the water is drawn beside the wall."""

_WALL = 210.0
"""Height of the wall, paper units."""
_LEFT, _RIGHT = 62.0, 88.0
_STRIP = 92.0
"""Width of the piece of wall, paper units."""
_PULL = 62.0
_GROUND = 12.0
_BESIDE, _STEP = 13.0, 9.0
_MOST_BUCKET = 72.0


@dataclass(frozen=True, slots=True)
class Zone:
    """Hoops of one spacing.

    Args:
        low: its lowest hoop, metres above the foot.
        top: its highest hoop, metres above the foot.
        gaps: spaces between its hoops.
        spacing: from hoop to hoop, metres.
    """

    low: float
    top: float
    gaps: int
    spacing: float

    def levels(self) -> Iterator[float]:
        """Its hoops from below, metres above the foot."""
        for number in range(self.gaps + 1):
            yield self.low + (self.top - self.low) * number / self.gaps


def zones(values: Mapping[str, float]) -> tuple[Zone, ...]:
    """The zones of a wall from the foot up.

    Args:
        values: numbers of the tank; without `ZONE_COUNT` the wall is one zone.

    Raises:
        KeyError: a number of a zone is missing.
        ValueError: there are none or too many, or they don't follow each other up to the top of the wall.
    """
    height = values["wall_height"]
    if ZONE_COUNT not in values:
        return (Zone(0.0, height, round(values["hoop_gaps"]), values["hoop_spacing_closing"]),)
    count = round(values[ZONE_COUNT])
    if not 1 <= count <= MOST_ZONES:
        raise ValueError(f"a wall has 1 to {MOST_ZONES} zones, not {count}")
    found: list[Zone] = []
    low = 0.0
    for number in range(1, count + 1):
        top = values[f"zone_{number}_top"]
        gaps = round(values[f"zone_{number}_gaps"])
        if top <= low or gaps < 1:
            raise ValueError(f"zone {number} has no height or no gap")
        found.append(Zone(low, top, gaps, values[f"zone_{number}_spacing"]))
        low = top
    if abs(low - height) > _HAIR:
        raise ValueError(f"the zones end at {low} m, the wall at {height} m")
    return tuple(found)


_HAIR = 0.001


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one tank.

    Args:
        values: numbers of the tank, by the names in `NEEDS`, and those of its zones if it has any.
        words: language of its texts.

    Raises:
        ValueError: the zones don't fit the wall.
    """
    return _Zones(values, words).scene()


class _Zones:
    def __init__(self, values: Mapping[str, float], words: Words) -> None:
        self._values = values
        self._words = words
        self._zones = zones(values)
        self._height = values["wall_height"]
        self._unit = self._height / _WALL
        self._with_pull = values.get(PULL, 0.0) > 0
        self._strip = _LEFT + (_PULL + 16 if self._with_pull else 16), VIEW - _RIGHT - 30

    def scene(self) -> Scene:
        words = self._words
        note = note_lines(words.say("figure.hoop-zones.note_pull" if self._with_pull else "figure.hoop-zones.note"))
        right = [Callout(block, (0.0, 0.0)) for block in self._zone_texts()]
        above = Block.of(words.say("figure.part.hoop"), most=90)
        top = MARGIN + max(above.height(), 19.0) + 14
        top += max(0.0, (column_height(right) - _WALL) / 2)
        self._foot = top + _WALL
        note_top = self._foot + _GROUND + max(8.0, (column_height(right) - _WALL) / 2)
        self._page = page = Page(self._unit, note_top + note_height(note) + MARGIN)
        self._draw_ground()
        if self._with_pull:
            self._draw_pull()
        self._draw_hoops()
        self._measure()
        left, right_edge = self._strip
        x = (left + right_edge) / 2
        target = (x, self._down(self._height))
        page.text(above, [(x, MARGIN)], page.at(*target))
        self._draw_size()
        page.note(note, note_top)
        return page.scene(words.say("figure.hoop-zones.title"), words.say("figure.hoop-zones.description"), words)

    def _down(self, level: float) -> float:
        """Paper units from the top edge to a level above the foot."""
        return self._foot - level / self._unit

    def _zone_texts(self) -> list[Block]:
        """For each zone how many gaps of what size, from the foot up."""
        words = self._words
        entry = BOOK.quantities["hoop_spacing_closing"]
        found = []
        for zone in self._zones:
            number = (
                words.with_unit(show(zone.spacing, entry.places), entry.unit)
                if ZONE_COUNT in self._values
                else shown("hoop_spacing_closing", self._values, words)
            )
            text = words.say("figure.hoop-zones.gaps", count=zone.gaps)
            found.append(Block.of(text, number, most=_RIGHT - 8, anchor="start"))
        return found

    def _draw_ground(self) -> None:
        page = self._page
        foot = self._foot + 1.5
        corners = (
            page.at(MARGIN, foot + _GROUND - 2),
            page.at(VIEW - MARGIN, foot + _GROUND - 2),
            page.at(VIEW - MARGIN, foot),
            page.at(MARGIN, foot),
        )
        page.add(Group("ground", (Hatch(corners, HatchKind.GROUND), Line(corners[3], corners[2], Ink.GROUND))))

    def _draw_pull(self) -> None:
        """A wedge that grows from the level of the water to the foot, made of bars, each as long as its pull."""
        page = self._page
        right = self._strip[0] - 10
        depth = self._values["water_depth"]
        water = self._down(depth)
        parts: list[Element] = [
            Polyline(
                (page.at(right, water), page.at(right, self._foot), page.at(right - _PULL + 8, self._foot)),
                Ink.PULL,
                closed=True,
            )
        ]
        page.add(Group("pull", tuple(parts)))
        page.add(Line(page.at(right - 24, water), page.at(right + 4, water), Ink.WATER_LINE))

    def _draw_hoops(self) -> None:
        page, unit = self._page, self._unit
        left, right = self._strip
        (x1, low), (x2, high) = page.at(left, self._foot), page.at(right, self._down(self._height))
        page.add(Group("wall", (box(x1, x2, low, high, Ink.MORTAR_CUT),)))
        for number, zone in enumerate(self._zones):
            levels = list(zone.levels())[1 if number else 0 :]
            gap = (zone.top - zone.low) / zone.gaps
            thick = min(max(self._values["hoop_diameter"] / 1000, 1.5 * unit), 0.4 * gap)
            for level in levels:
                y = page.at(left, self._down(level))[1]
                page.add(Group("hoop", (Rect((x1, y - thick / 2), x2 - x1, thick, Ink.STEEL),)))
        for x in self._strip:
            page.add(self._torn(x))

    def _torn(self, x: float) -> Polyline:
        page, count = self._page, 14
        high, low = self._down(self._height) - 3, self._foot + 1
        return Polyline(
            tuple(
                page.at(x + (2.5 if step % 2 else -2.5), high + (low - high) * step / count)
                for step in range(count + 1)
            ),
            Ink.BREAK,
        )

    def _measure(self) -> None:
        """On the right each zone and one of its gaps, on the left the wall and the pull."""
        page, words = self._page, self._words
        right = self._strip[1]
        callouts = []
        for number, (zone, block) in enumerate(zip(self._zones, self._zone_texts(), strict=True)):
            beside = _BESIDE + _STEP * (number % 2)  # side by side, or the arrowheads of neighbours would touch
            low, high = page.at(right, self._down(zone.low)), page.at(right, self._down(zone.top))
            page.add(Dimension(high, low, beside * self._unit))
            callouts.append(Callout(block, (right + beside, self._down((zone.low + zone.top) / 2))))
        margin = max(0.0, (column_height(callouts) - _WALL) / 2) + 2
        right_column(
            page, callouts, VIEW - _RIGHT + 6, self._down(self._height) - margin, self._foot + min(margin, 10.0)
        )
        points_at(page, [callout.target for callout in callouts])
        left = _LEFT
        page.add(Dimension(page.at(left, self._down(self._height)), page.at(left, self._foot), -7 * self._unit))
        wall = Block.of(
            words.say("figure.hoop-zones.wall_height"),
            shown("wall_height", self._values, words),
            most=_LEFT - 14,
            anchor="end",
        )
        named = [Callout(wall, (left - 7, self._down(0.8 * self._height)))]
        if self._with_pull:
            depth = self._values["water_depth"]
            pull = Block.of(words.say("figure.hoop-zones.pull"), most=_LEFT - 14, anchor="end")
            at = 0.12 * depth
            long = (_PULL - 8) * (1 - at / depth)
            named.append(Callout(pull, (self._strip[0] - 10 - 0.75 * long, self._down(at))))
        left_column(page, named, _LEFT - 13, self._down(self._height), self._foot - 2)
        points_at(page, [callout.target for callout in named])

    def _draw_size(self) -> None:
        """A bucket or a hand before the wall."""
        page = self._page
        left, right = self._strip
        if BUCKET_HEIGHT / self._unit <= _MOST_BUCKET:
            page.add(bucket(page.at(left + 0.3 * (right - left), self._foot)))
        else:
            page.add(hand(page.at((left + right) / 2, self._foot - 30), min(HAND_LENGTH, 0.6 * self._height), 0.15))
