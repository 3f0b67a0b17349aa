"""Whether the texts of the content say what they should: slots, calls, no number typed by hand, the right signs."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from pydantic import BaseModel

from generator.curriculum.calls import Fault, without_calls
from generator.curriculum.files import Found, Reading
from generator.curriculum.models import (
    Bank,
    Course,
    Handout,
    Module,
    Place,
    Practical,
    QuestionBase,
    Scenario,
    WorkedQuestion,
)
from generator.curriculum.signs import dandas_behind_digits, pipes_for_dandas
from generator.curriculum.texts import Filler, texts_of
from generator.curriculum.trade_numbers import typed_by_hand
from generator.problems import Loc, Problem, few
from generator.problems.plain_errors import did_you_mean

NOT_KNOWN = "?"
"""Stands for the place of a thing whose module is not there: that has its own problem."""
_WITH_TEXTS = (
    "competency", "place", "module", "scenario", "practical", "scheme", "handout", "question", "term", "fault",
)  # fmt: skip
_SLOT = re.compile(r"\{([^{}\n]*)\}")


def text_problems(reading: Reading, filler: Filler) -> Iterator[Problem]:
    """Everything wrong inside the texts of the YAML files.

    Args:
        reading: the files.
        filler: gives the numbers for calls.
    """
    places = places_of_modules(reading)
    if reading.course is not None and isinstance(reading.course.model, Course):
        yield from _model(reading.course.model, reading.course, "", filler)
    for kind in _WITH_TEXTS:
        for found in reading.things.get(kind, {}).values():
            yield from few(found.file.name, _model(found.model, found, place_for(found, places), filler))


def places_of_modules(reading: Reading) -> dict[str, str]:
    """The place of each module by its id, and of each bank's questions by the bank's file."""
    places = {name: module.place for name, module, _ in reading.all("module", Module)}
    for _, bank, found in reading.all("bank", Bank):
        places[found.file.name] = places.get(bank.module, NOT_KNOWN)
    return places


def place_for(found: Found, places: Mapping[str, str]) -> str:
    """The place whose numbers a thing's texts use; empty where it has none of its own.

    Args:
        found: a thing of the content.
        places: from `places_of_modules`.
    """
    model = found.model
    if isinstance(model, Place):
        return model.id
    if isinstance(model, Module | Scenario | Handout):
        return model.place
    if isinstance(model, Practical):
        return places.get(model.module, NOT_KNOWN)
    return places.get(found.file.name, NOT_KNOWN) if isinstance(model, Bank | QuestionBase) else ""


def _model(model: BaseModel, found: Found, place: str, filler: Filler) -> Iterator[Problem]:
    allowed = _slots(model)
    used: dict[str, set[str]] = {}
    for part in texts_of(model):
        loc = (*found.loc, *part.loc, part.language)
        faults = [*_faults(part.text, place, part.language, filler)]
        for match in _SLOT.finditer(without_calls(part.text)):
            used.setdefault(part.language, set()).add(match[1])
            if match[1] not in allowed:
                fix = (
                    did_you_mean(match[1], sorted(allowed))
                    if allowed
                    else 'write the number with {{ value("...") }}, or no braces'
                )
                faults.append(Fault(match.start(), match[0], "unknown-slot", f"unknown slot '{match[0]}'", fix))
        yield from (_at(found, loc, part.text, fault) for fault in faults)
    yield from _missing_slots(model, found, allowed, used)


def _faults(text: str, place: str, language: str, filler: Filler) -> Iterator[Fault]:
    yield from filler.faults(text, place, language)
    yield from typed_by_hand(text)
    yield from dandas_behind_digits(text)
    yield from pipes_for_dandas(text)


def _at(found: Found, loc: Loc, text: str, fault: Fault) -> Problem:
    before = text[: fault.start].count(fault.snippet)
    line, column = found.file.snippet_line_and_column(loc, fault.snippet, before)
    return Problem(found.file.name, line, column, fault.code, fault.what, fault.fix)


def _slots(model: BaseModel) -> frozenset[str]:
    """The slots that a model's texts may hold."""
    return frozenset(model.given) if isinstance(model, WorkedQuestion | Scenario) else frozenset()


def _missing_slots(
    model: BaseModel, found: Found, allowed: frozenset[str], used: Mapping[str, set[str]]
) -> Iterator[Problem]:
    """Givens that no text of a language names: the learner could not know them."""
    if not isinstance(model, WorkedQuestion | Scenario):
        return
    for language in model.text:
        here = used.get(language, set())
        if isinstance(model, WorkedQuestion):
            here = {match[1] for match in _SLOT.finditer(without_calls(model.text[language]))}
        for name in model.given:
            if name in allowed - here:
                loc = (*found.loc, "text", language)
                what = f"the text in language '{language}' does not name {{{name}}}"
                yield found.file.value_problem(loc, "missing-slot", what, f"add {{{name}}} where the learner needs it")
