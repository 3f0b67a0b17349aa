"""Angles of the frame: which size, how deep they stand, which way their legs look, and what a shop may give instead.

Policy of this course, not a code: angles are guides that keep a cage round and upright until its hoops are tied; they
are not counted as strength. Small tanks need none: bars are stiff enough. How an angle stands: one leg flat along the
ring, where the hoops bear on it, the other across the wall, looking at the centre; every angle the same way round, so
that distances are taped from the same edge. Caution: a cage without hoops can fall over a person: stay it from
outside.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import isfinite, pi

from generator.calculations.uprights import STEEL_MASS
from generator.formula import Constant, OutOfRangeError, common_practice, derived, from_memory

_POLICY = derived("policy of this course, from tanks worked by hand; not a code")
BARS_ALONE_VOLUME = Constant(5, "m**3", _POLICY)
BARS_ALONE_HEIGHT = Constant(1.5, "m", _POLICY)
HEIGHT_IN_LEGS = Constant(80, "", _POLICY)
WIDEST, HIGHEST = Constant(8.0, "m", _POLICY), Constant(2.4, "m", _POLICY)
CONCRETE_UNDER_FOOT = Constant(0.05, "m", common_practice("concrete between the angle's foot and the ground"))
DEEPEST_FOOT = Constant(0.15, "m", common_practice("more foot than this holds an angle no better"))
SHALLOWEST_FOOT = Constant(0.05, "m", common_practice("less foot than this holds nothing: bolt the angle down instead"))
DOUBT = Constant(0.06, "", derived("rounded corners and one printed decimal make up to 5 %"))
_TABLE = from_memory("mass of a metre of equal angle; check against a steel table")
_HAIR = 1e-9


@dataclass(frozen=True, slots=True)
class EqualAngle:
    """An equal angle, worked out with square corners.

    Args:
        leg: [mm].
        thickness: of a leg [mm].

    Raises:
        OutOfRangeError: a size that is no angle.

    Example:
        >>> angle = EqualAngle(30, 3)
        >>> round(angle.area), round(angle.mass, 2)
        (171, 1.34)
    """

    leg: float
    thickness: float

    def __post_init__(self) -> None:
        """Refuse what is no angle."""
        if not (isfinite(self.leg) and 0 < self.thickness < self.leg / 2):
            raise OutOfRangeError(
                f"{self.leg:g} x {self.leg:g} x {self.thickness:g} mm is no angle: measure one leg over the corner, "
                "and its thickness; ask the shop"
            )

    @property
    def area(self) -> float:
        """Cut face: two legs, the corner once [mm2]."""
        return (2 * self.leg - self.thickness) * self.thickness

    @property
    def mass(self) -> float:
        """Mass of a metre, derived; this number decides [kg/m]."""
        return self.area * float(STEEL_MASS)

    @property
    def stiffness(self) -> float:
        """Second moment of the cut face about the axis through its centre, parallel to a leg [mm4]."""
        leg, thick = self.leg, self.thickness
        flat, upright = leg * thick, (leg - thick) * thick
        upright_middle = thick + (leg - thick) / 2
        middle = (flat * thick / 2 + upright * upright_middle) / (flat + upright)
        own = leg * thick**3 / 12 + thick * (leg - thick) ** 3 / 12
        return own + flat * (middle - thick / 2) ** 2 + upright * (middle - upright_middle) ** 2


ANGLES: tuple[tuple[EqualAngle, Constant], ...] = (
    (EqualAngle(20, 3), Constant(0.9, "kg/m", _TABLE)),
    (EqualAngle(25, 3), Constant(1.1, "kg/m", _TABLE)),
    (EqualAngle(30, 3), Constant(1.4, "kg/m", _TABLE)),
    (EqualAngle(35, 5), Constant(2.6, "kg/m", _TABLE)),
    (EqualAngle(40, 5), Constant(3.0, "kg/m", _TABLE)),
    (EqualAngle(50, 5), Constant(3.8, "kg/m", _TABLE)),
    (EqualAngle(50, 6), Constant(4.5, "kg/m", _TABLE)),
    (EqualAngle(65, 6), Constant(5.8, "kg/m", _TABLE)),
)
"""Ordinary angles and what a steel table is recalled to say; the recalled mass may only warn, see `mass_in_doubt`."""
SMALLEST = EqualAngle(25, 3)


@dataclass(frozen=True, slots=True)
class AngleChoice:
    """What a frame wants.

    Args:
        angle: the smallest that will do.
        foot: how deep it stands in the concrete of a base of ordinary thickness [m]; see `foot_depth` for a given base.
    """

    angle: EqualAngle
    foot: float

    @property
    def leg(self) -> float:
        """Leg of the angle [mm]."""
        return self.angle.leg

    @property
    def thickness(self) -> float:
        """Thickness of a leg [mm]."""
        return self.angle.thickness


def angle_for(inside_diameter: float, wall_height: float) -> AngleChoice | None:
    """The smallest angle for a tank's frame; none where bars alone, or mesh alone, keep their shape.

    None is needed up to 5 m3 behind a wall of up to 1.5 m. Above that a wall is at most 80 legs high.

    Args:
        inside_diameter: [m], up to 8.
        wall_height: [m], up to 2.4.

    Raises:
        OutOfRangeError: a size that this course does not build; ask a licensed engineer.

    Example:
        >>> choice = angle_for(inside_diameter=3.4, wall_height=1.65)
        >>> choice.leg, choice.thickness, choice.foot
        (25, 3, 0.1)
        >>> angle_for(inside_diameter=1.4, wall_height=1.2) is None
        True
    """
    if not (0 < inside_diameter <= WIDEST + _HAIR and 0 < wall_height <= HIGHEST + _HAIR):
        raise OutOfRangeError(
            f"a wall {wall_height:g} m high round a tank {inside_diameter:g} m wide is outside this course "
            "(up to 2.4 m and 8 m): ask a licensed engineer"
        )
    volume = pi / 4 * inside_diameter**2 * wall_height
    if volume <= BARS_ALONE_VOLUME + _HAIR and wall_height <= BARS_ALONE_HEIGHT + _HAIR:
        return None
    least_leg = max(1000 * wall_height / HEIGHT_IN_LEGS, SMALLEST.leg)
    angle = next(angle for angle, _ in ANGLES if angle.leg >= least_leg - _HAIR)
    return AngleChoice(angle, foot_depth(150))


def foot_depth(concrete_thickness: float) -> float:
    """How deep an angle's foot stands in the base under the wall: never through it, steel in the ground rusts upward.

    Args:
        concrete_thickness: of the base under the wall, its thickened edge counted in [mm].

    Returns:
        Depth, to the centimetre below [m].

    Raises:
        OutOfRangeError: the base is too thin to hold a foot.

    Example:
        >>> foot_depth(130), foot_depth(250)
        (0.08, 0.15)
    """
    depth = concrete_thickness / 1000 - CONCRETE_UNDER_FOOT
    if not (isfinite(depth) and depth >= SHALLOWEST_FOOT - _HAIR):
        raise OutOfRangeError(
            f"{concrete_thickness:g} mm of concrete under the wall hold no foot: thicken the edge to 100 mm or more, "
            "or bolt the angles down; ask a licensed engineer"
        )
    return min(int(100 * depth + _HAIR) / 100, float(DEEPEST_FOOT))


def equal_angles(wanted: EqualAngle, sold: Iterable[EqualAngle]) -> tuple[EqualAngle, ...]:
    """Angles of a shop that do what the wanted one does, the lightest first.

    As stiff, and not thinner: thin legs rust through and twist. A larger leg may make the wall thicker, so work its
    build-up out again.

    Args:
        wanted: the angle in the plan.
        sold: what the shop has.

    Example:
        >>> equal_angles(EqualAngle(25, 3), [EqualAngle(20, 3), EqualAngle(35, 5), EqualAngle(30, 3)])
        (EqualAngle(leg=30, thickness=3), EqualAngle(leg=35, thickness=5))
    """
    good = [a for a in sold if a.stiffness >= wanted.stiffness - _HAIR and a.thickness >= wanted.thickness - _HAIR]
    return tuple(sorted(good, key=lambda angle: (angle.mass, angle.leg)))


def mass_in_doubt(angle: EqualAngle, mass: float) -> bool:
    """A warning: whether a mass that someone names is more than 6 % off the derived one. It never decides.

    Args:
        angle: as sold.
        mass: of a metre, off a shop's list or a scale [kg/m].

    Example:
        >>> mass_in_doubt(EqualAngle(30, 3), 1.36), mass_in_doubt(EqualAngle(30, 3), 0.7)
        (False, True)
    """
    return not abs(mass / angle.mass - 1) <= DOUBT
