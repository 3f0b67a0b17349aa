"""The font that travels: small, the same every time, and it has what both languages write."""

import io

from fontTools.ttLib import TTFont

from generator.site.fonts import font_files, missing_characters


def test_both_weights_carry_latin_devanagari_signs_and_the_licence() -> None:
    files = font_files()
    assert sorted(files) == ["mukta-bold.woff2", "mukta-regular.woff2"]
    for data in files.values():
        font = TTFont(io.BytesIO(data))
        assert set("Aaz09×−√≤≥≈π²³½हिन्दीक्षत्र") <= {chr(code) for code in font.getBestCmap()}
        assert "GSUB" in font  # conjuncts
        assert "Open Font License" in str(font["name"].getDebugName(13))
        assert len(data) < 120_000


def test_a_sign_that_the_font_lacks_is_named() -> None:
    assert missing_characters(["Round up → हिन्दी", "✓ a"]) == "→✓"
