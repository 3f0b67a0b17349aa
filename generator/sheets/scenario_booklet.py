"""A scenario as a booklet: the story, its drawing with letters for what is asked, room to work, then the answers."""

from __future__ import annotations

from collections.abc import Callable

from generator.curriculum import CourseContent
from generator.exercises import Learner, make_item, make_scenario
from generator.sheets.drawings import Drawings
from generator.sheets.flow import Box, Column, Piece, Row, Text
from generator.sheets.key import key_pieces
from generator.sheets.page import About, Part, content_hash, part_pages, sheet_pdf
from generator.sheets.signs import Blank
from generator.sheets.styles import NOTE, PAGE_HEIGHT, PAGE_WIDTH, TIGHT, TITLE
from generator.sheets.worksheet import question_pieces

_ROOMS = range(54, 151, 3)
"""Points of height to work a number out: three handwritten lines and a half, up to nine, for a group at one table."""


def scenario_pdf(scenario_id: str, language: str, content: CourseContent) -> bytes:
    """The booklet of a scenario, for a group that works through it together: its numbers, then what to decide.

    The answers begin a page of their own.

    Args:
        scenario_id: of `quizzes/scenarios/*.yaml`.
        language: language code.
        content: the course.

    Raises:
        MachineError: shaping is missing.
    """
    scenario = content.scenarios[scenario_id]
    words = content.words[language]
    module = content.modules[scenario.module].title[language]
    item = make_scenario(scenario, content.values(scenario.place), words)
    decisions = [make_item(content.questions[key], scenario.id, words) for key in scenario.decisions]
    group = Learner(number=1, name=item.title, language=language, items=(item, *decisions))
    name = f"{words.say('sheet.booklet')} · {item.title}"
    who, day = Text(words.say("sheet.group"), TIGHT), Text(words.say("sheet.day"), TIGHT)
    opening: list[Piece] = [
        Text(f"{words.say('sheet.booklet')} · {module}", TITLE),
        Row(
            [(who.natural_width() + 1, who), (None, Blank(26.0)), (day.natural_width() + 1, day), (100.0, Blank(26.0))],
            middle=True, after=6.0,
        ),
        Box(Column([Text(words.say("sheet.how"), TIGHT), Text(words.say("sheet.not_a_design"), NOTE)]), after=6.0),
    ]  # fmt: skip
    _heading, *told = key_pieces(group, words)  # the answers' own title names the scenario
    answers: list[Piece] = [
        Text(f"{words.say('sheet.key')} · {item.title}", TITLE),
        Text(words.say("sheet.key_only_for_trainers"), NOTE.but(after=8.0)),
        *told,
    ]
    about = About(name, language, content.course.version, content_hash(content.sources_of(scenario.module)))
    key = words.say("sheet.key")
    drawings = Drawings(content)

    def booklet(room: float) -> Part:
        asked = list(question_pieces(group, scenario.module, content, words, drawings, room))
        for piece in asked:
            piece.changes_place = False  # the decisions go on with the story
        return Part(name, module, item.title, name, words, [*opening, *asked])

    return sheet_pdf(about, [_on_full_pages(booklet), Part(f"{key} · {item.title}", module, key, key, words, answers)])


def _on_full_pages(booklet: Callable[[float], Part]) -> Part:
    """On as few pages as can be, with that room to work in which leaves the emptiest of them the fullest."""
    best: tuple[int, float] | None = None
    chosen = booklet(_ROOMS[0])
    for room in _ROOMS:
        part = booklet(room)
        pages = part_pages(part, PAGE_WIDTH, PAGE_HEIGHT)
        against = len(pages), max(page[-1].top - page[-1].piece.height for page in pages)
        if best is None or against <= best:
            best, chosen = against, part
    return chosen
