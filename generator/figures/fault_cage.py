"""Faults to find in the cage before mortar: an open lap, laps in one line, a starter that is missing, a mesh belly."""

from __future__ import annotations

import math
from collections.abc import Mapping

from generator.figures.areas import TARGET, Spot, add_area
from generator.figures.fault_parts import finished, line, paper, rect, slots, task, task_height, tie, torn, woven
from generator.figures.ink import Ink
from generator.figures.page import DISC, MARGIN, Page
from generator.figures.scene import VIEW, Circle, Element, Group, Scene
from generator.figures.things import HAND_LENGTH, hand
from generator.words import Words

_SIDE = 2 * DISC + 10
"""Paper beside the cage for letters."""
_ROW = 30.0
"""Least height of a place, so that its letter stands free."""
_CAGE = ("hoop_spacing_closing", "bar_spacing", "lap_length")


class _Cage:
    """A piece of the cage laid flat: upright bars behind, hoops in front.

    Args:
        values: numbers of the tank.
        words: language of the texts.
        laps: width that is shown, in laps.
        rows: places one above the other.
        hoops: hoops that a place has at least.
    """

    def __init__(self, values: Mapping[str, float], words: Words, laps: float, rows: int, hoops: int = 1) -> None:
        self.lines = task(words)
        self.left, self.right = MARGIN + _SIDE, VIEW - MARGIN - _SIDE
        wide = self.right - self.left
        gap, lap = values["hoop_spacing_closing"], values["lap_length"]
        unit = max(laps * lap / wide, rows * hoops * gap / 330.0)
        self.skip = max(1, math.ceil(_ROW / (hoops * gap / unit)))
        """Hoops that stand for one: where they are close, the laps of those between lie outside this piece."""
        self.gap = gap / unit
        self.lap = lap / unit
        self.row = hoops * self.skip * self.gap
        self.count = rows * hoops
        self.top = MARGIN + max(4.0, _ROW / 2 - self.gap / 2)
        self.foot = self.top + rows * self.row
        self.page = Page(unit, self.foot + 6 + task_height(self.lines))
        self.thick = min(3.4, 0.16 * self.gap * self.skip)
        self.spare = max(0.0, wide - laps * self.lap) / 2
        self._uprights(values["bar_spacing"] / unit)

    def _uprights(self, gap: float) -> None:
        thick = min(3.0, 0.3 * gap)
        x = VIEW / 2 - gap * math.floor((VIEW / 2 - self.left - thick) / gap)
        while x < self.right - thick:
            box = rect(self.page, x - thick / 2, self.top, x + thick / 2, self.foot, Ink.STEEL_EDGE)
            self.page.add(Group("bar", (box,)))
            x += gap

    def level(self, hoop: int) -> float:
        """Height of a hoop that is looked at, counted from the top."""
        return self.top + (hoop * self.skip + 0.5) * self.gap

    def straight(self, down: float, start: float, end: float, thick: float = 0.0) -> Element:
        """A piece of hoop, as thick as those that are looked at or thinner."""
        half = (thick or self.thick) / 2
        return rect(self.page, start, down - half, end, down + half, Ink.STEEL)

    def between(self) -> None:
        """The hoops between those that are looked at: thin where they stand close, so that laps show."""
        thin = min(self.thick, 0.14 * self.gap)
        for hoop in range(self.count):
            for step in range(1, self.skip):
                down = self.level(hoop) + step * self.gap
                self.page.add(Group("hoop", (self.straight(down, self.left, self.right, thin),)))

    def lap_at(self, hoop: int, x: float) -> None:
        """A hoop with a sound lap that begins at a place."""
        down = self.level(hoop)
        beside = self.thick * 1.08
        self.page.add(
            Group(
                "lap",
                (
                    self.straight(down, self.left, x + self.lap),
                    self.straight(down + beside, x, self.right),
                ),
            ),
            *(
                tie(
                    self.page,
                    x + self.lap * at,
                    down - self.thick / 2,
                    down + beside + self.thick / 2,
                    tail=self.gap > 24,
                )
                for at in (0.1, 0.5, 0.9)
            ),
        )

    def open_at(self, hoop: int, x: float) -> None:
        """A hoop whose ends don't reach each other."""
        down = self.level(hoop)
        first, second = x + 0.34 * self.lap, x + 0.72 * self.lap
        self.page.add(
            Group("lap", (self.straight(down, self.left, first), self.straight(down + 1.5, second, self.right)))
        )

    def torn_edges(self) -> None:
        """The cage goes on to both sides."""
        self.page.add(torn(self.page, self.left, self.top - 2, self.foot + 2))
        self.page.add(torn(self.page, self.right, self.top - 2, self.foot + 2))


