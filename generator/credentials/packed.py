"""Short ids of capitals or small letters, digits and hyphens, packed into fewer bytes than their text has."""

from __future__ import annotations

from generator.credentials.refused import NotAcceptedError

_SIGNS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-"
_VALUE = {sign: value for value, sign in enumerate(_SIGNS, start=1)}
_BASE = len(_SIGNS) + 1
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
    signs = []
    while number:
        number, value = divmod(number, _BASE)
        if not value:
            raise NotAcceptedError("fields")
        signs.append(_SIGNS[value - 1])
    if len(signs) > LONGEST:
        raise NotAcceptedError("fields")
    return "".join(reversed(signs))
