"""Exam papers in print: room to work, lines for the answers, the allowed aids; and the same paper to be read aloud.

No answer, tolerance, id or name of a fault stands in what is printed here.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from generator.assessment.paper_draw import aids_said
from generator.curriculum import CourseContent
from generator.curriculum.models import Scheme
from generator.exercises import (
    LETTERS,
    ChoiceItem,
    Learner,
    MatchItem,
    NumberItem,
    OrderItem,
    QuestionItem,
    SpokenItem,
    SpotItem,
)
from generator.figures import Scene
from generator.sheets.figure_flow import Figure
from generator.sheets.flow import Box, Column, Piece, Row, Text
from generator.sheets.page import About, Part, sheet_pdf
from generator.sheets.questions import question
from generator.sheets.signs import Blank, Boxes, Letter, Number
from generator.sheets.styles import BODY, HEADING, NOTE, SUBHEADING, TIGHT, TITLE
from generator.sheets.worksheet import refuse_unprintable
from generator.words import Words

_HIGHEST = 250.0
"""Points that a drawing beside a question may have, so that question and answer stay on one page."""
_SENTENCE = re.compile(r"(?<=[.?!।]) +")
_BIG = BODY.but(size=16.0)
_BIG_LETTER = 40.0
_SAID = SUBHEADING.but(before=0.0, after=2.0)


@dataclass(frozen=True, slots=True)
class PrintedPaper:
    """One candidate's paper.

    Args:
        learner: with the items.
        figures: drawings by the question's label.
        set_id: of the exam's papers.
        exam: its name.
        minutes: that the candidate has; 0 for no limit.
        rehearsal: whether it counts for nothing.
    """

    learner: Learner
    figures: Mapping[str, Scene]
    set_id: str
    exam: str
    minutes: int
    rehearsal: bool = False

    @property
    def number(self) -> str:
        """What is printed on it, and what an appeal names."""
        return f"{self.set_id}-{self.learner.number}"


def paper_pdf(papers: list[PrintedPaper], scheme: Scheme, content: CourseContent) -> bytes:
    """Papers to write on.

    Args:
        papers: one or more; each begins a page of its own.
        scheme: whose blueprint they follow.
        content: the course.

    Raises:
        RefusedError: a name with signs that the course's font does not have.
        MachineError: shaping is missing, or a question is higher than a page.
    """
    refuse_unprintable([paper.learner.name for paper in papers])
    first = papers[0]
    language = first.learner.language
    about = About(paper_name(scheme, content.words[language]), language, content.course.version, first.set_id)
    return sheet_pdf(about, [_part(paper, scheme, content.words[paper.learner.language]) for paper in papers])


def paper_name(scheme: Scheme, words: Words) -> str:
    """What the papers of a scheme are called."""
    return f"{words.say('paper.title')} · {scheme.title[words.language]}"


def _part(paper: PrintedPaper, scheme: Scheme, words: Words) -> Part:
    pieces: list[Piece] = [*_opening(paper, scheme, words), _how(paper, scheme, words)]
    for label, item, scenario in paper.learner.labelled():
        scene = paper.figures.get(label)
        asked = question(label, item, words, Figure(scene, _HIGHEST) if scene else None)
        asked.changes_place = scenario is None
        pieces.append(asked)
    pieces.append(Text(words.say("paper.end"), NOTE.but(align="center", before=8.0)))
    return _as_part(paper, scheme, words, pieces, "")


def _as_part(paper: PrintedPaper, scheme: Scheme, words: Words, pieces: list[Piece], end: str) -> Part:
    number = words.say("paper.number", number=paper.number)
    name = paper_name(scheme, words)
    outline = f"{paper.learner.number}. {paper.learner.name}{end}"
    head = f"{paper.learner.name} · {number} · {scheme.title[words.language]}"
    return Part(name, "", outline, head, words, pieces, words.say("paper.spoken_form"))


def _opening(paper: PrintedPaper, scheme: Scheme, words: Words) -> Iterator[Piece]:
    yield Text(paper_name(scheme, words), TITLE)
    name = Text(paper.learner.name, HEADING.but(before=0.0))
    number = Text(words.say("paper.number", number=paper.number), TIGHT)
    exam = Text(words.say("paper.exam", exam=paper.exam), TIGHT)
    day = Text(words.say("sheet.day"), TIGHT.but(align="right"))
    width = day.natural_width() + 1
    yield Row([(None, Column([name, number, exam])), (width, day), (100.0, Blank())], after=4)
    if paper.rehearsal:
        yield Box(Text(words.say("paper.rehearsal"), SUBHEADING.but(before=0.0, after=0.0, align="center")), after=6)


def _time(paper: PrintedPaper, words: Words) -> str:
    return words.say("paper.minutes", count=paper.minutes) if paper.minutes else words.say("paper.no_limit")


def _how(paper: PrintedPaper, scheme: Scheme, words: Words) -> Piece:
    lines = [
        Text(_time(paper, words), TIGHT.but(bold=True)),
        Text(aids_said(scheme, paper.learner, words), TIGHT),
        Text(words.say("paper.how"), TIGHT),
        Text(words.say("sheet.not_a_design"), NOTE),
    ]
    sign = Text(words.say("paper.signed"), TIGHT)
    row = Row([(sign.natural_width() + 1, sign), (None, Blank(26.0))], middle=True)
    return Box(Column([*lines, row]), after=10)


def spoken_pdf(papers: list[PrintedPaper], scheme: Scheme, content: CourseContent) -> bytes:
    """The same papers to be read aloud: for each a helper's script, and a sheet to point at.

    The helper reads each line as it stands, twice at most, adds nothing, and writes down what is said or pointed at.

    Args:
        papers: one or more.
        scheme: whose blueprint they follow.
        content: the course.

    Raises:
        RefusedError, MachineError: as `paper_pdf`.
    """
    refuse_unprintable([paper.learner.name for paper in papers])
    parts: list[Part] = []
    for paper in papers:
        words = content.words[paper.learner.language]
        parts.append(_script(paper, scheme, words))
        parts.append(_pictures(paper, scheme, words))
    first = papers[0]
    language = first.learner.language
    about = About(paper_name(scheme, content.words[language]), language, content.course.version, first.set_id)
    return sheet_pdf(about, parts)


def _script(paper: PrintedPaper, scheme: Scheme, words: Words) -> Part:
    asked = [words.say("paper.reader"), words.say("paper.spoken_language")]
    lines: list[Piece] = []
    for text in asked:
        label = Text(text, TIGHT)
        lines.append(Row([(label.natural_width() + 1, label), (None, Blank(26.0))], middle=True))
    rules = [
        Text(aids_said(scheme, paper.learner, words), TIGHT),
        Text(words.say("paper.reader_rules"), TIGHT),
        Text(words.say("sheet.script"), NOTE),
    ]
    pieces: list[Piece] = [
        *_opening(paper, scheme, words),
        Text(words.say("paper.for_reader"), HEADING),
        Box(Column([Text(_time(paper, words), TIGHT.but(bold=True)), *rules, *lines]), after=8),
    ]
    pieces += [_read_aloud(label, item, words) for label, item, _ in paper.learner.labelled()]
    return _as_part(paper, scheme, words, pieces, f" · {words.say('paper.for_reader')}")


def _read_aloud(label: str, item: QuestionItem, words: Words) -> Piece:
    script = item.script if isinstance(item, SpokenItem) else tuple(_SENTENCE.split(item.text))
    asked = item.answer if isinstance(item, SpokenItem) else item
    said: list[Piece] = [Text(line, _SAID) for line in script]
    said += [Text(line, TIGHT) for line in _options_read(asked, words)]
    answer = Text(words.say("sheet.answer"), TIGHT.but(align="right"))
    unit = "" if not isinstance(asked, NumberItem) or asked.units else asked.unit
    shown = Text(words.say_one_of("unit", unit) if unit else " ", TIGHT)
    again = Text(words.say("paper.read_again"), NOTE)
    said.append(
        Row(
            [
                (again.natural_width() + 1, again), (20.0, Boxes(1, 18.0)), (None, answer), (150.0, Blank()),
                (max(shown.natural_width() + 1, 24.0), shown),
            ],
            middle=True,
        )
    )  # fmt: skip
    return Row([(24.0, Number(label)), (None, Box(Column(said)))], gap=8, before=4, after=7)


def _options_read(item: QuestionItem, words: Words) -> Iterator[str]:
    match item:
        case NumberItem():
            yield words.say("paper.say_number")
            yield from (f"{part.text} ({words.say_one_of('unit', part.unit)})" for part in item.steps)
        case ChoiceItem():
            yield from _letters(item.options, item.order)
            yield words.say("paper.point_several") if item.several else words.say("paper.point_one")
        case OrderItem():
            yield from _letters(item.steps, item.order)
            yield words.say("paper.point_order")
        case MatchItem():
            yield from (f"{number}. {text}" for number, text in enumerate(item.left, start=1))
            yield from _letters(item.right, item.order)
            yield words.say("paper.point_match")
        case SpotItem():
            yield from (f"{a.letter}. {label}" for a, label in zip(item.areas, item.labels, strict=True) if label)
            yield words.say("paper.point_several") if item.several else words.say("paper.point_one")
        case SpokenItem():
            yield from _options_read(item.answer, words)


def _letters(texts: tuple[str, ...], order: tuple[int, ...]) -> Iterator[str]:
    yield from (f"{LETTERS[place]}. {texts[i]}" for place, i in enumerate(order))


def _pictures(paper: PrintedPaper, scheme: Scheme, words: Words) -> Part:
    """What the candidate points at: each question large, with its drawing and its letters in their shapes."""
    pieces: list[Piece] = [*_opening(paper, scheme, words), Text(words.say("paper.for_candidate"), HEADING)]
    for label, item, _ in paper.learner.labelled():
        asked = item.answer if isinstance(item, SpokenItem) else item
        large: list[Piece] = [Text(asked.text, _BIG)]
        if label in paper.figures:
            large.append(Figure(paper.figures[label], _HIGHEST))
        large += _to_point_at(asked)
        pieces.append(Row([(30.0, Number(label)), (None, Box(Column(large)))], gap=8, before=4, after=10))
    return _as_part(paper, scheme, words, pieces, f" · {words.say('paper.for_candidate')}")


def _to_point_at(item: QuestionItem) -> Iterator[Piece]:
    match item:
        case ChoiceItem():
            yield from _large(item.options, item.order)
        case OrderItem():
            yield from _large(item.steps, item.order)
        case MatchItem():
            left = [Text(f"{number}. {text}", _BIG) for number, text in enumerate(item.left, start=1)]
            yield Row([(None, Column(left)), (None, Column(list(_large(item.right, item.order))))], gap=14)
        case SpotItem():
            row: list[tuple[float | None, Piece]] = [
                (_BIG_LETTER, Letter(area.letter, _BIG_LETTER)) for area in item.areas
            ]
            yield Row([*row, (None, Column([]))], gap=10, before=4)
        case _:
            yield from ()


def _large(texts: tuple[str, ...], order: tuple[int, ...]) -> Iterator[Piece]:
    for place, i in enumerate(order):
        letter = Letter(LETTERS[place], _BIG_LETTER)
        yield Row([(_BIG_LETTER, letter), (None, Text(texts[i], _BIG))], gap=10, middle=True, after=5)
