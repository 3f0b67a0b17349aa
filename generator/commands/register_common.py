"""What all jobs of `register` share: where the registry is, who does it, what is printed, and kinds of answers."""

from __future__ import annotations

import functools
import json
import os
import sys
import unicodedata
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import asdict, dataclass, field
from datetime import UTC, date, datetime
from functools import cached_property
from pathlib import Path
from typing import Any, TypeVar

import click

from generator import curriculum
from generator.commands.tool import content_option, json_option, language_option, say_json
from generator.credentials.letters import is_clean
from generator.curriculum import CourseContent
from generator.problems import ExitCode, ProblemsError, RefusedError
from generator.registry import Holder, Imported, Registry, Report, default_place, is_number, open_registry
from generator.registry.listing import coordinators
from generator.registry.people import LONGEST_NAME
from generator.registry.place import is_server
from generator.words import Words

Function = TypeVar("Function", bound=Callable[..., Any])

EARLIEST, LATEST = 1990, 2199
"""Years that a day of this work can lie in."""
LONGEST_TEXT = 4000
"""Signs of a reason, a note or a complaint."""


def today() -> datetime:
    """The time: the only place where `register` reads the clock."""
    return datetime.now(UTC)


def data_folder() -> Path:
    """Where this user's registry, keys and certificates are kept."""
    return default_place(os.environ, Path.home(), sys.platform).parent


@functools.lru_cache(maxsize=2)
def course_of(root: Path) -> CourseContent:
    """The course in a folder, read once for all jobs of a menu.

    Raises:
        ProblemsError: what is wrong with it.
    """
    loaded = curriculum.load(root)
    if loaded.content is None:
        raise ProblemsError(loaded.problems)
    return loaded.content


@dataclass
class Desk:
    """Where someone works on a registry.

    Args:
        place: a file, or a server's address.
        language: in which it speaks.
        root: folder of the course.
        actor: id of the person who does the job; None where nobody was named.
        as_json: print for a program.
    """

    place: str | Path
    language: str
    root: Path
    actor: int | None = None
    as_json: bool = False
    now: datetime = field(default_factory=lambda: today())

    @cached_property
    def course(self) -> CourseContent:
        """The course, which says what schemes, practicals and languages there are."""
        found = course_of(self.root)
        if self.language not in found.words:
            raise click.UsageError(f"There is no language '{self.language}'. There are: {', '.join(found.words)}.")
        return found

    @cached_property
    def words(self) -> Words:
        """What it says, in its language."""
        return self.course.words[self.language]

    @contextmanager
    def registry(self, *, new: bool = False) -> Iterator[Registry]:
        """The registry, open.

        Args:
            new: make one where there is none; else a slip in a name would start an empty one unseen.
        """
        if not new and not is_server(self.place) and not Path(self.place).is_file():
            raise RefusedError(
                f"there is no registry at '{self.place}': look at --registry, or start one with "
                "'register people first NAME'"
            )
        with open_registry(self.place, now=self.now) as registry:
            yield registry

    def by(self, registry: Registry) -> int:
        """Who does the job: whoever was named, or the only coordinator there is."""
        if self.actor is not None:
            return self.actor
        known = coordinators(registry)
        if len(known) == 1:
            return known[0]
        raise click.UsageError(
            "Say who does this: --by ID, the number of a coordinator; 'register people list' shows them."
        )

    def done(self, text: str, **data: object) -> int:
        """Say what was done, or give it as JSON."""
        if self.as_json:
            say_json({"format": 1, **data})
        else:
            click.echo(text)
        return ExitCode.GOOD

    def imported(self, found: Imported) -> int:
        """Say what an import did, or would do."""
        if found.kept:
            text = self.words.say("register.done.imported", new=found.new, same=found.same)
        else:
            text = self.words.say("register.done.would_import", new=found.new, same=found.same)
        return self.done(text, new=found.new, same=found.same, kept=found.kept)

    def holders(self, found: Sequence[Holder], **data: object) -> int:
        """Say who worked on a tank, and how their certificates stand."""
        if self.as_json:
            return self.done("", holders=[asdict(holder) for holder in found], **data)
        if not found:
            click.echo(self.words.say("register.no_holders"))
        for holder in found:
            text = self.words.say(
                "register.holder", name=holder.name or "–", person=holder.person, number=holder.certificate,
                part=self.words.say_one_of("register.choice", holder.part),
                status=self.words.say_one_of("register.choice", holder.status),
            )  # fmt: skip
            click.echo(text)
        return ExitCode.GOOD

    def table(self, report: Report) -> int:
        """Print a table."""
        if self.as_json:
            rows = [dict(zip(report.columns, row, strict=True)) for row in report.rows]
            return self.done("", report=report.name, rows=rows)
        for line in as_lines(report, self.words):
            click.echo(line)
        return ExitCode.GOOD


