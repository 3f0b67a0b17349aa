"""The page that checks certificates: against Python's verdict, with and without the browser's crypto, from a file."""

from __future__ import annotations

import json
import math
import struct
from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, expect

from generator.credentials import (
    Note,
    PublicKeys,
    Status,
    StolenKey,
    WithdrawnList,
    check_page,
    in_digits,
    in_words,
    list_text,
    mark_stolen,
    public_file,
    read_public_keys,
    rotate,
    sign_list,
    use_list,
    verify_certificate,
)
from generator.credentials.jcs import canonical
from generator.credentials.page import page_data
from generator.credentials.text_form import CERTIFICATE, from_text
from generator.credentials.withdrawn import known_hash
from generator.formula import Stream
from tests.browser.conftest import Watched
from tests.credentials import mutations
from tests.credentials.issuer import KEYS, NOW, RING, WORDS, fixed, listed, number, ring, text

pytestmark = pytest.mark.browser

NO_CRYPTO = "Object.defineProperty(Crypto.prototype, 'subtle', {get: () => undefined});"
NO_ED25519 = """SubtleCrypto.prototype.importKey = () =>
  Promise.reject(new DOMException("Unrecognized name.", "NotSupportedError"));"""
JUDGE = """async ([texts, data, now]) => {
  const found = [];
  for (const text of texts) { found.push(await Tankschool.check.verify(text, data, now)); }
  return found;
}"""


def html(keys: PublicKeys, signed_list: str, language: str) -> str:
    made = check_page(keys, signed_list, WORDS[language])
    return (
        f'<!doctype html><html lang="{language}"><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width">'
        f"<title>{made.title}</title><main><h1>{made.title}</h1>\n{made.body}</main>\n"
        f"<script>{made.script}</script>\n<script>{made.start}</script></html>"
    )


@pytest.fixture
def opened(browser: Browser, tmp_path: Path) -> Iterator[Any]:
    contexts = []
    pages = []

    def open_page(
        keys: PublicKeys = KEYS,
        signed_list: str | None = None,
        language: str = "en",
        before: str = "",
        width: int = 360,
    ) -> Page:
        context = browser.new_context(viewport={"width": width, "height": 800})
        contexts.append(context)
        if before:
            context.add_init_script(before)
        watched = Watched(context.new_page())
        pages.append(watched)
        watched.page.clock.set_fixed_time(NOW)
        file = tmp_path / f"check-{len(pages)}.html"
        signed = listed() if signed_list is None else signed_list
        file.write_text(html(keys, signed, language), encoding="utf-8")
        watched.page.goto(file.as_uri())
        return watched.page

    yield open_page
    for context in contexts:
        context.close()
    assert [wrong for page in pages for wrong in page.wrong] == []


def judged(page: Page, texts: list[str], keys: PublicKeys = KEYS, signed_list: str = "", now: Any = NOW) -> list[Any]:
    data = json.loads(json.dumps(page_data(keys, signed_list, WORDS["en"])))
    found: list[Any] = page.evaluate(JUDGE, [texts, data, now.timestamp() * 1000])
    return found


def ask(page: Page, typed: str) -> str:
    page.locator("textarea").fill(typed)
    page.get_by_role("button").click()
    status = page.get_by_role("status")
    expect(status).not_to_have_attribute("data-outcome", "working")
    outcome = status.get_attribute("data-outcome")
    assert outcome is not None
    return outcome


@pytest.mark.parametrize("language", ["en", "hi"])
def test_a_person_sees_the_verdict_the_facts_and_what_was_not_checked(language: str, opened: Any) -> None:
    page, words = opened(language=language), WORDS[language]
    assert ask(page, text(name="कमला देवी")) == "genuine"
    said = page.get_by_role("status").inner_text()
    for expected in (
        words.say_one_of("certificate.outcome", "genuine"), "कमला देवी", number(7), "frame-hand 1",
        words.say_one_of("certificate.role", "helper"), words.with_unit("12", "m**3"), words.with_unit("1.9", "m"),
        words.say_one_of("certificate.roof", "none"), "2030-01-09", words.say_one_of("certificate.open", "holder"),
        words.say_one_of("certificate.open", "paper"), words.say_one_of("certificate.check", "list"), "2027-06-15",
    ):  # fmt: skip
        assert expected in said
    whole = page.locator("main").inner_text()
    assert in_words(RING.current.public, language) in whole
    assert in_digits(RING.current.public) in whole
    assert ask(page, "") == ""
    assert ask(page, text()[:-9]) == "refused"
    assert "Asha" not in page.get_by_role("status").inner_text()


