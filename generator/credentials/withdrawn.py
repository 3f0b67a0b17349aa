"""The list of numbers that are not to be trusted though their days are not over: dated, and signed like a certificate.

It also names stolen keys. What such a key signed counts only if the list knows the very bytes of it: whoever holds a
stolen key can sign anything, with any date.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import UTC, date, datetime
from enum import StrEnum
from typing import Any

import cbor2

from generator.credentials import cose
from generator.credentials.keyring import SigningKey
from generator.credentials.keys import PublicKey, PublicKeys
from generator.credentials.packed import packed, unpacked
from generator.credentials.refused import NotAcceptedError
from generator.credentials.text_form import LIST, as_text, from_text
from generator.problems import RefusedError

PURPOSE = b"tankschool withdrawn numbers 1"
KNOWN_LENGTH = 16
"""Bytes of SHA-256 by which the list knows a certificate."""
_EPOCH = date(1970, 1, 1).toordinal()
_LAST_SECOND = int(datetime(2200, 1, 1, tzinfo=UTC).timestamp())


class Status(StrEnum):
    """Why a number stands on the list. A code is never given another meaning."""

    SUSPENDED = "suspended"
    WITHDRAWN = "withdrawn"
    RENEWED = "renewed"


STATUSES: tuple[Status, ...] = tuple(Status)
"""In the list stands the place in this, counted from 1: append only."""


@dataclass(frozen=True, slots=True)
class StolenKey:
    """A key in wrong hands.

    Args:
        kid: its id.
        since: first day on which someone else may have had it.
        known: of each certificate that was signed with it and is good, the start of the SHA-256.
    """

    kid: bytes
    since: date
    known: frozenset[bytes] = frozenset()


@dataclass(frozen=True, slots=True)
class WithdrawnList:
    """A list whose signature was found good, or that is about to be signed.

    Args:
        dated: when it was made; whole seconds, UTC.
        numbers: status by number.
        stolen: stolen keys by id.
    """

    dated: datetime
    numbers: Mapping[str, Status] = field(default_factory=dict)
    stolen: Mapping[bytes, StolenKey] = field(default_factory=dict)


def known_hash(signed: bytes) -> bytes:
    """What the list keeps of a certificate's signed bytes."""
    return hashlib.sha256(signed).digest()[:KNOWN_LENGTH]


def stolen_entry(kid: bytes, since: date, certificates: Iterable[bytes]) -> StolenKey:
    """The entry of a stolen key.

    Args:
        kid: its id.
        since: first day on which someone else may have had it.
        certificates: the signed bytes, out of the register, of all that the issuer itself signed with it.
    """
    return StolenKey(kid, since, frozenset(map(known_hash, certificates)))


def sign_list(withdrawn: WithdrawnList, key: SigningKey, keys: PublicKeys) -> bytes:
    """A signed list; the same input gives the same bytes.

    Args:
        withdrawn: what it says.
        key: the ring's current key.
        keys: the ring's public keys.

    Raises:
        RefusedError: the key was put away or stolen, a number is none, or the date has no zone.
    """
    if key.retired is not None or key.stolen is not None:
        raise RefusedError("this key was put away: sign with the current one")
    if withdrawn.dated.tzinfo is None:
        raise RefusedError("a list's date needs its zone")
    if any(not keys.may_speak_of(key.kid, kid) for kid in withdrawn.stolen):
        raise RefusedError("a list can't say that a newer key than its own was stolen")
    try:
        rows = [
            [packed(number), STATUSES.index(status) + 1]
            for number, status in sorted(withdrawn.numbers.items(), key=lambda item: packed(item[0]))
        ]
    except ValueError as error:
        raise RefusedError(str(error)) from None
    stolen = [
        [kid, entry.since.toordinal() - _EPOCH, sorted(entry.known)] for kid, entry in sorted(withdrawn.stolen.items())
    ]
    fields = {1: int(withdrawn.dated.timestamp()), 2: rows, 3: stolen}
    return cose.sign(cbor2.dumps(fields, canonical=True), key.private, key.kid, PURPOSE)


def list_text(signed: bytes) -> str:
    """A signed list as the text of its file."""
    return as_text(signed, LIST) + "\n"


def read_list(text: str, keys: PublicKeys) -> WithdrawnList:
    """The list in a text.

    Raises:
        NotAcceptedError: damaged, changed, or signed by nobody who may.
    """
    message = cose.unpack(from_text(text, LIST))
    key = keys.by_kid.get(cose.kid_of(message))
    if key is None:
        raise NotAcceptedError("unknown_key")
    if not cose.is_signed(message, key.library_key, PURPOSE):
        raise NotAcceptedError("signature")
    found = _read_payload(message.payload)
    if key.stolen is not None or key.kid in found.stolen:
        raise NotAcceptedError("stolen_key")
    _refuse_late(found, key)
    if any(not keys.may_speak_of(key.kid, kid) for kid in found.stolen):
        raise NotAcceptedError("fields")
    return found


def _refuse_late(found: WithdrawnList, key: PublicKey) -> None:
    if key.retired is not None and found.dated.date() > key.retired:
        raise NotAcceptedError("retired_key")


def _read_payload(payload: bytes) -> WithdrawnList:
    fields = cose.strictly(payload)
    if type(fields) is not dict or list(fields) != [1, 2, 3]:
        raise NotAcceptedError("fields")
    if [type(value) for value in fields.values()] != [int, list, list] or not 0 <= fields[1] <= _LAST_SECOND:
        raise NotAcceptedError("fields")
    numbers: dict[str, Status] = {}
    for row in fields[2]:
        if not _is_row(row, (bytes, int)) or not 1 <= row[1] <= len(STATUSES):
            raise NotAcceptedError("fields")
        numbers[unpacked(row[0])] = STATUSES[row[1] - 1]
    stolen = {}
    for row in fields[3]:
        if not _is_row(row, (bytes, int, list)) or len(row[0]) != cose.KID_LENGTH or not 0 <= row[1] < 10**6:
            raise NotAcceptedError("fields")
        if any(type(each) is not bytes or len(each) != KNOWN_LENGTH for each in row[2]):
            raise NotAcceptedError("fields")
        stolen[row[0]] = StolenKey(row[0], date.fromordinal(row[1] + _EPOCH), frozenset(row[2]))
    if len(numbers) != len(fields[2]) or len(stolen) != len(fields[3]):
        raise NotAcceptedError("fields")
    return WithdrawnList(datetime.fromtimestamp(fields[1], UTC), numbers, stolen)


def _is_row(row: Any, kinds: tuple[type, ...]) -> bool:
    return type(row) is list and tuple(type(each) for each in row) == kinds
