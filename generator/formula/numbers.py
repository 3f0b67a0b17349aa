"""Rounding, whole numbers and tables: one policy for every number that a person sees.

The same functions exist in `formula.js`; tests hold the two together. Python's `round`, f-string digits and
JavaScript's `toFixed` are never used for a number that is shown: they disagree with each other and with what is taught
at school.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from decimal import ROUND_HALF_UP, Context, Decimal

GUARD_DIGITS = 2
"""Decimals kept beyond the declared places in a worked line, so that a learner's calculator agrees with the result."""
_EDGE = 1e-9
"""A hair of floating point is not a reason to buy one more bag; suits counts below about a million."""
_READ = Context(prec=12, rounding=ROUND_HALF_UP)
"""Reads a float to 12 significant digits, halves up: what JavaScript's `toExponential(11)` does."""
_PRINT = Context(prec=400, rounding=ROUND_HALF_UP)
"""Room for the longest float."""


def show(value: float, places: int) -> str:
    """A number as it is printed: rounded half up on its decimal text, with no grouping and no minus zero.

    The value is first read to 12 significant digits, so that 1.005 is the 1.005 that a person typed and not the nearest
    binary fraction below it.

    Args:
        value: any finite number.
        places: decimals to print, 0 to 9.

    Raises:
        ValueError: the value is not finite.

    Example:
        >>> show(1.005, 2), show(2.675, 2), show(-0.004, 2), show(15.0, 0)
        ('1.01', '2.68', '0.00', '15')
    """
    if not math.isfinite(value):
        raise ValueError(f"{value} cannot be shown")
    rounded = _READ.create_decimal_from_float(float(value)).quantize(Decimal(1).scaleb(-places), context=_PRINT)
    text = f"{rounded:f}"
    return text[1:] if text.startswith("-") and not rounded else text


def show_full(value: float) -> str:
    """The shortest plain decimal text of a number as it was given: `1.4`, `0.125`, `12`.

    Example:
        >>> show_full(1.4), show_full(12.0), show_full(0.1 + 0.2), show_full(-0.0)
        ('1.4', '12', '0.3', '0')
    """
    if not math.isfinite(value):
        raise ValueError(f"{value} cannot be shown")
    text = f"{_READ.create_decimal_from_float(float(value)):f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text in ("-0", "") else text


def guarded(value: float, places: int) -> str:
    """A value on its way to a result: some decimals more than the result has, but no zeros that say nothing.

    Example:
        >>> guarded(2.8, 2), guarded(450.0, 1), guarded(2 / 3, 1)
        ('2.8', '450', '0.667')
    """
    return show_full(float(show(value, places + GUARD_DIGITS)))


def whole_up(x: float) -> float:
    """Next whole number; a hair above a whole number still counts as that number.

    Example:
        >>> whole_up(2.1 / 0.3), whole_up(7.2)
        (7.0, 8.0)
    """
    return float(math.ceil(x - _EDGE))


def whole_down(x: float) -> float:
    """Last whole number; a hair below a whole number counts as that number.

    Example:
        >>> whole_down(0.6 / 0.1), whole_down(6.9)
        (6.0, 6.0)
    """
    return float(math.floor(x + _EDGE))


def interpolate(x: float, xs: Sequence[float], ys: Sequence[float]) -> float:
    """Straight line between the points of a table; the ends hold their value outside it.

    Args:
        x: where to read.
        xs: rising arguments of the table.
        ys: values, as many as `xs`.

    Example:
        >>> interpolate(1.5, (1, 2, 3), (10, 20, 40))
        15.0
    """
    if x <= xs[0]:
        return float(ys[0])
    for left, right, low, high in zip(xs, xs[1:], ys, ys[1:], strict=False):
        if x <= right:
            return float(low + (high - low) * ((x - left) / (right - left)))
    return float(ys[-1])


def pick(index: float, table: Sequence[float]) -> float:
    """Row of a table by its number, counted from 0; the ends hold outside it.

    Example:
        >>> pick(1, (10, 20, 30)), pick(7, (10, 20, 30))
        (20.0, 30.0)
    """
    return float(table[int(min(max(whole_down(index), 0), len(table) - 1))])
