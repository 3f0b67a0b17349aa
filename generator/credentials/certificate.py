"""What a certificate says, as few bytes as possible, and its signature.

The payload is a map with small whole numbers as keys: number, printed name, scheme and its version, scope, first and
last day. The key id stands in the protected header; the issuer is whoever the reader's own list of keys says it is, and
never what a certificate claims.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from typing import Any

import cbor2

from generator.credentials import cose
from generator.credentials.keyring import SigningKey
from generator.credentials.letters import is_clean
from generator.credentials.packed import packed, unpacked
from generator.credentials.refused import NotAcceptedError
from generator.credentials.text_form import CERTIFICATE, as_text
from generator.problems import RefusedError

PURPOSE = b"tankschool certificate 1"
"""What the signature covers besides the bytes: no list and no later format can be taken for a certificate."""
LONGEST_NAME = 90
"""Bytes of UTF-8."""
MOST_SIGNS = 366
"""Letters and digits that a QR code of version 11 holds at error correction M."""
HIGHEST_WALL = 1000
MOST_LITRES = 1_000_000
_EPOCH = date(1970, 1, 1).toordinal()
_LAST_DAY = date(2200, 1, 1).toordinal() - _EPOCH


class Role(StrEnum):
    """The work that the holder may do. A code is never given another meaning."""

    HELPER = "helper"
    MASON = "mason"
    LEAD = "lead"
    TRAINER = "trainer"
    OBSERVER = "observer"


class Roof(StrEnum):
    """The roofs that the holder may build. A code is never given another meaning."""

    NONE = "none"
    FLAT = "flat"
    COLUMN = "column"
    RIBS = "ribs"
    DOME = "dome"
    CONE = "cone"
    ANY = "any"


ROLES: tuple[Role, ...] = tuple(Role)
ROOFS: tuple[Roof, ...] = tuple(Roof)
"""In the payload stands the place in these, counted from 1: append only."""


@dataclass(frozen=True, slots=True)
class Scope:
    """What the holder may do.

    Args:
        role: the work.
        litres: largest volume [L].
        wall: greatest wall height [cm].
        roof: kind of roof.
    """

    role: Role
    litres: int
    wall: int
    roof: Roof


@dataclass(frozen=True, slots=True)
class Certificate:
    """What a certificate says.

    Args:
        number: unique for ever, of `0-9 A-Z -`.
        name: as printed, at most 90 bytes of UTF-8.
        scheme: id of the scheme.
        version: of the scheme.
        scope: what the holder may do.
        valid_from: first day.
        valid_to: last day.
    """

    number: str
    name: str
    scheme: str
    version: int
    scope: Scope
    valid_from: date
    valid_to: date


def scope_of(values: Mapping[str, object]) -> Scope:
    """A scope out of the register or a scheme.

    Args:
        values: `role` and `roof`, each one of the codes, `largest_volume` [m3] and `largest_wall_height` [m].

    Raises:
        RefusedError: a value is missing, unknown, or finer than a litre and a centimetre.

    Example:
        >>> scope_of({"role": "helper", "largest_volume": 12, "largest_wall_height": 1.95, "roof": "none"}).wall
        195
    """
    try:
        role, roof = Role(str(values["role"])), Roof(str(values["roof"]))
        sizes = [float(str(values[name])) * factor for name, factor in _SIZES]
        if not all(math.isfinite(size) and abs(size - round(size)) < 1e-6 for size in sizes):
            raise ValueError
    except (KeyError, ValueError):
        raise RefusedError(
            f"a certificate's scope needs role ({', '.join(ROLES)}), roof ({', '.join(ROOFS)}), the largest volume in "
            "cubic metres, to the litre, and the greatest wall height in metres, to the centimetre"
        ) from None
    return Scope(role, round(sizes[0]), round(sizes[1]), roof)


_SIZES = (("largest_volume", 1000), ("largest_wall_height", 100))


def payload_of(certificate: Certificate) -> bytes:
    """The bytes that are signed.

    Raises:
        RefusedError: something in it can't be signed; the message says what to change.
    """
    _refuse_unsignable(certificate)
    scope = certificate.scope
    try:
        number, scheme = packed(certificate.number), packed(certificate.scheme.upper())
    except ValueError as error:
        raise RefusedError(str(error)) from None
    fields = {
        1: number,
        2: certificate.name,
        3: scheme,
        4: certificate.version,
        5: ROLES.index(scope.role) + 1,
        6: scope.litres,
        7: scope.wall,
        8: ROOFS.index(scope.roof) + 1,
        9: certificate.valid_from.toordinal() - _EPOCH,
        10: certificate.valid_to.toordinal() - _EPOCH,
    }
    return cbor2.dumps(fields, canonical=True)


def sign_certificate(certificate: Certificate, key: SigningKey) -> bytes:
    """A signed certificate; the same input gives the same bytes.

    Args:
        certificate: what it says.
        key: the ring's current key.

    Raises:
        RefusedError: it can't be signed, or the key was put away or stolen.
    """
    if key.retired is not None or key.stolen is not None:
        raise RefusedError("this key was put away: sign with the current one")
    signed = cose.sign(payload_of(certificate), key.private, key.kid, PURPOSE)
    if len(certificate_text(signed)) > MOST_SIGNS:
        over = (len(certificate_text(signed)) - MOST_SIGNS) * 5 // 8 + 1
        raise RefusedError(
            f"the certificate {certificate.number} is {over} bytes too long for a code that prints well: choose a "
            f"shorter printed name than '{certificate.name}', such as initials, or a scheme with a shorter id"
        )
    return signed


def certificate_text(signed: bytes) -> str:
    """A signed certificate as the text that stands in its QR code."""
    return as_text(signed, CERTIFICATE)


def read_payload(payload: bytes) -> Certificate:
    """The certificate in a payload whose signature was found good.

    Raises:
        NotAcceptedError: a field is missing, doubled, of the wrong kind or out of its range.
    """
    fields = cose.strictly(payload)
    if type(fields) is not dict or list(fields) != list(range(1, 11)):
        raise NotAcceptedError("fields")
    if [type(value) for value in fields.values()] != [bytes, str, bytes, int, int, int, int, int, int, int]:
        raise NotAcceptedError("fields")
    _, name, _, version, role, litres, wall, roof, start, end = fields.values()
    if not (
        1 <= role <= len(ROLES)
        and 1 <= roof <= len(ROOFS)
        and version >= 1
        and 0 < litres <= MOST_LITRES
        and 0 < wall <= HIGHEST_WALL
        and 0 <= start <= end <= _LAST_DAY
        and len(name.encode()) <= LONGEST_NAME
        and is_clean(name)
    ):
        raise NotAcceptedError("fields")
    return Certificate(
        number=unpacked(fields[1]),
        name=name,
        scheme=unpacked(fields[3]).lower(),
        version=version,
        scope=Scope(ROLES[role - 1], litres, wall, ROOFS[roof - 1]),
        valid_from=date.fromordinal(start + _EPOCH),
        valid_to=date.fromordinal(end + _EPOCH),
    )


def as_data(certificate: Certificate) -> dict[str, Any]:
    """A certificate for a program to read."""
    scope = certificate.scope
    return {
        "number": certificate.number,
        "name": certificate.name,
        "scheme": certificate.scheme,
        "version": certificate.version,
        "scope": {"role": str(scope.role), "litres": scope.litres, "wall_cm": scope.wall, "roof": str(scope.roof)},
        "valid_from": certificate.valid_from.isoformat(),
        "valid_to": certificate.valid_to.isoformat(),
    }


def _refuse_unsignable(certificate: Certificate) -> None:
    name, scope = certificate.name, certificate.scope
    size = len(name.encode("utf-8", "surrogatepass"))
    if size > LONGEST_NAME:
        raise RefusedError(
            f"'{name}' has {size} bytes, and a certificate's code has room for {LONGEST_NAME}: ask the person which "
            "shorter form to print (fewer names, or initials), and enter that; it is never cut by itself"
        )
    if not is_clean(name):
        raise RefusedError(
            f"'{name}' can't be signed as it is: it is empty, has blanks at an end or doubled, a sign that nobody "
            "sees, or letters that are not composed (Unicode NFC): type it anew"
        )
    if certificate.scheme != certificate.scheme.lower():
        raise RefusedError(f"the scheme's id '{certificate.scheme}' has capitals")
    if not (0 < scope.litres <= MOST_LITRES and 0 < scope.wall <= HIGHEST_WALL):
        raise RefusedError(
            f"a scope of {scope.litres} L and {scope.wall} cm makes no sense: give the largest tank in litres, up to "
            f"{MOST_LITRES}, and the highest wall in centimetres, up to {HIGHEST_WALL}"
        )
    first, last = certificate.valid_from.toordinal() - _EPOCH, certificate.valid_to.toordinal() - _EPOCH
    if certificate.version < 1 or not 0 <= first <= last <= _LAST_DAY:
        raise RefusedError(
            f"a certificate by version {certificate.version}, from {certificate.valid_from} to {certificate.valid_to}, "
            "makes no sense"
        )
