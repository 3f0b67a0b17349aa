"""The practice page asks what Python would ask, says why, and keeps dated answers that travel in the progress file."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import asdict
from html import unescape
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, expect

from generator.exercises import blueprint_of, mastery, next_card, pool_of, readiness, readiness_told, told, why
from generator.exercises.practice import Answer
from generator.formula import Stream
from tests.browser.stick_page import LANGUAGES, address, say, strict_page
from tests.site.course_stick import Built, built_once

pytestmark = pytest.mark.browser

KEPT = "() => Tankschool.progress.answers()"


@pytest.fixture(scope="module")
def built() -> Built:
    return built_once()


@pytest.fixture
def practice(built: Built, browser: Browser) -> Iterator[Page]:
    with strict_page(browser) as page:
        page.goto(address(built, "site/en/practice.html"))
        yield page


def names(built: Built, language: str) -> dict[str, str]:
    return {one.id: one.text[language] for one in built.content.competencies.values()}


def keep(page: Page, answers: list[Answer]) -> None:
    """Put answers where the page keeps them, and look again."""
    page.evaluate(
        "text => localStorage.setItem('tankschool.v1.p0.answers', text)", json.dumps([asdict(one) for one in answers])
    )
    page.reload()


def made_up(built: Built, seed: str, count: int, today: int) -> list[Answer]:
    stream = Stream(f"practice page {seed}")
    cards = pool_of(built.content).cards
    found = []
    for place in range(count):
        card = cards[stream.below(len(cards))]
        day = max(0, today - (count - place) // 3)
        found.append(Answer(card.question, card.competency, day, stream.below(4) > 0))
    return found


@pytest.mark.parametrize("language", LANGUAGES)
def test_question_reason_and_readiness_are_those_of_python(built: Built, browser: Browser, language: str) -> None:
    words, pool, called = built.content.words[language], pool_of(built.content), names(built, language)
    with strict_page(browser) as page:
        page.goto(address(built, f"site/{language}/practice.html"))
        today = page.evaluate("Tankschool.progress.today()")
        for count in (0, 1, 7, 40, 200):
            answers = made_up(built, str(count), count, today)
            keep(page, answers)
            choice = next_card(pool, answers, today, "p0")
            assert choice is not None
            expect(page.locator(".ts-why")).to_have_text(why(choice, called[choice.competency], words))
            assert page.locator(".ts-practice .ts-card .ts-body").count() == 1
            text = page.locator(".ts-practice .ts-body").first.inner_text()
            for name in dict.fromkeys(card.competency for card in pool.cards):
                assert told(mastery(name, answers), called[name], words) in text
            for scheme in built.content.schemes.values():
                found = readiness(blueprint_of(scheme, pool_of(built.content, scheme.modules).cards), answers)
                assert readiness_told(found, called, words)[0] in text


def test_an_answer_counts_once_with_its_day_and_the_next_question_comes(practice: Page, built: Built) -> None:
    button = practice.get_by_role("button", name=say(built, "en", "page.practice.next"))
    button.click()
    expect(practice.locator(".ts-practice > .ts-body > [role=status]")).to_have_text(
        say(built, "en", "page.practice.answer_first")
    )
    asked = []
    for _ in range(4):
        answer_wrongly(practice)
        answer_wrongly(practice)  # a second try at the same numbers is no second answer
        button.click()
        asked = practice.evaluate(KEPT)
        expect(practice.locator(".ts-why")).to_be_focused()
    assert len(asked) == 4
    assert [one["right"] for one in asked] == [False] * 4
    assert {one["day"] for one in asked} == {practice.evaluate("Tankschool.progress.today()")}
    assert all(one["competency"] in built.content.competencies for one in asked)


def answer_wrongly(page: Page) -> None:
    """Give an answer that can't be right, whatever kind of question stands there."""
    page.evaluate(
        """() => { const card = document.querySelector(".ts-practice .ts-card"), main = card.querySelector(".ts-main");
        card.querySelectorAll("input[type=text]").forEach(field => { field.value = "987654"; });
        const lists = [...card.querySelectorAll("select")];
        lists.forEach((one, place) => {
          if (lists.length > 1) { one.value = String((place + 1) % lists.length); }
          else { one.selectedIndex = one.options.length - 1; } });
        const picks = [...card.querySelectorAll("input[type=radio], input[type=checkbox]")];
        const data = Tankschool.page.data();
        const text = card.querySelector(".ts-body p").textContent;
        const question = Object.values(data.questions).find(one => one.text && one.text.split("\\n")[0] === text);
        picks.forEach(one => { one.checked = false; });
        const wrong = picks.find(one => !question || question.right.indexOf(Number(one.value)) < 0);
        if (wrong) { wrong.checked = true; }
        main.click(); }"""
    )


