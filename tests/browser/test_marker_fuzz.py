"""100,000 typed answers to questions of every kind: nothing throws, and the page marks as Python does."""

from __future__ import annotations

import json
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page

from generator.exercises import (
    Mark,
    NumberItem,
    QuestionItem,
    SpokenItem,
    make_item,
    mark_typed,
    marker_script,
)
from generator.formula import Stream, show, show_full
from tests.exercises import small
from tests.exercises.typed import SIGNS_TYPED

pytestmark = pytest.mark.browser

COUNT = 100_000
PIECES = [
    *SIGNS_TYPED,
    *"ABCDabcdकखग;;",
    "1A",
    "2B",
    "3C",
    "and",
    "और",
    " - ",
    "= ",
    "𝟘",
    "\ud83d",
    "<script>",
    "__proto__",
]


@pytest.fixture
def marker(kept_page: Page, tmp_path: Path) -> Page:
    """A page from a file with the formulas of the small book and the marker."""
    formula = files("generator.formula").joinpath("formula.js").read_text(encoding="utf-8")
    scripts = [formula, small.BOOK.javascript(sorted(small.BOOK.quantities)), marker_script()]
    html = "".join(f"<script>{script}</script>\n" for script in scripts)
    file = tmp_path / "fuzz.html"
    file.write_text(f'<!doctype html><meta charset="utf-8"><title>fuzz</title>\n{html}', encoding="utf-8")
    kept_page.goto(file.as_uri())
    return kept_page


def near(stream: Stream, item: QuestionItem) -> str:
    """A text that a learner could mean: a right or mistaken number in some writing, or letters."""
    asked = item.answer if isinstance(item, SpokenItem) else item
    if not isinstance(asked, NumberItem):
        return "".join("ABCDabcd1234 ,-"[stream.below(15)] for _ in range(1 + stream.below(8)))
    values = [
        asked.key,
        asked.rounded,
        asked.key * 1000,
        asked.exact or 0.0,
        *asked.wrong.values(),
        *asked.also.values(),
    ]
    value = values[stream.below(len(values))]
    unit = ["", " m", " cm", asked.unit, " ft", "'"][stream.below(6)]
    ways = [
        show(value, asked.places),
        f"{value:.3f}",
        f"{value:,.2f}",
        show_full(value),
        f"{value:.2f}".replace(".", ","),
    ]
    text = ways[stream.below(len(ways))] + unit
    if asked.steps and stream.below(2):
        lines = [show(part.key, part.places) if stream.below(3) else str(stream.below(40)) for part in asked.steps]
        text = ";".join([*lines, text])
    return text


def short(mark: Mark) -> list[Any]:
    """What a mark tells, as one row; the page's twin makes the same."""
    ask = [mark.ask.reason.value, mark.ask.first, mark.ask.second] if mark.ask else None
    value = None if mark.value is None else f"{mark.value:.9g}"
    return [
        mark.item,
        mark.verdict.value,
        value,
        list(mark.misconceptions),
        list(mark.why),
        ask,
        mark.slip.value,
        mark.points,
        mark.most,
    ]


SHORT = """made => {
  const ask = made.ask ? [made.ask.reason, made.ask.first, made.ask.second] : null;
  return [made.item, made.verdict, made.value, made.misconceptions, made.why, ask, made.slip, made.points,
    made.most];
}"""  # fmt: skip


def alike(one: list[Any], other: list[Any]) -> bool:
    if one[:2] + one[3:] != other[:2] + other[3:]:
        return False
    return one[2] == other[2] or (one[2] is not None and other[2] is not None and f"{other[2]:.9g}" == one[2])


def test_a_hundred_thousand_answers_are_marked_alike_and_none_throws(marker: Page) -> None:
    stream = Stream("fuzzed answers")
    words = small.WORDS["en"]
    items = [make_item(question, f"fuzz {seed}", words, small.BOOK) for question in small.ALL for seed in range(12)]
    cases: list[tuple[int, str]] = []
    while len(cases) < COUNT:
        place = stream.below(len(items))
        if stream.below(3):
            text = near(stream, items[place])
        else:
            text = "".join(PIECES[stream.below(len(PIECES))] for _ in range(stream.below(12)))
        cases.append((place, text))
    ours = [short(mark_typed(items[place], text, small.BOOK)) for place, text in cases]
    data = json.dumps([[item.model_dump(mode="json") for item in items], cases])
    theirs = json.loads(
        marker.evaluate(
            f"""text => {{
              const [items, cases] = JSON.parse(text), short = {SHORT};
              return JSON.stringify(cases.map(one => short(Tankschool.marker.markTyped(items[one[0]], one[1]))));
            }}""",
            data,
        )
    )
    wrong = [row for row in zip(cases, ours, theirs, strict=True) if not alike(row[1], row[2])]
    assert wrong[:5] == []
    seen: dict[str, set[str]] = {}
    for (place, _), mark in zip(cases, ours, strict=True):
        seen.setdefault(items[place].kind, set()).add(mark[1])
    for kind in ("number", "choice", "order", "match", "spot", "spoken"):
        assert seen[kind] >= {"right", "not_yet", "ask_back", "blank"}, kind
    assert "right_from_earlier" in seen["number"]
    assert {mark[6] for mark in ours} == {"", "not_rounded", "other_rounding"}
    assert any(0 < mark[7] < mark[8] for mark in ours)
