"""A scene on a ReportLab canvas, with the same shapes and the same texts as the page's.

Lines and surfaces are written as the file's own operators, in whole steps of a twentieth of a paper unit: less than a
hundredth of a millimetre on paper, and a quarter of the bytes that the library's own calls would make. A dot is a line
of one step with a round end, and lines of one ink that follow each other are one path.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from reportlab.lib.colors import HexColor
from reportlab.pdfgen.pdfgeom import bezierArc

from generator.figures.fonts import draw_text
from generator.figures.ink import HANDS, PENS, Ink
from generator.figures.parts import shapes
from generator.figures.scene import VIEW, Arc, Circle, Label, Line, Point, Polyline, Rect, Scene, Shape

_STEPS = 20
"""Steps in a paper unit."""
_ROUND = 0.5523
"""How far the handles of a quarter of a circle stand from its ends, over its radius."""
_MOST = 300
"""Pieces of one path: a printer of little memory must hold it whole."""


def pdf_height(scene: Scene, width: float) -> float:
    """Height of a drawing at a width, in the unit of the width."""
    return width * scene.height / scene.width


def pdf(scene: Scene, canvas: Any, x: float, y: float, width: float) -> None:
    """Draws a scene; the canvas is left with the settings that it came with.

    Args:
        scene: what to draw.
        canvas: a ReportLab canvas.
        x: left edge of the frame, points.
        y: lower edge of the frame, points.
        width: of the frame, points.

    Raises:
        MachineError: text can't be shaped, or the font lacks one of its characters.
    """
    canvas.saveState()
    canvas.translate(x, y)
    drawn = list(shapes(scene))
    labels = [shape for shape in drawn if isinstance(shape, Label)]
    share = f"{width / VIEW / _STEPS:.8f}"
    writer = _Writer(_STEPS / scene.unit)
    lines = writer.operators(drawn[: len(drawn) - len(labels)])
    canvas._code += [f"q {share} 0 0 {share} 0 0 cm 1 j", *lines, "Q"]
    scale, paper = width / scene.width, width / VIEW
    for label in labels:
        hand = HANDS[label.letter]
        canvas.setFillColor(HexColor(hand.colour))
        left, base = label.point[0] * scale, label.point[1] * scale
        draw_text(canvas, left, base, label.text, hand.font, hand.size * paper, label.anchor)
    canvas.restoreState()


class _Writer:
    """Turns metres into whole steps and sets pens only where they change.

    Args:
        scale: steps in a metre of the drawing.
    """

    def __init__(self, scale: float) -> None:
        self._scale = scale

    def operators(self, drawn: list[Shape]) -> Iterator[str]:
        """Operators of shapes, from the back to the front.

        Args:
            drawn: without texts.
        """
        pen: tuple[Ink, float] | None = None
        paint, path = "", list[str]()
        for shape in drawn:
            ink = _ink(shape)
            stroked, filled = PENS[ink].stroke != "none", PENS[ink].fill != "none"
            dot = shape.radius if isinstance(shape, Circle) and not stroked else 0.0
            how = "B*" if stroked and filled else "S" if stroked or dot else "f*"
            if path and ((ink, dot) != pen or how != "S" or len(path) == _MOST):
                yield f"{' '.join(path)} {paint}"
                path = []
            if (ink, dot) != pen:
                yield self._pen(ink, dot)
            pen, paint = (ink, dot), how
            path.append(self._dot(shape.centre) if dot and isinstance(shape, Circle) else self._path(shape))
        if path:
            yield f"{' '.join(path)} {paint}"

    def _pen(self, ink: Ink, dot: float) -> str:
        """Colours, width, dashes and ends of an ink's lines; a dot is a line of its own width."""
        pen = PENS[ink]
        if dot:
            return f"{_colour(pen.fill)} RG {self._step(2 * dot)} w [] 0 d 1 J"
        said = []
        if pen.stroke != "none":
            dashes = " ".join(str(round(length * _STEPS)) for length in pen.dash)
            said.append(f"{_colour(pen.stroke)} RG {round(pen.width * _STEPS)} w [{dashes}] 0 d 0 J")
        if pen.fill != "none":
            said.append(f"{_colour(pen.fill)} rg")
        return " ".join(said)

    def _step(self, metres: float) -> int:
        return round(metres * self._scale)

    def _at(self, point: Point) -> str:
        return f"{round(point[0] * self._scale)} {round(point[1] * self._scale)}"

    def _dot(self, centre: Point) -> str:
        """Not of no length at all: some printers leave such a line out."""
        x, y = self._step(centre[0]), self._step(centre[1])
        return f"{x} {y} m {x + 1} {y} l"

    def _path(self, shape: Shape) -> str:
        match shape:
            case Line(start=start, end=end):
                return f"{self._at(start)} m {self._at(end)} l"
            case Polyline(points=points, closed=closed):
                lines = " ".join([f"{self._at(point)} l" for point in points[1:]])
                return f"{self._at(points[0])} m {lines}{' h' if closed else ''}"
            case Rect(corner=corner, width=width, height=height):
                return f"{self._at(corner)} {self._step(width)} {self._step(height)} re"
            case Circle(centre=centre, radius=radius):
                return self._circle(self._step(centre[0]), self._step(centre[1]), radius * self._scale)
            case Arc(centre=(x, y), radius=radius, start=start, sweep=sweep):
                curves = bezierArc(x - radius, y - radius, x + radius, y + radius, start, sweep)
                turns = " ".join(" ".join([*(self._at(curve[i : i + 2]) for i in (2, 4, 6)), "c"]) for curve in curves)
                return f"{self._at(curves[0][:2])} m {turns}"
            case _:
                raise TypeError(f"no drawing for a {type(shape).__name__}")

    @staticmethod
    def _circle(x: int, y: int, radius: float) -> str:
        r, k = round(radius), round(radius * _ROUND)
        upper = f"{x + r} {y + k} {x + k} {y + r} {x} {y + r} c {x - k} {y + r} {x - r} {y + k} {x - r} {y} c"
        lower = f"{x - r} {y - k} {x - k} {y - r} {x} {y - r} c {x + k} {y - r} {x + r} {y - k} {x + r} {y} c"
        return f"{x + r} {y} m {upper} {lower} h"


def _ink(shape: Shape) -> Ink:
    if isinstance(shape, Line | Polyline | Rect | Circle | Arc):
        return shape.ink
    raise TypeError(f"no drawing for a {type(shape).__name__}")


def _colour(name: str) -> str:
    return " ".join(f"{share:.3f}".rstrip("0").rstrip(".") for share in HexColor(name).rgb())
