"""Measures of every page: no known barrier at any width, all by keyboard, silence, print, and no script needed."""

from __future__ import annotations

import html
import re
from collections.abc import Iterator

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Locator, Page, expect

from generator.site.one_file import opened
from tests.browser.stick_page import LANGUAGES, address, card, say, strict_page
from tests.site.course_stick import Built, built_once

pytestmark = [pytest.mark.browser, pytest.mark.long]

WIDTHS = (360, 1280)
LEAST_AXE = (4, 11)
OPEN_ALL = """() => {
  document.querySelectorAll(".ts-card input[type=text]").forEach(field => { field.value = "17"; });
  document.querySelectorAll(".ts-card .ts-main").forEach(button => button.click());
  document.querySelectorAll("button[aria-expanded=false]").forEach(button => { if (!button.hidden) button.click(); });
  document.querySelectorAll("details").forEach(one => { one.open = true; });
  window.dispatchEvent(new Event("resize")); }"""
"""Shows all that a page can show: marks, hints, formulas, solutions, answers."""


@pytest.fixture(scope="module")
def built() -> Built:
    return built_once()


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    with strict_page(browser) as found:
        yield found


def barriers(page: Page) -> list[str]:
    """What the checker finds, by the name of its rule, on the page as it is."""
    found = Axe().run(page, options={"preload": False}).response
    version = tuple(int(number) for number in found["testEngine"]["version"].split(".")[:2])
    assert version >= LEAST_AXE, f"axe {found['testEngine']['version']} is too old"
    assert found["passes"], "the checker looked at nothing"
    return [f"{one['id']}: {[node['html'][:160] for node in one['nodes']]}" for one in found["violations"]]


def templates(built: Built, language: str) -> list[str]:
    """Pages of every kind; of the modules only the first, since all are made alike."""
    names = [path.removesuffix(".html") for path in built.parts[language].site if path.endswith(".html")]
    others = tuple(built.content.modules)[1:]
    return sorted(name for name in names if not name.startswith(others) or not others)


# --------------------------------------------------------------------------------------------- barriers


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("language", LANGUAGES)
def test_no_page_of_the_site_has_a_known_barrier(built: Built, page: Page, language: str, width: int) -> None:
    page.set_viewport_size({"width": width, "height": 900})
    report = {}
    for path in templates(built, language):
        page.goto(address(built, f"site/{language}/{path}.html"))
        page.wait_for_timeout(100)
        page.evaluate(OPEN_ALL)
        report[path] = barriers(page)
    assert {path: found for path, found in report.items() if found} == {}
    assert len(report) >= 6


@pytest.mark.parametrize(("language", "width"), [("en", 360), ("hi", 1280)])
def test_no_part_of_the_one_file_has_a_known_barrier(built: Built, page: Page, language: str, width: int) -> None:
    page.set_viewport_size({"width": width, "height": 900})
    page.goto(address(built, f"phone/tankschool-{language}.html"))
    report = {}
    for name in templates(built, language):
        page.evaluate("name => { location.hash = name; }", name)
        page.wait_for_timeout(100)
        page.evaluate(OPEN_ALL)
        report[name] = barriers(page)
    assert {name: found for name, found in report.items() if found} == {}


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("language", LANGUAGES)
def test_the_states_of_a_mock_test_have_no_known_barrier(built: Built, page: Page, language: str, width: int) -> None:
    page.set_viewport_size({"width": width, "height": 900})
    page.goto(address(built, f"site/{language}/mock-test.html"))
    page.locator(".ts-mock .ts-main").first.click()
    assert barriers(page) == []
    for _ in range(2):
        page.get_by_role("button", name=say(built, language, "page.mock.next"), exact=True).click()
    page.get_by_role("button", name=say(built, language, "page.mock.finish"), exact=True).click()
    assert barriers(page) == []
    page.get_by_role("button", name=say(built, language, "page.mock.finish_sure"), exact=True).click()
    assert barriers(page) == []


@pytest.mark.parametrize("path", ["site/en/frame.html", "phone/tankschool-hi.html#frame"])
def test_large_letters_and_strong_contrast_have_no_known_barrier(built: Built, page: Page, path: str) -> None:
    page.set_viewport_size({"width": 360, "height": 900})
    page.goto(address(built, path))
    page.evaluate("""localStorage.setItem("tankschool.v1.look", '{"size": "largest", "contrast": "strong"}')""")
    page.goto("about:blank")
    page.goto(address(built, path))
    page.evaluate(OPEN_ALL)
    assert barriers(page) == []


# ------------------------------------------------------------------------------------ text size, contrast


def body_size(page: Page) -> float:
    size: float = page.evaluate("parseFloat(getComputedStyle(document.querySelector('article p')).fontSize)")
    return size


