"""The ready reckoner's page: reachable, in both languages, in the one-file edition, with bars of village tanks only."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from generator.curriculum import load
from generator.plans import make_reckoner, reckoner_sections
from generator.site import RECKONER, Products, check, kept_reckoner
from generator.site.one_file import opened
from generator.site.pages import NOT_MODULES
from generator.site.reckoner_page import reckoner_page
from tests.commands.course_copy import course_copy
from tests.site.course_stick import built_once, course


@pytest.mark.parametrize("language", ["en", "hi"])
def test_the_page_is_reached_from_home_and_from_every_page(language: str) -> None:
    part = built_once().parts[language]
    for path, data in part.site.items():
        if path.endswith(".html") and path != f"{RECKONER}.html":
            assert f'href="{RECKONER}.html"' in data.decode("utf-8"), path
    body = part.site["index.html"].decode("utf-8")
    assert f'class="ts-go" href="{RECKONER}.html"' in body
    one_file = opened(part.one_file)
    assert f'<article id="{RECKONER}"' in one_file
    assert f'<a class="ts-go" href="#{RECKONER}">' in one_file


@pytest.mark.parametrize("language", ["en", "hi"])
def test_the_page_says_all_that_the_sections_say(language: str) -> None:
    words = course().words[language]
    page = reckoner_page(make_reckoner(), words)
    for section in reckoner_sections(make_reckoner(), words):
        assert f"## {section.heading} {{#reckoner-{section.key}}}" in page
        for text in (*section.lines, *section.head, *(cell for row in section.rows for cell in row)):
            assert text in page
    assert page.index(words.say("band.policy")) < page.index("<table")
    engineer = page[page.index("{#reckoner-larger}") :]
    assert 'class="ts-caution"' in engineer[: engineer.index("<table")]
    assert words.say("plan.bar_plain", size="").strip() not in engineer


def test_rows_have_heads_and_a_name_that_no_module_may_take() -> None:
    page = reckoner_page(make_reckoner(), course().words["en"])
    assert len(re.findall(r'<th scope="row">', page)) == len(make_reckoner().rows) + 12
    assert RECKONER in NOT_MODULES


def test_kept_rows_are_not_planned_again(monkeypatch: pytest.MonkeyPatch) -> None:
    products = Products(built_once().folder.parent / "cache")

    def never() -> None:
        raise AssertionError("planned again")

    monkeypatch.setattr("generator.site.assemble.make_reckoner", never)
    assert kept_reckoner(products) == make_reckoner()
    assert products.made == []


def test_a_handout_of_the_same_name_is_told(tmp_path: Path) -> None:
    folder = course_copy(tmp_path)
    card = (folder / "handouts" / "frame-card.yaml").read_text("utf-8")
    (folder / "handouts" / "frame-card.yaml").write_text(card.replace("id: frame-card", f"id: {RECKONER}"), "utf-8")
    content = load(folder).content
    assert content is not None
    assert [(problem.code, problem.file) for problem in check(content)] == [("taken-name", "handouts/frame-card.yaml")]
    assert check(course()) == []
