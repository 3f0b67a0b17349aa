"""Where texts go: boxes that are tested against each other, against drawn lines and against the frame.

A drawing first puts down its lines, then asks a `Placer` for every text. The placer tries the places it is offered in
order, and takes the first where the text hits nothing; it never draws one text over another.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import pairwise

from generator.figures.fonts import ASCENT, DESCENT, Anchor, shaped_width
from generator.figures.ink import HANDS, Ink, Letter
from generator.figures.parts import arc_dimension_shapes, dimension_shapes
from generator.figures.scene import (
    Arc,
    ArcDimension,
    Circle,
    Dimension,
    Element,
    Group,
    Label,
    Line,
    Point,
    Polyline,
    Rect,
    on_circle,
)
from generator.problems import MachineError

LINE = 1.3
"""Distance of base lines, em: room for the signs above and below Devanagari letters."""


class NoRoomError(MachineError):
    """A text fits nowhere: the drawing asked for too much in too small a frame."""


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle with level edges, in metres of the drawing."""

    left: float
    low: float
    right: float
    high: float

    def overlaps(self, other: Box) -> bool:
        """Whether two boxes share more than an edge."""
        return self.left < other.right and other.left < self.right and self.low < other.high and other.low < self.high

    def holds(self, other: Box) -> bool:
        """Whether another box lies inside this one."""
        return (
            self.left <= other.left and other.right <= self.right and self.low <= other.low and other.high <= self.high
        )

    def grown(self, margin: float) -> Box:
        """The box with a margin all round."""
        return Box(self.left - margin, self.low - margin, self.right + margin, self.high + margin)

    def crossed_by(self, start: Point, end: Point) -> bool:
        """Whether a straight line runs through the box."""
        (x1, y1), (x2, y2) = start, end
        if (x1 <= self.left and x2 <= self.left) or (x1 >= self.right and x2 >= self.right):
            return False  # most lines are far away, and this is asked for each text and each line
        if (y1 <= self.low and y2 <= self.low) or (y1 >= self.high and y2 >= self.high):
            return False
        first, last = 0.0, 1.0
        for position, step, low, high in (
            (x1, x2 - x1, self.left, self.right),
            (y1, y2 - y1, self.low, self.high),
        ):
            if step == 0:
                if not low < position < high:
                    return False
                continue
            enter, leave = sorted(((low - position) / step, (high - position) / step))
            first, last = max(first, enter), min(last, leave)
        return first < last


def text_box(label: Label, unit: float) -> Box:
    """The paper that a text needs.

    Args:
        label: the text.
        unit: metres of one paper unit.
    """
    hand = HANDS[label.letter]
    em = hand.size * unit
    width = shaped_width(label.text, hand.font, em)
    left = label.point[0] - {"start": 0.0, "middle": 0.5, "end": 1.0}[label.anchor] * width
    return Box(left, label.point[1] - DESCENT * em, left + width, label.point[1] + ASCENT * em)


def segments(element: Element, unit: float) -> Iterator[tuple[Point, Point]]:
    """The straight pieces of what an element draws; curves in short steps, marks of hatches left out."""
    match element:
        case Line(start=start, end=end):
            yield start, end
        case Polyline(points=points, closed=closed):
            yield from pairwise(points)
            if closed:
                yield points[-1], points[0]
        case Rect(corner=(x, y), width=width, height=height):
            corners = ((x, y), (x + width, y), (x + width, y + height), (x, y + height))
            yield from segments(Polyline(corners, element.ink, closed=True), unit)
        case Circle(centre=(x, y), radius=radius):
            ring = _ring(_pieces(360, radius, unit))
            yield from pairwise([(x + radius * cosine, y + radius * sine) for cosine, sine in ring])
        case Arc(centre=centre, radius=radius, start=begin, sweep=sweep):
            count = _pieces(sweep, radius, unit)
            points = tuple(on_circle(centre, radius, begin + sweep * step / count) for step in range(count + 1))
            yield from pairwise(points)
        case Dimension():
            for shape in dimension_shapes(element, unit):
                yield from segments(shape, unit)
        case ArcDimension():
            for shape in arc_dimension_shapes(element, unit):
                yield from segments(shape, unit)
        case Group(elements=elements):
            for member in elements:
                yield from segments(member, unit)


def _pieces(sweep: float, radius: float, unit: float) -> int:
    """Straight pieces that stand for a curve: more of them where it is larger."""
    return max(2, math.ceil(abs(sweep) / 360 * min(90.0, 8 + radius / unit)))


@cache
def _ring(count: int) -> tuple[Point, ...]:
    """Points of a circle of radius 1; small circles are many, and all alike."""
    return tuple(on_circle((0.0, 0.0), 1.0, 360 * step / count) for step in range(count + 1))


def wrap(text: str, letter: Letter, most: float) -> tuple[str, ...]:
    """A text in lines.

    Args:
        text: words with spaces between; a single word is never cut.
        letter: how it is written.
        most: widest line, paper units.
    """
    hand = HANDS[letter]
    lines: list[str] = []
    for word in text.split(" "):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and shaped_width(longer, hand.font, hand.size) <= most:
            lines[-1] = longer
        else:
            lines.append(word)
    return tuple(lines)


