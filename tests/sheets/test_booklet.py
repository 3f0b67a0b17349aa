"""The build booklet: all of a plan, in both languages, nothing overflowing, the same bytes again."""

from __future__ import annotations

import pytest

from generator.curriculum import CourseContent
from generator.plans import Plan, RoofKind, Site, Wish, Zone, make_plan, sections
from generator.sheets import booklet_pdf
from generator.sheets.page import A4
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import recording

WISHES = [
    Wish(1500.0),
    Wish(9000.0, Site(slope=12)),
    Wish(45_000.0, Site(soil="stiff_clay")),
    Wish(8000.0, Site(zones=(Zone.SNOW_OR_FROST,)), roof=RoofKind.COLUMN),
]


def planned(wish: Wish) -> Plan:
    found = make_plan(wish)
    assert isinstance(found, Plan)
    return found


@pytest.mark.parametrize("language", ["en", "hi"])
@pytest.mark.parametrize("wish", WISHES)
def test_a_booklet_holds_every_section_and_nothing_overflows(wish: Wish, language: str, content: CourseContent) -> None:
    words, plan = content.words[language], planned(wish)
    with recording() as made:
        data = booklet_pdf(plan, words, "1.0")
    assert faults(made, *A4) == []
    text = " ".join(made.text().split())
    for section in sections(plan, words):
        assert section.heading in text
        for line in section.lines:
            assert " ".join(line.split())[:30] in text
    assert booklet_pdf(plan, words, "1.0") == data


def test_an_engineers_tank_says_so_on_its_first_page(content: CourseContent) -> None:
    with recording() as made:
        booklet_pdf(planned(WISHES[2]), content.words["en"], "1.0")
    assert "STOP: a licensed engineer signs this plan" in " ".join(made.text(1).split())


def test_another_plan_has_another_hash(content: CourseContent) -> None:
    words = content.words["en"]
    one, other = (booklet_pdf(planned(Wish(litres)), words, "1.0") for litres in (9000.0, 9100.0))
    assert one != other
