"""Sizing: sums by hand, and that no rounding ever loses water. Check values in print are in `tests/published`."""

from math import pi

import numpy as np
import pytest
from hypothesis import given

from generator.calculations import BOOK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

BY_HAND: list[Example] = [
    ("net_floor_area", {"floor_area": 6.2, "column_width": 0.25}, "6.15"),  # 6.2 - 0.0491
    ("column_volume", {"column_width": 0.3, "water_depth": 1.6}, "0.113"),  # 0.0707 x 1.6
    ("net_tank_volume", {"tank_volume": 9.4, "column_volume": 0.113}, "9.287"),  # 9.4 - 0.113
    ("dead_volume", {"net_floor_area": 6.15, "dead_storage_height": 0.08, "water_depth": 1.6}, "0.492"),  # 6.15 x 0.08
    ("usable_volume", {"net_tank_volume": 9.287, "dead_volume": 0.492}, "8.795"),  # 9.287 - 0.492
    ("volume_per_centimetre", {"net_floor_area": 6.15}, "61.5"),  # 10 L on each m2
    (
        "diameter_for_volume", {"wanted_volume": 9.5, "water_depth": 1.6, "column_width": 0.25}, "2.80",
    ),  # 4 x 9.5 / 5.0265 = 7.5599, and 0.0625; the root of 7.6224 is 2.761
    ("water_depth_needed", {"wanted_volume": 9.5, "net_floor_area": 6.15}, "1.545"),  # 9.5 / 6.15 = 1.5447
    ("wall_height_needed", {"water_depth_needed": 1.545, "overflow_drop": 0.13}, "1.70"),  # 1.675, up to 5 cm
    ("bowl_floor_volume", {"inside_radius": 1.6, "floor_dip": 0.12}, "0.483"),  # 0.062832 x (7.68 + 0.0144)
    ("funnel_floor_volume", {"floor_area": 8.1, "floor_dip": 0.12}, "0.324"),  # 0.972 / 3
    # a gap of half the radius: 0.09 x pi/3 - 0.15 x 0.2598 = 0.05528, of 0.14137
    ("trough_fill_share", {"trough_radius": 0.3, "trough_rim_gap": 0.15}, "39"),
    ("trough_water_volume", {"trough_volume": 0.2, "trough_fill_share": 75}, "0.150"),
    ("goats_from_one_filling", {"trough_water_volume": 0.176, "litres_per_small_animal": 5}, "35"),  # 176 / 5 = 35.2
]  # fmt: skip

TANK_PART = {"column_width": 0.17, "dead_storage_height": 0.07, "floor_dip": 0.08, "trough_rim_gap": 0.04}
LIMITS_PART = {"diameter_for_volume", "water_depth_needed", "wall_height_needed"}
"""A tank wider than 8 m or deeper than 2.2 m is refused."""
AFTER_PART = {"column_volume", "net_tank_volume", "dead_volume", "usable_volume"}


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


def test_a_sound_round_number_is_not_rounded_further() -> None:
    assert shown("wall_height_needed", {"water_depth_needed": 1.55, "overflow_drop": 0.15}) == "1.70"


def test_a_diameter_rounded_down_loses_water() -> None:
    """Derived: 9.6 m3 at 1.6 m asks for 2.764 m; 2.80 holds 9.85 m3, 2.75 only 9.50 m3."""
    values = {"wanted_volume": 9.6, "water_depth": 1.6, "column_width": 0}
    assert shown("diameter_for_volume", values) == "2.80"
    narrow = read_wrong("diameter_rounded_down", values, "diameter_for_volume")
    assert narrow == pytest.approx(2.75)
    assert pi / 4 * narrow**2 * 1.6 < 9.6


def test_a_radius_as_diameter_holds_a_quarter() -> None:
    values = {"wanted_volume": 9.6, "water_depth": 1.6, "column_width": 0}
    assert read_wrong("radius_given_as_diameter", values, "diameter_for_volume") == pytest.approx(1.40)


def test_the_wall_for_the_water_makes_the_tank_too_narrow() -> None:
    values = {"wanted_volume": 9.6, "wall_height": 1.9, "overflow_drop": 0.3, "column_width": 0}
    assert shown("diameter_for_volume", values) == "2.80"
    assert read_wrong("diameter_from_the_wall_height", values, "diameter_for_volume") == pytest.approx(2.55)


def test_a_centimetre_on_the_gauge_stick() -> None:
    assert read_wrong("metre_for_a_centimetre", {"net_floor_area": 6.15}, "volume_per_centimetre") == pytest.approx(
        6150
    )


def test_the_last_goat_is_not_counted_for_water_that_it_does_not_get() -> None:
    """Derived: 176 L for goats of 5 L are 35.2 goats."""
    herd = {"trough_water_volume": 0.176, "litres_per_small_animal": 5}
    assert read_wrong("last_goat_counted_as_whole", herd, "goats_from_one_filling") == 36
    assert read_wrong("goats_of_a_hundred_litres", herd, "goats_from_one_filling") == 3


