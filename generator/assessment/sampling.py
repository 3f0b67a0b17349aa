"""Checking built work by measuring some of it: how much a few readings can promise, and how much not.

Points to measure are drawn by the random sheet, never chosen by the mason or the trainer. Ten good readings say that
there is no gross fault; they don't say that 95 of 100 are good. For ordinary things the mason has the benefit of the
measurement's doubt; for what can leak, crack or hurt (cover, laps, cracks) the doubt counts against the work.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy.optimize import brentq
from scipy.special import bdtr, chdtrc, gammaln, nctdtrit, ndtr, ndtri

from generator.assessment.notes import NoAnswerError

Floats = NDArray[np.float64]


# ------------------------------------------------------------------------------------------ by attributes


def accepted(readings: int, allowed: int, bad_share: ArrayLike) -> Floats:
    """Chance to accept work of a share of bad places: sum over i <= c of C(n, i) p^i (1 - p)^(n - i).

    Args:
        readings: n, at least 1.
        allowed: c, bad readings that are still accepted, 0 to n.
        bad_share: p, 0 to 1.

    Example:
        >>> accepted(10, 0, [0.05, 0.30])
        array([0.5987, 0.0282])
    """
    found: Floats = np.asarray(bdtr(allowed, readings, np.asarray(bad_share, dtype=np.float64)))
    return found


def accepted_of_few(places: int, bad: int, readings: int, allowed: int) -> float:
    """The same where the wall has only so many places, and none is measured twice (hypergeometric).

    Args:
        places: N in the whole wall.
        bad: of them bad, 0 to N.
        readings: n, 1 to N.
        allowed: c, 0 to n.

    Raises:
        ValueError: counts that can't be.

    Example:
        >>> accepted_of_few(60, 6, 10, 0), accepted_of_few(60, 6, 10, 1)
        (0.317409, 0.74062)
    """
    if not (0 <= bad <= places and 1 <= readings <= places):
        raise ValueError(f"{bad} bad and {readings} measured of {places}")
    x = np.arange(max(0, readings - (places - bad)), min(allowed, bad, readings) + 1)
    if not len(x):
        return 0.0

    def ways(of: int, take: NDArray[np.int_]) -> Floats:
        found: Floats = gammaln(of + 1) - gammaln(take + 1) - gammaln(of - take + 1)
        return found

    logs = ways(bad, x) + ways(places - bad, readings - x) - ways(places, np.asarray(readings))
    return float(min(1.0, np.exp(logs).sum()))


def readings_without_fault(bad_share: float, sure: float = 0.95) -> int:
    """How many good readings in a row it takes to be so sure that at most a share is bad: ln(1 - sure) / ln(1 - p).

    Args:
        bad_share: above 0, below 1.
        sure: above 0, below 1.

    Example:
        >>> readings_without_fault(0.10), readings_without_fault(0.05)
        (29, 59)
    """
    return math.ceil(math.log(1 - sure) / math.log(1 - bad_share) - 1e-9)


LOT_SIZES: tuple[tuple[int, str, int], ...] = (
    (8, "A", 2), (15, "B", 3), (25, "C", 5), (50, "D", 8), (90, "E", 13), (150, "F", 20), (280, "G", 32),
)  # fmt: skip
"""Largest lot, letter and readings of ISO 2859-1, general level II.

