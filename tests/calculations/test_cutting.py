"""The cutting list buys the fewest bars, cuts exactly what is asked and says how sure it is."""

from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.calculations.cutting import CuttingList, Piece, bars_for, cutting_list
from generator.formula import OutOfRangeError


def cut_of(plan: CuttingList, kinds: int) -> list[int]:
    return [sum(cut.bars * cut.pieces[kind] for cut in plan.cuts) for kind in range(kinds)]


def test_one_ring_a_bar_needs_as_many_bars_as_rings() -> None:
    """Derived: 15 rings of 8.47 m are 127 m, which is 10.6 bars of 12 m, but each bar gives one ring."""
    plan = cutting_list([Piece("ring", 8.47, 15)], 12.0)
    assert plan.bars == 15
    assert plan.cuts[0].left_over == pytest.approx(3.53)


def test_short_pieces_come_from_the_ends_of_long_ones() -> None:
    plan = cutting_list([Piece("ring", 8.47, 4), Piece("bar", 1.7, 8)], 12.0)
    assert plan.bars == 4
    assert cut_of(plan, 2) == [4, 8]


def test_a_piece_longer_than_the_bar_is_refused_with_a_way_out() -> None:
    with pytest.raises(OutOfRangeError, match="two pieces with a lap"):
        cutting_list([Piece("ring", 12.3, 2)], 12.0)


def test_nothing_asked_is_nothing_bought() -> None:
    assert cutting_list([Piece("ring", 2.0, 0)], 12.0).bars == 0


piece = st.tuples(st.integers(900, 6000), st.integers(0, 6))


@settings(max_examples=60)
@given(st.lists(piece, min_size=1, max_size=4))
def test_exactly_what_is_asked_is_cut_and_every_bar_is_long_enough(kinds: list[tuple[int, int]]) -> None:
    pieces = [Piece(f"piece {i}", length / 1000, count) for i, (length, count) in enumerate(kinds)]
    plan = cutting_list(pieces, 6.0)
    assert cut_of(plan, len(pieces)) == [piece.count for piece in pieces]
    assert sum(cut.bars for cut in plan.cuts) == plan.bars
    assert all(cut.left_over >= -1e-9 for cut in plan.cuts)
    assert 0 <= plan.waste < 1
    assert plan.least_bars <= plan.bars
    needed = sum(piece.length * piece.count for piece in pieces)
    assert plan.bars * 6.0 >= needed - 1e-6


@settings(max_examples=40)
@given(st.integers(1, 6000), st.integers(1, 400))
def test_pieces_of_one_kind_are_counted_as_the_search_counts_them(length: int, count: int) -> None:
    assert bars_for(length / 1000, count, 6.0) == cutting_list([Piece("ring", length / 1000, count)], 6.0).bars


@settings(max_examples=25)
@given(st.lists(st.tuples(st.integers(15, 40), st.integers(1, 3)), min_size=2, max_size=2))
def test_no_list_does_with_fewer_bars(kinds: list[tuple[int, int]]) -> None:
    """Independent: every way of dealing the pieces over the bars, tried one by one."""
    pieces = [Piece(str(i), length / 10, count) for i, (length, count) in enumerate(kinds)]
    plan = cutting_list(pieces, 6.0)
    assert plan.gap == 0
    lengths = [length for length, count in kinds for _ in range(count)]
    fewer = plan.bars - 1
    for deal in product(range(fewer), repeat=len(lengths)) if fewer else []:
        sums = [0] * fewer
        for length, bar in zip(lengths, deal, strict=True):
            sums[bar] += length
        assert max(sums) > 60
