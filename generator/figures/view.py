"""One picture of a drawing: metres of the thing, with its own zero point and scale, turned into places on the page."""

from __future__ import annotations

from dataclasses import dataclass

from generator.figures.ink import HatchKind, Ink
from generator.figures.page import Page
from generator.figures.scene import Dimension, Element, Hatch, Line, Point, Polyline


@dataclass(frozen=True, slots=True)
class View:
    """Where a picture stands on its page.

    Args:
        page: what it is drawn on.
        left: of its zero point, paper units.
        down: of its zero point, paper units.
        scale: paper units of one metre; only a picture in the page's own scale may be measured.
    """

    page: Page
    left: float
    down: float
    scale: float

    def paper(self, x: float, y: float) -> Point:
        """Paper units of a place that is so far right of the zero point and above it."""
        return self.left + x * self.scale, self.down - y * self.scale

    def at(self, x: float, y: float) -> Point:
        """The same place, as a point of the scene."""
        return self.page.at(*self.paper(x, y))

    def all_at(self, *places: Point) -> tuple[Point, ...]:
        """Several places as points of the scene."""
        return tuple(self.at(*place) for place in places)

    def line(self, start: Point, end: Point, ink: Ink) -> Line:
        """A straight line."""
        return Line(self.at(*start), self.at(*end), ink)

    def path(self, *places: Point, ink: Ink) -> Polyline:
        """An open line from place to place."""
        return Polyline(self.all_at(*places), ink)

    def shape(self, *places: Point, ink: Ink) -> Polyline:
        """A closed outline."""
        return Polyline(self.all_at(*places), ink, closed=True)

    def box(self, left: float, low: float, right: float, high: float, ink: Ink) -> Polyline:
        """A rectangle with level edges."""
        return self.shape((left, low), (right, low), (right, high), (left, high), ink=ink)

    def cut(self, *places: Point, kind: HatchKind = HatchKind.MORTAR, ink: Ink = Ink.BODY) -> tuple[Element, ...]:
        """Something that is cut through: its outline and its marks."""
        return self.shape(*places, ink=ink), Hatch(self.all_at(*places), kind)

    def cut_box(
        self, left: float, low: float, right: float, high: float, kind: HatchKind = HatchKind.MORTAR
    ) -> tuple[Element, ...]:
        """A rectangle that is cut through."""
        return self.cut((left, low), (right, low), (right, high), (left, high), kind=kind)

    def marks(self, *places: Point, kind: HatchKind) -> Hatch:
        """Marks alone: earth, mortar or water without an edge."""
        return Hatch(self.all_at(*places), kind)

    def measure(self, start: Point, end: Point, offset: float) -> Dimension:
        """A measured distance; its arrowed line stands so many paper units to the left of the way."""
        return Dimension(self.at(*start), self.at(*end), offset * self.page.unit)
