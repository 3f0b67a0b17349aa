"""Money. Examples are small sums worked by hand, in coins; the book agrees with the exact bill."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations import BOOK
from generator.calculations.bill import Item, Tank, bill, compare
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, on_the_tape, read_wrong, shown

BY_HAND: list[Example] = [
    ("cost_of_cement", {"cement_bags": 13, "bag_price": 8.5}, "110.5"),  # 13 x 8.5
    (
        "cost_of_wages",
        {"mason_days": 7.6, "labourer_days": 18.7, "short_day_factor": 1.25, "mason_wage": 11.5,
         "labourer_wage": 6.5}, "261.2",
    ),  # 87.4 + 121.55 = 208.95, and a quarter more: 261.19
    ("cost_of_carrying", {"load_count": 191, "load_price": 0.3}, "57.3"),
    (
        "cost_of_tank",
        {"cost_of_cement": 110.5, "cost_of_wages": 261.2, "cost_of_carrying": 57.3, "other_cost": 388}, "817.0",
    ),  # 110.5 + 261.2 + 57.3 + 388
    ("cost_per_cubic_metre", {"cost_of_tank": 817, "tank_volume": 7.6}, "107.5"),
    ("cost_per_litre", {"cost_per_cubic_metre": 107.5}, "0.108"),  # 0.1075
    ("cost_per_year", {"cost_of_tank": 817, "tank_life": 19, "yearly_upkeep": 5.5}, "48.5"),  # 43 + 5.5
    ("cost_per_cubic_metre_year", {"cost_per_year": 48.5, "tank_volume": 7.6}, "6.38"),  # 6.3816
]  # fmt: skip

TANK_PART = {
    "bag_price": 8.5, "mason_wage": 11.5, "labourer_wage": 6.5, "load_price": 0.3, "other_cost": 388.0,
    "tank_life": 19.0, "yearly_upkeep": 5.5,
}  # fmt: skip
AFTER_PART = {
    "cost_of_cement", "cost_of_wages", "cost_of_carrying", "cost_of_tank", "cost_per_cubic_metre", "cost_per_litre",
    "cost_per_year", "cost_per_cubic_metre_year",
}  # fmt: skip


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


@given(bags=st.integers(1, 100), price=on_the_tape("bag_price"))
def test_the_book_and_the_exact_bill_agree(bags: int, price: float) -> None:
    found = BOOK.evaluate({"cement_bags": float(bags), "bag_price": price}, ["cost_of_cement"])["cost_of_cement"]
    exact = bill([Item("cement", bags, "bag", str(price))], {}, "coins").total
    assert exact is not None
    assert found == pytest.approx(float(exact), rel=1e-12)


def test_the_book_and_the_comparison_agree() -> None:
    values = {"cost_of_tank": 817.0, "tank_life": 19.0, "yearly_upkeep": 5.5, "tank_volume": 7.6}
    found = BOOK.evaluate(values, ["cost_per_cubic_metre_year"])["cost_per_cubic_metre_year"]
    row = compare([Tank("ferrocement", 7.6, 817, 19, "5.5")])[0]
    assert row.per_year == Decimal("48.5")
    assert float(row.per_cubic_metre_year or 0) == pytest.approx(found, rel=1e-12)


def test_a_bag_is_fifty_kilograms_and_has_one_price() -> None:
    values = {"cement_bags": 13.0, "bag_price": 8.5}
    assert read_wrong("bag_price_as_kilogram_price", values, "cost_of_cement") == pytest.approx(50 * 110.5)


def test_short_days_are_paid_as_days() -> None:
    values = {"mason_days": 8, "labourer_days": 20, "short_day_factor": 1.5, "mason_wage": 12, "labourer_wage": 6}
    assert shown("cost_of_wages", values) == "324.0"
    assert read_wrong("short_days_not_paid", values, "cost_of_wages") == 216


def test_the_upkeep_of_all_years_does_not_fall_on_one() -> None:
    """By hand: 817 / 19 is 43, and 19 years of 5.5 are 104.5."""
    values = {"cost_of_tank": 817.0, "tank_life": 19.0, "yearly_upkeep": 5.5}
    assert read_wrong("upkeep_of_all_years_in_one", values, "cost_per_year") == pytest.approx(147.5)


def test_a_tank_compared_without_its_life_looks_dear() -> None:
    values = {"cost_of_tank": 900.0, "tank_life": 30.0, "yearly_upkeep": 0.0, "tank_volume": 9.0}
    assert shown("cost_per_cubic_metre_year", values) == "3.33"
    assert read_wrong("life_forgotten", values, "cost_per_cubic_metre_year") == 100


def test_carrying_and_work_have_a_price() -> None:
    values = {"cost_of_cement": 100, "cost_of_wages": 250, "cost_of_carrying": 60, "other_cost": 390}
    assert shown("cost_of_tank", values) == "800.0"
    assert read_wrong("carrying_thought_free", values, "cost_of_tank") == 740
    assert read_wrong("own_work_thought_free", values, "cost_of_tank") == 550


def test_a_price_below_nothing_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="bag_price"):
        BOOK.evaluate({"cement_bags": 3, "bag_price": -1}, ["cost_of_cement"])
