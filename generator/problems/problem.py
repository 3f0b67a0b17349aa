"""What is wrong with a file, where it is and what to do: one shape for every room."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from enum import IntEnum
from itertools import islice
from unicodedata import category

_DIGITS = re.compile(r"(\d+)")


class ExitCode(IntEnum):
    """How a command ends. The numbers are stable: scripts may rely on them."""

    GOOD = 0
    PROBLEMS = 1
    """Something is wrong in the input; every problem was printed."""
    USAGE = 2
    REFUSED = 3
    """A limit or a rule says no."""
    MACHINE = 4
    """The disk, the text shaping or another part of the machine failed."""


@dataclass(frozen=True, slots=True, order=True)
class Problem:
    """One fault of one file.

    Args:
        file: path as the reader would type it.
        line: counted from 1; 0 where the whole file is meant.
        column: counted from 1; 0 where the whole line is meant.
        code: stable kebab-case name of the kind of fault, for programs: ``unknown-key``.
        what: what is wrong, in a sentence without a full stop.
        fix: what to do about it.

    Example:
        >>> print(Problem("course/course.yaml", 2, 1, "unknown-key", "unknown key 'titel'", "did you mean 'title'?"))
        course/course.yaml:2:1: unknown key 'titel' (fix: did you mean 'title'?)
    """

    file: str
    line: int
    column: int
    code: str
    what: str
    fix: str

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}: {_one_line(self.what)} (fix: {_one_line(self.fix)})"


_LONGEST, _KEPT_AT_END = 600, 120


def _one_line(text: str) -> str:
    """What a file says may stand in a problem, but neither as pages nor as signs that move a terminal's cursor."""
    if len(text) > _LONGEST:
        text = f"{text[: _LONGEST - _KEPT_AT_END]} … {text[-_KEPT_AT_END:]}"
    return "".join(sign if category(sign) not in _MOVING and sign not in _TURNING else "�" for sign in text)


_MOVING = {"Cc", "Cs", "Zl", "Zp"}
"""Control characters, halves of a character, and ends of lines and paragraphs."""
_TURNING = frozenset(map(chr, (*range(0x202A, 0x202F), *range(0x2066, 0x206A))))
"""Marks that turn the direction of what follows them."""


MOST_REPORTED = 50
"""Problems of one file that are listed; a file with more is usually not the one that was meant."""


def few(file: str, problems: Iterable[Problem]) -> list[Problem]:
    """The first 50 problems of a file, and a last one that says so where there are more.

    No more than those are worked out: a large file of junk would else take minutes to complain about.

    Args:
        file: the file's name.
        problems: best a generator.
    """
    found = list(islice(problems, MOST_REPORTED + 1))
    if len(found) > MOST_REPORTED:
        what = f"there are more than {MOST_REPORTED} problems; the rest is not listed"
        found[MOST_REPORTED] = Problem(file, 0, 0, "too-many-problems", what, "check that it is the right file")
    return found


def in_order(problems: Iterable[Problem]) -> list[Problem]:
    """Sorted as people count: cell A2 before A10."""
    return sorted(problems, key=lambda each: ([(int(part), "") if part.isdecimal() else (0, part)
                                               for part in _DIGITS.split(each.file)], each))  # fmt: skip


class ProblemsError(Exception):
    """Raised where reading cannot go on; carries all the problems found, sorted.

    Every command turns it into a printed list and exit code 1.
    """

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems: tuple[Problem, ...] = tuple(in_order(set(problems)))
        super().__init__("\n".join(map(str, self.problems)))


class RefusedError(Exception):
    """A limit or a rule says no (exit code 3); the message says which, and who to ask."""


class MachineError(Exception):
    """The machine failed, not the input (exit code 4): disk, text shaping, theme."""
