"""Sticks in true size on strips of paper: cut out, taped end to end, and laid on a lath, a nail or the ring.

A copier or a print dialogue may shrink a page by a few percent, and nobody sees it. So a line of 150 mm stands beside
the strips: whoever measures it knows whether the strips are true.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from reportlab.lib.units import mm

from generator.figures.rulers import Mark
from generator.sheets.flow import Canvas, Column, Piece, Text
from generator.sheets.styles import FOOTER, NOTE, THICK, THIN
from generator.words import Words

CHECK: float = 150 * mm
"""Length of the line that is measured before the strips are trusted."""
STRIP: float = 200 * mm
"""Each strip stands for so much of the stick."""
TAB: float = 12 * mm
"""Free paper on top of a strip: the next one is glued over it."""
_PER_PAGE, _GAP = 4, 8.0
_SCALE, _LABELS = 42.0, 47.0
"""How far the marks reach into a strip, and where their words begin, points."""
_BEYOND = 0.03
"""Length that a stick has beyond its last mark where it is shorter than one strip [m]."""
_NUMBER = FOOTER.but(bold=True)


def strip_pages(marks: Sequence[Mark], words: Words) -> Iterator[Piece]:
    """The strips of one stick, four side by side, each page with its own line to check.

    Args:
        marks: the lowest first.
        words: of the reader's language.
    """
    length = max(mark.at for mark in marks) * 1000 * mm
    count = max(1, int((length - 1e-6) / STRIP) + 1)
    strips = [_Strip(number, count, marks, length, words) for number in range(count)]
    for start in range(0, count, _PER_PAGE):
        yield Column([_CheckLine(words), _Strips(strips[start : start + _PER_PAGE])], before=4.0, after=4.0)


class _CheckLine(Piece):
    """A line of exactly 150 mm and what it is for."""

    after = 8.0

    def __init__(self, words: Words) -> None:
        self._text = Text(words.say("ruler.check"), NOTE.but(after=0.0, bold=True))

    def measure(self, width: float) -> float:
        """The line, and its words below."""
        return 12.0 + self._text.fit(width)

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """Ends as thin strokes, so that a steel ruler finds their middle."""
        y = top - 6
        canvas.setLineWidth(THIN)
        canvas.line(x, y, x + CHECK, y)
        for end in (x, x + CHECK):
            canvas.line(end, y - 5, end, y + 5)
        self._text.paint(canvas, x, top - 12)


class _Strips(Piece):
    """Strips side by side."""

    def __init__(self, strips: Sequence[_Strip]) -> None:
        self._strips = strips

    def measure(self, width: float) -> float:
        """As high as the highest."""
        each = (width - (_PER_PAGE - 1) * _GAP) / _PER_PAGE
        return max(strip.fit(each) for strip in self._strips)

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """From the left, with their feet on one line."""
        for number, strip in enumerate(self._strips):
            strip.paint(canvas, x + number * (strip.width + _GAP), top - self.height + strip.height)


@dataclass(frozen=True, slots=True)
class _Placed:
    """A mark on a strip: height above the strip's foot, and its words with the height of their lower edge."""

    at: float
    label: Text
    low: float


class _Strip(Piece):
    """One strip: a scale on its left edge, marks across it, their words beside them, and a tab on top."""

    def __init__(self, number: int, count: int, marks: Sequence[Mark], length: float, words: Words) -> None:
        self._number, self._count = number, count
        self._start = number * STRIP
        alone: float = min(STRIP, length + _BEYOND * 1000 * mm)
        self._long = alone if count == 1 else STRIP
        self._marks = [
            mark for mark in marks if self._start - 1e-6 <= mark.at * 1000 * mm <= self._start + self._long + 1e-6
        ]
        self._name = Text(words.say("ruler.strip", number=number + 1, strips=count), _NUMBER)
        last = number == count - 1
        glue = words.say("ruler.end") if last else words.say("ruler.glue", number=number + 2)
        self._glue = Text(glue, FOOTER.but(align="center"))
        self._placed: list[_Placed] = []

    def measure(self, width: float) -> float:
        """True size, with the tab."""
        self._name.fit(width - _LABELS - 2)
        self._glue.fit(width - 4)
        self._placed = list(self._set(width))
        return self._long + TAB + self._glue.height

    def _set(self, width: float) -> Iterator[_Placed]:
        """Words beside their marks; where two marks are close, the upper words move up."""
        free = 1.0 + self._name.height
        labels = []
        for mark in self._marks:
            label = Text(mark.text, FOOTER)
            label.fit(width - _LABELS - 2)
            labels.append((mark.at * 1000 * mm - self._start, label))
        lows = []
        for at, label in labels:
            low = max(free, at - label.height / 2)
            lows.append(low)
            free = low + label.height
        top = self._long - 1.0
        for place in reversed(range(len(lows))):
            lows[place] = min(lows[place], top - labels[place][1].height)
            top = lows[place]
        for (at, label), low in zip(labels, lows, strict=True):
            yield _Placed(at, label, low)

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """Edge, scale, marks, words."""
        foot = top - self.height
        canvas.setLineWidth(THIN)
        canvas.rect(x, foot, self.width, self._long, stroke=1, fill=0)
        canvas.setDash(3, 3)
        canvas.rect(x, foot + self._long, self.width, self.height - self._long, stroke=1, fill=0)
        canvas.setDash()
        self._glue.paint(canvas, x + 2, foot + self._long + self._glue.height + 8)
        self._name.paint(canvas, x + _LABELS, foot + self._name.height + 1)
        self._scale(canvas, x, foot)
        for placed in self._placed:
            y = foot + placed.at
            canvas.setLineWidth(THICK)
            canvas.line(x, y, x + _SCALE, y)
            canvas.setLineWidth(THIN)
            canvas.line(x + _SCALE, y, x + _LABELS - 1, foot + placed.low + placed.label.height / 2)
            placed.label.paint(canvas, x + _LABELS, foot + placed.low + placed.label.height)

    def _scale(self, canvas: Canvas, x: float, foot: float) -> None:
        """A stroke each 5 mm, a longer one each 10 mm; each 50 mm has its millimetres where no mark is near."""
        canvas.setLineWidth(THIN)
        for step in range(1, int(self._long / (5 * mm) + 1e-6)):
            y = foot + step * 5 * mm
            canvas.line(x, y, x + (12 if step % 10 == 0 else 8 if step % 2 == 0 else 4), y)
            if step % 10 == 0 and all(abs(placed.at - step * 5 * mm) > 9 for placed in self._placed):
                number = Text(f"{round((self._start + step * 5 * mm) / mm)}", FOOTER)
                number.fit(_SCALE - 14)
                number.paint(canvas, x + 14, y + number.height / 2)
