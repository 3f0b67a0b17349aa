"""The marking key of a paper: of what the archive holds, only what marking needs.

It is so short that a hundred thousand papers with numbers of their own are marked without reading their questions. It
is worked out of the paper's content when that is archived, and stands beside it; `audit` works it out again. A question
that hangs together with others, or has steps that earn points, is left to the content.
"""

from __future__ import annotations

import json
import re
import struct
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from itertools import combinations
from typing import Any, TypeAlias

import numpy as np
import numpy.typing as npt
from pydantic import TypeAdapter, ValidationError

from generator.exercises import (
    ChoiceItem,
    Item,
    Mark,
    MatchItem,
    NumberItem,
    OrderItem,
    SpokenItem,
    SpotItem,
    Verdict,
    mark_typed,
)
from generator.exercises.letters import LETTERS
from generator.exercises.tolerance import HAIR

EDITION = 1
"""Of what these bytes mean; a key of another edition is worked out anew from the content."""

Outcome: TypeAlias = tuple[str, int, int, str]
"""Verdict, points, most, misconceptions with spaces between."""

_HEAD = struct.Struct("<HHI")
_COLUMNS = 5
"""Of a question: key, rounded, absolute, relative, and how it is marked: one of the three that follow."""
PLAIN, OTHER, LEFT = 1.0, 0.0, 2.0
"""A plain number is held against the key; any other way; left to the content."""
_ITEM: TypeAdapter[Item] = TypeAdapter(Item)
_PICKED = re.compile(r"[A-Ha-h](?:[ ,]?[A-Ha-h]){0,7}")
_UNCLEAR: Outcome = (str(Verdict.ASK_BACK), 0, 1, "")
_EMPTY: Outcome = (str(Verdict.BLANK), 0, 1, "")


@dataclass(frozen=True, slots=True)
class Question:
    """What is alike in all papers that ask a question, whatever its numbers.

    Args:
        alias: what else may stand in the column `question`.
        item: id that the mark has.
        competency: of the mark.
        way: `number`, `picked`, `sequence`; `content` and `linked` where only the content can mark it.
        ideas: misconceptions, in the order of their values.
        unit: of a number.
        units: those to choose from.
        low: least value of a number.
        high: largest.
        outcomes: of `picked`, by the sorted letters; of `sequence`, of the one right sequence.
        count: letters of a sequence.
    """

    alias: str
    item: str
    competency: str
    way: str
    ideas: tuple[str, ...] = ()
    unit: str = ""
    units: tuple[str, ...] = ()
    low: float = 0.0
    high: float = 0.0
    outcomes: Mapping[str, Outcome] | None = None
    count: int = 0

    def outcome(self, answer: str, numbers: Sequence[float], values: Sequence[float]) -> Outcome | None:
        """The mark of any answer; None where only the content can tell.

        Args:
            answer: as it was typed.
            numbers: the paper's own row of the question.
            values: what each misconception gives.
        """
        if self.way in ("content", "linked"):
            return None
        if not answer:
            return _EMPTY
        if self.way == "number":
            return outcome_of(mark_typed(self._number(numbers, values), answer))
        if self.outcomes is None or not _PICKED.fullmatch(answer):
            return None
        letters = answer.replace(" ", "").replace(",", "").upper()
        if self.way == "picked":
            return self.outcomes.get("".join(sorted(set(letters))), _UNCLEAR)
        if len(letters) != self.count or sorted(letters) != list(LETTERS[: self.count]):
            return None
        return self.outcomes.get(letters, (str(Verdict.NOT_YET), 0, 1, ""))

    def _number(self, numbers: Sequence[float], values: Sequence[float]) -> NumberItem:
        key, rounded, absolute, relative = numbers[:4]
        return NumberItem.model_construct(
            id=self.item, competency=self.competency, text="", asks="", unit=self.unit, units=self.units, places=0,
            low=self.low, high=self.high, givens={}, key=key, shown_key="", rounded=rounded, absolute=absolute,
            relative=relative, wrong=dict(zip(self.ideas, values, strict=True)),
        )  # fmt: skip


