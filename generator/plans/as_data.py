"""A plan as data for a program: stable keys, every number with its unit in its name, `format: 1`.

Keys are only ever added; a changed meaning gets a new key, and a removed one a new format.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from generator.calculations import BOOK
from generator.calculations.bill import Bill, Comparison
from generator.calculations.build_jobs import HOLD_POINTS
from generator.plans.checks import Check
from generator.plans.hoops import Hoops
from generator.plans.mesh_list import FaceMesh
from generator.plans.plan import Offer, Plan, Refusal
from generator.plans.shop import Bar, Mesh

FORMAT = 1
_UNITS = {
    "": "", "m": "_m", "mm": "_mm", "m**2": "_m2", "m**3": "_m3", "mm**2": "_mm2", "mm**2/m": "_mm2_per_m", "L": "_l",
    "kg": "_kg", "kg/m": "_kg_per_m", "%": "_percent", "kN": "_kn", "kN/m": "_kn_per_m", "kN/m**2": "_kn_per_m2",
    "kN*m": "_kn_m", "kN*m/m": "_kn_m_per_m", "MPa": "_mpa", "degree": "_degree",
}  # fmt: skip


def key_of(name: str, unit: str) -> str:
    """A key with its unit, as in `inside_diameter_m`; units that have no short form are spelled out.

    Example:
        >>> key_of("roof_load", "kN/m**2"), key_of("daily_need", "L/day"), key_of("hoop_count", "")
        ('roof_load_kn_per_m2', 'daily_need_l_per_day', 'hoop_count')
    """
    known = _UNITS.get(unit)
    if known is not None:
        return name + known
    spelled = unit.replace("**", "").replace("/", "_per_").replace("*", "_").replace("%", "percent").lower()
    return f"{name}_{spelled}"


def as_data(result: Plan | Refusal) -> dict[str, Any]:
    """A plan or a refusal as plain data.

    Args:
        result: of `make_plan`.
    """
    if isinstance(result, Refusal):
        return {
            "format": FORMAT,
            "result": "refused",
            "asked": {"litres": result.wish.litres},
            "reason": {"key": result.reason.key, **result.reason.numbers},
            "band_reasons": [] if result.judgement is None else list(result.judgement.reasons),
            "failed_checks": [_check(check) for check in result.failed],
            "offers": [_offer(offer) for offer in result.offers],
        }
    return {
        "format": FORMAT,
        "result": result.judgement.band.name.lower(),
        "asked": {"litres": result.wish.litres, "need": _with_units(result.wish.need)},
        "band": {"number": int(result.judgement.band), "reasons": list(result.judgement.reasons)},
        "counts": counts(result),
        "tank": _tank(result),
        "hoops": None if result.wall.hoops is None else _hoops(result.wall.hoops),
        "other_hoops": [_hoops(other) for other in result.wall.others],
        "judged_hoops": None if result.judged is None else _hoops(result.judged),
        "checks": [_check(check) for check in result.checks],
        "cutting": _cutting(result),
        "mesh": _mesh(result),
        "materials": _materials(result),
        "batch": _with_units({name: result.values[name] for name in BATCH}),
        "water_works": _with_units({name: result.values[name] for name in WATER_WORKS}),
        "ground": _with_units({name: result.values[name] for name in GROUND}),
        "work": _work(result),
        "bill": None if result.bill is None else _bill(result.bill),
        "comparison": [_compared(row) for row in result.comparison],
        "hold_points": list(HOLD_POINTS),
        "smaller": [_offer(offer) for offer in result.smaller],
        "quantities": _with_units(result.values),
    }


BATCH = ("sand_parts", "batch_bags", "batch_sand_dry", "batch_sand_damp", "boxes_of_sand", "box_volume",
         "water_in_sand", "water_to_add", "batch_volume", "sand_bulking")  # fmt: skip
WATER_WORKS = ("inlet_flow", "overflow_bore", "overflow_capacity", "drain_bore", "drain_time", "vent_bore",
               "chlorine_product_mass", "tank_chlorine", "flush_water", "stage_height", "proving_days")  # fmt: skip
GROUND = ("base_diameter", "platform_width", "cut_height", "cut_volume", "spoil_volume", "drain_ditch_length",
          "excavation_volume", "stone_volume", "base_concrete_volume", "ground_pressure_full", "ground_pressure_empty",
          "floor_fall_height")  # fmt: skip


def counts(plan: Plan) -> dict[str, Any]:
    """The first page in numbers.

    Args:
        plan: of the tank.
    """
    hoops = plan.wall.hoops
    return {
        "water_litres": plan.shape.volume * 1000,
        "angles": 0 if plan.angles is None else plan.angles.count,
        "uprights": round(plan.values["bar_count"]),
        "starters": round(plan.values["starter_count"]),
        "hoops": 0 if hoops is None else hoops.count,
        "hoops_by_zone": [] if hoops is None else [zone.gaps for zone in hoops.zones],
        "cement_bags": plan.materials.bags,
        "mesh_rolls": sum(count for _, count in plan.mesh.rolls),
        "loads": plan.work.loads.loads,
        "masons_on_plaster_day": plan.work.masons_needed,
        "days": plan.work.days,
        "water_to_build_with_l": plan.materials.water,
        "water_of_the_test_l": plan.materials.test_water,
        "tonnes": plan.materials.tonnes,
    }


def _with_units(values: Mapping[str, float]) -> dict[str, float]:
    return {key_of(name, BOOK.entry(name).unit): value for name, value in values.items()}


def _check(check: Check) -> dict[str, Any]:
    return {
        "name": check.name,
        "zone": check.zone or None,
        "demand": check.demand,
        "capacity": check.capacity,
        "unit": check.unit,
        "ratio": check.ratio if check.ratio != float("inf") else None,
        "good": check.good,
        "decides": check.decides,
        "source": check.source,
        "status": check.status.value,
    }


def _offer(offer: Offer) -> dict[str, Any]:
    return {"tanks": offer.tanks, "litres": offer.litres, "band": int(offer.band)}


def _bar(bar: Bar) -> dict[str, Any]:
    return {"diameter_mm": bar.diameter, "ribbed": bar.ribbed, "stock_length_m": bar.length}


def _sheet(mesh: Mesh) -> dict[str, Any]:
    return {
        "kind": mesh.kind, "wire_mm": mesh.wire, "opening_mm": mesh.opening, "roll_width_m": mesh.width,
        "roll_length_m": mesh.length,
    }  # fmt: skip


def _tank(plan: Plan) -> dict[str, Any]:
    shape, wall, roof = plan.shape, plan.wall, plan.roof
    return {
        "inside_diameter_m": shape.inside_diameter,
        "water_depth_m": shape.water_depth,
        "wall_height_m": shape.wall_height,
        "volume_m3": shape.volume,
        "wall_thickness_mm": wall.thickness,
        "frame_diameter_m": plan.values["frame_diameter"],
        "outside_diameter_m": plan.values["outside_diameter"],
        "base_diameter_m": plan.values["base_diameter"],
        "base_thickness_mm": plan.footing.base_thickness,
        "mesh_only": wall.hoops is None,
        "upright": None if wall.upright is None else _bar(wall.upright),
        "angle": None if wall.angle is None else {"leg_mm": wall.angle.leg, "thickness_mm": wall.angle.thickness},
        "starter": {**_bar(plan.footing.bar), "spacing_m": plan.footing.spacing},
        "base_ring_bars": plan.footing.ring_bars,
        "roof": {
            "kind": roof.kind.value, "thickness_mm": roof.thickness, "bar": _bar(roof.bar), "spacing_m": roof.spacing,
            "ring_bars": roof.ring_bars, "cap_width_m": roof.cap_width, "pad_side_m": roof.pad_side,
            "rib_depth_mm": roof.rib_depth, "props": round(roof.values["prop_count"]),
            "prop_load_kn": roof.values["prop_load"], "longest_board_m": roof.longest_board,
        },
    }  # fmt: skip


def _hoops(hoops: Hoops) -> dict[str, Any]:
    return {
        "bar": _bar(hoops.bar),
        "count": hoops.count,
        "allowed_mpa": hoops.allowed,
        "zones": [
            {
                "from_m": zone.from_height, "to_m": zone.to_height, "gaps": zone.gaps, "spacing_m": zone.spacing,
                "demand_kn_per_m": zone.demand, "free_foot_kn_per_m": zone.free, "needed_mm2_per_m": zone.needed,
                "steel_mm2_per_m": zone.steel, "stress_mpa": zone.stress, "stress_free_foot_mpa": zone.stress_free,
            }
            for zone in hoops.zones
        ],
    }  # fmt: skip


def _cutting(plan: Plan) -> dict[str, Any]:
    bars = [
        {
            "bar": _bar(each.bar), "bars": each.cuts.bars, "gap": each.cuts.gap, "waste": each.cuts.waste,
            "mass_kg": each.mass,
            "pieces": [
                {"name": piece.name, "length_m": piece.length, "count": piece.count, "pieces_of_one": piece.whole}
                for piece in each.pieces
            ],
            "cuts": [
                {"bars": cut.bars, "pieces": list(cut.pieces), "left_over_m": cut.left_over} for cut in each.cuts.cuts
            ],
        }
        for each in plan.bars
    ]  # fmt: skip
    angles = None
    if plan.angles is not None:
        angles = {
            "count": plan.angles.count, "length_m": plan.angles.length, "bought": plan.angles.cuts.bars,
            "stock_length_m": plan.angles.angle.length, "mass_kg": plan.angles.mass,
        }  # fmt: skip
    return {"bars": bars, "angles": angles}


def _face(each: FaceMesh) -> dict[str, Any]:
    return {
        "mesh": _sheet(each.face.mesh), "layers": each.face.layers, "rolls": each.layout.rolls,
        "staggered": each.layout.staggered, "waste": each.layout.waste,
        "strips": [
            {
                "layer": strip.layer, "row": strip.row, "height_m": strip.height, "width_m": strip.width,
                "piece_m": strip.piece, "laps_m": list(strip.laps),
            }
            for strip in each.layout.strips
        ],
    }  # fmt: skip


def _mesh(plan: Plan) -> dict[str, Any]:
    return {
        "inside": _face(plan.mesh.inside),
        "outside": _face(plan.mesh.outside),
        "flat": {part: {"mesh": _sheet(mesh), "area_m2": area} for part, (mesh, area) in plan.mesh.flat.items()},
        "rolls": [{"mesh": _sheet(mesh), "rolls": count} for mesh, count in plan.mesh.rolls],
        "mass_kg": plan.mesh.mass,
    }


def _materials(plan: Plan) -> dict[str, Any]:
    made = plan.materials
    return {
        "mortar_m3": dict(made.mortar),
        "cement_bags": {"mortar": made.mortar_bags, "concrete": made.concrete_bags, "finish": made.finish_bags},
        "sand_m3": made.sand, "stone_m3": made.stone, "lime_kg": made.lime, "steel_kg": made.steel,
        "mesh_kg": made.mesh, "tying_wire_kg": made.wire, "mixing_water_l": made.mixing_water,
        "curing_water_l": made.curing_water, "test_water_l": made.test_water, "masses_kg": dict(made.masses),
    }  # fmt: skip


def _work(plan: Plan) -> dict[str, Any]:
    work = plan.work
    return {
        "masons_needed": work.masons_needed,
        "joint_planned": work.joint_planned,
        "days": work.days,
        "crew_days": work.crew_days,
        "calendar": [
            {"job": slot.name, "first_day": slot.start, "last_day": slot.end, "decides": slot.decides}
            for slot in work.slots
        ],
        "loads": [
            {"material": line.name, "mass_kg": line.mass, "loads": line.loads, "shared_by": line.shared}
            for line in work.loads.lines
        ],
    }


def _bill(made: Bill) -> dict[str, Any]:
    return {
        "currency": made.currency,
        "lines": [
            {
                "item": line.name, "needed": line.needed, "packages": str(line.packages), "unit": line.unit,
                "price": None if line.price is None else str(line.price),
                "cost": None if line.cost is None else str(line.cost),
            }
            for line in made.lines
        ],
        "so_far": str(made.so_far),
        "total": None if made.total is None else str(made.total),
        "missing_prices": list(made.missing),
    }  # fmt: skip


def _compared(row: Comparison) -> dict[str, Any]:
    def money(value: object) -> str | None:
        return None if value is None else str(value)

    return {
        "name": row.name,
        "per_m3": money(row.per_cubic_metre),
        "per_year": money(row.per_year),
        "per_m3_and_year": money(row.per_cubic_metre_year),
    }
