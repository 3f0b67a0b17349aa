"""The page's marker against Python's, from a file: the same texts read, questions drawn and answers marked."""

from __future__ import annotations

import json
import math
from collections.abc import Sequence
from dataclasses import asdict
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page

from generator.exercises import (
    ChoiceItem,
    Mark,
    MatchItem,
    NumberItem,
    OrderItem,
    Parsed,
    make_item,
    make_scenario,
    mark_choice,
    mark_match,
    mark_number,
    mark_order,
    mark_scenario,
    marker_script,
    messages,
    parse_number,
    question_data,
)
from generator.exercises.numbers import Ask
from generator.exercises.units import UNITS
from generator.formula import Stream, show, show_full
from generator.words import Words
from tests.exercises import small
from tests.exercises.test_numbers import ASKED, READ
from tests.exercises.typed import SIGNS_TYPED

pytestmark = pytest.mark.browser

UNIT_NAMES = ["", "bag", "coin", *(unit.name for unit in UNITS)]
SEEDS = range(300)


@pytest.fixture
def marker(kept_page: Page, tmp_path: Path) -> Page:
    """A page from a file with the formulas of the small book and the marker."""
    formula = files("generator.formula").joinpath("formula.js").read_text(encoding="utf-8")
    scripts = [formula, small.BOOK.javascript(sorted(small.BOOK.quantities)), marker_script()]
    html = "".join(f"<script>{script}</script>\n" for script in scripts)
    file = tmp_path / "marker.html"
    file.write_text(f'<!doctype html><meta charset="utf-8"><title>marker</title>\n{html}', encoding="utf-8")
    kept_page.goto(file.as_uri())
    return kept_page


def run(page: Page, expression: str, data: object) -> list[Any]:
    """What an expression over `data` gives in the page; JSON text travels far quicker than nested values."""
    answer: list[Any] = json.loads(
        page.evaluate(
            f"text => {{ const data = JSON.parse(text); return JSON.stringify({expression}); }}", json.dumps(data)
        )
    )
    return answer


def typed(stream: Stream) -> str:
    return "".join(SIGNS_TYPED[stream.below(len(SIGNS_TYPED))] for _ in range(stream.below(11)))


def told(mark: Mark) -> dict[str, Any]:
    """A mark as the page tells it."""
    return json.loads(json.dumps(asdict(mark))) | {"points": mark.points, "most": mark.most}


def same(one: Any, other: Any) -> bool:
    """Equal, numbers to the last few bits."""
    if isinstance(one, dict) and isinstance(other, dict):
        return one.keys() == other.keys() and all(same(one[key], other[key]) for key in one)
    if isinstance(one, list) and isinstance(other, list):
        return len(one) == len(other) and all(same(a, b) for a, b in zip(one, other, strict=True))
    if isinstance(one, int | float) and isinstance(other, int | float) and not isinstance(one, bool):
        return one == other or math.isclose(one, other, rel_tol=1e-12)
    return bool(one == other)


def differing(cases: Sequence[Any], ours: Sequence[Any], theirs: Sequence[Any]) -> list[tuple[Any, Any, Any]]:
    assert len(cases) == len(ours) == len(theirs)
    return [row for row in zip(cases, ours, theirs, strict=True) if not same(row[1], row[2])][:5]


def test_ten_thousand_typed_texts_are_read_alike(marker: Page) -> None:
    stream = Stream("twin texts")
    cases = [[typed(stream), UNIT_NAMES[stream.below(len(UNIT_NAMES))]] for _ in range(12_000)]
    cases += [[f"{whole:,}{tail}", "L"] for whole in (0, 7, 99, 1500, 150000, 12345678) for tail in ("", ".5", ",5")]
    cases += [[text, unit] for text, unit, _ in (*READ, *ASKED)]
    cases += [["\ud800", ""], ["5\udc00 m", "m"], ["İ", "m"], ["5 K", "m"], ["ſ", "m"], ["５", ""], ["5\x85m", "m"]]

    def read(text: str, unit: str) -> dict[str, Any]:
        found = parse_number(text, unit)
        if isinstance(found, Parsed):
            return {"value": found.value, "unit": found.unit, "other": found.other}
        return {"ask": asdict(found)} if isinstance(found, Ask) else {"blank": True}

    ours = [read(text, unit) for text, unit in cases]
    theirs = run(marker, "data.map(c => Tankschool.marker.parse(c[0], c[1]))", cases)
    assert differing(cases, ours, theirs) == []
    assert sum("value" in each for each in ours) > 1000


@pytest.mark.parametrize("question", small.ALL, ids=lambda question: question.id)
@pytest.mark.parametrize("language", ["en", "hi"])
def test_a_seed_gives_the_same_question_in_both(marker: Page, question: Any, language: str) -> None:
    words = small.WORDS[language]
    ours = [make_item(question, f"seed {seed}", words, small.BOOK).model_dump(mode="json") for seed in SEEDS]
    data = [question_data(question, words, small.BOOK), list(SEEDS)]
    theirs = run(marker, "data[1].map(seed => Tankschool.marker.item(data[0], 'seed ' + seed))", data)
    theirs = [{key: item[key] for key in ours[0]} for item in theirs]
    assert differing(list(SEEDS), ours, theirs) == []


