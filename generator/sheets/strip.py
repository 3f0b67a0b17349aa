"""Marking strips: a learner's answers in one narrow column, each at the height at which its question stands.

A strip lies beside one page of the worksheet. Four strips share a page and are cut apart.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence

from generator.curriculum import CourseContent
from generator.exercises import Learner, Record
from generator.sheets.drawings import Drawings
from generator.sheets.flow import Canvas, Column, Piece, Text
from generator.sheets.key import short_answer
from generator.sheets.page import Part, part_pages, sheet_pdf
from generator.sheets.questions import Question
from generator.sheets.styles import CELL, FOOT, MARGIN, NOTE, PAGE_HEIGHT, PAGE_WIDTH, TEXT_WIDTH, THIN
from generator.sheets.worksheet import about_set, learner_part, wanted_learners
from generator.words import Words

STRIPS_A_PAGE = 4
_WIDTH = TEXT_WIDTH / STRIPS_A_PAGE
_HIGH: float = PAGE_HEIGHT - MARGIN - FOOT - 0.5
_SIDE, _LABEL = 5.0, 26.0
_HEAD = NOTE.but(bold=True, after=0.0)
_ANSWER = CELL.but(bold=True)
_DASH = (5.0, 4.0)


class _Strip(Piece):
    """The answers of one page.

    Args:
        head: which sheet and page it belongs to.
        answers: distance from the top of the page's text, printed number, answer.
    """

    def __init__(self, head: str, answers: Sequence[tuple[float, str, str]]) -> None:
        self._head = Text(head, _HEAD)
        self._answers = [(down, Text(f"{label}.", CELL), Text(shown, _ANSWER)) for down, label, shown in answers]

    def measure(self, width: float) -> float:
        """The height of a page's text."""
        self._head.fit(width - 2 * _SIDE)
        for _, label, shown in self._answers:
            label.fit(_LABEL)
            shown.fit(width - 2 * _SIDE - _LABEL)
        return _HIGH

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """The head in the room of the running head, each answer beside its question."""
        self._head.paint(canvas, x + _SIDE, top)
        for down, label, shown in self._answers:
            label.paint(canvas, x + _SIDE, top - down)
            shown.paint(canvas, x + _SIDE + _LABEL, top - down)


class _How(Piece):
    """What to do with the strips, in the place of the first one."""

    def __init__(self, texts: Sequence[Text]) -> None:
        self._texts = Column(texts)

    def measure(self, width: float) -> float:
        """The height of a page's text."""
        self._texts.fit(width - 2 * _SIDE)
        return _HIGH

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """From the top."""
        self._texts.paint(canvas, x + _SIDE, top)


class _Cut(Piece):
    """Strips side by side, with dashed lines to cut along."""

    begins_page = True

    def __init__(self, strips: Sequence[Piece]) -> None:
        self._strips = strips

    def measure(self, _width: float) -> float:
        """As high as a strip."""
        return max(strip.fit(_WIDTH) for strip in self._strips)

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """Each strip, and a line on its right."""
        for number, strip in enumerate(self._strips):
            strip.paint(canvas, x + number * _WIDTH, top)
        canvas.setLineWidth(THIN)
        canvas.setDash(_DASH)
        for number in range(len(self._strips) + 1):
            canvas.line(x + number * _WIDTH, top, x + number * _WIDTH, top - self.height)
        canvas.setDash()


def strip_pdf(record: Record, content: CourseContent, learners: Collection[int] = (), set_id: str = "") -> bytes:
    """The marking strips of a printed set.

    Args:
        record: of the set.
        content: the course that the set was made from.
        learners: numbers of the learners wanted; none given means all.
        set_id: of the whole set, where the record holds only some of its learners.

    Raises:
        RefusedError: a drawing that no longer has the places of the record.
        MachineError: shaping is missing, or a question is higher than a page.
    """
    words = content.words[record.language]
    set_id, drawings = set_id or record.set_id, Drawings(content)
    how = [
        Text(words.say("sheet.strip"), NOTE.but(bold=True, after=6.0)),
        Text(words.say("sheet.strip_lie"), NOTE.but(after=6.0)),
        Text(words.say("sheet.key_only_for_trainers"), NOTE),
    ]
    strips: list[Piece] = [_How(how)]
    strips += [
        strip
        for learner in wanted_learners(record, learners)
        for strip in _strips(learner, learner_part(learner, record, content, set_id, drawings), words)
    ]
    rows: list[Piece] = [_Cut(strips[at : at + STRIPS_A_PAGE]) for at in range(0, len(strips), STRIPS_A_PAGE)]
    module = content.modules[record.module].title[record.language]
    name = f"{words.say('sheet.strip')} · {module}"
    about = about_set(record, content, words.say("sheet.strip"), set_id)
    return sheet_pdf(about, [Part(name, module, name, "", words, rows)])


def _strips(learner: Learner, part: Part, words: Words) -> list[_Strip]:
    """One for each page of a learner's sheet that has questions."""
    shown = {label: short_answer(item, words) for label, item, _ in learner.labelled()}
    found = []
    for page, placed in enumerate(question_places(part), start=1):
        answers = [(down, label, shown[label]) for down, label in placed]
        if answers:
            found.append(_Strip(words.say("sheet.strip_head", number=learner.number, page=page), answers))
    return found


def question_places(part: Part) -> list[list[tuple[float, str]]]:
    """For each page of a sheet its questions: how far below the top of the page's text, and their printed numbers."""
    top = PAGE_HEIGHT - MARGIN
    return [
        [(top - placed.top, placed.piece.label) for placed in page if isinstance(placed.piece, Question)]
        for page in part_pages(part, PAGE_WIDTH, PAGE_HEIGHT)
    ]
