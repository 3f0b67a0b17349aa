"""What a document shows again and again: drawn once, as a form that pages name, or as a sign of the same strokes."""

from __future__ import annotations

from collections.abc import Callable, Hashable
from typing import TypeAlias

from generator.sheets.flow import Canvas

Draw: TypeAlias = Callable[[Canvas], None]
Box: TypeAlias = tuple[float, float, float, float]


def shown(canvas: Canvas, what: Hashable, box: Box, x: float, y: float, share: float, draw: Draw) -> None:
    """Show what the document holds as a form; it is drawn if it is new.

    Args:
        canvas: of the document.
        what: two that are equal look the same.
        box: left, lower, right and upper end of what is drawn, in its own measure; all beyond is cut off.
        x: where its own 0 stands, points.
        y: where its own 0 stands, points.
        share: points that one of its own measure has.
        draw: draws it in its own measure.
    """
    known: dict[Hashable, str] = canvas.__dict__.setdefault("_known_forms", {})
    if what not in known:
        known[what] = f"o{len(known)}"
        canvas.beginForm(known[what], *box)
        draw(canvas)
        canvas.endForm()
    canvas._code.append(f"q {share:.6f} 0 0 {share:.6f} {x:.3f} {y:.3f} cm")
    canvas.doForm(known[what])
    canvas._code.append("Q")


def stamped(canvas: Canvas, what: Hashable, x: float, y: float, draw: Draw) -> None:
    """Draw a small sign by operators that are worked out once; their bytes pack well.

    Args:
        canvas: of the document.
        what: two that are equal look the same.
        x: where its own 0 stands, points.
        y: where its own 0 stands, points.
        draw: draws it round 0, 0 and leaves the canvas as it was but for widths of lines.
    """
    known: dict[Hashable, str] = canvas.__dict__.setdefault("_known_signs", {})
    if what not in known:
        start = len(canvas._code)
        draw(canvas)
        known[what] = " ".join(canvas._code[start:]).replace("\n", " ")
        del canvas._code[start:]
    canvas._code.append(f"q 1 0 0 1 {x:.2f} {y:.2f} cm {known[what]} Q")
