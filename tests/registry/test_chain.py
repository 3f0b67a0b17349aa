from __future__ import annotations

from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sqlalchemy import select

from generator.problems import RefusedError
from generator.registry import NewPerson, add_person, audit, chain_head, note_clock
from generator.registry.chain import canonical, event_hash, payload_hash, sha256, start_of
from generator.registry.numbers import is_number, number_text
from generator.registry.tables import events, payloads
from tests.registry.small import Office


def test_canonical_json_and_hash_worked_by_hand() -> None:
    """Hashes by the command `printf ... | sha256sum`."""
    assert canonical({"b": [1.5, "é"], "a": None}) == '{"a":null,"b":[1.5,"é"]}'
    assert sha256("goat") == "5480f08f35968440ebe8135a8bf9e58c8c944bf4e3ba0f45acb141e474bd0c9c"


@given(st.dictionaries(st.text(), st.integers() | st.text() | st.none() | st.booleans()))
def test_canonical_json_does_not_know_the_order_of_entry(values: dict[str, object]) -> None:
    assert canonical(values) == canonical(dict(reversed(values.items())))


def test_canonical_json_refuses_what_no_number_is() -> None:
    with pytest.raises(ValueError, match="JSON"):
        canonical({"a": float("nan")})


def test_each_event_covers_the_one_before(any_office: Office) -> None:
    registry = any_office.registry
    previous = start_of(registry.id)
    with registry.engine.connect() as connection:
        rows = connection.execute(select(events).order_by(events.c.seq)).mappings().all()
    assert [row["seq"] for row in rows] == list(range(1, len(rows) + 1))
    for row in rows:
        event = {str(name): value for name, value in row.items()}
        assert event["previous"] == previous
        assert event["hash"] == event_hash(event, previous)
        previous = event["hash"]
    assert chain_head(registry).hash == previous


def test_no_name_stands_in_the_log_itself(office: Office) -> None:
    with office.registry.engine.connect() as connection:
        logged = " ".join(str(row) for row in connection.execute(select(events)))
        kept = connection.execute(select(payloads)).all()
        hashes = set(connection.execute(select(events.c.personal)).scalars())
    assert any("Asha" in row.payload for row in kept)
    for name in office.ids:
        assert name not in logged
    assert all(payload_hash(row.payload, row.salt) in hashes for row in kept)
    assert len({row.salt for row in kept}) == len(kept)


def test_a_clock_set_back_is_noticed_and_nothing_is_written(any_office: Office) -> None:
    office = any_office
    head = chain_head(office.registry)
    with pytest.raises(RefusedError, match="set the clock right"):
        add_person(office.registry, NewPerson("Gita"), by=office.boss, now=office.now - timedelta(days=1))
    assert chain_head(office.registry) == head


def test_after_a_wrong_clock_a_coordinator_notes_it(office: Office) -> None:
    registry = office.registry
    add_person(registry, NewPerson("Gita"), by=office.boss, now=office.now + timedelta(days=4000))
    right = office.now + timedelta(minutes=5)
    with pytest.raises(RefusedError, match="only a coordinator"):
        note_clock(registry, "battery was flat", by=office.ids["Farida"], now=right)
    with pytest.raises(RefusedError, match="needs a reason"):
        note_clock(registry, " ", by=office.boss, now=right)
    note_clock(registry, "battery was flat", by=office.boss, now=right)
    add_person(registry, NewPerson("Hari"), by=office.boss, now=right + timedelta(seconds=1))
    assert audit(registry) == ()


def test_the_same_moment_is_no_clock_set_back(office: Office) -> None:
    for name in ("Gita", "Hari"):
        add_person(office.registry, NewPerson(name), by=office.boss, now=office.now)
    assert audit(office.registry) == ()


@given(st.integers(1, 10**7), st.integers(0, 20), st.data())
def test_a_slip_in_a_number_shows(serial: int, place: int, data: st.DataObject) -> None:
    number = number_text("WKLP", "C", serial)
    assert is_number(number)
    place %= len(number)
    other = data.draw(st.sampled_from(sorted(set("ACDEFHJKLMNPRTUVWXY0123456789-") - {number[place]})))
    assert not is_number(number[:place] + other + number[place + 1 :])


@given(st.integers(1, 10**6 - 1), st.integers(0, 5))
def test_neighbouring_digits_exchanged_show(serial: int, place: int) -> None:
    number = number_text("WKLP", "C", serial)
    at = number.index("C") + 1 + place
    if at + 1 < number.rindex("-") and number[at] != number[at + 1]:
        assert not is_number(number[:at] + number[at + 1] + number[at] + number[at + 2 :])