A scheme for a series of lots; one tank is a lot on its own. Go by the chance to accept, not by the label.
"""


def readings_of_lot(places: int) -> tuple[str, int]:
    """Letter and number of readings of ISO 2859-1, general level II.

    Args:
        places: in the lot, 2 to 280.

    Raises:
        NoAnswerError: a lot outside the table.

    Example:
        >>> readings_of_lot(60)
        ('E', 13)
    """
    for most, letter, count in LOT_SIZES:
        if 2 <= places <= most:
            return letter, count
    raise NoAnswerError("lot_outside", count=places)


# ------------------------------------------------------------------------------------------- by variables


def tolerance_factor(readings: int, good_share: float, sure: float) -> float:
    """One-sided k: mean + k s covers the good share with this certainty: t'(sure; n - 1, z √n) / √n, exact.

    Needs readings that scatter like a bell; drawn at random, all by one tape and one hand.

    Args:
        readings: n, at least 2.
        good_share: above 0.5, below 1.
        sure: above 0, below 1.

    Example:
        >>> tolerance_factor(10, 0.90, 0.90), tolerance_factor(5, 0.90, 0.95)
        (2.0657, 3.4066)
    """
    shift = float(ndtri(good_share)) * math.sqrt(readings)
    return float(nctdtrit(readings - 1, shift, sure)) / math.sqrt(readings)


def tolerance_factor_both(readings: int, good_share: float, sure: float) -> float:
    """Two-sided k: mean -/+ k s covers the good share with this certainty, by exact integration.

    For a mean z/√n away from the true one, the half width r holds the share where Phi(z/√n + r) - Phi(z/√n - r) = P;
    then s must be at least r/k. Howe's shortcut is low for few readings. Source: Wald and Wolfowitz 1946; Odeh 1978.

    Args:
        readings: n, at least 2.
        good_share: above 0, below 1.
        sure: above 0, below 1.
    """
    nodes, weights = np.polynomial.legendre.leggauss(80)
    z, w = 8 * nodes, 8 * weights * np.exp(-((8 * nodes) ** 2) / 2) / math.sqrt(2 * math.pi)
    off = z / math.sqrt(readings)
    low, high = np.zeros_like(off), np.full_like(off, 20.0)
    for _ in range(60):
        middle = (low + high) / 2
        short = ndtr(off + middle) - ndtr(off - middle) < good_share
        low, high = np.where(short, middle, low), np.where(short, high, middle)
    half = (low + high) / 2

    def missing(k: float) -> float:
        return float(w @ chdtrc(readings - 1, (readings - 1) * (half / k) ** 2)) - sure

    return float(brentq(missing, 1e-3, 1e4, xtol=1e-10))


@dataclass(frozen=True, slots=True)
class VariablesCheck:
    """Readings held against one limit.

    Args:
        mean: of the readings.
        sd: of the readings, divided by n - 1.
        quality: (limit - mean) / s for an upper limit.
        factor: k that it must reach.
        over: readings beyond the limit.
    """

    mean: float
    sd: float
    quality: float
    factor: float
    over: int

    @property
    def accepted(self) -> bool:
        """Whether the readings are accepted: good enough as a bell, and none beyond the limit."""
        return self.quality >= self.factor and not self.over


def check_upper(readings: Sequence[float], limit: float, good_share: float, sure: float) -> VariablesCheck:
    """Accept where (U - mean) / s >= k, and no reading is over the limit.

    Args:
        readings: at least 3.
        limit: U, in the readings' unit.
        good_share: above 0.5, below 1.
        sure: above 0, below 1.

    Raises:
        NoAnswerError: fewer than three readings, or all alike: no bell can be read off them; count good and bad ones.

    Example:
        >>> found = check_upper([48, 52, 50, 47, 55, 51, 49, 53, 46, 54], 60, 0.90, 0.90)
        >>> found.mean, found.sd, found.quality, found.accepted
        (50.5, 3.02765, 3.13775, True)
    """
    x = np.asarray(readings, dtype=np.float64)
    if len(x) < 3:
        raise NoAnswerError("too_few_readings", count=len(x))
    sd = float(x.std(ddof=1))
    if sd == 0:
        raise NoAnswerError("no_spread")
    mean = float(x.mean())
    factor = tolerance_factor(len(x), good_share, sure)
    return VariablesCheck(mean, sd, (limit - mean) / sd, factor, int((x > limit).sum()))


# --------------------------------------------------------------------------------------------- guard bands


def conforming(reading: float, error: float, low: float = -math.inf, high: float = math.inf) -> float:
    """Chance that the true size lies within its limits: Phi((high - y)/u) - Phi((low - y)/u).

    Args:
        reading: y, in any unit.
        error: u, standard uncertainty of the measurement in that unit, above 0.
        low: lower limit.
        high: upper limit.

    Example:
        >>> conforming(58.5, 1, high=60), conforming(12.6, 0.5, 12, 18)
        (0.9332, 0.8849)
    """
    return float(ndtr((high - reading) / error) - ndtr((low - reading) / error))


def guard_band(error: float, risk: float) -> float:
    """Width w that keeps the risk of a false acceptance: z(1 - risk) u.

    Args:
        error: u, standard uncertainty, in any unit, above 0.
        risk: above 0, below 0.5.

    Example:
        >>> guard_band(1.0, 0.05)
        1.645
    """
    return float(ndtri(1 - risk)) * error


def within_limit(reading: float, limit: float, width: float, *, critical: bool) -> bool:
    """Whether a reading passes an upper limit T with a guard band w.

    What can leak, crack or hurt must be at most T - w: the doubt counts against the work. Anything else fails only over
    T + w: the mason has the benefit.

    Args:
        reading: in the limit's unit.
        limit: T.
        width: w, at least 0.
        critical: whether it can leak, crack or hurt.
    """
    return reading <= (limit - width if critical else limit + width)
