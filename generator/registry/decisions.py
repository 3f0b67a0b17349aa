"""Decisions as they were made, and the cuts that local panels set. The rules lie in `assessment`, not here."""

from __future__ import annotations

import json
import math
from collections.abc import Mapping, Sequence
from dataclasses import asdict
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, func, select

from generator.assessment import Decision
from generator.problems import RefusedError
from generator.registry.chain import canonical
from generator.registry.cohorts import has_trained, known_cohort, roles_in
from generator.registry.people import known_person, require_role
from generator.registry.store import Registry, writing
from generator.registry.tables import SCHEME_STATUSES, appeals, certificates, cuts, decision_inputs, decisions, papers


def record_cut(
    registry: Registry,
    scheme: str,
    version: int,
    *,
    method: str,
    written: float,
    practical: float,
    judges: int,
    by: int,
    now: datetime,
) -> int:
    """Record the cut that a local panel set: from then on decisions under a provisional scheme can certify.

    Args:
        registry: where.
        scheme: id of the scheme.
        version: its version.
        method: how the panel came to it.
        written: least share of the written points, above 0 and at most 1.
        practical: least share of the practical's steps, likewise.
        judges: how many sat on the panel.
        by: a coordinator.
        now: the time.

    Raises:
        RefusedError: a share outside its range; no judge; no method; `by` is no coordinator.
    """
    with writing(registry, now) as entry:
        require_role(entry.connection, by, "coordinator")
        for share in (written, practical):
            if not (math.isfinite(share) and 0 < share <= 1):
                raise RefusedError(f"a cut is a share above 0 and at most 1, not {share}")
        if judges < 1 or not method.strip():
            raise RefusedError("a cut needs at least one judge and the method by which it was found")
        row = {
            "scheme": scheme, "version": version, "method": method.strip(), "written": float(written),
            "practical": float(practical), "judges": judges, "recorded_at": entry.at, "recorded_by": by,
        }  # fmt: skip
        return int(entry.add(cuts, row, "cut.recorded", by))


def record_decision(
    registry: Registry,
    cohort: int,
    person: int,
    decision: Decision,
    *,
    scheme_status: str,
    papers_read: Sequence[int] = (),
    exception: str | None = None,
    inputs: Mapping[str, object] | None = None,
    by: int,
    now: datetime,
) -> int:
    """Record a decision with all its reasons; the same decision on the same papers again is the same one.

    Args:
        registry: where.
        cohort: in which the person is a candidate.
        person: whom it is about.
        decision: as `decide` gave it.
        scheme_status: `draft`, `provisional` or `in-force`, as the scheme said when it was applied.
        papers_read: ids of the papers that it rests on.
        exception: why someone may decide who trained this person; only where there is nobody else.
        inputs: what else it rests on: the rule with its cut, hashes, observations, how sure one paper is. No name.
        by: the deciding coordinator.
        now: the time.

    Returns:
        The decision's id.

    Raises:
        RefusedError: `by` is no coordinator, is the person, or trained them without a recorded exception; no candidate
            of the cohort; a paper of someone else; a decision without reasons.
    """
    with writing(registry, now) as entry:
        connection = entry.connection
        require_role(connection, by, "coordinator")
        known_cohort(connection, cohort)
        known_person(connection, person)
        if "candidate" not in roles_in(connection, cohort, person):
            raise RefusedError(f"person {person} is no candidate of cohort {cohort}")
        if scheme_status not in SCHEME_STATUSES:
            raise RefusedError(f"a scheme is {', '.join(SCHEME_STATUSES)}, not '{scheme_status}'")
        if not decision.reasons:
            raise RefusedError("a decision without reasons can't be recorded")
        exception = may_decide(connection, by, person, exception)
        own = set(connection.execute(select(papers.c.id).where(papers.c.person == person)).scalars())
        strange = [paper for paper in papers_read if paper not in own]
        if strange:
            raise RefusedError(f"paper {strange[0]} is not one of person {person}")
        reasons = canonical([asdict(reason) for reason in decision.reasons])
        read = canonical(sorted(papers_read))
        cut = _cut_in_force(connection, decision)
        open_one = _same_decision(connection, person, decision, reasons, read, (scheme_status, cut))
        if open_one is not None:
            return open_one
        row = {
            "person": person, "cohort": cohort, "scheme": decision.scheme, "version": decision.version,
            "scheme_status": scheme_status, "cut": cut, "passed": decision.passed,
            "reasons": reasons, "papers": read, "attempt": _attempt(connection, person, decision.scheme, read),
            "decided_at": entry.at, "decided_by": by, "exception": exception,
        }  # fmt: skip
        key = int(entry.add(decisions, row, "decision.recorded", by, body={"passed": decision.passed}))
        if inputs is not None:
            rests_on = {"decision": key, "inputs": canonical({"format": 1, **inputs})}
            entry.add(decision_inputs, rests_on, "decision.rests_on", by)
        return key


