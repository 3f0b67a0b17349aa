"""Which tanks a village builds, which an engineer signs first, and which get no build sheet. A policy, not a code.

Four measures are looked at (volume, water depth, depth x inside radius, span of a flat roof without a column); the
worst one decides, and each condition of the site makes it one band stricter. Some ground is refused outright.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import IntEnum, StrEnum
from math import isfinite

from generator.formula import Constant, OutOfRangeError, derived
from generator.words import Words

_POLICY = derived("policy of this course, from tanks worked by hand; not a code")
VILLAGE_VOLUME, ENGINEER_VOLUME = Constant(12, "m**3", _POLICY), Constant(50, "m**3", _POLICY)
VILLAGE_DEPTH, ENGINEER_DEPTH = Constant(2.0, "m", _POLICY), Constant(2.2, "m", _POLICY)
VILLAGE_PULL, ENGINEER_PULL = Constant(2.5, "m**2", _POLICY), Constant(6.5, "m**2", _POLICY)
VILLAGE_SPAN, ENGINEER_SPAN = Constant(2.5, "m", _POLICY), Constant(4.2, "m", _POLICY)
MESH_ONLY_VOLUME, MESH_ONLY_PULL = Constant(2, "m**3", _POLICY), Constant(0.85, "m**2", _POLICY)
STEEP = Constant(15, "degree", _POLICY)
_HAIR = 1e-9
"""A hair of floating point does not make a tank larger."""


class Band(IntEnum):
    """The larger the number, the stricter."""

    VILLAGE = 1
    ENGINEER = 2
    NO_BUILD_SHEET = 3


class Condition(StrEnum):
    """What makes a site one band stricter, each on its own."""

    PEOPLE_BELOW = "people_below"
    STRONG_EARTHQUAKE = "strong_earthquake"
    SNOW_OR_FROST = "snow_or_frost"
    STEEP_PLATFORM = "steep_platform"


class RefusedGround(StrEnum):
    """Where nothing of a tank may stand."""

    FILL = "fill"
    PEAT = "peat"
    BLACK_COTTON = "black_cotton"
    SHRINKABLE_CLAY = "shrinkable_clay"
    FLOOD_WAY = "flood_way"


@dataclass(frozen=True, slots=True)
class Judgement:
    """What is decided, and why.

    Args:
        band: the band that holds; of a refused tank, the strictest.
        refused: nothing may be built here, or not in this way; no engineer's plan either.
        reasons: codes of what raised the band or refused the tank, in a fixed order; empty for a plain village tank.
    """

    band: Band
    refused: bool
    reasons: tuple[str, ...]


def mesh_only_allowed(volume: float, water_depth: float, inside_radius: float) -> bool:
    """Whether mesh alone, without bars and hoops, may bear this tank.

    Args:
        volume: [m3].
        water_depth: [m].
        inside_radius: [m].

    Example:
        >>> mesh_only_allowed(1.8, 1.1, 0.72), mesh_only_allowed(1.8, 1.4, 0.64)
        (True, False)
    """
    return volume <= MESH_ONLY_VOLUME + _HAIR and water_depth * inside_radius <= MESH_ONLY_PULL + _HAIR


def conditions_of_slope(slope: float, cut: bool) -> tuple[Condition, ...]:
    """The condition that a slope brings: a platform cut into ground steeper than 15 degrees.

    Args:
        slope: of the ground [degrees].
        cut: whether the tank stands on a cut platform.

    Example:
        >>> conditions_of_slope(20, cut=True), conditions_of_slope(15, cut=True)
        ((<Condition.STEEP_PLATFORM: 'steep_platform'>,), ())
    """
    return (Condition.STEEP_PLATFORM,) if cut and slope > STEEP + _HAIR else ()


def judge(
    *,
    volume: float,
    water_depth: float,
    inside_radius: float,
    flat_span: float = 0.0,
    mesh_only: bool = False,
    conditions: Iterable[Condition] = (),
    ground: Iterable[RefusedGround] = (),
) -> Judgement:
    """The band of a tank on its site: the worst measure, and one band stricter for each condition.

    Args:
        volume: water in the full tank [m3].
        water_depth: [m].
        inside_radius: [m].
        flat_span: span of a flat roof without a column [m]; 0 for a dome, a cone, a column or no roof.
        mesh_only: whether there are no hoops.
        conditions: of the site; each counts once.
        ground: what of the refused kinds any part would stand on.

    Raises:
        OutOfRangeError: a size that is not above 0 or not a number.

    Example:
        >>> judge(volume=9, water_depth=1.6, inside_radius=1.34, conditions=[Condition.PEOPLE_BELOW])
        Judgement(band=<Band.ENGINEER: 2>, refused=False, reasons=('people_below',))
    """
    sizes = (volume, water_depth, inside_radius)
    if not all(isfinite(size) and size > 0 for size in sizes) or not (isfinite(flat_span) and flat_span >= 0):
        raise OutOfRangeError("volume, depth and radius are numbers above 0; ask a licensed engineer")
    measures = (
        ("volume", volume, VILLAGE_VOLUME, ENGINEER_VOLUME),
        ("depth", water_depth, VILLAGE_DEPTH, ENGINEER_DEPTH),
        ("depth_times_radius", water_depth * inside_radius, VILLAGE_PULL, ENGINEER_PULL),
        ("flat_span", flat_span, VILLAGE_SPAN, ENGINEER_SPAN),
    )
    bands = {name: 1 + (size > village + _HAIR) + (size > most + _HAIR) for name, size, village, most in measures}
    reasons = [f"{name}_over_{'engineer' if band == 3 else 'village'}" for name, band in bands.items() if band > 1]
    present = set(conditions)
    stricter = [condition for condition in Condition if condition in present]
    bad = set(ground)
    refusals = [kind.value for kind in RefusedGround if kind in bad]
    if mesh_only and not mesh_only_allowed(*sizes):
        refusals.append("mesh_only_too_large")
    band = Band(min(3, max(bands.values()) + len(stricter)))
    codes = (*refusals, *reasons, *(condition.value for condition in stricter))
    return Judgement(Band.NO_BUILD_SHEET if refusals else band, bool(refusals), codes)


def explain(judgement: Judgement, words: Words) -> tuple[str, ...]:
    """The judgement in words: what may be done, then each reason.

    Args:
        judgement: from `judge`.
        words: of the reader's language.
    """
    name = "refused" if judgement.refused else judgement.band.name.lower()
    return (
        words.say_one_of("band.name", name),
        *(words.say_one_of("band.reason", code) for code in judgement.reasons),
        words.say("band.policy"),
    )
