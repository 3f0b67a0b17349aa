"""Marks inside an outline: slanted strokes for earth, dots for mortar, level strokes for water.

The marks are worked out as lines and circles, so that screen and print carry the same ones and no pattern needs an id.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from generator.figures.ink import HatchKind, Ink
from generator.figures.scene import Circle, Hatch, Line, Point, Shape

_GROUND_GAP = 6.0
_DOT_GAP = 5.0
_DOT = 0.75
_WATER_GAP, _WATER_STROKE, _WATER_SPACE = 7.0, 9.0, 6.0


def hatch_marks(hatch: Hatch, unit: float) -> Iterator[Shape]:
    """The marks of a hatch.

    Args:
        hatch: outline and kind.
        unit: metres of one paper unit; gaps and sizes of marks are the same on every paper.
    """
    if hatch.kind is HatchKind.GROUND:
        ink = Ink.GROUND_MARK
        for start, end in strokes(hatch.outline, 45.0, _GROUND_GAP * unit):
            yield Line(start, end, ink)
    elif hatch.kind is HatchKind.MORTAR:
        gap = _DOT_GAP * unit
        for row, (start, end) in enumerate(strokes(hatch.outline, 0.0, gap * 0.8)):
            x = math.ceil((start[0] + _DOT * unit) / gap) * gap + (gap / 2 if row % 2 else 0.0)
            while x <= end[0] - _DOT * unit:
                yield Circle((x, start[1]), _DOT * unit, Ink.MORTAR)
                x += gap
    else:
        stroke, period = _WATER_STROKE * unit, (_WATER_STROKE + _WATER_SPACE) * unit
        for row, (start, end) in enumerate(strokes(hatch.outline, 0.0, _WATER_GAP * unit)):
            x = start[0] + (period / 2 if row % 2 else 0.0)
            while x < end[0]:
                yield Line((x, start[1]), (min(x + stroke, end[0]), start[1]), Ink.WATER)
                x += period


def strokes(outline: Sequence[Point], degrees: float, gap: float) -> Iterator[tuple[Point, Point]]:
    """Parallel strokes that fill an outline.

    Args:
        outline: corners of a simple polygon.
        degrees: direction of the strokes.
        gap: distance between strokes, in the unit of the corners.

    Yields:
        Start and end of each stroke, both on the outline.
    """
    turn = math.radians(degrees)
    cosine, sine = math.cos(turn), math.sin(turn)
    turned = [(x * cosine + y * sine, y * cosine - x * sine) for x, y in outline]
    low, high = min(y for _, y in turned), max(y for _, y in turned)
    edges = [(x1, y1, x2, y2) for (x1, y1), (x2, y2) in zip(turned, [*turned[1:], turned[0]], strict=True) if y1 != y2]
    for row in range(math.floor((high - low) / gap)):
        level = low + (row + 0.5) * gap
        cuts = sorted(
            [x1 + (level - y1) / (y2 - y1) * (x2 - x1) for x1, y1, x2, y2 in edges if (y1 > level) != (y2 > level)]
        )
        for left, right in zip(cuts[::2], cuts[1::2], strict=False):
            yield (
                (left * cosine - level * sine, left * sine + level * cosine),
                (right * cosine - level * sine, right * sine + level * cosine),
            )
