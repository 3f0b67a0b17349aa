"""The cut of a written paper by judges (modified Angoff): how many just good enough masons would get each question.

Judges are people who do the work well, at least five, better eight to ten, and never the trainers of the cohort. They
judge twice; between the rounds they see how far they are apart. Both rounds are kept.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike
from scipy.special import stdtrit

from generator.assessment.notes import NoAnswerError, Note, note
from generator.formula import whole_up

FEWEST_JUDGES, ENOUGH_JUDGES = 5, 8
FAR_OFF = 2.0
"""A judge is named where the own cut lies more than this many SDs of the others from the others' mean."""


@dataclass(frozen=True, slots=True)
class Anova:
    """Mean squares of the judgements as shares, and the variance that comes from the judges alone."""

    judges: float
    questions: float
    rest: float
    judge_variance: float


@dataclass(frozen=True, slots=True)
class Round:
    """One round of judging.

    Args:
        judges: names.
        questions: on the paper.
        cuts: each judge's own cut, points.
        mean: the panel's cut, points, not rounded.
        median: of the judges' cuts.
        sd: of the judges' cuts, divided by J - 1.
        error: standard error of the panel's cut, points.
        low: lower end of the 95 % interval of the panel's cut, by t with J - 1 degrees.
        high: its upper end.
        far_off: judges far from the others; they are named and never dropped in silence.
        anova: where the differences come from; None with one question.
        notes: what to keep in mind.
    """

    judges: tuple[str, ...]
    questions: int
    cuts: tuple[float, ...]
    mean: float
    median: float
    sd: float
    error: float
    low: float
    high: float
    far_off: tuple[str, ...]
    anova: Anova | None
    notes: tuple[Note, ...]

    @property
    def cut(self) -> int:
        """The cut in whole points, rounded UP: a paper that bears on safety gives no half point away."""
        return int(whole_up(self.mean))

    def moved(self, errors: float) -> int:
        """The cut moved by so many standard errors, rounded up: only by a policy written down before results are seen.

        Args:
            errors: usually -1 to 1.
        """
        return int(min(self.questions, max(1.0, whole_up(self.mean + errors * self.error))))


def angoff(judges: Sequence[str], percents: ArrayLike, confidence: float = 0.95) -> Round:
    """One round: judge's cut = sum of percents / 100; panel's cut = mean; SE = SD(J - 1) / √J.

    Args:
        judges: names, a row each.
        percents: 0 to 100, a row for each judge and a column for each question, nothing missing.
        confidence: of the interval.

    Raises:
        NoAnswerError: fewer than two judges, no question, or a percent outside 0 to 100.
    """
    shares = np.asarray(percents, dtype=np.float64) / 100
    if len(judges) < 2:
        raise NoAnswerError("one_judge")
    if not shares.size or not ((shares >= 0) & (shares <= 1)).all():
        raise NoAnswerError("percent_outside")
    cuts = shares.sum(axis=1)
    count = len(judges)
    mean, sd = float(cuts.mean()), float(cuts.std(ddof=1))
    error = sd / math.sqrt(count)
    half = float(stdtrit(count - 1, 0.5 + confidence / 2)) * error
    far = tuple(name for name, place in zip(judges, range(count), strict=True) if _is_far(cuts, place))
    notes = []
    if count < ENOUGH_JUDGES:
        notes.append(note("too_few_judges" if count < FEWEST_JUDGES else "few_judges", count=count))
    notes += [note("judge_far_off", judge=name) for name in far]
    return Round(
        tuple(judges), shares.shape[1], tuple(map(float, cuts)), mean, float(np.median(cuts)), sd, error,
        mean - half, mean + half, far, _anova(shares), tuple(notes),
    )  # fmt: skip


def _is_far(cuts: np.ndarray, place: int) -> bool:
    """Whether one cut lies far from the others; with two judges nobody can say which of them is off."""
    others = np.delete(cuts, place)
    if len(others) < 2:
        return False
    return bool(abs(cuts[place] - others.mean()) > FAR_OFF * others.std(ddof=1) + 1e-9)


def _anova(shares: np.ndarray) -> Anova | None:
    count, questions = shares.shape
    if questions < 2:
        return None
    by_judge, by_question, mean = shares.mean(axis=1), shares.mean(axis=0), shares.mean()
    judges = questions * float(((by_judge - mean) ** 2).sum()) / (count - 1)
    items = count * float(((by_question - mean) ** 2).sum()) / (questions - 1)
    left = shares - by_judge[:, None] - by_question[None, :] + mean
    rest = float((left**2).sum()) / ((count - 1) * (questions - 1))
    return Anova(judges, items, rest, (judges - rest) / questions)
