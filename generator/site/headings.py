"""Addresses inside a lesson: every heading gets an ASCII id, the same in all languages.

A lesson's headings are matched by their order, and named after the course's first language: so a link to a part of the
lesson holds in every language, and Hindi headings have no addresses that change with each edit.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Sequence

_HEADING = re.compile(r"^(#{2,4}) +(.*?)(?: *\{#([a-z0-9-]+)\})? *#*$")
_FENCE = re.compile(r"^(```|~~~)")
LONGEST_ID = 40


def heading_ids(parts: Sequence[str], start: str) -> tuple[str, ...]:
    """The ids of all headings in a lesson's Markdown, in order, no two alike.

    Args:
        parts: the lesson's pieces of Markdown in the course's first language.
        start: what every id begins with, so that none is taken for another part of the page.

    Example:
        >>> heading_ids(["## Set the ring", "## टंकी", "## Own {#own}"], "lesson")
        ('lesson-set-the-ring', 'lesson-2', 'own')
    """
    found: list[str] = []
    for part in parts:
        for _, match in _headings(part):
            number = len(found) + 1
            name = match[3] or f"{start}-{_plain(match[2]) or number}"
            found.append(name if name not in found else f"{start}-{number}")
    return tuple(found)


def with_ids(markdown: str, ids: Iterator[str]) -> str:
    """Markdown whose headings carry the next ids.

    Args:
        markdown: one piece of a lesson.
        ids: handed on from piece to piece; where a translation has more headings than ids, the rest keep their text.
    """
    lines = markdown.split("\n")
    for place, match in _headings(markdown):
        name = next(ids, None)
        if name is not None:
            lines[place] = f"{match[1]} {match[2]} {{#{name}}}"
    return "\n".join(lines)


def _headings(markdown: str) -> Iterator[tuple[int, re.Match[str]]]:
    fenced = False
    for place, line in enumerate(markdown.split("\n")):
        if _FENCE.match(line):
            fenced = not fenced
        match = None if fenced else _HEADING.match(line)
        if match:
            yield place, match


def _plain(text: str) -> str:
    letters = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode("ascii").lower()
    name = re.sub(r"[^a-z0-9]+", "-", letters).strip("-")[:LONGEST_ID].strip("-")
    return name if len(name) > 2 else ""
