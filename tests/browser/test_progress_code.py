"""Progress on a computer of several learners: letters to copy by hand, files, a browser that keeps each page apart."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from generator.formula import Stream
from tests.browser.stick_page import address, answer_right, number_items, say, strict_page
from tests.site.course_stick import Built, built_once

pytestmark = pytest.mark.browser

LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789"
ONE_STORE_A_FILE = """(() => {
  const shared = window.localStorage, own = location.pathname + "|";
  const box = {
    get length() { return Object.keys(shared).filter(key => key.startsWith(own)).length; },
    key(n) { return Object.keys(shared).filter(key => key.startsWith(own))[n].slice(own.length); },
    getItem(key) { return shared.getItem(own + key); },
    setItem(key, text) { shared.setItem(own + key, text); },
    removeItem(key) { shared.removeItem(own + key); }
  };
  Object.defineProperty(window, "localStorage", {get: () => box});
  Object.defineProperty(document, "cookie", {
    get: () => shared.getItem("cookies") || "", set: text => shared.setItem("cookies", text.split(";")[0])});
})();"""
"""A browser that keeps a store for every file, and cookies that all files share."""


@pytest.fixture(scope="module")
def built() -> Built:
    return built_once()


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    with strict_page(browser) as found:
        yield found


def by_hand(ids: list[str], right: set[str]) -> list[str]:
    """The code worked out a second time, from its description: bits, check letters, groups."""

    def letters(number: int, count: int) -> list[int]:
        return [number >> 5 * (count - 1 - place) & 31 for place in range(count)]

    def times_two(value: int) -> int:
        return value * 2 ^ (37 if value >= 16 else 0)

    bits = "".join("1" if name in right else "0" for name in ids)
    bits += "0" * (-len(bits) % 5)
    data = [int(bits[place : place + 5], 2) for place in range(0, len(bits), 5)]
    while data and not data[-1]:
        data.pop()
    values = [0, *letters(Stream("ids|" + " ".join(ids)).below(32**3), 3), *data]
    values += letters(Stream("code|" + "".join(LETTERS[one] for one in values)).below(32**4), 4)
    groups = []
    for place in range(0, len(values), 4):
        group = values[place : place + 4]
        check, weight = 0, [times_two(one) for one in group]
        for steps, one in enumerate(weight):
            for _ in range(steps):
                one = times_two(one)
            check ^= one
        groups.append("".join(LETTERS[one] for one in (*group, check)))
    return groups


def code(page: Page) -> list[str]:
    found: list[str] = page.evaluate("Tankschool.code.make()")
    return found


def read(page: Page, text: str) -> dict[str, Any]:
    found: dict[str, Any] = page.evaluate("text => Tankschool.code.read(text)", text)
    return found


def test_a_code_says_what_was_right_and_is_the_same_worked_out_by_hand(built: Built, page: Page) -> None:
    page.goto(address(built, "site/en/index.html"))
    ids: list[str] = page.evaluate("Tankschool.course.questions")
    assert code(page) == by_hand(ids, set())
    assert len(ids) > 20
    for name in (ids[0], ids[7], ids[-1]):
        page.evaluate("id => Tankschool.progress.marked(id, true)", name)
    page.evaluate("id => Tankschool.progress.marked(id, false)", ids[3])
    assert code(page) == by_hand(ids, {ids[0], ids[7], ids[-1]})


def test_a_code_copied_by_hand_brings_progress_to_another_computer(built: Built, browser: Browser, page: Page) -> None:
    page.goto(address(built, "site/en/frame.html"))
    items = number_items(built, "en")[:3]
    for item in items:
        answer_right(built, page, item)
    page.goto(address(built, "site/en/index.html"))
    page.get_by_role("button", name=say(built, "en", "page.code.show")).click()
    shown = page.locator(".ts-code-letters li").all_inner_texts()
    groups = [text.split(".")[1].strip() for text in shown]
    assert groups == code(page)
    for path in ("site/hi/index.html", "phone/tankschool-hi.html"):
        with strict_page(browser) as other:
            other.goto(address(built, path))
            other.get_by_label(say(built, "hi", "page.progress.new_name")).fill("Asha")
            other.get_by_role("button", name=say(built, "hi", "page.progress.add")).click()
            other.get_by_label(say(built, "hi", "page.code.type")).fill(" ".join(groups).lower().replace(" ", " - "))
            other.get_by_role("button", name=say(built, "hi", "page.code.use")).click()
            said = say(built, "hi", "page.code.read", count=3)
            expect(other.locator(".ts-learner[data-full] [role=status]").last).to_have_text(said)
            assert [other.evaluate("id => Tankschool.progress.get(id).right", item.id) for item in items] == [1, 1, 1]
            assert code(other) == groups


def test_every_single_slip_in_a_code_is_found_with_its_place(built: Built, page: Page) -> None:
    page.goto(address(built, "site/en/index.html"))
    for name in page.evaluate("Tankschool.course.questions.slice(0, 9)"):
        page.evaluate("id => Tankschool.progress.marked(id, true)", name)
    good = "".join(code(page))
    found: list[list[Any]] = page.evaluate(
        """([good, letters]) => { const wrong = [];
        const ask = (text, at, what) => { const r = Tankschool.code.read(text);
          if (r.wrong !== "group" || r.group !== Math.floor(at / 5) + 1) wrong.push([what, at, text, r]); };
        for (let i = 0; i < good.length; i++) {
          for (const one of letters) if (one !== good[i]) ask(good.slice(0, i) + one + good.slice(i + 1), i, "other");
          if (i % 5 < 4 && i + 1 < good.length && good[i] !== good[i + 1])
            ask(good.slice(0, i) + good[i + 1] + good[i] + good.slice(i + 2), i, "swapped");
        }
        return wrong; }""",
        [good, LETTERS],
    )
    assert found == []


def test_a_code_that_is_no_good_says_why_and_changes_nothing(built: Built, page: Page) -> None:
    page.goto(address(built, "site/en/index.html"))
    ids: list[str] = page.evaluate("Tankschool.course.questions")
    for name in ids[:12]:
        page.evaluate("id => Tankschool.progress.marked(id, true)", name)
    groups = code(page)
    before = page.evaluate("JSON.stringify(localStorage)")
    swapped = [groups[1], groups[0], *groups[2:]]
    assert read(page, " ".join(swapped)) == {"wrong": "whole"}
    assert read(page, " ".join(groups[:-1])) == {"wrong": "whole"}
    assert read(page, " ".join(by_hand(ids[1:], set(ids[2:9])))) == {"wrong": "another_issue"}
    assert read(page, f"{groups[0]} 0{groups[1][1:]}") == {"wrong": "letter", "group": 2}
    assert read(page, "<b>hello</b>")["wrong"] == "letter"
    assert read(page, "ABC")["wrong"] == "group"
    field = page.get_by_label(say(built, "en", "page.code.type"))
    use = page.get_by_role("button", name=say(built, "en", "page.code.use"))
    status = page.locator(".ts-learner[data-full] [role=status]").last
    use.click()
    expect(status).to_have_text(say(built, "en", "page.code.type_first"))
    for pasted_into in (field, page.get_by_label(say(built, "en", "page.progress.new_name"))):
        pasted_into.focus()
        page.evaluate("document.execCommand('insertText', false, 'A'.repeat(3000000))")
    use.click()
    expect(status).to_have_text(built.content.words["en"].say_one_of("page.code.wrong", "size"))
    field.fill(f"{groups[0]} {groups[1][:-1]}{'A' if groups[1][-1] != 'A' else 'B'}")
    use.click()
    expect(status).to_have_text(built.content.words["en"].say_one_of("page.code.wrong", "group", group=2))
    assert page.evaluate("JSON.stringify(localStorage)") == before


# --------------------------------------------------------------------------------- one store for each file


def test_a_browser_with_a_store_for_every_file_is_told_plainly(built: Built, page: Page) -> None:
    page.add_init_script(ONE_STORE_A_FILE)
    notice = say(built, "en", "page.progress.apart")
    page.goto(address(built, "site/en/index.html"))
    expect(page.locator(".ts-learner").first).not_to_contain_text(notice)
    page.goto(address(built, "site/en/frame.html"))
    expect(page.locator(".ts-apart")).to_contain_text(notice)
    page.evaluate("document.cookie = 'x=1'")
    page.goto(address(built, "site/en/frame.html"))
    expect(page.locator(".ts-apart")).to_contain_text(notice)
    page.locator(".ts-apart a").click()
    page.wait_for_load_state()
    expect(page.locator("main > article:visible")).to_have_id("index")
    expect(page.locator(".ts-apart")).to_have_count(0)


def test_a_browser_with_one_store_says_nothing_of_it(built: Built, page: Page) -> None:
    for path in ("site/en/index.html", "site/en/frame.html", "phone/tankschool-en.html", "site/hi/frame.html"):
        page.goto(address(built, path))
        expect(page.locator(".ts-learner").first).to_contain_text(
            say(built, "hi" if "hi" in path else "en", "page.progress.kept")
        )
        assert page.locator(".ts-apart").count() == 0


# ------------------------------------------------------------------------------------- learners and files

SCRIPTS = ("<script>window.bad=1</script>", '"><svg onload="window.bad=1">', "{name}", "अ" * 300, "a\u0000b\n\tc")


@pytest.mark.parametrize("name", SCRIPTS)
def test_a_learners_name_is_only_ever_text(built: Built, page: Page, tmp_path: Path, name: str) -> None:
    for path in ("site/en/index.html", "phone/tankschool-en.html"):
        page.goto(address(built, path))
        data = {
            "format": 1,
            "kind": "tankschool-progress",
            "learner": name,
            "questions": {"lap-length": {"right": 2, "tried": 3}},
        }
        file = tmp_path / "file.json"
        file.write_text(json.dumps(data), encoding="utf-8")
        page.locator("input[type=file]").first.set_input_files(file)
        expect(page.locator(".ts-learner[data-full] [role=status]").last).to_have_text(
            say(built, "en", "page.progress.file_read", count=1)
        )
        shown = page.locator("select option:checked").first.inner_text()
        assert 0 < len(shown) <= 40
        page.get_by_role("button", name=say(built, "en", "page.progress.clear")).first.click()
        expect(page.locator(".ts-learner[data-full] [role=status]").last).to_contain_text(shown.strip()[:20])
        assert page.evaluate("window.bad") is None
    assert page.evaluate("Tankschool.progress.learners().length") == 2


def test_clearing_asks_first_and_takes_only_this_learners_progress(built: Built, page: Page) -> None:
    page.goto(address(built, "site/en/index.html"))
    page.evaluate("Tankschool.progress.add('One'); Tankschool.progress.marked('lap-length', true)")
    page.evaluate("Tankschool.progress.note('mock', '{}')")
    page.evaluate("Tankschool.progress.add('Two'); Tankschool.progress.marked('lap-length', true)")
    clear = page.get_by_role("button", name=say(built, "en", "page.progress.clear"))
    clear.click()
    assert page.evaluate("Tankschool.progress.get('lap-length').right") == 1
    page.evaluate("Tankschool.progress.choose('p1')")
    expect(clear).to_be_visible()  # the question does not carry over to another learner
    clear.click()
    page.get_by_role("button", name=say(built, "en", "page.progress.clear_sure")).click()
    left = page.evaluate("Object.keys(localStorage).filter(key => key.includes('.p1.'))")
    assert left == []
    page.evaluate("Tankschool.progress.choose('p2')")
    assert page.evaluate("Tankschool.progress.get('lap-length').right") == 1


def test_a_damaged_store_is_read_as_nothing_and_breaks_nothing(built: Built, page: Page) -> None:
    page.goto(address(built, "site/en/frame.html"))
    item = number_items(built, "en")[0]
    for junk in ("{", "[]", "null", '{"tried": "<b>", "right": -4, "drawn": 1e99}', "x" * 100_000):
        page.evaluate(
            """([id, junk]) => { for (const key of ["learners", "current", "look", "store", "p0.mock", "p0.q." + id])
               localStorage.setItem("tankschool.v1." + key, junk); }""",
            [item.id, junk],
        )
        for path in ("site/en/index.html", "site/en/mock-test.html", "site/en/frame.html"):
            page.goto(address(built, path))
        answer_right(built, page, item)
        assert page.evaluate("id => Tankschool.progress.get(id).right", item.id) == 1
