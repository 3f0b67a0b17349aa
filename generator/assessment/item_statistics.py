"""Each question of a paper: how hard it is, and whether it tells those who can from those who can't."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from generator.assessment.mastery import wilson
from generator.assessment.notes import NoAnswerError, Note, few_people

Floats = NDArray[np.float64]
UPPER_SHARE = 0.27
"""Share of learners in the upper and in the lower group (Kelley 1939)."""
_HAIR = 1e-12


@dataclass(frozen=True, eq=False)
class ItemStatistics:
    """Numbers of every question, in the order of the columns; not a number where a statistic is not defined.

    Args:
        people: learners.
        difficulty: mean points over the most points, 0 to 1: high is easy.
        low: lower end of Wilson's 95 % interval of the difficulty; only for questions marked right or not.
        high: its upper end.
        item_total: correlation with the whole paper, -1 to 1; too high, since the question is part of the paper.
        item_rest: correlation with the rest of the paper: the one to use.
        group: learners in the upper and in the lower group.
        upper: mean points of the upper group over the most points.
        lower: of the lower group.
        totals: points of each learner.
        variances: of every question, divided by n.
        notes: what to keep in mind.
    """

    people: int
    difficulty: Floats
    low: Floats
    high: Floats
    item_total: Floats
    item_rest: Floats
    group: int
    upper: Floats
    lower: Floats
    totals: Floats
    variances: Floats
    notes: tuple[Note, ...]

    @property
    def discrimination(self) -> Floats:
        """Upper less lower group, -1 to 1."""
        return self.upper - self.lower


def item_statistics(points: ArrayLike, most: ArrayLike = 1.0) -> ItemStatistics:
    """The statistics of every question.

    Difficulty p = mean(x) / most. Item-total r = corr(x, X); item-rest r = corr(x, X - x), not defined (and not 0)
    where the question or the rest has no spread. The groups have g = round(0.27 n) learners, at least 1; learners
    with the same points at the edge of a group share its last places, so that the order of the list never counts.

    Args:
        points: a row for each learner and a column for each question, nothing missing.
        most: points that a question can give; one number, or one for each question.

    Raises:
        NoAnswerError: no learner, or no question.

    Example:
        >>> found = item_statistics([[1, 1, 0], [1, 0, 0], [0, 1, 0], [1, 1, 0]])
        >>> found.difficulty
        array([0.75, 0.75, 0. ])
    """
    x = np.asarray(points)
    x = x if x.dtype == np.float64 else x.astype(np.float64)
    people, count = x.shape
    if not people or not count:
        raise NoAnswerError("no_answers")
    top = np.broadcast_to(np.asarray(most, dtype=np.float64), (count,))
    totals = x.sum(axis=1)
    group = max(1, int(np.floor(UPPER_SHARE * people + 0.5)))
    ordered = np.sort(totals)
    centred = totals - totals.mean()
    sums = x.T @ np.stack(
        [
            np.ones(people),
            centred,
            _shares(totals, ordered[-group], group),
            _shares(-totals, -ordered[group - 1], group),
        ],
        axis=1,
    )
    squares = np.einsum("ij,ij->j", x, x)
    mean, cov = sums[:, 0] / people, sums[:, 1] / people
    variances = np.maximum(squares / people - mean * mean, 0.0)
    variances[variances < _HAIR * np.maximum(squares / people, 1.0)] = 0.0
    whole = float(centred @ centred) / people
    rest = np.maximum(whole - 2 * cov + variances, 0.0)
    rest[rest < _HAIR * max(whole, 1.0)] = 0.0
    low, high = wilson(sums[:, 0], people)
    dichotomous = (squares == sums[:, 0]) & (top == 1)
    unclear = np.where(dichotomous, 0.0, np.nan)
    return ItemStatistics(
        people,
        mean / top,
        low + unclear,
        high + unclear,
        _ratio(cov, variances * whole),
        _ratio(cov - variances, variances * rest),
        group,
        sums[:, 2] / (group * top),
        sums[:, 3] / (group * top),
        totals,
        variances,
        few_people(people),
    )


def _shares(values: Floats, edge: float, group: int) -> Floats:
    """1 for each learner above the edge; those on it share the places that are left."""
    above, on = values > edge, values == edge
    weights = above.astype(np.float64)
    weights[on] = (group - np.count_nonzero(above)) / np.count_nonzero(on)
    return weights


def _ratio(covariance: Floats, product: Floats) -> Floats:
    """Covariance over the root of two variances' product; not a number where one of them is 0."""
    found: Floats = np.full(covariance.shape, np.nan)
    np.divide(covariance, np.sqrt(product), out=found, where=product > 0)
    return found
