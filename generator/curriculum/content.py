"""The whole content of a course, checked across its files, with every number in place."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import partial
from pathlib import Path
from typing import TypeVar

from generator.calculations import BOOK
from generator.curriculum.bank_rules import bank_warnings
from generator.curriculum.calls import Fault
from generator.curriculum.check_names import name_problems, questions_by_module
from generator.curriculum.check_pictures import picture_problems
from generator.curriculum.check_questions import place_values, question_problems, scenario_problems
from generator.curriculum.check_texts import place_for, places_of_modules, text_problems
from generator.curriculum.files import Found, Reading, read
from generator.curriculum.item_rules import item_problems, item_warnings
from generator.curriculum.lessons import (
    SheetNames,
    SheetText,
    Surroundings,
    Text,
    differences,
    split,
    split_sheet,
)
from generator.curriculum.models import (
    Bank,
    Competency,
    Course,
    Handout,
    Module,
    Place,
    Practical,
    Question,
    Scenario,
    Scheme,
)
from generator.curriculum.place_plans import PlanValues, plan_of, section_keys
from generator.curriculum.recordings import Recording, recordings
from generator.curriculum.reference import FaultAlbum, Glossary
from generator.curriculum.texts import AnyModel, Filler, with_texts
from generator.curriculum.word_files import coverage, read_words, wanted_words
from generator.curriculum.word_use import use_problems, used_words
from generator.figures import FIGURES
from generator.figures.rulers import RULERS
from generator.formula import Book
from generator.plans import Plan, drawing_values
from generator.plans.refused import NoPlanError
from generator.plans.sections import CAUTIONS
from generator.problems import Loc, Problem, few, place_of
from generator.words import Words

AnyText = TypeVar("AnyText", Text, SheetText)
PLAN_CAUTIONS = tuple(name.replace("_", "-") for name in CAUTIONS)
"""Cautions that every handout may show: those of the plan, as content spells them."""

_NO_SHEETS = frozenset({"course/glossary.yaml", "course/faults.yaml"})
"""Files that only pages show."""


@dataclass(frozen=True)
class Machine:
    """What content may name beside itself.

    Args:
        book: the calculation module.
        figures: by key of a drawing, the quantities that it needs.
        rulers: by key of a stick in true size, the quantities that it needs.
        cautions: that every handout may show beside those of its module.
        of_hoops: by key of a drawing, the needs that it does without where a tank has no hoops.
    """

    book: Book
    figures: Mapping[str, Sequence[str]]
    rulers: Mapping[str, Sequence[str]] = field(default_factory=dict)
    cautions: Sequence[str] = ()
    of_hoops: Mapping[str, Sequence[str]] = field(default_factory=dict)


def shipped() -> Machine:
    """The calculation module, the drawings and the sticks of this tool."""
    return Machine(
        BOOK,
        {key: tuple(kind.needs) for key, kind in FIGURES.items()},
        {key: kind.needs for key, kind in RULERS.items()},
        PLAN_CAUTIONS,
        {key: kind.of_hoops for key, kind in FIGURES.items()},
    )


@dataclass(frozen=True)
class CourseContent:
    """Everything an author wrote, good, and with all its numbers filled in.

    Args:
        course: name, languages, order of modules.
        competencies: by id.
        modules: by id, in the course's order.
        places: by id.
        banks: by id.
        questions: by id, retired ones too.
        scenarios: by id.
        practicals: by id.
        schemes: by id.
        handouts: by id.
        words: by language.
        lessons: by module id and language.
        handout_texts: by handout id and language.
        sources: bytes of every file read, by its path below the content folder.
        place_values: by place id, everything that can be worked out there.
        asked: by module id, its questions that are not retired.
        reading: the files, for problems found by other rooms.
        glossary: the course's words, where it has them.
        fault_album: the drawings of faults with what to know about each, where the course has it.
        recordings: what trainers recorded, by module id, card id and language.
        own_plans: by place id, tanks that stand in no file of the course.
        own_values: by place id, what handouts know of them.
        own_notes: by handout id and language, what a handout shows of such a tank and was taken from elsewhere.
    """

    course: Course
    competencies: Mapping[str, Competency]
    modules: Mapping[str, Module]
    places: Mapping[str, Place]
    banks: Mapping[str, Bank]
    questions: Mapping[str, Question]
    scenarios: Mapping[str, Scenario]
    practicals: Mapping[str, Practical]
    schemes: Mapping[str, Scheme]
    handouts: Mapping[str, Handout]
    words: Mapping[str, Words]
    lessons: Mapping[tuple[str, str], Text]
    handout_texts: Mapping[tuple[str, str], SheetText]
    sources: Mapping[str, bytes] = field(repr=False)
    place_values: Mapping[str, Mapping[str, float]] = field(repr=False)
    asked: Mapping[str, tuple[Question, ...]] = field(repr=False)
    reading: Reading = field(repr=False)
    glossary: Glossary | None = None
    fault_album: FaultAlbum | None = None
    recordings: Mapping[tuple[str, str, str], Recording] = field(default_factory=dict, repr=False)
    own_plans: Mapping[str, Plan] = field(default_factory=dict, repr=False)
    own_values: Mapping[str, Mapping[str, float]] = field(default_factory=dict, repr=False)
    own_notes: Mapping[tuple[str, str], str] = field(default_factory=dict, repr=False)

    def questions_of(self, module_id: str) -> tuple[Question, ...]:
        """The questions of a module that are not retired, in the bank's order."""
        return self.asked.get(module_id, ())

    def values(self, place_id: str) -> dict[str, float]:
        """Everything that can be worked out at a place, givens included."""
        return dict(self.place_values[place_id])

    def plan(self, place_id: str) -> Plan:
        """The whole plan of a place's tank.

        Raises:
            NoPlanError: this course plans no such tank.
        """
        if place_id in self.own_plans:
            return self.own_plans[place_id]
        found = plan_of(self.places[place_id].given)
        if not isinstance(found, Plan):
            raise found
        return found

    def numbers(self, handout_id: str, place_id: str) -> Mapping[str, float]:
        """What a handout knows of a place: the place's own numbers, or those of its plan."""
        if self.handouts[handout_id].numbers == "place":
            return self.values(place_id)
        return self.own_values.get(place_id) or drawing_values(self.plan(place_id))

    def sources_of_handout(self, handout_id: str) -> dict[str, bytes]:
        """The files that a handout rests on, by path."""
        handout = self.handouts[handout_id]
        own = {self.reading.things["handout"][handout_id].file.name, "course/course.yaml"}
        if handout.module is not None:
            own.add(self.reading.things["module"][handout.module].file.name)
        own.add("course/faults.yaml")
        starts = (f"handouts/{handout.template}.", "course/words/", "course/places/")
        return {path: data for path, data in self.sources.items() if path in own or path.startswith(starts)}

    def sources_of(self, module_id: str) -> dict[str, bytes]:
        """The files that a module's sheets rest on: all but handouts and what belongs to other modules, by path."""
        others = [name for name in self.modules if name != module_id]
        folders = tuple(f"course/modules/{self.reading.folders[name]}/" for name in others)
        owned: Mapping[str, Mapping[str, Bank | Scenario | Practical]] = {
            "bank": self.banks,
            "scenario": self.scenarios,
            "practical": self.practicals,
        }
        files = {
            self.reading.things[kind][name].file.name
            for kind, things in owned.items()
            for name, thing in things.items()
            if thing.module in others
        }
        return {
            path: data
            for path, data in self.sources.items()
            if path not in files | _NO_SHEETS and not path.startswith((*folders, "handouts/"))
        }

    def problem(self, kind: str, name: str, loc: Loc, code: str, what: str, fix: str) -> Problem:
        """A problem that another room found, at its place in the author's file.

        Args:
            kind: `question`, `scenario`, `practical`, `scheme`, `place`, `module` or `handout`.
            name: the thing's id.
            loc: path below the thing: ``("misconceptions", 1)``.
            code: kind of problem.
            what: what is wrong.
            fix: what to do.
        """
        found = self.reading.things[kind][name]
        return found.file.value_problem((*found.loc, *loc), code, what, fix)


