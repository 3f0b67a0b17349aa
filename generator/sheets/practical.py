"""The checklist of a practical: what the observer watches for, with the critical steps told by shape and by word."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from generator.curriculum import CourseContent
from generator.curriculum.models import Practical, PracticalStep
from generator.sheets.flow import CloseGrid, Column, Grid, Piece, Row, Space, Text
from generator.sheets.handout import caution
from generator.sheets.page import About, Part, content_hash, part_pages, sheet_pdf
from generator.sheets.signs import Blank, Boxes, Critical
from generator.sheets.styles import BODY, CELL, HEADING, NOTE, PAGE_HEIGHT, PAGE_WIDTH, TIGHT, TITLE, Style
from generator.sheets.text import Run
from generator.words import Words

_HEAD = NOTE.but(bold=True, after=0.0)
_NOTE_ROW = 26.0
"""Height inside a row for what an observer saw, points; two lines of a small hand."""
_NOTE_SHARES = (1.0, 9.0)
_FEWEST_NOTES = 3


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
    name = f"{words.say('sheet.checklist')} · {title}"

    def laid(setting: _Setting) -> Part:
        above: list[Piece] = [Text(title, TITLE), Text(f"{words.say('sheet.checklist')} · {module}", TIGHT)]
        return Part(name, module, title, name, words, [*above, *_pieces(practical, words, setting)])

    for setting in (_ROOMY, _WIDE, _CLOSE):
        part = laid(setting)
        if len(part_pages(part, PAGE_WIDTH, PAGE_HEIGHT)) == 1:
            return part
    return _with_notes(laid(_ROOMY), len(practical.steps), words)


@dataclass(frozen=True)
class _Setting:
    """How a checklist is set: with room, or so that it keeps to one page.

    Args:
        step: hand of a step.
        tolerance: hand of how a step is judged.
        tick: side of a box, points.
        shares: of the table's columns.
        table: kind of table.
        run_in: whether the heading of the task stands in its first line.
    """

    step: Style
    tolerance: Style
    tick: float
    shares: tuple[float, ...]
    table: type[Grid]
    run_in: bool


_ROOMY = _Setting(CELL, NOTE.but(after=0.0), 20.0, (0.9, 9.4, 1.7, 1.7, 1.7), Grid, run_in=False)
_WIDE = replace(_ROOMY, shares=(0.8, 10.0, 1.55, 1.55, 1.55), run_in=True)
_CLOSE = replace(
    _WIDE,
    step=CELL.but(size=10.5),
    tolerance=_WIDE.tolerance.but(size=9.5),
    tick=18.0,
    shares=(0.7, 10.8, 1.48, 1.48, 1.48),
    table=CloseGrid,
)


def _pieces(practical: Practical, words: Words, setting: _Setting) -> Iterator[Piece]:
    yield _signed((words.say("sheet.learner"), None), (words.say("sheet.day"), 100.0))
    if setting.run_in:
        yield Text(
            [Run(words.say("sheet.task") + ": ", bold=True), Run(practical.task[words.language])], BODY.but(before=4.0)
        )
    else:
        yield Text(words.say("sheet.task"), HEADING)
        yield Text(practical.task[words.language], BODY)
    if practical.tools:
        tools = "; ".join(tool[words.language] for tool in practical.tools)
        yield Text([Run(words.say("sheet.tools") + " ", bold=True), Run(tools)], BODY)
    if practical.cautions:
        first, *more = (each[words.language] for each in practical.cautions)
        yield caution(first, words, *more)
    yield Text(words.say("sheet.steps"), HEADING.but(before=3.0) if setting.run_in else HEADING)
    yield _rule(words)
    yield _steps(practical.steps, words, setting)
    yield _signed((words.say("sheet.observer"), None), (words.say("sheet.signed_observer"), None))


def _signed(*lines: tuple[str, float | None]) -> Piece:
    """Lines to write on, side by side, each with what belongs there and its width in points."""
    cells: list[tuple[float | None, Piece]] = []
    for text, width in lines:
        label = Text(text, TIGHT)
        cells += [(label.natural_width() + 1, label), (width, Blank(26.0))]
    return Row(cells, middle=True, before=4.0, after=4.0)


def _with_notes(part: Part, most: int, words: Words) -> Part:
    """With lines for what was seen where a step was not done, one for each step if the last page holds them."""
    *pieces, signature = part.pieces
    heads = [Text(words.say("sheet.step"), _HEAD), Text(words.say("sheet.what_i_saw"), _HEAD)]
    pages = len(part_pages(part, PAGE_WIDTH, PAGE_HEIGHT))
    for rows in range(most, _FEWEST_NOTES - 1, -1):
        notes = Grid([[Space(_NOTE_ROW), Space(_NOTE_ROW)] for _ in range(rows)], _NOTE_SHARES, heads, before=10.0)
        noted = replace(part, pieces=[*pieces, notes, signature])
        if len(part_pages(noted, PAGE_WIDTH, PAGE_HEIGHT)) == pages:
            return noted
    return part


def _rule(words: Words) -> Piece:
    """What the boxes and the diamond mean."""
    meaning = Row(
        [(Critical.side, Critical()), (None, Text(words.say("sheet.critical_rule"), TIGHT))], gap=8, middle=True
    )
    return Column([Text(words.say("sheet.how_to_watch"), TIGHT), meaning], after=4.0, keep=True)


def _steps(steps: Sequence[PracticalStep], words: Words, setting: _Setting) -> Piece:
    ticked = (words.say("sheet.done"), words.say("sheet.not_done"), words.say("sheet.not_seen"))
    heads = [Text("", _HEAD), Text(words.say("sheet.step"), _HEAD)]
    heads += [Text(text, _HEAD.but(align="center")) for text in ticked]
    rows = [_step(number, step, words, setting) for number, step in enumerate(steps, start=1)]
    return setting.table(rows, setting.shares, heads)


def _step(number: int, step: PracticalStep, words: Words, setting: _Setting) -> list[Piece]:
    text: Piece = Column(list(_told(step, words, setting)))
    if step.critical:
        text = Row([(Critical.side, Critical()), (None, text)], gap=6)
    side = setting.tick
    tick = (Row([(None, Column([])), (side, Boxes(1, side)), (None, Column([]))], gap=2.0) for _ in range(3))
    return [Text(str(number), setting.step.but(bold=True)), text, *tick]


def _told(step: PracticalStep, words: Words, setting: _Setting) -> Iterator[Piece]:
    critical = [Run(f"{words.say('sheet.critical')}: ", bold=True)] if step.critical else []
    yield Text([*critical, Run(step.text[words.language])], setting.step.but(after=1.0))
    if step.tolerance:
        yield Text(step.tolerance[words.language], setting.tolerance)
