"""`register complaint`: from a tank to the holders who built and checked it."""

from __future__ import annotations

import click

from generator.commands.register_common import CERTIFICATE, COMPLAINT, TANK, TEXT, Desk, job
from generator.problems import ExitCode
from generator.registry import close_complaint, erase_complaint_text, file_complaint, holders
from generator.registry.listing import complaint_list


@click.group("complaint")
def complaint_jobs() -> None:
    """Enter complaints and follow them to whoever worked on the tank."""


@complaint_jobs.command("file")
@click.option("--tank", type=TANK, help="Number painted on the tank.")
@click.option("--certificate", type=CERTIFICATE, help="Number of the holder's certificate.")
@click.option("--about", type=TEXT, required=True, help="What is wrong.")
@job
def filed(desk: Desk, tank: str | None, certificate: str | None, about: str) -> int:
    """Enter a complaint about a tank or a certificate's holder; it shows at once who worked on the tank.

    Example: python3 tankschool.py register complaint file --tank WKLP-T000003-CC --about "wet at the foot"
    """
    with desk.registry() as registry:
        by = desk.by(registry)
        key = file_complaint(registry, about, tank=tank, certificate=certificate, by=by, now=desk.now)
        found = holders(registry, complaint=key)
    if not desk.as_json:
        click.echo(desk.words.say("register.done.complaint", complaint=key))
    desk.holders(found, complaint=key)
    if not desk.as_json:
        if tank is not None:
            click.echo(desk.words.say("register.complaint_caution"))
        if any(holder.status == "active" for holder in found):
            click.echo(desk.words.say("register.complaint_next"))
    return ExitCode.GOOD


@complaint_jobs.command("leads")
@click.argument("complaint", type=COMPLAINT)
@job
def leads(desk: Desk, complaint: int) -> int:
    """Show to whom a COMPLAINT leads: who built, who checked, and how their certificates stand.

    Example: python3 tankschool.py register complaint leads 2
    """
    with desk.registry() as registry:
        return desk.holders(holders(registry, complaint=complaint), complaint=complaint)


@complaint_jobs.command("close")
@click.argument("complaint", type=COMPLAINT)
@click.option("--finding", type=TEXT, required=True, help="What was found.")
@job
def closed(desk: Desk, complaint: int, finding: str) -> int:
    """Close a COMPLAINT with what was found; nobody closes one about their own work.

    Example: python3 tankschool.py register complaint close 2 --finding "A crack at the foot, mended and tested."
    """
    with desk.registry() as registry:
        close_complaint(registry, complaint, finding, by=desk.by(registry), now=desk.now)
    return desk.done(desk.words.say("register.done.complaint_closed", complaint=complaint), complaint=complaint)


@complaint_jobs.command("erase")
@click.argument("complaint", type=COMPLAINT)
@click.option("--reason", type=TEXT, required=True, help="Why; it names nobody.")
@job
def erased(desk: Desk, complaint: int, reason: str) -> int:
    """Erase the words of a closed COMPLAINT, where they name people; its line stays.

    Example: python3 tankschool.py register complaint erase 2 --reason "it named a neighbour"
    """
    with desk.registry() as registry:
        erase_complaint_text(registry, complaint, by=desk.by(registry), reason=reason, now=desk.now)
    return desk.done(desk.words.say("register.done.complaint_erased", complaint=complaint), complaint=complaint)


@complaint_jobs.command("list")
@job
def listed(desk: Desk) -> int:
    """Show every complaint with its number.

    Example: python3 tankschool.py register complaint list
    """
    with desk.registry() as registry:
        return desk.table(complaint_list(registry))
