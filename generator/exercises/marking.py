"""Marking answers to single questions. Nothing here raises, whatever is typed or chosen; `marker.js` is the twin."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from generator.exercises.items import ChoiceItem, MatchItem, NumberItem, OrderItem, SpotItem
from generator.exercises.mark import Mark, Slip, Verdict
from generator.exercises.numbers import Ask, AskReason, Blank, Parsed, parse_number
from generator.exercises.tolerance import Tolerance
from generator.formula import show_full

_HAIR = 1e-9
_EVEN = 1e-6
"""How near to a whole multiple a typed number is one."""


def mark_number(item: NumberItem, text: str) -> Mark:
    """Mark a typed number, and name every misconception that gives it."""
    read = read_answer(item, text)
    if not isinstance(read, Parsed):
        return unread(item, read)
    if is_right(item, read.value):
        return _counted(item, Mark(item.id, item.competency, Verdict.RIGHT, read.value))
    ask = two_readings(item, read)
    if ask is not None:
        return unread(item, ask)
    found = (*fitting(item.wrong, item.tolerance, read.value), *fitting(item.also, item.tolerance, read.value))
    mark = Mark(item.id, item.competency, Verdict.NOT_YET, read.value, found, slip=slip_of(item, read.value))
    return _counted(item, mark)


def read_answer(item: NumberItem, text: str) -> Parsed | Ask | Blank:
    """A typed number, with its unit where the unit is part of the answer."""
    read = parse_number(text, item.unit)
    if item.units and isinstance(read, Parsed) and read.unit is None:
        return Ask(AskReason.UNIT_MISSING)
    return read


def unread(item: NumberItem, read: Ask | Blank) -> Mark:
    """The mark of a text that is not read as one number."""
    if isinstance(read, Blank):
        return _counted(item, Mark(item.id, item.competency, Verdict.BLANK))
    return _counted(item, Mark(item.id, item.competency, Verdict.ASK_BACK, ask=read))


def _counted(item: NumberItem, mark: Mark) -> Mark:
    return replace(mark, step_most=len(item.steps)) if item.steps else mark


def is_right(item: NumberItem, value: float) -> bool:
    """Whether a number is the key, or what comes of rounding every step as printed."""
    return item.tolerance.fits(value, item.key) or item.tolerance.fits(value, item.rounded)


def slip_of(item: NumberItem, value: float) -> Slip:
    """Whether a wrong number is the right one that was left unrounded, or rounded to something else."""
    if not item.rule or item.exact is None:
        return Slip.NONE
    if abs(value - item.exact) >= item.grain * (1 + _HAIR):
        return Slip.NONE
    parts = value / item.grain
    return Slip.OTHER_ROUNDING if abs(parts - round(parts)) < _EVEN else Slip.NOT_ROUNDED


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
    if fault := _unfit(picked, len(item.options), several=item.several):
        return _told(item, fault)
    if picked == sorted(item.right):
        return Mark(item.id, item.competency, Verdict.RIGHT)
    wrong = [i for i in picked if i not in item.right]
    named = tuple(item.mistakes[i] for i in wrong if i < len(item.mistakes) and item.mistakes[i])
    why = tuple(item.why[i] for i in wrong if item.why[i])
    return Mark(item.id, item.competency, Verdict.NOT_YET, misconceptions=named, why=why)


def mark_spot(item: SpotItem, chosen: Iterable[int]) -> Mark:
    """Mark the areas of a drawing that were pointed at.

    Args:
        item: the question.
        chosen: positions in `item.areas`.
    """
    picked = sorted(set(chosen))
    if fault := _unfit(picked, len(item.areas), several=item.several):
        return _told(item, fault)
    if picked == sorted(item.right):
        return Mark(item.id, item.competency, Verdict.RIGHT)
    why = tuple(item.why[i] for i in picked if i not in item.right and item.why[i])
    return Mark(item.id, item.competency, Verdict.NOT_YET, why=why)


def _unfit(picked: Sequence[int], count: int, *, several: bool) -> Ask | Blank | None:
    """Why sorted positions are no answer to a question with so many options."""
    if not picked:
        return Blank()
    if picked[0] < 0 or picked[-1] >= count:
        return Ask(AskReason.UNKNOWN_LETTER)
    return Ask(AskReason.ONE_ONLY) if len(picked) > 1 and not several else None


def _told(item: ChoiceItem | SpotItem, fault: Ask | Blank) -> Mark:
    if isinstance(fault, Blank):
        return Mark(item.id, item.competency, Verdict.BLANK)
    return Mark(item.id, item.competency, Verdict.ASK_BACK, ask=fault)


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
