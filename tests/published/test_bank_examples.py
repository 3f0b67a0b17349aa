"""Questions of the banks that are given the numbers of a worked example in print: their key is what is printed.

Printed examples mostly lie outside what a village builds, so the ranges are left out. A tolerance is half of the last
digit printed, or as wide as the print itself is loose.
"""

from __future__ import annotations

from math import pi
from pathlib import Path

import pytest

from generator.calculations import BOOK
from generator.curriculum import load
from generator.curriculum.models import NumberQuestion

ROOT = Path(__file__).parents[2]
FOOT, INCH = 0.3048, 25.4
COURSE_NOTE = "online course note on circular tanks: 13 m across, 4.0 m high, 3.8 m of water, 504.4 m3, pull 26 000 kg"
SPANISH = "public calculation sheet of a tank of 20 m3, in Spanish: 4.30 m across, 1.4 m deep, 20.331 m3"
COMPANION = "open textbook companion, example 13.1: 10.1 m across, 2.5 m deep, 200.3 m3; at 10 kN/m3"
HANDBOOK = "Ferrocement Water Tanks and Their Construction, 1978: 2.5 m across, 2.0 m high, 9.82 m3"
FLEXIBLE = "public sheet, circular tank with a flexible joint: 400 m3 at 3.8 m; 227.36 kN/m at 9.8 kN/m3"
LESSON = "rainwater lesson, demand side: 6 people x 20 L x 25 days = 3000 L"
SURVEY = "quantity-survey page: tank 4.0 m inside, wall 150 mm; lean concrete 1.59 m3, roof slab 1.452 m3"
SITE_1_2_4 = "site page, concrete of 1 : 2 : 4 at a factor of 1.5: cement 0.214, sand 0.428, stone 0.856 m3"
YARD = "international yard of 1959: 3 feet or 36 inches are 0.9144 m"
EUCLID = "sides of 3 and 4 have a diagonal of 5: Elements, book I, 47"
STEEL = "public steel tables: a bar of 12 m weighs 7.41 kg (10 mm), a metre of 8 mm 0.395 kg"
BOAT_MESH = "boat-building page of the FAO: mesh 13 x 13 x 1.0 weighs 0.95 to 0.99 kg/m2"
COMPANION_STEEL = "the same example: 16 mm bars at 265.3 mm give 757.5 mm2"
NOTE_STEEL = "the same course note: 16 mm bars every 7 cm, 28.73 cm2"
LABOUR = "tabulated Indian output constants, days of 8 h: digging 0.62; footing concrete 2.00 and 0.90 a cubic metre"
PLASTER = "the same tabulation, 100 m2 of plaster: 10 masons, 14 labourers, 1 water-carrier"
WARMTH = "worked page on ASTM C1074: 12 h at 20 and 12 h at 25 degrees are 540 degree hours"
IS_456 = "IS 456:2000 by an examination key, 14 days for blended cement in heat, here doubled; clause 11.3.1, 7 days"
NSW = "NSW Private Water Supply Guidelines, pp. 26-27: 5 mg/L; 77 and 8 g of 65 %, 40 mL of 12.5 %"
INDIA = "Indian public-health page: tank 4 x 4 x 2.5 m, 200 g of 30 % powder, which is 1.5 mg/L"
STOCK = "IARC solution page: 0.5 % from 35 % powder, 14.2 to 14.3 g in a litre"
EXAMINATION = "examination problem: 4 ft across, outlet of 5 square inches, 6 ft down to 2 ft without loss, 94 s"
BATCH = "three site pages, 1 : 4 at a factor of 1.33: 0.266 m3 of cement, 1.064 m3 of sand"
MIX_SHEET = "mix-design sheet M25: a box of 0.36 m each way holds 46.66 L"
BULKING = "laboratory pages on IS 2386-3: 200 mm damp, 160 mm flooded, 25 %"
SILT = "Rainwater Reservoirs above Ground Structures, GTZ/GATE 1989, chapter 3: 6 mm in 100 are 6 %"
OUTLET = (5 * 4 / pi) ** 0.5 * INCH
HUNDRED = 100 / (pi * (2 * 4.0 + 2 * 0.05))
"""Height of a wall 4.0 m across and 50 mm thick whose two faces are 100 m2."""

