"""Angles and bars. Examples are counting and geometry, worked by hand."""

import pytest
from hypothesis import given

from generator.calculations import BOOK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

BY_HAND: list[Example] = [
    ("angle_count", {"ring_length": 8.26, "angle_spacing_limit": 0.7}, "12"),  # 8.26 / 0.7 = 11.8
    ("angle_spacing", {"ring_length": 8.26, "angle_count": 12}, "0.688"),  # 8.26 / 12 = 0.6883
    ("angle_chord", {"frame_diameter": 2.63, "angle_count": 6}, "1.315"),  # a hexagon's side is the radius
    ("bars_between", {"angle_spacing": 0.688, "bar_spacing_limit": 0.2}, "3"),  # 3.44 spaces, so 4: 3 bars
    ("bar_spacing", {"angle_spacing": 0.688, "bars_between": 3}, "0.172"),  # 0.688 / 4
    ("bar_count", {"angle_count": 12, "bars_between": 3}, "36"),  # 12 x 3
]
RING = (
    "inside_diameter", "mesh_cover", "inside_mesh_thickness", "bar_diameter", "angle_spacing_limit",
    "bar_spacing_limit",
)  # fmt: skip


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND[:2] + BY_HAND[3:])
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


def test_the_side_of_a_hexagon_is_its_radius() -> None:
    name, values, result = BY_HAND[2]
    chord = BOOK.quantities[name].function(**values)  # a wider gap than the course allows, but the best known chord
    assert chord == pytest.approx(float(result))


def test_a_ring_is_not_a_fence() -> None:
    values = {"ring_length": 8.26, "angle_spacing_limit": 0.7}
    assert read_wrong("one_angle_more_as_in_a_row", values, "angle_count") == 13
    assert read_wrong("angles_rounded_down", values, "angle_count") == 11


def test_three_angles_make_no_ring() -> None:
    with pytest.raises(OutOfRangeError, match="angle_count = 3"):
        BOOK.evaluate({"ring_length": 2.5, "angle_spacing_limit": 0.9}, ["angle_count"])


def frame(values: dict[str, float]) -> dict[str, float]:
    """The frame, or nothing where the course refuses it because fewer than four angles make no ring."""
    wanted = ["bar_count", "bar_spacing", "angle_chord"]
    if BOOK.work_out(values, wanted, check=False)["angle_count"] >= 4:
        return BOOK.evaluate(values, wanted)
    with pytest.raises(OutOfRangeError, match="angle_count"):
        BOOK.evaluate(values, wanted)
    return {}


@given(values=givens(*RING))
def test_no_gap_is_wider_than_the_plan_says_and_the_last_one_closes(values: dict[str, float]) -> None:
    found = frame(values)
    if found:
        hair = 1 + 1e-9
        assert found["angle_spacing"] <= values["angle_spacing_limit"] * hair
        assert found["bar_spacing"] <= values["bar_spacing_limit"] * hair
        assert found["angle_spacing"] * found["angle_count"] == pytest.approx(found["ring_length"])
        uprights = found["bar_count"] + found["angle_count"]
        assert found["bar_spacing"] * uprights == pytest.approx(found["ring_length"])


@given(values=givens(*RING))
def test_one_upright_fewer_would_leave_a_gap_too_wide(values: dict[str, float]) -> None:
    found = frame(values)
    if found:
        assert found["ring_length"] / (found["angle_count"] - 1) > values["angle_spacing_limit"] * (1 - 1e-8)


@given(values=givens(*RING))
def test_a_straight_tape_always_reads_less_than_the_ring_is_long(values: dict[str, float]) -> None:
    found = frame(values)
    if found:
        assert found["angle_chord"] < found["angle_spacing"]