def _open_lap(values: Mapping[str, float], words: Words, order: tuple[str, ...]) -> Scene:
    cage = _Cage(values, words, 3.5, len(order))
    cage.between()
    for hoop, name in enumerate(order):
        left = hoop % 2 == 0
        x = cage.left + cage.spare + (0.15 if left else 2.35) * cage.lap
        (cage.open_at if name == "open-lap" else cage.lap_at)(hoop, x)
        down = cage.level(hoop)
        box = paper(cage.page, x - 3, down - _ROW / 2 + 1, x + cage.lap + 3, down + _ROW / 2 - 1)
        add_area(cage.page, name, box, (MARGIN + DISC if left else VIEW - MARGIN - DISC, down))
    cage.torn_edges()
    return finished(cage.page, "fault-open-lap", cage.lines, words)


_ZONE = 3
"""Hoops of a place where the laps of neighbours are held against each other."""


def _laps_in_line(values: Mapping[str, float], words: Words, order: tuple[str, ...]) -> Scene:
    cage = _Cage(values, words, 5.5, len(order), _ZONE)
    cage.between()
    for zone, name in enumerate(order):
        for place in range(_ZONE):
            column = 1 if name == "laps-in-one-line" else place
            cage.lap_at(zone * _ZONE + place, cage.left + cage.spare + (0.15 + 2.1 * column) * cage.lap)
        high, low = cage.level(zone * _ZONE), cage.level(zone * _ZONE + _ZONE - 1)
        half = 0.35 * cage.skip * cage.gap
        box = paper(cage.page, cage.left, high - half, cage.right, low + half)
        add_area(cage.page, name, box, (MARGIN + DISC, (high + low) / 2))
        x = cage.left - 5
        bracket = [(x + 3, high - half), (x, high - half), (x, low + half), (x + 3, low + half)]
        cage.page.add(line(cage.page, bracket, Ink.LEADER))
    cage.torn_edges()
    return finished(cage.page, "fault-laps-in-line", cage.lines, words)


OPEN_LAP = Spot("fault-open-lap", _CAGE, ("open-lap", "lap-1", "lap-2", "lap-3", "lap-4"), _open_lap)
LAPS_IN_LINE = Spot(
    "fault-laps-in-line", _CAGE, ("laps-in-one-line", "staggered-1", "staggered-2", "staggered-3"), _laps_in_line
)


def _missing_starter(values: Mapping[str, float], words: Words, order: tuple[str, ...]) -> Scene:
    """Upright bars stand on the base; beside each a starter comes out of the concrete, its foot bent into it."""
    lines = task(words)
    wide = VIEW - 2 * MARGIN
    gap, lap = values["bar_spacing"], values["lap_length"]
    unit = max(len(order) * gap / wide, 1.25 * lap / 220.0)
    skip = max(1, math.ceil(30.0 / (gap / unit)))
    unit = max(len(order) * skip * gap / wide, 1.25 * lap / 220.0)
    lap, slab = lap / unit, max(values["base_concrete_thickness"] / 1000 / unit, 18.0)
    top = MARGIN
    foot = top + 1.25 * lap
    low = foot + slab
    page = Page(unit, low + 2 * DISC + 8 + task_height(lines))
    page.add(rect(page, MARGIN, foot, VIEW - MARGIN, low, Ink.CONCRETE))
    step = gap / unit
    half = len(order) * skip * step / 2
    for name, (left, right) in zip(order, slots(len(order), VIEW / 2 - half, VIEW / 2 + half), strict=True):
        for bar in range(skip):
            x = left + (bar + 0.5) * step
            page.add(Group("bar", (rect(page, x - 1.8, top, x + 1.8, foot, Ink.STEEL),)))
            if name != "no-starter" or bar != skip // 2:
                _starter(page, x, foot, lap, min(slab - 6, 30.0), min(step, 24.0))
        box = paper(page, left + 2, top + 2, right - 2, low)
        add_area(page, name, box, ((left + right) / 2, low + DISC + 4))
    return finished(page, "fault-missing-starter", lines, words)


