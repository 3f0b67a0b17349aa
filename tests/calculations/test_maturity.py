"""Maturity. It may lengthen wet curing, never shorten it; printed values stand in `tests/published`."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations import BOOK
from generator.calculations.maturity import Spell, equivalent_age, nurse_saul, rate_factor, wet_days_left
from generator.formula import OutOfRangeError

SPELLS = st.lists(st.builds(Spell, st.floats(0.5, 200), st.floats(-20, 60)), max_size=8)


def test_a_spell_below_the_datum_gives_and_takes_nothing() -> None:
    assert nurse_saul([Spell(10, -5)]) == 0
    assert nurse_saul([Spell(10, 12), Spell(100, -5)]) == 120
    assert nurse_saul([Spell(10, -5)], datum=-10) == 50
    assert equivalent_age([Spell(10, 0)]) == 0


@given(temperature=st.integers(5, 40), days=st.integers(1, 28))
def test_steady_warmth_is_what_the_book_says(temperature: int, days: int) -> None:
    seeds = {"concrete_temperature": temperature, "mortar_age": days}
    found = BOOK.evaluate(seeds, ["maturity"])["maturity"]
    assert found == pytest.approx(nurse_saul([Spell(24 * days, temperature)]))


@given(first=SPELLS, second=SPELLS)
def test_the_order_and_the_cuts_of_a_history_do_not_matter(first: list[Spell], second: list[Spell]) -> None:
    for measure in (nurse_saul, equivalent_age):
        assert measure([*first, *second]) == pytest.approx(measure([*second, *first]))
        assert measure([*first, *second]) == pytest.approx(measure(first) + measure(second))


@given(temperature=st.floats(-20, 59))
def test_warmer_is_faster(temperature: float) -> None:
    assert rate_factor(temperature) < rate_factor(temperature + 1)
    assert rate_factor(20) == 1


@given(planned=st.integers(14, 28), history=SPELLS)
def test_no_history_shortens_wet_curing(planned: int, history: list[Spell]) -> None:
    done = sum(spell.hours for spell in history) / 24
    left = wet_days_left(planned, history)
    assert left >= planned - done - 1e-6
    assert left <= planned


def test_a_hot_day_does_not_pay_for_a_cold_one() -> None:
    """Derived: 5 days at 40 and 5 at 8 degrees; by adding up they would be 16 days old."""
    history = [Spell(120, 40), Spell(120, 8)]
    assert equivalent_age(history) / 24 > 15
    assert wet_days_left(14, history) == 7  # 5 days, and 5 x 0.48 = 2.4


def test_mortar_that_was_wet_long_enough_needs_no_more() -> None:
    assert wet_days_left(14, [Spell(24 * 14, 22)]) == 0
    assert wet_days_left(14, [Spell(24 * 30, 22)]) == 0
    assert wet_days_left(14, []) == 14


@pytest.mark.parametrize("planned", [7, 13.9, 29, float("nan")])
def test_a_week_of_wetting_is_refused(planned: float) -> None:
    with pytest.raises(OutOfRangeError, match="14 to 28 days"):
        wet_days_left(planned, [])


@pytest.mark.parametrize("spell", [(0, 20), (-3, 20), (float("nan"), 20), (5, 95), (5, float("nan"))])
def test_what_no_clock_and_no_thermometer_shows_is_refused(spell: tuple[float, float]) -> None:
    with pytest.raises(OutOfRangeError):
        Spell(*spell)


def test_a_datum_or_a_reference_out_of_print_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="datum"):
        nurse_saul([], datum=15)
    with pytest.raises(OutOfRangeError, match="against 40"):
        rate_factor(20, reference=40)
