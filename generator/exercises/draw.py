"""What a number question may draw, and whether a drawn candidate makes a fair question."""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal
from functools import lru_cache

import numpy as np

from generator.curriculum.models import (
    GivenRange,
    NumberQuestion,
    OneOf,
    SpokenNumberQuestion,
    Steps,
    WorkedQuestion,
)
from generator.exercises.demand import counted, demand
from generator.exercises.rounding import Rule, grain_fault, ruled
from generator.exercises.tolerance import Tolerance, is_count, tolerance_of
from generator.exercises.units import BY_NAME
from generator.formula import Array, Book, Stream

LARGEST_TABLE = 20_000
"""Combinations up to which a question is worked out once for all of them."""
_MOST_CHOICES = 10_000
_MOST_JUDGED = 20_000
_SAMPLE = 20_000
"""Candidates whose demand is counted where there are too many to count all."""
_HAIR = 1e-9
Whole = np.ndarray[tuple[int, ...], np.dtype[np.int64]]
Columns = list[Whole]
Truth = np.ndarray[tuple[int, ...], np.dtype[np.bool_]]


class NoVariantError(ValueError):
    """A question that gives no fair numbers; the message says which rule turned the candidates away."""


@dataclass(frozen=True, slots=True)
class Parameter:
    """One given of a question and the numbers that it may take, in order."""

    name: str
    choices: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Recipe:
    """All that drawing and checking a question needs, in a form that can be kept and looked up.

    Args:
        book: where its quantities live.
        id: the question's id.
        asks: the quantity asked for.
        parameters: in the order of the question's file.
        tolerance: of the answer.
        misconceptions: those that the question is aimed at.
        also: the book's other misconceptions on the way: not told apart by the numbers, but named where they fit.
        rule: how the answer has to be rounded.
        grain: to which multiple, in the unit of the answer.
        credit: quantities on the way that earn a point each.
    """

    book: Book
    id: str
    asks: str
    parameters: tuple[Parameter, ...]
    tolerance: Tolerance
    misconceptions: tuple[str, ...]
    also: tuple[str, ...] = ()
    rule: Rule = ""
    grain: float = 0.0
    credit: tuple[str, ...] = ()

    @property
    def combinations(self) -> int:
        """How many different sets of givens there are."""
        return math.prod(len(parameter.choices) for parameter in self.parameters)

    @property
    def tabled(self) -> bool:
        """Whether there are so few that all of them are worked out once."""
        return self.combinations <= LARGEST_TABLE


@dataclass(frozen=True, slots=True)
class Assessed:
    """Candidates worked out and judged, all arrays of one length.

    Args:
        key: the right answer.
        rounded: the answer of someone who writes every step down at its printed places and goes on with that.
        wrong: the answer by each misconception.
        in_range: every step lies in its range and everything is finite.
        agrees: for counts and rounded answers, whether `key` and `rounded` are the same.
        fair: in range, agreeing, and every two answers told apart.
        demand: code of how much rounding each asks for.
        kept: fair, and as hard as most of the fair ones.
    """

    key: Array
    rounded: Array
    wrong: Mapping[str, Array]
    in_range: Truth
    agrees: Truth
    fair: Truth
    demand: Array
    kept: Truth


def choices(given: GivenRange) -> tuple[float, ...]:
    """The numbers that a given may take, in order, as a person would write them.

    Example:
        >>> choices(Steps.model_validate({"from": 1.2, "to": 1.5, "step": 0.1}))
        (1.2, 1.3, 1.4, 1.5)

    Raises:
        ValueError: the range is empty or holds more than 10,000 numbers.
    """
    if isinstance(given, OneOf):
        return given.one_of
    if not isinstance(given, Steps):
        return (float(given),)
    start, stop, step = (Decimal(repr(float(x))) for x in (given.start, given.stop, given.step))
    count = int((stop - start) / step) + 1 if stop >= start else 0
    if not 1 <= count <= _MOST_CHOICES:
        raise ValueError(
            f"from {start} to {stop} in steps of {step} holds {count} numbers; 1 to {_MOST_CHOICES} are good"
        )
    return tuple(float(start + step * i) for i in range(count))


