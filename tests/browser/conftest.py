"""Chromium as the machine has it, and one page that is kept: a fresh one for each test takes three times as long."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page

from generator.commands.test import BROWSERS

HERE = ("file:", "data:", "blob:")
"""What a page on a stick may ask for."""


class Watched:
    """A page with all that went wrong on it: errors in its console, errors thrown, anything asked for outside."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.wrong: list[str] = []
        page.on("console", lambda said: self.note(f"{said.type}: {said.text}") if said.type == "error" else None)
        page.on("pageerror", lambda error: self.note(str(error)))
        page.on("request", lambda asked: None if asked.url.startswith(HERE) else self.note(f"asked for {asked.url}"))

    def note(self, what: str) -> None:
        """Remember what went wrong, with the page's address."""
        self.wrong.append(f"{self.page.url}: {what}")


@pytest.fixture(scope="session")
def browser_type_launch_args(browser_type_launch_args: dict[str, Any]) -> dict[str, Any]:
    """The browser that `TANKSCHOOL_BROWSER` names, or the first one that is installed; else what Playwright brought."""
    found = os.environ.get("TANKSCHOOL_BROWSER") or next(filter(None, map(shutil.which, BROWSERS)), None)
    place = {"executable_path": found} if found else {}
    flags = ["--no-sandbox", "--disable-gpu", "--disable-background-networking"]
    return {**browser_type_launch_args, **place, "args": flags}


@pytest.fixture(scope="session")
def kept_context(browser: Browser) -> Iterator[BrowserContext]:
    """One context for all tests that leave nothing behind in a page."""
    context = browser.new_context()
    yield context
    context.close()


@pytest.fixture(scope="module")
def _kept(kept_context: BrowserContext) -> Iterator[Watched]:
    watched = Watched(kept_context.new_page())
    yield watched
    watched.page.close()


@pytest.fixture
def kept_page(_kept: Watched) -> Iterator[Page]:
    """The page that a module's tests share; a test fails if anything went wrong on it meanwhile."""
    _kept.wrong.clear()
    yield _kept.page
    assert _kept.wrong == []
