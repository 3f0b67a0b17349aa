"""Water: who drinks, what a spring and a roof give, what a tank must hold."""

from __future__ import annotations

from math import pi, sqrt

from tests.published.by_hand._script import BALANCE, GEOMETRY, SHARES, by_hand, up

FAO = "FAO Training, section 3: volume over time, by bucket and watch"
GTZ = "Rainwater Reservoirs above Ground Structures for Roof Catchment, GTZ/GATE 1989: rain x roof in plan x share"


@by_hand(SHARES)
def people_need(people: float, litres_each: float) -> float:
    return people * litres_each


@by_hand(SHARES)
def animal_need(
    large_animals: float, litres_per_large_animal: float, small_animals: float, litres_per_small_animal: float
) -> float:
    return large_animals * litres_per_large_animal + small_animals * litres_per_small_animal


@by_hand(SHARES)
def daily_need(people_need: float, animal_need: float) -> float:
    return people_need + animal_need


@by_hand("rainwater lesson, demand side: people x litres x days")
def dry_season_need(daily_need: float, dry_days: float) -> float:
    return daily_need * dry_days


@by_hand(FAO)
def spring_flow(bucket_litres: float, bucket_seconds: float) -> float:
    return bucket_litres / bucket_seconds


@by_hand(FAO)
def can_fill_time(can_litres: float, bucket_litres: float, bucket_seconds: float) -> float:
    return can_litres * bucket_seconds / bucket_litres


@by_hand(FAO)
def spring_daily_yield(spring_flow: float, spring_share_kept: float) -> float:
    return spring_flow * 24 * 60 * 60 * spring_share_kept / 100


@by_hand(BALANCE)
def daily_shortfall(daily_need: float, spring_daily_yield: float) -> float:
    return max(0.0, daily_need - spring_daily_yield)


@by_hand(BALANCE)
def storage_needed(daily_shortfall: float, dry_days: float) -> float:
    return daily_shortfall * dry_days


@by_hand(BALANCE)
def storage_needed_volume(storage_needed: float) -> float:
    return storage_needed / 1000


@by_hand(BALANCE)
def days_of_water(tank_litres: float, daily_shortfall: float) -> float:
    return min(365.0, tank_litres / daily_shortfall)


@by_hand(BALANCE)
def school_day_storage(daily_need: float, spring_daily_yield: float, school_hours: float) -> float:
    return max(0.0, daily_need - spring_daily_yield / 24 * school_hours)


@by_hand(BALANCE)
def school_week_storage(school_day_storage: float, daily_shortfall: float, school_days: float) -> float:
    left = school_day_storage
    for _ in range(1, round(school_days)):
        left += daily_shortfall
    return left


@by_hand(BALANCE)
def school_week_spare(daily_need: float, spring_daily_yield: float, school_days: float) -> float:
    return max(0.0, 7 * spring_daily_yield - school_days * daily_need)


@by_hand(GTZ)
def roof_yield(rain_depth: float, roof_area: float, runoff_coefficient: float) -> float:
    return 1000 * (rain_depth / 1000) * roof_area * runoff_coefficient


@by_hand(GTZ)
def roof_yield_kept(roof_yield: float, first_flush_depth: float, roof_area: float, first_flushes: float) -> float:
    return roof_yield - first_flushes * first_flush_depth * roof_area


@by_hand(SHARES)
def water_depth(wall_height: float, overflow_drop: float) -> float:
    return wall_height - overflow_drop


@by_hand(SHARES)
def inside_radius(inside_diameter: float) -> float:
    return inside_diameter / 2


@by_hand(GEOMETRY)
def floor_area(inside_radius: float) -> float:
    return pi * inside_radius * inside_radius


@by_hand(GEOMETRY)
def tank_volume(floor_area: float, water_depth: float) -> float:
    return floor_area * water_depth


@by_hand("public-health page of India: 785 x D x D x h litres, with all figures of pi / 4")
def tank_litres(tank_volume: float) -> float:
    return 1000 * tank_volume


@by_hand(GEOMETRY)
def diameter_for_volume(wanted_volume: float, water_depth: float, column_width: float) -> float:
    return up(sqrt(wanted_volume / water_depth * 4 / pi + column_width**2), 0.05)


@by_hand(GEOMETRY)
def wall_height_needed(wanted_volume: float, net_floor_area: float, overflow_drop: float) -> float:
    return up(wanted_volume / net_floor_area + overflow_drop, 0.05)


@by_hand(GEOMETRY)
def volume_per_centimetre(inside_diameter: float, column_width: float) -> float:
    return pi / 4 * (inside_diameter**2 - column_width**2) * 1000 / 100


@by_hand("the bands of this course, a policy and no code: depth x half across")
def depth_times_radius(water_depth: float, inside_radius: float) -> float:
    return water_depth * inside_radius
