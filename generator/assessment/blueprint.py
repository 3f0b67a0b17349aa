"""The blueprint of a scheme: what every paper asks, whether the banks can fill it, and what else a scheme must say.

A scheme in force needs a bank that fills its blueprint three times over, so that a second and a third try don't meet
the same questions. A question that gets other numbers each time counts for three; a fixed one counts once.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from generator.assessment.recheck import Recheck
from generator.curriculum import CourseContent
from generator.curriculum.item_words import ITEM_LANGUAGES
from generator.curriculum.models import (
    BlueprintCell,
    ChoiceQuestion,
    NumberChoiceQuestion,
    NumberQuestion,
    Question,
    Scheme,
    SpokenChoiceQuestion,
    SpokenNumberQuestion,
    TalkRule,
    WorkedQuestion,
)
from generator.problems import Problem

ALOUD = (NumberQuestion, NumberChoiceQuestion, ChoiceQuestion, SpokenNumberQuestion, SpokenChoiceQuestion)
"""Kinds that can be asked and answered aloud."""

TIMES_OVER = 3
"""How often the bank of a scheme in force fills the blueprint."""
_NEEDED_IN_FORCE = (
    "job",
    "tasks",
    "prerequisites",
    "experience_route",
    "blueprint",
    "oral",
    "retest",
    "recertification",
)


def needs_options(question: Question) -> bool:
    """Whether a question says nothing, or not all, to somebody who doesn't know its options.

    Such a one asks to choose all, or points at them in some language: "which of these". Asked aloud, its options are
    read out; in a talk, which has none, others come before it.
    """
    if not isinstance(question, ChoiceQuestion):
        return False
    texts = ((ITEM_LANGUAGES.get(code), text) for code, text in question.text.items())
    pointing = any(own is not None and own.among is not None and own.among.search(text) for own, text in texts)
    return question.several or pointing


def scheme_questions(content: CourseContent, scheme: Scheme) -> tuple[Question, ...]:
    """The questions that a scheme's papers are drawn from: those of its modules that are not retired."""
    return tuple(question for module in scheme.modules for question in content.questions_of(module))


def fits(cell: BlueprintCell, question: Question) -> bool:
    """Whether a question can stand in a cell."""
    return (
        question.competency == cell.competency
        and cell.kind in (None, question.kind)
        and cell.difficulty in (None, question.difficulty)
    )


def slots(scheme: Scheme) -> tuple[BlueprintCell, ...]:
    """The cell of each question of a paper, in order."""
    return tuple(cell for cell in scheme.blueprint for _ in range(cell.count))


def times(question: Question) -> int:
    """How often a question can be asked and still be another one: it counts three times where its numbers are drawn."""
    drawn = isinstance(question, WorkedQuestion) and any(not isinstance(g, float) for g in question.given.values())
    return TIMES_OVER if drawn else 1


def fill_slots(
    wanted: Sequence[BlueprintCell],
    questions: Sequence[Question],
    prefer: Callable[[int, Sequence[int]], Sequence[int]] = lambda _slot, places: places,
    room: Callable[[Question], int] = lambda _question: 1,
) -> list[int | None]:
    """Give each slot a question, so that as many as possible are filled (augmenting paths).

    Args:
        wanted: the slots.
        questions: to choose from.
        prefer: the order in which a slot tries the questions that fit.
        room: in how many slots a question may stand.

    Returns:
        For each slot the position of its question; None where none is left.
    """
    holders: dict[int, list[int]] = {place: [] for place in range(len(questions))}
    choice = [
        tuple(prefer(slot, [place for place, question in enumerate(questions) if fits(cell, question)]))
        for slot, cell in enumerate(wanted)
    ]

    def seat(slot: int, seen: set[int]) -> bool:
        for place in choice[slot]:
            if place in seen:
                continue
            seen.add(place)
            if len(holders[place]) < room(questions[place]):
                holders[place].append(slot)
                return True
            for position, other in enumerate(holders[place]):
                if seat(other, seen):
                    holders[place][position] = slot
                    return True
        return False

    for slot in range(len(wanted)):
        seat(slot, set())
    found: list[int | None] = [None] * len(wanted)
    for place, held in holders.items():
        for slot in held:
            found[slot] = place
    return found


def _short(scheme: Scheme, questions: Sequence[Question], over: int) -> Iterator[tuple[int, int]]:
    """The cells of a blueprint that a bank can't fill so many times over, each with how many questions are missing."""
    places = [place for place, cell in enumerate(scheme.blueprint) for _ in range(cell.count * over)]
    wanted = [scheme.blueprint[place] for place in places]
    filled = fill_slots(wanted, questions, room=times if over > 1 else lambda _question: 1)
    for place in range(len(scheme.blueprint)):
        missing = sum(found is None for at, found in zip(places, filled, strict=True) if at == place)
        if missing:
            yield place, missing