def as_lines(report: Report, words: Words) -> Iterator[str]:
    """A table as plain lines, its columns under each other."""
    if not report.rows:
        yield words.say("register.nothing")
        return
    head = [words.say_one_of("register.column", name) for name in report.columns]
    rows = [head]
    for each in report.rows:
        rows.append([cell_text(cell, words, name) for name, cell in zip(report.columns, each, strict=True)])
    widths = [max(len(row[place]) for row in rows) for place in range(len(head))]
    for row in rows:
        yield "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()


CODED = ("roles", "status", "outcome", "next_point", "decision")
"""Columns that hold words of the program; a reader gets them in their own language."""


def cell_text(value: object, words: Words, column: str = "") -> str:
    """A cell as a reader sees it."""
    if column in CODED and isinstance(value, str) and value:
        return ", ".join(
            words.say_one_of("register.choice", part) if f"register.choice.{part}" in words else part
            for part in value.split(" ")
        )
    if value is None:
        return "–"
    if column.endswith("_at") and isinstance(value, str):
        return value[:16].replace("T", " ")  # seconds are for the log
    if isinstance(value, bool):
        return words.say("register.is_true") if value else words.say("register.is_false")
    if isinstance(value, float):
        return f"{value:.2f}"
    return str(value)


def job(function: Function) -> Function:
    """Gives a job its common options and hands it a `Desk` in their place."""

    @functools.wraps(function)
    def call(registry: str | None, by: int | None, language: str, content: Path, as_json: bool, **other: Any) -> Any:
        given: dict[str, Any] = {"registry": registry, "language": language, "content": content}
        context = click.get_current_context(silent=True)
        if context is not None and isinstance(context.obj, dict):  # what stood before the job's name
            typed = click.core.ParameterSource.COMMANDLINE
            given |= {name: value for name, value in context.obj.items()
                      if context.get_parameter_source(name) is not typed}  # fmt: skip
        place = given["registry"] or str(default_place(os.environ, Path.home(), sys.platform))
        desk = Desk(place, given["language"], given["content"], by, as_json)
        _ = desk.words  # what can't be said is not begun
        return function(desk, **other)

    wrapped: Any = json_option(content_option(language_option(call)))
    wrapped = click.option("--by", type=click.IntRange(min=1), envvar="TANKSCHOOL_BY", metavar="ID",
                           help="Who does this, by number; else the only coordinator.")(wrapped)  # fmt: skip
    return registry_option(wrapped)  # type: ignore[no-any-return]


def registry_option(function: Function) -> Function:
    """`--registry`: a file or a server's address."""
    return click.option(
        "--registry", envvar="TANKSCHOOL_REGISTRY", metavar="PLACE",
        help="File of the registry, or postgresql://user@server/name; else the one in your data folder.",
    )(function)  # fmt: skip


COMMON = ("registry", "by", "language", "content", "as_json")
"""Options that every job has; the menu asks for none of them."""


