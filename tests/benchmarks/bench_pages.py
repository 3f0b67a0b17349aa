"""Pages on a slow computer: one file of eighteen modules against itself without scripts, new numbers against a load.

The computer is slowed six times by the browser itself. Ready means: its parts are shown as one page at a time, and the
browser has had a moment of rest. Without scripts all parts stand opened below each other. A new set of numbers is drawn
and shown in the card of a part that was opened; the baseline is the page's load.
"""

from __future__ import annotations

import re
import shutil
import tempfile
from pathlib import Path

from generator.commands.test import BROWSERS
from generator.site.one_file import opened
from tests.benchmarks import Result
from tests.site.test_measures import edition_of_many_modules

SLOWER = 6
READY_LIMIT = 1.3
NUMBERS_LIMIT = 0.1
READY = """() => new Promise(done => requestAnimationFrame(() => setTimeout(() =>
  done(performance.now() / 1000), 0)))"""
SHOW_A_MODULE = """() => { location.hash = [...document.querySelectorAll("main > article")][1].id; }"""
NEW_NUMBERS = """() => { const box = [...document.querySelectorAll("[data-question]")].find(one =>
    Tankschool.page.data().questions[one.dataset.question].kind === "number");
  const card = box.querySelector(".ts-buttons"), again = card.lastElementChild, start = performance.now();
  again.click(); void box.offsetHeight;
  return (performance.now() - start) / 1000; }"""


def results(runs: int = 3) -> list[Result]:
    """Both comparisons; the best time of each of some runs."""
    from playwright.sync_api import sync_playwright

    edition = edition_of_many_modules("en")
    plain = re.sub("<script.*?</script>", "", opened(edition), flags=re.DOTALL).replace(
        '-typeset" hidden>', '-typeset">'
    )
    program = next(filter(None, map(shutil.which, BROWSERS)), None)
    ready, bare, numbers = [], [], []
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as play:
        files = {"ready": Path(folder) / "ready.html", "bare": Path(folder) / "bare.html"}
        files["ready"].write_bytes(edition)
        files["bare"].write_text(plain, encoding="utf-8")
        browser = play.chromium.launch(executable_path=program, args=["--no-sandbox", "--disable-gpu"])
        for _ in range(runs):
            for name, times in (("ready", ready), ("bare", bare)):
                context = browser.new_context(viewport={"width": 360, "height": 740})
                page = context.new_page()
                context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
                page.goto(files[name].as_uri(), timeout=120_000)
                times.append(page.evaluate(READY))
                if name == "ready":
                    page.evaluate(SHOW_A_MODULE)
                    page.wait_for_selector("[data-question] .ts-buttons")
                    numbers.append(page.evaluate(NEW_NUMBERS))
                context.close()
        browser.close()
    return [
        Result("one file of 18 modules, ready, against the same without scripts", min(ready), min(bare), READY_LIMIT),
        Result("new numbers in a card, against the load of its page", min(numbers), min(ready), NUMBERS_LIMIT),
    ]