@pytest.mark.parametrize("before", [NO_CRYPTO, NO_ED25519], ids=["no crypto", "no Ed25519"])
def test_without_the_browsers_crypto_it_says_so_and_shows_nothing_of_the_text(before: str, opened: Any) -> None:
    page = opened(before=before)
    for typed in (text(), text(by=ring("stranger")).lower(), text(3)):
        assert ask(page, typed) in ("no_crypto", "refused")
        assert "Asha" not in page.get_by_role("status").inner_text()
    assert ask(page, text()) == "no_crypto"
    assert page.get_by_role("status").inner_text() == WORDS["en"].say("certificate.page.no_crypto")
    assert ask(page, text()[:40]) == "refused"


@pytest.mark.parametrize("width", [360, 1280])
@pytest.mark.parametrize("language", ["en", "hi"])
def test_everyone_can_use_it(width: int, language: str, opened: Any) -> None:
    page = opened(language=language, width=width)
    ask(page, text())
    assert page.evaluate("document.documentElement.scrollWidth <= window.innerWidth")
    assert Axe().run(page).response["violations"] == []
    page.locator("textarea").focus()
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    expect(page.get_by_role("status")).to_have_attribute("data-outcome", "genuine")


def test_a_page_whose_key_is_not_the_one_shown_refuses_to_work(opened: Any) -> None:
    page = opened()
    other = ring("stranger").current.public.hex()
    page.evaluate(
        """([old, other]) => {
          const data = document.querySelector("script[type='application/json']");
          data.textContent = data.textContent.split(old).join(other);
          Tankschool.check.start(document.getElementById("ts-check"));
        }""",
        [RING.current.public.hex(), other],
    )
    page.locator("textarea").fill(text())
    page.get_by_role("button").click()
    expect(page.get_by_role("status")).to_contain_text(WORDS["en"].say("certificate.page.wrong_key"))


def test_names_and_words_never_become_elements(opened: Any) -> None:
    name = "<img src=x onerror='window.ran=1'>"
    page = opened(keys=read_public_keys(public_file(ring())))
    assert ask(page, text(name=name)) == "genuine"
    assert name in page.get_by_role("status").inner_text()
    assert page.locator("img").count() == 0
    assert page.evaluate("window.ran") is None


def same(ours: Any, theirs: Any) -> bool:
    notes = [{"code": note.code, **dict(note.values)} for note in ours.warnings]
    if str(ours.outcome) == "refused" and ours.certificate is None:
        return bool(theirs["outcome"] == "refused")
    expected = {
        "outcome": str(ours.outcome), "reason": ours.reason, "checked": list(ours.checked),
        "unchecked": list(ours.unchecked), "day": ours.day.isoformat(),
    }  # fmt: skip
    return all(theirs[name] == value for name, value in expected.items()) and theirs["warnings"] == notes


