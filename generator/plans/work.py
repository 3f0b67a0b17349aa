"""People and days: masons on plaster day, the calendar from first spade to hand-over, loads up the hill."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from generator.calculations.build_jobs import BuildSizes, build_jobs
from generator.calculations.calendar import Slot, calendar
from generator.calculations.lifting import LoadTable, loads_of
from generator.formula import whole_up
from generator.plans.materials import Materials, roof_area
from generator.plans.roofing import Roof
from generator.plans.shape import Shape
from generator.plans.wish import Crew

TRIPS = 6
"""Trips up the hill that a person makes in a day."""


@dataclass(frozen=True, slots=True)
class Work:
    """What people have to do.

    Args:
        masons_needed: masons who close one coat of the wall in a day.
        joint_planned: the crew has fewer: a straight upright joint must be planned.
        days: from the first spade to hand-over.
        slots: the calendar.
        loads: by material.
        crew_days: working days of masons and of labourers together.
        sizes: what the calendar was made from.
    """

    masons_needed: int
    joint_planned: bool
    days: int
    slots: tuple[Slot, ...]
    loads: LoadTable
    crew_days: float
    sizes: BuildSizes


def work_for(shape: Shape, roof: Roof, values: Mapping[str, float], materials: Materials, crew: Crew) -> Work:
    """The work of a tank.

    Args:
        shape: of the tank.
        roof: of the tank.
        values: what the calculation module says about it.
        materials: of the tank.
        crew: who is there.

    Raises:
        OutOfRangeError: a build that takes longer than a season.
    """
    loads = loads_of(materials.to_carry(), crew.load)
    carrying = int(whole_up(loads.loads / (crew.labourers * TRIPS)))
    sizes = BuildSizes(
        excavation=values["excavation_volume"] + values["cut_volume"],
        concrete=values["base_concrete_volume"],
        steel=materials.steel if values["steel_mass"] > 0 else 0.0,  # the steel of a cage of mesh is base and roof
        mesh=values["plaster_area_outside"] + values["plaster_area_inside"],
        wall_area=values["plaster_area_outside"],
        floor_area=values["floor_area"],
        roof_area=roof_area(shape, roof, values["floor_area"]),
        mortar=sum(materials.mortar.values()),
        water_depth=shape.water_depth,
        curing_days=round(values["curing_days"]),
        prop_days=round(values["prop_days"]),
        roof=True,
        masons=crew.masons,
        labourers=crew.labourers,
        carrying_days=carrying,
    )
    slots = calendar(build_jobs(sizes), working_days=crew.working_days, lost_to_rain=crew.lost_to_rain)
    needed = round(values["masons_needed"])
    return Work(
        needed, crew.masons < needed, max(slot.end for slot in slots), slots, loads, values["labour_total"], sizes
    )
