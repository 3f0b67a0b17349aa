"""Ribs under a thin roof: sums by hand, and what depth and spacing do."""

import pytest
from hypothesis import given

from generator.calculations import BOOK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

TANK_PART = {"rib_spacing": 0.6, "rib_depth": 150.0}
BY_HAND: list[Example] = [
    ("rib_moment", {"roof_load": 2, "rib_spacing": 0.5, "inside_diameter": 4}, "2.00"),  # 2 x 0.5 x 16 / 8
    ("rib_steel_needed",
     {"rib_moment": 1.035, "steel_working_stress": 115, "rib_depth": 120, "roof_cover": 15, "roof_bar_diameter": 10},
     "100.0"),  # 120 - 15 - 5 = 100; 1 035 000 / (115 x 0.9 x 100)
    ("rib_slab_moment", {"roof_load": 2, "rib_spacing": 0.8}, "0.160"),  # 2 x 0.64 / 8
    ("rib_slab_stress", {"rib_slab_moment": 0.16, "roof_thickness": 40}, "0.60"),  # 6 x 160 / 1600
]  # fmt: skip


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


def test_a_rib_from_half_the_span_has_a_quarter_of_the_bending() -> None:
    values = {"roof_load": 2.0, "rib_spacing": 0.5, "inside_diameter": 4.0}
    assert read_wrong("rib_from_radius", values, "rib_moment") == pytest.approx(0.5)  # 2 x 0.5 x 4 / 8


def test_a_rib_without_cover_and_a_bay_taken_once() -> None:
    """By hand: 1 035 000 / (115 x 0.9 x 120) = 83.3 for 100; 2 x 0.8 / 8 = 0.2 for 0.16."""
    rib = {"rib_moment": 1.035, "steel_working_stress": 115, "rib_depth": 120, "roof_cover": 15,
           "roof_bar_diameter": 10}  # fmt: skip
    assert read_wrong("rib_cover_forgotten", rib, "rib_steel_needed") == pytest.approx(83.33, abs=0.01)
    bay = {"roof_load": 2, "rib_spacing": 0.8}
    assert read_wrong("rib_bay_taken_once", bay, "rib_slab_moment") == pytest.approx(0.2)


def test_ribs_farther_apart_than_a_thin_roof_can_span_are_refused() -> None:
    with pytest.raises(OutOfRangeError, match=r"rib_spacing = 1\.6 m is outside 0\.4 to 1\.5 m.*licensed engineer"):
        BOOK.evaluate({"roof_load": 2, "rib_spacing": 1.6}, ["rib_slab_moment"])


RIBS = ("inside_diameter", "roof_thickness", "roof_live_load", "roof_cover", "roof_bar_diameter", "rib_spacing",
        "rib_depth", "steel_working_stress")  # fmt: skip


@given(values=givens(*RIBS))
def test_deeper_ribs_need_less_steel_and_wider_apart_more(values: dict[str, float]) -> None:
    base = {**values, "rib_depth": min(values["rib_depth"], 290), "rib_spacing": min(values["rib_spacing"], 1.4)}
    deeper, wider = {**base, "rib_depth": base["rib_depth"] + 10}, {**base, "rib_spacing": base["rib_spacing"] + 0.1}
    first, second, third = (
        BOOK.evaluate(seeds, ["rib_steel_needed", "rib_slab_stress"]) for seeds in (base, deeper, wider)
    )
    assert second["rib_steel_needed"] < first["rib_steel_needed"] < third["rib_steel_needed"]
    assert second["rib_slab_stress"] == first["rib_slab_stress"] < third["rib_slab_stress"]


@given(values=givens(*RIBS))
def test_the_longest_rib_hands_the_load_of_its_strip_to_the_wall(values: dict[str, float]) -> None:
    """Ends of the longest rib together: 8 M / D = load of its strip."""
    found = BOOK.evaluate(values, ["rib_moment"])
    strip = found["roof_load"] * values["rib_spacing"] * values["inside_diameter"]
    assert 8 * found["rib_moment"] / values["inside_diameter"] == pytest.approx(strip)
