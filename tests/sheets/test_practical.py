from __future__ import annotations

import pytest

from generator.curriculum import CourseContent
from generator.sheets import practical_pdf
from generator.sheets.page import A4
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import recording


@pytest.mark.parametrize("language", ["en", "hi"])
def test_every_step_with_its_boxes_and_nothing_overflows(language: str, content: CourseContent) -> None:
    for practical in content.practicals.values():
        with recording() as made:
            data = practical_pdf(practical.id, language, content)
        assert faults(made, *A4) == []
        text = " ".join(made.text().split())
        boxes = [shape for shape in made.shapes if shape[3] - shape[1] == shape[4] - shape[2] == 20]
        assert len(boxes) == 3 * len(practical.steps)
        for step in practical.steps:
            assert " ".join(step.text[language].split()) in text
        assert practical_pdf(practical.id, language, content) == data


@pytest.mark.parametrize("language", ["en", "hi"])
def test_a_critical_step_is_told_by_word_and_by_shape(language: str, content: CourseContent) -> None:
    practical = content.practicals["close-a-ring"]
    critical = sum(step.critical for step in practical.steps)
    with recording() as made:
        practical_pdf(practical.id, language, content)
    assert critical
    word = content.words[language].say("sheet.critical")
    told = "".join(made.text().split())
    assert told.count("".join(f"{word}:".split())) == critical + 1, "one for each step and one that explains the word"
    solid = [operation for operation in made.operations if operation[0] == "path" and operation[2].get("fill")]
    assert len(solid) == critical + 1, "one for each step and one that explains the sign"
