"""Whether everybody had the same chance: numbers drawn for one person against another's, spoken against written.

Each learner has numbers of their own, so a single variant has one answer and is never judged. A template is judged by
bands of its numbers: is the upper half of the range harder than the lower?
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy.special import betaincinv, gammaln

from generator.assessment.mastery import newcombe
from generator.assessment.notes import NoAnswerError, Note, note

FEWEST_EACH = 5
UNUSUAL = 0.05
_HAIR = 1e-7


@dataclass(frozen=True, slots=True)
class Comparison:
    """Two groups and one question.

    Args:
        right: right answers of the first and the second group.
        asked: answers of each.
        difference: share right of the first less the second.
        low: lower end of Newcombe's 95 % interval of it.
        high: its upper end.
        p: chance of a difference at least as unlikely where both are as good (Fisher, two-sided).
        notes: what to keep in mind.
    """

    right: tuple[int, int]
    asked: tuple[int, int]
    difference: float
    low: float
    high: float
    p: float
    notes: tuple[Note, ...]


def compare(right: Sequence[int], asked: Sequence[int]) -> Comparison:
    """Compare the shares of two groups.

    Args:
        right: right answers of each.
        asked: answers of each, at least 1.

    Raises:
        NoAnswerError: a group without answers.
        ValueError: more right than asked.
    """
    if min(asked) < 1:
        raise NoAnswerError("group_too_small", count=0)
    p = fisher(right[0], asked[0] - right[0], right[1], asked[1] - right[1])
    low, high = newcombe(right, asked)
    notes = (note("small_groups", count=min(asked)),) if min(asked) < FEWEST_EACH else ()
    return Comparison(
        (right[0], right[1]), (asked[0], asked[1]), right[0] / asked[0] - right[1] / asked[1], low, high, p, notes
    )


def fisher(a: int, b: int, c: int, d: int) -> float:
    """Fisher's exact test of the table [[a, b], [c, d]], two-sided.

    The chances of all tables with the same margins that are at most as likely as this one, added up. Source: Fisher
    1935.

    Example:
        >>> fisher(3, 1, 1, 3)
        0.485714
    """
    if min(a, b, c, d) < 0:
        raise ValueError(f"counts below 0: {a}, {b}, {c}, {d}")
    first, second, right = a + b, c + d, a + c
    x = np.arange(max(0, right - second), min(first, right) + 1)
    chances = np.exp(_ways(first, x) + _ways(second, right - x) - _ways(first + second, np.asarray(right)))
    own = chances[a - x[0]]
    return float(min(1.0, chances[chances <= own * (1 + _HAIR)].sum()))


def _ways(of: int, take: NDArray[np.int_]) -> NDArray[np.float64]:
    found: NDArray[np.float64] = gammaln(of + 1) - gammaln(take + 1) - gammaln(of - take + 1)
    return found


def adjusted(values: Sequence[float]) -> tuple[float, ...]:
    """Chances of several tests, made larger so that one fluke among many does not count (Holm 1979).

    Example:
        >>> adjusted([0.01, 0.04, 0.03])
        (0.03, 0.06, 0.06)
    """
    order = sorted(range(len(values)), key=lambda i: values[i])
    found, largest = [0.0] * len(values), 0.0
    for place, i in enumerate(order):
        largest = max(largest, min(1.0, (len(values) - place) * values[i]))
        found[i] = largest
    return tuple(found)


@dataclass(frozen=True, slots=True)
class Shrunk:
    """One band's share, drawn towards the template's own where the band has few answers.

    Args:
        right: right answers.
        asked: answers.
        share: expected share right.
        low: the share is below this with a chance of 5 %.
        high: the share is above this with a chance of 5 %.
    """

    right: int
    asked: int
    share: float
    low: float
    high: float


def shrunk_shares(right: ArrayLike, asked: ArrayLike) -> tuple[Shrunk, ...]:
    """Shares of bands of one template, each Beta(m s + x, (1 - m) s + n - x) with m the mean of all.

    s = m (1 - m) / t - 1, with t the spread between bands beyond what chance gives (moments; Kleinman 1973). Where
    there is no such spread, all bands share one number: s is then as large as all the answers together times ten.

    Args:
        right: right answers of each band.
        asked: answers of each band.

    Raises:
        NoAnswerError: no answers at all.
    """
    x, n = np.asarray(right, dtype=np.float64), np.asarray(asked, dtype=np.float64)
    whole = float(n.sum())
    if whole == 0:
        raise NoAnswerError("no_answers")
    mean = float(x.sum()) / whole
    mean = min(max(mean, 0.5 / (whole + 1)), 1 - 0.5 / (whole + 1))
    size = 10 * whole
    used = n > 0
    bands = int(used.sum())
    if bands > 1:
        shares = x[used] / n[used]
        between = float((n[used] * (shares - mean) ** 2).sum())
        noise = mean * (1 - mean)
        freedom = whole - float((n[used] ** 2).sum()) / whole
        spread = (between - (bands - 1) * noise) / (freedom - (bands - 1)) if freedom > bands - 1 else 0.0
        if spread > 0:
            size = min(size, max(1.0, noise / min(spread, noise / 2) - 1))
    found = []
    for hits, count in zip(x, n, strict=True):
        a, b = mean * size + hits, (1 - mean) * size + count - hits
        low, high = (float(betaincinv(a, b, share)) for share in (0.05, 0.95))
        found.append(Shrunk(int(hits), int(count), a / (a + b), low, high))
    return tuple(found)


def spread_of_papers(item_sd: float, questions: int) -> float:
    """Spread of the points that variants alone add: d √k, where variants of a question differ in easiness with SD d.

    Args:
        item_sd: 0 to 0.5.
        questions: on the paper.

    Example:
        >>> spread_of_papers(0.05, 20), spread_of_papers(0.10, 40)
        (0.224, 0.632)
    """
    return item_sd * math.sqrt(questions)
