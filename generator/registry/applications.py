"""Applications by the experience route: who learnt elsewhere, with what evidence, and who accepted it."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, select

from generator.curriculum.models import Scheme
from generator.exercises import same_name
from generator.problems import RefusedError
from generator.registry.chain import canonical
from generator.registry.cohorts import known_cohort, roles_in
from generator.registry.decisions import may_decide
from generator.registry.people import known_person, require_role
from generator.registry.store import Registry, reading, writing
from generator.registry.tables import applications, memberships

OUTCOMES = ("accepted", "refused")


@dataclass(frozen=True, slots=True)
class Application:
    """An application as it stands.

    Args:
        id: its number.
        person: who applies.
        version: of the scheme, when it was filed.
        tanks: on which the work was done elsewhere.
        outcome: `accepted`, `refused`; None while it is open.
        decided_by: id of who closed it.
    """

    id: int
    person: int
    version: int
    tanks: int
    outcome: str | None
    decided_by: int | None


def file_application(
    registry: Registry,
    cohort: int,
    person: int,
    scheme: Scheme,
    *,
    tanks: int,
    witnesses: Sequence[str],
    evidence: str,
    by: int,
    now: datetime,
) -> int:
    """Enter a candidate's application by the experience route; the same one again, while it is open, is the same one.

    Args:
        registry: where.
        cohort: in which the person is a candidate.
        person: who applies.
        scheme: for which, with what its route asks for.
        tanks: on how many this work was done elsewhere.
        witnesses: names of those who saw it and say so in writing.
        evidence: where, when, which papers were shown.
        by: a coordinator, who has seen the papers.
        now: the time.

    Returns:
        The application's id.

    Raises:
        RefusedError: the scheme has no such route, or it is not met (it says what is missing); a witness twice, or the
            person; no evidence; no candidate of the cohort; another application is open; `by` is no coordinator.
    """
    with writing(registry, now) as entry:
        connection = entry.connection
        require_role(connection, by, "coordinator")
        known_cohort(connection, cohort)
        name = str(known_person(connection, person).name)
        if "candidate" not in roles_in(connection, cohort, person):
            raise RefusedError(f"person {person} is no candidate of cohort {cohort}")
        names = _witnesses(witnesses, name)
        _route_is_met(scheme, tanks, len(names))
        if not evidence.strip():
            raise RefusedError("an application by experience needs its evidence: where, when, who saw it")
        told = canonical({"evidence": evidence.strip(), "witnesses": names})
        row = connection.execute(
            select(applications).where(
                applications.c.person == person, applications.c.scheme == scheme.id, applications.c.outcome.is_(None)
            )
        ).first()
        if row is not None:
            if (row.cohort, row.version, row.tanks, row.evidence) == (cohort, scheme.version, tanks, told):
                return int(row.id)
            raise RefusedError(f"application {row.id} of person {person} for '{scheme.id}' is open: close it first")
        values = {
            "person": person, "cohort": cohort, "scheme": scheme.id, "version": scheme.version, "tanks": tanks,
            "witnesses": len(names), "evidence": told, "filed_at": entry.at, "filed_by": by, "outcome": None,
            "reasons": None, "decided_at": None, "decided_by": None, "exception": None,
        }  # fmt: skip
        return int(entry.add(applications, values, "application.filed", by, person=person))


def close_application(
    registry: Registry,
    application: int,
    outcome: str,
    reasons: str,
    *,
    by: int,
    now: datetime,
    exception: str | None = None,
) -> None:
    """Accept or refuse an application.

    Args:
        registry: where.
        application: its id.
        outcome: `accepted` or `refused`.
        reasons: what was looked at; told to the candidate.
        by: a coordinator, who is neither the person, nor a witness, nor who trained them.
        now: the time.
        exception: why someone may decide who trained this person.

    Raises:
        RefusedError: no open application of this id; no such outcome; no reasons; somebody who may not decide.
    """
    with writing(registry, now) as entry:
        connection = entry.connection
        require_role(connection, by, "coordinator")
        row = connection.execute(
            select(applications).where(applications.c.id == application, applications.c.outcome.is_(None))
        ).first()
        if row is None:
            raise RefusedError(f"there is no open application {application} in this registry")
        if outcome not in OUTCOMES or not reasons.strip():
            raise RefusedError("an application ends with 'accepted' or 'refused', and with reasons")
        noted = may_decide(connection, by, row.person, exception)
        if same_name(str(known_person(connection, by).name)) in _named(row.evidence):
            raise RefusedError(f"person {by} is a witness of application {application}: another coordinator has to")
        values = {
            "outcome": outcome, "reasons": reasons.strip(), "decided_at": entry.at, "decided_by": by,
            "exception": noted,
        }  # fmt: skip
        body = {"outcome": outcome}
        entry.change(applications, application, values, "application.closed", by, body=body, person=row.person)


def applications_for(registry: Registry, scheme: str) -> Mapping[int, Application]:
    """Everyone's newest application for a scheme, by person."""
    with reading(registry) as connection:
        chosen = select(applications).where(applications.c.scheme == scheme).order_by(applications.c.id)
        return {
            row.person: Application(row.id, row.person, row.version, row.tanks, row.outcome, row.decided_by)
            for row in connection.execute(chosen)
        }


def taught(registry: Registry) -> frozenset[int]:
    """Ids of all candidates whose cohort has a trainer: they came by the course."""
    with reading(registry) as connection:
        return frozenset(connection.execute(select(memberships.c.person).where(_taught())).scalars())


def not_let_in(connection: Connection, person: int, scheme: str) -> str | None:
    """Why a person can't sit the exam of a scheme yet; None where nothing stands against it.

    Who has an open or refused application, and no trainer in any cohort, came by neither route.
    """
    row = connection.execute(
        select(applications.c.id, applications.c.outcome)
        .where(applications.c.person == person, applications.c.scheme == scheme)
        .order_by(applications.c.id.desc())
        .limit(1)
    ).first()
    if row is None or row.outcome == "accepted":
        return None
    if connection.execute(select(memberships.c.id).where(memberships.c.person == person, _taught())).first():
        return None
    return f"application {row.id} of person {person} is {row.outcome or 'open'}, and no trainer is recorded for them"


def _taught() -> Any:
    led = select(memberships.c.cohort).where(memberships.c.role == "trainer")
    return (memberships.c.role == "candidate") & memberships.c.cohort.in_(led)


def _witnesses(given: Sequence[str], person: str) -> list[str]:
    names = [" ".join(name.split()) for name in given]
    keys = [same_name(name) for name in names]
    if not all(names) or len(set(keys)) < len(keys):
        raise RefusedError("each witness needs a name, and counts once")
    if same_name(person) in keys:
        raise RefusedError(f"{person} can't be a witness of their own work")
    return names


def _route_is_met(scheme: Scheme, tanks: int, witnesses: int) -> None:
    if scheme.experience_route is None:
        raise RefusedError(f"the scheme '{scheme.id}' has no experience route: the way to its exam is its modules")
    least = scheme.experience
    missing = [
        f"{what} {have} of {need}"
        for what, have, need in (("tanks", tanks, least.tanks), ("witnesses", witnesses, least.witnesses))
        if have < need
    ]
    if missing:
        raise RefusedError(f"the experience route of '{scheme.id}' is not met: {', '.join(missing)}")


def _named(evidence: str | None) -> set[str]:
    return {same_name(name) for name in json.loads(evidence or '{"witnesses": []}')["witnesses"]}
