"""What someone without the key might try: ten thousand forgeries of each kind, and tricks that need no mathematics."""

from __future__ import annotations

import json
from datetime import timedelta
from typing import Any

import pytest

from generator.credentials import (
    KeyRing,
    ListInUse,
    NotAcceptedError,
    Note,
    Outcome,
    Role,
    Roof,
    Scope,
    badge_text,
    keyring,
    lock,
    make_badge,
    public_file,
    read_public_keys,
    rotate,
    unlock,
    use_list,
    verify_badge,
    verify_certificate,
    verify_number,
)
from generator.credentials.withdrawn import read_list
from generator.problems import RefusedError
from tests.credentials import mutations
from tests.credentials.issuer import ISSUER, KEYS, NOW, RING, certificate, fixed, listed, number, text

MANY = 10_000


def test_no_forged_certificate_is_accepted_and_all_are_told_why() -> None:
    in_use = use_list(listed(), KEYS, NOW)
    reasons = {}
    for forged in mutations.certificates(MANY):
        found = verify_certificate(forged, KEYS, in_use, NOW)
        assert found.outcome is Outcome.REFUSED, forged
        assert found.certificate is None
        reasons[found.reason] = reasons.get(found.reason, 0) + 1
    assert set(reasons) >= {"signature", "unknown_key", "algorithm", "not_cbor", "not_cose", "cut_off"}
    assert reasons["signature"] > 2000


def test_no_forged_badge_is_accepted() -> None:
    achievement = {"name": "Frame hand", "description": "Ties the frame.", "criteria": "Paper and practical."}
    good = badge_text(make_badge(certificate(), achievement, ISSUER, RING.current, NOW))
    assert verify_badge(good, KEYS, ListInUse(), NOW).outcome is Outcome.GENUINE
    reasons = set()
    for forged in mutations.documents(good, MANY):
        found = verify_badge(forged, KEYS, ListInUse(), NOW)
        assert found.outcome is Outcome.REFUSED, forged
        reasons.add(found.reason)
    assert reasons >= {"signature", "not_badge", "doubled", "no_proof", "algorithm", "unknown_key"}


def test_no_forged_file_of_public_keys_is_accepted() -> None:
    good = public_file(rotate(RING, NOW, fixed("next")))
    read_public_keys(good)
    for forged in mutations.documents(good, MANY):
        with pytest.raises(NotAcceptedError):
            read_public_keys(forged)


def test_no_forged_list_is_accepted() -> None:
    read_list(listed(NOW - timedelta(days=3)), KEYS)
    for forged in mutations.lists(MANY):
        with pytest.raises(NotAcceptedError):
            read_list(forged, KEYS)


def test_no_changed_file_of_secret_keys_opens(monkeypatch: pytest.MonkeyPatch) -> None:
    """The derivation is made cheap here, and here only: what is tried is the file."""
    monkeypatch.setattr(keyring, "SCRYPT_COST", 2)
    good = lock(RING, "slow spring goat ladder", fixed("salt")).decode()
    assert isinstance(unlock(good.encode(), "slow spring goat ladder"), KeyRing)
    for forged in mutations.documents(good, MANY):
        with pytest.raises(RefusedError):
            unlock(forged.encode(), "slow spring goat ladder")


def test_an_old_list_replayed_hides_no_withdrawal() -> None:
    old, new = listed(NOW - timedelta(days=30), {}), listed(NOW - timedelta(days=1))
    first = use_list(new, KEYS, NOW)
    assert verify_certificate(text(3), KEYS, first, NOW).outcome is Outcome.WITHDRAWN
    replayed = use_list(old, KEYS, NOW, first.newest)
    assert replayed.newest == first.newest
    assert verify_certificate(text(3), KEYS, replayed, NOW).outcome is Outcome.REFUSED
    assert verify_number(number(3), replayed, NOW).outcome is Outcome.REFUSED


def test_a_number_used_again_on_another_paper_shows_the_name_that_was_signed() -> None:
    """The code shows the name that belongs to a number; the number alone is never called genuine."""
    found = verify_certificate(text(7, "Asha Devi"), KEYS, ListInUse(), NOW)
    assert found.certificate is not None
    assert found.certificate.name == "Asha Devi"
    assert "paper" in found.unchecked
    assert verify_number(number(7), use_list(listed(), KEYS, NOW), NOW).outcome is Outcome.NOT_LISTED


def test_a_raised_scope_and_a_longer_life_break_the_signature() -> None:
    small, large = text(), text(scope=Scope(Role.LEAD, 50_000, 220, Roof.ANY))
    head, tail = small[:-110], large[-110:]
    assert verify_certificate(head + tail, KEYS, ListInUse(), NOW).outcome is Outcome.REFUSED
    assert verify_certificate(large[:-110] + small[-110:], KEYS, ListInUse(), NOW).outcome is Outcome.REFUSED


def test_a_name_of_look_alike_letters_is_warned_of() -> None:
    for name in ("Аsha Devi", "Asha Dеvi", "Αsha Devi", "Asha देvi"):
        found = verify_certificate(text(name=name), KEYS, ListInUse(), NOW)
        assert found.outcome is Outcome.GENUINE
        assert Note("mixed_scripts") in found.warnings


@pytest.mark.parametrize("years", [-30, -3, 3, 30])
def test_a_wrong_clock_never_makes_an_expired_certificate_good(years: int) -> None:
    end = NOW.date() - timedelta(days=1)
    expired = text(valid_to=end)
    in_use = use_list(listed(), KEYS, NOW + timedelta(days=365 * years))
    found = verify_certificate(expired, KEYS, in_use, NOW + timedelta(days=365 * years))
    assert found.outcome is Outcome.EXPIRED
    assert ("clock" in {note.code for note in found.warnings}) is (years < 0)


def test_a_certificate_is_no_list_and_a_list_no_certificate() -> None:
    for forged in (listed(), listed().replace("TSL1", "TSC1")):
        assert verify_certificate(forged, KEYS, ListInUse(), NOW).outcome is Outcome.REFUSED
    for forged in (text(), text().replace("TSC1", "TSL1")):
        with pytest.raises(NotAcceptedError):
            read_list(forged, KEYS)


def test_huge_and_strange_input_is_refused_at_once() -> None:
    junk: list[Any] = [
        "TSC1:" + "A" * 10**7,
        "\0" * 5000,
        "TSC1:" + "７" * 200,
        "TSC1:MFRGG" + "\u0301",
        "{" * 10**6,
        "é" * 10**6,
    ]
    for each in junk:
        assert verify_certificate(each, KEYS, ListInUse(), NOW).outcome is Outcome.REFUSED
        assert verify_badge(each, KEYS, ListInUse(), NOW).outcome is Outcome.REFUSED
    deep = json.dumps({"a": 1})
    for _ in range(30):
        deep = f'{{"a": {deep}}}'
    assert verify_badge(deep, KEYS, ListInUse(), NOW).outcome is Outcome.REFUSED
