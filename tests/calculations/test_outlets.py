"""Water works. Held to the physics by integrating it, to a general fluids library, and to sums done by hand."""

from math import pi, sqrt

import pytest
from fluids.friction import friction_factor
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp

from generator.calculations import BOOK
from generator.calculations.outlets import SOLD_BORES, V_NOTCH, overflow_bore_for, overflow_capacity
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

BY_HAND: list[Example] = [
    # 3.1416/4 x 0.04^2 = 0.0012566 m2; sqrt(19.62 x 1.25) = 4.952 m/s; x 0.6 = 0.003734 m3/s
    ("orifice_flow", {"discharge_coefficient": 0.6, "drain_bore": 40, "water_depth": 1.25}, "3.73"),
    # 2 x 5.31 x sqrt(1.25) = 11.873; 0.6 x 0.0012566 x 4.4294 = 0.0033397; 3555 s
    (
        "drain_time",
        {"floor_area": 5.31, "water_depth": 1.25, "drain_end_depth": 0, "discharge_coefficient": 0.6, "drain_bore": 40},
        "59",
    ),
    ("vent_air_speed", {"orifice_flow": 3.73, "vent_bore": 50}, "1.9"),  # 0.00373 / 0.0019635
    # 0.0008 / (0.6 x 0.00049087) = 2.7162 m/s; squared 7.378 / 19.62
    ("steady_depth", {"inlet_flow": 0.8, "discharge_coefficient": 0.6, "outlet_bore": 25}, "0.38"),
    # lip: 1.7 x 3.1416 x 0.08 x 0.04^1.5 = 0.003418; pipe: 0.6 x 0.0050265 x sqrt(0.7848) = 0.002672
    ("overflow_capacity", {"overflow_bore": 80, "overflow_head": 0.04}, "2.67"),
    ("overflow_ratio", {"overflow_capacity": 2.7, "inlet_flow": 1.2}, "2.25"),
    ("v_notch_flow", {"notch_head": 0.16}, "14.13"),  # 0.16^2.5 = 0.01024; x 1380
    ("filling_time", {"tank_litres": 6640, "inlet_flow": 0.4}, "4.6"),  # 16600 s
    ("pipe_speed", {"tap_flow": 0.4, "pipe_bore": 32}, "0.50"),  # 0.0004 / 0.00080425
    # Q/C = 0.0004/150 = 2.6667e-6; ^1.852 = 4.760e-11; 0.032^4.87 = 5.249e-8; x 10.67 x 60
    (
        "pipe_friction_head",
        {"pipe_length": 60, "tap_flow": 0.4, "pipe_roughness_c": 150, "pipe_bore": 32},
        "0.58",
    ),
    ("tap_head", {"water_head": 4.5, "pipe_friction_head": 0.58}, "3.92"),
]  # fmt: skip

TANK_PART = {
    "drain_bore": 63.0, "outlet_bore": 37.0, "discharge_coefficient": 0.64, "drain_end_depth": 0.17, "vent_bore": 71.0,
    "inlet_flow": 0.43, "overflow_bore": 118.0, "overflow_head": 0.035, "notch_head": 0.115, "tap_flow": 0.23,
    "pipe_length": 137.0, "pipe_bore": 33.0, "pipe_roughness_c": 145.0, "water_head": 11.5,
}  # fmt: skip
AFTER_PART = {"orifice_flow", "drain_time", "vent_air_speed", "filling_time"}
WARN_ONLY = {"v_notch_flow"}
WARN_ONLY_VALUES = [V_NOTCH]


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


DRAIN = ("floor_area", "water_depth", "drain_end_depth", "discharge_coefficient", "drain_bore")


