"""Pictures one at a time, voices, the learner's path, words, faults and formulas: as a learner meets them."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, expect

from tests.browser.conftest import Watched
from tests.site.course_stick import Built, built_once

pytestmark = pytest.mark.browser

LANGUAGES = ("en", "hi")
PAGES = ("index", "frame-pictures", "words-in-pictures", "fault-album", "formula-sheet", "what-is-covered")
VOICES = """(voices => { window.saidAloud = [];
  Object.defineProperty(window, "speechSynthesis", {value: {getVoices: () => voices, cancel: () => {},
    addEventListener: () => {}, speak: said => window.saidAloud.push([said.text, said.lang])}});
  window.SpeechSynthesisUtterance = function (text) { this.text = text; };
})(%s);"""
LOCAL = '[{localService: true, lang: "hi-IN"}, {localService: true, lang: "en_GB"}]'
REMOTE = (
    '[{localService: false, lang: "hi-IN"}, {localService: false, lang: "en-GB"}, {localService: true, lang: "fr"}]'
)


@pytest.fixture(scope="module")
def built() -> Built:
    return built_once()


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A fresh page with nothing kept; the test fails if anything went wrong on it."""
    context = browser.new_context(viewport={"width": 360, "height": 740})
    watched = Watched(context.new_page())
    yield watched.page
    context.close()
    assert watched.wrong == []


def address(built: Built, language: str, name: str) -> str:
    """Where a page of the site is; a name may end in an anchor."""
    name, _, anchor = name.partition("#")
    return (built.folder / f"site/{language}/{name}.html").as_uri() + (f"#{anchor}" if anchor else "")


def one_file(built: Built, language: str, anchor: str) -> str:
    """Where a page of the one-file edition is."""
    return (built.folder / f"phone/tankschool-{language}.html").as_uri() + f"#{anchor}"


def shown(page: Page) -> list[int]:
    """The numbers of the cards that can be seen."""
    cards = page.locator('.ts-pics[data-stop="frame-pictures"] > .ts-pic').all()
    return [number for number, card in enumerate(cards, start=1) if card.is_visible()]


def word(built: Built, language: str, key: str, **values: object) -> str:
    """A word of the course."""
    return built.content.words[language].say(key, **values)  # the key comes from the test


@pytest.mark.parametrize("language", LANGUAGES)
def test_one_picture_at_a_time_by_tap_and_by_key(built: Built, page: Page, language: str) -> None:
    count = len(built.content.modules["frame"].cards)
    page.goto(address(built, language, "frame-pictures"))
    back, forth = page.locator(".ts-pic-bar button").all()
    assert shown(page) == [1]
    expect(back).to_have_attribute("aria-disabled", "true")
    forth.click()
    assert shown(page) == [2]
    page.keyboard.press("ArrowRight")
    assert shown(page) == [3]
    page.keyboard.press("ArrowLeft")
    page.keyboard.press("Control+ArrowRight")
    assert shown(page) == [2]
    back.click()
    page.keyboard.press("ArrowLeft")
    assert shown(page) == [1]
    for _ in range(count + 2):
        page.keyboard.press("ArrowRight")
    assert shown(page) == [count]
    expect(forth).to_have_attribute("aria-disabled", "true")
    expect(page.locator(".ts-pic-place")).to_contain_text(
        word(built, language, "page.pictures.place", number=count, all=count)
    )
    expect(page.locator(".ts-pic-place")).to_contain_text(built.content.modules["frame"].cards[-1].text[language])
    for button in (back, forth):
        box = button.bounding_box()
        assert box is not None
        assert box["height"] >= 60
        assert box["width"] >= 60


def test_the_sentence_can_be_seen_with_its_drawing_on_a_phone(built: Built, page: Page) -> None:
    page.goto(address(built, "en", "frame-pictures"))
    for _ in built.content.modules["frame"].cards[1:]:
        page.locator(".ts-pic-bar button").last.click()
        drawing = page.locator(".ts-pic-drawing svg:visible").bounding_box()
        text = page.locator(".ts-pic-text:visible").bounding_box()
        bar = page.locator(".ts-pic-bar").bounding_box()
        assert drawing is not None
        assert text is not None
        assert bar is not None
        assert drawing["y"] >= 40, "the drawing's top is below the page's head"
        assert text["y"] + text["height"] <= bar["y"], "the sentence is above the buttons"


