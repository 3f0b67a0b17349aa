"""What there is: lists to choose from, and all that a decision or a certificate is made from."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from sqlalchemy import func, select

from generator.assessment import Decision, Reason, Requirement
from generator.registry.cohorts import candidates_of, known_cohort
from generator.registry.decisions import known_decision
from generator.registry.papers import known_sitting
from generator.registry.reports import Report
from generator.registry.store import Registry, reading
from generator.registry.tables import (
    answers,
    appeals,
    applications,
    batches,
    certificates,
    cohorts,
    complaints,
    contents,
    cuts,
    decision_inputs,
    decisions,
    observations,
    paper_files,
    papers,
    people,
    recheck_seconds,
    rechecks,
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


@dataclass(frozen=True, slots=True)
class DecisionRecord:
    """A decision as it can be proved years later.

    Args:
        decision: with its reasons.
        facts: whom it is about, scheme and version, when and by whom it was made, which papers.
        cut: the panel's cut that was in force; None for the shares of the scheme's file.
        inputs: what else it rests on; None for a decision that was recorded before inputs were.
    """

    decision: Decision
    facts: Mapping[str, Any]
    cut: Mapping[str, Any] | None
    inputs: Mapping[str, Any] | None


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
        erased = select(people.c.id).where(people.c.erased_at.is_not(None))
        chosen = select(roles.c.person).where(
            roles.c.role == "coordinator", roles.c.until.is_(None), roles.c.person.not_in(erased)
        )
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


def decision_record(registry: Registry, decision: int) -> DecisionRecord:
    """A decision with all that it rests on, and who made it.

    Raises:
        RefusedError: there is none of this id.
    """
    made = read_decision(registry, decision)
    with reading(registry) as connection:
        row = known_decision(connection, decision)
        inputs = connection.execute(
            select(decision_inputs.c.inputs).where(decision_inputs.c.decision == decision)
        ).scalar()
        cut = connection.execute(select(cuts).where(cuts.c.id == row.cut)).mappings().first()
        named = select(people.c.id, people.c.name).where(people.c.id.in_([row.person, row.decided_by]))
        names: dict[int, str | None] = dict(connection.execute(named).all())
    facts = {name: row._mapping[name] for name in ("cohort", "scheme", "version", "scheme_status", "passed", "attempt",
             "decided_at", "decided_by", "exception")}  # fmt: skip
    facts |= {"decision": row.id, "person": row.person, "name": names.get(row.person),
              "decided_by_name": names.get(row.decided_by), "papers": json.loads(row.papers)}  # fmt: skip
    return DecisionRecord(
        made.decision, facts, None if cut is None else dict(cut), None if inputs is None else json.loads(inputs)
    )


def inputs_of(registry: Registry, cohort: int, person: int, papers_read: Sequence[int]) -> dict[str, object]:
    """What a decision on a person rests on, by numbers and hashes that an audit can hold against the registry."""
    with reading(registry) as connection:
        read = [
            {"paper": paper, "content": content, "answers": [], "file": None}
            for paper, content in connection.execute(
                select(papers.c.id, papers.c.content).where(papers.c.id.in_(papers_read)).order_by(papers.c.id)
            )
        ]
        for each in read:
            own = batches.c.paper == each["paper"]
            each["answers"] = list(connection.execute(select(batches.c.digest).where(own).order_by(batches.c.event))
                                   .scalars())  # fmt: skip
            own = paper_files.c.paper == each["paper"]
            each["file"] = connection.execute(select(paper_files.c.pdf_hash).where(own)).scalar()
        watched = (observations.c.cohort == cohort) & (observations.c.person == person)
        seen = [
            {"event": event, "observer": observer, "attempt": attempt, "steps": count}
            for event, observer, attempt, count in connection.execute(
                select(observations.c.event, observations.c.observer, observations.c.attempt, func.count())
                .where(watched)
                .group_by(observations.c.event, observations.c.observer, observations.c.attempt)
                .order_by(observations.c.event)
            )
        ]
        both = select(rechecks, recheck_seconds.c.seen.label("too"), recheck_seconds.c.observer.label("second"))
        both = both.outerjoin(recheck_seconds, recheck_seconds.c.recheck == rechecks.c.id)
        again = [
            {
                "recheck": row.id, "step": f"{row.practical}/{row.step}",
                "saw": [[row.observer, row.seen], *([] if row.second is None else [[row.second, row.too]])],
            }
            for row in connection.execute(
                both.where(rechecks.c.cohort == cohort, rechecks.c.person == person).order_by(rechecks.c.id)
            )
        ]  # fmt: skip
    return {"papers": read, "observations": seen, "rechecks": again}


def application_list(registry: Registry) -> Report:
    """Every application by experience; the words of its evidence are shown one by one."""
    columns = ("application", "person", "name", "scheme", "version", "tanks", "witnesses", "filed_at", "outcome",
               "decided_by")  # fmt: skip
    chosen = (
        select(applications.c.id, applications.c.person, people.c.name, applications.c.scheme, applications.c.version)
        .add_columns(applications.c.tanks, applications.c.witnesses, applications.c.filed_at, applications.c.outcome)
        .add_columns(applications.c.decided_by)
        .join(people, people.c.id == applications.c.person)
        .order_by(applications.c.id)
    )
    with reading(registry) as connection:
        return Report("applications", columns, tuple(tuple(row) for row in connection.execute(chosen)))


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
