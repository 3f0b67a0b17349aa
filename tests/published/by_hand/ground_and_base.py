"""Ground and base: slope, platform, cut and spoil, pit and stone, base, floor, starters and concrete."""

from __future__ import annotations

from math import atan, degrees, pi, radians, tan

from tests.published.by_hand._script import GEOMETRY, PRACTICE, SHARES, by_hand, more, up

LOOSE_CEMENT = "IS handbooks: loose cement 1440 kg/m3, a bag of 50 kg"
CONCRETE = "dry-volume factor of concrete, 1.54: " + PRACTICE
TABLED = "tabulated Indian output constants, days of eight hours"


@by_hand(GEOMETRY)
def slope_angle(slope_drop: float, slope_run: float) -> float:
    return degrees(atan(slope_drop / slope_run))


@by_hand(SHARES)
def base_diameter(outside_diameter: float, base_projection: float) -> float:
    return outside_diameter + 2 * base_projection


@by_hand(SHARES)
def platform_width(base_diameter: float, working_room: float) -> float:
    return base_diameter + 2 * working_room


@by_hand(GEOMETRY)
def cut_height(platform_width: float, ground_slope: float) -> float:
    return platform_width * tan(radians(ground_slope))


@by_hand("bank and slope meet: found by halving the way between, " + GEOMETRY)
def cut_back_width(platform_width: float, ground_slope: float, cut_batter: float) -> float:
    low, high = 0.0, 50.0
    for _ in range(80):
        behind = (low + high) / 2
        bank, hill = behind / cut_batter, (platform_width + behind) * tan(radians(ground_slope))
        low, high = (behind, high) if bank < hill else (low, behind)
    return low


@by_hand("area of a triangle by its base on the platform and its height at the top of the bank")
def cut_volume(platform_width: float, cut_height: float, cut_back_width: float) -> float:
    top = cut_height * (platform_width + cut_back_width) / platform_width
    return platform_width * top / 2 * platform_width


@by_hand(SHARES)
def drain_ditch_length(platform_width: float, cut_back_width: float, ditch_setback: float) -> float:
    behind = platform_width + 2 * ditch_setback
    return behind + 2 * (platform_width + cut_back_width + ditch_setback)


@by_hand(GEOMETRY)
def excavation_volume(base_diameter: float, topsoil_depth: float, stone_thickness: float) -> float:
    return pi / 4 * base_diameter**2 * (topsoil_depth + stone_thickness) / 1000


@by_hand(PRACTICE)
def spoil_volume(cut_volume: float, excavation_volume: float, spoil_swell: float) -> float:
    return (cut_volume + excavation_volume) * more(spoil_swell)


@by_hand(PRACTICE)
def spoil_loads(spoil_volume: float, spoil_load_volume: float) -> float:
    return up(spoil_volume * 1000 / spoil_load_volume)


@by_hand(PRACTICE)
def stone_volume(base_diameter: float, stone_thickness: float, stone_ramming: float) -> float:
    return pi / 4 * base_diameter**2 * stone_thickness / 1000 * more(stone_ramming)


@by_hand(PRACTICE)
def base_mesh_area(base_diameter: float, base_mesh_lap: float) -> float:
    return pi / 4 * base_diameter**2 * more(base_mesh_lap)


@by_hand(GEOMETRY)
def floor_fall_height(inside_diameter: float, floor_fall: float) -> float:
    return inside_diameter * 1000 / 2 * floor_fall / 100


@by_hand(PRACTICE)
def floor_mesh_area(inside_diameter: float, mesh_turn_up: float, base_mesh_lap: float) -> float:
    return (pi / 4 * inside_diameter**2 + pi * inside_diameter * mesh_turn_up) * more(base_mesh_lap)


@by_hand("a bowl with straight sides holds two thirds of its height on average: " + GEOMETRY)
def floor_mortar_volume(floor_area: float, floor_mortar_thickness: float, floor_fall_height: float) -> float:
    return floor_area * (floor_mortar_thickness + floor_fall_height * 2 / 3) / 1000


@by_hand(SHARES)
def starter_count(ring_length: float, starter_spacing: float) -> float:
    return up(ring_length / starter_spacing)


@by_hand(SHARES)
def starter_depth(wall_thickness: float, bar_cover_inside: float, starter_diameter: float) -> float:
    return wall_thickness - bar_cover_inside - starter_diameter / 2


@by_hand(PRACTICE)
def starter_total_length(
    starter_count: float, starter_leg: float, lap_diameters: float, starter_diameter: float
) -> float:
    return starter_count * (starter_leg + lap_diameters * starter_diameter / 1000)


@by_hand(CONCRETE)
def concrete_dry_volume(base_concrete_volume: float, concrete_waste: float) -> float:
    return base_concrete_volume * more(concrete_waste) * 1.54


@by_hand(SHARES)
def concrete_cement_volume(
    concrete_dry_volume: float, concrete_sand_parts: float, concrete_stone_parts: float
) -> float:
    return concrete_dry_volume / (1 + concrete_sand_parts + concrete_stone_parts)


@by_hand(LOOSE_CEMENT)
def concrete_cement_bags(concrete_cement_volume: float) -> float:
    return up(concrete_cement_volume * 1440 / 50)


@by_hand("civil laboratory pages on IS 2386-3: the heap grows by the bulking")
def concrete_sand_volume(concrete_cement_volume: float, concrete_sand_parts: float, sand_bulking: float) -> float:
    return concrete_cement_volume * concrete_sand_parts * more(sand_bulking)


@by_hand(SHARES)
def concrete_stone_volume(concrete_cement_volume: float, concrete_stone_parts: float) -> float:
    return concrete_cement_volume * concrete_stone_parts


@by_hand(TABLED + ": footing concrete, 2.00 of a labourer and 0.90 of a water-carrier")
def base_pour_people(base_concrete_volume: float, hours_per_day: float) -> float:
    return up(base_concrete_volume * (2.0 + 0.9) * 8 / hours_per_day)


@by_hand(TABLED + ": excavation over an area, 0.62 of a labourer")
def digging_duration(excavation_volume: float, crew_labourers: float, hours_per_day: float) -> float:
    return up(excavation_volume * 0.62 * 8 / (crew_labourers * hours_per_day))
