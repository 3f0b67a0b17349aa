"""Measuring on the site. Examples are sums worked by hand; the bucket is held against the exact cone frustum."""

from math import pi

import pytest
from hypothesis import given

from generator.calculations import BOOK
from tests.calculations.worked import Example, givens, read_wrong, shown

BY_HAND: list[Example] = [
    ("corner_diagonal", {"corner_side": 1.5, "corner_other_side": 2}, "2.500"),  # 2.25 + 4 = 6.25
    ("stick_from_pipe", {"frame_radius": 1.12, "centre_pipe_width": 50}, "1.095"),  # 1.120 - 0.025
    ("ground_drop", {"lower_hose_reading": 1.45, "upper_hose_reading": 1.12}, "0.33"),  # 1.45 - 1.12
    ("peg_mark", {"mark_height": 0.15, "ground_drop": 0.33}, "0.48"),  # 0.15 + 0.33
    ("paper_length", {"site_length": 2.5, "scale_parts": 20}, "125.0"),  # 2500 mm / 20
    ("length_from_paper", {"paper_reading": 68, "scale_parts": 25}, "1.70"),  # 68 x 25 = 1700 mm
    ("bucket_middle_width", {"bucket_top_width": 0.32, "bucket_bottom_width": 0.24}, "0.2800"),  # 0.56 / 2
    ("bucket_volume", {"bucket_middle_width": 0.28, "bucket_depth": 0.3}, "18.5"),  # 0.0616 x 0.3 = 0.01847
    ("metres_from_feet_and_inches", {"whole_feet": 7, "extra_inches": 3}, "2.210"),  # 87 x 25.4 = 2209.8 mm
    ("inches_of_length", {"site_length": 2.54}, "100.0"),  # 254 cm / 2.54 cm
]
TANK_PART = {
    "corner_side": 1.2, "corner_other_side": 2.1, "upper_hose_reading": 0.85, "lower_hose_reading": 1.3,
    "mark_height": 0.2, "scale_parts": 25.0, "site_length": 2.6, "paper_reading": 84.0, "bucket_top_width": 0.3,
    "bucket_bottom_width": 0.22, "bucket_depth": 0.27, "whole_feet": 6.0, "extra_inches": 7.0,
    "centre_pipe_width": 75.0,
}  # fmt: skip


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


@pytest.mark.parametrize(("sides", "across"), [((3, 4), 5), ((1.5, 2), 2.5), ((0.6, 0.8), 1), ((2.4, 3.2), 4)])
def test_three_four_five_holds_at_every_size(sides: tuple[float, float], across: float) -> None:
    values = {"corner_side": sides[0], "corner_other_side": sides[1]}
    assert BOOK.evaluate(values, ["corner_diagonal"])["corner_diagonal"] == pytest.approx(across)


@given(values=givens("upper_hose_reading", "lower_hose_reading", "mark_height"))
def test_both_marks_lie_equally_far_below_the_water(values: dict[str, float]) -> None:
    mark = BOOK.evaluate(values, ["peg_mark"])["peg_mark"]
    below = values["upper_hose_reading"] - values["mark_height"]
    assert values["lower_hose_reading"] - mark == pytest.approx(below)


@given(values=givens("site_length", "scale_parts"))
def test_what_is_drawn_is_read_back(values: dict[str, float]) -> None:
    drawn = BOOK.evaluate(values, ["paper_length"])["paper_length"]
    back = BOOK.quantities["length_from_paper"].function(drawn, values["scale_parts"])
    assert back == pytest.approx(values["site_length"])


@given(values=givens("bucket_top_width", "bucket_bottom_width", "bucket_depth"))
def test_the_middle_width_is_close_to_the_cone_frustum(values: dict[str, float]) -> None:
    """Independent: the exact volume of a cone that is cut off."""
    top, bottom, depth = (values[f"bucket_{part}"] for part in ("top_width", "bottom_width", "depth"))
    exact = pi * depth / 12 * (top**2 + top * bottom + bottom**2) * 1000
    found = BOOK.evaluate(values, ["bucket_volume"])["bucket_volume"]
    assert 0.93 * exact <= found <= exact * (1 + 1e-9)


def test_the_inches_are_not_tenths() -> None:
    asked = "metres_from_feet_and_inches"
    values = {"whole_feet": 5, "extra_inches": 6}
    assert read_wrong("inches_as_tenths_of_a_foot", values, asked) == pytest.approx(1.707, abs=5e-4)
    ten = {"whole_feet": 5, "extra_inches": 10}
    assert read_wrong("inches_as_tenths_of_a_foot", ten, asked) == pytest.approx(1.554, abs=5e-4)
    assert read_wrong("three_feet_taken_for_a_metre", values, asked) == pytest.approx(5.5 / 3)


def test_wrong_ideas_about_corner_hose_and_paper() -> None:
    corner = {"corner_side": 0.6, "corner_other_side": 0.8}
    assert read_wrong("diagonal_from_added_sides", corner, "corner_diagonal") == pytest.approx(1.4)
    assert read_wrong("diagonal_always_five", corner, "corner_diagonal") == 5
    pegs = {"mark_height": 0.2, "lower_hose_reading": 1.3, "upper_hose_reading": 0.8}
    assert read_wrong("marks_equally_high_over_the_ground", pegs, "peg_mark") == pytest.approx(0.2)
    assert read_wrong("drop_taken_off_the_mark", pegs, "peg_mark") == pytest.approx(0.3)
    assert read_wrong("hose_readings_added", pegs, "ground_drop") == pytest.approx(2.1)
    drawn = {"site_length": 2, "scale_parts": 50}
    assert read_wrong("scale_as_millimetres_for_a_metre", drawn, "paper_length") == pytest.approx(100)
    assert read_wrong("drawn_at_the_usual_scale", drawn, "paper_length") == pytest.approx(200)
    pipe = {"frame_radius": 1.2, "centre_pipe_width": 100}
    assert read_wrong("pipe_forgotten_at_the_stick", pipe, "stick_from_pipe") == pytest.approx(1.2)
    assert read_wrong("whole_pipe_taken_off_the_stick", pipe, "stick_from_pipe") == pytest.approx(1.1)
