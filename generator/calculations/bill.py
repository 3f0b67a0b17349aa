"""The bill: what is bought in whole pieces, what it costs in the user's own prices, and which price is missing.

Money is exact (`decimal`), never a float. A price that nobody gave is named: it is never taken for nothing, and a bill
that lacks one has no total. Loss on the way stands in its own column and is not hidden in an amount.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation
from math import isfinite

from generator.formula import OutOfRangeError, whole_up

Money = Decimal | int | str
"""Never a float: 0.1 + 0.2 coins are 0.3 coins."""
MOST_WASTE = 50.0
LONGEST_LIFE = 100.0


@dataclass(frozen=True, slots=True)
class Item:
    """One thing on the list.

    Args:
        name: key of its words, and of its price.
        amount: what the work needs, without loss [unit].
        unit: as in `bag`, `kg`, `m`, `day`.
        price: for one package, in the bill's money; None where the price list has it.
        package: what is sold at once [unit]: 1 for bags, 12 for bars of 12 m; 0 for what is weighed out or paid by
            the part of a day.
        waste: loss on the way, added to the amount [%], 0 to 50.
    """

    name: str
    amount: float
    unit: str
    price: Money | None = None
    package: float = 1.0
    waste: float = 0.0


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the bill.

    Args:
        name: key of its words.
        needed: amount and its loss [unit].
        lost: the loss in it [unit].
        packages: packages to buy: whole ones, or the amount itself of what is weighed out.
        unit: unit of the amount.
        price: of one package; None where nobody gave it.
        cost: packages x price, exact; None without a price.
    """

    name: str
    needed: float
    lost: float
    packages: Decimal
    unit: str
    price: Decimal | None
    cost: Decimal | None


@dataclass(frozen=True, slots=True)
class Bill:
    """The whole bill.

    Args:
        lines: in the order of the items.
        currency: what the money is called.
        so_far: sum of the lines that have a price.
        total: the same sum where no price is missing; else None.
        missing: names without a price, in order.
    """

    lines: tuple[Line, ...]
    currency: str
    so_far: Decimal
    total: Decimal | None
    missing: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Tank:
    """A kind of tank that somebody could buy or build, with the user's own numbers.

    Args:
        name: as the trade calls it: ferrocement, brick, plastic, concrete.
        volume: water that it holds [m**3], above 0.
        price: with base, roof, carrying and work, ready to fill; None where nobody asked yet.
        life: years that it is expected to serve, above 0 to 100.
        upkeep: money for a year of repairs and paint.
    """

    name: str
    volume: float
    price: Money | None
    life: float
    upkeep: Money = 0


@dataclass(frozen=True, slots=True)
class Comparison:
    """One row of a comparison.

    Args:
        name: as given.
        per_cubic_metre: price for a cubic metre of water; None without a price.
        per_year: price over its life, and the upkeep; no interest.
        per_cubic_metre_year: what a cubic metre costs in a year: the number to compare.
    """

    name: str
    per_cubic_metre: Decimal | None
    per_year: Decimal | None
    per_cubic_metre_year: Decimal | None


def bill(items: Iterable[Item], prices: Mapping[str, Money], currency: str) -> Bill:
    """Price a list.

    Args:
        items: each name once.
        prices: price of one package by name; an item's own price goes before it.
        currency: what the money is called; "coins" in our examples.

    Raises:
        OutOfRangeError: an amount or price below nothing or no number, a float as a price, a loss outside its range,
            or a name given twice.

    Example:
        >>> made = bill([Item("cement", 7.2, "bag"), Item("mesh", 31, "m", package=15)], {"cement": "8.50"}, "coins")
        >>> str(made.so_far), made.total, made.missing
        ('68.00', None, ('mesh',))
    """
    lines: list[Line] = []
    for item in items:
        if any(line.name == item.name for line in lines):
            raise OutOfRangeError(f"{item.name} stands on the list twice: add the two up first")
        lines.append(_line(item, item.price if item.price is not None else prices.get(item.name)))
    so_far = sum((line.cost for line in lines if line.cost is not None), Decimal(0))
    missing = tuple(line.name for line in lines if line.price is None)
    return Bill(tuple(lines), currency, so_far, None if missing else so_far, missing)


