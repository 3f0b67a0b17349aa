"""Signed bytes as text: a prefix that tells what it is, then base32 (RFC 4648) without padding.

All signs are among those that a QR code packs tightly, none is taken for another when it is read aloud, and capitals,
spaces and line breaks make no difference when someone types it.
"""

from __future__ import annotations

import re
from base64 import b32encode

from generator.credentials.refused import NotAcceptedError

CERTIFICATE = "TSC1"
LIST = "TSL1"
LONGEST = {CERTIFICATE: 700, LIST: 8_000_000}
"""Signs of a text; a longer one is not looked at."""
_ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567"
_TO_NUMBER = str.maketrans(_ALPHABET, "0123456789abcdefghijklmnopqrstuv")
_BLANK = re.compile("[ \t\r\n\f\v\u00a0\u200b\ufeff]+")
_OTHER = re.compile(f"[^{_ALPHABET}]")
_KIND = re.compile("(TS[CL])([0-9]+)")
_READY = re.compile(f"(TS[CL]1):([{_ALPHABET}]+)")


def as_text(data: bytes, kind: str) -> str:
    """Signed bytes as text.

    Args:
        data: the bytes.
        kind: `CERTIFICATE` or `LIST`.

    Example:
        >>> as_text(b"tank", CERTIFICATE)
        'TSC1:ORQW42Y'
    """
    return f"{kind}:{b32encode(data).decode('ascii').rstrip('=')}"


def from_text(text: str, kind: str) -> bytes:
    """The signed bytes in a text, strictly: one text for one row of bytes, but for blanks and capitals.

    Args:
        text: pasted, typed or scanned.
        kind: what it has to be.

    Raises:
        NotAcceptedError: it is something else, of a newer edition, too long, or damaged.
    """
    ready = _READY.fullmatch(text) if len(text) <= LONGEST[kind] else None
    body = ready[2] if ready and ready[1] == kind else _body(text, kind)
    spare = len(body) * 5 % 8
    if not body or spare >= 5:
        raise NotAcceptedError("cut_off")
    number = int(body.translate(_TO_NUMBER), 32)
    if number & ((1 << spare) - 1):
        raise NotAcceptedError("cut_off")
    return (number >> spare).to_bytes(len(body) * 5 // 8, "big")


def _body(text: str, kind: str) -> str:
    """The base32 in a text that has blanks, small letters, or worse."""
    if len(text) > 2 * LONGEST[kind]:
        raise NotAcceptedError("too_long")
    text = _BLANK.sub("", text)
    if not text.isascii():
        raise NotAcceptedError("sign", sign=next(sign for sign in text if not sign.isascii()))
    head, colon, body = text.upper().partition(":")
    found = _KIND.fullmatch(head)
    if not colon or not found:
        raise NotAcceptedError("not_ours")
    if head != kind:
        if found[1] != kind[:3]:
            raise NotAcceptedError("other_kind")
        raise NotAcceptedError("newer")
    if len(body) > LONGEST[kind]:
        raise NotAcceptedError("too_long")
    other = _OTHER.search(body)
    if other:
        raise NotAcceptedError("sign", sign=other[0])
    return body