@dataclass(frozen=True)
class Loaded:
    """What came of reading a course: its content, or everything that is wrong with it."""

    content: CourseContent | None
    problems: tuple[Problem, ...]


def load(root: Path, machine: Machine | None = None) -> Loaded:
    """Read a course and check it across all its files.

    Args:
        root: folder that holds `course/`, `quizzes/` and `handouts/`.
        machine: what content may name; None takes what this tool ships.

    Returns:
        The content and no problems; or no content and all problems, sorted.
    """
    machine = shipped() if machine is None else machine
    reading = read(root)
    problems = list(reading.problems)
    words, faults = read_words(reading)
    problems += faults
    problems += coverage(reading, words, wanted_words(machine.book, list(machine.figures)))
    values, faults = place_values(reading, machine.book)
    problems += faults
    filler = Filler(machine.book, values, words, all_places="place" not in reading.unreadable)
    problems += name_problems(reading, machine.figures)
    problems += question_problems(reading, machine.book)
    problems += item_problems(reading)
    problems += scenario_problems(reading, machine.book, values)
    problems += picture_problems(reading, machine.figures, filler)
    problems += text_problems(reading, filler)
    lessons, faults = _lessons(reading, machine, filler)
    problems += faults
    handouts, faults = _handouts(reading, machine, filler)
    problems += faults
    course = reading.course.model if reading.course is not None else None
    if problems or not isinstance(course, Course):
        return Loaded(None, tuple(sorted(set(problems))))
    return Loaded(_content(reading, course, filler, words, lessons, handouts), ())


