"""Writes all drawings side by side: `python -m tests.figures.contact_sheet DIR [PLACE] [SEED]`, then look at them.

DIR gets `figures.html` (as on a page) and `figures.pdf` (as in print). PLACE is a place of the course, SEED moves the
faults of the drawings that have one.
"""

from __future__ import annotations

import sys
from pathlib import Path

from generator.figures.contact import contact_document, contact_page, contact_scenes
from tests.figures.tanks import LANGUAGES, place, words


def write(folder: Path, name: str = "hill-school", seed: int = 0) -> tuple[Path, Path]:
    """The two files of one place."""
    rows = contact_scenes(place(name), [words(language) for language in LANGUAGES], seed)
    folder.mkdir(parents=True, exist_ok=True)
    page, document = folder / "figures.html", folder / "figures.pdf"
    page.write_text(contact_page(rows), encoding="utf-8")
    document.write_bytes(contact_document(rows))
    return page, document


if __name__ == "__main__":
    folder, *rest = sys.argv[1:] or ["output/figures"]
    for path in write(Path(folder), *rest[:1], *map(int, rest[1:2])):
        print(path)  # noqa: T201 (it says what to look at)