class Shape:
    """The questions of a paper in the order of their printed numbers, with what marking asks of all of them at once."""

    def __init__(self, questions: tuple[Question, ...]) -> None:
        self.questions = questions
        self.items = [question.item for question in questions]
        self.competencies = [question.competency for question in questions]
        self.starts = [f"\n{n}\x1f{q.item}\x1f{q.competency}\x1f" for n, q in enumerate(questions, 1)]
        """How the line of each answer begins, for the digest of a batch."""
        self.ideas = tuple(name for question in questions for name in question.ideas)
        self.linked = any(question.way == "linked" for question in questions)
        """Whether some questions hang together."""

    @cached_property
    def labels(self) -> Mapping[str, int]:
        """What may stand in the column `question`, and the printed number that it means."""
        found: dict[str, int] = {}
        for number, question in enumerate(self.questions, 1):
            found[str(number)] = number
            found[question.alias] = number
        return found


@dataclass(frozen=True, slots=True)
class MarkingKey:
    """The key of one paper.

    Args:
        shape: its questions.
        numbers: the bytes of `_COLUMNS` numbers for each question.
        values: the bytes of two numbers for each misconception: place of its question, and what it gives.
    """

    shape: Shape
    numbers: bytes
    values: bytes

    @property
    def labels(self) -> Mapping[str, int]:
        """What may stand in the column `question`, and the printed number that it means."""
        return self.shape.labels

    def outcome(self, label: int, answer: str) -> Outcome | None:
        """The mark of any answer to a question; None where only the content can tell."""
        question = self.shape.questions[label - 1]
        if question.way != "number":
            return question.outcome(answer, (), ())
        return question.outcome(answer, self.row(label), self.values_of(label))

    def row(self, label: int) -> Sequence[float]:
        """The paper's own numbers of a question."""
        size = 8 * _COLUMNS
        return struct.unpack_from(f"<{_COLUMNS}d", self.numbers, (label - 1) * size)

    def values_of(self, label: int) -> list[float]:
        """What each misconception of a question gives, in its order."""
        pairs = np.frombuffer(self.values, "<f8").reshape(-1, 2)
        return [float(value) for place, value in pairs if place == label - 1]


