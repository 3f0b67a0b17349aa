"""Practice and readings in the page against Python's, from a file."""

from __future__ import annotations

import json
import math
from dataclasses import asdict
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page

from generator.exercises import (
    Blueprint,
    Card,
    Panel,
    Pool,
    draw_panel,
    mark_choice,
    mark_number,
    marker_script,
    mastery,
    messages,
    next_card,
    practice_script,
    read_answers_so_far,
    readiness,
    reading_items,
    readings_script,
    told,
    typed_panel,
    why,
)
from generator.exercises.items import NumberItem
from generator.exercises.practice import Answer, boxes, within_reach
from generator.formula import Stream, show
from tests.exercises.shipped import WORDS
from tests.exercises.typed import SIGNS_TYPED

pytestmark = pytest.mark.browser

SAY = """(key, values) => data.words[key].replace(/\\{([a-z_]+)\\}/g, (slot, name) => values[name])"""


@pytest.fixture
def practice(kept_page: Page, tmp_path: Path) -> Page:
    """A page from a file with the scripts of practice and readings."""
    formula = files("generator.formula").joinpath("formula.js").read_text(encoding="utf-8")
    scripts = [formula, marker_script(), readings_script(), practice_script()]
    html = "".join(f"<script>{script}</script>\n" for script in scripts)
    file = tmp_path / "practice.html"
    file.write_text(f'<!doctype html><meta charset="utf-8"><title>practice</title>\n{html}', encoding="utf-8")
    kept_page.goto(file.as_uri())
    return kept_page


def run(page: Page, expression: str, data: object) -> Any:
    text = json.dumps(data)
    return json.loads(
        page.evaluate(f"t => {{ const data = JSON.parse(t); return JSON.stringify({expression}); }}", text)
    )


def same(one: Any, other: Any) -> bool:
    if isinstance(one, dict) and isinstance(other, dict):
        return one.keys() == other.keys() and all(same(one[key], other[key]) for key in one)
    if isinstance(one, list | tuple) and isinstance(other, list | tuple):
        return len(one) == len(other) and all(same(a, b) for a, b in zip(one, other, strict=True))
    if isinstance(one, int | float) and isinstance(other, int | float) and not isinstance(one, bool):
        return math.isclose(one, other, rel_tol=1e-12, abs_tol=1e-15)
    return bool(one == other)


def plain_words(language: str) -> dict[str, str]:
    families = ("exercise.", "practice.")
    return {
        key: text for key, text in WORDS[language].texts.items() if key.startswith(families) and isinstance(text, str)
    }


def test_ten_thousand_choices_are_the_same_and_said_alike(practice: Page) -> None:
    stream = Stream("twin practice")
    pools, cases, ours = [], [], []
    for _ in range(40):
        names = [f"skill-{i}" for i in range(1 + stream.below(5))]
        cards = [Card(f"q{i}", names[stream.below(len(names))], 1 + stream.below(3)) for i in range(stream.below(9))]
        needs = {name: tuple(names[: stream.below(i + 1)]) for i, name in enumerate(names) if stream.below(2)}
        pools.append(Pool(tuple(cards), needs))
    for number in range(10_000):
        place = stream.below(len(pools))
        pool = pools[place]
        answers = []
        skilled = stream.below(11)
        day = 0
        for _ in range(stream.below(30) if pool.cards else 0):
            card = pool.cards[stream.below(len(pool.cards))]
            day += stream.below(3)
            answers.append(Answer(card.question, card.competency, day, stream.below(10) < skilled))
        today = day + stream.below(40)
        language = ("en", "hi")[number % 2]
        choice = next_card(pool, answers, today, str(number))
        cases.append([place, [asdict(answer) for answer in answers], today, str(number), language])
        said = None if choice is None else why(choice, "skill", WORDS[language])
        ours.append([None if choice is None else asdict(choice), said, list(within_reach(pool, answers))])
    data = {"pools": [asdict(pool) for pool in pools], "cases": cases, "en": plain_words("en"), "hi": plain_words("hi")}
    theirs = run(
        practice,
        f"""data.cases.map(c => {{
          const P = Tankschool.practice, pool = data.pools[c[0]], found = P.next(pool, c[1], c[2], c[3]);
          data.words = data[c[4]];
          return [found, found && P.why(found, "skill", {SAY}), P.withinReach(pool, c[1])];
        }})""",
        data,
    )
    assert [row for row in zip(cases, ours, theirs, strict=True) if not same(row[1], row[2])][:3] == []
    reasons = {row[0]["reason"] for row in ours if row[0]}
    assert reasons == {"due", "new", "weakest", "keep"}


