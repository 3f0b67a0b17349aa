"""Batching. Sums are worked by hand; printed sheets and the table of true factors stand in `tests/published`."""

import pytest
from hypothesis import given

from generator.calculations import BOOK
from generator.calculations.materials_limits import absolute_volume
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

BY_HAND: list[Example] = [
    ("measured_bulking", {"damp_height": 210, "flooded_height": 175}, "20.0"),  # 35 of 175
    ("silt_share", {"silt_height": 4, "sand_height": 80}, "5.0"),  # 4 of 80
    ("sand_mass_ratio", {"sand_parts": 2.5, "sand_density": 1584}, "2.75"),  # 1584 / 1440 = 1.1
    (
        "mortar_absolute_volume", {"sand_mass_ratio": 2.65, "water_cement_ratio": 0.5, "air_content": 2}, "0.0927",
    ),  # 50 x (0.000317 + 0.001 + 0.0005) = 0.0909, over 0.98
    ("true_dry_factor", {"sand_parts": 2, "mortar_absolute_volume": 0.08}, "1.30"),  # 3 x 0.03472 / 0.08
    ("cement_per_cubic_metre", {"mortar_absolute_volume": 0.08}, "625"),  # 50 / 0.08
    ("batch_sand_dry", {"batch_bags": 1, "sand_parts": 3}, "104.2"),  # 3 x 34.72
    ("batch_sand_damp", {"batch_sand_dry": 80, "sand_bulking": 30}, "104.0"),  # 80 + 24
    (
        "water_in_sand",
        {"batch_sand_dry": 100, "sand_density": 1500, "sand_moisture": 6, "sand_absorption": 1}, "7.5",
    ),  # 5 % of 150 kg
    ("water_to_add", {"batch_bags": 2, "water_cement_ratio": 0.4, "water_in_sand": 7.5}, "32.5"),  # 40 - 7.5
    ("box_volume", {"box_length": 0.3, "box_width": 0.3, "box_depth": 0.4}, "36.0"),  # 3 x 3 x 4 dm
    ("boxes_of_sand", {"batch_sand_damp": 108, "batch_bags": 1.5, "box_volume": 36}, "2.0"),  # 72 L a bag
    ("admixture_mass", {"batch_bags": 2, "admixture_dose": 0.5}, "0.500"),  # half a percent of 100 kg
    ("batch_volume", {"batch_bags": 1.5, "mortar_absolute_volume": 0.08}, "0.120"),  # one and a half of 80 L
    ("batches_needed", {"wall_mortar_volume": 1, "mortar_waste": 10, "batch_volume": 0.09}, "13"),  # 1.1 / 0.09 = 12.2
    ("batch_cover_area", {"batch_volume": 0.09, "coat_thickness": 15}, "6.0"),  # 0.09 / 0.015
]  # fmt: skip
TANK_PART = {
    "damp_height": 207.0, "flooded_height": 171.0, "silt_height": 4.0, "sand_height": 95.0, "sand_density": 1590.0,
    "sand_moisture": 5.5, "sand_absorption": 1.3, "air_content": 2.5, "batch_bags": 0.5, "box_length": 0.34,
    "box_width": 0.28, "box_depth": 0.365, "admixture_dose": 0.7, "coat_thickness": 17.0,
}  # fmt: skip
AFTER_PART = {"batches_needed"}
"""Needs a wall that this course allows."""


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


def test_a_jar_is_read_from_the_flooded_height() -> None:
    """Derived: 40 mm of 200 looks like 20 %, and is 25 % of the 160 that are really there."""
    jar = {"damp_height": 200, "flooded_height": 160}
    assert shown("measured_bulking", jar) == "25.0"
    assert read_wrong("jar_divided_by_damp_height", jar, "measured_bulking") == pytest.approx(20)
    assert read_wrong("millimetres_sunk_read_as_percent", jar, "measured_bulking") == 40


def test_mortar_that_falls_down_is_mixed_too() -> None:
    wall = {"wall_mortar_volume": 0.76, "mortar_waste": 10, "batch_volume": 0.082}  # 0.836 / 0.082 = 10.2
    assert BOOK.evaluate(wall, ["batches_needed"])["batches_needed"] == 11
    assert read_wrong("loss_of_the_wall_forgotten", wall, "batches_needed") == 10  # 0.76 / 0.082 = 9.3


def test_a_jar_that_sank_upwards_was_read_wrongly() -> None:
    with pytest.raises(OutOfRangeError, match="flooded_height"):
        BOOK.evaluate({"damp_height": 200, "flooded_height": 205}, ["measured_bulking"])


