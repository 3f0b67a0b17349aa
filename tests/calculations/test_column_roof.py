"""A roof on a column: sums by hand, steel on the wrong face, and what a wider cap is good for."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations import BOOK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, read_wrong, shown

TANK_PART = {"column_head_diameter": 0.5}
LIMITS_PART = {"column_head_share"}
"""The range of the solved slab."""
AFTER_PART = {"punching_stress"}
# cap of 0.15 of the span: column 1.462, over the column 0.1869, between them 0.0520 of load x radius^2
BY_HAND: list[Example] = [
    ("column_head_share", {"column_head_diameter": 0.6, "inside_diameter": 4}, "0.150"),  # 0.6 / 4
    ("column_load", {"column_head_share": 0.15, "roof_load": 2, "inside_radius": 2}, "11.7"),  # 1.462 x 8 = 11.70
    ("column_head_moment", {"column_head_share": 0.15, "roof_load": 2, "inside_radius": 2}, "1.50"),  # 0.1869 x 8
    ("column_field_moment", {"column_head_share": 0.15, "roof_load": 2, "inside_radius": 2}, "0.42"),  # 0.0520 x 8
    ("column_roof_stress", {"column_head_moment": 1.5, "roof_thickness": 60}, "2.50"),  # 6 x 1500 / 3600
    # outside the cap 12 - 2 x 0.19635 = 11.607 kN; girth 3.1416 x 0.54 = 1.6965 m; 11 607 / (1696.5 x 40)
    ("punching_stress",
     {"column_load": 12, "roof_load": 2, "column_head_diameter": 0.5, "roof_steel_depth": 40}, "0.17"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


WRONG = [
    ("column_steel_below_only", {"column_field_moment": 0.42}, "column_head_moment", 0.42),  # right: 1.50, on top
    ("roof_shared_half_and_half", {"roof_load": 2, "inside_radius": 2}, "column_load", 12.566),  # 2 x 3.1416 x 4 / 2
    ("whole_load_punches_a_bare_column", {"column_load": 12, "roof_thickness": 50, "column_head_diameter": 0.5},
     "punching_stress", 0.1528),  # 12 000 / (1570.8 x 50)
    ("cap_shared_by_the_radius", {"column_head_diameter": 0.6, "inside_diameter": 4, "inside_radius": 2},
     "column_head_share", 0.3),
    ("column_left_out_of_the_roof", {"flat_roof_moment": 1.6}, "column_field_moment", 1.6),
    ("roof_checked_away_from_the_column",
     {"column_head_moment": 1.5, "column_field_moment": 0.42, "roof_thickness": 60}, "column_roof_stress", 0.7),
]  # fmt: skip


@pytest.mark.parametrize(("mistake", "values", "asked", "answer"), WRONG)
def test_what_someone_with_a_wrong_idea_answers(
    mistake: str, values: dict[str, float], asked: str, answer: float
) -> None:
    assert read_wrong(mistake, values, asked) == pytest.approx(answer, rel=1e-3)


@pytest.mark.parametrize(("head", "span"), [(0.15, 8.0), (1.5, 4.0)])
def test_a_cap_out_of_the_solved_slab_is_refused(head: float, span: float) -> None:
    with pytest.raises(OutOfRangeError, match=r"column_head_share = .* outside 0\.02 to 0\.35.*licensed engineer"):
        BOOK.evaluate({"column_head_diameter": head, "inside_diameter": span}, ["column_head_share"])


@given(share=st.floats(0.02, 0.33), load=st.floats(1.4, 7.5), radius=st.floats(0.3, 4))
def test_a_wider_cap_takes_more_load_and_bends_the_roof_less(share: float, load: float, radius: float) -> None:
    def read(cap: float, name: str) -> float:
        return BOOK.quantities[name].function(cap, load, radius)

    assert read(share + 0.02, "column_load") > read(share, "column_load")
    for name in ("column_head_moment", "column_field_moment"):
        assert read(share + 0.02, name) < read(share, name)
    assert read(share, "column_head_moment") > 2.5 * read(share, "column_field_moment")
    whole = load * 3.14159265 * radius**2
    assert 0.39 * whole < read(share, "column_load") < 0.6 * whole


@given(head=st.floats(0.15, 1.4), depth=st.floats(9, 90), load=st.floats(20, 240))
def test_a_wider_cap_and_deeper_steel_lower_the_punching(head: float, depth: float, load: float) -> None:
    punching = BOOK.quantities["punching_stress"].function
    assert punching(load, 2.0, head + 0.1, depth) < punching(load, 2.0, head, depth)
    assert punching(load, 2.0, head, depth + 3) < punching(load, 2.0, head, depth)
