"""`register sittings`, `marks`, `template`: from printed papers into the registry."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from pathlib import Path

import click

from generator.assessment import Seen
from generator.assessment.paper_draw import scheme_of
from generator.assessment.paper_results import Result, is_result, read_copied
from generator.commands.answer_files import same_twice, typed_files
from generator.commands.course import file_bytes, readable
from generator.commands.register_common import (
    COHORT,
    DAY,
    FILE_IN,
    FILE_OUT,
    SITTING,
    TEXT,
    Desk,
    job,
    known_of,
)
from generator.commands.register_workbook import (
    COLUMNS,
    MARKS,
    OBSERVATIONS,
    PEOPLE,
    WORKBOOK,
    Template,
    table_from,
    template_csv,
    workbook,
)
from generator.credentials import save
from generator.exercises import Answers, from_json
from generator.problems import RefusedError
from generator.registry import archive_set, guarded, import_answers, kept_record, to_csv
from generator.registry.listing import candidates, sitting_list

_HEAD = 4096
"""Bytes of a file that tell what it is."""


@click.group("sittings")
def sittings_jobs() -> None:
    """Put the papers of an exam into the archive."""


@sittings_jobs.command("archive")
@click.argument("cohort", type=COHORT)
@click.argument("record", type=FILE_IN)
@click.option("--held-on", type=DAY, required=True, help="Day of the exam, as 2031-05-04.")
@click.option("--scheme", help="Scheme that the papers are for; none: practice.")
@click.option("--exception", type=TEXT, help="Why those may sit who have to wait or used up their tries.")
@job
def archive(desk: Desk, cohort: int, record: Path, held_on: date, scheme: str | None, exception: str | None) -> int:
    """Archive a printed set, from its RECORD, for the candidates of a COHORT; marks are made from the archive.

    Example: python3 tankschool.py register sittings archive 1 record.json --held-on 2031-06-01 --scheme frame-hand
    """
    version = retest = None
    if scheme is not None:
        rule = desk.course.schemes[known_of(scheme, list(desk.course.schemes), "scheme")]
        version, retest = rule.version, rule.retest
    made = from_json(str(record), file_bytes(record))
    if scheme is not None and scheme_of(made) != (scheme, version):
        raise RefusedError(
            f"this set was not drawn as an exam of version {version} of '{scheme}': it may be archived as practice, "
            "without --scheme; the command 'paper' draws exams"
        )
    with desk.registry() as registry:
        key = archive_set(
            registry, cohort, made, held_on=held_on, by=desk.by(registry), now=desk.now, scheme=scheme,
            version=version, retest=retest, exception=exception,
        )  # fmt: skip
    return desk.done(desk.words.say("register.done.archived", sitting=key, papers=len(made.learners)), sitting=key)


@sittings_jobs.command("list")
@job
def listed(desk: Desk) -> int:
    """Show every sitting with its number.

    Example: python3 tankschool.py register sittings list
    """
    with desk.registry() as registry:
        return desk.table(sitting_list(registry))


@click.group("marks")
def marks_jobs() -> None:
    """Enter what was answered."""


@marks_jobs.command("import")
@click.argument("sitting", type=SITTING)
@click.argument("file", type=click.Path(exists=True, path_type=Path))
@click.option("--second", type=FILE_IN, help="The same answers, typed by another; every difference is listed.")
@click.option("--dry-run", is_flag=True, help="Only say what would happen.")
@job
def marks_import(desk: Desk, sitting: int, file: Path, second: Path | None, dry_run: bool) -> int:
    """Mark the answers to the papers of a SITTING: a table, the sheet 'marks', result files of the screen, a folder.

    A table (CSV) has learner, question, answer; check where it was copied from a screen. With --second nothing is
    marked before both agree.

    Example: python3 tankschool.py register marks import 1 answers.csv --dry-run
    """
    results: Sequence[Result] = ()
    if second is not None and second.resolve() == file.resolve():
        raise click.UsageError("--second is what another person typed, and this is the same file once more.")
    with desk.registry() as registry:
        by = desk.by(registry)
        if file.is_dir() or is_result(_first_bytes(file)):
            typed, results = typed_files([file], kept_record(registry, sitting))
            if second is not None:
                raise click.UsageError("--second belongs to a typed table: nobody types a result file.")
            found = import_answers(registry, sitting, str(file), _as_table(typed), by=by, now=desk.now, dry_run=dry_run)
        elif second is None and _is_plain_table(file):
            found = import_answers(registry, sitting, str(file), file, by=by, now=desk.now, dry_run=dry_run)
        else:
            with table_from(file, MARKS) as (name, data):
                data = _checked(desk, sitting, name, data, second)
                found = import_answers(registry, sitting, name, data, by=by, now=desk.now, dry_run=dry_run)
    for one in () if desk.as_json else results:
        for more in one.more_time:
            minutes = f"{more.minutes:g}"
            click.echo(desk.words.say("paper.more_time", learner=one.name, minutes=minutes, who=more.who))
    return desk.imported(found)


def _as_table(typed: Answers) -> bytes:
    """Answers as the table that is marked."""
    return to_csv(("learner", "question", "answer"), [(number, label, text) for (number, label), text in typed.items()])


def _first_bytes(file: Path) -> bytes:
    """Enough of a file to tell what it is: a table of a large exam is not read twice.

    Raises:
        ProblemsError: it can't be read.
    """
    with readable(file), file.open("rb") as stream:
        return stream.read(_HEAD)


def _is_plain_table(file: Path) -> bool:
    """Whether it is a table without check letters, and a file that can be read again."""
    head = _first_bytes(file)
    return file.is_file() and not head.startswith(WORKBOOK) and not _is_copied(head)


def _is_copied(data: bytes) -> bool:
    """Whether a table was copied from a screen, with check letters."""
    return b"check" in data[:400].split(b"\n")[0].lower()


def _checked(desk: Desk, sitting: int, name: str, data: bytes, second: Path | None) -> bytes:
    """The table, once its check letters and a second typist agree with it."""
    copied = _is_copied(data)
    if not copied and second is None:
        return data
    with desk.registry() as registry:
        record = kept_record(registry, sitting)
    typed = read_copied(name, data, record)
    if second is not None:
        with table_from(second, MARKS) as (other, again):
            same_twice(record, typed, other, again)
    return _as_table(typed) if copied else data


@click.command("template")
@click.argument("target", type=FILE_OUT)
@click.option("--table", type=click.Choice(tuple(COLUMNS)), help="Which table, for a CSV file.")
@click.option("--cohort", type=COHORT, help="Fill in this cohort's candidates.")
@click.option("--practical", help="With --cohort: fill in the steps of this practical.")
@job
def template_jobs(desk: Desk, target: Path, table: str | None, cohort: int | None, practical: str | None) -> int:
    """Write an empty table to fill in: TARGET ends in .xlsx (all three tables) or .csv (one of them).

    Example: python3 tankschool.py register template tamarisk.xlsx --cohort 1 --practical close-a-ring
    """
    kind = target.suffix.casefold()
    if kind not in (".xlsx", ".csv") or (kind == ".csv") != (table is not None):
        raise click.UsageError("Name a file that ends in .xlsx, or one that ends in .csv with --table.")
    if practical is not None:
        known_of(practical, list(desk.course.practicals), "practical")
    rows = _rows(desk, cohort, practical)
    if table is not None:
        data = template_csv(table, rows.get(table, ()))
    else:
        notes = [
            desk.words.say("register.template.what"), desk.words.say("register.template.people"),
            desk.words.say("register.template.marks"), desk.words.say("register.template.observations"),
            desk.words.say("register.template.seen"), desk.words.say("register.template.steps"),
        ]  # fmt: skip
        for each in desk.course.practicals.values():
            notes += [f"{each.id} / {step.id}: {step.text[desk.language]}" for step in each.steps]
        seen = [str(word) for word in Seen]
        title = desk.words.say("register.template.title")
        data = workbook(Template(notes, title, list(desk.course.words), rows, seen))
    save(target, data)
    return desk.done(desk.words.say("register.done.wrote", file=target), file=str(target))


def _rows(desk: Desk, cohort: int | None, practical: str | None) -> dict[str, list[tuple[str, ...]]]:
    """What is known already: the candidates' names, and a line for each step to be watched."""
    if cohort is None:
        return {}
    with desk.registry() as registry:
        names = list(candidates(registry, cohort).values())
    found: dict[str, list[tuple[str, ...]]] = {PEOPLE: [(name, "") for name in names]}
    if practical is not None:
        found[OBSERVATIONS] = [
            (name if guarded(name) == name else str(number), practical, step.id, "")
            for number, name in enumerate(names, start=1)
            for step in desk.course.practicals[practical].steps
        ]
    return found
