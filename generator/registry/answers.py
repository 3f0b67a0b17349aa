"""Answers and marks: the answers typed from the papers of a sitting are marked from the archive, and kept.

A large table goes a quick way that reads the same as `read_csv` where no cell is quoted; where it meets anything that
is not plain and good, the whole table is read again the careful way, which knows the place of every problem.
"""

from __future__ import annotations

import gc
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import datetime
from difflib import get_close_matches
from functools import lru_cache
from itertools import islice
from sys import intern
from typing import Any

from sqlalchemy import Connection, Table, select

from generator.exercises import same_name
from generator.problems import Column, Problem, ProblemsError, Row, decode, few, read_csv
from generator.registry.chain import sha256
from generator.registry.cohorts import Imported
from generator.registry.csv_text import unguarded
from generator.registry.entry import Entry
from generator.registry.marker import Marker, PaperKey, items_marker
from generator.registry.papers import known_sitting
from generator.registry.people import require_role
from generator.registry.store import Registry, writing
from generator.registry.tables import answers, batches, contents, papers, people

LARGEST_TABLE = 400_000_000
"""Bytes; a hundred thousand papers of forty answers have about eighty million."""

COLUMNS = ("learner", "question", "answer")
_ROWS = (
    "paper", "label", "event", "item", "competency", "answer", "verdict", "points", "most", "misconceptions",
)  # fmt: skip
_AT_ONCE = 2000
"""Papers whose rows are worked out before they are written."""
_PIECE = 1_000_000
"""Letters of a table that are cut into lines at once."""
_KEYS = 2000
"""Keys that are kept in memory; where every paper of a larger sitting asks something else, they are read twice."""

Typed = dict[int, str]
"""Texts by the printed number of the question."""


@dataclass(frozen=True, slots=True)
class _Seat:
    """One paper of the sitting: its id, whose it is, what it asks, and what is recorded already."""

    paper: int
    name: str
    content: str
    find_key: Callable[[str], PaperKey]
    recorded: Mapping[int, str | None]

    @property
    def key(self) -> PaperKey:
        """What marks the paper."""
        return self.find_key(self.content)


def import_answers(
    registry: Registry,
    sitting: int,
    file: str,
    data: bytes,
    *,
    by: int,
    now: datetime,
    dry_run: bool = False,
    marker: Marker = items_marker,
) -> Imported:
    """Mark the answers typed from the papers of a sitting and record them: all of the table, or nothing.

    The same table again changes nothing; a table with more rows adds those. Where a linked question is answered in
    part, its other parts are recorded as blank, because their marks hang together.

    Args:
        registry: where.
        sitting: its id.
        file: how problems name the table.
        data: its bytes: columns `learner` (the number on the paper, or the name), `question`, `answer`.
        by: a coordinator.
        now: the time.
        dry_run: only say what would happen.
        marker: makes the key of a paper from what the archive holds.

    Raises:
        ProblemsError: what `read_csv` refuses; an unknown learner or question; two answers to one question; another
            answer than the recorded one. All at once.
        RefusedError: no such sitting; `by` is no coordinator.
    """
    text = decode(file, data, LARGEST_TABLE)
    with no_collecting(), writing(registry, now, dry_run=dry_run) as entry:
        require_role(entry.connection, by, "coordinator")
        seats = _seats(entry.connection, sitting, marker)
        before = entry.place
        try:
            with entry.connection.begin_nested():
                new, same = _record(entry, sitting, seats, _plain(text, seats), by)
        except NotPlainError:  # what was written of it is taken back with it
            entry.back_to(before)
            new, same = _record(entry, sitting, seats, _careful(file, data, seats).items(), by)
    return Imported(new, same, not dry_run)


