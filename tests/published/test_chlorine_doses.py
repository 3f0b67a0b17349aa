"""Doses of chlorine as printed by health bodies, each with its document; tolerance: the print's own rounding."""

import pytest

from generator.calculations import BOOK
from generator.calculations.disinfection import FRESH_POWDER, MILLIGRAMS_IN_GRAM


def powder(litres: float, dose: float, percent: float) -> float:
    seeds = {"tank_litres": litres, "chlorine_dose": dose, "available_chlorine": percent}
    return BOOK.work_out(seeds, ["chlorine_product_mass"], check=False)["chlorine_product_mass"]


def liquid(litres: float, dose: float, percent: float) -> float:
    seeds = {"tank_litres": litres, "chlorine_dose": dose, "liquid_chlorine": percent}
    return BOOK.evaluate(seeds, ["chlorine_liquid_volume"])["chlorine_liquid_volume"]


@pytest.mark.parametrize(
    ("litres", "dose", "millilitres"),
    [(1000, 5, 40), (1000, 1, 8), (1000, 2, 16), (10_000, 5, 400)],
)
def test_d1_d2_liquid_of_12_5_percent(litres: float, dose: float, millilitres: float) -> None:
    """NSW Private Water Supply Guidelines, pp. 26-27."""
    assert liquid(litres, dose, 12.5) == pytest.approx(millilitres, abs=0.5)


@pytest.mark.parametrize(("litres", "grams"), [(1000, 8), (10_000, 77), (5000, 38)])
def test_d3_calcium_hypochlorite_of_65_percent(litres: float, grams: float) -> None:
    """NSW Private Water Supply Guidelines, pp. 26-27: 5 mg/L, whole grams."""
    assert powder(litres, 5, 65) == pytest.approx(grams, abs=0.5)


def test_d4_powder_of_75_percent() -> None:
    """Tasmanian health page on tanks: 1000 L at 5 mg/L: 7 g, or 40 mL of 12.5 %."""
    assert powder(1000, 5, 75) == pytest.approx(7, abs=0.5)
    assert liquid(1000, 5, 12.5) == pytest.approx(40, abs=0.5)


def test_d5_a_waterworks_day() -> None:
    """15 000 m3 a day at 0.5 mg/L with powder of 25 %: 30 kg a day (read at second hand)."""
    assert powder(15_000_000, 0.5, 25) == pytest.approx(30_000, rel=0.01)


def test_d6_five_grams_for_a_thousand_litres() -> None:
    """Indian public-health page: tank of 4 x 4 x 2.5 m, 5 g of 30 % powder to 1000 L: 200 g, which is 1.5 mg/L."""
    litres = 4 * 4 * 2.5 * 1000
    assert litres / 1000 * 5 == 200
    seeds = {"tank_litres": litres, "service_dose": 1.5, "available_chlorine": 30}
    assert BOOK.evaluate(seeds, ["service_dose_mass"])["service_dose_mass"] == pytest.approx(200, abs=0.5)


def test_d7_stock_of_half_a_percent() -> None:
    """IARC solution page and one-page chlorine formulas: 0.5 % from 35 % powder: 14.2 to 14.3 g in a litre."""
    found = BOOK.evaluate({"stock_strength": 0.5, "available_chlorine": 35}, ["stock_powder"])["stock_powder"]
    assert 14.2 <= found <= 14.3


def test_d8_five_percent_thinned_to_a_tenth_of_a_percent() -> None:
    """One-page chlorine formulas: 1 part and 49 parts of water."""
    found = BOOK.evaluate({"liquid_chlorine": 5, "wash_strength": 0.1}, ["dilution_parts"])["dilution_parts"]
    assert found == pytest.approx(49)


@pytest.mark.parametrize(("percent", "grams"), [(30, 1667), (25, 2000), (65, 769)])
def test_d9_ten_cubic_metres_at_fifty(percent: float, grams: float) -> None:
    """Derived."""
    assert powder(10_000, 50, percent) == pytest.approx(grams, abs=0.5)


def test_taking_the_chlorine_out() -> None:
    """Disinfection of Pipelines and Storage Facilities Field Guide, table 7-2: 1.9 mg; 10 m3 at 50 mg/L: 950 g."""
    seeds = {"tank_litres": 10_000, "chlorine_dose": 50}
    found = BOOK.evaluate(seeds, ["thiosulfate_mass"])
    assert found["tank_chlorine"] == 500
    assert found["thiosulfate_mass"] == pytest.approx(950)


def test_the_printed_dose_for_every_1000_ml_is_refused() -> None:
    """Must be rejected: a local-authority page prints a dose "per 1000 mL"; the same numbers elsewhere are per 1000 L.

    Obeyed with the 40 mL of the first example, it is 5000 mg/L: a thousand times the dose, far over what
    the book takes.
    """
    as_printed = 40 / 100 * 12.5 * MILLIGRAMS_IN_GRAM / 1.0
    assert as_printed == pytest.approx(5000)
    assert as_printed > 20 * BOOK.givens["chlorine_dose"].high
    seeds = {"tank_litres": 1000, "chlorine_dose": 5, "available_chlorine": 65}
    right = BOOK.evaluate(seeds, ["chlorine_product_mass"])["chlorine_product_mass"]
    wrong = BOOK.evaluate(seeds, ["chlorine_product_mass"], wrong=["dose_of_a_millilitre"])["chlorine_product_mass"]
    assert wrong == pytest.approx(1000 * right)
    assert wrong > 1000 * 5  # more powder than a twentieth of the water's own weight in the tank


def test_powder_that_has_lain_is_not_taken_as_fresh() -> None:
    """Indian public-health page: fresh powder has at least 33 % and loses it. Taken as fresh, 25 % is 24 % short."""
    assert 1 - powder(5000, 10, FRESH_POWDER) / powder(5000, 10, 25) == pytest.approx(0.24, abs=0.005)
