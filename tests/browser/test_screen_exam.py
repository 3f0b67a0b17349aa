"""The screen exam: answers stay through closing and reopening, the clock, more time, and results that Python reads."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, BrowserContext, Page, expect

from generator.assessment.paper_results import check_letters, read_copied, read_result
from generator.assessment.screen_exam import ScreenPaper, screen_page
from generator.exercises import Verdict, mark_set
from tests.assessment import exam_papers as made
from tests.browser.conftest import Watched

pytestmark = pytest.mark.browser

NO_STORE = "Object.defineProperty(window, 'localStorage', {get: () => { throw new Error('refused'); }});"
RECORD = made.record()


class Exam:
    """One exam file and the contexts that it is opened in."""

    def __init__(self, browser: Browser, folder: Path) -> None:
        self.browser, self.folder = browser, folder
        self.watched: list[Watched] = []
        self.contexts: list[BrowserContext] = []

    def context(self, before: str = "", width: int = 360, **more: Any) -> BrowserContext:
        """A browser of its own, on a phone."""
        found = self.browser.new_context(viewport={"width": width, "height": 740}, accept_downloads=True, **more)
        if before:
            found.add_init_script(before)
        self.contexts.append(found)
        return found

    def open(self, context: BrowserContext, minutes: int = 0, language: str = "en", *, clock: bool = False) -> Page:
        """Open the exam's file in it."""
        who = made.learner(language=language)
        paper = ScreenPaper(who, made.figures(language), RECORD.set_id, "spring", "Frame hand", "Pencil.", minutes)
        file = self.folder / "exam.html"
        file.write_text(screen_page(paper, made.course().words[language], {}), "utf-8")
        watched = Watched(context.new_page())
        self.watched.append(watched)
        if clock:
            watched.page.clock.install()
        watched.page.goto(file.as_uri())
        return watched.page


@pytest.fixture
def exam(browser: Browser, tmp_path: Path) -> Iterator[Exam]:
    found = Exam(browser, tmp_path)
    yield found
    for context in found.contexts:
        context.close()
    assert [wrong for watched in found.watched for wrong in watched.wrong] == []


def answer_all(page: Page) -> dict[str, str]:
    """Answer every kind by its own controls; what is expected in the result."""
    page.locator("#q1-0").fill("12.5")
    page.locator("#q2-0").fill("3")
    page.locator("#q2-0-unit").select_option(index=1)
    unit = page.locator("#q2-0-unit").input_value()
    page.locator("#q3-0").fill("1,5")
    page.locator("#q3-1").fill("2")
    page.locator("#q4B").check()
    page.locator("#q5A").check()
    page.locator("#q5C").check()
    for place, letter in enumerate("BCA"):
        page.locator(f"#q6-{place}").select_option(letter)
    page.locator("#q7-0").select_option("B")
    page.locator("#q7-1").select_option("A")
    page.locator("#question-8 [data-area=A]").press("Enter")
    page.locator("#q9-0").fill("७७.३१")
    return {
        "1": "12.5", "2": f"3 {unit}", "3": "1,5; 2", "4": "B", "5": "A C", "6": "B C A", "7": "1B 2A", "8": "A",
        "9": "७७.३१",
    }  # fmt: skip


def finish(page: Page) -> None:
    page.get_by_role("button", name="Finish the exam").click()
    page.get_by_role("button", name="Yes, finish").click()


def result_of(page: Page) -> bytes:
    with page.expect_download() as download:
        page.get_by_role("button", name="Save the result file").click()
    assert download.value.suggested_filename == f"result-{RECORD.set_id}-1.json"
    return Path(download.value.path()).read_bytes()


def test_every_kind_is_answered_and_the_result_is_read(exam: Exam) -> None:
    page = exam.open(exam.context())
    wanted = answer_all(page)
    expect(page.locator("#count")).to_contain_text("9 of 9")
    finish(page)
    found = read_result("r.json", result_of(page), RECORD)
    assert dict(found.answers) == wanted
    marks = mark_set(RECORD, {(1, label): text for label, text in found.answers.items()})
    assert all(mark.verdict is not Verdict.BLANK for _, mark in marks.learners[0].marks)
    assert dict(marks.learners[0].marks)["9"].verdict is Verdict.RIGHT


def test_answers_are_there_after_closing_without_a_word(exam: Exam) -> None:
    """A power cut: the page is gone without any goodbye."""
    context = exam.context()
    page = exam.open(context)
    wanted = answer_all(page)
    page.close(run_before_unload=False)
    again = exam.open(context)
    expect(again.locator("#count")).to_contain_text("9 of 9")
    expect(again.locator("#q1-0")).to_have_value("12.5")
    expect(again.locator("#q5C")).to_be_checked()
    expect(again.locator("#q6-1")).to_have_value("C")
    expect(again.locator("#q7-1")).to_have_value("A")
    expect(again.locator("#question-8 [data-area=A]")).to_have_attribute("aria-pressed", "true")
    again.locator("#q1-0").fill("13")
    finish(again)
    found = read_result("r.json", result_of(again), RECORD)
    assert dict(found.answers) == wanted | {"1": "13"}
    assert found.opened == 2
    assert found.kept


