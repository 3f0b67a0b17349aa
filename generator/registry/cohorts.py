"""Cohorts: who is taught together, by whom; and the class list that fills one."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from datetime import date, datetime

from sqlalchemy import Connection, select

from generator.exercises import read_class_list, same_name
from generator.problems import Problem, ProblemsError, RefusedError
from generator.registry.csv_text import unguarded
from generator.registry.people import NewPerson, known_person, new_person, require_role
from generator.registry.store import Registry, writing
from generator.registry.tables import MEMBERS, cohorts, memberships, people


@dataclass(frozen=True, slots=True)
class Imported:
    """What an import did, or would do.

    Args:
        new: rows that were not there before.
        same: rows that were there already, and stay as they are.
        kept: False after a dry run.
    """

    new: int
    same: int
    kept: bool


def add_cohort(registry: Registry, name: str, *, starts_on: date, by: int, now: datetime) -> int:
    """Enter a cohort; the same name and day again is the same cohort.

    Raises:
        RefusedError: no name; the name is taken by a cohort of another day; `by` is no coordinator.
    """
    name = " ".join(name.split())
    if not name:
        raise RefusedError("a cohort needs a name")
    with writing(registry, now) as entry:
        require_role(entry.connection, by, "coordinator")
        row = entry.connection.execute(select(cohorts).where(cohorts.c.name == name)).first()
        if row is None:
            values = {"name": name, "starts_on": starts_on.isoformat()}
            return int(entry.add(cohorts, values, "cohort.entered", by))
        if row.starts_on != starts_on.isoformat():
            raise RefusedError(f"there is a cohort '{name}' that starts on {row.starts_on}: give this one another name")
        return int(row.id)


def join_cohort(registry: Registry, cohort: int, person: int, role: str, *, by: int, now: datetime) -> None:
    """Put a person into a cohort as `candidate`, `trainer` or `observer`; twice is once.

    Raises:
        RefusedError: no such cohort, person or role; trainer and candidate in one; two candidates of one name.
    """
    with writing(registry, now) as entry:
        require_role(entry.connection, by, "coordinator")
        known_cohort(entry.connection, cohort)
        name = known_person(entry.connection, person).name
        if role not in MEMBERS:
            raise RefusedError(f"in a cohort one is {', '.join(MEMBERS)}, not '{role}'")
        held = roles_in(entry.connection, cohort, person)
        if role not in held and held | {role} >= {"trainer", "candidate"}:
            raise RefusedError(f"person {person} can't be trainer and candidate of one cohort")
        others = candidates_of(entry.connection, cohort)
        others.pop(person, None)
        if role == "candidate" and same_name(name) in map(same_name, others.values()):
            raise RefusedError(f"the cohort has a candidate '{name}': add a village or a parent's name to one of them")
        if role not in held:
            values = {"cohort": cohort, "person": person, "role": role}
            entry.add(memberships, values, "cohort.joined", by)


def import_class_list(
    registry: Registry,
    cohort: int,
    file: str,
    data: bytes,
    *,
    languages: Collection[str],
    by: int,
    now: datetime,
    dry_run: bool = False,
) -> Imported:
    """Enter everyone on a class list as candidates of a cohort: all of them, or nobody.

    A name that the cohort has already is the same person, so the same list can be read again after names were added.

    Args:
        registry: where.
        cohort: its id.
        file: how problems name the list.
        data: its bytes: columns `name`, `language`.
        languages: codes that the course has.
        by: a coordinator.
        now: the time.
        dry_run: only say what would happen.

    Raises:
        ProblemsError: what is wrong with the list, all at once; a name that the cohort has with another language.
        RefusedError: no such cohort; `by` is no coordinator.
    """
    listed = read_class_list(file, data, languages)
    with writing(registry, now, dry_run=dry_run) as entry:
        require_role(entry.connection, by, "coordinator")
        known_cohort(entry.connection, cohort)
        there = {
            row.name_key: row
            for row in entry.connection.execute(
                select(people.c.name_key, people.c.language)
                .join(memberships, memberships.c.person == people.c.id)
                .where(memberships.c.cohort == cohort, memberships.c.role == "candidate", people.c.name.is_not(None))
            )
        }
        problems: list[Problem] = []
        new = 0
        for person in listed:
            name = unguarded(person.name)
            known = there.get(same_name(name))
            if known is None:
                key = new_person(entry, NewPerson(name, person.language), by)
                values = {"cohort": cohort, "person": key, "role": "candidate"}
                entry.add(memberships, values, "cohort.joined", by)
                new += 1
            elif None not in (person.language, known.language) and person.language != known.language:
                what = f"'{name}' is in the cohort already and reads '{known.language}', not '{person.language}'"
                fix = "correct the list, or change the person's language in the registry"
                problems.append(Problem(file, 0, 0, "other-language", what, fix))
        if problems:
            raise ProblemsError(problems)
    return Imported(new, len(listed) - new, not dry_run)


def known_cohort(connection: Connection, cohort: int) -> str:
    """A cohort's name.

    Raises:
        RefusedError: there is none of this id.
    """
    name = connection.execute(select(cohorts.c.name).where(cohorts.c.id == cohort)).scalar()
    if name is None:
        raise RefusedError(f"there is no cohort {cohort} in this registry")
    return str(name)


def roles_in(connection: Connection, cohort: int, person: int) -> set[str]:
    """What a person is in a cohort."""
    return set(
        connection.execute(
            select(memberships.c.role).where(memberships.c.cohort == cohort, memberships.c.person == person)
        ).scalars()
    )


def candidates_of(connection: Connection, cohort: int) -> dict[int, str]:
    """Names of a cohort's candidates by id, in the order of entry; erased ones are left out."""
    return {
        row.id: row.name
        for row in connection.execute(
            select(people.c.id, people.c.name)
            .join(memberships, memberships.c.person == people.c.id)
            .where(memberships.c.cohort == cohort, memberships.c.role == "candidate", people.c.name.is_not(None))
            .order_by(people.c.id)
        )
    }


def has_trained(connection: Connection, trainer: int, person: int) -> str | None:
    """The cohort in which one person trained another; None if in none."""
    taught = select(memberships.c.cohort).where(memberships.c.person == trainer, memberships.c.role == "trainer")
    return connection.execute(
        select(cohorts.c.name)
        .join(memberships, memberships.c.cohort == cohorts.c.id)
        .where(memberships.c.person == person, memberships.c.role == "candidate", cohorts.c.id.in_(taught))
        .limit(1)
    ).scalar()
