"""`register appeal`: against a decision, heard by another than whoever made it."""

from __future__ import annotations

import click

from generator.commands.register_common import APPEAL, DECISION, TEXT, Desk, job
from generator.registry import decide_appeal, file_appeal
from generator.registry.listing import appeal_list


@click.group("appeal")
def appeal_jobs() -> None:
    """Enter and close appeals against decisions."""


@appeal_jobs.command("file")
@click.argument("decision", type=DECISION)
@click.option("--grounds", type=TEXT, required=True, help="The candidate's own words.")
@job
def filed(desk: Desk, decision: int, grounds: str) -> int:
    """Enter a candidate's appeal against a DECISION.

    Example: python3 tankschool.py register appeal file 3 --grounds "Question 4 was not readable."
    """
    with desk.registry() as registry:
        key = file_appeal(registry, decision, grounds, by=desk.by(registry), now=desk.now)
    return desk.done(desk.words.say("register.done.appeal", appeal=key, decision=decision), appeal=key)


@appeal_jobs.command("close")
@click.argument("appeal", type=APPEAL)
@click.argument("outcome", type=click.Choice(("stands", "set_aside")))
@click.option("--reasons", type=TEXT, required=True, help="Told to the candidate.")
@click.option("--exception", type=TEXT, help="Why someone decides who trained them.")
@job
def closed(desk: Desk, appeal: int, outcome: str, reasons: str, exception: str | None) -> int:
    """Close an APPEAL: the decision stands, or is set aside. Whoever made the decision can't do it.

    Example: python3 tankschool.py register appeal close 1 stands --reasons "The question was readable." --by 2
    """
    with desk.registry() as registry:
        by = desk.by(registry)
        decide_appeal(registry, appeal, outcome, reasons, by=by, now=desk.now, exception=exception)
    words = desk.words
    if outcome == "stands":
        said = words.say("register.done.appeal_closed", appeal=appeal)
    else:
        said = words.say("register.done.appeal_set_aside", appeal=appeal)
    return desk.done(said, appeal=appeal, outcome=outcome)


@appeal_jobs.command("list")
@job
def appeals(desk: Desk) -> int:
    """Show every appeal with its number.

    Example: python3 tankschool.py register appeal list
    """
    with desk.registry() as registry:
        return desk.table(appeal_list(registry))
