"""Maturity: how old mortar is by its warmth, from the temperatures that it has had.

Cold mortar hardens slowly: a week near freezing is not a week. The sums hold only for mortar that was wet all the time,
and only with a strength curve of its own mix; so here they may make wet curing longer and never shorter.

References:
    .. [1] Pages on ASTM C1074 (second hand): M = sum of (T - T0) x hours, nothing below T0; a worked example.
    .. [2] Equivalent age, sum of exp(-Q (1/T - 1/Ts)) x hours: the form and Q = 5000 K are from memory.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import exp, isfinite

from generator.formula import OutOfRangeError, whole_up

DATUM = 0.0
"""Degrees Celsius below which nothing hardens (worked example in print)."""
ACTIVATION = 5000.0
"""Activation energy over the gas constant, kelvin (from memory: it may only lengthen)."""
REFERENCE = 20.0
"""Degrees Celsius of the age that others are compared with."""
_KELVIN = 273.15
_HOURS_IN_DAY = 24


@dataclass(frozen=True, slots=True)
class Spell:
    """A stretch of time at one temperature.

    Args:
        hours: length, above 0.
        temperature: degrees Celsius of the mortar, -30 to 80.
    """

    hours: float
    temperature: float

    def __post_init__(self) -> None:
        """Refuse what no thermometer and no clock shows."""
        if not (isfinite(self.hours) and self.hours > 0):
            raise OutOfRangeError(f"a spell of {self.hours} hours is no time")
        if not -30 <= self.temperature <= 80:
            raise OutOfRangeError(f"{self.temperature} degrees Celsius is no mortar; was it the Fahrenheit side?")


def nurse_saul(history: Sequence[Spell], *, datum: float = DATUM) -> float:
    """Degree hours above the datum; a spell below it gives nothing and takes nothing away.

    Args:
        history: what the mortar has had, in any order.
        datum: degrees Celsius, -10 to 5.

    Raises:
        OutOfRangeError: a datum that no print gives.

    Example:
        >>> nurse_saul([Spell(12, 20), Spell(12, 25)])
        540.0
    """
    if not -10 <= datum <= 5:
        raise OutOfRangeError(f"a datum of {datum} degrees Celsius stands in no print; take -10 to 5")
    return float(sum(max(0.0, spell.temperature - datum) * spell.hours for spell in history))


def rate_factor(temperature: float, *, reference: float = REFERENCE) -> float:
    """How fast mortar hardens, against its speed at the reference temperature.

    Args:
        temperature: degrees Celsius, -30 to 80.
        reference: degrees Celsius, 15 to 25.

    Raises:
        OutOfRangeError: a temperature outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(rate_factor(10), 3), rate_factor(20)
        ('0.548', 1.0)
    """
    if not -30 <= temperature <= 80 or not 15 <= reference <= 25:
        raise OutOfRangeError(f"{temperature} degrees Celsius against {reference} is outside what mortar has")
    return exp(-ACTIVATION * (1 / (temperature + _KELVIN) - 1 / (reference + _KELVIN)))


def equivalent_age(history: Sequence[Spell], *, reference: float = REFERENCE) -> float:
    """Hours at the reference temperature that would have hardened the mortar as much. Frozen hours give nothing.

    Args:
        history: what the mortar has had, in any order.
        reference: degrees Celsius, 15 to 25.

    Raises:
        OutOfRangeError: as `rate_factor`.

    Example:
        >>> equivalent_age([Spell(24, 20), Spell(10, -3)])
        24.0
    """
    return float(
        sum(
            rate_factor(spell.temperature, reference=reference) * spell.hours
            for spell in history
            if spell.temperature > DATUM
        )
    )


def wet_days_left(planned_days: float, history: Sequence[Spell]) -> int:
    """Days of wetting that are still to come: a cold spell adds days, a warm one takes none off.

    Args:
        planned_days: the course's days of wet curing, 14 to 28; see the quantity `curing_days`.
        history: what the mortar has had since the last coat, wet all the time; if it dried once, count from then.

    Raises:
        OutOfRangeError: fewer days than the course allows.

    Example:
        >>> wet_days_left(14, [Spell(24 * 10, 34)]), wet_days_left(14, [Spell(24 * 10, 8)])
        (4, 10)
    """
    if not 14 <= planned_days <= 28:
        raise OutOfRangeError(
            f"{planned_days} days of wet curing: a tank is kept wet for 14 to 28 days; ask the trainer"
        )
    counted = sum(spell.hours * min(1.0, equivalent_age([spell]) / spell.hours) for spell in history) / _HOURS_IN_DAY
    return max(0, int(whole_up(planned_days - counted)))
