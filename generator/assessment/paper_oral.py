"""Questions asked aloud, near the cut or on one critical skill: with other numbers than the paper's."""

from __future__ import annotations

from dataclasses import dataclass

from generator.assessment.blueprint import ALOUD, needs_options, recheck_of, scheme_questions, times
from generator.assessment.paper_decision import to_talk_about
from generator.assessment.paper_draw import Exam, draw_seed, given_tuple, values_of
from generator.calculations import BOOK
from generator.curriculum import CourseContent
from generator.curriculum.models import Question, Scheme
from generator.exercises import Learner, QuestionItem, ScenarioItem, make_item, same_name
from generator.figures import Scene, draw
from generator.formula import Book, Stream
from generator.problems import RefusedError

_TRIES = 60


def oral_questions(content: CourseContent, exam: Exam, learner: Learner, book: Book = BOOK) -> tuple[QuestionItem, ...]:
    """The questions of one candidate's recheck, in the order of asking: as many as the rule may need, if there are.

    A fixed question that stood on the candidate's paper is not asked again; one with drawn numbers comes back, with
    other numbers, once all were asked.

    Args:
        content: the course.
        exam: whose secret draws them.
        learner: the candidate, with the paper.
        book: where the quantities live.

    Raises:
        RefusedError: the scheme has no oral recheck, or the bank nothing to ask.
    """
    rule = exam.scheme.oral
    if rule is None:
        raise RefusedError(f"the scheme '{exam.scheme.id}' has no oral recheck")
    most, who = recheck_of(rule).most, same_name(learner.name)
    words = content.words[learner.language]
    asked = {item.id for item in learner.items}
    seen = {(item.id, given_tuple(item)) for item in learner.items if not isinstance(item, ScenarioItem)}
    found: list[QuestionItem] = []
    for turn in range(1, most + 1):
        seed = draw_seed(exam.secret, exam.id, who, f"oral round {turn}", exam.attempt)
        pool = [one for one in _pool(content, exam.scheme) if times(one) > 1 or (turn == 1 and one.id not in asked)]
        if not pool:
            break
        for question in Stream(seed).shuffle(pool):
            for again in range(_TRIES):
                own = draw_seed(exam.secret, exam.id, who, f"oral {turn} {question.id}", exam.attempt, again)
                item = make_item(question, own, words, book)
                if (item.id, given_tuple(item)) not in seen:
                    break
            seen.add((item.id, given_tuple(item)))
            found.append(item)
    if not found:
        raise RefusedError(f"the bank of '{exam.scheme.id}' has nothing that can be asked aloud")
    return tuple(found[:most])


@dataclass(frozen=True, slots=True)
class Asked:
    """A question of a talk.

    Args:
        item: the question.
        scene: its drawing, where it has one.
        options: whether its options are read out, because it says nothing without them.
    """

    item: QuestionItem
    scene: Scene | None
    options: bool


@dataclass(frozen=True, slots=True)
class Talk:
    """The talk on one critical competency.

    Args:
        competency: its id.
        questions: in the order of asking.
    """

    competency: str
    questions: tuple[Asked, ...]


def talks(content: CourseContent, exam: Exam, learner: Learner, book: Book = BOOK) -> tuple[Talk, ...]:
    """The talks of one candidate: as many questions on each critical competency as the rule may need, if there are.

    What stood on the candidate's paper comes last; a question with drawn numbers comes with others, and comes back. One
    that says nothing without its options is asked, with them, only where there is no other.

    Args:
        content: the course.
        exam: whose secret draws them.
        learner: the candidate, with the paper.
        book: where the quantities live.

    Raises:
        RefusedError: the scheme has no talks, or the bank nothing to ask.
        MachineError: a text of a drawing can't be shaped.
    """
    rule = exam.scheme.talk
    if rule is None:
        raise RefusedError(f"the scheme '{exam.scheme.id}' has no talks")
    critical = [one.id for one in content.competencies.values() if one.critical]
    names = to_talk_about(
        exam.scheme, {item.competency for item in learner.items if not isinstance(item, ScenarioItem)}, critical
    )
    return tuple(_talk(content, exam, learner, name, rule.most, book) for name in names)


def _talk(content: CourseContent, exam: Exam, learner: Learner, name: str, most: int, book: Book) -> Talk:
    words, who = content.words[learner.language], same_name(learner.name)
    asked = {item.id for item in learner.items}
    bank = [one for one in scheme_questions(content, exam.scheme) if one.competency == name and isinstance(one, ALOUD)]
    if not bank:
        raise RefusedError(f"the bank of '{exam.scheme.id}' has nothing on '{name}' that can be asked aloud")
    shuffled = Stream(draw_seed(exam.secret, exam.id, who, f"talk {name}", exam.attempt)).shuffle(bank)
    alone = [one for one in shuffled if not needs_options(one)]
    once = sorted(alone or shuffled, key=lambda one: one.id in asked)
    again = [one for one in once if times(one) > 1]
    found: list[Asked] = []
    for turn, question in enumerate([*once, *again * most][:most]):
        seed = draw_seed(exam.secret, exam.id, who, f"talk {turn} {question.id}", exam.attempt)
        scene = draw(question.figure, values_of(content, question.id), words, 1) if question.figure else None
        found.append(Asked(make_item(question, seed, words, book), scene, needs_options(question)))
    return Talk(name, tuple(found))


def _pool(content: CourseContent, scheme: Scheme) -> list[Question]:
    """What can be asked aloud; with a drawing it would need a sheet beside it."""
    wanted = {cell.competency for cell in scheme.blueprint}
    return [
        one
        for one in scheme_questions(content, scheme)
        if isinstance(one, ALOUD) and one.competency in wanted and not one.figure
    ]
