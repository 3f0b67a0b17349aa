"""Data that only a page's scripts read, packed: a tenth of the room on a stick and in the one file for phones.

What people read without a script is never packed. `unpack.js` is the other half.
"""

from __future__ import annotations

import base64
import json
import zlib

LEAST = 2000
"""Bytes below which packing saves nothing worth its trouble."""
_RAW = -15
"""No header: DEFLATE alone (RFC 1951), with the largest window."""


def packed(text: str) -> str:
    """A text as `Tankschool.unpack` takes it.

    Example:
        >>> len(packed("hoop " * 999)) < 100
        True
    """
    squeezer = zlib.compressobj(9, zlib.DEFLATED, _RAW, 9)
    data = squeezer.compress(text.encode("utf-8")) + squeezer.flush()
    return base64.b64encode(data).decode("ascii")


def unpacked(text: str) -> str:
    """A text as it was before `packed`.

    Example:
        >>> unpacked(packed("hoop"))
        'hoop'
    """
    return zlib.decompress(base64.b64decode(text), _RAW).decode("utf-8")


def as_json(data: object) -> str:
    """A value as JSON in as few letters as may be; the same value gives the same text."""
    return json.dumps(data, ensure_ascii=False, sort_keys=True, separators=(",", ":"))
