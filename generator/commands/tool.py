"""What several commands share: where the content is, how problems are printed, how progress is told."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Iterable, Mapping
from pathlib import Path
from typing import Any, TypeVar

import click

from generator.problems import Problem, in_order
from generator.site.swap import swap_in

ROOT = Path(__file__).resolve().parents[2]
"""The folder of the project: its own course, and the default place of what is built."""

Function = TypeVar("Function", bound=Callable[..., Any])


def content_option(function: Function) -> Function:
    """`--content DIR`: the folder that holds `course/`, `quizzes/` and `handouts/`."""
    return click.option(
        "--content",
        type=click.Path(exists=True, file_okay=False, path_type=Path),
        default=ROOT,
        show_default="the project's own",
        envvar="TANKSCHOOL_CONTENT",
        help="Folder that holds course/, quizzes/ and handouts/; also set by TANKSCHOOL_CONTENT.",
    )(function)


def output_option(function: Function) -> Function:
    """`--output DIR`: where built things go."""
    return click.option(
        "--output",
        type=click.Path(file_okay=False, path_type=Path),
        default=ROOT / "output",
        show_default="output/ beside the course",
        help="Folder for what is built.",
    )(function)


def language_option(function: Function) -> Function:
    """`--language`: in which language the program speaks and prints."""
    return click.option(
        "--language",
        default="en",
        show_default=True,
        envvar="TANKSCHOOL_LANGUAGE",
        help="Language to speak and print in; also set by TANKSCHOOL_LANGUAGE.",
    )(function)


def write_folder(folder: Path, files: Mapping[str, bytes]) -> None:
    """Write files into a folder, whole or not at all; what else lay in the folder is gone.

    Raises:
        MachineError: the disk said no; the folder is as it was.
    """

    def fill(fresh: Path) -> None:
        for name, data in files.items():
            (fresh / name).write_bytes(data)

    swap_in(folder, fill)


def json_option(function: Function) -> Function:
    """`--json`: the result for a program to read."""
    return click.option("--json", "as_json", is_flag=True, help="Print the result as JSON, for a program to read.")(
        function
    )


def say_problems(problems: Iterable[Problem]) -> None:
    """Print every problem, one a line, and how many there are."""
    found = in_order(problems)
    for problem in found:
        click.echo(str(problem), err=True)
    click.echo(f"{len(found)} problem{'' if len(found) == 1 else 's'}.", err=True)


def say_json(value: object) -> None:
    """Print a result for a program: sorted keys, plain UTF-8."""
    click.echo(json.dumps(value, ensure_ascii=False, indent=2, sort_keys=True))


def problem_rows(problems: Iterable[Problem]) -> list[dict[str, object]]:
    """Problems as rows for `--json`."""
    names = ("file", "line", "column", "code", "what", "fix")
    return [{name: getattr(problem, name) for name in names} for problem in in_order(problems)]


class ProgressLine:
    """Tells what is being done: a line that rewrites itself on a terminal, plain lines elsewhere.

    Args:
        quiet: say nothing, for `--json`.
    """

    def __init__(self, *, quiet: bool = False) -> None:
        self._quiet = quiet
        self._live = sys.stderr.isatty()

    def __call__(self, text: str) -> None:
        """Say one step."""
        if self._quiet:
            return
        if self._live:
            click.echo(f"\r\x1b[K{text}", err=True, nl=False)
        else:
            click.echo(text, err=True)

    def done(self) -> None:
        """End the line, so that the next message starts on its own."""
        if self._live and not self._quiet:
            click.echo("\r\x1b[K", err=True, nl=False)
