"""Pictures one below the other, each with names round it: what most drawings of work on the site are made of.

A `Panel` says in its own metres what is drawn and what is named; `stacked` finds the paper for all of it.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from generator.figures.callouts import (
    Callout,
    column_height,
    right_column,
    row_above,
    row_below,
    row_height,
)
from generator.figures.ink import HatchKind, Ink, Letter
from generator.figures.layout import Block
from generator.figures.page import MARGIN, Page, heading_height, note_height, note_lines
from generator.figures.people import limb
from generator.figures.scene import VIEW, Element, Group, Point, Scene
from generator.figures.view import View
from generator.words import Words

_SHARED = "part."
_GAP = 10.0
"""Paper between two pictures, paper units."""
_COLUMN_GAP = 14.0
"""Paper between a picture and the names beside it: room for their lines."""


@dataclass(frozen=True, slots=True)
class Panel:
    """One picture.

    Args:
        left: its edges, metres of the thing; so are the next three.
        low: lower edge.
        right: right edge.
        high: upper edge.
        paint: draws it.
        heading: stands above it, behind its number.
        above: names above; their targets are metres of the thing.
        below: names below.
        beside: names in a column at the right.
        column: width of that column, paper units.
        most_high: height of the picture at most, paper units.
        sky: paper between names above and the picture.
        foot: paper between the picture and names below.
    """

    left: float
    low: float
    right: float
    high: float
    paint: Callable[[View], None]
    heading: str = ""
    above: Sequence[Callout] = ()
    below: Sequence[Callout] = ()
    beside: Sequence[Callout] = ()
    column: float = 0.0
    most_high: float = 190.0
    sky: float = 10.0
    foot: float = 8.0

    @property
    def scale(self) -> float:
        """Paper units of one metre."""
        wide = VIEW - 2 * MARGIN - (self.column + _COLUMN_GAP if self.beside else 0.0)
        return min(wide / (self.right - self.left), self.most_high / (self.high - self.low))

    @property
    def picture(self) -> float:
        """Paper that picture and column need."""
        return max((self.high - self.low) * self.scale, column_height(self.beside) if self.beside else 0.0)

    def height(self, *, headed: bool) -> float:
        """Paper that the whole panel needs."""
        high = heading_height(self.heading) if headed and self.heading else 0.0
        high += row_height(self.above) + self.sky if self.above else 0.0
        return high + self.picture + (self.foot + row_height(self.below) if self.below else 0.0)


class Names:
    """The texts of one drawing.

    Args:
        words: language of its texts.
        own: says one of the drawing's own texts.
    """

    def __init__(self, words: Words, own: Callable[[str], str]) -> None:
        self.words = words
        self._own = own

    def text(self, part: str) -> str:
        """A text of the drawing, or one that several drawings share (`part.mesh`)."""
        if part.startswith(_SHARED):
            return self.words.say_one_of("figure.part", part.removeprefix(_SHARED))
        return self._own(part)

    def of(self, part: str, target: Point, most: float = 100.0, value: str = "") -> Callout:
        """A name above or below a picture.

        Args:
            part: which text.
            target: what it names, metres of the panel.
            most: widest line, paper units.
            value: number with unit that belongs to it.
        """
        return Callout(Block.of(self.text(part), value, most=most), target)

    def beside(self, part: str, target: Point, most: float, value: str = "") -> Callout:
        """A name in the column at the right."""
        return Callout(Block.of(self.text(part), value, most=most, anchor="start"), target)

    def stacked(self, panels: Sequence[Panel], note: str = "", *, measured: int = 0, numbered: bool = True) -> Scene:
        """The whole drawing.

        Args:
            panels: from top to bottom.
            note: name of the text that stands below all.
            measured: place of the panel that gives the page its scale; only what is in this scale may be measured.
            numbered: whether several panels have numbers; not where numbers stand in the pictures.
        """
        headed = len(panels) > 1
        lines = note_lines(self.text(note)) if note else ()
        height = 2 * MARGIN + sum(panel.height(headed=headed) for panel in panels) + _GAP * (len(panels) - 1)
        page = Page(1 / panels[measured].scale, height + (note_height(lines) + 6.0 if lines else 0.0))
        top = MARGIN
        for number, panel in enumerate(panels, start=1):
            if headed and panel.heading and numbered:
                page.heading(number, panel.heading, top)
            elif headed and panel.heading:
                page.add(*Block(((panel.heading, Letter.HEADING),), "start").labels(page.at(MARGIN, top), page.unit))
            _place(page, panel, top + (heading_height(panel.heading) if headed and panel.heading else 0.0))
            top += panel.height(headed=headed) + _GAP
        if lines:
            page.note(lines, page.height - MARGIN - note_height(lines))
        return page.scene(self.text("title"), self.text("description"), self.words)


def _place(page: Page, panel: Panel, top: float) -> None:
    scale = panel.scale
    level = top + (row_height(panel.above) + panel.sky if panel.above else 0.0)
    wide, high = (panel.right - panel.left) * scale, (panel.high - panel.low) * scale
    room = VIEW - 2 * MARGIN - (panel.column + _COLUMN_GAP if panel.beside else 0.0)
    start = MARGIN + (room - wide) / 2
    picture = level + (panel.picture - high) / 2
    view = View(page, start - panel.left * scale, picture + panel.high * scale, scale)
    panel.paint(view)

    def put(names: Sequence[Callout]) -> list[Callout]:
        return [Callout(one.block, view.paper(*one.target)) for one in names]

    if panel.above:
        row_above(page, put(panel.above), level - panel.sky)
    if panel.below:
        row_below(page, put(panel.below), level + panel.picture + panel.foot)
    if panel.beside:
        edge = VIEW - MARGIN - panel.column
        right_column(page, put(panel.beside), edge, level, level + panel.picture)


def earth(view: View, points: Sequence[Point], deep: float) -> tuple[Element, ...]:
    """Ground below a line from left to right, cut open.

    Args:
        view: the picture.
        points: the line, metres.
        deep: thickness of the marked band, metres.
    """
    below = [(x, y - deep) for x, y in reversed(points)]
    return view.marks(*points, *below, kind=HatchKind.GROUND), view.path(*points, ink=Ink.GROUND)


def cross(view: View, x: float, y: float, half: float) -> Group:
    """Over what is wrong; the word stands in the heading."""
    return Group(
        "wrong",
        (
            view.line((x - half, y - half), (x + half, y + half), Ink.CROSS),
            view.line((x - half, y + half), (x + half, y - half), Ink.CROSS),
        ),
    )


def stick(view: View, points: Sequence[Point], thick: float, ink: Ink = Ink.WOOD) -> Element:
    """A stick, a pipe or a hose along a line of points.

    Args:
        view: the picture.
        points: its middle line, metres.
        thick: metres.
        ink: how it is drawn.
    """
    return limb(view.all_at(*points), thick * view.scale * view.page.unit, ink)