@dataclass(frozen=True, slots=True)
class Block:
    """Lines of text that belong together, each in its own letter, all with one anchor."""

    lines: tuple[tuple[str, Letter], ...]
    anchor: Anchor = "middle"

    @classmethod
    def of(cls, name: str, value: str = "", *, most: float, anchor: Anchor = "middle") -> Block:
        """A name, wrapped, and the number that belongs to it.

        Args:
            name: what it is; may be empty.
            value: number with unit; may be empty.
            most: widest line, paper units; name and number share a line where they fit.
            anchor: which part of each line stands at the block's point.
        """
        names = [(line, Letter.NAME) for line in wrap(name, Letter.NAME, most)] if name else []
        return cls((*names, *([(value, Letter.VALUE)] if value else [])), anchor)

    def height(self) -> float:
        """From the top of the first line to the foot of the last, paper units."""
        return sum(LINE * HANDS[letter].size for _, letter in self.lines)

    def width(self) -> float:
        """Of the widest line, paper units."""
        return max(shaped_width(text, HANDS[letter].font, HANDS[letter].size) for text, letter in self.lines)

    def labels(self, top: Point, unit: float) -> tuple[Label, ...]:
        """Its lines, the first one hanging from a point."""
        found: list[Label] = []
        y = top[1]
        for text, letter in self.lines:
            size = HANDS[letter].size * unit
            found.append(Label((top[0], y - ASCENT * size), text, self.anchor, letter))
            y -= LINE * size
        return tuple(found)


class Placer:
    """Keeps the texts of a drawing apart.

    Args:
        width: of the frame, metres of drawing.
        height: of the frame, metres of drawing.
        unit: metres of one paper unit.
        drawn: what no text may hit.
    """

    def __init__(self, width: float, height: float, unit: float, drawn: Iterable[Element]) -> None:
        self._frame = Box(0, 0, width, height)
        self._unit = unit
        self._taken: list[Box] = []
        self._drawn = [segment for element in drawn for segment in segments(element, unit)]

    def take(self, element: Element) -> None:
        """Keeps the paper of a text that already has its place."""
        if isinstance(element, Label):
            self._taken.append(text_box(element, self._unit))
        elif isinstance(element, Dimension | ArcDimension):
            self._taken += [text_box(label, self._unit) for label in element.labels]
        elif isinstance(element, Group):
            for member in element.elements:
                self.take(member)

    def put(
        self, block: Block, tops: Sequence[Point], target: Point | None = None
    ) -> tuple[tuple[Label, ...], tuple[Line, ...]]:
        """Places a block at the first of several points where it hits nothing, moved into the frame if it sticks out.

        Args:
            block: the texts.
            tops: points that its first line may hang from, best first.
            target: what it names; a line leads there that runs through no other text.

        Returns:
            The placed texts, and the leading line if there is one.

        Raises:
            NoRoomError: all the places are taken.
        """
        for top in tops:
            labels = self._inside(block.labels(top, self._unit))
            boxes = [text_box(label, self._unit) for label in labels]
            leaders = () if target is None else (self._leader(boxes, target),)
            if all(map(self._free, boxes)) and not any(
                box.crossed_by(leader.start, leader.end) for box in (*self._taken, *boxes) for leader in leaders
            ):
                self._taken += boxes
                self._drawn += [(leader.start, leader.end) for leader in leaders]
                return labels, leaders
        raise NoRoomError(" ".join(text for text, _ in block.lines))

    def _leader(self, boxes: Sequence[Box], target: Point) -> Line:
        """From the edge of a text that is nearest to its target."""
        left, right = min(box.left for box in boxes), max(box.right for box in boxes)
        low, high = min(box.low for box in boxes), max(box.high for box in boxes)
        x, y = target
        if low <= y <= high:
            start = (left - self._unit, y) if x < left else (right + self._unit, y)
        else:
            # Half way between the middle of the text and the point of its edge below or above the target.
            nearest = min(max(x, left), right)
            start = ((left + right + 2 * nearest) / 4, low - self._unit if y < low else high + self._unit)
        return Line(start, target, Ink.LEADER)

    def _inside(self, labels: tuple[Label, ...]) -> tuple[Label, ...]:
        """The labels, moved sideways just so far that they are within the frame."""
        boxes = [text_box(label, self._unit) for label in labels]
        left, right = min(box.left for box in boxes), max(box.right for box in boxes)
        move = max(0.0, self._frame.left - left) or min(0.0, self._frame.right - right)
        return tuple(
            Label((label.point[0] + move, label.point[1]), label.text, label.anchor, label.letter) for label in labels
        )

    def _free(self, box: Box) -> bool:
        apart = box.grown(self._unit)
        return (
            self._frame.holds(box)
            and not any(apart.overlaps(other) for other in self._taken)
            and not any(box.crossed_by(start, end) for start, end in self._drawn)
        )
