"""COSE_Sign1 (RFC 9052) with Ed25519 (RFC 8032), written in one way only and read no other.

A certificate and a list are told apart by the external data that their signatures cover: a signed list can't be passed
off as a certificate, whatever its bytes.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import cbor2
from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey, Ed25519PublicKey

from generator.credentials.refused import NotAcceptedError

TAG = b"\xd2"
"""CBOR tag 18: a COSE_Sign1 follows."""
ALGORITHM, KEY_ID = 1, 4
"""Header labels."""
EDDSA = -8
KID_LENGTH = 4
SIGNATURE_LENGTH = 64
_CONTEXT = "Signature1"


@dataclass(frozen=True, slots=True)
class Message:
    """The four parts of a COSE_Sign1."""

    protected: bytes
    unprotected: Mapping[Any, Any]
    payload: bytes
    signature: bytes


def to_be_signed(protected: bytes, payload: bytes, external: bytes = b"") -> bytes:
    """The bytes that the signature covers (Sig_structure)."""
    return cbor2.dumps([_CONTEXT, protected, external, payload], canonical=True)


def pack(message: Message) -> bytes:
    """The message as tagged, deterministic CBOR."""
    parts = [message.protected, dict(message.unprotected), message.payload, message.signature]
    return TAG + cbor2.dumps(parts, canonical=True)


def unpack(data: bytes) -> Message:
    """The parts of a message.

    Raises:
        NotAcceptedError: it is no tagged COSE_Sign1, or is not written in the one deterministic way: longer numbers
            than needed, unsorted or doubled keys, open lengths, bytes behind the end.
    """
    if data[:1] != TAG:
        raise NotAcceptedError("not_cose")
    parts = strictly(data[1:])
    if type(parts) is not list or [type(part) for part in parts] != [bytes, dict, bytes, bytes]:
        raise NotAcceptedError("not_cose")
    return Message(*parts)


def strictly(data: bytes) -> Any:
    """The value of bytes that are deterministic CBOR to the last bit.

    Raises:
        NotAcceptedError: they are not.
    """
    try:
        value = cbor2.loads(data)
        again = cbor2.dumps(value, canonical=True)
    except Exception:  # whatever strange bytes do to the library, they are no certificate
        raise NotAcceptedError("not_cbor") from None
    if again != data:
        raise NotAcceptedError("not_cbor")
    return value


def header(kid: bytes) -> bytes:
    """The protected header: algorithm and key id."""
    return cbor2.dumps({ALGORITHM: EDDSA, KEY_ID: kid}, canonical=True)


def sign(payload: bytes, key: Ed25519PrivateKey, kid: bytes, external: bytes) -> bytes:
    """A signed message; the same input gives the same bytes.

    Args:
        payload: deterministic CBOR.
        key: the private key.
        kid: its id, four bytes.
        external: what kind of thing is signed.
    """
    protected = header(kid)
    return pack(Message(protected, {}, payload, key.sign(to_be_signed(protected, payload, external))))


def kid_of(message: Message) -> bytes:
    """The key id of a message whose header is exactly ours.

    Raises:
        NotAcceptedError: another algorithm, a missing or strange key id, or anything that the signature does not cover.
    """
    if message.unprotected or len(message.signature) != SIGNATURE_LENGTH:
        raise NotAcceptedError("not_cose")
    return _kid(message.protected)


@lru_cache(maxsize=256)
def _kid(protected: bytes) -> bytes:
    fields = strictly(protected)
    if type(fields) is not dict:
        raise NotAcceptedError("not_cose")
    if type(fields.get(ALGORITHM)) is not int or fields[ALGORITHM] != EDDSA:
        raise NotAcceptedError("algorithm")
    kid = fields.get(KEY_ID)
    if set(fields) != {ALGORITHM, KEY_ID} or type(kid) is not bytes or len(kid) != KID_LENGTH:
        raise NotAcceptedError("not_cose")
    return kid


def is_signed(message: Message, key: Ed25519PublicKey, external: bytes = b"") -> bool:
    """Whether the signature is the key's over this message."""
    try:
        key.verify(message.signature, to_be_signed(message.protected, message.payload, external))
    except InvalidSignature:
        return False
    return True
