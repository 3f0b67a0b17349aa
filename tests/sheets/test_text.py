from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from reportlab.pdfbase.ttfonts import ShapedStr

from generator.figures.fonts import REGULAR
from generator.problems import MachineError
from generator.sheets.styles import SMALLEST
from generator.sheets.text import Line, Run, broken, letters_of, shaped
from tests.sheets.recorder import width_of

HINDI = "दीवार की ऊँचाई नापें और हर रिंग पर क्रम से निशान लगाएँ"


def typed(lines: tuple[Line, ...]) -> list[str]:
    return ["".join(segment.typed for segment in line.segments) for line in lines]


@given(st.text("abW ,.क्षरिंगऊँ", max_size=80), st.integers(40, 300))
def test_no_line_is_wider_than_its_column_and_no_letter_is_lost(text: str, width: int) -> None:
    lines = broken((Run(text),), 12.0, float(width))
    assert all(line.width <= width + 1e-3 for line in lines)
    assert "".join("".join(typed(lines)).split()) == "".join(text.split())


@pytest.mark.parametrize("text", ["A wall of 1.40\u00a0m, hoop by hoop", HINDI, "Tie हर रिंग twice"])
def test_measured_width_is_the_width_drawn(text: str) -> None:
    (line,) = broken((Run(text),), 12.0, 1e6)
    (segment,) = line.segments
    assert line.width == pytest.approx(width_of(segment), abs=0.2)


def test_hindi_is_shaped_and_plain_latin_is_left_alone() -> None:
    glyphs, _ = shaped("क्षत्रिय", REGULAR)
    assert isinstance(glyphs, ShapedStr)
    assert len(glyphs) < len("क्षत्रिय"), "half letters were not joined"
    assert shaped("wall", REGULAR)[0] == "wall"


def test_vowel_sign_i_stands_before_its_letter() -> None:
    """The sign is typed after the letter and drawn before it: the commonest fault of unshaped Hindi."""
    glyphs, _ = shaped("कि", REGULAR)
    assert isinstance(glyphs, ShapedStr)
    assert glyphs[-1] == "क"


def test_hindi_lines_stay_shaped_when_words_are_joined() -> None:
    (line,) = broken((Run(HINDI),), 12.0, 1e6)
    (segment,) = line.segments
    assert isinstance(segment.glyphs, ShapedStr)
    assert len(segment.glyphs.__shapeData__) == len(segment.glyphs)


def test_missing_glyph_stops_the_machine() -> None:
    with pytest.raises(MachineError, match="no glyph"):
        broken((Run("a wall \u6c34"),), 12.0, 200.0)


def test_word_wider_than_the_column_is_cut_between_letters() -> None:
    lines = broken((Run("क्ष्मि" * 20),), 12.0, 60.0)
    assert len(lines) > 1
    assert all(line.startswith("क्ष्मि") for line in typed(lines))


def test_marks_and_half_letters_stay_with_their_letter() -> None:
    assert letters_of("क्षत्रिय") == ["क्ष", "त्रि", "य"]


def test_unbreakable_space_keeps_number_and_unit_together() -> None:
    lines = broken((Run("about 1.40\u00a0m"),), 12.0, 50.0)
    assert typed(lines) == ["about", "1.40\u00a0m"]


def test_forced_line_break() -> None:
    assert typed(broken((Run("one\ntwo"),), 12.0, 400.0)) == ["one", "two"]


def test_subscript_is_low_and_not_too_small() -> None:
    (line,) = broken((Run("D"), Run("i", subscript=True), Run(" = 2")), 11.0, 400.0)
    letter, index, rest = line.segments
    assert index.hand.drop > 0
    assert index.hand.size >= SMALLEST
    assert letter.hand.drop == rest.hand.drop == 0
    assert rest.x > index.x > letter.x


def test_symbol_and_subscript_are_never_parted() -> None:
    lines = broken((Run("aaaa D"), Run("i", subscript=True)), 12.0, 36.0)
    assert typed(lines) == ["aaaa", "Di"]


def test_hindi_behind_latin_letters_in_one_word_is_shaped() -> None:
    glyphs, width = shaped("kg/किलो", REGULAR)
    alone, own = shaped("किलो", REGULAR)
    assert glyphs == "kg/" + alone
    assert width == pytest.approx(own + shaped("kg/", REGULAR)[1])


@given(st.text("abW ,.क्षरिंगऊँ", max_size=80), st.integers(90, 300))
def test_a_text_in_two_runs_of_one_hand_breaks_as_it_does_in_one(text: str, width: int) -> None:
    """The quick way for plain texts and the general way agree."""
    quick = broken((Run(text),), 12.0, float(width))
    general = broken((Run(text), Run("")), 12.0, float(width))
    assert typed(quick) == typed(general)
    assert [line.width for line in quick] == pytest.approx([line.width for line in general])
