"""One learner's walk from the first page to readiness: name, exercises, progress, mock test, a code to take along."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.stick_page import LANGUAGES, address, answer_right, card, number_items, say, strict_page
from tests.browser.test_mock_test import RIGHT
from tests.site.course_stick import Built, built_once

pytestmark = [pytest.mark.browser, pytest.mark.long]

NAMES = {"en": "Asha of the Upper Terrace", "hi": "ऊपरी टोले की आशा"}


@pytest.fixture(scope="module")
def built() -> Built:
    return built_once()


def look(page: Page, name: str, folder: Path) -> None:
    """A picture of the page for people to look at; `TANKSCHOOL_PICTURES` names where to keep them."""
    place = Path(os.environ.get("TANKSCHOOL_PICTURES", folder)) / f"{name}.png"
    assert page.screenshot(path=place)


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_learner_walks_from_the_first_page_to_readiness(
    built: Built, browser: Browser, language: str, tmp_path: Path
) -> None:
    with strict_page(browser, viewport={"width": 360, "height": 780} if language == "hi" else None) as page:
        # The first page, then home in the learner's own language.
        page.goto(address(built, "START-HERE.html"))
        look(page, f"walk-{language}-1-start", tmp_path)
        page.locator(f'section[lang="{language}"] a.go').click()
        page.wait_for_load_state()

        # Who learns: the name goes with the learner to every page.
        page.get_by_label(say(built, language, "page.progress.new_name")).fill(NAMES[language])
        page.get_by_label(say(built, language, "page.progress.new_name")).press("Enter")
        look(page, f"walk-{language}-2-name", tmp_path)
        page.locator('a.ts-go[href="frame.html"]').first.click()
        page.wait_for_load_state()
        expect(page.locator(".ts-learner").first).to_contain_text(NAMES[language])

        # A slip first, then what happened, then right; then the other numbers.
        items = number_items(built, language)
        box = card(page, items[0].id)
        box.locator("input[type=text]").last.fill("987654")
        box.get_by_role("button", name=say(built, language, "page.card.check"), exact=True).click()
        expect(box.locator(".ts-verdict")).to_have_text(say(built, language, "exercise.verdict.not_yet"))
        look(page, f"walk-{language}-3-not-yet", tmp_path)
        for item in items:
            answer_right(built, page, item, language)
            expect(card(page, item.id).locator(".ts-verdict").first).to_have_text(
                say(built, language, "exercise.verdict.right")
            )
        box.scroll_into_view_if_needed()
        look(page, f"walk-{language}-4-right", tmp_path)

        # Home tells what is done.
        page.goto(address(built, f"site/{language}/index.html"))
        count = len(built.content.questions_of("frame"))
        done = say(built, language, "page.progress.of_module", right=len(items), count=count)
        expect(page.locator(f'.ts-module-progress[data-questions*="{items[0].id}"]')).to_have_text(done)

        # The mock test, from its link, up to its end.
        page.locator('a.ts-go[href="mock-test.html"]').click()
        page.wait_for_load_state()
        page.locator(".ts-mock .ts-main").first.click()
        look(page, f"walk-{language}-5-test", tmp_path)
        questions = page.locator(".ts-mock-question").count()
        for _ in range(questions):
            page.evaluate(RIGHT)
            following = page.get_by_role("button", name=say(built, language, "page.mock.next"), exact=True)
            if following.is_visible():
                following.click()
        page.get_by_role("button", name=say(built, language, "page.mock.finish"), exact=True).click()
        page.get_by_role("button", name=say(built, language, "page.mock.finish_sure"), exact=True).click()
        expect(page.locator(".ts-mock-points")).to_have_text(
            say(built, language, "page.mock.points", right=questions, count=questions)
        )
        expect(page.locator(".ts-mock-ready")).to_have_text(say(built, language, "page.mock.ready.ready"))
        expect(page.locator(".ts-mock")).to_contain_text(say(built, language, "page.mock.only_practice"))
        look(page, f"walk-{language}-6-marks", tmp_path)

        # A code to take along says the same on another computer.
        code = " ".join(page.evaluate("Tankschool.code.make()"))
    with strict_page(browser) as other:
        other.goto(address(built, f"phone/tankschool-{language}.html"))
        other.get_by_label(say(built, language, "page.code.type")).fill(code)
        other.get_by_role("button", name=say(built, language, "page.code.use")).click()
        expect(other.locator(f'.ts-module-progress[data-questions*="{items[0].id}"]')).to_have_text(done)
        other.locator(".ts-learner[data-full]").scroll_into_view_if_needed()
        look(other, f"walk-{language}-7-code", tmp_path)
