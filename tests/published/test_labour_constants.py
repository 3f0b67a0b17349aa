"""Indian labour-output constants in days of 8 hours, as tabulated; the standard behind them was not opened.

Rows: digging over an area up to 1.5 m deep (labourer 0.62, foreman 0.06 per m3); mortar mixed by hand, any ratio
(labourer 0.75, water-carrier 0.07); reinforced footing concrete (mason 0.17, labourer 2.00, water-carrier 0.90);
plaster of 12 mm, 100 m2 (masons 10, labourers 14, water-carrier 1, beside a head mason); bars, 100 kg (fitter 1,
labourer 1). Two figures are printed, so two are compared.
"""

import pytest

from generator.calculations import BOOK
from generator.calculations.labour import DIGGING_FOREMAN, PRINTED_HOURS


def per_unit(name: str, given: str, amount: float) -> float:
    """What the book makes of an amount, for one unit of it."""
    return BOOK.evaluate({given: amount}, [name])[name] / amount


@pytest.mark.parametrize(
    ("name", "given", "amount", "printed"),
    [
        ("digging_days", "excavation_volume", 10, 0.62),
        ("mixing_days", "mortar_to_mix", 2, 0.75 + 0.07),
        ("base_labour_days", "base_concrete_volume", 4, 2.00 + 0.90),
        ("base_mason_days", "base_concrete_volume", 4, 0.17),
        ("steel_fitter_days", "cage_steel_mass", 100, 1 / 100),
        ("steel_fixing_days", "cage_steel_mass", 100, (1 + 1) / 100),
        ("plaster_labour_days", "plaster_mason_days", 10, (14 + 1) / 10),
    ],
)
def test_output_constants(name: str, given: str, amount: float, printed: float) -> None:
    assert per_unit(name, given, amount) == pytest.approx(printed, abs=0.005 * min(1, printed))


def test_the_foreman_stands_by_for_a_tenth_of_the_digging() -> None:
    assert pytest.approx(0.06, abs=0.005) == DIGGING_FOREMAN


def test_the_printed_day_has_eight_hours() -> None:
    assert PRINTED_HOURS == 8


def test_ferrocement_is_planned_slower_than_printed_house_plaster() -> None:
    """House plaster is printed at 10 m2 a mason-day (another table: 8). A mesh wall must never be planned as fast."""
    assert BOOK.givens["mason_day_area"].high < 8
