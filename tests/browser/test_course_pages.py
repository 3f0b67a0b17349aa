"""The course in a browser, opened from files: as a learner meets it."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, BrowserType, Locator, Page, expect

from generator.curriculum.models import ChoiceQuestion, MatchQuestion, NumberQuestion, OrderQuestion
from generator.exercises import make_item, make_scenario
from generator.exercises.items import NumberItem
from generator.formula import show_full
from generator.site.cards import PAGE_SEED
from tests.site.course_stick import Built, built_once

pytestmark = pytest.mark.browser

WIDTHS = (360, 1280)
LANGUAGES = ("en", "hi")
STORAGE_REFUSED = """Object.defineProperty(window, "localStorage", {get: function () {
  throw new DOMException("The request is denied.", "SecurityError"); }});"""


@pytest.fixture(scope="module")
def built() -> Built:
    return built_once()


def address(built: Built, path: str) -> str:
    name, _, anchor = path.partition("#")
    return (built.folder / name).as_uri() + (f"#{anchor}" if anchor else "")


class Watched:
    """A page that remembers what went wrong and what it asked for outside."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.wrong: list[str] = []
        page.on("console", lambda message: self.wrong.append(f"{page.url}: {message.type}: {message.text}"))
        page.on("pageerror", lambda error: self.wrong.append(f"{page.url}: {error}"))
        page.on("request", lambda request: self._asked(request.url))

    def _asked(self, url: str) -> None:
        if not url.startswith(("file:", "data:", "blob:")):
            self.wrong.append(f"{self.page.url}: asked for {url}")


@pytest.fixture
def watched(browser: Browser) -> Iterator[Watched]:
    context = browser.new_context()
    found = Watched(context.new_page())
    yield found
    context.close()
    assert found.wrong == []


def card(page: Page, question_id: str) -> Locator:
    return page.locator(f'[data-question="{question_id}"]')


def first(built: Built, kind: type[Any]) -> Any:
    return next(one for one in built.content.questions_of("frame") if isinstance(one, kind))


def word(built: Built, language: str, key: str, **values: object) -> str:
    return built.content.words[language].say(key, **values)  # the key comes from the test


# ------------------------------------------------------------------------------------------- every page


def test_no_page_asks_for_anything_outside_or_says_a_word_in_the_console(built: Built, watched: Watched) -> None:
    for width in WIDTHS:
        watched.page.set_viewport_size({"width": width, "height": 800})
        for path in sorted(built.files):
            if path.endswith(".html"):
                watched.page.goto(address(built, path))
                watched.page.wait_for_timeout(100)
                wide = watched.page.evaluate("document.documentElement.scrollWidth")
                assert wide <= width, f"{path} is {wide} wide at {width}"


@pytest.mark.parametrize("width", WIDTHS)
def test_the_first_page_of_a_stick_has_no_known_barrier(built: Built, watched: Watched, width: int) -> None:
    """Every other page is held to the same in `test_measures`."""
    watched.page.set_viewport_size({"width": width, "height": 900})
    watched.page.goto(address(built, "START-HERE.html"))
    found = Axe().run(watched.page, options={"preload": False})  # it would ask for the style sheets a second time
    assert [one["id"] for one in found.response["violations"]] == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_without_scripts_the_course_can_be_read_with_its_answers(built: Built, browser: Browser, language: str) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    question = first(built, NumberQuestion)
    item = make_item(question, PAGE_SEED, built.content.words[language])
    assert isinstance(item, NumberItem)
    page.goto(address(built, f"site/{language}/frame.html"))
    expect(card(page, question.id)).to_contain_text(item.text)
    answers = page.locator("article .ts-answers")
    answers.locator("summary").click()
    shown = built.content.words[language].with_unit(item.shown_key, item.unit)
    expect(answers.locator("dd").first).to_contain_text(shown)
    assert page.locator('[id="module-answers"]').count() == 1
    page.goto(address(built, f"phone/tankschool-{language}.html"))
    assert built.content.words[language].say("page.one_file_script_off") in page.locator("main").inner_text()
    context.close()


# ---------------------------------------------------------------------------------------------- search

