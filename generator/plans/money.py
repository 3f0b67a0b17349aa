"""The bill of a plan, on the user's own prices."""

from __future__ import annotations

from collections.abc import Mapping

from generator.calculations.bill import Bill, Comparison, Item, Tank, bill, compare
from generator.formula import whole_up
from generator.plans.materials import Materials
from generator.plans.mesh_list import MeshList
from generator.plans.prices import Prices
from generator.plans.steel_list import AngleList, BarList
from generator.plans.work import Work

OURS = "ferrocement"
"""Name of the planned tank among those that it is compared with."""


def bill_for(
    materials: Materials,
    bars: tuple[BarList, ...],
    angles: AngleList | None,
    mesh: MeshList,
    work: Work,
    values: Mapping[str, float],
    prices: Prices,
) -> Bill:
    """The bill; what has no price is named and never taken as nothing.

    Args:
        materials: of the tank.
        bars: to buy.
        angles: to buy.
        mesh: to buy.
        work: of the crew.
        values: what the calculation module says about the tank.
        prices: the user's own list.
    """
    steel = sum(each.mass for each in bars) + (angles.mass if angles else 0.0)
    items = [
        Item("cement", materials.bags, "bag"),
        Item("sand", _heap(materials.sand), "m**3", package=0),
        Item("stone", _heap(materials.stone), "m**3", package=0),
        Item("steel", steel, "kg"),
        Item("mesh", mesh.mass, "kg"),
        Item("wire", materials.wire, "kg"),
        Item("lime", materials.lime, "kg"),
        Item("mason", values["mason_days"], "day"),
        Item("labourer", values["labourer_days"], "day"),
        Item("load", work.loads.loads, ""),
    ]
    return bill(items, {name: repr(price) for name, price in prices.prices.items()}, prices.currency)


def _heap(volume: float) -> float:
    """What is ordered of sand or stone, whose price is a cubic metre's: the next tenth of one [m3]."""
    return float(whole_up(volume * 10)) / 10


def compared(made: Bill, prices: Prices, volume: float) -> tuple[Comparison, ...]:
    """This tank beside the tanks that the price list names, on the same footing: money for a cubic metre and a year.

    Args:
        made: the bill.
        prices: the list, with the other tanks.
        volume: of this tank [m3].
    """
    if not prices.other_tanks:
        return ()
    ours = Tank(OURS, volume, made.total, prices.life_years, repr(prices.upkeep))
    others = (
        Tank(tank.name, tank.litres / 1000, None if tank.price is None else repr(tank.price), tank.life_years,
             repr(tank.upkeep))
        for tank in prices.other_tanks
    )  # fmt: skip
    return compare([ours, *others])