def may_decide(connection: Connection, by: int, person: int, exception: str | None) -> str | None:
    """Refuse whoever decides on themselves or on whom they trained; returns the exception where one was needed.

    Raises:
        RefusedError: it says who else could decide.
    """
    if by == person:
        raise RefusedError("nobody decides on themselves: another coordinator has to")
    taught = has_trained(connection, by, person)
    if taught is None:
        return None
    if not (exception or "").strip():
        raise RefusedError(
            f"person {by} trained person {person} in '{taught}' and can't decide on them: another coordinator has to. "
            "If there is nobody else, record an exception with its reason"
        )
    return str(exception).strip()


def _same_decision(
    connection: Connection, person: int, decision: Decision, reasons: str, read: str, under: tuple[str, int | None]
) -> int | None:
    """The person's newest decision, if it is this one under the same status and cut, and was not set aside.

    A cut that a panel recorded since makes another decision, even where its numbers are those of before: only that one
    can issue.
    """
    row = connection.execute(
        select(decisions)
        .where(decisions.c.person == person, decisions.c.scheme == decision.scheme)
        .order_by(decisions.c.id.desc())
        .limit(1)
    ).first()
    if row is None or (row.version, row.reasons, row.papers) != (decision.version, reasons, read):
        return None
    if (row.scheme_status, row.cut) != under:
        return None
    if was_set_aside(connection, row.id) or (row.papers == "[]" and _used(connection, row.id)):
        return None  # without papers, only the certificate tells one occasion from the next
    return int(row.id)


def _used(connection: Connection, decision: int) -> bool:
    return (
        connection.execute(select(certificates.c.number).where(certificates.c.decision == decision)).first() is not None
    )


def _cut_in_force(connection: Connection, decision: Decision) -> int | None:
    chosen = select(func.max(cuts.c.id)).where(cuts.c.scheme == decision.scheme, cuts.c.version == decision.version)
    found = connection.execute(chosen).scalar()
    return None if found is None else int(found)


def _attempt(connection: Connection, person: int, scheme: str, read: str) -> int:
    """Which try it is; to decide again on the same papers, by a new cut or after an appeal, is no new one."""
    before = select(decisions.c.papers, decisions.c.attempt).where(
        decisions.c.person == person, decisions.c.scheme == scheme
    )
    tries: dict[str, int] = dict(connection.execute(before.order_by(decisions.c.id)).all())
    return tries[read] if read in tries and json.loads(read) else max(tries.values(), default=0) + 1


def was_set_aside(connection: Connection, decision: int) -> bool:
    """Whether an appeal took a decision back."""
    chosen = select(appeals.c.id).where(appeals.c.decision == decision, appeals.c.outcome == "set_aside")
    return connection.execute(chosen).first() is not None


def known_decision(connection: Connection, decision: int) -> Any:
    """A decision's row.

    Raises:
        RefusedError: there is none of this id.
    """
    row = connection.execute(select(decisions).where(decisions.c.id == decision)).first()
    if row is None:
        raise RefusedError(f"there is no decision {decision} in this registry")
    return row
