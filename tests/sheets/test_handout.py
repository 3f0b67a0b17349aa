from __future__ import annotations

import dataclasses

import pytest

from generator.calculations import BOOK
from generator.curriculum import CautionBlock, CourseContent, ExerciseBlock, FormulaBlock, WorkedBlock
from generator.formula import show
from generator.problems import RefusedError
from generator.sheets import handout_pdf
from generator.sheets.figure_flow import NARROWEST
from generator.sheets.page import A4
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import recording


def with_blocks(content: CourseContent, *blocks: object) -> CourseContent:
    """The course with other blocks in its card."""
    texts = dict.fromkeys(content.handout_texts, blocks)
    return dataclasses.replace(content, handout_texts=texts)  # type: ignore[arg-type]


@pytest.mark.parametrize("language", ["en", "hi"])
def test_the_frame_card_has_one_page_and_nothing_overflows(language: str, content: CourseContent) -> None:
    with recording() as made:
        data = handout_pdf("frame-card", language, content)
    assert made.pages == 1
    assert faults(made, *A4) == []
    assert handout_pdf("frame-card", language, content) == data


@pytest.mark.parametrize("language", ["en", "hi"])
def test_all_kinds_of_block(language: str, content: CourseContent) -> None:
    caution = content.modules["frame"].cautions[0]
    blocks = [FormulaBlock(name) for name in BOOK.quantities]
    blocks.append(WorkedBlock("hoop_count", "hill-school"))  # type: ignore[arg-type]
    with recording() as made:
        handout_pdf("frame-card", language, with_blocks(content, CautionBlock(caution.id), *blocks))
    text = " ".join(made.text().split())
    assert " ".join(caution.text[language].split()) in text
    count = content.values("hill-school")["hoop_count"]
    assert text.count(show(count, 0)) >= 1
    assert faults(made, *A4) == []


def test_an_exercise_is_refused_in_words(content: CourseContent) -> None:
    with pytest.raises(RefusedError, match="can't hold the exercise 'round-the-ring'"):
        handout_pdf("frame-card", "en", with_blocks(content, ExerciseBlock("round-the-ring")))


def test_the_narrowest_drawing_still_has_letters_of_9_points(content: CourseContent) -> None:
    from generator.figures.ink import HANDS
    from generator.figures.scene import VIEW

    assert min(hand.size for hand in HANDS.values()) * NARROWEST / VIEW == pytest.approx(9.0)
