"""The foot of a column: ground pressure through the base alone, and the pad that brings it down."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations.column_foot import column_foot_pressure, column_pad_side
from generator.formula import OutOfRangeError


@pytest.mark.parametrize(("load", "pressure"), [(13, 130), (20, 200)])
def test_a_column_through_75_mm_of_base_needs_a_pad(load: float, pressure: float) -> None:
    """Derived, to 5 %: spread 0.2 + 2 x 0.075 = 0.35 m across, 0.0962 m2; the water's weight comes on top."""
    assert column_foot_pressure(load, 0.2, 75, 0) == pytest.approx(pressure, rel=0.05)
    assert column_foot_pressure(load, 0.2, 75, 2.0) - column_foot_pressure(load, 0.2, 75, 0) == pytest.approx(19.62)


SIZES = {
    "column_load": st.floats(0, 40), "column_width": st.floats(0.08, 0.4), "base_thickness": st.floats(75, 300),
    "water_depth": st.floats(0, 2.2),
}  # fmt: skip


@given(sizes=st.fixed_dictionaries(SIZES))
def test_wider_columns_and_thicker_bases_press_less_and_more_load_more(sizes: dict[str, float]) -> None:
    pressure = column_foot_pressure(**sizes)
    assert column_foot_pressure(**{**sizes, "column_load": sizes["column_load"] + 1}) > pressure
    assert column_foot_pressure(**{**sizes, "water_depth": sizes["water_depth"] + 0.1}) > pressure
    for name, more in (("column_width", 0.05), ("base_thickness", 25)):
        assert column_foot_pressure(**{**sizes, name: sizes[name] + more}) <= pressure


@given(
    load=st.floats(0.5, 40), allowed=st.floats(50, 440), water=st.floats(0, 2.2), thick=st.floats(100, 400)
)  # fmt: skip
def test_a_pad_keeps_the_pressure_and_one_50_mm_smaller_does_not(
    load: float, allowed: float, water: float, thick: float
) -> None:
    def pressure(side: float) -> float:
        return load / side**2 + 9.81 * water + 24 * thick / 1000

    side = column_pad_side(load, allowed, water, thick)
    assert side / 0.05 == pytest.approx(round(side / 0.05))
    assert pressure(side) <= allowed * (1 + 1e-6)
    if side > 0.06:
        assert pressure(side - 0.05) > allowed * (1 - 1e-6)


@given(load=st.floats(0.5, 40), allowed=st.floats(50, 400), water=st.floats(0, 2.0))
def test_weaker_ground_more_load_and_deeper_water_never_ask_for_a_smaller_pad(
    load: float, allowed: float, water: float
) -> None:
    side = column_pad_side(load, allowed, water, 200)
    assert column_pad_side(load + 2, allowed, water, 200) >= side
    assert column_pad_side(load, allowed, water + 0.2, 200) >= side
    assert column_pad_side(load, allowed + 20, water, 200) <= side


def test_ground_that_the_water_alone_overloads_and_columns_without_a_size_are_refused() -> None:
    with pytest.raises(OutOfRangeError, match="too weak for this column; ask a licensed engineer"):
        column_pad_side(10, 20, 2.1, 200)  # 20.6 + 4.8 kN/m2 before the column
    with pytest.raises(OutOfRangeError, match="licensed engineer"):
        column_pad_side(-1, 100, 1, 200)
    for bad in ((10, 0, 75, 1), (10, 0.2, 0, 1), (-1, 0.2, 75, 1), (10, 0.2, 75, -1)):
        with pytest.raises(OutOfRangeError, match="licensed engineer"):
            column_foot_pressure(*bad)
