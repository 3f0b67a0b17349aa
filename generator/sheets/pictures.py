"""A module in pictures, for learners who read little: one drawing and one short sentence a card."""

from __future__ import annotations

from dataclasses import replace

from generator.curriculum import CourseContent
from generator.curriculum.models import Card, Module
from generator.figures import draw
from generator.problems import RefusedError
from generator.sheets.card_pages import PictureCard, dealt
from generator.sheets.flow import Piece, Row, Text
from generator.sheets.handout import caution
from generator.sheets.page import About, Part, content_hash, rooms, sheet_pdf
from generator.sheets.signs import Number
from generator.sheets.styles import BODY, NOTE, PAGE_HEIGHT, PAGE_WIDTH, TEXT_WIDTH, TITLE, Style
from generator.words import Words

_BESIDE = BODY.but(size=15.0, bold=True, after=6.0)
"""The sentence in the narrow column beside a small drawing."""
_BELOW = _BESIDE.but(size=17.0)
"""The sentence below a large one."""
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
    name = f"{words.say('sheet.pictures')} · {title}"
    opening: list[Piece] = [Text(title, TITLE), Text(words.say("sheet.pictures_how"), NOTE)]
    opening.append(Text(words.say("sheet.not_a_design"), NOTE.but(after=6.0)))
    part = Part(name, title, title, name, words, opening)
    cards = [_card(number, card, module, content, words) for number, card in enumerate(module.cards, start=1)]
    pieces = dealt(cards, TEXT_WIDTH, *rooms(part, PAGE_WIDTH, PAGE_HEIGHT), gap=6.0)
    about = About(name, language, content.course.version, content_hash(content.sources_of(module_id)))
    return sheet_pdf(about, [replace(part, pieces=[*opening, *pieces])])


def _card(number: int, card: Card, module: Module, content: CourseContent, words: Words) -> PictureCard:
    scene = draw(card.figure, content.values(module.place), words)
    return PictureCard(scene, lambda: _said(number, card, words, _BESIDE), lambda: _said(number, card, words, _BELOW))


def _said(number: int, card: Card, words: Words, style: Style) -> list[Piece]:
    sentence = Text(card.text[words.language], style)
    said: list[Piece] = [Row([(_NUMBER, Number(str(number))), (None, sentence)], gap=7.0, after=6.0)]
    if card.caution is not None:
        said.append(caution(card.caution[words.language], words))
    return said
