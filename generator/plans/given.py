"""A tank's givens for the calculation module: what the plan chose, and what is usual where nobody said otherwise."""

from __future__ import annotations

from collections.abc import Mapping

from generator.calculations import BOOK
from generator.calculations.angles import foot_depth
from generator.calculations.leak_judgement import stages_needed
from generator.calculations.outlets import overflow_bore_for
from generator.calculations.ring_levels import allowed_steel_stress
from generator.formula import interpolate, whole_up
from generator.plans.footing import Footing
from generator.plans.hoops import LAP_DIAMETERS
from generator.plans.mesh_list import LAP, TURN_UP
from generator.plans.refused import NoPlanError
from generator.plans.roofing import LIVE_LOAD, RISE_PARTS, ROOF_COVER, Roof
from generator.plans.shape import Shape
from generator.plans.wall import ANGLE_SPACING, LEAST_UPRIGHTS, MESH_COVER, Wall
from generator.plans.wish import Wish

OVERFLOW_DROP = 0.15
SAND_PARTS = 2.5
OVERFLOW_HEAD = 0.05
DRAIN_BORE = 50.0
TESTING_DAYS = 7.0
SPREAD_MOISTURE, SPREAD_BULKING = (0.0, 4.0, 8.0, 12.0), (0.0, 25.0, 30.0, 30.0)
"""Sand's moisture and how much it swells [percent]: 4 gives 25 in print; more water is a guess that a test replaces."""

USUAL: Mapping[str, float] = {
    "overflow_drop": OVERFLOW_DROP,
    "base_projection": 0.25,
    "sand_parts": SAND_PARTS,
    "mortar_waste": 10,
    "sand_bulking": 25,
    "water_cement_ratio": 0.45,
    "sand_density": 1600,
    "sand_absorption": 1,
    "sand_moisture": 4,
    "air_content": 2,
    "batch_bags": 1,
    "box_length": 0.35,
    "box_width": 0.25,
    "box_depth": 0.40,
    "coat_thickness": 20,
    "coat_faces": 1,
    "coat_days": 1,
    "mason_day_area": 4,
    "batch_minutes": 20,
    "placing_minutes": 30,
    "admixture_dose": 0.5,
    "topsoil_depth": 150,
    "stone_thickness": 100,
    "stone_ramming": 25,
    "base_mesh_lap": 12,
    "floor_mortar_thickness": 40,
    "floor_fall": 1,
    "mesh_turn_up": TURN_UP,
    "starter_leg": 0.40,
    "concrete_sand_parts": 2,
    "concrete_stone_parts": 4,
    "concrete_waste": 5,
    "working_room": 0.6,
    "cut_batter": 0.5,
    "spoil_swell": 25,
    "spoil_load_volume": 20,
    "ditch_setback": 1.0,
    "bar_foot": 0.40,
    "bar_into_roof": 0.20,
    "mesh_lap": LAP,
    "roof_live_load": LIVE_LOAD,
    "roof_cover": ROOF_COVER,
    "roof_rise_parts": RISE_PARTS,
    "level_height": 0,
    "wind_pressure": 0.8,
    "ground_friction": 0.4,
    "curing_litres_per_area": 7.5,
    "blended_cement": 1,
    "hot_dry": 0,
    "air_temperature": 20,
    "wash_coats": 2,
    "wash_rate": 0.2,
    "discharge_coefficient": 0.6,
    "drain_bore": DRAIN_BORE,
    "drain_end_depth": 0,
    "vent_bore": 100,
    "overflow_head": OVERFLOW_HEAD,
    "stage_wait": 1,
    "test_days": TESTING_DAYS,
    "hair_crack_width": 0.1,
    "chlorine_dose": 20,
    "service_dose": 0.5,
    "available_chlorine": 25,
    "liquid_chlorine": 5,
    "flush_count": 2,
    "hours_per_day": 8,
    "mesh_day_area": 8,
    "trips_per_day": 6,
    "pickup_load": 1000,
    "dead_storage_height": 0.1,
}
"""What stands where nobody says otherwise: common practice, each within the range that the calculation module keeps."""


OF_THE_PLAN = ("hoop_diameter", "hoop_spacing", "angle_leg", "wanted_volume")
"""Givens of a place that the plan has already taken up or bettered."""
NO_CAGE = {"angle_mass": 0.0, "bar_count": 0.0, "bar_mass": 0.0, "hoop_count": 0.0, "hoop_mass": 0.0, "tie_count": 0.0,
           "steel_mass": 0.0, "cage_steel_mass": 0.0}  # fmt: skip
"""What a tank of mesh alone has none of."""


