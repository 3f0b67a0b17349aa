"""`check`: reads all content and prints every problem."""

from __future__ import annotations

from pathlib import Path

import click

from generator import curriculum, exercises
from generator.assessment import blueprint
from generator.commands.course import faults
from generator.commands.tool import content_option, json_option, problem_rows, say_json, say_problems
from generator.problems import ExitCode, Problem


@click.command()
@content_option
@click.option(
    "--schemas",
    type=click.Path(file_okay=False, path_type=Path),
    help="Write JSON Schema files for an editor into this folder.",
)
@json_option
def check(content: Path, schemas: Path | None, as_json: bool) -> int:
    """Read all content and print every problem with its file, line, column and what to do.

    Example: python3 tankschool.py check --content my-course
    """
    if schemas is not None:
        for path in curriculum.schemas(schemas):
            click.echo(f"Wrote {path}")
    loaded = curriculum.load(content)
    problems: list[Problem] = list(loaded.problems)
    if loaded.content is not None:
        problems += faults(loaded.content)
    warned: list[Problem] = []
    if loaded.content is not None:
        warned = [*curriculum.warnings(loaded.content), *blueprint.warnings(loaded.content)]
    if as_json:
        say_json({"format": 1, "problems": problem_rows(problems), "warnings": problem_rows(warned)})
    elif problems:
        say_problems(problems)
    elif loaded.content is not None:
        course = loaded.content
        click.echo(
            f"{len(course.modules)} modules, {len(course.questions)} questions, {len(course.scenarios)} scenarios, "
            f"{len(course.practicals)} practicals in {' and '.join(course.course.languages)}: no problems."
        )
        for warning in warned:
            click.echo(f"Not a problem yet: {warning}")
        for line in exercises.separability_table(course):
            click.echo(line)
    return ExitCode.PROBLEMS if problems else ExitCode.GOOD
