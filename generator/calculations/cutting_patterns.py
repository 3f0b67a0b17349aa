"""Ways of cutting a stock bar: all of them where they are few, and where they are many those that the best list needs.

The second is Gilmore and Gomory's column generation (A linear programming approach to the cutting-stock problem,
Operations Research 9 (1961), 849-859; from memory): begin with plain ways of cutting, ask the linear programme what a
piece is worth, look for a way of cutting whose pieces are worth more than a bar, and go on until there is none.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import linprog

FEW = 2000
"""Up to so many ways of cutting, all of them are looked at."""
_MOST_ROUNDS = 400
_HAIR = 1e-7

Patterns = NDArray[np.int64]


def all_patterns(lengths: Sequence[int], stock: int) -> Patterns | None:
    """All ways of filling a bar to which no further piece can be added.

    Args:
        lengths: of the kinds of piece [mm], each from 1 to `stock`.
        stock: length of the bar [mm].

    Returns:
        A row for each way, a column for each kind; None where they are more than 2000.

    Example:
        >>> all_patterns([5000, 2000], 6000).tolist()
        [[1, 0], [0, 3]]
    """
    order = sorted(range(len(lengths)), key=lambda kind: -lengths[kind])
    found: list[tuple[int, ...]] = []
    counts = [0] * len(lengths)

    def fill(position: int, left: int) -> bool:
        kind = order[position]
        most = left // lengths[kind]
        if position == len(order) - 1:
            found.append((*counts[:kind], most, *counts[kind + 1 :]))
            return len(found) <= FEW
        for count in range(most, -1, -1):
            counts[kind] = count
            if not fill(position + 1, left - count * lengths[kind]):
                return False
        counts[kind] = 0
        return True

    return np.array(found, dtype=np.int64) if fill(0, stock) else None


def long_pieces_first(lengths: Sequence[int], counts: Sequence[int], stock: int) -> Patterns:
    """The list that a person makes: each piece, the longest first, from the first bar that still holds it.

    Args:
        lengths: of the kinds of piece [mm], each from 1 to `stock`.
        counts: how many of each.
        stock: length of the bar [mm].

    Returns:
        A row for each bar, a column for each kind.

    Example:
        >>> long_pieces_first([4000, 2000], [2, 1], 6000).tolist()
        [[1, 1], [1, 0]]
    """
    bars: list[list[int]] = []
    left: list[int] = []
    for kind in sorted(range(len(lengths)), key=lambda one: -lengths[one]):
        for _ in range(counts[kind]):
            place = next((i for i, room in enumerate(left) if room >= lengths[kind]), None)
            if place is None:
                place = len(bars)
                bars.append([0] * len(lengths))
                left.append(stock)
            bars[place][kind] += 1
            left[place] -= lengths[kind]
    return np.array(bars, dtype=np.int64)


def needed_patterns(lengths: Sequence[int], counts: Sequence[int], stock: int) -> tuple[Patterns, int]:
    """The ways of cutting that the best list of part-bars needs, with those of the plain list.

    Args:
        lengths: of the kinds of piece [mm], each from 1 to `stock`.
        counts: how many of each, 1 or more.
        stock: length of the bar [mm].

    Returns:
        A row for each way, a column for each kind; and the number of bars below which no list can be.

    Example:
        >>> ways, least = needed_patterns([2500, 1700], [4, 4], 6000)
        >>> least
        3
    """
    wanted = np.asarray(counts)
    found = np.unique(np.vstack([long_pieces_first(lengths, counts, stock), _one_kind(lengths, stock)]), axis=0)
    bars = worth = 1.0
    for _ in range(_MOST_ROUNDS):
        solved = linprog(np.ones(len(found)), A_ub=-found.T, b_ub=-wanted)
        bars = float(solved.fun)
        way, worth = _worth_most(-solved.ineqlin.marginals, lengths, wanted, stock)
        if worth <= 1 + _HAIR:
            break
        found = np.vstack([found, way])
    # bars / worth is a bound also where the search was broken off
    return found, int(np.ceil(bars / max(worth, 1.0) - 1e-6))


def _one_kind(lengths: Sequence[int], stock: int) -> Patterns:
    return np.diag([stock // length for length in lengths]).astype(np.int64)


def _worth_most(
    worths: NDArray[np.float64], lengths: Sequence[int], counts: NDArray[np.int64], stock: int
) -> tuple[Patterns, float]:
    """The fullest bar by worth, with no more of a kind than is asked for: a knapsack, kind by kind over each mm."""
    best = np.zeros(stock + 1)
    taken: list[NDArray[np.int64]] = []
    for worth, length, count in zip(worths, lengths, counts, strict=True):
        longer, picks = best.copy(), np.zeros(stock + 1, dtype=np.int64)
        for number in range(1, min(stock // length, int(count)) + 1):
            offered = best[: stock + 1 - number * length] + number * worth
            better = offered > longer[number * length :] + _HAIR / 10
            longer[number * length :][better] = offered[better]
            picks[number * length :][better] = number
        best = longer
        taken.append(picks)
    left, way = stock, np.zeros(len(lengths), dtype=np.int64)
    for kind in range(len(lengths) - 1, -1, -1):
        way[kind] = taken[kind][left]
        left -= int(way[kind]) * lengths[kind]
    return way, float(best[stock])
