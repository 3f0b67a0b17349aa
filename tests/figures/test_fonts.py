"""The print font: Hindi is joined, and nothing that can't be printed is dropped in silence."""

from __future__ import annotations

import io

import pytest
from reportlab.pdfbase import pdfmetrics, ttfonts
from reportlab.pdfgen.canvas import Canvas

from generator.figures.fonts import BOLD, REGULAR, check_glyphs, draw_text, fonts, shaped, shaped_width
from generator.problems import MachineError


def glyph_ids(text: str, font: str = REGULAR) -> list[int]:
    """Numbers of the glyphs in the font's file, in the order in which they are drawn."""
    fonts()
    known = pdfmetrics.getFont(font).face.charToGlyph
    return [known[ord(character)] for character in shaped(text, font, 12)]


@pytest.mark.parametrize("font", [REGULAR, BOLD])
@pytest.mark.parametrize(
    ("word", "glyphs"),
    [
        ("सरिया", [512, 1208, 504, 503, 515]),  # the short i goes before its letter, in the width that spans it
        ("वर्ग", [509, 479, 637]),  # the r flies up over the g
        ("मिस्त्री", [1210, 502, 841, 517]),  # s, t and r are one glyph
        ("क्षत्र", [704, 666]),
    ],
)
def test_a_hindi_word_is_joined_and_reordered_as_stored(word: str, glyphs: list[int], font: str) -> None:
    assert glyph_ids(word, font) == glyphs


@pytest.mark.parametrize("font", [REGULAR, BOLD])
def test_hindi_is_joined_also_behind_latin_letters(font: str) -> None:
    day = glyph_ids("दिन", font)
    assert glyph_ids("175 L/दिन", font)[-len(day) :] == day
    assert glyph_ids("L/दिन", font) == glyph_ids("L/", font) + day
    assert shaped_width("L/दिन", font, 10) == pytest.approx(
        shaped_width("L/", font, 10) + shaped_width("दिन", font, 10)
    )


def test_latin_letters_keep_apart() -> None:
    assert glyph_ids("picture") == [glyph for letter in "picture" for glyph in glyph_ids(letter)]


def test_a_joined_word_is_narrower_than_its_letters_apart() -> None:
    apart = sum(pdfmetrics.stringWidth(letter, REGULAR, 10) for letter in "मिस्त्री")
    assert 0 < shaped_width("मिस्त्री", REGULAR, 10) < apart
    assert shaped_width("मिस्त्री", REGULAR, 20) == pytest.approx(2 * shaped_width("मिस्त्री", REGULAR, 10))


def test_every_missing_glyph_is_named_and_stops_the_machine() -> None:
    with pytest.raises(MachineError, match=r"→ \(U\+2192\), ✓ \(U\+2713\) in 'a → b ✓'"):
        check_glyphs("a → b ✓")
    canvas = Canvas(io.BytesIO())
    with pytest.raises(MachineError, match="U\\+2713"):
        draw_text(canvas, 0, 0, "✓")


def test_signs_of_both_languages_are_there() -> None:
    for font in (REGULAR, BOLD):
        check_glyphs("Aa 09 × − √ ≤ ≥ ≈ π ² ³ ½ हिन्दी\u00a0m क\u200dष", font)


def test_missing_shaping_stops_the_machine(monkeypatch: pytest.MonkeyPatch) -> None:
    fonts()
    monkeypatch.setattr(ttfonts, "uharfbuzz", None)
    with pytest.raises(MachineError, match="uharfbuzz"):
        shaped_width("सरिया", REGULAR, 10)
    with pytest.raises(MachineError, match="uharfbuzz"):
        draw_text(Canvas(io.BytesIO()), 0, 0, "सरिया")


@pytest.mark.parametrize(("anchor", "share"), [("start", 0.0), ("middle", 0.5), ("end", 1.0)])
def test_the_anchor_says_which_part_of_a_text_stands_at_its_point(anchor: str, share: float) -> None:
    began: list[float] = []
    canvas = Canvas(io.BytesIO())
    begin = canvas.beginText
    canvas.beginText = lambda x, y: (began.append(x), begin(x, y))[1]
    draw_text(canvas, 100, 50, "रिंग 12", BOLD, 10, anchor)  # type: ignore[arg-type]  # one of the three
    assert began == [pytest.approx(100 - share * shaped_width("रिंग 12", BOLD, 10))]
