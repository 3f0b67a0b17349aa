"""What can be wrong with a question although each of its lines is right: mistakes that hide behind the right answer."""

from __future__ import annotations

import itertools
from collections.abc import Iterator

from generator.calculations import BOOK
from generator.curriculum import CourseContent
from generator.curriculum.models import (
    Scenario,
    SpokenChoiceQuestion,
    SpokenNumberQuestion,
    SpotQuestion,
    WorkedQuestion,
)
from generator.exercises.draw import recipe
from generator.exercises.make import lettered, part_recipe, scenario_givens
from generator.exercises.spoken import MOST_GIVENS, script_faults
from generator.exercises.variants import MOST_TRIES, Separability, of_givens, separability, why_none
from generator.figures import FIGURES, hot_areas
from generator.formula import Book, OutOfRangeError
from generator.problems import Loc, Problem

LEAST_KEPT = 0.05
"""Share of fair candidates below which a question's numbers are refused: 200 tries then fail about once in 30,000."""
_SHOWN = 3
_TOLERANCES = "write exact, within 2 %, or within 5 mm"


def check(content: CourseContent, book: Book = BOOK) -> list[Problem]:
    """Every problem of the exercises of a course whose files are good.

    Args:
        content: the course.
        book: where the quantities live.

    Returns:
        Tolerances that can't be read, and questions or scenario parts whose misconceptions can't be told from the right
        answer or from each other, with the file, line and column.
    """
    problems: list[Problem] = []
    for question in content.questions.values():
        if isinstance(question, WorkedQuestion) and not question.retired:
            problems += _question(content, question, book)
        if isinstance(question, SpotQuestion) and not question.retired:
            problems += _areas(content, question)
        if isinstance(question, SpokenChoiceQuestion | SpokenNumberQuestion) and not question.retired:
            problems += _script(content, question)
    for scenario in content.scenarios.values():
        if not scenario.retired:
            problems += _scenario(content, scenario, book)
    return sorted(problems)


def _question(content: CourseContent, question: WorkedQuestion, book: Book) -> Iterator[Problem]:
    try:
        recipe(question, book)
    except ValueError as error:
        yield content.problem("question", question.id, ("answer",), "tolerance", str(error), _TOLERANCES)
        return
    row = separability(question, book)
    if row.kept < LEAST_KEPT:
        fix = "narrow the tolerance, change the givens, drop a misconception, or ask for the step where it happens"
        yield content.problem("question", question.id, ("misconceptions",), "inseparable", why_none(row), fix)


def _areas(content: CourseContent, question: SpotQuestion) -> Iterator[Problem]:
    """Areas that the figure does not have, and a fault that is not the one it draws."""
    try:
        lettered(question, hot_areas().get(question.figure))
    except ValueError as error:
        fix = "name the areas as the figure does"
        yield content.problem("question", question.id, ("areas",), "unknown-area", str(error), fix)
        return
    kind = FIGURES.get(question.figure)
    right = [area.name for area in question.areas if area.right]
    if kind is not None and kind.spot is not None and right != [kind.spot.fault]:
        what = (
            f"the figure '{question.figure}' draws its fault at '{kind.spot.fault}', and not at {' and '.join(right)}"
        )
        fix = f"write 'right: true' below '{kind.spot.fault}' alone"
        yield content.problem("question", question.id, ("areas",), "other-fault", what, fix)


def _script(content: CourseContent, question: SpokenChoiceQuestion | SpokenNumberQuestion) -> Iterator[Problem]:
    """A script that can't be followed by ear: lines too long, or more numbers than one holds in mind."""
    for language, text in question.text.items():
        for fault in script_faults(text):
            fix = "one line a breath: break it in two"
            yield content.problem("question", question.id, ("text", language), "script-too-long", fault, fix)
    if isinstance(question, SpokenNumberQuestion) and len(question.given) > MOST_GIVENS:
        what = f"{len(question.given)} numbers are read aloud, and a listener holds {MOST_GIVENS}"
        fix = "put the others on a card that the learner sees, as a question of kind number"
        yield content.problem("question", question.id, ("given",), "too-many-spoken-numbers", what, fix)


def _scenario(content: CourseContent, scenario: Scenario, book: Book) -> Iterator[Problem]:
    givens = scenario_givens(scenario, content.values(scenario.place), book)
    for position, part in enumerate(scenario.parts):
        at: Loc = ("parts", position)
        try:
            drawn = of_givens(part_recipe(part, book), givens)
        except ValueError as error:
            yield content.problem("scenario", scenario.id, (*at, "answer"), "tolerance", str(error), _TOLERANCES)
            continue
        except OutOfRangeError as error:
            fix = "change the numbers of the place"
            yield content.problem("scenario", scenario.id, (*at, "asks"), "out-of-range", str(error), fix)
            continue
        answers = {"the right answer": drawn.key, **drawn.wrong}
        faults = [
            f"'{one}' and '{other}' give the same number"
            for one, other in itertools.combinations(answers, 2)
            if not drawn.tolerance.tells_apart(answers[one], answers[other])
        ]
        faults += [f"'{name}' has no value here" for name in part.misconceptions if name not in drawn.wrong]
        if faults:
            fix = "narrow the tolerance, drop a misconception, or ask for the step where it happens"
            loc = (*at, "misconceptions")
            yield content.problem("scenario", scenario.id, loc, "inseparable", "; ".join(faults[:_SHOWN]), fix)


def separability_table(content: CourseContent, book: Book = BOOK) -> list[str]:
    """For the author of a course: for each number question, how often its misconceptions hide, in aligned lines."""
    rows: list[Separability] = [
        separability(question, book)
        for question in content.questions.values()
        if isinstance(question, WorkedQuestion) and not question.retired
    ]
    width = max((len(row.question_id) for row in rows), default=0)
    lines = [
        "Shares of each question's numbers: kept as fair; outside a range; changed by rounding; harder or easier than "
        "most; and, for each misconception, giving the right answer. Steps and changes of unit are those of every "
        f"variant. A sheet draws up to {MOST_TRIES} times until one is fair."
    ]
    for row in rows:
        hiding = ", ".join(f"{name} {share:.0%}" for name, share in row.same_as_key.items())
        pairs = ", ".join(f"{a} = {b} {share:.0%}" for (a, b), share in row.same.items() if share > 0)
        shares = (
            f"kept {row.kept:4.0%}  outside {row.out_of_range:4.0%}  rounding {row.rounding:4.0%}  "
            f"uneven {row.uneven:4.0%}  steps {row.steps}  units {row.unit_changes}"
        )
        told = f"{hiding}{'; ' + pairs if pairs else ''}"
        lines.append(f"{row.question_id:<{width}}  {shares}  {told}".rstrip())
    return lines
