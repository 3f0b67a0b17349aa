"""Shop and price files: good ones are read; bad ones say everything that is wrong, with its line and what to do."""

import pytest

from generator.plans import Plan, Wish, make_plan, read_prices, read_shop
from generator.problems import ProblemsError

SHOP = b"""format: 1
bars:
- {diameter: 6}
- {diameter: 8, ribbed: true, length: 6}
meshes:
- {kind: welded, wire: 1.6, opening: 25, thickness: 5, width: 1.2, length: 15}
angles:
- {leg: 25, thickness: 3}
"""


def test_a_shop_file_is_read_and_planned_from() -> None:
    shop = read_shop("shop.yaml", SHOP)
    assert [(bar.diameter, bar.ribbed, bar.length) for bar in shop.bars] == [(6, False, 12), (8, True, 6)]
    assert isinstance(make_plan(Wish(6000.0, shop=shop)), Plan)


@pytest.mark.parametrize(
    ("wrong", "right", "line", "code"),
    [
        (b"diameter: 60", b"diameter: 6", 3, "number-out-of-range"),
        (b"kind: chicken", b"kind: welded", 6, "wrong-value"),
        (b"leg: 25 mm", b"leg: 25", 8, "wrong-type"),
        (b"lenght: 6", b"length: 6", 4, "unknown-key"),
        (b"format: 2", b"format: 1", 1, "newer-format"),
    ],
)
def test_a_slip_in_a_shop_file_is_named_with_its_line(wrong: bytes, right: bytes, line: int, code: str) -> None:
    with pytest.raises(ProblemsError) as found:
        read_shop("shop.yaml", SHOP.replace(right, wrong))
    assert [(problem.line, problem.code) for problem in found.value.problems] == [(line, code)]
    assert all(problem.fix for problem in found.value.problems)


def test_all_that_is_wrong_with_a_shop_file_is_said_at_once() -> None:
    with pytest.raises(ProblemsError) as found:
        read_shop(
            "shop.yaml", SHOP.replace(b"diameter: 6}", b"diameter: -6}").replace(b"thickness: 3", b"thickness: x")
        )
    assert {problem.line for problem in found.value.problems} == {3, 8}


def test_a_price_below_nothing_or_of_something_unknown_is_refused() -> None:
    text = b"format: 1\ncurrency: coins\nprices: {cement: -1, gold: 5}\n"
    with pytest.raises(ProblemsError) as found:
        read_prices("prices.yaml", text)
    assert {problem.line for problem in found.value.problems} == {3}
    assert len(found.value.problems) == 2


def test_prices_are_exact_money() -> None:
    prices = read_prices("prices.yaml", b"format: 1\ncurrency: coins\nprices: {cement: 0.1}\n")
    plan = make_plan(Wish(4000.0, prices=prices))
    assert isinstance(plan, Plan)
    assert plan.bill is not None
    cement = plan.bill.lines[0]
    assert str(cement.cost) == str(cement.packages * cement.price if cement.price is not None else None)
    assert plan.bill.total is None
    assert "sand" in plan.bill.missing
