"""The print font: registered once, shaped always, and no character ever dropped in silence.

ReportLab drops what it can't do without a word: Hindi comes out unjoined where the shaping library is missing, and a
character that the font lacks prints as nothing. Here both stop the machine.
"""

from __future__ import annotations

import re
from functools import lru_cache, reduce
from operator import add
from pathlib import Path
from typing import Any, Literal, TypeAlias

from reportlab.lib.abag import ABag
from reportlab.pdfbase import pdfmetrics, ttfonts

from generator.figures.font_hints import without_hints
from generator.problems import MachineError

REGULAR = "Mukta-Regular"
BOLD = "Mukta-SemiBold"
"""SemiBold prints as the bold weight, as on the pages: the heavier ones fill the loops of Devanagari letters."""

ASCENT, DESCENT = 0.95, 0.29
"""Ink above and below the base line, em: the highest vowel sign and the lowest letter of the font reach this far."""

Anchor: TypeAlias = Literal["start", "middle", "end"]
"""Which part of a text stands at its point."""

_INVISIBLE = frozenset("\u00a0\u200c\u200d")
"""The unbreakable space and the joiners: the font knows them, and drawing nothing for them is right."""

_FIRST_CODE = 33
"""Of a letter within a document."""

_LATIN = re.compile("[A-Za-z]")
_DEVANAGARI = re.compile("([\u0900-\u097f\u200c\u200d]+)")

_FEATURES = {"kern": True, "liga": True}
"""What shaping adds to the rules of the script; the choice of the library would also tie c to t in Latin words."""


def fonts() -> tuple[str, str]:
    """Registers both weights with ReportLab, once in a process.

    Returns:
        ReportLab's names of the regular and the bold weight.

    Raises:
        MachineError: the shaping library or the font package is missing.
    """
    known = pdfmetrics.getRegisteredFontNames()
    for name in (REGULAR, BOLD):
        if name not in known:
            font = _PrintFont(name, str(_folder() / f"{name}.ttf"))
            pdfmetrics.registerFont(font)
            if font.shapable:
                _number_glyphs(font)
        if not pdfmetrics.getFont(name).shapable:
            raise MachineError(
                "Hindi can't be printed: the text shaping library uharfbuzz is missing (fix: pip install uharfbuzz)"
            )
    return REGULAR, BOLD


def check_glyphs(text: str, font: str = REGULAR) -> None:
    """Makes sure that the font can print every character of a text.

    Args:
        text: one line of text; spaces of any kind are not looked at.
        font: `REGULAR` or `BOLD`.

    Raises:
        MachineError: a character is missing in the font; all of them are named.
    """
    missing = _missing(text, font)
    if missing:
        named = ", ".join(_named(character) for character in missing)
        seen = "".join(character for character in text if character.isprintable())
        raise MachineError(f"the print font has no glyph for {named} in '{seen}' (fix: write it another way)")


def _named(character: str) -> str:
    """A character and its number; the number alone where it does not show, or does something to the screen."""
    number = f"U+{ord(character):04X}"
    return f"{character} ({number})" if character.isprintable() else number


def shaped(text: str, font: str, size: float) -> str:
    """A text with its letters joined, reordered and kerned as its script demands: ready for a text object.

    Args:
        text: one line, in reading order.
        font: `REGULAR` or `BOLD`.
        size: points.

    Raises:
        MachineError: the shaping library or a glyph is missing.
    """
    fonts()
    check_glyphs(text, font)
    return reduce(add, (_joined(piece, font, size) for piece in _scripts(text)))


def shaped_width(text: str, font: str, size: float) -> float:
    """Width of a text after shaping.

    Args:
        text: one line.
        font: `REGULAR` or `BOLD`.
        size: height of the em, in any unit of length; the width comes in the same unit.

    Raises:
        MachineError: the shaping library or a glyph is missing.
    """
    fonts()
    return _ems(text, font) * size


def draw_text(
    canvas: Any, x: float, y: float, text: str, font: str = REGULAR, size: float = 12.0, anchor: Anchor = "start"
) -> None:
    """Draws one line of shaped text.

    Args:
        canvas: a ReportLab canvas.
        x: where the anchor stands, points.
        y: the base line, points.
        text: the line, in reading order.
        font: `REGULAR` or `BOLD`.
        size: points.
        anchor: which part of the text stands at `x`.

    Raises:
        MachineError: the shaping library or a glyph is missing.
    """
    if not text:
        return
    glyphs = shaped(text, font, size)
    left = x - {"start": 0.0, "middle": 0.5, "end": 1.0}[anchor] * shaped_width(text, font, size)
    line = canvas.beginText(left, y)
    line.setFont(font, size)
    line.textOut(glyphs)
    canvas.drawText(line)


def _scripts(text: str) -> list[str]:
    """A text in pieces of one script, where both are in it: the shaper would take the first letter's script for all."""
    if not _LATIN.search(text) or not _DEVANAGARI.search(text):
        return [text]
    return [piece for piece in _DEVANAGARI.split(text) if piece]


def _joined(text: str, font: str, size: float) -> str:
    whole = [0.0, (ABag(fontName=font, fontSize=size), text)]
    joined: str = ttfonts.shapeFragWord(whole, features=_FEATURES, force=True)[1][1]
    return joined


class _PrintFont(ttfonts.TTFont):  # type: ignore[misc]  # the library has no types
    """The font as documents embed it: without hints, and with no letter that the document does not use."""

    def __init__(self, name: str, path: str) -> None:
        super().__init__(name, path, asciiReadable=False)
        subset = self.face.makeSubset
        self.face.makeSubset = lambda signs: without_hints(subset(signs))

    def splitString(self, text: str, doc: Any, encoding: str = "utf-8") -> list[tuple[int, bytes]]:  # noqa: N802
        """As the library does it, with the codes of printing signs first: others take four bytes in a file."""
        if doc not in self.state:
            self._assignState(doc).nextCode = _FIRST_CODE
        pieces: list[tuple[int, bytes]] = super().splitString(text, doc, encoding)
        return pieces


def _number_glyphs(font: Any) -> None:
    """Gives each joined letter its code in the order of the font's file.

    ReportLab would hand out the codes as letters turn up, so that the bytes of a document would depend on whatever the
    process had drawn before it.
    """
    shaper = font.hbFont()
    for glyph in range(shaper.face.glyph_count):
        if glyph not in font.face.glyphToChar:
            font.hbAddPrivate(shaper.glyph_to_string(glyph), glyph, shaper.get_glyph_h_advance(glyph))


def _folder() -> Path:
    try:
        import fontpkg_mukta
    except ImportError:
        raise MachineError("the font package is missing (fix: pip install fontpkg-mukta)") from None
    return Path(fontpkg_mukta.__file__).parent / "files"


@lru_cache(maxsize=1 << 14)
def _ems(text: str, font: str) -> float:
    if not text:
        return 0.0
    advances = shaped(text, font, 10.0).__shapeData__  # type: ignore[attr-defined]  # ReportLab's own kind of str
    return float(sum(glyph.x_advance for glyph in advances)) / 1000.0


@lru_cache(maxsize=1 << 14)
def _missing(text: str, font: str) -> tuple[str, ...]:
    fonts()
    known = pdfmetrics.getFont(font).face.charToGlyph
    return tuple(
        sorted(
            {
                sign
                for sign in text
                if sign not in _INVISIBLE
                and not sign.isspace()
                and (ord(sign) not in known or "\ue000" <= sign <= "\uf8ff")  # the private codes of joined letters
            }
        )
    )
