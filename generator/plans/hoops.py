"""Which hoops, and how close in each height zone: the least steel that the shop has and that every level can bear.

Each zone is made for the larger of two pulls: what the shell asks for (the larger of a hinged and a fixed foot, and
below the most loaded level its full value), and what a foot that slides would ask for at the zone's lowest level. The
first one decides; the second one costs little and stands even where the joint at the foot gives way.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import pi

from generator.calculations.hoops import BAR_MASS_DIVISOR
from generator.calculations.ring_levels import allowed_steel_stress, free_ring_tension, zone_tension
from generator.formula import OutOfRangeError, whole_down, whole_up
from generator.plans.shape import Shape
from generator.plans.shop import Bar

ZONES = 3
"""Height zones of a wall; each closes evenly, and a mason can keep three spacings in mind."""
CLOSEST, CLOSEST_GOOD, WIDEST = 0.05, 0.08, 0.20
"""Spacing that mortar still fills, that it fills well, and the widest that holds the mesh [m]."""
TAPE_STEP = 0.005
LAP_DIAMETERS = 55.0
"""Lap of a hoop in bar diameters, where a place does not say another one."""
THINNEST, THICKEST = 4.0, 12.0
"""Hoops thinner are wire that rusts through, thicker ones can't be bent true by hand [mm]."""


@dataclass(frozen=True, slots=True)
class Zone:
    """Hoops of one height zone.

    Args:
        from_height: its foot above the floor [m].
        to_height: its top [m].
        gaps: spaces between its hoops.
        widest: distance from hoop to hoop that must not be passed [m].
        spacing: from hoop to hoop [m], so that the zone closes evenly.
        demand: ring tension that it must bear, the larger of a hinged and a fixed foot [kN/m].
        free: ring tension if the foot could slide, at the zone's foot [kN/m].
        needed: hoop steel that the demand needs [mm2/m].
        steel: hoop steel that it has [mm2/m].
        stress: in the hoops under the demand [MPa].
        stress_free: in the hoops if the foot could slide [MPa].
    """

    from_height: float
    to_height: float
    gaps: int
    widest: float
    spacing: float
    demand: float
    free: float
    needed: float
    steel: float
    stress: float
    stress_free: float


@dataclass(frozen=True, slots=True)
class Hoops:
    """All the hoops of a wall.

    Args:
        bar: what they are made of.
        zones: from the foot up.
        wall_thickness: of the wall that holds them [mm].
        allowed: working stress of the bar [MPa].
        count: hoops in the wall, foot and top counted.
        mass_of_a_metre: steel in a metre of girth [kg/m]: what is compared.
    """

    bar: Bar
    zones: tuple[Zone, ...]
    wall_thickness: float
    allowed: float
    count: int
    mass_of_a_metre: float


def zone_heights(wall_height: float) -> tuple[tuple[float, float], ...]:
    """Foot and top of each zone [m]; they are equally high."""
    part = wall_height / ZONES
    return tuple((part * zone, part * (zone + 1)) for zone in range(ZONES))


def hoops_for(shape: Shape, bars: Sequence[Bar], wall_thickness: Callable[[Bar], float]) -> tuple[Hoops, ...]:
    """Every way to hoop a wall with the shop's bars that passes, the best first: least steel, then fewest hoops.

    Args:
        shape: of the tank.
        bars: of the shop.
        wall_thickness: of the wall with a hoop of that bar [mm]; raises OutOfRangeError where none is possible.

    Returns:
        Empty where no bar is strong enough at a spacing that mortar still fills: an honest no.
    """
    return tuple(sorted(each_hoops(shape, bars, wall_thickness), key=_preference))


def each_hoops(shape: Shape, bars: Sequence[Bar], wall_thickness: Callable[[Bar], float]) -> Iterator[Hoops]:
    """As `hoops_for`, one way after the other, from the thinnest bar."""
    for bar in _unlike(bars):
        if not THINNEST <= bar.diameter <= THICKEST:
            continue
        try:
            thickness = wall_thickness(bar)
        except OutOfRangeError:
            continue
        hoops = _closed(shape, bar, thickness)
        if hoops is not None:
            yield hoops


def _preference(hoops: Hoops) -> tuple[bool, float, int, float]:
    return is_tight(hoops), round(hoops.mass_of_a_metre, 6), hoops.count, hoops.bar.diameter