@pytest.mark.parametrize(("language", "path"), [("en", "site/en/index.html"), ("hi", "phone/tankschool-hi.html")])
def test_text_size_and_contrast_are_chosen_by_keyboard_and_remembered(
    built: Built, page: Page, language: str, path: str
) -> None:
    page.goto(address(built, path))
    before = body_size(page)
    toggle = page.get_by_role("button", name=say(built, language, "page.looks.title"))
    toggle.focus()
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    page.keyboard.press("ArrowDown")
    large = body_size(page)
    page.keyboard.press("ArrowDown")
    largest = body_size(page)
    assert before * 1.15 < large < largest
    assert largest > before * 1.4
    page.keyboard.press("Tab")
    page.keyboard.press("ArrowDown")
    ink = "getComputedStyle(document.documentElement).getPropertyValue('--ts-ink').trim()"
    assert page.evaluate(ink) == "#000"
    page.goto("about:blank")
    page.goto(address(built, path.replace("index", "frame")))
    assert body_size(page) == largest
    assert page.evaluate(ink) == "#000"


def test_a_device_that_asks_for_contrast_or_stillness_gets_it_without_a_script(built: Built, browser: Browser) -> None:
    with strict_page(browser, java_script_enabled=True, contrast="more", reduced_motion="reduce") as page:
        for path in ("site/en/frame.html", "phone/tankschool-en.html#frame"):
            page.goto(address(built, path))
            ink = page.evaluate("getComputedStyle(document.documentElement).getPropertyValue('--ts-ink').trim()")
            assert ink == "#000"
            moving = page.evaluate("""[...document.querySelectorAll("*")].filter(one => {
              const s = getComputedStyle(one);
              return s.animationName !== "none" || s.transitionDuration.split(",").some(t => parseFloat(t) > 0);
            }).length""")
            assert moving == 0
            page.evaluate("""localStorage.setItem("tankschool.v1.look", '{"contrast": "ordinary"}')""")
            page.reload()
            ink = page.evaluate("getComputedStyle(document.documentElement).getPropertyValue('--ts-ink').trim()")
            assert ink != "#000"
            page.evaluate("localStorage.clear()")


# ----------------------------------------------------------------------------------------------- keyboard

FOCUSED = """() => { const e = document.activeElement, s = getComputedStyle(e);
  return {tag: e.tagName, name: e.name || "", type: e.type || "", text: e.textContent.slice(0, 40),
    outline: s.outlineStyle !== "none" && parseFloat(s.outlineWidth) >= 2,
    inside: e.closest(".walked") !== null, number: [...document.querySelectorAll(".walked *")].indexOf(e)}; }"""
CONTROLS = """() => { const box = document.querySelector(".walked"), seen = new Set();
  return [...box.querySelectorAll("input,select,button,textarea,[tabindex='0']")]
    .filter(e => e.checkVisibility() && !e.disabled)
    .filter(e => { if (e.type !== "radio") return true;
      const first = !seen.has(e.name); seen.add(e.name); return first; })
    .map(e => e.type === "radio" ? "radio:" + e.name :
      [...document.querySelectorAll(".walked *")].indexOf(e)); }"""


def tab_through(page: Page) -> list[object]:
    """Every stop that Tab makes inside the marked card, each with a focus that can be seen."""
    stops: list[object] = []
    page.evaluate("""() => { const box = document.querySelector(".walked"), before = document.createElement("button");
      before.id = "before"; box.parentNode.insertBefore(before, box); before.focus(); }""")
    for _ in range(60):
        page.keyboard.press("Tab")
        here = page.evaluate(FOCUSED)
        if not here["inside"]:
            break
        assert here["outline"], f"nothing shows that the focus is on {here}"
        stops.append(f"radio:{here['name']}" if here["type"] == "radio" else here["number"])
    page.evaluate("document.getElementById('before').remove()")
    return stops


def walked(page: Page, box: Locator) -> list[object]:
    page.evaluate("document.querySelectorAll('.walked').forEach(one => one.classList.remove('walked'))")
    box.evaluate("one => one.classList.add('walked')")
    wanted: list[object] = page.evaluate(CONTROLS)
    found = tab_through(page)
    assert found == wanted
    return found


@pytest.mark.parametrize("path", ["site/en/frame.html", "phone/tankschool-hi.html#frame"])
def test_every_kind_of_exercise_is_reached_and_left_by_keyboard_in_its_own_order(
    built: Built, page: Page, path: str
) -> None:
    page.goto(address(built, path))
    kinds = {}
    for question in built.content.questions_of("frame"):
        kinds.setdefault((question.kind, getattr(question, "several", False)), question.id)
    assert {kind for kind, _ in kinds} >= {"number", "choice", "order", "match"}
    for key in kinds.values():
        assert len(walked(page, card(page, key))) >= 3, key
    assert len(walked(page, page.locator("[data-scenario]:visible").first)) >= 3


