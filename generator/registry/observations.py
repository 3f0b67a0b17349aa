"""Practical observations: what an observer saw of each step, as the watched checklist says it."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, datetime
from typing import Any

from sqlalchemy import Connection, select

from generator.assessment import Observations, Seen, read_observations
from generator.curriculum.models import Practical
from generator.problems import Problem, ProblemsError, RefusedError
from generator.registry.answers import bulk
from generator.registry.chain import canonical, sha256
from generator.registry.cohorts import Imported, candidates_of, known_cohort
from generator.registry.people import require_role
from generator.registry.store import Registry, reading, writing
from generator.registry.tables import observations

_COLUMNS = ("event", "cohort", "person", "practical", "step", "seen", "observer", "attempt", "observed_on")


def import_observations(
    registry: Registry,
    cohort: int,
    file: str,
    data: bytes,
    *,
    practicals: Mapping[str, Practical],
    observer: int,
    observed_on: date,
    now: datetime,
    attempt: int = 1,
    dry_run: bool = False,
) -> Imported:
    """Record what an observer saw of a cohort's candidates: all of the table, or nothing.

    The same table again changes nothing. What was recorded is not changed: a step shown again later is another attempt.

    Args:
        registry: where.
        cohort: its id.
        file: how problems name the table.
        data: its bytes: columns `learner`, `practical`, `step`, `seen`.
        practicals: those of the course, by id.
        observer: who watched; has to be an observer of this registry.
        observed_on: the day.
        now: the time.
        attempt: 1, and one more for each time that the practical is done again.
        dry_run: only say what would happen.

    Raises:
        ProblemsError: what `read_observations` refuses; a step that this observer has recorded otherwise.
        RefusedError: no such cohort; no observer; the observer is one of those watched; a day to come.
    """
    with writing(registry, now, dry_run=dry_run) as entry:
        connection = entry.connection
        known_cohort(connection, cohort)
        require_role(connection, observer, "observer")
        if attempt < 1 or observed_on.isoformat() > entry.today:
            raise RefusedError(
                f"attempt {attempt} on {observed_on} can't be: attempts count from 1, and the day is past"
            )
        names = candidates_of(connection, cohort)
        keys = {name: key for key, name in names.items()}
        seen = read_observations(file, data, list(names.values()), practicals)
        if any(keys[learner] == observer for learner, _, _ in seen):
            raise RefusedError("nobody can be their own observer: another observer has to watch")
        there = _recorded(connection, observer, attempt)
        problems: list[Problem] = []
        fresh: list[tuple[Any, ...]] = []
        for (learner, practical, step), word in seen.items():
            before = there.get((keys[learner], practical, step))
            if before is None:
                fresh.append((keys[learner], practical, step, str(word), observer, attempt, observed_on.isoformat()))
            elif before != word:
                what = f"step '{step}' of {learner} is recorded already as '{before}'"
                fix = f"if it was shown again, record it as attempt {attempt + 1}"
                problems.append(Problem(file, 0, 0, "recorded-otherwise", what, fix))
        if problems:
            raise ProblemsError(problems)
        if fresh:
            rows = [(entry.next_event, cohort, *row) for row in fresh]
            body = {"rows": len(rows), "digest": sha256(canonical(rows))}
            entry.event("observations.recorded", f"cohorts:{cohort}", observer, body)
            bulk(connection, observations, _COLUMNS, rows)
    return Imported(len(fresh), len(seen) - len(fresh), not dry_run)


def observation_rows(connection: Connection, event: int) -> list[list[Any]]:
    """The rows of one import as its digest covers them."""
    chosen = select(*(observations.c[name] for name in _COLUMNS)).where(observations.c.event == event)
    return [list(row) for row in connection.execute(chosen.order_by(observations.c.id))]


def _recorded(connection: Connection, observer: int, attempt: int) -> dict[tuple[int, str, str], str]:
    chosen = select(observations).where(observations.c.observer == observer, observations.c.attempt == attempt)
    return {(row.person, row.practical, row.step): row.seen for row in connection.execute(chosen)}


def seen_by_name(registry: Registry, cohort: int) -> Observations:
    """What was seen of a cohort's candidates, as `decide` wants it: the newest attempt counts.

    Where observers of one attempt differ, the step counts as not shown: `not done` before `not seen` before `done`.
    """
    order = {Seen.NOT_DONE: 0, Seen.NOT_SEEN: 1, Seen.DONE: 2}
    found: dict[tuple[str, str, str], tuple[int, Seen]] = {}
    with reading(registry) as connection:
        names = candidates_of(connection, cohort)
        for row in connection.execute(select(observations).where(observations.c.cohort == cohort)):
            if row.person not in names:
                continue
            place, seen = (names[row.person], row.practical, row.step), Seen(row.seen)
            attempt, before = found.get(place, (0, seen))
            if row.attempt > attempt or (row.attempt == attempt and order[seen] < order[before]):
                found[place] = (row.attempt, seen)
    return {place: seen for place, (_, seen) in found.items()}
