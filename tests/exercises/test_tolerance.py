from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.exercises.tolerance import Tolerance, tolerance_of
from tests.exercises.small import BOOK

LENGTH, COUNT = BOOK.quantities["pen_round"], BOOK.quantities["wire_count"]


def test_exact_is_exact_for_counts_and_half_a_last_decimal_for_the_rest() -> None:
    assert tolerance_of("exact", COUNT) == Tolerance(0, 0)
    assert tolerance_of("exact", LENGTH) == Tolerance(0.005, 0)


def test_within_takes_a_share_or_an_amount_in_any_unit_of_the_kind() -> None:
    assert tolerance_of("within 2 %", LENGTH) == Tolerance(0, 0.02)
    assert tolerance_of("within 2%", LENGTH) == Tolerance(0, 0.02)
    assert tolerance_of("within 5 mm", LENGTH) == Tolerance(0.005, 0)
    assert tolerance_of("within 0.5 inch", LENGTH).absolute == pytest.approx(0.0127)


@pytest.mark.parametrize(
    ("answer", "message"),
    [
        ("about right", "is neither 'exact' nor 'within 2 %' nor 'within 5 m'"),
        ("within", "is neither"),
        ("within 0 mm", "leaves no room"),
        ("within 40 %", "wider than 25 %"),
        ("within 5 kg", "'kg' is not a unit of the same kind as 'm'"),
        ("within 5 cubits", "'cubits' is not a unit"),
        ("within -5 mm", "is neither"),
    ],
)
def test_a_line_that_can_not_be_read_says_what_it_may_be(answer: str, message: str) -> None:
    with pytest.raises(ValueError, match=message):
        tolerance_of(answer, LENGTH)


@given(st.floats(-1e6, 1e6), st.floats(-1e6, 1e6), st.floats(-1e6, 1e6), st.sampled_from([0, 0.005, 2]),
       st.sampled_from([0, 0.01, 0.2]))  # fmt: skip
def test_no_answer_fits_two_values_that_are_told_apart(
    answer: float, one: float, other: float, absolute: float, relative: float
) -> None:
    tolerance = Tolerance(absolute, relative)
    if tolerance.tells_apart(one, other):
        assert not (tolerance.fits(answer, one) and tolerance.fits(answer, other))


def test_the_edge_of_the_tolerance_is_still_right() -> None:
    assert Tolerance(0.005, 0).fits(0.23, 0.225)
    assert not Tolerance(0.005, 0).fits(0.2301, 0.225)
    assert Tolerance(0, 0.02).fits(102, 100)
