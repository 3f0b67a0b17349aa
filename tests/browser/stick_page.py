"""A page of the real course's stick, watched strictly: any word in the console and any request outside is a fault."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from playwright.sync_api import Browser, BrowserContext, Locator, Page

from generator.exercises import make_item
from generator.exercises.items import NumberItem
from generator.site.cards import PAGE_SEED
from tests.site.course_stick import Built

LANGUAGES = ("en", "hi")


def address(built: Built, path: str) -> str:
    """Where a file of the stick opens, with the part after `#`."""
    name, _, anchor = path.partition("#")
    return (built.folder / name).as_uri() + (f"#{anchor}" if anchor else "")


def watch(page: Page) -> list[str]:
    """What goes wrong on a page from now on, in a list that grows."""
    wrong: list[str] = []

    def asked(url: str) -> None:
        if not url.startswith(("file:", "data:", "blob:")):
            wrong.append(f"{page.url}: asked for {url}")

    page.on("console", lambda said: wrong.append(f"{page.url}: {said.type}: {said.text}"))
    page.on("pageerror", lambda error: wrong.append(f"{page.url}: {error}"))
    page.on("request", lambda request: asked(request.url))
    return wrong


@contextmanager
def strict_page(browser: Browser, **options: object) -> Iterator[Page]:
    """A fresh page that must stay silent until it is closed."""
    context: BrowserContext = browser.new_context(**options)  # type: ignore[arg-type]
    page = context.new_page()
    wrong = watch(page)
    yield page
    context.close()
    assert wrong == []


def card(page: Page, question_id: str) -> Locator:
    """The card of a question."""
    return page.locator(f'[data-question="{question_id}"]')


def say(built: Built, language: str, key: str, **values: object) -> str:
    """A word as the page says it."""
    return built.content.words[language].say(key, **values)


def number_items(built: Built, language: str) -> list[NumberItem]:
    """The module's number questions as its page shows them first."""
    words = built.content.words[language]
    items = [make_item(one, PAGE_SEED, words) for one in built.content.questions_of("frame")]
    return [item for item in items if isinstance(item, NumberItem)]


def answer_right(built: Built, page: Page, item: NumberItem, language: str = "en") -> None:
    """Answer a number card that shows its first numbers."""
    box = card(page, item.id)
    unit = box.locator("select")
    if unit.count():
        unit.select_option(item.unit)
    box.locator("input[type=text]").last.fill(item.shown_key)
    box.get_by_role("button", name=say(built, language, "page.card.check"), exact=True).click()
