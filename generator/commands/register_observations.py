"""`register observations`: what observers saw, the one recheck of a critical step, and how far observers agree."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import click

from generator.commands.register_common import COHORT, DAY, FILE_IN, PERSON, Desk, Function, job
from generator.commands.register_workbook import OBSERVATIONS, table_from
from generator.problems import ExitCode
from generator.registry import compare_observers, import_observations, import_rechecks


@click.group("observations")
def observations_jobs() -> None:
    """Enter what an observer saw."""


def table_options(function: Function) -> Function:
    """What every table of observations comes with."""
    function = click.option("--dry-run", is_flag=True, help="Only say what would happen.")(function)
    function = click.option("--attempt", type=click.IntRange(1, 20), default=1, show_default=True,
                            help="1, and one more each time the practical is done again.")(function)  # fmt: skip
    function = click.option("--observed-on", type=DAY, required=True, help="Day of the practical, as 2031-05-04.")(
        function
    )
    function = click.option("--observer", type=PERSON, required=True, help="Number of the person who watched.")(
        function
    )
    return click.argument("cohort", type=COHORT)(click.argument("file", type=FILE_IN)(function))


@observations_jobs.command("import")
@table_options
@job
def observations_import(
    desk: Desk, cohort: int, file: Path, observer: int, observed_on: date, attempt: int, dry_run: bool
) -> int:
    """Enter what was seen of a COHORT (CSV: learner, practical, step, seen; or the sheet 'observations').

    Example: python3 tankschool.py register observations import 1 seen.csv --observer 4 --observed-on 2031-06-02
    """
    with table_from(file, OBSERVATIONS) as (name, data), desk.registry() as registry:
        found = import_observations(
            registry, cohort, name, data, practicals=desk.course.practicals, observer=observer,
            observed_on=observed_on, now=desk.now, attempt=attempt, dry_run=dry_run,
        )  # fmt: skip
    return desk.imported(found)


@observations_jobs.command("recheck")
@table_options
@job
def recheck(desk: Desk, cohort: int, file: Path, observer: int, observed_on: date, attempt: int, dry_run: bool) -> int:
    """Enter the one immediate recheck of critical steps that were not done, with the same columns; it stays in the log.

    Where the scheme asks for two observers, each of them enters what they saw, under their own number: a step counts
    only if both saw it done.

    Example: python3 tankschool.py register observations recheck 1 again.csv --observer 4 --observed-on 2031-06-02
    """
    with table_from(file, OBSERVATIONS) as (name, data), desk.registry() as registry:
        found = import_rechecks(
            registry, cohort, name, data, practicals=desk.course.practicals, observer=observer,
            observed_on=observed_on, now=desk.now, attempt=attempt, dry_run=dry_run,
        )  # fmt: skip
    return desk.imported(found)


@observations_jobs.command("compare")
@click.argument("cohort", type=COHORT)
@job
def compare(desk: Desk, cohort: int) -> int:
    """Show how far two observers of a COHORT agree (percent and AC1), and where they differ.

    Example: python3 tankschool.py register observations compare 1
    """
    with desk.registry() as registry:
        found = compare_observers(registry, cohort)
    words, alike = desk.words, found.alike
    if desk.as_json:
        told = None if alike is None else {
            "pairs": alike.pairs, "percent": alike.percent, "ac1": alike.ac1, "error": alike.error,
        }  # fmt: skip
        return desk.done("", observers=told, differ=[list(step) for step in found.unlike])
    if alike is None:
        click.echo(words.say("register.one_observer"))
        return ExitCode.GOOD
    click.echo(
        words.say(
            "paper.observers", percent=f"{100 * alike.percent:.0f}", chance=f"{alike.ac1:.2f}",
            error=f"{alike.error:.2f}", count=alike.pairs,
        )
    )  # fmt: skip
    for learner, practical, step in found.unlike:
        click.echo(f"  {words.say('paper.observers_differ', learner=learner, step=f'{practical}/{step}')}")
    return ExitCode.GOOD
