"""The build as a path with seven stops: at each one somebody who did not do the work looks and signs."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from generator.figures.fault_parts import drop, line, marks, rect
from generator.figures.ink import HatchKind, Ink, Letter
from generator.figures.layout import Block, wrap
from generator.figures.page import DISC, MARGIN, Page
from generator.figures.scene import VIEW, Circle, Group, Scene
from generator.words import Words

NEEDS = ()

_ROW, _ROAD, _PICTURE, _TEXT = 66.0, 34.0, 84.0, 158.0
"""Height of a stop, width of the path, and where pictures and texts begin, paper units."""
_STOPS = ("ground", "base", "cage", "batch", "roof", "curing", "leak")


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing; it is the same for every tank.

    Args:
        values: not needed.
        words: language of its texts.
    """
    del values
    blocks = []
    most = VIEW - MARGIN - _TEXT
    for stop in _STOPS:
        name = words.say_one_of("figure.seven-hold-points", stop)
        look = words.say_one_of("figure.seven-hold-points", f"{stop}_look")
        rows = [(text, Letter.HEADING) for text in wrap(name, Letter.HEADING, most)]
        blocks.append(Block((*rows, *((text, Letter.NOTE) for text in wrap(look, Letter.NOTE, most))), "start"))
    heights = [max(_ROW, block.height() + 8) for block in blocks]
    page = Page(0.01, MARGIN + sum(heights) + 30 + MARGIN)
    left, right = MARGIN + 8, MARGIN + 8 + _ROAD
    end = page.height - MARGIN
    neck = end - 24
    order = [(left, MARGIN), (right, MARGIN), (right, neck), (right + 8, neck), ((left + right) / 2, end)]
    order += [(left - 8, neck), (left, neck)]
    page.add(Group("path", (line(page, order, Ink.WALL_FACE, closed=True),)))
    top = MARGIN
    for number, (stop, block, high) in enumerate(zip(_STOPS, blocks, heights, strict=True), start=1):
        middle, x = top + high / 2, (left + right) / 2
        page.add(
            Group(
                "barrier",
                (
                    rect(page, left - 8, middle - 3, x - DISC, middle + 3, Ink.WOOD),
                    rect(page, x + DISC, middle - 3, right + 8, middle + 3, Ink.WOOD),
                ),
            ),
            *block.labels(page.at(_TEXT, middle - block.height() / 2), page.unit),
        )
        page.disc(number, x, middle)
        _PICTURES[stop](page, _PICTURE, middle - 27, _TEXT - 14, middle + 27)
        top += high
    return page.scene(
        words.say("figure.seven-hold-points.title"), words.say("figure.seven-hold-points.description"), words
    )


def _earth(page: Page, left: float, right: float, foot: float, deep: float = 10.0) -> None:
    page.add(
        marks(page, left, foot - deep, right, foot, HatchKind.GROUND),
        line(page, [(left, foot - deep), (right, foot - deep)], Ink.GROUND),
    )


def _ground(page: Page, left: float, top: float, right: float, foot: float) -> None:
    """A pit with a bar pushed into its bottom."""
    middle = (left + right) / 2
    page.add(
        marks(page, left, foot - 10, right, foot, HatchKind.GROUND),
        marks(page, left, foot - 24, left + 12, foot - 10, HatchKind.GROUND),
        marks(page, right - 12, foot - 24, right, foot - 10, HatchKind.GROUND),
        line(
            page,
            [
                (left, foot - 24),
                (left + 12, foot - 24),
                (left + 12, foot - 10),
                (right - 12, foot - 10),
                (right - 12, foot - 24),
                (right, foot - 24),
            ],
            Ink.GROUND,
        ),
        rect(page, middle - 1.5, top, middle + 1.5, foot - 8, Ink.STEEL),
    )


def _base(page: Page, left: float, top: float, right: float, foot: float) -> None:
    """Mesh, ring bars and starters, before the concrete."""
    _earth(page, left, right, foot)
    level = foot - 17
    page.add(line(page, [(left + 4, level), (right - 4, level)], Ink.STEEL_LINE))
    for step in range(6):
        x = left + 8 + (right - left - 16) * step / 5
        page.add(Circle(page.at(x, level - 3), 0.02, Ink.STEEL))
    for x in (left + 12, left + 20, right - 20, right - 12):
        page.add(line(page, [(x - 5, level - 3), (x, level - 3), (x, top + 2)], Ink.STEEL_LINE))


def _cage(page: Page, left: float, top: float, right: float, foot: float) -> None:
    """Upright bars and hoops."""
    for step in range(6):
        x = left + 4 + (right - left - 8) * step / 5
        page.add(line(page, [(x, top), (x, foot)], Ink.STEEL_LINE))
    for step in range(6):
        y = top + 4 + (foot - top - 6) * step / 5
        page.add(line(page, [(left, y), (right, y)], Ink.FACE))


def _batch(page: Page, left: float, top: float, right: float, foot: float) -> None:
    """A heap of mortar and a measured box."""
    page.add(
        line(
            page,
            [(left, foot), (left + 10, foot - 20), (left + 24, foot - 22), (left + 34, foot)],
            Ink.MORTAR_CUT,
            closed=True,
        ),
        rect(page, right - 26, foot - 26, right - 2, foot, Ink.WOOD),
        Circle(page.at((left + right) / 2, top + 14), 0.11, Ink.MORTAR_CUT),
    )


def _roof(page: Page, left: float, top: float, right: float, foot: float) -> None:
    """Boards on props."""
    page.add(rect(page, left, top + 6, right, top + 10, Ink.WOOD), rect(page, left, top + 1, right, top + 3, Ink.STEEL))
    for step in range(4):
        x = left + 6 + (right - left - 12) * step / 3
        page.add(
            rect(page, x - 2, top + 10, x + 2, foot - 4, Ink.WOOD), rect(page, x - 6, foot - 4, x + 6, foot, Ink.WOOD)
        )


def _curing(page: Page, left: float, top: float, right: float, foot: float) -> None:
    """A wall behind wet cloth."""
    page.add(
        rect(page, left, top, right, foot, Ink.CLOTH),
        *(
            drop(page, left + 12 + 18 * (step % 3) + 7 * (step // 3), top + 8 + 22 * (step // 3), 9.0)
            for step in range(6)
        ),
    )


def _leak(page: Page, left: float, top: float, right: float, foot: float) -> None:
    """A tank with its mark, cut through."""
    page.add(
        marks(page, left + 4, top + 14, right - 4, foot - 4, HatchKind.WATER),
        line(page, [(left + 4, top + 14), (right - 4, top + 14)], Ink.WATER_LINE),
        line(page, [(right - 16, top + 14), (right - 4, top + 14)], Ink.CROSS),
        rect(page, left, top, left + 4, foot, Ink.CONCRETE),
        rect(page, right - 4, top, right, foot, Ink.CONCRETE),
        rect(page, left, foot - 4, right, foot, Ink.CONCRETE),
    )


_PICTURES: Mapping[str, Callable[[Page, float, float, float, float], None]] = {
    "ground": _ground,
    "base": _base,
    "cage": _cage,
    "batch": _batch,
    "roof": _roof,
    "curing": _curing,
    "leak": _leak,
}
