"""Flow out of tanks and through pipes as printed: an examination problem, formula pages, and tables worked from them.

Tolerances are no tighter than the print. Values marked as derived were worked from the printed formulas by hand.
"""

from collections.abc import Callable
from math import pi

import pytest

from generator.calculations import BOOK

INCH = 25.4
FOOT = 0.3048


def plain(name: str) -> Callable[..., float]:
    """A quantity without its ranges: printed examples lie outside what a village builds."""
    return BOOK.quantities[name].function


def drained(across: float, start: float, end: float, share: float, bore: float) -> float:
    """Seconds."""
    return 60 * plain("drain_time")(pi / 4 * across**2, start, end, discharge_coefficient=share, drain_bore=bore)


def test_h1_tank_of_the_examination_problem() -> None:
    """Engineering examination problem: 4 ft across, outlet of 5 square inches, 6 ft down to 2 ft, no loss: 94 s."""
    bore = (5 * 4 / pi) ** 0.5 * INCH
    assert drained(4 * FOOT, 6 * FOOT, 2 * FOOT, 1.0, bore) == pytest.approx(94, rel=0.01)


def test_h2_depth_at_which_the_outlet_keeps_pace() -> None:
    """Same collection: 9 L/s into a tank with a 5 cm opening, 0.6: 2.95 to 2.96 m in print; 2.975 exact."""
    depth = plain("steady_depth")(9, discharge_coefficient=0.6, outlet_bore=50)
    assert depth == pytest.approx(2.955, rel=0.01)
    assert depth == pytest.approx(2.975, abs=0.005)


@pytest.mark.parametrize(("across", "depth", "bore", "seconds"), [(2.5, 2.0, 50, 0.739 * 3600), (3.0, 1.8, 50, 3635)])
def test_h3_two_tanks_emptied(across: float, depth: float, bore: float, seconds: float) -> None:
    """Derived from the printed formula, 0.6."""
    assert drained(across, depth, 0, 0.6, bore) == pytest.approx(seconds, rel=0.001)


def test_h3_emptying_at_the_first_flow_is_half_the_truth() -> None:
    """Must not be taught: time = volume / first flow."""
    first = plain("orifice_flow")(0.6, drain_bore=50, water_depth=2.0)
    assert pi / 4 * 2.5**2 * 2.0 * 1000 / first == pytest.approx(0.739 * 3600 / 2, rel=0.001)


def test_h4_pipe_of_the_engineering_page() -> None:
    """Formula page: 200 US gallons a minute, 3.048 inch bore, C 140: 9 ft in 100 ft, 2.7 ft in 30 ft; SI gives 8.88."""
    gallons = 200 * 3.785411784 / 60
    lost = plain("pipe_friction_head")(100 * FOOT, tap_flow=gallons, pipe_roughness_c=140, pipe_bore=3.048 * INCH)
    assert lost / FOOT == pytest.approx(9, rel=0.02)
    assert 0.3 * lost / FOOT == pytest.approx(2.7, rel=0.02)


def test_h5_village_pipe() -> None:
    """Derived: 0.5 L/s through 100 m of 32 mm, C 150: 1.46 m; Darcy in a smooth pipe about 1.60 m, so 10 % low."""
    lost = plain("pipe_friction_head")(100, tap_flow=0.5, pipe_roughness_c=150, pipe_bore=32)
    assert lost == pytest.approx(1.46, abs=0.005)
    assert lost / 1.60 == pytest.approx(0.9, abs=0.02)


def test_the_handy_form_of_the_second_page_is_the_same_formula() -> None:
    """Formula page: h = L (279000 Q / (C D^2.63))^1.852, litres a second and millimetres; within 1 %."""
    for flow, bore, smooth in ((0.2, 25, 150), (0.5, 32, 145), (0.75, 50, 100)):
        handy = 80 * (279_000 * flow / (smooth * bore**2.63)) ** 1.852
        assert plain("pipe_friction_head")(
            80, tap_flow=flow, pipe_roughness_c=smooth, pipe_bore=bore
        ) == pytest.approx(handy, rel=0.01)  # fmt: skip


@pytest.mark.parametrize(
    ("bore", "flows"),
    [
        (32, (0.30, 0.48, 0.68)),
        (40, (0.47, 0.75, 1.06)),
        (50, (0.74, 1.17, 1.65)),
        (100, (1.51, 4.67, 6.60)),
        (150, (2.27, 8.96, 14.9)),
    ],
)
def test_overflow_table(bore: float, flows: tuple[float, ...]) -> None:
    """Derived from 1.7 pi D h^1.5 and 0.6 pi D^2/4 sqrt(2 g h): L/s at 20, 50 and 100 mm over the lip."""
    for head, flow in zip((0.02, 0.05, 0.1), flows, strict=True):
        places = 1 if flow > 10 else 2
        found = plain("overflow_capacity")(overflow_bore=bore, overflow_head=head)
        assert found == pytest.approx(flow, abs=0.6 * 10**-places)


@pytest.mark.parametrize(("head", "flow"), [(0.05, 0.77), (0.1, 4.36), (0.15, 12.0), (0.2, 24.7)])
def test_notch_table(head: float, flow: float) -> None:
    """Derived from the recalled 1.38 H^2.5, L/s."""
    assert plain("v_notch_flow")(head) == pytest.approx(flow, rel=0.005)


@pytest.mark.parametrize(("coefficient", "rel"), [(1.6, 0.07), (1.8, 0.07)])
def test_the_weir_stands_within_the_printed_range(coefficient: float, rel: float) -> None:
    """Plant engineering note: C from 1.6 to 1.8; a thin film over a wide lip is weir flow."""
    printed = coefficient * pi * 0.2 * 0.015**1.5 * 1000
    assert plain("overflow_capacity")(overflow_bore=200, overflow_head=0.015) == pytest.approx(printed, rel=rel)
