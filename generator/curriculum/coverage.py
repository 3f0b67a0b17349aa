"""What is taught, practised and assessed where: each outcome of each module, with its places in the content.

Nothing here is typed by an author. A section of a lesson teaches an outcome if it holds an exercise of its competency,
or shows the formula or the worked example of a quantity that such an exercise asks for.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from generator.curriculum.content import CourseContent
from generator.curriculum.lessons import ExerciseBlock, FormulaBlock, Prose, WorkedBlock
from generator.curriculum.models import (
    Module,
    Outcome,
    Practical,
    PracticalStep,
    Question,
    Scenario,
    ScenarioPart,
    Scheme,
    WorkedQuestion,
)

_HEADING = re.compile(r"^(#{2,4}) +(.*?)(?: *\{#[a-z0-9-]+\})? *#*$", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Section:
    """A section of a lesson: its heading, and which heading of the lesson that is, counted from 0."""

    number: int
    title: str


@dataclass(frozen=True, slots=True)
class CoveredOutcome:
    """Where one outcome of one module is taught, practised and assessed.

    Args:
        module: whose outcome it is.
        outcome: itself.
        sections: of the module's lesson that teach it.
        in_lesson: exercises of it that stand in the lesson.
        steps: watched steps that show it, with their checklist, of any module.
        parts: parts of scenarios that ask for it, of any module.
        decisions: questions of scenarios that ask for it.
        questions: all of the module's questions that ask for it.
        schemes: what requires it for a certificate, with the questions of it in each paper.
    """

    module: Module
    outcome: Outcome
    sections: tuple[Section, ...]
    in_lesson: tuple[Question, ...]
    steps: tuple[tuple[Practical, PracticalStep], ...]
    parts: tuple[tuple[Scenario, ScenarioPart], ...]
    decisions: tuple[tuple[Scenario, Question], ...]
    questions: tuple[Question, ...]
    schemes: tuple[tuple[Scheme, int], ...]

    @property
    def taught(self) -> bool:
        """A section of the lesson teaches it."""
        return bool(self.sections)

    @property
    def practised(self) -> bool:
        """Hands do it, a day of decisions asks for it, or the lesson stops for an exercise of it."""
        return bool(self.steps or self.parts or self.decisions or self.in_lesson)

    @property
    def assessed(self) -> bool:
        """A question can ask for it."""
        return bool(self.questions)


def coverage(content: CourseContent, language: str) -> tuple[CoveredOutcome, ...]:
    """Every outcome of every module that is taught, in teaching order.

    Args:
        content: the course.
        language: of the headings.
    """
    modules = [module for module in content.modules.values() if not module.retired]
    return tuple(_covered(content, module, outcome, language) for module in modules for outcome in module.outcomes)


def _covered(content: CourseContent, module: Module, outcome: Outcome, language: str) -> CoveredOutcome:
    aim = outcome.competency
    questions = tuple(one for one in content.questions_of(module.id) if one.competency == aim)
    placed = {part.question for part in content.lessons[module.id, language] if isinstance(part, ExerciseBlock)}
    scenarios = [one for one in content.scenarios.values() if not one.retired]
    decided = ((one, content.questions[key]) for one in scenarios for key in one.decisions)
    return CoveredOutcome(
        module=module,
        outcome=outcome,
        sections=tuple(dict.fromkeys(_sections(content, module, aim, language))),
        in_lesson=tuple(one for one in questions if one.id in placed),
        steps=tuple(_steps(content, aim)),
        parts=tuple((one, part) for one in scenarios for part in one.parts if part.competency == aim),
        decisions=tuple((one, asked) for one, asked in decided if asked.competency == aim and not asked.retired),
        questions=questions,
        schemes=tuple(_schemes(content, aim)),
    )


def _steps(content: CourseContent, aim: str) -> Iterator[tuple[Practical, PracticalStep]]:
    for practical in content.practicals.values():
        if not practical.retired:
            yield from ((practical, one) for one in practical.steps if (one.competency or practical.competency) == aim)


def _schemes(content: CourseContent, aim: str) -> Iterator[tuple[Scheme, int]]:
    for scheme in content.schemes.values():
        count = sum(cell.count for cell in scheme.blueprint if cell.competency == aim)
        if count or aim in scheme.critical_competencies:
            yield scheme, count


def _sections(content: CourseContent, module: Module, aim: str, language: str) -> Iterator[Section]:
    asked = {
        one.asks for one in content.questions_of(module.id) if isinstance(one, WorkedQuestion) and one.competency == aim
    }
    here: Section | None = None
    count = 0
    for part in content.lessons[module.id, language]:
        if isinstance(part, Prose):
            for match in _HEADING.finditer(part.markdown):
                here, count = Section(count, match[2]), count + 1
        elif here is not None and (
            (isinstance(part, ExerciseBlock) and content.questions[part.question].competency == aim)
            or (isinstance(part, FormulaBlock | WorkedBlock) and part.quantity in asked)
        ):
            yield here
