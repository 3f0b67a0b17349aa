"""Every check of a plan: what is asked for, what is there, the ratio, the source, and whether it decides."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from generator.calculations import BOOK
from generator.calculations.column_roof import PUNCHING_ALLOWED
from generator.calculations.foot import NEWTON_MILLIMETRES
from generator.calculations.ring_levels import allowed_steel_stress, ring_tension
from generator.calculations.ring_strength import MORTAR_TENSION_ALLOWED, PLAIN_STEEL_STRESS, RIBBED_STEEL_STRESS
from generator.calculations.roof import MORTAR_BENDING_ALLOWED
from generator.calculations.soils import Soil, judge_ground
from generator.calculations.stability import UPLIFT_SAFETY_USUAL, WIND_SAFETY_USUAL
from generator.formula import Constant, Source, Status, common_practice, derived, published
from generator.plans.footing import Footing
from generator.plans.hoops import Hoops, bar_area
from generator.plans.roofing import Roof, RoofKind
from generator.plans.shape import Shape
from generator.plans.wall import MESH_COVER, Wall, bending_of_uprights, upright_stress
from generator.plans.wish import Site

_BOND = Constant(1.2, "MPa", published("lap rules of reinforced concrete, plain bars in M20 concrete: bond 1.2 MPa"))
_RIBBED_BOND = Constant(1.6, "", published("the same rules: 60 % more for ribbed bars"))
_STRAIGHT_PULL = Constant(2, "", derived("a hoop is pulled straight along: twice the length, on the safe side"))
_COVER_AIM = Constant(8, "mm", common_practice("cover over bars: aim at 8 mm, so that no reading is under 5"))
_HAIR = 1e-9


@dataclass(frozen=True, slots=True)
class Check:
    """One check.

    Args:
        name: key of its words.
        demand: what is asked for, or the least that must be there.
        capacity: what is there, or the most that is allowed.
        unit: of both.
        ratio: demand over capacity: good up to 1.
        decides: a failing check that decides refuses the plan; the others warn.
        source: of the limit.
        status: of that source.
        zone: number of the height zone, from 1 at the foot; 0 where it is about the whole tank.
    """

    name: str
    demand: float
    capacity: float
    unit: str
    ratio: float
    decides: bool
    source: str
    status: Status
    zone: int = 0

    @property
    def good(self) -> bool:
        """Whether the demand is met."""
        return self.ratio <= 1 + _HAIR


def most(
    name: str, demand: float, allowed: float, unit: str, source: Source, *, decides: bool = True, zone: int = 0
) -> Check:
    """A check of something that may be at most so much. What rests on memory or on habit never decides."""
    sure = decides and source.status in (Status.PUBLISHED, Status.DERIVED)
    return Check(name, demand, allowed, unit, demand / allowed, sure, source.text, source.status, zone)


def least(name: str, wanted: float, there: float, unit: str, source: Source, *, decides: bool = True) -> Check:
    """A check of something that must be at least so much."""
    ratio = wanted / there if there > 0 else float("inf")
    sure = decides and source.status in (Status.PUBLISHED, Status.DERIVED)
    return Check(name, wanted, there, unit, ratio, sure, source.text, source.status)


def _stress_source(ribbed: bool) -> Source:
    return (RIBBED_STEEL_STRESS if ribbed else PLAIN_STEEL_STRESS).source


def all_checks(
    shape: Shape, wall: Wall, footing: Footing, roof: Roof, values: Mapping[str, float], site: Site
) -> tuple[Check, ...]:
    """All the checks of a tank on its site, in the order of building.

    Args:
        shape: of the tank.
        wall: of the tank.
        footing: of the wall.
        roof: of the tank.
        values: everything that the calculation module says about it.
        site: where it stands.
    """
    return (
        *_ground(values, shape, site),
        *_foot(footing, wall),
        *_wall(shape, wall, values["lap_diameters"]),
        *_roof(roof),
        *_stability(values, site),
        least("overflow", 1.0, values["overflow_ratio"], "", BOOK.entry("overflow_ratio").source),
    )


def _ground(values: Mapping[str, float], shape: Shape, site: Site) -> Iterator[Check]:
    pressure = values["ground_pressure_full"]
    if site.soil:
        found = judge_ground(Soil(site.soil), site.wet_soil, pressure)
        if found.allowed is not None:
            source = published("IS 1904:1986 as printed in Geotechnical Engineering, p. 544, table 14.1")
            yield most("ground_pressure", pressure, found.allowed, "kN/m**2", source)


def _foot(footing: Footing, wall: Wall) -> Iterator[Check]:
    values, bar = footing.values, footing.bar
    source = _stress_source(bar.ribbed)
    yield most("starter_steel", values["starter_steel_needed"], bar_area(bar) / footing.spacing, "mm**2/m", source)
    yield most("base_ring", values["base_ring_steel"], footing.ring_bars * bar_area(bar), "mm**2", source)
    bending = 6 * values["foot_moment"] * float(NEWTON_MILLIMETRES) / 1000 / wall.thickness**2
    yield most("foot_mortar", bending, float(MORTAR_BENDING_ALLOWED), "MPa", MORTAR_BENDING_ALLOWED.source)


def _wall(shape: Shape, wall: Wall, lap: float) -> Iterator[Check]:
    levels = [shape.water_depth * share / 200 for share in range(201)]
    pull = ring_tension(shape.water_depth, shape.inside_diameter, wall.thickness, levels)
    worst, free = float(pull.demand.max()), float(pull.free.max())
    if wall.hoops is None:
        stress, plain = worst * 1000 / wall.mesh_steel, _stress_source(ribbed=False)
        yield most("mesh_stress", stress, allowed_steel_stress(ribbed=False), "MPa", plain)
        yield most("mesh_stress_free", free * 1000 / wall.mesh_steel, allowed_steel_stress(ribbed=False), "MPa", plain)
    else:
        yield from _hoops(wall.hoops, lap)
    yield most(
        "mortar_tension", worst / wall.thickness, float(MORTAR_TENSION_ALLOWED), "MPa", MORTAR_TENSION_ALLOWED.source
    )
    if wall.upright is not None:
        stress = upright_stress(shape, wall.thickness, wall.upright, wall.upright_spacing, wall.inside)
        yield most(
            "uprights", stress, allowed_steel_stress(wall.upright.ribbed), "MPa", _stress_source(wall.upright.ribbed)
        )
        bending = 6 * bending_of_uprights(shape, wall.thickness) * 1000 / wall.thickness**2
        yield most("wall_mortar_bending", bending, float(MORTAR_BENDING_ALLOWED), "MPa", MORTAR_BENDING_ALLOWED.source)
        for name, face in (("cover_inside", wall.inside), ("cover_outside", wall.outside)):
            yield least(name, float(_COVER_AIM), MESH_COVER + face.thickness, "mm", _COVER_AIM.source)
    yield most(
        "wall_limit", wall.thickness, BOOK.quantities["wall_thickness"].high, "mm", BOOK.entry("wall_thickness").source
    )


def _hoops(hoops: Hoops, lap: float) -> Iterator[Check]:
    source = _stress_source(hoops.bar.ribbed)
    for number, zone in enumerate(hoops.zones, start=1):
        if zone.demand > 0:
            yield most("hoop_stress", zone.stress, hoops.allowed, "MPa", source, zone=number)
    for number, zone in enumerate(hoops.zones, start=1):
        if zone.free > 0:
            yield most("hoop_stress_free", zone.stress_free, hoops.allowed, "MPa", source, decides=False, zone=number)
    worst = max(max(zone.stress, zone.stress_free) for zone in hoops.zones)
    yield least("hoop_lap", lap_needed(worst, hoops.bar.ribbed), lap, "", _STRAIGHT_PULL.source)


def lap_needed(stress: float, ribbed: bool) -> float:
    """Lap that hands a hoop's pull over, in bar diameters.

    Args:
        stress: in the hoop [MPa].
        ribbed: whether its bar has ribs.

    Example:
        >>> round(lap_needed(115, ribbed=False)), round(lap_needed(130, ribbed=True))
        (48, 34)
    """
    bond = float(_BOND) * (float(_RIBBED_BOND) if ribbed else 1.0)
    return float(_STRAIGHT_PULL) * stress / (4 * bond)


def _roof(roof: Roof) -> Iterator[Check]:
    values, area = roof.values, bar_area(roof.bar)
    source, bending = _stress_source(roof.bar.ribbed), MORTAR_BENDING_ALLOWED
    if roof.kind is RoofKind.FLAT:
        yield most("roof_steel", values["flat_roof_steel_needed"], area / roof.spacing, "mm**2/m", source)
        yield most("roof_mortar", values["flat_roof_stress"], float(bending), "MPa", bending.source)
    elif roof.kind is RoofKind.RIBS:
        yield most("rib_steel", values["rib_steel_needed"], area * roof.ring_bars, "mm**2", source)
        yield most("roof_mortar", values["rib_slab_stress"], float(bending), "MPa", bending.source)
    elif roof.kind is RoofKind.COLUMN:
        yield most("column_top_steel", values["column_steel_needed"], area / roof.spacing, "mm**2/m", source)
        yield most("punching", values["punching_stress"], float(PUNCHING_ALLOWED), "MPa", PUNCHING_ALLOWED.source)
        yield most("roof_mortar", values["column_roof_stress"], float(bending), "MPa", bending.source)
    else:
        yield most("roof_ring", values[f"{roof.kind.value}_ring_steel"], area * roof.ring_bars, "mm**2", source)


def _stability(values: Mapping[str, float], site: Site) -> Iterator[Check]:
    for name in ("overturning_safety", "sliding_safety"):
        yield least(name, float(WIND_SAFETY_USUAL), values[name], "", WIND_SAFETY_USUAL.source)
    if site.ground_water > 0:
        yield least(
            "uplift_safety", float(UPLIFT_SAFETY_USUAL), values["uplift_safety"], "", UPLIFT_SAFETY_USUAL.source
        )
