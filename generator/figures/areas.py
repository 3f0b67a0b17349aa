"""Places of a drawing that a learner chooses between: each gets a letter beside it, and none says what is wrong there.

Which thing stands at which place is dealt anew for every seed, so that nobody learns a letter by heart. The first name
of a `Spot` is the thing that is wrong; the others are sound work.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from generator.figures.layout import Box, segments
from generator.figures.page import Page
from generator.figures.scene import VIEW, Area, Element, Point, Scene
from generator.formula import Stream
from generator.words import Words

LETTERS = "ABCDEFGH"
"""Letters of areas, in the order in which they are read."""
TARGET = 26.0
"""Least width and height of an area, paper units: 24 pixels where a drawing is shown at its least width."""
SEED = "figure_seed"
"""Name of the number, among those of a tank, that decides where the fault is; 0 where it is missing."""


@dataclass(frozen=True, slots=True)
class Spot:
    """A drawing with one fault and several sound places.

    Args:
        key: name of the drawing.
        needs: names of the givens and quantities that it is drawn from.
        names: things to choose between; the first one is the fault.
        paint: makes the scene from the numbers, a language, and the names in the order of their places.
    """

    key: str
    needs: tuple[str, ...]
    names: tuple[str, ...]
    paint: Callable[[Mapping[str, float], Words, tuple[str, ...]], Scene]

    @property
    def fault(self) -> str:
        """Name of what is wrong."""
        return self.names[0]

    def dealt(self, seed: int = 0) -> tuple[str, ...]:
        """The names in the order of their places."""
        return tuple(Stream(f"areas|{self.key}|{seed}").shuffle(self.names))

    def letters(self, seed: int = 0) -> Mapping[str, str]:
        """For each letter of the drawing the name of what stands there."""
        return dict(zip(LETTERS, self.dealt(seed), strict=False))

    def draw(self, values: Mapping[str, float], words: Words) -> Scene:
        """The drawing for one tank.

        Args:
            values: numbers of the tank by name; `SEED` among them decides where the fault is.
            words: language of its texts.
        """
        return self.paint(values, words, self.dealt(round(values.get(SEED, 0))))


def around(parts: Iterable[Element], unit: float, margin: float = 2.0) -> Box:
    """The paper that parts of a drawing take.

    Args:
        parts: what the area is about, such as the groups of one name.
        unit: metres of one paper unit.
        margin: left free all round, paper units.
    """
    points = [point for part in parts for segment in segments(part, unit) for point in segment]
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return Box(min(xs), min(ys), max(xs), max(ys)).grown(margin * unit)


def add_area(page: Page, name: str, box: Box, mark: Point) -> None:
    """Makes a place choosable, and puts the next letter beside it.

    Args:
        page: the drawing.
        name: what is there.
        box: the place, metres; grown where it would be too small for a finger.
        mark: middle of the letter: paper units from the left and from the top.
    """
    wide, high = VIEW * page.unit, page.height * page.unit
    left, right = _at_least(box.left, box.right, TARGET * page.unit, wide)
    low, top = _at_least(box.low, box.high, TARGET * page.unit, high)
    letter = LETTERS[len(page.areas)]
    page.areas.append(Area(letter, name, ((left, low), (right, low), (right, top), (left, top)), page.at(*mark)))
    page.disc(letter, *mark)


def _at_least(low: float, high: float, least: float, most: float) -> tuple[float, float]:
    """A stretch inside 0 to `most`, grown evenly to a least length."""
    grow = max(0.0, least - (high - low)) / 2
    low, high = low - grow, high + grow
    move = max(0.0, -low) or min(0.0, most - high)
    return max(0.0, low + move), min(most, high + move)
