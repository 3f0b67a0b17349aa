"""What was packed comes out of the page's own opener as it went in, whichever way the packer chose."""

from __future__ import annotations

import base64
import zlib
from pathlib import Path

import pytest
from playwright.sync_api import Error, Page

from generator.formula import Stream
from generator.site.packing import as_json, packed

pytestmark = pytest.mark.browser

SCRIPT = Path(__file__).parents[2] / "generator" / "site" / "assets" / "unpack.js"
TURNS = 60
MOST = 40_000
OPEN = "text => Tankschool.unpack(text)"


@pytest.fixture
def page(kept_page: Page) -> Page:
    kept_page.goto("about:blank")
    kept_page.add_script_tag(content=SCRIPT.read_text("utf-8"))
    return kept_page


def texts() -> list[str]:
    """Texts of many lengths and kinds: much alike, hardly alike, in letters of one to four bytes."""
    stream = Stream("unpack")
    found = ["", "a", "हूप " * 5000, as_json({"hoops": list(range(3000))})]
    for turn in range(TURNS):
        start, width = [(32, 95), (0x900, 128), (0x4E00, 20_000), (0x1F300, 500)][turn % 4]
        width = width if turn % 8 < 4 else 3
        found.append("".join(chr(start + stream.below(width)) for _ in range(stream.below(MOST) // (1 + turn % 7))))
    return found


def test_every_text_comes_out_as_it_went_in(page: Page) -> None:
    for text in texts():
        assert page.evaluate(OPEN, packed(text)) == text


@pytest.mark.parametrize(
    ("level", "strategy"), [(0, zlib.Z_DEFAULT_STRATEGY), (9, zlib.Z_FIXED), (1, zlib.Z_HUFFMAN_ONLY)]
)
def test_every_kind_of_block_is_read(page: Page, level: int, strategy: int) -> None:
    for text in texts()[:16]:
        squeezer = zlib.compressobj(level, zlib.DEFLATED, -15, 9, strategy)
        data = squeezer.compress(text.encode("utf-8")) + squeezer.flush()
        assert page.evaluate(OPEN, base64.b64encode(data).decode("ascii")) == text


def test_damage_is_told_and_never_read_as_something_else(page: Page) -> None:
    data = base64.b64decode(packed("hoops and bars, " * 400 + as_json(list(range(900)))))
    for end in (0, 1, 5, len(data) // 2, len(data) - 1):
        with pytest.raises(Error, match="packed data"):
            page.evaluate(OPEN, base64.b64encode(data[:end]).decode("ascii"))
    with pytest.raises(Error, match="packed data"):
        page.evaluate(OPEN, base64.b64encode(b"\x07" + data).decode("ascii"))
