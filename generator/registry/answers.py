"""Answers and marks: the answers typed from the papers of a sitting are marked from the archive, and kept."""

from __future__ import annotations

import gc
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from datetime import datetime
from itertools import islice
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, Table

from generator.problems import read_bytes
from generator.registry.answer_table import LARGEST_TABLE, NotPlainError, Rows, careful, pieces, plain
from generator.registry.batch_marks import Labels, Sheet, digests_of, labelled, labels_of, marked, rows_of
from generator.registry.chain import sha256
from generator.registry.cohorts import Imported
from generator.registry.entry import Entry
from generator.registry.marker import Marker, items_marker
from generator.registry.paper_keys import PaperKeys
from generator.registry.papers import known_sitting
from generator.registry.people import require_role
from generator.registry.seats import Seat, Seats
from generator.registry.store import Registry, writing
from generator.registry.tables import answers, batches

_ROWS = (
    "paper", "label", "event", "item", "competency", "answer", "verdict", "points", "most", "misconceptions",
)  # fmt: skip
AT_ONCE = 500
"""Papers whose rows are worked out before they are written."""


def import_answers(
    registry: Registry,
    sitting: int,
    file: str,
    source: bytes | Path,
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
        source: its bytes, or its file, which is read piece by piece: columns `learner` (the number on the paper, or
            the name), `question`, `answer`.
        by: a coordinator.
        now: the time.
        dry_run: only say what would happen.
        marker: makes the key of a paper from what the archive holds.

    Raises:
        ProblemsError: what `read_csv` refuses; an unknown learner or question; two answers to one question; another
            answer than the recorded one. All at once.
        RefusedError: no such sitting; `by` is no coordinator.
    """
    with no_collecting(), writing(registry, now, dry_run=dry_run) as entry:
        require_role(entry.connection, by, "coordinator")
        about = known_sitting(entry.connection, sitting).about
        seats, keys = Seats(entry.connection, sitting), PaperKeys(entry.connection, about, marker)
        before = entry.place
        try:
            with entry.connection.begin_nested():
                new, same = _record(entry, sitting, keys, plain(pieces(source), seats), by)
        except NotPlainError:  # what was written of it is taken back with it
            entry.back_to(before)
            data = source if isinstance(source, bytes) else read_bytes(source, file, LARGEST_TABLE)
            everyone = seats.everyone()
            typed = careful(file, data, everyone, keys)
            rows = ((everyone[n], [*map(str, own)], [*own.values()]) for n, own in typed.items())
            new, same = _record(entry, sitting, keys, rows, by)
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


def _record(entry: Entry, sitting: int, keys: PaperKeys, table: Iterable[Rows], by: int) -> tuple[int, int]:
    """Mark and write; returns how many answers are new and how many were there."""
    new = same = 0
    everyone = iter(table)
    while some := list(islice(everyone, AT_ONCE)):
        keys.fetch(seat.content for seat, _, _ in some)
        sheets: list[Sheet] = []
        for seat, questions, texts in some:
            labels, fresh, known = _fresh(seat, keys, questions, texts)
            same += known
            if fresh:
                mark = keys.by_content(seat.content)
                sheets.append(Sheet(seat.paper, keys.of(seat.content), labels, fresh, mark))
        if not sheets:
            continue
        salts = entry.entropy(len(sheets) * 16).hex()
        own = [salts[start : start + 32] for start in range(0, len(salts), 32)]
        seq = entry.next_event
        marks = marked(sheets)
        rows, digests = rows_of(sheets, marks, seq), digests_of(sheets, marks, own)
        body = {"papers": len(sheets), "answers": len(rows), "digest": sha256("\n".join(sorted(digests)))}
        entry.event("answers.recorded", f"sittings:{sitting}", by, body)
        sealed = [
            (sheet.paper, seq, len(sheet.answers), salt, digest)
            for sheet, salt, digest in zip(sheets, own, digests, strict=True)
        ]
        bulk(entry.connection, batches, ("paper", "event", "answers", "salt", "digest"), sealed)
        bulk(entry.connection, answers, _ROWS, rows)
        new += len(rows)
    return new, same


def _fresh(
    seat: Seat, keys: PaperKeys, questions: Sequence[str], texts: Sequence[str]
) -> tuple[Labels, Sequence[str], int]:
    """What of a paper's rows is new, in the order of its questions; and how many are recorded already.

    Raises:
        NotPlainError: a question that it does not have, two answers to one, another answer than the recorded one.
    """
    shape = keys.of(seat.content).shape
    quick = labels_of(questions)
    if quick is not None and quick.numbers[-1] <= len(shape.questions) and not seat.recorded and not shape.linked:
        return quick, texts, 0
    typed: dict[int, str] = {}
    for question, text in zip(questions, texts, strict=True):
        label = shape.labels.get(question)
        if label is None or typed.setdefault(label, text) != text or seat.recorded.get(label, text) != text:
            raise NotPlainError
    known = len(typed.keys() & seat.recorded.keys())
    if shape.linked:
        typed = dict(keys.whole(seat.content, typed))
    fresh = {label: typed[label] for label in sorted(typed) if label not in seat.recorded}
    return labelled(fresh), list(fresh.values()), known


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
