"""What drawings need beyond the calculation module's values: the height zones of the hoops, and the kind of roof."""

from __future__ import annotations

from generator.calculations import BOOK
from generator.plans.plan import Plan
from generator.plans.roofing import RoofKind

ROOF_CODES = {kind: float(code) for code, kind in enumerate(
    (RoofKind.FLAT, RoofKind.DOME, RoofKind.CONE, RoofKind.RIBS, RoofKind.COLUMN)
)}  # fmt: skip


def drawing_values(plan: Plan) -> dict[str, float]:
    """All values of a plan by name, with `zone_count`, `zone_1_top`, `zone_1_gaps`, `zone_1_spacing` and `roof_kind`.

    Args:
        plan: of a tank.
    """
    found = dict(plan.values)
    found["roof_kind"] = ROOF_CODES[plan.roof.kind]
    found |= {name: value for name, value in plan.roof.values.items() if name not in found}
    if plan.wall.upright is not None:  # a small tank has bars and no angles, whose gap the bars' gap else follows from
        found.setdefault("bar_spacing", plan.wall.upright_spacing)
    if plan.wall.hoops is not None:
        found["zone_count"] = float(len(plan.wall.hoops.zones))
        for number, zone in enumerate(plan.wall.hoops.zones, start=1):
            found[f"zone_{number}_top"] = zone.to_height
            found[f"zone_{number}_gaps"] = float(zone.gaps)
            found[f"zone_{number}_spacing"] = zone.spacing
    return found


def given_values(plan: Plan) -> dict[str, float]:
    """The givens of a plan by name, as a place's file would give them.

    Args:
        plan: of a tank.
    """
    return {name: value for name, value in plan.values.items() if name in BOOK.givens}
