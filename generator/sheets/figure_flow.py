"""A drawing to scale as a piece, never so small that its letters can't be read."""

from __future__ import annotations

from generator.figures import Scene, pdf, pdf_height
from generator.figures.ink import HANDS
from generator.figures.scene import VIEW
from generator.problems import MachineError
from generator.sheets.flow import Canvas, Column, Piece, Text
from generator.sheets.styles import NOTE, SMALLEST

WIDEST = 330.0
"""Points; its letters are then as large as the sheet's own."""
HIGHEST = 440.0
"""Points; some words about it have room on the same page."""
NARROWEST = VIEW * SMALLEST / min(hand.size for hand in HANDS.values())
"""Points; narrower, its smallest letters would be under the least size."""


REMEMBER = True
"""Whether a drawing that comes twice is worked out once; the bytes are the same."""
_BEFORE = 2
"""Operators that save the canvas's state and move it to the drawing's place; one behind it restores the state."""


class Figure(Piece):
    """A scene in the middle of its column.

    Args:
        scene: the drawing.
        highest: greatest height, points; a drawing that would become too narrow may be higher.
    """

    def __init__(self, scene: Scene, highest: float = HIGHEST) -> None:
        self._scene = scene
        self._highest = highest
        self._drawn = 0.0

    def measure(self, width: float) -> float:
        """The height at the width that it gets.

        Raises:
            MachineError: the column is too narrow for the letters of a drawing.
        """
        if width < NARROWEST:
            raise MachineError(f"a drawing needs {NARROWEST:.0f} points of width, and the column has {width:.0f}")
        fitting = self._highest / pdf_height(self._scene, 1.0)
        self._drawn = max(min(width, WIDEST, fitting), NARROWEST)
        return pdf_height(self._scene, self._drawn)

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """Draw it; a scene that the document has already is not worked out again."""
        left, low = x + (self.width - self._drawn) / 2, top - self.height
        known: dict[tuple[int, float], tuple[Scene, list[str]]] = canvas.__dict__.setdefault("_known_scenes", {})
        key = id(self._scene), self._drawn
        if REMEMBER and key in known:
            canvas.saveState()
            canvas.translate(left, low)
            canvas._code += known[key][1]
            canvas.restoreState()
            return
        start = len(canvas._code) + _BEFORE
        pdf(self._scene, canvas, left, low, self._drawn)
        known[key] = self._scene, canvas._code[start:-1]  # the scene is kept so that its id stays its own


def captioned(scene: Scene) -> Piece:
    """A drawing and its title below it."""
    return Column([Figure(scene), Text(scene.title, NOTE.but(align="center"))], before=4.0, after=6.0)
