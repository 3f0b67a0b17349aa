"""Buying: age of a bag, weight of bars and mesh, sand in a truck. Examples are small sums worked by hand."""

import pytest
from hypothesis import given

from generator.calculations import BOOK
from tests.calculations.worked import Example, givens, on_the_tape, read_wrong, shown

BY_HAND: list[Example] = [
    ("cement_age", {"week_today": 9, "printed_week": 46}, "105"),  # 9 - 46 + 52 = 15 weeks
    (
        "bought_bar_mass", {"bars_bought": 18, "stock_length": 11.5, "bar_mass_per_metre": 0.617}, "127.7",
    ),  # 207 m x 0.617 = 127.719
    ("weight_missing", {"bought_bar_mass": 127.7, "weighed_steel": 113}, "11.5"),  # 14.7 / 127.7 = 0.1151
    ("piece_bar_diameter", {"piece_mass": 0.33, "piece_length": 1.5}, "6.0"),  # 162 x 0.22 = 35.64; root 5.97
    (
        "mesh_roll_mass", {"mesh_mass_per_area": 1.02, "mesh_roll_width": 1.2, "mesh_roll_length": 25}, "30.6",
    ),  # 30 m2
    ("sand_delivered", {"bed_length": 2.8, "bed_width": 1.7, "sand_depth": 430}, "2.05"),  # 4.76 x 0.43 = 2.0468
    ("sand_delivered_true", {"sand_delivered": 2.05, "sand_bulking": 28}, "1.60"),  # 2.05 / 1.28 = 1.6016
]  # fmt: skip
TANK_PART = {
    "printed_week": 46.0, "week_today": 9.0, "bars_bought": 18.0, "weighed_steel": 120.0, "piece_mass": 0.33,
    "piece_length": 1.5, "bed_length": 2.8, "bed_width": 1.7, "sand_depth": 430.0,
}  # fmt: skip


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


@given(today=on_the_tape("week_today"), printed=on_the_tape("printed_week"))
def test_a_bag_is_less_than_a_year_old_and_never_from_tomorrow(today: float, printed: float) -> None:
    age = BOOK.evaluate({"week_today": today, "printed_week": printed}, ["cement_age"])["cement_age"]
    assert 0 <= age < 364
    assert (printed + age / 7 - today) % 52 == pytest.approx(0)


@given(values=givens("bar_diameter", "piece_length"))
def test_a_piece_of_full_weight_shows_the_thickness_of_its_name(values: dict[str, float]) -> None:
    """By the printed table of weights, turned round."""
    metre = BOOK.evaluate(values, ["bar_mass_per_metre"])["bar_mass_per_metre"]
    seeds = {"piece_mass": metre * values["piece_length"], "piece_length": values["piece_length"]}
    found = BOOK.work_out(seeds, ["piece_bar_diameter"], check=False)["piece_bar_diameter"]
    assert found == pytest.approx(values["bar_diameter"])


def test_full_weight_and_more_misses_nothing() -> None:
    bought = {"bought_bar_mass": 127.7}
    assert shown("weight_missing", {**bought, "weighed_steel": 127.7}) == "0.0"
    assert shown("weight_missing", {**bought, "weighed_steel": 140.0}) == "0.0"


def test_what_wrong_ideas_make_of_bars_and_bags() -> None:
    weeks = {"week_today": 9.0, "printed_week": 46.0}
    assert read_wrong("turn_of_the_year_forgotten", weeks, "cement_age") == 259
    assert read_wrong("weeks_taken_for_days", weeks, "cement_age") == 15
    bars = {"bars_bought": 20.0, "stock_length": 12.0, "bar_diameter": 12.0}
    right = BOOK.evaluate(bars, ["bought_bar_mass"])["bought_bar_mass"]
    assert read_wrong("upright_twice_as_thick_twice_as_heavy", bars, "bought_bar_mass") == pytest.approx(right / 2)
    assert read_wrong("bars_weighed_as_one_metre_each", bars, "bought_bar_mass") == pytest.approx(right / 12)
    scale = {"bought_bar_mass": 100.0, "weighed_steel": 80.0}
    assert read_wrong("missing_share_of_the_scale", scale, "weight_missing") == pytest.approx(25)
    scale = {"bought_bar_mass": 50.0, "weighed_steel": 40.0}
    assert read_wrong("kilograms_missing_read_as_percent", scale, "weight_missing") == pytest.approx(10)
    piece = {"piece_mass": 0.8, "piece_length": 0.5}
    assert read_wrong("piece_taken_for_a_metre", piece, "piece_bar_diameter") == pytest.approx((162 * 0.8) ** 0.5)
    assert read_wrong("piece_weight_grows_like_thickness", piece, "piece_bar_diameter") == pytest.approx(43.2)


def test_what_wrong_ideas_make_of_mesh_and_sand() -> None:
    roll = {"mesh_mass_per_area": 1.0, "mesh_roll_width": 0.9, "mesh_roll_length": 30.0}
    assert read_wrong("roll_width_left_out", roll, "mesh_roll_mass") == pytest.approx(30)
    truck = {"bed_length": 2.5, "bed_width": 1.6, "sand_depth": 400.0}
    assert read_wrong("sand_depth_in_centimetres", truck, "sand_delivered") == pytest.approx(16)
    damp = {"sand_delivered": 2.0, "sand_bulking": 25.0}
    assert read_wrong("damp_truck_paid_as_dry", damp, "sand_delivered_true") == pytest.approx(2)
    assert read_wrong("bulking_taken_off_the_truck", damp, "sand_delivered_true") == pytest.approx(1.5)
