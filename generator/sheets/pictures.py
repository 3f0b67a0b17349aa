"""A module in pictures, for learners who read little: one drawing and one short sentence a row."""

from __future__ import annotations

from generator.curriculum import CourseContent
from generator.curriculum.models import Card, Module
from generator.figures import draw
from generator.problems import RefusedError
from generator.sheets.figure_flow import NARROWEST, Figure
from generator.sheets.flow import Box, Column, Piece, Row, Text
from generator.sheets.handout import caution
from generator.sheets.page import About, Part, content_hash, sheet_pdf
from generator.sheets.signs import Number
from generator.sheets.styles import BODY, NOTE, TITLE
from generator.words import Words

_SENTENCE = BODY.but(size=15.0, bold=True, after=6.0)
_HIGHEST = 210.0
_NUMBER = 26.0


def pictures_pdf(module_id: str, language: str, content: CourseContent) -> bytes:
    """The pictures of a module on paper.

    Args:
        module_id: of a module that has cards.
        language: language code.
        content: the course.

    Raises:
        RefusedError: the module has no cards.
        MachineError: shaping is missing.
    """
    module = content.modules[module_id]
    words = content.words[language]
    if not module.cards:
        raise RefusedError(f"the module '{module_id}' has no pictures: write 'cards' in its module.yaml")
    title = module.title[language]
    pieces: list[Piece] = [Text(title, TITLE), Text(words.say("sheet.pictures_how"), NOTE)]
    pieces.append(Text(words.say("sheet.not_a_design"), NOTE.but(after=6.0)))
    pieces += [_row(number, card, module, content, words) for number, card in enumerate(module.cards, start=1)]
    name = f"{words.say('sheet.pictures')} · {title}"
    about = About(name, language, content.course.version, content_hash(content.sources_of(module_id)))
    return sheet_pdf(about, [Part(name, title, title, name, words, pieces)])


def _row(number: int, card: Card, module: Module, content: CourseContent, words: Words) -> Piece:
    scene = draw(card.figure, content.values(module.place), words)
    sentence = Text(card.text[words.language], _SENTENCE)
    said: list[Piece] = [Row([(_NUMBER, Number(str(number))), (None, sentence)], gap=7.0, after=6.0)]
    if card.caution is not None:
        said.append(caution(card.caution[words.language], words))
    picture: list[tuple[float | None, Piece]] = [(NARROWEST, Figure(scene, _HIGHEST)), (None, Column(said))]
    return Box(Row(picture, gap=12.0), before=3.0, after=6.0)
