"""A stick with an issuer's keys checks certificates on its page and in its one file; one without says so plainly."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, expect

from generator.commands.main import run
from generator.credentials import in_digits, public_file
from generator.problems import ExitCode
from tests.browser.stick_page import strict_page
from tests.commands.course_copy import course_copy
from tests.credentials.issuer import KEYS, NOW, RING, STRANGER, WORDS, listed, number, text
from tests.site.course_stick import Built, built_once

pytestmark = pytest.mark.browser
LANGUAGES = ("en", "hi")
PLACES = ("site/{}/check-certificate.html", "phone/tankschool-{}.html#check-certificate")


@pytest.fixture(scope="module")
def stick(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("issuer")
    (folder / "keys.json").write_text(public_file(RING), "utf-8")
    (folder / "taken-back.txt").write_text(listed(), "utf-8")
    content, output = course_copy(folder / "content"), folder / "output"
    asked = ["build", "--content", str(content), "--output", str(output)]
    asked += ["--keys", str(folder / "keys.json"), "--list", str(folder / "taken-back.txt")]
    assert run(asked) == ExitCode.GOOD
    return output / "stick"


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    with strict_page(browser, viewport={"width": 360, "height": 800}) as opened:
        opened.clock.set_fixed_time(NOW)
        yield opened


def verdict(page: Page, typed: str) -> str | None:
    page.locator(".ts-check textarea").fill(typed)
    page.locator(".ts-check button").click()
    status = page.locator(".ts-check [role=status]")
    expect(status).not_to_have_attribute("data-outcome", "working")
    return status.get_attribute("data-outcome")


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("place", PLACES)
def test_good_withdrawn_changed_and_strange_certificates(stick: Path, page: Page, place: str, language: str) -> None:
    name, _, anchor = place.format(language).partition("#")
    page.goto((stick / name).as_uri() + (f"#{anchor}" if anchor else ""))
    expect(page.locator(".ts-check")).to_contain_text(in_digits(KEYS.newest.public))
    assert verdict(page, text()) == "genuine"
    assert "Asha Devi" in page.locator(".ts-check [role=status]").inner_text()
    assert verdict(page, text(3)) == "withdrawn"
    assert number(3) in page.locator(".ts-check [role=status]").inner_text()
    good = text()
    assert verdict(page, good[:60] + ("A" if good[60] != "A" else "B") + good[61:]) == "refused"
    assert verdict(page, text(by=STRANGER)) == "refused"
    assert page.evaluate("document.documentElement.scrollWidth") <= 360


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_page_has_no_barrier_before_and_after_a_check(stick: Path, browser: Browser, language: str) -> None:
    page = browser.new_page(viewport={"width": 360, "height": 800})  # the barrier checker itself speaks in the console
    page.clock.set_fixed_time(NOW)
    page.goto((stick / PLACES[0].format(language)).as_uri())
    for typed in ("", text()):
        if typed:
            verdict(page, typed)
        found = Axe().run(page)
        assert [one["id"] for one in found.response["violations"]] == []
    page.close()


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_stick_without_keys_says_that_it_can_check_nothing(page: Page, language: str) -> None:
    built: Built = built_once()
    page.goto((built.folder / PLACES[0].format(language)).as_uri())
    said = page.locator("article").inner_text()
    assert built.content.words[language].say("page.check.no_keys") in said
    assert page.locator("article textarea").count() == 0


def test_a_home_page_leads_to_it(stick: Path, page: Page) -> None:
    page.goto((stick / "site/en/index.html").as_uri())
    page.get_by_role("link", name=WORDS["en"].say("page.check.open")).last.click()
    expect(page.locator(".ts-check textarea")).to_be_visible()


def test_bad_keys_a_foreign_list_and_a_list_alone_are_refused_before_anything_is_built(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    content, output = course_copy(tmp_path / "content"), tmp_path / "output"
    (tmp_path / "keys.json").write_text(public_file(RING), "utf-8")
    (tmp_path / "torn.json").write_text(public_file(RING)[:-40], "utf-8")
    (tmp_path / "foreign.txt").write_text(listed(by=STRANGER), "utf-8")
    base = ["build", "--content", str(content), "--output", str(output)]
    keys, foreign = ["--keys", str(tmp_path / "keys.json")], ["--list", str(tmp_path / "foreign.txt")]
    assert run([*base, "--keys", str(tmp_path / "torn.json")]) == ExitCode.PROBLEMS
    assert run([*base, "--keys", str(tmp_path / "none.json")]) == ExitCode.PROBLEMS
    assert run([*base, *keys, *foreign]) == ExitCode.PROBLEMS
    said = capsys.readouterr().err
    for name in ("torn.json", "none.json", "foreign.txt"):
        assert name in said
    assert run([*base, *foreign]) == ExitCode.USAGE
    assert not (output / "stick").exists()
