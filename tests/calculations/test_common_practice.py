"""Check values of the trade: common practice, no source. They check the sums; nothing here is a default or a lesson."""

import pytest

from generator.calculations import BOOK
from generator.formula import OutOfRangeError, Status, show

FIGURES = [
    ("angle_count", {"ring_length": 18.0, "angle_spacing_limit": 0.90}, 0, "20"),
    ("bars_between", {"angle_spacing": 0.90, "bar_spacing_limit": 0.225}, 0, "3"),
    ("bar_spacing", {"angle_spacing": 0.90, "bars_between": 3}, 3, "0.225"),
    ("metres_from_inches", {"length_in_inches": 8}, 3, "0.203"),
    ("metres_from_feet", {"length_in_feet": 2}, 3, "0.610"),
    ("metres_from_feet", {"length_in_feet": 1}, 3, "0.305"),
    ("trough_volume", {"trough_radius": 0.5, "trough_length": 3.0}, 3, "1.178"),
]


@pytest.mark.parametrize(("name", "values", "places", "figure"), FIGURES)
def test_figures_that_builders_know(name: str, values: dict[str, float], places: int, figure: str) -> None:
    assert show(BOOK.evaluate(values, [name])[name], places) == figure


def test_a_tank_of_50_m3_needs_not_quite_two_metres_of_water() -> None:
    depth = BOOK.evaluate({"wanted_volume": 50, "inside_diameter": 5.68}, ["water_depth_for_volume"])
    assert 1.97 <= depth["water_depth_for_volume"] <= 1.98


def test_the_overflow_sets_the_water() -> None:
    depth = BOOK.evaluate({"wall_height": 2.17, "overflow_drop": 0.20}, ["water_depth"])["water_depth"]
    assert depth == pytest.approx(1.97)


def test_the_base_goes_beyond_the_outer_radius() -> None:
    base = BOOK.evaluate({"outside_diameter": 5.80, "base_projection": 0.305}, ["base_diameter"])["base_diameter"]
    assert base / 2 - 5.80 / 2 == pytest.approx(0.305)


def test_lean_concrete_under_75_mm_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="base_concrete_thickness"):
        BOOK.evaluate({"base_diameter": 6.4, "base_concrete_thickness": 70}, ["base_concrete_volume"])
    thin = BOOK.evaluate({"base_diameter": 6.4, "base_concrete_thickness": 75}, ["base_concrete_volume"])
    assert thin["base_concrete_volume"] == pytest.approx(2.41, abs=0.005)


def test_hoops_at_150_mm_close_in_a_wall_of_two_metres() -> None:
    found = BOOK.evaluate({"wall_height": 1.95, "hoop_spacing": 0.150}, ["hoop_count", "hoop_spacing_closing"])
    assert (found["hoop_count"], found["hoop_spacing_closing"]) == (14, pytest.approx(0.150))


def test_mortar_over_steel_is_never_under_5_mm() -> None:
    for name in ("bar_cover_inside", "hoop_cover_outside"):
        assert BOOK.quantities[name].low == 5


def test_the_same_gap_taped_straight_makes_a_wider_ring() -> None:
    """Six angles 0.900 m apart along the ring stand 0.859 m apart by tape."""
    ring = BOOK.evaluate({"frame_diameter": 5.4 / 3.14159265}, ["ring_length"])["ring_length"]
    chord = BOOK.evaluate({"frame_diameter": 5.4 / 3.14159265, "angle_count": 6}, ["angle_chord"])["angle_chord"]
    assert ring / 6 == pytest.approx(0.900, abs=5e-4)
    assert chord == pytest.approx(0.859, abs=5e-4)


def test_a_wall_is_kept_wet_for_two_weeks_or_longer() -> None:
    found = {
        BOOK.evaluate({"blended_cement": blended, "hot_dry": hot}, ["curing_days"])["curing_days"]
        for blended in (0, 1)
        for hot in (0, 1)
    }
    assert min(found) == 14 == BOOK.quantities["curing_days"].low
    assert BOOK.quantities["curing_days"].source.status is not Status.PUBLISHED
    with pytest.raises(OutOfRangeError, match="curing_days = 13"):
        BOOK.evaluate({"curing_water_daily": 300, "curing_days": 13}, ["curing_water"])


def test_no_check_value_is_called_published() -> None:
    limits = ("angle_spacing_limit", "bar_spacing_limit", "hoop_spacing", "overflow_drop", "base_projection",
              "base_concrete_thickness", "mesh_cover")  # fmt: skip
    assert {BOOK.givens[name].source.status for name in limits} == {Status.COMMON_PRACTICE}
