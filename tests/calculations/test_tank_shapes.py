"""Shapes and splits: never less water than was wanted, the stated order, and every refusal says who to ask."""

from itertools import pairwise
from math import ceil, isnan, nan, pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations import BOOK
from generator.calculations.bands import Band, judge
from generator.calculations.tank_shapes import Shape, shapes, split
from generator.formula import OutOfRangeError

volumes = st.floats(0.5, 49, allow_nan=False)
columns = st.sampled_from([0.0, 0.12, 0.25, 0.4])
drops = st.sampled_from([0.05, 0.13, 0.2, 0.5])
limits = st.one_of(st.none(), st.integers(12, 48).map(lambda steps: steps * 0.05))


def holds(shape: Shape, column: float) -> float:
    return pi / 4 * (shape.diameter**2 - column**2) * shape.water_depth


def on_the_tape(length: float) -> bool:
    return abs(length / 0.05 - round(length / 0.05)) < 1e-9


@given(volume=st.floats(0.5, 100), column=columns, drop=drops)
def test_capacity_is_never_rounded_down(volume: float, column: float, drop: float) -> None:
    """One tank up to 50 m3, two or three beyond: together they hold what was wanted."""
    if volume <= 49:
        assert all(holds(shape, column) >= volume * (1 - 1e-7) for shape in shapes(volume, None, None, column, drop))
    for way in split(volume, None, None, column, drop):
        assert way.count * holds(way.each, column) >= volume * (1 - 1e-7)
        assert way.volume == pytest.approx(way.count * holds(way.each, column))
    if volume > 50:
        assert split(volume, None, None, column, drop)


@given(volume=st.floats(0.5, 20), column=columns, drop=drops, flat=st.booleans())
def test_shapes_keep_the_limits_of_the_course(volume: float, column: float, drop: float, flat: bool) -> None:
    for shape in shapes(volume, None, None, column, drop, flat_roof=flat):
        assert 0.4 - 1e-9 <= shape.water_depth <= 2.2 + 1e-9
        assert 0.6 - 1e-9 <= shape.diameter <= 8.0 + 1e-9
        assert shape.wall_height <= 2.4 + 1e-9
        assert shape.water_depth + drop <= shape.wall_height + 1e-9 < shape.water_depth + drop + 0.05 + 1e-8
        assert all(map(on_the_tape, (shape.diameter, shape.water_depth, shape.wall_height)))
        judged = judge(
            volume=holds(shape, column), water_depth=shape.water_depth, inside_radius=shape.diameter / 2,
            flat_span=shape.diameter if flat and not column else 0,
        )  # fmt: skip
        assert shape.band is judged.band < Band.NO_BUILD_SHEET


def every_pair(
    volume: float, column: float, drop: float, width: float | None, height: float | None
) -> set[tuple[int, int]]:
    """Independent: all pairs of diameter and depth in steps of 5 cm that hold the volume and fit, none beaten."""
    pairs = []
    for depth in range(8, 45):
        wall = ceil((depth * 0.05 + drop) / 0.05 - 1e-9)
        if wall > 48 or (height is not None and wall * 0.05 > height + 1e-9):
            continue
        for across in range(12, 161):
            if width is not None and across * 0.05 > width + 1e-9:
                break
            water = pi / 4 * ((across * 0.05) ** 2 - column**2) * depth * 0.05
            if water < volume * (1 - 1e-12):
                continue
            if water <= 50 + 1e-9 and depth * across * 0.05**2 / 2 <= 6.5 + 1e-9:
                pairs.append((across, depth))
            break  # a wider one of this depth is beaten
    return {pair for pair in pairs if not any(o != pair and o[0] <= pair[0] and o[1] <= pair[1] for o in pairs)}


@given(volume=volumes, column=columns, drop=drops, width=limits, height=limits)
def test_no_shape_is_missed_and_none_is_too_much(
    volume: float, column: float, drop: float, width: float | None, height: float | None
) -> None:
    wanted = every_pair(volume, column, drop, width, height)
    if not wanted:
        with pytest.raises(OutOfRangeError, match=r"height_limit.*width_limit.*licensed engineer"):
            shapes(volume, width, height, column, drop)
        return
    found = shapes(volume, width, height, column, drop)
    assert {(round(shape.diameter / 0.05), round(shape.water_depth / 0.05)) for shape in found} == wanted
    assert len(found) == len(wanted)


@given(volume=volumes, column=columns)
def test_the_lower_band_comes_first_and_then_the_smaller_surface(volume: float, column: float) -> None:
    found = shapes(volume, None, None, column)
    least = min(shape.surface for shape in found)
    for one, two in pairwise(found):
        assert one.band <= two.band
        if one.band is two.band:
            assert one.surface < two.surface + 0.05 * least + 1e-9
            if one.depth_times_radius > two.depth_times_radius:
                assert two.surface > one.surface
    assert found[0].surface < min(s.surface for s in found if s.band is found[0].band) + 0.05 * least + 1e-9


def test_the_surface_is_wall_floor_and_roof() -> None:
    """By hand: 2.85 m across, wall 1.35 m: girth 8.954 x 1.35 = 12.087, two discs of 6.379 = 12.759; 24.85 m2."""
    best = shapes(7.5, height_limit=1.6)[0]
    assert (best.diameter, best.wall_height) == (2.85, 1.35)
    assert best.surface == pytest.approx(24.85, abs=0.005)


