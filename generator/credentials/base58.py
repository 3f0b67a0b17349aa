"""Base58btc, as multibase texts that start with `z` use it: keys and signatures of Data Integrity proofs."""

from __future__ import annotations

_SIGNS = "123456789ABCDEFGHJKLMNPQRSTUVWXYZabcdefghijkmnopqrstuvwxyz"
_VALUE = {sign: value for value, sign in enumerate(_SIGNS)}
LONGEST = 200
ED25519 = b"\xed\x01"
"""What a multikey says about its 32 bytes."""


def encode(data: bytes) -> str:
    r"""Bytes as text.

    Example:
        >>> encode(b"\x00\x00goat"), decode("113eM8u1") == b"\x00\x00goat"
        ('113eM8u1', True)
    """
    number = int.from_bytes(data, "big")
    signs = []
    while number:
        number, value = divmod(number, 58)
        signs.append(_SIGNS[value])
    zeros = len(data) - len(data.lstrip(b"\0"))
    return "1" * zeros + "".join(reversed(signs))


def decode(text: str) -> bytes:
    """Text as bytes.

    Raises:
        ValueError: it is too long or has a sign that base58 does not.
    """
    if len(text) > LONGEST or any(sign not in _VALUE for sign in text):
        raise ValueError("not base58")
    number = 0
    for sign in text:
        number = number * 58 + _VALUE[sign]
    zeros = len(text) - len(text.lstrip("1"))
    return bytes(zeros) + number.to_bytes((number.bit_length() + 7) // 8, "big")


def multikey(public: bytes) -> str:
    """An Ed25519 public key as Data Integrity writes it."""
    return "z" + encode(ED25519 + public)
