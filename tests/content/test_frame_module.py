"""The module on the frame is complete, readable and safe to teach in every language of the course."""

from __future__ import annotations

import re
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

from generator.calculations import BOOK
from generator.curriculum import load
from generator.curriculum.models import ChoiceQuestion, MatchQuestion, NumberQuestion, OrderQuestion
from generator.exercises import check, separability
from generator.sheets import handout_pdf
from tests.content import reading

ROOT = Path(__file__).parents[2]
LESSONS = ROOT / "course" / "modules" / "07-frame"
AVOIDED = frozenset(
    {
        "ऊर्ध्वाधर", "क्षैतिज", "प्रबलन", "व्यास", "त्रिज्या", "परिधि", "सुनिश्चित",
        "उपर्युक्त", "अथवा", "तथा", "एवं", "हेतु", "यदि", "अपितु", "जानी", "चाहिये",
        "करो", "गारा", "फेल",
    }
)  # fmt: skip
"""Office and schoolbook words, forms too familiar for elders, and words with a second meaning."""


@pytest.fixture(scope="module")
def content():
    loaded = load(ROOT)
    assert loaded.problems == ()
    assert loaded.content is not None
    return loaded.content


def lesson(language: str) -> str:
    return (LESSONS / f"lesson.{language}.md").read_text(encoding="utf-8")


def questions(content, *kinds):
    return [question for question in content.questions_of("frame") if isinstance(question, kinds)]


def test_at_least_eight_number_questions_ask_for_at_least_six_quantities(content):
    numbers = questions(content, NumberQuestion)
    assert len(numbers) >= 8
    assert len({question.asks for question in numbers}) >= 6


def test_every_number_question_tells_two_mistakes_apart(content):
    for question in questions(content, NumberQuestion):
        assert len(question.misconceptions) >= 2, question.id
        assert all(BOOK.misconceptions[name] for name in question.misconceptions), question.id


def test_at_least_eight_others_of_three_kinds(content):
    others = questions(content, ChoiceQuestion, OrderQuestion, MatchQuestion)
    assert len(others) >= 8
    assert {question.kind for question in others} == {"choice", "order", "match"}


def test_every_option_says_what_would_happen_on_the_hill(content):
    for question in questions(content, ChoiceQuestion):
        for option in question.options:
            assert option.why is not None, question.id
            assert set(option.why) == set(content.course.languages), question.id


def test_the_practical_has_three_to_six_critical_steps_with_a_limit_each(content):
    steps = content.practicals["close-a-ring"].steps
    critical = [step for step in steps if step.critical]
    assert 3 <= len(critical) <= 6
    assert all(step.tolerance for step in steps)


def test_the_scenario_links_at_least_five_parts(content):
    scenario = content.scenarios["hill-school-frame"]
    asked = [part.asks for part in scenario.parts]
    assert len(asked) >= 5
    linked = [
        later for place, later in enumerate(asked) if any(early in chain(later, asked) for early in asked[:place])
    ]
    assert len(linked) >= 3, "parts that build on an earlier part"


def chain(asked: str, seen: list[str]) -> set[str]:
    """All quantities below `asked`."""
    found: set[str] = set()
    queue = [asked]
    while queue:
        for name in getattr(BOOK.quantities.get(queue.pop()), "needs", ()):
            if name not in found:
                found.add(name)
                queue.append(name)
    return found


def test_every_competency_of_the_module_is_asked_or_watched(content):
    module = content.modules["frame"]
    asked = {question.competency for question in content.questions_of("frame")}
    asked |= {part.competency for part in content.scenarios["hill-school-frame"].parts}
    assert {outcome.competency for outcome in module.outcomes} <= asked


def test_the_scheme_stays_inside_the_village_build_and_names_critical_competencies(content):
    scheme = content.schemes["frame-hand"]
    assert scheme.status == "provisional"
    assert scheme.scope.largest_volume <= 12
    assert scheme.scope.largest_wall_height <= 2.0
    built = {outcome.competency for name in scheme.modules for outcome in content.modules[name].outcomes}
    critical = {name for name in built if content.competencies[name].critical}
    assert critical == set(scheme.critical_competencies)