def test_mastery_boxes_and_readiness_are_the_same(practice: Page) -> None:
    stream = Stream("twin readiness")
    cases, ours = [], []
    for _ in range(2000):
        names = [f"skill-{i}" for i in range(1 + stream.below(4))]
        answers = [
            Answer(f"q{stream.below(6)}", names[stream.below(len(names))], i // 3, stream.below(4) > 0)
            for i in range(stream.below(60))
        ]
        points = {name: 1 + stream.below(12) for name in names}
        paper = Blueprint(points, (0.6, 0.7, 0.75, 0.8)[stream.below(4)], tuple(names[: stream.below(2)]))
        levels = [mastery(name, answers) for name in names]
        ours.append(
            [
                [asdict(level) for level in levels],
                [told(level, "skill", WORDS["hi"]) for level in levels],
                {name: asdict(box) for name, box in boxes(answers).items()},
                asdict(readiness(paper, answers)),
            ]
        )
        shown = {"points": list(points.items()), "cut": paper.cut, "critical": paper.critical}
        cases.append([names, [asdict(answer) for answer in answers], shown])
    theirs = run(
        practice,
        f"""data.cases.map(c => {{
          const P = Tankschool.practice, levels = c[0].map(name => P.mastery(name, c[1]));
          return [levels, levels.map(level => P.told(level, "skill", {SAY})), P.boxes(c[1]), P.readiness(c[2], c[1])];
        }})""",
        {"cases": cases, "words": plain_words("hi")},
    )
    assert [row for row in zip(cases, ours, theirs, strict=True) if not same(row[1], row[2])][:3] == []
    assert {row[3]["state"] for row in ours} == {"not_started", "not_yet", "nearly", "ready"}


def test_damaged_files_are_read_alike(practice: Page) -> None:
    good = {"question": "q", "competency": "a", "day": 3, "right": True}
    files_ = [
        [good], None, "text", 7, {"a": 1}, [good, 7, None, [], "x", good],
        [{**good, "day": day} for day in (-1, 0.5, True, 1e9, "3", None, 4.0)],
        [{**good, "right": 1}, {**good, "question": None}, {}],
    ]  # fmt: skip
    ours = []
    for file in files_:
        found, left = read_answers_so_far(file)
        ours.append({"good": [asdict(answer) for answer in found], "left": left})
    assert same(ours, run(practice, "data.map(Tankschool.practice.readAnswers)", files_))


def test_ten_thousand_panels_are_drawn_asked_and_marked_alike(practice: Page) -> None:
    stream = Stream("twin panels")
    cases, ours = [], []
    kinds: list[Any] = [("cover", "bar"), ("cover", "mesh"), ("spacing", "bar")]
    for number in range(10_000):
        kind, steel = kinds[number % 3]
        language = ("en", "hi")[stream.below(2)]
        words = WORDS[language]
        panel = draw_panel(kind, str(number), steel)
        items = reading_items(panel, "face", "cover", words)
        place = stream.below(4)
        item = items[place]
        if isinstance(item, NumberItem):
            values = [item.key, item.key + 1, *item.wrong.values()]
            typed: Any = show(values[stream.below(len(values))], item.places)
            mark = mark_number(item, typed)
        else:
            typed = [stream.below(3)]
            mark = mark_choice(item, typed)
        shown = [made.model_dump(mode="json") for made in items] if number % 10 == 0 else None
        ours.append([asdict(panel), shown, mark.verdict.value, list(messages(mark, words))])
        cases.append([kind, str(number), steel, language, place, typed, number % 10 == 0])
    theirs = run(
        practice,
        f"""data.cases.map(c => {{
          const R = Tankschool.readings, M = Tankschool.marker, panel = R.draw(c[0], c[1], c[2]);
          data.words = data[c[3]];
          const items = R.items(panel, {{id: "face", competency: "cover"}}, {SAY}), item = items[c[4]];
          const mark = item.kind === "number" ? M.markNumber(item, c[5]) : M.markChoice(item, c[5]);
          return [panel, c[6] ? items : null, mark.verdict, M.messages(mark, {SAY})];
        }})""",
        {"cases": cases, "en": plain_words("en"), "hi": plain_words("hi")},
    )
    assert [row for row in zip(cases, ours, theirs, strict=True) if not same(row[1], row[2])][:3] == []
    assert {row[2] for row in ours} == {"right", "not_yet"}


def test_ten_thousand_typed_lists_are_read_alike(practice: Page) -> None:
    stream = Stream("twin lists")
    signs = [*SIGNS_TYPED, *"  ;;\n\r\t\f\v,,", ", ", " 8 ", " 9 ", "\n10", "; 7.5", "\u00a0", "\u2028"]
    good, between = ["8", "9.5", "10mm", "0.7 cm", "१२", "1/2", "6½"], [" ", ", ", ";", "\n", "; ", ",", "  ", "\r\n"]
    cases = [["cover", "".join(signs[stream.below(len(signs))] for _ in range(stream.below(16)))] for _ in range(6000)]
    for _ in range(6000):
        pieces = [good[stream.below(len(good))] + between[stream.below(len(between))] for _ in range(stream.below(9))]
        cases.append(["cover", "".join(pieces)])
    cases += [
        ["spacing", text] for text in ("140 150 130", "", "1 " * 61, "9" * 5000, "😀" * 2401, "8, 9, 10", "8,9,10")
    ]
    ours = [asdict(typed_panel(kind, text)) for kind, text in cases]  # type: ignore[arg-type]
    theirs = run(practice, "data.map(c => Tankschool.readings.typed(c[0], c[1]))", cases)
    assert [row for row in zip(cases, ours, theirs, strict=True) if not same(row[1], row[2])][:3] == []
    assert sum("readings" in row for row in ours) > 300
    assert isinstance(typed_panel("cover", "8 9 10"), Panel)
