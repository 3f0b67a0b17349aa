from __future__ import annotations

import itertools
from datetime import timedelta
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from generator.problems import MachineError, RefusedError
from generator.registry import (
    MOVES,
    NewPerson,
    ToSign,
    add_person,
    audit,
    chain_head,
    change_person,
    change_status,
    expire_all,
    is_number,
    join_cohort,
    read_certificate,
    withdrawn_numbers,
)
from tests.registry.small import DAY, SCOPE, Office, failing, scalar, sign


def test_number_signature_and_row_come_together(any_office: Office) -> None:
    office = any_office
    made = office.certify("Asha")
    assert is_number(made.number)
    assert made.number.startswith(f"{office.registry.code}-C000001-")
    assert made.signed == f"signed {made.number} Asha {made.valid_to}".encode()
    found, changes = read_certificate(office.registry, made.number)
    assert found == made
    assert found.scope == SCOPE
    assert [(change.was, change.becomes) for change in changes] == [(None, "active")]
    assert "-C000002-" in office.certify("Bir").number
    assert audit(office.registry) == ()


@pytest.mark.parametrize("error", [MachineError("the key is not there"), RefusedError("wrong words"), KeyError("x")])
def test_where_signing_fails_no_number_and_no_row_stay(any_office: Office, error: Exception) -> None:
    office = any_office
    decision = office.decide("Asha")
    head = chain_head(office.registry)
    seen: list[str] = []

    def fail(text: ToSign) -> bytes:
        seen.append(text.number)
        raise error

    with pytest.raises(type(error)):
        office.certify("Asha", decision, sign=fail)
    assert chain_head(office.registry) == head
    assert scalar(office.registry, "select count(*) from certificates") == 0
    assert office.certify("Asha", decision).number == seen[0]  # nobody has seen the number


def test_a_provisional_scheme_issues_only_after_a_panels_cut(any_office: Office) -> None:
    office = any_office
    early = office.decide("Asha", status="provisional")
    with pytest.raises(RefusedError, match="is provisional: a local panel has to set the cut"):
        office.certify("Asha", early)
    office.cut(version=1)
    with pytest.raises(RefusedError, match="is provisional"):
        office.certify("Asha", early)
    office.cut()
    with pytest.raises(RefusedError, match="before the decision is made"):
        office.certify("Asha", early)
    assert office.certify("Bir", office.decide("Bir", status="provisional")).status == "active"


def test_a_draft_never_issues(office: Office) -> None:
    office.cut()
    with pytest.raises(RefusedError, match="is a draft"):
        office.certify("Asha", office.decide("Asha", status="draft"))


def test_one_decision_one_certificate_and_one_in_force(any_office: Office) -> None:
    office = any_office
    decision = office.decide("Asha")
    number = office.certify("Asha", decision).number
    with pytest.raises(RefusedError, match=f"has led to the certificate {number}"):
        office.certify("Asha", decision)
    with pytest.raises(RefusedError, match=f"holds {number} under 'fence-hand' already"):
        office.certify("Asha")
    change_status(office.registry, number, "withdraw", reason="leaks", by=office.boss, now=office.tick())
    assert office.certify("Asha").number != number


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"valid_to": DAY - timedelta(days=1)}, "would never hold"),
        ({"valid_from": DAY + timedelta(days=9), "valid_to": DAY + timedelta(days=8)}, "would never hold"),
        ({"by": 4}, "only a coordinator"),
        ({"renews": "WKLP-C000012-PM"}, "no certificate 'WKLP-C000012-PM'"),
    ],
)
def test_a_certificate_that_can_not_be_is_refused(office: Office, given: dict[str, Any], words: str) -> None:
    decision = office.decide("Asha")
    head = chain_head(office.registry)
    with pytest.raises(RefusedError, match=words):
        office.certify("Asha", decision, **given)
    assert chain_head(office.registry) == head


def test_only_who_passed_is_certified(office: Office) -> None:
    with pytest.raises(RefusedError, match="says 'not yet'"):
        office.certify("Asha", office.decide("Asha", failing()))
    with pytest.raises(RefusedError, match="is about another person"):
        office.certify("Bir", office.decide("Asha"))
    with pytest.raises(RefusedError, match="no decision 917"):
        office.certify("Bir", 917)


def test_without_consent_nothing_is_issued_and_initials_are_a_choice(office: Office) -> None:
    key = add_person(office.registry, NewPerson("Gita Rai"), by=office.boss, now=office.tick())
    join_cohort(office.registry, office.cohort, key, "candidate", by=office.boss, now=office.tick())
    office.ids["Gita"] = key
    decision = office.decide("Gita")
    with pytest.raises(RefusedError, match="has not agreed"):
        office.certify("Gita", decision)
    agreed = NewPerson("Gita Rai", consent_on=DAY, public_name="initials")
    change_person(office.registry, key, agreed, by=office.boss, now=office.tick())
    made = office.certify("Gita", decision)
    assert made.name == "G. R."
    assert b"Gita" not in (made.signed or b"")


def test_renewal_takes_the_old_ones_place_in_one_step(any_office: Office) -> None:
    office = any_office
    old = office.certify("Asha")
    new = office.certify("Asha", renews=old.number)
    assert read_certificate(office.registry, old.number)[0].status == "renewed"
    assert (new.renews, new.status) == (old.number, "active")
    with pytest.raises(RefusedError, match="is renewed already"):
        office.certify("Asha", renews=old.number)
    with pytest.raises(RefusedError, match="another person's"):
        office.certify("Bir", renews=new.number)
    assert withdrawn_numbers(office.registry) == ((old.number, "renewed"),)
    assert audit(office.registry) == ()


