"""All drawings side by side: every one is there, in both languages, and the same again."""

from __future__ import annotations

import io
import re
from pathlib import Path
from xml.etree import ElementTree

from pypdf import PdfReader

from generator.figures import FIGURES
from tests.figures.contact_sheet import write
from tests.figures.tanks import LANGUAGES


def test_the_sheet_holds_every_drawing_in_both_languages_and_repeats(tmp_path: Path) -> None:
    page, document = write(tmp_path / "one")
    markup = page.read_text(encoding="utf-8")
    assert re.findall(r'<h2 id="([^"]*)"', markup) == list(FIGURES)
    drawings = re.findall(r"<svg.*?</svg>", markup)
    assert len(drawings) == len(FIGURES) * len(LANGUAGES)
    for drawing in drawings:
        ElementTree.fromstring(drawing)  # noqa: S314  # our own markup
    ids = re.findall(r'\bid="([^"]*)"', markup)
    assert len(ids) == len(set(ids))
    assert len(PdfReader(io.BytesIO(document.read_bytes())).pages) == len(FIGURES)
    again = write(tmp_path / "two")
    assert [path.read_bytes() for path in again] == [page.read_bytes(), document.read_bytes()]
    other = write(tmp_path / "three", "lower-terrace-herders", 3)
    assert other[0].read_bytes() != page.read_bytes()
