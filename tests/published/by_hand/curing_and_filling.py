"""Curing, filling, leak test, chlorine, whitewash and letting the water down."""

from __future__ import annotations

from math import pi, sqrt

from tests.published.by_hand._script import BALANCE, GEOMETRY, PRACTICE, SHARES, by_hand, up

UNO = "Uno, ACI Materials Journal 95-M34 (1998), second hand: E = 5((Tc+18)^2.5 - r(Ta+18)^2.5)(V+4)/1e6"
POLICY = "policy of this course, not a code: said in the question"
STRENGTH = "public chlorination sheets: grams = litres x mg/L / 1000 / share of chlorine"
ORIFICE = "orifice under a falling head, gravity 9.81 m/s2: 2A(sqrt h1 - sqrt h2) / (Cd a sqrt 2g)"


@by_hand(UNO)
def evaporation_rate(concrete_temperature: float, air_temperature: float, humidity: float, wind_speed: float) -> float:
    warm, air = (concrete_temperature + 18) ** 2.5, (air_temperature + 18) ** 2.5
    return max(0.0, 5 * (warm - humidity / 100 * air) * (wind_speed + 4) / 1e6)


@by_hand("pages on ASTM C1074, datum 0 degrees: temperature x hours")
def maturity(concrete_temperature: float, mortar_age: float) -> float:
    return concrete_temperature * 24 * mortar_age


@by_hand(POLICY)
def curing_days(blended_cement: float, hot_dry: float) -> float:
    return {0: 14, 1: 20, 2: 28}[round(blended_cement + hot_dry)]


@by_hand(GEOMETRY)
def roof_top(outside_diameter: float) -> float:
    return pi / 4 * outside_diameter**2


@by_hand(GEOMETRY)
def curing_area(plaster_area_outside: float, plaster_area_inside: float, floor_area: float, roof_top: float) -> float:
    return plaster_area_outside + plaster_area_inside + floor_area + roof_top


@by_hand(PRACTICE)
def curing_water_daily(curing_area: float, curing_litres_per_area: float) -> float:
    return curing_area * curing_litres_per_area


@by_hand(PRACTICE)
def curing_water(curing_water_daily: float, curing_days: float) -> float:
    return curing_water_daily * curing_days


@by_hand(PRACTICE)
def curing_cans(curing_water_daily: float, can_litres: float) -> float:
    return up(curing_water_daily / can_litres)


@by_hand(SHARES)
def build_water(mixing_water: float, curing_water_daily: float, curing_days: float, tank_litres: float) -> float:
    return mixing_water + curing_water_daily * curing_days + tank_litres


@by_hand(BALANCE)
def filling_time(tank_volume: float, inlet_flow: float) -> float:
    return tank_volume * 1000 / inlet_flow / 3600


@by_hand(SHARES)
def stage_height(water_depth: float, stage_count: float) -> float:
    return water_depth / stage_count


@by_hand(SHARES)
def first_filling_days(stage_count: float, stage_wait: float) -> float:
    return stage_count * stage_wait


@by_hand(SHARES)
def proving_days(first_filling_days: float, water_soak_days: float, test_days: float) -> float:
    return first_filling_days + water_soak_days + test_days


@by_hand(SHARES)
def overflow_ratio(overflow_capacity: float, inlet_flow: float) -> float:
    return overflow_capacity / inlet_flow


@by_hand("the bucket in the tank dries as the tank does: the difference leaks")
def corrected_fall(tank_fall: float, control_fall: float) -> float:
    return max(0.0, tank_fall - control_fall)


@by_hand(SHARES)
def daily_fall(corrected_fall: float, test_days: float) -> float:
    return corrected_fall / test_days


@by_hand("1 mm on 1 m2 is 1 L")
def leak_litres(daily_fall: float, floor_area: float) -> float:
    return daily_fall / 1000 * floor_area * 1000


@by_hand(SHARES)
def leak_share(leak_litres: float, tank_litres: float) -> float:
    return 100 * leak_litres / tank_litres


@by_hand("between two printed limits: 1 mm a day, and a thousandth of the depth")
def fall_allowed(water_depth: float) -> float:
    return min(1.0, water_depth * 1000 / 1000)


@by_hand(SHARES)
def flush_water(floor_area: float, water_depth: float, flush_count: float) -> float:
    return floor_area * water_depth * 1000 * flush_count


@by_hand(STRENGTH)
def chlorine_product_mass(tank_litres: float, chlorine_dose: float, available_chlorine: float) -> float:
    return tank_litres * chlorine_dose / 1000 / (available_chlorine / 100)


@by_hand(STRENGTH)
def chlorine_liquid_volume(tank_litres: float, chlorine_dose: float, liquid_chlorine: float) -> float:
    return tank_litres * chlorine_dose / 1000 / (liquid_chlorine / 100)


@by_hand(STRENGTH)
def service_dose_mass(tank_litres: float, service_dose: float, available_chlorine: float) -> float:
    return tank_litres * service_dose / 1000 / (available_chlorine / 100)


@by_hand("grams in a litre: 10 for each percent")
def stock_powder(stock_strength: float, available_chlorine: float) -> float:
    return stock_strength * 10 / (available_chlorine / 100)


@by_hand(PRACTICE)
def limewash_mass(plaster_area_outside: float, roof_top: float, wash_coats: float, wash_rate: float) -> float:
    return (plaster_area_outside + roof_top) * wash_coats * wash_rate


@by_hand(ORIFICE)
def drain_time(
    floor_area: float, water_depth: float, drain_end_depth: float, drain_bore: float, discharge_coefficient: float
) -> float:
    opening = pi / 4 * (drain_bore / 1000) ** 2
    fall = sqrt(water_depth) - sqrt(drain_end_depth)
    return 2 * floor_area * fall / (discharge_coefficient * opening * sqrt(2 * 9.81)) / 60
