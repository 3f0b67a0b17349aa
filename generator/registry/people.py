"""People, with the least data that the work needs: name, language, consent, what helps them; and their roles."""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from contextlib import closing
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from sqlalchemy import Connection, delete, select, update

from generator.exercises import same_name
from generator.problems import RefusedError
from generator.registry.entry import Entry
from generator.registry.store import Registry, plain_errors, reading, writing
from generator.registry.tables import (
    ROLES,
    answers,
    appeals,
    applications,
    batches,
    certificates,
    complaints,
    decisions,
    events,
    memberships,
    paper_files,
    papers,
    payloads,
    people,
    recheck_seconds,
    rechecks,
    retest_exceptions,
    roles,
)

LONGEST_NAME = 90
"""Bytes of UTF-8: what a certificate has room for."""
PUBLIC_NAMES = ("name", "initials")


@dataclass(frozen=True, slots=True)
class NewPerson:
    """Someone to enter.

    Args:
        name: as the person wants it printed.
        language: code of the language that they read.
        consent_on: the day on which they agreed to be in the registry; None while they have not.
        public_name: `name` or `initials`: what a public check may show.
        accommodations: what helps them in an exam: oral, a reader, larger print; empty for none.
    """

    name: str
    language: str | None = None
    consent_on: date | None = None
    public_name: str = "name"
    accommodations: str = ""


def add_person(registry: Registry, person: NewPerson, *, by: int | None, now: datetime) -> int:
    """Enter a person.

    Args:
        registry: where.
        person: who.
        by: a coordinator; None only for a registry's first person, who has to become its first coordinator.
        now: the time.

    Returns:
        The person's id.

    Raises:
        RefusedError: an empty or too long name; `by` is no coordinator.
    """
    with writing(registry, now) as entry:
        if by is not None or entry.connection.execute(select(people.c.id).limit(1)).first():
            require_role(entry.connection, by, "coordinator")
        return new_person(entry, person, by)


def new_person(entry: Entry, person: NewPerson, by: int | None) -> int:
    """The row of a new person, within an entry."""
    return int(entry.add(people, _row(person), "person.entered", by, own=True))


def change_person(registry: Registry, key: int, person: NewPerson, *, by: int, now: datetime) -> None:
    """Correct what the registry holds of a person. What a certificate says is not changed by it.

    Raises:
        RefusedError: no such person; erased; a candidate of the same cohort has the name; as `add_person`.
    """
    with writing(registry, now) as entry:
        require_role(entry.connection, by, "coordinator")
        known_person(entry.connection, key)
        row = _row(person)
        _nobody_else_is_called(entry.connection, key, row["name_key"])
        entry.change(people, key, row, "person.changed", by, person=key)


def _nobody_else_is_called(connection: Connection, key: int, name_key: str) -> None:
    """Tables of answers name people by name: two candidates of one cohort can't share one."""
    mine, other = memberships.alias(), memberships.alias()
    twin = connection.execute(
        select(people.c.id)
        .join(other, (other.c.person == people.c.id) & (other.c.role == "candidate"))
        .join(mine, (mine.c.cohort == other.c.cohort) & (mine.c.person == key) & (mine.c.role == "candidate"))
        .where(people.c.name_key == name_key, people.c.id != key)
    ).scalar()
    if twin is not None:
        raise RefusedError(f"person {twin} of the same cohort has this name: add a village or a parent's name")


def give_role(registry: Registry, person: int, role: str, *, by: int | None, now: datetime) -> None:
    """Give a person a role; twice is once.

    Args:
        registry: where.
        person: who.
        role: `candidate`, `trainer`, `observer` or `coordinator`.
        by: a coordinator; None only for the registry's first coordinator.
        now: the time.

    Raises:
        RefusedError: no such role or person; `by` is no coordinator.
    """
    with writing(registry, now) as entry:
        if role not in ROLES:
            raise RefusedError(f"there is no role '{role}': choose one of {', '.join(ROLES)}")
        known_person(entry.connection, person)
        first = not entry.connection.execute(select(roles.c.id).where(roles.c.role == "coordinator").limit(1)).first()
        if not (first and role == "coordinator" and by is None):
            require_role(entry.connection, by, "coordinator")
        if not has_role(entry.connection, person, role):
            values = {"person": person, "role": role, "since": entry.at, "until": None}
            entry.add(roles, values, "role.given", by)


