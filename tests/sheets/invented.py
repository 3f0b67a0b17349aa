"""Small pieces for tests of the layout: words and a document about nothing in particular."""

from __future__ import annotations

from collections.abc import Sequence

from generator.sheets.flow import Piece
from generator.sheets.page import About, Part
from generator.words import Words

WORDS = Words(
    "en",
    {
        "sheet.footer": "{name} · version {version} · content {content}",
        "sheet.accessible": "The same text is on the page {page}.",
        "sheet.page_of": "Page {page} of {pages}",
    },
)
ABOUT = About("Goat card", "en", "1.2.3", "0123456789")


def part(pieces: Sequence[Piece], head: str = "Goats") -> Part:
    return Part("Goat card", "The goats", "Goats", head, WORDS, pieces)