def test_a_tap_above_the_water_draws_nothing() -> None:
    values = {"inside_diameter": 1.2, "wall_height": 0.4, "overflow_drop": 0.25, "column_width": 0,
              "dead_storage_height": 0.3}  # fmt: skip
    found = BOOK.evaluate(values, ["usable_volume", "dead_volume", "net_tank_volume"])
    assert found["usable_volume"] == 0
    assert found["dead_volume"] == pytest.approx(found["net_tank_volume"])


@pytest.mark.parametrize(
    ("values", "asked"),
    [
        ({"wanted_volume": 50, "water_depth": 0.5, "column_width": 0}, "diameter_for_volume"),  # 11.3 m across
        ({"wanted_volume": 9.5, "net_floor_area": 3.0}, "water_depth_needed"),  # 3.2 m deep
        ({"water_depth_needed": 2.2, "overflow_drop": 0.3}, "wall_height_needed"),  # 2.5 m high
    ],
)
def test_a_tank_beyond_the_course_is_refused_with_who_to_ask(values: dict[str, float], asked: str) -> None:
    with pytest.raises(OutOfRangeError, match=rf"{asked} = .*licensed engineer"):
        BOOK.evaluate(values, [asked])


@given(values=givens("wanted_volume", "wall_height", "overflow_drop", "column_width"))
def test_the_diameter_holds_the_volume_and_five_centimetres_less_does_not(values: dict[str, float]) -> None:
    depth = values["wall_height"] - values["overflow_drop"]
    if depth < 0.1:
        return
    quantity = BOOK.quantities["diameter_for_volume"].function  # beyond 8 m too
    wide = quantity(values["wanted_volume"], depth, values["column_width"])

    def holds(across: float) -> float:
        return pi / 4 * (across**2 - values["column_width"] ** 2) * depth

    assert holds(wide) >= values["wanted_volume"] * (1 - 1e-7)
    assert holds(wide - 0.05) < values["wanted_volume"]


@given(values=givens("wanted_volume", "inside_diameter", "column_width", "overflow_drop"))
def test_the_wall_holds_the_volume_and_five_centimetres_less_does_not(values: dict[str, float]) -> None:
    found = BOOK.work_out(values, ["wall_height_needed", "net_floor_area"], check=False)

    def holds(wall: float) -> float:
        return (wall - values["overflow_drop"]) * found["net_floor_area"]

    assert holds(found["wall_height_needed"]) >= values["wanted_volume"] * (1 - 1e-7)
    assert holds(found["wall_height_needed"] - 0.05) < values["wanted_volume"]


@given(values=givens("inside_diameter", "wall_height", "overflow_drop", "column_width", "dead_storage_height"))
def test_parts_of_the_water_add_up(values: dict[str, float]) -> None:
    if values["wall_height"] - values["overflow_drop"] < 0.1:
        return
    found = BOOK.work_out(values, ["usable_volume"], check=False)
    assert found["usable_volume"] + found["dead_volume"] + found["column_volume"] == pytest.approx(found["tank_volume"])


def test_a_trough_shared_by_depth_holds_less_than_it_seems() -> None:
    values = {"trough_radius": 0.3, "trough_length": 2, "trough_rim_gap": 0.15}
    assert read_wrong("trough_water_shared_by_depth", values, "trough_water_volume") == pytest.approx(0.1414, abs=5e-5)
    assert read_wrong("trough_full_to_the_rim", values, "trough_water_volume") == pytest.approx(0.2827, abs=5e-5)
    filled = {"trough_volume": 0.2, "trough_fill_share": 75}
    assert read_wrong("missing_slice_taken_for_the_water", filled, "trough_water_volume") == pytest.approx(0.05)


@given(values=givens("trough_radius", "trough_length", "trough_rim_gap"))
def test_water_in_a_trough_is_the_sum_of_its_thin_layers(values: dict[str, float]) -> None:
    """Independent: a hundred thousand flat strips of water, each as wide as the round is there."""
    radius, gap = values["trough_radius"], values["trough_rim_gap"]
    edges = np.linspace(gap, radius, 100_001)
    below = (edges[:-1] + edges[1:]) / 2
    strips = 2 * np.sqrt(radius**2 - below**2) * (radius - gap) / 100_000
    found = BOOK.evaluate(values, ["trough_water_volume"])["trough_water_volume"]
    assert found == pytest.approx(float(strips.sum()) * values["trough_length"], rel=1e-5, abs=1e-9)


@given(values=givens("inside_diameter", "floor_dip"))
def test_a_bowl_holds_more_than_a_funnel_and_less_than_a_flat_floor(values: dict[str, float]) -> None:
    found = BOOK.evaluate(values, ["bowl_floor_volume", "funnel_floor_volume"])
    flat = read_wrong("bowl_taken_for_a_flat_floor", values, "bowl_floor_volume")
    assert found["funnel_floor_volume"] <= found["bowl_floor_volume"] <= flat
