"""How a given, a quantity and a misconception are declared."""

from __future__ import annotations

import functools
import inspect
import math
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from typing import ParamSpec

from generator.formula.source import Source
from generator.problems import RefusedError

Parameters = ParamSpec("Parameters")

SYMBOL = re.compile(r"[A-Za-z]{1,3}[0-9]?(_[A-Za-z0-9]{1,3})?")
"""Latin letters, perhaps a digit, perhaps a subscript."""
ASK = "ask a licensed engineer before going on"


class OutOfRangeError(RefusedError):
    """A number outside its range, or not a number at all; the message says the range and who to ask."""


class OutsideRangeError(OutOfRangeError):
    """A given or a result outside the range of its name, with all that is needed to say so in any language.

    Args:
        name: of the given or quantity.
        value: what it was, in its unit.
        low: least that the course stands for.
        high: most that the course stands for.
        unit: of the three.
    """

    def __init__(self, name: str, value: float, low: float, high: float, unit: str) -> None:
        shown = f" {unit}" if unit else ""
        super().__init__(
            f"{name} = {value:.6g}{shown} is outside {low:g} to {high:g}{shown}, "
            f"which is as far as this course goes; {ASK}"
        )
        self.name, self.value, self.low, self.high, self.unit = name, value, low, high, unit


class UnknownNameError(ValueError):
    """A name that is neither a given nor a quantity, or one that can't be worked out from what is given."""


@dataclass(frozen=True, slots=True)
class Given:
    """A number that comes from the tape, the shop or a choice.

    Args:
        name: trade name in snake case.
        symbol: Latin letter or two, with a subscript after `_`: `D_i`.
        unit: as in `m`, `mm`, `kg/m**3`; empty for a bare number.
        low: least value that the course allows, in the unit.
        high: largest value that the course allows.
        step: what a tape or a choice can tell apart.
        source: why the range is what it is.
    """

    name: str
    symbol: str
    unit: str
    low: float
    high: float
    step: float
    source: Source


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number that is worked out.

    Args:
        name: name of the function.
        symbol: as for `Given`.
        unit: unit of the result.
        places: decimals that print shows.
        low: least result that the course stands for; a result outside the range is refused.
        high: largest result.
        source: where the formula comes from.
        needs: parameter names, each a given or another quantity.
        function: the author's function, without range checks.
    """

    name: str
    symbol: str
    unit: str
    places: int
    low: float
    high: float
    source: Source
    needs: tuple[str, ...]
    function: Callable[..., float]

    @property
    def whole(self) -> bool:
        """Whether the result is a count: printed without decimals and marked exactly."""
        return self.places == 0


@dataclass(frozen=True, slots=True)
class Misconception:
    """What someone with a wrong idea in the head would take for the right value of `of`.

    `needs` may hold `of` itself: then the right value comes in and the distorted one goes out.
    """

    name: str
    of: str
    needs: tuple[str, ...]
    function: Callable[..., float]


def near(name: str, known: Mapping[str, object]) -> str:
    """`; did you mean 'depth'?`, or nothing."""
    close = get_close_matches(name, known, n=1)
    return f"; did you mean '{close[0]}'?" if close else ""


class Registry:
    """Givens, quantities and misconceptions by name, filled by the calculation module's topic files."""

    def __init__(self) -> None:
        self.givens: dict[str, Given] = {}
        self.quantities: dict[str, Quantity] = {}
        self.misconceptions: dict[str, Misconception] = {}

    def given(self, name: str, *, symbol: str, unit: str, low: float, high: float, step: float, source: Source) -> None:
        """Declare a given; see `Given` for the arguments.

        Raises:
            ValueError: the name or symbol is taken, or the range is empty.
        """
        self._check(name, symbol, low, high)
        self.givens[name] = Given(name, symbol, unit, low, high, step, source)

    def quantity(
        self, *, symbol: str, unit: str, places: int, low: float, high: float, source: Source
    ) -> Callable[[Callable[Parameters, float]], Callable[Parameters, float]]:
        """Declare a quantity; the decorated function refuses arguments and results outside their ranges.

        Raises:
            ValueError: the name or symbol is taken, or the range is empty.
        """

        def keep(function: Callable[Parameters, float]) -> Callable[Parameters, float]:
            name = function.__name__
            self._check(name, symbol, low, high)
            signature = inspect.signature(function)
            needs = tuple(signature.parameters)
            self.quantities[name] = Quantity(name, symbol, unit, places, low, high, source, needs, function)

            @functools.wraps(function)
            def guarded(*args: Parameters.args, **kwargs: Parameters.kwargs) -> float:
                bound = signature.bind(*args, **kwargs)
                for parameter, value in bound.arguments.items():
                    self.refuse_outside(parameter, value)
                result = function(*args, **kwargs)
                self.refuse_outside(name, result)
                return result

            return guarded

        return keep

    def misconception(self, *, of: str) -> Callable[[Callable[Parameters, float]], Callable[Parameters, float]]:
        """Declare what a wrong idea makes of the value `of`.

        Raises:
            ValueError: the name is taken.
        """

        def keep(function: Callable[Parameters, float]) -> Callable[Parameters, float]:
            name = function.__name__
            if name in self.misconceptions:
                raise ValueError(f"misconception '{name}' is declared twice")
            needs = tuple(inspect.signature(function).parameters)
            self.misconceptions[name] = Misconception(name, of, needs, function)
            return function

        return keep

    def entry(self, name: str) -> Given | Quantity:
        """The given or quantity of a name.

        Raises:
            UnknownNameError: there is none; the message proposes the nearest name.
        """
        found = self.givens.get(name) or self.quantities.get(name)
        if found is None:
            everything: dict[str, object] = {**self.givens, **self.quantities}
            raise UnknownNameError(f"'{name}' is neither a given nor a quantity{near(name, everything)}")
        return found

    def worked_out(self, name: str) -> Quantity:
        """The quantity of a name.

        Raises:
            UnknownNameError: there is none, or the name is a given and so has no formula.
        """
        found = self.entry(name)
        if isinstance(found, Given):
            raise UnknownNameError(f"'{name}' is given and not worked out, so it has no formula")
        return found

    def refuse_outside(self, name: str, value: float) -> None:
        """Refuse a value that is not a finite number or lies outside the range of its name.

        Raises:
            OutOfRangeError: with the range, and who to ask.
        """
        entry = self.entry(name)
        if type(value) is float and entry.low <= value <= entry.high:
            return
        if isinstance(value, bool) or not isinstance(value, int | float) or not math.isfinite(value):
            raise OutOfRangeError(f"{name} = {value} is not a number that can be worked with")
        slack = 1e-9 * max(abs(entry.low), abs(entry.high))
        if not entry.low - slack <= value <= entry.high + slack:
            raise OutsideRangeError(name, value, entry.low, entry.high, entry.unit)

    def _check(self, name: str, symbol: str, low: float, high: float) -> None:
        if name in self.givens or name in self.quantities:
            raise ValueError(f"'{name}' is declared twice")
        if not SYMBOL.fullmatch(symbol):
            raise ValueError(f"{name}: symbol '{symbol}' is not Latin letters with a subscript after _")
        entries: list[Given | Quantity] = [*self.givens.values(), *self.quantities.values()]
        taken = [entry.name for entry in entries if entry.symbol == symbol]
        if taken:
            raise ValueError(f"{name}: symbol '{symbol}' already stands for '{taken[0]}'")
        if not low < high:
            raise ValueError(f"{name}: the range {low:g} to {high:g} is empty")
