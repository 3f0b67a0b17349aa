"""The registry against the bare database: reading and marking a large table of answers, and a report over many.

The import reads the table, holds every row against its paper, marks it, seals it in the chain of events and writes it;
the baseline is the library's own `executemany` of the very same finished rows into the very same tables, with the same
settings, in one transaction. 10,000 papers of 40 answers stand for 100,000, which take ten times as long on both sides
and would keep `bench` busy for minutes; TANKSCHOOL_BENCH_PAPERS sets another count.

Both kinds of exam are measured: every paper with numbers and a key of its own, as `paper` makes them, and 20 forms that
are shared. Keys are kept when papers are archived, which is not what is measured; reading them is.

Marking alone stands beside bare numpy compares of the same answers, both with the reading of table and keys; the
compares know of no form of a number, no mistaken idea and no points.

Memory is the largest that a process takes which imports the table from its file, against a tenth of the papers.

The report runs over 1,000,000 answers; its baseline is the SQL alone, typed by hand, on the same file.
"""

from __future__ import annotations

import csv
import io
import os
import shutil
import sqlite3
import tempfile
import time
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, date, datetime
from itertools import islice
from pathlib import Path
from typing import Any

import numpy as np

from generator.exercises import NumberItem
from generator.registry import (
    NewPaper,
    NewPerson,
    NewSitting,
    Registry,
    add_cohort,
    add_person,
    archive_papers,
    competency_report,
    give_role,
    import_answers,
    import_class_list,
    open_registry,
)
from generator.registry.answer_table import pieces, plain
from generator.registry.answers import AT_ONCE, no_collecting
from generator.registry.batch_marks import Sheet, labels_of, marked
from generator.registry.chain import canonical, sha256
from generator.registry.marking_key import MarkingKey, packed, unpacked
from generator.registry.seats import Seat
from tests.benchmarks import Result, compare
from tests.benchmarks.bench_memory import Peak
from tests.benchmarks.probe import most_memory
from tests.registry.small import small_marker

PAPERS = int(os.environ.get("TANKSCHOOL_BENCH_PAPERS", "10000"))
QUESTIONS = 40
FORMS = 20
"""Forms of an exam whose papers are not all different."""
IMPORT_LIMIT = 3.0
MARK_LIMIT = 1.5
REPORT_LIMIT = 2.0
FLAT = 1.15
"""How much more memory ten times as many papers may take."""
RESULTS = 1_000_000
NOW = datetime(2031, 5, 4, 9, tzinfo=UTC)


@dataclass(frozen=True, slots=True)
class Exam:
    """A registry with papers, and the table of answers that was typed from them."""

    file: Path
    sitting: int
    by: int
    table: bytes
    forms: int


def form(number: int) -> dict[str, object]:
    """One form: forty number questions with keys of their own."""
    items = []
    for label in range(1, QUESTIONS + 1):
        key = float(10 * number + label)
        item = NumberItem(
            id=f"q{label}", competency=f"c{label % 8}", text="How many?", asks="wire_count", unit="", places=0, low=1.0,
            high=900.0, givens={"pen_height": 1.2}, key=key, shown_key=f"{key:.0f}", rounded=key, absolute=0.0,
            relative=0.0, wrong={"gaps_counted_not_wires": key - 1},
        )  # fmt: skip
        items.append(item.model_dump(mode="json"))
    return {"format": 1, "items": items}


def typed(paper: int, label: int, forms: int) -> str:
    """What a learner writes: mostly right, sometimes a known mistake, sometimes nothing, sometimes any number."""
    key = 10 * ((paper - 1) % forms) + label
    luck = (paper * 7919 + label * 104729) % 100
    return str(key) if luck < 70 else str(key - 1) if luck < 85 else "" if luck < 90 else str(paper % 997 + label)


