"""Variants: the same question with other numbers, drawn from a seed, fair to mark and able to tell mistakes apart."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from generator.calculations import BOOK
from generator.curriculum.models import WorkedQuestion
from generator.exercises.demand import unit_changes
from generator.exercises.draw import (
    Assessed,
    Columns,
    NoVariantError,
    Recipe,
    Whole,
    apart,
    assess,
    at,
    draw_columns,
    judged,
    most_common,
    recipe,
    steps_between,
    table,
)
from generator.exercises.rounding import ruled
from generator.exercises.tolerance import Tolerance
from generator.formula import Array, Book, OutOfRangeError, Stream, show

MOST_TRIES = 200
"""Candidates that are drawn before a question is given up as unfair."""
_BLOCK = 100_000


@dataclass(frozen=True, slots=True)
class Variant:
    """One question with its numbers.

    Args:
        question_id: of the question.
        givens: by name, in the order of the question's file.
        key: the right answer, at full precision, in the quantity's unit.
        shown_key: the right answer as print shows it.
        rounded: the answer of someone who rounds every step as printed; as right as `key`.
        exact: the right answer before it is rounded as the question asks.
        wrong: the answer that each targeted misconception gives.
        also: what other misconceptions give here; only to name them, where a wrong answer fits.
        tolerance: how far off is still right.
    """

    question_id: str
    givens: Mapping[str, float]
    key: float
    shown_key: str
    rounded: float
    exact: float
    wrong: Mapping[str, float]
    also: Mapping[str, float]
    tolerance: Tolerance


@dataclass(frozen=True, slots=True)
class Variants:
    """Many variants as arrays of one length; `candidates` were drawn to find them."""

    givens: Mapping[str, Array]
    key: Array
    wrong: Mapping[str, Array]
    candidates: int


@dataclass(frozen=True, slots=True)
class Separability:
    """How well a question's numbers tell mistakes apart, as shares of all candidates.

    Args:
        question_id: of the question.
        combinations: different sets of givens.
        kept: share that makes a fair variant.
        out_of_range: share with a step outside its range, or a misconception without a value.
        rounding: share where rounding the steps changes a whole answer.
        uneven: share that would be fair, but asks for more or less rounding than most.
        steps: lines of the worked solution; the same in all variants.
        unit_changes: changes of unit on the way; the same in all variants.
        same_as_key: for each misconception, share where it gives the right answer.
        same: for each pair, share where both give the same answer.
    """

    question_id: str
    combinations: int
    kept: float
    out_of_range: float
    rounding: float
    uneven: float
    steps: int
    unit_changes: int
    same_as_key: Mapping[str, float]
    same: Mapping[tuple[str, str], float]


def seed_text(seed: str, question_id: str) -> str:
    """The text that a question's stream is made from; the same in the page."""
    return f"{seed}|{question_id}"


def variant(question: WorkedQuestion, seed: str, book: Book = BOOK) -> Variant:
    """The variant that a seed gives: the same on any machine, in Python and in the page.

    Raises:
        NoVariantError: no fair candidate among the first 200.
        ValueError: the question can't be read; `check` says where.
    """
    made = recipe(question, book)
    stream = Stream(seed_text(seed, question.id))
    for _ in range(MOST_TRIES):
        columns = [np.asarray([stream.below(len(parameter.choices))]) for parameter in made.parameters]
        found, rows = judged(made, columns)
        if not found.kept[rows[0]]:
            continue
        try:
            drawn = of_givens(made, {name: float(value[0]) for name, value in at(made, columns).items()})
        except OutOfRangeError:  # a division by zero that numpy hid behind a minimum
            continue
        if len(drawn.wrong) == len(made.misconceptions):
            return drawn
    raise NoVariantError(why_none(separability(question, book)))


def of_givens(made: Recipe, givens: Mapping[str, float]) -> Variant:
    """A variant with these givens; misconceptions that have no value here are left out.

    Raises:
        OutOfRangeError: a given or a step outside its range.
    """
    book, asks = made.book, made.asks
    exact = float(book.evaluate(givens, [asks])[asks])
    values = dict(givens)
    *before, _ = [name for name in book.evaluate(givens, [asks]) if name not in givens]
    for name in before:
        values[name] = float(show(book.work_out(values, [name], check=False)[name], book.quantities[name].places))
    rounded = float(book.work_out(values, [asks], check=False)[asks])
    key = ruled(exact, made.rule, made.grain)
    return Variant(
        question_id=made.id,
        givens=givens,
        key=key,
        shown_key=show(key, book.quantities[asks].places),
        rounded=ruled(rounded, made.rule, made.grain),
        exact=exact,
        wrong=_mistaken(made, givens, made.misconceptions),
        also=_mistaken(made, givens, made.also),
        tolerance=made.tolerance,
    )


