"""The cut of a practical out of what the examiner saw: points on the checklist beside one rating of the whole.

The rating is given apart from the points: 1 clear fail, 2 borderline, 3 pass, 4 good, 5 very good.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from generator.assessment.notes import NoAnswerError, Note, note
from generator.formula import whole_up

BORDERLINE = 2
RATINGS = range(1, 6)
LEAST_R2 = 0.4
"""Below this the rating explains too little of the points for a cut to be read off."""
ENOUGH_BORDERLINE = 5


@dataclass(frozen=True, slots=True)
class Group:
    """The cut by the borderline group: the points of those rated 2."""

    count: int
    mean: float
    median: float
    notes: tuple[Note, ...]

    @property
    def cut(self) -> int:
        """Whole points, rounded up."""
        return int(whole_up(self.mean))


@dataclass(frozen=True, slots=True)
class Regression:
    """The cut by borderline regression: points = intercept + slope x rating, read off at 2.

    Args:
        count: people.
        slope: points for one step of rating.
        intercept: points at rating 0.
        r2: share of the points' spread that the rating explains, 0 to 1.
        mse: mean square of what is left, divided by n - 2.
        value: the cut, points, not rounded.
        error: its standard error, points.
        notes: what to keep in mind.
    """

    count: int
    slope: float
    intercept: float
    r2: float
    mse: float
    value: float
    error: float
    notes: tuple[Note, ...]

    @property
    def cut(self) -> int:
        """Whole points, rounded up."""
        return int(whole_up(self.value))


def borderline_group(ratings: ArrayLike, points: ArrayLike) -> Group:
    """Mean and median points of those rated borderline.

    Args:
        ratings: 1 to 5.
        points: on the checklist.

    Raises:
        NoAnswerError: nobody is rated 2.
    """
    g, x = np.asarray(ratings), np.asarray(points, dtype=np.float64)
    found = x[g == BORDERLINE]
    if not len(found):
        raise NoAnswerError("nobody_borderline")
    notes = (note("few_borderline", count=len(found)),) if len(found) < ENOUGH_BORDERLINE else ()
    return Group(len(found), float(found.mean()), float(np.median(found)), notes)


def borderline_regression(ratings: ArrayLike, points: ArrayLike) -> Regression:
    """The cut read off a straight line at rating 2: uses everyone, so it is better where few are borderline.

    SE = √(MSE (1/n + (2 - mean rating)² / sum of (rating - mean)²)).

    Args:
        ratings: 1 to 5.
        points: on the checklist.

    Raises:
        NoAnswerError: fewer than three people; all rated alike; nobody rated 1 or 2; the slope is not above 0; R² is
            below 0.4.
    """
    g, x = np.asarray(ratings, dtype=np.float64), np.asarray(points, dtype=np.float64)
    count = len(g)
    if count < 3:
        raise NoAnswerError("too_few_rated", count=count)
    if not (g <= BORDERLINE).any():
        raise NoAnswerError("nobody_weak")
    spread = float(((g - g.mean()) ** 2).sum())
    if spread == 0:
        raise NoAnswerError("all_rated_alike")
    slope = float((g - g.mean()) @ (x - x.mean())) / spread
    if slope <= 0:
        raise NoAnswerError("slope_not_up")
    intercept = float(x.mean() - slope * g.mean())
    left = float(((x - intercept - slope * g) ** 2).sum())
    r2 = 1 - left / float(((x - x.mean()) ** 2).sum())
    if r2 < LEAST_R2:
        raise NoAnswerError("rating_explains_little", share=int(100 * max(0.0, r2)))
    mse = left / (count - 2)
    error = math.sqrt(mse * (1 / count + (BORDERLINE - float(g.mean())) ** 2 / spread))
    notes = []
    if count < 10:
        notes.append(note("few_rated", count=count))
    return Regression(count, slope, intercept, r2, mse, intercept + slope * BORDERLINE, error, tuple(notes))
