"""Hoops chosen for the ring tension: sums by hand, swapped bars, and spacings that are always strong enough."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations import BOOK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

TANK_PART = {"other_hoop_diameter": 6.0}
AFTER_PART = {"hoop_stress", "hoop_stress_free"}
BY_HAND: list[Example] = [
    ("hoop_area", {"hoop_diameter": 6}, "28.3"),  # 3.1416 x 3 x 3 = 28.27
    ("hoop_steel_given", {"hoop_area": 50, "hoop_spacing": 0.125}, "400.0"),  # 8 hoops of 50 in a metre
    ("hoop_stress", {"ring_tension_held": 30, "hoop_steel_given": 300}, "100.0"),  # 30 000 / 300
    ("hoop_stress_free", {"ring_tension_free": 36, "hoop_steel_given": 240}, "150.0"),  # 36 000 / 240
    ("hoop_spacing_allowed", {"hoop_area": 28.3, "hoop_steel_needed": 200}, "0.140"),  # 0.1415, down to 5 mm
    ("other_hoop_spacing", {"hoop_spacing": 0.1, "hoop_diameter": 8, "other_hoop_diameter": 6},
     "0.055"),  # 0.1 x 36 / 64 = 0.05625, down to 5 mm
    ("other_hoop_count", {"wall_height": 1.2, "other_hoop_spacing": 0.055}, "23"),  # 21.8, up to 22, and one
    ("other_lap_length", {"lap_diameters": 60, "other_hoop_diameter": 6}, "0.36"),  # 360 mm
    ("other_hoop_length", {"frame_diameter": 2.486, "bar_diameter": 8, "other_hoop_diameter": 6,
                           "other_lap_length": 0.3}, "8.15"),  # 3.1416 x 2.5 = 7.854, and 0.3
]  # fmt: skip


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


SWAP = {"hoop_spacing": 0.1, "hoop_diameter": 8.0, "other_hoop_diameter": 6.0}
WRONG = [
    ("hoop_area_from_thickness", {"hoop_diameter": 12}, "hoop_area", 56.549),  # 28.27 x 2; right: 113.1
    ("hoop_area_from_the_whole_thickness", {"hoop_diameter": 8}, "hoop_area", 201.062),  # 3.1416 x 64; right: 50.3
    ("hoops_swapped_one_for_one", SWAP, "other_hoop_spacing", 0.1),
    ("hoops_swapped_by_thickness", SWAP, "other_hoop_spacing", 0.075),  # 0.1 x 6 / 8
    ("other_spaces_counted_not_hoops", {"wall_height": 1.2, "other_hoop_spacing": 0.055}, "other_hoop_count", 22),
    ("lap_of_the_planned_bar_kept", {**SWAP, "lap_diameters": 50}, "other_lap_length", 0.4),  # 50 x 8; right: 0.3
    ("other_lap_in_centimetres", {**SWAP, "lap_diameters": 50}, "other_lap_length", 3.0),
    ("other_hoop_cut_without_lap", {"frame_diameter": 2.486, "bar_diameter": 8, "other_hoop_diameter": 6,
                                    "other_lap_length": 0.3}, "other_hoop_length", 7.854),
    ("hoops_in_a_metre_multiplied_by_spacing", {"hoop_area": 50, "hoop_spacing": 0.125}, "hoop_steel_given", 6.25),
    ("mortar_thought_to_pull_with_the_hoops",
     {"ring_tension_held": 30, "hoop_steel_given": 400, "wall_thickness": 50}, "hoop_stress", 0.595),  # 30 000 / 50 400
    ("widest_spacing_forgotten", {"hoop_area": 50, "hoop_steel_needed": 100}, "hoop_spacing_allowed", 0.5),
]  # fmt: skip


@pytest.mark.parametrize(("mistake", "values", "asked", "answer"), WRONG)
def test_what_someone_with_a_wrong_idea_answers(
    mistake: str, values: dict[str, float], asked: str, answer: float
) -> None:
    assert read_wrong(mistake, values, asked) == pytest.approx(answer, abs=0.001)


def test_a_level_without_water_keeps_the_widest_spacing_and_too_thin_a_hoop_says_nothing() -> None:
    assert shown("hoop_spacing_allowed", {"hoop_area": 28.3, "hoop_steel_needed": 0}) == "0.200"
    assert shown("other_hoop_spacing", {"hoop_spacing": 0.1, "hoop_diameter": 16, "other_hoop_diameter": 3}) == "0.000"


def test_a_hoop_thinner_than_wire_of_3_mm_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match=r"hoop_diameter = 2.*licensed engineer"):
        BOOK.evaluate({"hoop_diameter": 2}, ["hoop_area"])


@given(area=st.floats(7, 202), needed=st.floats(0, 1100))
def test_hoops_at_the_allowed_spacing_are_enough_and_5_mm_wider_are_not(area: float, needed: float) -> None:
    spacing = BOOK.evaluate({"hoop_area": area, "hoop_steel_needed": needed}, ["hoop_spacing_allowed"])[
        "hoop_spacing_allowed"
    ]
    if spacing > 0:
        assert area / spacing >= needed * (1 - 1e-6)
    if spacing < 0.2:
        assert area / (spacing + 0.005) < needed


@given(values=givens("hoop_spacing", "hoop_diameter", "other_hoop_diameter"))
def test_the_other_hoop_never_brings_less_steel_unless_200_mm_stop_it(values: dict[str, float]) -> None:
    spacing = BOOK.evaluate(values, ["other_hoop_spacing"])["other_hoop_spacing"]
    planned = values["hoop_diameter"] ** 2 / values["hoop_spacing"]
    if spacing > 0:
        assert values["other_hoop_diameter"] ** 2 / spacing >= planned * (1 - 1e-6)
    if spacing < 0.2:
        assert values["other_hoop_diameter"] ** 2 / (spacing + 0.005) < planned


@given(values=givens("hoop_spacing", "hoop_diameter"))
def test_the_same_hoop_keeps_its_spacing(values: dict[str, float]) -> None:
    same = {**values, "other_hoop_diameter": values["hoop_diameter"]}
    assert BOOK.evaluate(same, ["other_hoop_spacing"])["other_hoop_spacing"] == pytest.approx(values["hoop_spacing"])
