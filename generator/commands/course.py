"""The course as commands need it: loaded and without a fault, or not at all."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from generator import curriculum, exercises, site
from generator.assessment import blueprint
from generator.curriculum import CourseContent
from generator.problems import Problem, ProblemsError


def course_at(root: Path) -> CourseContent:
    """The course in a folder.

    Args:
        root: folder that holds `course/`, `quizzes/` and `handouts/`.

    Raises:
        ProblemsError: everything that is wrong with it.
    """
    loaded = curriculum.load(root)
    if loaded.content is None:
        raise ProblemsError(loaded.problems)
    problems = faults(loaded.content)
    if problems:
        raise ProblemsError(problems)
    return loaded.content


def faults(content: CourseContent) -> list[Problem]:
    """What the rooms above the curriculum find wrong with a course that reads well."""
    return [*curriculum.check(content), *exercises.check(content), *blueprint.check(content), *site.check(content)]


def file_bytes(path: Path) -> bytes:
    """The bytes of a file that someone handed in.

    Raises:
        ProblemsError: it is not there or can't be read.
    """
    with readable(path):
        return path.read_bytes()


@contextmanager
def readable(path: Path) -> Iterator[None]:
    """Within, what the system has against a file is told as a problem with it.

    Raises:
        ProblemsError: it is not there or can't be read.
    """
    try:
        yield
    except OSError as error:
        what = f"the file can't be read: {error.strerror or error}"
        raise ProblemsError([Problem(str(path), 0, 0, "unreadable", what, "check the name and the place")]) from None
