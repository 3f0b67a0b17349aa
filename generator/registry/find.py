"""Finding things by the names that people know: a coordinator, a cohort, the paper with the number printed on it."""

from __future__ import annotations

from collections.abc import Collection

from sqlalchemy import select

from generator.exercises import same_name
from generator.problems import RefusedError
from generator.registry.papers import Paper, read_papers
from generator.registry.people import require_role
from generator.registry.store import Registry, reading
from generator.registry.tables import cohorts, memberships, papers, people, roles, sittings


def is_empty(registry: Registry) -> bool:
    """Whether nobody is in the registry yet."""
    with reading(registry) as connection:
        return connection.execute(select(people.c.id).limit(1)).first() is None


def coordinator_called(registry: Registry, name: str) -> int:
    """The coordinator of a name, or of a number: no name is only a number.

    Raises:
        RefusedError: there is none, or more than one.
    """
    if name.isascii() and name.isdigit():
        with reading(registry) as connection:
            require_role(connection, int(name[:9]), "coordinator")
        return int(name[:9])
    with reading(registry) as connection:
        found = list(
            connection.execute(
                select(people.c.id)
                .join(roles, roles.c.person == people.c.id)
                .where(people.c.name_key == same_name(name), roles.c.role == "coordinator", roles.c.until.is_(None))
                .distinct()
            ).scalars()
        )
    if len(found) != 1:
        many = "no coordinator" if not found else f"{len(found)} coordinators"
        raise RefusedError(
            f"the registry has {many} called '{name}': write the name as 'register people list' shows it"
        )
    return int(found[0])


def cohort_called(registry: Registry, name: str) -> int | None:
    """The cohort of a name; None where there is none."""
    with reading(registry) as connection:
        found = connection.execute(select(cohorts.c.id).where(cohorts.c.name == " ".join(name.split()))).scalar()
        return None if found is None else int(found)


def cohort_names(registry: Registry) -> list[str]:
    """What the cohorts are called, in the order of entry."""
    with reading(registry) as connection:
        return [str(name) for name in connection.execute(select(cohorts.c.name).order_by(cohorts.c.id)).scalars()]


def sets_in(registry: Registry) -> list[str]:
    """The printed marks of all archived sets, in the order of entry."""
    with reading(registry) as connection:
        return [str(mark) for mark in connection.execute(select(sittings.c.set_id).order_by(sittings.c.id)).scalars()]


def candidates_called(registry: Registry, cohort: int) -> dict[str, int]:
    """The ids of a cohort's candidates by name; erased ones are left out."""
    with reading(registry) as connection:
        rows = connection.execute(
            select(people.c.name, people.c.id)
            .join(memberships, memberships.c.person == people.c.id)
            .where(memberships.c.cohort == cohort, memberships.c.role == "candidate", people.c.name.is_not(None))
        )
        return {row.name: int(row.id) for row in rows}


def sat_elsewhere(registry: Registry, cohort: int | None, names: Collection[str], scheme: str) -> list[tuple[str, int]]:
    """Who of some names sat for a scheme in another cohort, and is not in this one: their tries would not be counted.

    Returns:
        Name and id of each.
    """
    with reading(registry) as connection:
        here = select(memberships.c.person).where(memberships.c.cohort == (cohort or 0))
        own = set(
            connection.execute(
                select(people.c.name_key).join(memberships, memberships.c.person == people.c.id)
                .where(memberships.c.cohort == (cohort or 0), memberships.c.role == "candidate")
            ).scalars()
        )  # fmt: skip
        wanted = {same_name(name) for name in names} - own
        rows = connection.execute(
            select(people.c.name, people.c.id, people.c.name_key)
            .join(papers, papers.c.person == people.c.id)
            .join(sittings, sittings.c.id == papers.c.sitting)
            .where(sittings.c.scheme == scheme, people.c.name.is_not(None), people.c.id.not_in(here))
            .distinct()
            .order_by(people.c.id)
        )
        return [(row.name, int(row.id)) for row in rows if row.name_key in wanted]


def find_paper(registry: Registry, set_id: str, number: int) -> Paper:
    """The paper with this number printed on it.

    Raises:
        RefusedError: there is none, or more than one (two cohorts can't share a set).
    """
    with reading(registry) as connection:
        found = list(connection.execute(select(sittings.c.id).where(sittings.c.set_id == set_id)).scalars())
    own = [paper for sitting in found for paper in read_papers(registry, sitting) if paper.number == number]
    if not own:
        raise RefusedError(
            f"the registry holds no paper of the number {set_id}-{number}: compare it with the head of the paper"
        )
    if len(own) != 1:
        raise RefusedError(f"the registry holds {len(own)} papers of the number {set_id}-{number}")
    return own[0]