def test_all_pictures_can_be_shown_at_once_and_are_printed(built: Built, page: Page) -> None:
    count = len(built.content.modules["frame"].cards)
    page.goto(address(built, "en", "frame-pictures"))
    page.get_by_role("button", name=word(built, "en", "page.pictures.every")).click()
    assert len(shown(page)) == count
    page.get_by_role("button", name=word(built, "en", "page.pictures.single")).click()
    assert shown(page) == [1]
    page.emulate_media(media="print")
    assert len(shown(page)) == count
    assert not page.locator(".ts-pic-bar").is_visible()


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_voice_on_this_computer_reads_the_sentence(built: Built, page: Page, language: str) -> None:
    page.add_init_script(VOICES % LOCAL)
    page.goto(address(built, language, "frame-pictures"))
    page.get_by_role("button", name=word(built, language, "page.pictures.listen")).click()
    card = built.content.modules["frame"].cards[0]
    spoken = {"en": "en_GB", "hi": "hi-IN"}[language]
    assert page.evaluate("saidAloud") == [[card.text[language], spoken]]


@pytest.mark.parametrize("voices", ["[]", REMOTE])
def test_without_a_voice_of_its_own_a_browser_has_no_button(built: Built, page: Page, voices: str) -> None:
    page.add_init_script(VOICES % voices)
    page.goto(address(built, "hi", "frame-pictures"))
    assert shown(page) == [1]
    expect(page.get_by_role("button", name=word(built, "hi", "page.pictures.listen"))).to_have_count(0)


def test_a_trainers_recording_is_played_before_any_other_voice(built: Built, page: Page, tmp_path: Path) -> None:
    site = shutil.copytree(built.folder / "site", tmp_path / "site") / "en"
    card = built.content.modules["frame"].cards[0].id
    text = (site / "frame-pictures.html").read_text(encoding="utf-8")
    start = text.index("</li>", text.index(f'id="card-{card}"'))
    sound = f'<audio class="ts-pic-sound" controls preload="none" src="sound/frame/{card}.mp3"></audio>'
    (site / "frame-pictures.html").write_text(text[:start] + sound + text[start:], encoding="utf-8")
    page.add_init_script(
        (VOICES % LOCAL)
        + "window.played = []; HTMLMediaElement.prototype.play = function () { played.push(this.src); };"
    )
    page.goto((site / "frame-pictures.html").as_uri())
    page.get_by_role("button", name=word(built, "en", "page.pictures.listen")).click()
    assert [src.rpartition("/sound/")[2] for src in page.evaluate("played")] == [f"frame/{card}.mp3"]
    assert page.evaluate("saidAloud") == []
    page.keyboard.press("ArrowRight")
    page.get_by_role("button", name=word(built, "en", "page.pictures.listen")).click()
    assert len(page.evaluate("saidAloud")) == 1


@pytest.mark.parametrize("whole", [False, True], ids=["site", "one-file"])
def test_home_leads_back_to_where_the_learner_stopped(built: Built, page: Page, whole: bool) -> None:
    def at(name: str) -> str:
        return one_file(built, "en", name) if whole else address(built, "en", name)

    page.goto(at("index"))
    again = page.locator(".ts-continue")
    expect(again).to_be_hidden()
    page.goto(at("frame-pictures"))
    page.keyboard.press("ArrowRight")
    page.keyboard.press("ArrowRight")
    page.goto(at("index"))
    title = word(built, "en", "page.pictures.title", module=built.content.modules["frame"].title["en"])
    expect(again).to_contain_text(title)
    again.locator("a").click()
    page.wait_for_timeout(200)
    assert shown(page) == [3]


def test_home_leads_to_the_exercise_that_waits_where_no_place_is_kept(built: Built, page: Page) -> None:
    first, second = [question.id for question in built.content.questions_of("frame")][:2]
    page.goto(address(built, "en", "index"))
    page.evaluate(
        "([a, b]) => { Tankschool.progress.marked(a, true); Tankschool.progress.marked(b, false); }", [first, second]
    )
    expect(page.locator(".ts-continue a")).to_have_attribute("href", f"frame.html#exercise-{second}")