class Kind(click.ParamType[Any]):
    """A kind of answer. `wrong` names the sentence that the menu says about an answer that is none."""

    wrong = "text"


class NameKind(Kind):
    """A name that a certificate can carry."""

    name = "name"
    wrong = "name"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> str:  # noqa: D102
        name = unicodedata.normalize("NFC", " ".join(str(value).split()))
        if not name or len(name.encode("utf-8", "replace")) > LONGEST_NAME:
            self.fail(f"a name has 1 to {LONGEST_NAME} bytes, as a certificate has room for", param, ctx)
        if name.isdigit() or not is_clean(name):
            self.fail("a name has no signs that nobody sees, and is not only a number: type it anew", param, ctx)
        return name


class TextKind(Kind):
    """A sentence or two: not empty, not endless, nothing in it that nobody sees."""

    name = "text"
    wrong = "text"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> str:  # noqa: D102
        text = " ".join(str(value).split())
        if (
            not text
            or len(text) > LONGEST_TEXT
            or not all(sign.isprintable() or sign in "\u200c\u200d" for sign in text)
        ):
            self.fail(f"write 1 to {LONGEST_TEXT} plain signs", param, ctx)
        return text


class DayKind(Kind):
    """A day as 2031-05-04."""

    name = "day"
    wrong = "day"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> date:  # noqa: D102
        if isinstance(value, date):
            return value
        text = str(value).strip().translate(DIGITS)
        try:
            day = date.fromisoformat(text)
        except ValueError:
            day = None
        if day is not None and not EARLIEST <= day.year <= LATEST:
            self.fail(f"{day} can't be meant: look at the year", param, ctx)
        if day is None or day.isoformat() != text:
            self.fail(f"'{value}' is no day: write year-month-day, as 2031-05-04", param, ctx)
        return day


class IdKind(Kind):
    """The number of a person, cohort, sitting, decision, appeal or complaint.

    Args:
        of: which; the menu shows a list of them.
    """

    wrong = "number"

    def __init__(self, of: str) -> None:
        self.name = self.of = of

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> int:  # noqa: D102
        text = str(value).strip().translate(DIGITS)
        if not (text.isascii() and text.isdigit() and 0 < int(text[:10]) < 2**31 and len(text) < 11):
            self.fail(f"'{str(value)[:40]}' is no number of a {self.of}: a whole number from 1", param, ctx)
        return int(text)


class NumberKind(Kind):
    """The printed number of a certificate or tank, held against its own check letters."""

    wrong = "printed_number"

    def __init__(self, of: str) -> None:
        self.name = self.of = of

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> str:  # noqa: D102
        text = str(value).strip().upper().translate(DIGITS)
        if not is_number(text):
            self.fail(f"'{str(value)[:40]}' has a slip in it: compare it letter by letter with the paper", param, ctx)
        return text


DIGITS = {0x966 + digit: str(digit) for digit in range(10)}
"""Devanagari digits are taken for Latin ones."""

NAME, TEXT, DAY = NameKind(), TextKind(), DayKind()
PERSON, COHORT, SITTING = IdKind("person"), IdKind("cohort"), IdKind("sitting")
DECISION, APPEAL, COMPLAINT = IdKind("decision"), IdKind("appeal"), IdKind("complaint")
APPLICATION = IdKind("application")
CERTIFICATE, TANK = NumberKind("certificate"), NumberKind("tank")
FILE_IN = click.Path(exists=True, dir_okay=False, path_type=Path)
FILE_OUT = click.Path(dir_okay=False, path_type=Path)


def known_of(value: str, known: Sequence[str], what: str) -> str:
    """One of the ids that the course has.

    Raises:
        click.UsageError: it is none of them.
    """
    if value not in known:
        raise click.UsageError(f"There is no {what} '{value}'. There are: {', '.join(known)}.")
    return value


def as_text(value: object) -> str:
    """Data as JSON that a person can read."""
    return json.dumps(value, ensure_ascii=False, indent=2, sort_keys=True)
