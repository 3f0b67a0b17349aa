"""Reading a table of typed answers against the papers of a sitting.

A large table goes a quick way that reads the same as `read_csv`, piece by piece; where it meets anything that is not
plain and good, the whole table is read again the careful way, which knows the place of every problem.
"""

from __future__ import annotations

import codecs
import csv
from array import array
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from difflib import get_close_matches
from io import BytesIO
from pathlib import Path
from typing import Protocol

import numpy as np

from generator.exercises import same_name
from generator.problems import MOST_REPORTED, Column, Problem, ProblemsError, Row, decode, each_row, few
from generator.registry.csv_text import unguarded
from generator.registry.seats import Seat

LARGEST_TABLE = 400_000_000
"""Bytes; a hundred thousand papers of forty answers have about eighty million."""

COLUMNS = ("learner", "question", "answer")
_PIECE = 250_000
"""Bytes of a table that are cut into lines at once."""
_LINE_END = ord("\n")
_SPACES = [chr(code) for code in range(128) if chr(code).isspace() and chr(code) != "\n"]
"""Of plain letters; where a piece has others, its cells are stripped one by one."""

Typed = dict[int, str]
"""Texts by the printed number of the question."""
Rows = tuple[Seat, Sequence[str], Sequence[str]]
"""A paper, and the columns `question` and `answer` of its rows."""


class Key(Protocol):
    """What says which questions a paper has."""

    @property
    def labels(self) -> Mapping[str, int]:
        """What may stand in the column `question`, and the printed number that it means."""


class Keys(Protocol):
    """Finds the keys of papers."""

    def of(self, content: str) -> Key:
        """The key of what a paper asks."""


class Finder(Protocol):
    """Finds the papers of those who are named in the column `learner`."""

    def among(self, learners: Collection[str]) -> Mapping[str, Seat]:
        """By the cell; what names nobody is missing."""


class NotPlainError(Exception):
    """A table that wants a careful look; never told to anybody."""


def plain(table: Iterable[str], seats: Finder) -> Iterator[Rows]:
    """The rows paper by paper, so that no large table lies in memory as a whole.

    Args:
        table: whole lines of it, piece by piece.
        seats: finds whose they are.

    Raises:
        NotPlainError: the table wants a careful look; what was given until then doesn't count.
    """
    done = bytearray()
    sign = ""
    now: Seat | None = None
    questions: Sequence[str] = ()
    answers: Sequence[str] = ()
    for piece in table:
        if not sign:
            head, _, piece = piece.partition("\n")
            sign = _sign(head)
        runs = list(_runs(*_columns(piece, sign)))
        found = seats.among([learner for learner, _, _ in runs])
        for learner, some, texts in runs:
            seat = found.get(learner)
            if seat is None or (seat.number < len(done) and done[seat.number]):
                raise NotPlainError
            if now is not None and now.number == seat.number:
                questions, answers = [*questions, *some], [*answers, *texts]
                continue
            if now is not None:
                yield now, questions, answers
                done.extend(bytes(max(0, now.number + 1 - len(done))))
                done[now.number] = True
            now, questions, answers = seat, some, texts
    if now is None:
        raise NotPlainError
    yield now, questions, answers


