"""What a trainer draws on the board: each drawing with what it shows in words, to be told while it grows."""

from __future__ import annotations

from collections.abc import Sequence

from generator.figures import Scene
from generator.sheets.card_pages import PictureCard, dealt
from generator.sheets.figure_flow import NARROWEST
from generator.sheets.flow import Column, Piece, Text
from generator.sheets.page import Part, rooms
from generator.sheets.styles import BODY, HEADING, NOTE, PAGE_HEIGHT, PAGE_WIDTH, SUBHEADING, TEXT_WIDTH
from generator.words import Words


def board_pieces(part: Part, scenes: Sequence[Scene], words: Words) -> list[Piece]:
    """A heading and the drawings, to stand after all other pieces of a part.

    Args:
        part: with what comes before.
        scenes: in the order in which they are drawn; at least one. Where the first one doesn't fit into what is left of
            the page, the first that does goes before it.
        words: of their language.
    """
    heading: list[Piece] = [
        Text(words.say("workshop.board"), HEADING),
        Text(words.say("workshop.board_note"), BODY.but(keep=True)),
    ]
    announced = HEADING.before + Column(heading).fit(TEXT_WIDTH) + BODY.after
    free, whole = rooms(part, PAGE_WIDTH, PAGE_HEIGHT)
    cards = [_card(scene) for scene in scenes]
    least = [announced + card.sized(NARROWEST, TEXT_WIDTH).height for card in cards]
    fits = [place for place, height in enumerate(least) if height <= free]
    if fits:
        cards.insert(0, cards.pop(fits[0]))
    first = free if fits else whole  # where none fits, the first takes its heading to the next page
    return [*heading, *dealt(cards, TEXT_WIDTH, first - announced, whole, gap=6.0)]


def _card(scene: Scene) -> PictureCard:
    def said() -> list[Piece]:
        return [Text(scene.title, SUBHEADING.but(before=0.0, keep=False)), Text(scene.description, NOTE)]

    return PictureCard(scene, said, said)
