"""Names beside a drawing, in columns or rows, each with a line to its part; the lines never cross each other's texts.

Where a picture is full of small parts, texts among them would cover what they name. So they stand outside, in the order
of what they name.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from generator.figures.ink import Ink
from generator.figures.layout import Block, NoRoomError
from generator.figures.page import MARGIN, Page
from generator.figures.scene import VIEW, Line, Point

GAP = 5.0
"""Paper between two texts of a column, paper units."""
_ROW_GAP = 9.0
_CLEAR = 2.5


@dataclass(frozen=True, slots=True)
class Callout:
    """A text and what it names.

    Args:
        block: the text.
        target: the part, paper units from the left and from the top.
    """

    block: Block
    target: Point


def column_height(callouts: Sequence[Callout]) -> float:
    """Paper that a column of texts needs at least."""
    return sum(callout.block.height() for callout in callouts) + GAP * max(0, len(callouts) - 1)


def row_height(callouts: Sequence[Callout]) -> float:
    """Paper that a row of texts needs."""
    return max(callout.block.height() for callout in callouts)


def left_column(page: Page, callouts: Sequence[Callout], edge: float, top: float, foot: float) -> None:
    """Puts texts left of a drawing; their blocks must end at their right side.

    Args:
        page: the drawing; what is drawn must stay right of the edge.
        callouts: the texts.
        edge: where the texts end, paper units.
        top: highest place of a text.
        foot: lowest place of a text.

    Raises:
        NoRoomError: the texts are higher than the column.
    """
    _column(page, callouts, (edge, edge + _CLEAR), top, foot)


def right_column(page: Page, callouts: Sequence[Callout], edge: float, top: float, foot: float) -> None:
    """Puts texts right of a drawing; their blocks must start at their left side.

    Args:
        page: the drawing; what is drawn must stay left of the edge.
        callouts: the texts.
        edge: where the texts start, paper units.
        top: highest place of a text.
        foot: lowest place of a text.

    Raises:
        NoRoomError: the texts are higher than the column.
    """
    _column(page, callouts, (edge, edge - _CLEAR), top, foot)


def row_above(page: Page, callouts: Sequence[Callout], foot: float) -> None:
    """Puts texts in a row above a drawing; their blocks must be centred.

    Args:
        page: the drawing; what is drawn must stay below the row.
        callouts: the texts.
        foot: where the row ends, paper units.

    Raises:
        NoRoomError: the texts are wider than the paper.
    """
    _row(page, callouts, lambda block: foot - block.height(), foot + 1.0)


def row_below(page: Page, callouts: Sequence[Callout], top: float) -> None:
    """Puts texts in a row below a drawing; their blocks must be centred.

    Args:
        page: the drawing; what is drawn must stay above the row.
        callouts: the texts.
        top: where the row starts, paper units.

    Raises:
        NoRoomError: the texts are wider than the paper.
    """
    _row(page, callouts, lambda _: top, top - 1.0)


def _column(page: Page, callouts: Sequence[Callout], edges: tuple[float, float], top: float, foot: float) -> None:
    text_edge, line_edge = edges

    def starts(order: Sequence[Callout]) -> list[Point]:
        heights = [callout.block.height() for callout in order]
        wanted = [callout.target[1] - height / 2 for callout, height in zip(order, heights, strict=True)]
        tops = _spread(wanted, heights, (top, foot), GAP)
        return [(line_edge, place + height / 2) for place, height in zip(tops, heights, strict=True)]

    order = _uncrossed(sorted(callouts, key=lambda callout: callout.target[1]), starts)
    for callout, (_, middle) in zip(order, starts(order), strict=True):
        page.add(*callout.block.labels(page.at(text_edge, middle - callout.block.height() / 2), page.unit))
        page.add(Line(page.at(line_edge, middle), page.at(*callout.target), Ink.LEADER))


def _row(page: Page, callouts: Sequence[Callout], top_of: Callable[[Block], float], line_edge: float) -> None:
    def starts(order: Sequence[Callout]) -> list[Point]:
        widths = [callout.block.width() for callout in order]
        wanted = [callout.target[0] - width / 2 for callout, width in zip(order, widths, strict=True)]
        lefts = _spread(wanted, widths, (MARGIN, VIEW - MARGIN), _ROW_GAP)
        return [(place + width / 2, line_edge) for place, width in zip(lefts, widths, strict=True)]

    order = _uncrossed(sorted(callouts, key=lambda callout: callout.target[0]), starts)
    for callout, (middle, _) in zip(order, starts(order), strict=True):
        page.add(*callout.block.labels(page.at(middle, top_of(callout.block)), page.unit))
        page.add(Line(page.at(middle, line_edge), page.at(*callout.target), Ink.LEADER))


def _spread(wanted: Sequence[float], sizes: Sequence[float], limits: tuple[float, float], gap: float) -> list[float]:
    """Places in a line as near to the wanted ones as they can be without touching or leaving the limits."""
    places: list[float] = []
    free = limits[0]
    for place, size in zip(wanted, sizes, strict=True):
        places.append(max(place, free))
        free = places[-1] + size + gap
    end = limits[1]
    for number in reversed(range(len(places))):
        places[number] = min(places[number], end - sizes[number])
        end = places[number] - gap
    if places and places[0] < limits[0] - 1e-6:
        raise NoRoomError(f"{len(places)} texts in a column or row of {limits[1] - limits[0]:.0f}")
    return places


def _uncrossed(order: list[Callout], starts: Callable[[Sequence[Callout]], list[Point]]) -> list[Callout]:
    """Neighbours change places until no two of their lines cross."""
    for _ in range(len(order) ** 2):
        lines = list(zip(starts(order), order, strict=True))
        crossed = next(
            (
                number
                for number, ((one, first), (two, second)) in enumerate(pairwise(lines))
                if _cross(one, first.target, two, second.target)
            ),
            None,
        )
        if crossed is None:
            break
        order = [*order[:crossed], order[crossed + 1], order[crossed], *order[crossed + 2 :]]
    return order


def _cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    def side(p: Point, q: Point, r: Point) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0
