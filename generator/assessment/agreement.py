"""Whether two observers with one checklist see the same.

Percent agreement is always shown. Cohen's kappa falls to nothing when nearly everything is "done", although the
observers agree; Gwet's AC1 does not, so it is the one to go by here.
"""

from __future__ import annotations

import math
from collections.abc import Hashable, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from generator.assessment.notes import NoAnswerError, Note, note

Floats = NDArray[np.float64]
GO_ON = 0.60
"""Least AC1 to go on with these observers; policy of this course."""
GO_ON_CRITICAL = 0.90
"""Least share of agreement on each critical step; policy of this course."""
JOINT_LEAST, JOINT_SHARE = 10, 0.30
"""How many candidates two observers should watch together: at least 10, or 30 % of them."""


@dataclass(frozen=True, slots=True)
class Agreement:
    """How far observers agree.

    Args:
        units: things seen by at least one observer.
        pairs: of them, seen by at least two.
        percent: share of pairs of observers that say the same, 0 to 1.
        ac1: Gwet's AC1, -1 to 1.
        error: its standard error over the things seen.
        fleiss: Fleiss's kappa; not a number where everybody always says the same.
        brennan_prediger: with the chance of 1 in the number of categories.
        krippendorff: alpha for names; not a number where everybody always says the same.
        notes: what to keep in mind.
    """

    units: int
    pairs: int
    percent: float
    ac1: float
    error: float
    fleiss: float
    brennan_prediger: float
    krippendorff: float
    notes: tuple[Note, ...]


def agreement(ratings: Sequence[Sequence[Hashable | None]], categories: Sequence[Hashable] = ()) -> Agreement:
    """Agreement of any number of observers, with gaps.

    Args:
        ratings: a row for each thing seen and a column for each observer; None where one did not look.
        categories: all that could be said; those of the ratings if nothing is given.

    Raises:
        NoAnswerError: nothing was seen by two observers, or only one thing could be said.
    """
    names = list(dict.fromkeys([*categories, *(cell for row in ratings for cell in row if cell is not None)]))
    place = {name: i for i, name in enumerate(names)}
    counts = np.zeros((len(ratings), len(names)))
    for number, row in enumerate(ratings):
        for cell in row:
            if cell is not None:
                counts[number, place[cell]] += 1
    return agreement_of_counts(counts)


def agreement_of_counts(counts: ArrayLike) -> Agreement:
    """Agreement where it is only known how many observers said what.

    pa averages the things seen by two or more; pj averages the shares of each thing seen at all. AC1 =
    (pa - pe)/(1 - pe) with pe = sum of pj (1 - pj) / (q - 1). Source: Gwet 2008, with gaps as in his handbook.

    Args:
        counts: a row for each thing and a column for each category.

    Raises:
        NoAnswerError: nothing was seen by two observers, or there is only one category.
    """
    table = np.asarray(counts, dtype=np.float64)
    table = table[table.sum(axis=1) > 0]
    units, categories = table.shape
    if categories < 2:
        raise NoAnswerError("one_category")
    seen = table.sum(axis=1)
    double = seen >= 2
    pairs = int(double.sum())
    if not pairs:
        raise NoAnswerError("nothing_seen_twice")
    same = np.zeros(units)
    same[double] = (table * (table - 1)).sum(axis=1)[double] / (seen * (seen - 1))[double]
    percent = float(same[double].mean())
    shares = (table / seen[:, None]).mean(axis=0)
    chance = float((shares * (1 - shares)).sum()) / (categories - 1)
    ac1 = (percent - chance) / (1 - chance)
    error = _error(table, seen, same, double, shares, chance, ac1)
    notes = [note("few_seen_together", count=pairs)] if pairs < JOINT_LEAST else []
    return Agreement(
        units, pairs, percent, ac1, error,
        _beyond(percent, float((shares**2).sum())),
        _beyond(percent, 1 / categories),
        _krippendorff(table[double], seen[double]),
        tuple(notes),
    )  # fmt: skip


def _beyond(found: float, chance: float) -> float:
    return (found - chance) / (1 - chance) if 1 - chance > 1e-12 else math.nan


