"""The key of a printed set: each learner's right answers, worked line by line, and what each wrong answer means."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import replace

from generator.calculations import BOOK
from generator.curriculum import CourseContent
from generator.exercises import (
    LETTERS,
    ChoiceItem,
    Learner,
    MatchItem,
    NumberItem,
    OrderItem,
    QuestionItem,
    Record,
    ScenarioItem,
    SpokenItem,
    SpotItem,
    rounding_said,
)
from generator.formula import show
from generator.sheets.flow import CloseGrid, Column, Piece, Row, Text
from generator.sheets.page import Part, sheet_pdf
from generator.sheets.signs import Number
from generator.sheets.styles import CELL, HEADING, NOTE, SUBHEADING, TIGHT, TITLE
from generator.sheets.working import worked_pieces
from generator.sheets.worksheet import about_set, refuse_unprintable, wanted_learners
from generator.words import Words

_RIGHT = SUBHEADING.but(before=0.0, after=0.5)


def key_pdf(
    record: Record, content: CourseContent, learners: Collection[int] = (), set_id: str = "", exam: str = ""
) -> bytes:
    """The key of a printed set, for whoever marks by hand or talks a mistake over.

    Args:
        record: of the set.
        content: the course that the set was made from.
        learners: numbers of the learners wanted; none given means all.
        set_id: of the whole set, where the record holds only some of its learners.
        exam: what the papers are called, where the set is an exam's.

    Raises:
        RefusedError: a name with signs that the course's font does not have.
        MachineError: shaping is missing.
    """
    wanted = wanted_learners(record, learners)
    refuse_unprintable([learner.name for learner in wanted])
    set_id = set_id or record.set_id
    words = content.words[record.language]
    about = about_set(record, content, words.say("sheet.key"), set_id)
    if exam:
        about = replace(about, name=f"{words.say('sheet.key')} · {exam}")
    return sheet_pdf(about, [key_part(learner, record, content, set_id, exam) for learner in wanted])


def key_part(learner: Learner, record: Record, content: CourseContent, set_id: str, exam: str = "") -> Part:
    """The key of one learner's sheet, or of one candidate's paper, which then is named as the paper names itself."""
    words = content.words[record.language]
    title = f"{words.say('sheet.key')} · {learner.name}"
    module = content.modules[record.module].title[record.language]
    sheet = words.say("sheet.number", number=learner.number, set=set_id)
    of, page, told, note = module, module, "", words.say("sheet.key_only_for_trainers")
    if exam:
        sheet = words.say("paper.number", number=f"{set_id}-{learner.number}")
        of, page, told, note = exam, "", words.say("paper.read_this"), words.say("paper.examiner_only")
    opening = [Text(f"{of} · {sheet}", TIGHT), Text(note, NOTE.but(after=10.0))]
    pieces: list[Piece] = [Text(title, TITLE), *opening, *key_pieces(learner, words)]
    outline = f"{learner.number}. {learner.name}"
    return Part(f"{words.say('sheet.key')} · {of}", page, outline, f"{title} · {sheet}", words, pieces, told)


def key_pieces(learner: Learner, words: Words) -> Iterator[Piece]:
    """The answers to a sheet's questions, in order.

    Args:
        learner: with the items.
        words: of the trainer's language.
    """
    told: ScenarioItem | None = None
    known: set[str] = set()
    for label, item, scenario in learner.labelled():
        if scenario is not None and scenario is not told:
            told, known = scenario, set()
            yield Text(scenario.title, HEADING)
            yield Text(words.say("sheet.key_scenario"), NOTE.but(keep=True))
        before = known if scenario is not None else set()
        answer = Column(list(_answer(item, scenario, before, words)))
        yield Row([(24.0, Number(label)), (None, answer)], gap=8, after=5.5)


def short_answer(item: QuestionItem, words: Words) -> str:
    """The right answer as a learner writes it: a number with its unit, or letters."""
    match item:
        case NumberItem():
            return words.with_unit(item.shown_key, item.unit)
        case ChoiceItem():
            return " ".join(LETTERS[place] for place, i in enumerate(item.order) if i in item.right)
        case OrderItem():
            return " ".join(LETTERS[item.order.index(i)] for i in range(len(item.steps)))
        case MatchItem():
            return " ".join(f"{i + 1}{LETTERS[item.order.index(i)]}" for i in range(len(item.left)))
        case SpotItem():
            return " ".join(item.areas[i].letter for i in item.right)
        case SpokenItem():
            return short_answer(item.answer, words)


def _answer(item: QuestionItem, scenario: ScenarioItem | None, known: set[str], words: Words) -> Iterator[Piece]:
    match item:
        case NumberItem():
            yield from _number(item, scenario, known, words)
        case ChoiceItem():
            yield Text(short_answer(item, words), _RIGHT)
            yield from (Text(item.options[i], TIGHT) for i in item.order if i in item.right)
            yield from (Text(item.why[i], NOTE) for i in item.order if i in item.right and item.why[i])
            wrong = [(place, i) for place, i in enumerate(item.order) if i not in item.right and item.why[i]]
            meant = [(LETTERS[place], item.why[i]) for place, i in wrong]
            yield from _meaning(meant, words)
            yield from _choice_of_numbers(item, words)
        case OrderItem():
            yield Text(short_answer(item, words), _RIGHT)
            yield Text(item.why, TIGHT)
        case MatchItem():
            yield Text(short_answer(item, words), _RIGHT)
            yield Text(item.why, TIGHT)
        case SpotItem():
            yield Text(short_answer(item, words), _RIGHT)
            yield from (Text(item.labels[i], TIGHT) for i in item.right if item.labels[i])
            yield from (Text(item.why[i], NOTE) for i in item.right if item.why[i])
            others = [i for i in range(len(item.areas)) if i not in item.right and item.why[i]]
            meant = [(item.areas[i].letter, item.why[i]) for i in others]
            yield from _meaning(meant, words)
        case SpokenItem():
            yield Text(words.say("sheet.script"), NOTE.but(keep=True))
            yield from (Text(line, TIGHT) for line in item.script)
            yield from _answer(item.answer, scenario, known, words)


def _number(item: NumberItem, scenario: ScenarioItem | None, known: set[str], words: Words) -> Iterator[Piece]:
    """The right answer, its working, and the answers of the mistakes that the question looks for.

    In a scenario the lines that an earlier part has worked out are not repeated, but for the one that is asked.
    """
    right = short_answer(item, words)
    yield Text(right, _RIGHT)
    steps = BOOK.trace(item.asks, scenario.givens if scenario else item.givens)
    yield from worked_pieces([step for step in steps if step.name not in known or step.name == item.asks], words)
    if rounded := rounding_said(item, words):
        yield Text(rounded, TIGHT)
    known.update(step.name for step in steps)
    if item.steps:
        parts = "; ".join(f"{part.text} {words.with_unit(part.shown_key, part.unit)}" for part in item.steps)
        yield Text(words.say("sheet.key_steps", steps=parts), TIGHT)
    wrong = [(words.with_unit(show(value, item.places), item.unit), name) for name, value in item.wrong.items()]
    # What prints as the right answer can't be told from it on paper, so the table would only accuse.
    yield from _diagnosis([(shown, name) for shown, name in wrong if shown != right], words)


def _choice_of_numbers(item: ChoiceItem, words: Words) -> Iterator[Piece]:
    """How the right option is worked out, and what was done by whoever took another one."""
    if not item.asks:
        return
    yield from worked_pieces(BOOK.trace(item.asks, item.givens), words)
    letters = [(LETTERS[place], item.mistakes[i]) for place, i in enumerate(item.order) if item.mistakes[i]]
    yield from _diagnosis(letters, words)


def _diagnosis(answers: Sequence[tuple[str, str]], words: Words) -> Iterator[Piece]:
    """For each wrong answer the misconception behind it, and what to say: what it would do on the hill.

    Args:
        answers: each as it is written, with the name of its misconception.
        words: of the trainer's language.
    """
    rows = [
        [
            Text(shown, CELL.but(bold=True)),
            Text(words.say_one_of("misconception", f"{name}.mistake"), CELL),
            Text(words.say_one_of("misconception", f"{name}.hill"), CELL),
        ]
        for shown, name in answers
    ]
    if rows:
        heads = [words.say("sheet.wrong_answer"), words.say("sheet.mistake"), words.say("sheet.hill")]
        yield _table(rows, (1.0, 2.4, 2.4), heads)


def _meaning(meant: Sequence[tuple[str, str]], words: Words) -> Iterator[Piece]:
    if meant:
        rows = [[Text(letter, CELL.but(bold=True)), Text(why, CELL)] for letter, why in meant]
        yield _table(rows, (1.0, 4.8), [words.say("sheet.wrong_answer"), words.say("sheet.hill")])


def _table(rows: Sequence[Sequence[Piece]], widths: Sequence[float], heads: Sequence[str]) -> Piece:
    return CloseGrid(
        rows, widths, [Text(head, NOTE.but(bold=True, after=0.0)) for head in heads], before=2.0, after=3.0
    )
