"""Secret keys: a file that opens with its passphrase only, whole or not at all, and lives of keys."""

from __future__ import annotations

import json
import os
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest

from generator.credentials import (
    NotAcceptedError,
    copy_checked,
    in_digits,
    in_words,
    keyring,
    lock,
    mark_stolen,
    new_ring,
    public_file,
    read_public_keys,
    rotate,
    save,
    unlock,
)
from generator.credentials.fingerprint import CONSONANTS, DEVANAGARI, VOWELS
from generator.problems import MachineError, RefusedError
from tests.credentials.issuer import ISSUER, KEYS, NOW, RING, STRANGER, fixed

PASSPHRASE = "slow spring goat ladder"  # noqa: S105 (of nothing but these tests)


@pytest.fixture(scope="module")
def locked() -> bytes:
    return lock(RING, PASSPHRASE, fixed("salt"))


@pytest.fixture
def derived(monkeypatch: pytest.MonkeyPatch) -> list[dict[str, Any]]:
    """What each derivation of a key from a passphrase cost."""
    costs: list[dict[str, Any]] = []
    real = keyring.Scrypt

    def counted(**options: Any) -> Any:
        costs.append({name: options[name] for name in ("n", "r", "p", "length")})
        return real(**options)

    monkeypatch.setattr(keyring, "Scrypt", counted)
    return costs


def test_it_opens_with_the_passphrase_and_its_file_tells_nothing(locked: bytes) -> None:
    assert unlock(locked, PASSPHRASE) == RING
    assert unlock(locked, "  slow   spring goat ladder ") == RING
    assert RING.current.seed not in locked
    assert set(json.loads(locked)) == {"format", "kind", "salt", "nonce", "sealed"}
    assert ISSUER.encode() not in locked
    assert lock(RING, PASSPHRASE) != lock(RING, PASSPHRASE)
    for secret in (RING.exam_secret, RING.current.seed):
        assert repr(secret) not in repr(RING)


def test_a_wrong_passphrase_costs_as_much_as_the_right_one(locked: bytes, derived: list[dict[str, Any]]) -> None:
    for passphrase in ("slow spring goat ladde", "", PASSPHRASE, "x" * 1000):
        if passphrase == PASSPHRASE:
            unlock(locked, passphrase)
            continue
        with pytest.raises(RefusedError, match="does not open"):
            unlock(locked, passphrase)
    assert derived == [{"n": 2**17, "r": 8, "p": 1, "length": 32}] * 4


def test_a_changed_file_does_not_open(locked: bytes) -> None:
    data = json.loads(locked)
    for name in ("salt", "nonce", "sealed"):
        text = data[name]
        bent = ("B" if text[0] == "A" else "A") + text[1:]
        with pytest.raises(RefusedError):
            unlock(json.dumps({**data, name: bent}).encode(), PASSPHRASE)


@pytest.mark.parametrize(
    "change",
    [
        {"format": 0}, {"format": 2}, {"format": "1"}, {"kind": "other"}, {"salt": "!"}, {"salt": "AAAA"}, {"n": 2},
        {"sealed": None}, {"sealed": 7},
    ],
)  # fmt: skip
def test_what_is_no_such_file_is_refused_before_any_work(
    change: dict[str, Any], locked: bytes, derived: list[dict[str, Any]]
) -> None:
    with pytest.raises(RefusedError, match=r"not a file of secret keys|newer edition"):
        unlock(json.dumps({**json.loads(locked), **change}).encode(), PASSPHRASE)
    for data in (b"", b"\xff", b"[]", b"{" * 9999, b"9" * 300_000):
        with pytest.raises(RefusedError, match="not a file of secret keys"):
            unlock(data, PASSPHRASE)
    assert derived == []


def test_a_short_passphrase_is_refused() -> None:
    with pytest.raises(RefusedError, match="at least 12"):
        lock(RING, "short one  ")


def test_a_file_is_written_whole_for_its_owner_only_and_never_over_another(tmp_path: Path) -> None:
    path = tmp_path / "new" / "keys.json"
    save(path, b"one")
    if os.name == "posix":
        assert path.stat().st_mode & 0o777 == 0o600
    with pytest.raises(RefusedError, match="is there already"):
        save(path, b"two")
    assert path.read_bytes() == b"one"
    save(path, b"two", replace_old=True)
    assert path.read_bytes() == b"two"
    assert list(path.parent.iterdir()) == [path]


