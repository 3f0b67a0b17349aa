"""Certificates: number, signature and row in one transaction; afterwards only named changes, each with its reason."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from typing import Any

from sqlalchemy import Connection, insert, select

from generator.problems import RefusedError
from generator.registry.chain import canonical, digest, sha256
from generator.registry.decisions import known_decision, may_decide, was_set_aside
from generator.registry.entry import Entry
from generator.registry.numbers import number_text
from generator.registry.people import known_person, require_role
from generator.registry.store import Registry, reading, writing
from generator.registry.tables import SEALED, certificate_changes, certificates, info

MOVES: Mapping[str, tuple[frozenset[str], str]] = {
    "suspend": (frozenset({"active"}), "suspended"),
    "reinstate": (frozenset({"suspended"}), "active"),
    "withdraw": (frozenset({"active", "suspended"}), "withdrawn"),
    "expire": (frozenset({"active", "suspended"}), "expired"),
    "renew": (frozenset({"active", "expired"}), "renewed"),
}
"""What may be done with a certificate: from which statuses, and to which. `renew` comes with the new certificate."""

ISSUED, EXPIRED, RENEWED = "issued", "its last day is over", "a new certificate takes its place"
"""Reasons that nobody typed."""
LONGEST_SCOPE = 2000
LONGEST_WAIT = timedelta(days=366)
"""From the issue of a certificate to its first day: a renewal may wait for the old one to end."""


@dataclass(frozen=True, slots=True)
class ToSign:
    """What a certificate says, and its signature has to cover."""

    number: str
    name: str
    scheme: str
    version: int
    scope: Mapping[str, object]
    valid_from: date
    valid_to: date


@dataclass(frozen=True, slots=True)
class Certificate:
    """A certificate as the register holds it; name and signed bytes are None after an erasure."""

    number: str
    person: int
    name: str | None
    scheme: str
    version: int
    scope: Mapping[str, Any]
    status: str
    valid_from: date
    valid_to: date
    decision: int
    renews: str | None
    signed: bytes | None


@dataclass(frozen=True, slots=True)
class Change:
    """One change of a certificate: from which status to which, why, when, and who did it."""

    was: str | None
    becomes: str
    reason: str
    at: str
    by: int


Sign = Callable[[ToSign], bytes]
"""Signs a certificate; whatever it raises leaves no number and no row."""


def issue(
    registry: Registry,
    person: int,
    decision: int,
    scope: Mapping[str, object],
    *,
    sign: Sign,
    valid_from: date,
    valid_to: date,
    by: int,
    now: datetime,
    exception: str | None = None,
    renews: str | None = None,
) -> Certificate:
    """Issue a certificate: number, signature and row in one transaction, or nothing.

    Args:
        registry: where.
        person: whose.
        decision: id of the passed decision that it rests on; one decision, one certificate.
        scope: role, largest volume and wall height, roof: what the holder may lead.
        sign: makes the signed bytes.
        valid_from: first day.
        valid_to: last day.
        by: a coordinator, who did not train the person.
        now: the time.
        exception: why someone may issue who trained this person.
        renews: number of the certificate that this one takes the place of.

    Raises:
        RefusedError: the decision is another person's, did not pass, was set aside or is used; its scheme is a draft,
            or provisional without a panel's cut recorded before the decision; no consent; a certificate of this scheme
            is in force; days that make no sense; the wrong issuer.
    """
    with writing(registry, now) as entry:
        connection = entry.connection
        require_role(connection, by, "coordinator")
        holder = known_person(connection, person)
        found = known_decision(connection, decision)
        _may_issue(connection, person, found)
        noted = may_decide(connection, by, person, exception)
        if holder.consent_on is None:
            raise RefusedError(f"person {person} has not agreed to be in the public register: ask, and record the day")
        if valid_to < valid_from or valid_to.isoformat() < entry.today:
            raise RefusedError(f"a certificate from {valid_from} to {valid_to} would never hold")
        if valid_from.isoformat() < found.decided_at[:10]:
            raise RefusedError(
                f"a certificate can't hold from {valid_from}: decision {decision} was made on {found.decided_at[:10]}"
            )
        if valid_from > now.date() + LONGEST_WAIT:
            raise RefusedError(f"a first day {valid_from} is more than a year away: look at the year")
        scope_text = canonical(scope)
        if not scope or len(scope_text) > LONGEST_SCOPE:
            raise RefusedError("a certificate names its scope: role, largest volume, wall height, roof")
        if renews is not None:
            _renewed(entry, renews, person, found.scheme, by)
        _nothing_in_force(connection, person, found.scheme)
        serial = entry.number("C")
        number = number_text(code_of(connection), "C", serial)
        shown = holder.name if holder.public_name == "name" else initials(holder.name)
        signed = sign(ToSign(number, shown, found.scheme, found.version, dict(scope), valid_from, valid_to))
        row = {
            "number": number, "serial": serial, "person": person, "decision": decision, "scheme": found.scheme,
            "version": found.version, "scope": scope_text, "printed_name": shown, "valid_from": valid_from.isoformat(),
            "valid_to": valid_to.isoformat(), "status": "active", "signed": signed, "signed_hash": sha256(signed),
            "issued_at": entry.at, "issued_by": by, "renews": renews,
        }  # fmt: skip
        entry.add(certificates, row, "certificate.issued", by, body={"exception": noted}, person=person)
        _note_change(entry, number, None, "active", ISSUED, by)
        return _as_certificate(row)


def change_status(registry: Registry, number: str, move: str, *, reason: str, by: int, now: datetime) -> None:
    """Suspend, reinstate, withdraw or expire a certificate.

    Args:
        registry: where.
        number: of the certificate.
        move: `suspend`, `reinstate`, `withdraw` or `expire`.
        reason: why; stays in the register, so it names nobody but the holder's work.
        by: a coordinator.
        now: the time.

    Raises:
        RefusedError: no such certificate or move; its status does not allow it; no reason; `expire` before its last day
            is over.
    """
    with writing(registry, now) as entry:
        require_role(entry.connection, by, "coordinator")
        if move not in MOVES or move == "renew":
            known = ", ".join(name for name in MOVES if name != "renew")
            raise RefusedError(f"a certificate can't '{move}': choose one of {known}; to renew, issue a new one")
        row = known_certificate(entry.connection, number)
        if move == "expire" and entry.today <= row.valid_to:
            raise RefusedError(f"the certificate {number} holds until {row.valid_to}")
        if move == "reinstate" and entry.today > row.valid_to:
            raise RefusedError(f"the certificate {number} ended on {row.valid_to}: let it expire, or renew it")
        _move(entry, row, move, reason, by)


def expire_all(registry: Registry, *, by: int, now: datetime) -> tuple[str, ...]:
    """Let every certificate expire whose last day is over; returns their numbers."""
    with writing(registry, now) as entry:
        require_role(entry.connection, by, "coordinator")
        due = entry.connection.execute(
            select(certificates)
            .where(certificates.c.status.in_(MOVES["expire"][0]), certificates.c.valid_to < entry.today)
            .order_by(certificates.c.serial)
        ).all()
        for row in due:
            _move(entry, row, "expire", EXPIRED, by)
        return tuple(row.number for row in due)


def read_certificate(registry: Registry, number: str) -> tuple[Certificate, tuple[Change, ...]]:
    """A certificate and all its changes, oldest first.

    Raises:
        RefusedError: there is none of this number.
    """
    with reading(registry) as connection:
        row = known_certificate(connection, number)
        chosen = select(certificate_changes).where(certificate_changes.c.certificate == number)
        changes = connection.execute(chosen.order_by(certificate_changes.c.id))
        history = tuple(Change(each.was, each.becomes, each.reason, each.at, each.by) for each in changes)
        return _as_certificate(row._mapping), history


def withdrawn_numbers(registry: Registry) -> tuple[tuple[str, str], ...]:
    """Number and status of every certificate that was suspended, withdrawn or renewed: for the signed list."""
    with reading(registry) as connection:
        chosen = select(certificates.c.number, certificates.c.status).where(
            certificates.c.status.in_(("suspended", "withdrawn", "renewed"))
        )
        return tuple(connection.execute(chosen.order_by(certificates.c.serial)))


def initials(name: str) -> str:
    """The first letters of a name, for whoever wants no more shown.

    Example:
        >>> initials("Asha Devi")
        'A. D.'
    """
    return " ".join(f"{part[0]}." for part in name.split())


def known_certificate(connection: Connection, number: str) -> Any:
    """A certificate's row.

    Raises:
        RefusedError: there is none of this number.
    """
    row = connection.execute(select(certificates).where(certificates.c.number == number)).first()
    if row is None:
        raise RefusedError(f"there is no certificate '{number}' in this registry: compare it letter by letter")
    return row


def _may_issue(connection: Connection, person: int, decision: Any) -> None:
    number = decision.id
    if decision.person != person:
        raise RefusedError(f"decision {number} is about another person than {person}")
    if not decision.passed:
        raise RefusedError(f"decision {number} says 'not yet': there is nothing to certify")
    if decision.scheme_status == "draft":
        raise RefusedError(f"the scheme '{decision.scheme}' is a draft: nothing can be issued under it")
    if decision.scheme_status == "provisional" and decision.cut is None:
        raise RefusedError(
            f"the scheme '{decision.scheme}' version {decision.version} is provisional: a local panel has to "
            "set the cut before the decision is made. Record it with 'register cut', decide again with 'register "
            f"decide', and issue that decision instead of {number}"
        )
    if was_set_aside(connection, number):
        raise RefusedError(f"decision {number} was set aside on appeal: a new decision is needed")
    used = connection.execute(select(certificates.c.number).where(certificates.c.decision == number)).scalar()
    if used is not None:
        raise RefusedError(f"decision {number} has led to the certificate {used}: one decision, one certificate")


def _nothing_in_force(connection: Connection, person: int, scheme: str) -> None:
    held = connection.execute(
        select(certificates.c.number).where(
            certificates.c.person == person,
            certificates.c.scheme == scheme,
            certificates.c.status.in_(("active", "suspended")),
        )
    ).scalar()
    if held is not None:
        raise RefusedError(f"person {person} holds {held} under '{scheme}' already: renew that one, or withdraw it")


def _renewed(entry: Entry, number: str, person: int, scheme: str, by: int) -> None:
    row = known_certificate(entry.connection, number)
    if (row.person, row.scheme) != (person, scheme):
        raise RefusedError(f"the certificate {number} is another person's, or under another scheme")
    _move(entry, row, "renew", RENEWED, by)


def _move(entry: Entry, row: Any, move: str, reason: str, by: int) -> None:
    before, after = MOVES[move]
    if row.status not in before:
        if row.status == after:
            raise RefusedError(f"the certificate {row.number} is {row.status} already: there is nothing to {move}")
        told = "" if row.status in ("active", "suspended") else ", for good: only a new decision leads to a new one"
        raise RefusedError(f"the certificate {row.number} is {row.status}{told}; one can't {move} it")
    if not reason.strip():
        raise RefusedError(f"to {move} a certificate needs a reason")
    body = {"was": row.status, "becomes": after}
    entry.change(certificates, row.number, {"status": after}, f"certificate.{move}", by, body=body, person=row.person)
    _note_change(entry, row.number, row.status, after, reason.strip(), by)


def _note_change(entry: Entry, number: str, was: str | None, becomes: str, reason: str, by: int) -> None:
    values = {"certificate": number, "was": was, "becomes": becomes, "reason": reason, "at": entry.at, "by": by}
    made = entry.connection.execute(insert(certificate_changes), values).inserted_primary_key
    assert made is not None  # noqa: S101 (an insert of one row has its key)
    seal = digest(values, SEALED["certificate_changes"])
    entry.event("certificate.changed", f"certificate_changes:{made[0]}", by, {"seal": seal})


def code_of(connection: Connection) -> str:
    """The letters that the registry's numbers start with."""
    return str(connection.execute(select(info.c.value).where(info.c.name == "code")).scalar_one())


def _as_certificate(row: Mapping[str, Any]) -> Certificate:
    return Certificate(
        number=row["number"],
        person=row["person"],
        name=row["printed_name"],
        scheme=row["scheme"],
        version=row["version"],
        scope=json.loads(row["scope"]),
        status=row["status"],
        valid_from=date.fromisoformat(row["valid_from"]),
        valid_to=date.fromisoformat(row["valid_to"]),
        decision=row["decision"],
        renews=row["renews"],
        signed=row["signed"],
    )
