"""Setting text: words are shaped and measured once, lines are broken by those measures, whole lines are drawn.

ReportLab's own paragraph shapes every word of every paragraph anew, which makes a class set of Hindi sheets three times
slower than drawing it. Here a word is shaped once in a process, and a text that many sheets share is broken into lines
once.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import Any, NamedTuple

from reportlab.pdfbase.pdfmetrics import stringWidth
from reportlab.pdfbase.ttfonts import ShapeData, ShapedStr

from generator.figures import fonts
from generator.figures.fonts import BOLD, REGULAR
from generator.sheets.styles import SMALLEST, SUBSCRIPT, SUBSCRIPT_DROP

_JOINED = re.compile("[\u0300-\u036f\u0900-\u1cff\u200c\u200d\ua8e0-\ua8ff]")
"""Signs whose form or place depends on their neighbours."""
_ONE_SCRIPT = re.compile("[\u0900-\u097f\u200c\u200d]+|[^\u0900-\u097f\u200c\u200d]+")
_VIRAMA = "\u094d"
_PLAIN = ShapeData(0, 0, 0, 0, 0, 0)


class Run(NamedTuple):
    """A piece of text in one hand: normal, bold, or a subscript."""

    text: str
    bold: bool = False
    subscript: bool = False


class Hand(NamedTuple):
    """Font, size in points, and points below the base line."""

    font: str
    size: float
    drop: float


class Word(NamedTuple):
    """A word as typed and as the font draws it, its hand, and its width in points."""

    typed: str
    glyphs: str
    hand: Hand
    width: float


class Segment(NamedTuple):
    """Neighbouring words in one hand, as typed and as drawn in one string `x` points from the start of the line."""

    x: float
    typed: str
    glyphs: str
    hand: Hand


class Line(NamedTuple):
    """A broken line: its width in points and what is drawn."""

    width: float
    segments: tuple[Segment, ...]


_Cluster = list[Word]
"""Words without a space between them, such as a symbol and its subscript."""


@lru_cache(maxsize=1 << 15)
def shaped(word: str, font: str) -> tuple[str, float]:
    """A word as the font draws it, and its width at 1 point.

    Raises:
        MachineError: the shaping library is missing, or the font has no glyph for a sign.
    """
    if not _JOINED.search(word):
        fonts.fonts()
        fonts.check_glyphs(word, font)
        return word, stringWidth(word, font, 1000) / 1000
    pieces = _ONE_SCRIPT.findall(word)
    if len(pieces) > 1:  # a shaper takes the first letter's script for all: `kg/मी` would come out unjoined
        drawn = [shaped(piece, font) for piece in pieces]
        return together([glyphs for glyphs, _ in drawn], ""), sum(width for _, width in drawn)
    glyphs = fonts.shaped(word, font, 1000)
    data = glyphs.__shapeData__  # type: ignore[attr-defined]  # ReportLab's own kind of str
    moved = any(glyph.x_offset or glyph.y_offset or glyph.x_advance != glyph.width for glyph in data)
    # letters that stand where the font itself would put them are drawn as one plain string, which is much quicker
    return glyphs if moved else str(glyphs), sum(glyph.x_advance for glyph in data) / 1000


def together(words: Sequence[str], between: str = " ") -> str:
    """Words as one string to draw, with a space or nothing between."""
    if not any(isinstance(word, ShapedStr) for word in words):
        return between.join(words)
    data: list[Any] = []
    for word in words:
        if data and between:
            data.append(_PLAIN)
        data += word.__shapeData__ if isinstance(word, ShapedStr) else [_PLAIN] * len(word)
    whole: str = ShapedStr(between.join(words), data)
    return whole


@lru_cache(maxsize=1 << 13)
def broken(runs: tuple[Run, ...], size: float, width: float) -> tuple[Line, ...]:
    r"""A text broken into lines; a word that is wider than a line is cut between letters.

    Args:
        runs: the text; `\n` forces a new line, and a no-break space keeps its neighbours together.
        size: points.
        width: points that a line may have.
    """
    if len(runs) == 1 and not runs[0].subscript and "\n" not in runs[0].text:
        simple = _in_one_hand(runs[0], size, width)
        if simple is not None:
            return simple
    lines: list[Line] = []
    for clusters in _forced_lines(runs, size):
        line: list[_Cluster] = []
        used = 0.0
        for cluster in clusters:
            for piece in _cut(cluster, width):
                need = sum(word.width for word in piece)
                space = _space(piece[0].hand) if line else 0.0
                if line and used + space + need > width + 1e-6:
                    lines.append(_line(line))
                    line, used, space = [], 0.0, 0.0
                line.append(piece)
                used += space + need
        lines.append(_line(line))
    return tuple(lines)


def _in_one_hand(run: Run, size: float, width: float) -> tuple[Line, ...] | None:
    """The same for one run without forced lines, which most texts are; None where a word is wider than a line."""
    hand = Hand(BOLD if run.bold else REGULAR, size, 0.0)
    space = _space(hand)
    lines: list[Line] = []
    typed: list[str] = []
    drawn: list[str] = []
    used = 0.0
    for word in run.text.split(" "):
        if not word:
            continue
        glyphs, share = shaped(word, hand.font)
        need = share * size
        if need > width:
            return None
        if typed and used + space + need > width + 1e-6:
            lines.append(Line(used, (Segment(0.0, " ".join(typed), together(drawn), hand),)))
            typed, drawn, used = [], [], 0.0
        used += need + (space if typed else 0.0)
        typed.append(word)
        drawn.append(glyphs)
    last = (Segment(0.0, " ".join(typed), together(drawn), hand),) if typed else ()
    return (*lines, Line(used, last))


def _forced_lines(runs: Sequence[Run], size: float) -> Iterator[list[_Cluster]]:
    clusters: list[_Cluster] = []
    joins = False
    for run in runs:
        small = max(size * SUBSCRIPT, SMALLEST)
        font = BOLD if run.bold else REGULAR
        hand = Hand(font, small, size * SUBSCRIPT_DROP) if run.subscript else Hand(font, size, 0.0)
        for number, part in enumerate(run.text.split("\n")):
            if number:
                yield clusters
                clusters, joins = [], False
            for place, typed in enumerate(part.split(" ")):
                joins = joins and place == 0
                if not typed:
                    continue
                if not joins:
                    clusters.append([])
                clusters[-1].append(_word(typed, hand))
                joins = True
    yield clusters


def _word(typed: str, hand: Hand) -> Word:
    glyphs, width = shaped(typed, hand.font)
    return Word(typed, glyphs, hand, width * hand.size)


def _space(hand: Hand) -> float:
    return shaped(" ", hand.font)[1] * hand.size


def _cut(cluster: _Cluster, width: float) -> Iterator[_Cluster]:
    """The cluster, or, where it is wider than a line, pieces that fit."""
    if sum(word.width for word in cluster) <= width:
        yield cluster
        return
    piece: _Cluster = []
    used = 0.0
    for word in cluster:
        typed = ""
        for letter in letters_of(word.typed):
            longer = _word(typed + letter, word.hand)
            if (piece or typed) and used + longer.width > width:
                yield [*piece, _word(typed, word.hand)] if typed else piece
                piece, used, typed = [], 0.0, letter
            else:
                typed += letter
        if typed:
            piece.append(_word(typed, word.hand))
            used += piece[-1].width
    yield piece


def letters_of(word: str) -> list[str]:
    """The letters of a word, each with the marks and half letters that join it.

    Example:
        >>> letters_of("रिंग")
        ['रिं', 'ग']
    """
    letters: list[str] = []
    for sign in word:
        joins = unicodedata.category(sign).startswith("M") or sign in "\u200c\u200d"
        if letters and (joins or letters[-1].endswith((_VIRAMA, "\u200d"))):
            letters[-1] += sign
        else:
            letters.append(sign)
    return letters


def _line(clusters: Sequence[_Cluster]) -> Line:
    segments: list[Segment] = []
    words: list[Word] = []
    x = start = 0.0
    for number, cluster in enumerate(clusters):
        for place, word in enumerate(cluster):
            if words and (place or word.hand != words[-1].hand):
                segments.append(_segment(start, words))
                words = []
            if number and not place:
                x += _space(word.hand)
            if not words:
                start = x
            words.append(word)
            x += word.width
    if words:
        segments.append(_segment(start, words))
    return Line(x, tuple(segments))


def _segment(x: float, words: Sequence[Word]) -> Segment:
    return Segment(x, " ".join(word.typed for word in words), together([word.glyphs for word in words]), words[0].hand)