def end_role(registry: Registry, person: int, role: str, *, by: int, now: datetime) -> None:
    """Take a role back from now on; the last coordinator stays one.

    Raises:
        RefusedError: the person does not have it; `by` is no coordinator; nobody would be left to coordinate.
    """
    with writing(registry, now) as entry:
        require_role(entry.connection, by, "coordinator")
        held = entry.connection.execute(select(roles.c.id, roles.c.person).where(_held(role))).all()
        own = [row.id for row in held if row.person == person]
        if not own:
            raise RefusedError(f"person {person} is no {role}")
        if role == "coordinator" and len(held) == 1:
            raise RefusedError("the last coordinator can't go: make another one first")
        entry.change(roles, own[0], {"until": entry.at}, "role.ended", by)


def all_of(registry: Registry, key: int) -> Mapping[str, Any]:
    """All that the registry holds of a person, by table: for whoever asks what is kept about them."""
    with reading(registry) as connection:
        found: dict[str, Any] = {}
        person = connection.execute(select(people).where(people.c.id == key)).mappings().first()
        if person is None:
            raise RefusedError(f"there is no person {key} in this registry")
        found["people"] = [dict(person)]
        for table in people.metadata.sorted_tables:
            if "person" in table.c and table is not payloads:
                rows = connection.execute(select(table).where(table.c.person == key)).mappings()
                found[table.name] = [{name: _plain(value) for name, value in row.items()} for row in rows]
        own = select(papers.c.id).where(papers.c.person == key)
        rows = connection.execute(select(answers).where(answers.c.paper.in_(own))).mappings()
        found["answers"] = [dict(row) for row in rows]
        again = select(recheck_seconds).join(rechecks, rechecks.c.id == recheck_seconds.c.recheck)
        rows = connection.execute(again.where(rechecks.c.person == key)).mappings()
        found["recheck_seconds"] = [dict(row) for row in rows]
        return found


def _plain(value: Any) -> Any:
    return value.hex() if isinstance(value, bytes) else value


def erase_person(registry: Registry, key: int, *, by: int, reason: str, now: datetime) -> None:
    """Erase who a person is. The chain of events still verifies.

    What stays names nobody: the register's line of each certificate (number, scheme, dates, status), verdicts and
    decisions under an id. What goes: name, language, consent, what helps them, typed answers, printed papers, the
    signed certificate, the grounds of appeals, the evidence of applications, and every payload of the log about them.

    Raises:
        RefusedError: a certificate of theirs is in force (withdraw it first: the register has to be able to say whom it
            stands for); an appeal of theirs is open; they are the last coordinator; already erased.
    """
    with writing(registry, now) as entry:
        connection = entry.connection
        require_role(connection, by, "coordinator")
        known_person(connection, key)
        _may_be_erased(connection, key)
        dropped = connection.execute(select(payloads.c.event).where(payloads.c.person == key)).scalars().all()
        own_papers = connection.execute(select(papers.c.id).where(papers.c.person == key)).scalars().all()
        connection.execute(delete(payloads).where(payloads.c.person == key))
        connection.execute(delete(paper_files).where(paper_files.c.paper.in_(own_papers)))
        connection.execute(update(answers).where(answers.c.paper.in_(own_papers)).values(answer=None))
        connection.execute(update(batches).where(batches.c.paper.in_(own_papers)).values(salt=None))
        connection.execute(
            update(certificates).where(certificates.c.person == key).values(printed_name=None, signed=None)
        )
        own = select(decisions.c.id).where(decisions.c.person == key)
        connection.execute(update(appeals).where(appeals.c.decision.in_(own)).values(grounds=None, reasons=None))
        connection.execute(update(applications).where(applications.c.person == key).values(evidence=None, reasons=None))
        connection.execute(
            update(retest_exceptions).where(retest_exceptions.c.paper.in_(own_papers)).values(reason=None)
        )
        nobody = dict.fromkeys(("name", "name_key", "language", "consent_on", "public_name", "accommodations"))
        for held in connection.execute(select(roles.c.id).where(roles.c.person == key, roles.c.until.is_(None))).all():
            entry.change(roles, held.id, {"until": entry.at}, "role.ended", by)
        connection.execute(update(people).where(people.c.id == key).values(**nobody, erased_at=entry.at))
        body = {"reason": reason, "dropped": sorted(dropped), "papers": sorted(own_papers)}
        entry.event("person.erased", f"people:{key}", by, body)
    _forget_pages(registry)


