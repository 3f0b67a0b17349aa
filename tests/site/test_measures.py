"""Measures of the whole stick: room, names, same bytes, and how far any page is from home."""

from __future__ import annotations

import re
import tempfile
from collections.abc import Mapping
from functools import cache
from pathlib import Path

import pytest

from generator.site.assemble import font_files, scripts, styles
from generator.site.mkdocs_run import run_mkdocs, search_worker, theme_scripts
from generator.site.one_file import OneFileParts, one_file
from generator.site.pages import build_pages, settings
from tests.benchmarks.bench_site import copies
from tests.site.course_stick import Built, built_once

ROOM_OF_THE_STICK = 25_000_000
ROOM_OF_ONE_FILE = 2_500_000
"""What a small phone opens with ease, the font left out."""
MODULES = 18
STEPS = 3


@pytest.fixture
def built() -> Built:
    return built_once()


@cache
def edition_of_many_modules(language: str) -> bytes:
    """The one-file edition of a course with as many modules as the whole course will have, all as long as the first."""
    content = copies(MODULES)
    fonts = font_files()
    docs = {
        **build_pages(content, language),
        **{f"assets/{name}": data for name, data in styles().items()},
        **{f"assets/{name}": data for name, data in scripts(content, language).items()},
        **{f"assets/fonts/{name}": data for name, data in fonts.items()},
        "assets/search-worker.js": search_worker(theme_scripts(), language),
    }
    found = settings(content, language)
    with tempfile.TemporaryDirectory() as folder:
        site = run_mkdocs({language: (found, docs)}, Path(folder))[language]
    return one_file(OneFileParts(found, content.words[language], site, scripts(content, language)))


def without_fonts(edition: bytes) -> bytes:
    return re.sub(rb"@font-face\{[^}]*\}", b"", edition)


@pytest.mark.parametrize("language", ["en", "hi"])
def test_one_file_of_eighteen_modules_is_one_that_a_small_phone_opens(language: str) -> None:
    edition = edition_of_many_modules(language)
    assert edition.count(b'<article id="frame-') >= MODULES
    assert len(without_fonts(edition)) < ROOM_OF_ONE_FILE


def test_the_stick_without_its_prints_fits_the_smallest_drive(built: Built) -> None:
    assert sum(map(len, built.files.values())) < ROOM_OF_THE_STICK


def links(text: str, name: str) -> set[str]:
    """Pages of the same site that the page's own body and its navigation lead to."""
    found = re.findall(r'\bhref="([a-z0-9-]+\.html)(?:#[^"]*)?"', text)
    return {one for one in found if one != name}


def far(pages: Mapping[str, str], start: str) -> dict[str, int]:
    """Steps from one page to every page that can be reached."""
    steps = {start: 0}
    waiting = [start]
    while waiting:
        here = waiting.pop(0)
        for target in sorted(links(pages[here], here)):
            if target in pages and target not in steps:
                steps[target] = steps[here] + 1
                waiting.append(target)
    return steps


def body(page: str) -> str:
    """What a page shows without its navigation: a phone hides that behind a button."""
    return page[page.index("<article") : page.index("</article>")]


def test_every_page_is_three_steps_from_home_even_without_the_menu(built: Built) -> None:
    for part in built.parts.values():
        pages = {path: body(data.decode("utf-8")) for path, data in part.site.items() if path.endswith(".html")}
        found = far(pages, "index.html")
        assert set(found) == set(pages)
        assert max(found.values()) <= STEPS


def test_a_page_that_nothing_leads_to_would_be_noticed() -> None:
    pages = {"index.html": '<a href="a.html">', "a.html": '<a href="index.html#x">', "lost.html": '<a href="a.html">'}
    assert far(pages, "index.html") == {"index.html": 0, "a.html": 1}
