"""`register application`: who comes to the exam by experience, with what evidence, and who accepted it."""

from __future__ import annotations

from collections.abc import Sequence

import click

from generator.commands.register_common import APPLICATION, COHORT, NAME, PERSON, TEXT, Desk, job, known_of
from generator.registry import OUTCOMES, close_application, file_application
from generator.registry.listing import application_list


@click.group("application")
def application_jobs() -> None:
    """Enter and close applications by the experience route of a scheme."""


@application_jobs.command("file")
@click.argument("cohort", type=COHORT)
@click.argument("person", type=PERSON)
@click.argument("scheme")
@click.option("--tanks", type=click.IntRange(1, 1000), required=True, help="On how many tanks this work was done.")
@click.option("--witness", "witnesses", type=NAME, multiple=True, required=True,
              help="Who saw the work and says so in writing; once for each.")  # fmt: skip
@click.option("--evidence", type=TEXT, required=True, help="Where and when, and which papers were shown.")
@job
def filed(
    desk: Desk, cohort: int, person: int, scheme: str, tanks: int, witnesses: Sequence[str], evidence: str
) -> int:
    """Enter the application of a PERSON of a COHORT who learnt the work of a SCHEME elsewhere.

    Example: python3 tankschool.py register application file 1 7 frame-hand --tanks 2 --witness Ravi --witness Bina
    --evidence "Two letters, seen on 4 May"
    """
    found = desk.course.schemes[known_of(scheme, list(desk.course.schemes), "scheme")]
    with desk.registry() as registry:
        key = file_application(
            registry, cohort, person, found, tanks=tanks, witnesses=witnesses, evidence=evidence,
            by=desk.by(registry), now=desk.now,
        )  # fmt: skip
    return desk.done(desk.words.say("register.done.application", application=key, person=person), application=key)


@application_jobs.command("close")
@click.argument("application", type=APPLICATION)
@click.argument("outcome", type=click.Choice(OUTCOMES))
@click.option("--reasons", type=TEXT, required=True, help="What was looked at; told to the candidate.")
@click.option("--exception", type=TEXT, help="Why someone decides who trained them; stays in the register.")
@job
def closed(desk: Desk, application: int, outcome: str, reasons: str, exception: str | None) -> int:
    """Accept or refuse an APPLICATION. A witness, the person and whoever trained them can't do it.

    Example: python3 tankschool.py register application close 1 accepted --reasons "Both letters name the tanks."
    """
    with desk.registry() as registry:
        by = desk.by(registry)
        close_application(registry, application, outcome, reasons, by=by, now=desk.now, exception=exception)
    said = desk.words.say_one_of("register.choice", outcome)
    text = desk.words.say("register.done.application_closed", application=application, outcome=said)
    return desk.done(text, application=application, outcome=outcome)


@application_jobs.command("list")
@job
def listed(desk: Desk) -> int:
    """Show every application with its number; 'people show' tells the evidence.

    Example: python3 tankschool.py register application list
    """
    with desk.registry() as registry:
        return desk.table(application_list(registry))