def erase_complaint_text(registry: Registry, complaint: int, *, by: int, reason: str, now: datetime) -> None:
    """Erase what a complaint says, where it names people; its line, tank and dates stay.

    Raises:
        RefusedError: no such complaint; it is still open.
    """
    with writing(registry, now) as entry:
        require_role(entry.connection, by, "coordinator")
        row = entry.connection.execute(select(complaints).where(complaints.c.id == complaint)).first()
        if row is None or row.closed_at is None:
            raise RefusedError(f"complaint {complaint} is not closed: its text is needed until then")
        dropped = [row.event for row in entry.connection.execute(_payloads_of(f"complaints:{complaint}"))]
        entry.connection.execute(delete(payloads).where(payloads.c.event.in_(dropped)))
        entry.connection.execute(
            update(complaints).where(complaints.c.id == complaint).values(about=None, finding=None)
        )
        entry.event(
            "complaint.erased", f"complaints:{complaint}", by, {"reason": reason, "dropped": dropped, "papers": []}
        )
    _forget_pages(registry)


def _payloads_of(subject: str) -> Any:
    return select(payloads.c.event).join(events, events.c.seq == payloads.c.event).where(events.c.subject == subject)


def _forget_pages(registry: Registry) -> None:
    """Take erased words out of SQLite's side file, too; its own pages are overwritten as they are freed."""
    if not registry.is_server:
        with plain_errors(registry.place), closing(registry.engine.raw_connection()) as raw:
            raw.cursor().execute("PRAGMA wal_checkpoint(TRUNCATE)")


def _may_be_erased(connection: Connection, key: int) -> None:
    in_force = connection.execute(
        select(certificates.c.number).where(
            certificates.c.person == key, certificates.c.status.in_(("active", "suspended"))
        )
    ).scalars()
    for number in in_force:
        raise RefusedError(
            f"the certificate {number} of person {key} is in force, and the register has to say whom it stands for: "
            "withdraw it first, at the person's own wish"
        )
    open_appeal = connection.execute(
        select(appeals.c.id)
        .join(decisions, decisions.c.id == appeals.c.decision)
        .where(decisions.c.person == key, appeals.c.outcome.is_(None))
    ).first()
    if open_appeal:
        raise RefusedError(f"appeal {open_appeal.id} of person {key} is open: decide it first")
    coordinators = set(connection.execute(select(roles.c.person).where(_held("coordinator"))).scalars())
    if coordinators == {key}:
        raise RefusedError("the last coordinator can't go: make another one first")


def known_person(connection: Connection, key: int) -> Any:
    """A person's row.

    Raises:
        RefusedError: nobody has this id, or the person was erased.
    """
    row = connection.execute(select(people).where(people.c.id == key)).first()
    if row is None:
        raise RefusedError(f"there is no person {key} in this registry")
    if row.erased_at is not None:
        raise RefusedError(f"person {key} was erased on {row.erased_at[:10]}: nothing can be entered about them")
    return row


def has_role(connection: Connection, person: int | None, role: str) -> bool:
    """Whether a person has a role now."""
    return connection.execute(select(roles.c.id).where(_held(role), roles.c.person == person)).first() is not None


def require_role(connection: Connection, person: int | None, role: str) -> None:
    """Refuse whoever does not have a role.

    Raises:
        RefusedError: it says who could do it.
    """
    if not has_role(connection, person, role):
        who = "nobody was named" if person is None else f"person {person} has not this role"
        a = "an" if role == "observer" else "a"
        raise RefusedError(f"only {a} {role} may do this, and {who}: ask a coordinator of the registry")


def _held(role: str) -> Any:
    """Who has a role now; whoever was erased has none, though older editions left it open."""
    erased = select(people.c.id).where(people.c.erased_at.is_not(None))
    return (roles.c.role == role) & roles.c.until.is_(None) & roles.c.person.not_in(erased)


def _row(person: NewPerson) -> dict[str, Any]:
    """A person's row, held against the rules of names."""
    name = unicodedata.normalize("NFC", " ".join(person.name.split()))  # a signature covers composed letters only
    if not name:
        raise RefusedError("a person needs a name: as they want it printed")
    if len(name.encode("utf-8")) > LONGEST_NAME:
        raise RefusedError(
            f"the name '{name[:30]}...' has more than {LONGEST_NAME} bytes: a certificate has no room for it"
        )
    if person.public_name not in PUBLIC_NAMES:
        raise RefusedError(f"a public check shows {' or '.join(PUBLIC_NAMES)}, not '{person.public_name}'")
    return {
        "name": name,
        "name_key": same_name(name),
        "language": person.language,
        "consent_on": person.consent_on.isoformat() if person.consent_on else None,
        "public_name": person.public_name,
        "accommodations": person.accommodations.strip(),
    }
