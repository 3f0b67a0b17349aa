"""Cards to cut out: two a page, each with its drawing on the left and its words on the right."""

from __future__ import annotations

from collections.abc import Sequence

from generator.sheets.figure_flow import NARROWEST
from generator.sheets.flow import Canvas, Column, Piece, Row
from generator.sheets.styles import FOOT, MARGIN, PAGE_HEIGHT, THIN

PAGE_ROOM = PAGE_HEIGHT - MARGIN - FOOT - 0.5
"""Height that two cards share; sheets of cards have no running head."""
_DASH = (5.0, 4.0)
_PADDING, _SIDE, _GAP = 4.0, 8.0, 12.0


class Card(Piece):
    """One card, with a dashed line round it to cut along.

    Args:
        drawings: what stands on the left, under each other.
        words: what stands on the right, or over the whole width where there is no drawing.
    """

    def __init__(self, drawings: Sequence[Piece], words: Sequence[Piece]) -> None:
        text = Column(words)
        if drawings:
            self._inside: Piece = Row([(NARROWEST, Column(drawings)), (None, text)], gap=_GAP)
        else:
            self._inside = text
        self.outline = next((piece.outline for piece in words if piece.outline), "")
        self._least = 0.0

    def measure(self, width: float) -> float:
        """What stands in it, or the share of the page that it was given."""
        return max(self._least, self._inside.fit(width - 2 * _SIDE) + 2 * _PADDING)

    def grown(self, height: float) -> None:
        """Let it be at least so high, points."""
        self._least, self.width = height, -1.0

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """The cutting line, then the card."""
        canvas.setLineWidth(THIN)
        canvas.setDash(_DASH)
        canvas.rect(x, top - self.height, self.width, self.height, stroke=1, fill=0)
        canvas.setDash()
        self._inside.paint(canvas, x + _SIDE, top - _PADDING)


def two_a_page(cards: Sequence[Card], width: float) -> None:
    """Share each page's height between two cards; two that together are higher than a page get one each.

    Args:
        cards: in order; the first begins a page.
        width: of the text, points.
    """
    waiting = list(cards)
    while waiting:
        first = waiting.pop(0)
        first.begins_page = True
        used = first.fit(width)
        if waiting and used + waiting[0].fit(width) <= PAGE_ROOM:
            second = waiting.pop(0)
            spare = PAGE_ROOM - used - second.height
            shares = _shares(used, second.height, spare)
            first.grown(shares[0])
            second.grown(shares[1])
        else:
            first.grown(max(used, PAGE_ROOM / 2))


def _shares(first: float, second: float, spare: float) -> tuple[float, float]:
    """Halves of the page where both fit into one; else the higher card keeps its height."""
    half = (first + second + spare) / 2
    if first <= half and second <= half:
        return half, half
    return (first, second + spare) if first > second else (first + spare, second)
