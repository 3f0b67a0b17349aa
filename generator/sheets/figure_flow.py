"""A drawing to scale as a piece, never so small that its letters can't be read."""

from __future__ import annotations

from generator.figures import Scene, pdf, pdf_height
from generator.figures.ink import HANDS
from generator.figures.scene import VIEW
from generator.problems import MachineError
from generator.sheets import once
from generator.sheets.flow import Canvas, Column, Piece, Text
from generator.sheets.styles import NOTE, SMALLEST

WIDEST = 330.0
"""Points; its letters are then as large as the sheet's own."""
HIGHEST = 440.0
"""Points; some words about it have room on the same page."""
NARROWEST = VIEW * SMALLEST / min(hand.size for hand in HANDS.values())
"""Points; narrower, its smallest letters would be under the least size."""


_EDGE = 6.0
"""Paper units round a drawing that are not cut off: half of its outermost lines."""


class Figure(Piece):
    """A scene in the middle of its column.

    Args:
        scene: the drawing.
        highest: greatest height, points; a drawing that would become too narrow may be higher.
        widest: greatest width, points.
    """

    def __init__(self, scene: Scene, highest: float = HIGHEST, widest: float = WIDEST) -> None:
        self._scene = scene
        self._highest, self._widest = highest, widest
        self._drawn = 0.0

    def measure(self, width: float) -> float:
        """The height at the width that it gets.

        Raises:
            MachineError: the column is too narrow for the letters of a drawing.
        """
        if width < NARROWEST:
            raise MachineError(f"a drawing needs {NARROWEST:.0f} points of width, and the column has {width:.0f}")
        fitting = self._highest / pdf_height(self._scene, 1.0)
        self._drawn = max(min(width, self._widest, fitting), NARROWEST)
        return pdf_height(self._scene, self._drawn)

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """Show it; a scene that the document has already is not drawn again."""
        left, low = x + (self.width - self._drawn) / 2, top - self.height
        scene, box = self._scene, (-_EDGE, -_EDGE, VIEW + _EDGE, round(pdf_height(self._scene, VIEW) + _EDGE, 2))
        known = _Same.of(scene, canvas)
        once.shown(canvas, known, box, left, low, self._drawn / VIEW, lambda pen: pdf(scene, pen, 0, 0, VIEW))


class _Same:
    """A scene by what it shows: scenes that were made apart and show the same are one drawing of a document.

    Comparing two large drawings takes long, so each is looked up once.
    """

    def __init__(self, scene: Scene) -> None:
        self._scene = scene

    @classmethod
    def of(cls, scene: Scene, canvas: Canvas) -> _Same:
        """The same object for all scenes of a document that show the same."""
        met: dict[int, tuple[Scene, _Same]] = canvas.__dict__.setdefault("_met_scenes", {})
        known: dict[Scene, _Same] = canvas.__dict__.setdefault("_known_scenes", {})
        if id(scene) not in met:
            met[id(scene)] = scene, known.setdefault(scene, cls(scene))  # kept, so that its id stays its own
        return met[id(scene)][1]


def captioned(scene: Scene, highest: float = HIGHEST) -> Piece:
    """A drawing, at most so many points high, and its title below it."""
    return Column([Figure(scene, highest), Text(scene.title, NOTE.but(align="center"))], before=4.0, after=6.0)