def check(content: CourseContent, code: Path | None = None, machine: Machine | None = None) -> list[Problem]:
    """What `load` leaves out because it reads the tool's own source: words that are missing there or left over.

    Args:
        content: a good course.
        code: folder of the tool's source; None takes this one.
        machine: as for `load`.
    """
    machine = shipped() if machine is None else machine
    use = used_words(Path(__file__).parents[1] if code is None else code)
    wanted = wanted_words(machine.book, list(machine.figures))
    return sorted(set(use_problems(content.reading, content.words, use, wanted)))


def warnings(content: CourseContent) -> list[Problem]:
    """What an author of items had better change: nothing keeps the course from being built."""
    return sorted({*item_warnings(content.reading), *bank_warnings(content.reading)})


def _lessons(reading: Reading, machine: Machine, filler: Filler) -> tuple[dict[tuple[str, str], Text], list[Problem]]:
    texts: dict[tuple[str, str], Text] = {}
    problems: list[Problem] = []
    for name, module, _ in reading.all("module", Module):
        paths = {lang: f"course/modules/{reading.folders[name]}/lesson.{lang}.md" for lang in reading.languages}
        around = _around(reading, machine, module.place, module)
        blocks, faults = _in_every_language(reading, paths, around, filler, split)
        texts |= {(name, language): text for language, text in blocks.items()}
        problems += faults
    expected = {
        f"course/modules/{folder}/lesson.{lang}.md" for folder in _folders(reading) for lang in reading.languages
    }
    problems += _strays(reading, "course/modules/", expected)
    return texts, problems


def _handouts(
    reading: Reading, machine: Machine, filler: Filler
) -> tuple[dict[tuple[str, str], SheetText], list[Problem]]:
    texts: dict[tuple[str, str], SheetText] = {}
    problems: list[Problem] = []
    expected: set[str] = set()
    values = _plan_values(reading, filler)
    planned = Filler(filler.book, values, filler.words, all_places=filler.all_places)
    sections = partial(_sections, values, next(iter(filler.words.values()), None))
    for name, handout, found in reading.all("handout", Handout):
        paths = {language: f"handouts/{handout.template}.{language}.md" for language in reading.languages}
        expected |= set(paths.values())
        module = None if handout.module is None else reading.get("module", handout.module, Module)
        around = _around(reading, machine, handout.place, module)
        around = replace(
            around,
            cautions=(*around.cautions, *(caution for caution in machine.cautions if caution not in around.cautions)),
            sheet=SheetNames(
                tuple(handout.logs),
                machine.rulers,
                tuple(reading.ids.get("fault", {})),
                sections if handout.numbers == "plan" else None,
                machine.of_hoops,
            ),
        )
        problems += _unplanned(reading, handout, found) if handout.numbers == "plan" else ()
        mine = planned if handout.numbers == "plan" else filler
        blocks, faults = _in_every_language(reading, paths, around, mine, split_sheet)
        texts |= {(name, language): text for language, text in blocks.items()}
        problems += faults
    if (
        len(reading.things.get("handout", {})) == len(reading.ids.get("handout", {}))
        and "handout" not in reading.unreadable
    ):
        problems += _strays(reading, "handouts/", expected)
    return texts, problems


def _plan_values(reading: Reading, filler: Filler) -> PlanValues:
    """The numbers of plans, to stand in the place of those of places."""

    def given_of(name: str) -> Mapping[str, float] | None:
        place = reading.get("place", name, Place)
        return place.given if place is not None and filler.values.get(name) else None

    return PlanValues(tuple(filler.values), given_of)


def _sections(values: PlanValues, words: Words | None, place: str) -> tuple[str, ...]:
    plan = values.plan(place)
    return () if plan is None or words is None else section_keys(plan, words)


def _unplanned(reading: Reading, handout: Handout, found: Found) -> Iterator[Problem]:
    """A handout that shows the plan of a place whose tank this course does not plan."""
    place = reading.get("place", handout.place, Place)
    if place is None:
        return
    plan = plan_of(place.given)
    if isinstance(plan, NoPlanError):
        what = f"the tank of '{handout.place}' can't be planned: {plan}"
        yield found.file.value_problem(("place",), "no-plan", what, "name another place, or write 'numbers: place'")


