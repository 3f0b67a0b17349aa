"""The report on paper: the first page says what to change, nothing overflows, the same bytes again."""

from __future__ import annotations

import pytest

from generator.curriculum import CourseContent
from generator.sheets.analysis import analysis_pdf
from generator.sheets.page import A4
from tests.assessment.test_report import whole_report
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import recording


@pytest.mark.parametrize("language", ["en", "hi"])
def test_the_report_holds_every_chapter_and_nothing_overflows(language: str, content: CourseContent) -> None:
    words = content.words[language]
    told = whole_report(words)
    with recording() as made:
        data = analysis_pdf(told, words, "1.0")
    assert faults(made, *A4) == []
    first = " ".join(made.text(1).split())
    for change in told.changes:
        assert " ".join(change.sentence.split())[:25] in first
    text = " ".join(made.text().split())
    for chapter in told.chapters:
        assert chapter.section.heading in text
    assert words.say("analyse.told")[:25] in first
    assert analysis_pdf(told, words, "1.0") == data
