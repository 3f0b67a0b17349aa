"""Drawings of the one file look as those of the site do, though they are told in fewer letters."""

from __future__ import annotations

import io
import re
from pathlib import Path

import pytest
from PIL import Image, ImageChops
from playwright.sync_api import Page

from generator.site.slim_svg import slim
from tests.site.course_stick import built_once

pytestmark = pytest.mark.browser


def picture(page: Page, folder: Path, drawings: list[str]) -> Image.Image:
    file = folder / "drawings.html"
    file.write_text(f'<!doctype html><meta charset="utf-8"><title>d</title><body>{"".join(drawings)}', encoding="utf-8")
    page.goto(file.as_uri())
    return Image.open(io.BytesIO(page.screenshot(full_page=True))).convert("L")


def test_slim_drawings_look_the_same(kept_page: Page, tmp_path: Path) -> None:
    built = built_once()
    page_text = "".join(
        data.decode("utf-8")
        for path, data in built.parts["en"].site.items()
        if path in ("frame.html", "fault-album.html")
    )
    drawings = [one for one in re.findall(r"<svg.*?</svg>", page_text, re.DOTALL) if 'class="fig"' in one][:14]
    assert len(drawings) >= 5
    kept_page.set_viewport_size({"width": 800, "height": 900})
    before, after = (picture(kept_page, tmp_path, list(map(how, drawings))) for how in (str, slim))
    assert before.size == after.size
    different = ImageChops.difference(before, after).point(lambda value: 255 if value > 96 else 0)
    share = different.histogram()[255] / (before.width * before.height)
    assert share < 0.0005
    ink = before.point(lambda value: 255 if value < 128 else 0).histogram()[255] / (before.width * before.height)
    assert ink > 0.005  # there is something to compare
