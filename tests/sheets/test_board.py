"""Drawings for the board: words beside or below each, the heading with the first, an order that fills the page."""

from __future__ import annotations

import pytest

from generator.curriculum import CourseContent
from generator.figures import Scene, draw
from generator.sheets.board import board_pieces
from generator.sheets.flow import Piece, Space
from generator.sheets.page import A4, About, Part, part_pages, sheet_pdf
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import recording


def part(content: CourseContent, pieces: list[Piece], language: str = "en") -> Part:
    return Part("name", "page", "title", "head", content.words[language], pieces)


def drawing(name: str, shape: float) -> Scene:
    """So many times as high as it is wide."""
    return Scene(1.0, shape, (), name, f"{name} is told here", "en")


@pytest.mark.parametrize("language", ["en", "hi"])
def test_every_drawing_is_told_and_nothing_overflows(content: CourseContent, language: str) -> None:
    words = content.words[language]
    for module in (content.modules["frame"], content.modules["plastering"]):
        scenes = [draw(key, content.values(module.place), words) for key in module.figures]
        before: list[Piece] = [Space(300.0)]
        pieces = board_pieces(part(content, before, language), scenes, words)
        with recording() as made:
            sheet_pdf(About("name", language, "1", "hash"), [part(content, [*before, *pieces], language)])
        assert faults(made, *A4) == [], module.id
        said = "".join(made.text().split())
        for scene in scenes:
            assert "".join(scene.description.split()) in said


def test_a_drawing_that_fits_what_is_left_of_the_page_goes_before_one_that_does_not(content: CourseContent) -> None:
    scenes = [drawing("high", 1.8), drawing("flat", 0.7), drawing("flatter", 0.4)]
    before: list[Piece] = [Space(380.0)]
    pieces = board_pieces(part(content, before), scenes, content.words["en"])
    pages = part_pages(part(content, [*before, *pieces]), *A4)
    assert len(pages[0]) == 4, "what comes before, two lines of heading and a drawing"
    with recording() as made:
        sheet_pdf(About("name", "en", "1", "hash"), [part(content, [*before, *pieces])])
    assert [made.text().index(f"{name} is told") for name in ("flat", "high", "flatter")] == sorted(
        made.text().index(f"{name} is told") for name in ("flat", "high", "flatter")
    )


def test_where_none_fits_the_heading_goes_with_the_first(content: CourseContent) -> None:
    before: list[Piece] = [Space(600.0)]
    pieces = board_pieces(part(content, before), [drawing("high", 1.8)], content.words["en"])
    pages = part_pages(part(content, [*before, *pieces]), *A4)
    assert [len(page) for page in pages] == [1, 3]
