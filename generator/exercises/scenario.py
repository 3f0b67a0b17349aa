"""Marking linked parts with errors carried forward, also the steps of one question; `marker.js` is the twin."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from generator.exercises.items import NumberItem, ScenarioItem
from generator.exercises.mark import Mark, Verdict
from generator.exercises.marking import fitting, is_right, read_answer, slip_of, two_readings, unread
from generator.exercises.numbers import Ask, Blank, Parsed
from generator.exercises.rounding import ruled
from generator.formula import Book, OutOfRangeError, UnknownNameError


def mark_scenario(item: ScenarioItem, answers: Mapping[str, str], book: Book) -> tuple[Mark, ...]:
    """Mark all parts of a scenario. Never raises, whatever is typed.

    A part is right if it is the right answer; right from an earlier number if it follows, by the right way, from the
    learner's own answers to the other parts. A mistake is looked for in the part itself, with the learner's numbers,
    and only then in the whole way from the givens: so one slip is not counted again at every later part.

    Args:
        item: the scenario.
        answers: typed texts by part id; a missing one counts as blank.
        book: where the quantities live.
    """
    return mark_linked(item.parts, item.givens, answers, book)


def mark_steps(item: NumberItem, answers: Mapping[str, str], book: Book) -> Mark:
    """Mark a question with credit for its steps. Never raises, whatever is typed.

    Args:
        item: the question.
        answers: typed texts by the id of the step, and of the question itself; a missing one counts as blank.
        book: where the quantities live.

    Returns:
        The mark of the answer with what its steps earn. A right answer earns all, whether steps are written or not.
    """
    *steps, last = mark_linked([*item.steps, item], item.givens, answers, book)
    earned = sum(mark.verdict.counts for mark in steps)
    return replace(last, step_points=earned, step_most=len(item.steps))


def mark_linked(
    parts: Sequence[NumberItem], givens: Mapping[str, float], answers: Mapping[str, str], book: Book
) -> tuple[Mark, ...]:
    """Mark parts that feed each other; see `mark_scenario`."""
    read = {part.id: read_answer(part, answers.get(part.id, "")) for part in parts}
    own = {part.asks: found.value for part in parts if isinstance(found := read[part.id], Parsed)}
    return tuple(_mark_part(part, givens, read[part.id], own, book) for part in parts)


def _mark_part(
    part: NumberItem, givens: Mapping[str, float], read: Parsed | Ask | Blank, own: Mapping[str, float], book: Book
) -> Mark:
    if not isinstance(read, Parsed):
        return unread(part, read)
    value = read.value
    if is_right(part, value):
        return Mark(part.id, part.competency, Verdict.RIGHT, value)
    seeds = {**givens, **{name: number for name, number in own.items() if name != part.asks}}
    carried = _answered(part, worked_from(book, part.asks, seeds))
    if carried is not None and part.tolerance.fits(value, carried):
        return Mark(part.id, part.competency, Verdict.RIGHT_FROM_EARLIER, value)
    ask = two_readings(part, read)
    if ask is not None:
        return unread(part, ask)
    names = [*part.wrong, *part.also]
    here = {name: _answered(part, worked_from(book, part.asks, seeds, [name])) for name in names}
    found = fitting({n: v for n, v in here.items() if v is not None}, part.tolerance, value)
    found = found or fitting({**part.wrong, **part.also}, part.tolerance, value)
    return Mark(part.id, part.competency, Verdict.NOT_YET, value, found, slip=slip_of(part, value))


def _answered(part: NumberItem, value: float | None) -> float | None:
    """A value in the form that the part asks for."""
    return None if value is None else ruled(value, part.rule, part.grain)


def worked_from(book: Book, asks: str, seeds: Mapping[str, float], wrong: Sequence[str] = ()) -> float | None:
    """What follows from these numbers, which may be a learner's own and out of range; None where nothing does."""
    try:
        return float(book.work_out(seeds, [asks], wrong, check=False)[asks])
    except (OutOfRangeError, UnknownNameError, TypeError):  # TypeError: a root of a negative number of theirs
        return None
