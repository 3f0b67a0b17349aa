"""Walking through the texts of a model, and putting numbers of the place where ``value()`` asks for them."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from math import ceil
from typing import Any, TypeVar

from pydantic import BaseModel

from generator.curriculum.calls import IN_TEXTS, Call, Fault, calls
from generator.curriculum.signs import DANDA, danda_fault
from generator.formula import Book, Quantity, UnknownNameError, show, show_full
from generator.problems import Loc
from generator.problems.plain_errors import did_you_mean
from generator.words import MissingWordError, Words

AnyModel = TypeVar("AnyModel", bound=BaseModel)
Change = Callable[[Loc, str, str], str]
"""Place of a text, its language and the text; gives the new text."""


@dataclass(frozen=True, slots=True)
class LocalPart:
    """One language's side of a text.

    Args:
        loc: path to the text in all languages.
        language: language code.
        text: as written in the file.
    """

    loc: Loc
    language: str
    text: str


def texts_of(model: BaseModel, loc: Loc = ()) -> Iterator[LocalPart]:
    """All the texts of a model that people read, in the order of its fields.

    Args:
        model: any model of the content.
        loc: path of the model inside its file.
    """
    found: list[LocalPart] = []

    def note(place: Loc, language: str, text: str) -> str:
        found.append(LocalPart(place, language, text))
        return text

    _changed(model, loc, note)
    yield from found


def with_texts(model: AnyModel, change: Change) -> AnyModel:
    """A copy of a model with every text changed; the same model where nothing changes."""
    changed: AnyModel = _changed(model, (), change)
    return changed


def _changed(value: Any, loc: Loc, change: Change) -> Any:
    if isinstance(value, BaseModel):
        updates: dict[str, Any] = {}
        for name in type(value).model_fields:
            before = getattr(value, name)
            after = _changed(before, (*loc, name), change)
            if after is not before:
                updates[name] = after
        return value.model_copy(update=updates) if updates else value
    if isinstance(value, tuple):
        items = tuple(_changed(item, (*loc, position), change) for position, item in enumerate(value))
        return items if any(a is not b for a, b in zip(items, value, strict=True)) else value
    if isinstance(value, Mapping):
        if all(isinstance(text, str) for text in value.values()):
            texts = {language: change(loc, language, text) for language, text in value.items()}
            return value if texts == value else texts
        entries = {key: _changed(entry, (*loc, key), change) for key, entry in value.items()}
        return entries if any(entries[key] is not value[key] for key in value) else value
    return value


class Filler:
    """Gives the words for a call, or the fault that it is.

    Args:
        book: the calculation module.
        values: everything known at each place.
        words: words by language.
        all_places: whether `values` names every place; not where a place's file could not be read.
    """

    def __init__(
        self,
        book: Book,
        values: Mapping[str, Mapping[str, float]],
        words: Mapping[str, Words],
        *,
        all_places: bool = True,
    ) -> None:
        self.book = book
        self.values = values
        self.words = words
        self.all_places = all_places

    def text(self, text: str, place: str, language: str) -> str:
        """A text with its calls filled; a faulty call stays as it is (`faults` tells it)."""
        parts: list[str] = []
        end = 0
        for call in calls(text, IN_TEXTS):
            if isinstance(call, Call):
                said = self.said(call, text, place, language)
                parts += [text[end : call.start], said if isinstance(said, str) else text[call.start : call.end]]
                end = call.end
        return "".join([*parts, text[end:]])

    def faults(self, text: str, place: str, language: str) -> Iterator[Fault]:
        """Everything wrong with a text's calls."""
        for call in calls(text, IN_TEXTS):
            said = call if isinstance(call, Fault) else self.said(call, text, place, language)
            if isinstance(said, Fault):
                yield said

    def said(self, call: Call, text: str, place: str, language: str) -> str | Fault:
        """The words that a `value` or `plain` call leaves.

        Args:
            call: the call.
            text: the text that it stands in.
            place: the place whose numbers count where the call names none.
            language: language code.
        """
        if call.name == "plain":
            return call.argument
        fault = self.unknown(call, text, place)
        if fault is not None:
            return fault
        number = self.values.get(call.place or place, {}).get(call.argument)
        words = self.words.get(language)
        if number is None or words is None:
            return text[call.start : call.end]  # the place or the words file has its own problem
        entry = self.book.entry(call.argument)
        shown = show(number, entry.places) if isinstance(entry, Quantity) else show_full(number)
        try:
            said = words.with_unit(shown, entry.unit)
        except MissingWordError:
            return shown  # the missing word is told where the words are checked
        if said[-1] in "0123456789" and text[call.end :].lstrip(" ").startswith(DANDA):
            return danda_fault(call.start, f"{text[call.start : call.end]}{DANDA}")
        return said

    def unknown(self, call: Call, text: str, place: str) -> Fault | None:
        """What is wrong with the quantity or given that a call names, at its place."""
        typed, name = text[call.start : call.end], call.rows_of or call.argument
        at = call.place or place
        if not at:
            fix = f'name one: {{{{ {call.name}("{call.argument}", place="...") }}}}'
            return Fault(call.start, typed, "no-place", "this text belongs to no place, so it has no numbers", fix)
        if call.place is not None and self.all_places and at not in self.values:
            return Fault(call.start, typed, "unknown-place", f"unknown place '{at}'", did_you_mean(at, [*self.values]))
        try:
            self.book.entry(name)
        except UnknownNameError:
            what = f"unknown quantity or given '{name}'"
            names = [*self.book.quantities, *self.book.givens]
            return Fault(call.start, typed, "unknown-quantity", what, did_you_mean(name, names))
        if self.values.get(at) and name not in self.values[at]:
            return Fault(
                call.start,
                typed,
                "not-at-place",
                f"'{name}' is not known at '{at}'",
                self.needed(name, at),
            )
        return None

    def rows(self, call: Call, place: str) -> int:
        """As many rows as the quantity has at a place, rounded up; one where it is not known there."""
        return max(1, ceil(round(self.values.get(place, {}).get(call.rows_of, 1.0), 6)))

    def needed(self, name: str, place: str) -> str:
        """The fix for a value that a place does not reach: the givens that it lacks."""
        lacking = [each for each in self.book.needs(name) if each not in self.values[place]]
        return f"add {' and '.join(lacking)} to the givens of the place '{place}'"
