"""The same result twice: two ways to one number, true integrals, and papers that carry nothing."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy import integrate, stats

from generator.assessment import consistency as con
from tests.assessment.test_reliability import reason


@given(st.integers(5, 60), st.floats(0.2, 0.9), st.floats(0.1, 0.9), st.floats(0.05, 1))
def test_livingston_lewis_with_huynh_s_beta_is_huynh(k: int, share: float, value: float, place: float) -> None:
    """Sums of a bivariate beta-binomial against Gauss-Jacobi nodes."""
    mean = share * k
    variance = mean * (k - mean) / (k * (1 - value * (k - 1) / k))
    cut = max(1, round(place * k))
    a, b = con.huynh_beta(k, mean, variance)
    assume(min(a, b) > 0.05)
    one, other = con.huynh(k, mean, variance, cut), con.beta_accuracy(a, b, k, cut, 0.7).consistency
    assert (other.passing, other.same) == pytest.approx((one.passing, one.same), abs=1e-9)
    if 1e-6 < one.passing < 1 - 1e-6:
        assert other.kappa == pytest.approx(one.kappa, abs=1e-6)


@pytest.mark.parametrize(
    ("a", "b", "n", "cut", "true_cut", "low", "high"),
    [(8, 3, 20, 14, 0.7, 0, 1), (6, 3, 30, 20, 0.65, 0.2, 0.95), (2, 0.5, 12, 9, 0.8, 0.1, 0.9),
     (1, 1, 5, 3, 0.6, 0, 1),
     (6, 3, 30, 20, 0.97, 0.2, 0.95), (6, 3, 30, 20, 0.1, 0.2, 0.95)],
)  # fmt: skip
def test_accuracy_is_the_integral(
    a: float, b: float, n: int, cut: int, true_cut: float, low: float, high: float
) -> None:
    found = con.beta_accuracy(a, b, n, cut, true_cut, low, high)
    spread = stats.beta(a, b, low, high - low)

    def passing(t: float) -> float:
        return float(spread.pdf(t) * stats.binom.sf(cut - 1, n, t))

    edge = min(high, max(low, true_cut))
    assert found.false_pass == pytest.approx(integrate.quad(passing, low, edge)[0], abs=1e-6)
    assert found.true_pass == pytest.approx(integrate.quad(passing, edge, high)[0], abs=1e-6)
    four = found.true_pass + found.false_fail + found.false_pass + found.true_fail
    assert four == pytest.approx(1)
    assert found.true_pass + found.false_fail == pytest.approx(float(spread.sf(true_cut)))


def test_normal_is_the_bivariate_normal() -> None:
    z = (13.5 - 14.2) / 3.1
    below = stats.multivariate_normal([0, 0], [[1, 0.64], [0.64, 1]]).cdf([z, z])
    found = con.normal_consistency(14.2, 3.1, 0.64, 14)
    assert found.same == pytest.approx(1 + 2 * (below - stats.norm.cdf(z)), abs=1e-6)
    assert found.passing == pytest.approx(stats.norm.sf(z))


def test_four_moments_find_their_beta_again_and_two_are_kept_where_four_fail() -> None:
    a, b, low, high = 6.0, 3.0, 0.2, 0.95
    raw = [math.prod((a + i) / (a + b + i) for i in range(order)) for order in range(5)]
    moments = [
        sum(math.comb(order, j) * low ** (order - j) * (high - low) ** j * raw[j] for j in range(order + 1))
        for order in range(1, 5)
    ]
    assert con._four_moments(moments) == pytest.approx((a, b, low, high), rel=1e-6)
    scores = [0, 0, 0, 10, 10, 10, 10, 5]
    two, four = (con.livingston_lewis(scores, 0.8, 6, 0, 10, four=flag) for flag in (False, True))
    assert two.parameters[2:] == (0.0, 1.0)
    assert four.parameters == two.parameters  # two heaps at the ends: no Beta inside 0 to 1 has such moments


def test_livingston_lewis_on_made_up_people_of_known_truth() -> None:
    """20,000 people with true shares Beta(7, 4) on 25 questions: told within two in a hundred of what happened."""
    draw = np.random.Generator(np.random.PCG64(11))
    true = draw.beta(7, 4, 20_000)
    first, second = draw.binomial(25, true), draw.binomial(25, true)
    value = float(np.corrcoef(first, second)[0, 1])
    found = con.livingston_lewis(first, value, 16, 0, 25)
    assert found.length == pytest.approx(25, abs=1)
    assert found.consistency.same == pytest.approx(float(((first >= 16) == (second >= 16)).mean()), abs=0.02)
    assert found.false_pass == pytest.approx(float(((first >= 16) & (true < 0.64)).mean()), abs=0.02)


def test_a_longer_paper_with_the_same_people_is_more_consistent() -> None:
    same = [con.beta_accuracy(7, 4, n, round(0.7 * n), 0.7).consistency.same for n in (10, 20, 40, 80)]
    assert same == sorted(same)


def test_what_has_no_answer() -> None:
    assert reason(con.huynh, 10, 5, 2.5, 7) == "no_reliability"  # KR-21 is 0
    assert reason(con.huynh, 10, 5, 0, 7) == "no_spread"
    assert reason(con.huynh, 10, 5, 6, 0) == "cut_outside"
    assert reason(con.huynh, 10, 5, 6, 11) == "cut_outside"
    assert reason(con.normal_consistency, 5, 0, 0.5, 7) == "no_spread"
    assert reason(con.normal_consistency, 5, 2, -0.1, 7) == "no_reliability"
    assert reason(con.subkoviak, [5, 6], 10, 1.2, 7) == "no_reliability"
    assert reason(con.subkoviak, [], 10, 0.5, 7) == "no_answers"
    assert reason(con.effective_length, 5, 2, 0.0, 0, 10) == "no_reliability"
    assert reason(con.effective_length, 5, 2, 1.0, 0, 10) == "no_fit"
    assert reason(con.huynh, 10, 5, 25, 7) == "no_fit"  # half of the people have all, half nothing
    assert reason(con.livingston_lewis, [5], 0.5, 3, 0, 10) == "one_person"
    assert reason(con.livingston_lewis, [5, 5], 0.5, 3, 0, 10) == "no_spread"
    assert reason(con.livingston_lewis, [4, 6], 0.5, 0, 0, 10) == "cut_outside"


def test_everybody_passing_has_no_kappa() -> None:
    found = con.subkoviak([10, 10, 10], 10, 1.0, 1)
    assert found.same == 1
    assert math.isnan(found.kappa)
