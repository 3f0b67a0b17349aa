"""Props: sums by hand, a grid that reaches everywhere, and boards tried one slant after the other at the manhole."""

from math import cos, hypot, pi, radians, sin

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from generator.calculations import BOOK
from generator.calculations.props import bare_pole_pressure, longest_board_out, prop_grid
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, read_wrong, shown

TANK_PART = {"prop_spacing": 0.8, "sole_plate_side": 0.3}
BY_HAND: list[Example] = [
    ("prop_load", {"roof_thickness": 50, "prop_spacing": 0.8}, "1.92"),  # 24 x 0.05 + 0.3 + 1.5 = 3.0; x 0.64
    ("prop_count", {"floor_area": 7, "prop_spacing": 0.9}, "9"),  # 7 / 0.81 = 8.64
    ("sole_pressure", {"prop_load": 1.8, "sole_plate_side": 0.3}, "20.0"),  # 1.8 / 0.09
    ("roof_wet_mass", {"floor_area": 10, "roof_thickness": 50}, "1200.0"),  # 0.5 m3 x 2400
]


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


PROP = {"roof_thickness": 50.0, "prop_spacing": 0.8}
FLOOR = {"floor_area": 7.0, "prop_spacing": 0.9}
WRONG = [
    ("prop_load_by_spacing_once", PROP, "prop_load", 2.4),  # 3.0 x 0.8
    ("crew_forgotten_on_the_props", PROP, "prop_load", 0.768),  # 1.2 x 0.64
    ("props_by_spacing_once", FLOOR, "prop_count", 8),  # 7 / 0.9 = 7.8
    ("props_rounded_down", FLOOR, "prop_count", 8),
    ("sole_by_side_once", {"prop_load": 1.8, "sole_plate_side": 0.3}, "sole_pressure", 6.0),
    ("sole_shared_by_its_edge", {"prop_load": 1.8, "sole_plate_side": 0.3}, "sole_pressure", 1.5),  # 1.8 / 1.2
    ("wet_roof_weighed_as_water", {"floor_area": 10, "roof_thickness": 50}, "roof_wet_mass", 500.0),
]


@pytest.mark.parametrize(("mistake", "values", "asked", "answer"), WRONG)
def test_what_someone_with_a_wrong_idea_answers(
    mistake: str, values: dict[str, float], asked: str, answer: float
) -> None:
    assert read_wrong(mistake, values, asked) == pytest.approx(answer)


def test_props_farther_apart_than_the_course_s_are_refused() -> None:
    with pytest.raises(OutOfRangeError, match=r"prop_spacing = 1\.3 m is outside 0\.5 to 1\.2 m.*licensed engineer"):
        BOOK.evaluate({"roof_thickness": 50, "prop_spacing": 1.3}, ["prop_load"])


def test_a_pole_without_a_board_presses_as_hard_as_many_boards() -> None:
    """Derived: 3 kN on a pole of 80 mm, 0.00503 m2, is 597 kN/m2; a board of 0.30 m takes it down to 33."""
    assert bare_pole_pressure(3.0, 0.08) == pytest.approx(597, abs=0.5)
    assert bare_pole_pressure(3.0, 0.08) > 17 * BOOK.quantities["sole_pressure"].function(3.0, 0.3)


# ------------------------------------------------------------------------------------------- the grid


@given(across=st.floats(0.8, 8.0), spacing=st.floats(0.5, 1.2))
def test_a_grid_stands_inside_is_even_and_mirrors_itself(across: float, spacing: float) -> None:
    places = prop_grid(across, spacing)
    reach = across / 2 - 0.1
    rounded = {(round(east, 6), round(north, 6)) for east, north in places}
    assert len(rounded) == len(places)
    assert (0.0, 0.0) in rounded
    assert all(hypot(east, north) <= reach + 1e-6 for east, north in places)
    assert all(((-east + 0.0, north) in rounded) and ((north, east) in rounded) for east, north in rounded)
    assert all(abs(round(east / spacing) * spacing - east) < 1e-6 for east, _ in places)


