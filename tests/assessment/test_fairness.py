from __future__ import annotations

from math import comb

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.assessment.fairness import adjusted, compare, fisher, shrunk_shares
from tests.assessment.test_reliability import reason


def by_counting(a: int, b: int, c: int, d: int) -> float:
    """Fisher's test in whole numbers."""
    first, second, right = a + b, c + d, a + c
    ways = {x: comb(first, x) * comb(second, right - x) for x in range(right + 1) if x <= first and right - x <= second}
    return sum(way for way in ways.values() if way <= ways[a]) / sum(ways.values())


@given(st.integers(0, 15), st.integers(0, 15), st.integers(0, 15), st.integers(0, 15))
def test_fisher_in_whole_numbers(a: int, b: int, c: int, d: int) -> None:
    assert fisher(a, b, c, d) == pytest.approx(by_counting(a, b, c, d), rel=1e-6)


def test_fisher_refuses_what_is_no_count() -> None:
    with pytest.raises(ValueError, match="below 0"):
        fisher(-1, 2, 3, 4)


def test_a_comparison_tells_its_interval_and_warns_of_small_groups() -> None:
    found = compare((9, 2), (10, 10))
    assert found.difference == pytest.approx(0.7)
    assert 0 < found.low < 0.7 < found.high < 1
    assert found.p < 0.05
    assert found.notes == ()
    assert compare((1, 0), (2, 3)).notes[0].name == "small_groups"
    assert reason(compare, (0, 0), (0, 3)) == "group_too_small"


def test_many_comparisons_make_one_fluke_harmless() -> None:
    assert adjusted([0.04]) == (0.04,)
    assert max(adjusted([0.04] * 20)) == pytest.approx(0.8)
    assert adjusted([]) == ()


def test_bands_without_a_difference_share_one_number() -> None:
    found = shrunk_shares([6, 5, 0], [10, 10, 0])
    assert [band.share for band in found] == pytest.approx([0.55, 0.55, 0.55], abs=0.01)


def test_bands_far_apart_keep_their_own_and_few_answers_are_drawn_more() -> None:
    found = shrunk_shares([95, 20, 1], [100, 100, 2])
    assert found[0].share == pytest.approx(0.95, abs=0.02)
    assert found[1].share == pytest.approx(0.20, abs=0.02)
    assert 0.5 < found[2].share < 0.6  # towards the mean of all, 0.574
    assert found[2].high - found[2].low > found[0].high - found[0].low


def test_everybody_right_stays_inside() -> None:
    found = shrunk_shares([10, 10], [10, 10])
    assert all(0.9 < band.share < 1 for band in found)
    assert reason(shrunk_shares, [0], [0]) == "no_answers"
