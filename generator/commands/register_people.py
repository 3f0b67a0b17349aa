"""`register people`: who there is, with the least data that the work needs."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import click

from generator.commands.register_common import DAY, NAME, PERSON, TEXT, Desk, as_text, job, known_of
from generator.problems import RefusedError
from generator.registry import (
    ROLES,
    Accommodation,
    NewPerson,
    add_person,
    all_of,
    change_person,
    end_role,
    erase_person,
    give_role,
    read_accommodation,
)
from generator.registry.accommodations import FORMS, MOST_MORE
from generator.registry.listing import coordinators, people_list
from generator.registry.people import PUBLIC_NAMES


@click.group("people")
def people_jobs() -> None:
    """Enter people, change what is kept about them, show it to them, erase it."""


def reads_option(function: click.decorators.FC) -> click.decorators.FC:
    """`--reads`."""
    return click.option("--reads", metavar="CODE", help="Language that the person reads: en, hi.")(function)


@people_jobs.command("first")
@click.argument("name", type=NAME)
@reads_option
@job
def first(desk: Desk, name: str, reads: str | None) -> int:
    """Start a registry with its first coordinator.

    Example: python3 tankschool.py register people first "Meera of the lower lane"
    """
    language = _language(desk, reads)
    with desk.registry(new=True) as registry:
        if coordinators(registry):
            raise RefusedError("this registry has a coordinator already: a coordinator enters people with 'people add'")
        known = people_list(registry).rows
        if len(known) > 1 or (known and known[0][1] != name):
            raise RefusedError(f"this registry was begun for '{known[0][1]}': give that name to go on")
        key = known[0][0] if known else add_person(
            registry, NewPerson(name, language, desk.now.date()), by=None, now=desk.now
        )  # fmt: skip
        give_role(registry, key, "coordinator", by=None, now=desk.now)
    return desk.done(desk.words.say("register.done.first", person=key, name=name, place=desk.place), person=key)


_USUAL = "usual"
"""The form that all others get."""
more_time_option = click.option("--more-time", type=click.IntRange(0, MOST_MORE),
                                help="Minutes more in an exam; 0: none.")  # fmt: skip
exam_form_option = click.option(
    "--exam-form", type=click.Choice([_USUAL, *FORMS]), help="Form of paper that they need."
)


@people_jobs.command("add")
@click.argument("name", type=NAME)
@reads_option
@click.option("--consent-on", type=DAY, help="Day on which they agreed to be in the register; none: not yet.")
@click.option("--public-name", type=click.Choice(PUBLIC_NAMES), default="name", show_default=True,
              help="What a public check shows.")  # fmt: skip
@more_time_option
@exam_form_option
@click.option("--help-in-exam", type=TEXT, help="What else helps them in an exam: a note for whoever prepares it.")
@job
def add(
    desk: Desk,
    name: str,
    reads: str | None,
    consent_on: date | None,
    public_name: str,
    more_time: int | None,
    exam_form: str | None,
    help_in_exam: str | None,
) -> int:
    """Enter a person. Language, more time and form are used whenever `paper` makes an exam for their cohort.

    Example: python3 tankschool.py register people add "Asha" --reads hi --consent-on 2031-05-04 --more-time 30
    """
    helps = Accommodation(more_time or 0, _form(exam_form), help_in_exam or "").text
    person = NewPerson(name, _language(desk, reads), _past(desk, consent_on), public_name, helps)
    with desk.registry() as registry:
        key = add_person(registry, person, by=desk.by(registry), now=desk.now)
    return desk.done(desk.words.say("register.done.person", person=key, name=name), person=key)


@people_jobs.command("change")
@click.argument("person", type=PERSON)
@click.option("--name", type=NAME, help="As they want it printed.")
@reads_option
@click.option("--consent-on", type=DAY, help="Day on which they agreed to be in the register.")
@click.option("--public-name", type=click.Choice(PUBLIC_NAMES), help="What a public check shows.")
@more_time_option
@exam_form_option
@click.option("--help-in-exam", type=TEXT, help="What else helps them in an exam.")
@job
def change(
    desk: Desk,
    person: int,
    name: str | None,
    reads: str | None,
    consent_on: date | None,
    public_name: str | None,
    more_time: int | None,
    exam_form: str | None,
    help_in_exam: str | None,
) -> int:
    """Correct what is kept about a PERSON; what is not named stays.

    Example: python3 tankschool.py register people change 7 --consent-on 2031-05-04
    """
    with desk.registry() as registry:
        held = all_of(registry, person)["people"][0]
        if held["erased_at"] is not None:
            raise RefusedError(f"person {person} was erased: nothing can be entered about them")
        consent = date.fromisoformat(held["consent_on"]) if held["consent_on"] else None
        now = NewPerson(held["name"], held["language"], consent, held["public_name"], held["accommodations"])
        kept = read_accommodation(held["accommodations"])
        helps = Accommodation(
            kept.more_time if more_time is None else more_time,
            kept.form if exam_form is None else _form(exam_form),
            kept.note if help_in_exam is None else help_in_exam,
        )
        given = {
            "name": name, "language": _language(desk, reads), "consent_on": _past(desk, consent_on),
            "public_name": public_name, "accommodations": helps.text,
        }  # fmt: skip
        new = replace(now, **{key: value for key, value in given.items() if value is not None})  # type: ignore[arg-type]
        change_person(registry, person, new, by=desk.by(registry), now=desk.now)
    return desk.done(desk.words.say("register.done.changed", person=person, name=new.name), person=person)


@people_jobs.command("role")
@click.argument("person", type=PERSON)
@click.argument("role", type=click.Choice(ROLES))
@job
def role(desk: Desk, person: int, role: str) -> int:
    """Give a PERSON a ROLE.

    Example: python3 tankschool.py register people role 7 observer
    """
    with desk.registry() as registry:
        give_role(registry, person, role, by=desk.by(registry), now=desk.now)
    said = desk.words.say_one_of("register.choice", role)
    return desk.done(desk.words.say("register.done.role", person=person, role=said), person=person, role=role)


@people_jobs.command("end-role")
@click.argument("person", type=PERSON)
@click.argument("role", type=click.Choice(ROLES))
@job
def ends(desk: Desk, person: int, role: str) -> int:
    """Take a ROLE back from a PERSON.

    Example: python3 tankschool.py register people end-role 7 observer
    """
    with desk.registry() as registry:
        end_role(registry, person, role, by=desk.by(registry), now=desk.now)
    said = desk.words.say_one_of("register.choice", role)
    return desk.done(desk.words.say("register.done.role_ended", person=person, role=said), person=person, role=role)


@people_jobs.command("list")
@job
def listed(desk: Desk) -> int:
    """Show everyone, with their numbers and roles.

    Example: python3 tankschool.py register people list
    """
    with desk.registry() as registry:
        return desk.table(people_list(registry))


@people_jobs.command("show")
@click.argument("person", type=PERSON)
@job
def show(desk: Desk, person: int) -> int:
    """Show all that is held about a PERSON, as JSON: for whoever asks what is kept about them.

    Example: python3 tankschool.py register people show 7 > asha.json
    """
    with desk.registry() as registry:
        found = all_of(registry, person)
    click.echo(as_text({"format": 1, **found}))
    return 0


@people_jobs.command("erase")
@click.argument("person", type=PERSON)
@click.option("--reason", type=TEXT, required=True, help="Why; it stays in the log, so it names nobody.")
@job
def erase(desk: Desk, person: int, reason: str) -> int:
    """Erase who a PERSON is, for good; the lines of certificates and decisions stay without a name.

    Example: python3 tankschool.py register people erase 7 --reason "own wish"
    """
    with desk.registry() as registry:
        erase_person(registry, person, by=desk.by(registry), reason=reason, now=desk.now)
    return desk.done(desk.words.say("register.done.erased", person=person), person=person)


def _language(desk: Desk, code: str | None) -> str | None:
    return None if code is None else known_of(code, list(desk.course.words), "language")


def _form(chosen: str | None) -> str:
    return "" if chosen in (None, _USUAL) else str(chosen)


def _past(desk: Desk, day: date | None) -> date | None:
    if day is not None and day > desk.now.date():
        raise click.UsageError(f"{day} is still to come: nobody can have agreed then.")
    return day
