"""The ready reckoner on paper, for a workshop's wall: sizes, loads, and bars of the tanks that a crew builds."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from generator.plans import Reckoner, Section, reckoner_sections
from generator.sheets.flow import Box, Column, Piece, Row, Text
from generator.sheets.page import About, Part, content_hash, sheet_pdf
from generator.sheets.section_flow import section_table
from generator.sheets.signs import Caution
from generator.sheets.styles import CELL, HEADING, SUBHEADING, TIGHT, TITLE
from generator.words import Words

_BULLET, _MARKER = "•", 14.0
_LINE = CELL.but(after=1.0)
_BESIDE = ("stricter", "never")
"""Short lists that stand side by side."""


def reckoner_pdf(reckoner: Reckoner, words: Words, version: str) -> bytes:
    """The ready reckoner.

    Args:
        reckoner: the tanks.
        words: of the reader's language.
        version: of the course.

    Raises:
        MachineError: shaping is missing, or a sign has no glyph.
    """
    title = words.say("plan.reckoner.title")
    found = reckoner_sections(reckoner, words)
    pieces: list[Piece] = [Text(title, TITLE)]
    for section in found:
        if section.key == _BESIDE[0]:
            lists = [(None, _list(each)) for each in found if each.key in _BESIDE]
            pieces.append(Row(lists, gap=16.0, before=4.0, after=4.0))
        elif section.key not in _BESIDE:
            pieces += _pieces(section, words)
    told = "\n".join(repr(section) for section in found)
    about = About(title, words.language, version, content_hash({"reckoner": told.encode("utf-8")}))
    return sheet_pdf(about, [Part(title, title, title, title, words, pieces)])


def _list(section: Section) -> Piece:
    return Column([Text(section.heading, SUBHEADING), *_bullets(section.lines)])


def _bullets(lines: Sequence[str]) -> Iterator[Piece]:
    for line in lines:
        yield Row([(_MARKER, Text(_BULLET, _LINE)), (None, Text(line, _LINE))], gap=0, after=_LINE.after)


def _pieces(section: Section, words: Words) -> Iterator[Piece]:
    heading = Text(section.heading, HEADING)
    heading.outline = section.heading
    if section.key == "cautions":
        lines = Column([Text(words.say("sheet.caution"), SUBHEADING), *_bullets(section.lines)])
        yield Box(Row([(Caution.side, Caution()), (None, lines)], gap=9), line=2.0, padding=7.0, before=6.0)
        return
    yield heading
    if section.key == "larger":
        yield Box(Column([Text(line, TIGHT.but(bold=True)) for line in section.lines]), line=2.0, before=2.0, after=5.0)
    else:
        first = section.key == "use"
        for line in section.lines[:first]:
            yield Box(Text(line, TIGHT.but(bold=True)), line=2.0, before=2.0, after=5.0)
        yield from _bullets(section.lines[first:])
    if section.head:
        yield section_table(section)
