"""A drawing as data: what is drawn and where, in metres, before anybody thinks of pixels or points.

x runs to the right, y up, both from the lower left corner of the frame. Steel stands where it stands on the hill;
only line widths and letters are measured on the paper. Every scene is `VIEW` paper units wide, so letters are the same
size in every drawing of a page, and a narrow phone shows them a little smaller than running text.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import TypeAlias

from generator.figures.fonts import Anchor
from generator.figures.ink import HatchKind, Ink, Letter

VIEW = 360.0
"""Width of every drawing in paper units; widths of lines and heights of letters are given in them."""

Point: TypeAlias = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line between two points."""

    start: Point
    end: Point
    ink: Ink


@dataclass(frozen=True, slots=True)
class Polyline:
    """Straight lines from point to point; closed ones are filled, if their ink fills."""

    points: tuple[Point, ...]
    ink: Ink
    closed: bool = False


@dataclass(frozen=True, slots=True)
class Rect:
    """A rectangle with level edges; `corner` is its lower left one."""

    corner: Point
    width: float
    height: float
    ink: Ink


@dataclass(frozen=True, slots=True)
class Circle:
    """A whole circle."""

    centre: Point
    radius: float
    ink: Ink


@dataclass(frozen=True, slots=True)
class Arc:
    """A part of a circle.

    Args:
        centre: of the circle.
        radius: of the circle.
        start: direction of its first point, degrees from the right, turning left.
        sweep: how far it turns, degrees, 0 to 360.
        ink: how it is drawn.
    """

    centre: Point
    radius: float
    start: float
    sweep: float
    ink: Ink


@dataclass(frozen=True, slots=True)
class Hatch:
    """A surface marked as earth, mortar or water, so that it is told from the others in plain black and white."""

    outline: tuple[Point, ...]
    kind: HatchKind


@dataclass(frozen=True, slots=True)
class Label:
    """One line of text; its point is on the base line."""

    point: Point
    text: str
    anchor: Anchor = "middle"
    letter: Letter = Letter.NAME


@dataclass(frozen=True, slots=True)
class Dimension:
    """A measured distance: a line with arrowheads, lines that lead to what is measured, and its text.

    Args:
        start: one end of what is measured.
        end: its other end; their distance is the real one.
        offset: how far the arrowed line stands to the left of the way from start to end; negative: to the right.
        labels: its texts, placed where nothing else is.
    """

    start: Point
    end: Point
    offset: float
    labels: tuple[Label, ...] = ()

    @property
    def length(self) -> float:
        """The distance measured, metres."""
        return math.dist(self.start, self.end)


@dataclass(frozen=True, slots=True)
class ArcDimension:
    """A distance measured along a circle.

    Args:
        centre: of the circle.
        radius: of the circle that is measured.
        start: direction of one end, degrees from the right.
        sweep: how far it turns to the left, degrees.
        offset: how far outside the circle the arrowed line runs.
        labels: its texts.
    """

    centre: Point
    radius: float
    start: float
    sweep: float
    offset: float
    labels: tuple[Label, ...] = ()

    @property
    def length(self) -> float:
        """The distance measured along the circle, metres."""
        return self.radius * math.radians(self.sweep)


@dataclass(frozen=True, slots=True)
class Group:
    """Parts that are one thing, such as a hand or a tie; `name` says which, for whoever looks for it."""

    name: str
    elements: tuple[Element, ...]


Shape: TypeAlias = Line | Polyline | Rect | Circle | Arc | Hatch | Label
Element: TypeAlias = Shape | Dimension | ArcDimension | Group


@dataclass(frozen=True, slots=True)
class Area:
    """A place of a drawing that can be pointed at.

    Args:
        letter: printed beside it, and all that a reader is told of it.
        name: what is there, for whoever writes the question; never shown.
        outline: its corners.
        mark: middle of its letter.
    """

    letter: str
    name: str
    outline: tuple[Point, ...]
    mark: Point


@dataclass(frozen=True, slots=True)
class Scene:
    """A whole drawing.

    Args:
        width: of the frame, metres of drawing.
        height: of the frame, metres of drawing.
        elements: what is drawn, from the back to the front.
        title: what it shows, one line.
        description: for who can't see it; gives no measured number away.
        language: of its texts.
        areas: places that a learner can choose between, in the order of their letters.
    """

    width: float
    height: float
    elements: tuple[Element, ...] = field(repr=False)
    title: str
    description: str = field(repr=False)
    language: str
    areas: tuple[Area, ...] = field(default=(), repr=False)

    @property
    def unit(self) -> float:
        """Metres that one paper unit stands for."""
        return self.width / VIEW

    def all_elements(self) -> Iterator[Element]:
        """Every element, also those inside groups; groups themselves left out."""
        yield from _ungrouped(self.elements)

    def named(self, name: str) -> tuple[Group, ...]:
        """The groups of a name, in the order of drawing."""
        return tuple(_groups(self.elements, name))


def on_circle(centre: Point, radius: float, degrees: float) -> Point:
    """The point of a circle in a direction, counted from the right and turning left."""
    turn = math.radians(degrees)
    return centre[0] + radius * math.cos(turn), centre[1] + radius * math.sin(turn)


def _ungrouped(elements: tuple[Element, ...]) -> Iterator[Element]:
    for element in elements:
        if isinstance(element, Group):
            yield from _ungrouped(element.elements)
        else:
            yield element


def _groups(elements: tuple[Element, ...], name: str) -> Iterator[Group]:
    for element in elements:
        if isinstance(element, Group):
            if element.name == name:
                yield element
            yield from _groups(element.elements, name)
