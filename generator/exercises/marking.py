"""Marking answers to single questions. Nothing here raises, whatever is typed or chosen; `marker.js` is the twin."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from generator.exercises.items import ChoiceItem, MatchItem, NumberItem, OrderItem
from generator.exercises.mark import Mark, Verdict
from generator.exercises.numbers import Ask, AskReason, Blank, Parsed, parse_number
from generator.exercises.tolerance import Tolerance
from generator.formula import show_full


def mark_number(item: NumberItem, text: str) -> Mark:
    """Mark a typed number, and name every misconception that gives it."""
    read = parse_number(text, item.unit)
    if not isinstance(read, Parsed):
        return unread(item, read)
    if is_right(item, read.value):
        return Mark(item.id, item.competency, Verdict.RIGHT, read.value)
    ask = two_readings(item, read)
    if ask is not None:
        return unread(item, ask)
    return Mark(item.id, item.competency, Verdict.NOT_YET, read.value, fitting(item.wrong, item.tolerance, read.value))


def unread(item: NumberItem, read: Ask | Blank) -> Mark:
    """The mark of a text that is not read as one number."""
    if isinstance(read, Blank):
        return Mark(item.id, item.competency, Verdict.BLANK)
    return Mark(item.id, item.competency, Verdict.ASK_BACK, ask=read)


def is_right(item: NumberItem, value: float) -> bool:
    """Whether a number is the key, or what comes of rounding every step as printed."""
    return item.tolerance.fits(value, item.key) or item.tolerance.fits(value, item.rounded)


def two_readings(item: NumberItem, read: Parsed) -> Ask | None:
    """`1,500` is 1500; but where only 1.5 could be meant, or be right, we ask."""
    if read.other is None:
        return None
    absurd = not item.low <= read.value <= item.high and item.low <= read.other <= item.high
    if not absurd and not is_right(item, read.other):
        return None
    return Ask(AskReason.TWO_READINGS, show_full(read.value), show_full(read.other))


def fitting(wrong: Mapping[str, float], tolerance: Tolerance, value: float) -> tuple[str, ...]:
    """Every misconception whose answer this is, in the question's order."""
    return tuple(name for name, answer in wrong.items() if tolerance.fits(value, answer))


def mark_choice(item: ChoiceItem, chosen: Iterable[int]) -> Mark:
    """Mark chosen options.

    Args:
        item: the question.
        chosen: positions in `item.options`.
    """
    picked = sorted(set(chosen))
    if not picked:
        return Mark(item.id, item.competency, Verdict.BLANK)
    if picked[0] < 0 or picked[-1] >= len(item.options):
        return Mark(item.id, item.competency, Verdict.ASK_BACK, ask=Ask(AskReason.UNKNOWN_LETTER))
    if len(picked) > 1 and not item.several:
        return Mark(item.id, item.competency, Verdict.ASK_BACK, ask=Ask(AskReason.ONE_ONLY))
    if picked == sorted(item.right):
        return Mark(item.id, item.competency, Verdict.RIGHT)
    why = tuple(item.why[i] for i in picked if i not in item.right and item.why[i])
    return Mark(item.id, item.competency, Verdict.NOT_YET, why=why)


def mark_order(item: OrderItem, sequence: Sequence[int]) -> Mark:
    """Mark steps put in order.

    Args:
        item: the question.
        sequence: positions in `item.steps`, first step first.
    """
    if not sequence:
        return Mark(item.id, item.competency, Verdict.BLANK)
    if sorted(sequence) != list(range(len(item.steps))):
        return Mark(item.id, item.competency, Verdict.ASK_BACK, ask=Ask(AskReason.NOT_ALL))
    if all(item.steps[place] == item.steps[i] for i, place in enumerate(sequence)):
        return Mark(item.id, item.competency, Verdict.RIGHT)
    return Mark(item.id, item.competency, Verdict.NOT_YET, why=(item.why,))


def mark_match(item: MatchItem, partners: Sequence[int]) -> Mark:
    """Mark pairs.

    Args:
        item: the question.
        partners: for each left side the position in `item.right`; -1 where none was chosen.
    """
    if all(partner == -1 for partner in partners):
        return Mark(item.id, item.competency, Verdict.BLANK)
    if sorted(partners) != list(range(len(item.right))):
        return Mark(item.id, item.competency, Verdict.ASK_BACK, ask=Ask(AskReason.NOT_ALL))
    if all(item.right[partner] == item.right[i] for i, partner in enumerate(partners)):
        return Mark(item.id, item.competency, Verdict.RIGHT)
    return Mark(item.id, item.competency, Verdict.NOT_YET, why=(item.why,))
