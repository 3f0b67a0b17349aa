"""A font without hints draws the same letters."""

from __future__ import annotations

from functools import cache
from io import BytesIO
from struct import pack

import pytest
from fontTools.pens.recordingPen import DecomposingRecordingPen
from fontTools.ttLib import TTFont
from reportlab.pdfbase import pdfmetrics, ttfonts

from generator.figures.font_hints import _plain, without_hints
from generator.figures.fonts import BOLD, REGULAR, fonts, shaped

TEXT = "Aä½ ÄÖü 12.5 m² (ring) मिस्त्री क्षत्र वर्ग ½ é"


@cache
def subsets(name: str) -> tuple[bytes, bytes]:
    """The letters of a text as the library cuts them out of the font, with hints and without."""
    fonts()
    signs = [0, *sorted({ord(sign) for sign in shaped(TEXT, name, 10)})]
    face = pdfmetrics.getFont(name).face
    hinted = ttfonts.TTFontFace.makeSubset(face, signs)
    return hinted, face.makeSubset(signs)


def outlines(font: TTFont) -> list[list[object]]:
    """Every glyph's outline, in the order of the file."""
    found = []
    glyphs = font.getGlyphSet()
    for name in font.getGlyphOrder():
        pen = DecomposingRecordingPen(glyphs)
        glyphs[name].draw(pen)
        found.append(pen.value)
    return found


@pytest.mark.parametrize("name", [REGULAR, BOLD])
def test_outlines_and_widths_stay_and_programs_go(name: str) -> None:
    before, after = (TTFont(BytesIO(data)) for data in subsets(name))
    drawn = outlines(after)
    assert len(drawn) > 25
    assert outlines(before) == drawn
    assert before["hmtx"].metrics == after["hmtx"].metrics
    assert "fpgm" in before
    assert not {"fpgm", "prep", "cvt ", "name"} & set(after.keys())
    glyphs = [after["glyf"][glyph] for glyph in after.getGlyphOrder()]
    assert not any(glyph.program.getBytecode() for glyph in glyphs if hasattr(glyph, "program"))


@pytest.mark.parametrize("name", [REGULAR, BOLD])
def test_a_font_without_hints_is_left_as_it_is(name: str) -> None:
    after = subsets(name)[1]
    assert without_hints(after) == after


def test_letters_that_a_text_has_not_stay_out_of_the_document() -> None:
    hinted, plain = subsets(REGULAR)
    assert len(plain) < 0.75 * len(hinted)
    assert not pdfmetrics.getFont(REGULAR)._asciiReadable


def test_a_letter_made_of_others_loses_its_program_and_keeps_its_parts() -> None:
    """The font has none of them; its successor might."""
    parts = pack(">HHhh", 0x0001 | 0x0002 | 0x0020, 3, 10, -20) + pack(">HHbbh", 0x0002 | 0x0008 | 0x0100, 7, 1, 2, 5)
    kept = _plain(pack(">hhhhh", -1, 0, 0, 9, 9) + parts + pack(">H", 3) + b"abc")
    assert kept == pack(">hhhhh", -1, 0, 0, 9, 9) + parts[:8] + pack(">HHbbh", 0x0002 | 0x0008, 7, 1, 2, 5)
