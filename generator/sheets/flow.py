"""The pieces that sheets are made of: text, columns, rows and boxes that are never split, and tables that are.

A piece paints at an absolute place and leaves the canvas's state alone, which spares saving and restoring it for every
piece.
"""

from __future__ import annotations

import re
from abc import ABC, abstractmethod
from collections.abc import Iterator, Sequence
from typing import Any, TypeAlias

from generator.sheets.styles import BODY, CAPITAL, DEVANAGARI_SPREAD, LATIN_SPREAD, THIN, Style
from generator.sheets.text import Line, Run, Segment, broken

Canvas: TypeAlias = Any
"""A ReportLab canvas; the library has no types."""

_DEVANAGARI = re.compile("[\u0900-\u097f]")
_ANY_WIDTH = 1e6
_WHOLE_PAGE = 600.0
"""Points; with as much room a table is at the top of a page, and cut wherever it must."""


class Piece(ABC):
    """Something that takes room on a page.

    A piece has space above (`before`) and below (`after`), in points. `keep` says that it stays on one page with what
    follows, `begins_page` that it stands at the top of one; `changes_place` that it and the like pieces beside it may
    change places where much of a page would else stay empty; `may_wait` that what follows may go before it there: it
    then stands at the top of the next page. `outline` is its entry in the document's table of contents. `width` and
    `height` hold the room that it was last fitted into.
    """

    before = 0.0
    after = 0.0
    keep = False
    begins_page = False
    changes_place = False
    may_wait = False
    outline = ""
    width = -1.0
    height = 0.0

    def fit(self, width: float) -> float:
        """Settle the layout for a width, and return the height; both in points."""
        if width != self.width:
            self.width, self.height = width, self.measure(width)
        return self.height

    @abstractmethod
    def measure(self, width: float) -> float:
        """The height at a width, in points."""

    @abstractmethod
    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """Draw with the upper left corner at a place; `fit` comes before."""

    def cut(self, _width: float, _height: float) -> tuple[Piece, Piece] | None:
        """The part that fits into a height, and the rest; None where the piece can't be split there."""
        return None

    def first_height(self, width: float) -> float:
        """The least height that must be free below a heading: the whole piece where it can't be split."""
        return self.fit(width)


class Text(Piece):
    """A paragraph.

    Args:
        text: plain text, or runs. Nothing in it is read as mark-up.
        style: how it is set.
        lines: what is left of a split paragraph.
    """

    def __init__(self, text: str | Sequence[Run], style: Style = BODY, lines: Sequence[Line] | None = None) -> None:
        if isinstance(text, str):
            self.runs: tuple[Run, ...] = (Run(text, style.bold),)
        else:
            self.runs = tuple(Run(run.text, run.bold or style.bold, run.subscript) for run in text)
        self.style = style
        self.before, self.after, self.keep = style.before, style.after, style.keep
        tall = _DEVANAGARI.search(text if isinstance(text, str) else self.plain())
        spread = DEVANAGARI_SPREAD if tall else LATIN_SPREAD
        self.leading = style.size * spread
        self.lines: Sequence[Line] = lines or ()
        self._given = lines is not None

    def plain(self) -> str:
        """The text without its hands."""
        return "".join(run.text for run in self.runs)

    def natural_width(self) -> float:
        """Width without any line break, in points."""
        lines = broken(self.runs, self.style.size, _ANY_WIDTH)
        return max(line.width for line in lines) + self.style.indent

    def measure(self, width: float) -> float:
        """Break the lines."""
        if not self._given:
            self.lines = broken(self.runs, self.style.size, width - self.style.indent)
        return len(self.lines) * self.leading

    def cut(self, width: float, height: float) -> tuple[Piece, Piece] | None:
        """At least two lines stay on each side."""
        self.fit(width)
        fits = min(int(height / self.leading + 1e-6), len(self.lines) - 2)
        if fits < 2:
            return None
        upper = Text(self.runs, self.style.but(after=0.0), self.lines[:fits])
        return upper, Text(self.runs, self.style.but(before=0.0), self.lines[fits:])

    def first_height(self, width: float) -> float:
        """Two lines, or all of up to three."""
        whole = self.fit(width)
        return 2 * self.leading if len(self.lines) > 3 else whole

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """Draw the lines."""
        lines = [f"1 0 0 1 {left:.2f} {y:.2f} Tm {_drawn(canvas, one)}" for left, y, one in self.strings(x, top)]
        if lines:
            canvas._code.append(f"BT {' '.join(lines)} ET")

    def strings(self, x: float, top: float) -> Iterator[tuple[float, float, Segment]]:
        """What is drawn from an upper left corner: left end and base line of each string, in points.

        Letters stand in the middle of their line's height.
        """
        style = self.style
        y = top - (self.leading + CAPITAL * style.size) / 2
        for line in self.lines:
            start = x + style.indent
            if style.align != "left":
                spare = self.width - style.indent - line.width
                start += spare if style.align == "right" else spare / 2
            for segment in line.segments:
                yield start + segment.x, y - segment.hand.drop, segment
            y -= self.leading