@contextmanager
def no_collecting() -> Iterator[None]:
    """Without the search for circles of objects: millions of rows make none, and it goes through all of them."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()


def _seats(connection: Connection, sitting: int, marker: Marker) -> dict[int, _Seat]:
    """The papers of a sitting, by the number on them."""
    about = known_sitting(connection, sitting).about

    @lru_cache(maxsize=_KEYS)
    def key_of(content: str) -> PaperKey:
        data = connection.execute(select(contents.c.data).where(contents.c.hash == content)).scalar_one()
        return marker(data.decode("utf-8"), about)

    recorded: dict[int, dict[int, str | None]] = {}
    known = (
        select(answers.c.paper, answers.c.label, answers.c.answer)
        .join(papers, papers.c.id == answers.c.paper)
        .where(papers.c.sitting == sitting)
    )
    for paper, label, answer in connection.execute(known):
        recorded.setdefault(paper, {})[label] = answer
    rows = connection.execute(
        select(papers.c.id, papers.c.number, papers.c.content, people.c.name)
        .join(people, people.c.id == papers.c.person)
        .where(papers.c.sitting == sitting, people.c.name.is_not(None))
        .order_by(papers.c.number)
    )
    nothing: Mapping[int, str | None] = {}
    return {
        number: _Seat(key, name, intern(content), key_of, recorded.get(key, nothing))
        for key, number, content, name in rows
    }


def _names(seats: Mapping[int, _Seat]) -> dict[str, int]:
    """What may stand in the column `learner`."""
    found = {same_name(seat.name): number for number, seat in seats.items()}
    return found | {str(number): number for number in seats}


class NotPlainError(Exception):
    """A table that wants a careful look; never told to anybody."""


def _plain(text: str, seats: Mapping[int, _Seat]) -> Iterator[tuple[int, Typed]]:
    """The typed answers paper by paper, so that a large table never lies in memory as a whole in another form.

    Raises:
        NotPlainError: the table wants a careful look; what was given until then doesn't count.
    """
    if '"' in text:
        raise NotPlainError
    lines = _lines(text)
    head = next(lines, "")
    for sign in (",", ";", "\t"):
        if tuple(cell.strip().casefold() for cell in head.split(sign)) == COLUMNS:
            break
    else:
        raise NotPlainError
    names = _names(seats)
    done: set[int] = set()
    last: str | None = None
    number = 0
    typed: Typed = {}
    labels: Mapping[str, int] = {}
    recorded: Mapping[int, str | None] = {}
    for line in lines:
        cells = line.split(sign)
        if len(cells) != len(COLUMNS):
            if line.strip():
                raise NotPlainError
            continue
        learner, question, answer = cells
        if learner != last:
            found = names.get(learner)
            if found is None or found in done:
                raise NotPlainError
            if number != found:
                if number:
                    yield number, typed
                    done.add(number)
                number, typed = found, {}
            seat = seats[number]
            labels, recorded = seat.key.labels, seat.recorded
            last = learner
        label = labels.get(question)
        answer = answer.strip()
        if label is None or answer[:1] == "'":
            raise NotPlainError
        if typed.setdefault(label, answer) != answer or (recorded and recorded.get(label, answer) != answer):
            raise NotPlainError
    if not number:
        raise NotPlainError
    yield number, typed


def _lines(text: str) -> Iterator[str]:
    """The lines of a text, piece by piece: a list of all of them, or a buffer, would be many times the text."""
    start = 0
    while start < len(text):
        end = text.rfind("\n", start, start + _PIECE) + 1 or text.find("\n", start + _PIECE) + 1 or len(text)
        yield from text[start:end].removesuffix("\n").split("\n")
        start = end


def _careful(file: str, data: bytes, seats: Mapping[int, _Seat]) -> dict[int, Typed]:
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
        label = seat.key.labels.get(row["question"])
        if label is None:
            what = f"paper {number} has no question '{row['question']}'"
            fix = f"its questions are 1 to {max(seat.key.labels.values(), default=0)}"
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


def _unknown_learner(row: Row, seats: Mapping[int, _Seat]) -> Problem:
    names = {same_name(seat.name): seat.name for seat in seats.values()}
    near = get_close_matches(same_name(row["learner"]), names, n=1)
    fix = f"did you mean '{names[near[0]]}'?" if near else f"the papers have the numbers 1 to {max(seats, default=0)}"
    return row.problem("learner", "unknown-learner", f"the sitting has no paper of '{row['learner']}'", fix)


def _record(
    entry: Entry, sitting: int, seats: Mapping[int, _Seat], typed: Iterable[tuple[int, Typed]], by: int
) -> tuple[int, int]:
    """Mark and write; returns how many answers are new and how many were there."""
    new = same = 0
    everyone = iter(typed)
    while some := list(islice(everyone, _AT_ONCE)):
        seq = entry.next_event
        rows: list[tuple[Any, ...]] = []
        sealed: list[tuple[Any, ...]] = []
        salts = entry.entropy(_AT_ONCE * 16).hex()
        for place, (number, texts) in enumerate(some):
            seat = seats[number]
            key = seat.key
            fresh = key.whole(texts)
            if seat.recorded:
                fresh = {label: text for label, text in fresh.items() if label not in seat.recorded}
                same += len(texts.keys() & seat.recorded.keys())
                if not fresh:
                    continue
            own = key.mark(fresh)
            paper, salt = seat.paper, salts[place * 32 : place * 32 + 32]
            rows += [(paper, label, seq, *mark) for label, mark, _ in own]
            digest = sha256("\n".join([salt, *[line for _, _, line in own]]))
            sealed.append((paper, seq, len(own), salt, digest))
        if not rows:
            continue
        body = {
            "papers": len(sealed),
            "answers": len(rows),
            "digest": sha256("\n".join(sorted(row[4] for row in sealed))),
        }
        entry.event("answers.recorded", f"sittings:{sitting}", by, body)
        bulk(entry.connection, batches, ("paper", "event", "answers", "salt", "digest"), sealed)
        bulk(entry.connection, answers, _ROWS, rows)
        new += len(rows)
    return new, same


def bulk(connection: Connection, table: Table, columns: Sequence[str], rows: Sequence[tuple[Any, ...]]) -> None:
    """Write many rows at the speed of the database's own library."""
    mark = "?" if connection.dialect.name == "sqlite" else "%s"
    names, marks = ", ".join(columns), ", ".join([mark] * len(columns))
    connection.exec_driver_sql(f"insert into {table.name} ({names}) values ({marks})", list(rows))  # noqa: S608


def batch_digest(salt: str, rows: Sequence[Mapping[str, Any]]) -> str:
    """The digest of a batch from the rows that are kept: what an audit holds against the recorded one.

    Args:
        salt: of the batch.
        rows: its answers, in the order in which they were recorded.
    """
    return sha256("\n".join([salt, *[line_of(row["label"], [row[name] for name in _ROWS[3:]]) for row in rows]]))


def line_of(label: int, mark: Sequence[Any]) -> str:
    """One answer as a batch's digest covers it; no answer holds the sign between the parts."""
    return "\x1f".join(map(str, (label, *mark)))