@pytest.mark.parametrize(
    ("area", "start", "end", "share", "bore"),
    [(4.9, 2.0, 0.0, 0.6, 50), (0.7, 0.9, 0.35, 0.52, 31), (38.5, 2.15, 0.08, 0.77, 140), (9.2, 1.3, 0.0, 0.8, 25)],
)
def test_drain_time_by_integrating_the_outflow(
    area: float, start: float, end: float, share: float, bore: float
) -> None:
    """Independent: dh/dt = -Cd a sqrt(2 g h) / A, stepped until the depth is reached (Torricelli)."""
    hole = pi * (bore / 2000) ** 2

    def sinking(_: float, depth: list[float]) -> list[float]:
        return [-share * hole * sqrt(2 * 9.81 * max(depth[0], 0)) / area]

    def reached(_: float, depth: list[float]) -> float:
        return depth[0] - max(end, 1e-7)

    reached.terminal = True  # type: ignore[attr-defined]
    run = solve_ivp(sinking, (0, 1e7), [start], events=reached, rtol=1e-8, atol=1e-11, max_step=500)
    values = dict(zip(DRAIN, (area, start, end, share, bore), strict=True))
    assert BOOK.evaluate(values, ["drain_time"])["drain_time"] == pytest.approx(run.t_events[0][0] / 60, rel=2e-3)


@given(values=givens("discharge_coefficient", "drain_bore", "inside_diameter"), depth=st.floats(0.1, 2.2))
def test_full_emptying_takes_twice_the_volume_over_the_first_flow(values: dict[str, float], depth: float) -> None:
    seeds = {**values, "water_depth": depth, "drain_end_depth": 0}
    found = BOOK.evaluate(seeds, ["drain_time", "orifice_flow"])
    litres = found["floor_area"] * depth * 1000
    assert found["drain_time"] * 60 == pytest.approx(2 * litres / found["orifice_flow"])
    wrong = read_wrong("emptied_at_the_first_flow", seeds, "drain_time")
    assert wrong == pytest.approx(found["drain_time"] / 2)


def test_draining_to_a_depth_above_the_water_takes_no_time() -> None:
    values = {"floor_area": 5.3, "water_depth": 0.8, "drain_end_depth": 1.1, "discharge_coefficient": 0.6,
              "drain_bore": 50}  # fmt: skip
    assert BOOK.evaluate(values, ["drain_time"])["drain_time"] == 0


@pytest.mark.parametrize("bore", [25, 33, 50, 75])
@pytest.mark.parametrize(("speed", "least"), [(0.6, 0.85), (1.0, 0.9), (1.6, 0.9), (2.5, 0.93)])
def test_friction_agrees_with_darcy_and_colebrook_in_smooth_pipe(bore: float, speed: float, least: float) -> None:
    """Independent: Darcy-Weisbach, Colebrook's factor from the `fluids` library, smooth pipe, water at 15 C.

    Hazen-Williams with C = 150 is an empirical twin, in print best near 1 to 3 m/s; it falls off below, as in print.
    """
    across = bore / 1000
    flow = speed * pi / 4 * across**2
    factor = friction_factor(Re=speed * across / 1.139e-6, eD=0.0015e-3 / across)
    darcy = factor * 100 / across * speed**2 / (2 * 9.81)
    found = BOOK.quantities["pipe_friction_head"].function(
        pipe_length=100, tap_flow=flow * 1000, pipe_roughness_c=150, pipe_bore=bore
    )
    assert least <= found / darcy <= 1.03


@pytest.mark.parametrize("head", [0.06, 0.13, 0.32])
def test_the_notch_agrees_with_water_summed_up_strip_by_strip(head: float) -> None:
    """Independent: strips as wide as the notch at their height, each at the speed of its depth, sharp edge 0.6."""
    strips, _ = quad(lambda depth: 0.6 * sqrt(2 * 9.81 * depth) * 2 * (head - depth), 0, head)
    found = BOOK.evaluate({"notch_head": head}, ["v_notch_flow"])["v_notch_flow"]
    assert found == pytest.approx(strips * 1000, rel=0.04)


@given(values=givens("inlet_flow", "discharge_coefficient", "outlet_bore"))
def test_at_the_steady_depth_as_much_runs_out_as_comes_in(values: dict[str, float]) -> None:
    depth = BOOK.evaluate(values, ["steady_depth"])["steady_depth"]
    out = BOOK.quantities["orifice_flow"].function(
        values["discharge_coefficient"], values["outlet_bore"], water_depth=depth
    )
    assert out == pytest.approx(values["inlet_flow"])


