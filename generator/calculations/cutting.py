"""Cutting list: which pieces come from which stock bar, so that the fewest bars are bought and the least is wasted.

Dividing the total length by the bar's length orders too little: the ends that are left are too short to be a piece.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp

from generator.calculations.cutting_patterns import all_patterns, long_pieces_first, needed_patterns
from generator.formula import OutOfRangeError

MILLIMETRE = 0.001
MOST_KINDS = 12
MOST_BRANCHES = 3000
"""Longest search, in steps and not in seconds: a slow computer finds the same list. Its gap is told."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A kind of piece to cut.

    Args:
        name: what it is for.
        length: [m], more than 0 and not longer than the stock bar.
        count: how many are needed.
    """

    name: str
    length: float
    count: int


@dataclass(frozen=True, slots=True)
class Cut:
    """One way to cut a bar, and how many bars are cut so.

    Args:
        bars: number of stock bars cut in this way.
        pieces: how many of each piece, in the order of the pieces asked for.
        left_over: end that is left of each bar [m].
    """

    bars: int
    pieces: tuple[int, ...]
    left_over: float


@dataclass(frozen=True, slots=True)
class CuttingList:
    """The whole list.

    Args:
        bars: stock bars to buy.
        least_bars: no list can do with fewer.
        gap: bars above the proven least, as a share; 0 when this list is the best there is.
        waste: left-over ends / bought length.
        cuts: ways of cutting, most used first.
    """

    bars: int
    least_bars: int
    gap: float
    waste: float
    cuts: tuple[Cut, ...]


def cutting_list(pieces: Sequence[Piece], stock_length: float) -> CuttingList:
    """Cut pieces from bars of one length with the fewest bars.

    Args:
        pieces: kinds of piece, at most 12; lengths are taken to the next millimetre.
        stock_length: [m].

    Raises:
        OutOfRangeError: a piece longer than the bar, or more kinds than a person can lay out.

    Example:
        >>> plan = cutting_list([Piece("ring", 8.47, 15)], 12)
        >>> plan.bars, plan.gap
        (15, 0.0)
    """
    wanted = [piece for piece in pieces if piece.count > 0]
    for piece in wanted:
        if not 0 < piece.length <= stock_length + MILLIMETRE / 2:
            raise OutOfRangeError(
                f"{piece.name} is {piece.length:.3f} m and can't be cut from a bar of {stock_length:.3f} m: "
                "make it of two pieces with a lap, or ask the shop for longer bars"
            )
    if len(wanted) > MOST_KINDS:
        raise OutOfRangeError(f"{len(wanted)} kinds of piece are more than the {MOST_KINDS} that one list can hold")
    if not wanted:
        return CuttingList(0, 0, 0.0, 0.0, ())
    lengths = tuple(_millimetres(piece.length) for piece in wanted)
    counts = np.array([piece.count for piece in wanted])
    stock = round(stock_length / MILLIMETRE)
    patterns = all_patterns(lengths, stock)
    bound = 0
    if patterns is None:
        patterns, bound = needed_patterns(lengths, counts.tolist(), stock)
    solved = milp(
        np.ones(len(patterns)),
        constraints=LinearConstraint(patterns.T, counts, np.inf),
        integrality=np.ones(len(patterns)),
        bounds=Bounds(0, np.inf),
        options={"node_limit": MOST_BRANCHES},
    )
    if not bound and solved.mip_dual_bound is not None:
        bound = int(np.ceil(solved.mip_dual_bound - 1e-6))
    plain = long_pieces_first(lengths, counts.tolist(), stock)
    if solved.x is None or round(solved.fun) > len(plain):
        return _tidy(pieces, wanted, plain, np.ones(len(plain), dtype=int), lengths, stock, bound)
    return _tidy(pieces, wanted, patterns, np.rint(solved.x).astype(int), lengths, stock, bound)


def bars_for(length: float, count: int, stock_length: float) -> int:
    """Bars, or rolls, for pieces of one kind: the fewest there can be, found without a search.

    Args:
        length: of a piece [m], not longer than the bar.
        count: pieces.
        stock_length: [m].

    Example:
        >>> bars_for(3.1, 10, 12) == cutting_list([Piece("ring", 3.1, 10)], 12).bars == 4
        True
    """
    each = max(1, round(stock_length / MILLIMETRE) // _millimetres(length))
    return -(-count // each)


def _millimetres(length: float) -> int:
    """To the next millimetre."""
    return int(np.ceil(length / MILLIMETRE - 1e-6))


def _tidy(
    pieces: Sequence[Piece],
    wanted: Sequence[Piece],
    patterns: np.ndarray,
    bars: np.ndarray,
    lengths: tuple[int, ...],
    stock: int,
    least: int,
) -> CuttingList:
    """Take out pieces beyond the count (the solver may cut more than asked) and list the ways of cutting."""
    spare = patterns.T @ bars - np.array([piece.count for piece in wanted])
    place = {id(piece): i for i, piece in enumerate(wanted)}
    ways: dict[tuple[int, ...], int] = {}
    for pattern, count in zip(patterns, bars, strict=True):
        for _ in range(count):
            cut = pattern.copy()
            for kind in np.argsort([-length for length in lengths]):
                drop = min(int(cut[kind]), int(spare[kind]))
                cut[kind] -= drop
                spare[kind] -= drop
            key = tuple(int(cut[place[id(piece)]]) if id(piece) in place else 0 for piece in pieces)
            ways[key] = ways.get(key, 0) + 1
    total = int(bars.sum())
    used = sum(piece.count * length for piece, length in zip(wanted, lengths, strict=True))
    in_order = {id(piece): length for piece, length in zip(wanted, lengths, strict=True)}
    cuts = [
        Cut(
            count, key, (stock - sum(n * in_order.get(id(p), 0) for n, p in zip(key, pieces, strict=True))) * MILLIMETRE
        )
        for key, count in ways.items()
    ]
    cuts.sort(key=lambda cut: (-cut.bars, cut.left_over, cut.pieces))
    return CuttingList(total, least, (total - least) / total, 1 - used / (total * stock), tuple(cuts))
