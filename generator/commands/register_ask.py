"""The menu's questions: what each job needs to know, asked one by one, every answer checked at once."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

import click

from generator.commands.register_common import COMMON, DIGITS, NAME, Desk, IdKind, Kind, NumberKind, cell_text
from generator.problems import MachineError, RefusedError
from generator.registry import Registry, Report, tank_report
from generator.registry.listing import (
    appeal_list,
    application_list,
    certificate_list,
    cohort_list,
    complaint_list,
    decision_list,
    people_list,
    sitting_list,
)
from generator.words import Words

Answers = dict[str, Any]
HIDDEN = (*COMMON, "keys", "public", "folder", "dry_run", "help", "unsigned", "unchecked")
"""What the menu never asks: where things lie is the same every time, and what is risky belongs on a command line."""
MOST_SHOWN = 40
LONGEST_ANSWER = 20_000

LISTS: Mapping[str, Callable[[Registry], Report]] = {
    "person": people_list, "cohort": cohort_list, "sitting": sitting_list, "decision": decision_list,
    "application": application_list, "appeal": appeal_list, "complaint": complaint_list,
    "certificate": certificate_list, "tank": tank_report,
}  # fmt: skip


class Back(Exception):  # noqa: N818 (not an error: what someone typed)
    """Someone wants to go back one step."""


class Stop(Exception):  # noqa: N818 (not an error: what someone typed)
    """Someone wants to stop."""


class End(Exception):  # noqa: N818 (not an error: the input is over)
    """There is no more input."""


@dataclass(frozen=True)
class Question:
    """One thing that a job needs to know.

    Args:
        name: of the parameter.
        text: the question, with an example.
        param: what checks the answer.
        needed: whether it has to be answered.
        several: whether more than one answer is taken, with blanks between.
        options: what there is to choose from: what is typed, and how it is shown.
        numbered: whether a choice is typed as its place in the list; else as itself.
        yes_no: whether it is answered by yes or no.
        stays: whether without an answer all stays as it is, where something that is kept is corrected.
    """

    name: str
    text: str
    param: click.Parameter
    needed: bool
    several: bool = False
    options: Mapping[str, str] = field(default_factory=dict)
    numbered: bool = False
    yes_no: bool = False
    stays: bool = False

    @property
    def has_nothing(self) -> bool:
        """Whether it asks for one of the registry's things, and there is none yet."""
        return self.needed and isinstance(self.param.type, IdKind | NumberKind) and not self.options

    @property
    def short(self) -> str:
        """The question without its example."""
        return self.text.split(" (")[0].split("?")[0].rstrip(":।")

    def shown(self, value: object) -> str:
        """An answer as a reader sees it."""
        each = value if isinstance(value, tuple) else (value,)
        return ", ".join(self.options.get(str(one), str(one)) for one in each)


def questions_of(desk: Desk, job: str, command: click.Command) -> Iterator[Question]:
    """What a job needs to know: first what has to be known, then what may be."""
    params = [param for param in command.params if param.name not in HIDDEN]
    for param in sorted(params, key=lambda each: not each.required):
        yield _question(desk, job, param)


def _question(desk: Desk, job: str, param: click.Parameter) -> Question:
    words, name = desk.words, str(param.name)
    own = f"{job.replace(' ', '_').replace('-', '_')}_{name}"
    text = words.say_one_of("register.ask", own if f"register.ask.{own}" in words else name)
    options: Mapping[str, str] = {}
    numbered = True
    kind = param.type
    if isinstance(kind, click.Choice):
        options = {str(value): words.say_one_of("register.choice", str(value)) for value in kind.choices}
    elif isinstance(kind, IdKind | NumberKind):
        numbered = isinstance(kind, NumberKind)
        options = _listed(desk, kind.of)
    elif name == "scheme":
        options = {key: f"{scheme.title[desk.language]} ({key})" for key, scheme in desk.course.schemes.items()}
    elif name == "practical":
        options = {key: each.title[desk.language] for key, each in desk.course.practicals.items()}
    elif name in ("reads", "print_language"):
        options = {code: words.say_one_of("language", code) for code in desk.course.words}
    flag = isinstance(param, click.Option) and param.is_flag
    several = isinstance(param, click.Option) and param.multiple
    return Question(name, text, param, param.required, several, options, numbered, bool(flag), job == "people change")


def _listed(desk: Desk, of: str) -> dict[str, str]:
    """What there is of a kind in the registry: its number, and what it is."""
    try:
        with desk.registry() as registry:
            report = LISTS[of](registry)
    except (RefusedError, MachineError):
        return {}
    columns = report.columns[1:7]
    return {
        str(row[0]): "  ".join(
            cell_text(cell, desk.words, name) for name, cell in zip(columns, row[1:7], strict=True)
            if cell not in (None, "")
        )
        for row in report.rows
    }  # fmt: skip