def test_every_kind_of_verdict_is_pythons(opened: Any) -> None:
    page = opened()
    old = RING
    new = rotate(old, NOW - timedelta(days=30), fixed("second"))
    robbed = mark_stolen(
        old, old.current.kid, NOW.date() - timedelta(days=90), NOW - timedelta(days=30), fixed("third")
    )
    known = text(41)
    entry = StolenKey(old.current.kid, NOW.date(), frozenset({known_hash(from_text(known, CERTIFICATE))}))
    after_theft = list_text(
        sign_list(
            WithdrawnList(NOW, {number(3): Status.SUSPENDED}, {entry.kid: entry}), robbed.current, robbed.public()
        )
    )
    texts = [
        text(), text(name="कमला देवी थापा"), text(3), text(4), text(5), known, text(name="Аsha Devi"),
        text(by=new), text(by=robbed),
        text(by=ring("stranger")), text(valid_from=NOW.date(), valid_to=NOW.date()), text(name="O'Neil-Śarmā (b.)"),
        text(valid_from=(NOW + timedelta(days=1)).date()), text(valid_to=(NOW - timedelta(days=1)).date()),
        text().lower(), text().replace("TSC1:", "TSC2:"), "TSL1:AAAA", "", "hello", text() + "A", listed(),
        text(name="क्‍ष"),
        " ".join(text()), text().replace("TSC1:", "TSC1:\n"), text() + "é",
        text(name="W" * 90, scheme="frame-hand-and-roof-x"),
    ]  # fmt: skip
    statuses = {number(3): Status.WITHDRAWN, number(4): Status.SUSPENDED, number(5): Status.RENEWED}
    lists = [
        (KEYS, ""), (KEYS, listed()), (KEYS, listed(numbers=statuses)), (KEYS, listed(NOW - timedelta(days=91))),
        (KEYS, listed(NOW + timedelta(days=2))), (KEYS, listed(NOW + timedelta(days=5000))),
        (read_public_keys(public_file(new)), listed(by=new)), (read_public_keys(public_file(robbed)), after_theft),
        (read_public_keys(public_file(robbed)), ""),
        (read_public_keys(public_file(new)), listed(NOW - timedelta(days=40))),
    ]  # fmt: skip
    seen = set()
    for keys, signed_list in lists:
        ours = [verify_certificate(each, keys, use_list(signed_list or None, keys, NOW), NOW) for each in texts]
        theirs = judged(page, texts, keys, signed_list)
        assert [row for row in zip(texts, ours, theirs, strict=True) if not same(row[1], row[2])] == []
        seen |= {str(each.outcome) for each in ours} | {each.reason for each in ours}
        for one, other in zip(ours, theirs, strict=True):
            if one.certificate is not None and not one.reason:
                assert other["certificate"]["name"] == one.certificate.name
                assert other["certificate"]["number"] == one.certificate.number
    assert seen >= {"genuine", "expired", "not_yet", "suspended", "withdrawn", "renewed", "refused", "stolen_key"}
    assert Note("mixed_scripts") in verify_certificate(texts[6], KEYS, use_list(None, KEYS, NOW), NOW).warnings


def test_a_false_or_late_list_lets_nothing_pass(opened: Any) -> None:
    page = opened()
    new = rotate(RING, NOW - timedelta(days=30), fixed("second"))
    robbed = mark_stolen(RING, RING.current.kid, NOW.date(), NOW, fixed("third"))
    for keys, signed_list in (
        (KEYS, listed(by=ring("stranger"))), (KEYS, listed()[:-20]), (KEYS, text()), (KEYS, "junk"),
        (read_public_keys(public_file(new)), listed()), (read_public_keys(public_file(robbed)), listed()),
    ):  # fmt: skip
        (found,) = judged(page, [text()], keys, signed_list)
        assert (found["outcome"], found["reason"]) == ("refused", "bad_list")


@pytest.mark.parametrize(
    "count", [pytest.param(600, id="hundreds"), pytest.param(10_000, id="ten thousand", marks=pytest.mark.long)]
)
@pytest.mark.parametrize("before", ["", NO_CRYPTO, NO_ED25519], ids=["crypto", "no crypto", "no Ed25519"])
def test_forgeries_are_refused_by_the_page_too(before: str, count: int, opened: Any) -> None:
    page = opened(before=before)
    forged = mutations.certificates(count)
    found = [one for start in range(0, count, 500) for one in judged(page, forged[start : start + 500], KEYS, listed())]
    assert len(found) == len(forged)
    allowed = {"refused", "no_crypto"} if before else {"refused"}
    assert {each["outcome"] for each in found} <= allowed
    assert [each for each in found if each["certificate"]] == []
    (good,) = judged(page, [text()], KEYS, listed())
    assert good["outcome"] == ("no_crypto" if before else "genuine")


def test_ten_thousand_numbers_and_texts_are_written_as_the_browser_writes_them(opened: Any) -> None:
    page, draw = opened(), Stream("canonical")
    numbers = []
    while len(numbers) < 10_000:
        bits = draw.below(2**32) << 32 | draw.below(2**32)
        if draw.below(3) == 0:  # numbers of a size that people write
            bits = (1023 - 40 + draw.below(120)) << 52 | (bits & (2**52 - 1) & ~((1 << draw.below(50)) - 1))
        (value,) = struct.unpack(">d", struct.pack(">Q", bits))
        if math.isfinite(value):
            numbers.append(value)
    shown = page.evaluate("list => list.map(bits => JSON.stringify(Number(bits)))", [repr(value) for value in numbers])
    assert [canonical(value).decode() for value in numbers] == shown
    texts = ["".join(chr(draw.below(0x2FF)) for _ in range(5)) for _ in range(2_000)] + ["\u2028\ud83d\ude00"]
    texts = [text.encode("utf-16", "surrogatepass").decode("utf-16") for text in texts]
    assert [canonical(text).decode() for text in texts] == page.evaluate(
        "list => list.map(x => JSON.stringify(x))", texts
    )
