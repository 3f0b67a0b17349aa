"""`new`: starts an own course in a folder: small, complete, and good by `check` from the first minute."""

from __future__ import annotations

from pathlib import Path

import click

from generator.commands.course import course_at
from generator.commands.tool import ROOT, json_option, say_json
from generator.problems import ExitCode, RefusedError
from generator.site.mkdocs_run import read_files, write_files
from generator.site.swap import swap_in

STARTER = Path(__file__).parent / "starter"
"""Course file, one module with its bank, and a note: what an author changes first."""
OWN = ("course/words/*.yaml", "course/competencies.yaml", "course/places/hill-school.yaml")
"""Copied from the project's own course, so that a new course has every word that this version says."""


def starter_files() -> dict[str, bytes]:
    """The files of a new course by their path."""
    found = read_files(STARTER)
    for pattern in OWN:
        for path in sorted(ROOT.glob(pattern)):
            found[path.relative_to(ROOT).as_posix()] = path.read_bytes()
    return found


@click.command()
@click.argument("folder", type=click.Path(path_type=Path))
@json_option
def new(folder: Path, as_json: bool) -> int:
    """Start an own course in FOLDER: one place, one module with its questions, all words. It passes `check`.

    Nothing that is there is ever overwritten: FOLDER must be new or empty.

    Example: python3 tankschool.py new ../our-course        (then: build --content ../our-course)
    """
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise RefusedError(f"'{folder}' is there already and not empty: choose a new folder, so that nothing is lost")
    if folder.exists():
        folder.rmdir()
    files = starter_files()

    def fill(fresh: Path) -> None:
        write_files(fresh, files)
        for name in ("course", "quizzes", "handouts"):
            (fresh / name).mkdir(exist_ok=True)

    swap_in(folder, fill)
    course = course_at(folder)
    if as_json:
        say_json({"format": 1, "folder": str(folder), "files": len(files)})
        return ExitCode.GOOD
    click.echo(
        f"{len(files)} files in {folder}: '{course.course.title[course.course.languages[0]]}' is good by `check`."
    )
    click.echo(f"Edit {folder / 'course' / 'course.yaml'} and {folder / 'course' / 'modules' / '01-first'}.")
    click.echo(f"See it while you edit: python3 tankschool.py preview --content {folder}")
    return ExitCode.GOOD