def recipe(question: WorkedQuestion, book: Book) -> Recipe:
    """The recipe of a question.

    Raises:
        ValueError: a tolerance, rounding, unit or range that can't be read, or an unknown quantity.
    """
    quantity = book.quantities.get(question.asks)
    if quantity is None:
        raise ValueError(f"'{question.asks}' is not a quantity that can be asked for")
    parameters = tuple(Parameter(name, choices(given)) for name, given in question.given.items())
    rule: Rule = ""
    grain = 0.0
    credit: tuple[str, ...] = ()
    if isinstance(question, NumberQuestion):
        tolerance = tolerance_of(question.answer, quantity)
        if question.rounding is not None:
            rule, grain = question.rounding.rule, question.rounding.to
            if fault := grain_fault(grain, quantity.places):
                raise ValueError(fault)
            tolerance = Tolerance(0.0, 0.0) if question.answer == "exact" else tolerance
        for unit in question.units:
            if unit not in BY_NAME or BY_NAME.get(quantity.unit, None) is None:
                raise ValueError(f"'{unit}' is not a unit to choose from here")
            if BY_NAME[unit].kind != BY_NAME[quantity.unit].kind:
                raise ValueError(f"'{unit}' is not a unit of the same kind as '{quantity.unit}'")
        between = steps_between(book, question.asks, question.given)[:-1]
        for name in question.credit:
            if name not in between:
                raise ValueError(f"'{name}' is not on the way to '{question.asks}'")
        credit = tuple(name for name in between if name in question.credit)
    elif isinstance(question, SpokenNumberQuestion):
        tolerance = tolerance_of(question.answer, quantity)
    else:  # options: what they print must differ
        tolerance = Tolerance(0.005, 0.0) if is_count(quantity) else tolerance_of("exact", quantity)
    also = touching(book, question.asks, question.given, question.misconceptions)
    aims = question.misconceptions
    return Recipe(book, question.id, question.asks, parameters, tolerance, aims, also, rule, grain, credit)


def touching(book: Book, asks: str, givens: Collection[str], aims: Collection[str]) -> tuple[str, ...]:
    """The misconceptions that change the way to an answer and need nothing that is not given, in the book's order.

    Args:
        book: where they live.
        asks: the quantity asked for.
        givens: names whose values are there.
        aims: misconceptions that are left out.
    """
    way = frozenset(book.ancestors([asks], stop=givens))
    found = []
    for name, mistake in book.misconceptions.items():
        fixed = mistake.of in givens and mistake.of in book.quantities
        if name in aims or fixed or mistake.of not in way:
            continue
        needs = book.ancestors([asks], stop=givens, wrong=[name])
        if all(need in givens or need in book.quantities for need in needs):
            found.append(name)
    return tuple(found)


def steps_between(book: Book, asks: str, givens: Mapping[str, object]) -> tuple[str, ...]:
    """The quantities worked out on the way from the givens to what is asked, in order, that one last."""
    return tuple(n for n in book.ancestors([asks], stop=givens) if n in book.quantities and n not in givens)


def draw_columns(stream: Stream, recipe: Recipe, count: int) -> Columns:
    """Positions of the drawn choices, one array a parameter: what `stream.below` gives, candidate after candidate."""
    sizes = [len(parameter.choices) for parameter in recipe.parameters]
    words = np.frombuffer(stream.words(count * len(sizes)), dtype=">u4").astype(np.uint32)
    limits = [(1 << 32) - (1 << 32) % size for size in sizes]
    if int(words.max(initial=0)) >= min(limits):
        words = _without_refused(stream, words, limits)
    table = words.reshape(count, len(sizes))
    return [(table[:, i] % np.uint32(size)).astype(np.int64) for i, size in enumerate(sizes)]


def _without_refused(
    stream: Stream, words: np.ndarray[tuple[int, ...], np.dtype[np.uint32]], limits: list[int]
) -> np.ndarray[tuple[int, ...], np.dtype[np.uint32]]:
    """Drop every word past its parameter's limit, as `below` does; all later words move up by one place."""
    ceilings = np.asarray(limits, dtype=np.uint64)
    while True:
        places = np.arange(len(words)) % len(limits)
        refused = np.flatnonzero(words >= ceilings[places])
        if not len(refused):
            return words
        words = np.append(np.delete(words, refused[0]), np.uint32(stream.uint32()))


def half_up(values: Array, places: int) -> Array:
    """`show` over arrays, as numbers."""
    scale = math.pow(10, places)
    return np.asarray(np.sign(values) * np.floor(np.abs(values) * scale + 0.5 + _HAIR) / scale)