@given(flow=st.floats(0.05, 30), head=st.floats(0.01, 0.3), inlet=st.sampled_from([0, 20, 25, 32, 50, 100]))
def test_the_overflow_found_carries_the_inflow_and_the_size_below_does_not_serve(
    flow: float, head: float, inlet: float
) -> None:
    try:
        bore = overflow_bore_for(flow, head, inlet_bore=inlet)
    except OutOfRangeError:
        assert overflow_capacity(SOLD_BORES[-1], head) < flow
        return
    assert overflow_capacity(bore, head) >= flow
    assert bore > inlet
    smaller = [size for size in SOLD_BORES if size < bore]
    assert not smaller or overflow_capacity(smaller[-1], head) < flow or smaller[-1] <= inlet


def test_a_half_open_screen_asks_for_a_wider_overflow() -> None:
    """By hand: 0.6 x 0.0019635 m2 x sqrt(1.962) x half = 0.83 L/s through a 50 mm screen under 0.1 m."""
    assert overflow_bore_for(0.9, 0.1) == 40
    assert overflow_bore_for(0.9, 0.1, open_share=50) == 65
    assert overflow_bore_for(0.8, 0.1, open_share=50) == 50


@pytest.mark.parametrize(
    ("inflow", "head", "more"),
    [(0, 0.05, {}), (-1, 0.05, {}), (1, 0.4, {}), (1, 0.001, {}), (1, 0.05, {"inlet_bore": -5}),
     (1, 0.05, {"open_share": 0}), (1, 0.05, {"open_share": 120}), (float("nan"), 0.05, {})],
)  # fmt: skip
def test_an_overflow_for_nonsense_is_refused(inflow: float, head: float, more: dict[str, float]) -> None:
    with pytest.raises(OutOfRangeError, match="measure again"):
        overflow_bore_for(inflow, head, **more)


def test_an_inflow_that_no_pipe_carries_is_refused_with_the_way_out() -> None:
    with pytest.raises(OutOfRangeError, match="two overflows"):
        overflow_bore_for(9.5, 0.01)


def test_an_overflow_of_the_inlets_bore_fails_under_a_pressurised_inlet() -> None:
    """By hand: 1.9 L/s comes through 40 mm at 1.5 m/s; the same bore lets 0.64 L/s over its lip at 20 to 40 mm."""
    values = {"overflow_bore": 40, "overflow_head": 0.035, "inlet_flow": 1.9}
    assert BOOK.evaluate(values, ["overflow_ratio"])["overflow_ratio"] < 0.4
    assert read_wrong("same_bore_thought_enough", values, "overflow_ratio") == 1


def test_how_many_times_is_not_how_much_more() -> None:
    values = {"overflow_capacity": 3.0, "inlet_flow": 1.2}
    assert shown("overflow_ratio", values) == "2.50"
    assert read_wrong("overflow_surplus_for_ratio", values, "overflow_ratio") == pytest.approx(1.8)


def test_inches_taken_as_centimetres_lose_a_hundred_times_the_height() -> None:
    """By hand: 2.54^4.87 = 93.6."""
    values = {"pipe_length": 60, "tap_flow": 0.2, "pipe_roughness_c": 150, "pipe_bore": 50}
    right = BOOK.evaluate(values, ["pipe_friction_head"])["pipe_friction_head"]
    wrong = read_wrong("inches_of_pipe_taken_as_centimetres", values, "pipe_friction_head")
    assert wrong / right == pytest.approx(93.6, rel=0.001)


def test_head_is_measured_from_the_water() -> None:
    values = {"water_head": 7.5, "water_depth": 1.4, "pipe_friction_head": 0.6}
    assert shown("tap_head", {name: values[name] for name in ("water_head", "pipe_friction_head")}) == "6.90"
    assert read_wrong("head_from_the_floor", values, "tap_head") == pytest.approx(5.5)
    assert read_wrong("friction_forgotten", values, "tap_head") == 7.5


def test_a_long_thin_pipe_leaves_nothing_at_the_tap() -> None:
    values = {"pipe_length": 900, "tap_flow": 0.6, "pipe_roughness_c": 100, "pipe_bore": 25, "water_head": 12}
    assert BOOK.evaluate(values, ["tap_head"])["tap_head"] == 0
