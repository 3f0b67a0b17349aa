"""Questions and papers: difficulty, item-rest correlation, KR-20, KR-21, alpha, Feldt's interval, standard errors."""

import csv
from pathlib import Path

import numpy as np
import pytest

from generator.assessment import reliability as rel
from generator.assessment.item_statistics import item_statistics
from tests.published.print_digits import printed

WUENSCH = np.array(
    [[int(sign) for sign in row] for row in (
        "1111110110", "1011011101", "1111011001", "0010001000", "0000010010",
        "1110111111", "1101110111", "1111111101", "0101111101", "1101101110",
    )]
)  # fmt: skip
"""10 students x 10 questions: K. Wuensch, teaching note on KR-20."""


def lsat6() -> np.ndarray:
    """1000 people x 5 questions as 32 patterns: Bock and Lieberman 1970."""
    path = Path(__file__).parent / "data" / "lsat6_patterns.csv"
    rows = list(csv.reader(path.read_text(encoding="utf-8").splitlines()))[1:]
    return np.array([list(map(int, row[:5])) for row in rows for _ in range(int(row[5]))])


def test_wuensch_difficulties_and_totals() -> None:
    """Wuensch: p, sum of pq 2.18 and variance of the totals 5.84 are printed in the note."""
    found = item_statistics(WUENSCH)
    assert found.difficulty.tolist() == printed(".7", ".7", ".6", ".7", ".6", ".8", ".7", ".7", ".5", ".6")
    assert found.difficulty == pytest.approx([0.7, 0.7, 0.6, 0.7, 0.6, 0.8, 0.7, 0.7, 0.5, 0.6])
    assert float(found.variances.sum()) == printed("2.18")
    assert float(found.totals.var()) == printed("5.84")
    assert found.totals.tolist() == [8, 7, 7, 2, 2, 9, 8, 9, 7, 7]


def test_wuensch_correlations() -> None:
    """Derived from the note's table."""
    found = item_statistics(WUENSCH)
    assert found.item_total.tolist() == printed(
        ".7946", ".7946", ".2027", ".6140", ".7095", ".4345", ".1625", ".7946", ".0828", ".6251"
    )
    assert found.item_rest.tolist() == printed(
        ".7059", ".7059", ".0000", ".4736", ".5839", ".2861", "-.0274", ".7059", "-.1236", ".4759"
    )


def test_wuensch_reliability() -> None:
    """KR-20 of the note, the rest derived; .73782 comes of two different variances in one formula."""
    found = rel.reliability(WUENSCH)
    assert found.alpha == printed("0.69635")
    assert rel.kr20(WUENSCH) == found.alpha
    assert found.alpha != printed("0.73782")
    assert found.kr21 == printed("0.68417")
    assert found.sem == printed("1.3317")
    assert [found.low, found.high] == printed("0.30907", "0.91120")


def test_lsat6() -> None:
    """Derived with two independent programs from the 32 patterns."""
    answers = lsat6()
    found, paper = item_statistics(answers), rel.reliability(answers)
    assert found.difficulty.tolist() == printed(".924", ".709", ".553", ".763", ".870")
    assert found.item_total.tolist() == printed(".3620", ".5668", ".6184", ".5344", ".4354")
    assert found.item_rest.tolist() == printed(".1128", ".1532", ".1728", ".1444", ".1216")
    assert np.bincount(found.totals.astype(int)).tolist() == [3, 20, 85, 237, 357, 298]
    assert paper.alpha == printed("0.29500")
    assert [paper.low, paper.high] == printed("0.22", "0.36")


@pytest.mark.parametrize(("score", "questions", "error"), [(14, 20, "2.1026"), (28, 40, "2.9352")])
def test_lord(score: int, questions: int, error: str) -> None:
    """Lord's standard error at one score; derived."""
    assert rel.lord_sem(score, questions) == printed(error)


def test_spearman_brown() -> None:
    """Derived."""
    assert rel.spearman_brown(0.295, 6) == printed(".7152")
    assert rel.times_longer(0.6963, 0.80) == printed("1.7447")


def test_feldt_of_an_alpha_in_print() -> None:
    """A library's documentation prints alpha .59172 of 15 people and 10 questions with the interval .195 to .840."""
    low, high = rel.feldt_interval(0.59172, 15, 10)
    assert [low, high] == printed("0.19492", "0.83982")