def test_what_is_right_shows_as_what_the_learner_can_do(built: Built, page: Page) -> None:
    module = built.content.modules["frame"]
    outcome = next(one for one in module.outcomes if one.competency == "lap")
    ids = [one.id for one in built.content.questions_of("frame") if one.competency == "lap"]
    page.goto(address(built, "hi", "index"))
    expect(page.locator(".ts-can-none")).to_be_visible()
    page.evaluate("ids => ids.slice(1).forEach(id => Tankschool.progress.marked(id, true))", ids)
    expect(page.locator(".ts-can-list li:visible")).to_have_count(0)
    page.evaluate("id => Tankschool.progress.marked(id, true)", ids[0])
    expect(page.locator(".ts-can-list li:visible")).to_have_text([outcome.text["hi"]])
    expect(page.locator(".ts-can-none")).to_be_hidden()
    every = [one.id for one in built.content.questions_of("frame")]
    page.evaluate("ids => ids.forEach(id => Tankschool.progress.marked(id, true))", every)
    expect(page.locator("[data-module=frame] .ts-module-state")).to_have_text(word(built, "hi", "page.path.done"))


def test_a_module_that_waits_for_another_says_so(built: Built, page: Page) -> None:
    page.goto(address(built, "en", "index"))
    page.evaluate("""() => {
      const first = document.querySelector("[data-module=frame]"), later = first.cloneNode(true);
      later.setAttribute("data-module", "mesh");
      later.setAttribute("data-needs", "frame");
      later.setAttribute("data-asks", "");
      first.parentNode.appendChild(later);
      Tankschool.path.start(document);
    }""")
    title = built.content.modules["frame"].title["en"]
    expect(page.locator("[data-module=mesh] .ts-module-state")).to_have_text(
        word(built, "en", "page.path.first", titles=title)
    )
    ids = [one.id for one in built.content.questions_of("frame")]
    page.evaluate("ids => ids.forEach(id => Tankschool.progress.marked(id, true))", ids)
    expect(page.locator("[data-module=mesh] .ts-module-state")).to_have_text("")


@pytest.mark.parametrize("scripts", [True, False])
def test_the_album_hides_each_answer_until_it_is_opened_and_prints_it(
    built: Built, browser: Browser, scripts: bool
) -> None:
    context = browser.new_context(java_script_enabled=scripts)
    page = context.new_page()
    page.goto(address(built, "en", "fault-album"))
    album = built.content.fault_album
    assert album is not None
    answer = page.get_by_text(album.faults[1].what["en"])
    expect(answer).to_be_hidden()
    page.locator("details.ts-look summary").nth(1).click()
    expect(answer).to_be_visible()
    page.emulate_media(media="print")
    printed = page.locator("dl.ts-told").first.bounding_box()
    assert printed is not None
    assert printed["height"] > 50
    context.close()


def test_without_scripts_all_cards_can_be_read(built: Built, browser: Browser) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(address(built, "hi", "frame-pictures"))
    assert len(shown(page)) == len(built.content.modules["frame"].cards)
    context.close()


@pytest.mark.parametrize(
    ("language", "width"),
    [("en", 360), ("hi", 1280), *(pytest.param(*way, marks=pytest.mark.long) for way in (("en", 1280), ("hi", 360)))],
)  # each language and each width in every run; all four take twice as long
def test_no_page_has_a_known_barrier_or_is_too_wide(built: Built, page: Page, language: str, width: int) -> None:
    page.set_viewport_size({"width": width, "height": 900})
    places = [address(built, language, name) for name in PAGES]
    places += [one_file(built, language, name) for name in ("frame-pictures", "fault-album")]
    for place in places:
        page.goto("about:blank")
        page.goto(place)
        page.wait_for_timeout(150)
        page.evaluate("document.querySelectorAll('details').forEach(one => { one.open = true; })")
        page.evaluate("window.dispatchEvent(new Event('resize'))")
        assert page.evaluate("document.documentElement.scrollWidth") <= width, place
        found = Axe().run(page, options={"preload": False})  # it would ask for the style sheets a second time
        said = [f"{one['id']}: {[node['html'][:160] for node in one['nodes']]}" for one in found.response["violations"]]
        assert said == [], place