def test_a_disk_that_says_no_leaves_what_was_there(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "keys.json"
    save(path, b"one")

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(MachineError, match="No space left"):
        save(path, b"two", replace_old=True)
    assert path.read_bytes() == b"one"
    assert list(tmp_path.iterdir()) == [path]


def test_a_backup_is_proven_to_open_and_a_wrong_passphrase_leaves_no_file(tmp_path: Path, locked: bytes) -> None:
    source, target = tmp_path / "keys.json", tmp_path / "drive" / "keys.json"
    save(source, locked)
    with pytest.raises(RefusedError, match="does not open"):
        copy_checked(source, target, "slow spring goat stairs")
    assert not target.exists()
    copy_checked(source, target, PASSPHRASE)
    assert unlock(target.read_bytes(), PASSPHRASE) == RING
    with pytest.raises(RefusedError, match="is there already"):
        copy_checked(source, target, PASSPHRASE)


def test_a_new_key_takes_over_and_the_old_one_stays_for_verifying() -> None:
    later = NOW + timedelta(days=400)
    turned = rotate(RING, later, fixed("next"))
    assert [key.retired for key in turned.keys] == [later.date(), None]
    assert turned.current.kid != RING.current.kid
    assert turned.exam_secret == RING.exam_secret
    keys = read_public_keys(public_file(turned))
    assert keys == turned.public()
    assert keys.identity == KEYS.identity
    assert keys.newest.kid == turned.current.kid


def test_a_stolen_key_is_replaced_at_once() -> None:
    since = NOW.date() - timedelta(days=9)
    robbed = mark_stolen(RING, RING.current.kid, since, NOW, fixed("next"))
    assert (robbed.keys[0].stolen, robbed.keys[0].retired) == (since, None)
    assert robbed.current.stolen is None
    assert len(robbed.keys) == 2
    again = mark_stolen(robbed, RING.current.kid, since, NOW)
    assert len(again.keys) == 2
    with pytest.raises(RefusedError, match="no key"):
        mark_stolen(RING, STRANGER.current.kid, since, NOW)
    with pytest.raises(RefusedError, match="needs a name"):
        new_ring("  ", NOW)


def test_a_newer_key_is_never_called_stolen_by_an_older_one() -> None:
    keys = rotate(RING, NOW, fixed("next")).public()
    old, new = (key.kid for key in keys.keys)
    assert keys.may_speak_of(new, old)
    assert keys.may_speak_of(new, new)
    assert keys.may_speak_of(old, b"gone")
    assert not keys.may_speak_of(old, new)
    assert not keys.may_speak_of(b"gone", old)


@pytest.mark.parametrize(
    ("change", "code"),
    [
        ({"issuer": "Somebody else"}, "keys_changed"), ({"format": 2}, "newer"), ({"format": True}, "not_keys"),
        ({"kind": "x"}, "not_keys"), ({"keys": []}, "not_keys"), ({"keys": [1]}, "not_keys"),
        ({"extra": 1}, "not_keys"),
        ({"signature": "00" * 64}, "keys_changed"), ({"signature": "00"}, "not_keys"),
        ({"issuer": " "}, "not_keys"),
    ],
)  # fmt: skip
def test_a_changed_file_of_public_keys_is_refused(change: dict[str, Any], code: str) -> None:
    with pytest.raises(NotAcceptedError) as caught:
        read_public_keys(json.dumps({**json.loads(public_file(RING)), **change}))
    assert caught.value.code == code


def test_a_key_swapped_in_the_file_of_public_keys_is_noticed() -> None:
    text = public_file(RING)
    with pytest.raises(NotAcceptedError, match="keys_changed"):
        read_public_keys(text.replace(RING.current.public.hex(), STRANGER.current.public.hex()))
    with pytest.raises(NotAcceptedError, match="keys_changed"):
        read_public_keys(text.replace('"stolen": null', '"stolen": "2027-01-01"'))


def test_fingerprints_can_be_said_and_differ() -> None:
    one, other = RING.current.public, STRANGER.current.public
    assert in_words(one, "en") != in_words(other, "en")
    assert in_digits(one) != in_digits(other)
    assert [len(word) for word in in_words(one, "en").split()] == [5] * 6
    assert [len(group) for group in in_digits(one).split()] == [5] * 6
    spelled = "".join(DEVANAGARI.get(letter, letter) for letter in in_words(one, "en"))
    assert spelled == in_words(one, "hi")
    assert len({DEVANAGARI[letter] for letter in CONSONANTS + VOWELS}) == 20
