"""`register` run bare: numbered choices and plain questions that lead to the same jobs as the commands for scripts.

Each job is one transaction, done only after its last answer: whoever stops in between has written nothing of it.
"""

from __future__ import annotations

import re
import shlex
import sys
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

import click

from generator.commands.register import command_of, register
from generator.commands.register_ask import Answers, Back, End, Question, Reader, Stop, questions_of
from generator.commands.register_common import Desk, cell_text
from generator.commands.tool import say_problems
from generator.problems import ExitCode, MachineError, ProblemsError, RefusedError
from generator.registry.listing import coordinators, people_list
from generator.registry.place import is_server

SECTIONS: Mapping[str, tuple[str, ...]] = {
    "people": (
        "people list", "people add", "people change", "people role", "people end-role", "people show", "people erase",
    ),
    "cohorts": ("cohorts list", "cohorts add", "cohorts join", "cohorts import"),
    "exams": (
        "template", "application list", "application file", "application close", "sittings list", "sittings archive",
        "marks import", "observations import", "observations recheck", "observations compare",
    ),
    "decisions": ("decisions list", "decisions show", "cut", "decide", "appeal list", "appeal file", "appeal close"),
    "certificates": (
        "certificates list", "certificates show", "issue", "reprint", "status suspend", "status reinstate",
        "status withdraw", "status renew", "status expire", "list",
    ),
    "tanks": (
        "tank list", "tank people", "tank add", "tank holder", "tank hold-point", "tank leak-test", "tank photo",
        "complaint list", "complaint file", "complaint leads", "complaint close", "complaint erase",
    ),
    "reports": ("report cohort", "report competency", "report passes", "report expiring", "report tanks"),
    "keeping": (
        "backup", "restore", "audit", "clock", "keys show", "keys new", "keys copy", "keys rotate", "keys stolen",
        "keys public",
    ),
}  # fmt: skip
"""What the menu offers; the words are `register.section.*` and `register.job.*`."""

ONLY_READS = re.compile(r".* (list|show|people|leads|compare)|report .*|audit")
"""Jobs that change nothing: they are done without asking once more."""


