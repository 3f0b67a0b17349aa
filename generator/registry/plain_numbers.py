"""Typed answers as numbers, many at once: a hundred thousand papers have millions of them, mostly plain ones."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeAlias

import numpy as np
import numpy.typing as npt

EMPTY, OTHER = -1.0, -2.0
"""What stands for nothing typed, and for all that is no plain number; a plain number is never below zero."""

_WHOLE, _AFTER = 12, 6
"""Most digits before and behind the point."""
_BETWEEN = "\x1f"
_EXACT = 15
"""Digits that a float holds whatever they are: then one division by a power of ten rounds as reading the text does."""
_TENS = 10 ** np.arange(19, dtype=np.int64)


Counts: TypeAlias = npt.NDArray[np.int64]


def plain_numbers(answers: Sequence[str]) -> npt.NDArray[np.float64]:
    """Each answer as the number that it is, to the bit what `float` says.

    A plain number is 1 to 12 digits, and perhaps a point and 1 to 6 more: it has one reading, whoever typed it, in
    whatever unit but feet.

    Args:
        answers: as typed, without spaces at their ends.

    Returns:
        Numbers from 0; `EMPTY` and `OTHER` for what is none.

    Example:
        >>> plain_numbers(["45", "0.25", "", "about 3"]).tolist()
        [45.0, 0.25, -1.0, -2.0]
    """
    if not answers:
        return np.zeros(0)
    text = _BETWEEN.join(answers)
    if text.count(_BETWEEN) >= len(answers):
        text = _BETWEEN.join(answer.replace(_BETWEEN, "?") for answer in answers)
    signs = np.frombuffer(text.encode("ascii", "replace"), np.uint8)
    breaks = np.flatnonzero(signs == ord(_BETWEEN))
    starts, ends = np.append(0, breaks + 1), np.append(breaks, len(signs))
    digits = signs - np.uint8(ord("0"))  # other signs wrap to more than nine
    is_digit = digits < 10
    before = np.append(0, np.cumsum(is_digit))
    count = before[ends] - before[starts]
    points, after = _points(signs, starts, ends)
    good = (count + points == ends - starts) & (points <= 1) & (count > after) & (count - after <= _WHOLE)
    good &= (after <= _AFTER) & ((points == 0) | (after >= 1))
    value = _mantissa(digits[is_digit], before[ends], count) / _TENS[np.where(good, after, 0)]
    found = np.where(good, value, np.where(starts == ends, EMPTY, OTHER))
    for place in np.flatnonzero(good & (count > _EXACT)).tolist():
        found[place] = float(answers[place])
    return found


def _points(signs: npt.NDArray[np.uint8], starts: Counts, ends: Counts) -> tuple[Counts, Counts]:
    """How many decimal points each answer has, and how many signs follow the last of them."""
    places = np.flatnonzero(signs == ord("."))
    owner = np.searchsorted(starts, places, "right") - 1
    after = np.zeros(len(starts), np.int64)
    after[owner] = ends[owner] - places - 1
    return np.bincount(owner, minlength=len(starts)), after


def _mantissa(digits: npt.NDArray[np.uint8], last: Counts, count: Counts) -> Counts:
    """The digits of each answer as one whole number; of more than eighteen it is not to be used.

    Sums run over all answers and may wrap; their differences are right all the same.
    """
    power = np.repeat(last, count) - np.arange(1, len(digits) + 1)
    sums = np.append(0, np.cumsum(digits * _TENS[np.minimum(power, 18)]))
    return np.asarray(sums[last] - sums[last - count], np.int64)
