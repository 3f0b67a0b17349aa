"""The drawing of a tank cut through as SVG, against bare string formatting of the same shapes.

The baseline has the shapes of the drawing worked out beforehand, knows no looks, no escapes and no groups, and only
writes each shape's numbers with two decimals. Ours takes the scene, works out dimensions and marks, and groups looks.
"""

from __future__ import annotations

import time

from generator.figures import draw, svg
from generator.figures.parts import shapes
from generator.figures.scene import Arc, Circle, Label, Line, Polyline, Rect, Scene, Shape, on_circle
from tests.benchmarks import Result, compare
from tests.figures.tanks import place, words

KEY = "tank-section"
LIMIT = 3.0
_TIMES = 20


def the_scene() -> Scene:
    """The tank of the hill school, cut through."""
    return draw(KEY, place("hill-school"), words("en"))


def by_hand(drawn: list[Shape], unit: float, height: float) -> str:
    """Every shape as markup, each by one format string.

    Args:
        drawn: all shapes of a scene.
        unit: metres of one paper unit.
        height: of the frame, metres.
    """
    parts = []
    for shape in drawn:
        if isinstance(shape, Line):
            (x1, y1), (x2, y2) = shape.start, shape.end
            parts.append(
                f'<line x1="{x1 / unit:.2f}" y1="{(height - y1) / unit:.2f}" x2="{x2 / unit:.2f}"'
                f' y2="{(height - y2) / unit:.2f}"/>'
            )
        elif isinstance(shape, Polyline):
            points = " ".join([f"{x / unit:.2f},{(height - y) / unit:.2f}" for x, y in shape.points])
            parts.append(f'<{"polygon" if shape.closed else "polyline"} points="{points}"/>')
        elif isinstance(shape, Rect):
            x, y = shape.corner
            parts.append(
                f'<rect x="{x / unit:.2f}" y="{(height - y - shape.height) / unit:.2f}"'
                f' width="{shape.width / unit:.2f}" height="{shape.height / unit:.2f}"/>'
            )
        elif isinstance(shape, Circle):
            x, y = shape.centre
            parts.append(f'<circle cx="{x / unit:.2f}" cy="{(height - y) / unit:.2f}" r="{shape.radius / unit:.2f}"/>')
        elif isinstance(shape, Arc):
            (x1, y1), (x2, y2) = (
                on_circle(shape.centre, shape.radius, turn) for turn in (shape.start, shape.start + shape.sweep)
            )
            parts.append(
                f'<path d="M{x1 / unit:.2f},{(height - y1) / unit:.2f} A{shape.radius / unit:.2f}'
                f' {shape.radius / unit:.2f} 0 {int(shape.sweep > 180)} 0 {x2 / unit:.2f},{(height - y2) / unit:.2f}"/>'
            )
        elif isinstance(shape, Label):
            x, y = shape.point
            parts.append(
                f'<text x="{x / unit:.2f}" y="{(height - y) / unit:.2f}"'
                f' text-anchor="{shape.anchor}">{shape.text}</text>'
            )
    return "<svg>" + "".join(parts) + "</svg>"


def results(runs: int = 9) -> list[Result]:
    """One drawing, written many times."""
    scene = the_scene()
    drawn = list(shapes(scene))

    def ours() -> None:
        for _ in range(_TIMES):
            svg(scene, "p")

    def baseline() -> None:
        for _ in range(_TIMES):
            by_hand(drawn, scene.unit, scene.height)

    return [
        compare(
            f"{_TIMES} times {KEY} as SVG, against bare string formatting",
            ours,
            baseline,
            LIMIT,
            runs,
            time.process_time,
        )
    ]


if __name__ == "__main__":
    for result in results():
        print(result)  # noqa: T201 (this is what the benchmark is for)
