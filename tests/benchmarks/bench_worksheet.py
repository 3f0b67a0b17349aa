"""Personal worksheets of a class, against the same pages replayed in plain ReportLab.

The baseline knows where every string and line stands: it lays nothing out and breaks no line. It shapes each Hindi
string as it draws it, which plain ReportLab must. Ours starts each run with empty memory, so that a class pays for its
words.
"""

from __future__ import annotations

import time
from functools import cache
from pathlib import Path

from generator.curriculum import CourseContent, load
from generator.exercises import Person, Record, make_set
from generator.sheets import text, worksheet_pdf
from tests.benchmarks import Result, compare
from tests.sheets.recorder import Recording, recording, replay

LEARNERS = 12
QUESTIONS = 0
"""All of the module's: ten pages each."""
LIMIT = 1.5


@cache
def course() -> CourseContent:
    """The course as it is shipped."""
    loaded = load(Path(__file__).parents[2])
    assert loaded.content is not None, loaded.problems
    return loaded.content


def class_set(language: str) -> Record:
    """A class of learners, each with other numbers."""
    people = [Person(f"Goat herder {chr(ord('A') + number)}") for number in range(LEARNERS)]
    return make_set(course(), "frame", people, "bench", language, tool="bench", questions=QUESTIONS)


def recorded(record: Record) -> Recording:
    """What the worksheets of a set draw."""
    with recording() as made:
        worksheet_pdf(record, course())
    return made


def ours(record: Record) -> bytes:
    """The worksheets, with nothing remembered from earlier ones."""
    text.shaped.cache_clear()
    text.broken.cache_clear()
    return worksheet_pdf(record, course())


def results(runs: int = 9) -> list[Result]:
    """One comparison for each language."""
    found = []
    for language in ("en", "hi"):
        record = class_set(language)
        made = recorded(record)
        name = f"{made.pages} worksheet pages ({language}) against the same pages replayed in plain ReportLab"
        found.append(compare(name, lambda r=record: ours(r), lambda m=made: replay(m), LIMIT, runs, time.process_time))  # type: ignore[misc]
    return found


if __name__ == "__main__":
    for result in results():
        print(result)  # noqa: T201 (this is what the benchmark is for)
