"""The examples of a shop's list and of a price list can be planned with, and the guide's short ones can be read."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from generator.plans import Plan, Wish, make_plan, read_prices, read_shop

ROOT = Path(__file__).parents[2]
EXAMPLES = ROOT / "docs" / "examples"


def guide(first: str) -> bytes:
    """The YAML in the developers' guide whose first line is the one asked for."""
    blocks = re.findall(r"```yaml\n(.*?)```", (ROOT / "DEVELOPERS.md").read_text("utf-8"), re.DOTALL)
    (found,) = (block for block in blocks if block.startswith(first))
    return str(found).encode("utf-8")


def test_a_tank_is_planned_and_priced_with_the_examples() -> None:
    shop = read_shop("shop.yaml", (EXAMPLES / "shop.yaml").read_bytes())
    prices = read_prices("prices.yaml", (EXAMPLES / "prices.yaml").read_bytes())
    plan = make_plan(Wish(6500, shop=shop, prices=prices))
    assert isinstance(plan, Plan)
    assert plan.wall.hoops is not None
    assert plan.wall.hoops.bar in shop.bars
    assert plan.wall.inside.mesh in shop.meshes
    assert plan.bill is not None
    assert plan.bill.missing == ()
    assert plan.bill.currency == "coins"
    assert [row.name for row in plan.comparison if row.per_cubic_metre_year is not None]


@pytest.mark.parametrize("name", ["shop", "prices"])
def test_the_examples_say_that_they_are_invented(name: str) -> None:
    text = (EXAMPLES / f"{name}.yaml").read_text("utf-8")
    assert "invented" in text.splitlines()[0].lower()
    assert "Tamarisk Ridge" in text


def test_the_guides_short_examples_can_be_read() -> None:
    assert read_shop("guide", guide("# shop")).bars
    assert read_prices("guide", guide("# prices")).prices["cement"] > 0
