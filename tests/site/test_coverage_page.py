"""The page of what is taught, practised and asked where: made from the content, with links that lead there."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from generator.curriculum.coverage import coverage
from generator.site.coverage_page import COVERAGE, coverage_page
from tests.site.course_stick import built_once, course


def page(language: str) -> str:
    return built_once().parts[language].site[f"{COVERAGE}.html"].decode("utf-8")


@pytest.mark.parametrize("language", ["en", "hi"])
def test_every_outcome_stands_on_the_page_once_in_its_own_row(language: str) -> None:
    text = page(language)
    rows = re.findall(r'<tr><th scope="row">(.*?)</th>', text.replace("\n", " "))
    outcomes = [outcome.text[language] for module in course().modules.values() for outcome in module.outcomes]
    assert [re.sub(r" <span.*", "", row) for row in rows] == outcomes


@pytest.mark.parametrize("language", ["en", "hi"])
def test_links_lead_to_the_sections_that_teach(language: str) -> None:
    site = built_once().parts[language].site
    found = re.findall(r'<td[^>]*><ul><li><a href="([a-z-]+\.html)#([a-z0-9-]+)">(.*?)</a>', page(language))
    assert len(found) > 10
    for target, anchor, title in found:
        heading = re.search(rf'<h[2-4] id="{anchor}">(.*?)</h', site[target].decode("utf-8"))
        assert heading is not None, anchor
        assert heading[1].startswith(title)


def test_a_step_counts_for_what_it_shows_and_not_for_its_checklist() -> None:
    rows = {(one.module.id, one.outcome.competency): one for one in coverage(course(), "en")}
    shown = {step.id for _, step in rows["frame", "lap"].steps}
    assert "hoop-with-its-lap" in shown
    assert "hoop-with-its-lap" not in {step.id for _, step in rows["frame", "ring-and-diameter"].steps}


def test_what_is_missing_is_said_plainly() -> None:
    content = course()
    bare = replace(
        content, asked={}, practicals={}, scenarios={}, schemes={}, lessons=dict.fromkeys(content.lessons, ())
    )
    assert not any(one.taught or one.practised or one.assessed for one in coverage(bare, "en"))
    text = coverage_page(bare, "en")
    outcomes = sum(len(module.outcomes) for module in content.modules.values())
    assert text.count("Not yet") == 3 * outcomes
    assert f"The course has {outcomes} outcomes. Taught in a section of a lesson: 0." in text


@pytest.mark.parametrize("language", ["en", "hi"])
def test_the_trainers_part_of_the_home_page_leads_there(language: str) -> None:
    home = built_once().parts[language].site["index.html"].decode("utf-8")
    trainers = home.index('id="trainers"')
    assert home.index(f'href="{COVERAGE}.html"', trainers) < home.index('id="check"')
