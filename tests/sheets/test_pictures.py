"""Modules in pictures and scenario booklets: every card on a full page, every part, answers on their own pages."""

from __future__ import annotations

from dataclasses import replace
from io import BytesIO

import pytest
from pypdf import PdfReader

from generator.curriculum import CourseContent
from generator.curriculum.models import ChoiceQuestion
from generator.exercises import make_scenario
from generator.problems import RefusedError
from generator.sheets import pictures_pdf, scenario_pdf
from generator.sheets.styles import FOOT, MARGIN, PAGE_HEIGHT, PAGE_WIDTH
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import Recording, recording

LANGUAGES = ("en", "hi")
FULL = 0.8
"""Share of every page that cards fill at least."""


def flat(text: str) -> str:
    return "".join(text.split())


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_card_of_a_module_is_printed_with_its_danger(content: CourseContent, language: str) -> None:
    for module in content.modules.values():
        with recording() as made:
            data = pictures_pdf(module.id, language, content)
        assert faults(made, PAGE_WIDTH, PAGE_HEIGHT) == [], module.id
        assert pictures_pdf(module.id, language, content) == data
        text = flat(made.text())
        for card in module.cards:
            assert flat(card.text[language]) in text
            assert card.caution is None or flat(card.caution[language]) in text
        assert min(filled(made)) > FULL, module.id


def filled(made: Recording) -> list[float]:
    """Of each page, the share of its height that ends with the lowest card's line."""
    lows = [
        min(
            low
            for number, left, low, right, _ in made.shapes
            if number == page and right - left > 400 and low > FOOT - 1
        )
        for page in range(1, made.pages + 1)
    ]
    return [(PAGE_HEIGHT - MARGIN - low) / (PAGE_HEIGHT - MARGIN - FOOT) for low in lows]


def test_a_module_without_cards_is_refused(content: CourseContent) -> None:
    bare = content.modules["frame"].model_copy(update={"cards": ()})
    with pytest.raises(RefusedError, match="no pictures"):
        pictures_pdf("frame", "en", replace(content, modules={**content.modules, "frame": bare}))


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_booklet_tells_the_story_and_keeps_the_answers_on_their_own_pages(
    content: CourseContent, language: str
) -> None:
    words = content.words[language]
    for scenario in content.scenarios.values():
        with recording() as made:
            data = scenario_pdf(scenario.id, language, content)
        assert faults(made, PAGE_WIDTH, PAGE_HEIGHT) == [], scenario.id
        item = make_scenario(scenario, content.values(scenario.place), words)
        key = flat(f"{words.say('sheet.key')} · {item.title}")
        pages = [flat(made.text(number)) for number in range(1, made.pages + 1)]
        first = next(number for number, page in enumerate(pages) if page.startswith(key))
        before = "".join(pages[:first])
        for part in item.parts:
            assert flat(part.text) in before
            shown = flat(words.with_unit(part.shown_key, part.unit))
            assert shown in "".join(pages[first:])
        assert flat(item.text) in before
        assert len(PdfReader(BytesIO(data)).outline) >= 2


def test_the_booklets_drawing_asks_for_what_a_part_asks(content: CourseContent) -> None:
    with_drawing = [scenario for scenario in content.scenarios.values() if scenario.figure]
    assert with_drawing
    for scenario in with_drawing:
        with recording() as made:
            scenario_pdf(scenario.id, "en", content)
        assert "A = ?" in " ".join(made.text().split())


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_booklet_asks_after_the_numbers_what_to_decide_and_keeps_why_for_the_key(
    content: CourseContent, language: str
) -> None:
    scenario = content.scenarios["hill-school-frame"]
    decision = next(one for one in content.questions_of("frame") if isinstance(one, ChoiceQuestion))
    with_decision = scenario.model_copy(update={"decisions": (decision.id,)})
    changed = replace(content, scenarios={**content.scenarios, scenario.id: with_decision})
    with recording() as made:
        scenario_pdf(scenario.id, language, changed)
    assert faults(made, PAGE_WIDTH, PAGE_HEIGHT) == []
    said = flat(made.text())
    last = flat(scenario.parts[-1].text[language])[:30]
    assert said.index(last) < said.index(flat(decision.text[language])[:30])
    for option in decision.options:
        assert flat(option.text[language]) in said
