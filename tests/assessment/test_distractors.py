from __future__ import annotations

import pytest

from generator.assessment.distractors import distractors, mistake_counts
from generator.assessment.notes import NoAnswerError

TOTALS = [9, 9, 8, 5, 5, 5, 2, 2, 1, 1]
"""Groups of round(2.7) = 3."""


def test_options_are_counted_by_group() -> None:
    found = distractors(["A", "A", "B", "A", "B", "", "B", "C", "B", "A"], "A", TOTALS, "ABCD")
    rows = {row.option: (row.upper, row.middle, row.lower) for row in found.options}
    assert rows == {"A": (2, 1, 1), "B": (1, 2, 1), "C": (0, 0, 1), "D": (0, 0, 0), "": (0, 1, 0)}
    assert [row.option for row in found.options if row.works] == ["C"]
    assert not found.suspect_key
    assert found.notes[0].name == "few_people"


def test_a_key_that_the_weak_take_is_suspect() -> None:
    assert distractors(["B", "B", "B", "A", "A", "A", "A", "A", "A", "A"], "A", TOTALS).suspect_key


def test_one_learner_and_none() -> None:
    assert not distractors(["A"], "A", [1]).suspect_key
    with pytest.raises(NoAnswerError):
        distractors([], "A", [])


def test_mistakes_are_told_most_frequent_first() -> None:
    found = mistake_counts({"a": {"x": 1, "y": 3}, "b": {"x": 2}}, {"a": 4, "b": 2})
    assert [(row.question, row.mistake, row.count, row.wrong) for row in found] == [
        ("a", "y", 3, 4), ("b", "x", 2, 2), ("a", "x", 1, 4),
    ]  # fmt: skip
