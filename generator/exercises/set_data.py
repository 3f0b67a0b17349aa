"""What the page needs to make, save and mark a printed set: every question in all languages, and the record's shape.

`printed_set.js` is the twin of `class_list.py`, `answers.py`, `printed_set.py` and `record.py`: the same class list and
seed give the same record, to the last byte where the browser's arithmetic is the same.
"""

from __future__ import annotations

import json
import sys
import unicodedata
from functools import cache
from importlib.resources import files
from typing import Any

from generator.calculations import BOOK
from generator.curriculum import CourseContent
from generator.curriculum.models import SpotQuestion
from generator.exercises.answers import LARGEST_ANSWERS
from generator.exercises.class_list import LONGEST_NAME
from generator.exercises.letters import LETTERS
from generator.exercises.make import DEALS
from generator.exercises.page_data import page_data
from generator.exercises.printed_set import text_hash
from generator.exercises.record import FORMAT, LARGEST_RECORD, Record
from generator.figures import FIGURES
from generator.formula import Book, parse
from generator.problems.problem import MOST_REPORTED
from generator.problems.text_file import LIMIT

Json = dict[str, Any]
REPLACED = "~"
"""Key of a patch's leaf: what stands in the place of the first language's."""


def set_data(content: CourseContent, language: str, tool: str, book: Book = BOOK) -> Json:
    """All that the page needs to make and mark sets.

    Args:
        content: the course.
        language: of the page: its questions stand in full, those of other languages as what differs.
        tool: name and version of what makes the set.
        book: where the quantities live.
    """
    others = [other for other in content.course.languages if other != language]
    modules = [module for module in content.modules.values() if not module.retired]
    questions: Json = {}
    scenarios: Json = {}
    asks: set[str] = set()
    patches: dict[str, Json] = {other: {"questions": {}, "scenarios": {}} for other in others}
    order: dict[str, Json] = {}
    for module in modules:
        here = page_data(content, module.id, language, book)
        order[module.id] = {"questions": list(here["questions"]), "scenarios": list(here["scenarios"])}
        questions |= here["questions"]
        scenarios |= here["scenarios"]
        asks |= set(here["formulas"])
        for other in others:
            there = page_data(content, module.id, other, book)
            for kind in ("questions", "scenarios"):
                patches[other][kind] |= {key: patch(data, there[kind][key]) for key, data in here[kind].items()}
    sources = [*content.questions.values(), *content.scenarios.values()]
    return {
        "course": content.course.id,
        "course_version": content.course.version,
        "tool": tool,
        "language": language,
        "languages": list(content.course.languages),
        "modules": {key: found for key, found in order.items() if found["questions"] or found["scenarios"]},
        "questions": questions,
        "scenarios": scenarios,
        "patches": patches,
        "dealt": _dealt(content),
        "texts": {source.id: text_hash(source) for source in sources if not source.retired},
        "formulas": formula_lines(sorted(asks), book),
    }


def _dealt(content: CourseContent) -> Json:
    """For each question whose drawing letters its own places: the drawing, and the names that are dealt to them."""
    return {
        question.id: {"figure": question.figure, "names": list(kind.spot.names)}
        for question in content.questions.values()
        if isinstance(question, SpotQuestion) and not question.retired
        if (kind := FIGURES.get(question.figure)) is not None and kind.spot is not None
    }


def patch(one: Any, other: Any) -> Any:
    """What turns one value of JSON into another: by key or place where both are of the same build, else the other."""
    if isinstance(one, dict) and isinstance(other, dict) and one.keys() == other.keys():
        return {key: patch(value, other[key]) for key, value in one.items() if value != other[key]}
    if isinstance(one, list | tuple) and isinstance(other, list | tuple) and len(one) == len(other):
        return {
            str(place): patch(a, b) for place, (a, b) in enumerate(zip(one, other, strict=True)) if a != b
        }  # fmt: skip
    return {REPLACED: other}


def formula_lines(asks: list[str], book: Book = BOOK) -> Json:
    """The lines that `formulas_hash` hashes: for each asked quantity what it rests on, and every line of those."""
    needs = {name: sorted(book.ancestors([name])) for name in asks}
    names = {name for found in needs.values() for name in found}
    return {
        "needs": needs,
        "lines": {
            name: f"{name} {book.quantities[name].places} {parse(book.quantities[name].function)!r}"
            for name in sorted(names)
            if name in book.quantities
        },
        "mistakes": [
            [mistake.of, f"{name} instead of {mistake.of} {parse(mistake.function)!r}"]
            for name, mistake in sorted(book.misconceptions.items())
            if mistake.of in names
        ],
    }


@cache
def _letter_tables() -> Json:
    """Letters whose other case is not their small letter alone, and the runs of digits, as Python has them."""
    letters = [chr(code) for code in range(sys.maxunicode + 1) if not 0xD800 <= code < 0xE000]
    runs: list[list[int]] = []
    for letter in letters:
        if not letter.isdigit():
            continue
        if runs and runs[-1][1] == ord(letter) - 1:
            runs[-1][1] += 1
        else:
            runs.append([ord(letter), ord(letter)])
    folds = {letter: letter.casefold() for letter in letters if letter.casefold() != letter.lower()}
    return {"folds": folds, "digits": runs, "unicode": unicodedata.unidata_version}


def printed_set_script() -> str:
    """The script that makes, reads and marks sets in the page; it follows formula.js and marker.js."""
    code = files("generator.exercises").joinpath("printed_set.js").read_text(encoding="utf-8")
    rules: Json = _letter_tables() | {
        "format": FORMAT,
        "letters": LETTERS,
        "deals": DEALS,
        "limit": LIMIT,
        "largest_answers": LARGEST_ANSWERS,
        "largest_record": LARGEST_RECORD,
        "longest_name": LONGEST_NAME,
        "most_reported": MOST_REPORTED,
        "schema": Record.model_json_schema(),
    }
    return f"{code}Tankschool.printedSet.load({json.dumps(rules, ensure_ascii=True)});\n"
