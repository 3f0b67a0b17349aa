"""Diagnosing one answer in the page against every misconception of the book that touches its quantity.

The quantity with the most misconceptions is asked, and a wrong answer that no misconception gives is marked as a part
of a job: then each misconception is worked out anew from the learner's own numbers, the slowest way through the marker.
It runs in Chromium as it is, and slowed down six times as a stand-in for an old phone. Stated: 5 ms slowed down.
"""

from __future__ import annotations

import json
import os
import shutil
import statistics
import tempfile
from functools import cache
from importlib.resources import files
from pathlib import Path

from playwright.sync_api import sync_playwright

from generator.calculations import BOOK
from generator.commands.test import BROWSERS
from generator.curriculum import load
from generator.exercises.draw import Recipe, touching
from generator.exercises.items import NumberItem
from generator.exercises.page_data import marker_script
from generator.exercises.tolerance import tolerance_of
from generator.exercises.variants import of_givens
from tests.benchmarks import Result

SLOWED = 6
STATED = 0.005
"""Seconds for one answer, slowed down: what a learner does not notice."""
LIMIT = 10.0
"""Slowed six times by pauses; what is beyond six is what the pauses and a busy machine add."""
ANSWERS = 1500
ROUNDS = 5


@cache
def hardest() -> tuple[NumberItem, dict[str, float]]:
    """The quantity with the most misconceptions at a place of the course, asked, and the givens of its way."""
    content = load(Path(__file__).parents[2]).content
    assert content is not None
    here = {name: value for place in content.places.values() for name, value in place.given.items()}
    reached = BOOK.evaluate(here)
    counts = {}
    for name in reached:
        if name in BOOK.quantities:
            counts[name] = touching(BOOK, name, BOOK.needs(name), ())
    asks = max(counts, key=lambda name: len(counts[name]))
    givens = {name: here[name] for name in BOOK.needs(asks)}
    quantity = BOOK.quantities[asks]
    made = Recipe(BOOK, "hardest", asks, (), tolerance_of("exact", quantity), counts[asks])
    drawn = of_givens(made, givens)
    item = NumberItem(
        id="hardest", competency="all", text="", asks=asks, unit=quantity.unit, places=quantity.places,
        low=quantity.low, high=quantity.high, givens={}, key=drawn.key, shown_key=drawn.shown_key,
        rounded=drawn.rounded, absolute=drawn.tolerance.absolute, relative=drawn.tolerance.relative,
        wrong=drawn.wrong,
    )  # fmt: skip
    return item, givens


TIMED = """count => {
  const start = performance.now();
  for (let i = 0; i < count; i += 1) {
    Tankschool.marker.markScenario(window.job, {hardest: String(98765.4321 + i)});
  }
  return (performance.now() - start) / count / 1000;
}"""


def times(rounds: int = ROUNDS) -> tuple[float, float]:
    """Seconds for one answer: slowed down, and as the machine is; the middle of some rounds of each, by turns."""
    item, givens = hardest()
    job = {"kind": "scenario", "id": "job", "title": "", "text": "", "givens": givens, "parts": [item.model_dump()]}
    formula = files("generator.formula").joinpath("formula.js").read_text(encoding="utf-8")
    scripts = [formula, BOOK.javascript([item.asks]), marker_script(), f"window.job = {json.dumps(job)};"]
    html = "".join(f"<script>{script}</script>\n" for script in scripts)
    found = os.environ.get("TANKSCHOOL_BROWSER") or next(filter(None, map(shutil.which, BROWSERS)), None)
    slowed, free = [], []
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as play:
        file = Path(folder) / "diagnosis.html"
        file.write_text(f'<!doctype html><meta charset="utf-8"><title>d</title>\n{html}', encoding="utf-8")
        browser = play.chromium.launch(executable_path=found, args=["--no-sandbox", "--disable-gpu"])
        page = browser.new_page()
        page.goto(file.as_uri())
        page.evaluate(TIMED, ANSWERS)  # the browser has seen the code before, as after a learner's first answers
        session = page.context.new_cdp_session(page)
        for _ in range(rounds):
            session.send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
            slowed.append(page.evaluate(TIMED, ANSWERS))
            session.send("Emulation.setCPUThrottlingRate", {"rate": 1})
            free.append(page.evaluate(TIMED, ANSWERS))
        browser.close()
    return statistics.median(slowed), statistics.median(free)


def results() -> list[Result]:
    """The two comparisons: with the same work unslowed, and with what was stated."""
    slowed, free = times()
    count = len(hardest()[0].wrong)
    name = f"diagnosing one answer against {count} misconceptions, slowed {SLOWED} times"
    return [
        Result(f"{name}, against the same unslowed", slowed, free, LIMIT),
        Result(f"{name}, against the {STATED * 1000:g} ms that are stated", slowed, STATED, 1.0),
    ]


if __name__ == "__main__":
    for result in results():
        print(result)  # noqa: T201 (this is what the benchmark is for)
