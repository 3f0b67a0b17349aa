"""Marking linked parts with errors carried forward; `marker.js` is the twin."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from generator.exercises.items import NumberItem, ScenarioItem
from generator.exercises.mark import Mark, Verdict
from generator.exercises.marking import fitting, is_right, two_readings, unread
from generator.exercises.numbers import Ask, Blank, Parsed, parse_number
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
    read = {part.id: parse_number(answers.get(part.id, ""), part.unit) for part in item.parts}
    own = {part.asks: found.value for part in item.parts if isinstance(found := read[part.id], Parsed)}
    return tuple(_mark_part(item, part, read[part.id], own, book) for part in item.parts)


def _mark_part(
    item: ScenarioItem, part: NumberItem, read: Parsed | Ask | Blank, own: Mapping[str, float], book: Book
) -> Mark:
    if not isinstance(read, Parsed):
        return unread(part, read)
    value = read.value
    if is_right(part, value):
        return Mark(part.id, part.competency, Verdict.RIGHT, value)
    seeds = {**item.givens, **{name: number for name, number in own.items() if name != part.asks}}
    carried = worked_from(book, part.asks, seeds)
    if carried is not None and part.tolerance.fits(value, carried):
        return Mark(part.id, part.competency, Verdict.RIGHT_FROM_EARLIER, value)
    ask = two_readings(part, read)
    if ask is not None:
        return unread(part, ask)
    here = {name: worked_from(book, part.asks, seeds, [name]) for name in part.wrong}
    found = fitting({n: v for n, v in here.items() if v is not None}, part.tolerance, value)
    found = found or fitting(part.wrong, part.tolerance, value)
    return Mark(part.id, part.competency, Verdict.NOT_YET, value, found)


def worked_from(book: Book, asks: str, seeds: Mapping[str, float], wrong: Sequence[str] = ()) -> float | None:
    """What follows from these numbers, which may be a learner's own and out of range; None where nothing does."""
    try:
        return float(book.work_out(seeds, [asks], wrong, check=False)[asks])
    except (OutOfRangeError, UnknownNameError, TypeError):  # TypeError: a root of a negative number of theirs
        return None
