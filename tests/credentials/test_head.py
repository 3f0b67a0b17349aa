"""Signed heads of a log: whose signature counts."""

from __future__ import annotations

from datetime import date

import pytest

from generator.credentials import mark_stolen, rotate
from generator.credentials.head import head_checker, head_signer
from generator.problems import RefusedError
from tests.credentials.issuer import NOW, RING, STRANGER, fixed

HEAD = b'{"hash":"00","seq":7}'


def test_a_head_is_checked_with_the_key_that_signed_it() -> None:
    signed = head_signer(RING.current)(HEAD)
    ours = head_checker(RING.public())
    assert ours(HEAD, signed)
    assert not ours(HEAD + b" ", signed)
    assert not ours(HEAD, signed[:-1])
    assert not ours(HEAD, b"")
    assert not ours(HEAD, head_signer(STRANGER.current)(HEAD))


def test_a_key_put_away_still_checks_and_a_stolen_one_does_not() -> None:
    signed = head_signer(RING.current)(HEAD)
    later = rotate(RING, NOW, fixed("later"))
    assert head_checker(later.public())(HEAD, signed)
    stolen = mark_stolen(later, RING.current.kid, date(2027, 1, 1), NOW, fixed("stolen"))
    assert not head_checker(stolen.public())(HEAD, signed)
    for key in (later.keys[0], stolen.keys[0]):
        with pytest.raises(RefusedError, match="put away"):
            head_signer(key)
