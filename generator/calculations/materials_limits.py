"""Is it fit to use: the grading and the dirt of sand, the heat and cold of a day, the drying power of its wind.

Tables and limits that nobody works out by hand. A verdict that rests on print decides; the advice on which zone suits a
wall of mesh is from memory and only warns.

References:
    .. [1] IS 383:1970, table 4 (rows to 1.18 mm read, the rest at second hand): four zones of sand.
    .. [2] IS 1542:1992, read at second hand: sand for house plaster.
    .. [3] Rainwater Reservoirs above Ground Structures for Roof Catchment, GTZ/GATE 1989, chapter 3: silt.
    .. [4] Ready-mix guideline on IS 7861 (second hand): heat and cold. Silica-fume training sheet on ACI 305R and 308:
       evaporation.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise
from math import isfinite
from types import MappingProxyType

from generator.formula import OutOfRangeError, show

SIEVES = (10.0, 4.75, 2.36, 1.18, 0.6, 0.3, 0.15)
"""Openings of the sieves, mm, from coarse to fine."""
DECIDING_SIEVE = 0.6
_FINENESS_SIEVES = SIEVES[1:]

Limits = Mapping[float, tuple[int, int]]

ZONES: Mapping[int, Limits] = MappingProxyType(
    {
        1: MappingProxyType(
            dict(zip(SIEVES, ((100, 100), (90, 100), (60, 95), (30, 70), (15, 34), (5, 20), (0, 10)), strict=True))
        ),
        2: MappingProxyType(
            dict(zip(SIEVES, ((100, 100), (90, 100), (75, 100), (55, 90), (35, 59), (8, 30), (0, 10)), strict=True))
        ),
        3: MappingProxyType(
            dict(zip(SIEVES, ((100, 100), (90, 100), (85, 100), (75, 100), (60, 79), (12, 40), (0, 10)), strict=True))
        ),
        4: MappingProxyType(
            dict(zip(SIEVES, ((100, 100), (95, 100), (95, 100), (90, 100), (80, 100), (15, 50), (0, 15)), strict=True))
        ),
    }
)
"""Least and most that passes each sieve, whole percent."""
PLASTER_SAND: Limits = MappingProxyType(
    dict(zip(SIEVES, ((100, 100), (95, 100), (95, 100), (90, 100), (80, 100), (20, 65), (0, 15)), strict=True))
)
"""House plaster: finer than a wall of mesh wants."""


class SandAdvice(StrEnum):
    """Key of the words that say what to do with a sand. From memory: it warns, and a sample panel shows."""

    TRY_A_PANEL = "try_a_panel"
    SIEVE_THE_COARSE_OUT = "sieve_the_coarse_out"
    MIX_IN_COARSER = "mix_in_coarser"
    MIX_IN_FINER = "mix_in_finer"
    LOOK_FOR_OTHER_SAND = "look_for_other_sand"


@dataclass(frozen=True, slots=True)
class Grading:
    """What a sieve test says about a sand.

    Args:
        zone: 1 (coarse) to 4 (fine), by the 600 micrometre sieve; None where less than 15 % passes it.
        outside: sieves, mm, on which the sand leaves the limits of its zone.
        fineness_modulus: share kept on the sieves from 4.75 mm to 150 micrometres, all together; coarser is larger.
        advice: what to do with it.
    """

    zone: int | None
    outside: tuple[float, ...]
    fineness_modulus: float
    advice: SandAdvice


def zone_of(passing: Mapping[float, float]) -> Grading:
    """Put a sand into its zone: the 600 micrometre sieve decides, the others are compared with the zone's limits.

    Results are compared in whole percent, rounded half up: the zones of the deciding sieve meet without a gap.

    Args:
        passing: percent by weight that passes each of `SIEVES` (mm), 0 to 100, never more on a finer sieve.

    Raises:
        OutOfRangeError: a sieve that is missing or unknown, or percents that no sieve test gives.

    Example:
        >>> found = zone_of({10: 100, 4.75: 97, 2.36: 88, 1.18: 70, 0.6: 48, 0.3: 18, 0.15: 4})
        >>> found.zone, found.outside, found.fineness_modulus
        (2, (), 2.75)
    """
    modulus = fineness_modulus(passing)
    whole = {sieve: int(show(passing[sieve], 0)) for sieve in SIEVES}
    zone = next((zone for zone, limits in ZONES.items() if _inside(whole, limits, DECIDING_SIEVE)), None)
    outside = () if zone is None else tuple(sieve for sieve in SIEVES if not _inside(whole, ZONES[zone], sieve))
    return Grading(zone, outside, modulus, _advice(zone, outside, whole))


def fineness_modulus(passing: Mapping[float, float]) -> float:
    """Percent kept on the sieves from 4.75 mm to 150 micrometres, each with all above it, added up, over 100.

    Args:
        passing: as in `zone_of`.

    Raises:
        OutOfRangeError: as `zone_of`.

    Example:
        >>> fineness_modulus({10: 100, 4.75: 100, 2.36: 100, 1.18: 100, 0.6: 50, 0.3: 0, 0.15: 0})
        2.5
    """
    if set(passing) != set(SIEVES):
        raise OutOfRangeError(f"a sieve test names the sieves {', '.join(f'{s:g}' for s in SIEVES)} mm, each once")
    through = [passing[sieve] for sieve in SIEVES]
    if not all(isfinite(percent) and 0 <= percent <= 100 for percent in through):
        raise OutOfRangeError("what passes a sieve is 0 to 100 percent; weigh again")
    if any(finer > coarser for coarser, finer in pairwise(through)):
        raise OutOfRangeError("more passes a finer sieve than a coarser one: the sieves were stacked wrongly")
    return sum(100 - passing[sieve] for sieve in _FINENESS_SIEVES) / 100


def fits(passing: Mapping[float, float], limits: Limits) -> bool:
    """Whether a sand keeps all limits of a grading, as `PLASTER_SAND`.

    Args:
        passing: as in `zone_of`.
        limits: least and most whole percent for each of `SIEVES`.

    Raises:
        OutOfRangeError: as `zone_of`.
    """
    fineness_modulus(passing)
    whole = {sieve: int(show(passing[sieve], 0)) for sieve in SIEVES}
    return all(_inside(whole, limits, sieve) for sieve in SIEVES)


def _inside(whole: Mapping[float, int], limits: Limits, sieve: float) -> bool:
    low, high = limits[sieve]
    return low <= whole[sieve] <= high


def _advice(zone: int | None, outside: tuple[float, ...], whole: Mapping[float, int]) -> SandAdvice:
    if zone is None:
        return SandAdvice.LOOK_FOR_OTHER_SAND
    if zone == 1:
        return SandAdvice.MIX_IN_FINER
    if zone == 4:
        return SandAdvice.MIX_IN_COARSER
    if any(sieve < DECIDING_SIEVE for sieve in outside):
        return SandAdvice.LOOK_FOR_OTHER_SAND
    return SandAdvice.TRY_A_PANEL if whole[2.36] == 100 else SandAdvice.SIEVE_THE_COARSE_OUT


# ---------------------------------------------------------------------------------------------------- dirt

MOST_SILT = 6.0
"""Percent of the sand's depth in a jar (published, GTZ/GATE 1989)."""


