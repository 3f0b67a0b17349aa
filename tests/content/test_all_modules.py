"""Every module of the course is whole: taught, shown, practised, asked about, readable and safe, in all languages."""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from itertools import pairwise
from pathlib import Path

import pytest

from generator.curriculum import load, warnings
from generator.curriculum.models import ChoiceQuestion, NumberQuestion
from tests.content import reading
from tests.content.test_frame_module import AVOIDED

ROOT = Path(__file__).parents[2]
FOLDERS = sorted(path.name for path in (ROOT / "course" / "modules").iterdir())
LANGUAGES = ("en", "hi")
DANGERS = {
    "wet cement": r"wet cement|lime burns|cement burns",
    "dust": r"dust",
    "cut wire and steel": r"wire|steel",
    "props and a wet roof": r"prop|wet roof",
    "bad air": r"air .*(kill|closed)|gas",
    "chlorine": r"powder into water",
    "drowning": r"drown",
    "lifting": r"two people lift|lift",
    "falls": r"fall",
    "who is below": r"below",
    "drinking water": r"drinking water",
}
"""What the cautions of the course must name, by a word of their English text."""


@pytest.fixture(scope="module")
def content():
    loaded = load(ROOT)
    assert loaded.problems == ()
    assert loaded.content is not None
    return loaded.content


def lesson(folder: str, language: str) -> str:
    return (ROOT / "course" / "modules" / folder / f"lesson.{language}.md").read_text(encoding="utf-8")


def test_eighteen_modules_in_the_order_of_the_build() -> None:
    assert [folder[:2] for folder in FOLDERS] == [f"{number:02}" for number in range(1, 19)]


def test_every_module_is_taught_shown_practised_and_told_to_its_trainer(content) -> None:
    for module in content.modules.values():
        minutes = module.minutes
        assert minutes.do > minutes.talk + minutes.show, module.id
        assert len(module.cards) >= 6, module.id
        assert module.practicals, module.id
        assert len(module.cautions) >= 2, module.id
        assert len(module.summary_card) >= 4, module.id
        assert len(module.ask_a_trainer) >= 3, module.id
        assert len(module.tools) >= 4, module.id


def test_every_module_asks_for_at_least_eight_numbers_and_ten_other_things(content) -> None:
    for module in content.modules:
        kinds = Counter(question.kind for question in content.questions_of(module))
        assert kinds["number"] >= 8, module
        assert sum(kinds.values()) - kinds["number"] >= 10, module


def test_every_outcome_is_asked_or_watched(content) -> None:
    for module in content.modules.values():
        asked = {question.competency for question in content.questions_of(module.id)}
        asked |= {part.competency for key in module.scenarios for part in content.scenarios[key].parts}
        asked |= {content.practicals[key].competency for key in module.practicals}
        assert {outcome.competency for outcome in module.outcomes} <= asked, module.id


def test_the_bank_is_wide(content) -> None:
    questions = [question for question in content.questions.values() if not question.retired]
    numbers = [question for question in questions if isinstance(question, NumberQuestion)]
    assert len(questions) >= 320
    sets: dict[tuple[str, frozenset[str]], int] = defaultdict(int)
    for question in numbers:
        sets[question.asks, frozenset(question.given)] += 1
    assert len(sets) >= 60
    assert max(sets.values()) <= 4
    assert sum(len(question.misconceptions) >= 2 for question in numbers) >= 150
    assert sum(question.kind in ("order", "match") for question in questions) >= 30
    assert sum(question.figure is not None for question in questions) >= 40


def test_choices_have_one_form_and_a_reason_each(content) -> None:
    for question in content.questions.values():
        if not isinstance(question, ChoiceQuestion) or question.retired:
            continue
        assert 3 <= len(question.options) <= 4, question.id
        assert all(option.why is not None for option in question.options), question.id
        texts = [option.text["en"].lower() for option in question.options]
        assert len(set(texts)) == len(texts), question.id
        assert not any(re.fullmatch(r"(all|none) of (the above|these|them)\W*", text) for text in texts), question.id


def test_the_items_are_written_by_the_rules(content) -> None:
    """What a guesser could learn of the author's habits, and what a slow reader stumbles over: see `item_rules`."""
    assert [str(warning) for warning in warnings(content)] == []


def test_no_two_questions_say_the_same(content) -> None:
    seen: dict[str, str] = {}
    for question in content.questions.values():
        plain = re.sub(r"[^a-z ]", "", re.sub(r"\{.*?\}", "", question.text["en"].lower()))
        assert seen.setdefault(" ".join(plain.split()), question.id) == question.id, question.id


def test_key_positions_of_choices_are_dealt_out(content) -> None:
    places = Counter(
        position
        for question in content.questions.values()
        if isinstance(question, ChoiceQuestion)
        for position, option in enumerate(question.options)
        if option.right
    )
    assert min(places[number] for number in range(3)) > 0.2 * sum(places.values())


@pytest.mark.parametrize("folder", FOLDERS)
def test_lessons_are_plain_and_ask_the_same_in_all_languages(folder: str) -> None:
    english, hindi = lesson(folder, "en"), lesson(folder, "hi")
    assert reading.grade(english) < 6
    assert reading.average_length(english) <= 10
    assert reading.too_long(english, 18) == []
    assert reading.average_length(hindi) <= 11
    assert reading.too_long(hindi, 16) == []
    blocks = [re.findall(r"^\{\{ .*? \}\}$", text, re.MULTILINE) for text in (english, hindi)]
    assert blocks[0] == blocks[1]
    values = [set(re.findall(r"\{\{ value.*?\}\}", text)) for text in (english, hindi)]
    assert values[0] == values[1]
    for word in AVOIDED:
        assert not re.search(rf"(?<![\u0900-\u097f]){word}(?![\u0900-\u097f])", hindi), word


def test_every_column_of_a_table_has_its_heading() -> None:
    """Who hears the page is told with each cell what it stands under."""
    files = [*ROOT.glob("course/modules/*/lesson.*.md"), *ROOT.glob("handouts/*.md")]
    heads = [
        (file.name, above)
        for file in files
        for above, below in pairwise(file.read_text("utf-8").splitlines())
        if re.fullmatch(r"\|(:?-+:?\|)+", below.replace(" ", ""))
    ]
    assert len(heads) > 20
    for name, head in heads:
        assert all(cell.strip() for cell in head.strip().strip("|").split("|")), f"{name}: {head}"


def test_every_danger_of_the_work_has_its_caution(content) -> None:
    cautions = [caution.text["en"].lower() for module in content.modules.values() for caution in module.cautions]
    for danger, words in DANGERS.items():
        assert any(re.search(words, text) for text in cautions), danger


def test_ten_days_of_decisions_and_twelve_practicals(content) -> None:
    assert sum(not one.retired for one in content.practicals.values()) >= 12
    for practical in content.practicals.values():
        critical = [step for step in practical.steps if step.critical]
        assert 3 <= len(critical) <= 6, practical.id
        assert all(step.tolerance for step in practical.steps), practical.id
    assert sum(bool(one.decisions) for one in content.scenarios.values()) >= 10


def test_words_and_faults_are_many_and_drawn(content) -> None:
    terms = content.glossary.terms
    assert len(terms) >= 120
    assert sum(term.figure is not None for term in terms) >= 40
    assert len({term.id for term in terms}) == len(terms)
