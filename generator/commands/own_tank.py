"""Sheets for a trainer's own tank: of a place, of litres or of a workshop; refused where no such tank is planned."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from pathlib import Path

import click

from generator import plans
from generator.commands.course import file_bytes
from generator.curriculum import CourseContent, NoSuchSheetError, at_tank
from generator.formula import OutOfRangeError
from generator.plans import NoPlanError, Plan, Refusal, Wish
from generator.problems import RefusedError
from generator.sheets.workshop_file import Workshop, read_workshop
from generator.words import Words


@dataclass(frozen=True, slots=True)
class OwnTank:
    """Where a tank comes from: one of the three, or none of them.

    Args:
        place: a place's file.
        litres: of the tank.
        workshop: a workshop's file.
    """

    place: Path | None
    litres: float | None
    workshop: Path | None

    @property
    def asked(self) -> bool:
        """Whether another tank is asked for.

        Raises:
            UsageError: more than one is.
        """
        ways = [way for way in (self.place, self.litres, self.workshop) if way is not None]
        if len(ways) > 1:
            raise click.UsageError("Say one of --place, --litres and --workshop: each of them is a tank.")
        return bool(ways)

    def language(self, course: CourseContent) -> str | None:
        """The workshop's language; None where the tank is not a workshop's.

        Raises:
            ProblemsError: what is wrong with the workshop's file.
        """
        if self.workshop is None:
            return None
        return read_workshop(str(self.workshop), file_bytes(self.workshop), course).language

    def course(
        self, course: CourseContent, names: list[str], language: str, *, leave_out: bool = False
    ) -> tuple[CourseContent, str]:
        """The course with these handouts for the tank, and what tells their files from others.

        Args:
            course: as it is shipped.
            names: of sheets; those that belong to no tank stay as they are.
            language: of what is said.
            leave_out: whether a handout that shows a part which the tank has not is told and taken out of `names`,
                instead of being refused.

        Raises:
            ProblemsError: what is wrong with the file.
            RefusedError: this course plans no such tank; says why.
        """
        words = course.words[language]
        make, end = self._way(course, words)
        while True:
            try:
                return make([name for name in names if name in course.handouts]), end
            except NoSuchSheetError as missing:
                title = course.handouts[missing.handout].title[language]
                told = words.say("command.not_for_this_tank", title=title)
                if not leave_out:
                    raise RefusedError(told) from None
                click.echo(told, err=True)
                names.remove(missing.handout)

    def _way(self, course: CourseContent, words: Words) -> tuple[Callable[[list[str]], CourseContent], str]:
        """What fills handouts for the tank, and the end of their files' names."""
        if self.workshop is not None:
            found = read_workshop(str(self.workshop), file_bytes(self.workshop), course)
            return partial(workshop_course, course, found), self.workshop.stem
        if self.place is not None:
            data = file_bytes(self.place)
            given = plans.read_place(str(self.place), data)
            plan = _planned(words, given)
            name = {each: plans.name_of_place(str(self.place), data, each) for each in course.words}
            return partial(at_tank, course, plan, name), self.place.stem
        litres = self.litres or 0.0
        plan = _planned(words, {}, litres)
        name = {each: told.with_unit(f"{litres:.0f}", "L") for each, told in course.words.items()}
        return partial(at_tank, course, plan, name), f"{litres:.0f}-litres"


def workshop_course(course: CourseContent, found: Workshop, handouts: list[str]) -> CourseContent:
    """The course with handouts for the tank that a workshop builds."""
    name = dict(course.places[found.file.place].name)
    if found.file.litres is not None:
        name = {
            each: f"{name[each]} · {told.with_unit(f'{found.file.litres:.0f}', 'L')}"
            for each, told in course.words.items()
        }
    return at_tank(course, found.plan, name, handouts)


def _planned(words: Words, given: dict[str, float], litres: float | None = None) -> Plan:
    """The plan of a place's tank, or of one of so many litres."""
    try:
        wished = plans.litres_of_place(given) if litres is None else litres
        result = plans.make_plan(Wish(wished, place=given, wished_hoops=plans.hoops_of_place(given)))
    except NoPlanError as reason:
        raise RefusedError(reason.text(words)) from None
    except OutOfRangeError as error:
        raise RefusedError(f"{error}: this course plans no such tank; ask a licensed engineer") from None
    if isinstance(result, Refusal):
        raise RefusedError(plans.as_text(result, words).strip())
    return result
