"""The book of formulas: a registry whose quantities find each other by parameter name, and can be worked out."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence, Set
from dataclasses import dataclass
from graphlib import CycleError, TopologicalSorter
from typing import Any

import numpy as np

from generator.formula import plain
from generator.formula.arrays import Array, numpy_form
from generator.formula.javascript import javascript
from generator.formula.numbers import guarded, show, show_full
from generator.formula.registry import Misconception, OutOfRangeError, Quantity, Registry, UnknownNameError, near
from generator.formula.tree import Variable, parse


@dataclass(frozen=True, slots=True)
class Step:
    """One line of a worked solution.

    Args:
        name: quantity, or the local name inside one.
        symbol: its symbol.
        formula: plain text of the formula in symbols.
        substituted: the same with numbers in place.
        value: full precision.
        shown: the value as printed on this line: with guard digits in between, at the declared places at the end.
        unit: unit of the value.
    """

    name: str
    symbol: str
    formula: str
    substituted: str
    value: float
    shown: str
    unit: str

    def __str__(self) -> str:
        unit = f" {self.unit}" if self.unit else ""
        return f"{self.symbol} = {self.formula} = {self.substituted} = {self.shown}{unit}"


@dataclass(frozen=True, slots=True)
class _Move:
    """One evaluation in order: the quantity's own function, or what a misconception puts in its place."""

    name: str
    needs: tuple[str, ...]
    function: Callable[..., float]


