"""A drawing while it is made: paper units from the top left corner in, metres of the scene out.

Margins, rows of text and headings are thought of in paper units, whatever the size of the tank.
"""

from __future__ import annotations

from collections.abc import Sequence

from generator.figures.fonts import ASCENT, shaped_width
from generator.figures.ink import HANDS, Ink, Letter
from generator.figures.layout import LINE, Block, Placer, wrap
from generator.figures.scene import VIEW, Area, Circle, Element, Label, Point, Scene
from generator.words import Words

MARGIN = 6.0
"""Paper left free all round."""
DISC = 10.5
"""Radius of a disc with a number or a letter."""
_HEADING_INDENT = 30.0


class Page:
    """Collects the elements of one drawing.

    Args:
        unit: metres that one paper unit stands for.
        height: of the frame, paper units.
    """

    def __init__(self, unit: float, height: float) -> None:
        self.unit = unit
        self.height = height
        self.elements: list[Element] = []
        self.areas: list[Area] = []
        self._texts: list[tuple[Block, Sequence[Point], Point | None]] = []

    def at(self, x: float, down: float) -> Point:
        """A point of the scene from paper units, counted from the left and from the top."""
        return x * self.unit, (self.height - down) * self.unit

    def add(self, *elements: Element) -> None:
        """Puts elements in front of what is there."""
        self.elements += elements

    def heading(self, number: int, text: str, down: float) -> None:
        """A number in a disc and a heading beside it; needs `heading_height` of paper."""
        size = HANDS[Letter.DISC].size
        self.disc(number, MARGIN + DISC, down + DISC)
        lines = wrap(text, Letter.HEADING, VIEW - MARGIN - _HEADING_INDENT)
        base = down + DISC + 0.36 * size
        for line in lines:
            self.add(Label(self.at(_HEADING_INDENT, base), line, "start", Letter.HEADING))
            base += LINE * HANDS[Letter.HEADING].size

    def disc(self, number: int | str, x: float, down: float) -> None:
        """A number or a letter in a disc: it ties two places together, or a place and the question about it."""
        self.add(
            Circle(self.at(x, down), DISC * self.unit, Ink.NUMBER_DISC),
            Label(self.at(x, down + 0.36 * HANDS[Letter.DISC].size), str(number), "middle", Letter.DISC),
        )

    def note(self, lines: Sequence[str], down: float) -> None:
        """Lines of a note, the first one hanging from a height."""
        size = HANDS[Letter.NOTE].size
        for row, line in enumerate(lines):
            base = down + ASCENT * size + row * LINE * size
            self.add(Label(self.at(MARGIN, base), line, "start", Letter.NOTE))

    def row(self, name: str, value: str, centre: float, base: float) -> tuple[Label, Label]:
        """A name and its number side by side, centred."""
        gap = 0.35 * HANDS[Letter.NAME].size
        first, second = (_width(text, letter) for text, letter in ((name, Letter.NAME), (value, Letter.VALUE)))
        left = centre - (first + gap + second) / 2
        return (
            Label(self.at(left, base), name, "start", Letter.NAME),
            Label(self.at(left + first + gap, base), value, "start", Letter.VALUE),
        )

    def text(self, block: Block, tops: Sequence[Point], target: Point | None = None) -> None:
        """A block of text to be placed once all lines are drawn.

        Args:
            block: the text.
            tops: where its first line may hang from, paper units, best first.
            target: what it names, as a point of the scene; a line leads there.
        """
        self._texts.append((block, tops, target))

    def scene(self, title: str, description: str, words: Words) -> Scene:
        """The finished drawing.

        Raises:
            NoRoomError: a text fits nowhere.
        """
        width, height = VIEW * self.unit, self.height * self.unit
        placer = Placer(width, height, self.unit, self.elements)
        for element in self.elements:
            placer.take(element)
        for block, tops, target in self._texts:
            labels, leaders = placer.put(block, [self.at(*top) for top in tops], target)
            self.add(*labels, *leaders)
        return Scene(width, height, tuple(self.elements), title, description, words.language, tuple(self.areas))


def heading_height(text: str) -> float:
    """Paper that a heading needs, with a gap below."""
    rows = len(wrap(text, Letter.HEADING, VIEW - MARGIN - _HEADING_INDENT))
    return 2 * DISC + (rows - 1) * LINE * HANDS[Letter.HEADING].size + 5.0


def note_lines(text: str) -> tuple[str, ...]:
    """A note in lines as wide as the drawing."""
    return wrap(text, Letter.NOTE, VIEW - 2 * MARGIN)


def note_height(lines: Sequence[str]) -> float:
    """Paper that the lines of a note need."""
    return len(lines) * LINE * HANDS[Letter.NOTE].size + 2.0


def _width(text: str, letter: Letter) -> float:
    hand = HANDS[letter]
    return shaped_width(text, hand.font, hand.size)
