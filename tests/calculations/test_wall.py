"""The build-up of a wall. Examples are sums of layers, worked by hand."""

import pytest
from hypothesis import given

from generator.calculations import BOOK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

LAYERS = {"mesh_cover": 5.0, "inside_mesh_thickness": 5.0, "bar_diameter": 8.0, "hoop_diameter": 8.0,
          "outside_mesh_thickness": 4.0}  # fmt: skip
BY_HAND: list[Example] = [
    ("wall_build_up", LAYERS, "35"),  # 5 + 5 + 8 + 8 + 4 + 5
    ("wall_build_up_at_lap", LAYERS, "43"),  # a second hoop of 8
    ("wall_build_up_at_angle", {**LAYERS, "angle_leg": 25}, "52"),  # 25 for the bar's 8
    ("wall_thickness", {**LAYERS, "angle_leg": 25}, "55"),  # 52, to the next 5
    ("bar_cover_inside", {"mesh_cover": 5, "inside_mesh_thickness": 5}, "10"),  # both lie over the bar
    ("hoop_cover_outside", {"mesh_cover": 5, "outside_mesh_thickness": 4}, "9"),  # both lie over the hoop
]
WALL = (*LAYERS, "angle_leg")


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


def test_cover_on_one_side_only_leaves_the_other_face_bare() -> None:
    assert read_wrong("cover_on_one_side_only", LAYERS, "wall_build_up") == 30


def test_a_wall_planned_for_hoops_only_hides_no_angle() -> None:
    assert read_wrong("wall_planned_for_hoops_only", {**LAYERS, "angle_leg": 25}, "wall_thickness") == 45


@pytest.mark.parametrize("name", ["bar_cover_inside", "hoop_cover_outside"])
def test_less_than_5_mm_over_steel_is_refused(name: str) -> None:
    thin = {"mesh_cover": 2.0, "inside_mesh_thickness": 2.0, "outside_mesh_thickness": 2.0}
    needed = {n: thin[n] for n in BOOK.quantities[name].needs}
    with pytest.raises(OutOfRangeError, match=f"{name} = 4 mm is outside 5 to 25 mm"):
        BOOK.evaluate(needed, [name])


def thickness(values: dict[str, float]) -> dict[str, float]:
    """The wall, or nothing where the course refuses it because it gets too thick or too thin for hand work."""
    if 30 <= BOOK.work_out(values, ["wall_thickness"], check=False)["wall_thickness"] <= 75:
        return BOOK.evaluate(values, ["wall_thickness"])
    with pytest.raises(OutOfRangeError, match="wall_thickness"):
        BOOK.evaluate(values, ["wall_thickness"])
    return {}


@given(values=givens(*WALL))
def test_every_layer_finds_room_and_no_more_than_5_mm_is_given_away(values: dict[str, float]) -> None:
    found = thickness(values)
    if found:
        most = max(found["wall_build_up_at_lap"], found["wall_build_up_at_angle"])
        assert most <= found["wall_thickness"] < most + 5


@given(values=givens(*WALL))
def test_more_cover_never_makes_a_wall_thinner(values: dict[str, float]) -> None:
    found = thickness(values)
    more = thickness({**values, "mesh_cover": 10})
    if found and more:
        assert more["wall_thickness"] >= found["wall_thickness"]
