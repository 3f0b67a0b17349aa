"""What a kind of ground bears, as printed tables presume it, and what must be refused whatever a table prints.

A full tank presses with about 10 to 20 kN/m2, and the poorest row of the table bears 50. So bearing is rarely what
breaks a tank: ground that gives unevenly does, a corner on fill, a soft spot, an edge that rain has washed hollow. A
large number here is no reason to stop looking. The values are for a first look only; a licensed engineer and the local
code decide.

References:
    .. [1] IS 1904:1986 as printed in Geotechnical Engineering, p. 544, table 14.1; lecture notes that quote the
       National Building Code of India 1983; three web tables (some of them print 450 and 250 for 440 and 245).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from math import isfinite
from types import MappingProxyType

from generator.calculations.bands import RefusedGround
from generator.calculations.ground import LOOSE_PICKET, UNSUPPORTED_BANK
from generator.formula import Constant, OutOfRangeError, published
from generator.words import Words

_TABLE = published("IS 1904:1986 as printed in Geotechnical Engineering, p. 544, table 14.1")
WET_SHARE = Constant(
    0.5, "", published("the same tables: half for sand and gravel with ground water at the base or near it")
)
_HAIR = 1e-9


class Soil(StrEnum):
    """Ground that the printed tables give a value for."""

    HARD_ROCK = "hard_rock"
    LAMINATED_ROCK = "laminated_rock"
    SHATTERED_ROCK = "shattered_rock"
    SOFT_ROCK = "soft_rock"
    COMPACT_GRAVEL = "compact_gravel"
    COMPACT_COARSE_SAND = "compact_coarse_sand"
    COMPACT_MEDIUM_SAND = "compact_medium_sand"
    LOOSE_GRAVEL = "loose_gravel"
    FINE_SAND_OR_SILT = "fine_sand_or_silt"
    LOOSE_FINE_SAND = "loose_fine_sand"
    STIFF_CLAY = "stiff_clay"
    MEDIUM_CLAY = "medium_clay"
    MOIST_CLAY = "moist_clay"
    SOFT_CLAY = "soft_clay"
    VERY_SOFT_CLAY = "very_soft_clay"


class Family(StrEnum):
    """What water does to it: nothing, halve its value, or make it another clay."""

    ROCK = "rock"
    GRAIN = "grain"
    CLAY = "clay"


class FieldSign(StrEnum):
    """What hand and eye find, without any instrument."""

    RESISTS_TOOLS = "resists_tools"
    LUMPS_CRUSH = "lumps_crush"
    THUMB_NAIL = "thumb_nail"
    STRONG_THUMB = "strong_thumb"
    MODERATE_THUMB = "moderate_thumb"
    THUMB_GOES_IN = "thumb_goes_in"


@dataclass(frozen=True, slots=True)
class Bearing:
    """One row of the table.

    Args:
        value: pressure that the ground is presumed to bear [kN/m2].
        family: what water does to it.
        sign: how it is told in the field, where the tables say it.
        gives: loose or soft by its name, so that a deep picket says nothing new.
    """

    value: Constant
    family: Family
    sign: FieldSign | None = None
    gives: bool = False


def _row(value: float, family: Family, sign: FieldSign | None = None, gives: bool = False) -> Bearing:
    return Bearing(Constant(value, "kN/m**2", _TABLE), family, sign, gives)


BEARING: Mapping[Soil, Bearing] = MappingProxyType({
    Soil.HARD_ROCK: _row(3240, Family.ROCK),
    Soil.LAMINATED_ROCK: _row(1620, Family.ROCK),
    Soil.SHATTERED_ROCK: _row(880, Family.ROCK),
    Soil.SOFT_ROCK: _row(440, Family.ROCK),
    Soil.COMPACT_GRAVEL: _row(440, Family.GRAIN, FieldSign.RESISTS_TOOLS),
    Soil.COMPACT_COARSE_SAND: _row(440, Family.GRAIN, FieldSign.RESISTS_TOOLS),
    Soil.COMPACT_MEDIUM_SAND: _row(245, Family.GRAIN),
    Soil.LOOSE_GRAVEL: _row(245, Family.GRAIN, gives=True),
    Soil.FINE_SAND_OR_SILT: _row(150, Family.GRAIN, FieldSign.LUMPS_CRUSH),
    Soil.LOOSE_FINE_SAND: _row(100, Family.GRAIN, gives=True),
    Soil.STIFF_CLAY: _row(440, Family.CLAY),
    Soil.MEDIUM_CLAY: _row(245, Family.CLAY, FieldSign.THUMB_NAIL),
    Soil.MOIST_CLAY: _row(150, Family.CLAY, FieldSign.STRONG_THUMB),
    Soil.SOFT_CLAY: _row(100, Family.CLAY, FieldSign.MODERATE_THUMB, gives=True),
    Soil.VERY_SOFT_CLAY: _row(50, Family.CLAY, FieldSign.THUMB_GOES_IN, gives=True),
})  # fmt: skip
"""Fill, peat, black cotton soil and clay that shrinks have no row, although some tables print 130 to 160 for dry black
cotton soil: wetted, it lifts and cracks what stands on it."""


@dataclass(frozen=True, slots=True)
class GroundCheck:
    """What a first look says.

    Args:
        allowed: presumed safe pressure [kN/m2], halved where water halves it; None for refused ground: it has no value.
        ratio: pressure over what is allowed; None for refused ground.
        refused: nothing is built here, or not in this way.
        reasons: codes of what refuses and what to look at, in a fixed order; never empty.
    """

    allowed: float | None
    ratio: float | None
    refused: bool
    reasons: tuple[str, ...]


def is_loose(picket_depth: float) -> bool:
    """Whether a picket of 50 x 50 mm, pushed in by a person of 70 kg or more, shows loose ground.

    Args:
        picket_depth: how deep it goes [mm].

    Raises:
        OutOfRangeError: a depth below 0 or not a number.

    Example:
        >>> is_loose(200), is_loose(210)
        (False, True)
    """
    if not isfinite(picket_depth) or picket_depth < 0:
        raise OutOfRangeError("the depth of a picket is 0 mm or more; ask a licensed engineer")
    return picket_depth > LOOSE_PICKET + _HAIR


def stay_out_below(bank_height: float) -> bool:
    """Whether nobody may stand below a bank that is not held or laid back. A lower bank is not called safe by this.

    Common practice: over 1.2 m. The local law decides, and wet, cracked or sandy ground falls from less.

    Args:
        bank_height: height of the bank [m].

    Raises:
        OutOfRangeError: a height below 0 or not a number.

    Example:
        >>> stay_out_below(1.3)
        True
    """
    if not isfinite(bank_height) or bank_height < 0:
        raise OutOfRangeError("the height of a bank is 0 m or more; ask a licensed engineer")
    return bank_height > UNSUPPORTED_BANK + _HAIR


def judge_ground(
    soil: Soil | RefusedGround, wet: bool, pressure: float, picket_depth: float | None = None
) -> GroundCheck:
    """Hold a tank's pressure against what the ground is presumed to bear.

    Args:
        soil: what lies under the base at its worst place.
        wet: whether ground water stands at the base or near it, in any season.
        pressure: of the full tank on the ground [kN/m2].
        picket_depth: how deep a pushed picket goes at the softest point [mm], if it was tried.

    Raises:
        OutOfRangeError: a pressure that is not above 0 or not a number.

    Example:
        >>> judge_ground(Soil.LOOSE_FINE_SAND, wet=True, pressure=20)
        GroundCheck(allowed=50.0, ratio=0.4, refused=False, reasons=('water_halves', 'look_for_uneven'))
        >>> judge_ground(RefusedGround.BLACK_COTTON, wet=False, pressure=20)
        GroundCheck(allowed=None, ratio=None, refused=True, reasons=('black_cotton',))
    """
    if not isfinite(pressure) or pressure <= 0:
        raise OutOfRangeError("the pressure of a tank is above 0 kN/m2; ask a licensed engineer")
    loose = picket_depth is not None and is_loose(picket_depth)
    if isinstance(soil, RefusedGround):
        return GroundCheck(None, None, True, (soil.value,))
    row = BEARING[soil]
    halved = wet and row.family is Family.GRAIN
    allowed = float(row.value) * (WET_SHARE if halved else 1)
    too_much, not_that_soil = pressure > allowed + _HAIR, loose and not row.gives
    reasons = (
        ("pressure_too_high", too_much),
        ("picket_too_deep", not_that_soil),
        ("water_halves", halved),
        ("wet_clay_look_again", wet and row.family is Family.CLAY),
        ("clay_settles", row.family is Family.CLAY),
        ("look_for_uneven", True),
    )
    return GroundCheck(
        allowed, pressure / allowed, too_much or not_that_soil, tuple(code for code, holds in reasons if holds)
    )


def describe_soil(soil: Soil, words: Words) -> tuple[str, ...]:
    """The name of a kind of ground, and how hand and eye tell it, where the tables say so.

    Args:
        soil: a kind that the tables give a value for.
        words: of the reader's language.
    """
    sign = BEARING[soil].sign
    name = words.say_one_of("ground.soil", soil)
    return (name,) if sign is None else (name, words.say_one_of("ground.sign", sign))


def explain_ground(check: GroundCheck, words: Words) -> tuple[str, ...]:
    """The reasons in words; what is refused outright is said as in the bands.

    Args:
        check: from `judge_ground`.
        words: of the reader's language.
    """
    bands = set(RefusedGround)
    return tuple(words.say_one_of("band.reason" if code in bands else "ground.reason", code) for code in check.reasons)
