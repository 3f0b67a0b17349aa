"""Answers of every kind as they are copied from paper or typed: letters, numbers, pairs; `marker.js` is the twin."""

from __future__ import annotations

import re
from collections.abc import Mapping

from generator.exercises.items import ChoiceItem, MatchItem, NumberItem, OrderItem, QuestionItem, SpokenItem, SpotItem
from generator.exercises.mark import Mark, Verdict
from generator.exercises.marking import mark_choice, mark_match, mark_number, mark_order, mark_spot
from generator.exercises.numbers import LONGEST, Ask, AskReason, cleaned, is_blank
from generator.exercises.scenario import mark_steps
from generator.formula import Book

LETTERS = "ABCDEFGH"
"""What stands before the shown options of a question, in both languages."""

_BY_SIGN: dict[str, int] = {
    sign: place
    for signs in ("abcdefgh", "कखगघङचछज", "12345678")
    for place, sign in enumerate(signs)
}  # fmt: skip
_BETWEEN = re.compile(r"[ ,;./()&+>:=|-]+|and|और")
_PAIR = re.compile(r"([1-8]) ?[-=:>.)]{0,2} ?([a-hकखगघङचछज])")


def mark_typed(item: QuestionItem, text: str, book: Book | None = None) -> Mark:
    """Mark an answer of any kind as it was copied from paper. Never raises, whatever the text.

    Args:
        item: the question.
        text: anything; where steps earn points, they stand before the answer with a semicolon behind each.
        book: carries a learner's own steps forward; without it only the answer itself is marked.
    """
    if isinstance(item, SpokenItem):
        return mark_typed(item.answer, text, book)
    if isinstance(item, NumberItem):
        pieces = text.split(";") if item.steps else [text]
        if len(pieces) == 1 or book is None:
            return mark_number(item, pieces[-1])
        if len(pieces) != len(item.steps) + 1:
            steps = len(item.steps)
            return Mark(item.id, item.competency, Verdict.ASK_BACK, ask=Ask(AskReason.NOT_ALL), step_most=steps)
        parts = [part.id for part in (*item.steps, item)]
        return mark_steps(item, dict(zip(parts, pieces, strict=True)), book)
    if is_blank(text):
        return Mark(item.id, item.competency, Verdict.BLANK)
    line = cleaned(text) if len(text) <= 4 * LONGEST else ""
    if isinstance(item, MatchItem):
        partners = _partners(item, line)
        return _unknown(item) if partners is None else mark_match(item, partners)
    places = _places(line)
    if isinstance(item, SpotItem):
        # the letters of a figure need not be A, B, C ... in order
        letters = {_BY_SIGN.get(cleaned(area.letter), -1): i for i, area in enumerate(item.areas)}
        chosen = None if places is None else [letters.get(place, -1) for place in places]
        return _unknown(item) if chosen is None or -1 in chosen else mark_spot(item, chosen)
    if places is None or any(place >= len(item.order) for place in places):
        return _unknown(item)
    if isinstance(item, ChoiceItem):
        return mark_choice(item, [item.order[place] for place in places])
    return mark_order(item, [item.order[place] for place in places])


def _unknown(item: ChoiceItem | OrderItem | MatchItem | SpotItem) -> Mark:
    return Mark(item.id, item.competency, Verdict.ASK_BACK, ask=Ask(AskReason.UNKNOWN_LETTER))


def _places(line: str) -> list[int] | None:
    """Shown positions, in the order written; None where something else stands there."""
    signs = _BETWEEN.sub("", line)
    return [_BY_SIGN[sign] for sign in signs] if signs and all(sign in _BY_SIGN for sign in signs) else None


def _partners(item: MatchItem, line: str) -> list[int] | None:
    """`1C 2A 3B`, or the letters alone in the order of the numbers: for each left side a position on the right."""
    count = len(item.left)
    pairs = _PAIR.findall(line)
    if pairs and not _BETWEEN.sub("", _PAIR.sub("", line)):
        chosen: Mapping[int, int] = {int(left) - 1: _BY_SIGN[right] for left, right in pairs}
        if len(chosen) < len(pairs) or max(chosen) >= count:
            return None
        shown = [chosen.get(left, -1) for left in range(count)]
    else:
        places = _places(line)
        if places is None or len(places) > count:
            return None
        shown = places + [-1] * (count - len(places))
    if max(shown) >= count:
        return None
    return [-1 if place == -1 else item.order[place] for place in shown]
