"""Questions for the oral recheck near the cut: drawn from the bank, with other numbers than the paper's."""

from __future__ import annotations

from generator.assessment.blueprint import recheck_of, scheme_questions, times
from generator.assessment.paper_draw import Exam, draw_seed, given_tuple
from generator.calculations import BOOK
from generator.curriculum import CourseContent
from generator.curriculum.models import (
    ChoiceQuestion,
    NumberChoiceQuestion,
    NumberQuestion,
    Question,
    Scheme,
    SpokenChoiceQuestion,
    SpokenNumberQuestion,
)
from generator.exercises import Learner, QuestionItem, ScenarioItem, make_item, same_name
from generator.formula import Book, Stream
from generator.problems import RefusedError

_TRIES = 60
_ALOUD = (NumberQuestion, NumberChoiceQuestion, ChoiceQuestion, SpokenNumberQuestion, SpokenChoiceQuestion)
"""Kinds that can be asked and answered aloud."""


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


def _pool(content: CourseContent, scheme: Scheme) -> list[Question]:
    """What can be asked aloud; with a drawing it would need a sheet beside it."""
    wanted = {cell.competency for cell in scheme.blueprint}
    return [
        one
        for one in scheme_questions(content, scheme)
        if isinstance(one, _ALOUD) and one.competency in wanted and not one.figure
    ]
