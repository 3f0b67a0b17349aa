"""Evaporation, curing, props and maturity, as print gives them or as they were worked out apart from the book."""

import pytest

from generator.calculations import BOOK
from generator.calculations.materials_limits import ACT_ON_WIND, STOP_ON_WIND, WindAdvice, drying_wind
from generator.calculations.maturity import Spell, equivalent_age, nurse_saul, rate_factor
from tests.calculations.test_curing import menzel, unrounded


def bare(name: str, *values: float) -> float:
    """A quantity's formula without this course's ranges."""
    return BOOK.quantities[name].function(*values)


EVAPORATION = [
    ((20, 20, 50, 10), 0.312, 0.324, 0.314),
    ((30, 35, 30, 20), 1.179, 1.230, 1.170),
    ((28, 22, 60, 8), 0.497, 0.520, 0.506),
    ((32, 27, 40, 12), 0.980, 1.024, 1.020),
    ((35, 38, 15, 30), 2.878, 3.006, 2.993),
    ((38, 40, 10, 15), 1.986, 2.077, 2.138),
]
"""Derived table: mortar and air in degrees Celsius, humidity in percent, wind in km/h; kg/m2/h by three formulas."""


@pytest.mark.parametrize(("day", "rate", "twin", "other"), EVAPORATION)
def test_evaporation_by_three_formulas(day: tuple[float, ...], rate: float, twin: float, other: float) -> None:
    """Uno, ACI Materials Journal 95-M34 (1998), second hand; an instrument maker's note; Menzel from memory."""
    found = bare("evaporation_rate", *day)
    assert found == pytest.approx(rate, abs=6e-4)
    assert unrounded(*day) == pytest.approx(twin, abs=6e-4)
    assert menzel(*day) == pytest.approx(other, abs=6e-4)
    assert found == pytest.approx(menzel(*day), rel=0.08)
    assert 1.03 < unrounded(*day) / found < 1.05


def test_a_hardened_wet_face_in_the_shade() -> None:
    """Derived: 25 degrees, air of 30, humidity 40 %, 10 km/h: 0.40 kg/m2/h, 9.6 L/m2 in a day; half if wrapped.

    The budget of 5 to 10 L for each square metre and day holds both.
    """
    rate = bare("evaporation_rate", 25, 30, 40, 10)
    assert rate == pytest.approx(0.40, abs=5e-3)
    budget = BOOK.givens["curing_litres_per_area"]
    assert budget.low == pytest.approx(24 * rate / 2, rel=0.05)
    assert 24 * rate == pytest.approx(9.6, abs=0.1)
    assert 24 * rate <= budget.high


def test_the_limit_of_ordinary_concrete_and_its_half() -> None:
    """Training sheet on ACI 305R and 308, and a US federal specification: 1.0 kg/m2/h, printed as 0.2 lb/ft2/h."""
    pounds_a_square_foot = 0.45359237 / 0.3048**2
    assert 0.2 * pounds_a_square_foot == pytest.approx(STOP_ON_WIND, rel=0.03)
    assert ACT_ON_WIND == STOP_ON_WIND / 2
    assert drying_wind(1.0) is WindAdvice.STOP
    assert drying_wind(0.15 * pounds_a_square_foot) is WindAdvice.SHADE_AND_SCREEN  # the stricter limit of some


@pytest.mark.parametrize(("blended", "hot", "days"), [(0, 0, 7), (1, 0, 10), (0, 1, 10), (1, 1, 14)])
def test_least_days_of_wet_curing_are_doubled_for_a_tank(blended: int, hot: int, days: int) -> None:
    """IS 456:2000 by an examination key: 7, 10, 10 and 14 days for ordinary concrete; the course takes twice that."""
    assert BOOK.misconceptions["house_curing_for_a_tank"].function(blended, hot) == days
    assert bare("curing_days", blended, hot) == 2 * days


def test_a_tank_is_wet_for_the_28_days_of_its_handbook() -> None:
    """Rainwater Reservoirs above Ground Structures, GTZ/GATE 1989: never dry for 28 days; the tank is filled before."""
    assert BOOK.quantities["curing_days"].high == 28


@pytest.mark.parametrize(("span", "air", "days"), [(4.5, 15, 7), (4.6, 15, 14), (4.5, 5, 14), (4.6, 5, 28)])
def test_days_until_props_come_out(span: float, air: float, days: int) -> None:
    """IS 456:2000, clause 11.3.1, second hand: 7 days to 4.5 m, 14 beyond, at 15 degrees; double at 5 degrees."""
    assert bare("prop_days", span, air) == days


def test_warmth_of_a_day_in_two_halves() -> None:
    """Worked page on ASTM C1074: 12 h at 20 and 12 h at 25 degrees, datum 0: 540 degree hours."""
    history = [Spell(12, 20), Spell(12, 25)]
    assert nurse_saul(history) == 540
    halves = [bare("maturity", spell.temperature, spell.hours / 24) for spell in history]
    assert sum(halves) == pytest.approx(540)


@pytest.mark.parametrize(("temperature", "factor"), [(5, 0.399), (15, 0.744), (25, 1.331), (35, 2.294), (40, 2.972)])
def test_how_fast_mortar_hardens(temperature: float, factor: float) -> None:
    """Derived: activation 5000 K (from memory), against 20 degrees."""
    assert rate_factor(temperature) == pytest.approx(factor, abs=6e-4)


def test_a_week_at_twenty_degrees_is_two_at_ten() -> None:
    """Derived: 12.8 days by the exponential, 14 by degree hours."""
    week = [Spell(7 * 24, 20)]
    assert equivalent_age([Spell(12.8 * 24, 10)]) / 24 == pytest.approx(7, abs=0.03)
    assert nurse_saul([Spell(14 * 24, 10)]) == nurse_saul(week)
