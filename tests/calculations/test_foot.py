"""The foot of the wall: sums by hand, among them the long-wall closed form, and starters in the wrong place."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations import BOOK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, read_wrong, shown

TANK_PART = {"starter_diameter": 4.0}
AFTER_PART = {"foot_moment", "starter_depth", "starter_steel_needed"}
BY_HAND: list[Example] = [
    # long wall, shape 40: b = (12 x 0.96 x 1600) ^ 0.25 = 11.652; 1 / (2 x 40 x 3.394) = 0.003683
    ("foot_moment_share", {"shape_number": 40}, "0.0034"),  # 0.003683 x (1 - 1 / 11.652) = 0.003367
    # shape 42.6: b = 12.025, 1 / (2 x 42.6 x 3.394) = 0.003458
    ("foot_push_share", {"shape_number": 42.6}, "0.0797"),  # 0.003458 x (2 x 12.025 - 1) = 0.07971
    ("foot_moment", {"foot_moment_share": 0.01, "water_depth": 1.5}, "0.33"),  # 0.01 x 9.81 x 3.375 = 0.331
    ("foot_push", {"foot_push_share": 0.1, "water_depth": 2.0}, "3.9"),  # 0.1 x 9.81 x 4 = 3.924
    ("starter_depth", {"wall_thickness": 50, "bar_cover_inside": 10, "starter_diameter": 8}, "36.0"),  # 50 - 10 - 4
    ("starter_steel_needed", {"foot_moment": 0.414, "steel_working_stress": 115, "starter_depth": 40},
     "100.0"),  # 414 000 / (115 x 0.9 x 40 = 4140)
    ("starter_spacing", {"starter_diameter": 8, "starter_steel_needed": 200}, "0.25"),  # 50.27 / 200 = 0.251
    ("base_ring_pull", {"foot_push": 4, "inside_radius": 1.75}, "7.0"),  # 4 x 1.75
    ("base_ring_steel", {"base_ring_pull": 11.5, "steel_working_stress": 115}, "100.0"),  # 11 500 / 115
]  # fmt: skip


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


WALL = {"wall_thickness": 50.0, "bar_cover_inside": 10.0, "hoop_cover_outside": 12.0, "starter_diameter": 8.0}
WRONG = [
    ("foot_moment_by_depth_squared", {"foot_moment_share": 0.01, "water_depth": 1.5}, "foot_moment", 0.220725),
    ("all_the_water_pushes_the_foot", {"foot_push_share": 0.1, "water_depth": 2.0}, "foot_push", 19.62),  # 9.81 x 4 / 2
    ("starters_in_the_middle", WALL, "starter_depth", 25.0),
    ("starters_at_the_dry_face", WALL, "starter_depth", 16.0),  # 12 + 4
    ("whole_wall_taken_as_depth", WALL, "starter_depth", 50.0),
    ("base_ring_from_diameter", {"foot_push": 4, "inside_radius": 1.75, "inside_diameter": 3.5}, "base_ring_pull", 14),
    ("starter_area_from_thickness", {"starter_diameter": 12, "starter_steel_needed": 400}, "starter_spacing",
     0.14),  # 56.5 / 400; right: 113.1 / 400 = 0.28
    ("starter_arm_taken_as_depth", {"foot_moment": 0.414, "steel_working_stress": 115, "starter_depth": 40},
     "starter_steel_needed", 90.0),  # 414 000 / 4600
    ("base_ring_allowed_to_its_breaking", {"base_ring_pull": 8.7, "steel_working_stress": 115},
     "base_ring_steel", 40.0),  # 8700 / 217.5
]  # fmt: skip


@pytest.mark.parametrize(("mistake", "values", "asked", "answer"), WRONG)
def test_what_someone_with_a_wrong_idea_answers(
    mistake: str, values: dict[str, float], asked: str, answer: float
) -> None:
    assert read_wrong(mistake, values, asked) == pytest.approx(answer)


def test_starters_at_the_dry_face_would_ask_for_more_than_twice_the_steel() -> None:
    seeds = {"foot_moment": 0.414, "steel_working_stress": 115}
    near, far = (
        BOOK.evaluate({**seeds, "starter_depth": depth}, ["starter_steel_needed"])["starter_steel_needed"]
        for depth in (36, 16)
    )
    assert far / near == pytest.approx(2.25)


def test_a_foot_that_needs_next_to_nothing_gets_starters_all_the_same_and_a_thin_one_says_no() -> None:
    assert shown("starter_spacing", {"starter_diameter": 6, "starter_steel_needed": 0}) == "0.30"
    assert shown("starter_spacing", {"starter_diameter": 4, "starter_steel_needed": 5000}) == "0.00"


def test_water_deeper_than_the_course_goes_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match=r"water_depth = 2\.3 m is outside 0\.1 to 2\.2 m.*licensed engineer"):
        BOOK.evaluate({"foot_moment_share": 0.01, "water_depth": 2.3}, ["foot_moment"])


@given(shape=st.floats(0.02, 260), more=st.floats(1.01, 1.5))
def test_a_higher_and_thinner_wall_has_a_smaller_share_at_its_foot(shape: float, more: float) -> None:
    for name in ("foot_moment_share", "foot_push_share"):
        share = BOOK.quantities[name].function
        assert share(min(shape * more, 270)) < share(shape)


@given(diameter=st.integers(4, 12), needed=st.floats(0, 5000))
def test_starters_at_the_spacing_are_enough_and_10_mm_wider_are_not(diameter: int, needed: float) -> None:
    seeds = {"starter_diameter": diameter, "starter_steel_needed": needed}
    spacing = BOOK.evaluate(seeds, ["starter_spacing"])["starter_spacing"]
    one = 3.14159265 * diameter**2 / 4
    if spacing > 0:
        assert one / spacing >= needed * (1 - 1e-6)
    if spacing < 0.3 - 1e-9:
        assert one / (spacing + 0.01) < needed
