"""A drinking trough for animals: half-round, bedded along its sides, without a joint."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import pi
from typing import Any

from generator.calculations import BOOK
from generator.calculations.foot import ARM_SHARE
from generator.calculations.ring_levels import allowed_steel_stress
from generator.calculations.ring_strength import MORTAR_TENSION_ALLOWED, PLAIN_STEEL_STRESS
from generator.formula import whole_up
from generator.plans.as_data import FORMAT, key_of
from generator.plans.checks import Check, most
from generator.plans.given import USUAL, dry_factor
from generator.plans.mesh_list import AREA_LAPS
from generator.plans.refused import NoPlanError, outside
from generator.plans.shop import Mesh, Shop
from generator.plans.tell import Section, Tell
from generator.plans.wall import MESH_COVER, mesh_faces, ring_steel
from generator.words import Words

LEAST, MOST = 40.0, 3000.0
"""Litres that a trough can be asked for."""
RIM_GAP = 0.05
LONGEST = 4.0
"""A longer trough cracks across where its ground gives: build two [m]."""
RADII = (0.20, 0.25, 0.30, 0.35, 0.40, 0.45)
BED = 90.0
THICKNESS = 40.0
BED_STONE = 0.10
_NAMES = ("trough_volume", "trough_water_volume", "trough_pull", "trough_bedded_moment", "trough_bedded_stress",
          "trough_end_force")  # fmt: skip


@dataclass(frozen=True, slots=True)
class TroughPlan:
    """A trough.

    Args:
        litres: that were asked for.
        radius: half across the rim [m].
        length: inside [m].
        mesh: two layers of it.
        values: what the calculation module says about it.
        checks: of the trough.
        bags: of cement.
        sand: damp [m3].
        mesh_area: with laps [m2].
        rim_bar: bar round the rim [m].
        stone: of its bed [m3].
    """

    litres: float
    radius: float
    length: float
    mesh: Mesh
    values: Mapping[str, float]
    checks: tuple[Check, ...]
    bags: int
    sand: float
    mesh_area: float
    rim_bar: float
    stone: float


def trough_for(litres: float, shop: Shop) -> TroughPlan:
    """The narrowest trough of at most four metres that holds the litres under its overflow.

    Args:
        litres: of water, 40 to 3000.
        shop: its mesh.

    Raises:
        NoPlanError: a size outside the range, too long for one trough, or mesh that does not bear it.

    Example:
        >>> from generator.plans.shop import USUAL_SHOP
        >>> trough = trough_for(300, USUAL_SHOP)
        >>> trough.radius, trough.length, trough.values["trough_water_volume"] >= 0.3
        (0.3, 2.7, True)
    """
    if not LEAST <= litres <= MOST:
        raise outside("--litres", litres, LEAST, MOST, "L")
    mesh = mesh_faces(shop)[0].mesh
    for radius in RADII:
        one = _values(radius, 1.0)["trough_water_volume"]
        length = round(float(whole_up(litres / 1000 / one / 0.1)) * 0.1, 1)
        if length <= LONGEST:
            return _made(litres, radius, max(0.5, length), mesh)
    count = int(whole_up(litres / 1000 / (_values(RADII[-1], LONGEST)["trough_water_volume"])))
    raise NoPlanError(
        "trough_too_long", litres=f"{litres:g}", count=f"{count}", each=f"{float(whole_up(litres / count)):g}"
    )


def _values(radius: float, length: float) -> dict[str, float]:
    given = {
        "trough_radius": radius, "trough_length": length, "trough_rim_gap": RIM_GAP, "trough_bed_angle": BED,
        "trough_wall_thickness": THICKNESS,
    }  # fmt: skip
    return BOOK.evaluate(given, _NAMES)


def _made(litres: float, radius: float, length: float, mesh: Mesh) -> TroughPlan:
    values = _values(radius, length)
    checks = [
        most("trough_stress", values["trough_bedded_stress"], float(MORTAR_TENSION_ALLOWED), "MPa",
             MORTAR_TENSION_ALLOWED.source)
    ]  # fmt: skip
    if mesh.square:
        depth = THICKNESS - MESH_COVER - mesh.thickness / 2
        needed = values["trough_bedded_moment"] * 1e6 / (allowed_steel_stress(ribbed=False) * float(ARM_SHARE) * depth)
        needed += values["trough_pull"] * 1000 / allowed_steel_stress(ribbed=False)
        checks.append(most("trough_steel", needed, 2 * ring_steel(mesh), "mm**2/m", PLAIN_STEEL_STRESS.source))
    if any(check.decides and not check.good for check in checks):
        raise NoPlanError("trough_too_weak", width=f"{2 * radius:.2f}")
    shell = pi * radius * length + pi * radius**2
    mortar = BOOK.work_out(
        {"wall_mortar_volume": shell * THICKNESS / 1000, "dry_volume_factor": dry_factor(USUAL),
         **{name: USUAL[name] for name in ("mortar_waste", "sand_parts", "sand_bulking")}},
        ("cement_bags", "sand_volume_damp"), check=False,
    )  # fmt: skip
    bed = (2 * radius + 0.2) * (length + 0.2) * BED_STONE
    rim = 2 * length + 2 * pi * radius + 0.5
    return TroughPlan(
        litres, radius, length, mesh, values, tuple(checks), round(mortar["cement_bags"]), mortar["sand_volume_damp"],
        2 * shell * AREA_LAPS, rim, bed,
    )  # fmt: skip


def trough_data(trough: TroughPlan) -> dict[str, Any]:
    """A trough as plain data.

    Args:
        trough: from `trough_for`.
    """
    return {
        "format": FORMAT,
        "result": "trough",
        "asked": {"litres": trough.litres},
        "trough": {
            "radius_m": trough.radius, "length_m": trough.length, "wall_thickness_mm": THICKNESS, "bed_degree": BED,
            "rim_gap_m": RIM_GAP,
        },
        "materials": {
            "cement_bags": trough.bags, "sand_m3": trough.sand, "mesh_m2": trough.mesh_area,
            "rim_bar_m": trough.rim_bar, "stone_m3": trough.stone,
        },
        "checks": [
            {
                "name": check.name, "demand": check.demand, "capacity": check.capacity, "unit": check.unit,
                "ratio": check.ratio, "good": check.good, "decides": check.decides, "source": check.source,
                "status": check.status.value,
            }
            for check in trough.checks
        ],
        "quantities": {key_of(name, BOOK.entry(name).unit): value for name, value in trough.values.items()},
    }  # fmt: skip


def trough_sections(trough: TroughPlan, words: Words) -> tuple[Section, ...]:
    """A trough told in sections.

    Args:
        trough: from `trough_for`.
        words: of the reader's language.
    """
    tell = Tell(words)
    rows = [tell.quantity(name, value) for name, value in trough.values.items()]
    rows += [
        (words.say("plan.material.mortar_bags"), tell.number(trough.bags)),
        (words.say("plan.material.sand"), tell.sized(trough.sand, 2, "m**3")),
        (words.say("plan.material.mesh"), f"{tell.sized(trough.mesh_area, 1, 'm**2')}, {tell.mesh(trough.mesh)}"),
        (words.say("plan.trough.rim_bar"), tell.sized(trough.rim_bar, 1, "m")),
        (words.say("plan.trough.bed"), tell.sized(trough.stone, 2, "m**3")),
    ]
    head = (words.say("plan.head.what"), words.say("plan.head.how_many"))
    checks = tuple(
        (words.say_one_of("plan.check", check.name), tell.sized(check.demand, 2, check.unit),
         tell.sized(check.capacity, 2, check.unit), tell.number(check.ratio, 2))
        for check in trough.checks
    )  # fmt: skip
    check_head = (words.say("plan.head.check"), words.say("plan.head.demand"), words.say("plan.head.capacity"),
                  words.say("plan.head.ratio"))  # fmt: skip
    cautions = ("wet_cement", "drowning", "drinking", "law")
    return (
        Section("trough", words.say("plan.trough.heading", litres=tell.sized(trough.litres, 0, "L")),
                (words.say("plan.trough.bed_note"), words.say("plan.trough.herd")), head, tuple(rows)),
        Section("checks", words.say("plan.section.checks"), (words.say("plan.checks_note"),), check_head, checks),
        Section("cautions", words.say("plan.section.cautions"),
                tuple(words.say_one_of("plan.caution", name) for name in cautions)),
    )  # fmt: skip