def tank_givens(wish: Wish, shape: Shape, wall: Wall, footing: Footing, roof: Roof) -> dict[str, float]:
    """All the givens of a tank, and the quantities that the plan itself fixes.

    Args:
        wish: what was asked for; its place's givens stand before the usual ones.
        shape: of the tank.
        wall: of the tank.
        footing: of the wall.
        roof: of the tank.
    """
    found = {
        **USUAL,
        "inside_diameter": shape.inside_diameter,
        "wall_height": shape.wall_height,
        "water_depth": shape.water_depth,
        "overflow_drop": shape.overflow_drop,
        "column_width": shape.column_width,
        "base_concrete_thickness": footing.base_thickness,
        "roof_thickness": roof.thickness,
        "roof_bar_diameter": roof.bar.diameter,
        "ground_slope": wish.site.slope,
        "propped_span": shape.inside_diameter,
        "stage_count": stages_needed(shape.water_depth),
        "inlet_flow": wish.inflow,
        "overflow_bore": overflow_bore(wish.inflow),
        "crew_masons": min(wish.crew.masons, 10),
        "crew_labourers": min(wish.crew.labourers, 20),
        "carriers": wish.crew.labourers,
        "load_mass": wish.crew.load,
        "steel_working_stress": allowed_steel_stress(footing.bar.ribbed),
        "starter_diameter": footing.bar.diameter,
        "starter_spacing": footing.spacing,
        **_wall_givens(shape.inside_diameter, wall, footing),
    }
    found |= {name: value for name, value in wish.place.items() if name not in OF_THE_PLAN}
    if wish.site.ground_water > 0:
        found["ground_water_height"] = wish.site.ground_water
    if wish.sand_moisture is not None:
        found["sand_bulking"] = float(interpolate(wish.sand_moisture, SPREAD_MOISTURE, SPREAD_BULKING))
        found["sand_moisture"] = max(2.0, min(10.0, wish.sand_moisture))
    if "dry_volume_factor" not in wish.place:
        found["dry_volume_factor"] = dry_factor(found)
    return found


def _wall_givens(inside_diameter: float, wall: Wall, footing: Footing) -> dict[str, float]:
    found = {
        "mesh_cover": MESH_COVER,
        "inside_mesh_thickness": wall.inside.thickness,
        "outside_mesh_thickness": wall.outside.thickness,
        "mesh_layers_inside": wall.inside.layers,
        "mesh_layers_outside": wall.outside.layers,
        "mesh_roll_width": wall.inside.mesh.width,
        "mesh_roll_length": wall.inside.mesh.length,
        "mesh_wire_diameter": wall.inside.mesh.wire,
        "mesh_wire_spacing": wall.inside.mesh.opening,
        "lap_diameters": LAP_DIAMETERS,
        "wall_thickness": wall.thickness,
    }
    if wall.hoops is None or wall.upright is None:
        # mesh alone: the ring that is set out runs through the mesh of the water side
        return {**found, "bar_diameter": BOOK.givens["bar_diameter"].low, **NO_CAGE}
    found |= {
        "bar_diameter": wall.upright.diameter,
        "hoop_diameter": wall.hoops.bar.diameter,
        "hoop_count": wall.hoops.count,
        "hoop_spacing": wall.hoops.zones[0].spacing,
        "hoop_spacing_closing": wall.hoops.zones[0].spacing,
        "stock_length": wall.hoops.bar.length,
        "bar_spacing_limit": wall.upright_spacing,
    }
    if wall.angle is None:
        ring = BOOK.evaluate({**found, "inside_diameter": inside_diameter}, ["ring_length"])["ring_length"]
        bars = max(LEAST_UPRIGHTS, float(whole_up(ring / wall.upright_spacing)))
        found |= {"angle_mass": 0.0, "bar_count": bars, "tie_count": bars * wall.hoops.count}
    else:
        found |= {
            "angle_leg": wall.angle.leg,
            "angle_thickness": wall.angle.thickness,
            "angle_spacing_limit": ANGLE_SPACING,
            "angle_foot": foot_depth(footing.base_thickness),
        }
    return found


def overflow_bore(inflow: float) -> float:
    """Bore of the overflow that carries all that the inlet brings [mm].

    Args:
        inflow: [L/s].

    Raises:
        OutOfRangeError: no sold pipe carries so much.
    """
    return overflow_bore_for(inflow, OVERFLOW_HEAD)


def dry_factor(found: Mapping[str, float]) -> float:
    """Dry parts for a volume of mortar: the absolute-volume sum, and never less than the usual convention.

    The convention alone would order too little cement for light sand.

    Args:
        found: givens of the mortar, by name.

    Raises:
        NoPlanError: sand that is not right for this mortar.
    """
    names = ("sand_parts", "sand_density", "water_cement_ratio", "air_content")
    given = {name: found[name] for name in names}
    true = BOOK.evaluate(given, ["true_dry_factor"])["true_dry_factor"]
    limits = BOOK.givens["dry_volume_factor"]
    if true > limits.high:
        raise NoPlanError("sand_not_right", parts=f"{true:.2f}", most=f"{limits.high:g}")
    return max(1.3, true)


def refuse_outside(values: Mapping[str, float], known: Mapping[str, float]) -> None:
    """Refuses a tank of which any number is outside what the calculation module stands for.

    Args:
        values: everything worked out.
        known: numbers that the plan fixed itself, where the module's own way does not apply. A tank of mesh alone has
            no cage, and nothing of what a cage takes.

    Raises:
        OutOfRangeError: the first number outside, its range, and who to ask.
    """
    for name, value in values.items():
        if name not in known and not (value == 0 and "cage_steel_mass" in known):
            BOOK.refuse_outside(name, value)