def _drawn(canvas: Canvas, segment: Segment) -> str:
    """The library's own operators for a string, font included.

    A document says most of its strings again and again: each is worked out once, and kept with the canvas. Glyphs that
    were moved by shaping are told apart by who they are, not by their text.
    """
    known: dict[Any, tuple[Any, str]] = canvas.__dict__.setdefault("_known_strings", {})
    hand, glyphs = segment.hand, segment.glyphs
    key = (id(glyphs) if type(glyphs) is not str else glyphs, hand.font, hand.size)
    if key not in known:
        pen = canvas.beginText(0, 0)
        pen.setFont(hand.font, hand.size)
        known[key] = glyphs, pen._formatText(glyphs)  # the glyphs are kept so that their id stays theirs
    return known[key][1]


class Space(Piece):
    """Empty room of a height in points."""

    def __init__(self, height: float) -> None:
        self._height = height

    def measure(self, width: float) -> float:
        """Its height."""
        return self._height

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """Nothing is drawn."""


class Column(Piece):
    """Pieces below each other that always stay together."""

    def __init__(self, pieces: Sequence[Piece], *, before: float = 0.0, after: float = 0.0, keep: bool = False) -> None:
        self.pieces = tuple(pieces)
        self.before, self.after, self.keep = before, after, keep
        self._tops: list[float] = []

    def measure(self, width: float) -> float:
        """The heights and the spaces between; the larger of two meeting spaces counts."""
        self._tops = []
        used = space = 0.0
        for number, piece in enumerate(self.pieces):
            if number:
                used += max(space, piece.before)
            self._tops.append(used)
            used += piece.fit(width)
            space = piece.after
        return used

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """Draw them."""
        for piece, down in zip(self.pieces, self._tops, strict=True):
            piece.paint(canvas, x, top - down)


class Row(Piece):
    """Pieces side by side.

    Args:
        cells: each with its width in points; None shares what is left.
        gap: between two cells, points.
        middle: whether the cells are centred on each other; otherwise their tops are in line.
        before: space above.
        after: space below.
    """

    def __init__(
        self,
        cells: Sequence[tuple[float | None, Piece]],
        *,
        gap: float = 6.0,
        middle: bool = False,
        before: float = 0.0,
        after: float = 0.0,
    ) -> None:
        self._cells = tuple(cells)
        self._gap, self._middle = gap, middle
        self.before, self.after = before, after
        self._lefts: list[float] = []

    def measure(self, width: float) -> float:
        """The tallest cell."""
        fixed = sum(cell for cell, _ in self._cells if cell is not None) + self._gap * (len(self._cells) - 1)
        open_cells = sum(cell is None for cell, _ in self._cells)
        share = (width - fixed) / open_cells if open_cells else 0.0
        self._lefts, left = [], 0.0
        for cell, piece in self._cells:
            self._lefts.append(left)
            own = share if cell is None else cell
            piece.fit(own)
            left += own + self._gap
        return max((piece.height for _, piece in self._cells), default=0.0)

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """Draw them."""
        for (_, piece), left in zip(self._cells, self._lefts, strict=True):
            down = (self.height - piece.height) / 2 if self._middle else 0.0
            piece.paint(canvas, x + left, top - down)


class Lowest(Piece):
    """The lowest of several ways to set the same.

    Args:
        ways: the first is taken unless another is much lower.
        saves: points of height by which it must be.
        before: space above.
        after: space below.
        keep: whether it stays on one page with what follows.
    """

    def __init__(
        self, ways: Sequence[Piece], saves: float, *, before: float = 0.0, after: float = 0.0, keep: bool = False
    ) -> None:
        self._ways = tuple(ways)
        self._saves = saves
        self._taken = self._ways[0]
        self.before, self.after, self.keep = before, after, keep

    def measure(self, width: float) -> float:
        """Of what is taken."""
        lowest = min(self._ways, key=lambda way: way.fit(width))
        self._taken = lowest if self._ways[0].height - lowest.height >= self._saves else self._ways[0]
        return self._taken.height

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """Draw it."""
        self._taken.paint(canvas, x, top)