@given(
    across=st.floats(1.6, 8.0), spacing=st.floats(0.5, 1.2), turn=st.floats(0, 2 * pi), share=st.floats(0, 1)
)  # fmt: skip
def test_no_place_of_the_floor_away_from_the_wall_is_far_from_a_prop(
    across: float, spacing: float, turn: float, share: float
) -> None:
    """Half a diagonal of a square at most; nearer to the wall than that, the wall itself is the prop."""
    far = across / 2 - 0.1 - spacing / 2**0.5
    assume(far > 0)
    east, north = share * far * cos(turn), share * far * sin(turn)
    nearest = min(hypot(east - x, north - y) for x, y in prop_grid(across, spacing))
    assert nearest <= spacing / 2**0.5 + 1e-6


@given(across=st.floats(0.8, 7.5), spacing=st.floats(0.55, 1.2))
def test_wider_floors_and_closer_props_never_ask_for_fewer(across: float, spacing: float) -> None:
    assert len(prop_grid(across + 0.5, spacing)) >= len(prop_grid(across, spacing))
    assert len(prop_grid(across, spacing - 0.05)) >= len(prop_grid(across, spacing))


@pytest.mark.parametrize("bad", [(0.0, 0.8, 0.1), (2.0, 0.0, 0.1), (2.0, 0.8, 1.0), (2.0, 0.8, -0.1)])
def test_a_grid_without_a_floor_is_refused(bad: tuple[float, float, float]) -> None:
    with pytest.raises(OutOfRangeError, match="licensed engineer"):
        prop_grid(*bad)


# ----------------------------------------------------------------------------------------- the manhole

SIZES = {
    "clear_height": st.floats(0.8, 2.4), "reach": st.floats(0.5, 7.0), "manhole": st.floats(0.45, 0.9),
    "roof_thickness": st.floats(30, 100), "board_thickness": st.floats(15, 60),
}  # fmt: skip


@given(sizes=st.fixed_dictionaries(SIZES))
def test_the_longest_board_is_the_best_of_all_slants_tried_one_after_the_other(sizes: dict[str, float]) -> None:
    """Independent: at each slant, does the board pass the hole's two edges and the far wall? The longest that does."""
    best = 0.0
    for tenth in range(1, 900):
        slant = radians(tenth / 10)
        room = sizes["manhole"] * sin(slant) - sizes["roof_thickness"] / 1000 * cos(slant)
        length = sizes["clear_height"] / sin(slant)
        if room >= sizes["board_thickness"] / 1000 and length * cos(slant) <= sizes["reach"]:
            best = max(best, length)
    assert longest_board_out(**sizes) == pytest.approx(best, rel=0.015)


@given(sizes=st.fixed_dictionaries(SIZES))
def test_an_upright_board_always_comes_out_and_more_room_never_shortens_it(sizes: dict[str, float]) -> None:
    length = longest_board_out(**sizes)
    assert length >= sizes["clear_height"]
    for name, more in (("clear_height", 0.1), ("reach", 0.2), ("manhole", 0.05)):
        assert longest_board_out(**{**sizes, name: sizes[name] + more}) >= length - 1e-9
    for name, more in (("roof_thickness", 20), ("board_thickness", 10)):
        assert longest_board_out(**{**sizes, name: sizes[name] + more}) <= length + 1e-9


def test_a_board_as_thick_as_the_hole_and_sizes_of_nothing_are_refused() -> None:
    good = {"clear_height": 1.8, "reach": 1.6, "manhole": 0.6, "roof_thickness": 50.0, "board_thickness": 38.0}
    for name in good:
        with pytest.raises(OutOfRangeError, match="licensed engineer"):
            longest_board_out(**{**good, name: 0.0})
    with pytest.raises(OutOfRangeError, match="licensed engineer"):
        longest_board_out(**{**good, "board_thickness": 600.0})


@given(thickness=st.floats(30, 100), spacing=st.floats(0.5, 1.1), side=st.floats(0.1, 0.5))
def test_thicker_roofs_and_wider_grids_load_a_prop_more_and_wider_boards_press_less(
    thickness: float, spacing: float, side: float
) -> None:
    load, pressure = (BOOK.quantities[name].function for name in ("prop_load", "sole_pressure"))
    assert load(thickness + 5, spacing) > load(thickness, spacing)
    assert load(thickness, spacing + 0.1) > load(thickness, spacing)
    assert pressure(2.0, side + 0.1) < pressure(2.0, side)
