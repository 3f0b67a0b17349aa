"""The page of the ready reckoner: the same sections as on paper, with tables that scroll sideways on a phone."""

from __future__ import annotations

from collections.abc import Iterable
from html import escape

from generator.plans import Reckoner, Section, reckoner_sections
from generator.site.markup import block, caution
from generator.words import Words

RECKONER = "ready-reckoner"
"""Name of the page, and of the printed sheet."""
_LONG = 15
"""Letters of a cell that would be a tall tower in a narrow column."""


def reckoner_page(reckoner: Reckoner, words: Words) -> str:
    """The page as Markdown.

    Args:
        reckoner: the tanks.
        words: of the page's language.
    """
    parts = [f"# {words.say('plan.reckoner.title')} {{#{RECKONER}}}"]
    for section in reckoner_sections(reckoner, words):
        parts.append(f"## {section.heading} {{#reckoner-{section.key}}}")
        if section.key == "cautions":
            items = "".join(f"<li>{escape(line, quote=False)}</li>" for line in section.lines)
            parts.append(block(f'<div class="ts-caution" role="note"><ul>{items}</ul></div>'))
        elif section.key == "larger":
            parts.append(block(caution("\n".join(section.lines), words)))
        else:
            first = section.key == "use"
            parts += [f"**{line}**" for line in section.lines[:first]]
            parts.append("\n".join(f"- {line}" for line in section.lines[first:]))
        if section.head:
            parts.append(block(table(section)))
    return "\n\n".join(part.strip() for part in parts if part) + "\n"


def table(section: Section) -> str:
    """A section's table; the first cell of a row is its head.

    A space stands between cells: the site's search would read them as one long word.
    """
    head = " ".join(f'<th scope="col">{escape(cell, quote=False)}</th>' for cell in section.head)
    rows = " ".join(f"<tr>{_row(cells)}</tr>" for cells in section.rows)
    inside = f"<thead><tr>{head}</tr></thead> <tbody>{rows}</tbody>"
    return f'<div class="ts-scroll"><table class="ts-table">{inside}</table></div>'


def _row(texts: Iterable[str]) -> str:
    first, *rest = (escape(cell, quote=False) for cell in texts)
    cells = (f'<td class="ts-long">{cell}</td>' if len(cell) > _LONG else f"<td>{cell}</td>" for cell in rest)
    return " ".join([f'<th scope="row">{first}</th>', *cells])