def _mistaken(made: Recipe, givens: Mapping[str, float], names: Sequence[str]) -> dict[str, float]:
    """What misconceptions give, without those that give nothing here."""
    wrong: dict[str, float] = {}
    for name in names:
        try:
            value = float(made.book.work_out(givens, [made.asks], [name], check=False)[made.asks])
        except OutOfRangeError:
            continue
        wrong[name] = ruled(value, made.rule, made.grain)
    return wrong


def variants(question: WorkedQuestion, seed: str, count: int, book: Book = BOOK) -> Variants:
    """Many variants of one question, in the order of its stream: the first is the one that `variant` gives.

    Args:
        question: a number question.
        seed: any text.
        count: how many, 1 or more.
        book: where the quantities live.

    Raises:
        NoVariantError: fewer than one candidate in 200 is fair.
    """
    made = recipe(question, book)
    stream = Stream(seed_text(seed, question.id))
    parts: list[tuple[Columns, Assessed, Whole]] = []
    found = candidates = 0
    share = float(np.mean(table(made).kept)) if made.tabled else 1.0
    while found < count:
        size = max(MOST_TRIES, min(_BLOCK, int((count - found) / max(share, 1 / MOST_TRIES) * 1.01) + 8))
        columns = draw_columns(stream, made, size)
        held, rows = judged(made, columns)
        kept = np.flatnonzero(held.kept[rows])[: count - found]
        found, candidates = found + len(kept), candidates + size
        if found * MOST_TRIES < candidates:
            raise NoVariantError(why_none(separability(question, book)))
        share = found / candidates
        parts.append(([column[kept] for column in columns], held, rows[kept]))
    columns = [np.concatenate(column) for column in zip(*(part[0] for part in parts), strict=True)]
    key = np.concatenate([held.key[rows] for _, held, rows in parts])
    wrong = {n: np.concatenate([held.wrong[n][rows] for _, held, rows in parts]) for n in made.misconceptions}
    return Variants(at(made, columns), key, wrong, candidates)


def separability(question: WorkedQuestion, book: Book = BOOK) -> Separability:
    """How well a question's numbers tell mistakes apart, over all combinations or 100,000 drawn ones."""
    made = recipe(question, book)
    if made.tabled:
        held = table(made)
    else:
        held = assess(made, at(made, draw_columns(Stream(seed_text("separability", made.id)), made, _BLOCK)))
        held = replace(held, kept=held.fair & (held.demand == most_common(held)))
    names = made.misconceptions
    rights = [held.key] if held.rounded is held.key else [held.key, held.rounded]
    with_key = {
        n: float(np.mean(~np.all([apart(made.tolerance, held.wrong[n], right) for right in rights], axis=0)))
        for n in names
    }
    pairs = {
        (one, other): float(np.mean(~apart(made.tolerance, held.wrong[one], held.wrong[other])))
        for i, one in enumerate(names)
        for other in names[i + 1 :]
    }
    return Separability(
        made.id,
        made.combinations,
        float(np.mean(held.kept)),
        float(np.mean(~held.in_range)),
        float(np.mean(~held.agrees)),
        float(np.mean(held.fair & ~held.kept)),
        len(steps_between(book, made.asks, question.given)),
        unit_changes(book, steps_between(book, made.asks, question.given)),
        with_key,
        pairs,
    )


def why_none(row: Separability) -> str:
    """Why a question has no or too few fair variants, worst reason first."""
    reasons = [
        (
            row.out_of_range,
            f"{row.out_of_range:.0%} of the numbers lead outside a range, or a misconception has no value",
        ),
        (row.rounding, f"{row.rounding:.0%} change a whole answer when the steps are rounded"),
        (row.uneven, f"{row.uneven:.0%} ask for more or less rounding than most"),
        *((share, f"'{name}' gives the right answer in {share:.0%}") for name, share in row.same_as_key.items()),
        *((share, f"'{a}' and '{b}' give the same answer in {share:.0%}") for (a, b), share in row.same.items()),
    ]
    worst = [text for share, text in sorted(reasons, key=lambda reason: -reason[0]) if share > 0]
    return f"{row.kept:.0%} of the numbers make a fair question: " + "; ".join(worst[:4])
