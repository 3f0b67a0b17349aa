"""Forgeries: what someone without the key might try, drawn from a fixed stream."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import timedelta
from functools import cache
from typing import Any

import cbor2

from generator.credentials import cose
from generator.credentials.certificate import PURPOSE, payload_of
from generator.credentials.text_form import CERTIFICATE, LIST, as_text, from_text
from generator.credentials.withdrawn import PURPOSE as LIST_PURPOSE
from generator.formula import Stream
from tests.credentials.issuer import KEYS, NOW, RING, STRANGER, certificate, listed, number, text

_GOOD = tuple(text(serial, name) for serial, name in enumerate(("Asha Devi", "Kamal Thapa", "कमला देवी"), start=11))
_SIGNS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567"


def bent(data: bytes, draw: Stream) -> bytes:
    """Bytes with one to three changes: a bit, a byte, a piece taken out, doubled, put in or moved."""
    made = bytearray(data)
    for _ in range(1 + draw.below(3)):
        at = draw.below(len(made)) if made else 0
        match draw.below(7):
            case 0 | 1:
                made[at : at + 1] = bytes([(made[at] if made else 0) ^ (1 << draw.below(8))])
            case 2:
                made[at : at + 1] = bytes([draw.below(256)])
            case 3:
                del made[at : at + 1 + draw.below(8)]
            case 4:
                made[at:at] = made[at : at + 1 + draw.below(8)]
            case 5:
                made[at:at] = bytes(draw.below(256) for _ in range(1 + draw.below(4)))
            case 6:
                made += made[:at]
    return bytes(made)


def _bent_text(good: str, draw: Stream) -> str:
    at = 5 + draw.below(len(good) - 5)
    sign = _SIGNS[draw.below(32)]
    match draw.below(4):
        case 0:
            return good[:at] + sign + good[at + 1 :]
        case 1:
            return good[:at] + good[at + 1 :]
        case 2:
            return good[:at] + sign + good[at:]
        case _:
            return good[:at]


def _other_fields(good: str, draw: Stream) -> bytes:
    """The payload edited by someone who knows the format well: scope raised, days moved, name or number swapped."""
    message = cose.unpack(from_text(good, CERTIFICATE))
    fields: dict[int, Any] = cbor2.loads(message.payload)
    key = 1 + draw.below(10)
    other = cbor2.loads(payload_of(certificate(99, "Аsha Devi", scheme="lead-builder", version=2)))
    match draw.below(3):
        case 0:
            fields[key] = other[key] if other[key] != fields[key] else fields[6] + 38_000
        case 1:
            fields[6], fields[7] = 50_000, 220
        case _:
            fields[10] += 1 + draw.below(4000)
    return cose.pack(cose.Message(message.protected, {}, cbor2.dumps(fields, canonical=True), message.signature))


def _signed_by_a_stranger(good: str, draw: Stream) -> bytes:
    """The very payload, signed with another key, under its own id, ours, or no id."""
    message = cose.unpack(from_text(good, CERTIFICATE))
    key = STRANGER.current
    kid = (key.kid, RING.current.kid, b"", bytes(4))[draw.below(4)]
    purpose = (PURPOSE, LIST_PURPOSE, b"")[draw.below(3)]
    return cose.sign(message.payload, key.private, kid, purpose)


def _other_header(good: str, draw: Stream) -> bytes:
    """Another algorithm, none, headers that no signature covers, a swapped signature."""
    message = cose.unpack(from_text(good, CERTIFICATE))
    kid = RING.current.kid
    headers: list[dict[Any, Any]] = [
        {}, {1: -7, 4: kid}, {1: -8}, {4: kid}, {1: -8, 4: kid[:3]}, {1: 0, 4: kid}, {1: -8, 2: [4], 4: kid},
        {1: "EdDSA", 4: kid}, {1: -8, 4: kid.hex()}, {1: -50, 4: kid},
    ]  # fmt: skip
    protected = cbor2.dumps(headers[draw.below(len(headers))], canonical=True)
    unprotected: list[dict[Any, Any]] = [{}, {1: -8}, {4: kid}, {1: -8, 4: kid}]
    other = cose.unpack(from_text(_GOOD[draw.below(3)], CERTIFICATE))
    signatures = [message.signature, bytes(64), b"", message.signature + b"\0", other.signature[:32] + bytes(32)]
    return cose.pack(
        cose.Message(protected, unprotected[draw.below(4)], message.payload, signatures[draw.below(len(signatures))])
    )


def _other_cbor(good: str, draw: Stream) -> bytes:
    """The same values written in another way: longer numbers, open lengths, doubled keys, more behind the end."""
    data = from_text(good, CERTIFICATE)
    message = cose.unpack(data)
    parts: list[Any] = [message.protected, {}, message.payload, message.signature]
    whole = [cbor2.dumps(part) for part in parts]
    match draw.below(7):
        case 0:
            return b"\xd8\x12" + data[1:]
        case 1:
            return b"\xd2\x9f" + b"".join(whole) + b"\xff"
        case 2:
            return data + bytes([draw.below(256)])
        case 3:
            return data[1:]
        case 4:
            return b"\xd2\xd2" + data[1:]
        case 5:
            whole[3] = b"\x59\x00\x40" + message.signature
            return b"\xd2\x84" + b"".join(whole)
        case _:
            doubled = b"\xab" + message.payload[1:] + b"\x0a\x19\xff\xff"
            return cose.pack(cose.Message(message.protected, {}, doubled, message.signature))


_KINDS: tuple[Callable[[str, Stream], bytes], ...] = (
    lambda good, draw: bent(from_text(good, CERTIFICATE), draw),
    lambda good, draw: bent(from_text(good, CERTIFICATE), draw),
    _other_fields,
    _signed_by_a_stranger,
    _other_header,
    _other_cbor,
)


@cache
def certificates(count: int) -> list[str]:
    """Texts that must not be accepted: none has the bytes of one that was signed."""
    draw = Stream("forged certificates")
    true = {from_text(good, CERTIFICATE) for good in _GOOD}
    made: list[str] = []
    while len(made) < count:
        good = _GOOD[draw.below(len(_GOOD))]
        if draw.below(5) == 0:
            made.append(_bent_text(good, draw))
            if made[-1] in _GOOD:
                made.pop()
            continue
        data = _KINDS[draw.below(len(_KINDS))](good, draw)
        if data not in true:
            made.append(as_text(data, CERTIFICATE))
    return made


@cache
def lists(count: int) -> list[str]:
    """Texts of lists that must not be accepted."""
    draw = Stream("forged lists")
    good = listed(NOW - timedelta(days=3))
    data = from_text(good, LIST)
    message = cose.unpack(data)
    made = []
    while len(made) < count:
        match draw.below(5):
            case 0:
                found = cose.sign(message.payload, STRANGER.current.private, RING.current.kid, LIST_PURPOSE)
            case 1:
                fields: dict[int, Any] = cbor2.loads(message.payload)
                fields[(1, 2, 3)[draw.below(3)]] = (
                    fields[1] + 1 + draw.below(10**6),
                    [],
                    [[STRANGER.current.kid, 1, []]],
                )[draw.below(3)]
                payload = cbor2.dumps(fields, canonical=True)
                found = cose.pack(cose.Message(message.protected, {}, payload, message.signature))
            case _:
                found = bent(data, draw)
        if found != data:
            made.append(as_text(found, LIST))
    return made


def _places(value: Any, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    """All places of a JSON value that hold no object or list with something in it."""
    if isinstance(value, dict) and value:
        return [place for name, each in value.items() for place in [(*path, name), *_places(each, (*path, name))]]
    if isinstance(value, list) and value:
        return [place for at, each in enumerate(value) for place in [(*path, at), *_places(each, (*path, at))]]
    return [path]


def bent_json(good: str, draw: Stream) -> str:
    """A JSON text with another meaning: a value changed, taken out or put in, or a name that stands twice."""
    data = json.loads(good)
    if draw.below(12) == 0:
        names = [name for name in data if f'"{name}": ' in good]
        name = names[draw.below(len(names))]
        return good.replace("{", f'{{"{name}": {json.dumps(number(draw.below(90)))}, ', 1)
    places = sorted(set(_places(data)), key=repr)
    place = places[draw.below(len(places))]
    inside = data
    for step in place[:-1]:
        inside = inside[step]
    was = inside[place[-1]]
    match draw.below(4):
        case 0:
            del inside[place[-1]]
        case 1 if isinstance(was, str) and was:
            at = draw.below(len(was))
            sign = "0123456789abcdefXYZ -éа"[draw.below(23)]
            inside[place[-1]] = was[:at] + sign + was[at + 1 :]
        case 2:
            inside[place[-1]] = (None, 0, 1, True, "", [], {}, "2027-01-01", [was])[draw.below(9)]
        case _:
            if isinstance(inside, dict):
                inside[("extra", "id", "type", "stolen", "validUntil")[draw.below(5)]] = "2099-01-01T00:00:00Z"
            else:
                inside.append(was)
    return json.dumps(data, ensure_ascii=False, indent=2)


@cache
def documents(good: str, count: int) -> list[str]:
    """JSON texts made from a good one, none with its meaning."""
    draw = Stream(f"forged {len(good)}")
    meaning = json.loads(good)
    made: list[str] = []
    while len(made) < count:
        found = bent_json(good, draw)
        if found != good and (_twice(found) or json.loads(found) != meaning or _retyped(json.loads(found), meaning)):
            made.append(found)
    return made


def _twice(found: str) -> bool:
    """Whether a name stands twice in an object."""
    doubled = []

    def once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
        doubled.append(len(dict(pairs)) != len(pairs))
        return dict(pairs)

    json.loads(found, object_pairs_hook=once)
    return any(doubled)


def _retyped(found: Any, meaning: Any) -> bool:
    """Python takes 1, 1.0 and True for equal; JSON does not take True for 1."""
    return repr(found) != repr(meaning)


assert KEYS.newest.public == RING.current.public
