"""Roof: dome, cone, flat slab, props and their soles."""

from __future__ import annotations

from math import hypot, pi

from tests.published.by_hand._script import GEOMETRY, PRACTICE, SHARES, by_hand, up

WEIGHT = "24 kN/m3 of reinforced concrete, IS 875-1, said in the question"
FORMS = "forms 0.3 and crew 1.5 kN/m2, said in the question: " + PRACTICE
IS_456 = "IS 456:2000, clause 11.3.1, second hand: props of slabs 7 days to 4.5 m, 14 beyond; cold days count half"


@by_hand(SHARES)
def roof_rise(inside_diameter: float, roof_rise_parts: float) -> float:
    return inside_diameter / roof_rise_parts


@by_hand("area of a cap: " + GEOMETRY)
def dome_area(inside_diameter: float, roof_rise: float) -> float:
    return pi * ((inside_diameter / 2) ** 2 + roof_rise**2)


@by_hand("circle through edge and crown: " + GEOMETRY)
def dome_sphere_radius(inside_diameter: float, roof_rise: float) -> float:
    return ((inside_diameter / 2) ** 2 + roof_rise**2) / (2 * roof_rise)


@by_hand("rule of Pythagoras")
def cone_slope_length(inside_diameter: float, roof_rise: float) -> float:
    return hypot(inside_diameter / 2, roof_rise)


@by_hand("2400 kg/m3, said in the question")
def roof_wet_mass(inside_diameter: float, roof_thickness: float) -> float:
    return pi / 4 * inside_diameter**2 * roof_thickness / 1000 * 2400


@by_hand(WEIGHT)
def roof_load(roof_thickness: float, roof_live_load: float) -> float:
    return 24 * roof_thickness / 1000 + roof_live_load


@by_hand(PRACTICE)
def prop_count(floor_area: float, prop_spacing: float) -> float:
    return up(floor_area / prop_spacing**2)


@by_hand(WEIGHT + "; " + FORMS)
def prop_load(roof_thickness: float, prop_spacing: float) -> float:
    return (24 * roof_thickness / 1000 + 0.3 + 1.5) * prop_spacing**2


@by_hand(SHARES)
def sole_pressure(prop_load: float, sole_plate_side: float) -> float:
    return prop_load / sole_plate_side**2


@by_hand(IS_456)
def prop_days(propped_span: float, air_temperature: float) -> float:
    return (7 if propped_span <= 4.5 else 14) * (2 if air_temperature < 15 else 1)
