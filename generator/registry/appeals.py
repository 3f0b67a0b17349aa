"""Appeals against decisions: a new decider, and the decision stands while one is open."""

from __future__ import annotations

from datetime import datetime, timedelta

from sqlalchemy import select

from generator.problems import RefusedError
from generator.registry.chain import stamp
from generator.registry.decisions import known_decision, may_decide
from generator.registry.entry import Entry
from generator.registry.people import known_person, require_role
from generator.registry.store import Registry, writing
from generator.registry.tables import appeals, certificates

APPEAL_DAYS = 30
"""Days after a decision in which a candidate may appeal: this course's own rule."""


def file_appeal(
    registry: Registry, decision: int, grounds: str, *, by: int, now: datetime, days: int = APPEAL_DAYS
) -> int:
    """Enter a candidate's appeal. The mark and the decision stand while it is open.

    Args:
        registry: where.
        decision: against which.
        grounds: the candidate's own words.
        by: a coordinator, who enters it for the candidate.
        now: the time.
        days: in which an appeal may be filed.

    Raises:
        RefusedError: no such decision; no grounds; too late; one is open already; `by` is no coordinator.
    """
    with writing(registry, now) as entry:
        connection = entry.connection
        require_role(connection, by, "coordinator")
        row = known_decision(connection, decision)
        known_person(connection, row.person)
        if not grounds.strip():
            raise RefusedError("an appeal needs its grounds, in the candidate's own words")
        last = stamp(datetime.fromisoformat(row.decided_at) + timedelta(days=days))
        if entry.at > last:
            raise RefusedError(f"appeals against decision {decision} could be filed until {last[:10]}")
        chosen = select(appeals.c.id).where(appeals.c.decision == decision, appeals.c.outcome.is_(None))
        if connection.execute(chosen).first():
            raise RefusedError(f"an appeal against decision {decision} is open already")
        values = {"decision": decision, "filed_at": entry.at, "grounds": grounds.strip()}
        return int(entry.add(appeals, values, "appeal.filed", by, person=row.person))


def decide_appeal(
    registry: Registry, appeal: int, outcome: str, reasons: str, *, by: int, now: datetime, exception: str | None = None
) -> None:
    """Close an appeal: the decision `stands`, or is `set_aside`, and then a new one can be made.

    Args:
        registry: where.
        appeal: its id.
        outcome: `stands` or `set_aside`.
        reasons: told to the candidate.
        by: a coordinator who did not make the decision, and did not train the candidate.
        now: the time.
        exception: why someone may decide who trained this person.

    Raises:
        RefusedError: no open appeal of this id; no such outcome; no reasons; the same decider as before; a certificate
            rests on the decision and is in force.
    """
    with writing(registry, now) as entry:
        connection = entry.connection
        require_role(connection, by, "coordinator")
        row = connection.execute(select(appeals).where(appeals.c.id == appeal, appeals.c.outcome.is_(None))).first()
        if row is None:
            raise RefusedError(f"there is no open appeal {appeal} in this registry")
        decision = known_decision(connection, row.decision)
        if outcome not in ("stands", "set_aside") or not reasons.strip():
            raise RefusedError("an appeal ends with 'stands' or 'set_aside', and with reasons")
        if by == decision.decided_by:
            raise RefusedError(f"person {by} made the decision and can't hear the appeal: another coordinator has to")
        noted = may_decide(connection, by, decision.person, exception)
        if outcome == "set_aside":
            _no_certificate_rests_on(entry, decision.id)
        values = {"outcome": outcome, "reasons": reasons.strip(), "decided_at": entry.at, "decided_by": by}
        body = {"outcome": outcome, "exception": noted}
        entry.change(appeals, appeal, values, "appeal.decided", by, body=body, person=decision.person)


def _no_certificate_rests_on(entry: Entry, decision: int) -> None:
    row = entry.connection.execute(
        select(certificates.c.number).where(
            certificates.c.decision == decision, certificates.c.status.in_(("active", "suspended"))
        )
    ).first()
    if row is not None:
        raise RefusedError(f"the certificate {row.number} rests on this decision: withdraw it first")
