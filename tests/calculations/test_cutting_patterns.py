"""Ways of cutting: all of them where few, the needed ones where many, and a bound below which no list can be."""

from __future__ import annotations

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import Bounds, LinearConstraint, milp

from generator.calculations.cutting import Piece, cutting_list
from generator.calculations.cutting_patterns import FEW, all_patterns, long_pieces_first, needed_patterns

STOCK = 6000
kinds = st.lists(st.tuples(st.integers(700, 5500), st.integers(1, 12)), min_size=1, max_size=4)


def best_of(patterns: np.ndarray, counts: list[int]) -> int:
    """Fewest bars with these ways of cutting, proven."""
    solved = milp(
        np.ones(len(patterns)),
        constraints=LinearConstraint(patterns.T, np.array(counts), np.inf),
        integrality=np.ones(len(patterns)),
        bounds=Bounds(0, np.inf),
    )
    return round(solved.fun)


@settings(max_examples=60)
@given(kinds)
def test_the_needed_ways_give_a_list_at_most_one_bar_above_the_best_of_all(wanted: list[tuple[int, int]]) -> None:
    lengths, counts = [length for length, _ in wanted], [count for _, count in wanted]
    everything = all_patterns(lengths, STOCK)
    assert everything is not None
    best = best_of(everything, counts)
    ways, least = needed_patterns(lengths, counts, STOCK)
    assert least <= best <= best_of(ways, counts) <= best + 1
    assert best <= len(long_pieces_first(lengths, counts, STOCK))
    assert all(way @ np.array(lengths) <= STOCK for way in (*ways, *everything))


@settings(max_examples=60)
@given(kinds)
def test_the_plain_list_cuts_exactly_what_is_asked(wanted: list[tuple[int, int]]) -> None:
    lengths, counts = [length for length, _ in wanted], [count for _, count in wanted]
    bars = long_pieces_first(lengths, counts, STOCK)
    assert bars.sum(axis=0).tolist() == counts
    assert (bars @ np.array(lengths) <= STOCK).all()


def test_many_short_pieces_are_listed_and_not_refused() -> None:
    """More ways of cutting than can be looked at: the list is still within a bar of what no list can better."""
    pieces = [Piece(str(i), 0.25 + 0.17 * i, 9 + i) for i in range(12)]
    assert all_patterns([250 + 170 * i for i in range(12)], 12_000) is None
    found = cutting_list(pieces, 12.0)
    assert [sum(cut.bars * cut.pieces[i] for cut in found.cuts) for i in range(12)] == [9 + i for i in range(12)]
    assert found.least_bars <= found.bars <= found.least_bars + 1


def test_up_to_the_limit_all_ways_are_given() -> None:
    found = all_patterns([1000, 900, 800], STOCK)
    assert found is not None
    assert len({tuple(way) for way in found.tolist()}) == len(found) < FEW
