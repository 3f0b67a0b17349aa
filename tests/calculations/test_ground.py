"""The ground under a tank: platform, cut, spoil, ditch, pressure. Examples are geometry, done by hand."""

from math import cos, pi, radians, sin, tan

import pytest
from hypothesis import given

from generator.calculations import BOOK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

BY_HAND: list[Example] = [
    ("slope_angle", {"slope_drop": 0.36, "slope_run": 2}, "10.2"),  # 0.36 / 2 = 0.18; tan 10.2 deg is 0.1799
    ("platform_width", {"base_diameter": 3.36, "working_room": 0.65}, "4.66"),  # 3.36 + 1.30
    ("cut_height", {"platform_width": 4.66, "ground_slope": 16}, "1.34"),  # tan 16 deg 0.28675; 4.66 x 0.28675 = 1.3362
    (
        "cut_back_width", {"cut_height": 1.34, "cut_batter": 0.4, "ground_slope": 16}, "0.61",
    ),  # 0.536 / (1 - 0.4 x 0.28675) = 0.536 / 0.8853 = 0.6054
    (
        "cut_volume", {"platform_width": 4.66, "cut_height": 1.34, "cut_back_width": 0.61}, "16.5",
    ),  # 4.66 x 1.34 = 6.2444; 6.2444 x 5.27 / 2 = 16.454
    (
        "spoil_volume", {"cut_volume": 16.5, "excavation_volume": 2.3, "spoil_swell": 35}, "25.4",
    ),  # 18.8 x 1.35 = 25.38
    ("spoil_loads", {"spoil_volume": 25.38, "spoil_load_volume": 35}, "726"),  # 25,380 / 35 = 725.1
    (
        "drain_ditch_length", {"platform_width": 4.66, "cut_back_width": 0.61, "ditch_setback": 0.7}, "18.0",
    ),  # behind 4.66 + 1.40 = 6.06; each end 4.66 + 0.61 + 0.70 = 5.97; 6.06 + 11.94 = 18.00
    ("picket_ratio", {"picket_depth": 230}, "1.15"),  # 230 / 200: loose
    (
        "ground_pressure_full",
        {"tank_volume": 9, "empty_weight": 42, "roof_load": 2, "outside_diameter": 3, "base_diameter": 3.36},
        "16.3",
    ),  # 88.29 + 42 + 2 x 7.0686 = 144.43 kN; 0.7854 x 11.2896 = 8.8668 m2; 16.289
    ("ground_pressure_empty", {"empty_weight": 42, "base_diameter": 3.36}, "4.7"),  # 42 / 8.8668 = 4.737
]  # fmt: skip
TANK_PART = {
    "ground_slope": 13.0, "working_room": 0.65, "cut_batter": 0.35, "spoil_swell": 35.0, "spoil_load_volume": 35.0,
    "ditch_setback": 0.7, "picket_depth": 130.0, "slope_run": 2.2, "slope_drop": 0.51,
}  # fmt: skip
LIMITS_PART = {"cut_height"}
"""Over 3 m the bank is an engineer's."""
AFTER_PART = {"cut_back_width", "cut_volume", "spoil_volume", "spoil_loads", "drain_ditch_length"}
PLATFORM = {"platform_width": 5.2, "ground_slope": 17.0, "cut_batter": 0.6}


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


def test_the_top_of_the_bank_lies_on_the_slope() -> None:
    """Derived: at the top, the bank's line and the ground are equally high above the platform."""
    found = BOOK.evaluate(PLATFORM, ["cut_back_width"])
    bank = found["cut_back_width"] / PLATFORM["cut_batter"]
    ground = (PLATFORM["platform_width"] + found["cut_back_width"]) * tan(radians(17))
    assert bank == pytest.approx(ground, rel=1e-12)


def test_the_cut_is_what_lies_between_the_slope_and_the_bench() -> None:
    """Independent: thin strips across the bench, each as high as the ground above platform or bank."""
    found = BOOK.evaluate(PLATFORM, ["cut_volume"])
    width, back = PLATFORM["platform_width"], found["cut_back_width"]
    strips = 20_000
    step = (width + back) / strips
    area = 0.0
    for number in range(strips):
        x = (number + 0.5) * step
        area += (x * tan(radians(17)) - max(0, x - width) / PLATFORM["cut_batter"]) * step
    assert found["cut_volume"] == pytest.approx(area * width, rel=1e-6)


def test_level_ground_needs_no_cut() -> None:
    values = {"platform_width": 5.0, "ground_slope": 0.0, "cut_batter": 0.5}
    found = BOOK.evaluate(values, ["cut_volume"])
    assert (found["cut_height"], found["cut_back_width"], found["cut_volume"]) == (0, 0, 0)


def test_an_upright_bank_lies_nothing_back() -> None:
    assert shown("cut_back_width", {"cut_height": 1.1, "cut_batter": 0, "ground_slope": 25}) == "0.00"


def test_a_bank_over_three_metres_is_an_engineers() -> None:
    assert shown("cut_height", {"platform_width": 7.4, "ground_slope": 22}) == "2.99"
    with pytest.raises(OutOfRangeError, match=r"cut_height = 3\.14\d* m is outside 0 to 3 m.*licensed engineer"):
        BOOK.evaluate({"platform_width": 7.4, "ground_slope": 23}, ["cut_height"])


