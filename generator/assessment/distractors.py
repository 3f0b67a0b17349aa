"""Which wrong option or wrong idea drew whom: an option that nobody takes helps nobody, a wrong key draws the best."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from generator.assessment.item_statistics import UPPER_SHARE
from generator.assessment.notes import NoAnswerError, Note, few_people

LEAST_TAKEN = 0.05
"""A wrong option works if at least this share takes it, and more of the lower group than of the upper.

The usual rule, from memory: it may ask for a second look and deletes nothing.
"""


@dataclass(frozen=True, slots=True)
class OptionCount:
    """One option and who took it.

    Args:
        option: its letter; empty for no answer.
        is_key: whether it is the right one.
        upper: learners of the upper group that took it.
        middle: of the middle group.
        lower: of the lower group.
        works: for a wrong option, whether it draws learners, and more weak than strong ones.
    """

    option: str
    is_key: bool
    upper: int
    middle: int
    lower: int
    works: bool

    @property
    def taken(self) -> int:
        """By how many learners."""
        return self.upper + self.middle + self.lower


@dataclass(frozen=True, slots=True)
class DistractorTable:
    """Options of one question; `suspect_key` where fewer strong than weak learners took the key."""

    options: tuple[OptionCount, ...]
    suspect_key: bool
    notes: tuple[Note, ...]


def distractors(chosen: Sequence[str], key: str, totals: ArrayLike, options: Sequence[str] = ()) -> DistractorTable:
    """Count who took which option of one question.

    The upper and lower groups have round(0.27 n) learners, at least 1. Counts are whole people, so learners with the
    same points are taken in the order of the list; with few people that is one more reason not to act on one table.

    Args:
        chosen: each learner's option, an empty text where there is none.
        key: the right option.
        totals: each learner's points on the paper.
        options: all options; those that nobody took are found only here.

    Raises:
        NoAnswerError: no learner.
    """
    points = np.asarray(totals, dtype=np.float64)
    people = len(chosen)
    if not people:
        raise NoAnswerError("no_answers")
    group = max(1, min(people // 2, int(np.floor(UPPER_SHARE * people + 0.5)))) if people > 1 else 0
    order = np.argsort(-points, kind="stable")
    place = np.ones(people, dtype=np.intp)
    place[order[:group]], place[order[people - group :]] = 0, 2
    if not group:
        place[:] = 1
    names = dict.fromkeys([*options, key, *sorted(set(chosen))])
    counts = {name: [0, 0, 0] for name in names}
    for name, where in zip(chosen, place, strict=True):
        counts[name][where] += 1
    rows = tuple(
        OptionCount(
            name, name == key, up, mid, low, name != key and up < low and up + mid + low >= LEAST_TAKEN * people
        )
        for name, (up, mid, low) in counts.items()
    )
    up, _, low = counts[key]
    return DistractorTable(rows, up < low, few_people(people))


@dataclass(frozen=True, slots=True)
class MistakeCount:
    """How many wrong answers to a question are what one misconception gives."""

    question: str
    mistake: str
    count: int
    wrong: int


def mistake_counts(mistakes: Mapping[str, Mapping[str, int]], wrong: Mapping[str, int]) -> tuple[MistakeCount, ...]:
    """The misconceptions seen, most frequent first.

    Args:
        mistakes: for each question, how many learners answered as each misconception would.
        wrong: for each question, how many answers were wrong.
    """
    found = [
        MistakeCount(question, name, count, wrong.get(question, 0))
        for question, counts in mistakes.items()
        for name, count in counts.items()
        if count
    ]
    return tuple(sorted(found, key=lambda row: (-row.count, row.question, row.mistake)))
