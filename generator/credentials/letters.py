"""Letters of a name that only look like others: a name in two scripts, or signs that nobody sees."""

from __future__ import annotations

import re
import unicodedata

RANGES: dict[str, tuple[tuple[int, int], ...]] = {
    "latin": ((0x41, 0x5A), (0x61, 0x7A), (0xAA, 0xAA), (0xBA, 0xBA), (0xC0, 0xD6), (0xD8, 0xF6), (0xF8, 0x24F),
              (0x1E00, 0x1EFF)),
    "devanagari": ((0x900, 0x97F), (0xA8E0, 0xA8FF)),
}  # fmt: skip
"""Blocks of the scripts that the course is written in; the page has the same list."""
_JOINERS = re.compile("[\u200c\u200d]")
"""They shape Devanagari letters, and are part of correct spelling."""
_USUAL = re.compile("[A-Za-z0-9 .,'()-]*|[\u0900-\u096f\u200c\u200d0-9 .,'()-]*")
"""Names in one of the course's scripts, told at a glance."""


def scripts(name: str) -> frozenset[str]:
    """The scripts of a name's letters: `latin`, `devanagari`, `other`.

    Example:
        >>> sorted(scripts("Asha Devi")), sorted(scripts("\u0410sha Devi"))
        (['latin'], ['latin', 'other'])
    """
    return frozenset(_script(ord(sign)) for sign in name if unicodedata.category(sign)[0] == "L")


def looks_like_another(name: str) -> bool:
    """Whether a name mixes scripts or uses one that the course does not: a Cyrillic A looks like a Latin one."""
    if _USUAL.fullmatch(name):
        return False
    found = scripts(name)
    return len(found) > 1 or "other" in found


def is_clean(name: str) -> bool:
    """Whether a name can be signed: composed as Unicode's NFC says, no line break, no sign that nobody sees."""
    if name != name.strip() or "  " in name or not unicodedata.is_normalized("NFC", name):
        return False
    return bool(name) and (name if name.isascii() else _JOINERS.sub("", name)).isprintable()


def _script(code: int) -> str:
    for script, ranges in RANGES.items():
        if any(low <= code <= high for low, high in ranges):
            return script
    return "other"