def exam(folder: Path, papers: int, forms: int) -> Exam:
    """Enter everyone and archive their papers, in so many forms."""
    file = folder / "registry.sqlite"
    with open_registry(file, now=NOW) as registry:
        by = add_person(registry, NewPerson("Meera"), by=None, now=NOW)
        give_role(registry, by, "coordinator", by=None, now=NOW)
        cohort = add_cohort(registry, "Upper Terrace", starts_on=date(2031, 5, 4), by=by, now=NOW)
        import_class_list(
            registry, cohort, "class.csv", b"name\nHerder 1 of Tamarisk Ridge\n", languages=["en"], by=by, now=NOW
        )
        about = NewSitting(cohort, "spring", date(2031, 5, 4))
        sitting = archive_papers(registry, about, [NewPaper(by + 1, 1, "en", form(0))], by=by, now=NOW)
    fill(file, sitting, papers, forms)
    return Exam(file, sitting, by, table_of(papers, forms).encode(), forms)


def fill(file: Path, sitting: int, papers: int, forms: int) -> None:
    """The other people and papers, straight into the tables: this is not what is measured."""
    hashes = [sha256(canonical(form(0)))]
    connection = sqlite3.connect(file)
    with connection:
        for number in range(1, forms):
            content = form(number)
            text, key = canonical(content), packed(content)
            hashes.append(sha256(text))
            connection.execute("insert into contents values (?, ?)", (hashes[-1], text.encode()))
            connection.execute("insert into marking_keys values (?, ?)", (hashes[-1], key))
        names = (
            (n + 1, f"Herder {n} of Tamarisk Ridge", f"herder {n} of tamarisk ridge") for n in range(2, papers + 1)
        )
        connection.executemany("insert into people (id, name, name_key) values (?, ?, ?)", names)
        own = ((n, sitting, n + 1, n, 1, "en", hashes[(n - 1) % forms]) for n in range(2, papers + 1))
        connection.executemany("insert into papers values (?, ?, ?, ?, ?, ?, ?)", own)
    connection.close()


@contextmanager
def fresh(made: Exam, scratch: Path) -> Iterator[Registry]:
    """A copy of the exam's registry without any answers."""
    place = scratch / "own.sqlite"
    for end in ("", "-wal", "-shm"):
        place.with_name(place.name + end).unlink(missing_ok=True)
    shutil.copyfile(made.file, place)
    with open_registry(place, now=NOW) as registry:
        yield registry


def ours(made: Exam, registry: Registry) -> int:
    """Import the table."""
    found = import_answers(registry, made.sitting, "answers.csv", made.table, by=made.by, now=NOW, marker=small_marker)
    return found.new


def finished_rows(registry: Registry) -> tuple[list[tuple[Any, ...]], list[tuple[Any, ...]], list[tuple[Any, ...]]]:
    """What an import wrote: its events, batches and answers."""
    with registry.engine.connect() as connection:
        tables = ("events where kind = 'answers.recorded'", "batches", "answers")
        events, batches, answers = (
            [tuple(row) for row in connection.exec_driver_sql(f"select * from {table}")]  # noqa: S608 (fixed names)
            for table in tables
        )
        return events, batches, answers


def bare(registry: Registry, rows: tuple[list[tuple[Any, ...]], ...]) -> None:
    """The same rows by the database's own library."""
    raw = registry.engine.raw_connection()
    cursor = raw.cursor()
    cursor.execute("begin immediate")
    for table, own in zip(("events", "batches", "answers"), rows, strict=True):
        marks = ", ".join("?" * len(own[0]))
        cursor.executemany(f"insert into {table} values ({marks})", own)  # noqa: S608 (fixed names)
    cursor.execute("commit")
    raw.close()


def best_of(runs: int, made: Exam, scratch: Path, work: Callable[[Registry], object]) -> float:
    """Best time of some work on a fresh copy; making the copy is not counted."""
    best = float("inf")
    for _ in range(runs):
        with fresh(made, scratch) as registry:
            start = time.perf_counter()
            work(registry)
            best = min(best, time.perf_counter() - start)
    return best


