"""The signed list: only who may signs it, and it is read strictly."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any

import cbor2
import pytest

from generator.credentials import (
    NotAcceptedError,
    Status,
    StolenKey,
    WithdrawnList,
    cose,
    list_text,
    mark_stolen,
    rotate,
    sign_list,
    stolen_entry,
)
from generator.credentials.text_form import LIST, as_text
from generator.credentials.withdrawn import PURPOSE, read_list
from generator.problems import RefusedError
from tests.credentials.issuer import KEYS, NOW, RING, STRANGER, fixed, listed, number

TURNED = rotate(RING, NOW, fixed("next"))


def test_it_is_read_again_and_the_same_list_gives_the_same_text() -> None:
    numbers = {number(serial): status for serial, status in enumerate(Status, start=300)}
    entry = stolen_entry(RING.current.kid, NOW.date(), [b"one", b"two"])
    made = WithdrawnList(NOW, numbers, {entry.kid: entry})
    text = list_text(sign_list(made, TURNED.current, TURNED.public()))
    assert read_list(text, TURNED.public()) == made
    turned_round = replace(made, numbers=dict(reversed(numbers.items())))
    assert list_text(sign_list(turned_round, TURNED.current, TURNED.public())) == text


def test_ten_thousand_numbers_make_a_file_that_travels() -> None:
    numbers = {number(serial): Status.WITHDRAWN for serial in range(1, 10_001)}
    text = listed(numbers=numbers)
    assert len(text) < 250_000
    assert read_list(text, KEYS).numbers == numbers


def test_who_may_not_sign_a_list_does_not() -> None:
    old = TURNED.keys[0]
    with pytest.raises(RefusedError, match="put away"):
        sign_list(WithdrawnList(NOW), old, TURNED.public())
    newer = StolenKey(TURNED.current.kid, NOW.date())
    with pytest.raises(RefusedError, match="newer key"):
        sign_list(WithdrawnList(NOW, {}, {newer.kid: newer}), RING.current, TURNED.public())
    with pytest.raises(RefusedError, match="needs its zone"):
        sign_list(WithdrawnList(NOW.replace(tzinfo=None)), RING.current, KEYS)
    with pytest.raises(RefusedError, match="is no id"):
        sign_list(WithdrawnList(NOW, {"small": Status.RENEWED}), RING.current, KEYS)


def refused(text: str, keys: Any = KEYS) -> str:
    with pytest.raises(NotAcceptedError) as caught:
        read_list(text, keys)
    return caught.value.code


def test_lists_by_the_wrong_key_are_refused() -> None:
    assert refused(listed(by=STRANGER)) == "unknown_key"
    late = listed(NOW + timedelta(days=1))
    assert refused(late, TURNED.public()) == "retired_key"
    assert read_list(listed(NOW - timedelta(days=1)), TURNED.public()).numbers
    robbed = mark_stolen(RING, RING.current.kid, NOW.date(), NOW, fixed("next")).public()
    assert refused(listed(), robbed) == "stolen_key"


def test_a_thief_can_not_say_that_the_new_key_was_stolen() -> None:
    payload = cbor2.dumps({1: 10**9, 2: [], 3: [[TURNED.current.kid, 1, []]]}, canonical=True)
    old = TURNED.keys[0]
    text = as_text(cose.sign(payload, old.private, old.kid, PURPOSE), LIST)
    assert refused(text, TURNED.public()) == "fields"
    itself = cbor2.dumps({1: 10**9, 2: [], 3: [[old.kid, 1, []]]}, canonical=True)
    text = as_text(cose.sign(itself, old.private, old.kid, PURPOSE), LIST)
    assert refused(text, TURNED.public()) == "stolen_key"


@pytest.mark.parametrize(
    "fields",
    [
        {1: 1, 2: []}, {1: 1, 2: [], 3: [], 4: []}, {1: -1, 2: [], 3: []}, {1: 10**12, 2: [], 3: []},
        {1: 1.5, 2: [], 3: []},
        {1: 1, 2: [[b"\1", 1], [b"\1", 2]], 3: []}, {1: 1, 2: [[b"\1", 0]], 3: []}, {1: 1, 2: [[b"\1", 4]], 3: []},
        {1: 1, 2: [[b"\1", True]], 3: []}, {1: 1, 2: [[b"", 1]], 3: []}, {1: 1, 2: [[b"\1"]], 3: []},
        {1: 1, 2: [7], 3: []},
        {1: 1, 2: [], 3: [[b"abc", 1, []]]}, {1: 1, 2: [], 3: [[b"abcd", -1, []]]},
        {1: 1, 2: [], 3: [[b"abcd", 10**9, []]]},
        {1: 1, 2: [], 3: [[b"abcd", 1, [b"short"]]]}, {1: 1, 2: [], 3: [[b"abcd", 1, []], [b"abcd", 2, []]]}, [],
    ],
)  # fmt: skip
def test_a_list_that_makes_no_sense_is_refused_even_with_a_good_signature(fields: Any) -> None:
    key = RING.current
    text = as_text(cose.sign(cbor2.dumps(fields, canonical=True), key.private, key.kid, PURPOSE), LIST)
    assert refused(text) == "fields"
