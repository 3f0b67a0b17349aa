"""A font without hints: the small programs in it that fit letters to coarse screens, and that no printer needs.

They are half of what the font takes in a document. Outlines and widths stay as they are. Its long names go too: a
document calls its fonts by names of its own.
"""

from __future__ import annotations

from itertools import pairwise
from struct import pack, unpack_from

from reportlab.pdfbase.ttfonts import TTFontMaker

_LEFT_OUT = ("cvt ", "fpgm", "prep", "name")
_WORDS, _SCALE, _MORE, _TWO_SCALES, _FOUR_SCALES, _HINTED = 1, 8, 32, 64, 128, 256
"""Flags of a part of a composite glyph."""


def without_hints(font: bytes) -> bytes:
    """The same font with no programs and no long names in it.

    Args:
        font: a TrueType font with the tables `head`, `maxp`, `loca` and `glyf`.

    Returns:
        The font as a file of its own; the same font gives the same bytes.
    """
    tables = _tables(font)
    long = unpack_from(">h", tables["head"], 50)[0] == 1
    count = unpack_from(">H", tables["maxp"], 4)[0] + 1
    places = [place if long else 2 * place for place in unpack_from(f">{count}{'L' if long else 'H'}", tables["loca"])]
    glyphs, offsets = bytearray(), [0]
    for start, end in pairwise(places):
        glyphs += _plain(tables["glyf"][start:end])
        glyphs += bytes(-len(glyphs) % 2)
        offsets.append(len(glyphs))
    tables["glyf"] = bytes(glyphs)
    tables["loca"] = pack(f">{count}L", *offsets) if long else pack(f">{count}H", *(place // 2 for place in offsets))
    made = TTFontMaker()
    for name, table in tables.items():
        if name not in _LEFT_OUT:
            made.add(name, table)
    whole: bytes = made.makeStream()
    return whole


def _tables(font: bytes) -> dict[str, bytes]:
    found = {}
    for number in range(unpack_from(">H", font, 4)[0]):
        name, _, start, length = unpack_from(">4sLLL", font, 12 + 16 * number)
        found[name.decode("latin-1")] = font[start : start + length]
    return found


def _plain(glyph: bytes) -> bytes:
    """A glyph without its program."""
    if not glyph:
        return glyph
    contours = unpack_from(">h", glyph)[0]
    if contours < 0:
        return _composite(glyph)
    at = 10 + 2 * contours
    length = unpack_from(">H", glyph, at)[0]
    return glyph[:at] + b"\0\0" + glyph[at + 2 + length :]


def _composite(glyph: bytes) -> bytes:
    """A glyph made of others: what stands behind its parts is its program."""
    made, at, flags = bytearray(glyph), 10, _MORE
    while flags & _MORE:
        flags = unpack_from(">H", glyph, at)[0]
        made[at : at + 2] = pack(">H", flags & ~_HINTED)
        at += 8 if flags & _WORDS else 6
        at += 2 if flags & _SCALE else 4 if flags & _TWO_SCALES else 8 if flags & _FOUR_SCALES else 0
    return bytes(made[:at])