def _sign(head: str) -> str:
    """What parts the cells, by the first line.

    Raises:
        NotPlainError: it has other columns, or in another order.
    """
    for sign in (",", ";", "\t"):
        if tuple(cell.strip().casefold() for cell in head.split(sign)) == COLUMNS:
            return sign
    raise NotPlainError


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
        NotPlainError: a line has another count of cells, an answer starts with a single quote, or a cell holds a
            quote, a line end, or spaces before a quote.
    """
    signs = np.frombuffer(piece.encode("utf-8"), np.uint8)
    ends = signs[(signs == ord(sign)) | (signs == _LINE_END)]
    whole = len(ends) % len(COLUMNS) == 0 and '"' not in piece
    if whole and (ends.reshape(-1, len(COLUMNS)) == [ord(sign), ord(sign), _LINE_END]).all():
        cells = piece.replace("\n", sign).split(sign)
        learners, questions, answers = cells[:-1:3], cells[1::3], cells[2::3]
    else:
        lines = [line for line in piece.split("\n") if line.strip()]
        rows = _quoted(lines, sign) if '"' in piece else [line.split(sign) for line in lines]
        if any(len(row) != len(COLUMNS) for row in rows):
            raise NotPlainError
        learners, questions, answers = ([row[place] for row in rows] for place in range(len(COLUMNS)))
    if not piece.isascii() or any(space in piece for space in _SPACES):
        answers = list(map(str.strip, answers))
    if "'" in piece and any(answer.startswith("'") for answer in answers):
        raise NotPlainError
    return learners, questions, answers


def _quoted(lines: Sequence[str], sign: str) -> list[list[str]]:
    """Lines with quoted cells, as spreadsheet programs write a cell that holds a comma.

    Raises:
        NotPlainError: what else can be done with quotes.
    """
    try:
        rows = list(csv.reader((line + "\n" for line in lines), delimiter=sign, strict=True))
    except csv.Error:
        raise NotPlainError from None
    if any('"' in cell or "\n" in cell for row in rows for cell in row):
        raise NotPlainError
    return rows


def pieces(source: bytes | Path) -> Iterator[str]:
    """Whole lines of a table, piece by piece, so that it never lies in memory as a whole.

    Args:
        source: its bytes, or its file.

    Raises:
        NotPlainError: it can't be read, is too large, or is no plain text.
    """
    left, size, first = b"", 0, True
    try:
        with BytesIO(source) if isinstance(source, bytes) else source.open("rb") as stream:
            while some := stream.read(_PIECE):
                size += len(some)
                end = some.rfind(b"\n") + 1
                if size > LARGEST_TABLE or len(left) > _PIECE:
                    raise NotPlainError
                if end:
                    yield _text(left + some[:end], first=first)
                    left, first = some[end:], False
                else:
                    left += some
    except OSError:
        raise NotPlainError from None
    if left:
        yield _text(left + b"\n", first=first)


def _text(lines: bytes, *, first: bool) -> str:
    if not first and lines.startswith(codecs.BOM_UTF8):  # only a file begins with it
        raise NotPlainError
    try:
        return decode("", lines, LARGEST_TABLE)
    except ProblemsError:
        raise NotPlainError from None


def careful(file: str, data: bytes, seats: Mapping[int, Seat], keys: Keys) -> dict[int, Typed]:
    """The same with every problem and its place.

    Args:
        file: how problems name the table.
        data: its bytes.
        seats: all of them, by their numbers.
        keys: of what they ask.

    Raises:
        ProblemsError: all that is wrong.
    """
    names = {same_name(seat.name): number for number, seat in seats.items()}
    names |= {str(number): number for number in seats}
    found: dict[int, Typed] = {}
    lines: dict[int, array[int]] = {}
    """Of each paper's answers, in the order in which they were found."""
    same: dict[str, str] = {}
    """Each text once: a large table has the same ones over and over."""
    problems: list[Problem] = []
    columns = [Column("learner"), Column("question"), Column("answer", filled=False)]
    for row in each_row(file, data, columns, LARGEST_TABLE):
        if len(problems) > MOST_REPORTED:
            break
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
        if label not in typed:
            typed[label] = same.setdefault(answer, answer)
            lines.setdefault(number, array("L")).append(row.line)
        if typed[label] != answer:
            what = f"question {label} of paper {number} has another answer, '{typed[label]}', in line "
            what += str(lines[number][list(typed).index(label)])
            problems.append(row.problem("answer", "two-answers", what, "keep the one that stands on the paper"))
        elif seat.recorded.get(label, answer) != answer:
            what = f"question {label} of paper {number} is recorded already as '{seat.recorded[label]}'"
            fix = "a recorded answer is not changed; if it is wrong, the way is an appeal"
            problems.append(row.problem("answer", "recorded-otherwise", what, fix))
    if problems:
        raise ProblemsError(few(file, problems))
    return found


def _unknown_learner(row: Row, seats: Mapping[int, Seat]) -> Problem:
    names = {same_name(seat.name): seat.name for seat in seats.values()}
    near = get_close_matches(same_name(row["learner"]), names, n=1)
    fix = f"did you mean '{names[near[0]]}'?" if near else f"the papers have the numbers 1 to {max(seats, default=0)}"
    return row.problem("learner", "unknown-learner", f"the sitting has no paper of '{row['learner']}'", fix)