class SiltAdvice(StrEnum):
    """Key of the words that say what to do with what settled in the jar."""

    USE = "use"
    WASH = "wash"


def silt_verdict(share: float) -> SiltAdvice:
    """Whether sand must be washed.

    Args:
        share: silt in percent of the sand's depth, 0 or more; see the quantity `silt_share`.

    Raises:
        OutOfRangeError: no share at all.

    Example:
        >>> silt_verdict(6.0), silt_verdict(6.3)
        (<SiltAdvice.USE: 'use'>, <SiltAdvice.WASH: 'wash'>)
    """
    if not share >= 0 or not isfinite(share):
        raise OutOfRangeError(f"a silt layer of {share} percent is no reading; let the jar stand again")
    return SiltAdvice.USE if share <= MOST_SILT else SiltAdvice.WASH


# ------------------------------------------------------------------------------------------- heat, cold, wind

COLD_STOP, HOT_CARE, HOT_STOP = 5.0, 30.0, 40.0
"""Degrees Celsius in the shade (published at second hand: IS 7861 bands; precautions from 30 to 35)."""
HOTTEST_MIX = 35.0
"""Degrees Celsius of the fresh mortar (published at second hand)."""
ACT_ON_WIND, STOP_ON_WIND = 0.5, 1.0
"""kg/m2/h. 1.0 is printed for ordinary concrete and half of it for mixes that bleed little; rich, stiff mortar bleeds
little, so this course stops at the one and acts at the other."""