@pytest.mark.parametrize("slope", [-1.0, 31.0])
def test_a_slope_beyond_thirty_degrees_is_refused(slope: float) -> None:
    with pytest.raises(OutOfRangeError, match=r"ground_slope.*licensed engineer"):
        BOOK.evaluate({"platform_width": 4, "ground_slope": slope}, ["cut_height"])


def test_half_on_fill_digs_a_quarter_and_the_rest_is_the_danger() -> None:
    """Derived: half as wide and half as high."""
    values = {"platform_width": 5.2, "cut_height": 1.6, "cut_back_width": 1.1}
    right = BOOK.evaluate(values, ["cut_volume"])["cut_volume"]
    assert read_wrong("half_the_platform_on_fill", values, "cut_volume") == pytest.approx(right / 4)
    assert read_wrong("cut_taken_for_a_box", values, "cut_volume") == pytest.approx(right * 2)
    assert read_wrong("bank_left_upright", values, "cut_volume") == pytest.approx(5.2 * 5.2 * 1.6 / 2)


def test_what_wrong_ideas_make_of_the_height_of_the_cut() -> None:
    values = {"platform_width": 5.0, "ground_slope": 20.0}
    assert read_wrong("slope_over_half_the_width", values, "cut_height") == pytest.approx(2.5 * tan(radians(20)))
    assert read_wrong("degrees_taken_for_percent", values, "cut_height") == pytest.approx(1.0)
    assert read_wrong("tape_laid_on_the_slope", values, "cut_height") == pytest.approx(5 * sin(radians(20)))
    ratio = (
        read_wrong("tape_laid_on_the_slope", values, "cut_height") / BOOK.evaluate(values, ["cut_height"])["cut_height"]
    )
    assert ratio == pytest.approx(cos(radians(20)))


def test_what_wrong_ideas_make_of_platform_spoil_and_ditch() -> None:
    width = {"base_diameter": 3.4, "working_room": 0.6}
    assert read_wrong("working_room_on_one_side_only", width, "platform_width") == pytest.approx(4.0)
    assert read_wrong("working_room_forgotten", width, "platform_width") == pytest.approx(3.4)
    back = {"cut_height": 1.5, "cut_batter": 0.5, "ground_slope": 15.0}
    assert read_wrong("bank_laid_back_on_level_ground", back, "cut_back_width") == pytest.approx(0.75)
    spoil = {"cut_volume": 16.0, "excavation_volume": 4.0, "spoil_swell": 25.0}
    assert read_wrong("spoil_not_swollen", spoil, "spoil_volume") == pytest.approx(20)
    assert read_wrong("spoil_thought_to_shrink", spoil, "spoil_volume") == pytest.approx(15)
    loads = {"spoil_volume": 1.0, "spoil_load_volume": 30.0}
    assert shown("spoil_loads", loads) == "34"
    assert read_wrong("spoil_loads_rounded_down", loads, "spoil_loads") == 33
    ditch = {"platform_width": 5.0, "cut_back_width": 1.0, "ditch_setback": 0.5}
    assert read_wrong("ditch_behind_the_bank_only", ditch, "drain_ditch_length") == pytest.approx(6)


def test_what_wrong_ideas_make_of_the_slope_and_of_a_ditch_at_the_edge() -> None:
    board = {"slope_drop": 0.5, "slope_run": 2.0}
    assert tan(radians(BOOK.evaluate(board, ["slope_angle"])["slope_angle"])) == pytest.approx(0.25)
    assert read_wrong("slope_percent_called_degrees", board, "slope_angle") == pytest.approx(25)
    right = BOOK.evaluate(board, ["slope_angle"])["slope_angle"]
    assert read_wrong("slope_turned_round", board, "slope_angle") == pytest.approx(90 - right)
    ditch = {"platform_width": 5.0, "cut_back_width": 1.0, "ditch_setback": 0.5}
    assert read_wrong("ditch_at_the_edge", ditch, "drain_ditch_length") == pytest.approx(17)


def test_what_wrong_ideas_make_of_the_pressure() -> None:
    values = {
        "tank_volume": 10.0,
        "empty_weight": 40.0,
        "roof_load": 2.0,
        "outside_diameter": 3.0,
        "base_diameter": 4.0,
    }
    assert read_wrong("water_alone_presses", values, "ground_pressure_full") == pytest.approx(98.1 / (4 * pi))
    right = BOOK.evaluate(values, ["ground_pressure_full"])["ground_pressure_full"]
    square = read_wrong("pressure_over_base_as_a_square", values, "ground_pressure_full")
    assert square == pytest.approx(right * pi / 4)
    assert read_wrong("weight_shared_by_width", values, "ground_pressure_empty") == pytest.approx(10)


@given(values=givens("working_room", "ground_slope", "cut_batter"))
def test_a_flatter_batter_never_digs_less(values: dict[str, float]) -> None:
    seeds = {**values, "base_diameter": 2.7}
    steeper = {**seeds, "cut_batter": values["cut_batter"] / 2}
    more, less = (BOOK.work_out(each, ["cut_volume"], check=False)["cut_volume"] for each in (seeds, steeper))
    assert more >= less - 1e-12