QUERIES = {
    "en": {"word": "angle", "prefix": "ang", "slip": "angel", "stop": "which", "nonsense": "xqzvw"},
    "hi": {"word": "ढाँचा", "prefix": "ढाँ", "slip": "एंगव", "stop": "अपनी", "nonsense": "क्षक्षक्ष"},
}


def site_hits(page: Page, query: str) -> list[str]:
    field, told = page.locator(".md-search__input"), page.locator(".md-search-result__meta")
    links = page.locator(".md-search-result__link")
    field.click()
    field.fill("")
    page.keyboard.press("Shift")
    expect(links).to_have_count(0)
    page.wait_for_timeout(300)
    waiting = told.inner_text()
    page.keyboard.type(query)
    page.keyboard.press("Shift")
    expect(told).not_to_have_text(waiting)
    for _ in range(40):  # what is found while typing is found anew; and the list grows as it is scrolled
        before = (told.inner_text(), links.count())
        page.locator(".md-search__scrollwrap").evaluate("list => { list.scrollTop = list.scrollHeight; }")
        page.wait_for_timeout(400)
        if (told.inner_text(), links.count()) == before:
            break
    return [str(link.get_attribute("href")).rpartition("/")[2].partition("?")[0] for link in links.all()]


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_sites_search_finds_words_starts_and_slips(built: Built, watched: Watched, language: str) -> None:
    watched.page.goto(address(built, f"site/{language}/index.html"))
    queries = QUERIES[language]
    for kind in ("word", "prefix", "slip"):
        assert "frame.html" in " ".join(site_hits(watched.page, queries[kind])), kind
    for kind in ("stop", "nonsense"):
        assert site_hits(watched.page, queries[kind]) == [], kind


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_one_files_search_finds_what_the_sites_finds(built: Built, browser: Browser, language: str) -> None:
    context = browser.new_context()
    site, single = context.new_page(), context.new_page()
    site.goto(address(built, f"site/{language}/index.html"))
    single.goto(address(built, f"phone/tankschool-{language}.html"))
    for query in (*QUERIES[language].values(), "the", "wall hoop", "है"):
        wanted = {hit.replace(".html", "").replace("#", ".") for hit in site_hits(site, query)}
        wanted = {name.removesuffix(".index") if name == "index.index" else name for name in wanted}
        found = set(single.evaluate("query => Tankschool.search(query).map(one => one.id)", query))
        # The questions of the mock test and of the practice stand in their modules: the one file does not carry them
        # twice. One page may be missing: the site's search cuts a page into other pieces, and takes stop words a
        # little differently.
        pages = {name.partition(".")[0] for name in wanted} - {"mock-test", "practice"}
        here = {name.partition(".")[0] for name in found} - {"mock-test", "practice"}
        assert len(pages - here) <= 1, query
        assert bool(pages) == bool(here), query
    context.close()


def test_a_hit_in_the_one_file_opens_its_part(built: Built, watched: Watched) -> None:
    page = watched.page
    page.goto(address(built, "phone/tankschool-en.html"))
    page.get_by_label(word(built, "en", "page.one_file_search")).fill("angles xqzvw")
    page.locator("#found a").first.click()
    expect(page.locator("#found a")).to_have_count(0)
    assert page.url.partition("#")[2]


