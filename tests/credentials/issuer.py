"""An invented issuer at Tamarisk Ridge with fixed keys: what it signs is the same in every run."""

from __future__ import annotations

import hashlib
from collections.abc import Callable
from datetime import UTC, date, datetime
from pathlib import Path

from generator.credentials import (
    Certificate,
    KeyRing,
    PublicKeys,
    Role,
    Roof,
    Scope,
    Status,
    WithdrawnList,
    certificate_text,
    list_text,
    new_ring,
    public_file,
    read_public_keys,
    sign_certificate,
    sign_list,
)
from generator.curriculum.word_files import words_of
from generator.registry.numbers import number_text

ISSUER = "Tamarisk Ridge Builders' Circle"
NOW = datetime(2027, 6, 15, 9, 30, tzinfo=UTC)


def fixed(seed: str) -> Callable[[int], bytes]:
    """Entropy that is none: tests only."""
    count = 0

    def draw(size: int) -> bytes:
        nonlocal count
        count += 1
        return hashlib.shake_256(f"{seed}/{count}".encode()).digest(size)

    return draw


def ring(seed: str = "ridge") -> KeyRing:
    return new_ring(ISSUER, NOW, fixed(seed))


RING = ring()
KEYS: PublicKeys = read_public_keys(public_file(RING))
STRANGER = ring("stranger")


def number(serial: int) -> str:
    return number_text("WKLP", "C", serial)


def certificate(serial: int = 7, name: str = "Asha Devi", **changes: object) -> Certificate:
    values: dict[str, object] = {
        "number": number(serial),
        "name": name,
        "scheme": "frame-hand",
        "version": 1,
        "scope": Scope(Role.HELPER, 12_000, 190, Roof.NONE),
        "valid_from": date(2027, 1, 10),
        "valid_to": date(2030, 1, 9),
    }
    return Certificate(**{**values, **changes})  # type: ignore[arg-type]


def text(serial: int = 7, name: str = "Asha Devi", *, by: KeyRing = RING, **changes: object) -> str:
    return certificate_text(sign_certificate(certificate(serial, name, **changes), by.current))


def listed(dated: datetime = NOW, numbers: dict[str, Status] | None = None, by: KeyRing = RING) -> str:
    found = WithdrawnList(dated, numbers if numbers is not None else {number(3): Status.WITHDRAWN})
    return list_text(sign_list(found, by.current, by.public()))


_WORDS = Path(__file__).parents[2] / "course" / "words"
WORDS = {name: words_of(name, name, (_WORDS / f"{name}.yaml").read_bytes()) for name in ("en", "hi")}
