"""Reading a table of typed answers against the papers of a sitting.

A large table goes a quick way that reads the same as `read_csv` where no cell is quoted; where it meets anything that
is not plain and good, the whole table is read again the careful way, which knows the place of every problem.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Protocol

import numpy as np

from generator.exercises import same_name
from generator.problems import Column, Problem, ProblemsError, Row, few, read_csv
from generator.registry.csv_text import unguarded

LARGEST_TABLE = 400_000_000
"""Bytes; a hundred thousand papers of forty answers have about eighty million."""

COLUMNS = ("learner", "question", "answer")
_PIECE = 1_000_000
"""Letters of a table that are cut into lines at once."""
_LINE_END = ord("\n")
_SPACES = [chr(code) for code in range(128) if chr(code).isspace() and chr(code) != "\n"]
"""Of plain letters; where a piece has others, its cells are stripped one by one."""

Typed = dict[int, str]
"""Texts by the printed number of the question."""
Rows = tuple[int, Sequence[str], Sequence[str]]
"""A paper's number, and the columns `question` and `answer` of its rows."""


class Key(Protocol):
    """What says which questions a paper has."""

    @property
    def labels(self) -> Mapping[str, int]:
        """What may stand in the column `question`, and the printed number that it means."""


class Keys(Protocol):
    """Finds the keys of papers."""

    def of(self, content: str) -> Key:
        """The key of what a paper asks."""


@dataclass(frozen=True, slots=True)
class Seat:
    """One paper of the sitting: its id, whose it is, what it asks, and what is recorded already."""

    paper: int
    name: str
    content: str
    recorded: Mapping[int, str | None]


class NotPlainError(Exception):
    """A table that wants a careful look; never told to anybody."""


def plain(text: str, seats: Mapping[int, Seat]) -> Iterator[Rows]:
    """The rows paper by paper, so that a large table never lies in memory as a whole in another form.

    Raises:
        NotPlainError: the table wants a careful look; what was given until then doesn't count.
    """
    if '"' in text:
        raise NotPlainError
    head, _, body = text.partition("\n")
    for sign in (",", ";", "\t"):
        if tuple(cell.strip().casefold() for cell in head.split(sign)) == COLUMNS:
            break
    else:
        raise NotPlainError
    names = _names(seats)
    done: set[int] = set()
    number = 0
    questions: Sequence[str] = ()
    answers: Sequence[str] = ()
    for piece in _pieces(body):
        for learner, some, texts in _runs(*_columns(piece, sign)):
            found = names.get(learner)
            if found is None or found in done:
                raise NotPlainError
            if number == found:
                questions, answers = [*questions, *some], [*answers, *texts]
                continue
            if number:
                yield number, questions, answers
                done.add(number)
            number, questions, answers = found, some, texts
    if not number:
        raise NotPlainError
    yield number, questions, answers


def _runs(
    learners: Sequence[str], questions: Sequence[str], answers: Sequence[str]
) -> Iterator[tuple[str, Sequence[str], Sequence[str]]]:
    """Rows of one learner that stand together; most have as many as the one before."""
    start = length = 0
    rows = len(learners)
    while start < rows:
        learner, end = learners[start], start + length
        if not length or learners[start:end].count(learner) < length or (end < rows and learners[end] == learner):
            end = next((at for at in range(start, rows) if learners[at] != learner), rows)
            length = end - start
        yield learner, questions[start:end], answers[start:end]
        start = end


def _columns(piece: str, sign: str) -> tuple[list[str], list[str], list[str]]:
    """The three columns of some lines.

    Raises:
        NotPlainError: a line has another count of cells, or an answer starts with a quote.
    """
    signs = np.frombuffer(piece.encode("utf-8"), np.uint8)
    ends = signs[(signs == ord(sign)) | (signs == _LINE_END)]
    if len(ends) % len(COLUMNS) == 0 and (ends.reshape(-1, len(COLUMNS)) == [ord(sign), ord(sign), _LINE_END]).all():
        cells = piece.replace("\n", sign).split(sign)
        learners, questions, answers = cells[:-1:3], cells[1::3], cells[2::3]
    else:
        rows = [line.split(sign) for line in piece.split("\n") if line.strip()]
        if any(len(row) != len(COLUMNS) for row in rows):
            raise NotPlainError
        learners, questions, answers = ([row[place] for row in rows] for place in range(len(COLUMNS)))
    if not piece.isascii() or any(space in piece for space in _SPACES):
        answers = list(map(str.strip, answers))
    if "'" in piece and any(answer.startswith("'") for answer in answers):
        raise NotPlainError
    return learners, questions, answers


def _pieces(text: str) -> Iterator[str]:
    """Whole lines of a text, piece by piece: a list of all of them, or a buffer, would be many times the text."""
    start = 0
    while start < len(text):
        end = text.rfind("\n", start, start + _PIECE) + 1 or text.find("\n", start + _PIECE) + 1 or len(text)
        yield text[start:end] if text[end - 1] == "\n" else text[start:end] + "\n"
        start = end


def _names(seats: Mapping[int, Seat]) -> dict[str, int]:
    """What may stand in the column `learner`."""
    found = {same_name(seat.name): number for number, seat in seats.items()}
    return found | {str(number): number for number in seats}


def careful(file: str, data: bytes, seats: Mapping[int, Seat], keys: Keys) -> dict[int, Typed]:
    """The same with every problem and its place.

    Raises:
        ProblemsError: all that is wrong.
    """
    names = _names(seats)
    found: dict[int, Typed] = {}
    lines: dict[tuple[int, int], int] = {}
    problems: list[Problem] = []
    columns = [Column("learner"), Column("question"), Column("answer", filled=False)]
    for row in read_csv(file, data, columns, LARGEST_TABLE):
        number = names.get(same_name(unguarded(row["learner"])))
        if number is None:
            problems.append(_unknown_learner(row, seats))
            continue
        seat = seats[number]
        labels = keys.of(seat.content).labels
        label = labels.get(row["question"])
        if label is None:
            what = f"paper {number} has no question '{row['question']}'"
            fix = f"its questions are 1 to {max(labels.values(), default=0)}"
            problems.append(row.problem("question", "unknown-question", what, fix))
            continue
        answer = unguarded(row["answer"])
        typed = found.setdefault(number, {})
        if typed.setdefault(label, answer) != answer:
            what = f"question {label} of paper {number} has another answer, '{typed[label]}', in line "
            what += str(lines[number, label])
            problems.append(row.problem("answer", "two-answers", what, "keep the one that stands on the paper"))
        elif seat.recorded.get(label, answer) != answer:
            what = f"question {label} of paper {number} is recorded already as '{seat.recorded[label]}'"
            fix = "a recorded answer is not changed; if it is wrong, the way is an appeal"
            problems.append(row.problem("answer", "recorded-otherwise", what, fix))
        lines.setdefault((number, label), row.line)
    if problems:
        raise ProblemsError(few(file, problems))
    return found


def _unknown_learner(row: Row, seats: Mapping[int, Seat]) -> Problem:
    names = {same_name(seat.name): seat.name for seat in seats.values()}
    near = get_close_matches(same_name(row["learner"]), names, n=1)
    fix = f"did you mean '{names[near[0]]}'?" if near else f"the papers have the numbers 1 to {max(seats, default=0)}"
    return row.problem("learner", "unknown-learner", f"the sitting has no paper of '{row['learner']}'", fix)
