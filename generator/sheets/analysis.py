"""The report on papers and practicals on paper: the first page says what to change, the others why."""

from __future__ import annotations

import json
from collections.abc import Iterator

from generator.assessment.report import Chapter, Report
from generator.plans import Section
from generator.sheets.figure_flow import captioned
from generator.sheets.flow import Box, Column, Grid, Piece, Text
from generator.sheets.page import About, Part, content_hash, sheet_pdf
from generator.sheets.styles import BODY, HEADING, NOTE, TEXT_WIDTH, THICK, TIGHT, TITLE
from generator.words import Words

_CELL = NOTE.but(after=0.0)
_LEAST = 46.0


def analysis_pdf(report: Report, words: Words, version: str) -> bytes:
    """The report as a sheet.

    Args:
        report: what to say.
        words: of the reader's language.
        version: of the course.

    Raises:
        MachineError: shaping is missing, or a sign has no glyph.
    """
    pieces = [Text(report.title, TITLE), *_first(report, words)]
    for chapter in report.chapters:
        pieces += _pieces(chapter)
    told = [[chapter.section.heading, chapter.section.lines, chapter.section.rows] for chapter in report.chapters]
    changes = [[change.sentence, change.why] for change in report.changes]
    data = json.dumps([changes, told], ensure_ascii=False).encode("utf-8")
    about = About(report.title, words.language, version, content_hash({"report": data}))
    part = Part(report.title, "", report.title, report.title, words, pieces, words.say("analyse.told"))
    return sheet_pdf(about, [part])


def _first(report: Report, words: Words) -> Iterator[Piece]:
    yield Text(words.say("analyse.heading.first"), HEADING)
    for caution in report.cautions:
        yield Box(Text(caution, BODY.but(bold=True)), line=THICK, before=2.0, after=5.0)
    for number, change in enumerate(report.changes, start=1):
        why = words.say("analyse.because", why=change.why)
        lines = [
            Text(f"{number}. {change.sentence}", TIGHT.but(bold=True)),
            Text(why, TIGHT.but(indent=14.0)),
        ]
        yield Column(lines, before=3.0, after=5.0)
    if not report.changes:
        yield Text(words.say("analyse.nothing_to_change"), BODY)
    if report.more:
        yield Text(words.say("analyse.more"), BODY)


def _pieces(chapter: Chapter) -> Iterator[Piece]:
    section = chapter.section
    yield Text(section.heading, HEADING)
    for line in section.lines:
        yield Text(line, BODY.but(after=3.0))
    if section.head:
        yield _table(section)
    for scene in chapter.charts:
        yield captioned(scene)


def _table(section: Section) -> Piece:
    """Columns as wide as their longest cells want, the widest giving way."""
    rows = [[Text(cell, _CELL) for cell in row] for row in section.rows]
    head = [Text(cell, _CELL.but(bold=True)) for cell in section.head]
    room = TEXT_WIDTH - len(head) * 2 * Grid.sides
    wants = [
        max(18.0, 2.0 + max([over.natural_width(), *(row[column].natural_width() for row in rows)]))
        for column, over in enumerate(head)
    ]
    while sum(wants) > room:
        widest = max(range(len(wants)), key=lambda column: wants[column])
        if wants[widest] <= _LEAST:
            break
        wants[widest] = max(_LEAST, wants[widest] - max(1.0, sum(wants) - room) / 2)
    spare = max(0.0, room - sum(wants)) / len(wants)
    return Grid(rows, [want + spare + 2 * Grid.sides for want in wants], head)