class Box(Piece):
    """A piece with a line round it, never split.

    Args:
        piece: what stands inside.
        line: width of the line, points.
        padding: between the line and the piece, points.
        bar: width of a solid bar on the left, points.
        least: least height, points.
        before: space above.
        after: space below.
    """

    def __init__(
        self,
        piece: Piece,
        *,
        line: float = THIN,
        padding: float = 6.0,
        bar: float = 0.0,
        least: float = 0.0,
        before: float = 0.0,
        after: float = 0.0,
    ) -> None:
        self.piece = piece
        self._line, self._padding, self._bar, self._least = line, padding, bar, least
        self.before, self.after = before, after

    def measure(self, width: float) -> float:
        """The piece and its padding."""
        return max(self._least, self.piece.fit(width - 2 * self._padding - self._bar) + 2 * self._padding)

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """The line, the bar, then the piece."""
        canvas.setLineWidth(self._line)
        canvas.rect(x, top - self.height, self.width, self.height, stroke=1, fill=0)
        if self._bar:
            canvas.rect(x, top - self.height, self._bar, self.height, stroke=0, fill=1)
        self.piece.paint(canvas, x + self._bar + self._padding, top - self._padding)


class Grid(Piece):
    """A table with thin lines; it is split between rows, and its head is repeated.

    Args:
        rows: cells row by row.
        widths: shares of the columns; they are stretched to the whole width.
        head: cells of the first row of each part; empty for none.
        before: space above.
        after: space below.
    """

    padding = 4.0
    """Points above and below what stands in a cell."""
    sides = 4.0
    """Points on its left and right."""
    fewest = 3
    """Rows that stay together above and below a cut, and with the head, unless the page is too small for them."""

    def __init__(
        self,
        rows: Sequence[Sequence[Piece]],
        widths: Sequence[float],
        head: Sequence[Piece] = (),
        *,
        before: float = 2.0,
        after: float = 7.0,
    ) -> None:
        self._rows = tuple(tuple(row) for row in rows)
        self._head = tuple(head)
        self._shares = tuple(widths)
        self.before, self.after = before, after
        self._columns: list[float] = []
        self._heights: list[float] = []

    def _all(self) -> tuple[tuple[Piece, ...], ...]:
        return (self._head, *self._rows) if self._head else self._rows

    def measure(self, width: float) -> float:
        """The sum of the rows, each as tall as its tallest cell."""
        whole = sum(self._shares)
        self._columns = [share / whole * width for share in self._shares]
        self._heights = []
        for row in self._all():
            cells = zip(row, self._columns, strict=True)
            tallest = max(cell.fit(column - 2 * self.sides) for cell, column in cells)
            self._heights.append(tallest + 2 * self.padding)
        return sum(self._heights)

    def cut(self, width: float, height: float) -> tuple[Piece, Piece] | None:
        """Between two rows; neither the head nor a single row stands alone."""
        self.fit(width)
        heads = int(bool(self._head))
        used, fits = 0.0, 0
        for row in self._heights:
            if used + row > height:
                break
            used, fits = used + row, fits + 1
        few = self.fewest
        if min(fits, len(self._heights) - few) < heads + few and height >= _WHOLE_PAGE:
            few = 1
        fits = min(fits, len(self._heights) - few)
        if fits < heads + few:
            return None
        upper = type(self)(self._rows[: fits - heads], self._shares, self._head, before=self.before, after=0.0)
        return upper, type(self)(self._rows[fits - heads :], self._shares, self._head, before=0.0, after=self.after)

    def first_height(self, width: float) -> float:
        """The head and the rows that stay with it."""
        self.fit(width)
        heads = bool(self._head)
        few = self.fewest if len(self._heights) - heads >= 2 * self.fewest else len(self._heights)
        return min(sum(self._heights[: few + heads]), _WHOLE_PAGE)

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """Lines round every cell; a thicker one below the head."""
        canvas.setLineWidth(THIN)
        y = top
        for number, (row, height) in enumerate(zip(self._all(), self._heights, strict=True)):
            left = x
            for cell, column in zip(row, self._columns, strict=True):
                canvas.rect(left, y - height, column, height, stroke=1, fill=0)
                cell.paint(canvas, left + self.sides, y - self.padding)
                canvas.setLineWidth(THIN)
                left += column
            y -= height
            if self._head and number == 0:
                canvas.setLineWidth(2 * THIN)
                canvas.line(x, y, x + self.width, y)
                canvas.setLineWidth(THIN)


class CloseGrid(Grid):
    """A table whose rows stand closer."""

    padding, sides = 2.5, 3.0