def assess(recipe: Recipe, givens: Mapping[str, Array], wanted: float | None = None) -> Assessed:
    """Work out candidates and judge them.

    Args:
        recipe: of the question.
        givens: one array a parameter.
        wanted: the demand that is kept; without one every fair candidate is.
    """
    book, tolerance, asks = recipe.book, recipe.tolerance, recipe.asks
    steps = steps_between(book, asks, givens)
    values = book.arrays(givens, [asks])
    shape = np.broadcast_shapes(*(np.shape(given) for given in givens.values()))
    in_range = np.ones(shape, dtype=bool)
    for name in (*givens, *steps):
        entry = book.entry(name)
        slack = _HAIR * max(abs(entry.low), abs(entry.high))
        in_range &= (values[name] >= entry.low - slack) & (values[name] <= entry.high + slack)
    counts = {name for name in steps if counted(book, name) and book.quantities[name].places == 0}
    with np.errstate(invalid="ignore"):
        shown = {
            name: values[name] if name in counts else half_up(values[name], book.quantities[name].places)
            for name in steps
        }
    key = np.broadcast_to(ruled(np.asarray(values[asks]), recipe.rule, recipe.grain), shape)
    rounded = key
    if len(steps) > 1:
        by_hand = np.asarray(_rounded(book, steps, givens, shown))
        rounded = np.broadcast_to(ruled(by_hand, recipe.rule, recipe.grain), shape)
    whole = recipe.grain if recipe.rule else 1.0 if is_count(book.quantities[asks]) else 0.0
    agrees = np.abs(rounded - key) < 0.5 * whole if whole else np.ones(shape, dtype=bool)
    wrong: dict[str, Array] = {}
    for name in recipe.misconceptions:
        mistaken = book.arrays(givens, [asks], [name])
        for step, value in mistaken.items():
            if step not in givens:
                in_range &= np.isfinite(value)
        with np.errstate(invalid="ignore"):
            answer = ruled(np.asarray(mistaken[asks]), recipe.rule, recipe.grain)
        wrong[name] = np.broadcast_to(answer, shape)
    fair = in_range & agrees
    rights = [key] if rounded is key else [key, rounded]
    found = list(wrong.values())
    for i, mistake in enumerate(found):
        for other in [*rights, *found[:i]]:
            fair &= apart(tolerance, mistake, other)
    hard = np.broadcast_to(demand(book, steps, values, shown), shape)
    kept = fair if wanted is None else fair & (hard == wanted)
    return Assessed(key, rounded, wrong, in_range, agrees, fair, hard, kept)


def most_common(assessed: Assessed) -> float:
    """The demand of most fair candidates, the least of several; -1 where none is fair."""
    codes, counts = np.unique(assessed.demand[assessed.fair], return_counts=True)
    return float(codes[np.argmax(counts)]) if len(codes) else -1.0


@lru_cache(maxsize=128)
def wanted_demand(recipe: Recipe) -> float:
    """The demand that all variants of a question have: the one of most of its fair candidates."""
    if recipe.combinations <= _MOST_JUDGED:
        columns = _all_columns(recipe)
    else:
        columns = draw_columns(Stream(f"demand|{recipe.id}"), recipe, _SAMPLE)
    return most_common(assess(recipe, at(recipe, columns)))


def apart(tolerance: Tolerance, one: Array, other: Array) -> Truth:
    """`Tolerance.tells_apart` over arrays."""
    with np.errstate(invalid="ignore"):
        difference = np.abs(one - other)
        if tolerance.relative == 0:
            if tolerance.absolute == 0:
                return np.asarray(difference > 2 * _HAIR * np.maximum(np.abs(one), np.abs(other)))
            size = np.maximum(np.abs(one), np.abs(other))
            return np.asarray(difference > 2 * tolerance.absolute * (1 + _HAIR) + 2 * _HAIR * size)
        size = np.maximum(np.abs(one), np.abs(other))
        return np.asarray(
            difference > 2 * np.maximum(tolerance.absolute, tolerance.relative * size) * (1 + _HAIR) + 2 * _HAIR * size
        )


def _rounded(book: Book, steps: tuple[str, ...], givens: Mapping[str, Array], shown: Mapping[str, Array]) -> Array:
    """The answer with every earlier step rounded to its printed places; `shown` holds what needs no second look."""
    values: dict[str, Array | float] = dict(givens)
    for name in steps[:-1]:
        if all(need in givens for need in book.quantities[name].needs):
            values[name] = shown[name]  # its own needs were never rounded
            continue
        values[name] = half_up(book.arrays(values, [name])[name], book.quantities[name].places)
    return book.arrays(values, [steps[-1]])[steps[-1]]


def at(recipe: Recipe, columns: Columns) -> dict[str, Array]:
    """The givens at drawn positions."""
    return {
        parameter.name: np.asarray(parameter.choices, dtype=float)[column]
        for parameter, column in zip(recipe.parameters, columns, strict=True)
    }


def _all_columns(recipe: Recipe) -> Columns:
    """Every combination; the last parameter changes fastest."""
    sizes = [len(parameter.choices) for parameter in recipe.parameters]
    return [column.ravel() for column in np.indices(sizes, dtype=np.int64)]


@lru_cache(maxsize=128)
def table(recipe: Recipe) -> Assessed:
    """Every combination of a question, worked out once; for questions of at most `LARGEST_TABLE` combinations."""
    found = assess(recipe, at(recipe, _all_columns(recipe)))
    return replace(found, kept=found.fair & (found.demand == most_common(found)))


def judged(recipe: Recipe, columns: Columns) -> tuple[Assessed, Whole]:
    """Drawn candidates, judged: where they are held, and the row of each there."""
    if not recipe.tabled:
        return assess(recipe, at(recipe, columns), wanted_demand(recipe)), np.arange(len(columns[0]))
    rows = np.zeros(len(columns[0]), dtype=np.int64)
    for parameter, column in zip(recipe.parameters, columns, strict=True):
        rows *= len(parameter.choices)
        rows += column
    return table(recipe), rows