def per_litre(made: Bill, litres: float) -> Decimal | None:
    """What a litre of room for water costs; None while a price is missing.

    Args:
        made: the whole bill.
        litres: what the full tank holds [L], above 0.

    Raises:
        OutOfRangeError: no litres to share the cost.

    Example:
        >>> str(per_litre(bill([Item("all", 1, "piece", "4500")], {}, "coins"), 6000))
        '0.75'
    """
    if not (isfinite(litres) and litres > 0):
        raise OutOfRangeError(f"{litres} litres can't share a cost; work out the volume first")
    return None if made.total is None else made.total / Decimal(str(litres))


def compare(tanks: Iterable[Tank]) -> tuple[Comparison, ...]:
    """Compare kinds of tank by what a cubic metre costs in a year, cheapest first; those without a price come last.

    A cheap tank that breaks early is dear. The lives are the user's own guesses: change one and look again.

    Args:
        tanks: each name once.

    Raises:
        OutOfRangeError: a volume, life or price outside its range, or a name given twice.

    Example:
        >>> own = [Tank("plastic", 2, 300, 10), Tank("brick", 8, None, 20), Tank("ferrocement", 8, 1200, 30, 4)]
        >>> rows = compare(own)
        >>> [(row.name, str(row.per_cubic_metre_year)) for row in rows]
        [('ferrocement', '5.5'), ('plastic', '15'), ('brick', 'None')]
    """
    rows: list[Comparison] = []
    for tank in tanks:
        if any(row.name == tank.name for row in rows):
            raise OutOfRangeError(f"{tank.name} stands in the comparison twice: give each its own name")
        if not (isfinite(tank.volume) and tank.volume > 0 and 0 < tank.life <= LONGEST_LIFE):
            raise OutOfRangeError(
                f"{tank.name}: give a volume above 0, and a life above 0 and up to {LONGEST_LIFE:g} years"
            )
        if tank.price is None:
            rows.append(Comparison(tank.name, None, None, None))
            continue
        price, volume = _money(tank.name, tank.price), Decimal(str(tank.volume))
        year = price / Decimal(str(tank.life)) + _money(tank.name, tank.upkeep)
        rows.append(Comparison(tank.name, price / volume, year, year / volume))
    return tuple(sorted(rows, key=lambda row: (row.per_cubic_metre_year is None, row.per_cubic_metre_year or 0)))


def _line(item: Item, price: Money | None) -> Line:
    if not (isfinite(item.amount) and item.amount >= 0 and isfinite(item.package) and item.package >= 0):
        raise OutOfRangeError(f"{item.name}: an amount can't be below nothing")
    if not 0 <= item.waste <= MOST_WASTE:
        raise OutOfRangeError(f"{item.name}: a loss of {item.waste:g} % is outside 0 to {MOST_WASTE:g} %")
    lost = item.amount * item.waste / 100
    needed = item.amount + lost
    packages = Decimal(int(whole_up(needed / item.package))) if item.package else Decimal(str(needed))
    paid = None if price is None else _money(item.name, price)
    return Line(item.name, needed, lost, packages, item.unit, paid, None if paid is None else packages * paid)


def _money(name: str, money: Money) -> Decimal:
    """Exact money from a whole number, a text or a decimal.

    Raises:
        OutOfRangeError: a float, a text that is no number, or money below nothing.
    """
    if isinstance(money, bool | float):
        raise OutOfRangeError(f"{name}: write the price as a text ('8.50'), so that no part of a coin is lost")
    try:
        exact = Decimal(money)
    except InvalidOperation:
        raise OutOfRangeError(f"{name}: '{money}' is no price; write a number such as 8.50") from None
    if not exact.is_finite() or exact < 0:
        raise OutOfRangeError(f"{name}: a price of {money} can't be; leave it out if nobody knows it")
    return exact
