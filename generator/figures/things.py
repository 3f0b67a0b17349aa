"""Things that everyone knows, at their true size beside the steel: a hand, a pair of feet, a bucket.

Their sizes are those of a usual grown person and of a usual builder's bucket; they give the eye a measure and are never
a number of the course.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from generator.figures.ink import Ink
from generator.figures.scene import Group, Point, Polyline, on_circle

HAND_LENGTH = 0.19
"""From the wrist to the tip of the middle finger, metres."""
FOOT_LENGTH = 0.26
BUCKET_HEIGHT = 0.30

_FINGERS = ((-0.165, 0.92), (-0.035, 1.0), (0.095, 0.94), (0.215, 0.78))
"""Middle and tip of each finger from the wrist, in hand lengths; the hand points up, its thumb to the left."""
_FINGER = 0.056
_VALLEY = 0.52
_TOES = ((0.135, 0.86, 0.062), (0.22, 0.87, 0.042), (0.285, 0.84, 0.037), (0.34, 0.80, 0.033), (0.385, 0.75, 0.03))
"""Middle and radius of each toe of the right foot, in foot lengths."""


def hand(wrist: Point, length: float = HAND_LENGTH, forearm: float = 0.45) -> Group:
    """An open hand seen from its back, fingers up, with a piece of forearm.

    Args:
        wrist: middle of the wrist.
        length: from the wrist to the tip of the middle finger, metres.
        forearm: shown below the wrist, hand lengths.
    """
    points: list[Point] = [(-0.17, -forearm), (-0.155, -0.05), (-0.22, 0.10), (-0.30, 0.26)]
    points += _round((-0.405, 0.50), 0.055, 205, 20)
    points += [(-0.285, 0.42), (-0.225, 0.40)]
    for middle, tip in _FINGERS:
        points.append((middle - _FINGER, _VALLEY - 0.03 * (middle > 0.15)))
        points += _round((middle, tip - _FINGER), _FINGER, 180, 0)
        points.append((middle + _FINGER, _VALLEY - 0.03 * (middle > 0.08)))
    points += [(0.255, 0.25), (0.175, -0.05), (0.185, -forearm)]
    outline = tuple((wrist[0] + x * length, wrist[1] + y * length) for x, y in points)
    nails = tuple(_nail(wrist, length, middle, tip) for middle, tip in _FINGERS)
    return Group("hand", (Polyline(outline, Ink.THING, closed=True), *nails))


def feet(heels: Point, length: float = FOOT_LENGTH) -> Group:
    """A pair of bare feet seen from above, toes up.

    Args:
        heels: point between the heels.
        length: of a foot, metres.
    """
    parts: list[Polyline] = []
    for side in (-1.0, 1.0):
        sole = [(0.13, 0.15), (0.145, 0.42), (0.10, 0.70)]
        sole += [(0.36 - x, y) for x, y in reversed([(-0.02, 0.15), (0.03, 0.42), (-0.035, 0.72)])]
        heel = _round((0.24, 0.12), 0.12, 360, 180)
        outline = [*heel, *sole[1:5], (0.375, 0.30)]
        parts.append(_placed(outline, heels, length, side))
        parts += [_placed(list(_round((x, y), radius, 360, 0)), heels, length, side) for x, y, radius in _TOES]
    return Group("feet", tuple(parts))


def bucket(foot: Point, height: float = BUCKET_HEIGHT) -> Group:
    """A bucket seen from the side, its handle hanging down in front.

    Args:
        foot: middle of its bottom.
        height: from the bottom to the rim, metres.
    """
    x, y = foot
    low, high = 0.34 * height, 0.47 * height
    rim = 0.07 * height
    body = ((x - low, y), (x + low, y), (x + high, y + height), (x - high, y + height))
    band = ((x - high - rim / 2, y + height), (x + high + rim / 2, y + height))
    edge = (*band, (band[1][0], y + height - rim), (band[0][0], y + height - rim))
    handle = tuple(
        (x + across * high, y + height - rim - 0.4 * down * height) for across, down in _round((0.0, 0.0), 0.92, 180, 0)
    )
    return Group(
        "bucket",
        (
            Polyline(body, Ink.THING, closed=True),
            Polyline(edge, Ink.THING, closed=True),
            Polyline(handle, Ink.THING_LINE),
        ),
    )


def _nail(wrist: Point, length: float, middle: float, tip: float) -> Polyline:
    half, low, high = 0.026, tip - 0.085, tip - 0.03
    corners = ((middle - half, low), (middle + half, low), (middle + half, high), (middle - half, high))
    return Polyline(tuple((wrist[0] + x * length, wrist[1] + y * length) for x, y in corners), Ink.THING, closed=True)


def _placed(points: list[Point], heels: Point, length: float, side: float) -> Polyline:
    return Polyline(
        tuple((heels[0] + side * x * length, heels[1] + y * length) for x, y in points), Ink.THING, closed=True
    )


def _round(centre: Point, radius: float, first: float, last: float) -> Iterator[Point]:
    """Points of an arc, about every 20 degrees."""
    count = max(3, math.ceil(abs(last - first) / 20))
    for step in range(count + 1):
        yield on_circle(centre, radius, first + (last - first) * step / count)
