"""The mock test: like a real one until its end, then with marks and reasons; nothing written is lost."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from generator.site.mock_page import mock_data
from tests.browser.stick_page import LANGUAGES, address, say, strict_page
from tests.site.course_stick import Built, built_once

pytestmark = pytest.mark.browser

PATHS = {
    "site-en": ("en", "site/en/mock-test.html"),
    "site-hi": ("hi", "site/hi/mock-test.html"),
    "one-file": ("en", "phone/tankschool-en.html#mock-test"),
}
RIGHT = """() => { // types the right answer of the question that is shown
  const state = JSON.parse(Tankschool.progress.noted("mock")), id = state.questions[state.at];
  const data = Tankschool.page.data().questions[id], item = Tankschool.marker.item(data, state.seed);
  const a = item.answer || item, tell = (one, kind) => one.dispatchEvent(new Event(kind, {bubbles: true}));
  const box = [...document.querySelectorAll(".ts-mock-question")].find(one => !one.hidden);
  if (a.kind === "number") {
    const unit = box.querySelector("select"), texts = [...box.querySelectorAll("input[type=text]")];
    if (unit) { unit.value = a.unit; tell(unit, "change"); }
    (a.steps || []).forEach((step, n) => { texts[n].value = step.shown_key; });
    texts[texts.length - 1].value = a.shown_key;
    tell(texts[texts.length - 1], "input");
  } else if (a.kind === "choice" || a.kind === "spot") {
    box.querySelectorAll("input").forEach(one => { if (a.right.includes(Number(one.value))) one.click(); });
  } else if (a.kind === "match") {
    box.querySelectorAll("select").forEach((one, n) => { one.value = String(n); tell(one, "change"); });
  } else {
    const texts = () => [...box.querySelectorAll(".ts-step")].map(one => one.textContent);
    a.steps.forEach((step, place) => { while (texts().indexOf(step) > place) {
      box.querySelectorAll(".ts-sort li")[texts().indexOf(step)].querySelectorAll("button")[0].click(); } });
  }
  return a.kind; }"""


@pytest.fixture(scope="module")
def built() -> Built:
    return built_once()


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    with strict_page(browser) as found:
        yield found


def press(built: Built, page: Page, language: str, key: str, **values: object) -> None:
    button(built, page, language, key, **values).click()


def button(built: Built, page: Page, language: str, key: str, **values: object) -> Locator:
    return page.locator(".ts-mock").get_by_role("button", name=say(built, language, key, **values), exact=True)


def begin(built: Built, page: Page, name: str) -> tuple[str, int]:
    language, path = PATHS[name]
    page.goto(address(built, path))
    scheme = next(iter(built.content.schemes.values()))
    press(built, page, language, "page.mock.begin", title=scheme.title[language])
    return language, sum(part["count"] for part in mock_data(built.content, language)["schemes"][0]["parts"])


@pytest.mark.parametrize("name", PATHS)
def test_a_test_that_is_all_right_says_ready_with_all_points(built: Built, page: Page, name: str) -> None:
    language, count = begin(built, page, name)
    kinds = set()
    for _ in range(count):
        kinds.add(page.evaluate(RIGHT))
        assert page.locator(".ts-mock .ts-verdict").count() == 0
        assert page.locator(".ts-mock .ts-right, .ts-mock .ts-not-yet").count() == 0
        following = button(built, page, language, "page.mock.next")
        if following.is_visible():
            following.click()
    assert len(kinds) > 2
    press(built, page, language, "page.mock.finish")
    expect(page.locator(".ts-mock-warn").last).to_have_text(say(built, language, "page.mock.none_open"))
    press(built, page, language, "page.mock.finish_sure")
    expect(page.locator(".ts-mock-points")).to_have_text(
        say(built, language, "page.mock.points", right=count, count=count)
    )
    words = built.content.words[language]
    expect(page.locator(".ts-mock-ready")).to_have_text(words.say_one_of("page.mock.ready", "ready"))
    assert page.locator(".ts-mock-question .ts-right").count() == count


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_help_and_no_verdict_stand_in_a_test(built: Built, page: Page, language: str) -> None:
    begin(built, page, f"site-{language}")
    shown = page.locator(".ts-mock").inner_text()
    for key in ("page.card.hint", "page.card.formula", "page.card.worked", "page.card.check", "page.card.new_numbers"):
        assert say(built, language, key) not in shown


def test_the_numbers_of_the_questions_stand_side_by_side(built: Built, page: Page) -> None:
    begin(built, page, "site-en")
    tops = page.evaluate("[...document.querySelectorAll('.ts-mock-numbers li')].map(one => one.offsetTop)")
    assert len(tops) > 5
    assert len(set(tops)) <= len(tops) / 8


def test_what_is_written_is_there_again_after_the_page_was_closed(built: Built, page: Page) -> None:
    language, count = begin(built, page, "site-en")
    for _ in range(count // 2):
        page.evaluate(RIGHT)
        press(built, page, language, "page.mock.next")
    kept = "Object.entries(JSON.parse(Tankschool.progress.noted('mock')).answers).sort().toString()"
    heading = page.locator(".ts-mock-question:visible h3").inner_text()
    answered, texts = page.evaluate(kept), page.locator(".ts-mock").inner_text()
    page.goto("about:blank")
    page.goto(address(built, "site/en/mock-test.html"))
    assert page.locator(".ts-mock-question:visible h3").inner_text() == heading
    assert page.evaluate(kept) == answered
    assert page.locator(".ts-mock .ts-answered").count() == count // 2
    assert page.locator(".ts-mock").inner_text() == texts
    press(built, page, language, "page.mock.finish")
    open_ones = count - count // 2
    expect(page.locator(".ts-mock-warn").last).to_have_text(say(built, language, "page.mock.open", count=open_ones))
    press(built, page, language, "page.mock.finish_sure")
    points = page.locator(".ts-mock-points").inner_text()
    assert points == say(built, language, "page.mock.points", right=count // 2, count=count)
    page.reload()
    expect(page.locator(".ts-mock-points")).to_have_text(points)
    press(built, page, language, "page.mock.again")
    assert page.locator(".ts-mock-question").count() == 0
    assert page.evaluate("Tankschool.progress.noted('mock')") is None


def test_another_learner_has_another_test(built: Built, page: Page) -> None:
    begin(built, page, "one-file")
    page.evaluate("Tankschool.progress.add('Bina')")
    assert page.locator(".ts-mock-question").count() == 0
    page.evaluate("Tankschool.progress.choose('p0')")
    assert page.locator(".ts-mock-question").count() > 5
    page.evaluate("Tankschool.progress.clear()")
    assert page.locator(".ts-mock-question").count() == 0


def test_the_clock_runs_tells_its_end_and_takes_more_time(built: Built, page: Page) -> None:
    page.clock.install(time=1_800_000_000_000)
    language, _ = begin(built, page, "site-en")
    clock = page.locator(".ts-mock-clock")
    minutes = mock_data(built.content, language)["schemes"][0]["minutes"]
    expect(clock).to_have_text(say(built, language, "page.mock.left", count=minutes))
    page.clock.run_for(120_000)
    expect(clock).to_have_text(say(built, language, "page.mock.left", count=minutes - 2))
    page.clock.run_for((minutes - 7) * 60_000)
    expect(page.locator(".ts-mock-warn").last).to_have_text(say(built, language, "page.mock.five_left"))
    page.clock.run_for(5 * 60_000 + 2000)
    expect(clock).to_have_text(say(built, language, "page.mock.time_up"))
    expect(page.locator(".ts-mock-warn").last).to_have_text(say(built, language, "page.mock.time_up_text"))
    fields = ".ts-mock-question:not([hidden]) :is(input, select, button)"
    assert page.evaluate("s => [...document.querySelectorAll(s)].every(one => one.matches(':disabled'))", fields)
    press(built, page, language, "page.mock.more", count=10)
    expect(clock).to_have_text(say(built, language, "page.mock.left", count=10))
    assert page.evaluate("s => [...document.querySelectorAll(s)].some(one => !one.matches(':disabled'))", fields)
    page.clock.run_for(61_000)
    expect(clock).to_have_text(say(built, language, "page.mock.left", count=9))
    press(built, page, language, "page.mock.finish")
    press(built, page, language, "page.mock.finish_sure")
    used = say(built, language, "page.mock.time_used", used=minutes + 1, more=10)
    expect(page.locator(".ts-mock")).to_contain_text(used)


def test_a_critical_slip_is_named_though_the_points_are_enough(built: Built, page: Page) -> None:
    language, count = begin(built, page, "site-en")
    parts = mock_data(built.content, language)["schemes"][0]["parts"]
    critical = next(part for part in parts if part["critical"])
    for number in range(count):
        state_of = "JSON.parse(Tankschool.progress.noted('mock')).questions"
        if page.evaluate(state_of)[number] not in [key for draw in critical["draws"] for key in draw["questions"]]:
            page.evaluate(RIGHT)
        if number + 1 < count:
            press(built, page, language, "page.mock.next")
    press(built, page, language, "page.mock.finish")
    press(built, page, language, "page.mock.finish_sure")
    words = built.content.words[language]
    right = count - critical["count"]
    expect(page.locator(".ts-mock-points")).to_have_text(
        say(built, language, "page.mock.points", right=right, count=count)
    )
    expect(page.locator(".ts-mock-ready")).to_have_text(words.say_one_of("page.mock.ready", "critical"))
    link = page.locator(".ts-mock ul a")
    expect(link).to_have_count(1)
    expect(link).to_have_text(critical["name"])
    link.click()
    assert page.url.endswith("/frame.html")


def test_a_number_that_cannot_be_read_is_asked_back_once_and_is_no_verdict(built: Built, page: Page) -> None:
    language, count = begin(built, page, "site-en")
    for _ in range(count):
        field = page.locator(".ts-mock-question:visible input[type=text]")
        if field.count() == 1:
            break
        press(built, page, language, "page.mock.next")
    heading = page.locator(".ts-mock-question:visible h3").inner_text()
    field.fill("twelve or so")
    press(built, page, language, "page.mock.next")
    assert page.locator(".ts-mock-question:visible h3").inner_text() == heading
    asked = page.locator(".ts-mock-question:visible .ts-mock-warn").inner_text()
    assert asked.startswith(built.content.words[language].say_one_of("exercise.verdict", "ask_back"))
    press(built, page, language, "page.mock.next")
    assert page.locator(".ts-mock-question:visible h3").inner_text() != heading


def test_print_shows_every_question_with_room_and_no_buttons(built: Built, page: Page) -> None:
    _, count = begin(built, page, "site-en")
    page.emulate_media(media="print")
    assert page.locator(".ts-mock-question:visible").count() == count
    assert page.locator("button:visible").count() == 0
    lines = page.evaluate("""[...document.querySelectorAll(".ts-mock-question input[type=text]")].map(one =>
      { const s = getComputedStyle(one); return [s.borderTopWidth, s.borderBottomWidth]; })""")
    assert lines
    assert all(line == ["0px", "2px"] for line in lines)
    assert len(page.pdf()) > 10_000


def test_where_nothing_can_be_kept_the_test_still_runs_and_says_so(built: Built, page: Page) -> None:
    page.add_init_script(
        'Object.defineProperty(window, "localStorage", {get() { throw new DOMException("no", "SecurityError"); }});'
    )
    language, _ = begin(built, page, "site-en")
    page.evaluate(RIGHT)
    press(built, page, language, "page.mock.next")
    expect(page.locator(".ts-mock .ts-saved")).to_have_text(say(built, language, "page.progress.refused"))
    assert page.locator(".ts-mock .ts-answered").count() == 1
