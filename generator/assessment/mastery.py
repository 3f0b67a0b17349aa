"""What a few right answers say about a share: Wilson's interval, and the chance that a skill is there."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy.special import betainc, betaincinv, ndtri

Floats = NDArray[np.float64]


def wilson(right: ArrayLike, asked: ArrayLike, confidence: float = 0.95) -> tuple[Floats, Floats]:
    """The interval of a share: centre (x + z²/2) / (n + z²), half width z √(x (n - x)/n + z²/4) / (n + z²).

    Never outside 0 to 1, and sensible at 0 of n and n of n. Source: E. B. Wilson 1927, as in Newcombe 1998.

    Args:
        right: counts, 0 to `asked`.
        asked: counts; where it is 0 nothing is known, and the interval is 0 to 1.
        confidence: above 0, below 1.

    Example:
        >>> low, high = wilson(81, 263)
        >>> float(low), float(high)
        (0.2553, 0.3662)
    """
    z = ndtri(0.5 + confidence / 2)
    x, n = np.asarray(right, dtype=np.float64), np.asarray(asked, dtype=np.float64)
    whole = n + z * z
    centre = (x + z * z / 2) / whole
    half = z / whole * np.sqrt(np.maximum(x * (n - x) / np.maximum(n, 1), 0) + z * z / 4)
    return np.clip(centre - half, 0, 1), np.clip(centre + half, 0, 1)


@dataclass(frozen=True, slots=True)
class Mastery:
    """What is known about a skill after some answers.

    Args:
        mean: expected share of right answers.
        sure: chance that the share is at least the wanted one.
        low: the share is below this with a chance of 5 %.
        high: the share is above this with a chance of 5 %.
    """

    mean: float
    sure: float
    low: float
    high: float


def mastery(right: int, asked: int, wanted: float) -> Mastery:
    """A skill by its Beta(1 + x, 1 + n - x): every share was as likely as another before the first answer.

    Args:
        right: right answers, 0 to `asked`.
        asked: questions, at least 0.
        wanted: share wanted, 0 to 1.

    Raises:
        ValueError: counts that can't be.

    Example:
        >>> mastery(8, 10, 0.7).sure
        0.6873
    """
    if not 0 <= right <= asked:
        raise ValueError(f"{right} right of {asked}")
    a, b = 1.0 + right, 1.0 + asked - right
    low, high = (float(betaincinv(a, b, share)) for share in (0.05, 0.95))
    return Mastery(a / (a + b), float(1 - betainc(a, b, wanted)), low, high)


def fewest_right(asked: int, wanted: float, sure: float) -> int | None:
    """The fewest right answers that make a share as sure as wanted; None where not even all of them do.

    Example:
        >>> fewest_right(20, 0.8, 0.8), fewest_right(5, 0.8, 0.8)
        (18, None)
    """
    found = (right for right in range(asked + 1) if mastery(right, asked, wanted).sure >= sure)
    return next(found, None)


def without_guessing(right_share: float, options: int) -> float:
    """The share that was known where the rest was guessed: (p - 1/m) / (1 - 1/m), at least 0.

    Only a note beside a picked answer, never a mark: nobody knows who guessed.

    Args:
        right_share: 0 to 1.
        options: that could be picked, at least 2.
    """
    return max(0.0, (right_share - 1 / options) / (1 - 1 / options))


def newcombe(right: Sequence[int], asked: Sequence[int], confidence: float = 0.95) -> tuple[float, float]:
    """The interval of a difference of two shares, first less second, out of their two Wilson intervals.

    Source: Newcombe 1998, method 10.

    Example:
        >>> newcombe((56, 48), (70, 80))
        (0.0524, 0.3339)
    """
    low, high = wilson(right, asked, confidence)
    first, second = right[0] / asked[0], right[1] / asked[1]
    down = math.hypot(first - low[0], high[1] - second)
    up = math.hypot(high[0] - first, second - low[1])
    return first - second - down, first - second + up
