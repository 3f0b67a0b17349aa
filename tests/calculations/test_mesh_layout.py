"""The layout covers the wall, laps enough, sets no lap over a lap where it says so, and buys enough rolls."""

from itertools import combinations, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.calculations import BOOK
from generator.calculations.mesh_layout import mesh_layout, netting_depth_times_radius, netting_pull
from generator.formula import OutOfRangeError

LAYOUTS = st.tuples(
    st.integers(190, 2550).map(lambda n: n / 100),  # round
    st.integers(8, 48).map(lambda n: n / 20),  # height
    st.integers(16, 50).map(lambda n: n / 20),  # roll width
    st.integers(10, 50).map(float),  # roll length
    st.integers(10, 39).map(lambda n: n / 100),  # lap
    st.integers(1, 8),  # layers
)
SETTINGS = settings(max_examples=80, deadline=None)


@SETTINGS
@given(LAYOUTS)
def test_every_layer_covers_the_wall_from_foot_to_top_and_laps_enough(
    sizes: tuple[float, float, float, float, float, int],
) -> None:
    around, height, width, length, lap, layers = sizes
    plan = mesh_layout(*sizes)
    for layer in range(layers):
        strips = [strip for strip in plan.strips if strip.layer == layer]
        assert strips[0].height == 0
        assert strips[-1].height + strips[-1].width == pytest.approx(height, abs=1e-6)
        for low, high in pairwise(strips):
            assert low.height + low.width - high.height == pytest.approx(lap, abs=1e-6)
    for strip in plan.strips:
        assert lap - 1e-6 < strip.width <= width + 1e-6
        assert strip.piece <= length + 1e-6
        assert strip.piece * len(strip.laps) == pytest.approx(around + len(strip.laps) * lap)


@SETTINGS
@given(LAYOUTS)
def test_staggered_means_that_no_neighbours_lap_in_one_place(
    sizes: tuple[float, float, float, float, float, int],
) -> None:
    """Independent: every pair of laps and of edges, looked at one by one."""
    around, lap = sizes[0], sizes[4]
    plan = mesh_layout(*sizes)
    clear = True
    for one, two in combinations(plan.strips, 2):
        if abs(one.row - two.row) <= 1:
            for a in one.laps:
                for b in two.laps:
                    clear &= min((a - b) % around, (b - a) % around) >= 1.3 * lap - 1e-6
        if abs(one.layer - two.layer) == 1 and one.row and two.row:
            clear &= abs(one.height - two.height) >= lap - 1e-6
    for strip in plan.strips:
        for a, b in combinations(strip.laps, 2):
            clear &= min((a - b) % around, (b - a) % around) >= 1.3 * lap - 1e-6
    assert plan.staggered is bool(clear)


@SETTINGS
@given(LAYOUTS)
def test_rolls_agree_with_the_learner_s_count(sizes: tuple[float, float, float, float, float, int]) -> None:
    around, height, width, length, lap, layers = sizes
    plan = mesh_layout(*sizes)
    values = {"ring_length": around, "wall_height": height, "mesh_roll_width": width, "mesh_roll_length": length,
              "mesh_lap": lap, "mesh_layers_inside": layers, "mesh_layers_outside": 0}  # fmt: skip
    by_hand = BOOK.work_out(values, ["mesh_rolls"], check=False)["mesh_rolls"]
    assert plan.rolls == by_hand
    assert 0 <= plan.waste < 1


def test_laps_of_a_common_tank_stand_apart() -> None:
    """By hand: 1.2 + 1.2 - 0.2 = 2.2 m for 1.75 m leave 0.45 m, shared out over 3 layers; laps every sixth of 9.3 m."""
    plan = mesh_layout(9.3, 1.75, 1.2, 30, 0.2, 3)
    assert plan.staggered
    assert plan.laps_apart == pytest.approx(9.3 / 6)
    assert plan.edges_apart == pytest.approx(0.025)
    assert [round(strip.height, 3) for strip in plan.strips if strip.row] == [1.0, 0.775, 0.55]
    assert plan.rolls == 2  # six strips of 9.5 m, three from each roll
    assert plan.waste == pytest.approx(1 - 9.5 * 3 * (1.75 + 0.2) / (2 * 30 * 1.2))


def test_strips_that_just_fill_the_wall_can_not_be_moved_apart() -> None:
    """Derived: 0.95 + 0.95 - 0.16 = 1.74 m leave nothing to move."""
    plan = mesh_layout(10.8, 1.74, 0.95, 30, 0.16, 2)
    assert plan.edges_apart == pytest.approx(-0.16)
    assert not plan.staggered


def test_many_layers_round_a_small_tank_can_not_be_staggered() -> None:
    assert not mesh_layout(2.0, 1.0, 1.2, 30, 0.3, 8).staggered


@pytest.mark.parametrize(
    "sizes",
    [
        (9.3, 1.7, 0.6, 30, 0.4, 2),
        (9.3, 1.7, 1.2, 30, 0.2, 0),
        (float("nan"), 1.7, 1.2, 30, 0.2, 2),
        (9.3, 0, 1.2, 30, 0.2, 2),
    ],
)
def test_sizes_that_lay_out_no_mesh_are_refused(sizes: tuple[float, float, float, float, float, int]) -> None:
    with pytest.raises(OutOfRangeError, match=r"measure again|ask the shop"):
        mesh_layout(*sizes)


def test_netting_hung_upright_bears_a_third_less() -> None:
    assert netting_pull(0.6, 2, wrapped=False) / netting_pull(0.6, 2) == pytest.approx(2 / 3)
    assert netting_depth_times_radius(0.6, 4) == pytest.approx(2 * netting_depth_times_radius(0.6, 2))
    with pytest.raises(OutOfRangeError, match="weigh"):
        netting_pull(float("nan"), 2)
