"""Hoops by zone: they bear what the water asks for, close evenly, and are never chosen where none is strong enough."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations.ring_levels import ring_tension
from generator.plans.hoops import CLOSEST, WIDEST, bears, hoops_for, uniform_hoops
from generator.plans.shape import Shape, shape_for
from generator.plans.shop import USUAL_SHOP, Bar

CHECKED = (  # common practice, no source: 6 mm plain hoops 150 mm apart, worked by hand
    (Shape(1.50, 1.15, 0.10), 30.0, 45),
    (Shape(2.90, 1.55, 0.15), 45.0, 117),
    (Shape(4.20, 1.82, 0.20), 55.0, 199),
    (Shape(5.70, 1.97, 0.20), 60.0, 292),
)


@pytest.mark.parametrize(("shape", "wall", "stress"), CHECKED)
def test_thin_hoops_far_apart_pass_in_a_small_tank_only(shape: Shape, wall: float, stress: float) -> None:
    hoops = uniform_hoops(shape, Bar(diameter=6), 0.15, wall)
    zone = hoops.zones[0]
    at_150 = zone.stress_free * 0.15 / zone.spacing  # the hand's sum leaves out that the last space closes evenly
    assert at_150 == pytest.approx(stress, abs=1)
    if stress > 150:
        assert not bears(hoops)
        better = hoops_for(shape, USUAL_SHOP.bars, lambda _: wall)[0]
        assert bears(better)
    elif stress < 100:
        assert bears(hoops)


@given(
    volume=st.integers(20, 500).map(lambda each: each / 10),
    wall=st.sampled_from([40.0, 50.0, 65.0]),
    bars=st.lists(st.tuples(st.sampled_from([4, 5, 6, 8, 10, 12]), st.booleans()), min_size=1, max_size=4),
)
def test_every_level_of_every_choice_bears_and_closes_evenly(
    volume: float, wall: float, bars: list[tuple[int, bool]]
) -> None:
    shape = shape_for(volume, 0.15)
    for hoops in hoops_for(shape, [Bar(diameter=size, ribbed=ribbed) for size, ribbed in bars], lambda _: wall):
        assert bears(hoops)
        assert hoops.zones[0].from_height == 0
        assert hoops.zones[-1].to_height == pytest.approx(shape.wall_height)
        for zone in hoops.zones:
            assert zone.gaps * zone.spacing == pytest.approx(zone.to_height - zone.from_height)
            assert zone.spacing <= zone.widest + 1e-9
            assert CLOSEST - 1e-9 <= zone.widest <= WIDEST + 1e-9
            heights = [zone.from_height + (zone.to_height - zone.from_height) * share / 20 for share in range(21)]
            levels = [height for height in heights if height <= shape.water_depth]
            if levels:
                pull = ring_tension(shape.water_depth, shape.inside_diameter, wall, levels)
                assert float(pull.demand.max()) * 1000 / zone.steel <= hoops.allowed + 1e-6
                assert float(pull.free.max()) * 1000 / zone.steel <= hoops.allowed + 1e-6


def test_where_no_bar_is_strong_enough_there_is_no_choice() -> None:
    assert hoops_for(shape_for(40, 0.15), [Bar(diameter=4)], lambda _: 55.0) == ()


def test_the_least_steel_comes_first_and_mortar_can_fill_between_its_hoops() -> None:
    found = hoops_for(shape_for(30, 0.15), USUAL_SHOP.bars, lambda _: 55.0)
    roomy = [hoops for hoops in found if min(zone.widest for zone in hoops.zones) >= 0.08]
    assert found[0] is roomy[0]
    assert [hoops.mass_of_a_metre for hoops in roomy] == sorted(hoops.mass_of_a_metre for hoops in roomy)


def test_ribbed_bar_may_be_stressed_more_than_plain() -> None:
    shape = shape_for(25, 0.15)
    plain, ribbed = (hoops_for(shape, [Bar(diameter=8, ribbed=kind)], lambda _: 55.0)[0] for kind in (False, True))
    assert ribbed.zones[0].widest >= plain.zones[0].widest
    assert (plain.allowed, ribbed.allowed) == (115, 130)