def test_a_village_tank_is_chosen_where_the_cheapest_needs_an_engineer() -> None:
    """Derived: 11.5 m3 has its least surface at 2.2 m depth, which is over the village's 2.0 m."""
    found = shapes(11.5)
    assert min(found, key=lambda shape: shape.surface).band is Band.ENGINEER
    assert found[0].band is Band.VILLAGE


def test_a_volume_that_rounding_lifts_over_the_limit_is_the_engineers() -> None:
    assert all(shape.band is Band.ENGINEER for shape in shapes(12))
    assert [(way.count, way.each.band) for way in split(12)] == [(2, Band.VILLAGE), (3, Band.VILLAGE)]


def test_a_flat_roof_without_a_column_has_a_span() -> None:
    """Derived: over 2.5 m across, a flat roof alone is an engineer's; a column takes the span away."""
    wide = {shape.diameter for shape in shapes(9, flat_roof=True) if shape.band is Band.VILLAGE}
    assert 0 < max(wide) <= 2.5
    assert any(s.diameter > 2.5 for s in shapes(9, None, None, 0.2, flat_roof=True) if s.band is Band.VILLAGE)


def test_a_column_asks_for_a_wider_tank() -> None:
    plain = {shape.water_depth: shape for shape in shapes(1.5)}
    assert any(
        s.diameter > plain[s.water_depth].diameter for s in shapes(1.5, None, None, 0.4) if s.water_depth in plain
    )


def test_one_village_tank_is_not_split() -> None:
    assert split(9) == ()


def test_a_place_too_narrow_for_one_takes_two() -> None:
    with pytest.raises(OutOfRangeError, match="width_limit"):
        shapes(9, width_limit=2.2)
    assert [way.count for way in split(9, width_limit=2.2)] == [2, 3]


def test_more_than_three_tanks_can_hold_is_offered_nothing() -> None:
    assert split(151) == ()


def test_fifty_is_too_much_for_one_and_offers_two() -> None:
    with pytest.raises(
        OutOfRangeError, match=r"50 m3, rounded up to 5 cm.*two or three smaller tanks.*licensed engineer"
    ):
        shapes(50)
    assert {way.each.band for way in split(50)} == {Band.ENGINEER}


@given(volume=st.floats(0.5, 200), column=columns, width=limits)
def test_a_split_is_offered_only_where_each_falls_into_a_lower_band(
    volume: float, column: float, width: float | None
) -> None:
    try:
        alone = shapes(volume, width, None, column)[0].band
    except OutOfRangeError:
        alone = Band.NO_BUILD_SHEET
    ways = split(volume, width, None, column)
    assert all(way.each.band < alone and way.each.volume <= 50 + 1e-9 for way in ways)
    assert [(way.each.band, way.count) for way in ways] == sorted((way.each.band, way.count) for way in ways)
    for count in (2, 3):
        if any(way.count == count for way in ways):
            continue
        try:  # what is not offered would be no better, or can't be built
            assert shapes(volume / count, width, None, column)[0].band >= alone
        except OutOfRangeError:
            continue


@pytest.mark.parametrize(
    ("option", "value", "range_"),
    [
        ("volume", 0.4, "0.5 to 50 m3"),
        ("volume", 51, "0.5 to 50 m3"),
        ("volume", nan, "0.5 to 50 m3"),
        ("width_limit", 0.5, "0.6 to 8 m"),
        ("width_limit", 9, "0.6 to 8 m"),
        ("height_limit", 0.3, "0.4 to 2.4 m"),
        ("height_limit", nan, "0.4 to 2.4 m"),
        ("column_width", 0.5, "0 to 0.4 m"),
        ("column_width", -0.1, "0 to 0.4 m"),
        ("overflow_drop", 0, "0.05 to 0.5 m"),
    ],
)
def test_an_option_outside_its_range_is_named_with_who_to_ask(option: str, value: float, range_: str) -> None:
    options: dict[str, float] = {"volume": 5.0, option: value}
    message = rf"{option} = .*is outside {range_};.*licensed engineer"
    with pytest.raises(OutOfRangeError, match=message):
        shapes(**options)  # type: ignore[arg-type]
    if option != "volume" or value < 1 or isnan(value):
        with pytest.raises(OutOfRangeError, match=rf"{option} = .*licensed engineer"):
            split(**options)  # type: ignore[arg-type]


@given(volume=volumes, column=columns, drop=drops)
def test_the_book_works_out_every_shape_and_finds_the_same_diameter(volume: float, column: float, drop: float) -> None:
    """What is planned can be taught: each shape is within the ranges of the formulas, and they agree with it."""
    for shape in shapes(volume, None, None, column, drop):
        seeds = {"inside_diameter": shape.diameter, "wall_height": shape.wall_height, "overflow_drop": drop,
                 "water_depth": shape.water_depth, "column_width": column, "wanted_volume": volume}  # fmt: skip
        found = BOOK.evaluate(seeds, ["net_tank_volume", "diameter_for_volume"])
        assert found["net_tank_volume"] == pytest.approx(shape.volume)
        assert max(0.6, found["diameter_for_volume"]) == pytest.approx(shape.diameter)
