"""Who got which question right: the table that the statistics are made from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

WRITTEN, SPOKEN = "written", "spoken"


@dataclass(frozen=True)
class Scores:
    """Answers of learners to questions.

    Args:
        learners: names, one a row.
        questions: ids, one a column.
        points: 1 right, 0 not; not a number where the question was not on the learner's paper.
        blank: whether a learner had the question and left it; such an answer scores 0, as in any examination.
        forms: `written` or `spoken` for each learner; empty where nobody said.
        competencies: of questions, by id, where known.
        mistakes: for each question, how many learners answered as each misconception would.
        options: for each question, the letter that each learner picked ("" for none); empty where not known.
        keys: right letter of a question with options.
        texts: what the options of a question say, by letter, where known.
    """

    learners: tuple[str, ...]
    questions: tuple[str, ...]
    points: NDArray[np.float64]
    blank: NDArray[np.bool_]
    forms: tuple[str, ...] = ()
    competencies: Mapping[str, str] = field(default_factory=dict)
    mistakes: Mapping[str, Mapping[str, int]] = field(default_factory=dict)
    options: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    keys: Mapping[str, str] = field(default_factory=dict)
    texts: Mapping[str, Mapping[str, str]] = field(default_factory=dict)

    @property
    def asked_of_all(self) -> tuple[int, ...]:
        """Columns of the questions that every learner had: only they make one paper."""
        return tuple(int(i) for i in np.flatnonzero(~np.isnan(self.points).any(axis=0)))

    @property
    def paper(self) -> NDArray[np.float64]:
        """The points of the questions that every learner had."""
        return self.points[:, list(self.asked_of_all)]
