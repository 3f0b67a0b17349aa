"""What a set of cover readings means: the least one decides, the mean does not, and a few readings prove little.

A nail or pin is pushed through the wet mortar to the steel and read at the face. Over bars and angles no reading may be
under 5 mm, and the plan aims at 8 mm; over mesh 2 to 5 mm. All three are common practice. What readings say of the rest
of the wall holds only for places picked by chance; it may warn and never makes a wall good.

References:
    .. [1] Clopper, Pearson: the use of confidence limits in the case of the binomial, Biometrika 26 (1934);
       the limit for no thin reading follows from it by hand.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from math import isfinite, sqrt
from typing import Literal

import numpy as np
from scipy.stats import beta, nct, norm

from generator.calculations.cover import AIMED_BAR_COVER, CHANCE_LEFT, LEAST_BAR_COVER
from generator.formula import Constant, OutOfRangeError, common_practice

Steel = Literal["bar", "mesh"]
LEAST_MESH_COVER = Constant(2, "mm", common_practice("mortar over mesh, at least"))
MOST_MESH_COVER = Constant(5, "mm", common_practice("mortar over mesh, planned at most: a thicker skin crazes"))
DEEPEST_READING = 100.0
"""A deeper reading missed the steel [mm]."""
SPREAD_SHARE = 0.05
"""The share of the wall that the spread of the readings is asked about."""
_HAIR = 1e-9


class Cover(StrEnum):
    """What a set of readings decides."""

    TOO_THIN = "too_thin"
    BELOW_AIM = "below_aim"
    NO_THIN_READING = "no_thin_reading"
    THICK_OVER_MESH = "thick_over_mesh"


@dataclass(frozen=True, slots=True)
class CoverVerdict:
    """What the readings say.

    Args:
        least: thinnest reading [mm]; it decides.
        mean: of all readings [mm]; it decides nothing.
        thin: readings under the least cover.
        verdict: what follows; a wall with one thin reading fails.
        may_be_thin: share of the wall that may be thin for all that these readings show, sure in 19 of 20 walls.
        likely_above: a warning only: cover that all but a twentieth of the wall has, again sure in 19 of 20 walls, if
            readings spread evenly about their mean [mm]; none for fewer than three readings.
    """

    least: float
    mean: float
    thin: int
    verdict: Cover
    may_be_thin: float
    likely_above: float | None

    @property
    def passed(self) -> bool:
        """Whether no reading was thin. It is a verdict on these places, not on the whole wall."""
        return self.verdict is not Cover.TOO_THIN


def read_cover(readings: Iterable[float], steel: Steel = "bar") -> CoverVerdict:
    """Judge cover readings of one face.

    Args:
        readings: [mm].
        steel: what lies under the mortar there: `bar` stands for angles too.

    Raises:
        OutOfRangeError: no reading, or one that no gauge can give.

    Example:
        >>> read = read_cover([9, 11, 8, 4, 12, 10, 13, 9])
        >>> read.mean, read.least, read.verdict.value, round(read.may_be_thin, 2)
        (9.5, 4.0, 'too_thin', 0.47)
    """
    if steel not in ("bar", "mesh"):
        raise OutOfRangeError(f"“{steel}” is no steel of a wall: say bar or mesh")
    found = np.array([float(reading) for reading in readings])
    if not found.size:
        raise OutOfRangeError("there is no reading: push the pin in at places picked by chance, and read again")
    bad = [reading for reading in found if not (isfinite(reading) and 0 <= reading <= DEEPEST_READING)]
    if bad:
        raise OutOfRangeError(
            f"{bad[0]:g} mm is no cover reading: the pin missed the steel or was misread; take it again"
        )
    limit = float(LEAST_BAR_COVER if steel == "bar" else LEAST_MESH_COVER)
    thin = int(np.sum(found < limit - _HAIR))
    return CoverVerdict(
        least=float(found.min()),
        mean=float(found.mean()),
        thin=thin,
        verdict=_verdict(found, thin, steel),
        may_be_thin=share_that_may_be_thin(thin, found.size),
        likely_above=_likely_above(found),
    )


def share_that_may_be_thin(thin: int, readings: int) -> float:
    """Largest share of the wall that can be thin for all that random readings show, sure in 19 of 20 walls.

    Args:
        thin: readings that were thin.
        readings: all of them.

    Raises:
        OutOfRangeError: more thin readings than readings, or none at all.

    Example:
        >>> round(share_that_may_be_thin(0, 10), 3), round(share_that_may_be_thin(0, 60), 3)
        (0.259, 0.049)
    """
    if not 0 <= thin <= readings or readings < 1:
        raise OutOfRangeError(f"{thin} thin of {readings} readings can't be: count again")
    if thin == readings:
        return 1.0
    return float(beta.ppf(1 - CHANCE_LEFT, thin + 1, readings - thin))


def _verdict(found: np.ndarray, thin: int, steel: Steel) -> Cover:
    if thin:
        return Cover.TOO_THIN
    if steel == "bar":
        return Cover.BELOW_AIM if found.min() < AIMED_BAR_COVER - _HAIR else Cover.NO_THIN_READING
    return Cover.THICK_OVER_MESH if found.max() > MOST_MESH_COVER + _HAIR else Cover.NO_THIN_READING


def _likely_above(found: np.ndarray) -> float | None:
    """One-sided tolerance limit of a normal spread; a warning, since the spread of plaster is not proven normal."""
    if found.size < 3:
        return None
    root = sqrt(found.size)
    factor = float(nct.ppf(1 - CHANCE_LEFT, found.size - 1, norm.ppf(1 - SPREAD_SHARE) * root)) / root
    return float(found.mean() - factor * found.std(ddof=1))