def test_the_list_by_hand_carries_letters_that_python_checks(exam: Exam) -> None:
    page = exam.open(exam.context())
    answer_all(page)
    page.locator("#q1-0").fill("  12 ½ M ")
    finish(page)
    rows = page.locator("tbody tr").all()
    assert len(rows) == 9
    lines = ["learner,question,answer,check"]
    for row in rows:
        label, text, check = row.locator("td").all_inner_texts()
        assert check == check_letters(RECORD.set_id, 1, label, text)
        lines.append(f'1,{label},"{text}",{check}')
    read = read_copied("a.csv", "\n".join(lines).encode(), RECORD)
    assert read[1, "5"] == "A C"


def test_a_browser_that_keeps_nothing_says_so_and_still_works(exam: Exam) -> None:
    page = exam.open(exam.context(NO_STORE))
    expect(page.locator("#stored")).to_contain_text("does not keep answers")
    wanted = answer_all(page)
    finish(page)
    found = read_result("r.json", result_of(page), RECORD)
    assert dict(found.answers) == wanted
    assert not found.kept


@pytest.mark.parametrize(
    "kept", ["{", "null", "[]", '{"format":2}', '{"format":1,"answers":{"1":5},"used":0,"more":[],"opened":0}']
)
def test_a_damaged_store_starts_afresh(exam: Exam, kept: str) -> None:
    key = f"tankschool-exam-{RECORD.set_id}-1"
    page = exam.open(exam.context(f"localStorage.setItem({json.dumps(key)}, {json.dumps(kept)});"))
    expect(page.locator("#count")).to_contain_text("0 of 9")


def test_the_time_ends_the_exam_and_a_supervisor_can_give_more(exam: Exam) -> None:
    page = exam.open(exam.context(), minutes=2, clock=True)
    expect(page.locator("#time")).to_contain_text("Minutes left: 2")
    page.locator("#q1-0").fill("5")
    page.clock.run_for(70_000)
    expect(page.locator("#time")).to_contain_text("Minutes left: 1")
    expect(page.locator("#warned")).to_contain_text("ends soon")
    page.clock.run_for(60_000)
    expect(page.locator("#ended")).to_contain_text("The time is over")
    assert page.get_by_role("button", name="Back to the questions").count() == 0
    page.get_by_role("button", name="More time").click()
    page.get_by_role("button", name="Give the time").click()
    expect(page.locator("#more .warning")).to_contain_text("whole minutes")
    page.locator("#more-minutes").fill("30")
    page.locator("#more-who").fill("Bir Singh")
    page.get_by_role("button", name="Give the time").click()
    expect(page.locator("#time")).to_contain_text("Minutes left: 30")
    expect(page.locator("#q1-0")).to_have_value("5")
    finish(page)
    found = read_result("r.json", result_of(page), RECORD)
    assert found.minutes_allowed == 32
    assert [(one.minutes, one.who) for one in found.more_time] == [(30, "Bir Singh")]
    assert not found.ended_by_time
    assert 119 <= found.seconds_used <= 135


def test_used_time_is_kept_through_closing(exam: Exam) -> None:
    context = exam.context()
    page = exam.open(context, minutes=10, clock=True)
    page.clock.run_for(200_000)
    page.close()
    again = exam.open(context, minutes=10, clock=True)
    expect(again.locator("#time")).to_contain_text("Minutes left: 7")


def test_a_finished_exam_stays_finished_after_reopening_until_it_is_taken_up_again(exam: Exam) -> None:
    context = exam.context()
    page = exam.open(context)
    page.locator("#q1-0").fill("5")
    finish(page)
    page.close()
    again = exam.open(context)
    expect(again.locator("#ended")).to_be_visible()
    again.get_by_role("button", name="Back to the questions").click()
    expect(again.locator("#q1-0")).to_have_value("5")


@pytest.mark.parametrize("language", ["en", "hi"])
def test_it_is_accessible_and_fits_a_phone(exam: Exam, language: str) -> None:
    page = exam.open(exam.context(), minutes=20, language=language)
    wide = page.evaluate("document.documentElement.scrollWidth")
    assert wide <= 360
    assert Axe().run(page).response["violations"] == []
    page.locator("#exam > button").last.click()
    page.locator("#sure button").first.click()
    assert Axe().run(page).response["violations"] == []
    assert page.evaluate("document.documentElement.scrollWidth") <= 360


def test_without_scripts_it_says_what_to_do(exam: Exam) -> None:
    page = exam.open(exam.context(java_script_enabled=False))
    expect(page.get_by_text("Ask for the paper")).to_be_visible()


def test_strange_letters_survive_the_way_to_python(exam: Exam) -> None:
    page = exam.open(exam.context())
    page.evaluate(
        """() => { const box = document.getElementById("q1-0");
        box.value = "a\\u2028b\\ud800c\\u0007 \\u200dक्‍ष 😀"; box.dispatchEvent(new Event("input")); }"""
    )
    finish(page)
    found = read_result("r.json", result_of(page), RECORD)
    assert found.answers["1"] == "a bc  \u200dक्‍ष 😀"
    label, text, check = page.locator("tbody tr").first.locator("td").all_text_contents()
    assert check == check_letters(RECORD.set_id, 1, label, text)


def test_a_click_on_the_drawing_is_a_choice(exam: Exam) -> None:
    page = exam.open(exam.context())
    page.locator("#question-8 [data-area=B] circle").click()
    expect(page.locator("#q8B")).to_be_checked()
    expect(page.locator("#question-8 [data-area=B]")).to_have_attribute("aria-pressed", "true")
    page.locator("#q8A").check()
    expect(page.locator("#question-8 [data-area=B]")).to_have_attribute("aria-pressed", "false")
