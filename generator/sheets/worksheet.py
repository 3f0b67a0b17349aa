"""Personal worksheets: one numbered sheet for every learner of a printed set."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from copy import copy

from generator.curriculum import CourseContent
from generator.exercises import Learner, Record, ScenarioItem
from generator.figures.fonts import BOLD
from generator.problems import MachineError, RefusedError
from generator.sheets.drawings import Drawings
from generator.sheets.figure_flow import NARROWEST
from generator.sheets.flow import Box, Column, Lowest, Piece, Row, Text
from generator.sheets.page import About, Part, sheet_pdf
from generator.sheets.questions import SAVES, WORKING_ROOM, question
from generator.sheets.signs import Blank
from generator.sheets.styles import BODY, HEADING, NOTE, TIGHT, TITLE
from generator.sheets.text import shaped
from generator.words import Words


def worksheet_pdf(record: Record, content: CourseContent, learners: Collection[int] = (), set_id: str = "") -> bytes:
    """The worksheets of a printed set.

    Args:
        record: of the set; what it holds is what is printed.
        content: the course that the set was made from.
        learners: numbers of the learners wanted; none given means all.
        set_id: of the whole set, where the record holds only some of its learners.

    Raises:
        RefusedError: a name with signs that the course's font does not have.
        MachineError: shaping is missing, or a question is higher than a page.
    """
    wanted = wanted_learners(record, learners)
    refuse_unprintable([learner.name for learner in wanted])
    set_id = set_id or record.set_id
    about = about_set(record, content, content.words[record.language].say("sheet.worksheet"), set_id)
    drawings = Drawings(content)
    return sheet_pdf(about, [learner_part(learner, record, content, set_id, drawings) for learner in wanted])


def wanted_learners(record: Record, numbers: Collection[int]) -> list[Learner]:
    """The learners with these numbers, or all."""
    return [learner for learner in record.learners if not numbers or learner.number in numbers]


def refuse_unprintable(names: Collection[str]) -> None:
    """Refuse names that would come out with empty boxes.

    Raises:
        RefusedError: naming all of them.
    """
    bad = []
    for name in names:
        try:
            for word in name.split():
                shaped(word, BOLD)
        except MachineError as error:
            bad.append(f"'{name}': {error}")
    if bad:
        raise RefusedError("names that can't be printed; write them in Latin or Devanagari letters: " + "; ".join(bad))


def about_set(record: Record, content: CourseContent, kind: str, set_id: str) -> About:
    """What the documents of a set say about themselves; the set's own id is the hash of all that it holds."""
    module = content.modules[record.module].title[record.language]
    return About(f"{kind} · {module}", record.language, record.course_version, set_id)


def learner_part(learner: Learner, record: Record, content: CourseContent, set_id: str, drawings: Drawings) -> Part:
    """One learner's sheet; its questions are the only pieces of the class `Question`."""
    words = content.words[learner.language]
    module = content.modules[record.module].title[learner.language]
    sheet = words.say("sheet.number", number=learner.number, set=set_id)
    head = f"{learner.name} · {sheet} · {module}"
    questions = question_pieces(learner, record.module, content, words, drawings)
    pieces = [*_opening(learner, module, sheet, words), *questions]
    name = f"{words.say('sheet.worksheet')} · {module}"
    return Part(name, module, f"{learner.number}. {learner.name}", head, words, pieces)


def _opening(learner: Learner, module: str, sheet: str, words: Words) -> Iterator[Piece]:
    yield Text(module, TITLE)
    name = Text(learner.name, HEADING.but(before=0.0))
    day = Text(words.say("sheet.day"), TIGHT.but(align="right"))
    width = day.natural_width() + 1
    yield Row([(None, Column([name, Text(sheet, TIGHT)])), (width, day), (100.0, Blank())], after=6)
    how = [Text(words.say("sheet.how"), TIGHT), Text(words.say("sheet.not_a_design"), NOTE)]
    yield Box(Column(how), after=10)


def question_pieces(
    learner: Learner,
    module: str,
    content: CourseContent,
    words: Words,
    drawings: Drawings,
    room: float = WORKING_ROOM,
) -> Iterator[Piece]:
    """The questions of a sheet, each with its drawing and its box; `room` is the height to work a number out."""
    told: ScenarioItem | None = None
    for label, item, scenario in learner.labelled():
        if scenario is not None and scenario is not told:
            yield from scenario_pieces(scenario, content, words, drawings)
            told = scenario
        piece = question(label, item, words, None if scenario else drawings.of(item, module, words), room)
        piece.changes_place = scenario is None
        yield piece


def scenario_pieces(
    scenario: ScenarioItem, content: CourseContent, words: Words, drawings: Drawings
) -> Iterator[Piece]:
    """A scenario's story and its drawing, before its questions."""
    title = Text(scenario.title, HEADING)
    title.outline = scenario.title
    yield title
    told = [Text(scenario.text, BODY), Text(words.say("sheet.scenario"), NOTE)]
    told.append(Text(content.course.invented[words.language], NOTE))
    drawing = drawings.scenario(scenario, words)
    story = Box(Column(told), bar=4.0)
    if drawing is None:
        yield Lowest([story], 0.0, after=8.0, keep=True)
        return
    below = Column([story, Column([drawing], before=8.0)])
    beside = Box(Row([(None, Column(told)), (NARROWEST, copy(drawing))], gap=10.0), bar=4.0)
    yield Lowest([below, beside], SAVES, after=8.0)
