"""Half-round troughs: sums by hand, and what bed and ties are good for. Numerical solutions: `tests/published`."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations import BOOK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, read_wrong, shown

TANK_PART = {"trough_wall_thickness": 38.0, "trough_bed_angle": 90.0, "trough_tie_spacing": 0.7}
BY_HAND: list[Example] = [
    ("trough_pull", {"trough_radius": 0.5}, "1.23"),  # 9.81 x 0.25 / 2 = 1.226
    ("trough_line_moment", {"trough_radius": 0.5}, "0.613"),  # 9.81 x 0.125 / 2
    # half angle 30 degrees: cos 0.8660, sin 0.5, the rest of the quarter round 1.0472
    ("trough_bed_share", {"trough_bed_angle": 60}, "34"),  # 100 x (0.866 - 0.5236) = 34.24
    ("trough_bedded_moment", {"trough_line_moment": 0.5, "trough_bed_share": 34}, "0.170"),  # 0.5 x 0.34
    ("trough_tied_moment", {"trough_line_moment": 0.5}, "0.250"),  # half
    ("trough_tie_pull", {"trough_radius": 0.4, "trough_tie_spacing": 1.5}, "0.59"),  # 9.81 x 0.16 / 4 x 1.5 = 0.5886
    ("trough_end_force", {"trough_radius": 0.3}, "0.18"),  # 9.81 x 2 x 0.027 / 3 = 0.1766
    ("trough_end_depth", {"trough_radius": 0.3}, "0.177"),  # 3 x 3.1416 x 0.3 / 16
    ("trough_line_stress", {"trough_line_moment": 0.3, "trough_pull": 0.6, "trough_wall_thickness": 30},
     "2.02"),  # 6 x 300 / 900 + 0.6 / 30
    ("trough_bedded_stress", {"trough_bedded_moment": 0.15, "trough_pull": 0.6, "trough_wall_thickness": 30},
     "1.02"),  # 6 x 150 / 900 + 0.02
    ("trough_tied_stress", {"trough_tied_moment": 0.075, "trough_pull": 0.6, "trough_wall_thickness": 30},
     "0.52"),  # 6 x 75 / 900 + 0.02
]  # fmt: skip


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


WRONG = [
    ("trough_radius_from_whole_width", {"trough_radius": 0.3}, "trough_pull", 1.7658),  # 9.81 x 0.36 / 2
    ("trough_moment_by_radius_squared", {"trough_radius": 0.5}, "trough_line_moment", 1.22625),
    ("bed_angle_taken_for_half", {"trough_line_moment": 0.5, "trough_bed_angle": 120}, "trough_bedded_moment",
     0.5 * (0.866025 - 0.523599)),  # as for 60 degrees
    ("line_support_thought_a_bed", {"trough_line_moment": 0.5, "trough_bed_angle": 60}, "trough_bedded_moment", 0.5),
    ("end_push_at_half_depth", {"trough_radius": 0.3}, "trough_end_depth", 0.15),
    ("end_wall_taken_for_a_rectangle", {"trough_radius": 0.3}, "trough_end_force", 0.26487),  # 9.81 x 0.027
    ("trough_pull_as_in_a_round_tank", {"trough_radius": 0.5}, "trough_pull", 2.4525),  # 9.81 x 0.5 x 0.5
    ("bending_left_out_of_the_trough",
     {"trough_line_moment": 0.3, "trough_pull": 0.6, "trough_wall_thickness": 30}, "trough_line_stress", 0.02),
    ("six_forgotten_in_the_trough",
     {"trough_line_moment": 0.3, "trough_pull": 0.6, "trough_wall_thickness": 30}, "trough_line_stress",
     0.3533333),  # 300 / 900 + 0.6 / 30
    ("trough_pull_from_whole_width", {"trough_radius": 0.3}, "trough_pull", 1.7658),  # 9.81 x 0.36 / 2
    ("trough_moment_from_whole_width", {"trough_radius": 0.3}, "trough_line_moment", 1.05948),  # 9.81 x 0.216 / 2
    ("end_pushed_as_at_its_bottom", {"trough_radius": 0.4}, "trough_end_force", 0.98620877),  # 9.81 x 0.4 x 0.251327
    ("end_push_as_on_an_upright_wall", {"trough_radius": 0.3}, "trough_end_depth", 0.2),  # 2 x 0.3 / 3
    ("tie_given_the_pull_of_the_belly", {"trough_radius": 0.4, "trough_tie_spacing": 1.5}, "trough_tie_pull",
     1.1772),  # 9.81 x 0.08 x 1.5
    ("ties_thought_useless", {"trough_line_moment": 0.5}, "trough_tied_moment", 0.5),
    ("tie_for_a_metre_only", {"trough_radius": 0.4, "trough_tie_spacing": 1.5}, "trough_tie_pull", 0.3924),
]  # fmt: skip


@pytest.mark.parametrize(("mistake", "values", "asked", "answer"), WRONG)
def test_what_someone_with_a_wrong_idea_answers(
    mistake: str, values: dict[str, float], asked: str, answer: float
) -> None:
    assert read_wrong(mistake, values, asked) == pytest.approx(answer, rel=1e-5)


def test_a_trough_wider_than_1_2_m_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match=r"trough_radius = 0\.65 m is outside 0\.15 to 0\.6 m.*licensed engineer"):
        BOOK.evaluate({"trough_radius": 0.65}, ["trough_line_moment"])


@given(moment=st.floats(0.01, 1.1), bed=st.floats(0, 110), more=st.floats(1, 10))
def test_a_wider_bed_leaves_less_bending_and_none_leaves_all(moment: float, bed: float, more: float) -> None:
    left, of_line = BOOK.quantities["trough_bed_share"].function, BOOK.quantities["trough_bedded_moment"].function

    def bedded(on_a_line: float, angle: float) -> float:
        return of_line(on_a_line, left(angle))

    assert 0 <= bedded(moment, bed + more) < bedded(moment, bed) <= moment * (1 + 1e-12)
    assert bedded(moment, 0) == pytest.approx(moment)
    assert bedded(moment, 180) == pytest.approx(0, abs=1e-12)


@given(radius=st.floats(0.15, 0.6), wall=st.floats(25, 70))
def test_tied_and_thicker_troughs_are_stressed_less(radius: float, wall: float) -> None:
    def stresses(thickness: float) -> tuple[float, float]:
        found = BOOK.evaluate(
            {"trough_radius": radius, "trough_wall_thickness": thickness}, ["trough_line_stress", "trough_tied_stress"]
        )
        return found["trough_line_stress"], found["trough_tied_stress"]

    thin, thick = stresses(wall), stresses(wall + 5)
    assert thin[1] < thin[0]
    assert thick[0] < thin[0]
    assert thick[1] < thin[1]


@given(radius=st.floats(0.15, 0.6), spacing=st.floats(0.3, 1.9))
def test_ties_farther_apart_pull_more(radius: float, spacing: float) -> None:
    pull = BOOK.quantities["trough_tie_pull"].function
    assert pull(radius, spacing + 0.1) > pull(radius, spacing)
    assert pull(radius, 1.0) == pytest.approx(BOOK.quantities["trough_pull"].function(radius) / 2)
