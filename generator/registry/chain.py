"""The chain: each event's hash covers the one before it, so none can be changed, taken out or put in unseen."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any


@dataclass(frozen=True, slots=True)
class Head:
    """The newest event of a registry: what a backup signs, and what a later audit can be held against."""

    registry: str
    seq: int
    hash: str


def canonical(value: object) -> str:
    """A value as JSON with one way to write it: sorted keys, no spaces, plain UTF-8.

    Raises:
        ValueError: a number that is not finite.

    Example:
        >>> canonical({"b": 1, "a": [True, None, "é"]})
        '{"a":[true,null,"é"],"b":1}'
    """
    return json.dumps(value, ensure_ascii=False, sort_keys=True, separators=(",", ":"), allow_nan=False)


def sha256(data: str | bytes) -> str:
    """SHA-256 of bytes, or of a text's UTF-8, in hexadecimal."""
    return hashlib.sha256(data.encode("utf-8") if isinstance(data, str) else data).hexdigest()


def start_of(registry: str) -> str:
    """What stands for the hash before a registry's first event."""
    return sha256(f"tankschool registry {registry}")


def event_hash(event: Mapping[str, Any], previous: str) -> str:
    """Hash of an event: SHA-256 of its canonical JSON and the hash before it.

    Args:
        event: its `seq`, `at`, `kind`, `subject`, `actor`, `body` (JSON text) and `personal` (hash, or None).
        previous: hash of the event before it.
    """
    names = ("seq", "at", "kind", "subject", "actor", "body", "personal")
    return sha256(canonical({name: event[name] for name in names}) + previous)


def payload_hash(payload: str, salt: str) -> str:
    """The salted hash by which a personal payload enters its event; without the salt nobody can guess the payload."""
    return sha256(f"{salt}:{payload}")


def digest(row: Mapping[str, Any], columns: tuple[str, ...]) -> str:
    """Hash of some columns of a row."""
    return sha256(canonical({name: row[name] for name in columns}))


def stamp(now: datetime) -> str:
    """A time as the registry writes it.

    Raises:
        ValueError: the time has no zone.

    Example:
        >>> from datetime import timezone, timedelta
        >>> stamp(datetime(2031, 5, 4, 14, 30, tzinfo=timezone(timedelta(hours=5, minutes=30))))
        '2031-05-04T09:00:00.000000Z'
    """
    if now.tzinfo is None:
        raise ValueError("a time without a zone")
    return now.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%S.%fZ")
