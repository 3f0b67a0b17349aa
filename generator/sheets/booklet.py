"""The build booklet: a whole plan on paper, with its drawings, its hold points to sign, and its cautions in boxes."""

from __future__ import annotations

import json
from collections.abc import Iterator

from generator.figures import FIGURES, draw
from generator.plans import Plan, Section, as_data, drawing_values, sections
from generator.sheets.figure_flow import captioned
from generator.sheets.flow import Grid, Piece, Text
from generator.sheets.handout import caution
from generator.sheets.page import About, Part, content_hash, sheet_pdf
from generator.sheets.styles import BODY, HEADING, NOTE, TEXT_WIDTH, TITLE
from generator.words import Words

FIGURES_OF = {
    "why": ("hoop-zones", "hoop-lap"),
    "sizes": ("tank-section", "tank-plan", "wall-build-up"),
    "ground": ("cut-platform", "base-layers", "wall-floor-joint", "angle-foot"),
    "mesh": ("mesh-lap",),
    "batch": ("gauge-box", "batching-row"),
    "fittings": ("fittings", "manhole"),
}
"""Drawings by the section that they stand in; one that this tank has no numbers for is left out."""
_CELL = NOTE.but(after=0.0)
_LEAST, _SIGNING = 46.0, "____"


def booklet_pdf(plan: Plan, words: Words, version: str) -> bytes:
    """The build booklet of a plan.

    Args:
        plan: of a tank; one of an engineer's says on its first page that it must be signed before anything is bought.
        words: of the reader's language.
        version: of the course.

    Raises:
        MachineError: shaping is missing, or a sign has no glyph.
    """
    title = words.say("plan.booklet", litres=words.with_unit(f"{plan.wish.litres:.0f}", "L"))
    pieces: list[Piece] = [Text(title, TITLE)]
    for section in sections(plan, words):
        pieces += _pieces(section, plan, words)
    data = json.dumps(as_data(plan), sort_keys=True, ensure_ascii=False).encode("utf-8")
    about = About(title, words.language, version, content_hash({"plan": data}))
    return sheet_pdf(about, [Part(title, "", title, title, words, pieces)])


def _pieces(section: Section, plan: Plan, words: Words) -> Iterator[Piece]:
    yield Text(section.heading, HEADING)
    if section.key == "cautions":
        for line in section.lines:
            yield caution(line, words)
        return
    for line in section.lines:
        yield Text(line, BODY.but(after=3.0))
    if section.head:
        yield section_table(section)
    yield from _drawings(section.key, plan, words)


def _drawings(key: str, plan: Plan, words: Words) -> Iterator[Piece]:
    values = drawing_values(plan)
    for name in FIGURES_OF.get(key, ()):
        kind = FIGURES.get(name)
        wanted = name != "cut-platform" or plan.wish.site.cut
        if kind is not None and wanted and all(need in values for need in kind.needs):
            yield captioned(draw(name, values, words))


def section_table(section: Section) -> Piece:
    """Columns as wide as their longest cells want, the widest giving way; room to write in a signing column."""
    rows = [[Text("" if cell.startswith(_SIGNING) else cell, _CELL) for cell in row] for row in section.rows]
    head = [Text(cell, _CELL.but(bold=True)) for cell in section.head]
    room = TEXT_WIDTH - len(head) * 2 * Grid.padding
    wants = []
    for column, over in enumerate(head):
        signed = any(row[column].startswith(_SIGNING) for row in section.rows)
        longest = max([over.natural_width(), *(row[column].natural_width() for row in rows)])
        wants.append(max(90.0, longest) if signed else max(longest + 2.0, 18.0))
    while sum(wants) > room:
        widest = max(range(len(wants)), key=lambda column: wants[column])
        if wants[widest] <= _LEAST:
            break
        wants[widest] = max(_LEAST, wants[widest] - max(1.0, sum(wants) - room) / 2)
    spare = max(0.0, room - sum(wants)) / len(wants)
    return Grid(rows, [want + spare + 2 * Grid.padding for want in wants], head)