def test_silt_just_over_the_limit_passes_when_it_is_set_against_the_whole_jar() -> None:
    """Derived: 5 of 80 mm is 6.25 %; 5 of 85 is 5.9 %."""
    jar = {"silt_height": 5, "sand_height": 80}
    assert BOOK.evaluate(jar, ["silt_share"])["silt_share"] > 6
    assert read_wrong("silt_against_the_whole_jar", jar, "silt_share") < 6


def test_forgotten_water_of_the_sand_makes_a_soup() -> None:
    """Derived: 1 bag, 111 kg of sand with 4 % of free water: 18.1 L to add; with 22.5 L the ratio is 0.54, not 0.45."""
    batch = {"batch_bags": 1, "water_cement_ratio": 0.45, "water_in_sand": 4.44}
    assert shown("water_to_add", batch) == "18.1"
    wrong = read_wrong("water_of_the_sand_forgotten", batch, "water_to_add")
    assert (wrong + 4.44) / 50 == pytest.approx(0.539, abs=5e-4)


def test_water_measured_by_the_volume_of_cement_is_a_third_short() -> None:
    batch = {"batch_bags": 1, "water_cement_ratio": 0.45, "water_in_sand": 0}
    assert read_wrong("water_by_volume_of_cement", batch, "water_to_add") == pytest.approx(15.6, abs=0.05)


@pytest.mark.parametrize(
    ("mistake", "factor"), [("box_heaped", 1 + 0.3 / 12 / 0.4), ("box_measured_outside", 0.35 * 0.35 * 0.425 / 0.036)]
)
def test_boxes_that_lie(mistake: str, factor: float) -> None:
    """Derived: a heap a quarter as high as wide; planks of 25 mm on both sides and under the bottom."""
    box = {"box_length": 0.3, "box_width": 0.3, "box_depth": 0.4}
    assert read_wrong(mistake, box, "box_volume") == pytest.approx(36 * factor)


def test_admixture_by_the_sand_is_more_than_twice_the_dose() -> None:
    batch = {"batch_bags": 1, "sand_parts": 2.5, "sand_density": 1600, "admixture_dose": 0.5}
    assert shown("admixture_mass", batch) == "0.250"
    assert read_wrong("admixture_by_the_sand", batch, "admixture_mass") == pytest.approx(0.694, abs=5e-4)


MIX = ("sand_parts", "sand_density", "water_cement_ratio", "air_content")


@given(values=givens(*MIX))
def test_a_batch_is_smaller_than_its_boxes(values: dict[str, float]) -> None:
    seeds = {**values, "batch_bags": 1}
    found = BOOK.evaluate(seeds, ["batch_volume", "true_dry_factor"])
    boxes = read_wrong("batch_taken_for_its_boxes", seeds, "batch_volume")
    assert boxes == pytest.approx(0.05 / 1.44 * (1 + values["sand_parts"]))
    assert found["batch_volume"] < boxes
    assert found["true_dry_factor"] == pytest.approx(boxes / found["batch_volume"])


@given(values=givens(*MIX))
def test_a_bag_makes_what_its_grains_water_and_air_fill(values: dict[str, float]) -> None:
    """Against an independent sum over masses and densities."""
    found = BOOK.evaluate(values, ["cement_per_cubic_metre"])
    sand = 50 * found["sand_mass_ratio"]
    parts = [(50, 3150), (sand, 2650), (50 * values["water_cement_ratio"], 1000)]
    assert found["mortar_absolute_volume"] == pytest.approx(absolute_volume(parts, air=values["air_content"]))
    assert found["cement_per_cubic_metre"] * found["mortar_absolute_volume"] == pytest.approx(50)


BATCH = ("batch_bags", "sand_bulking", "sand_moisture", "sand_absorption", "mortar_waste", *MIX)


@given(values=givens(*BATCH))
def test_water_from_the_can_and_from_the_sand_is_the_water_of_the_mix(values: dict[str, float]) -> None:
    found = BOOK.evaluate(values, ["water_to_add"])
    wanted = 50 * values["batch_bags"] * values["water_cement_ratio"]
    assert found["water_to_add"] + found["water_in_sand"] == pytest.approx(wanted)


@given(values=givens(*BATCH))
def test_batches_are_enough_and_none_too_many(values: dict[str, float]) -> None:
    found = BOOK.evaluate({**values, "wall_mortar_volume": 0.83}, ["batches_needed"])
    wanted = 0.83 * (1 + values["mortar_waste"] / 100)
    assert found["batches_needed"] * found["batch_volume"] >= wanted * (1 - 1e-8)
    assert (found["batches_needed"] - 1) * found["batch_volume"] < wanted