@pytest.mark.parametrize("place", ["hill-school", "lower-terrace-herders"])
def test_places_keep_the_limits_of_a_village_build(content, place):
    values = content.values(place)
    assert values["tank_volume"] <= 12
    assert values["water_depth"] <= 2.0
    assert values["water_depth"] * values["inside_radius"] <= 2.5


@pytest.mark.parametrize("language", ["en", "hi"])
def test_the_lesson_shows_figures_cautions_worked_numbers_and_exercises(content, language):
    blocks = [type(block).__name__ for block in content.lessons["frame", language]]
    assert blocks.count("FigureBlock") >= 2
    assert blocks.count("CautionBlock") == len(content.modules["frame"].cautions)
    assert blocks.count("WorkedBlock") >= 3
    assert blocks.count("ExerciseBlock") >= 8


def test_both_languages_ask_for_the_same_things_in_the_same_order():
    asked = {language: re.findall(r"\{\{ (?!plain).*?\}\}", lesson(language)) for language in ("en", "hi")}
    assert asked["en"] == asked["hi"]


@pytest.mark.parametrize("language", ["en", "hi"])
def test_the_card_fits_on_one_page(content, language):
    pages = PdfReader(BytesIO(handout_pdf("frame-card", language, content))).pages
    assert len(pages) == 1


def test_english_is_at_grade_six_with_short_sentences():
    text = lesson("en")
    assert reading.grade(text) < 6
    assert reading.average_length(text) <= 10
    assert reading.too_long(text, 18) == []


def test_the_english_handout_is_easier_still():
    text = (ROOT / "handouts" / "frame-card.en.md").read_text(encoding="utf-8")
    assert reading.grade(text) <= 4
    assert reading.too_long(text, 18) == []


def test_the_grade_counter_finds_office_english():
    hard = (
        "Reinforcement installation necessitates verification of dimensional conformity prior to application of mortar."
    )
    assert reading.grade(hard) > 12


def test_hindi_is_spoken_and_short():
    text = lesson("hi")
    words = reading.hindi_words(text)
    assert reading.average_length(text) <= 11
    assert reading.too_long(text, 16) == []
    assert sum(map(reading.aksharas, words)) / len(words) <= 2.4
    assert 100 * sum(map(reading.conjuncts, words)) / len(words) <= 15


def test_the_hindi_handout_is_shorter_still():
    text = (ROOT / "handouts" / "frame-card.hi.md").read_text(encoding="utf-8")
    assert reading.average_length(text) <= 8
    assert reading.too_long(text, 16) == []


def test_hindi_texts_keep_away_from_office_words():
    files = [*LESSONS.glob("*.hi.md"), *(ROOT / "handouts").glob("frame-*.hi.md")]
    files += [*LESSONS.glob("*.yaml"), ROOT / "course" / "competencies.yaml", *(ROOT / "quizzes").glob("*/*.yaml")]
    for file in files:
        text = file.read_text(encoding="utf-8")
        for word in AVOIDED:
            assert not re.search(rf"(?<![\u0900-\u097f]){word}(?![\u0900-\u097f])", text), f"{file.name}: {word}"


def test_hindi_sheets_have_latin_digits_and_no_digit_before_the_danda():
    for file in [
        LESSONS / "lesson.hi.md",
        *(ROOT / "handouts").glob("frame-*.hi.md"),
        *(ROOT / "quizzes").glob("*/*.yaml"),
    ]:
        text = file.read_text(encoding="utf-8")
        assert not re.search("[०-९]", text), file.name
        assert not re.search("[0-9]।", text), file.name


def test_most_drawn_numbers_tell_every_mistake_apart(content):
    assert check(content) == []
    for question in questions(content, NumberQuestion):
        row = separability(question)
        assert row.kept + row.uneven > 0.7, question.id
        assert row.kept > 0.5, question.id
