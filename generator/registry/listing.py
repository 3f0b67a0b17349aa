"""What there is: lists to choose from, and all that a decision or a certificate is made from."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from sqlalchemy import select

from generator.assessment import Decision, Reason, Requirement
from generator.registry.cohorts import candidates_of, known_cohort
from generator.registry.decisions import known_decision
from generator.registry.papers import known_sitting
from generator.registry.reports import Report
from generator.registry.store import Registry, reading
from generator.registry.tables import (
    answers,
    appeals,
    certificates,
    cohorts,
    complaints,
    contents,
    cuts,
    decisions,
    papers,
    people,
    roles,
    sittings,
)


@dataclass(frozen=True, slots=True)
class Cut:
    """A panel's cut: least shares of the written points and of the practical's steps."""

    id: int
    written: float
    practical: float


@dataclass(frozen=True, slots=True)
class WrittenPaper:
    """A candidate's paper with what was recorded of it.

    Args:
        paper: its id.
        person: whose.
        number: printed on it.
        content: what it asks, with the key, as JSON.
        marks: item, competency, verdict, points and most of each recorded answer, by the question's printed number.
    """

    paper: int
    person: int
    number: int
    content: str
    marks: Mapping[int, Mapping[str, Any]]


@dataclass(frozen=True, slots=True)
class WrittenExam:
    """A sitting: what it was for, what its papers were made from, and its papers."""

    cohort: int
    scheme: str | None
    version: int | None
    about: str
    papers: tuple[WrittenPaper, ...]


@dataclass(frozen=True, slots=True)
class Decided:
    """A recorded decision: its number, whom it is about, and its reasons."""

    id: int
    person: int
    decision: Decision


def people_list(registry: Registry) -> Report:
    """Everyone who was not erased, with the roles held now."""
    with reading(registry) as connection:
        held: dict[int, list[str]] = {}
        for row in connection.execute(select(roles).where(roles.c.until.is_(None)).order_by(roles.c.id)):
            held.setdefault(row.person, []).append(row.role)
        chosen = select(people).where(people.c.erased_at.is_(None)).order_by(people.c.id)
        rows = tuple(
            (row.id, row.name, row.language, row.consent_on, " ".join(held.get(row.id, [])))
            for row in connection.execute(chosen)
        )
    return Report("people", ("person", "name", "language", "consent_on", "roles"), rows)


def coordinators(registry: Registry) -> tuple[int, ...]:
    """Ids of those who coordinate now."""
    with reading(registry) as connection:
        chosen = select(roles.c.person).where(roles.c.role == "coordinator", roles.c.until.is_(None))
        return tuple(connection.execute(chosen.order_by(roles.c.person)).scalars())


def cohort_list(registry: Registry) -> Report:
    """Every cohort."""
    return _list(registry, "cohorts", cohorts, ("cohort", "name", "starts_on"))


def candidates(registry: Registry, cohort: int) -> dict[int, str]:
    """Names of a cohort's candidates by id, in the order of entry.

    Raises:
        RefusedError: there is no such cohort.
    """
    with reading(registry) as connection:
        known_cohort(connection, cohort)
        return candidates_of(connection, cohort)


def sitting_list(registry: Registry, cohort: int | None = None) -> Report:
    """Every sitting, of one cohort or of all."""
    columns = ("sitting", "cohort", "set_id", "scheme", "version", "held_on")
    found = _list(registry, "sittings", sittings, columns)
    return Report(found.name, columns, tuple(row for row in found.rows if cohort is None or row[1] == cohort))


def _list(registry: Registry, name: str, table: Any, columns: tuple[str, ...]) -> Report:
    """Rows of a table by its key, which gets the first of the names."""
    chosen = select(table.c.id, *(table.c[column] for column in columns[1:])).order_by(table.c.id)
    with reading(registry) as connection:
        return Report(name, columns, tuple(tuple(row) for row in connection.execute(chosen)))


def written_exam(registry: Registry, sitting: int) -> WrittenExam:
    """The papers of a sitting with their recorded marks; those of erased people are left out.

    Raises:
        RefusedError: there is no such sitting.
    """
    with reading(registry) as connection:
        about = known_sitting(connection, sitting)
        marks: dict[int, dict[int, dict[str, Any]]] = {}
        own = select(papers.c.id).where(papers.c.sitting == sitting)
        for row in connection.execute(select(answers).where(answers.c.paper.in_(own))).mappings():
            marks.setdefault(row["paper"], {})[row["label"]] = {str(name): value for name, value in row.items()}
        chosen = (
            select(papers.c.id, papers.c.person, papers.c.number, contents.c.data)
            .join(contents, contents.c.hash == papers.c.content)
            .join(people, people.c.id == papers.c.person)
            .where(papers.c.sitting == sitting, people.c.erased_at.is_(None))
            .order_by(papers.c.number)
        )
        found = tuple(
            WrittenPaper(row.id, row.person, row.number, row.data.decode("utf-8"), marks.get(row.id, {}))
            for row in connection.execute(chosen)
        )
        return WrittenExam(about.cohort, about.scheme, about.version, about.about, found)


def cut_in_force(registry: Registry, scheme: str, version: int) -> Cut | None:
    """The newest cut that a panel recorded for a version of a scheme."""
    chosen = select(cuts).where(cuts.c.scheme == scheme, cuts.c.version == version)
    with reading(registry) as connection:
        row = connection.execute(chosen.order_by(cuts.c.id.desc()).limit(1)).first()
    return None if row is None else Cut(row.id, row.written, row.practical)


def decision_list(registry: Registry) -> Report:
    """Every decision, newest last."""
    columns = ("decision", "person", "name", "cohort", "scheme", "version", "passed", "decided_at", "certificate")
    with reading(registry) as connection:
        chosen = (
            select(decisions.c.id, decisions.c.person, people.c.name, decisions.c.cohort, decisions.c.scheme)
            .add_columns(decisions.c.version, decisions.c.passed, decisions.c.decided_at, certificates.c.number)
            .join(people, people.c.id == decisions.c.person)
            .outerjoin(certificates, certificates.c.decision == decisions.c.id)
            .order_by(decisions.c.id)
        )
        return Report("decisions", columns, tuple(tuple(row) for row in connection.execute(chosen)))


def failed_tries(registry: Registry, scheme: str) -> tuple[tuple[int, str, tuple[int, ...]], ...]:
    """Decisions under a scheme that were no pass and stand: person, day, and the papers that they rest on."""
    aside = select(appeals.c.decision).where(appeals.c.outcome == "set_aside")
    chosen = select(decisions).where(
        decisions.c.scheme == scheme, decisions.c.passed.is_(False), decisions.c.id.not_in(aside)
    )
    with reading(registry) as connection:
        return tuple(
            (row.person, row.decided_at[:10], tuple(json.loads(row.papers)))
            for row in connection.execute(chosen.order_by(decisions.c.id))
        )


def read_decision(registry: Registry, decision: int) -> Decided:
    """A decision as it was made.

    Raises:
        RefusedError: there is none of this id.
    """
    with reading(registry) as connection:
        row = known_decision(connection, decision)
    reasons = tuple(
        Reason(**{**reason, "requirement": Requirement(reason["requirement"])}) for reason in json.loads(row.reasons)
    )
    return Decided(row.id, row.person, Decision(row.scheme, row.version, reasons))


def certificate_list(registry: Registry) -> Report:
    """Every certificate: the register's lines, in the order of the numbers."""
    columns = ("certificate", "person", "name", "scheme", "status", "valid_from", "valid_to")
    chosen = select(
        certificates.c.number, certificates.c.person, certificates.c.printed_name, certificates.c.scheme,
        certificates.c.status, certificates.c.valid_from, certificates.c.valid_to,
    ).order_by(certificates.c.serial)  # fmt: skip
    with reading(registry) as connection:
        return Report("certificates", columns, tuple(tuple(row) for row in connection.execute(chosen)))


def signed_certificates(registry: Registry) -> tuple[bytes, ...]:
    """The signed bytes of every certificate that the register still holds."""
    with reading(registry) as connection:
        chosen = select(certificates.c.signed).where(certificates.c.signed.is_not(None))
        return tuple(connection.execute(chosen.order_by(certificates.c.serial)).scalars())


def appeal_list(registry: Registry) -> Report:
    """Every appeal."""
    return _list(registry, "appeals", appeals, ("appeal", "decision", "filed_at", "outcome", "decided_at"))


def complaint_list(registry: Registry) -> Report:
    """Every complaint."""
    columns = ("complaint", "tank", "certificate", "filed_at", "about", "closed_at")
    return _list(registry, "complaints", complaints, columns)
