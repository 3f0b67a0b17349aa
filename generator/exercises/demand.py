"""How much rounding a question's numbers demand: variants of one question ask for the same.

The steps of a worked solution and its changes of unit follow from the formulas alone, so they are the same in every
variant. What differs is the rounding: whether a step comes out even at its printed decimals, and whether a count comes
out whole or has to be rounded up. `marker.js` counts both in the same way.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, fields, is_dataclass
from functools import cache

import numpy as np

from generator.exercises.units import BY_NAME
from generator.formula import Array, Book, parse
from generator.formula.arrays import NUMPY_NAMES, recompiled
from generator.formula.tree import Call, Choice, Formula

EDGE = 1e-9
CROSSING = 64
"""One rounded count in a demand's code; a step that is rounded for print counts 1."""
_WHOLE = frozenset({"whole_up", "whole_down"})


def unit_changes(book: Book, steps: Sequence[str]) -> int:
    """How often the way to an answer goes from one unit to another of the same kind, as from mm to m.

    The same in all variants of a question, because it follows from the formulas.
    """
    changes = 0
    for name in steps:
        goal = BY_NAME.get(book.entry(name).unit)
        for need in book.quantities[name].needs:
            source = BY_NAME.get(book.entry(need).unit)
            changes += bool(goal and source and goal.kind == source.kind and goal.name != source.name)
    return changes


def counted(book: Book, name: str) -> bool:
    """Whether a quantity rounds to a whole number on every way through its formula."""
    formula = parse(book.quantities[name].function)
    return any(True for _ in _calls(formula, inside=False)) and not any(True for _ in _calls(formula, inside=True))


def _calls(formula: Formula, *, inside: bool) -> Iterator[Call]:
    """Calls that round to a whole number: those inside a choice, or those outside of any."""

    def walk(node: object, chosen: bool) -> Iterator[Call]:
        if isinstance(node, Call) and node.name in _WHOLE and chosen is inside:
            yield node
        if isinstance(node, tuple):
            for each in node:
                yield from walk(each, chosen)
        elif is_dataclass(node):
            for field in fields(node):
                yield from walk(getattr(node, field.name), chosen or isinstance(node, Choice))

    for _, expression in formula.locals:
        yield from walk(expression, chosen=False)
    yield from walk(formula.result, chosen=False)


@dataclass(frozen=True, slots=True)
class _Watched:
    """A formula over arrays that tells what it had to round to a whole number."""

    function: Callable[..., object]
    rounded: list[Array]


@cache
def _watched(function: Callable[..., float]) -> _Watched:
    seen: list[Array] = []

    def watching(name: str) -> Callable[[Array], Array]:
        rounding: Callable[[Array], Array] = NUMPY_NAMES[name]  # type: ignore[assignment]

        def watched(x: Array) -> Array:
            seen.append(x)
            return rounding(x)

        return watched

    names = {**NUMPY_NAMES, **{name: watching(name) for name in _WHOLE}}
    return _Watched(recompiled(function, names), seen)


def demand(book: Book, steps: Sequence[str], values: Mapping[str, Array], shown: Mapping[str, Array]) -> Array:
    """A code of how much each candidate has to round: the same code, the same demand.

    Args:
        book: where the quantities live.
        steps: quantities on the way to the answer, which is last.
        values: of the givens and steps, one array each.
        shown: the steps as print shows them.
    """
    code = np.zeros(np.shape(values[steps[-1]]))
    for name in steps:
        quantity = book.quantities[name]
        if counted(book, name):
            watched = _watched(quantity.function)
            watched.rounded.clear()
            watched.function(*(values[need] for need in quantity.needs))
            for x in watched.rounded:
                with np.errstate(invalid="ignore"):
                    code = code + CROSSING * (np.abs(x - np.rint(x)) > EDGE)
        with np.errstate(invalid="ignore"):
            size = np.maximum(1.0, np.abs(values[name]))
            code = code + (np.abs(shown[name] - values[name]) > EDGE * size)
    return code