class Book(Registry):
    """All the formulas of a course.

    Example:
        >>> from generator.formula import Book, derived
        >>> book = Book()
        >>> book.given("width", symbol="w", unit="m", low=1, high=5, step=0.1, source=derived("made up"))
        >>> @book.quantity(symbol="A", unit="m**2", places=2, low=1, high=25, source=derived("a square"))
        ... def area(width: float) -> float:
        ...     return width * width
        >>> book.evaluate({"width": 2})["area"]
        4
    """

    def __init__(self) -> None:
        super().__init__()
        self._plans: dict[tuple[frozenset[str], tuple[str, ...] | None, tuple[str, ...]], tuple[_Move, ...]] = {}

    # ------------------------------------------------------------------------------------------ the graph

    def ancestors(self, asked: Iterable[str], stop: Iterable[str] = (), wrong: Sequence[str] = ()) -> tuple[str, ...]:
        """Everything that a value needs, itself included, each after what it needs.

        Args:
            asked: quantities or givens.
            stop: names whose values are already there: nothing behind them is followed.
            wrong: misconceptions that stand in the place of what they distort.

        Raises:
            UnknownNameError: a name that the book does not have, or a circle of quantities (a fault of the book).
        """
        swap = self._swap(wrong)
        fixed = frozenset(stop)
        needs: dict[str, tuple[str, ...]] = {}
        todo = list(asked)
        while todo:
            name = todo.pop()
            if name in needs:
                continue
            entry = self.entry(name)
            needs[name] = tuple(self._needs(entry.name, swap, fixed))
            todo.extend(needs[name])
        try:
            return tuple(TopologicalSorter({n: [p for p in needs[n] if p != n] for n in sorted(needs)}).static_order())
        except CycleError as error:
            raise UnknownNameError(
                f"the quantities need each other in a circle: {' -> '.join(error.args[1])}"
            ) from None

    def needs(self, asked: str, given: Iterable[str] = ()) -> tuple[str, ...]:
        """The givens that a quantity rests on, in the book's order.

        Args:
            asked: a quantity.
            given: quantities whose value is already there.
        """
        fixed = frozenset(given)
        found = set(self.ancestors([asked], stop=fixed - {asked}))
        return tuple(name for name in [*self.givens, *self.quantities] if name in found and
                     (name in self.givens or name in fixed))  # fmt: skip

    def _swap(self, wrong: Sequence[str]) -> dict[str, Misconception]:
        swap: dict[str, Misconception] = {}
        for name in wrong:
            if name not in self.misconceptions:
                raise UnknownNameError(f"no misconception '{name}'{near(name, self.misconceptions)}")
            found = self.misconceptions[name]
            if found.of in swap:
                raise UnknownNameError(f"'{name}' and '{swap[found.of].name}' both distort '{found.of}'")
            swap[found.of] = found
        return swap

    def _needs(self, name: str, swap: Mapping[str, Misconception], fixed: frozenset[str]) -> Iterator[str]:
        quantity = self.quantities.get(name)
        if quantity is not None and name in fixed:
            return
        mistake = swap.get(name)
        if quantity is not None and (mistake is None or name in mistake.needs):
            yield from quantity.needs
        if mistake is not None:
            yield from (parameter for parameter in mistake.needs if parameter != name)

    def _plan(self, seeds: frozenset[str], want: tuple[str, ...] | None, wrong: tuple[str, ...]) -> tuple[_Move, ...]:
        key = (seeds, want, wrong)
        if key not in self._plans:
            self._plans[key] = self._make_plan(seeds, want, wrong)
        return self._plans[key]

    def _make_plan(
        self, seeds: frozenset[str], want: tuple[str, ...] | None, wrong: tuple[str, ...]
    ) -> tuple[_Move, ...]:
        swap = self._swap(wrong)
        asked = want if want is not None else tuple(self.quantities)
        known = set(seeds)
        moves: list[_Move] = []
        for name in self.ancestors(asked, stop=seeds, wrong=wrong):
            if name in self.givens and name not in seeds:
                if want is not None:
                    raise UnknownNameError(f"{', '.join(want)} needs '{name}', which is not among the givens")
                continue
            quantity = self.quantities.get(name)
            fixed = quantity is not None and name in seeds
            mistake = None if fixed else swap.get(name)
            here: list[_Move] = []
            if quantity is not None and not fixed and (mistake is None or name in mistake.needs):
                here.append(_Move(name, quantity.needs, quantity.function))
            if mistake is not None:
                here.append(_Move(name, mistake.needs, mistake.function))
            if all(parameter in known or parameter == name for move in here for parameter in move.needs):
                moves += here
                known.add(name)
        return tuple(moves)

    # -------------------------------------------------------------------------------------------- values

    def evaluate(
        self, seeds: Mapping[str, float], want: Iterable[str] | None = None, wrong: Sequence[str] = ()
    ) -> dict[str, float]:
        """Work out quantities from what is given.

        Args:
            seeds: givens, and quantities that are already fixed (a learner's earlier answers: error carried forward).
            want: the quantities to work out; None works out everything that the seeds reach.
            wrong: misconceptions that stand in the place of what they distort. Their results may leave the ranges.

        Returns:
            The seeds and the values, in the order of working out.

        Raises:
            OutOfRangeError: a seed or a right result outside its range, or a result that is not finite.
            UnknownNameError: an unknown name, or a wanted quantity that the seeds do not reach.
        """
        for name, value in seeds.items():
            self.refuse_outside(name, value)
        return self.work_out(seeds, want, wrong, check=not wrong)

    def work_out(
        self, seeds: Mapping[str, float], want: Iterable[str] | None = None, wrong: Sequence[str] = (), *, check: bool
    ) -> dict[str, float]:
        """As `evaluate`, for seeds that are known to be in range or that may leave it (a learner's own numbers).

        Args:
            seeds: finite numbers.
            want: as in `evaluate`.
            wrong: as in `evaluate`.
            check: whether a result outside its range is refused.
        """
        plan = self._plan(frozenset(seeds), None if want is None else tuple(want), tuple(wrong))
        values = dict(seeds)
        for move in plan:
            arguments = [values[parameter] for parameter in move.needs]
            try:
                result = move.function(*arguments)
                finite = math.isfinite(result)
            except (ArithmeticError, ValueError, TypeError) as error:  # TypeError: a negative number's root is complex
                shown = ", ".join(f"{n}={v:.6g}" for n, v in zip(move.needs, arguments, strict=True))
                raise OutOfRangeError(f"{move.name}: {error} with {shown}") from error
            if check:
                self.refuse_outside(move.name, result)
            elif not finite:
                raise OutOfRangeError(f"{move.name} is not finite")
            values[move.name] = result
        return values

    def arrays(
        self, seeds: Mapping[str, Array | float], want: Iterable[str], wrong: Sequence[str] = ()
    ) -> dict[str, Array]:
        """Work out quantities over numpy arrays.

        Args:
            seeds: numbers or arrays of one shape; ranges are not checked.
            want: the quantities to work out.
            wrong: as in `evaluate`.

        Returns:
            Seeds and values; a run that divides by zero holds inf or nan there.
        """
        plan = self._plan(frozenset(seeds), tuple(want), tuple(wrong))
        values: dict[str, Any] = dict(seeds)
        with np.errstate(all="ignore"):
            for move in plan:
                values[move.name] = numpy_form(move.function)(*(values[parameter] for parameter in move.needs))
        return values

    # ------------------------------------------------------------------------------------ worked solution

    def trace(self, asked: str, seeds: Mapping[str, float], earlier: Iterable[str] = ()) -> tuple[Step, ...]:
        """The worked solution: one line for each quantity (and local name) between the seeds and what is asked.

        Args:
            asked: a quantity.
            seeds: as in `evaluate`.
            earlier: seeds that are results of earlier work and not givens: they are shown with guard digits.

        Raises:
            OutOfRangeError: as `evaluate`.
            UnknownNameError: as `evaluate`.
        """
        values = self.evaluate(seeds, [asked])
        given = seeds.keys() - set(earlier)
        steps: list[Step] = []
        for name in values:
            if name not in seeds:
                steps += self._steps(self.quantities[name], values, given, last=name == asked)
        return tuple(steps)

    def short_trace(
        self, asked: str, values: Mapping[str, float], most: int
    ) -> tuple[Mapping[str, float], tuple[Step, ...]]:
        """The end of a worked solution: at most so many steps, from numbers that were worked out before.

        It always has the step that gives what is asked, and goes back as far as it stays short.

        Args:
            asked: a quantity.
            values: what it rests on, quantities too.
            most: steps; a name inside a quantity counts as one.

        Returns:
            The numbers from which it begins, and the steps.

        Raises:
            OutOfRangeError: as `evaluate`.
        """
        before = frozenset(need for need in self.quantities[asked].needs if need in self.quantities)
        while before:
            deeper = frozenset(
                need for name in before for need in self.quantities[name].needs if need in self.quantities
            )
            if self._length(asked, deeper) > most:
                break
            before = deeper
        seeds = {name: values[name] for name in self.needs(asked, before)}
        return seeds, self.trace(asked, seeds, before)

    def _length(self, asked: str, before: frozenset[str]) -> int:
        """Steps of a worked solution that begins at these quantities."""
        names = [name for name in self.ancestors([asked], stop=before - {asked}) if name not in before]
        worked = [self.quantities[name] for name in names if name in self.quantities]
        return sum(1 + len(parse(quantity.function).locals) for quantity in worked)

    def _steps(self, quantity: Quantity, values: Mapping[str, float], given: Set[str], *, last: bool) -> Iterator[Step]:
        formula = parse(quantity.function)
        scope: dict[str, float] = {}

        def symbol(variable: Variable) -> str:
            return variable.name if variable.local else self.entry(variable.name).symbol

        def number(variable: Variable) -> str:
            if variable.local:
                return guarded(scope[variable.name], quantity.places)
            return self.shown_in_line(variable.name, values[variable.name], given=variable.name in given)

        for local, expression in formula.locals:
            scope[local] = plain.value_of(expression, {**values, **scope})
            text = guarded(scope[local], quantity.places)
            yield Step(
                local, local, plain.text(expression, symbol), plain.text(expression, number), scope[local], text, ""
            )
        value = values[quantity.name]
        shown = show(value, quantity.places) if last else self.shown_in_line(quantity.name, value, given=False)
        yield Step(
            quantity.name,
            quantity.symbol,
            plain.text(formula.result, symbol),
            plain.text(formula.result, number),
            value,
            shown,
            quantity.unit,
        )

    def shown_in_line(self, name: str, value: float, *, given: bool) -> str:
        """A value inside a worked line: a given as it was given, a count whole, the rest with guard digits."""
        if given:
            return show_full(value)
        places = self.quantities[name].places
        return guarded(value, places) if places else show(value, 0)

    # ---------------------------------------------------------------------------------------- the page

    def javascript(self, names: Iterable[str], *, word: plain.Word = plain.english) -> str:
        """The script that loads quantities into the page; see `javascript.javascript`.

        Args:
            names: the quantities that the page asks for; what they need and the misconceptions about them come along.
            word: gives a formula's few words and inner names (`plain.Word`) in the page's language.
        """
        return javascript(self, names, word=word)