def test_a_right_answer_of_a_lesson_is_remembered_by_practice(built: Built, browser: Browser) -> None:
    with strict_page(browser) as page:
        page.goto(address(built, "site/en/frame.html"))
        page.evaluate(
            """() => { const card = document.querySelector(".ts-card[data-question]");
            card.querySelector("input[type=text]").value = "1"; card.querySelector(".ts-main").click(); }"""
        )
        page.goto(address(built, "site/en/practice.html"))
        assert len(page.evaluate(KEPT)) == 1


def test_modules_can_be_chosen_and_learners_have_their_own_answers(practice: Page, built: Built) -> None:
    practice.locator("#ts-practice-module").select_option(index=1)
    expect(practice.locator(".ts-practice .ts-card")).to_have_count(1)
    answer_wrongly(practice)
    assert len(practice.evaluate(KEPT)) == 1
    practice.evaluate("Tankschool.progress.add('Bir')")
    assert practice.evaluate(KEPT) == []
    practice.evaluate("Tankschool.progress.choose('p0')")
    assert len(practice.evaluate(KEPT)) == 1
    practice.evaluate("Tankschool.progress.clear()")
    assert practice.evaluate(KEPT) == []


def test_dated_answers_travel_in_the_progress_file_and_older_files_are_read(practice: Page, built: Built) -> None:
    today = practice.evaluate("Tankschool.progress.today()")
    answers = made_up(built, "file", 12, today)
    keep(practice, answers)
    text = practice.evaluate("Tankschool.progress.exported()")
    data: dict[str, Any] = json.loads(text)
    assert data["format"] == 1
    assert data["answers"] == [asdict(one) for one in answers]
    # the same file twice adds nothing; one of another computer adds its days in their order
    again = "text => { Tankschool.progress.imported(text); return Tankschool.progress.answers(); }"
    assert practice.evaluate(again, text) == data["answers"]
    data["answers"] = [{**data["answers"][0], "day": 1}, data["answers"][-1]]
    merged = practice.evaluate(again, json.dumps(data))
    assert len(merged) == 13
    assert merged[0]["day"] == 1
    # a file saved before answers were dated, and damaged entries
    del data["answers"]
    assert practice.evaluate(again, json.dumps(data)) == merged
    for bad in (7, "x", {"a": 1}, [None, 7, {"question": "<b>"}, {**asdict(answers[0]), "day": -1}]):
        assert practice.evaluate(again, json.dumps(data | {"answers": bad})) == merged
    practice.evaluate("Tankschool.progress.clear()")
    assert practice.evaluate(again, text) == [asdict(one) for one in answers]


@pytest.mark.parametrize("damaged", ["{", "7", '"x"', "[7,null,{}]", "[" * 200])
def test_damaged_answers_in_the_browser_are_no_trouble(practice: Page, damaged: str) -> None:
    practice.evaluate("text => localStorage.setItem('tankschool.v1.p0.answers', text)", damaged)
    practice.reload()
    expect(practice.locator(".ts-practice .ts-card")).to_have_count(1)
    assert practice.evaluate(KEPT) == []


def test_the_one_file_edition_practises_with_fields_of_its_own(built: Built, browser: Browser) -> None:
    with strict_page(browser) as page:
        page.goto(address(built, "phone/tankschool-en.html#practice"))
        ids = page.evaluate("[...document.querySelectorAll('.ts-practice [id]')].map(one => one.id)")
        assert all(page.locator(f'[id="{one}"]').count() == 1 for one in ids)
        answer_wrongly(page)
        expect(page.locator(".ts-practice .ts-feedback").first).not_to_be_empty()


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("width", [360, 1280])
def test_the_practice_page_has_no_known_barrier(built: Built, browser: Browser, language: str, width: int) -> None:
    with strict_page(browser, viewport={"width": width, "height": 900}) as page:
        page.goto(address(built, f"site/{language}/practice.html"))
        answer_wrongly(page)
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        found = Axe().run(page, options={"preload": False})
        assert found.violations_count == 0, found.generate_report()


@pytest.mark.parametrize(
    ("name", "key"), [("practice", "practice"), ("sheet-maker", "sheets"), ("panel-readings", "readings")]
)
def test_without_a_script_the_pages_say_so(built: Built, name: str, key: str) -> None:
    for language in LANGUAGES:
        page = built.files[f"site/{language}/{name}.html"].decode("utf-8")
        inside = page.partition("<noscript>")[2].partition("</noscript>")[0]
        assert say(built, language, f"page.{key}.script_off") in unescape(inside)
