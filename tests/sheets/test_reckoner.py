from __future__ import annotations

import pytest

from generator.curriculum import CourseContent
from generator.plans import make_reckoner, reckoner_sections
from generator.sheets import reckoner_pdf
from generator.sheets.page import A4
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import recording


@pytest.mark.parametrize("language", ["en", "hi"])
def test_nothing_overflows_and_every_table_stays_on_one_page(language: str, content: CourseContent) -> None:
    words, version = content.words[language], content.course.version
    with recording() as made:
        data = reckoner_pdf(make_reckoner(), words, version)
    assert made.pages == 3
    water = words.say("plan.reckoner.head.water")
    assert [string.page for string in made.strings if string.typed == water] == [1, 2, 3]  # no head is repeated
    assert faults(made, *A4) == []
    assert reckoner_pdf(make_reckoner(), words, version) == data


@pytest.mark.parametrize("language", ["en", "hi"])
def test_every_line_and_cell_of_the_reckoner_is_printed(language: str, content: CourseContent) -> None:
    with recording() as made:
        reckoner_pdf(make_reckoner(), content.words[language], content.course.version)
    text = "".join(made.text().split())
    for section in reckoner_sections(make_reckoner(), content.words[language]):
        for line in (*section.lines, *section.head, *(cell for row in section.rows for cell in row)):
            assert "".join(line.split()) in text, line
    assert text.index("".join(content.words[language].say("band.policy").split())) < text.index("1m³")


def test_bars_stand_on_the_village_page_alone(content: CourseContent) -> None:
    with recording() as made:
        reckoner_pdf(make_reckoner(), content.words["en"], content.course.version)
    pages = {string.page for string in made.strings if "plain bar" in string.typed or "every 0." in string.typed}
    engineer = {string.page for string in made.strings if string.typed.replace("\u00a0", " ") == "50 m³"}
    assert pages == {2}
    assert engineer == {3}