def test_certificates_expire_after_their_last_day(any_office: Office) -> None:
    office = any_office
    first = office.certify("Asha", valid_to=DAY)
    second = office.certify("Bir")
    with pytest.raises(RefusedError, match="holds until 2031-05-04"):
        change_status(office.registry, first.number, "expire", reason="r", by=office.boss, now=office.tick())
    change_status(office.registry, first.number, "suspend", reason="r", by=office.boss, now=office.tick())
    office.tick(days=1)
    with pytest.raises(RefusedError, match="ended on 2031-05-04"):
        change_status(office.registry, first.number, "reinstate", reason="r", by=office.boss, now=office.tick())
    assert expire_all(office.registry, by=office.boss, now=office.tick()) == (first.number,)
    assert expire_all(office.registry, by=office.boss, now=office.tick()) == ()
    assert read_certificate(office.registry, second.number)[0].status == "active"
    assert office.certify("Asha", renews=first.number).renews == first.number
    assert audit(office.registry) == ()


@pytest.mark.parametrize("move", ["renew", "burn", ""])
def test_only_named_changes_are_known(office: Office, move: str) -> None:
    number = office.certify("Asha").number
    with pytest.raises(RefusedError, match="choose one of suspend, reinstate, withdraw, expire"):
        change_status(office.registry, number, move, reason="r", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="needs a reason"):
        change_status(office.registry, number, "suspend", reason=" ", by=office.boss, now=office.tick())


NEXT = {
    ("active", "suspend"): "suspended", ("suspended", "reinstate"): "active", ("active", "withdraw"): "withdrawn",
    ("suspended", "withdraw"): "withdrawn", ("active", "expire"): "expired", ("suspended", "expire"): "expired",
    ("active", "renew"): "renewed", ("expired", "renew"): "renewed",
}  # fmt: skip
"""The whole table, written out a second time."""
_TURN = itertools.count()


@given(st.lists(st.sampled_from(["suspend", "reinstate", "withdraw", "expire", "renew", "issue"]), max_size=9))
@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow])
def test_any_sequence_of_changes_keeps_to_the_table(office: Office, moves: list[str]) -> None:
    """A second account of all certificates of one person is kept by hand, and compared after every step."""
    name = f"Herder {next(_TURN)}"
    office.ids[name] = add_person(office.registry, NewPerson(name, consent_on=DAY), by=office.boss, now=office.tick())
    join_cohort(office.registry, office.cohort, office.ids[name], "candidate", by=office.boss, now=office.tick())
    office.tick(days=2)
    held: list[str] = []
    status: dict[str, str] = {}
    for move in moves:
        now = office.tick()
        last = held[-1] if held else None
        if move == "issue" or (move == "renew" and last):
            renews = last if move == "renew" else None
            allowed = (
                (status[last], "renew") in NEXT
                if renews and last
                else not {"active", "suspended"} & set(status.values())
            )
            try:
                made = office.certify(name, valid_to=now.date(), renews=renews)
            except RefusedError:
                assert not allowed
                continue
            assert allowed
            if renews:
                status[renews] = "renewed"
            held.append(made.number)
            status[made.number] = "active"
        elif last:
            if move == "expire":
                now = office.tick(days=1)
            late = move == "reinstate" and read_certificate(office.registry, last)[0].valid_to < now.date()
            allowed = (status[last], move) in NEXT and not late
            try:
                change_status(office.registry, last, move, reason="r", by=office.boss, now=now)
            except RefusedError:
                assert not allowed
                continue
            assert allowed
            status[last] = NEXT[status[last], move]
    for number, expected in status.items():
        found, changes = read_certificate(office.registry, number)
        assert found.status == expected
        assert changes[-1].becomes == expected
    assert audit(office.registry) == ()


def test_the_table_of_changes_is_the_one_written_out_here() -> None:
    assert {(before, move): after for move, (befores, after) in MOVES.items() for before in befores} == NEXT
    assert sign(ToSign("n", "Asha", "s", 1, {}, DAY, DAY)) == b"signed n Asha 2031-05-04"


@pytest.mark.parametrize(("days", "words"), [(-2, "decision 1 was made on"), (800, "look at the year")])
def test_no_certificate_holds_before_its_decision_or_from_a_slip_of_the_year(
    office: Office, days: int, words: str
) -> None:
    decision = office.decide("Asha")
    first = office.now.date() + timedelta(days=days)
    with pytest.raises(RefusedError, match=words):
        office.certify("Asha", decision, valid_from=first, valid_to=first + timedelta(days=1000))
    assert scalar(office.registry, "select count(*) from certificates") == 0


def test_a_refused_move_says_why(office: Office) -> None:
    number = office.certify("Asha").number
    for move, told in (
        ("suspend", "suspended already: there is nothing to suspend"),
        ("withdraw", "withdrawn already"),
    ):
        change_status(office.registry, number, move, reason="leaks", by=office.boss, now=office.tick())
        with pytest.raises(RefusedError, match=told):
            change_status(office.registry, number, move, reason="leaks", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="for good: only a new decision"):
        change_status(office.registry, number, "reinstate", reason="mended", by=office.boss, now=office.tick())
