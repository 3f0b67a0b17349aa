"""The units of every formula agree: run on quantities with units, it gives the declared unit and the same number.

The number is compared in the declared unit, not only its kind, so that a lost thousand is found too.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from typing import Any

import pint
import pytest

from generator.calculations import BOOK
from generator.formula import Book, Constant, Quantity, Stream, derived, recompiled, whole_up
from generator.formula import numbers as plain_numbers

TRIES = 12
UNITS = pint.UnitRegistry()
UNITS.define("bag = []")
UNITS.define("coin = []")
COUNTS = ("bag",)
"""Units of things that are counted: rounded up as they are."""


def with_unit(value: float, unit: str) -> Any:
    return UNITS.Quantity(float(value), unit.replace("%", "percent") or "dimensionless")


def bare(value: Any) -> float:
    """The number of a ratio; anything with a unit is a fault of the formula."""
    return float(value.to("dimensionless").magnitude) if isinstance(value, UNITS.Quantity) else float(value)


def _whole(rounding: Callable[[float], float]) -> Callable[[Any], Any]:
    def rounded(x: Any) -> Any:
        if isinstance(x, UNITS.Quantity) and str(x.to_reduced_units().units) in COUNTS:
            x = x.to_reduced_units()
            return UNITS.Quantity(rounding(x.magnitude), x.units)
        return rounding(bare(x))

    return rounded


def _of_bare(function: Callable[..., float]) -> Callable[..., float]:
    return lambda x, *tables: function(bare(x), *tables)


def _angle(function: Callable[[float], float]) -> Callable[[Any], float]:
    return lambda x: function(float(x.to("radian").magnitude) if isinstance(x, UNITS.Quantity) else x)


def _ends(choose: Callable[..., Any]) -> Callable[..., Any]:
    """`min` or `max`; a bare 0 is nothing in any unit."""

    def chosen(*values: Any) -> Any:
        units = [value.units for value in values if isinstance(value, UNITS.Quantity)]
        bare_zero = [not isinstance(value, UNITS.Quantity) and value == 0 for value in values]
        return choose(
            *(UNITS.Quantity(0.0, units[0]) if zero and units else value
              for value, zero in zip(values, bare_zero, strict=True))
        )  # fmt: skip

    return chosen


NAMES: dict[str, object] = {
    "_where": lambda test, yes, no: yes if test else no,
    "_and": lambda a, b: a and b,
    "_or": lambda a, b: a or b,
    "_not": lambda a: not a,
    "sqrt": lambda x: x**0.5,
    "exp": _of_bare(math.exp), "log": _of_bare(math.log), "atan": _of_bare(math.atan),
    "sin": _angle(math.sin), "cos": _angle(math.cos), "tan": _angle(math.tan),
    "abs": abs, "min": _ends(min), "max": _ends(max),
    "whole_up": _whole(plain_numbers.whole_up), "whole_down": _whole(plain_numbers.whole_down),
    "interpolate": _of_bare(plain_numbers.interpolate), "pick": _of_bare(plain_numbers.pick),
}  # fmt: skip


def unit_form(function: Callable[..., float]) -> Callable[..., Any]:
    constants = {
        name: with_unit(value, value.unit)
        for name, value in function.__globals__.items()
        if isinstance(value, Constant)
    }
    return recompiled(function, {**NAMES, **constants})


def inputs(book: Book, quantity: Quantity) -> Sequence[Mapping[str, float]]:
    """What the quantity needs, from the range of each; whole numbers where something is counted."""
    stream = Stream(f"units of {quantity.name}")
    found = []
    for _ in range(TRIES):
        row = {}
        for name in quantity.needs:
            entry = book.entry(name)
            share = stream.below(1001) / 1000
            value = entry.low + (entry.high - entry.low) * share
            row[name] = float(round(value)) if getattr(entry, "whole", False) else value
        found.append(row)
    return found


def check(book: Book, name: str) -> int:
    """How many of the inputs have a value; fails where the units or the numbers disagree."""
    quantity = book.quantities[name]
    form = unit_form(quantity.function)
    worked = 0
    for row in inputs(book, quantity):
        try:
            plain = quantity.function(**row)
        except (ArithmeticError, ValueError):
            continue
        result = form(**{need: with_unit(value, book.entry(need).unit) for need, value in row.items()})
        if not isinstance(result, UNITS.Quantity):
            result = UNITS.Quantity(result, "dimensionless")
        unit = quantity.unit.replace("%", "percent") or "dimensionless"
        assert math.isclose(result.to(unit).magnitude, plain, rel_tol=1e-9, abs_tol=1e-12), (name, row)
        worked += 1
    return worked


@pytest.mark.parametrize("name", BOOK.quantities)
def test_the_units_of_every_quantity_agree(name: str) -> None:
    assert check(BOOK, name) >= TRIES // 2, "too few inputs have a value"


FAULTS = Book()
SOURCE = derived("made up for the tests")
MILLIMETRES = Constant(1000, "mm/m", SOURCE)
FAULTS.given("width", symbol="w", unit="m", low=1, high=2, step=1, source=SOURCE)
FAULTS.given("thickness", symbol="t", unit="mm", low=1, high=2, step=1, source=SOURCE)


@FAULTS.quantity(symbol="a", unit="m", places=2, low=0, high=9, source=SOURCE)
def right(width: float, thickness: float) -> float:
    return width + thickness / MILLIMETRES


@FAULTS.quantity(symbol="b", unit="m", places=2, low=0, high=9, source=SOURCE)
def lost_thousand(width: float, thickness: float) -> float:
    return width + thickness


@FAULTS.quantity(symbol="c", unit="m", places=2, low=0, high=9, source=SOURCE)
def wrong_kind(width: float) -> float:
    return width * width


@FAULTS.quantity(symbol="d", unit="", places=0, low=0, high=9, source=SOURCE)
def bare_limit(width: float) -> float:
    return 1 if width < 2 else 2


@FAULTS.quantity(symbol="e", unit="", places=0, low=0, high=9, source=SOURCE)
def rounded_length(width: float) -> float:
    return whole_up(width)


def test_a_right_formula_passes() -> None:
    assert check(FAULTS, "right") == TRIES
    assert right(1, 1) == pytest.approx(1.001)


@pytest.mark.parametrize("name", ["lost_thousand", "wrong_kind", "bare_limit", "rounded_length"])
def test_faults_of_units_are_found(name: str) -> None:
    with pytest.raises((AssertionError, pint.PintError, ValueError)):
        check(FAULTS, name)
