"""Booklets: as few pages as can be, room to work in that fills them, and decisions in the story's order."""

from __future__ import annotations

import pytest

from generator.curriculum import CourseContent
from generator.sheets import scenario_pdf
from generator.sheets.flow import Piece, Space
from generator.sheets.page import Part
from generator.sheets.scenario_booklet import _on_full_pages
from tests.sheets.recorder import recording


@pytest.mark.parametrize(("count", "room"), [(8, 90), (4, 90), (2, 150), (10, 54)])
def test_room_to_work_in_grows_until_the_pages_are_full(content: CourseContent, count: int, room: int) -> None:
    """Each question needs 90 points and its room. Five with the least room stand on a page, four with 92 points."""

    def booklet(room: float) -> Part:
        pieces: list[Piece] = [Space(90.0 + room) for _ in range(count)]
        return Part("name", "page", "title", "", content.words["en"], pieces)

    chosen = _on_full_pages(booklet)
    assert [piece.fit(100.0) for piece in chosen.pieces] == [90.0 + room] * count


@pytest.mark.parametrize("language", ["en", "hi"])
def test_questions_stand_in_the_order_of_their_numbers(content: CourseContent, language: str) -> None:
    scenario = content.scenarios["buy-and-carry"]
    with recording() as made:
        scenario_pdf(scenario.id, language, content)
    said = "".join(made.text().split())
    told = [part.text[language] for part in scenario.parts]
    told += [content.questions[key].text[language] for key in scenario.decisions]
    places = [said.index("".join(text.split())[:20]) for text in told]
    assert len(places) > 8
    assert places == sorted(places)
