"""Cards dealt to pages in their order, each drawing as large as its page allows.

A card is one drawing and what is said about it. Words stand beside a small drawing and below a large one. A page never
holds fewer cards than it must, and the room that is then left is given to the drawings: who reads little looks at them
first.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import inf, log

from generator.figures import Scene
from generator.sheets.figure_flow import NARROWEST, Figure
from generator.sheets.flow import Box, Column, Piece, Row
from generator.sheets.page import EMPTY

_BESIDE = 310.0
"""Points; beside a wider drawing, the lines of the words would become too short."""
_STEP = 10.0
"""Points by which a drawing grows."""
_GAP = 12.0
"""Points between a drawing and the words beside it."""
_PADDING = 6.0
"""Points inside a card's line."""


@dataclass(frozen=True)
class PictureCard:
    """A drawing and its words.

    Args:
        scene: the drawing.
        beside: makes the words for the narrow column beside it; called anew for each size that is tried.
        below: makes the words for the whole width below it.
    """

    scene: Scene
    beside: Callable[[], Sequence[Piece]]
    below: Callable[[], Sequence[Piece]]

    def sized(self, drawn: float, width: float) -> Piece:
        """The card with its drawing at a width, in the way that is less high; both in points."""
        figure = Figure(self.scene, inf, drawn)
        inner = width - 2 * _PADDING
        below = Box(Column([figure, Column(list(self.below()), before=_PADDING)]), padding=_PADDING)
        below.fit(width)
        if drawn > min(_BESIDE, inner):
            return below
        cells: list[tuple[float | None, Piece]] = [(drawn, Figure(self.scene, inf, drawn))]
        beside = Box(Row([*cells, (None, Column(list(self.beside())))], gap=_GAP), padding=_PADDING)
        return beside if beside.fit(width) <= below.height else below


class _Sizes:
    """A card in all sizes that it can have, from the least."""

    def __init__(self, card: PictureCard, width: float) -> None:
        widest = width - 2 * _PADDING
        steps = int((widest - NARROWEST) / _STEP)
        self.widths = (*(NARROWEST + _STEP * step for step in range(steps)), widest)
        self.pieces = [card.sized(drawn, width) for drawn in self.widths]
        self.heights = [piece.height for piece in self.pieces]


@dataclass(frozen=True)
class _Page:
    """Cards of one page, each at its size, and what speaks against the page: the less the better, from the left."""

    pieces: tuple[Piece, ...]
    against: tuple[int, int, float]


def dealt(cards: Sequence[PictureCard], width: float, first: float, later: float, gap: float) -> list[Piece]:
    """The cards as pieces; those that begin a page say so.

    There are as few pages as can be, then as few as can be that stay a quarter empty. Of what is left to choose, the
    drawings' widths decide: their product is the greatest, so that none grows much while others stay small.

    Args:
        cards: in the order that they keep.
        width: of the page's text, points.
        first: height that is free on the page where they begin, points.
        later: height of a page after that, points.
        gap: between two cards, points.
    """
    sizes = [_Sizes(card, width) for card in cards]
    best: list[tuple[tuple[int, int, float], tuple[int, ...]]] = [((0, 0, 0.0), (0,))]
    pages: dict[tuple[int, int], _Page] = {}
    for end in range(1, len(cards) + 1):
        ways = []
        for start in reversed(range(end)):
            page = _grown(sizes[start:end], later if start else first, gap)
            if page is None:
                break
            pages[start, end] = page
            before, cuts = best[start]
            total = (before[0] + page.against[0], before[1] + page.against[1], before[2] + page.against[2])
            ways.append((total, (*cuts, end)))
        best.append(min(ways))
    found: list[Piece] = []
    for start, end in pairwise(best[-1][1]):
        for place, piece in enumerate(pages[start, end].pieces):
            piece.begins_page = start > 0 and place == 0
            piece.before, piece.after = gap / 2, gap
            found.append(piece)
    return found


def _grown(sizes: Sequence[_Sizes], room: float, gap: float) -> _Page | None:
    """A page of cards, the narrowest drawing grown first; None where they don't fit.

    A single card makes a page even where it doesn't: it then moves on to the next one by itself.
    """
    at = [0 for _ in sizes]
    free = room - gap * (len(sizes) - 1) - sum(card.heights[0] for card in sizes)
    if free < 0 and len(sizes) > 1:
        return None
    growing = set(range(len(sizes)))
    while growing:
        narrowest = min(growing, key=lambda place: (at[place], place))
        card, now = sizes[narrowest], at[narrowest]
        more = (up for up in range(now + 1, len(card.widths)) if card.heights[up] - card.heights[now] <= free)
        larger = next(more, None)
        if larger is None:
            growing.remove(narrowest)
            continue
        free -= card.heights[larger] - card.heights[now]
        at[narrowest] = larger
    chosen = list(zip(sizes, at, strict=True))
    widths = sum(log(card.widths[size]) for card, size in chosen)
    pieces = tuple(card.pieces[size] for card, size in chosen)
    return _Page(pieces, (1, int(free > EMPTY * room), -widths))
