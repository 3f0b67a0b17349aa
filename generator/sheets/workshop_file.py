"""A workshop's file: when, where, for whom, with which modules, and what will be built; every fault told at once."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Annotated, Any, Literal

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from generator.curriculum import CourseContent
from generator.figures.fonts import BOLD
from generator.formula import OutOfRangeError
from generator.plans import Crew, Plan, Refusal, Wish, hoops_of_place, litres_of_place, make_plan
from generator.plans.refused import NoPlanError
from generator.problems import MachineError, Problem, ProblemsError, YamlFile, few, read_yaml
from generator.problems.plain_errors import did_you_mean, problems_of
from generator.sheets.text import shaped
from generator.sheets.workshop_days import Block, Session, capacity, programme

LONGEST_NAME = 90
_CLOCK = r"^([01][0-9]|2[0-3]):[0-5][0-9]$"
_Key = Annotated[str, Field(min_length=1, max_length=40)]


class _Part(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)


class CrewLine(_Part):
    """Who builds; the same numbers as of a plan."""

    masons: Annotated[int, Field(ge=1, le=20)] = 2
    labourers: Annotated[int, Field(ge=1, le=60)] = 4
    load: Annotated[float, Field(ge=10, le=200)] = 30.0
    working_days: Annotated[int, Field(ge=1, le=7)] = 6
    lost_to_rain: Annotated[float, Field(ge=0, le=0.8)] = 0.1


class Hours(_Part):
    """When a day begins and ends."""

    start: Annotated[str, Field(pattern=_CLOCK)] = "10:00"
    end: Annotated[str, Field(pattern=_CLOCK)] = "16:00"


class WorkshopFile(_Part):
    """The file as it is written."""

    format: Literal[1]
    name: Annotated[str, Field(min_length=1, max_length=LONGEST_NAME)]
    place: _Key
    dates: Annotated[tuple[str, ...], Field(strict=False, min_length=1, max_length=30)]
    """Days of the workshop, in order: 2031-11-17."""
    hours: Hours = Hours()
    group: Annotated[int, Field(ge=1, le=40)]
    """How many learners."""
    language: _Key
    crew: CrewLine = CrewLine()
    modules: Annotated[tuple[_Key, ...], Field(strict=False, min_length=1, max_length=30)]
    litres: Annotated[float, Field(ge=500, le=100_000)] | None = None
    """Of the tank that is built; without it, the place's own tank."""
    handouts: Annotated[tuple[_Key, ...], Field(strict=False, max_length=60)] = ()
    """Beside those of the modules."""
    practicals: Annotated[tuple[_Key, ...], Field(strict=False, max_length=30)] = ()
    """Watched at the workshop: a checklist of each is in the pack."""
    builds: bool = True
    """Whether a tank is built; without one the pack has no calendar and no cutting list."""
    build_begins: Annotated[str, Field(min_length=1, max_length=10)] | None = None
    """Day one of the build; without it, the first day of the workshop."""
    visits: Annotated[tuple[str, ...], Field(strict=False, max_length=30)] = ()
    """Days after the workshop on which someone comes back to the tank."""
    questions: Annotated[int, Field(ge=1, le=60)] = 8
    """On each learner's worksheet of a module."""


