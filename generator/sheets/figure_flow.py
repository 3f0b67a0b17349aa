"""A drawing to scale as a piece."""

from __future__ import annotations

from generator.figures import Scene, pdf, pdf_height
from generator.sheets.flow import Canvas, Column, Piece, Text
from generator.sheets.styles import NOTE


class Figure(Piece):
    """A scene, as wide as its column unless it would be too high; centred, never split.

    Args:
        scene: the drawing.
        highest: greatest height, points.
    """

    before = 4.0
    after = 6.0

    def __init__(self, scene: Scene, highest: float) -> None:
        super().__init__()
        self._scene = scene
        self._highest = highest
        self._drawn = 0.0

    def measure(self, width: float) -> float:
        """The height at the width, or the greatest one with a smaller width."""
        self.width = width
        height: float = pdf_height(self._scene, width)
        self._drawn = width
        if height > self._highest:
            self._drawn, height = width * self._highest / height, self._highest
        return height

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """Draw it."""
        canvas.saveState()
        pdf(self._scene, canvas, x + (self.width - self._drawn) / 2, top - self.height, self._drawn)
        canvas.restoreState()


def captioned(scene: Scene, highest: float) -> Piece:
    """A drawing and its title below it."""
    return Column([Figure(scene, highest), Text(scene.title, NOTE.but(align="center"))], before=4.0, after=6.0)
