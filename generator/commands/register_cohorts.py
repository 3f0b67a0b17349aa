"""`register cohorts`: who is taught together, by whom."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import click

from generator.commands.register_common import COHORT, DAY, FILE_IN, PERSON, TEXT, Desk, job
from generator.commands.register_workbook import PEOPLE, table_from
from generator.registry import add_cohort, import_class_list, join_cohort
from generator.registry.listing import cohort_list
from generator.registry.tables import MEMBERS


@click.group("cohorts")
def cohorts_jobs() -> None:
    """Make cohorts and fill them."""


@cohorts_jobs.command("add")
@click.argument("cohort_name", type=TEXT)
@click.option("--starts-on", type=DAY, required=True, help="First day, as 2031-05-04.")
@job
def add(desk: Desk, cohort_name: str, starts_on: date) -> int:
    """Enter a cohort.

    Example: python3 tankschool.py register cohorts add "Upper Terrace, spring" --starts-on 2031-05-04
    """
    with desk.registry() as registry:
        key = add_cohort(registry, cohort_name, starts_on=starts_on, by=desk.by(registry), now=desk.now)
    return desk.done(desk.words.say("register.done.cohort", cohort=key, name=cohort_name), cohort=key)


@cohorts_jobs.command("join")
@click.argument("cohort", type=COHORT)
@click.argument("person", type=PERSON)
@click.argument("member", type=click.Choice(MEMBERS))
@job
def join(desk: Desk, cohort: int, person: int, member: str) -> int:
    """Put a PERSON into a COHORT as candidate, trainer or observer.

    Example: python3 tankschool.py register cohorts join 1 3 trainer
    """
    with desk.registry() as registry:
        join_cohort(registry, cohort, person, member, by=desk.by(registry), now=desk.now)
    said = desk.words.say_one_of("register.choice", member)
    text = desk.words.say("register.done.joined", person=person, cohort=cohort, role=said)
    return desk.done(text, cohort=cohort, person=person, role=member)


@cohorts_jobs.command("import")
@click.argument("cohort", type=COHORT)
@click.argument("file", type=FILE_IN)
@click.option("--dry-run", is_flag=True, help="Only say what would happen.")
@job
def imported(desk: Desk, cohort: int, file: Path, dry_run: bool) -> int:
    """Enter everyone on a class list (CSV: name, language; or the sheet 'people' of an XLSX file) as candidates.

    Example: python3 tankschool.py register cohorts import 1 class.csv --dry-run
    """
    with table_from(file, PEOPLE) as (name, data), desk.registry() as registry:
        found = import_class_list(
            registry, cohort, name, data, languages=list(desk.course.words), by=desk.by(registry), now=desk.now,
            dry_run=dry_run,
        )  # fmt: skip
    return desk.imported(found)


@cohorts_jobs.command("list")
@job
def listed(desk: Desk) -> int:
    """Show every cohort with its number.

    Example: python3 tankschool.py register cohorts list
    """
    with desk.registry() as registry:
        return desk.table(cohort_list(registry))