def recheck_of(rule: TalkRule) -> Recheck:
    """The sequential test that a scheme's oral rule, or its rule for talks, means.

    Raises:
        ValueError: a novice's share that is not below a master's.
    """
    return Recheck(rule.master, rule.novice, rule.wrong_pass, rule.wrong_fail, rule.most)


def _cell_said(cell: BlueprintCell) -> str:
    kind = f" {cell.kind}" if cell.kind else ""
    hard = f" of difficulty {cell.difficulty}" if cell.difficulty else ""
    return f"{cell.count}{kind} question(s) on '{cell.competency}'{hard}"


def _unfilled(content: CourseContent, scheme: Scheme, over: int, code: str) -> Iterator[Problem]:
    questions = scheme_questions(content, scheme)
    often = "" if over == 1 else " three times over"
    for place, missing in _short(scheme, questions, over):
        what = f"the bank can't fill {_cell_said(scheme.blueprint[place])}{often}: {missing} missing"
        fix = "write more questions of this kind, or ask for fewer"
        yield content.problem("scheme", scheme.id, ("blueprint", place), code, what, fix)


def _silent(content: CourseContent, scheme: Scheme) -> Iterator[Problem]:
    """The critical competencies of which a talk would run out of questions before it has to end."""
    if scheme.talk is None:
        return
    every = scheme_questions(content, scheme)
    questions = [one for one in every if isinstance(one, ALOUD) and not needs_options(one)]
    for name in sorted({cell.competency for cell in scheme.blueprint}):
        own = [one for one in questions if one.competency == name]
        critical = name in scheme.critical_competencies or content.competencies[name].critical
        if critical and len(own) < scheme.talk.most and not any(times(one) > 1 for one in own):
            what = (
                f"a talk on '{name}' may need {scheme.talk.most} questions, and {len(own)} make sense without options"
            )
            fix = "write more choice or number questions on it"
            yield content.problem("scheme", scheme.id, ("talk",), "talk-thin", what, fix)


def _rules(content: CourseContent, scheme: Scheme) -> Iterator[Problem]:
    for name, rule in (("oral", scheme.oral), ("talk", scheme.talk)):
        try:
            if rule is not None:
                recheck_of(rule)
        except ValueError as error:
            yield content.problem("scheme", scheme.id, (name,), f"{name}-rule", str(error), f"mend the {name} rule")
    if scheme.panel is not None and scheme.panel.kind == "spacing" and not scheme.panel.planned:
        what = "readings of spacing need the gap of the plan"
        yield content.problem("scheme", scheme.id, ("panel",), "panel-without-plan", what, "add 'planned: ...' in mm")
    asked = {cell.competency for cell in scheme.blueprint}
    watched = {content.practicals[name].competency for name in scheme.practicals}
    for place, name in enumerate(scheme.critical_competencies if scheme.blueprint else ()):
        if name not in asked | watched:
            what = f"the critical competency '{name}' is neither asked by the blueprint nor watched"
            fix = "add a cell to the blueprint, or a practical"
            yield content.problem(
                "scheme", scheme.id, ("critical_competencies", place), "critical-not-asked", what, fix
            )
    seen: dict[tuple[object, ...], int] = {}
    for place, cell in enumerate(scheme.blueprint):
        first = seen.setdefault((cell.competency, cell.kind, cell.difficulty), place)
        if first != place:
            what = f"cell {place + 1} asks for the same as cell {first + 1}"
            yield content.problem("scheme", scheme.id, ("blueprint", place), "cell-twice", what, "join the two counts")


def check(content: CourseContent) -> list[Problem]:
    """What keeps the schemes of a course from being used as their status says."""
    problems: list[Problem] = []
    for scheme in content.schemes.values():
        problems += _rules(content, scheme)
        if scheme.status != "draft":
            problems += _unfilled(content, scheme, 1, "blueprint-not-filled")
        if scheme.status == "in-force":
            problems += _unfilled(content, scheme, TIMES_OVER, "blueprint-not-filled")
            problems += _silent(content, scheme)
            for name in _NEEDED_IN_FORCE:
                if not getattr(scheme, name):
                    what = f"a scheme in force has to say its {name.replace('_', ' ')}"
                    fix = f"add '{name}: ...', or write 'status: provisional'"
                    problems.append(content.problem("scheme", scheme.id, ("status",), "in-force-incomplete", what, fix))
    return sorted(set(problems))


def warnings(content: CourseContent) -> list[Problem]:
    """What a scheme that is not in force will need: a bank that fills its blueprint three times over, and its talks."""
    found: list[Problem] = []
    for scheme in content.schemes.values():
        if scheme.status != "in-force":
            found += _unfilled(content, scheme, TIMES_OVER, "blueprint-thin")
            found += _silent(content, scheme)
    return sorted(set(found))
