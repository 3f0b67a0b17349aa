"""The one table of sizes and the signs that all sheets share: black ink only, nothing under 9 points."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from reportlab.lib.pagesizes import A4
from reportlab.lib.units import mm

SMALLEST = 9.0
"""Points; no text on any sheet is smaller."""

PAGE_WIDTH, PAGE_HEIGHT = A4
MARGIN = 17 * mm
"""Left, right and top; most office printers reach to 5 mm from the edge."""
FOOT = 23 * mm
"""Bottom margin: two footer lines stand in it."""
TEXT_WIDTH = PAGE_WIDTH - 2 * MARGIN

THIN = 0.6
"""Points; the thinnest line that a worn laser printer and a copier still show."""
THICK = 1.6

DEVANAGARI_SPREAD = 1.5
"""Line distance over size where marks stand above and below the letters."""
LATIN_SPREAD = 1.35
CAPITAL = 0.63
"""Height of capitals and of Devanagari body letters over the size, as measured on the course's font."""


@dataclass(frozen=True, slots=True)
class Style:
    """How a text is set.

    Args:
        size: points, at least `SMALLEST`.
        bold: whether the whole text is bold.
        before: space above, points; at the top of a page it falls away.
        after: space below, points.
        indent: space on the left, points.
        align: `left`, `center` or `right`.
        keep: whether it must stay on one page with what follows, as headings do.
    """

    size: float = 12.0
    bold: bool = False
    before: float = 0.0
    after: float = 5.0
    indent: float = 0.0
    align: Literal["left", "center", "right"] = "left"
    keep: bool = False

    def __post_init__(self) -> None:
        if self.size < SMALLEST:
            raise ValueError(f"a text of {self.size:g} points is too small: at least {SMALLEST:g}")

    def but(self, **changes: float | bool | str) -> Style:
        """The same style with some changes."""
        return replace(self, **changes)  # type: ignore[arg-type]


BODY = Style()
TIGHT = Style(after=1.5)
"""Body text in boxes, lists and tables."""
CELL = Style(size=11, after=0)
NOTE = Style(size=10, after=3)
FOOTER = Style(size=SMALLEST, after=0)
TITLE = Style(size=19, bold=True, after=4, keep=True)
HEADING = Style(size=14.5, bold=True, before=9, after=4, keep=True)
SUBHEADING = Style(size=12.5, bold=True, before=6, after=3, keep=True)
SUBSCRIPT = 9.0 / 12.0
"""Size of a subscript over its line's, where that line has 12 points or more; never under `SMALLEST`."""
SUBSCRIPT_DROP = 0.17
"""How far a subscript stands below the line, over the line's size."""
