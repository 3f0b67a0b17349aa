"""A printed set: a class list and a module become personal sheets and a record; record and answers become marks."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

from generator.calculations import BOOK
from generator.curriculum import CourseContent
from generator.curriculum.models import Question, Scenario
from generator.exercises.answers import Answers
from generator.exercises.class_list import Person
from generator.exercises.items import Item, NumberItem, ScenarioItem, SpokenItem
from generator.exercises.letters import mark_typed
from generator.exercises.make import dealt_areas, make_item, make_scenario
from generator.exercises.mark import Mark
from generator.exercises.record import Learner, Record
from generator.exercises.scenario import mark_scenario
from generator.formula import Book, Stream, parse


@dataclass(frozen=True, slots=True)
class LearnerMarks:
    """One person's marks: the printed number of each question, and its mark."""

    learner: Learner
    marks: tuple[tuple[str, Mark], ...]

    @property
    def points(self) -> int:
        """Points earned."""
        return sum(mark.points for _, mark in self.marks)

    @property
    def most(self) -> int:
        """Points that could be earned."""
        return sum(mark.most for _, mark in self.marks)


@dataclass(frozen=True, slots=True)
class SetMarks:
    """The marks of a set.

    Args:
        learners: in the order of the set.
        same_formulas: whether the formulas still are those that the set was printed with. If not, scenario parts are
            held against their printed answers alone, and nothing is carried forward.
    """

    learners: tuple[LearnerMarks, ...]
    same_formulas: bool


def make_set(
    content: CourseContent,
    module_id: str,
    people: Sequence[Person],
    seed: str,
    language: str,
    *,
    tool: str,
    questions: int = 0,
    competencies: Collection[str] = (),
    first: int = 1,
    book: Book = BOOK,
) -> Record:
    """Make a personal sheet for everyone on a class list.

    A learner's numbers and letters follow from seed and name alone: a name added to the list changes no other sheet.

    Args:
        content: the course.
        module_id: whose questions and scenarios are asked.
        people: the class list.
        seed: any text; another one gives other numbers.
        language: of those without one of their own.
        tool: name and version of what makes the set.
        questions: how many each, drawn for each learner; 0 for all. Scenarios come with all of them.
        competencies: only what shows these, and scenarios of nothing else; none given means all.
        first: number of the first of these people, where they are a part of a class.
        book: where the quantities live.

    Raises:
        NoVariantError: a question without fair numbers.
    """
    bank = [question for question in content.questions_of(module_id) if not question.retired]
    scenarios = [s for s in content.scenarios.values() if s.module == module_id and not s.retired]
    if competencies:
        bank = [question for question in bank if question.competency in competencies]
        scenarios = [s for s in scenarios if all(part.competency in competencies for part in s.parts)]
    learners: list[Learner] = []
    for number, person in enumerate(people, start=first):
        own_seed = f"{seed}|{person.name}"
        spoken = person.language or language
        words = content.words[spoken]
        items: list[Item] = [
            make_item(question, own_seed, words, book, dealt_areas(question, own_seed))
            for question in chosen(bank, questions, own_seed)
        ]
        if not questions:
            items += [make_scenario(scenario, content.values(scenario.place), words, book) for scenario in scenarios]
        learners.append(Learner(number=number, name=person.name, language=spoken, items=tuple(items)))
    asked: list[Question | Scenario] = [*bank, *(scenarios if not questions else ())]
    return Record(
        format=1,
        tool=tool,
        course=content.course.id,
        course_version=content.course.version,
        module=module_id,
        seed=seed,
        questions=questions,
        language=language,
        competencies=tuple(sorted(set(competencies))),
        texts={item.id: text_hash(item) for item in asked},
        formulas=formulas_hash(book, asked_of(learners)),
        learners=tuple(learners),
    )


def chosen(bank: Sequence[Question], count: int, seed: str) -> list[Question]:
    """The questions of one sheet, in the bank's order: all of them, or `count` that the learner's stream draws."""
    if not 0 < count < len(bank):
        return list(bank)
    drawn = Stream(f"{seed}|questions").shuffle(range(len(bank)))[:count]
    return [bank[place] for place in sorted(drawn)]


def mark_set(record: Record, answers: Answers, book: Book = BOOK) -> SetMarks:
    """Mark the typed answers to a printed set, from its record alone. Never raises, whatever is typed.

    Args:
        record: of the set.
        answers: as `read_answers` gives them; a missing answer counts as blank.
        book: carries a learner's own numbers forward in scenarios, while its formulas are the printed ones.
    """
    same = formulas_hash(book, asked_of(record.learners)) == record.formulas
    return SetMarks(tuple(_mark_learner(learner, answers, book if same else None) for learner in record.learners), same)


def _mark_learner(learner: Learner, answers: Answers, book: Book | None) -> LearnerMarks:
    texts = {label: answers.get((learner.number, label), "") for label, _, _ in learner.labelled()}
    linked: dict[str, Mapping[str, Mark]] = {}
    for item in learner.items:
        if isinstance(item, ScenarioItem) and book is not None:
            typed = {part.id: texts[label] for label, part, scenario in learner.labelled() if scenario is item}
            linked[item.id] = {mark.item: mark for mark in mark_scenario(item, typed, book)}
    marks: list[tuple[str, Mark]] = []
    for label, item, scenario in learner.labelled():
        found = (
            linked[scenario.id][item.id] if scenario and scenario.id in linked else mark_typed(item, texts[label], book)
        )
        marks.append((label, found))
    return LearnerMarks(learner, tuple(marks))


def asked_of(learners: Sequence[Learner]) -> frozenset[str]:
    """All quantities that sheets ask for."""
    return frozenset(
        asked.asks
        for learner in learners
        for _, item, _ in learner.labelled()
        if isinstance(asked := item.answer if isinstance(item, SpokenItem) else item, NumberItem)
    )


def text_hash(source: Question | Scenario) -> str:
    """SHA-256 of a question's or scenario's source, all languages and rules included."""
    text = json.dumps(source.model_dump(mode="json"), ensure_ascii=False, sort_keys=True)
    return hashlib.sha256(text.encode("utf-8")).hexdigest()


def formulas_hash(book: Book, asks: frozenset[str]) -> str:
    """SHA-256 of all formulas that these quantities rest on, and of the misconceptions about them.

    A quantity that the book no longer has makes another hash, too.
    """
    known = [name for name in sorted(asks) if name in book.quantities]
    lines = [f"missing {name}" for name in sorted(asks) if name not in book.quantities]
    names = book.ancestors(known)
    for name in sorted(names):
        if name in book.quantities:
            lines.append(f"{name} {book.quantities[name].places} {parse(book.quantities[name].function)!r}")
    lines += [
        f"{name} instead of {mistake.of} {parse(mistake.function)!r}"
        for name, mistake in sorted(book.misconceptions.items())
        if mistake.of in names
    ]
    return hashlib.sha256("\n".join(lines).encode("utf-8")).hexdigest()
