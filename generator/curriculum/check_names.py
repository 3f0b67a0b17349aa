"""What one file says about another: every name that is used has to be there, and things have to fit together."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from generator.curriculum.files import Found, Reading
from generator.curriculum.models import (
    Bank,
    ChoiceQuestion,
    Competency,
    Course,
    Handout,
    MatchQuestion,
    Module,
    OrderQuestion,
    Practical,
    Question,
    QuestionBase,
    Scenario,
    Scheme,
)
from generator.problems import Loc, Problem
from generator.problems.plain_errors import did_you_mean


def name_problems(reading: Reading, figures: Mapping[str, Sequence[str]]) -> Iterator[Problem]:
    """Every name of a competency, module, place, practical, scenario or drawing that is used and not there.

    Args:
        reading: the files.
        figures: the drawings by key.
    """
    names = _Names(reading, figures)
    if reading.course is not None and isinstance(reading.course.model, Course):
        yield from _course(reading, reading.course, reading.course.model)
    for _, module, found in reading.all("module", Module):
        yield from names.known(found, "place", [(("place",), module.place)])
        yield from names.known(
            found, "competency", _each("outcomes", [o.competency for o in module.outcomes], "competency")
        )
        for kind in ("practical", "scenario", "figure"):
            yield from names.known(found, kind, _each(f"{kind}s", getattr(module, f"{kind}s")))
        yield from names.known(found, "module", _each("needs", module.needs))
    for _, bank, found in reading.all("bank", Bank):
        yield from names.known(found, "module", [(("module",), bank.module)])
    for _, question, found in reading.all("question", QuestionBase):
        yield from names.known(found, "competency", [(("competency",), question.competency)])
        yield from names.known(found, "figure", [(("figure",), question.figure)] if question.figure else [])
    for _, scenario, found in reading.all("scenario", Scenario):
        yield from names.known(found, "module", [(("module",), scenario.module)])
        yield from names.known(found, "place", [(("place",), scenario.place)])
        yield from names.known(found, "figure", [(("figure",), scenario.figure)] if scenario.figure else [])
        yield from names.known(
            found, "competency", _each("parts", [p.competency for p in scenario.parts], "competency")
        )
        yield from names.known(found, "question", _each("decisions", scenario.decisions))
        yield from _decisions(reading, scenario, found)
    for _, practical, found in reading.all("practical", Practical):
        yield from names.known(found, "module", [(("module",), practical.module)])
        yield from names.known(found, "competency", [(("competency",), practical.competency)])
        shown = [
            (("steps", at, "competency"), one.competency) for at, one in enumerate(practical.steps) if one.competency
        ]
        yield from names.known(found, "competency", shown)
    for _, scheme, found in reading.all("scheme", Scheme):
        for kind in ("module", "practical"):
            yield from names.known(found, kind, _each(f"{kind}s", getattr(scheme, f"{kind}s")))
        yield from names.known(found, "competency", _each("critical_competencies", scheme.critical_competencies))
        yield from _critical(reading, scheme, found)
        cells = [cell.competency for cell in scheme.blueprint]
        yield from names.known(found, "competency", _each("blueprint", cells, "competency"))
        yield from _critical_steps(reading, scheme, found)
    for _, handout, found in reading.all("handout", Handout):
        yield from names.known(found, "module", [(("module",), handout.module)] if handout.module else [])
        yield from names.known(found, "place", [(("place",), handout.place)])
    yield from _listed(reading)
    yield from _same_id_twice(reading)


def _each(key: str, names: Iterable[str], below: str = "") -> list[tuple[Loc, str]]:
    return [((key, position, below) if below else (key, position), name) for position, name in enumerate(names)]


class _Names:
    """Knows which names there are, and keeps silent where a file that would tell could not be read."""

    def __init__(self, reading: Reading, figures: Mapping[str, Sequence[str]]) -> None:
        self.reading = reading
        self.figures = figures

    def known(self, found: Found, kind: str, used: Iterable[tuple[Loc, str]]) -> Iterator[Problem]:
        if kind in self.reading.unreadable:
            return
        there = list(self.figures) if kind == "figure" else list(self.reading.ids.get(kind, {}))
        for loc, name in used:
            if name not in there:
                place = (*found.loc, *loc)
                yield found.file.value_problem(
                    place, f"unknown-{kind}", f"unknown {kind} '{name}'", did_you_mean(name, there)
                )


def _course(reading: Reading, found: Found, course: Course) -> Iterator[Problem]:
    """The course's list of modules against the folders, and each module after those that it needs."""
    folders = [
        path.split("/")[2]
        for path in reading.sources
        if path.startswith("course/modules/") and path.endswith("/module.yaml")
    ]
    for position, folder in enumerate(course.modules):
        if folder not in folders:
            what = f"there is no course/modules/{folder}/module.yaml"
            yield found.file.value_problem(
                ("modules", position), "unknown-module-folder", what, did_you_mean(folder, folders)
            )
    for folder in folders:
        if folder not in course.modules:
            path = f"course/modules/{folder}/module.yaml"
            yield Problem(
                path,
                0,
                0,
                "module-not-listed",
                f"the course does not list '{folder}'",
                f"add it to modules in {found.file.name}",
            )
    order = {name: course.modules.index(folder) for name, folder in reading.folders.items() if folder in course.modules}
    for name, module, place in reading.all("module", Module):
        for position, need in enumerate(module.needs):
            if name in order and need in order and order[need] >= order[name]:
                what = f"'{name}' needs '{need}', which the course does not teach before it"
                yield place.file.value_problem(
                    ("needs", position), "module-order", what, f"change the order in {found.file.name}"
                )
    seen: set[str] = set()
    for key, values in (("modules", course.modules), ("languages", course.languages)):
        for position, value in enumerate(values):
            if value in seen:
                yield found.file.value_problem(
                    (key, position), "listed-twice", f"'{value}' is listed twice", "remove one of them"
                )
            seen.add(value)


