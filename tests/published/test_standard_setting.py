"""Cuts by judges (Angoff) and by borderline masons; both tables are made up and worked by hand."""

import csv
from pathlib import Path

import numpy as np
import pytest

from generator.assessment.angoff import Round, angoff
from generator.assessment.borderline import borderline_group, borderline_regression
from tests.published.print_digits import printed

DATA = Path(__file__).parent / "data"


def rows(name: str) -> list[list[float]]:
    table = csv.reader((DATA / name).read_text(encoding="utf-8").splitlines())
    next(table)
    return [[float(cell) for cell in row] for row in table]


@pytest.fixture(name="rounds")
def two_rounds() -> list[Round]:
    """6 judges, 10 questions, 2 rounds; derived."""
    table = rows("angoff_6judges_10items.csv")
    return [
        angoff([f"{row[1]:.0f}" for row in table if row[0] == number], [row[2:] for row in table if row[0] == number])
        for number in (1, 2)
    ]


def test_angoff_first_round(rounds: list[Round]) -> None:
    first = rounds[0]
    assert list(first.cuts) == printed("6.70", "6.15", "7.50", "6.05", "7.15", "4.95")
    assert [first.mean, first.sd, first.error, first.median] == printed("6.4167", ".91086", ".37186", "6.425")
    assert first.anova is not None
    assert [first.anova.judges, first.anova.questions, first.anova.rest] == printed(".0829667", ".0619444", ".00052222")
    assert first.anova.judge_variance == printed(".0082444")
    assert first.far_off == ("6",)
    assert first.cut == 7


def test_angoff_second_round(rounds: list[Round]) -> None:
    second = rounds[1]
    assert list(second.cuts) == printed("6.70", "6.25", "7.10", "6.30", "7.00", "5.85")
    assert [second.mean, second.sd, second.error, second.median] == printed("6.5333", ".48339", ".19734", "6.500")
    assert second.high - second.mean == printed(".5073")
    assert (second.high - second.mean) / second.error == printed("2.5706")
    assert second.anova is not None
    assert second.anova.judge_variance == printed(".0023074")


def test_borderline() -> None:
    """20 candidates: rating 1 to 5 and points; derived."""
    table = np.array(rows("borderline_20candidates.csv"))
    group, line = borderline_group(table[:, 1], table[:, 2]), borderline_regression(table[:, 1], table[:, 2])
    assert (group.count, group.mean, group.median) == (4, 12.5, 12.5)
    assert [line.slope, line.intercept, line.r2, line.value] == printed("3.52104", "5.41082", ".93016", "12.45291")
    assert [line.mse, line.error] == printed("1.29036", ".34862")
    assert line.cut == 13
