"""Signs drawn by us, told apart by shape and never by colour: caution, critical step, option shapes, boxes to fill."""

from __future__ import annotations

from math import cos, pi, sin

from generator.sheets import once
from generator.sheets.flow import Canvas, Piece, Text
from generator.sheets.styles import THICK, THIN, Style

LETTERS = Style(size=11, bold=True, after=0, align="center")
_CORNERS = {"B": 4, "C": 3, "D": 4, "E": 5, "F": 6, "G": 8, "H": 12}
"""Corners of the shape round each letter; A stands in a circle, D on its corner."""


class Letter(Piece):
    """A letter in its own shape, so that an option can be named by its shape too.

    Args:
        letter: `A` to `H`.
        size: height and width, points.
    """

    def __init__(self, letter: str, size: float = 22.0) -> None:
        self._letter = letter
        self._size = size
        self._text = Text(letter, LETTERS)

    def measure(self, _width: float) -> float:
        """A square."""
        self._text.fit(self._size)
        return self._size

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """The shape, then the letter in its middle."""
        half = self._size / 2
        once.stamped(canvas, ("letter", self._letter, self._size), x + half, top - half, self._shape)
        self._text.paint(canvas, x, top - half + self._text.height / 2)

    def _shape(self, canvas: Canvas) -> None:
        half, corners = self._size / 2, _CORNERS.get(self._letter)
        canvas.setLineWidth(1.1)
        if corners is None:
            canvas.circle(0, 0, half - 1, stroke=1, fill=0)
        elif self._letter == "B":
            canvas.rect(2 - half, 2 - half, self._size - 4, self._size - 4, stroke=1, fill=0)
        elif self._letter == "C":
            outline(canvas, 0, -0.12 * self._size, 0.66 * self._size, 3)
        else:
            outline(canvas, 0, 0, half, corners)


def outline(canvas: Canvas, x: float, y: float, radius: float, corners: int, *, fill: bool = False) -> None:
    """A regular shape with one corner at the top, round a centre."""
    path = canvas.beginPath()
    for corner in range(corners):
        angle = pi / 2 + 2 * pi * corner / corners
        to = path.lineTo if corner else path.moveTo
        to(x + radius * cos(angle), y + radius * sin(angle))
    path.close()
    canvas.drawPath(path, stroke=1, fill=int(fill))


class Caution(Piece):
    """The sign beside a caution: a triangle with an exclamation mark, drawn."""

    side = 30.0

    def measure(self, _width: float) -> float:
        """A little less high than wide."""
        return self.side * 0.9

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """Thick sides, a bar and a dot."""
        once.stamped(canvas, "caution", x, top - self.height, self._sign)

    def _sign(self, canvas: Canvas) -> None:
        canvas.setLineWidth(2.4)
        canvas.setLineJoin(1)
        path = canvas.beginPath()
        path.moveTo(1.5, 1.5)
        path.lineTo(self.side - 1.5, 1.5)
        path.lineTo(self.side / 2, self.height - 1.5)
        path.close()
        canvas.drawPath(path, stroke=1, fill=0)
        canvas.setLineJoin(0)
        canvas.rect(self.side / 2 - 1.5, 10, 3, 9, stroke=0, fill=1)
        canvas.circle(self.side / 2, 6.3, 1.8, stroke=0, fill=1)


class Critical(Piece):
    """The sign of a critical step: a solid diamond. The word stands beside it."""

    side = 15.0

    def measure(self, _width: float) -> float:
        """A square."""
        return self.side

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """A solid square on its corner."""
        canvas.setLineWidth(THIN)
        outline(canvas, x + self.side / 2, top - self.side / 2, self.side / 2, 4, fill=True)


class Boxes(Piece):
    """Square boxes to write one letter or tick into.

    Args:
        count: how many.
        size: side of each, points.
        labels: small texts above the boxes, one for each; none by default.
    """

    gap = 7.0

    def __init__(self, count: int, size: float = 24.0, labels: tuple[Text, ...] = ()) -> None:
        self._count, self._size, self._labels = count, size, labels

    @property
    def natural(self) -> float:
        """Width in points."""
        return self._count * (self._size + self.gap) - self.gap

    def measure(self, _width: float) -> float:
        """One row."""
        for label in self._labels:
            label.fit(self._size)
        return self._size + max((label.height for label in self._labels), default=0.0)

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """Empty boxes with their labels on top."""
        canvas.setLineWidth(1.0)
        for number in range(self._count):
            left = x + number * (self._size + self.gap)
            canvas.rect(left, top - self.height, self._size, self._size, stroke=1, fill=0)
            if self._labels:
                self._labels[number].paint(canvas, left, top)


class Blank(Piece):
    """A line to write on.

    Args:
        height: room above the line, points.
    """

    def __init__(self, height: float = 24.0) -> None:
        self._height = height

    def measure(self, width: float) -> float:
        """The room above the line."""
        return self._height

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """The line, just below the feet of a text that is centred beside it."""
        canvas.setLineWidth(1.0)
        y = top - self._height / 2 - 5
        canvas.line(x, y, x + self.width, y)


class Number(Piece):
    """The number of a question, in a circle with a thick line.

    Args:
        number: as it is typed into the answers' table.
        size: of the circle, points.
    """

    def __init__(self, number: str, size: float = 24.0) -> None:
        self._size = size
        self._text = Text(number, Style(size=12, bold=True, after=0, align="center"))

    def measure(self, _width: float) -> float:
        """As high as the line beside it; the circle stands a little above and below."""
        return self._text.fit(self._size)

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """The circle and the number, in line with the first line of the question."""
        half = self._size / 2
        once.stamped(canvas, ("number", self._size), x + half, top - self._text.height / 2, self._circle)
        self._text.paint(canvas, x, top)

    def _circle(self, canvas: Canvas) -> None:
        canvas.setLineWidth(THICK)
        canvas.circle(0, 0, self._size / 2 - 1, stroke=1, fill=0)
