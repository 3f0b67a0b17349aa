"""Ring tension level by level: sums by hand, the wrong answers, a wall that grows. Whole tanks: `tests/published`."""

import pytest
from hypothesis import given

from generator.calculations import BOOK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

TANK_PART = {"level_height": 0.45, "steel_working_stress": 115.0}
AFTER_PART = {"shape_number", "level_depth", "ring_tension_free", "ring_tension_held", "hoop_steel_needed",
              "mortar_tension", "pull_as_bags", "depth_times_radius"}  # fmt: skip
BY_HAND: list[Example] = [
    ("level_depth", {"water_depth": 1.6, "level_height": 0.35}, "1.25"),  # 1.60 - 0.35
    ("ring_tension_free", {"level_depth": 1.2, "inside_radius": 1.5}, "17.7"),  # 9.81 x 1.2 x 1.5 = 17.658
    ("pull_as_bags", {"ring_tension_free": 9.81}, "20"),  # 9.81 / 0.4905
    ("depth_times_radius", {"water_depth": 1.3, "inside_radius": 1.5}, "1.95"),  # 1.3 x 1.5
    ("shape_number", {"water_depth": 1.5, "inside_diameter": 3, "wall_thickness": 50}, "15.00"),  # 2.25 / (3 x 0.05)
    # table, level 0.7: 0.6986 at shape 8 and 0.7307 at shape 10; half way (0.6986 + 0.7307) / 2 = 0.7147
    ("ring_share", {"shape_number": 9, "water_depth": 2.0, "level_depth": 1.4}, "0.715"),
    ("ring_tension_held", {"ring_share": 0.6, "water_depth": 1.5, "inside_radius": 2}, "17.7"),  # 0.6 x 9.81 x 1.5 x 2
    ("hoop_steel_needed", {"ring_tension_held": 23, "steel_working_stress": 115}, "200.0"),  # 23 000 / 115
    ("mortar_tension", {"ring_tension_held": 36, "wall_thickness": 45}, "0.80"),  # 36 000 N on 1000 x 45 mm2
]


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


LEVEL = {"level_depth": 1.2, "inside_radius": 1.5, "inside_diameter": 3.0, "water_depth": 1.6, "level_height": 0.4}
WRONG = [
    ("ring_tension_from_diameter", LEVEL, "ring_tension_free", 35.316),  # 9.81 x 1.2 x 3.0, twice too much
    ("ring_tension_same_all_the_way", LEVEL, "ring_tension_free", 23.544),  # 9.81 x 1.6 x 1.5
    ("bag_taken_for_a_kilonewton", {"ring_tension_free": 12.0}, "pull_as_bags", 12.0),  # 12; right: 24.5
    ("tonnes_taken_for_kilonewtons", LEVEL, "ring_tension_free", 1.8),  # 1 x 1.2 x 1.5
    ("pull_thought_largest_at_the_top", {"water_depth": 1.6, "level_height": 0.4}, "level_depth", 0.4),
    ("steel_allowed_to_its_breaking", {"ring_tension_held": 43.5, "steel_working_stress": 115},
     "hoop_steel_needed", 200.0),  # 43 500 / 217.5; right: 378
    ("shape_with_depth_taken_once", {"water_depth": 1.5, "inside_diameter": 3, "wall_thickness": 50},
     "shape_number", 10.0),  # 1.5 / 0.15
    ("share_taken_of_the_level",
     {"ring_share": 0.6, "water_depth": 1.5, "level_depth": 1.0, "inside_radius": 2}, "ring_tension_held", 11.772),
    ("pull_halved_between_two_sides", {"ring_tension_held": 36, "wall_thickness": 45}, "mortar_tension", 0.4),
]  # fmt: skip


@pytest.mark.parametrize(("mistake", "values", "asked", "answer"), WRONG)
def test_what_someone_with_a_wrong_idea_answers(
    mistake: str, values: dict[str, float], asked: str, answer: float
) -> None:
    seeds = {name: value for name, value in values.items() if name != asked}
    assert read_wrong(mistake, seeds, asked) == pytest.approx(answer)


def test_a_level_above_the_water_bears_nothing_if_the_foot_slides() -> None:
    found = BOOK.evaluate({"water_depth": 1.2, "level_height": 1.3, "inside_radius": 1.5}, ["ring_tension_free"])
    assert (found["level_depth"], found["ring_tension_free"]) == (0, 0)


def test_the_table_is_read_at_its_first_and_last_entries() -> None:
    """At the surface of a very low wall the share is nearly a half; at its foot nothing is borne."""
    assert BOOK.quantities["ring_share"].function(0.01, 1.0, 0.0) == pytest.approx(0.5, abs=0.001)
    for shape in (0.01, 0.1, 8, 270):
        assert BOOK.quantities["ring_share"].function(shape, 1.0, 1.0) == pytest.approx(0, abs=1e-9)


def test_a_share_above_one_or_steel_stressed_as_in_a_house_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match=r"ring_share = 1\.1.*licensed engineer"):
        BOOK.evaluate({"ring_share": 1.1, "water_depth": 1.5, "inside_radius": 2}, ["ring_tension_held"])
    with pytest.raises(OutOfRangeError, match=r"steel_working_stress = 217\.5 MPa is outside 80 to 130.*engineer"):
        BOOK.evaluate({"ring_tension_held": 23, "steel_working_stress": 217.5}, ["hoop_steel_needed"])


SIZES = ("inside_diameter", "level_height", "steel_working_stress")


@given(values=givens(*SIZES))
def test_a_wider_tank_and_a_deeper_level_pull_more(values: dict[str, float]) -> None:
    def pull(diameter: float, depth: float) -> float:
        seeds = {"inside_diameter": diameter, "level_depth": depth}
        return BOOK.work_out(seeds, ["ring_tension_free"], check=False)["ring_tension_free"]

    diameter, depth = values["inside_diameter"], values["level_height"] + 0.1
    assert pull(diameter + 0.1, depth) > pull(diameter, depth)
    assert pull(diameter, depth + 0.1) > pull(diameter, depth)
    assert pull(2 * diameter, depth) == pytest.approx(2 * pull(diameter, depth))


@given(values=givens(*SIZES))
def test_a_held_wall_never_pulls_more_than_the_foot_of_a_free_one(values: dict[str, float]) -> None:
    for depth, wall in ((0.9, 35), (1.6, 50), (2.2, 75)):
        seeds = {**values, "water_depth": depth, "wall_thickness": wall}
        found = BOOK.work_out(seeds, ["ring_tension_held"], check=False)
        assert 0 <= found["ring_tension_held"] <= 9.81 * depth * values["inside_diameter"] / 2 * (1 + 1e-9)
