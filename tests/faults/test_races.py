"""Two coordinators at once, on a file and on a server: one of them wins, the other one is told why not."""

from __future__ import annotations

import threading
from collections.abc import Callable
from datetime import timedelta
from pathlib import Path

import pytest
from sqlalchemy import insert, select

from generator.problems import MachineError, RefusedError
from generator.registry import Registry, audit, chain_head, change_status, open_registry, read_certificate
from generator.registry.store import writing
from generator.registry.tables import certificates
from tests.registry.conftest import *  # noqa: F403 (its offices)
from tests.registry.server import new_database
from tests.registry.small import START, Office, entropy, open_at, scalar

ROUNDS = 12


def at_once(place: str, *deeds: Callable[[Registry], object]) -> list[object]:
    """Each deed in a thread with a registry of its own, all started together; what came of it, in their order."""
    gate = threading.Barrier(len(deeds))
    found: list[object] = [None] * len(deeds)

    def one(at: int, deed: Callable[[Registry], object]) -> None:
        with open_at(place) as registry:
            gate.wait()
            try:
                found[at] = deed(registry)
            except (RefusedError, MachineError) as error:
                found[at] = error

    threads = [threading.Thread(target=one, args=pair) for pair in enumerate(deeds)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join(120)
    return found


def address(office: Office) -> str:
    url = office.registry.engine.url
    return url.render_as_string(False).replace("+psycopg", "") if office.registry.is_server else office.registry.place


def test_one_decision_makes_one_certificate(any_office: Office) -> None:
    office = any_office
    for number in range(ROUNDS):
        name = ("Asha", "Bir", "Cheptoo")[number % 3]
        if number >= 3:
            held = scalar(
                office.registry, "select number from certificates where person = :key and status = 'active'",
                key=office.ids[name],
            )  # fmt: skip
            change_status(office.registry, held, "withdraw", reason="r", by=office.boss, now=office.tick())
        decision = office.decide(name)
        office.tick(minutes=1)

        def certify(registry: Registry, name: str = name, decision: int = decision) -> object:
            own = Office(registry, office.now, office.ids, office.cohort)
            return own.certify(name, decision, now=office.now).number

        found = at_once(address(office), certify, certify)
        won = [number for number in found if isinstance(number, str)]
        lost = [error for error in found if isinstance(error, RefusedError)]
        assert len(won) == len(lost) == 1, found
        assert won[0] in str(lost[0])
        assert read_certificate(office.registry, won[0])[0].status == "active"
    assert scalar(office.registry, "select count(*) from certificates") == ROUNDS
    assert audit(office.registry) == ()


def test_the_tables_themselves_allow_one_in_force(any_office: Office) -> None:
    """Whoever writes past the functions meets the same rule, in words."""
    office = any_office
    office.certify("Asha")
    decision = office.decide("Asha")
    copied = select(certificates).where(certificates.c.person == office.ids["Asha"])
    with office.registry.engine.connect() as connection:
        row = dict(connection.execute(copied).mappings().one())
    row |= {"number": "X", "serial": 917, "decision": decision}
    with pytest.raises(RefusedError, match="keeps its own rules"), writing(office.registry, office.tick()) as entry:
        entry.connection.execute(insert(certificates), row)
    assert audit(office.registry) == ()


def test_many_writers_make_one_chain(any_office: Office) -> None:
    office = any_office
    head = chain_head(office.registry)
    office.tick(minutes=1)

    def tanks(registry: Registry) -> list[str]:
        own = Office(registry, office.now, office.ids, office.cohort)
        made = []
        for _ in range(8):
            own.now = office.now - timedelta(seconds=1)  # `tank` goes a second on: all write at the same moment
            made.append(own.tank())
        return made

    found = at_once(address(office), tanks, tanks, tanks)
    numbers = [number for made in found if isinstance(made, list) for number in made]
    assert len(set(numbers)) == 24, found
    assert chain_head(office.registry).seq == head.seq + 24
    assert audit(office.registry, heads=[head]) == ()


@pytest.mark.parametrize("server", [False, True], ids=["file", "server"])
def test_two_who_open_a_new_registry_open_the_same(
    tmp_path: Path, server: bool, request: pytest.FixtureRequest
) -> None:
    for number in range(3):
        place = (
            new_database(request.getfixturevalue("servers"), f"opened_{number}")
            if server
            else str(tmp_path / f"{number}.sqlite")
        )
        gate = threading.Barrier(2)
        codes: list[object] = []

        def open_one(place: str = place, gate: threading.Barrier = gate, codes: list[object] = codes) -> None:
            gate.wait()
            try:
                with open_registry(place, now=START) as registry:
                    codes.append((registry.id, registry.code))
            except BaseException as error:
                codes.append(error)

        threads = [threading.Thread(target=open_one) for _ in range(2)]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join(60)
        assert len(codes) == 2
        assert codes[0] == codes[1], codes
        with open_at(place) as registry:
            assert audit(registry) == ()
            assert chain_head(registry).seq == 1


def test_whoever_waits_too_long_is_told_so(office: Office) -> None:
    with (
        writing(office.registry, office.tick()),
        open_registry(office.registry.place, now=START, entropy=entropy(), patience=0.2) as other,
        pytest.raises(MachineError, match="another program keeps the registry busy"),
    ):
        Office(other, office.now, office.ids, office.cohort).tank()


def test_a_reader_is_not_kept_waiting_and_sees_one_moment(any_office: Office) -> None:
    office = any_office
    with writing(office.registry, office.tick()) as entry, open_at(address(office)) as other:
        entry.event("note", "registry", office.boss, {})
        assert audit(other) == ()
