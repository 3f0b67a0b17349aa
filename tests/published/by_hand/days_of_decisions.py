"""What only the scenarios ask: the wall's mortar, its thickness at an angle, another bar, water above the tap."""

from __future__ import annotations

from math import pi

from tests.published.by_hand._script import GEOMETRY, PRACTICE, SHARES, by_hand, down, up
from tests.published.by_hand.ground_and_base import LOOSE_CEMENT


@by_hand("a ring on its middle line: " + GEOMETRY)
def wall_mortar_volume(inside_diameter: float, wall_thickness: float, wall_height: float) -> float:
    thick = wall_thickness / 1000
    return pi * (inside_diameter + thick) * thick * wall_height


@by_hand("the leg of the angle stands where the bar stands: " + SHARES)
def wall_thickness(wall_build_up: float, bar_diameter: float, angle_leg: float, wall_build_up_at_lap: float) -> float:
    return up(max(wall_build_up_at_lap, wall_build_up - bar_diameter + angle_leg), 5)


@by_hand("hoops lie outside on the bars, measured on their middle line: " + SHARES)
def hoop_circle_diameter(frame_diameter: float, bar_diameter: float, hoop_diameter: float) -> float:
    return frame_diameter + bar_diameter / 1000 + hoop_diameter / 1000


@by_hand(SHARES)
def other_hoop_count(wall_height: float, other_hoop_spacing: float) -> float:
    return up(wall_height / other_hoop_spacing) + 1


@by_hand(PRACTICE)
def other_lap_length(lap_diameters: float, other_hoop_diameter: float) -> float:
    return lap_diameters * other_hoop_diameter / 1000


@by_hand(GEOMETRY)
def other_hoop_length(
    frame_diameter: float, bar_diameter: float, other_hoop_diameter: float, other_lap_length: float
) -> float:
    return pi * (frame_diameter + bar_diameter / 1000 + other_hoop_diameter / 1000) + other_lap_length


@by_hand("what lies below the tap stays: " + GEOMETRY)
def usable_volume(floor_area: float, column_width: float, water_depth: float, dead_storage_height: float) -> float:
    return (floor_area - pi / 4 * column_width**2) * (water_depth - dead_storage_height)


@by_hand(SHARES)
def thickness_error(measured_thickness: float, wall_thickness: float) -> float:
    return abs(measured_thickness - wall_thickness)


@by_hand("milligrams of a litre: " + SHARES)
def tank_chlorine(tank_litres: float, chlorine_dose: float) -> float:
    return tank_litres * chlorine_dose / 1000


@by_hand(LOOSE_CEMENT)
def batch_sand_dry(batch_bags: float, sand_parts: float) -> float:
    return batch_bags * 50 / 1.44 * sand_parts


@by_hand(LOOSE_CEMENT)
def cement_mass(cement_volume: float) -> float:
    return cement_volume * 1440


@by_hand("whole batches of an eight-hour day: " + SHARES)
def batches_in_time(coat_days: float, batch_minutes: float) -> float:
    return down(coat_days * 8 * 60 / batch_minutes)