# ------------------------------------------------------------------------------------- the exercise card


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("language", LANGUAGES)
def test_a_number_card_from_the_first_slip_to_new_numbers(
    built: Built, watched: Watched, language: str, width: int
) -> None:
    page, words = watched.page, built.content.words[language]
    question = next(
        one
        for one in built.content.questions_of("frame")
        if isinstance(one, NumberQuestion) and one.hint and one.misconceptions
    )
    item = make_item(question, PAGE_SEED, words)
    assert isinstance(item, NumberItem)
    page.set_viewport_size({"width": width, "height": 800})
    page.goto(address(built, f"site/{language}/frame.html"))
    box = card(page, question.id)
    expect(box).to_contain_text(item.text)
    field, said = box.locator("input[type=text]"), box.locator(".ts-feedback")
    main = box.get_by_role("button", name=words.say("page.card.check"))

    main.click()
    expect(said).to_contain_text(words.say("page.card.answer_first"))
    mistake, value = next(iter(item.wrong.items()))
    field.fill(show_full(round(value, 6)))
    field.press("Enter")
    expect(said).to_contain_text(words.say("exercise.verdict.not_yet"))
    expect(said).to_contain_text(words.say(f"misconception.{mistake}.mistake"))
    expect(said).to_contain_text(words.say(f"misconception.{mistake}.hill"))
    expect(box.locator(".ts-saved")).to_contain_text(words.say("page.progress.kept"))

    box.get_by_role("button", name=words.say("page.card.hint"), exact=True).click()
    assert question.hint is not None
    expect(box).to_contain_text(question.hint[language])
    box.get_by_role("button", name=words.say("page.card.formula"), exact=True).click()
    expect(box.locator(".ts-formula math").first).to_be_visible()

    field.fill(item.shown_key)
    main.click()
    expect(said).to_contain_text(words.say("exercise.verdict.right"))
    expect(box.locator(".ts-saved")).to_contain_text(words.say("page.card.right_times", count=1))
    box.get_by_role("button", name=words.say("page.card.worked"), exact=True).click()
    shown = words.with_unit(item.shown_key, item.unit)
    expect(box.locator(".ts-steps li").last).to_contain_text(shown)

    box.get_by_role("button", name=words.say("page.card.new_numbers")).click()
    following = make_item(question, f"{PAGE_SEED}-1", words)
    expect(box).to_contain_text(following.text)
    assert following.text != item.text
    page.reload()
    expect(box).to_contain_text(following.text)


@pytest.mark.parametrize("language", LANGUAGES)
def test_choice_order_and_match_are_answered_with_the_keyboard_alone(
    built: Built, watched: Watched, language: str
) -> None:
    page, words = watched.page, built.content.words[language]
    page.goto(address(built, f"site/{language}/frame.html"))
    right = words.say("exercise.verdict.right")

    choice = next(
        one for one in built.content.questions_of("frame") if isinstance(one, ChoiceQuestion) and not one.several
    )
    box = card(page, choice.id)
    wanted = next(i for i, option in enumerate(choice.options) if option.right)
    wrong = next(i for i, option in enumerate(choice.options) if not option.right and option.why)
    box.locator(f'input[value="{wrong}"]').focus()
    page.keyboard.press("Space")
    box.get_by_role("button", name=words.say("page.card.check")).press("Enter")
    why = choice.options[wrong].why
    assert why is not None
    expect(box.locator(".ts-feedback")).to_contain_text(why[language])
    box.locator(f'input[value="{wrong}"]').focus()
    for _ in choice.options:
        if box.locator(f'input[value="{wanted}"]').is_checked():
            break
        page.keyboard.press("ArrowDown")
    box.get_by_role("button", name=words.say("page.card.check")).press("Enter")
    expect(box.locator(".ts-verdict")).to_have_text(right)

    order = first(built, OrderQuestion)
    box = card(page, order.id)
    for place, step in enumerate(order.steps):
        for _ in order.steps:
            texts = box.locator(".ts-step").all_inner_texts()
            if texts.index(step[language]) == place:
                break
            up = box.get_by_role("button", name=words.say("page.card.move_up", step=step[language]), exact=True)
            up.focus()
            page.keyboard.press("Enter")
            assert page.evaluate("document.activeElement.closest('li') !== null"), "the moved step keeps the focus"
    box.get_by_role("button", name=words.say("page.card.check")).press("Enter")
    expect(box.locator(".ts-verdict")).to_have_text(right)

    match = first(built, MatchQuestion)
    box = card(page, match.id)
    for pair in match.pairs:
        box.get_by_label(pair.left[language], exact=True).select_option(label=pair.right[language])
    box.get_by_role("button", name=words.say("page.card.check")).press("Enter")
    expect(box.locator(".ts-verdict")).to_have_text(right)


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_slip_in_a_scenario_is_not_counted_again(built: Built, watched: Watched, language: str) -> None:
    page, words = watched.page, built.content.words[language]
    scenario = built.content.scenarios["hill-school-frame"]
    item = make_scenario(scenario, built.content.values(scenario.place), words)
    page.goto(address(built, f"site/{language}/frame.html"))
    box = page.locator(f'[data-scenario="{scenario.id}"]')
    fields = box.locator("input[type=text]")
    own = dict(item.givens)
    first_part = item.parts[0]
    slip = first_part.key * 1.1 if first_part.places else first_part.key + 2
    answers = [round(slip, first_part.places + 2)]
    own[first_part.asks] = answers[0]
    from generator.calculations import BOOK

    for part in item.parts[1:]:
        answers.append(BOOK.work_out(own, [part.asks], check=False)[part.asks])
        own[part.asks] = answers[-1]
    for place, value in enumerate(answers):
        fields.nth(place).fill(show_full(round(value, 6)))
    box.get_by_role("button", name=words.say("page.card.check_all")).click()
    verdicts = box.locator(".ts-verdict").all_inner_texts()
    assert verdicts[0] == words.say("exercise.verdict.not_yet")
    assert words.say("exercise.verdict.right_from_earlier") in verdicts
    assert verdicts.count(words.say("exercise.verdict.not_yet")) == 1
    assert len(verdicts) == len(item.parts)