def is_tight(hoops: Hoops) -> bool:
    """Whether any hoops stand so close that mortar fills them badly."""
    return min(zone.widest for zone in hoops.zones) < CLOSEST_GOOD - 1e-9


def _unlike(bars: Iterable[Bar]) -> list[Bar]:
    """Of bars that differ only in their length, the longest."""
    best: dict[tuple[float, bool], Bar] = {}
    for bar in bars:
        key = (bar.diameter, bar.ribbed)
        if key not in best or bar.length > best[key].length:
            best[key] = bar
    return [best[key] for key in sorted(best)]


def _closed(shape: Shape, bar: Bar, wall_thickness: float) -> Hoops | None:
    """The hoops of one bar, as far apart as each zone allows; none if a zone would need them too close."""
    area, allowed = bar_area(bar), allowed_steel_stress(bar.ribbed)
    zones = []
    for low, high in zone_heights(shape.wall_height):
        demand, free = zone_pulls(shape, wall_thickness, low, high)
        needed = max(demand, free) * 1000 / allowed
        widest = WIDEST if needed <= 0 else min(WIDEST, float(whole_down(area / needed / TAPE_STEP)) * TAPE_STEP)
        if widest < CLOSEST - 1e-9:
            return None
        zones.append(zone_with(low, high, widest, area, demand, free, allowed))
    count = 1 + sum(zone.gaps for zone in zones)
    return Hoops(bar, tuple(zones), wall_thickness, allowed, count, count * bar_mass(bar.diameter))


def zone_with(low: float, high: float, widest: float, area: float, demand: float, free: float, allowed: float) -> Zone:
    """A zone whose hoops stand at most so wide, and close evenly.

    Args:
        low: its foot [m].
        high: its top [m].
        widest: spacing not to be passed [m].
        area: of one hoop [mm2].
        demand: ring tension that it must bear [kN/m].
        free: ring tension of a sliding foot [kN/m].
        allowed: working stress [MPa].
    """
    gaps = int(whole_up((high - low) / widest))
    spacing = (high - low) / gaps
    steel = area / spacing
    return Zone(
        low, high, gaps, widest, spacing, demand, free, demand * 1000 / allowed, steel, demand * 1000 / steel,
        free * 1000 / steel,
    )  # fmt: skip


def zone_pulls(shape: Shape, wall_thickness: float, low: float, high: float) -> tuple[float, float]:
    """Ring tension that a zone must bear, and the one of a sliding foot at its lowest level [kN/m]."""
    if low >= shape.water_depth:
        return 0.0, 0.0
    return _pulls(shape.water_depth, shape.inside_diameter, wall_thickness, low, high)


@lru_cache(maxsize=1 << 10)
def _pulls(depth: float, diameter: float, thickness: float, low: float, high: float) -> tuple[float, float]:
    return zone_tension(depth, diameter, thickness, low, high), free_ring_tension(depth, diameter, low)


def bar_mass(diameter: float) -> float:
    """Mass of a metre of bar or wire, by the divisor of the calculation module; its own range ends at bars [kg/m].

    Args:
        diameter: [mm].
    """
    return diameter**2 / float(BAR_MASS_DIVISOR)


def bar_area(bar: Bar) -> float:
    """Cut face of a bar [mm2]."""
    return pi * bar.diameter**2 / 4


def uniform_hoops(shape: Shape, bar: Bar, spacing: float, wall_thickness: float) -> Hoops:
    """What someone would like to build: one bar at one spacing all the way up, judged and not bettered.

    Args:
        shape: of the tank.
        bar: of the hoops.
        spacing: widest distance from hoop to hoop [m].
        wall_thickness: [mm].
    """
    area, allowed = bar_area(bar), allowed_steel_stress(bar.ribbed)
    whole_gaps = whole_up(shape.wall_height / spacing)
    even = shape.wall_height / whole_gaps
    demand, free = zone_pulls(shape, wall_thickness, 0.0, shape.wall_height)
    zone = zone_with(0.0, shape.wall_height, even, area, demand, free, allowed)
    return Hoops(bar, (zone,), wall_thickness, allowed, zone.gaps + 1, (zone.gaps + 1) * bar_mass(bar.diameter))


def bears(hoops: Hoops) -> bool:
    """Whether no hoop is stressed over its working stress, neither as the shell asks nor with a sliding foot."""
    return all(max(zone.stress, zone.stress_free) <= hoops.allowed + 1e-9 for zone in hoops.zones)
