"""Tanks: a numbered tank, its plan, and the holders who built and who checked it."""

from __future__ import annotations

import json
import math
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from sqlalchemy import Connection, select

from generator.problems import RefusedError
from generator.registry.certificates import code_of, known_certificate
from generator.registry.chain import canonical, sha256
from generator.registry.numbers import number_text
from generator.registry.people import require_role
from generator.registry.store import Registry, writing
from generator.registry.tables import (
    PARTS,
    tank_people,
    tanks,
)


@dataclass(frozen=True, slots=True)
class NewTank:
    """A tank to enter.

    Args:
        place: where it stands; down to the village, no closer.
        plan: the plan as `plan --json` writes it.
        plan_version: of the tool that made the plan.
        volume: of water [m3].
        wall_height: of the wall [m].
        started_on: the first day of work.
    """

    place: str
    plan: Mapping[str, object]
    plan_version: str
    volume: float
    wall_height: float
    started_on: date


def add_tank(registry: Registry, tank: NewTank, *, by: int, now: datetime) -> str:
    """Enter a tank and give it a number.

    Returns:
        The number, to be painted on the tank.

    Raises:
        RefusedError: no place or plan; a size that is none; `by` is no coordinator.
    """
    with writing(registry, now) as entry:
        require_role(entry.connection, by, "coordinator")
        if not tank.place.strip() or not tank.plan:
            raise RefusedError("a tank needs its place and its plan")
        for name, size in (("volume", tank.volume), ("wall height", tank.wall_height)):
            if not (math.isfinite(size) and size > 0):
                raise RefusedError(f"a tank's {name} is more than 0, not {size}")
        plan = canonical(tank.plan)
        serial = entry.number("T")
        number = number_text(code_of(entry.connection), "T", serial)
        row = {
            "number": number, "serial": serial, "place": tank.place.strip(), "plan_version": tank.plan_version,
            "plan": plan, "plan_hash": sha256(plan), "volume": float(tank.volume),
            "wall_height": float(tank.wall_height), "started_on": tank.started_on.isoformat(), "entered_at": entry.at,
            "entered_by": by,
        }  # fmt: skip
        entry.add(tanks, row, "tank.entered", by)
        return number


def add_holder(registry: Registry, tank: str, certificate: str, part: str, *, by: int, now: datetime) -> None:
    """Note who built a tank, or who checked it; twice is once.

    Args:
        registry: where.
        tank: its number.
        certificate: number of the certificate that the person holds.
        part: `built` or `checked`.
        by: a coordinator.
        now: the time.

    Raises:
        RefusedError: no such tank or certificate; the certificate is not active, or its scope ends below this tank's
            volume or wall height; someone who built would check, or the other way round.
    """
    with writing(registry, now) as entry:
        connection = entry.connection
        require_role(connection, by, "coordinator")
        row = known_tank(connection, tank)
        held = known_certificate(connection, certificate)
        if part not in PARTS:
            raise RefusedError(f"on a tank one has {' or '.join(PARTS)}, not '{part}'")
        there = connection.execute(
            select(tank_people).where(tank_people.c.tank == tank, tank_people.c.person == held.person)
        ).first()
        if there is not None:
            if (there.part, there.certificate) == (part, certificate):
                return
            raise RefusedError(f"person {held.person} {there.part} this tank already: nobody checks their own work")
        if held.status != "active" or held.valid_to < entry.today:
            status = held.status if held.status != "active" else f"over since {held.valid_to}"
            raise RefusedError(f"the certificate {certificate} is {status}: only active holders build or check")
        _within_scope(row, certificate, json.loads(held.scope))
        values = {"tank": tank, "person": held.person, "certificate": certificate, "part": part}
        entry.add(tank_people, values, f"tank.{part}", by)


def _within_scope(tank: Any, certificate: str, scope: Mapping[str, Any]) -> None:
    sizes = (("largest_volume", tank.volume, "m3 of water"), ("largest_wall_height", tank.wall_height, "m of wall"))
    for name, size, unit in sizes:
        most = scope.get(name)
        if isinstance(most, int | float) and size > most:
            raise RefusedError(
                f"the certificate {certificate} covers tanks up to {most:g} {unit}, and this one has {size:g}: "
                "someone with a wider scope has to lead it"
            )


def known_tank(connection: Connection, number: str) -> Any:
    """A tank's row.

    Raises:
        RefusedError: there is none of this number.
    """
    row = connection.execute(select(tanks).where(tanks.c.number == number)).first()
    if row is None:
        raise RefusedError(f"there is no tank '{number}' in this registry: compare it letter by letter")
    return row