@pytest.mark.parametrize("language", ["en", "hi"])
def test_a_units_word_after_one_is_the_same_in_both(marker: Page, language: str) -> None:
    words = Words(language, {**small.WORDS[language].texts, "unit_for_one.m": "metre"})
    ours = [make_item(small.LENGTH, f"seed {seed}", words, small.BOOK).text for seed in SEEDS]
    data = [question_data(small.LENGTH, words, small.BOOK), list(SEEDS)]
    theirs = run(marker, "data[1].map(seed => Tankschool.marker.item(data[0], 'seed ' + seed).text)", data)
    assert differing(list(SEEDS), ours, theirs) == []
    assert any("1\u00a0metre high" in text for text in ours)
    assert any("\u00a0metre high" not in text for text in ours)


@pytest.mark.parametrize("question", small.NUMBERS, ids=lambda question: question.id)
def test_typed_answers_to_number_questions_are_marked_alike(marker: Page, question: Any) -> None:
    stream = Stream(f"twin answers {question.id}")
    items, answers = [], []
    for seed in range(300):
        made = make_item(question, str(seed), small.WORDS["en"], small.BOOK)
        assert isinstance(made, NumberItem)
        values = [made.key, made.rounded, *made.wrong.values(), made.key * 1000, made.key / 1000, made.key + 1]
        for value in values:
            for text in (show(value, made.places), f"{value:.4f}", f"{value:,.0f}", f"{value:.3f} {made.unit}",
                         f"{value * 1000:.1f} mm", f"{value:.3f}".replace(".", ",")):  # fmt: skip
                items.append(made)
                answers.append(text)
        for _ in range(5):
            items.append(made)
            answers.append(typed(stream))
    marks = [mark_number(item, text) for item, text in zip(items, answers, strict=True)]
    cases = [[item.model_dump(mode="json"), text] for item, text in zip(items, answers, strict=True)]
    theirs = run(marker, "data.map(c => Tankschool.marker.markNumber(c[0], c[1]))", cases)
    assert differing(cases, [told(mark) for mark in marks], theirs) == []
    assert {mark.verdict.value for mark in marks} >= {"right", "not_yet", "ask_back"}


def test_choices_orders_and_pairs_are_marked_alike(marker: Page) -> None:
    stream = Stream("twin places")
    cases, ours = [], []
    for seed in range(2500):
        for question in (small.CHOICE, small.SEVERAL, small.ORDER, small.MATCH):
            made = make_item(question, str(seed), small.WORDS["en"], small.BOOK)
            places = [stream.below(6) - 1 for _ in range(stream.below(6))]
            if stream.below(2):
                places = stream.shuffle(range(len(getattr(made, "order", ()))))
            if isinstance(made, ChoiceItem):
                name, mark = "markChoice", mark_choice(made, places)
            elif isinstance(made, OrderItem):
                name, mark = "markOrder", mark_order(made, places)
            else:
                assert isinstance(made, MatchItem)
                name, mark = "markMatch", mark_match(made, places)
            cases.append([name, made.model_dump(mode="json"), places])
            ours.append(told(mark))
    theirs = run(marker, "data.map(c => Tankschool.marker[c[0]](c[1], c[2]))", cases)
    assert differing(cases, ours, theirs) == []


def test_scenarios_are_marked_alike_with_errors_carried_forward(marker: Page) -> None:
    stream = Stream("twin scenario")
    item = make_scenario(small.SCENARIO, small.PLACE, small.WORDS["en"], small.BOOK)
    cases, ours = [], []
    for _ in range(2500):
        own: dict[str, float] = {}
        answers: dict[str, str] = {}
        for part in item.parts:
            way = stream.below(8)
            if way < 5:  # carried on from the learner's own numbers, perhaps with a mistake
                wrong = list(part.wrong)[:1] if way == 0 else []
                value = small.BOOK.work_out({**item.givens, **own}, [part.asks], wrong, check=False)[part.asks]
                own[part.asks] = value
                answers[part.id] = show(value, max(part.places, 2)) if way < 4 else show_full(value)
            elif way == 5:
                answers[part.id] = typed(stream)
            elif way == 6:
                answers[part.id] = str(stream.below(50))
        cases.append(answers)
        ours.append([told(mark) for mark in mark_scenario(item, answers, small.BOOK)])
    data = [item.model_dump(mode="json"), cases]
    theirs = run(marker, "data[1].map(answers => Tankschool.marker.markScenario(data[0], answers))", data)
    assert differing(cases, ours, theirs) == []
    assert sum(mark["verdict"] == "right_from_earlier" for marks in ours for mark in marks) > 100


def test_marks_are_said_in_the_same_words(marker: Page) -> None:
    words = small.WORDS["en"]
    made = make_item(small.WIRES, "1", words, small.BOOK)
    choice = make_item(small.CHOICE, "1", words, small.BOOK)
    assert isinstance(made, NumberItem)
    assert isinstance(choice, ChoiceItem)
    marks = [mark_number(made, text) for text in (made.shown_key, "99", "5 cubits", "", "many")]
    marks += [mark_number(made, show(value, 0)) for value in made.wrong.values()]
    marks += [mark_choice(choice, [1]), mark_choice(choice, [0, 1])]
    say = "(key, values) => data[1][key].replace(/\\{([a-z]+)\\}/g, (slot, name) => values[name])"
    data = [[told(mark) for mark in marks], dict(words.texts)]
    theirs = run(marker, f"data[0].map(mark => Tankschool.marker.messages(mark, {say}))", data)
    assert [list(messages(mark, words)) for mark in marks] == theirs
