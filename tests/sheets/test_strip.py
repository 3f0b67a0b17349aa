"""Marking strips: every answer of a page, each at the height at which its question stands."""

from __future__ import annotations

import pytest

from generator.curriculum import CourseContent
from generator.exercises import Record
from generator.sheets import strip_pdf, worksheet_pdf
from generator.sheets.key import short_answer
from generator.sheets.styles import PAGE_HEIGHT, PAGE_WIDTH, TEXT_WIDTH
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import recording


@pytest.mark.parametrize("language", ["en", "hi"])
def test_nothing_overflows_and_the_same_record_gives_the_same_bytes(
    content: CourseContent, records: dict[str, Record], language: str
) -> None:
    with recording() as made:
        data = strip_pdf(records[language], content)
    assert faults(made, PAGE_WIDTH, PAGE_HEIGHT) == []
    assert strip_pdf(records[language], content) == data


def test_each_answer_stands_as_high_as_its_question(content: CourseContent, records: dict[str, Record]) -> None:
    record, words = records["en"], content.words["en"]
    with recording() as strips:
        strip_pdf(record, content, [2])
    with recording() as sheet:
        worksheet_pdf(record, content, [2])
    labelled = {label: short_answer(item, words) for label, item, _ in record.learners[1].labelled()}
    numbers = [string for string in sheet.strings if string.x < 80 and string.typed in labelled and string.size == 12]
    asked = dict(zip([string.typed for string in numbers], numbers, strict=True))
    assert set(asked) == set(labelled)
    found = {string.typed.rstrip("."): string for string in strips.strings if string.typed.rstrip(".") in labelled
             and string.typed.endswith(".")}  # fmt: skip
    assert set(found) == set(labelled)
    for label, string in found.items():
        assert abs(string.y - asked[label].y) < 6, label
        beside = [one.typed for one in strips.strings if one.page == string.page and abs(one.y - string.y) < 1
                  and 0 < one.x - string.x < TEXT_WIDTH / 4]  # fmt: skip
        assert " ".join(beside) == labelled[label]