# -------------------------------------------------------------------------------------------- progress


def answer_right(built: Built, page: Page, language: str = "en") -> tuple[Locator, NumberQuestion]:
    question = first(built, NumberQuestion)
    item = make_item(question, PAGE_SEED, built.content.words[language])
    assert isinstance(item, NumberItem)
    box = card(page, question.id)
    box.locator("input[type=text]").fill(item.shown_key)
    box.get_by_role("button", name=word(built, language, "page.card.check")).click()
    return box, question


def test_progress_is_there_after_the_browser_was_closed(
    built: Built, browser_type: BrowserType, browser_type_launch_args: dict[str, Any], tmp_path: Path
) -> None:
    for run in (1, 2):
        context = browser_type.launch_persistent_context(str(tmp_path / "person"), **browser_type_launch_args)
        page = context.new_page()
        page.goto(address(built, "site/en/frame.html"))
        if run == 1:
            answer_right(built, page)
            page.wait_for_timeout(6000)  # a browser writes to the disk some seconds later
        box = card(page, first(built, NumberQuestion).id)
        expect(box.locator(".ts-saved")).to_contain_text(word(built, "en", "page.card.right_times", count=1))
        page.goto(address(built, "site/en/index.html"))
        count = len(built.content.questions_of("frame"))
        expect(page.locator('.ts-module-progress[data-questions^="frame-across"]')).to_have_text(
            word(built, "en", "page.progress.of_module", right=1, count=count)
        )
        context.close()


@pytest.mark.parametrize("path", ["site/en/frame.html", "phone/tankschool-en.html#frame"])
def test_where_storage_is_refused_the_card_works_and_says_so(built: Built, watched: Watched, path: str) -> None:
    watched.page.add_init_script(STORAGE_REFUSED)
    watched.page.goto(address(built, path))
    box, _ = answer_right(built, watched.page)
    expect(box.locator(".ts-saved")).to_contain_text(word(built, "en", "page.progress.refused"))
    expect(box.locator(".ts-saved")).to_contain_text(word(built, "en", "page.card.right_times", count=1))


def test_where_storage_is_full_the_card_says_so(built: Built, watched: Watched) -> None:
    watched.page.goto(address(built, "site/en/frame.html"))
    watched.page.evaluate("""() => { Storage.prototype.setItem = function () {
      throw new DOMException("full", "QuotaExceededError"); }; }""")
    box, _ = answer_right(built, watched.page)
    expect(box.locator(".ts-saved")).to_contain_text(word(built, "en", "page.progress.full"))


def test_two_learners_on_one_computer_are_kept_apart(built: Built, watched: Watched) -> None:
    page = watched.page
    page.goto(address(built, "site/en/index.html"))
    name = '<img src=x onerror="window.bad = 1">'
    page.get_by_label(word(built, "en", "page.progress.new_name")).fill(name)
    page.get_by_role("button", name=word(built, "en", "page.progress.add")).click()
    page.goto(address(built, "site/en/frame.html"))
    expect(page.locator(".ts-learner")).to_contain_text(name)
    answer_right(built, page)
    assert page.evaluate("window.bad") is None
    keys = page.evaluate("Object.keys(localStorage)")
    assert f"tankschool.v1.p1.q.{first(built, NumberQuestion).id}" in keys
    assert all(key.startswith("tankschool.v1.") for key in keys if "tankschool" in key)
    page.goto(address(built, "site/en/index.html"))
    page.get_by_label(word(built, "en", "page.progress.who"), exact=True).select_option("p0")
    count = len(built.content.questions_of("frame"))
    progress = page.locator('.ts-module-progress[data-questions^="frame-across"]')
    expect(progress).to_have_text(word(built, "en", "page.progress.of_module", right=0, count=count))
    page.get_by_label(word(built, "en", "page.progress.who"), exact=True).select_option("p1")
    expect(progress).to_have_text(word(built, "en", "page.progress.of_module", right=1, count=count))
    page.get_by_role("button", name=word(built, "en", "page.progress.clear")).click()
    page.get_by_role("button", name=word(built, "en", "page.progress.clear_sure")).click()
    expect(progress).to_have_text(word(built, "en", "page.progress.of_module", right=0, count=count))
    assert not [key for key in page.evaluate("Object.keys(localStorage)") if ".p1." in key]


