"""One batch as things to be counted: bags of cement, struck-off boxes of damp sand, buckets of water."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

from generator.calculations import BOOK
from generator.figures.ink import HatchKind, Ink, Letter
from generator.figures.layout import Block, wrap
from generator.figures.page import MARGIN, Page, note_height, note_lines
from generator.figures.scene import VIEW, Element, Group, Line, Scene
from generator.figures.shown import shown
from generator.figures.things import BUCKET_HEIGHT
from generator.figures.view import View
from generator.formula import Quantity, show, show_full
from generator.words import Words

NEEDS = (
    "batch_bags",
    "sand_parts",
    "boxes_of_sand",
    "water_to_add",
    "box_length",
    "box_depth",
    "bucket_litres",
)

_PLANK, _GAP, _HANDLE = 0.025, 0.05, 0.05
_BAG_WIDE, _BAG_HIGH = 0.40, 0.62
_BUCKET_WIDE = 0.32
_IN_A_ROW = 5
"""So many in a row can be counted at a glance."""
_PICTURES = 116.0
"""Where the pictures begin, paper units."""
_LEAST_PART = 0.04
"""A smaller part of a box or bucket is not drawn."""
_MOST_BAG = 78.0
"""Height of a bag at most, paper units."""
_BETWEEN = 14.0
_TEXT = 26.0


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one batch.

    Args:
        values: numbers of the batch, by the names in `NEEDS`.
        words: language of its texts.
    """
    return _BatchingRow(values, words).scene()


class _BatchingRow:
    def __init__(self, values: Mapping[str, float], words: Words) -> None:
        self._values = values
        self._words = words
        box = values["box_length"] + 2 * (_PLANK + _HANDLE) + _GAP
        self._unit = max(_IN_A_ROW * box / (VIEW - _PICTURES - MARGIN), _BAG_HIGH / _MOST_BAG)
        self._bags = values["batch_bags"]
        boxes = BOOK.entry("boxes_of_sand")
        places = boxes.places if isinstance(boxes, Quantity) else 1
        self._boxes = float(show(values["boxes_of_sand"], places))
        self._buckets = values["water_to_add"] / values["bucket_litres"]

    def scene(self) -> Scene:
        words, values, unit = self._words, self._values, self._unit
        note = note_lines(words.say("figure.batching-row.note"))
        sand = self._text("sand", show(self._boxes, 1))
        parts = self._text("parts", show_full(values["sand_parts"]))
        water = self._text("water", shown("water_to_add", values, words))
        bucket = self._text("bucket", shown("bucket_litres", values, words))
        rows: list[tuple[Block, ...]] = [(self._text("cement", show_full(self._bags)),), (sand, parts), (water, bucket)]
        box_high = (values["box_depth"] + _PLANK) / unit
        sizes = (
            (self._bags, _BAG_HIGH / unit),
            (self._boxes, box_high),
            (self._buckets, BUCKET_HEIGHT / unit),
        )
        heights = [
            max(
                sum(block.height() for block in blocks) + 6 * (len(blocks) - 1),
                self._lines(count) * (high + 8) - 8,
            )
            for blocks, (count, high) in zip(rows, sizes, strict=True)
        ]
        height = MARGIN + sum(heights) + _BETWEEN * len(heights) + note_height(note)
        self._page = page = Page(unit, height)
        top = MARGIN
        drawers = (self._draw_bags, self._draw_boxes, self._draw_buckets)
        for number, (blocks, high, drawer) in enumerate(zip(rows, heights, drawers, strict=True)):
            page.disc(number + 1, MARGIN + 10.5, top + 10.5)
            level = top
            for block in blocks:
                page.add(*block.labels(page.at(MARGIN + _TEXT, level), unit))
                level += block.height() + 6
            drawer(top)
            top += high
            if number + 1 < len(rows):
                page.add(
                    Line(page.at(MARGIN, top + _BETWEEN / 2), page.at(VIEW - MARGIN, top + _BETWEEN / 2), Ink.BREAK)
                )
            top += _BETWEEN
        page.note(note, top - 4)
        return page.scene(words.say("figure.batching-row.title"), words.say("figure.batching-row.description"), words)

    def _text(self, name: str, value: str) -> Block:
        text = self._words.say_one_of("figure.batching-row", name)
        most = _PICTURES - MARGIN - _TEXT - 3
        lines = [(line, Letter.NAME) for line in wrap(text, Letter.NAME, most)]
        return Block((*lines, (value, Letter.VALUE)), "start")

    @staticmethod
    def _lines(count: float) -> int:
        """Rows of pictures for so many things, one of them perhaps not whole."""
        return max(1, math.ceil((count - _LEAST_PART) / _IN_A_ROW))

    def _cells(self, count: float, top: float, high: float, wide: float) -> Iterator[tuple[View, float]]:
        """Where each thing stands, and how full it is."""
        number, step = 0, wide / self._unit
        while count - number > _LEAST_PART:
            line, place = divmod(number, _IN_A_ROW)
            down = top + line * (high / self._unit + 8) + high / self._unit
            left = _PICTURES + (place + 0.5) * step
            yield View(self._page, left, down, 1 / self._unit), min(1.0, count - number)
            number += 1

    def _draw_bags(self, top: float) -> None:
        for view, part in self._cells(self._bags, top, _BAG_HIGH, _BAG_WIDE + 2 * _GAP):
            self._page.add(Group("cement bag", tuple(_bag(view, part))))

    def _draw_boxes(self, top: float) -> None:
        values = self._values
        length, depth = values["box_length"], values["box_depth"]
        wide = length + 2 * (_PLANK + _HANDLE) + _GAP
        for view, part in self._cells(self._boxes, top, depth + _PLANK, wide):
            self._page.add(Group("sand box", tuple(_box(view, length, depth, part))))

    def _draw_buckets(self, top: float) -> None:
        wide = max(_BUCKET_WIDE, min(0.48, (VIEW - _PICTURES - MARGIN) * self._unit / _IN_A_ROW))
        for view, part in self._cells(self._buckets, top, BUCKET_HEIGHT, wide):
            self._page.add(Group("bucket", tuple(_bucket(view, part))))


