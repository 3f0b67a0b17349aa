"""One rounding policy: half up on the decimal text, whole numbers tolerant at the edge."""

import math
from decimal import ROUND_HALF_UP, Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.formula import interpolate, pick, show, show_full, whole_down, whole_up


@pytest.mark.parametrize(
    ("value", "places", "shown"),
    [
        (1.005, 2, "1.01"),
        (2.675, 2, "2.68"),
        (0.125, 2, "0.13"),
        (2.5, 0, "3"),
        (-2.5, 0, "-3"),
        (-0.004, 2, "0.00"),
        (0.1 + 0.2, 1, "0.3"),
        (150000, 0, "150000"),
        (1e-7, 3, "0.000"),
        (123456789.5, 0, "123456790"),
        (1234567890.125, 4, "1234567890.1300"),
        (1e30, 0, "1" + "0" * 30),
    ],
)
def test_numbers_are_shown_as_school_teaches_rounding(value: float, places: int, shown: str) -> None:
    assert show(value, places) == shown


@given(st.decimals(min_value=-10000, max_value=10000, places=4), st.integers(0, 3))
def test_a_decimal_number_is_rounded_like_its_decimal_text(number: Decimal, places: int) -> None:
    expected = number.quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP)
    assert Decimal(show(float(number), places)) == expected


@pytest.mark.parametrize("value", [math.inf, -math.inf, math.nan])
def test_what_is_not_a_number_is_never_shown(value: float) -> None:
    with pytest.raises(ValueError, match="cannot be shown"):
        show(value, 2)
    with pytest.raises(ValueError, match="cannot be shown"):
        show_full(value)


@given(st.integers(1, 600), st.integers(1, 100))
def test_whole_numbers_forgive_a_hair_of_floating_point(tenths: int, divisor: int) -> None:
    quotient = (tenths / 10) / (divisor / 10)
    assert whole_up(quotient) == -(-tenths // divisor)
    assert whole_down(quotient) == tenths // divisor


@given(st.integers(-10000, 10000), st.integers(0, 4))
def test_a_given_is_shown_as_it_was_given(number: int, places: int) -> None:
    assert Decimal(show_full(number / 10**places)) == Decimal(number).scaleb(-places)
    assert "E" not in show_full(number / 10**places)


@given(st.floats(-5, 15))
def test_a_table_is_read_between_its_rows_and_held_at_its_ends(x: float) -> None:
    xs, ys = (0.0, 2.0, 10.0), (1.0, 5.0, 1.0)
    value = interpolate(x, xs, ys)
    assert 1 <= value <= 5
    if x <= 0 or x >= 10:
        assert value == 1
    elif x <= 2:
        assert value == pytest.approx(1 + 2 * x)


def test_a_row_is_picked_by_number_and_the_ends_hold() -> None:
    assert [pick(i, (10, 20, 30)) for i in (-3, 0, 1.9999999999, 2, 99)] == [10, 10, 30, 30, 30]
