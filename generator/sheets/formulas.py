"""The formula sheet on paper: what an exam lends to those whose question sends them there."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from generator.calculations import BOOK
from generator.curriculum import CourseContent, first_taught
from generator.formula import plain_text
from generator.sheets.flow import Column, Piece, Row, Text
from generator.sheets.formula_flow import Formula, explained
from generator.sheets.page import About, Part, content_hash, sheet_pdf
from generator.sheets.styles import HEADING, NOTE, TEXT_WIDTH, TITLE
from generator.sheets.working import word_of
from generator.words import Words

_GAP = 18.0
"""Points between two columns."""


def formulas_pdf(language: str, content: CourseContent, modules: Collection[str] = ()) -> bytes:
    """Each quantity that the modules teach, with its formula, what its letters stand for, its unit, and how sure it is.

    Args:
        language: language code.
        content: the course.
        modules: only what these teach; none for all.

    Raises:
        MachineError: shaping is missing, or a sign has no glyph.
    """
    words = content.words[language]
    title = words.say("page.formulas.title")
    wanted = [one for one in content.modules.values() if not one.retired and (not modules or one.id in modules)]
    pieces: list[Piece] = [Text(title, TITLE), Text(words.say("sheet.formulas_about"), NOTE.but(after=6.0))]
    said: list[str] = []
    for module, names in first_taught(content, wanted):
        heading = Text(module.title[language], HEADING)
        heading.outline = module.title[language]
        pieces += [heading, *_beside(names, words)]
        said += [heading.outline, *(plain_text(BOOK, name, word=word_of(words)) for name in names)]
    named = f"{title} · {wanted[0].title[language]}" if len(wanted) == 1 else title
    about = About(named, language, content.course.version, content_hash({"formulas": "\n".join(said).encode("utf-8")}))
    return sheet_pdf(about, [Part(named, title, named, named, words, pieces)])


def _beside(names: Sequence[str], words: Words) -> Iterator[Piece]:
    """The entries in their order, two side by side where both formulas are narrow enough."""
    column = (TEXT_WIDTH - _GAP) / 2
    waiting = list(names)
    while waiting:
        some = [name for name in waiting[:2] if Formula(name, words).natural_width <= column]
        if some != waiting[:2]:
            some = waiting[:1]
        del waiting[: len(some)]
        cells: list[tuple[float | None, Piece]] = [(None if len(some) == 1 else column, _entry(n, words)) for n in some]
        yield Row(cells, gap=_GAP, after=5.0)


def _entry(name: str, words: Words) -> Piece:
    quantity = BOOK.quantities[name]
    unit = words.say_one_of("unit", quantity.unit) if quantity.unit else words.say("page.formulas.no_unit")
    sure = words.say_one_of("status", quantity.source.status.value)
    warns = "" if quantity.source.status.decides else f" {words.say('page.formulas.only_warns')}"
    told = f"{words.say('page.formulas.unit')}: {unit} · {words.say('page.formulas.status')}: {sure}{warns}"
    return Column([explained(name, words), Text(told, NOTE)])
