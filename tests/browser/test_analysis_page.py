"""The report of `analyse` on a phone and a laptop: nothing asked for, nothing across the edge, readable by all."""

from __future__ import annotations

from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page

from generator.assessment.report_page import report_page
from generator.curriculum import load
from generator.site.fonts import font_files
from tests.assessment.test_report import whole_report

pytestmark = pytest.mark.browser


@pytest.mark.parametrize("language", ["en", "hi"])
def test_the_report_shows_on_any_screen(language: str, kept_page: Page, tmp_path: Path) -> None:
    content = load(Path(__file__).parents[2]).content
    assert content is not None
    words = content.words[language]
    path = tmp_path / "report.html"
    path.write_text(report_page(whole_report(words), words, font_files()), "utf-8")
    kept_page.goto(path.as_uri())
    for width in (360, 1280):
        kept_page.set_viewport_size({"width": width, "height": 800})
        assert kept_page.evaluate("document.documentElement.scrollWidth") <= width
        assert kept_page.evaluate("document.fonts.check('16px Mukta')")
    found = Axe().run(kept_page)
    assert [violation["id"] for violation in found.response["violations"]] == []
