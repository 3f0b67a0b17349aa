"""Personal worksheets of a thousand learners with their keys, against the same pages replayed in plain ReportLab.

Three things: pages a second on one core; most memory of the whole run, from the class list to the record, for 100,
1,000 and 10,000 learners; and the time of two processes against one. Memory is that of the largest process, the one
that made the numbers included. `TANKSCHOOL_BENCH_LEARNERS=1000` leaves the longest run out.
"""

from __future__ import annotations

import os
import tempfile
import time
from pathlib import Path

from generator.commands.class_sheets import print_set
from generator.exercises import Person, Record, make_set
from generator.sheets import key_pdf, text, worksheet_pdf
from tests.benchmarks import Result, compare
from tests.benchmarks.bench_memory import Peak
from tests.benchmarks.bench_worksheet import course
from tests.benchmarks.probe import most_memory
from tests.sheets.recorder import Recording, recording, replay

FEW, MANY = 100, 1000
MOST = int(os.environ.get("TANKSCHOOL_BENCH_LEARNERS", "10000"))
"""Learners of the largest class."""
QUESTIONS = 6
"""Of each learner: two pages, some three."""
LIMIT = 1 / 0.9
"""At least 0.9 times the pages a second of the baseline."""
FLAT = 1.25
"""Most memory of a large class, as a multiple of that of the small one."""
SHARED = 0.85
"""Two processes against one, where there are two cores: each reads the course first."""
_PROBE = """
import sys, tempfile
from pathlib import Path
from generator.commands.class_sheets import Asked, write_class_set
from generator.commands.tool import ProgressLine
from tests.benchmarks.bench_worksheets_many import QUESTIONS, course
with tempfile.TemporaryDirectory() as folder:
    names = Path(folder) / "names.csv"
    names.write_text("name\\n" + "".join(f"Goat herder {n}\\n" for n in range(1, int(sys.argv[1]) + 1)), "utf-8")
    asked = Asked("frame", "en", "bench", QUESTIONS)
    files = write_class_set(course(), names, asked, Path(folder), ProgressLine(quiet=True), processes=2)
    assert all(file.stat().st_size for file in files)
"""


def class_set(language: str, learners: int) -> Record:
    """A class of learners, each with other numbers."""
    people = [Person(f"Goat herder {number}") for number in range(1, learners + 1)]
    return make_set(course(), "frame", people, "bench", language, tool="bench", questions=QUESTIONS)


def recorded(record: Record) -> list[Recording]:
    """What the worksheets and the keys of a set draw."""
    with recording() as sheets:
        worksheet_pdf(record, course())
    with recording() as keys:
        key_pdf(record, course())
    return [sheets, keys]


def ours(record: Record) -> list[bytes]:
    """Worksheets and keys, with nothing remembered from earlier ones."""
    text.shaped.cache_clear()
    text.broken.cache_clear()
    return [worksheet_pdf(record, course()), key_pdf(record, course())]


def memory_of(learners: int) -> float:
    """Most memory of a printing process [MB]."""
    return most_memory(_PROBE, str(learners))


def timed(record: Record, processes: int) -> float:
    """Seconds that a class takes."""
    with tempfile.TemporaryDirectory() as folder:
        start = time.perf_counter()
        print_set(record, course(), Path(folder), processes=processes)
        return time.perf_counter() - start


def results(runs: int = 5) -> list[Result | Peak]:
    """Pages a second by language; memory; cores."""
    found: list[Result | Peak] = []
    for language in ("en", "hi"):
        record = class_set(language, FEW)
        made = recorded(record)
        pages = sum(one.pages for one in made)
        name = f"{pages} pages of {FEW} worksheets and keys ({language}) against the same pages replayed"
        found.append(
            compare(name, lambda r=record: ours(r), lambda m=made: [replay(one) for one in m], LIMIT, runs,  # type: ignore[misc]
                    time.process_time)
        )  # fmt: skip
    few = memory_of(FEW)
    for learners in sorted({MANY, MOST}):
        told = f"printing {learners} learners, against {FLAT:g} times the memory of {FEW}"
        found.append(Peak(told, memory_of(learners), FLAT * few, 1.0))
    record = class_set("en", MANY)
    found.append(Result(f"{MANY} learners by two processes against one", timed(record, 2), timed(record, 1), SHARED))
    return found


if __name__ == "__main__":
    for result in results():
        print(result)  # noqa: T201 (this is what the benchmark is for)
