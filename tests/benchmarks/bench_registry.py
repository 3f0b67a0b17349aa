"""The registry against the bare database: reading and marking a large table of answers, and a report over many.

The import reads the table, holds every row against its paper, marks it, seals it in the chain of events and writes it;
the baseline is the library's own `executemany` of the very same finished rows into the very same tables, with the same
settings, in one transaction. 10,000 papers of 40 answers stand for 100,000, which take ten times as long on both sides
and would keep `bench` busy for minutes; TANKSCHOOL_BENCH_PAPERS sets another count.

The papers come in 20 forms, each with numbers and keys of its own; a key remembers what it has marked. Where every
paper asks numbers of its own, reading its key and marking weigh more than all the rest: about 13 times the bare
writing.

Marking alone stands beside bare numpy compares of the same answers, both with the reading; the compares know of no
form of a number, no mistaken idea and no points.

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
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, date, datetime
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
from generator.registry.answers import _plain, _Seat
from generator.registry.chain import canonical, sha256
from tests.benchmarks import Result, compare
from tests.registry.small import small_marker

PAPERS = int(os.environ.get("TANKSCHOOL_BENCH_PAPERS", "10000"))
QUESTIONS = 40
FORMS = 20
"""Papers that differ in their numbers; each is marked by its own key."""
IMPORT_LIMIT = 3.0
MARK_LIMIT = 1.5
REPORT_LIMIT = 2.0
RESULTS = 1_000_000
NOW = datetime(2031, 5, 4, 9, tzinfo=UTC)


@dataclass(frozen=True, slots=True)
class Exam:
    """A registry with papers, and the table of answers that was typed from them."""

    file: Path
    sitting: int
    by: int
    table: bytes


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


def typed(paper: int, label: int) -> str:
    """What a learner writes: mostly right, sometimes a known mistake, sometimes nothing, sometimes any number."""
    key = 10 * ((paper - 1) % FORMS) + label
    luck = (paper * 7919 + label * 104729) % 100
    return str(key) if luck < 70 else str(key - 1) if luck < 85 else "" if luck < 90 else str(paper % 997 + label)


def exam(folder: Path, papers: int) -> Exam:
    """Enter everyone and archive their papers."""
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
    fill(file, sitting, cohort, papers)
    return Exam(file, sitting, by, table_of(papers).encode())


def fill(file: Path, sitting: int, cohort: int, papers: int) -> None:
    """The other people and papers, straight into the tables: this is not what is measured."""
    texts = [canonical(form(number)) for number in range(FORMS)]
    connection = sqlite3.connect(file)
    with connection:
        rows = [(sha256(text), text.encode()) for text in texts[1:]]
        connection.executemany("insert into contents values (?, ?)", rows)
        names = [
            (n + 1, f"Herder {n} of Tamarisk Ridge", f"herder {n} of tamarisk ridge") for n in range(2, papers + 1)
        ]
        connection.executemany("insert into people (id, name, name_key) values (?, ?, ?)", names)
        own = [(n, sitting, n + 1, n, 1, "en", sha256(texts[(n - 1) % FORMS])) for n in range(2, papers + 1)]
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


def import_result(runs: int, papers: int = PAPERS) -> Result:
    """Reading, marking and writing against writing alone."""
    with tempfile.TemporaryDirectory() as folder:
        scratch = Path(folder)
        made = exam(scratch, papers)
        with fresh(made, scratch) as registry:
            ours(made, registry)
            rows = finished_rows(registry)
        own = best_of(runs, made, scratch, lambda registry: ours(made, registry))
        alone = best_of(runs, made, scratch, lambda registry: bare(registry, rows))
    name = f"{papers:,} papers of {QUESTIONS} answers read, marked and recorded, against executemany of the same rows"
    return Result(name, own, alone, IMPORT_LIMIT)


def table_of(papers: int) -> str:
    """The typed table of so many papers."""
    rows = (f"{p},{q},{typed(p, q)}" for p in range(1, papers + 1) for q in range(1, QUESTIONS + 1))
    return "\n".join(["learner,question,answer", *rows]) + "\n"


def marked(table: str, papers: int) -> int:
    """Our reading and marking, with keys made anew: verdict, points and diagnosis of each; returns how many are right.

    The seats are those of an import; nothing is written.
    """
    keys = {str(number): small_marker(canonical(form(number)), "{}") for number in range(FORMS)}
    seats = {p: _Seat(p, f"Herder {p}", str((p - 1) % FORMS), keys.__getitem__, {}) for p in range(1, papers + 1)}
    right = 0
    for number, texts in _plain(table, seats):
        key = seats[number].key
        right += sum(row[3] == "right" for _, row, _ in key.mark(key.whole(texts)))
    return right


def compared(table: str, papers: int) -> int:
    """The same table by the csv library, its answers as an array, compared with the keys; nothing else."""
    keys = np.array([[10.0 * n + label for label in range(1, QUESTIONS + 1)] for n in range(FORMS)])
    rows = list(csv.reader(io.StringIO(table)))[1:]
    answers = np.array([row[2] or "nan" for row in rows]).astype(float).reshape(papers, QUESTIONS)
    return int(np.count_nonzero(np.abs(answers - keys[np.arange(papers) % FORMS]) <= 1e-9))


def marking_result(runs: int, papers: int = PAPERS) -> Result:
    """Reading and marking against reading and bare compares."""
    table = table_of(papers)
    name = f"{papers:,} papers of {QUESTIONS} answers read and marked, against bare numpy compares and reading"
    return compare(
        name, lambda: marked(table, papers), lambda: compared(table, papers), MARK_LIMIT, runs, time.process_time
    )


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
    return [import_result(runs), marking_result(runs), report_result(runs)]


if __name__ == "__main__":
    for result in results():
        print(result)  # noqa: T201 (this is what the benchmark is for)