def packed(content: Mapping[str, Any]) -> bytes | None:
    """The bytes of a paper's marking key.

    Args:
        content: `{"format": 1, "items": [...]}`.

    Returns:
        None where the content is not of that kind: then the content itself has to be read.
    """
    if content.get("format") != 1 or not isinstance(content.get("items"), list | tuple):
        return None
    lines: list[str] = []
    numbers: list[float] = []
    values: list[float] = []
    try:
        for line, row, ideas in _questions(content["items"]):
            values += [number for value in ideas for number in (float(len(lines)), value)]
            lines.append(line)
            numbers += row
    except (ValidationError, KeyError, TypeError):
        return None
    text = "\n".join(lines)
    if text.count("\n") != max(len(lines) - 1, 0) or len(lines) > 0xFFFF:
        return None
    head = _HEAD.pack(EDITION, len(lines), len(values) // 2)
    return head + struct.pack(f"<{len(numbers) + len(values)}d", *numbers, *values) + text.encode("utf-8")


def unpacked(data: bytes) -> MarkingKey | None:
    """The key out of its bytes; None where another edition wrote them, or they are damaged."""
    if len(data) < _HEAD.size:
        return None
    edition, count, ideas = _HEAD.unpack_from(data)
    first = _HEAD.size + 8 * _COLUMNS * count
    second = first + 16 * ideas
    if edition != EDITION or len(data) < second:
        return None
    return MarkingKey(_shape(data[second:]), data[_HEAD.size : first], data[first:second])


def is_former(data: bytes) -> bool:
    """Whether an earlier edition wrote a key, which is not read any more."""
    return len(data) >= _HEAD.size and 0 < _HEAD.unpack_from(data)[0] < EDITION


def outcome_of(mark: Mark) -> Outcome:
    """What of a mark is kept beside its answer."""
    return str(mark.verdict), mark.points, mark.most, " ".join(mark.misconceptions)


Floats: TypeAlias = npt.NDArray[np.float64]


def around(value: Floats, absolute: Floats, relative: Floats) -> Floats:
    """How far from each value an answer may be; to the bit what `Tolerance.around` says."""
    size = np.abs(value)
    return np.maximum(absolute, relative * size) * (1 + HAIR) + HAIR * size


def batch_arrays(keys: Sequence[MarkingKey]) -> tuple[Floats, Floats]:
    """The numbers and the values of many keys, one behind the other."""
    numbers = np.frombuffer(b"".join([key.numbers for key in keys]), "<f8").reshape(-1, _COLUMNS)
    return numbers, np.frombuffer(b"".join([key.values for key in keys]), "<f8").reshape(-1, 2)


def _questions(items: Sequence[Mapping[str, Any]]) -> Iterator[tuple[str, list[float], list[float]]]:
    """Each printed question: its line, its numbers, and what its misconceptions give."""
    for raw in items:
        item = _ITEM.validate_json(json.dumps(raw))
        if item.kind == "scenario":
            for part in item.parts:
                yield _line([f"{item.id}/{part.id}", part.id, part.competency, "linked"]), [0.0] * 4 + [LEFT], []
            continue
        asked = item.answer if isinstance(item, SpokenItem) else item
        line, row = [item.id, asked.id, asked.competency, "content"], [0.0] * 4 + [LEFT]
        values: list[float] = []
        if isinstance(asked, NumberItem):
            if not asked.steps and not asked.wrong.keys() & asked.also.keys():
                ideas = {**asked.wrong, **asked.also}
                plain = asked.unit != "foot" and not asked.units
                line[3:] = ["number", " ".join(ideas), asked.unit, ",".join(asked.units), repr(asked.low)]
                line.append(repr(asked.high))
                row = [asked.key, asked.rounded, asked.absolute, asked.relative, PLAIN if plain else OTHER]
                values = list(ideas.values())
        elif isinstance(asked, ChoiceItem | SpotItem):
            line[3:] = ["picked", *_picked(asked)]
            row[-1] = OTHER
        elif right := _sequence(asked):
            line[3:] = ["sequence", right]
            row[-1] = OTHER
        yield _line(line), row, values


def _line(cells: Sequence[str]) -> str:
    if any(sign in cell for cell in cells for sign in "\t\n"):
        raise TypeError("no id holds these signs")
    return "\t".join(cells)


def _picked(item: ChoiceItem | SpotItem) -> list[str]:
    """Every set of letters that can be picked, with its outcome."""
    letters = [area.letter for area in item.areas] if isinstance(item, SpotItem) else LETTERS[: len(item.options)]
    found = []
    for size in range(1, (len(letters) if item.several else 1) + 1):
        for some in combinations(sorted(letters), size):
            verdict, points, most, ideas = outcome_of(mark_typed(item, "".join(some)))
            found.append(f"{''.join(some)}:{verdict}:{points}:{most}:{ideas}")
    return found


def _sequence(item: OrderItem | MatchItem) -> str:
    """The one right sequence of letters with its outcome; empty where several are right."""
    parts = item.steps if isinstance(item, OrderItem) else item.right
    if len(set(parts)) != len(parts) or len(parts) > len(LETTERS):
        return ""
    right = "".join(LETTERS[item.order.index(place)] for place in range(len(parts)))
    verdict, points, most, ideas = outcome_of(mark_typed(item, right))
    return f"{right}:{verdict}:{points}:{most}:{ideas}"


@lru_cache(maxsize=4000)
def _shape(text: bytes) -> Shape:
    return Shape(tuple(_question(line) for line in text.decode("utf-8").split("\n")) if text else ())


@lru_cache(maxsize=20_000)
def _question(line: str) -> Question:
    alias, item, competency, way, *rest = line.split("\t")
    if way == "number":
        ideas, unit, units, low, high = rest
        chosen = tuple(units.split(",")) if units else ()
        return Question(alias, item, competency, way, tuple(ideas.split()), unit, chosen, float(low), float(high))
    outcomes: dict[str, Outcome] = {}
    for cell in rest:
        letters, verdict, points, most, ideas = cell.split(":")
        outcomes[letters] = (verdict, int(points), int(most), ideas)
    return Question(alias, item, competency, way, outcomes=outcomes, count=max(map(len, outcomes), default=0))
