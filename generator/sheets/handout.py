"""A handout: a text with drawings, formulas, worked examples and boxed cautions, for the pocket or the wall."""

from __future__ import annotations

from collections.abc import Iterator

from generator.calculations import BOOK
from generator.curriculum import (
    Block,
    CautionBlock,
    CourseContent,
    ExerciseBlock,
    FigureBlock,
    FormulaBlock,
    Prose,
    WorkedBlock,
)
from generator.figures import draw
from generator.problems import RefusedError
from generator.sheets.figure_flow import captioned
from generator.sheets.flow import Box, Column, Piece, Row, Text
from generator.sheets.formula_flow import explained
from generator.sheets.markdown_flow import pieces_of
from generator.sheets.page import About, Part, content_hash, sheet_pdf
from generator.sheets.signs import Caution
from generator.sheets.styles import NOTE, SUBHEADING, TIGHT, TITLE
from generator.sheets.working import worked_pieces
from generator.words import Words


def handout_pdf(handout_id: str, language: str, content: CourseContent) -> bytes:
    """A handout in one language.

    Args:
        handout_id: of `handouts/*.yaml`.
        language: language code.
        content: the course.

    Raises:
        RefusedError: a block or a piece of Markdown that paper can't show.
        MachineError: shaping is missing, or a sign has no glyph.
    """
    handout = content.handouts[handout_id]
    words = content.words[language]
    title = handout.title[language]
    module = content.modules[handout.module].title[language]
    pieces: list[Piece] = [Text(title, TITLE), Text(content.places[handout.place].name[language], NOTE.but(keep=True))]
    for block in content.handout_texts[handout_id, language]:
        pieces += _pieces(block, handout.module, content, words)
    about = About(title, language, content.course.version, content_hash(content.sources_of(handout.module)))
    return sheet_pdf(about, [Part(title, module, title, title, words, pieces)])


def _pieces(block: Block, module: str, content: CourseContent, words: Words) -> Iterator[Piece]:
    match block:
        case Prose():
            yield from pieces_of(block.markdown)
        case FigureBlock():
            yield captioned(draw(block.figure, content.values(block.place), words))
        case CautionBlock():
            found = next(c for c in content.modules[module].cautions if c.id == block.caution)
            yield caution(found.text[words.language], words)
        case FormulaBlock():
            yield explained(block.quantity, words)
        case WorkedBlock():
            steps = BOOK.trace(block.quantity, _givens(block.quantity, content.values(block.place)))
            yield Box(Column(list(worked_pieces(steps, words))), before=3.0, after=7.0)
        case ExerciseBlock():
            raise RefusedError(f"a handout can't hold the exercise '{block.question}': only worksheets print exercises")


def caution(text: str, words: Words) -> Piece:
    """A danger in a thick box with the drawn sign and the word for it."""
    column = Column([Text(words.say("sheet.caution"), SUBHEADING.but(before=0.0)), Text(text, TIGHT)])
    return Box(Row([(Caution.side, Caution()), (None, column)], gap=9), line=2.0, padding=7.0, before=4.0, after=7.0)


def _givens(quantity: str, values: dict[str, float]) -> dict[str, float]:
    return {name: values[name] for name in BOOK.needs(quantity)}