def _starter(page: Page, x: float, foot: float, lap: float, deep: float, leg: float) -> None:
    """A starter beside an upright bar, tied twice; its leg lies in the base."""
    left, right = x + 2.2, x + 5.4
    turned = x + 2.2 + 0.62 * leg
    outline = [(left, foot - lap), (right, foot - lap), (right, foot + deep - 3.2), (turned, foot + deep - 3.2)]
    outline += [(turned, foot + deep), (left, foot + deep)]
    ties: list[Element] = []
    for at in (0.2, 0.75):
        down = foot - lap * at
        ties += [line(page, [(x - 3, down + off), (right + 1.2, down + off + 1)], Ink.WIRE) for off in (-1.6, 1.6)]
    page.add(Group("starter", (line(page, outline, Ink.STEEL_EDGE, closed=True), *ties)))


MISSING_STARTER = Spot(
    "fault-missing-starter",
    ("bar_spacing", "lap_length", "base_concrete_thickness"),
    ("no-starter", "starter-1", "starter-2", "starter-3", "starter-4", "starter-5"),
    _missing_starter,
)


_GAPS = 3
_GAP = 94.0
"""From hoop to hoop, paper units, where thick steel leaves so much room."""
_BELLY = 0.032
"""How far the mesh stands off in the drawing, metres."""


def _mesh_belly(values: Mapping[str, float], words: Words, order: tuple[str, ...]) -> Scene:
    """The cage cut from top to foot: a bar, the hoops before it, mesh on both sides, tied at each hoop."""
    lines = task(words)
    gap = values["hoop_spacing_closing"]
    steel = values["bar_diameter"] + 2 * values["hoop_diameter"] + 4 * values["outside_mesh_thickness"]
    unit = max(gap / _GAP, steel / 1000 / 110.0)
    thin = 0.001 / unit
    bar, hoop = values["bar_diameter"] * thin, values["hoop_diameter"] * thin
    inside, outside = (max(values[f"{side}_mesh_thickness"] * thin, 3.0) for side in ("inside", "outside"))
    top = MARGIN + 6
    foot = top + (_GAPS + 0.5) * gap / unit
    belly = min(_BELLY / unit, 34.0)
    page = Page(unit, foot + 6 + task_height(lines))
    middle = 0.66 * VIEW
    levels = [top + (number + 0.25) * gap / unit for number in range(_GAPS + 1)]
    page.add(Group("bar", (rect(page, middle - bar / 2, top, middle + bar / 2, foot, Ink.STEEL_EDGE),)))
    right = middle + bar / 2 + hoop
    for level in levels:
        page.add(Group("hoop", (Circle(page.at(right - hoop / 2, level), hoop / 2 * page.unit, Ink.STEEL),)))
    faces = {"left": (middle - bar / 2 - inside / 2, inside, -1), "right": (right + outside / 2, outside, 1)}
    places = [(side, number) for side in ("left", "right") for number in ((0, 1, 2) if side == "right" else (0, 2))]
    bulges: dict[str, list[tuple[float, float]]] = {"left": [], "right": []}
    for name, (side, number) in zip(order, places, strict=True):
        x, thick, out = faces[side]
        high, low = levels[number], levels[number + 1]
        if name == "belly":
            shape = [(0.0, 0.0), (0.14, 0.25), (0.3, 0.75), (0.5, 1.0), (0.7, 0.75), (0.86, 0.25), (1.0, 0.0)]
            bulges[side] = [(high + (low - high) * at, out * belly * off) for at, off in shape]
        reach = belly + thick
        near, far = sorted((x - out * thick / 2, x + out * max(reach, TARGET)))
        box = paper(page, near, high + 5, far, low - 5)
        add_area(page, name, box, (x + out * (max(reach, TARGET) + DISC + 3), (high + low) / 2))
    for side, (x, thick, _) in faces.items():
        page.add(woven(page, x, top, foot, thick, bulges[side]))
    for level in levels:
        ends = ((middle - bar / 2 - inside - 1, level - 3), (right + outside + 1, level + 1))
        page.add(Group("tie", (line(page, ends, Ink.WIRE),)))
    palm = HAND_LENGTH / page.unit
    if palm < 165:
        page.add(hand(page.at(MARGIN + 0.45 * palm, (top + foot + palm) / 2), forearm=0.2))
    return finished(page, "fault-mesh-belly", lines, words)


MESH_BELLY = Spot(
    "fault-mesh-belly",
    ("hoop_spacing_closing", "bar_diameter", "hoop_diameter", "inside_mesh_thickness", "outside_mesh_thickness"),
    ("belly", "tight-1", "tight-2", "tight-3", "tight-4"),
    _mesh_belly,
)
