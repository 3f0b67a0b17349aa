"""What a pencil fills: ruled tables with named columns, and lines to write on."""

from __future__ import annotations

from collections.abc import Sequence

from generator.curriculum.models import LogColumn
from generator.sheets.flow import Canvas, Grid, Piece, Space, Text
from generator.sheets.styles import CELL, NOTE, TEXT_WIDTH, THIN

ROW = 15.0
"""Height inside a row to write in, points; with its padding it is a hand's height on lined paper."""
_HEAD = NOTE.but(bold=True, after=0.0)
_LINE = 25.0


def ruled(columns: Sequence[LogColumn], rows: int, language: str) -> Piece:
    """A table to write in.

    Args:
        columns: from the handout's file.
        rows: how many; the table goes on over the page, and its head with it.
        language: of the heads.
    """
    heads = [Text(column.title[language], _HEAD) for column in columns]
    shares = _widths(columns, heads)
    cells = [
        [Text(str(number), CELL.but(bold=True)) if column.counts else Space(ROW) for column in columns]
        for number in range(1, rows + 1)
    ]
    return Grid(cells, shares, heads)


def _widths(columns: Sequence[LogColumn], heads: Sequence[Text]) -> list[float]:
    """As the shares say, but never narrower than the longest word of a head."""
    words = [max(Text(word, _HEAD).natural_width() for word in head.plain().split()) for head in heads]
    least = [width + 2 * Grid.sides + 1.0 for width in words]
    whole = sum(column.width for column in columns)
    wanted = [column.width / whole * TEXT_WIDTH for column in columns]
    short = [max(0.0, low - want) for low, want in zip(least, wanted, strict=True)]
    spare = [max(0.0, want - low) for low, want in zip(least, wanted, strict=True)]
    if not sum(spare):
        return least
    give = min(1.0, sum(short) / sum(spare))
    return [want + more - give * extra for want, more, extra in zip(wanted, short, spare, strict=True)]


class Lines(Piece):
    """Lines to write on.

    Args:
        count: how many.
    """

    before, after = 2.0, 8.0

    def __init__(self, count: int) -> None:
        self._count = count

    def measure(self, _width: float) -> float:
        """A line every 9 mm."""
        return self._count * _LINE

    def cut(self, _width: float, height: float) -> tuple[Piece, Piece] | None:
        """Between two lines."""
        fits = int(height / _LINE + 1e-6)
        return (Lines(fits), Lines(self._count - fits)) if 0 < fits < self._count else None

    def first_height(self, _width: float) -> float:
        """One line."""
        return _LINE

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """Draw them."""
        canvas.setLineWidth(THIN)
        for number in range(1, self._count + 1):
            y = top - number * _LINE + 2
            canvas.line(x, y, x + self.width, y)
