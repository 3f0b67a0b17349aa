"""The build booklet: a whole plan on paper, with its drawings, its hold points to sign, and its cautions in boxes."""

from __future__ import annotations

import json
from collections.abc import Iterator

from generator.figures import FIGURES, draw
from generator.plans import Plan, Section, as_data, drawing_values, sections
from generator.sheets.figure_flow import captioned
from generator.sheets.flow import Piece, Text
from generator.sheets.handout import caution
from generator.sheets.page import About, Part, content_hash, sheet_pdf
from generator.sheets.section_flow import section_pieces
from generator.sheets.styles import HEADING, TITLE
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
_HIGHEST = 285.0
"""Points that a drawing may have, so that pages fill."""


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
    yield from section_pieces(section)
    yield from _drawings(section.key, plan, words)


def _drawings(key: str, plan: Plan, words: Words) -> Iterator[Piece]:
    values = drawing_values(plan)
    for name in FIGURES_OF.get(key, ()):
        kind = FIGURES.get(name)
        wanted = name != "cut-platform" or plan.wish.site.cut
        if kind is not None and wanted and all(need in values for need in kind.needs):
            drawing = captioned(draw(name, values, words), _HIGHEST)
            drawing.may_wait = True  # its caption says what it is, so the next words may fill the page before it
            yield drawing