def test_a_whole_mock_test_is_taken_by_keyboard(built: Built, page: Page) -> None:
    page.goto(address(built, "site/en/mock-test.html"))
    page.locator(".ts-mock .ts-main").first.focus()
    page.keyboard.press("Enter")
    expect(page.locator(".ts-mock-question:visible h3")).to_be_focused()
    for _ in range(60):
        heading = page.locator(".ts-mock-question:visible h3").inner_text()
        page.locator(".ts-mock").evaluate("one => one.classList.add('walked')")
        for _ in range(40):
            page.keyboard.press("Tab")
            here = page.evaluate(FOCUSED)
            assert here["outline"], here
            if here["type"] in ("radio", "checkbox"):
                page.keyboard.press("Space")
            elif here["type"] == "text":
                page.keyboard.type("3.5")
            elif here["text"] in (say(built, "en", "page.mock.next"), say(built, "en", "page.mock.finish")):
                break
        last = here["text"] == say(built, "en", "page.mock.finish")
        page.keyboard.press("Enter")
        if last:
            break
        if page.locator(".ts-mock-question:visible h3").inner_text() == heading:
            page.keyboard.press("Enter")  # an answer that could not be read was asked back
    page.keyboard.press("Enter")
    expect(page.locator(".ts-mock h2")).to_be_focused()
    expect(page.locator(".ts-mock h2")).to_have_text(say(built, "en", "page.mock.result_title"))


# --------------------------------------------------------------------------------------- print, no script


@pytest.mark.parametrize("path", ["site/hi/frame.html", "phone/tankschool-en.html#frame"])
def test_print_hides_what_is_pressed_and_leaves_lines_to_write_on(built: Built, page: Page, path: str) -> None:
    page.goto(address(built, path))
    page.emulate_media(media="print")
    assert page.locator("button:visible").count() == 0
    assert page.locator(".ts-learner:visible, .ts-looks:visible").count() == 0
    lines = page.evaluate("""[...document.querySelectorAll("article:not([hidden]) .ts-card input[type=text]")]
      .filter(one => one.checkVisibility()).map(one => { const s = getComputedStyle(one);
        return [s.borderTopWidth, s.borderBottomWidth, one.offsetWidth > 90]; })""")
    numbers = [one for one in built.content.questions_of("frame") if one.kind == "number"]
    assert len(lines) >= len(numbers)
    assert all(line == ["0px", "2px", True] for line in lines)


@pytest.mark.parametrize("language", LANGUAGES)
def test_without_scripts_every_page_can_be_read_and_says_what_is_missing(
    built: Built, browser: Browser, language: str
) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    for path in (one for one in built.parts[language].site if one.endswith(".html")):
        page.goto(address(built, f"site/{language}/{path}"))
        text = page.locator("article").inner_text()
        assert len(text) > 200, path
        assert not re.search(r"undefined|\[object|NaN", text), path
        assert page.locator("article button:visible").count() == 0, path
    page.goto(address(built, f"site/{language}/mock-test.html"))
    assert html.escape(say(built, language, "page.mock.script_off"), quote=False) in page.content()
    page.goto(address(built, f"phone/tankschool-{language}.html"))
    assert say(built, language, "page.one_file_script_off") in page.locator("main").inner_text()
    context.close()


# ------------------------------------------------------------------------------------------------- search


@pytest.mark.parametrize("language", LANGUAGES)
def test_both_searches_find_every_page_by_its_title(built: Built, browser: Browser, language: str) -> None:
    with strict_page(browser) as single, strict_page(browser) as site:
        single.goto(address(built, f"phone/tankschool-{language}.html"))
        site.goto(address(built, f"site/{language}/index.html"))
        titles = re.findall(r'<article id="([^"]+)"[^>]*>\s*<h1[^>]*>([^<]+)', opened(built.parts[language].one_file))
        assert len(titles) == single.locator("main > article").count()
        for name, title in titles:
            query = max(reversed(re.findall(r"[^\s\-।:,()]+", title)), key=len)  # the last: "about" is a stop word
            found = set(single.evaluate("query => Tankschool.search(query).map(one => one.id.split('.')[0])", query))
            assert name in found, query
            site.locator(".md-search__input").click()
            site.locator(".md-search__input").fill("")
            site.keyboard.type(query)
            site.keyboard.press("Shift")
            site.wait_for_timeout(700)
            links = site.locator(".md-search-result__link")
            hits = {str(one.get_attribute("href")).rpartition("/")[2].partition(".html")[0] for one in links.all()}
            assert name in hits, query
            # the site's list grows as it is scrolled, so it may show fewer; what it shows is found in the one file, but
            # for one page: the two take words and stop words a little differently
            assert len(hits - found) <= 1, query
