"""From litres to a shape: never smaller than asked, never larger than the tape makes it, inside every limit."""

from contextlib import suppress
from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.plans.refused import NoPlanError
from generator.plans.shape import ROUNDING, Shape, shape_for

LITRES = st.integers(5, 500).map(lambda hundreds: hundreds / 10)


@given(volume=LITRES)
def test_a_shape_holds_what_was_asked_and_hardly_more(volume: float) -> None:
    shape = shape_for(volume, 0.15)
    assert volume - 1e-9 <= shape.volume <= volume * 1.06
    assert shape.volume == pytest.approx(pi / 4 * shape.inside_diameter**2 * shape.water_depth)
    assert round(shape.inside_diameter * 50, 6) == round(shape.inside_diameter * 50)  # the radius is a whole centimetre


@given(volume=LITRES, more=LITRES)
def test_a_larger_wish_is_nowhere_smaller(volume: float, more: float) -> None:
    low, high = (shape_for(each, 0.15) for each in sorted((volume, more)))
    assert low.inside_diameter <= high.inside_diameter
    assert low.water_depth <= high.water_depth


@given(
    volume=st.integers(5, 200).map(lambda hundreds: hundreds / 10),
    width=st.integers(80, 600),
    height=st.integers(55, 230),
)
def test_limits_are_kept_and_nothing_that_fits_is_refused(volume: float, width: int, height: int) -> None:
    shape = None
    with suppress(NoPlanError):
        shape = shape_for(volume, 0.15, most_diameter=width / 100, most_height=height / 100)
    if shape is not None:
        assert shape.inside_diameter <= width / 100 + 1e-9
        assert shape.wall_height <= height / 100 + 1e-9
        assert shape.volume >= volume - 1e-9
    else:  # then the whole room under the limits really holds too little
        depth = height / 100 - 0.15
        assert depth < 0.40 or pi / 4 * (width / 100) ** 2 * depth < volume * 1.08


def test_a_refusal_says_how_wide_it_would_have_to_be() -> None:
    with pytest.raises(NoPlanError) as refused:
        shape_for(10.0, 0.15, most_diameter=2.5, most_height=1.2)
    wide = float(refused.value.numbers["wide"])
    assert pi / 4 * wide**2 * 1.05 >= 10.0  # the width that it names would do under the same height


@pytest.mark.parametrize("volume", [0.4, 50.1, 0, -3, float("nan"), float("inf")])
def test_what_no_tank_of_this_course_holds_is_refused(volume: float) -> None:
    with pytest.raises(NoPlanError):
        shape_for(volume, 0.15)


def test_a_column_takes_its_room_from_the_water() -> None:
    with_column, without = shape_for(12, 0.15, column_width=0.15), shape_for(12, 0.15)
    assert with_column.volume >= 12 - 1e-9
    assert with_column.inside_diameter >= without.inside_diameter


def test_a_hair_more_than_asked_does_not_make_a_tank_stricter() -> None:
    assert Shape(3.12, 1.58, 0.15, asked=12.0).counted == 12.0
    assert Shape(3.12, 1.61, 0.15, asked=12.0).counted > 12 * ROUNDING
