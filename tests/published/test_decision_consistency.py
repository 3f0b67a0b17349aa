"""The same result twice, and the right result: Huynh, the normal approximation, Subkoviak, Livingston and Lewis."""

import math

import numpy as np
import pytest
from scipy.special import bdtrc

from generator.assessment import consistency as con
from generator.assessment.fairness import spread_of_papers
from generator.assessment.reliability import kr21
from tests.published.print_digits import printed
from tests.published.test_classical_test_theory import WUENSCH

A, B = (10, 6.6, 5.84, 7), (20, 14, 16, 14)
"""Questions, mean, variance and cut of the two cases; A is Wuensch's table."""


@pytest.mark.parametrize(
    ("case", "values"),
    [
        (A, (".684170", "3.046719", "1.569522", ".557981", ".758446", ".506724", ".510307")),
        (B, (".776316", "4.033898", "1.728814", ".592457", ".800309", ".517096", ".586478")),
    ],
)
def test_huynh(case: tuple[int, float, float, int], values: tuple[str, ...]) -> None:
    """Huynh 1976; derived."""
    questions, mean, variance, _ = case
    a, b = con.huynh_beta(questions, mean, variance)
    found = con.huynh(*case)
    numbers = [kr21(questions, mean, variance), a, b, found.passing, found.same, found.by_chance, found.kappa]
    assert numbers == printed(*values)


@pytest.mark.parametrize(
    ("case", "z", "values"), [(A, "-.041380", (".740072", ".479576")), (B, "-.125", (".784672", ".565039"))]
)
def test_normal_approximation(case: tuple[int, float, float, int], z: str, values: tuple[str, ...]) -> None:
    """Peng and Subkoviak 1980; derived."""
    questions, mean, variance, cut = case
    assert (cut - 0.5 - mean) / math.sqrt(variance) == printed(z)
    found = con.normal_consistency(mean, math.sqrt(variance), kr21(questions, mean, variance), cut)
    assert [found.same, found.kappa] == printed(*values)


def test_subkoviak() -> None:
    """Subkoviak 1976 on Wuensch's totals; derived."""
    found = con.subkoviak(WUENSCH.sum(axis=1), 10, 0.684170, 7)
    assert [found.same, found.by_chance, found.kappa] == printed(".704578", ".517103", ".388229")


def test_livingston_lewis() -> None:
    """True scores Beta(8, 3), n* 20, cut 14, true cut .70; agrees with an independent program in R."""
    found = con.beta_accuracy(8, 3, 20, 14, 0.70)
    numbers = [found.true_pass, found.false_fail, found.false_pass, found.true_fail, found.right]
    assert numbers == printed(".544172", ".073045", ".112220", ".270563", ".814735")
    twice = found.consistency
    assert [twice.same, twice.by_chance, twice.kappa] == printed(".755806", ".548917", ".458650")


def test_effective_length() -> None:
    """Livingston and Lewis 1995, formula; 56.5556 derived, rounded to 57."""
    assert con.effective_length(70, 15, 0.85, 0, 100) == printed("56.5556")


@pytest.mark.parametrize(
    ("cut", "questions", "values"),
    [
        (7, 10, (".1719", ".3823", ".6496", ".8791", ".9872")),
        (28, 40, (".0083", ".1285", ".5772", ".9568", ".9999")),
    ],
)
def test_a_short_paper_lets_too_many_through(cut: int, questions: int, values: tuple[str, ...]) -> None:
    """Chance to pass at true shares .5 to .9; derived. The sums in `beta_accuracy` rest on the same tail."""
    assert bdtrc(cut - 1, questions, np.array([0.5, 0.6, 0.7, 0.8, 0.9])).tolist() == printed(*values)
    # a Beta as narrow as a needle gives the same chance
    for share, value in zip((0.5, 0.7, 0.9), values[::2], strict=True):
        needle = con.beta_accuracy(share * 1e7, (1 - share) * 1e7, questions, cut, 0.7)
        assert needle.consistency.passing == printed(value)


@pytest.mark.parametrize(("sd", "questions", "value"), [(0.05, 20, ".224"), (0.10, 20, ".447"), (0.10, 40, ".632")])
def test_what_variants_add(sd: float, questions: int, value: str) -> None:
    """Derived: d times the root of k."""
    assert spread_of_papers(sd, questions) == printed(value)
