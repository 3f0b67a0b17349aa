"""Lifting and carrying: what one back may take, how many people share a bag, what an animal bears, how many loads.

Nobody prints a weight that is safe to lift. A regulator prints filters (about 25 kg for a man who stands well), an
institute prints 23 kg for the best of all lifts: close to the body, at hip height, no turn, now and then. Everything
else is less. So nothing here calls a lift safe; it says when a lift is too much, and how to share it.

Caution: a bag of 50 kg lifted alone hurts backs for life. Two people, knees bent, bag close; or split the bag.

References:
    .. [1] NIOSH lifting guide: ideal maximum 51 lb (23 kg); its equation is from memory and may only warn.
    .. [2] United Kingdom regulator's guidance on manual handling (read at second hand): filters, no safe weight.
    .. [3] Working-animal guidance (read at second hand): donkey up to 50 kg; mule at most a fifth of its body.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from math import isfinite

from generator.formula import Constant, OutOfRangeError, derived, from_memory, published, whole_down, whole_up

IDEAL_LIFT = Constant(23, "kg", published("NIOSH lifting guide: ideal maximum 51 lb (23 kg)"))
HEAD_SHARE = Constant(
    25, "kg", published("United Kingdom regulator: about 25 kg as a filter for men at ideal posture; no safe weight")
)
MOST_BY_HAND = Constant(
    100, "kg", derived("policy of this course: four people round one piece are the most; more stumble over each other")
)
LEAST_LOAD, MOST_LOAD = (
    Constant(10, "kg", derived("policy of this course: lighter loads waste the walk")),
    Constant(200, "kg", derived("policy of this course: more goes on wheels, not on a back")),
)
_EQUATION = from_memory("NIOSH lifting equation of 1991 in centimetres; warns only")
NEAREST_HANDS = Constant(25, "cm", _EQUATION)
HIP_HEIGHT = Constant(75, "cm", _EQUATION)
LEAST_TRAVEL = Constant(25, "cm", _EQUATION)
_FARTHEST, _HIGHEST, _WIDEST_TURN = 63.0, 175.0, 135.0


class Animal(StrEnum):
    """What carries beside people."""

    DONKEY = "donkey"
    MULE = "mule"
    PONY = "pony"


BODY_SHARE = Constant(
    0.2, "", published("guidance on pack mules (second hand): at most 20 % of body mass, dead weight counted")
)
ANIMAL_MOST = {
    Animal.DONKEY: Constant(50, "kg", published("working-animal guidance (second hand): donkey up to 50 kg")),
    Animal.MULE: Constant(80, "kg", published("pack-mule guidance (second hand): about 80 to 90 kg in mountains")),
    Animal.PONY: Constant(70, "kg", from_memory("Indian rules of 1965 on animals: pony 70 kg")),
}
_BODY = {Animal.DONKEY: (80.0, 300.0), Animal.MULE: (150.0, 600.0), Animal.PONY: (120.0, 450.0)}


@dataclass(frozen=True, slots=True)
class LiftWarning:
    """Why a lift is too much for one person.

    Args:
        mass: what is lifted [kg].
        limit: what the equation recommends for such a lift at most [kg].
        index: mass / limit; the larger, the sooner a back is hurt.
    """

    mass: float
    limit: float
    index: float


@dataclass(frozen=True, slots=True)
class AnimalLoad:
    """What an animal may bear, ropes and saddle counted in.

    Args:
        mass: [kg].
        decides: whether print stands behind the number; if not, it may only warn that a load is too much.
    """

    mass: float
    decides: bool


@dataclass(frozen=True, slots=True)
class Material:
    """A material to carry.

    Args:
        name: key of its words.
        mass: all of it [kg].
        piece: weight of one piece (a bag, a bar) that is not opened on the way [kg]; 0 for what is poured.
    """

    name: str
    mass: float
    piece: float = 0.0


@dataclass(frozen=True, slots=True)
class Loads:
    """How many loads a material makes.

    Args:
        name: key of its words.
        mass: all of it [kg].
        loads: whole loads.
        shared: people under one piece, or parts that it is split in; 1 where one load takes whole pieces.
    """

    name: str
    mass: float
    loads: int
    shared: int


@dataclass(frozen=True, slots=True)
class LoadTable:
    """All materials.

    Args:
        lines: one for each material, in the order given.
        mass: sum [kg].
        loads: sum of the whole loads; more than the mass over one load, for nobody mixes sand with cement in a basket.
    """

    lines: tuple[Loads, ...]
    mass: float
    loads: int


def warn_of_lift(
    mass: float, *, reach: float, hands: float, travel: float, turn: float = 0.0, often: float = 1.0, grip: float = 1.0
) -> LiftWarning | None:
    """Warn where one person lifts too much. No warning does not mean that the lift is safe: the equation is recalled.

    Args:
        mass: what is lifted [kg], above 0.
        reach: hands in front of the ankles [cm], 0 to 63; nearer than 25 counts as 25.
        hands: hands above the ground at the start [cm], 0 to 175.
        travel: how far up or down it goes [cm], 0 to 175; less than 25 counts as 25.
        turn: how far the body turns [degree], 0 to 135.
        often: what is left for lifting often, above 0 to 1.
        grip: what is left for a bad grip (a bag has none), above 0 to 1.

    Raises:
        OutOfRangeError: no number, or a posture in which nobody should lift at all.

    Example:
        >>> warn_of_lift(50, reach=25, hands=75, travel=25).limit
        23.0
        >>> warn_of_lift(20, reach=25, hands=75, travel=25) is None
        True
    """
    if not (isfinite(mass) and mass > 0):
        raise OutOfRangeError(f"{mass} kg is nothing to lift; weigh it first")
    if not (
        0 <= reach <= _FARTHEST
        and 0 <= hands <= _HIGHEST
        and 0 <= travel <= _HIGHEST
        and 0 <= turn <= _WIDEST_TURN
        and 0 < often <= 1
        and 0 < grip <= 1
    ):
        raise OutOfRangeError(
            "nobody should lift so: stand nearer, turn with the feet, lift in two moves, or use a second person"
        )
    limit = (
        IDEAL_LIFT
        * (NEAREST_HANDS / max(reach, NEAREST_HANDS))
        * (1 - 0.003 * abs(hands - HIP_HEIGHT))
        * min(1.0, 0.82 + 4.5 / max(travel, LEAST_TRAVEL))
        * (1 - 0.0032 * turn)
        * often
        * grip
    )
    return LiftWarning(mass, limit, mass / limit) if mass > limit else None


def people_to_lift(mass: float) -> int:
    """People who lift one piece together, so that nobody has more than about 25 kg in the hands.

    Args:
        mass: weight of the piece [kg], above 0 to 100.

    Raises:
        OutOfRangeError: no number, or too heavy for hands: split it, or use rollers, a pole sling or wheels.

    Example:
        >>> people_to_lift(50), people_to_lift(20)
        (2, 1)
    """
    if not 0 < mass <= MOST_BY_HAND:
        raise OutOfRangeError(
            f"{mass:g} kg is not for hands (up to {MOST_BY_HAND:g} kg): split it, or use rollers, a sling or wheels"
        )
    return int(whole_up(mass / HEAD_SHARE))


def animal_load(animal: Animal, body_mass: float) -> AnimalLoad:
    """What an animal may bear on a path, saddle and ropes counted in.

    Args:
        animal: which.
        body_mass: weighed, or from the girth by someone who knows animals [kg].

    Raises:
        OutOfRangeError: a body that no grown animal of this kind has.

    Example:
        >>> animal_load(Animal.MULE, 320).mass
        64.0
    """
    low, high = _BODY[animal]
    if not low <= body_mass <= high:
        raise OutOfRangeError(
            f"a {animal.value} of {body_mass:g} kg is outside {low:g} to {high:g} kg: ask someone who knows animals"
        )
    most = ANIMAL_MOST[animal]
    return AnimalLoad(min(float(most), BODY_SHARE * body_mass), most.source.status.decides)


def loads_of(materials: Iterable[Material], load_mass: float) -> LoadTable:
    """Whole loads of each material. Each starts its own load: cement and damp sand never share a sack.

    A piece heavier than a load is split into equal parts, or borne by as many people at once; the number is the same.

    Args:
        materials: what goes up to the site; water is one of them where it does not run there.
        load_mass: what one carrier takes at once [kg], 10 to 200.

    Raises:
        OutOfRangeError: a load outside its range, a weight below nothing, or a name given twice.

    Example:
        >>> table = loads_of([Material("cement", 350, piece=50), Material("sand", 1010)], 30)
        >>> [(line.name, line.loads, line.shared) for line in table.lines], table.loads
        ([('cement', 14, 2), ('sand', 34, 1)], 48)
    """
    if not LEAST_LOAD <= load_mass <= MOST_LOAD:
        raise OutOfRangeError(f"a load of {load_mass:g} kg is outside {LEAST_LOAD:g} to {MOST_LOAD:g} kg")
    lines: list[Loads] = []
    for material in materials:
        if not (isfinite(material.mass) and material.mass >= 0 and 0 <= material.piece < float("inf")):
            raise OutOfRangeError(f"{material.name}: a weight can't be below nothing")
        if any(line.name == material.name for line in lines):
            raise OutOfRangeError(f"{material.name} is given twice: add the two up first")
        loads, shared = _loads(material, load_mass)
        lines.append(Loads(material.name, material.mass, loads, shared))
    return LoadTable(tuple(lines), sum(line.mass for line in lines), sum(line.loads for line in lines))


def _loads(material: Material, load_mass: float) -> tuple[int, int]:
    if not material.piece:
        return int(whole_up(material.mass / load_mass)), 1
    pieces = whole_up(material.mass / material.piece)
    together = whole_down(load_mass / material.piece)
    if together:
        return int(whole_up(pieces / together)), 1
    shared = whole_up(material.piece / load_mass)
    return int(pieces * shared), int(shared)
