"""What the page needs to ask and mark a module's questions in one language, and the script that does it."""

from __future__ import annotations

import json
from collections.abc import Mapping
from importlib.resources import files
from typing import Any, TypeAlias

from generator.calculations import BOOK
from generator.curriculum import CourseContent
from generator.curriculum.models import (
    NumberChoiceQuestion,
    NumberQuestion,
    Question,
    SpokenChoiceQuestion,
    SpokenNumberQuestion,
    WorkedQuestion,
)
from generator.exercises.demand import counted
from generator.exercises.draw import Recipe, recipe, steps_between, wanted_demand
from generator.exercises.make import FigureAreas, credit_parts, make_item, make_scenario
from generator.exercises.numbers import LONGEST, MOST_DIGITS, SIGNS
from generator.exercises.spoken import unmarked
from generator.exercises.tolerance import is_count
from generator.exercises.units import BY_SPELLING, UNITS
from generator.formula import Book
from generator.words import Words

Json: TypeAlias = dict[str, Any]


def page_data(content: CourseContent, module_id: str, language: str, book: Book = BOOK) -> Json:
    """The questions and scenarios of a module as the page's script takes them.

    Args:
        content: the course.
        module_id: whose questions.
        language: of all texts.
        book: where the quantities live.

    Returns:
        `format`, `module`, `language`; `questions` by id, in the bank's order, each fit for `Tankschool.marker.item`;
        `scenarios` by id, each an item; `formulas`, the names that `Book.javascript` must carry for them.
    """
    words = content.words[language]
    questions = [question for question in content.questions_of(module_id) if not question.retired]
    scenarios = [s for s in content.scenarios.values() if s.module == module_id and not s.retired]
    items = [make_scenario(scenario, content.values(scenario.place), words, book) for scenario in scenarios]
    asks = {question.asks for question in questions if isinstance(question, WorkedQuestion)}
    asks |= {part.asks for item in items for part in item.parts}
    return {
        "format": 1,
        "module": module_id,
        "language": language,
        "questions": {question.id: question_data(question, words, book) for question in questions},
        "scenarios": {item.id: item.model_dump(mode="json") for item in items},
        "formulas": sorted(asks),
    }


def question_data(question: Question, words: Words, book: Book = BOOK, areas: FigureAreas | None = None) -> Json:
    """One question as the page's script takes it.

    Args:
        question: of the bank.
        words: of the page's language.
        book: where the quantities live.
        areas: as in `make_item`.
    """
    extra = {"difficulty": question.difficulty, "figure": question.figure, "language": words.language}
    text = question.text[words.language]
    if isinstance(question, NumberQuestion):
        data = extra | {"kind": "number", "text": text} | _worked(question, words, book)
        return data | {"aids": list(question.aids), "units": list(question.units)}
    if isinstance(question, NumberChoiceQuestion):
        return extra | {"kind": "choice", "text": text} | _worked(question, words, book)
    if isinstance(question, SpokenNumberQuestion):
        answer = extra | {"kind": "number", "text": unmarked(text)} | _worked(question, words, book)
        hint = answer["hint"]
        about = {"id": question.id, "competency": question.competency, "hint": hint}
        return extra | about | {"kind": "spoken", "script": text, "answer": answer}
    shown = make_item(question, "", words, book, areas).model_dump(mode="json")
    shown.pop("order", None)  # the page draws its own
    if isinstance(question, SpokenChoiceQuestion):
        del shown["answer"]["order"]
        shown["script"] = text
    return shown | extra


def _worked(question: WorkedQuestion, words: Words, book: Book) -> Json:
    """What drawing and marking a question that the calculation module answers needs."""
    made = recipe(question, book)
    quantity = book.quantities[question.asks]
    steps = steps_between(book, question.asks, question.given)
    return {
        "id": question.id,
        "competency": question.competency,
        "hint": question.hint[words.language] if question.hint else None,
        "asks": question.asks,
        **_entry(question.asks, words, book),
        "places": quantity.places,
        "count": is_count(quantity),
        "absolute": made.tolerance.absolute,
        "relative": made.tolerance.relative,
        "rule": made.rule,
        "grain": made.grain,
        "demand": wanted_demand(made),
        "aids": [],
        "units": [],
        "parameters": [
            {"name": parameter.name, "choices": parameter.choices, **_entry(parameter.name, words, book)}
            for parameter in made.parameters
        ],
        "misconceptions": list(made.misconceptions),
        "also": list(made.also),
        "steps": [
            {"name": name, "places": book.quantities[name].places, "low": book.entry(name).low,
             "high": book.entry(name).high, "counted": counted(book, name)}
            for name in steps
        ],
        "credit": [_credit(part, words, book) for part in credit_parts(made, question.given)],
    }  # fmt: skip


def _credit(part: Recipe, words: Words, book: Book) -> Json:
    quantity = book.quantities[part.asks]
    return {
        "id": part.id,
        "text": words.say_one_of("quantity", part.asks),
        "asks": part.asks,
        "unit": quantity.unit,
        "low": quantity.low,
        "high": quantity.high,
        "places": quantity.places,
        "absolute": part.tolerance.absolute,
        "relative": part.tolerance.relative,
        "misconceptions": list(part.misconceptions),
        "also": list(part.also),
    }


def _entry(name: str, words: Words, book: Book) -> Json:
    entry = book.entry(name)
    word = words.say_one_of("unit", entry.unit) if entry.unit else ""
    for_one = words.unit_after("1", entry.unit) if entry.unit else ""
    found = {"unit": entry.unit, "unit_word": word, "low": entry.low, "high": entry.high}
    return found | ({"unit_for_one": for_one} if for_one != word else {})


def marker_script() -> str:
    """The script that draws and marks, with its tables of signs and units; it follows formula.js in the page."""
    code = files("generator.exercises").joinpath("marker.js").read_text(encoding="utf-8")
    tables: Mapping[str, object] = {
        "longest": LONGEST,
        "mostDigits": MOST_DIGITS,
        "signs": SIGNS,
        "spellings": {text: unit.name for text, unit in BY_SPELLING.items()},
        "units": {unit.name: [unit.kind, unit.factor] for unit in UNITS},
    }
    return f"{code}Tankschool.marker.load({json.dumps(tables, ensure_ascii=True, sort_keys=True)});\n"
