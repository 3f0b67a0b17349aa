"""Drawing exam papers: one for each candidate, parallel by blueprint, and no two neighbours with the same numbers.

Every draw comes from HMAC-SHA256(secret, exam|candidate|item|attempt): who has the secret makes the same papers again,
and who has not can't guess one. Names with a stroke in them are written so that no two draws share a message.
"""

from __future__ import annotations

import hashlib
import hmac
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from generator.assessment.blueprint import fill_slots, scheme_questions, slots
from generator.assessment.seats import Seat, neighbours
from generator.calculations import BOOK
from generator.curriculum import CourseContent
from generator.curriculum.models import Question, Scheme
from generator.exercises import (
    ChoiceItem,
    Learner,
    MatchItem,
    NumberItem,
    OrderItem,
    Person,
    QuestionItem,
    Record,
    SpokenItem,
    SpotItem,
    make_item,
    same_name,
)
from generator.exercises.printed_set import asked_of, formulas_hash, text_hash
from generator.figures import Scene, draw, hot_areas
from generator.formula import Book, Stream
from generator.problems import Problem, ProblemsError, RefusedError
from generator.words import Words

LEAST_SECRET = 32
"""Bytes."""
_FIGURE_SEEDS = 1_000_000
_TRIES = 60
_EXAM = "exam"

Tuple = tuple[object, ...]


@dataclass(frozen=True, slots=True)
class Exam:
    """What makes an exam's papers.

    Args:
        scheme: whose blueprint they follow.
        id: name of the exam, as `frame-hand-2031-05-04`.
        secret: at least 32 bytes that nobody else knows.
        attempt: 1 for the first try of this cohort.
    """

    scheme: Scheme
    id: str
    secret: bytes
    attempt: int = 1


@dataclass(frozen=True, slots=True)
class Drawn:
    """The papers of an exam.

    Args:
        record: what marks them; it holds the key.
        figures: for each paper's number and question's label the seed of the drawing, where one is shown.
    """

    record: Record
    figures: Mapping[tuple[int, str], int]


def draw_seed(secret: bytes, exam: str, candidate: str, item: str, attempt: int, again: int = 0) -> str:
    """The seed of one draw: HMAC-SHA256 as 64 hexadecimal digits.

    Args:
        secret: the exam's.
        exam: its id.
        candidate: the name, in the form in which two writings of it are equal.
        item: the question's id, or what else is drawn.
        attempt: from 1.
        again: how often it was drawn before because a neighbour had the same.

    Example:
        >>> draw_seed(b"s" * 32, "e", "a|b", "c", 1) == draw_seed(b"s" * 32, "e", "a", "b|c", 1)
        False
    """
    if len(secret) < LEAST_SECRET:
        raise ValueError(f"the secret has {len(secret)} bytes and needs {LEAST_SECRET}")
    fields = [exam, candidate, item, str(attempt), *([str(again)] if again else [])]
    message = "|".join(field.replace("%", "%25").replace("|", "%7C") for field in fields)
    return hmac.new(secret, message.encode("utf-8"), hashlib.sha256).hexdigest()


def secret_mark(secret: bytes) -> str:
    """Sixteen digits that tell two secrets apart and give nothing of them away."""
    return hmac.new(secret, b"which secret", hashlib.sha256).hexdigest()[:16]


def given_tuple(item: QuestionItem) -> Tuple:
    """What tells two sheets' versions of a question apart: its numbers, or the order in which it is shown."""
    match item:
        case NumberItem():
            return tuple(sorted(item.givens.items()))
        case ChoiceItem():
            return tuple(sorted(item.givens.items())) if item.givens else item.order
        case OrderItem() | MatchItem():
            return item.order
        case SpotItem():
            return tuple((area.letter, area.name) for area in item.areas)
        case SpokenItem():
            return given_tuple(item.answer)


def has_numbers(item: QuestionItem) -> bool:
    """Whether the question gives numbers: those must never be a neighbour's."""
    asked = item.answer if isinstance(item, SpokenItem) else item
    return isinstance(asked, NumberItem | ChoiceItem) and bool(asked.givens)


