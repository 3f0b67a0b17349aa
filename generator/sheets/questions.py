"""Questions as they are printed: the page's text, and a place for the answer as the answers' table wants it."""

from __future__ import annotations

from copy import copy

from generator.exercises import (
    LETTERS,
    ChoiceItem,
    MatchItem,
    NumberItem,
    OrderItem,
    QuestionItem,
    SpokenItem,
    SpotItem,
    aids_said,
)
from generator.sheets.figure_flow import NARROWEST
from generator.sheets.flow import Box, Canvas, Column, Lowest, Piece, Row, Space, Text
from generator.sheets.signs import Blank, Boxes, Letter, Number
from generator.sheets.styles import BODY, NOTE, SUBHEADING, TIGHT
from generator.words import Words

WORKING_ROOM = 62.0
"""Points of empty room to work a number out: four handwritten lines."""
_NUMBER = 24.0
_LETTER = 22.0
_BOX = 24.0
_BLANK, _SHORT_BLANK = 130.0, 84.0
_GAP = 10.0
SAVES = 50.0
"""Points of height that must be saved for a drawing to stand beside its box and not above it."""
_UNIT = SUBHEADING.but(before=0.0, after=0.0)
_ANSWER = _UNIT.but(align="right")
_FIRST = TIGHT.but(align="right")


class Question(Row):
    """A question as it is printed.

    Args:
        label: the printed number.
        pieces: text, drawing and answer box.
    """

    def __init__(self, label: str, pieces: list[Piece]) -> None:
        super().__init__([(_NUMBER, Number(label)), (None, Column(pieces))], gap=8, before=4, after=9)
        self.label = label


def question(
    label: str, item: QuestionItem, words: Words, figure: Piece | None = None, room: float = WORKING_ROOM
) -> Question:
    """A question with its number and its box, which always stay together.

    Args:
        label: the printed number.
        item: with its numbers in place.
        words: of the learner's language.
        figure: its drawing, where it has one.
        room: height to work a number out, points.
    """
    box = _answer_box(item, words, room)
    if figure is None:
        return Question(label, [Text(item.text, BODY), box])
    below = Column([figure, box])
    drawn = Lowest([below, _Beside(copy(figure), item, words, room)], SAVES) if _may_be_narrow(item) else below
    return Question(label, [Text(item.text, BODY), drawn])


class _Beside(Piece):
    """A drawing with the box for the answer on its right; room to work on is as high as the drawing.

    Args:
        figure: the drawing.
        item: the question.
        words: of the learner's language.
        room: least height to work a number out, points.
    """

    def __init__(self, figure: Piece, item: QuestionItem, words: Words, room: float) -> None:
        self._figure, self._item, self._words, self._room = figure, item, words, room
        self._row: Piece = figure

    def measure(self, width: float) -> float:
        """The higher of both."""
        high, narrow = self._figure.fit(NARROWEST), width - NARROWEST - _GAP
        spare = high - self._box(0.0).fit(narrow)
        self._row = Row([(NARROWEST, self._figure), (narrow, self._box(max(0.0, spare)))], gap=_GAP)
        return self._row.fit(width)

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """Draw both."""
        self._row.paint(canvas, x, top)

    def _box(self, more: float) -> Piece:
        return _answer_box(self._item, self._words, self._room + more, _SHORT_BLANK)


def _may_be_narrow(item: QuestionItem) -> bool:
    """Whether what is written fits into half the width: not what is put in order or matched, nor named steps."""
    match item:
        case SpokenItem():
            return _may_be_narrow(item.answer)
        case NumberItem():
            return not item.steps
        case ChoiceItem() | SpotItem():
            return True
    return False


def _answer_box(item: QuestionItem, words: Words, room: float = WORKING_ROOM, blank: float = _BLANK) -> Piece:
    match item:
        case NumberItem():
            inside = _working(item, words, room, blank)
        case ChoiceItem():
            inside = _options(item, words, blank)
        case OrderItem():
            inside = _steps(item, words)
        case MatchItem():
            inside = _pairs(item, words)
        case SpotItem():
            inside = _areas(item, words, blank)
        case SpokenItem():
            return Column([Text(words.say("exercise.read_aloud"), NOTE), _answer_box(item.answer, words, room, blank)])
    return Box(inside)


def _working(item: NumberItem, words: Words, room: float, blank: float) -> Piece:
    notes = [Text(words.say("sheet.work"), NOTE)]
    if item.aids:
        notes.append(Text(aids_said(item, words), NOTE))
    if item.units:
        notes.append(Text(words.say("exercise.write_the_unit"), NOTE))
    steps = [_line(words, part.unit, part.text) for part in item.steps]
    return Column([*notes, Space(room), *steps, _line(words, "" if item.units else item.unit, blank=blank)])


def _areas(item: SpotItem, words: Words, blank: float) -> Piece:
    told = words.say("sheet.choose_several") if item.several else words.say("sheet.choose_one")
    if not any(item.labels):  # the drawing alone says what is where
        cells: list[tuple[float | None, Piece]] = [(_LETTER, Letter(area.letter)) for area in item.areas]
        return Column([Text(told, NOTE), Row([*cells, (None, Column([]))], gap=12), _line(words, "", blank=blank)])
    rows: list[Piece] = [
        Row([(_LETTER, Letter(area.letter)), (None, Text(label or " ", TIGHT))], gap=8, middle=True, after=4)
        for area, label in zip(item.areas, item.labels, strict=True)
    ]
    return Column([Text(told, NOTE), *rows, _line(words, "", blank=blank)])


def _line(words: Words, unit: str, label: str = "", blank: float = _BLANK) -> Piece:
    """`Answer ______ m`, on the right; a label of its own stands in the place of the word."""
    answer = Text(label or words.say("sheet.answer"), _ANSWER)
    shown = Text(words.say_one_of("unit", unit) if unit else " ", _UNIT)
    width = max(shown.natural_width() + 1, 30.0)
    return Row([(None, answer), (blank, Blank()), (width, shown)], middle=True)


def _options(item: ChoiceItem, words: Words, blank: float) -> Piece:
    told = words.say("sheet.choose_several") if item.several else words.say("sheet.choose_one")
    return Column([Text(told, NOTE), *(_lettered(item.options, item.order)), _line(words, "", blank=blank)])


def _lettered(texts: tuple[str, ...], order: tuple[int, ...]) -> list[Piece]:
    """The texts as they are shown, each with its letter."""
    return [
        Row([(_LETTER, Letter(LETTERS[place])), (None, Text(texts[i], TIGHT))], gap=8, middle=True, after=4)
        for place, i in enumerate(order)
    ]


def _steps(item: OrderItem, words: Words) -> Piece:
    boxes = Boxes(len(item.steps), _BOX)
    first = Text(words.say("sheet.first"), _FIRST)
    last = Text(words.say("sheet.last"), TIGHT)
    answer = Row(
        [(None, first), (boxes.natural, boxes), (last.natural_width() + 1, last)], gap=8, middle=True, before=4
    )
    return Column([Text(words.say("sheet.put_in_order"), NOTE), *_lettered(item.steps, item.order), answer])


def _pairs(item: MatchItem, words: Words) -> Piece:
    left = [
        Row([(None, Text(f"{number}. {text}", TIGHT)), (_BOX, Boxes(1, _BOX))], gap=8, middle=True, after=4)
        for number, text in enumerate(item.left, start=1)
    ]
    sides = Row([(None, Column(left)), (None, Column(_lettered(item.right, item.order)))], gap=18)
    return Column([Text(words.say("sheet.match"), NOTE), sides])