def import_result(runs: int, papers: int = PAPERS, *, own_numbers: bool) -> Result:
    """Reading, marking and writing against writing alone."""
    with tempfile.TemporaryDirectory() as folder:
        scratch = Path(folder)
        made = exam(scratch, papers, papers if own_numbers else FORMS)
        with fresh(made, scratch) as registry:
            ours(made, registry)
            rows = finished_rows(registry)
        own = best_of(runs, made, scratch, lambda registry: ours(made, registry))
        alone = best_of(runs, made, scratch, lambda registry: bare(registry, rows))
    kind = "each with its own numbers" if own_numbers else f"in {FORMS} forms"
    name = (
        f"{papers:,} papers of {QUESTIONS} answers, {kind}, read, marked and recorded, against executemany of the same "
        "rows"
    )
    return Result(name, own, alone, IMPORT_LIMIT)


_PROBE = """
import sys
from pathlib import Path
from generator.registry import import_answers, open_registry
from tests.benchmarks.bench_registry import NOW
from tests.registry.small import small_marker
folder, sitting, by, expected = Path(sys.argv[1]), *map(int, sys.argv[2:])
with open_registry(folder / "registry.sqlite", now=NOW) as registry:
    found = import_answers(registry, sitting, "a.csv", folder / "a.csv", by=by, now=NOW, marker=small_marker)
assert found.new == expected
"""


def memory_of(papers: int, *, own_numbers: bool) -> float:
    """Most memory of a process that imports the table of so many papers [MB]."""
    with tempfile.TemporaryDirectory() as folder:
        made = exam(Path(folder), papers, papers if own_numbers else FORMS)
        (Path(folder) / "a.csv").write_bytes(made.table)
        return most_memory(_PROBE, folder, str(made.sitting), str(made.by), str(papers * QUESTIONS))


def memory_result(papers: int = PAPERS, *, own_numbers: bool) -> Peak:
    """Memory of an import against one of a tenth of its papers."""
    few = papers // 10
    kind = "each with its own numbers" if own_numbers else f"in {FORMS} forms"
    name = f"importing {papers:,} papers, {kind}, against {FLAT:g} times the memory of {few:,}"
    own = memory_of(papers, own_numbers=own_numbers)
    return Peak(name, own, FLAT * memory_of(few, own_numbers=own_numbers), 1.0)


def table_of(papers: int, forms: int) -> str:
    """The typed table of so many papers."""
    rows = (f"{p},{q},{typed(p, q, forms)}" for p in range(1, papers + 1) for q in range(1, QUESTIONS + 1))
    return "\n".join(["learner,question,answer", *rows]) + "\n"


def packed_keys(forms: int) -> list[bytes]:
    """The keys as the archive holds them."""
    return [packed(form(number)) or b"" for number in range(forms)]


def key_table(keys: Sequence[bytes]) -> list[bytes]:
    """The same as the compares take them: bare numbers."""
    found = []
    for key in keys:
        made = unpacked(key)
        assert made is not None
        found.append(np.array([made.row(label)[0] for label in range(1, QUESTIONS + 1)]).tobytes())
    return found


@dataclass(frozen=True, slots=True)
class Everyone:
    """Each number is a paper, in so many forms."""

    forms: int

    def among(self, learners: Sequence[str]) -> dict[str, Seat]:
        """As an import finds them in the registry."""
        return {text: Seat(int(text), int(text), "", str((int(text) - 1) % self.forms), {}) for text in learners}


def marked_right(table: str, papers: int, keys: Sequence[bytes]) -> int:
    """Our reading and marking: verdict, points and misconceptions of each answer; returns how many are right.

    The papers come as an import takes them; nothing is written.
    """
    right, everyone = 0, plain(pieces(table.encode()), Everyone(len(keys)))
    read: dict[str, MarkingKey] = {}
    while some := list(islice(everyone, AT_ONCE)):
        sheets = []
        for seat, questions, answers in some:
            content, labels = seat.content, labels_of(questions)
            key = read.get(content) or unpacked(keys[int(content)])
            assert key is not None
            assert labels is not None
            if len(keys) <= FORMS:
                read[content] = key
            sheets.append(Sheet(seat.paper, key, labels, answers, lambda _: ()))
        right += marked(sheets).verdicts.count("right")
    return right


