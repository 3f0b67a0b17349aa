"""Four pictures of one kind in two rows, one of them with a fault: what most faults of site work are drawn in."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from generator.figures.areas import Spot, add_area
from generator.figures.fault_parts import finished, paper, slots, task, task_height
from generator.figures.page import DISC, MARGIN, Page
from generator.figures.scene import Scene
from generator.figures.view import View
from generator.words import Words

Painter = Callable[[View, Mapping[str, float]], None]

_LETTER = 2 * DISC + 4
"""Paper beside a picture for its letter."""
_GAP = 10.0


@dataclass(frozen=True, slots=True)
class Frame:
    """What each picture shows, metres.

    Args:
        left: edges of the picture; so are the next three.
        low: lower edge.
        right: right edge.
        high: upper edge.
    """

    left: float
    low: float
    right: float
    high: float


def four(
    key: str,
    needs: tuple[str, ...],
    frame: Callable[[Mapping[str, float]], Frame],
    items: Mapping[str, Painter],
) -> Spot:
    """A drawing of four pictures.

    Args:
        key: name of the drawing.
        needs: names of the givens and quantities that it is drawn from.
        frame: what each picture shows, from the numbers of a tank.
        items: who paints each picture, the fault first.
    """

    def paint(values: Mapping[str, float], words: Words, order: tuple[str, ...]) -> Scene:
        lines = task(words)
        shown = frame(values)
        wide = (slots(2).__next__()[1] - MARGIN) - _LETTER - 4
        unit = (shown.right - shown.left) / wide
        high = (shown.high - shown.low) / unit
        page = Page(unit, MARGIN + 2 * high + _GAP + task_height(lines))
        cells = [(left, MARGIN + number * (high + _GAP)) for number in (0, 1) for left, _ in slots(2)]
        for name, (left, top) in zip(order, cells, strict=True):
            start = left + _LETTER
            items[name](View(page, start - shown.left / unit, top + shown.high / unit, 1 / unit), values)
            add_area(page, name, paper(page, start, top, start + wide, top + high), (left + DISC + 1, top + DISC))
        return finished(page, key, lines, words)

    return Spot(key, needs, tuple(items), paint)


def fixed(left: float, low: float, right: float, high: float) -> Callable[[Mapping[str, float]], Frame]:
    """The same picture for every tank."""
    shown = Frame(left, low, right, high)
    return lambda _: shown
