"""The checklist of a practical: what the observer watches for, with the critical steps told by shape and by word."""

from __future__ import annotations

from collections.abc import Iterator

from generator.curriculum import CourseContent
from generator.curriculum.models import PracticalStep
from generator.sheets.flow import Column, Grid, Piece, Row, Text
from generator.sheets.handout import caution
from generator.sheets.page import About, Part, content_hash, sheet_pdf
from generator.sheets.signs import Blank, Boxes, Critical
from generator.sheets.styles import BODY, CELL, HEADING, NOTE, TIGHT, TITLE
from generator.sheets.text import Run
from generator.words import Words

_TICK = 20.0


def practical_pdf(practical_id: str, language: str, content: CourseContent) -> bytes:
    """The checklist of a practical, one for each learner who is watched.

    Args:
        practical_id: of `quizzes/practicals/*.yaml`.
        language: language code.
        content: the course.

    Raises:
        MachineError: shaping is missing, or a sign has no glyph.
    """
    part = practical_part(practical_id, language, content)
    sources = content_hash(content.sources_of(content.practicals[practical_id].module))
    return sheet_pdf(About(part.name, language, content.course.version, sources), [part])


def practical_part(practical_id: str, language: str, content: CourseContent) -> Part:
    """The checklist as a part of a larger document.

    Args:
        practical_id: of `quizzes/practicals/*.yaml`.
        language: language code.
        content: the course.
    """
    practical = content.practicals[practical_id]
    words = content.words[language]
    title = practical.title[language]
    module = content.modules[practical.module].title[language]
    pieces: list[Piece] = [Text(title, TITLE), Text(f"{words.say('sheet.checklist')} · {module}", TIGHT.but(after=4.0))]
    pieces += [_people(words), Text(words.say("sheet.task"), HEADING), Text(practical.task[language], BODY)]
    if practical.tools:
        tools = "; ".join(tool[language] for tool in practical.tools)
        pieces.append(Text([Run(words.say("sheet.tools") + " ", bold=True), Run(tools)], BODY))
    if practical.cautions:
        first, *more = (each[language] for each in practical.cautions)
        pieces.append(caution(first, words, *more))
    pieces += [Text(words.say("sheet.steps"), HEADING), _rule(words)]
    pieces.append(_steps(practical.steps, words))
    pieces.append(Column([_line(words.say("sheet.signed_observer"))], before=10.0))
    name = f"{words.say('sheet.checklist')} · {title}"
    return Part(name, module, title, name, words, pieces)


def _people(words: Words) -> Piece:
    day = Text(words.say("sheet.day"), TIGHT)
    learner = Text(words.say("sheet.learner"), TIGHT)
    cells: list[tuple[float | None, Piece]] = [(learner.natural_width() + 1, learner), (None, Blank(26.0))]
    first = Row([*cells, (day.natural_width() + 1, day), (100.0, Blank(26.0))], middle=True)
    return Column([first, _line(words.say("sheet.observer"))], after=8.0)


def _line(text: str) -> Piece:
    label = Text(text, TIGHT)
    return Row([(label.natural_width() + 1, label), (None, Blank(26.0))], middle=True)


def _rule(words: Words) -> Piece:
    """What the boxes and the diamond mean."""
    meaning = Row(
        [(Critical.side, Critical()), (None, Text(words.say("sheet.critical_rule"), TIGHT))], gap=8, middle=True
    )
    return Column([Text(words.say("sheet.how_to_watch"), TIGHT), meaning], after=4.0, keep=True)


def _steps(steps: tuple[PracticalStep, ...], words: Words) -> Piece:
    head = [
        "",
        words.say("sheet.step"),
        words.say("sheet.done"),
        words.say("sheet.not_done"),
        words.say("sheet.not_seen"),
    ]
    style = NOTE.but(bold=True, after=0.0)
    heads = [Text(head[0], style), Text(head[1], style), *(Text(text, style.but(align="center")) for text in head[2:])]
    return Grid(
        [_step(number, step, words) for number, step in enumerate(steps, start=1)], (0.9, 9.4, 1.7, 1.7, 1.7), heads
    )


def _step(number: int, step: PracticalStep, words: Words) -> list[Piece]:
    text: Piece = Column(list(_told(step, words)))
    if step.critical:
        text = Row([(Critical.side, Critical()), (None, text)], gap=6)
    tick = (Row([(None, Column([])), (_TICK, Boxes(1, _TICK)), (None, Column([]))]) for _ in range(3))
    return [Text(str(number), CELL.but(bold=True)), text, *tick]


def _told(step: PracticalStep, words: Words) -> Iterator[Piece]:
    critical = [Run(f"{words.say('sheet.critical')}: ", bold=True)] if step.critical else []
    yield Text([*critical, Run(step.text[words.language])], CELL.but(after=2.0))
    if step.tolerance:
        yield Text(step.tolerance[words.language], NOTE.but(after=0.0))
