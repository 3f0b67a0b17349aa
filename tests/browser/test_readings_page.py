"""Readings of a panel on their page: the panels of Python, the learner's own, and verdicts that know their limits."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, expect

from generator.exercises import Panel, draw_panel, reading_items, typed_panel
from generator.exercises.items import ChoiceItem, NumberItem
from generator.formula import show_full
from tests.browser.stick_page import LANGUAGES, address, say, strict_page
from tests.site.course_stick import Built, built_once

pytestmark = pytest.mark.browser

KINDS: dict[str, Any] = {"bar": ("cover", "bar"), "mesh": ("cover", "mesh"), "spacing": ("spacing", "bar")}


@pytest.fixture(scope="module")
def built() -> Built:
    return built_once()


@pytest.fixture
def panel(built: Built, browser: Browser) -> Iterator[Page]:
    with strict_page(browser) as page:
        page.goto(address(built, "site/en/panel-readings.html"))
        yield page


def answer_all(page: Page, panel: Panel, built: Built, language: str = "en") -> str:
    """Answer the four questions rightly; gives the verdict's text."""
    verdict = ""
    for place, item in enumerate(reading_items(panel, "x", "", built.content.words[language])):
        card = page.locator(".ts-panel .ts-card").nth(place)
        if isinstance(item, NumberItem):
            card.locator("input").fill(show_full(round(item.key, 6)))
        else:
            assert isinstance(item, ChoiceItem)
            verdict = item.options[item.right[0]]
            card.get_by_label(verdict, exact=True).check()
        card.locator(".ts-main").click()
        expect(card.locator(".ts-feedback")).to_contain_text(say(built, language, "exercise.verdict.right"))
    return verdict


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("kind", list(KINDS))
def test_a_seed_shows_the_panel_of_python_and_right_answers_end_in_a_verdict(
    built: Built, browser: Browser, kind: str, language: str
) -> None:
    with strict_page(browser) as page:
        page.goto(address(built, f"site/{language}/panel-readings.html"))
        page.locator("#ts-readings-what").select_option(kind)
        for seed in ("1", "class 7", "पहाड़"):
            page.locator("#ts-readings-seed").fill(seed)
            page.locator("#ts-readings-seed").press("Tab")
            drawn = draw_panel(KINDS[kind][0], seed, KINDS[kind][1])
            shown = page.locator(".ts-readings-table td").all_inner_texts()
            assert shown == [show_full(each) for each in drawn.readings]
        verdict = answer_all(page, drawn, built, language)
        expect(page.locator(".ts-panel > [role=status]")).to_contain_text(verdict)
        limits = say(built, language, "page.readings.only_here", count=len(drawn.readings))
        expect(page.locator(".ts-panel > [role=status]")).to_contain_text(limits)


def test_own_readings_are_asked_about_and_the_trainer_decides(panel: Page, built: Built) -> None:
    panel.locator(".ts-readings summary").click()
    panel.locator("#ts-readings-own").fill("9 11 7.5 12 8 3.5 10")
    panel.get_by_role("button", name=say(built, "en", "page.readings.use")).click()
    own = typed_panel("cover", "9 11 7.5 12 8 3.5 10")
    assert isinstance(own, Panel)
    verdict = answer_all(panel, own, built)
    said = panel.locator(".ts-panel > [role=status] .ts-caution")
    expect(said).to_contain_text(verdict)
    expect(said).to_contain_text(say(built, "en", "page.readings.trainer_looks"))
    assert panel.evaluate("Tankschool.progress.get('panel-bar.edge').tried") == 0  # own readings are no exercise


def test_own_gaps_need_the_plan(panel: Page, built: Built) -> None:
    panel.locator("#ts-readings-what").select_option("spacing")
    panel.locator(".ts-readings summary").click()
    panel.locator("#ts-readings-own").fill("131 128 145")
    use = panel.get_by_role("button", name=say(built, "en", "page.readings.use"))
    for typed in ("", "much", "5", "9000"):
        panel.locator("#ts-readings-planned").fill(typed)
        use.click()
        expect(panel.locator(".ts-readings > .ts-body > [role=status]")).to_have_text(
            say(built, "en", "page.readings.planned_wrong")
        )
    panel.locator("#ts-readings-planned").fill("13 cm")
    use.click()
    own = typed_panel("spacing", "131 128 145", planned=130.0)
    assert isinstance(own, Panel)
    answer_all(panel, own, built)


@pytest.mark.parametrize(
    "typed",
    ["", "8 9", "8 9 x", "<script>console.log(1)</script> 8 9 10", "1 " * 70, "9" * 5000, "=1+1 2 3"],
)
def test_what_is_no_list_of_readings_is_told_and_never_run(panel: Page, built: Built, typed: str) -> None:
    panel.locator(".ts-readings summary").click()
    panel.locator("#ts-readings-own").fill(typed)
    panel.get_by_role("button", name=say(built, "en", "page.readings.use")).click()
    expect(panel.locator(".ts-readings > .ts-body > [role=status]")).not_to_be_empty()
    expect(panel.locator(".ts-panel .ts-card")).to_have_count(0)
    expect(panel.locator("#ts-readings-own")).to_be_focused()


def test_two_wrong_answers_show_the_right_one_and_another_panel_can_be_drawn(panel: Page, built: Built) -> None:
    card = panel.locator(".ts-panel .ts-card").first
    for _ in range(2):
        card.locator("input").fill("777")
        card.locator(".ts-main").click()
    item = reading_items(draw_panel("cover", "1"), "x", "", built.content.words["en"])[0]
    assert isinstance(item, NumberItem)
    expect(card.locator(".ts-feedback")).to_contain_text(built.content.words["en"].with_unit(item.shown_key, item.unit))
    assert panel.evaluate("Tankschool.progress.get('panel-bar.edge').tried") == 2
    before = panel.locator(".ts-readings-table").inner_text()
    for _ in range(3):
        panel.get_by_role("button", name=say(built, "en", "page.readings.another")).click()
    assert panel.locator(".ts-readings-table").inner_text() != before
    expect(panel.locator(".ts-panel h2")).to_be_focused()


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("width", [360, 1280])
def test_the_readings_page_has_no_known_barrier(built: Built, browser: Browser, language: str, width: int) -> None:
    with strict_page(browser, viewport={"width": width, "height": 900}) as page:
        for path in (f"site/{language}/panel-readings.html", f"phone/tankschool-{language}.html#panel-readings"):
            page.goto("about:blank")
            page.goto(address(built, path))
            answer_all(page, draw_panel("cover", "1"), built, language)
            page.evaluate("document.querySelectorAll('.ts-readings details').forEach(one => { one.open = true; })")
            assert page.evaluate("document.documentElement.scrollWidth") <= width
            found = Axe().run(page, options={"preload": False})
            assert found.violations_count == 0, found.generate_report()
