"""Complaints: from a tank or a certificate to the holders who built and who checked."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select

from generator.problems import RefusedError
from generator.registry.certificates import known_certificate
from generator.registry.people import require_role
from generator.registry.store import Registry, reading, writing
from generator.registry.tables import certificates, complaints, people, tank_people
from generator.registry.tanks import known_tank


@dataclass(frozen=True, slots=True)
class Holder:
    """Someone who worked on a tank.

    Args:
        person: id.
        name: None after an erasure.
        part: `built` or `checked`.
        certificate: number of the certificate held.
        status: of that certificate now.
    """

    person: int
    name: str | None
    part: str
    certificate: str
    status: str


def file_complaint(
    registry: Registry,
    about: str,
    *,
    tank: str | None = None,
    certificate: str | None = None,
    by: int,
    now: datetime,
) -> int:
    """Enter a complaint about a tank or a certificate's holder.

    Args:
        registry: where.
        about: what is wrong; can be erased later.
        tank: its number; from it `holders` leads to who built and who checked.
        certificate: its number.
        by: a coordinator.
        now: the time.

    Raises:
        RefusedError: neither tank nor certificate, or one that is not known; no text; `by` is no coordinator.
    """
    with writing(registry, now) as entry:
        require_role(entry.connection, by, "coordinator")
        if tank is None and certificate is None:
            raise RefusedError("a complaint names a tank or a certificate by its number")
        if tank is not None:
            known_tank(entry.connection, tank)
        if certificate is not None:
            known_certificate(entry.connection, certificate)
        if not about.strip():
            raise RefusedError("a complaint says what is wrong")
        values = {"tank": tank, "certificate": certificate, "filed_at": entry.at, "about": about.strip()}
        return int(entry.add(complaints, values, "complaint.filed", by))


def close_complaint(registry: Registry, complaint: int, finding: str, *, by: int, now: datetime) -> None:
    """Close a complaint with what was found; nobody closes one about a tank that they built or checked.

    Raises:
        RefusedError: no open complaint of this id; no finding; `by` worked on the tank or holds the certificate.
    """
    with writing(registry, now) as entry:
        connection = entry.connection
        require_role(connection, by, "coordinator")
        chosen = select(complaints).where(complaints.c.id == complaint, complaints.c.closed_at.is_(None))
        row = connection.execute(chosen).first()
        if row is None:
            raise RefusedError(f"there is no open complaint {complaint} in this registry")
        if not finding.strip():
            raise RefusedError("a complaint is closed with what was found")
        if by in {holder.person for holder in _holders(connection, row.tank, row.certificate)}:
            raise RefusedError(
                f"person {by} worked on what the complaint is about: another coordinator has to close it"
            )
        values = {"finding": finding.strip(), "closed_at": entry.at, "closed_by": by}
        entry.change(complaints, complaint, values, "complaint.closed", by)


def holders(registry: Registry, *, tank: str | None = None, complaint: int | None = None) -> tuple[Holder, ...]:
    """Who built and who checked a tank, or whom a complaint leads to.

    Raises:
        RefusedError: no such tank or complaint.
    """
    with reading(registry) as connection:
        if complaint is not None:
            row = connection.execute(select(complaints).where(complaints.c.id == complaint)).first()
            if row is None:
                raise RefusedError(f"there is no complaint {complaint} in this registry")
            return _holders(connection, row.tank, row.certificate)
        known_tank(connection, tank or "")
        return _holders(connection, tank, None)


def _holders(connection: Connection, tank: str | None, certificate: str | None) -> tuple[Holder, ...]:
    chosen = (
        select(tank_people.c.person, people.c.name, tank_people.c.part, certificates.c.number, certificates.c.status)
        .join(people, people.c.id == tank_people.c.person)
        .join(certificates, certificates.c.number == tank_people.c.certificate)
        .where(tank_people.c.tank == tank)
        .order_by(tank_people.c.part, tank_people.c.id)
    )
    found = [Holder(*row) for row in connection.execute(chosen)]
    if certificate is not None and certificate not in {holder.certificate for holder in found}:
        row = known_certificate(connection, certificate)
        name = connection.execute(select(people.c.name).where(people.c.id == row.person)).scalar()
        found.append(Holder(row.person, name, "holds", row.number, row.status))
    return tuple(found)