def _listed(reading: Reading) -> Iterator[Problem]:
    """A practical or scenario and its module name each other."""
    for kind, model in (("practical", Practical), ("scenario", Scenario)):
        for name, thing, found in reading.all(kind, model):
            module = reading.get("module", getattr(thing, "module", ""), Module)
            if module is not None and name not in getattr(module, f"{kind}s"):
                what = f"the module '{module.id}' does not list the {kind} '{name}'"
                path = reading.things["module"][module.id].file.name
                yield found.file.value_problem(("module",), "not-listed", what, f"add it to {kind}s in {path}")
        for _, module, found in reading.all("module", Module):
            for position, name in enumerate(getattr(module, f"{kind}s")):
                thing_there = reading.get(kind, name, model)
                other = getattr(thing_there, "module", module.id)
                if other != module.id:
                    what = f"the {kind} '{name}' belongs to the module '{other}'"
                    yield found.file.value_problem(
                        (f"{kind}s", position), "wrong-module", what, "remove it here, or change its module"
                    )


def _decisions(reading: Reading, scenario: Scenario, found: Found) -> Iterator[Problem]:
    """What a scenario asks to decide stands in its own module's bank and needs no numbers."""
    banks = {question.id: bank.module for _, bank, _ in reading.all("bank", Bank) for question in bank.questions}
    for position, name in enumerate(scenario.decisions):
        question = reading.get("question", name, QuestionBase)
        if question is None:
            continue
        loc = ("decisions", position)
        if not isinstance(question, ChoiceQuestion | OrderQuestion | MatchQuestion):
            what = f"'{name}' can't be a decision: it is not a choice between words, an order or pairs"
            yield found.file.value_problem(loc, "no-decision", what, "name a question of such a kind")
        elif banks.get(name, scenario.module) != scenario.module:
            what = f"'{name}' stands in the bank of the module '{banks[name]}'"
            yield found.file.value_problem(loc, "wrong-module", what, f"name a question of '{scenario.module}'")


def _critical(reading: Reading, scheme: Scheme, found: Found) -> Iterator[Problem]:
    """A scheme's critical competencies are marked critical where they are declared, or the pages would not say so."""
    for position, name in enumerate(scheme.critical_competencies):
        competency = reading.get("competency", name, Competency)
        if competency is not None and not competency.critical:
            what = f"'{name}' is critical here and not in course/competencies.yaml"
            yield found.file.value_problem(
                ("critical_competencies", position),
                "not-critical",
                what,
                "write 'critical: true' there, or remove it here",
            )


def _critical_steps(reading: Reading, scheme: Scheme, found: Found) -> Iterator[Problem]:
    """The steps that a scheme calls critical are there, in its own practicals, and the checklist marks them so."""
    steps = {
        f"{name}/{step.id}": step.critical
        for name in scheme.practicals
        if (practical := reading.get("practical", name, Practical)) is not None
        for step in practical.steps
    }
    for position, name in enumerate(scheme.critical_steps):
        loc = ("critical_steps", position)
        if name not in steps and "practical" not in reading.unreadable:
            fix = did_you_mean(name, sorted(steps))
            yield found.file.value_problem(loc, "unknown-step", f"unknown step '{name}'", fix)
        elif not steps.get(name, True):
            what, fix = f"'{name}' is critical here and not in its practical", "write 'critical: true' at the step"
            yield found.file.value_problem(loc, "not-critical", what, fix)


def _same_id_twice(reading: Reading) -> Iterator[Problem]:
    """Parts of a scenario and steps of a practical have ids of their own inside it."""
    for kind, key in (("scenario", "parts"), ("practical", "steps")):
        for found in reading.things.get(kind, {}).values():
            first: dict[str, int] = {}
            for position, inner in enumerate(getattr(found.model, key)):
                if inner.id in first:
                    line, _ = found.file.value_line_and_column((key, first[inner.id], "id"))
                    what = f"the id '{inner.id}' is already taken in line {line}"
                    yield found.file.value_problem(
                        (key, position, "id"), "duplicate-id", what, "choose another; an id is never used twice"
                    )
                first.setdefault(inner.id, position)


def questions_by_module(reading: Reading) -> dict[str, tuple[Question, ...]]:
    """The questions of each module that are not retired, in the banks' order."""
    found: dict[str, tuple[Question, ...]] = {}
    for _, bank, _ in reading.all("bank", Bank):
        found[bank.module] = found.get(bank.module, ()) + tuple(q for q in bank.questions if not q.retired)
    return found
