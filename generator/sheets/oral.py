"""The examiner's sheets for what is asked aloud: what to ask, what is right, when to stop. They hold the key.

What the candidate is shown stands on pages of its own behind them, without the key.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from generator.assessment.paper_oral import Talk
from generator.assessment.recheck import Recheck
from generator.curriculum import CourseContent
from generator.curriculum.models import Scheme
from generator.exercises import ChoiceItem, Learner, NumberItem, QuestionItem, SpokenItem
from generator.figures import Scene
from generator.formula import show
from generator.sheets.figure_flow import Figure
from generator.sheets.flow import Box, Column, Grid, Piece, Row, Text
from generator.sheets.page import About, Part, sheet_pdf
from generator.sheets.signs import Blank, Boxes, Number
from generator.sheets.styles import CELL, HEADING, NOTE, SUBHEADING, TIGHT, TITLE
from generator.sheets.worksheet import refuse_unprintable
from generator.words import Words

_BOX = 14.0
_MARKS = 66.0
_ROWS = 12
"""A longer table of limits stands in two halves side by side, so that the questions begin on its page."""
_HIGHEST = 270.0
"""Points of a drawing that is held up, so that two stand on a page."""


def oral_pdf(
    learner: Learner,
    items: Sequence[QuestionItem],
    recheck: Recheck,
    scheme: Scheme,
    set_id: str,
    content: CourseContent,
) -> bytes:
    """The sheet for one candidate.

    Args:
        learner: the candidate.
        items: questions in the order of asking.
        recheck: says when it is over.
        scheme: whose exam it is.
        set_id: of the exam's papers.
        content: the course.

    Raises:
        RefusedError: a name that the course's font can't print.
        MachineError: shaping is missing.
    """
    words = content.words[learner.language]
    pieces: list[Piece] = [
        Text(words.say("paper.oral.questions"), HEADING),
    ]
    pieces += [asked_question(place, item, words) for place, item in enumerate(items, start=1)]
    said = (
        words.say("paper.oral.title"), words.say("paper.oral.how"), words.say("paper.oral.after", count=recheck.most),
    )  # fmt: skip
    return _sheet(said, learner, pieces, recheck, scheme, set_id, content)


def talks_pdf(
    learner: Learner, talks: Sequence[Talk], recheck: Recheck, scheme: Scheme, set_id: str, content: CourseContent
) -> bytes:
    """The sheet for one candidate's talks on critical skills; options are read out only where a question needs them.

    Args:
        learner: the candidate.
        talks: what is asked on each skill.
        recheck: says when a talk is over.
        scheme: whose exam it is.
        set_id: of the exam's papers.
        content: the course.

    Raises:
        RefusedError: a name that the course's font can't print.
        MachineError: shaping is missing.
    """
    words = content.words[learner.language]
    pieces: list[Piece] = [
        Text(words.say("paper.talk.watch", observers=scheme.rule.observers, times=scheme.rule.again), NOTE),
    ]
    shown: dict[Scene, int] = {}
    for talk in talks:
        heading = Text(content.competencies[talk.competency].text[words.language], SUBHEADING.but(before=6.0))
        heading.outline = heading.plain()
        pieces += [heading, Text(talk.competency, NOTE.but(after=0.0, keep=True))]
        for place, asked in enumerate(talk.questions, start=1):
            see = None if asked.scene is None else shown.setdefault(asked.scene, len(shown) + 1)
            pieces.append(asked_question(place, asked.item, words, options=asked.options, see=see))
    said = (
        words.say("paper.talk.title"), words.say("paper.talk.how"), words.say("paper.talk.after", count=recheck.most),
    )  # fmt: skip
    return _sheet(said, learner, pieces, recheck, scheme, set_id, content, tuple(shown))


def _sheet(
    said: tuple[str, str, str],
    learner: Learner,
    asked: Sequence[Piece],
    recheck: Recheck,
    scheme: Scheme,
    set_id: str,
    content: CourseContent,
    shown: Sequence[Scene] = (),
) -> bytes:
    """What is asked, between the head (title, how to ask, what counts after the last one) and the place to sign.

    Then the drawings that are shown, numbered in the order of asking.
    """
    title, how, after = said
    refuse_unprintable([learner.name])
    words = content.words[learner.language]
    number = words.say("paper.number", number=f"{set_id}-{learner.number}")
    name = f"{title} · {scheme.title[words.language]}"
    sign = Text(words.say("sheet.signed_observer"), TIGHT)
    pieces: list[Piece] = [
        Text(name, TITLE),
        Text(f"{learner.name} · {number}", SUBHEADING),
        Text(words.say("paper.examiner_only"), NOTE),
        Text(how, TIGHT.but(after=6.0)),
        limits_table(recheck, words),
        Text(after, NOTE.but(before=4.0)),
        *asked[:-1],
        Column([*asked[-1:], Row([(sign.natural_width() + 1, sign), (None, Blank(26.0))], middle=True, before=8)]),
    ]
    about = About(name, words.language, content.course.version, set_id)
    head = f"{learner.name} · {number}"
    parts = [Part(name, "", learner.name, head, words, pieces, words.say("paper.read_this"))]
    if shown:
        title = f"{learner.name} · {words.say('paper.for_candidate')}"
        parts.append(Part(name, "", title, head, words, _held_up(shown, head, words), words.say("paper.read_this")))
    return sheet_pdf(about, parts)


def _held_up(scenes: Sequence[Scene], head: str, words: Words) -> list[Piece]:
    """The drawings for the candidate's eyes: nothing of the key stands on these pages, nor what each is asked for."""
    pieces: list[Piece] = [
        Text(words.say("paper.for_candidate"), TITLE),
        Text(head, SUBHEADING),
        Text(words.say("paper.oral.held_up"), NOTE.but(after=6.0)),
    ]
    for number, scene in enumerate(scenes, start=1):
        title = Text(words.say("paper.oral.drawing", number=number), HEADING)
        pieces.append(Box(Column([title, Figure(scene, _HIGHEST)]), after=10))
    return pieces