EXAMPLES: list[tuple[str, dict[str, float], float, float, str]] = [
    ("litres-that-run-down", {"inside_diameter": 4.30, "water_depth": 1.4}, 20_331, 0.6, SPANISH),
    ("litres-of-a-mesh-tank", {"inside_diameter": 2.5, "water_depth": 2.0}, 9820, 5, HANDBOOK),
    ("weight-of-a-full-tank", {"inside_diameter": 10.1, "water_depth": 2.5}, 200_300, 50, COMPANION),
    (
        "water-of-a-round-tank", {"inside_radius": 6.5, "wall_height": 4.0, "overflow_drop": 0.2},
        504.4, 0.1, COURSE_NOTE,
    ),
    (
        "cubic-metres-for-the-band", {"inside_diameter": 13, "wall_height": 4.0, "overflow_drop": 0.2},
        504.4, 0.1, COURSE_NOTE,
    ),
    (
        "how-wide", {"wanted_volume": 400, "wall_height": 4.0, "overflow_drop": 0.2, "column_width": 0},
        11.60, 0.001, FLEXIBLE,
    ),
    ("litres-to-store", {"daily_need": 6 * 20, "spring_daily_yield": 0, "dry_days": 25}, 3000, 0.5, LESSON),
    ("cubic-metres-to-store", {"daily_shortfall": 6 * 20, "dry_days": 25}, 3.0, 0.005, LESSON),
    (
        "base-across", {"inside_diameter": 4.0, "wall_thickness": 150, "base_projection": 0.1},
        (1.59 / 0.1 * 4 / pi) ** 0.5, 0.008, SURVEY,
    ),
    (
        "base-of-the-tank", {"inside_diameter": 4.0, "wall_thickness": 150, "base_projection": 0.1},
        (1.59 / 0.1 * 4 / pi) ** 0.5, 0.008, SURVEY,
    ),
    ("weight-of-the-wet-roof", {"inside_diameter": 4.3, "roof_thickness": 100}, 1.452 * 2400, 1.2, SURVEY),
    ("floor-of-a-circle", {"inside_diameter": 13, "wall_thickness": 40}, 504.4 / 3.8, 0.03, COURSE_NOTE),
    (
        "cement-part-of-a-base",
        {"concrete_dry_volume": 1.5, "concrete_sand_parts": 2, "concrete_stone_parts": 4},
        0.214, 0.0005, SITE_1_2_4,
    ),
    (
        "damp-sand-for-a-base",
        {"concrete_dry_volume": 1.5, "concrete_sand_parts": 2, "concrete_stone_parts": 4, "sand_bulking": 0},
        0.428, 0.001, SITE_1_2_4,
    ),
    (
        "broken-stone-for-a-base",
        {"base_concrete_volume": 1.5 / 1.54, "concrete_waste": 0, "concrete_sand_parts": 2, "concrete_stone_parts": 4},
        0.856, 0.002, SITE_1_2_4,
    ),
    ("feet-into-metres", {"length_in_feet": 3}, 0.9144, 1e-9, YARD),
    ("inches-into-metres", {"length_in_inches": 36}, 0.9144, 1e-9, YARD),
    ("feet-and-inches-told", {"whole_feet": 2, "extra_inches": 12}, 0.9144, 1e-9, YARD),
    ("metres-into-inches", {"site_length": 0.9144}, 36, 1e-9, YARD),
    ("corner-across", {"corner_side": 3, "corner_other_side": 4}, 5, 1e-9, EUCLID),
    ("weight-of-the-bars", {"bars_bought": 1, "bar_diameter": 10, "stock_length": 12}, 7.41, 0.005, STEEL),
    ("true-thickness", {"piece_length": 1, "piece_mass": 0.395}, 8, 0.01, STEEL),
    ("weight-of-a-mesh", {"mesh_wire_diameter": 1.0, "mesh_wire_spacing": 13}, 0.97, 0.025, BOAT_MESH),
    ("steel-of-a-thicker-bar", {"hoop_diameter": 16}, 757.5 * 0.2653, 0.15, COMPANION_STEEL),
    ("steel-of-the-hoops", {"hoop_diameter": 16, "hoop_spacing": 0.07}, 2873, 1, NOTE_STEEL),
    (
        "pull-at-the-foot", {"water_depth": 3.0, "inside_diameter": 10.1, "level_height": 0},
        151.5 * 9.81 / 10, 0.05, COMPANION,
    ),
    (
        "pull-that-is-left", {"water_depth": 4.0, "inside_diameter": 11.6, "level_height": 0},
        227.36 * 9.81 / 9.8, 0.01, FLEXIBLE,
    ),
    (
        "pull-half-way-up", {"water_depth": 3.0, "inside_radius": 5.05, "level_height": 1.5},
        75.75 * 9.81 / 10, 0.005, COMPANION,
    ),
    ("pull-in-bags", {"water_depth": 4.0, "inside_radius": 6.5, "level_height": 0}, 26_000 / 50, 0.5, COURSE_NOTE),
    ("bags-higher-up", {"water_depth": 5.0, "inside_diameter": 13, "level_height": 1}, 26_000 / 50, 0.5, COURSE_NOTE),
    ("days-of-digging", {"excavation_volume": 100, "crew_labourers": 1, "hours_per_day": 8}, 62, 0.5, LABOUR),
    ("learners-who-dig", {"excavation_volume": 100, "crew_labourers": 2, "hours_per_day": 8}, 31, 0.5, LABOUR),
    ("people-on-pour-day", {"base_concrete_volume": 10, "hours_per_day": 8}, 29, 0.5, LABOUR),
    (
        "days-of-the-masons",
        {"inside_diameter": 4.0, "wall_thickness": 50, "wall_height": HUNDRED, "mason_day_area": 10},
        10, 0.05, PLASTER,
    ),
    (
        "hands-behind-masons",
        {"inside_diameter": 4.0, "wall_thickness": 50, "wall_height": HUNDRED, "mason_day_area": 10},
        14 + 1, 0.05, PLASTER,
    ),
    ("warmth-of-the-days", {"concrete_temperature": 22.5, "mortar_age": 1}, 540, 0.5, WARMTH),
    ("how-many-wet-days", {"blended_cement": 1, "hot_dry": 1}, 2 * 14, 0.01, IS_456),
    ("days-for-the-props", {"propped_span": 4.5, "air_temperature": 15}, 7, 0.01, IS_456),
    ("powder-for-a-tank", {"tank_litres": 10_000, "chlorine_dose": 5, "available_chlorine": 65}, 77, 0.5, NSW),
    ("powder-after-a-repair", {"tank_volume": 1, "chlorine_dose": 5, "available_chlorine": 65}, 8, 0.5, NSW),
    ("liquid-for-a-tank", {"tank_litres": 1000, "chlorine_dose": 5, "liquid_chlorine": 12.5}, 40, 0.5, NSW),
    (
        "powder-in-use",
        {"tank_litres": 40_000, "service_dose": 1.5, "chlorine_dose": 50, "available_chlorine": 30},
        200, 0.5, INDIA,
    ),
    (
        "powder-in-use-by-depth",
        {"floor_area": 16, "water_depth": 2.5, "service_dose": 1.5, "available_chlorine": 30},
        200, 0.5, INDIA,
    ),
    ("powder-for-the-wash", {"stock_strength": 0.5, "available_chlorine": 35}, 14.25, 0.05, STOCK),
    (
        "minutes-to-let-it-down",
        {
            "floor_area": pi / 4 * (4 * FOOT) ** 2, "water_depth": 6 * FOOT, "drain_end_depth": 2 * FOOT,
            "discharge_coefficient": 1.0, "drain_bore": OUTLET,
        },
        94 / 60, 0.016, EXAMINATION,
    ),
    (
        "half-the-water-out",
        {
            "inside_diameter": 4 * FOOT, "wall_height": 6.5 * FOOT, "overflow_drop": 0.5 * FOOT,
            "drain_end_depth": 2 * FOOT, "discharge_coefficient": 1.0, "drain_bore": OUTLET,
        },
        94 / 60, 0.016, EXAMINATION,
    ),
    (
        "loose-parts-for-a-wall", {"wall_mortar_volume": 1, "mortar_waste": 0, "dry_volume_factor": 1.33},
        0.266 * 5, 0.0005, BATCH,
    ),
    ("damp-sand-to-bring", {"cement_volume": 0.266, "sand_parts": 4, "sand_bulking": 0}, 1.064, 0.0005, BATCH),
    ("litres-of-a-box", {"box_length": 0.36, "box_width": 0.36, "box_depth": 0.36}, 46.66, 0.005, MIX_SHEET),
    ("sand-that-you-pay", {"sand_delivered": 2.00, "sand_bulking": 25}, 1.60, 0.005, BULKING),
    (
        "truck-with-tape-and-jar",
        {"bed_length": 1, "bed_width": 1, "sand_depth": 200, "sand_bulking": 25}, 0.160, 0.0005, BULKING,
    ),
    ("silt-before-paying", {"silt_height": 6, "sand_height": 100}, 6, 0.05, SILT),
]  # fmt: skip
"""Question, its numbers, what is printed, how near, and where."""


@pytest.fixture(scope="module")
def questions():
    content = load(ROOT).content
    assert content is not None
    return content.questions


@pytest.mark.parametrize(
    ("name", "given", "printed", "near", "source"), EXAMPLES, ids=[example[0] for example in EXAMPLES]
)
def test_the_key_is_what_is_printed(
    questions, name: str, given: dict[str, float], printed: float, near: float, source: str
) -> None:
    question = questions[name]
    assert isinstance(question, NumberQuestion)
    assert set(given) == set(question.given), "the question's own givens"
    found = BOOK.work_out(given, [question.asks], check=False)[question.asks]
    assert found == pytest.approx(printed, abs=near), source


def test_more_than_forty_questions_stand_on_print() -> None:
    assert len({example[0] for example in EXAMPLES}) == len(EXAMPLES) >= 40
