"""Reliability: what has no answer, what must not be clipped, and properties of the formulas."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy import stats

from generator.assessment import reliability as rel
from generator.assessment.notes import NoAnswerError
from tests.assessment.test_item_statistics import PAPERS


def reason(work: object, *values: object) -> str:
    """Why a statistic has no answer."""
    with pytest.raises(NoAnswerError) as caught:
        work(*values)  # type: ignore[operator]
    return caught.value.reason.name


@given(PAPERS)
def test_kr20_is_alpha_and_never_under_kr21(paper: np.ndarray) -> None:
    totals = paper.sum(axis=1)
    assume(totals.var() > 0)
    k, p = paper.shape[1], paper.mean(axis=0)
    by_formula = k / (k - 1) * (1 - (p * (1 - p)).sum() / totals.var())
    assert rel.kr20(paper) == pytest.approx(by_formula)
    assert rel.kr21(k, totals.mean(), totals.var()) <= rel.kr20(paper) + 1e-9


@given(PAPERS, st.integers(0, 5))
def test_alpha_does_not_move_with_a_constant(paper: np.ndarray, more: int) -> None:
    assume(paper.sum(axis=1).var() > 0)
    assert rel.alpha(paper + more) == pytest.approx(rel.alpha(paper), abs=1e-6)


def test_alpha_below_zero_is_told_as_it_is() -> None:
    paper = [[1, 0, 1, 0], [0, 1, 0, 1], [1, 0, 0, 0], [0, 1, 1, 1]]
    found = rel.reliability(paper)
    assert found.alpha == pytest.approx(-4 / 3)
    assert found.low < found.alpha < found.high
    assert "negative_alpha" in [note.name for note in found.notes]


def test_what_has_no_answer() -> None:
    assert reason(rel.alpha, [[1], [0]]) == "one_question"
    assert reason(rel.alpha, [[1, 0]]) == "one_person"
    assert reason(rel.alpha, [[1, 0], [0, 1]]) == "no_spread"
    assert reason(rel.kr20, [[2, 0], [0, 1]]) == "not_right_or_wrong"
    assert reason(rel.kr21, 1, 0.5, 0.25) == "one_question"
    assert reason(rel.kr21, 10, 5, 0) == "no_spread"
    assert reason(rel.lord_sem, 1, 1) == "one_question"
    assert reason(rel.times_longer, -0.1, 0.8) == "no_reliability"


@given(st.floats(0.01, 0.99), st.floats(0.01, 0.99))
def test_the_length_needed_gives_the_reliability_wanted(value: float, wanted: float) -> None:
    assert rel.spearman_brown(value, rel.times_longer(value, wanted)) == pytest.approx(wanted)


def test_feldt_by_the_library_s_own_f() -> None:
    low, high = rel.feldt_interval(0.6, 14, 35)
    f = stats.f(13, 13 * 34)
    assert (low, high) == pytest.approx((1 - 0.4 * f.ppf(0.975), 1 - 0.4 * f.ppf(0.025)))


def test_points_of_more_than_one_have_alpha_and_no_kr21() -> None:
    found = rel.reliability([[2, 1], [1, 0], [0, 0], [2, 2]])
    assert found.kr21 is None
    assert 0 < found.alpha <= 1
    assert found.sem == pytest.approx(np.sqrt(found.variance * (1 - found.alpha)))


def test_kelley_draws_to_the_mean() -> None:
    assert rel.kelley(20, 10, 0.75) == pytest.approx(17.5)
