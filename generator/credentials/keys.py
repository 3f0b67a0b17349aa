"""Public keys: the file that travels with every stick and says whose signatures count.

The file is signed with its newest key. Whoever compares that one key's fingerprint with the one on paper has thereby
compared the issuer's name, all older keys, and which of them were put away or stolen.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from typing import Any

from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey

from generator.credentials import fingerprint
from generator.credentials.jcs import canonical, strict_json
from generator.credentials.refused import NotAcceptedError

KIND = "tankschool public keys"
PURPOSE = b"tankschool public keys 1\n"
MOST_KEYS = 100
_HEX = re.compile("[0-9a-f]+")
_FIELDS = {"public", "made", "retired", "stolen"}


@dataclass(frozen=True)
class PublicKey:
    """A key that signatures are checked with.

    Args:
        public: its 32 bytes.
        made: the day it was made.
        retired: the day it was put away; it still verifies what it signed before.
        stolen: the day from which someone else may have had it; nothing that it signed counts by its signature alone.
    """

    public: bytes
    made: date
    retired: date | None = None
    stolen: date | None = None

    @cached_property
    def kid(self) -> bytes:
        """The four bytes by which signatures name it."""
        return fingerprint.key_id(self.public)

    @cached_property
    def library_key(self) -> Ed25519PublicKey:
        """The key as the library takes it."""
        return Ed25519PublicKey.from_public_bytes(self.public)


@dataclass(frozen=True)
class PublicKeys:
    """An issuer's keys, oldest first.

    Args:
        issuer: name of the organisation.
        keys: at least one.
    """

    issuer: str
    keys: tuple[PublicKey, ...]

    @cached_property
    def by_kid(self) -> Mapping[bytes, PublicKey]:
        """The keys by their ids."""
        return {key.kid: key for key in self.keys}

    @property
    def newest(self) -> PublicKey:
        """The key whose fingerprint stands on paper."""
        return self.keys[-1]

    @property
    def identity(self) -> str:
        """What stays the same while keys come and go: the digest of the first."""
        return fingerprint.digest(self.keys[0].public).hex()

    def may_speak_of(self, speaker: bytes, other: bytes) -> bool:
        """Whether a key may say that another was stolen: itself and older ones, never a newer one."""
        order = [key.kid for key in self.keys]
        return speaker in order and (other not in order or order.index(other) <= order.index(speaker))


def unsigned_file(keys: PublicKeys) -> dict[str, Any]:
    """What the file says, without its signature."""
    return {
        "format": 1,
        "kind": KIND,
        "issuer": keys.issuer,
        "keys": [
            {
                "public": key.public.hex(),
                "made": key.made.isoformat(),
                "retired": key.retired.isoformat() if key.retired else None,
                "stolen": key.stolen.isoformat() if key.stolen else None,
            }
            for key in keys.keys
        ],
    }


def read_public_keys(text: str) -> PublicKeys:
    """The keys in a file.

    Raises:
        NotAcceptedError: it is no file of public keys, of a newer edition, damaged or changed.
    """
    data = strict_json(text)
    if type(data) is not dict or data.get("kind") != KIND:
        raise NotAcceptedError("not_keys")
    if type(data.get("format")) is int and data["format"] > 1:
        raise NotAcceptedError("newer")
    if (
        set(data) != {"format", "kind", "issuer", "keys", "signature"}
        or type(data["format"]) is not int
        or data["format"] != 1
    ):
        raise NotAcceptedError("not_keys")
    issuer, rows, signature = data["issuer"], data["keys"], data.pop("signature")
    if type(issuer) is not str or not issuer.strip() or type(rows) is not list or not 0 < len(rows) <= MOST_KEYS:
        raise NotAcceptedError("not_keys")
    keys = PublicKeys(issuer, tuple(_key(row) for row in rows))
    if len(keys.by_kid) != len(rows):
        raise NotAcceptedError("not_keys")
    try:
        keys.newest.library_key.verify(_bytes(signature, 64), PURPOSE + canonical(data))
    except InvalidSignature:
        raise NotAcceptedError("keys_changed") from None
    return keys


def _key(row: Any) -> PublicKey:
    if type(row) is not dict or set(row) != _FIELDS:
        raise NotAcceptedError("not_keys")
    made = _day(row["made"])
    if made is None:
        raise NotAcceptedError("not_keys")
    return PublicKey(_bytes(row["public"], 32), made, _day(row["retired"]), _day(row["stolen"]))


def _bytes(text: Any, count: int) -> bytes:
    if type(text) is not str or len(text) != 2 * count or not _HEX.fullmatch(text):
        raise NotAcceptedError("not_keys")
    return bytes.fromhex(text)


def _day(text: Any) -> date | None:
    if text is None:
        return None
    try:
        day = date.fromisoformat(text)
    except (ValueError, TypeError):
        raise NotAcceptedError("not_keys") from None
    if day.isoformat() != text:
        raise NotAcceptedError("not_keys")
    return day
