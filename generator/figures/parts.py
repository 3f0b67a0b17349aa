"""A scene taken apart into the few shapes that both writers draw; dimensions and hatches are worked out here, once."""

from __future__ import annotations

import math
from collections.abc import Iterator

from generator.figures.hatch import hatch_marks
from generator.figures.ink import Ink
from generator.figures.scene import (
    Arc,
    ArcDimension,
    Circle,
    Dimension,
    Hatch,
    Label,
    Line,
    Point,
    Polyline,
    Rect,
    Scene,
    Shape,
    on_circle,
)

ARROW = 7.0
"""Length of an arrowhead, paper units."""
_HALF_ARROW = 2.3
_BEYOND = 3.0
"""How far a leading line runs past the arrowed line, paper units."""
_CLEAR = 2.0
"""Gap between the thing measured and its leading line, paper units."""
_TAIL = 9.0
"""Line outside the arrowheads where the distance is too short to hold them, paper units."""


def shapes(scene: Scene) -> Iterator[Shape]:
    """All that a writer has to draw, from the back to the front, texts last."""
    labels: list[Label] = []
    for element in scene.all_elements():
        match element:
            case Line() | Polyline() | Rect() | Circle() | Arc():
                yield element
            case Label():
                labels.append(element)
            case Dimension():
                labels += element.labels
                yield from dimension_shapes(element, scene.unit)
            case ArcDimension():
                labels += element.labels
                yield from arc_dimension_shapes(element, scene.unit)
            case Hatch():
                yield from hatch_marks(element, scene.unit)
    yield from labels


def dimension_shapes(dimension: Dimension, unit: float) -> Iterator[Shape]:
    """Lines and arrowheads of a dimension.

    Args:
        dimension: what is measured.
        unit: metres of one paper unit.
    """
    length = dimension.length
    along = _step(dimension.start, dimension.end, 1 / length)
    left = (-along[1], along[0])
    side = math.copysign(1.0, dimension.offset)
    first, last = (_moved(point, left, dimension.offset) for point in (dimension.start, dimension.end))
    for point in (dimension.start, dimension.end):
        if abs(dimension.offset) > _CLEAR * unit:
            far = _moved(point, left, dimension.offset + side * _BEYOND * unit)
            yield Line(_moved(point, left, side * _CLEAR * unit), far, Ink.MEASURE)
    if length >= 2.4 * ARROW * unit:
        yield Line(first, last, Ink.MEASURE)
        yield _arrow(first, along, -1.0, unit)
        yield _arrow(last, along, 1.0, unit)
    else:
        reach = (ARROW + _TAIL) * unit
        yield Line(_moved(first, along, -reach), _moved(last, along, reach), Ink.MEASURE)
        yield _arrow(first, along, 1.0, unit)
        yield _arrow(last, along, -1.0, unit)


def arc_dimension_shapes(dimension: ArcDimension, unit: float) -> Iterator[Shape]:
    """Arc, leading lines and arrowheads of a distance along a circle.

    Args:
        dimension: what is measured.
        unit: metres of one paper unit.
    """
    centre, radius = dimension.centre, dimension.radius + dimension.offset
    degrees_of = 180 / (math.pi * radius) * unit
    inside = radius * math.radians(dimension.sweep) >= 2.4 * ARROW * unit
    start, sweep = dimension.start, dimension.sweep
    extra = 0.0 if inside else (ARROW + _TAIL) * degrees_of
    yield Arc(centre, radius, start - extra, sweep + 2 * extra, Ink.MEASURE)
    for direction, turn in ((start, -1.0), (start + sweep, 1.0)):
        near = on_circle(centre, dimension.radius + _CLEAR * unit, direction)
        far = on_circle(centre, radius + _BEYOND * unit, direction)
        yield Line(near, far, Ink.MEASURE)
        # The arrowhead lies along the chord below it, so that it does not leave the arc on small circles.
        middle = math.radians(direction + 90 - (turn if inside else -turn) * ARROW * degrees_of / 2)
        along = (math.cos(middle), math.sin(middle))
        yield _arrow(on_circle(centre, radius, direction), along, turn if inside else -turn, unit)


def _arrow(tip: Point, along: Point, sense: float, unit: float) -> Polyline:
    """An arrowhead whose tip points along a direction (`sense` 1) or against it (-1)."""
    back = _moved(tip, along, -sense * ARROW * unit)
    left = (-along[1], along[0])
    wings = tuple(_moved(back, left, turn * _HALF_ARROW * unit) for turn in (1.0, -1.0))
    return Polyline((tip, *wings), Ink.ARROW, closed=True)


def _step(start: Point, end: Point, share: float) -> Point:
    return (end[0] - start[0]) * share, (end[1] - start[1]) * share


def _moved(point: Point, direction: Point, distance: float) -> Point:
    return point[0] + direction[0] * distance, point[1] + direction[1] * distance