def _error(
    table: Floats, seen: Floats, same: Floats, double: NDArray[np.bool_], shares: Floats, chance: float, ac1: float
) -> float:
    """Standard error of AC1 over things seen (Gwet 2008, linearised); not a number with one thing."""
    units, categories = table.shape
    if units < 2:
        return math.nan
    own = (units / double.sum()) * (same - chance * double) / (1 - chance)
    by_chance = (table @ (1 - shares)) / seen / (categories - 1)
    each = own - 2 * (1 - ac1) * (by_chance - chance) / (1 - chance)
    return math.sqrt(float(((each - ac1) ** 2).sum()) / (units * (units - 1)))


def _krippendorff(table: Floats, seen: Floats) -> float:
    """Alpha for names, over the things seen by two or more. Source: Krippendorff 2011."""
    whole = float(seen.sum())
    sums = table.sum(axis=0)
    observed = float(((table * (seen[:, None] - table)).sum(axis=1) / (seen - 1)).sum()) / whole
    expected = float((sums * (whole - sums)).sum()) / (whole * (whole - 1))
    return 1 - observed / expected if expected > 0 else math.nan


def cohen(table: ArrayLike, weights: ArrayLike | None = None) -> float:
    """Cohen's kappa of two observers: 1 - disagreement seen / disagreement by chance (1960; weighted, 1968).

    Args:
        table: counts or shares; rows by the first observer, columns by the second.
        weights: of disagreement, 0 on the diagonal; 1 beside it if nothing is given.

    Raises:
        NoAnswerError: both said one and the same thing throughout: there is nothing to be above chance of.

    Example:
        >>> cohen([[20, 5], [10, 15]]), cohen([[118, 5], [2, 0]])
        (0.40, -0.023392)
    """
    shares = np.asarray(table, dtype=np.float64)
    shares = shares / shares.sum()
    apart = 1 - np.eye(len(shares)) if weights is None else np.asarray(weights, dtype=np.float64)
    chance = float((apart * np.outer(shares.sum(axis=1), shares.sum(axis=0))).sum())
    if chance <= 1e-12:
        raise NoAnswerError("always_the_same")
    return 1 - float((apart * shares).sum()) / chance


def joint_candidates(candidates: int) -> int:
    """How many of a cohort two observers should watch together: at least 10, or 30 % if that is more; never over all.

    Example:
        >>> joint_candidates(8), joint_candidates(20), joint_candidates(50)
        (8, 10, 15)
    """
    return min(candidates, max(JOINT_LEAST, math.ceil(JOINT_SHARE * candidates - 1e-9)))


@dataclass(frozen=True, slots=True)
class Icc:
    """Intraclass correlations of Shrout and Fleiss 1979.

    One observer, or the mean of all k: `one` for observers of whom each saw other people, `random` for any observers,
    `fixed` for just these. If a single examiner decides alone, `random` is the one that counts.
    """

    one: float
    random: float
    fixed: float
    one_mean: float
    random_mean: float
    fixed_mean: float


def icc(ratings: ArrayLike) -> Icc:
    """Agreement of ratings in numbers, as shares of variance; may be below 0.

    Args:
        ratings: a row for each person rated and a column for each observer, nothing missing.

    Raises:
        NoAnswerError: fewer than two people or observers, or no spread at all.
    """
    x = np.asarray(ratings, dtype=np.float64)
    people, observers = x.shape
    if min(people, observers) < 2:
        raise NoAnswerError("one_person")
    mean = x.mean()
    if float(((x - mean) ** 2).sum()) <= 1e-12:
        raise NoAnswerError("no_spread")
    rows = observers * float(((x.mean(axis=1) - mean) ** 2).sum()) / (people - 1)
    columns = people * float(((x.mean(axis=0) - mean) ** 2).sum()) / (observers - 1)
    inside = float(((x - x.mean(axis=1, keepdims=True)) ** 2).sum()) / (people * (observers - 1))
    rest = (inside * people * (observers - 1) - columns * (observers - 1)) / ((people - 1) * (observers - 1))
    k, n = observers, people
    return Icc(
        _share(rows - inside, rows + (k - 1) * inside),
        _share(rows - rest, rows + (k - 1) * rest + k * (columns - rest) / n),
        _share(rows - rest, rows + (k - 1) * rest),
        _share(rows - inside, rows),
        _share(rows - rest, rows + (columns - rest) / n),
        _share(rows - rest, rows),
    )


def _share(part: float, whole: float) -> float:
    return part / whole if abs(whole) > 1e-12 else math.nan
