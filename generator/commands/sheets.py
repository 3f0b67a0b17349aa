"""`sheets`: personal worksheets with their key for a class list, and the sheets that every class uses."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import date
from pathlib import Path

import click

from generator import VERSION, plans
from generator import sheets as printed
from generator.commands.course import course_at, file_bytes
from generator.commands.tool import (
    ProgressLine,
    content_option,
    json_option,
    language_option,
    output_option,
    say_json,
    write_folder,
)
from generator.curriculum import CourseContent
from generator.exercises import Person, make_set, read_class_list, to_json
from generator.problems import ExitCode, Problem, ProblemsError
from generator.sheets.workshop_file import Workshop, read_workshop
from generator.site import RECKONER

_KINDS = ("handouts", "checklists")
_NOT_IN_A_NAME = re.compile(r"[^a-z0-9]+")


@click.command()
@click.argument("names", nargs=-1)
@click.option("--for", "class_list", type=click.Path(dir_okay=False, path_type=Path), help="Class list (CSV): name.")
@click.option("--module", help="Whose questions are asked; needed with --for where the course has several modules.")
@click.option("--seed", help="Any text: another one gives other numbers. Without it, today's date.")
@click.option("--questions", type=click.IntRange(0, 500), default=0, help="How many for each learner; 0 asks all.")
@click.option(
    "--competency", "competencies", multiple=True, help="Ask only what shows this; may be given several times."
)
@click.option("--workshop", type=click.Path(dir_okay=False, path_type=Path), help="A workshop's YAML file: its pack.")
@click.option("--list", "list_them", is_flag=True, help="List the sheets that can be asked for by name.")
@click.option("--only", type=click.Choice(_KINDS), help="Print all sheets of this kind; with --list, list only these.")
@language_option
@content_option
@output_option
@json_option
def sheets(
    names: Sequence[str],
    class_list: Path | None,
    module: str | None,
    seed: str | None,
    questions: int,
    competencies: Sequence[str],
    workshop: Path | None,
    list_them: bool,
    only: str | None,
    language: str,
    content: Path,
    output: Path,
    as_json: bool,
) -> int:
    """Print personal worksheets with their key for a class list, sheets by name, or a workshop's whole pack.

    Example: python3 tankschool.py sheets --for names.csv --module frame --language hi
    """
    course = course_at(content)
    language = known_language(course, language)
    if list_them:
        rows = [(name, title[language]) for name, title in named_sheets(course, only).items()]
        if as_json:
            say_json({"format": 1, "sheets": dict(rows)})
        for name, title in () if as_json else rows:
            click.echo(f"{name}  {title}")
        return ExitCode.GOOD
    if only is not None and not names:
        names = tuple(named_sheets(course, only))
    if class_list is None and not names and workshop is None:
        raise click.UsageError("Say for whom (--for names.csv) or which sheet by name (--list shows them).")
    if workshop is not None:
        return _workshop(course, workshop, class_list, seed, output, as_json=as_json)
    strange = [name for name in competencies if name not in course.competencies]
    if strange:
        raise click.UsageError(f"There is no competency '{strange[0]}', only {', '.join(course.competencies)}.")
    unknown = [name for name in names if name not in named_sheets(course, only)]
    if unknown:
        raise click.UsageError(f"There is no sheet '{unknown[0]}'; --list shows them.")
    written: list[Path] = []
    progress = ProgressLine(quiet=as_json)
    for name in names:
        path = output / "sheets" / f"{name}-{language}.pdf"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(named_pdf(name, language, course))
        written.append(path)
    if class_list is not None:
        seed = seed or date.today().isoformat()  # noqa: DTZ011 (the day on the trainer's own calendar)
        asked = (seed, questions, competencies)
        written += _class_set(course, class_list, _module(course, module), asked, language, output, progress)
    progress.done()
    words = course.words[language]
    if as_json:
        say_json({"format": 1, "files": [str(path) for path in written], "seed": seed})
    else:
        click.echo(words.say("command.wrote"))
        for path in written:
            click.echo(f"  {path}")
        if class_list is not None:
            click.echo(words.say("command.keep_the_record"))
    return ExitCode.GOOD


def known_language(course: CourseContent, language: str) -> str:
    """The language, if the course has it.

    Raises:
        UsageError: it has not; the message says which it has.
    """
    if language not in course.course.languages:
        raise click.UsageError(f"The course has no language '{language}', only {', '.join(course.course.languages)}.")
    return language


def named_sheets(course: CourseContent, only: str | None = None) -> dict[str, dict[str, str]]:
    """The sheets that are asked for by name, with their titles: handouts, practical checklists, the ready reckoner.

    Args:
        course: the course.
        only: `handouts` or `checklists`; None takes all.
    """
    handouts = {handout.id: dict(handout.title) for handout in course.handouts.values()}
    checklists = {p.id: dict(p.title) for p in course.practicals.values() if not p.retired}
    reckoner = {language: words.say("plan.reckoner.title") for language, words in course.words.items()}
    kinds = {"handouts": {RECKONER: reckoner} | handouts, "checklists": checklists}
    return kinds[only] if only is not None else kinds["handouts"] | checklists


def named_pdf(name: str, language: str, course: CourseContent) -> bytes:
    """The PDF of a sheet by name."""
    if name in course.handouts:
        return printed.handout_pdf(name, language, course)
    if name in course.practicals:
        return printed.practical_pdf(name, language, course)
    return printed.reckoner_pdf(plans.make_reckoner(), course.words[language], course.course.version)


def slug(name: str) -> str:
    """A name as part of a file name: ASCII letters and digits; empty for a name without any."""
    return _NOT_IN_A_NAME.sub("-", name.lower()).strip("-")[:20]


def _module(course: CourseContent, module: str | None) -> str:
    if module is None and len(course.modules) == 1:
        return next(iter(course.modules))
    if module is None or module not in course.modules:
        raise click.UsageError(f"Say which module: --module {' or '.join(course.modules)}.")
    return module


def _class_set(
    course: CourseContent,
    class_list: Path,
    module: str,
    asked: tuple[str, int, Sequence[str]],
    language: str,
    output: Path,
    progress: ProgressLine,
) -> list[Path]:
    people = read_class_list(str(class_list), file_bytes(class_list), course.course.languages)
    progress(course.words[language].say("command.drawing", count=len(people)))
    seed, questions, competencies = asked
    record = make_set(
        course, module, people, seed, language, tool=f"tankschool {VERSION}", questions=questions,
        competencies=competencies,
    )  # fmt: skip
    if not any(learner.items for learner in record.learners):
        raise click.UsageError(f"The module '{module}' asks nothing that shows {', '.join(competencies)}.")
    progress(course.words[language].say("command.printing", count=len(people)))
    files = {
        "worksheets.pdf": printed.worksheet_pdf(record, course),
        "key.pdf": printed.key_pdf(record, course),
        "marking-strips.pdf": printed.strip_pdf(record, course),
        "record.json": to_json(record),
    }
    folder = output / "sheets" / f"{module}-{record.set_id}"
    write_folder(folder, files)
    return [folder / name for name in files]


def _workshop(
    course: CourseContent, file: Path, class_list: Path | None, seed: str | None, output: Path, *, as_json: bool
) -> int:
    """The pack of a workshop and each of its sheets, in a folder of their own."""
    data = file_bytes(file)
    problems: list[Problem] = []
    people: tuple[Person, ...] = ()
    found: Workshop | None = None
    try:
        found = read_workshop(str(file), data, course)
    except ProblemsError as error:
        problems += error.problems
    if class_list is not None:
        try:
            people = read_class_list(str(class_list), file_bytes(class_list), course.course.languages)
        except ProblemsError as error:
            problems += error.problems
    if found is not None and people and len(people) != found.file.group:
        what = f"the group has {found.file.group} learners, and the class list {len(people)} names"
        problems.append(Problem(str(class_list), 0, 0, "group-and-list", what, "make both the same"))
    if problems or found is None:
        raise ProblemsError(problems)
    words = course.words[found.language]
    if not people:
        people = tuple(Person(f"{words.say('workshop.learner')} {n}") for n in range(1, found.file.group + 1))
    seed = seed or f"{found.file.name} {found.file.dates[0]}"
    records = {
        module: make_set(
            course, module, people, seed, found.language, tool=f"tankschool {VERSION}", questions=found.file.questions
        )
        for module in found.file.modules
    }
    files = printed.Pack(found, course, records, data).files()
    for module, record in records.items():
        files[f"marking-strips-{module}.pdf"] = printed.strip_pdf(record, course)
        files[f"record-{module}.json"] = to_json(record)
    folder = output / "sheets" / f"workshop-{slug(found.file.name) or found.file.dates[0]}-{found.file.dates[0]}"
    write_folder(folder, files)
    if as_json:
        say_json({"format": 1, "files": [str(folder / name) for name in files], "seed": seed})
        return ExitCode.GOOD
    click.echo(words.say("command.wrote"))
    for name in files:
        click.echo(f"  {folder / name}")
    click.echo(words.say("command.keep_the_record"))
    return ExitCode.GOOD
