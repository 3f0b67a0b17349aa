"""Ring tension from the shell itself by zones, and hoops of equal strength: edges and what must always hold."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations import BOOK
from generator.calculations.ring_levels import allowed_steel_stress, equal_steel, ring_tension, zone_tension
from generator.formula import OutOfRangeError

WALLS = {
    "water_depth": st.floats(0.6, 2.2), "inside_diameter": st.floats(0.8, 8.0), "wall_thickness": st.floats(30, 75),
}  # fmt: skip


def free_foot(wall: dict[str, float]) -> float:
    return 9.81 * wall["water_depth"] * wall["inside_diameter"] / 2


@given(wall=st.fixed_dictionaries(WALLS), low=st.floats(0, 1.8), high=st.floats(0.05, 0.6), at=st.floats(0, 1))
def test_a_zone_bears_at_least_what_each_of_its_levels_asks(
    wall: dict[str, float], low: float, high: float, at: float
) -> None:
    level = min(low + at * high, wall["water_depth"])
    found = ring_tension(**wall, heights=[level])
    zone = zone_tension(**wall, from_height=low, to_height=low + high)
    if level >= low:
        assert zone >= found.demand[0] - 0.002 * free_foot(wall)
    assert 0 <= zone <= free_foot(wall) * (1 + 1e-9)
    assert found.demand[0] >= max(found.hinged[0], found.fixed[0], 0) - 1e-9


@given(wall=st.fixed_dictionaries(WALLS), low=st.floats(0, 1.8), high=st.floats(0.05, 0.6), more=st.floats(0, 0.4))
def test_a_taller_zone_never_bears_less(wall: dict[str, float], low: float, high: float, more: float) -> None:
    zone = zone_tension(**wall, from_height=low, to_height=low + high)
    assert zone_tension(**wall, from_height=low, to_height=low + high + more) >= zone - 1e-9
    assert zone_tension(**wall, from_height=max(0, low - more), to_height=low + high) >= zone - 0.002 * free_foot(wall)


@given(wall=st.fixed_dictionaries(WALLS), to=st.floats(0.05, 2.2))
def test_every_zone_at_the_foot_bears_the_most_of_the_wall(wall: dict[str, float], to: float) -> None:
    whole = ring_tension(**wall, heights=np.linspace(0, wall["water_depth"], 401).tolist()).demand.max()
    if whole > ring_tension(**wall, heights=[0.0]).demand[0]:
        assert zone_tension(**wall, from_height=0.0, to_height=to) == pytest.approx(whole)


@given(wall=st.fixed_dictionaries(WALLS))
def test_wider_and_fuller_tanks_ask_more_of_the_hoops_at_the_foot(wall: dict[str, float]) -> None:
    def asked(changed: dict[str, float]) -> float:
        return zone_tension(**changed, from_height=0.0, to_height=0.3)

    assert asked({**wall, "inside_diameter": wall["inside_diameter"] * 1.1}) > asked(wall)
    assert asked({**wall, "water_depth": wall["water_depth"] * 1.05}) > asked(wall)


@given(wall=st.fixed_dictionaries(WALLS), share=st.floats(0.02, 1))
def test_the_free_foot_is_water_weight_times_depth_times_radius(wall: dict[str, float], share: float) -> None:
    height = (1 - share) * wall["water_depth"]
    found = ring_tension(**wall, heights=[height])
    depth = wall["water_depth"] - height
    assert found.free[0] == pytest.approx(9.81 * depth * wall["inside_diameter"] / 2)
    assert found.free[0] == pytest.approx(
        BOOK.quantities["ring_tension_free"].function(depth, wall["inside_diameter"] / 2)
    )


@given(wall=st.fixed_dictionaries(WALLS), share=st.floats(0, 1))
def test_the_page_s_table_and_the_shell_agree(wall: dict[str, float], share: float) -> None:
    """Within 0.011 of the free foot, as the table states."""
    depth = share * wall["water_depth"]
    shape = BOOK.quantities["shape_number"].function(**wall)
    table = BOOK.quantities["ring_share"].function(min(shape, 270), wall["water_depth"], depth)
    if shape <= 270:
        demand = ring_tension(**wall, heights=[wall["water_depth"] - depth]).demand[0]
        assert table * free_foot(wall) == pytest.approx(demand, abs=0.011 * free_foot(wall))


def test_above_the_water_the_surface_s_value_stands() -> None:
    found = ring_tension(1.4, 3.0, 45, [1.4, 1.6, 2.0])
    assert found.demand == pytest.approx([found.demand[0]] * 3)
    assert found.free == pytest.approx([0, 0, 0])
    assert zone_tension(1.4, 3.0, 45, 1.5, 1.8) == pytest.approx(found.demand[0])


@pytest.mark.parametrize("zone", [(0.4, 0.4), (0.5, 0.3), (-0.1, 0.3)])
def test_an_empty_zone_is_refused(zone: tuple[float, float]) -> None:
    with pytest.raises(OutOfRangeError, match="is empty; ask a licensed engineer"):
        zone_tension(1.4, 3.0, 45, *zone)


@pytest.mark.parametrize("wall", [(0, 3, 45), (1.4, 0, 45), (1.4, 3, 0), (0.15, 8, 75), (2.2, 0.3, 20)])
def test_a_wall_without_a_size_or_of_a_shape_that_is_not_solved_is_refused(wall: tuple[float, float, float]) -> None:
    with pytest.raises(OutOfRangeError, match="licensed engineer"):
        ring_tension(*wall, heights=[0.1])


# --------------------------------------------------------------------------------- hoops of equal strength

SOLD = st.lists(st.tuples(st.sampled_from([3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 16.0]), st.booleans()), max_size=6)
PLANNED = {"hoop_diameter": st.sampled_from([6.0, 8.0, 10.0, 12.0]), "spacing": st.floats(0.05, 0.2)}


@given(planned=st.fixed_dictionaries(PLANNED), sold=SOLD, ribbed=st.booleans())
def test_what_is_proposed_is_as_strong_comes_from_the_shop_and_is_no_wider_than_it_may(
    planned: dict[str, float], sold: list[tuple[float, bool]], ribbed: bool
) -> None:
    def strength(diameter: float, kind: bool, spacing: float) -> float:
        return diameter**2 * (130 if kind else 115) / spacing

    wanted = strength(planned["hoop_diameter"], ribbed, planned["spacing"])
    found = equal_steel(**planned, sold=sold, ribbed=ribbed)
    for diameter, kind, spacing in found:
        assert (diameter, kind) in sold
        assert 0.05 <= spacing <= 0.2
        assert strength(diameter, kind, spacing) >= wanted * (1 - 1e-6)
        assert spacing == 0.2 or strength(diameter, kind, spacing + 0.005) < wanted
    for diameter, kind in sold:
        proposed = any((d, k) == (diameter, kind) for d, k, _ in found)
        assert proposed or strength(diameter, kind, 0.05 + 1e-6) < wanted * (1 + 1e-3)
    steel = [diameter**2 / spacing for diameter, _, spacing in found]
    assert steel == sorted(steel)


def test_the_planned_bar_at_a_step_of_the_tape_is_proposed_as_it_stands() -> None:
    assert equal_steel(8, 0.12, [(8, False)], ribbed=False) == ((8, False, 0.12),)


def test_a_plain_bar_for_a_ribbed_one_stands_closer_by_the_stresses() -> None:
    """Derived: 0.12 x 115 / 130 = 0.106, down to 0.105; the other way 0.12 x 130 / 115 = 0.1357, down to 0.135."""
    assert equal_steel(8, 0.12, [(8, False)], ribbed=True) == ((8, False, 0.105),)
    assert equal_steel(8, 0.12, [(8, True)], ribbed=False) == ((8, True, 0.135),)
    assert (allowed_steel_stress(ribbed=False), allowed_steel_stress(ribbed=True)) == (115, 130)


def test_an_empty_shop_or_wire_alone_gets_an_honest_no() -> None:
    assert equal_steel(10, 0.1, [], ribbed=False) == ()
    assert equal_steel(10, 0.1, [(4, False), (5, False)], ribbed=False) == ()