def test_a_progress_file_carries_a_learner_to_another_computer(
    built: Built, watched: Watched, browser: Browser, tmp_path: Path
) -> None:
    page = watched.page
    page.goto(address(built, "site/en/frame.html"))
    _, question = answer_right(built, page)
    page.goto(address(built, "site/en/index.html"))
    with page.expect_download() as download:
        page.get_by_role("button", name=word(built, "en", "page.progress.save_file")).click()
    file = tmp_path / download.value.suggested_filename
    download.value.save_as(file)
    saved = json.loads(file.read_text(encoding="utf-8"))
    assert saved["format"] == 1
    assert saved["questions"][question.id] == {"tried": 1, "right": 1, "drawn": 0}

    context = browser.new_context()
    other = context.new_page()
    other.goto(address(built, "phone/tankschool-en.html"))
    other.locator("#ts-file-0").set_input_files(file)
    expect(other.locator(".ts-learner[data-full] [role=status]")).to_have_text(
        word(built, "en", "page.progress.file_read", count=1)
    )
    assert other.evaluate("id => Tankschool.progress.get(id).right", question.id) == 1
    context.close()


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("no json", "foreign"),
        ('{"kind": "another", "format": 1}', "foreign"),
        ('{"kind": "tankschool-progress", "format": 2, "learner": "", "questions": {}}', "newer"),
        ('{"kind": "tankschool-progress", "format": 1, "learner": "", "questions": {"<b>": {}}}', "damaged"),
        ('{"kind": "tankschool-progress", "format": 1, "questions": {}}', "damaged"),
        ("x" * 2_000_001, "size"),
    ],
)
def test_a_file_that_is_no_good_progress_file_changes_nothing(
    built: Built, watched: Watched, tmp_path: Path, text: str, said: str
) -> None:
    page = watched.page
    page.goto(address(built, "site/en/index.html"))
    before = page.evaluate("JSON.stringify(localStorage)")
    file = tmp_path / "progress.json"
    file.write_text(text, encoding="utf-8")
    page.locator("#ts-file-0").set_input_files(file)
    expect(page.locator(".ts-learner [role=status]")).to_have_text(word(built, "en", f"page.progress.wrong.{said}"))
    assert page.evaluate("JSON.stringify(localStorage)") == before


# ---------------------------------------------------------------------------------------- the one file


def test_an_unknown_address_in_the_one_file_shows_the_home_page(built: Built, watched: Watched) -> None:
    watched.page.goto(address(built, "phone/tankschool-en.html#nowhere"))
    expect(watched.page.locator("main > article:visible")).to_have_count(1)
    expect(watched.page.locator("main > article:visible")).to_have_id("index")
    watched.page.goto("about:blank")
    watched.page.goto(address(built, "phone/tankschool-en.html") + "#%E0%A4%A")
    expect(watched.page.locator("main > article:visible")).to_have_id("index")


def test_the_one_file_walks_by_its_links(built: Built, watched: Watched) -> None:
    page = watched.page
    page.goto(address(built, "phone/tankschool-hi.html"))
    page.locator('a.ts-go[href="#frame"]:visible').first.click()
    expect(page.locator("main > article:visible")).to_have_id("frame")
    expect(page.locator(".contents [aria-current]")).to_have_attribute("href", "#frame")
    page.go_back()
    expect(page.locator("main > article:visible")).to_have_id("index")