class Reader:
    """Asks, and takes only answers that can be right.

    Args:
        words: of the language that it speaks.
        read: gives a line that was typed, after a prompt.
    """

    def __init__(self, words: Words, read: Callable[[str], str]) -> None:
        self.words = words
        self._read = read
        self.between_jobs = True
        self._back = {"back", "0", words.say("register.menu.back_word").casefold()}
        self._stop = {"stop", words.say("register.menu.stop_word").casefold()}

    def line(self) -> str:
        """What is typed.

        Raises:
            Back, Stop: the words for that.
            End: there is no more.
        """
        try:
            text = self._read("> ").strip()
        except EOFError:
            raise End from None
        word = text.casefold().translate(DIGITS)
        if word in self._stop:
            raise Stop
        if word in self._back:
            raise Back
        return text[:LONGEST_ANSWER]

    def choose(self, text: str, choices: Sequence[str]) -> int:
        """One of some choices; returns its place."""
        while True:
            click.echo("")
            click.echo(text)
            for number, choice in enumerate(choices, start=1):
                click.echo(f"  {number}  {choice}")
            typed = self.line().translate(DIGITS)
            if typed.isascii() and typed.isdigit() and 0 < int(typed[:6]) <= len(choices) and len(typed) < 6:
                return int(typed) - 1
            click.echo(self.words.say("register.wrong.choice", count=len(choices)))

    def number_of(self, text: str, shown: Mapping[int, str], also: Mapping[int, str]) -> int:
        """One of some numbers; not all that may be typed have to be shown."""
        while True:
            click.echo("")
            click.echo(text)
            for number, label in shown.items():
                click.echo(f"  {number}  {label}")
            typed = self.line().translate(DIGITS)
            if typed.isascii() and typed.isdigit() and len(typed) < 10 and int(typed) in also:
                return int(typed)
            click.echo(self.words.say("register.wrong.unknown"))

    def ask(self, question: Question, given: Answers) -> None:
        """Ask one question, and put a good answer into `given`; an empty line keeps what stands there."""
        while True:
            click.echo("")
            click.echo(question.text)
            self._show(question)
            if question.name in given:
                click.echo(self.words.say("register.menu.keep", value=question.shown(given[question.name])))
            elif question.stays and not question.needed:
                click.echo(self.words.say("register.menu.may_stay"))
            elif not question.needed:
                click.echo(self.words.say("register.menu.may_be_empty"))
            typed = self.line()
            if not typed:
                if question.name in given or not question.needed:
                    return
                click.echo(self.words.say("register.wrong.empty"))
                continue
            try:
                given[question.name] = self._taken(question, typed)
            except click.BadParameter:
                click.echo(self.words.say_one_of("register.wrong", _wrong(question)))
                continue
            return

    def _show(self, question: Question) -> None:
        if question.yes_no:
            click.echo(f"  1  {self.words.say('register.is_true')}")
            click.echo(f"  2  {self.words.say('register.is_false')}")
        for place, (value, label) in enumerate(question.options.items(), start=1):
            if place > MOST_SHOWN:
                click.echo(self.words.say("register.menu.more", count=len(question.options) - MOST_SHOWN))
                break
            click.echo(
                f"  {place if question.numbered else value}  {label}"
                + (f"  {value}" if isinstance(question.param.type, NumberKind) else "")
            )

    def _taken(self, question: Question, typed: str) -> Any:
        """An answer, checked.

        Raises:
            click.BadParameter: it can't be right.
        """
        if question.yes_no:
            word = typed.casefold().translate(DIGITS)
            yes = {"1", "y", "yes", self.words.say("register.is_true").casefold()}
            no = {"2", "n", "no", self.words.say("register.is_false").casefold()}
            if word not in yes | no:
                raise click.BadParameter(typed)
            return word in yes
        if question.several:
            parts = typed.split(",") if question.param.type is NAME else typed.replace(",", " ").split()
            return tuple(self._one(question, part) for part in parts)
        return self._one(question, typed)

    def _one(self, question: Question, typed: str) -> Any:
        values = list(question.options)
        plain = typed.translate(DIGITS)
        if question.options and question.numbered and plain.isascii() and plain.isdigit() and len(plain) < 6:
            if not 0 < int(plain) <= len(values):
                raise click.BadParameter(typed)
            typed = values[int(plain) - 1]
        kind = question.param.type
        numeric = isinstance(kind, click.types.IntParamType | click.types.FloatParamType)
        value = kind.convert(plain if numeric else typed, question.param, None)
        if question.options and str(value) not in question.options:
            raise click.BadParameter(typed)
        return value


def _wrong(question: Question) -> str:
    """Which sentence tells what was wrong with an answer."""
    kind = question.param.type
    if question.yes_no:
        return "yes_no"
    if question.options:
        return "unknown"
    if isinstance(kind, Kind):
        return kind.wrong
    if isinstance(kind, click.Path):
        return "file"
    return "amount"
