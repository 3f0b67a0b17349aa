"""People and a goat seen from the side, at their true size: they show how large a thing is and what is done to it.

Drawn as filled outlines in plain clothes, because stick figures are recognised least.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

from generator.figures.ink import Ink
from generator.figures.scene import Circle, Element, Group, Line, Point, Polyline, on_circle

PERSON_HEIGHT = 1.6
GOAT_SHOULDER = 0.65
"""Height of a hill goat at its shoulder, metres."""

_GOAT = (
    (0.00, 0.92), (-0.10, 0.72), (-0.02, 0.62), (-0.04, 0.42), (-0.02, 0.0), (0.08, 0.0), (0.09, 0.36), (0.18, 0.50),
    (0.78, 0.47), (0.84, 0.34), (0.84, 0.0), (0.94, 0.0), (0.95, 0.44), (1.00, 0.72), (1.12, 0.98), (1.22, 1.16),
    (1.36, 1.06), (1.54, 0.92), (1.56, 0.98), (1.52, 1.06), (1.36, 1.24), (1.24, 1.33), (1.12, 1.28), (0.98, 1.06),
    (0.86, 0.98), (0.40, 0.94), (0.10, 0.99), (0.02, 1.08), (-0.04, 1.06),
)  # fmt: skip
"""Outline of a goat that looks to the right, in shoulder heights from its hind foot."""
_HORN = ((1.16, 1.30), (1.10, 1.46), (0.98, 1.54), (1.02, 1.44), (1.06, 1.32))
_EAR = ((1.16, 1.24), (1.02, 1.18), (0.98, 1.08), (1.08, 1.12))
_BEARD = ((1.40, 1.03), (1.36, 0.90), (1.44, 0.99))
_FAR_LEGS = (
    ((0.10, 0.40), (0.14, 0.0), (0.24, 0.0), (0.22, 0.48)),
    ((0.70, 0.48), (0.70, 0.0), (0.80, 0.0), (0.82, 0.42)),
)


def limb(points: Sequence[Point], thick: float, ink: Ink = Ink.THING) -> Polyline:
    """An arm, a leg or a handle: a line of points made thick, with both its edges.

    Args:
        points: from one end to the other, metres of the scene.
        thick: its thickness, metres.
        ink: how it is drawn.
    """
    ways = [_way(start, end) for start, end in pairwise(points)]
    left: list[Point] = []
    right: list[Point] = []
    for number, (x, y) in enumerate(points):
        before, after = ways[max(0, number - 1)], ways[min(len(ways) - 1, number)]
        # At a bend the edges meet on the line that halves it, farther out the sharper it is.
        middle = (before[0] + after[0], before[1] + after[1])
        square = max(middle[0] ** 2 + middle[1] ** 2, 1.0)
        across = (-middle[1] * thick / square, middle[0] * thick / square)
        left.append((x + across[0], y + across[1]))
        right.append((x - across[0], y - across[1]))
    return Polyline((*left, *reversed(right)), ink, closed=True)


def person(
    foot: Point, side: float = 1.0, hands: Sequence[Point] = (), height: float = PERSON_HEIGHT, stoop: float = 0.0
) -> Group:
    """A person in a long shirt, standing.

    Args:
        foot: point on the ground between the feet.
        side: 1 looks right, -1 looks left.
        hands: where the hands are, metres of the scene; one or two, each within an arm's reach.
        height: of the person, metres.
        stoop: how far the head is ahead of the feet, in heights.
    """
    x, y = foot

    def at(ahead: float, up: float) -> Point:
        lean = stoop * max(0.0, up - 0.45) / 0.55
        return x + side * (ahead + lean) * height, y + up * height

    shoulder = at(0.0, 0.79)
    arms = [_arm(shoulder, point, side, height) for point in hands]
    head = at(0.015, 0.915)
    parts: list[Element] = []
    if len(arms) > 1:
        parts += arms[0]
    for ahead in (-0.055, 0.055):
        parts.append(limb((at(0.0, 0.47), at(ahead * 0.8, 0.25), at(ahead, 0.035)), 0.075 * height))
        sole = (
            (ahead - 0.04, 0.0),
            (ahead + 0.1, 0.0),
            (ahead + 0.08, 0.03),
            (ahead + 0.02, 0.05),
            (ahead - 0.04, 0.05),
        )
        parts.append(Polyline(tuple(at(*point) for point in sole), Ink.THING, closed=True))
    shirt = (
        (-0.035, 0.84),
        (0.04, 0.84),
        (0.09, 0.79),
        (0.095, 0.55),
        (0.125, 0.30),
        (-0.125, 0.30),
        (-0.095, 0.55),
        (-0.09, 0.79),
    )
    parts.append(Polyline(tuple(at(*point) for point in shirt), Ink.CLOTH, closed=True))
    parts.append(Circle(head, 0.072 * height, Ink.THING))
    hair = [on_circle(head, 0.072 * height, 90 - side * 70 + side * step * 32) for step in range(6)]
    parts.append(Polyline(tuple(hair), Ink.STEEL, closed=True))
    for arm in arms[-1:]:
        parts += arm
    return Group("person", tuple(parts))


def squatting(foot: Point, side: float = 1.0, hands: Sequence[Point] = (), height: float = PERSON_HEIGHT) -> Group:
    """A person who squats to work near the ground.

    Args:
        foot: point on the ground under the feet.
        side: 1 looks right, -1 looks left.
        hands: where the hands are, metres of the scene; one or two.
        height: of the person when standing, metres.
    """

    def at(ahead: float, up: float) -> Point:
        return foot[0] + side * ahead * height, foot[1] + up * height

    shoulder, head = at(0.06, 0.47), at(0.10, 0.60)
    arms = [_arm(shoulder, point, side, height) for point in hands]
    parts: list[Element] = [*arms[0]] if len(arms) > 1 else []
    shirt = (
        (0.03, 0.52),
        (0.10, 0.51),
        (0.14, 0.46),
        (0.10, 0.28),
        (0.06, 0.12),
        (-0.10, 0.10),
        (-0.10, 0.24),
        (-0.03, 0.44),
    )
    sole = ((-0.05, 0.0), (0.09, 0.0), (0.07, 0.03), (0.01, 0.05), (-0.05, 0.05))
    parts += [
        Polyline(tuple(at(*point) for point in shirt), Ink.CLOTH, closed=True),
        limb((at(-0.05, 0.15), at(0.16, 0.29), at(0.0, 0.04)), 0.075 * height),
        Polyline(tuple(at(*point) for point in sole), Ink.THING, closed=True),
        Circle(head, 0.072 * height, Ink.THING),
        Polyline(
            tuple(on_circle(head, 0.072 * height, 90 - side * 70 + side * step * 32) for step in range(6)),
            Ink.STEEL,
            closed=True,
        ),
    ]
    for arm in arms[-1:]:
        parts += arm
    return Group("person", tuple(parts))


def goat(foot: Point, side: float = 1.0, shoulder: float = GOAT_SHOULDER) -> Group:
    """A goat, standing.

    Args:
        foot: its hind foot on the ground.
        side: 1 looks right, -1 looks left.
        shoulder: height at the shoulder, metres.
    """

    def placed(outline: Sequence[Point], ink: Ink = Ink.THING) -> Polyline:
        return Polyline(
            tuple((foot[0] + side * x * shoulder, foot[1] + y * shoulder) for x, y in outline), ink, closed=True
        )

    eye = Circle((foot[0] + side * 1.31 * shoulder, foot[1] + 1.19 * shoulder), 0.022 * shoulder, Ink.STEEL)
    far = tuple(placed(leg) for leg in _FAR_LEGS)
    return Group(
        "goat",
        (*far, placed(_HORN, Ink.STEEL), placed(_BEARD, Ink.STEEL), placed(_GOAT), placed(_EAR), eye),
    )


def fist(grip: Point, elbow: Point, size: float = 0.085) -> Group:
    """A closed hand that holds something, and its forearm.

    Args:
        grip: middle of the hand, metres of the scene.
        elbow: where the forearm comes from, metres of the scene.
        size: across the knuckles, metres.
    """
    ahead = _way(elbow, grip)
    left = (-ahead[1], ahead[0])

    def at(along: float, off: float) -> Point:
        return (
            grip[0] + size * (ahead[0] * along + left[0] * off),
            grip[1] + size * (ahead[1] * along + left[1] * off),
        )

    outline = (
        (-0.45, 0.34),
        (-0.15, 0.5),
        (0.3, 0.5),
        (0.44, 0.36),
        (0.44, -0.36),
        (0.3, -0.5),
        (-0.15, -0.5),
        (-0.45, -0.34),
    )
    back = Polyline(tuple(at(*point) for point in outline), Ink.THING, closed=True)
    fingers = tuple(Line(at(0.06, off), at(0.43, off), Ink.THING_LINE) for off in (-0.24, 0.0, 0.24))
    thumb = Polyline(
        tuple(at(*point) for point in ((-0.3, 0.5), (-0.1, 0.66), (0.25, 0.62), (0.2, 0.42), (-0.05, 0.42))),
        Ink.THING,
        closed=True,
    )
    return Group("hand", (limb((elbow, at(-0.4, 0.0)), 0.62 * size), back, *fingers, thumb))


def _way(start: Point, end: Point) -> Point:
    length = math.dist(start, end) or 1.0
    return (end[0] - start[0]) / length, (end[1] - start[1]) / length


def _arm(shoulder: Point, hand: Point, side: float, height: float) -> list[Element]:
    """Upper arm, forearm and hand; the elbow hangs."""
    reach = math.dist(shoulder, hand)
    half = 0.19 * height
    if reach > 2 * half:
        hand = tuple(a + (b - a) * 2 * half / reach for a, b in zip(shoulder, hand, strict=True))  # type: ignore[assignment]
        reach = 2 * half
    middle = ((shoulder[0] + hand[0]) / 2, (shoulder[1] + hand[1]) / 2)
    out = math.sqrt(max(0.0, half**2 - reach**2 / 4))
    across = ((hand[1] - shoulder[1]) / reach, (shoulder[0] - hand[0]) / reach) if reach else (0.0, -1.0)
    down = -1.0 if across[1] > 0 or (across[1] == 0 and across[0] * side > 0) else 1.0
    elbow = (middle[0] + down * across[0] * out, middle[1] + down * across[1] * out)
    return [limb((shoulder, elbow, hand), 0.055 * height), Circle(hand, 0.033 * height, Ink.THING)]


def arrow(points: Iterator[Point] | Sequence[Point], thick: float) -> Polyline:
    """A thick arrow: only for what moves that way.

    Args:
        points: start and end, metres of the scene.
        thick: of its shaft, metres.
    """
    (x1, y1), (x2, y2) = points
    length = math.dist((x1, y1), (x2, y2))
    along = ((x2 - x1) / length, (y2 - y1) / length)
    head = min(2.6 * thick, 0.6 * length)

    def at(way: float, off: float) -> Point:
        return x1 + along[0] * way - along[1] * off, y1 + along[1] * way + along[0] * off

    half = thick / 2
    corners = (
        at(0, half), at(length - head, half), at(length - head, 1.35 * thick), at(length, 0),
        at(length - head, -1.35 * thick), at(length - head, -half), at(0, -half),
    )  # fmt: skip
    return Polyline(corners, Ink.ARROW, closed=True)