@dataclass
class Menu:
    """A person at work.

    Args:
        place: of the registry.
        language: that the menu speaks.
        root: folder of the course.
        reader: gives what is typed.
        actor: id of the person at work.
    """

    place: str
    language: str
    root: Path
    reader: Reader
    actor: int | None = None
    kept: dict[str, Answers] = field(default_factory=dict)

    @property
    def desk(self) -> Desk:
        """Where the work is done, at this moment."""
        return Desk(self.place, self.language, self.root, self.actor)

    def run(self) -> int:
        """Ask until someone stops."""
        words = self.desk.words
        try:
            click.echo(words.say("register.menu.hello", place=self.place))
            click.echo(words.say("register.menu.how"))
            self._begin()
            while True:
                self._section()
        except Stop:
            click.echo(words.say("register.menu.bye"))
            return ExitCode.GOOD
        except (End, EOFError):
            click.echo("")
            click.echo(words.say("register.menu.bye"))
            return ExitCode.GOOD if self.reader.between_jobs else ExitCode.USAGE
        except KeyboardInterrupt:
            click.echo("")
            click.echo(words.say("register.menu.interrupted"))
            return ExitCode.USAGE

    def _begin(self) -> None:
        """A registry, and who is at work."""
        words = self.desk.words
        while not is_server(self.place) and not Path(self.place).is_file():
            try:
                choice = self.reader.choose(
                    words.say("register.menu.no_registry", place=self.place),
                    [words.say("register.menu.start_one"), words.say("register.menu.restore_one")],
                )
            except Back:
                raise Stop from None
            self._job("people first" if choice == 0 else "restore")
        self._who()

    def _who(self) -> None:
        words = self.desk.words
        with self.desk.registry(new=is_server(self.place)) as registry:
            known = coordinators(registry)
            rows = {int(row[0]): f"{row[1]} ({cell_text(row[4], words, 'roles')})" if row[4] else str(row[1])
                    for row in people_list(registry).rows}  # fmt: skip
        if not known:
            self._job("people first")
            return
        if len(known) == 1:
            self.actor = known[0]
            click.echo(words.say("register.menu.you_are", name=rows[known[0]], person=known[0]))
            return
        try:
            self.actor = self.reader.number_of(
                words.say("register.menu.who"), {key: rows[key] for key in known}, also=rows
            )
        except Back:
            raise Stop from None

    def _section(self) -> None:
        words = self.desk.words
        self.reader.between_jobs = True
        names = list(SECTIONS)
        titles = [words.say_one_of("register.section", name) for name in names]
        try:
            choice = self.reader.choose(
                words.say("register.menu.what"), [*titles, words.say("register.menu.somebody_else")]
            )
        except Back:
            raise Stop from None
        if choice == len(names):
            self._who_else()
            return
        while True:
            jobs = SECTIONS[names[choice]]
            self.reader.between_jobs = True
            try:
                own = self.reader.choose(
                    titles[choice], [words.say_one_of("register.job", key_of(job)) for job in jobs]
                )
            except Back:
                return
            self._job(jobs[own])

    def _who_else(self) -> None:
        words = self.desk.words
        with self.desk.registry() as registry:
            rows = {int(row[0]): f"{row[1]} ({cell_text(row[4], words, 'roles')})" if row[4] else str(row[1])
                    for row in people_list(registry).rows}  # fmt: skip
        try:
            self.actor = self.reader.number_of(words.say("register.menu.who"), rows, also=rows)
        except Back:
            return

    def _job(self, job: str) -> None:
        """Ask for everything, show it, do it; what was answered is kept until it went well."""
        words = self.desk.words
        self.reader.between_jobs = False
        title = words.say_one_of("register.job", key_of(job))
        command = command_at(job)
        given: Answers = {}
        while True:
            click.echo("")
            click.echo(title)
            try:
                self._ask(job, command, given)
                if not ONLY_READS.fullmatch(job) and not self._agreed(job, command, given):
                    continue
            except Back:
                click.echo(words.say("register.menu.not_done"))
                return
            if self._do(job, command, given, real=True):
                return
            try:
                again = self.reader.choose(
                    words.say("register.menu.refused"),
                    [words.say("register.menu.change"), words.say("register.menu.leave")],
                )
            except Back:
                return
            if again == 1:
                return

    def _ask(self, job: str, command: click.Command, given: Answers) -> None:
        """All questions of a job, in turn; 'back' goes to the one before, and from the first one out."""
        questions = list(questions_of(self.desk, job, command))
        for question in questions:
            if question.has_nothing:
                click.echo(question.text)
                click.echo(self.desk.words.say("register.menu.none_yet"))
                raise Back
        place = 0
        while place < len(questions):
            try:
                self.reader.ask(questions[place], given)
                place += 1
            except Back:
                if place == 0:
                    raise
                place -= 1

    def _agreed(self, job: str, command: click.Command, given: Answers) -> bool:
        """Show what will be done, and ask; a job that can be tried is tried first. False: change something.

        Raises:
            Back: leave it.
        """
        words = self.desk.words
        if any(param.name == "dry_run" for param in command.params):
            if not self._do(job, command, given, real=False):
                return False
        else:
            for question in questions_of(self.desk, job, command):
                if question.name in given:
                    click.echo(f"  {question.short}: {question.shown(given[question.name])}")
        choice = self.reader.choose(
            words.say("register.menu.do_it"),
            [words.say("register.menu.go"), words.say("register.menu.change"), words.say("register.menu.leave")],
        )
        if choice == 2:
            raise Back
        return choice == 0

    def _do(self, job: str, command: click.Command, given: Answers, *, real: bool) -> bool:
        """Run a job as if it had been typed; False where it was refused. Nothing is half done."""
        words = self.desk.words
        line = list(arguments_of(command, given))
        own = ["--registry", self.place, "--language", self.language, "--content", str(self.root)]
        if self.actor is not None:
            own += ["--by", str(self.actor)]
        tried = [] if real or not any(param.name == "dry_run" for param in command.params) else ["--dry-run"]
        try:
            code = register.main([*job.split(" "), *own, *tried, *line], prog_name="register", standalone_mode=False)
        except click.exceptions.Abort:
            raise End from None
        except click.ClickException as error:
            click.echo(words.say("register.menu.failed", why=error.format_message()))
            return False
        except ProblemsError as error:
            say_problems(error.problems)
            return False
        except (RefusedError, MachineError) as error:
            click.echo(words.say("register.menu.failed", why=error))
            return False
        except OSError as error:
            click.echo(words.say("register.menu.failed", why=error.strerror or error))
            return False
        if real:
            shown = shlex.join(["register", *job.split(" "), *line])
            click.echo(words.say("register.menu.same_as", line=shown))
        return code in (None, ExitCode.GOOD) or bool(ONLY_READS.fullmatch(job))


def menu(place: str, language: str, root: Path, read: Callable[[str], str] | None = None) -> int:
    """Ask what to do, and do it, until someone stops.

    Args:
        place: of the registry.
        language: that the menu speaks.
        root: folder of the course.
        read: gives a line that was typed, after a prompt; else what is typed at the terminal, or comes from a pipe.
    """
    desk = Desk(place, language, root)
    reader = Reader(desk.words, read or typed)
    return Menu(place, language, root, reader).run()


def typed(prompt: str) -> str:
    """A line from the terminal or a pipe.

    Raises:
        EOFError: there is no more.
    """
    if sys.stdin.isatty():
        return input(prompt)
    click.echo(prompt, nl=False)
    line = sys.stdin.readline()
    if not line:
        raise EOFError
    click.echo("")
    return line.rstrip("\r\n")


def command_at(job: str) -> click.Command:
    """The command of a job: `people add`."""
    first, *rest = job.split(" ")
    found = command_of(first)
    for name in rest:
        assert isinstance(found, click.Group)  # noqa: S101 (a fault of this program, found by its first test)
        found = found.commands[name]
    return found


def key_of(job: str) -> str:
    """How the words name a job: `people_add`."""
    return job.replace(" ", "_").replace("-", "_")


def arguments_of(command: click.Command, given: Answers) -> Iterator[str]:
    """The answers as they would be typed behind the job's name."""
    last: list[str] = []
    for param in command.params:
        value = given.get(str(param.name))
        if value is None or param.name == "dry_run":
            continue
        if isinstance(param, click.Argument):
            last.append(str(value))
        elif isinstance(param, click.Option) and param.is_flag:
            if value:
                yield param.opts[0]
            elif param.secondary_opts:
                yield param.secondary_opts[0]
        else:
            for each in _several(value):
                yield f"{param.opts[0]}={each}"
    if last:
        yield from ("--", *last)


def _several(value: object) -> Sequence[object]:
    return value if isinstance(value, tuple) else (value,)


__all__ = ["SECTIONS", "Menu", "Question", "arguments_of", "command_at", "key_of", "menu"]