def _bag(view: View, part: float) -> Iterator[Element]:
    """A paper bag, standing; half a bag is cut off and open."""
    half, high = _BAG_WIDE / 2, _BAG_HIGH * part
    if part < 1:
        torn = [(half - 2 * half * step / 8, high + (0.015 if step % 2 else -0.015)) for step in range(9)]
        yield view.shape((-half, 0.03), (-half + 0.04, 0), (half - 0.04, 0), (half, 0.03), *torn, ink=Ink.CLOTH)
    else:
        top = ((half, high - 0.05), (half - 0.04, high - 0.03), (half - 0.02, high), (-half + 0.02, high))
        low = ((-half, 0.03), (-half + 0.04, 0), (half - 0.04, 0), (half, 0.03))
        yield view.shape(*low, *top, (-half + 0.04, high - 0.03), (-half, high - 0.05), ink=Ink.CLOTH)
        yield view.line((-half + 0.04, high - 0.03), (half - 0.04, high - 0.03), Ink.THING_LINE)
    yield view.box(-0.11, 0.10, 0.11, 0.10 + 0.16 * min(1.0, part * 1.5), Ink.STEEL)


def _box(view: View, length: float, depth: float, part: float) -> Iterator[Element]:
    """A gauge box cut through, full to the rim or in part."""
    half, level = length / 2, _PLANK + depth * part
    for side in (-1, 1):
        outer = sorted((side * (half + _PLANK), side * (half + _PLANK + _HANDLE)))
        yield view.box(outer[0], 0.65 * depth, outer[1], 0.65 * depth + 0.03, Ink.WOOD)
    yield view.box(-half - _PLANK, 0, half + _PLANK, depth + _PLANK, Ink.WOOD)
    yield view.box(-half, _PLANK, half, depth + _PLANK, Ink.BODY)
    yield from view.cut(
        (-half, _PLANK), (half, _PLANK), (half, level), (-half, level), kind=HatchKind.MORTAR, ink=Ink.THING
    )


def _bucket(view: View, part: float) -> Iterator[Element]:
    """A bucket with so much water in it."""
    low, high, tall = 0.34 * BUCKET_HEIGHT, 0.47 * BUCKET_HEIGHT, BUCKET_HEIGHT
    yield view.shape((-low, 0), (low, 0), (high, tall), (-high, tall), ink=Ink.BODY)
    level = 0.93 * tall * part
    wide = low + (high - low) * level / tall
    yield view.marks((-low, 0), (low, 0), (wide, level), (-wide, level), kind=HatchKind.WATER)
    yield view.line((-wide, level), (wide, level), Ink.WATER)
    yield view.box(-high - 0.01, tall - 0.02, high + 0.01, tall, Ink.THING)