@dataclass(frozen=True, slots=True)
class Workshop:
    """A workshop whose file is good.

    Args:
        file: what was written.
        dates: its days.
        plan: of the tank that is built.
        days: sessions of each day.
        begins: day one of the build.
        visits: days on which someone comes back to the tank.
    """

    file: WorkshopFile
    dates: tuple[date, ...]
    plan: Plan
    days: tuple[tuple[Session, ...], ...]
    begins: date
    visits: tuple[date, ...] = ()

    @property
    def language(self) -> str:
        """Language of everything that is printed."""
        return self.file.language

    def in_language(self, language: str) -> Workshop:
        """The same workshop printed in another language than its file says."""
        return replace(self, file=self.file.model_copy(update={"language": language}))

    @property
    def threes(self) -> int:
        """Groups of three learners."""
        return -(-self.file.group // 3)


def read_workshop(name: str, data: bytes, content: CourseContent) -> Workshop:
    """Read a workshop's file.

    Args:
        name: how problems name it.
        data: its bytes.
        content: the course.

    Raises:
        ProblemsError: everything that is wrong with it: a name that the font can't print, keys, values, unknown
            modules, places and handouts, dates that do not go forward, days too short for the modules, a tank that this
            course does not plan, visits too late.
    """
    file = read_yaml(name, data)
    problems: list[Problem] = []
    found: WorkshopFile | None = None
    try:
        found = WorkshopFile.model_validate(file.value)
    except ValidationError as error:
        problems += problems_of(file, WorkshopFile, error)
    raw: Mapping[str, Any] = file.value if isinstance(file.value, dict) else {}
    problems += _title(file, raw)
    problems += _names(file, raw, content)
    problems += _dates(file, raw)
    problems += _plan_problems(file, raw, found, content)
    if found is not None and not problems:
        problems += _time(file, found, content)
        problems += _build_days(file, found, content)
    if problems or found is None:
        raise ProblemsError(few(name, problems))
    plan = tank_of(found, content)
    assert isinstance(plan, Plan)  # noqa: S101 (a refusal was a problem above)
    days = programme(blocks_of(found, content), len(found.dates), found.hours.start, found.hours.end)
    dates = tuple(date.fromisoformat(day) for day in found.dates)
    visits = tuple(date.fromisoformat(day) for day in found.visits)
    return Workshop(found, dates, plan, days, _begins(found), visits)


def blocks_of(file: WorkshopFile, content: CourseContent) -> list[Block]:
    """What is taught, in order, with its minutes."""
    found = []
    for name in file.modules:
        minutes = content.modules[name].minutes
        found += [Block(name, "talk", minutes.talk), Block(name, "show", minutes.show), Block(name, "do", minutes.do)]
    return [block for block in found if block.minutes]


def tank_of(file: WorkshopFile, content: CourseContent) -> Plan | Refusal:
    """The plan of what is built.

    Raises:
        OutOfRangeError: this course plans no such tank.
    """
    line = file.crew
    crew = Crew(line.masons, line.labourers, line.load, line.working_days, line.lost_to_rain)
    if file.litres is not None:
        return make_plan(Wish(file.litres, crew=crew))
    given = content.places[file.place].given
    return make_plan(Wish(litres_of_place(given), crew=crew, place=given, wished_hoops=hoops_of_place(given)))


def _title(file: YamlFile, raw: Mapping[str, Any]) -> Iterator[Problem]:
    """The name stands on every page: the print font must have its letters."""
    name = raw.get("name")
    try:
        for word in name.split() if isinstance(name, str) else ():
            shaped(word, BOLD)
    except MachineError as error:
        fix = "write it in Latin or Devanagari letters"
        what = f"the name can't be printed: {str(error).partition(' (fix:')[0]}"
        yield file.value_problem(("name",), "name-not-printable", what, fix)


def _names(file: YamlFile, raw: Mapping[str, Any], content: CourseContent) -> Iterator[Problem]:
    for key, known in (("place", content.places), ("language", content.words)):
        value = raw.get(key)
        if isinstance(value, str) and value not in known:
            what = f"the course has no {key} '{value}'"
            yield file.value_problem((key,), f"unknown-{key}", what, did_you_mean(value, list(known)))
    modules = [name for name, module in content.modules.items() if not module.retired]
    practicals = [name for name, practical in content.practicals.items() if not practical.retired]
    for key, kind, names in (
        ("modules", "module", modules), ("handouts", "handout", list(content.handouts)),
        ("practicals", "practical", practicals),
    ):  # fmt: skip
        listed = raw.get(key)
        seen: set[str] = set()
        for place, value in enumerate(listed if isinstance(listed, list) else []):
            if not isinstance(value, str):
                continue
            if value not in names:
                what = f"the course has no {kind} '{value}'"
                yield file.value_problem((key, place), f"unknown-{kind}", what, did_you_mean(value, names))
            elif value in seen:
                yield file.value_problem((key, place), "listed-twice", f"'{value}' stands twice", "remove one of them")
            seen.add(value)


def _dates(file: YamlFile, raw: Mapping[str, Any]) -> Iterator[Problem]:
    """Days of the workshop, then the visits, each later than the one before it; and the day the build begins."""
    before: date | None = None
    for key in ("dates", "visits"):
        listed = raw.get(key)
        for place, value in enumerate(listed if isinstance(listed, list) else []):
            if not isinstance(value, str):
                continue
            day = _day(value)
            if day is None:
                yield _no_day(file, (key, place), value)
                continue
            if before is not None and day <= before:
                what = f"{value} does not come after {before.isoformat()}"
                yield file.value_problem((key, place), "dates-not-in-order", what, "write each day once, in order")
            before = day
    begins = raw.get("build_begins")
    if isinstance(begins, str) and _day(begins) is None:
        yield _no_day(file, ("build_begins",), begins)


def _day(value: str) -> date | None:
    """A day as it is written in the file; nothing if it is none."""
    try:
        day = date.fromisoformat(value)
    except ValueError:
        return None
    return day if len(value) == len("2031-11-17") else None


def _no_day(file: YamlFile, loc: tuple[str | int, ...], value: str) -> Problem:
    fix = "write year, month and day: 2031-11-17"
    return file.value_problem(loc, "not-a-date", f"'{value}' is no day of the calendar", fix)


def _begins(found: WorkshopFile) -> date:
    return date.fromisoformat(found.build_begins or found.dates[0])


def _build_days(file: YamlFile, found: WorkshopFile, content: CourseContent) -> Iterator[Problem]:
    """The build begins before the workshop ends, and visits come while the tank is not yet handed over."""
    if not found.builds:
        for key in ("build_begins", "visits"):
            if getattr(found, key):
                what = f"no tank is built, so '{key}' says nothing"
                yield file.problem((key,), "nothing-is-built", what, f"remove '{key}', or write builds: true")
        return
    begins, last = _begins(found), date.fromisoformat(found.dates[-1])
    if begins > last:
        what = f"the build begins on {begins.isoformat()}, and the workshop ends on {last.isoformat()}"
        yield file.value_problem(("build_begins",), "build-after-workshop", what, "write an earlier day")
        return
    plan = tank_of(found, content)
    assert isinstance(plan, Plan)  # noqa: S101 (a refusal was a problem before)
    end = begins + timedelta(days=max(slot.end for slot in plan.work.slots) - 1)
    for place, value in enumerate(found.visits):
        if date.fromisoformat(value) > end:
            what = f"the tank is handed over on {end.isoformat()}, and this visit comes later"
            yield file.value_problem(("visits", place), "visit-after-hand-over", what, "write an earlier day")


def _plan_problems(
    file: YamlFile, raw: Mapping[str, Any], found: WorkshopFile | None, content: CourseContent
) -> Iterator[Problem]:
    """The tank is planned even where other lines are wrong, if what it needs is good."""
    if found is None:
        try:
            found = WorkshopFile.model_validate(
                {"format": 1, "name": "x", "place": raw.get("place"), "dates": ["2031-11-17"], "group": 1,
                 "language": "x", "modules": ["x"], **{key: raw[key] for key in ("crew", "litres") if key in raw}}
            )  # fmt: skip
        except ValidationError:
            return
    if found.place not in content.places:
        return
    loc = ("litres",) if found.litres is not None else ("place",)
    words = next(iter(content.words.values()))
    try:
        result = tank_of(found, content)
    except NoPlanError as reason:
        yield file.value_problem(loc, "no-such-tank", reason.text(words), "choose another tank, or ask an engineer")
        return
    except OutOfRangeError as error:
        yield file.value_problem(loc, "no-such-tank", str(error), "choose another tank, or ask a licensed engineer")
        return
    if isinstance(result, Refusal):
        fix = "choose a smaller tank, or ask a licensed engineer"
        yield file.value_problem(loc, "no-such-tank", result.reason.text(words), fix)


def _time(file: YamlFile, found: WorkshopFile, content: CourseContent) -> Iterator[Problem]:
    if found.hours.end <= found.hours.start:
        what = f"the day ends at {found.hours.end}, and begins at {found.hours.start}"
        yield file.value_problem(("hours", "end"), "day-too-short", what, "write a later hour")
        return
    room = capacity(len(found.dates), found.hours.start, found.hours.end)
    needed = sum(block.minutes for block in blocks_of(found, content))
    if needed > room:
        what = f"the modules take {needed} minutes, and the days have room for {max(0, room)}"
        yield file.problem(("dates",), "too-little-time", what, "add a day, lengthen the hours, or leave out a module")
