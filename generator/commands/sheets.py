"""`sheets`: personal worksheets with their key for a class list, and the sheets that every class uses."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from datetime import date
from functools import partial
from pathlib import Path

import click
from click.core import ParameterSource

from generator import plans
from generator import sheets as printed
from generator.commands.class_sheets import Asked, slug, write_class_set, write_workshop
from generator.commands.course import course_at
from generator.commands.own_tank import OwnTank
from generator.commands.tool import (
    ProgressLine,
    content_option,
    json_option,
    language_option,
    output_option,
    say_json,
)
from generator.curriculum import CourseContent
from generator.problems import ExitCode
from generator.site import FORMULAS, RECKONER

_KINDS = ("handouts", "checklists")


@click.command()
@click.argument("names", nargs=-1)
@click.option("--for", "class_list", type=click.Path(dir_okay=False, path_type=Path), help="Class list (CSV): name.")
@click.option("--module", help="Whose questions are asked: needed with --for in a course of several; or whose formulas")
@click.option("--seed", help="Any text: another one gives other numbers. Without it, today's date.")
@click.option("--questions", type=click.IntRange(0, 500), default=0, help="How many for each learner; 0 asks all.")
@click.option(
    "--competency", "competencies", multiple=True, help="Ask only what shows this; may be given several times."
)
@click.option("--learner", "learners", multiple=True, help="Print only this one of the class list: number or name.")
@click.option("--personal", is_flag=True, help="A file for each learner, named by number and name.")
@click.option("--pictures", is_flag=True, help="A module in pictures, for those who read little.")
@click.option("--scenarios", is_flag=True, help="Booklets of whole tanks to work out.")
@click.option(
    "--workshop",
    type=click.Path(dir_okay=False, path_type=Path),
    help="A workshop's YAML file: its pack; with names, these sheets for its tank.",
)
@click.option(
    "--place",
    type=click.Path(dir_okay=False, path_type=Path),
    help="With names: the sheets for the tank of this place's YAML file.",
)
@click.option("--litres", type=float, help="With names: the sheets for a tank of so many litres.")  # fmt: skip
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
    learners: Sequence[str],
    workshop: Path | None,
    place: Path | None,
    litres: float | None,
    list_them: bool,
    only: str | None,
    language: str,
    content: Path,
    output: Path,
    as_json: bool,
    personal: bool,
    pictures: bool,
    scenarios: bool,
) -> int:
    """Print personal worksheets with their key for a class list, sheets by name, or a workshop's whole pack.

    A sheet by name shows its own invented tank, or with --place, --litres or --workshop yours. A workshop's sheets are
    in its file's language, unless --language says another.

    Example: python3 tankschool.py sheets --for names.csv --module frame --language hi
    Example: python3 tankschool.py sheets stick cutting-list --place my-place.yaml
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
    all_of_them = only is not None and not names
    if all_of_them:
        names = tuple(named_sheets(course, only))
    tank = OwnTank(place, litres, workshop)
    if tank.asked and workshop is None and not names:
        raise click.UsageError(
            "Say which sheets are made for this tank, by name (--list shows them), or --only handouts."
        )
    if class_list is None and not (names or workshop or pictures or scenarios):
        raise click.UsageError("Say for whom (--for names.csv) or which sheet by name (--list shows them).")
    typed = click.get_current_context().get_parameter_source("language") is ParameterSource.COMMANDLINE
    if workshop is not None and not names:
        own_language = language if typed else None
        return write_workshop(course, workshop, class_list, seed, output, own_language, as_json=as_json)
    strange = [name for name in competencies if name not in course.competencies]
    if strange:
        raise click.UsageError(f"There is no competency '{strange[0]}', only {', '.join(course.competencies)}.")
    unknown = [name for name in names if name not in named_sheets(course, only)]
    if unknown:
        raise click.UsageError(f"There is no sheet '{unknown[0]}'; --list shows them.")
    written: list[Path] = []
    progress = ProgressLine(quiet=as_json)
    if not typed:
        language = tank.language(course) or language
    wanted_sheets = list(names)
    chosen = [] if module is None or FORMULAS not in names else [_module(course, module)]
    own, end = tank.course(course, wanted_sheets, language, leave_out=all_of_them) if tank.asked else (course, "")
    single = {
        f"{name}-{end}" if end and name in own.handouts else name: partial(_for_tank, name, own, chosen)
        for name in wanted_sheets
    }
    if pictures:
        with_cards = [name for name in _modules(course, module) if course.modules[name].cards]
        single |= {f"pictures-{name}": partial(printed.pictures_pdf, name) for name in with_cards}
    if scenarios:
        wanted = [s.id for s in course.scenarios.values() if s.module in _modules(course, module) and not s.retired]
        single |= {f"scenario-{name}": partial(printed.scenario_pdf, name) for name in wanted}
    if not single and class_list is None:
        raise click.UsageError(f"The module '{module}' has nothing of this kind.")
    for name, make in single.items():
        path = output / "sheets" / f"{name}-{language}.pdf"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(make(language, course))
        written.append(path)
    if class_list is not None:
        seed = seed or date.today().isoformat()  # noqa: DTZ011 (the day on the trainer's own calendar)
        asked = Asked(_module(course, module), language, seed, questions, competencies, learners, personal)
        written += write_class_set(course, class_list, asked, output, progress)
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
    """The sheets that are asked for by name, with their titles: handouts, checklists, ready reckoner, formula sheet.

    Args:
        course: the course.
        only: `handouts` or `checklists`; None takes all.
    """
    handouts = {handout.id: dict(handout.title) for handout in course.handouts.values()}
    checklists = {p.id: dict(p.title) for p in course.practicals.values() if not p.retired}
    reckoner = {language: words.say("plan.reckoner.title") for language, words in course.words.items()}
    formulas = {language: words.say("page.formulas.title") for language, words in course.words.items()}
    kinds = {"handouts": {RECKONER: reckoner, FORMULAS: formulas} | handouts, "checklists": checklists}
    return kinds[only] if only is not None else kinds["handouts"] | checklists


def named_pdf(name: str, language: str, course: CourseContent, modules: Collection[str] = ()) -> bytes:
    """The PDF of a sheet by name; the formula sheet of all modules, or of these."""
    if name in course.handouts:
        return printed.handout_pdf(name, language, course)
    if name in course.practicals:
        return printed.practical_pdf(name, language, course)
    if name == FORMULAS:
        return printed.formulas_pdf(language, course, modules)
    return printed.reckoner_pdf(plans.make_reckoner(), course.words[language], course.course.version)


def _for_tank(name: str, own: CourseContent, modules: Collection[str], language: str, _course: CourseContent) -> bytes:
    return named_pdf(name, language, own, modules)


def _modules(course: CourseContent, module: str | None) -> list[str]:
    """The module that was named, or all."""
    return list(course.modules) if module is None else [_module(course, module)]


def _module(course: CourseContent, module: str | None) -> str:
    if module is None and len(course.modules) == 1:
        return next(iter(course.modules))
    if module is None or module not in course.modules:
        raise click.UsageError(f"Say which module: --module {' or '.join(course.modules)}.")
    return module


__all__ = ["known_language", "named_pdf", "named_sheets", "sheets", "slug"]