def limits_table(recheck: Recheck, words: Words) -> Piece:
    """After so many questions: right answers that show the skill, and those that don't; where either can end it."""
    style = NOTE.but(bold=True, after=0.0)
    head = [
        Text(t, style)
        for t in (words.say("paper.oral.asked"), words.say("paper.oral.shown"), words.say("paper.oral.refused"))
    ]
    rows = []
    for asked in range(1, recheck.most + 1):
        enough, too_few = recheck.limits(asked)
        if enough is None and too_few is None:
            continue
        cells = (str(asked), "-" if enough is None else str(enough), "-" if too_few is None else str(too_few))
        rows.append([Text(cell, CELL) for cell in cells])
    if len(rows) <= _ROWS:
        return Grid(rows, (2.0, 3.0, 3.0), head)
    half = (len(rows) + 1) // 2
    return Row([(None, Grid(part, (2.0, 3.0, 3.0), head)) for part in (rows[:half], rows[half:])], gap=12)


def asked_question(
    place: int,
    item: QuestionItem,
    words: Words,
    *,
    options: bool = True,
    see: int | None = None,
) -> Piece:
    """A question with what is right, and boxes to tick.

    Args:
        place: its number.
        item: the question.
        words: of the sheet.
        options: whether its options are read out.
        see: the number of its drawing, which is shown while it is asked.
    """
    asked = item.answer if isinstance(item, SpokenItem) else item
    lines: list[Piece] = [Text(item.text, TIGHT)]
    if isinstance(asked, ChoiceItem) and options:
        lines += [Text(f"- {asked.options[i]}", TIGHT) for i in asked.order]
    lines.append(Text(f"{words.say('paper.oral.right_is')} {'; '.join(_right(asked, words))}", TIGHT.but(bold=True)))
    if see is not None:
        lines.insert(0, Text(words.say("paper.oral.see_drawing", number=see), NOTE.but(bold=True)))
    marks = Column([_mark(words.say("paper.oral.right")), _mark(words.say("paper.oral.wrong"))])
    return Row([(20.0, Number(str(place))), (None, Column(lines)), (_MARKS, marks)], gap=6, before=2, after=3)


def _mark(said: str) -> Piece:
    return Row([(_BOX, Boxes(1, _BOX)), (None, Text(said, NOTE.but(after=0.0)))], middle=True, gap=4)


def _right(item: QuestionItem, words: Words) -> Iterator[str]:
    if isinstance(item, NumberItem):
        answer = words.with_unit(item.shown_key, item.unit)
        off = max(item.absolute, item.relative * abs(item.key))
        if off <= 0:
            yield answer
            return
        places = item.places + 1
        low, high = (words.number(show(item.key + side, places)) for side in (-off, off))
        yield words.say("paper.oral.from_to", answer=answer, low=low, high=high)
    elif isinstance(item, ChoiceItem):
        yield from (item.options[i] for i in item.right)