def _folders(reading: Reading) -> set[str]:
    """Every module folder with a module file, good or not."""
    return {
        path.split("/")[2]
        for path in reading.sources
        if path.startswith("course/modules/") and path.endswith("/module.yaml")
    }


def _strays(reading: Reading, folder: str, expected: Iterable[str]) -> Iterator[Problem]:
    if reading.languages:
        for path in sorted(set(reading.texts) - set(expected)):
            if path.startswith(folder):
                fix = f"check its name; the languages are {', '.join(reading.languages)}"
                yield Problem(path, 0, 0, "stray-file", "this file has no place in the course", fix)


def _around(reading: Reading, machine: Machine, place: str, module: Module | None) -> Surroundings:
    cautions = [caution.id for caution in module.cautions] if module is not None else []
    return Surroundings(place, cautions, list(reading.ids.get("question", {})), machine.figures)


def _in_every_language(
    reading: Reading,
    paths: Mapping[str, str],
    around: Surroundings,
    filler: Filler,
    cut: Callable[[str, str, Surroundings, Filler], tuple[AnyText, tuple[Fault, ...]]],
) -> tuple[dict[str, AnyText], list[Problem]]:
    """The same lesson or handout in each language, and what is wrong with it or differs."""
    blocks: dict[str, AnyText] = {}
    problems: list[Problem] = []
    faulty = False
    unknown = {"unknown-question"} if "question" in reading.unreadable else set()
    for language, path in paths.items():
        text = reading.texts.get(path)
        if text is None:
            problems.append(
                Problem(path, 0, 0, "missing-translation", f"the text in language '{language}' is missing", "write it")
            )
            continue
        blocks[language], faults = cut(text, language, around, filler)
        problems += few(path, (_at(path, text, fault) for fault in faults if fault.code not in unknown))
        faulty |= any(fault.code != "typed-number" for fault in faults)
        first = next(other for other in paths.values() if other in reading.texts)
        if path != first and not faulty:
            problems += few(path, _differences(path, text, first, reading.texts[first]))
    return blocks, problems


def _differences(path: str, text: str, first: str, other: str) -> Iterator[Problem]:
    missing, extra = differences(other, text)
    for typed in missing:
        what = f"{typed} stands in {first} and not here"
        yield Problem(path, 0, 0, "lesson-differs", what, "add it here, or remove it there")
    for fault in extra:
        yield _at(path, text, fault)


def _at(path: str, text: str, fault: Fault) -> Problem:
    return Problem(path, *place_of(text[: fault.start]), fault.code, fault.what, fault.fix)


def _content(
    reading: Reading,
    course: Course,
    filler: Filler,
    words: Mapping[str, Words],
    lessons: Mapping[tuple[str, str], Text],
    handouts: Mapping[tuple[str, str], SheetText],
) -> CourseContent:
    """The good content with every call in its texts filled."""
    places = places_of_modules(reading)
    filled = {
        kind: {
            name: replace(found, model=_filled(found.model, place_for(found, places), filler))
            for name, found in things.items()
        }
        for kind, things in reading.things.items()
    }
    good = replace(reading, things=filled)
    order = {folder: position for position, folder in enumerate(course.modules)}
    modules = sorted(good.all("module", Module), key=lambda each: order[good.folders[each[0]]])
    banks = {name: thing for name, thing, _ in good.all("bank", Bank)}
    module_of = {folder: name for name, folder in good.folders.items()}
    return CourseContent(
        course=_filled(course, "", filler),
        competencies={name: thing for name, thing, _ in good.all("competency", Competency)},
        modules={name: thing for name, thing, _ in modules},
        places={name: thing for name, thing, _ in good.all("place", Place)},
        banks=banks,
        questions={question.id: question for bank in banks.values() for question in bank.questions},
        scenarios={name: thing for name, thing, _ in good.all("scenario", Scenario)},
        practicals={name: thing for name, thing, _ in good.all("practical", Practical)},
        schemes={name: thing for name, thing, _ in good.all("scheme", Scheme)},
        handouts={name: thing for name, thing, _ in good.all("handout", Handout)},
        words=words,
        lessons=lessons,
        handout_texts=handouts,
        sources=reading.sources,
        place_values=filler.values,
        asked=questions_by_module(good),
        reading=good,
        glossary=good.get("glossary", "glossary", Glossary),
        fault_album=good.get("faults", "faults", FaultAlbum),
        recordings=recordings(good.sounds, module_of),
    )


def _filled(model: AnyModel, place: str, filler: Filler) -> AnyModel:
    return with_texts(model, lambda loc, language, text: filler.text(text, place, language) if "{{" in text else text)