class DayAdvice(StrEnum):
    """Key of the words that say how to work on such a day."""

    TOO_COLD = "too_cold"
    ORDINARY = "ordinary"
    WORK_EARLY_IN_SHADE = "work_early_in_shade"
    TOO_HOT = "too_hot"
    COOL_THE_MIX = "cool_the_mix"


class WindAdvice(StrEnum):
    """Key of the words that say what the drying wind asks for."""

    GO_ON = "go_on"
    SHADE_AND_SCREEN = "shade_and_screen"
    STOP = "stop"


def weather(air: float, mortar: float | None = None) -> DayAdvice:
    """How to work at a temperature. Cold-weather and hot-weather work are no part of this course: it waits.

    Args:
        air: degrees Celsius in the shade, the coldest or hottest that the day will bring, -40 to 60.
        mortar: degrees Celsius of the fresh mortar, if it was measured.

    Raises:
        OutOfRangeError: a temperature that no thermometer on a hill shows.

    Example:
        >>> weather(4).value, weather(22).value, weather(33).value, weather(22, mortar=36).value
        ('too_cold', 'ordinary', 'work_early_in_shade', 'cool_the_mix')
    """
    for reading in (air, *(() if mortar is None else (mortar,))):
        if not -40 <= reading <= 60:
            raise OutOfRangeError(f"{reading} degrees Celsius is no reading; was it the Fahrenheit side?")
    if air < COLD_STOP:
        return DayAdvice.TOO_COLD
    if air > HOT_STOP:
        return DayAdvice.TOO_HOT
    if mortar is not None and mortar > HOTTEST_MIX:
        return DayAdvice.COOL_THE_MIX
    return DayAdvice.WORK_EARLY_IN_SHADE if air >= HOT_CARE else DayAdvice.ORDINARY


def drying_wind(rate: float) -> WindAdvice:
    """What an evaporation rate asks for; the rate itself is good to about 40 percent only.

    Args:
        rate: kg/m2/h, 0 or more; see the quantity `evaporation_rate`.

    Raises:
        OutOfRangeError: no rate at all.

    Example:
        >>> drying_wind(0.3).value, drying_wind(0.5).value, drying_wind(1.2).value
        ('go_on', 'shade_and_screen', 'stop')
    """
    if not rate >= 0 or not isfinite(rate):
        raise OutOfRangeError(f"{rate} kg/m2/h is no evaporation rate")
    if rate >= STOP_ON_WIND:
        return WindAdvice.STOP
    return WindAdvice.SHADE_AND_SCREEN if rate >= ACT_ON_WIND else WindAdvice.GO_ON


# ------------------------------------------------------------------------------------------------ volumes


def absolute_volume(parts: Iterable[tuple[float, float]], *, air: float = 0.0) -> float:
    """What a mix really fills: each part's mass over its solid density, and the air that stays in.

    Args:
        parts: (mass in kg, solid density in kg/m3) of cement, sand, stone and water, above 0.
        air: percent of the finished volume, 0 to 10.

    Returns:
        Volume in m3.

    Raises:
        OutOfRangeError: a mass, density or air content outside its range.

    Example:
        >>> show(absolute_volume([(50, 3150), (111, 2650), (22.5, 1000)], air=2), 4)
        '0.0819'
    """
    listed = list(parts)
    if not listed or not all(mass > 0 and density > 0 for mass, density in listed):
        raise OutOfRangeError("a mix has parts, each with a mass and a density above nothing")
    if not 0 <= air <= 10:
        raise OutOfRangeError(f"{air} percent of air is no mortar of this course: take 0 to 10")
    return sum(mass / density for mass, density in listed) / (1 - air / 100)
