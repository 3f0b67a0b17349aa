"""The modules on water and on mortar are complete, readable and safe to teach in every language of the course."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from generator.calculations import BOOK
from generator.curriculum import load
from generator.curriculum.models import ChoiceQuestion, NumberQuestion
from generator.exercises import check, separability
from tests.content import reading
from tests.content.test_frame_module import AVOIDED, chain

ROOT = Path(__file__).parents[2]
MODULES = {"how-much-water": "02-how-much-water", "mortar": "09-mortar"}
pytestmark = pytest.mark.parametrize("module", MODULES)


@pytest.fixture(scope="module")
def content():
    loaded = load(ROOT)
    assert loaded.problems == ()
    assert loaded.content is not None
    return loaded.content


def lesson(module: str, language: str) -> str:
    return (ROOT / "course" / "modules" / MODULES[module] / f"lesson.{language}.md").read_text(encoding="utf-8")


def test_twelve_to_eighteen_number_questions_and_fourteen_others(content, module):
    asked = content.questions_of(module)
    numbers = [question for question in asked if isinstance(question, NumberQuestion)]
    assert 12 <= len(numbers) <= 18
    assert len(asked) - len(numbers) >= 14
    assert {question.kind for question in asked} == {"number", "choice", "order", "match", "spot", "spoken"}
    forms = [(question.asks, tuple(sorted(question.given))) for question in numbers]
    assert all(forms.count(form) <= 4 for form in forms)


def test_every_number_question_tells_two_mistakes_apart(content, module):
    for question in content.questions_of(module):
        if isinstance(question, NumberQuestion):
            assert len(question.misconceptions) >= 2, question.id
            assert all(BOOK.misconceptions[name] for name in question.misconceptions), question.id
            row = separability(question)
            assert row.kept > 0.5, question.id
            assert row.kept + row.uneven > 0.7, question.id


def test_nothing_else_is_wrong_with_the_questions(content, module):
    assert [problem for problem in check(content) if problem.file.endswith(f"{module}.yaml")] == []


def test_every_option_says_what_would_happen_on_the_hill(content, module):
    for question in content.questions_of(module):
        if isinstance(question, ChoiceQuestion):
            assert all(option.why is not None for option in question.options), question.id


def test_every_competency_is_asked_and_every_question_has_an_outcome(content, module):
    outcomes = {outcome.competency for outcome in content.modules[module].outcomes}
    assert outcomes == {question.competency for question in content.questions_of(module)}
    assert any(content.competencies[name].critical for name in outcomes)


def test_practicals_have_critical_steps_with_a_limit_each(content, module):
    for name in content.modules[module].practicals:
        steps = content.practicals[name].steps
        assert 3 <= sum(step.critical for step in steps) <= 6
        assert all(step.tolerance for step in steps)


def test_parts_of_the_job_build_on_each_other_and_on_numbers_that_can_be_read(content, module):
    for name in content.modules[module].scenarios:
        scenario = content.scenarios[name]
        asked = [part.asks for part in scenario.parts]
        linked = [later for place, later in enumerate(asked) if chain(later, asked) & set(asked[:place])]
        assert len(linked) >= 3
        values = content.values(scenario.place)
        assert all(len(f"{values[given]:.10g}") <= 6 for given in scenario.given), "no endless digits in a text"


def test_the_place_is_a_village_tank(content, module):
    values = content.values(content.modules[module].place)
    assert values["tank_volume"] <= 12
    assert values["water_depth"] <= 2.0
    assert values["water_depth"] * values["inside_radius"] <= 2.5
    assert values["usable_volume"] >= values["storage_needed_volume"]


def test_every_caution_stands_in_the_lesson_and_eight_to_ten_cards_are_drawn(content, module):
    for language in content.course.languages:
        blocks = [type(block).__name__ for block in content.lessons[module, language]]
        assert blocks.count("CautionBlock") == len(content.modules[module].cautions) >= 4
        assert blocks.count("FigureBlock") >= 2
        assert blocks.count("WorkedBlock") >= 3
        assert blocks.count("ExerciseBlock") >= 20
    assert 8 <= len(content.modules[module].cards) <= 10
    assert any(card.caution for card in content.modules[module].cards)


def test_both_languages_ask_for_the_same_things(module):
    """Sentences may hold their values in another order, because languages do."""
    found = [
        [sorted(re.findall(r"\{\{ (?!plain).*?\}\}", part)) for part in lesson(module, language).split("\n## ")]
        for language in ("en", "hi")
    ]
    assert found[0] == found[1]


def test_english_is_at_grade_six_with_short_sentences(module):
    text = lesson(module, "en")
    assert reading.grade(text) < 6
    assert reading.average_length(text) <= 10
    assert reading.too_long(text, 18) == []


def test_hindi_is_spoken_and_short(module):
    text = lesson(module, "hi")
    words = reading.hindi_words(text)
    assert reading.average_length(text) <= 11
    assert reading.too_long(text, 16) == []
    assert sum(map(reading.aksharas, words)) / len(words) <= 2.4
    assert 100 * sum(map(reading.conjuncts, words)) / len(words) <= 15
    for word in AVOIDED:
        assert not re.search(rf"(?<![\u0900-\u097f]){word}(?![\u0900-\u097f])", text), word
