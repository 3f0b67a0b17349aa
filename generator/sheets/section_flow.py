"""A section of a plan as pieces: its sentences, and its table with columns as wide as their cells want."""

from __future__ import annotations

from collections.abc import Iterator

from generator.plans import Section
from generator.sheets.flow import Grid, Piece, Space, Text
from generator.sheets.styles import BODY, NOTE, TEXT_WIDTH

_CELL = NOTE.but(after=0.0)
_LEAST, _SIGNING, _TO_SIGN = 46.0, "____", 24.0


def section_pieces(section: Section) -> Iterator[Piece]:
    """Its sentences and its table; the last sentence stays with the table."""
    for number, line in enumerate(section.lines, start=1):
        yield Text(line, BODY.but(after=3.0, keep=bool(section.head) and number == len(section.lines)))
    if section.head:
        yield section_table(section)


def section_table(section: Section) -> Piece:
    """Columns as wide as their longest cells want, the widest giving way; room to write in a signing column."""
    cells = [[Text("" if cell.startswith(_SIGNING) else cell, _CELL) for cell in row] for row in section.rows]
    head = [Text(cell, _CELL.but(bold=True)) for cell in section.head]
    room = TEXT_WIDTH - len(head) * 2 * Grid.sides
    wants = []
    for column, over in enumerate(head):
        signed = any(row[column].startswith(_SIGNING) for row in section.rows)
        longest = max([over.natural_width(), *(row[column].natural_width() for row in cells)])
        wants.append(max(90.0, longest) if signed else max(longest + 2.0, 18.0))
    while sum(wants) > room:
        widest = max(range(len(wants)), key=lambda column: wants[column])
        if wants[widest] <= _LEAST:
            break
        wants[widest] = max(_LEAST, wants[widest] - max(1.0, sum(wants) - room) / 2)
    spare = max(0.0, room - sum(wants)) / len(wants)
    rows: list[list[Piece]] = [
        [Space(_TO_SIGN) if typed.startswith(_SIGNING) else cell for typed, cell in zip(row, shown, strict=True)]
        for row, shown in zip(section.rows, cells, strict=True)
    ]
    return Grid(rows, [want + spare + 2 * Grid.sides for want in wants], head)
