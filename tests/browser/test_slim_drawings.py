"""Drawings of the stick look as those that the figures give, though they are told in fewer letters."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from PIL import Image, ImageChops
from playwright.sync_api import Page

from generator.figures import draw, stylesheet, svg
from generator.site.slim_svg import slim
from tests.site.course_stick import course

pytestmark = pytest.mark.browser


def picture(page: Page, folder: Path, drawings: list[str], style: str) -> Image.Image:
    file = folder / "drawings.html"
    head = f'<!doctype html><meta charset="utf-8"><title>d</title><style>{style}</style>'
    file.write_text(f"{head}<body>{''.join(drawings)}", encoding="utf-8")
    page.goto(file.as_uri())
    return Image.open(io.BytesIO(page.screenshot(full_page=True))).convert("L")


def test_slim_drawings_look_the_same(kept_page: Page, tmp_path: Path) -> None:
    content = course()
    module, words = content.modules["frame"], content.words["en"]
    assert content.fault_album is not None
    shown = [*module.cards, *content.fault_album.faults]
    names = list(dict.fromkeys(one.figure for one in shown))[:14]
    scenes = [draw(name, content.values(module.place), words) for name in names]
    assert len(scenes) >= 5
    drawings = [svg(scene, f"drawing-{number}") for number, scene in enumerate(scenes)]
    kept_page.set_viewport_size({"width": 800, "height": 900})
    before = picture(kept_page, tmp_path, drawings, "")
    after = picture(kept_page, tmp_path, list(map(slim, drawings)), stylesheet())
    assert sum(map(len, map(slim, drawings))) < 0.6 * sum(map(len, drawings))
    assert before.size == after.size
    different = ImageChops.difference(before, after).point(lambda value: 255 if value > 96 else 0)
    share = different.histogram()[255] / (before.width * before.height)
    assert share < 0.0005
    ink = before.point(lambda value: 255 if value < 128 else 0).histogram()[255] / (before.width * before.height)
    assert ink > 0.005  # there is something to compare
