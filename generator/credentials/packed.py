"""Short ids of capitals or small letters, digits and hyphens, packed into fewer bytes than their text has."""

from __future__ import annotations

from generator.credentials.refused import NotAcceptedError

_SIGNS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-"
_VALUE = {sign: value for value, sign in enumerate(_SIGNS, start=1)}
_BASE = len(_SIGNS) + 1
_PAIRS = {_VALUE[one] * _BASE + _VALUE[other]: one + other for one in _SIGNS for other in _SIGNS}
LONGEST = 40
"""Signs of an id."""


def packed(text: str) -> bytes:
    """An id as bytes: its signs are the digits of a number to the base 38, none of them 0.

    Raises:
        ValueError: it is empty, too long, or has another sign than `0-9 A-Z -`.

    Example:
        >>> len(packed("WKLP-C000012-PM")), unpacked(packed("WKLP-C000012-PM"))
        (10, 'WKLP-C000012-PM')
    """
    if not 0 < len(text) <= LONGEST or any(sign not in _VALUE for sign in text):
        raise ValueError(f"'{text}' is no id: 1 to {LONGEST} of 0-9, A-Z and hyphens")
    number = 0
    for sign in text:
        number = number * _BASE + _VALUE[sign]
    return number.to_bytes((number.bit_length() + 7) // 8, "big")


def unpacked(data: bytes) -> str:
    """The id in bytes.

    Raises:
        NotAcceptedError: the bytes are none that `packed` makes.
    """
    if not 0 < len(data) <= LONGEST or data[0] == 0:
        raise NotAcceptedError("fields")
    number = int.from_bytes(data, "big")
    pairs = []
    while number >= _BASE:
        number, value = divmod(number, _BASE * _BASE)
        pairs.append(_PAIRS.get(value, " "))
    if number:
        pairs.append(_SIGNS[number - 1])
    found = "".join(reversed(pairs))
    if " " in found or len(found) > LONGEST:
        raise NotAcceptedError("fields")
    return found