def compared(table: str, papers: int, keys: Sequence[bytes]) -> int:
    """The same table by the csv library, its answers as an array, compared with the keys; nothing else."""
    known = np.frombuffer(b"".join(keys)).reshape(-1, QUESTIONS)
    rows = list(csv.reader(io.StringIO(table)))[1:]
    answers = np.array([row[2] or "nan" for row in rows]).astype(float).reshape(papers, QUESTIONS)
    return int(np.count_nonzero(np.abs(answers - known[np.arange(papers) % len(keys)]) <= 1e-9))


def marking_result(runs: int, papers: int = PAPERS, *, own_numbers: bool) -> Result:
    """Reading and marking against reading and bare compares."""
    forms = papers if own_numbers else FORMS
    table, keys = table_of(papers, forms), packed_keys(forms)
    bare_keys = key_table(keys)
    kind = "each with its own numbers" if own_numbers else f"in {FORMS} forms"
    name = f"{papers:,} papers of {QUESTIONS} answers, {kind}, read and marked, against bare numpy compares and reading"
    with no_collecting():  # as an import does; for both
        return compare(
            name, lambda: marked_right(table, papers, keys), lambda: compared(table, papers, bare_keys), MARK_LIMIT,
            runs, time.process_time,
        )  # fmt: skip


def many_results(file: Path, results: int) -> int:
    """Answers by the hundred thousand, straight into the tables; returns the cohort."""
    with open_registry(file, now=NOW) as registry:
        by = add_person(registry, NewPerson("Meera"), by=None, now=NOW)
        give_role(registry, by, "coordinator", by=None, now=NOW)
        cohort = add_cohort(registry, "Upper Terrace", starts_on=date(2031, 5, 4), by=by, now=NOW)
    papers = results // QUESTIONS
    words = ("right", "not_yet", "right_from_earlier", "blank")
    connection = sqlite3.connect(file)
    with connection:
        connection.execute("insert into sittings values (1, ?, 's', null, null, '{}', '2031-05-04')", (cohort,))
        connection.execute("insert into contents values ('c', '{}')")
        names = ((n, f"Herder {n}") for n in range(2, papers + 2))
        connection.executemany("insert into people (id, name) values (?, ?)", names)
        own = ((n, 1, n + 1, n, 1, "en", "c") for n in range(1, papers + 1))
        connection.executemany("insert into papers values (?, ?, ?, ?, ?, ?, ?)", own)
        rows = (
            (p, q, 1, f"q{q}", f"c{q % 8}", "13", words[(p + q) % 4], 1, 1, "")
            for p in range(1, papers + 1) for q in range(1, QUESTIONS + 1)
        )  # fmt: skip
        connection.executemany("insert into answers values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)", rows)
    connection.close()
    return cohort


BARE_REPORT = """
select a.competency, count(*), sum(case when a.verdict in ('right', 'right_from_earlier') then 1 else 0 end),
  count(distinct p.person)
from answers a join papers p on p.id = a.paper join sittings s on s.id = p.sitting
where s.cohort = ? group by a.competency order by a.competency
"""


def bare_report(file: Path, cohort: int) -> list[tuple[Any, ...]]:
    """The report's SQL alone."""
    connection = sqlite3.connect(file)
    try:
        return connection.execute(BARE_REPORT, (cohort,)).fetchall()
    finally:
        connection.close()


def report_result(runs: int, results: int = RESULTS) -> Result:
    """The report on competencies against its SQL."""
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "registry.sqlite"
        cohort = many_results(file, results)
        with open_registry(file, now=NOW) as registry:
            return compare(
                f"the report on competencies over {results:,} answers, against its SQL alone",
                lambda: competency_report(registry, cohort), lambda: bare_report(file, cohort), REPORT_LIMIT, runs,
            )  # fmt: skip


def results(runs: int = 3) -> list[Result]:
    """All comparisons."""
    return [
        *(memory_result(own_numbers=own) for own in (True, False)),
        *(import_result(runs, own_numbers=own) for own in (True, False)),
        *(marking_result(runs, own_numbers=own) for own in (True, False)),
        report_result(runs),
    ]


if __name__ == "__main__":
    for result in results():
        print(result)  # noqa: T201 (this is what the benchmark is for)
