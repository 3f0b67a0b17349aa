"""The three ways in print to disinfect a new tank, and what each takes. All are done from outside the tank.

The concentrations were read in print; the times of holding and the share of the bottom filling are recalled, so they
may warn that a holding was too short and never say that a tank is safe. Safe to drink is only what a water test shows.

Cautions: as in `disinfection`. Strong wash on the faces gives off gas: brush it on with a long handle through the open
manhole, never from inside. After each way drain or thin the water, but never into a stream.

References:
    .. [1] ANSI/AWWA C652-11, section 4.3.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import isfinite

from generator.formula import ASK, Constant, OutOfRangeError, from_memory, published
from generator.words import Words

_PRINT = "ANSI/AWWA C652-11, 4.3: "
FULL_LEFT = Constant(10, "mg/L", published(_PRINT + "full tank, at least 10 mg/L left at the end"))
FACES_DOSE = Constant(200, "mg/L", published(_PRINT + "all wetted faces coated with 200 mg/L"))
BOTTOM_DOSE = Constant(50, "mg/L", published(_PRINT + "bottom part at 50 mg/L, then filled"))
BOTTOM_LEFT = Constant(2, "mg/L", published(_PRINT + "filled up, at least 2 mg/L kept for 24 h"))
BOTTOM_SHARE = Constant(5, "%", from_memory("the bottom part is about 5 % of the tank"))
DAY_OF_HOLDING = Constant(24, "hour", from_memory("a day of holding where hypochlorite is used"))
FACES_HOLDING = Constant(0.5, "hour", from_memory("half an hour on the faces"))
BOTTOM_HOLDING = Constant(6, "hour", from_memory("six hours at the bottom before filling up"))


@dataclass(frozen=True, slots=True)
class Method:
    """One way.

    Args:
        key: of its words under `proving.method`.
        dose: chlorine in what is put in [mg/L]; of the full tank, the least that must be left.
        share: part of the tank's water that gets this dose [%]; None where only the faces are wetted.
        hours: least time of holding, recalled [hour].
        left: least chlorine at the end [mg/L]; None where nothing is measured.
    """

    key: str
    dose: float
    share: float | None
    hours: float
    left: float | None


METHODS = (
    Method("full_tank", FULL_LEFT, 100.0, DAY_OF_HOLDING, FULL_LEFT),
    Method("faces", FACES_DOSE, None, FACES_HOLDING, None),
    Method("bottom_first", BOTTOM_DOSE, BOTTOM_SHARE, BOTTOM_HOLDING, BOTTOM_LEFT),
)


def method_chlorine(method: Method, tank_litres: float) -> float | None:
    """The least chlorine that a way puts into the tank [g]; None where only the faces are wetted.

    More is needed where the water or the mortar uses some up: what is left at the end decides.

    Args:
        method: one of `METHODS`.
        tank_litres: water in the full tank [L], above 0 and at most 50 000.

    Raises:
        OutOfRangeError: a tank outside that.

    Example:
        >>> [method_chlorine(method, 7300) for method in METHODS]
        [73.0, None, 18.25]
    """
    if not 0 < tank_litres <= 50_000:
        raise OutOfRangeError(f"tank_litres = {tank_litres:g} L is outside 0 to 50000; {ASK}")
    return None if method.share is None else tank_litres * method.share / 100 * method.dose / 1000


def holding_warnings(method: Method, hours: float, left: float | None) -> tuple[str, ...]:
    """What to be warned of at the end of a holding; nothing does not mean that the water may be drunk.

    Args:
        method: one of `METHODS`.
        hours: that it was held.
        left: chlorine measured at the end [mg/L]; None if nobody measured.

    Returns:
        Keys under `proving.holding`: `too_short`, `not_measured`, `too_little_left`.

    Raises:
        OutOfRangeError: hours or chlorine below 0, or not a number.

    Example:
        >>> holding_warnings(METHODS[0], 20, 12), holding_warnings(METHODS[0], 26, 4)
        (('too_short',), ('too_little_left',))
    """
    if not all(isfinite(value) and value >= 0 for value in (hours, left or 0)):
        raise OutOfRangeError(f"{hours} hours or {left} mg/L is no reading; measure again; {ASK}")
    warnings = ["too_short"] if hours < method.hours else []
    if method.left is not None:
        if left is None:
            warnings.append("not_measured")
        elif left < method.left:
            warnings.append("too_little_left")
    return tuple(warnings)


def explain_method(method: Method, words: Words) -> str:
    """The way in words.

    Args:
        method: one of `METHODS`.
        words: of the reader's language.
    """
    return words.say_one_of("proving.method", method.key)


def explain_holding(warnings: tuple[str, ...], words: Words) -> tuple[str, ...]:
    """The warnings of `holding_warnings` in words.

    Args:
        warnings: from `holding_warnings`.
        words: of the reader's language.
    """
    return tuple(words.say_one_of("proving.holding", key) for key in warnings)
