"""Texts with their numbers in place, and the worked solution of a question."""

from __future__ import annotations

import re
from collections.abc import Mapping

from generator.calculations import BOOK
from generator.curriculum.models import WorkedQuestion
from generator.exercises.items import NumberItem
from generator.formula import Book, Step, show, show_full
from generator.words import Words

SLOT = re.compile(r"\{([a-z][a-z0-9_]*)\}")


def fill_text(text: str, givens: Mapping[str, float], words: Words, book: Book = BOOK) -> str:
    """A text with every `{name}` replaced by its number and unit, as given and never rounded.

    Args:
        text: of an author.
        givens: by name; a slot without a number stays as it stands, which `check` reports.
        words: of the text's language.
        book: gives the units.
    """

    def number(match: re.Match[str]) -> str:
        name = match[1]
        if name not in givens:
            return match[0]
        return words.with_unit(show_full(givens[name]), book.entry(name).unit)

    return SLOT.sub(number, text)


def fill(question: WorkedQuestion, givens: Mapping[str, float], words: Words, book: Book = BOOK) -> str:
    """The question's text in the language of the words, with its givens shown with their units."""
    return fill_text(question.text[words.language], givens, words, book)


def aids_said(item: NumberItem, words: Words) -> str:
    """What may be used for a question, in words."""
    return words.say("exercise.aids", aids=", ".join(words.say_one_of("exercise.aid", aid) for aid in item.aids))


def rounding_said(item: NumberItem, words: Words) -> str:
    """How the worked-out number becomes the answer, where the question asks for a rounded one; empty where it stays."""
    if not item.rule or item.exact is None:
        return ""
    exact = words.with_unit(show(item.exact, item.places), item.unit)
    answer = words.with_unit(item.shown_key, item.unit)
    return words.say("exercise.rounded", exact=exact, answer=answer) if exact != answer else ""


def worked(question: WorkedQuestion, givens: Mapping[str, float], book: Book = BOOK) -> tuple[Step, ...]:
    """The worked solution of a question with these givens.

    Raises:
        OutOfRangeError: a given or a step outside its range.
    """
    return book.trace(question.asks, givens)