def draw_papers(
    content: CourseContent,
    exam: Exam,
    people: Sequence[Person],
    language: str,
    *,
    tool: str,
    seats: Mapping[str, Seat] | None = None,
    book: Book = BOOK,
) -> Drawn:
    """One paper for each candidate; the same secret, exam and people give the same papers.

    Args:
        content: the course.
        exam: what is asked, and the secret.
        people: the candidates, in the order of their numbers.
        language: of those without one of their own.
        tool: name and version of what makes the papers.
        seats: by name; without it no two are neighbours.
        book: where the quantities live.

    Raises:
        RefusedError: a scheme without a blueprint, or that its bank can't fill.
        ProblemsError: two neighbours would have the same numbers.
    """
    scheme = exam.scheme
    if not scheme.blueprint:
        raise RefusedError(f"the scheme '{scheme.id}' has no blueprint: say first what a paper asks")
    bank = scheme_questions(content, scheme)
    near = neighbours({same_name(name): seat for name, seat in (seats or {}).items()})
    learners: list[Learner] = []
    figures: dict[tuple[int, str], int] = {}
    taken: dict[str, dict[str, Tuple]] = {}
    problems: list[Problem] = []
    for number, person in enumerate(people, start=1):
        who = same_name(person.name)
        words = content.words[person.language or language]
        beside = [name for name in near.get(who, ()) if name in taken]
        own: dict[str, Tuple] = {}
        items: list[QuestionItem] = []
        for place, question in enumerate(chosen(exam, who, bank), start=1):
            others = {taken[name][question.id]: name for name in beside if question.id in taken[name]}
            item, seed = _fresh(exam, who, question, words, book, others)
            own[question.id] = given_tuple(item)
            if own[question.id] in others and has_numbers(item):
                other = others[own[question.id]]
                what = f"'{person.name}' and '{other}' sit side by side and get the same numbers in '{question.id}'"
                fix = "seat them apart, or let the question draw from more numbers"
                problems.append(Problem("seats", 0, 0, "same-numbers", what, fix))
            if question.figure:
                figures[number, str(place)] = seed
            items.append(item)
        taken[who] = own
        learners.append(Learner(number=number, name=person.name, language=words.language, items=tuple(items)))
    if problems:
        raise ProblemsError(problems)
    asked = {item.id for learner in learners for item in learner.items}
    return Drawn(
        Record(
            format=1,
            tool=tool,
            course=content.course.id,
            course_version=content.course.version,
            module=scheme.modules[0],
            seed=exam_line(exam),
            questions=len(slots(scheme)),
            language=language,
            texts={question.id: text_hash(question) for question in bank if question.id in asked},
            formulas=formulas_hash(book, asked_of(learners)),
            learners=tuple(learners),
        ),
        figures,
    )


def exam_line(exam: Exam) -> str:
    """What stands in a record in the place of a seed: which exam it is, and nothing to draw from."""
    return f"{_EXAM}|{exam.scheme.id}|{exam.scheme.version}|{exam.attempt}|{secret_mark(exam.secret)}|{exam.id}"


def scheme_of(record: Record) -> tuple[str, int] | None:
    """The scheme and its version that a record's papers follow; None where it is no exam."""
    parts = record.seed.split("|", 5)
    if len(parts) != 6 or parts[0] != _EXAM or not parts[2].isdigit():
        return None
    return parts[1], int(parts[2])


def exam_id(record: Record) -> str:
    """The exam's name; empty where the record is no exam's."""
    return record.seed.split("|", 5)[5] if scheme_of(record) else ""


def chosen(exam: Exam, who: str, bank: Sequence[Question]) -> list[Question]:
    """The questions of one paper, in the blueprint's order.

    Args:
        exam: the scheme and its secret.
        who: the candidate, in the form in which two writings of a name are equal.
        bank: what can be asked.

    Raises:
        RefusedError: the bank can't fill the blueprint.
    """
    wanted = slots(exam.scheme)

    def prefer(slot: int, places: Sequence[int]) -> Sequence[int]:
        return Stream(draw_seed(exam.secret, exam.id, who, f"slot {slot + 1}", exam.attempt)).shuffle(places)

    filled = fill_slots(wanted, bank, prefer)
    if any(place is None for place in filled):
        raise RefusedError(f"the bank can't fill the blueprint of '{exam.scheme.id}'; the command 'check' says where")
    return [bank[place] for place in filled if place is not None]


def _fresh(
    exam: Exam, who: str, question: Question, words: Words, book: Book, others: Mapping[Tuple, str]
) -> tuple[QuestionItem, int]:
    """A question that no neighbour has in this form, if there is one, and the seed of its drawing."""
    first: tuple[QuestionItem, int] | None = None
    for again in range(_TRIES if others else 1):
        seed = draw_seed(exam.secret, exam.id, who, question.id, exam.attempt, again)
        figure = Stream(f"{seed}|figure").below(_FIGURE_SEEDS) + 1
        made = make_item(question, seed, words, book, hot_areas(figure)), figure
        if given_tuple(made[0]) not in others:
            return made
        first = first or made
    assert first is not None  # noqa: S101 (there is at least one try)
    return first


def paper_figures(content: CourseContent, drawn: Drawn, learner: Learner) -> dict[str, Scene]:
    """The drawings of a paper by the question's label, with the numbers of the module's place.

    Raises:
        MachineError: a text of a drawing can't be shaped.
    """
    words = content.words[learner.language]
    found: dict[str, Scene] = {}
    for label, item, _ in learner.labelled():
        seed = drawn.figures.get((learner.number, label))
        question = content.questions[item.id]
        if seed is not None and question.figure:
            found[label] = draw(question.figure, values_of(content, item.id), words, seed)
    return found


def aids_said(scheme: Scheme, learner: Learner, words: Words) -> str:
    """What may be used: what the scheme allows throughout, and what a question allows."""
    own = {aid for item in learner.items if isinstance(item, NumberItem) for aid in item.aids}
    said = sorted(words.say_one_of("exercise.aid", aid) for aid in {*scheme.aids, *own})
    return words.say("exercise.aids", aids=", ".join(said)) if said else words.say("paper.aids")


def values_of(content: CourseContent, question: str) -> Mapping[str, float]:
    """The numbers of the place that the question's module works on."""
    bank = next(bank for bank in content.banks.values() if any(one.id == question for one in bank.questions))
    return content.values(content.modules[bank.module].place)
