"""A plan as plain text for a terminal or a cheap printer: headings, sentences, columns."""

from __future__ import annotations

import textwrap
import unicodedata
from collections.abc import Sequence
from functools import lru_cache

from generator.plans.plan import Plan, Refusal
from generator.plans.sections import sections
from generator.plans.tell import Section
from generator.words import Words

WIDTH = 100
GAP = 2
LEAST = 12


def as_text(result: Plan | Refusal, words: Words) -> str:
    """The whole plan, or why there is none.

    Args:
        result: of `make_plan`.
        words: of the reader's language.
    """
    return sections_text(sections(result, words))


def sections_text(found: Sequence[Section]) -> str:
    """Sections as text.

    Args:
        found: in order.
    """
    return "\n\n".join(_section(section) for section in found) + "\n"


def _section(section: Section) -> str:
    lines = [section.heading, "-" * min(WIDTH, width_of(section.heading))]
    for line in section.lines:
        lines += [line] if len(line) <= WIDTH else textwrap.wrap(line, WIDTH)
    if section.head:
        lines += ["", *_table(section.head, section.rows)]
    return "\n".join(lines)


@lru_cache(maxsize=1 << 12)
def width_of(text: str) -> int:
    """Columns that a text takes on a terminal: signs that sit on the letter before them take none.

    Example:
        >>> width_of("टंकी"), width_of("tank")
        (3, 4)
    """
    if text.isascii():
        return len(text)
    return sum(unicodedata.category(sign) not in ("Mn", "Me", "Cf") for sign in text)


def _table(head: Sequence[str], rows: Sequence[Sequence[str]]) -> list[str]:
    """Columns as wide as they need; the widest one gives way until the table fits."""
    widths = [max(width_of(row[column]) for row in (head, *rows)) for column in range(len(head))]
    while sum(widths) + GAP * (len(widths) - 1) > WIDTH:
        widest = max(range(len(widths)), key=lambda column: widths[column])
        if widths[widest] <= LEAST:
            break
        widths[widest] -= 1
    lines = _row(head, widths)
    lines.append((" " * GAP).join("-" * width for width in widths))
    for row in rows:
        lines += _row(row, widths)
    return lines


def _row(cells: Sequence[str], widths: Sequence[int]) -> list[str]:
    wrapped = [_wrapped(cell, width) for cell, width in zip(cells, widths, strict=True)]
    height = max(len(lines) for lines in wrapped)
    found = []
    for line in range(height):
        parts = [lines[line] if line < len(lines) else "" for lines in wrapped]
        padded = (part + " " * (width - width_of(part)) for part, width in zip(parts, widths, strict=True))
        found.append((" " * GAP).join(padded).rstrip())
    return found


def _wrapped(text: str, width: int) -> list[str]:
    """Words in lines of at most so many columns."""
    if width_of(text) <= width:
        return [text]
    lines: list[str] = []
    for word in text.split(" "):
        if lines and width_of(lines[-1]) + 1 + width_of(word) <= width:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    return lines
