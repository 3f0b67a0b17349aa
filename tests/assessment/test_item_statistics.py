"""Questions: degenerate papers, ties at the edge of a group, and the same numbers by plain correlation."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from generator.assessment.item_statistics import item_statistics
from generator.assessment.notes import NoAnswerError

PAPERS = st.tuples(st.integers(3, 40), st.integers(2, 12)).flatmap(
    lambda shape: arrays(np.float64, shape, elements=st.sampled_from([0.0, 1.0]))
)


def by_numpy(one: np.ndarray, other: np.ndarray) -> float:
    """A plain correlation; not a number where one of them has no spread."""
    return float(np.corrcoef(one, other)[0, 1]) if one.std() > 0 and other.std() > 0 else np.nan


@given(PAPERS)
def test_correlations_are_those_of_numpy(paper: np.ndarray) -> None:
    found, totals = item_statistics(paper), paper.sum(axis=1)
    for i, column in enumerate(paper.T):
        assert found.item_total[i] == pytest.approx(by_numpy(column, totals), nan_ok=True, abs=1e-9)
        assert found.item_rest[i] == pytest.approx(by_numpy(column, totals - column), nan_ok=True, abs=1e-9)


@given(PAPERS, st.randoms(use_true_random=False))
def test_the_order_of_the_list_never_counts(paper: np.ndarray, shuffle: object) -> None:
    order = list(range(len(paper)))
    shuffle.shuffle(order)  # type: ignore[attr-defined]
    one, other = item_statistics(paper), item_statistics(paper[order])
    assert other.discrimination == pytest.approx(one.discrimination)
    assert other.item_rest == pytest.approx(one.item_rest, nan_ok=True)


def test_a_question_that_everyone_passes_has_no_correlation() -> None:
    found = item_statistics([[1, 1, 0], [1, 0, 0], [1, 1, 1], [1, 0, 1]])
    assert np.isnan(found.item_total[0])
    assert np.isnan(found.item_rest[0])
    assert found.difficulty[0] == 1
    assert found.discrimination[0] == 0
    assert found.low[0] < found.high[0] == 1


def test_one_question_has_no_rest() -> None:
    found = item_statistics([[1], [0], [1]])
    assert np.isnan(found.item_rest[0])
    assert found.item_total[0] == pytest.approx(1)


def test_learners_alike_at_the_edge_share_its_last_places() -> None:
    """4 learners, groups of 1; two share the top total, so each counts half."""
    found = item_statistics([[1, 0, 1], [0, 1, 1], [1, 0, 0], [0, 0, 0]])
    assert found.group == 1
    assert found.upper.tolist() == [0.5, 0.5, 1.0]
    assert found.lower.tolist() == [0, 0, 0]


def test_points_of_more_than_one_have_a_difficulty_and_no_interval_of_counts() -> None:
    found = item_statistics([[2, 1], [1, 0], [0, 1]], most=[2, 1])
    assert found.difficulty.tolist() == pytest.approx([0.5, 2 / 3])
    assert np.isnan(found.low[0])
    assert found.low[1] == pytest.approx(0.2077, abs=1e-4)


def test_few_people_are_warned_about_and_many_are_not() -> None:
    few = item_statistics(np.eye(29))
    assert [note.name for note in few.notes] == ["few_people"]
    assert item_statistics(np.eye(30)).notes == ()


def test_nobody_gives_no_answer() -> None:
    with pytest.raises(NoAnswerError):
        item_statistics(np.zeros((0, 3)))
