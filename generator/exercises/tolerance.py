"""How far off an answer may be and still be right: `exact`, `within 2 %` or `within 5 mm`."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from generator.exercises.units import BY_NAME, converted
from generator.formula import Given, Quantity

_WITHIN = re.compile(r"within ([0-9]+(?:\.[0-9]+)?) ?(.+)")
HAIR = 1e-9
"""Part of a number that floating point may add or take without anyone having made a mistake."""


@dataclass(frozen=True, slots=True)
class Tolerance:
    """The larger of an absolute amount and a share of the value.

    Args:
        absolute: in the unit of the answer, 0 or more.
        relative: share of the value, 0 to 1.
    """

    absolute: float
    relative: float

    def fits(self, answer: float, value: float) -> bool:
        """Whether an answer counts as this value."""
        return abs(answer - value) <= self.around(value)

    def around(self, value: float) -> float:
        """How far from a value an answer may be."""
        size = abs(value)
        return max(self.absolute, self.relative * size) * (1 + HAIR) + HAIR * size

    def tells_apart(self, one: float, other: float) -> bool:
        """Whether two values lie more than twice the tolerance apart, so that no answer can count as both."""
        size = max(abs(one), abs(other))
        return abs(one - other) > 2 * max(self.absolute, self.relative * size) * (1 + HAIR) + 2 * HAIR * size


def is_count(entry: Given | Quantity) -> bool:
    """Whether a value is a number of things: marked exactly, and rounded by its formula and not by the reader."""
    unit = BY_NAME.get(entry.unit)
    return isinstance(entry, Quantity) and entry.places == 0 and unit is not None and unit.kind == "count"


def tolerance_of(answer: str, quantity: Quantity) -> Tolerance:
    """Read the `answer` line of a question.

    Args:
        answer: `exact`: a count exactly, any other number to half a unit of the last decimal that its quantity prints;
            `within 2 %`; `within 5 mm`, in a unit of the same kind as the quantity's.
        quantity: what is asked for.

    Raises:
        ValueError: the line is neither; the message says what it may be.
    """
    if answer == "exact":
        return Tolerance(0.0 if is_count(quantity) else 0.5 * math.pow(10, -quantity.places), 0.0)
    found = _WITHIN.fullmatch(answer)
    if found is None:
        raise ValueError(f"'{answer}' is neither 'exact' nor 'within 2 %' nor 'within 5 {quantity.unit or 'mm'}'")
    amount, unit = float(found[1]), found[2]
    if amount <= 0:
        raise ValueError(f"'{answer}' leaves no room; write 'exact'")
    if unit == "%":
        if amount > 25:
            raise ValueError(f"'{answer}' is wider than 25 %: it could not tell a mistake from the right answer")
        return Tolerance(0.0, amount / 100)
    absolute = converted(amount, unit, quantity.unit)
    if absolute is None:
        raise ValueError(f"'{answer}': '{unit}' is not a unit of the same kind as '{quantity.unit}'")
    return Tolerance(absolute, 0.0)
