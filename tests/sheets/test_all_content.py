"""All that the course says fits on its sheets: every module, scenario and practical, with the longest name there is."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from generator.curriculum import CourseContent, load
from generator.exercises import Person, make_set
from generator.sheets import key_pdf, pictures_pdf, practical_pdf, scenario_pdf, strip_pdf, worksheet_pdf
from generator.sheets.page import A4
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import recording

pytestmark = pytest.mark.long  # two minutes
LONGEST = {
    "en": "Maharajadhiraja Wimmamwaramma of the Upper Terrace beside the slow spring of the goat ford",
    "hi": "श्रीमती क्षत्राणीकुँवर ज्ञानेश्वरीप्रसाद त्रिविक्रमसिंह, ऊपरी टोले के धीमे धारे के पास वाली",
}


@pytest.fixture(scope="module")
def course() -> CourseContent:
    loaded = load(Path(__file__).parents[2])
    assert loaded.content is not None
    return loaded.content


def overflows(make: Callable[[], bytes]) -> list[str]:
    with recording() as made:
        make()
    return faults(made, *A4)


@pytest.mark.parametrize("language", ["en", "hi"])
def test_every_question_of_every_module_fits_on_worksheet_key_and_strip(course: CourseContent, language: str) -> None:
    people = [Person(LONGEST[language], language)]
    for module in course.modules:
        record = make_set(course, module, people, "all", language, tool="test")
        assert overflows(lambda record=record: worksheet_pdf(record, course)) == [], module  # type: ignore[misc]
        assert overflows(lambda record=record: key_pdf(record, course)) == [], module  # type: ignore[misc]
        assert overflows(lambda record=record: strip_pdf(record, course)) == [], module  # type: ignore[misc]


@pytest.mark.parametrize("language", ["en", "hi"])
def test_every_card_scenario_and_practical_fits_on_its_sheet(course: CourseContent, language: str) -> None:
    kinds = {pictures_pdf: course.modules, scenario_pdf: course.scenarios, practical_pdf: course.practicals}
    for make, names in kinds.items():
        assert len(names) > 10
        for name in names:
            assert overflows(lambda make=make, name=name: make(name, language, course)) == [], name  # type: ignore[misc]
