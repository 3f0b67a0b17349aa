"""Reports as plain rows: a cohort, competencies, pass rates, certificates that end soon, tanks."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any

from sqlalchemy import Connection, String, case, cast, func, select

from generator.registry.chain import stamp
from generator.registry.cohorts import candidates_of, known_cohort
from generator.registry.csv_text import to_csv
from generator.registry.store import Registry, reading
from generator.registry.tables import (
    HOLD_POINTS,
    answers,
    certificates,
    cohorts,
    complaints,
    decisions,
    hold_points,
    leak_tests,
    observations,
    papers,
    people,
    sittings,
    tank_people,
    tanks,
)


@dataclass(frozen=True, slots=True)
class Report:
    """A table of plain values.

    Args:
        name: of the report.
        columns: names of the columns, for programs.
        rows: texts, numbers, True and False, None for what is not there.
    """

    name: str
    columns: tuple[str, ...]
    rows: tuple[tuple[Any, ...], ...]

    def as_csv(self) -> bytes:
        """The report as CSV that no spreadsheet takes for formulas."""
        return to_csv(self.columns, self.rows)


def cohort_report(registry: Registry, cohort: int) -> Report:
    """Each candidate of a cohort: points, steps shown, the newest decision, the newest certificate.

    Raises:
        RefusedError: there is no such cohort.
    """
    columns = ("person", "name", "language", "papers", "points", "most", "steps_done", "steps_seen", "decision",
               "certificate", "status", "valid_to")  # fmt: skip
    with reading(registry) as connection:
        known_cohort(connection, cohort)
        names = candidates_of(connection, cohort)
        languages = dict(connection.execute(select(people.c.id, people.c.language)).all())
        points = _points(connection, cohort)
        steps = _steps(connection, cohort)
        decided = _newest(connection, select(decisions.c.person, decisions.c.passed)
                          .where(decisions.c.cohort == cohort).order_by(decisions.c.id))  # fmt: skip
        held = {
            row.person: (row.number, row.status, row.valid_to)
            for row in connection.execute(
                select(certificates).join(decisions, decisions.c.id == certificates.c.decision)
                .where(decisions.c.cohort == cohort).order_by(certificates.c.serial)
            )
        }  # fmt: skip
        rows = tuple(
            (
                key, name, languages[key], *points.get(key, (0, 0, 0)), *steps.get(key, (0, 0)),
                _verdict(decided.get(key)), *held.get(key, (None, None, None)),
            )
            for key, name in names.items()
        )  # fmt: skip
    return Report("cohort", columns, rows)


def competency_report(registry: Registry, cohort: int | None = None) -> Report:
    """Each competency: how many answers, how many of them right, how many people answered.

    Args:
        registry: where.
        cohort: its id; None for all cohorts.

    Raises:
        RefusedError: there is no such cohort.
    """
    columns = ("competency", "answers", "right", "share", "people")
    with reading(registry) as connection:
        right = func.sum(case((answers.c.verdict.in_(("right", "right_from_earlier")), 1), else_=0))
        chosen = select(answers.c.competency, func.count(), right, func.count(papers.c.person.distinct())).join(
            papers, papers.c.id == answers.c.paper
        )
        if cohort is not None:
            known_cohort(connection, cohort)
            chosen = chosen.join(sittings, sittings.c.id == papers.c.sitting).where(sittings.c.cohort == cohort)
        found = connection.execute(chosen.group_by(answers.c.competency).order_by(answers.c.competency))
        rows = tuple((name, count, int(good), good / count, persons) for name, count, good, persons in found)
    return Report("competencies", columns, rows)


def pass_rates(registry: Registry) -> Report:
    """Each cohort and scheme: tries and passes, each try by its newest decision, whether or not an appeal is open."""
    columns = ("cohort", "scheme", "version", "decided", "passed", "share", "first_attempts", "first_passed")
    passed = func.sum(case((decisions.c.passed, 1), else_=0))
    first = func.sum(case((decisions.c.attempt == 1, 1), else_=0))
    first_passed = func.sum(case((decisions.c.passed & (decisions.c.attempt == 1), 1), else_=0))
    with reading(registry) as connection:
        group = (cohorts.c.name, decisions.c.scheme, decisions.c.version)
        papers_read = case((decisions.c.papers == "[]", cast(decisions.c.id, String)), else_=decisions.c.papers)
        one_try = (decisions.c.person, decisions.c.cohort, decisions.c.scheme, decisions.c.version, papers_read)
        chosen = (
            select(*group, func.count(), passed, first, first_passed)
            .join(cohorts, cohorts.c.id == decisions.c.cohort)
            .where(decisions.c.id.in_(select(func.max(decisions.c.id)).group_by(*one_try)))
            .group_by(*group)
            .order_by(*group)
        )
        rows = tuple(
            (name, scheme, version, count, int(good), good / count, int(firsts), int(firsts_good))
            for name, scheme, version, count, good, firsts, firsts_good in connection.execute(chosen)
        )
    return Report("pass_rates", columns, rows)


def expiring_soon(registry: Registry, *, now: datetime, days: int = 90) -> Report:
    """Certificates in force whose last day is near or over, soonest first.

    Args:
        registry: where.
        now: the time.
        days: from today.
    """
    columns = ("certificate", "person", "name", "scheme", "status", "valid_to")
    until = stamp(now + timedelta(days=days))[:10]
    with reading(registry) as connection:
        chosen = (
            select(certificates.c.number, certificates.c.person, people.c.name, certificates.c.scheme)
            .add_columns(certificates.c.status, certificates.c.valid_to)
            .join(people, people.c.id == certificates.c.person)
            .where(certificates.c.status.in_(("active", "suspended")), certificates.c.valid_to <= until)
            .order_by(certificates.c.valid_to, certificates.c.serial)
        )
        rows = tuple(tuple(row) for row in connection.execute(chosen))
    return Report("expiring", columns, rows)


def tank_report(registry: Registry) -> Report:
    """Each tank: its place, how far its hold points are signed, leak test, who built and checked, open complaints."""
    columns = ("tank", "place", "volume", "wall_height", "started_on", "hold_points_good", "hold_points", "next_point",
               "tight", "built_by", "checked_by", "complaints", "open_complaints")  # fmt: skip
    with reading(registry) as connection:
        verdicts: dict[str, dict[str, str]] = {}
        for row in connection.execute(select(hold_points).order_by(hold_points.c.id)):
            verdicts.setdefault(row.tank, {})[row.point] = row.verdict
        tight = _newest(connection, select(leak_tests.c.tank, leak_tests.c.tight).order_by(leak_tests.c.id))
        parts: dict[tuple[str, str], list[str]] = {}
        for row in connection.execute(select(tank_people).order_by(tank_people.c.id)):
            parts.setdefault((row.tank, row.part), []).append(row.certificate)
        chosen = select(complaints.c.tank, func.count(), func.count(complaints.c.closed_at)).group_by(complaints.c.tank)
        complained = {tank: (count, count - closed) for tank, count, closed in connection.execute(chosen)}
        rows = tuple(
            (
                row.number, row.place, row.volume, row.wall_height, row.started_on,
                *_progress(verdicts.get(row.number, {})), tight.get(row.number),
                " ".join(parts.get((row.number, "built"), [])), " ".join(parts.get((row.number, "checked"), [])),
                *complained.get(row.number, (0, 0)),
            )
            for row in connection.execute(select(tanks).order_by(tanks.c.serial))
        )  # fmt: skip
    return Report("tanks", columns, rows)


def _progress(verdicts: Mapping[str, str]) -> tuple[int, int, str | None]:
    """Points that are done, all points, and the next one."""
    done = [point for point in HOLD_POINTS if verdicts.get(point, "not_good") != "not_good"]
    return len(done), len(HOLD_POINTS), next((point for point in HOLD_POINTS if point not in done), None)


def _points(connection: Connection, cohort: int) -> dict[int, tuple[int, int, int]]:
    chosen = (
        select(papers.c.person, func.count(papers.c.id.distinct()), func.coalesce(func.sum(answers.c.points), 0))
        .add_columns(func.coalesce(func.sum(answers.c.most), 0))
        .join(sittings, sittings.c.id == papers.c.sitting)
        .outerjoin(answers, answers.c.paper == papers.c.id)
        .where(sittings.c.cohort == cohort)
        .group_by(papers.c.person)
    )
    found = connection.execute(chosen)
    return {person: (count, int(points), int(most)) for person, count, points, most in found}


def _steps(connection: Connection, cohort: int) -> dict[int, tuple[int, int]]:
    done = func.sum(case((observations.c.seen == "done", 1), else_=0))
    chosen = select(observations.c.person, done, func.count()).where(observations.c.cohort == cohort)
    found = connection.execute(chosen.group_by(observations.c.person))
    return {person: (int(good), count) for person, good, count in found}


def _newest(connection: Connection, chosen: Any) -> dict[Any, Any]:
    """The last value of each key, in the order of the query."""
    return dict(connection.execute(chosen).all())


def _verdict(passed: bool | None) -> str | None:
    return None if passed is None else "passed" if passed else "not_yet"
