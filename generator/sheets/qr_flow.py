"""A square code as a piece: handed in as a matrix, drawn in plain black with its quiet zone, never too fine."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from reportlab.lib.units import mm
from reportlab.pdfgen.pathobject import PDFPathObject

from generator.problems import RefusedError
from generator.sheets.flow import Canvas, Piece

LEAST_MODULE = 0.6 * mm
"""Points; finer modules run together on worn printers and in poor photos."""
QUIET = 4
"""Empty modules on each side."""
_LAP = 0.02
"""Each row reaches this far into the next, so that no viewer shows a hair between them."""

Matrix = tuple[tuple[int, ...], ...]


class SquareCode(Piece):
    """A code in the middle of its column.

    Args:
        matrix: rows from the top, 1 for dark, without the quiet zone.
        widest: greatest width with the quiet zone, points.

    Raises:
        RefusedError: its modules would be too fine at that width.
    """

    def __init__(self, matrix: Sequence[Sequence[int]], widest: float) -> None:
        self._matrix: Matrix = tuple(map(tuple, matrix))
        self._across = len(self._matrix) + 2 * QUIET
        self.module = widest / self._across
        """Points."""
        if self.module < LEAST_MODULE - 1e-6:
            raise RefusedError(
                f"a code of {len(self._matrix)} modules needs {self._across * LEAST_MODULE / mm:.1f} mm of width, and "
                f"there are {widest / mm:.1f} mm"
            )
        self._side = widest

    def measure(self, width: float) -> float:
        """Its side, whatever the column's width."""
        return self._side

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """Fill the dark modules."""
        name, side = f"code-{hash(self._matrix):x}", len(self._matrix)
        if not canvas.hasForm(name):  # a code that stands on two pages is written once
            canvas.beginForm(name, 0, 0, side, side)
            canvas.drawPath(PDFPathObject(code=[_dark(self._matrix)]), stroke=0, fill=1)
            canvas.endForm()
        left = x + (self.width - self._side) / 2
        canvas.saveState()
        canvas.translate(left + QUIET * self.module, top - QUIET * self.module)
        canvas.scale(self.module, -self.module)
        canvas.doForm(name)
        canvas.restoreState()


def _dark(matrix: Matrix) -> str:
    """The dark modules as the PDF's own rectangles, side by side ones joined, in modules from the upper left."""
    edges = np.diff(np.pad(np.array(matrix, np.int8), ((0, 0), (1, 1))))
    rows, starts = np.nonzero(edges == 1)
    stops = np.nonzero(edges == -1)[1]
    numbers = np.stack([starts, rows, stops - starts], axis=1).ravel().tolist()
    return f"%d %d %d {1 + _LAP} re " * len(rows) % tuple(numbers)
