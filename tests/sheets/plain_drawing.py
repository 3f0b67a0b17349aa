"""A scene by plain calls of ReportLab: what a recording keeps of a drawing, and what our operators are held against."""

from __future__ import annotations

from typing import Any

from reportlab.lib.colors import HexColor

from generator.figures.fonts import draw_text
from generator.figures.ink import HANDS, PENS, Ink
from generator.figures.parts import shapes
from generator.figures.scene import VIEW, Arc, Circle, Label, Line, Polyline, Rect, Scene


def plain(scene: Scene, canvas: Any, x: float, y: float, width: float) -> None:
    """Draws a scene, shape by shape.

    Args:
        scene: what to draw.
        canvas: a ReportLab canvas.
        x: left edge of the frame, points.
        y: lower edge of the frame, points.
        width: of the frame, points.
    """
    canvas.saveState()
    canvas.translate(x, y)
    canvas.setLineJoin(1)
    _Writer(scene, canvas, width).run()
    canvas.restoreState()


class _Writer:
    """Turns metres into points and sets pens only where they change."""

    def __init__(self, scene: Scene, canvas: Any, width: float) -> None:
        self._scene = scene
        self._canvas = canvas
        self._scale = width / scene.width
        self._paper = width / VIEW
        self._ink: Ink | None = None

    def run(self) -> None:
        canvas, scale = self._canvas, self._scale
        for shape in shapes(self._scene):
            match shape:
                case Label(point=(x, y), text=text, anchor=anchor, letter=letter):
                    hand = HANDS[letter]
                    canvas.setFillColor(HexColor(hand.colour))
                    self._ink = None
                    draw_text(canvas, x * scale, y * scale, text, hand.font, hand.size * self._paper, anchor)
                case Line(start=(x1, y1), end=(x2, y2), ink=ink):
                    self._pen(ink)
                    canvas.line(x1 * scale, y1 * scale, x2 * scale, y2 * scale)
                case Polyline(points=points, ink=ink, closed=closed):
                    stroke, fill = self._pen(ink)
                    path = canvas.beginPath()
                    path.moveTo(points[0][0] * scale, points[0][1] * scale)
                    for x, y in points[1:]:
                        path.lineTo(x * scale, y * scale)
                    if closed:
                        path.close()
                    canvas.drawPath(path, stroke=stroke, fill=fill)
                case Rect(corner=(x, y), width=width, height=height, ink=ink):
                    stroke, fill = self._pen(ink)
                    canvas.rect(x * scale, y * scale, width * scale, height * scale, stroke=stroke, fill=fill)
                case Circle(centre=(x, y), radius=radius, ink=ink):
                    stroke, fill = self._pen(ink)
                    canvas.circle(x * scale, y * scale, radius * scale, stroke=stroke, fill=fill)
                case Arc(centre=(x, y), radius=radius, start=start, sweep=sweep, ink=ink):
                    self._pen(ink)
                    left, low, across = (x - radius) * scale, (y - radius) * scale, 2 * radius * scale
                    canvas.arc(left, low, left + across, low + across, start, sweep)
                case _:
                    raise TypeError(f"no drawing for a {type(shape).__name__}")

    def _pen(self, ink: Ink) -> tuple[int, int]:
        """Sets the colours of an ink; whether it strokes and whether it fills."""
        pen = PENS[ink]
        if ink is not self._ink:
            self._ink = ink
            if pen.stroke != "none":
                self._canvas.setStrokeColor(HexColor(pen.stroke))
                self._canvas.setLineWidth(pen.width * self._paper)
                self._canvas.setDash([length * self._paper for length in pen.dash])
            if pen.fill != "none":
                self._canvas.setFillColor(HexColor(pen.fill))
        return int(pen.stroke != "none"), int(pen.fill != "none")
