"""Whole packages, exact money, and no price that is missing in silence."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations.bill import Bill, Item, Money, Tank, bill, compare, per_litre
from generator.formula import OutOfRangeError

LIST = [
    Item("cement", 22.3, "bag"),
    Item("bars", 131, "m", package=12),
    Item("tying_wire", 3.4, "kg", package=0),
    Item("sand", 2.1, "m3", package=0.5, waste=10),
]
PRICES: dict[str, Money] = {"cement": "8.35", "bars": 11, "tying_wire": "1.90", "sand": "7.05"}


def test_a_bill_worked_by_hand() -> None:
    """23 bags x 8.35 = 192.05; 11 bars x 11 = 121; 3.4 x 1.90 = 6.46; 2.31 m3 are 5 halves x 7.05 = 35.25."""
    made = bill(LIST, PRICES, "coins")
    assert [str(line.cost) for line in made.lines] == ["192.05", "121", "6.460", "35.25"]
    assert made.total == Decimal("354.76")
    assert made.so_far == made.total
    assert made.missing == ()
    assert made.lines[3].lost == pytest.approx(0.21)
    assert made.lines[3].needed == pytest.approx(2.31)


def test_a_missing_price_is_named_and_leaves_no_total() -> None:
    made = bill(LIST, {"cement": "8.35"}, "coins")
    assert made.missing == ("bars", "tying_wire", "sand")
    assert made.total is None
    assert made.so_far == Decimal("192.05")
    assert made.lines[1].cost is None
    assert per_litre(made, 9000) is None


def test_a_price_of_nothing_is_a_gift_and_not_a_gap() -> None:
    made = bill([Item("sand", 1, "m3")], {"sand": 0}, "coins")
    assert made.total == 0
    assert made.missing == ()


def test_an_own_price_goes_before_the_list() -> None:
    assert bill([Item("cement", 2, "bag", price=9)], PRICES, "coins").total == 18


def test_tenths_of_a_coin_add_up_exactly() -> None:
    made = bill([Item("a", 1, "piece", "0.10"), Item("b", 1, "piece", "0.20")], {}, "coins")
    assert str(made.total) == "0.30"


def test_a_hair_of_floating_point_buys_no_extra_bag() -> None:
    assert bill([Item("cement", 0.1 * 3 * 10, "bag")], PRICES, "coins").lines[0].packages == 3


@given(
    amount=st.floats(0, 1000), package=st.sampled_from([0.0, 0.5, 1.0, 12.0]), waste=st.integers(0, 50),
    price=st.decimals(0, 1000, places=2),
)  # fmt: skip
def test_enough_is_bought_and_never_a_package_too_many(
    amount: float, package: float, waste: int, price: Decimal
) -> None:
    line = bill([Item("x", amount, "m", price, package, waste)], {}, "coins").lines[0]
    got = float(line.packages) * (package or 1)
    assert got >= line.needed - 1e-6
    assert got < line.needed + (package or 1e-9) + 1e-6
    assert line.cost == line.packages * price


@pytest.mark.parametrize(
    ("items", "message"),
    [
        ([Item("a", -1, "kg", 1)], "below nothing"),
        ([Item("a", float("nan"), "kg", 1)], "below nothing"),
        ([Item("a", 1, "kg", 1, package=-1)], "below nothing"),
        ([Item("a", 1, "kg", 1, waste=51)], "outside 0 to 50"),
        ([Item("a", 1, "kg", -1)], "can't be"),
        ([Item("a", 1, "kg", "NaN")], "can't be"),
        ([Item("a", 1, "kg", "cheap")], "is no price"),
        ([Item("a", 1, "kg", 0.1)], "as a text"),  # type: ignore[arg-type]
        ([Item("a", 1, "kg", True)], "as a text"),
        ([Item("a", 1, "kg", 1), Item("a", 2, "kg", 1)], "twice"),
    ],
)
def test_nonsense_on_the_list_is_refused(items: list[Item], message: str) -> None:
    with pytest.raises(OutOfRangeError, match=message):
        bill(items, {}, "coins")


@pytest.mark.parametrize("litres", [0, -1, float("inf")])
def test_no_litres_share_no_cost(litres: float) -> None:
    with pytest.raises(OutOfRangeError, match="work out the volume"):
        per_litre(Bill((), "coins", Decimal(1), Decimal(1), ()), litres)


def test_a_cheap_tank_that_breaks_early_is_dear() -> None:
    """Plastic 270 / 9 / 1.5 = 20; ours 1000 / 25 + 5 = 45 for 9 m3 = 5; brick 960 / 16 + 20 = 80 for 10 m3 = 8."""
    rows = compare(
        [
            Tank("plastic", 1.5, 270, 9),
            Tank("concrete", 10, None, 40),
            Tank("ferrocement", 9, 1000, 25, 5),
            Tank("brick", 10, 960, 16, 20),
        ]
    )
    assert [row.name for row in rows] == ["ferrocement", "brick", "plastic", "concrete"]
    assert [row.per_cubic_metre_year for row in rows] == [5, 8, 20, None]
    assert rows[2].per_cubic_metre == 180
    assert rows[1].per_year == 80


@pytest.mark.parametrize(
    ("tank", "message"),
    [
        (Tank("a", 0, 1, 10), "volume above 0"),
        (Tank("a", 1, 1, 0), "life above 0"),
        (Tank("a", 1, 1, 101), "up to 100 years"),
        (Tank("a", 1, -1, 10), "can't be"),
        (Tank("a", 1, 1, 10, -1), "can't be"),
    ],
)
def test_a_tank_that_can_not_be_is_not_compared(tank: Tank, message: str) -> None:
    with pytest.raises(OutOfRangeError, match=message):
        compare([tank])


def test_a_tank_stands_in_the_comparison_once() -> None:
    with pytest.raises(OutOfRangeError, match="twice"):
        compare([Tank("a", 1, 1, 1), Tank("a", 1, 1, 1)])
