"""Practical observations: what an observer saw of each step, as the watched checklist says it."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from itertools import combinations
from typing import Any

from sqlalchemy import Connection, select

from generator.assessment import Observations, Seen, read_observations
from generator.assessment.agreement import Agreement
from generator.assessment.paper_decision import how_alike, unlike, with_recheck
from generator.curriculum.models import Practical
from generator.problems import Problem, ProblemsError, RefusedError
from generator.registry.answers import bulk
from generator.registry.chain import canonical, sha256
from generator.registry.cohorts import Imported, candidates_of, known_cohort
from generator.registry.entry import Entry
from generator.registry.people import require_role
from generator.registry.store import Registry, reading, writing
from generator.registry.tables import observations, recheck_seconds, rechecks

_ONCE = ("person", "practical", "step", "attempt")
_BOTH = 2
_COLUMNS = ("event", "cohort", "person", "practical", "step", "seen", "observer", "attempt", "observed_on")


@dataclass(frozen=True, slots=True)
class Compared:
    """How far observers agree.

    Args:
        alike: percent agreement and AC1; None where no two of them watched the same.
        unlike: steps that one saw done and the other did not: the learner with attempt and observers, practical, step.
    """

    alike: Agreement | None
    unlike: tuple[tuple[str, str, str], ...]


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
        if attempt < 1:
            raise RefusedError(f"attempt {attempt} can't be: attempts count from 1")
        if observed_on.isoformat() > entry.today:
            raise RefusedError(f"{observed_on} is still to come, so nobody has observed anything then: look at the day")
        keys, seen = _read(connection, cohort, file, data, practicals, observer)
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


def import_rechecks(
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
    """Record the one immediate recheck of critical steps that were seen as not done: all of the table, or nothing.

    A second observer who watched the same recheck enters what they saw in a table of their own; where the two differ,
    the step was not done.

    Args:
        registry: where.
        cohort: its id.
        file: how problems name the table.
        data: its bytes: columns `learner`, `practical`, `step`, `seen`.
        practicals: those of the course, by id.
        observer: who watched the recheck; has to be an observer of this registry.
        observed_on: the day, which is the day of the practical itself.
        now: the time.
        attempt: at which the step was not done.
        dry_run: only say what would happen.

    Raises:
        ProblemsError: what `read_observations` refuses; a step that is not critical, or was not seen as not done on
            that day; a second recheck.
        RefusedError: no such cohort; no observer; the observer is one of those watched.
    """
    with writing(registry, now, dry_run=dry_run) as entry:
        connection = entry.connection
        keys, again = _read(connection, cohort, file, data, practicals, observer)
        first = _first_seen(connection, cohort, attempt, observed_on)
        known = {name: first.get(key, {}) for name, key in keys.items()}
        before = {(name, *step): seen for name, steps in known.items() for step, seen in steps.items()}
        _, log = with_recheck(before, again, practicals, file)
        problems: list[Problem] = []
        new = 0
        for learner, practical, step in log:
            word = str(again[learner, practical, step])
            row = {
                "cohort": cohort, "person": keys[learner], "practical": practical, "step": step, "seen": word,
                "observer": observer, "attempt": attempt, "observed_on": observed_on.isoformat(),
            }  # fmt: skip
            told = _rechecked(entry, row)
            if told is None:
                new += 1
            elif (told.seen, told.observer) != (word, observer):
                what = f"step '{step}' of {learner} was rechecked already, and was '{told.seen}' for person "
                what += str(told.observer)
                fix = "a critical step is rechecked once; the practical can be done again on another day"
                problems.append(Problem(file, 0, 0, "rechecked-already", what, fix))
        if problems:
            raise ProblemsError(problems)
    return Imported(new, len(log) - new, not dry_run)


def _read(
    connection: Connection,
    cohort: int,
    file: str,
    data: bytes,
    practicals: Mapping[str, Practical],
    observer: int,
) -> tuple[dict[str, int], Observations]:
    """The ids of a cohort's candidates by name, and what an observer's table says of them."""
    known_cohort(connection, cohort)
    require_role(connection, observer, "observer")
    names = candidates_of(connection, cohort)
    keys = {name: key for key, name in names.items()}
    seen = read_observations(file, data, list(names.values()), practicals)
    if any(keys[learner] == observer for learner, _, _ in seen):
        raise RefusedError("nobody can be their own observer: another observer has to watch")
    return keys, seen


def _rechecked(entry: Entry, row: Mapping[str, Any]) -> Any:
    """Enter a recheck, or what a second observer saw of it.

    Returns:
        The row that stands in the way; the very same one where it was entered before; None where it is new.
    """
    connection = entry.connection
    chosen = select(rechecks).where(*(rechecks.c[name] == row[name] for name in _ONCE))
    first = connection.execute(chosen).first()
    if first is None:
        entry.add(rechecks, row, "step.rechecked", row["observer"])
        return None
    if first.observer == row["observer"]:
        return first
    second = connection.execute(select(recheck_seconds).where(recheck_seconds.c.recheck == first.id)).first()
    if second is None:
        own = {"recheck": first.id, "seen": row["seen"], "observer": row["observer"]}
        entry.add(recheck_seconds, own, "step.rechecked_too", row["observer"])
    return second


def _first_seen(connection: Connection, cohort: int, attempt: int, day: date) -> dict[int, dict[tuple[str, str], Seen]]:
    """What was seen on a day, by person and step; where observers differ, what was not done."""
    found: dict[int, dict[tuple[str, str], Seen]] = {}
    chosen = select(observations).where(
        observations.c.cohort == cohort,
        observations.c.attempt == attempt,
        observations.c.observed_on == day.isoformat(),
    )
    for row in connection.execute(chosen):
        steps, step = found.setdefault(row.person, {}), (row.practical, row.step)
        if steps.get(step) is not Seen.NOT_DONE:
            steps[step] = Seen(row.seen)
    return found


def compare_observers(registry: Registry, cohort: int) -> Compared:
    """How far the observers of a cohort agree, where two of them watched the same steps at the same attempt.

    Raises:
        RefusedError: there is no such cohort.
    """
    with reading(registry) as connection:
        known_cohort(connection, cohort)
        names = candidates_of(connection, cohort)
        by_step: dict[tuple[str, str, str], list[tuple[int, Seen]]] = {}
        chosen = select(observations).where(observations.c.cohort == cohort).order_by(observations.c.id)
        for row in connection.execute(chosen):
            if row.person in names:
                place = (f"{names[row.person]} ({row.attempt})", row.practical, row.step)
                by_step.setdefault(place, []).append((row.observer, Seen(row.seen)))
    first: dict[tuple[str, str, str], Seen] = {}
    second: dict[tuple[str, str, str], Seen] = {}
    for place, each in by_step.items():
        for (one, saw), (other, also) in combinations(sorted(each), 2):
            pair = (f"{place[0]} [{one}, {other}]", *place[1:])
            first[pair], second[pair] = saw, also
    return Compared(how_alike(first, second), unlike(first, second))


def observation_rows(connection: Connection, event: int) -> list[list[Any]]:
    """The rows of one import as its digest covers them."""
    chosen = select(*(observations.c[name] for name in _COLUMNS)).where(observations.c.event == event)
    return [list(row) for row in connection.execute(chosen.order_by(observations.c.id))]


def _recorded(connection: Connection, observer: int, attempt: int) -> dict[tuple[int, str, str], str]:
    chosen = select(observations).where(observations.c.observer == observer, observations.c.attempt == attempt)
    return {(row.person, row.practical, row.step): row.seen for row in connection.execute(chosen)}


def seen_by_name(registry: Registry, cohort: int, both: Collection[tuple[str, str]] = ()) -> Observations:
    """What was seen of a cohort's candidates, as `decide` wants it: the newest attempt counts.

    Where observers of one attempt differ, the step counts as not shown: `not done` before `not seen` before `done`.
    A recheck counts in the place of what was seen at its attempt, by the same rules.

    Args:
        registry: where.
        cohort: its id.
        both: practical and step of those that two observers have to see: done for one alone, they are not seen. That
            goes for a recheck, too.
    """
    order = {Seen.NOT_DONE: 0, Seen.NOT_SEEN: 1, Seen.DONE: 2}
    found: dict[tuple[str, str, str], tuple[int, Seen]] = {}
    observers: dict[tuple[tuple[str, str, str], int], set[int]] = {}
    with reading(registry) as connection:
        names = candidates_of(connection, cohort)
        for row in connection.execute(select(observations).where(observations.c.cohort == cohort)):
            if row.person not in names:
                continue
            place, seen = (names[row.person], row.practical, row.step), Seen(row.seen)
            observers.setdefault((place, row.attempt), set()).add(row.observer)
            attempt, before = found.get(place, (0, seen))
            if row.attempt > attempt or (row.attempt == attempt and order[seen] < order[before]):
                found[place] = (row.attempt, seen)
        alone = {place for place, (attempt, _) in found.items() if len(observers[place, attempt]) < _BOTH}
        again = select(rechecks, recheck_seconds.c.seen.label("too")).outerjoin(
            recheck_seconds, recheck_seconds.c.recheck == rechecks.c.id
        )
        for row in connection.execute(again.where(rechecks.c.cohort == cohort)):
            place = (names.get(row.person, ""), row.practical, row.step)
            if place in found and found[place][0] == row.attempt:
                saw = [Seen(word) for word in (row.seen, row.too) if word is not None]
                found[place] = (row.attempt, min(saw, key=order.__getitem__))
                alone = alone | {place} if len(saw) < _BOTH else alone - {place}
    return {
        place: Seen.NOT_SEEN if seen is Seen.DONE and place in alone and place[1:] in both else seen
        for place, (_, seen) in found.items()
    }
