"""Two observers and more: Cohen, Fleiss, Gwet, Krippendorff, intraclass correlations."""

import pytest

from generator.assessment.agreement import agreement, agreement_of_counts, cohen, icc
from tests.published.print_digits import printed

FLEISS = [
    [0, 0, 0, 0, 14], [0, 2, 6, 4, 2], [0, 0, 3, 5, 6], [0, 3, 9, 2, 0], [2, 2, 8, 1, 1],
    [7, 7, 0, 0, 0], [3, 2, 6, 3, 0], [2, 5, 3, 2, 2], [6, 5, 2, 1, 0], [0, 2, 2, 3, 7],
]  # fmt: skip
"""10 subjects, 5 categories, 14 raters: the usual worked example of Fleiss's kappa."""
GWET = [
    [1, 1, None, 1], [2, 2, 3, 2], [3, 3, 3, 3], [3, 3, 3, 3], [2, 2, 2, 2], [1, 2, 3, 4],
    [4, 4, 4, 4], [1, 1, 2, 1], [2, 2, 2, 2], [None, 5, 5, 5], [None, None, 1, 1], [None, None, 3, None],
]  # fmt: skip
"""4 raters, 12 units with gaps: example of Gwet's handbook."""
SHROUT_FLEISS = [[9, 2, 5, 8], [6, 1, 3, 2], [8, 4, 6, 8], [7, 1, 2, 6], [10, 5, 6, 9], [6, 2, 4, 7]]
"""6 subjects, 4 judges: Shrout and Fleiss 1979."""


def pairs(table: list[list[int]]) -> list[tuple[int, int]]:
    """Two raters' ratings out of their cross table."""
    return [(i, j) for i, row in enumerate(table) for j, count in enumerate(row) for _ in range(count)]


@pytest.mark.parametrize(
    ("table", "percent", "kappa", "ac1"),
    [
        ([[20, 5], [10, 15]], ".70", ".40", ".405941"),
        ([[118, 5], [2, 0]], ".944", "-.023392", ".940776"),  # nearly all alike: kappa breaks down, AC1 does not
    ],
)
def test_two_observers(table: list[list[int]], percent: str, kappa: str, ac1: str) -> None:
    """Derived."""
    found = agreement(pairs(table))
    assert [found.percent, cohen(table), found.ac1] == printed(percent, kappa, ac1)


def test_cohen_weighted() -> None:
    """Cohen 1968, shares of 200 in three categories."""
    table = [[0.44, 0.07, 0.09], [0.05, 0.20, 0.05], [0.01, 0.03, 0.06]]
    assert cohen(table) == printed(".491525")
    assert cohen(table, [[0, 1, 3], [1, 0, 6], [3, 6, 0]]) == printed(".347826")


def test_fleiss() -> None:
    """Published as .210."""
    found = agreement_of_counts(FLEISS)
    assert found.fleiss == printed(".210")
    assert found.fleiss == printed(".209931")


def test_gwet_with_gaps() -> None:
    """Gwet's handbook; run with an independent program in R."""
    found = agreement(GWET)
    assert [found.percent, found.ac1, found.error] == printed(".81818", ".77544", ".14295")
    assert [found.fleiss, found.krippendorff, found.brennan_prediger] == printed(".76117", ".74342", ".77273")
    assert (found.percent - found.ac1) / (1 - found.ac1) == printed(".19032")  # pe


def test_intraclass() -> None:
    """Shrout and Fleiss 1979 print .17 .29 .71 .44 .62 .91; more digits by an independent program."""
    found = icc(SHROUT_FLEISS)
    numbers = [found.one, found.random, found.fixed, found.one_mean, found.random_mean, found.fixed_mean]
    assert numbers == printed(".17", ".29", ".71", ".44", ".62", ".91")
    assert numbers == printed(".165742", ".289764", ".714841", ".442797", ".620051", ".909316")
