from __future__ import annotations

from dataclasses import replace

import pytest

from generator.curriculum import CourseContent
from generator.sheets import practical_pdf
from generator.sheets.flow import Grid, Text
from generator.sheets.page import A4, part_pages
from generator.sheets.practical import practical_part
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import recording


@pytest.mark.parametrize("language", ["en", "hi"])
def test_every_step_with_its_boxes_and_nothing_overflows(language: str, content: CourseContent) -> None:
    for practical in content.practicals.values():
        with recording() as made:
            data = practical_pdf(practical.id, language, content)
        assert faults(made, *A4) == []
        text = " ".join(made.text().split())
        boxes = [shape for shape in made.shapes if is_tick(shape)]
        assert len(boxes) == 3 * len(practical.steps)
        for step in practical.steps:
            assert " ".join(step.text[language].split()) in text
        assert practical_pdf(practical.id, language, content) == data


def is_tick(shape: tuple[int, float, float, float, float]) -> bool:
    """Whether a shape is a box to tick, in the wide or in the close setting."""
    _, left, low, right, top = shape
    return any(right - left == pytest.approx(side) and top - low == pytest.approx(side) for side in (18, 20))


def with_steps(content: CourseContent, count: int) -> CourseContent:
    """The course with a checklist of so many steps."""
    practical = content.practicals["teach-one-step"]
    first = practical.steps[0]
    steps = tuple(first.model_copy(update={"id": f"step-{number}"}) for number in range(count))
    changed = practical.model_copy(update={"steps": steps})
    return replace(content, practicals={**content.practicals, practical.id: changed})


@pytest.mark.parametrize(("count", "pages", "notes"), [(3, 1, False), (7, 1, False), (10, 2, True), (17, 2, False)])
def test_a_checklist_keeps_to_one_page_or_has_lines_for_what_was_not_done(
    content: CourseContent, count: int, pages: int, notes: bool
) -> None:
    """Lines stand only where the page that comes anyway has room for them."""
    with recording() as made:
        practical_pdf("teach-one-step", "en", with_steps(content, count))
    assert made.pages == pages
    assert (content.words["en"].say("sheet.what_i_saw") in made.text()) == notes
    assert faults(made, *A4) == []


@pytest.mark.parametrize("language", ["en", "hi"])
def test_every_shipped_checklist_of_two_pages_has_lines_for_what_was_not_done(
    content: CourseContent, language: str
) -> None:
    saw = content.words[language].say("sheet.what_i_saw")
    parts = [practical_part(name, language, content) for name in content.practicals]
    pages = [len(part_pages(part, *A4)) for part in parts]
    noted = [any(isinstance(piece, Grid) and saw in heads(piece) for piece in part.pieces) for part in parts]
    assert noted == [count == 2 for count in pages]
    assert max(pages) == 2
    assert pages.count(1) >= len(pages) / 2


def heads(table: Grid) -> list[str]:
    """What the head of a table says."""
    return [cell.plain() for cell in table._head if isinstance(cell, Text)]


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
