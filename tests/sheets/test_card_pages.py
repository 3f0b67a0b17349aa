"""Cards on pages: their order, as few pages as can be, no page left empty, and drawings that grow but never shrink."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from generator.figures import Scene
from generator.sheets.card_pages import PictureCard, dealt
from generator.sheets.figure_flow import NARROWEST
from generator.sheets.flow import Piece, Text
from generator.sheets.styles import BODY, TEXT_WIDTH

GAP, ROOM = 6.0, 700.0


def card(shape: float, *, words: int = 1) -> PictureCard:
    """A drawing so many times as high as it is wide."""
    scene = Scene(1.0, shape, (), "a drawing", "nothing", "en")

    def said() -> Sequence[Piece]:
        return [Text("word", BODY) for _ in range(words)]

    return PictureCard(scene, said, said)


def pages(cards: Sequence[PictureCard], first: float = ROOM) -> list[list[float]]:
    """Heights of the cards of each page."""
    found: list[list[float]] = [[]]
    for piece in dealt(cards, TEXT_WIDTH, first, ROOM, GAP):
        if piece.begins_page:
            found.append([])
        found[-1].append(piece.fit(TEXT_WIDTH))
    return found


def test_a_lone_high_drawing_grows_until_its_page_is_full() -> None:
    (only,) = pages([card(1.8)])
    assert 0.95 * ROOM < only[0] <= ROOM


def test_a_flat_drawing_grows_no_wider_than_the_page() -> None:
    (only,) = pages([card(0.5)])
    assert only[0] < 0.5 * TEXT_WIDTH + 60


def test_there_are_as_few_pages_as_at_the_least_size() -> None:
    """Three of 0.8 times the least width stand on a page at their least size; five of them need two pages."""
    assert [len(page) for page in pages([card(0.8)] * 3)] == [3]
    assert len(pages([card(0.8)] * 5)) == 2


def test_cards_are_shared_out_rather_than_crowded_on_the_first_page() -> None:
    """As many as fit would be three, then one."""
    assert [len(page) for page in pages([card(0.8)] * 4)] == [2, 2]


def test_a_short_first_page_gets_fewer() -> None:
    assert [len(page) for page in pages([card(0.8)] * 3, first=300.0)] == [1, 2]


def test_no_page_is_fuller_than_it_may_be() -> None:
    for page in pages([card(shape) for shape in (0.6, 1.7, 0.9, 0.4, 1.2, 2.0, 0.5)]):
        assert sum(page) + GAP * (len(page) - 1) <= ROOM


def test_a_drawing_too_high_for_the_page_keeps_its_least_size() -> None:
    """It moves on to a page of its own, where there is more room."""
    (only,) = pages([card(2.0)], first=300.0)
    assert only[0] == pytest.approx(2.0 * NARROWEST + 12.0)
