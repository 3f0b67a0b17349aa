"""A formula as the author wrote it, set with fraction bars and roots, and what its letters mean."""

from __future__ import annotations

from generator.calculations import BOOK
from generator.figures.fonts import BOLD, REGULAR, draw_text, shaped_width
from generator.formula import plain_text
from generator.formula.boxes import Box, Glyphs, Role, boxes
from generator.sheets.flow import Canvas, Column, Piece, Text
from generator.sheets.styles import NOTE, SMALLEST, SUBHEADING, TIGHT
from generator.sheets.text import Run
from generator.sheets.working import symbols, word_of
from generator.words import Words

SIZE = 14.0
"""Points of a formula's letters, where its smallest ones are not too small then."""
_BETWEEN = 4.0


class Formula(Piece):
    """The formula of a quantity; one that is wider than its column becomes a plain line of text, which can be broken.

    Args:
        name: a quantity.
        words: of the reader's language.
    """

    before = 3.0
    after = 4.0

    def __init__(self, name: str, words: Words) -> None:
        self._lines = _set(name, words)
        self._text = Text(symbols(plain_text(BOOK, name, word=word_of(words)).replace("; ", "\n")), TIGHT)
        self._plain = False

    @property
    def natural_width(self) -> float:
        """Of its widest line, points: where it is not to become plain text."""
        return max(line.width for line in self._lines)

    def measure(self, width: float) -> float:
        """The lines below each other."""
        self._plain = self.natural_width > width
        if self._plain:
            return self._text.fit(width)
        return sum(line.up + line.down for line in self._lines) + _BETWEEN * (len(self._lines) - 1)

    def paint(self, canvas: Canvas, x: float, top: float) -> None:
        """Letters and strokes."""
        if self._plain:
            self._text.paint(canvas, x, top)
            return
        for line in self._lines:
            top -= line.up
            for operation in line.moved(x, top):
                if isinstance(operation, Glyphs):
                    draw_text(canvas, operation.x, operation.y, operation.text, _font(operation.role), operation.size)
                    continue
                canvas.setLineWidth(operation.thickness)
                path = canvas.beginPath()
                path.moveTo(*operation.points[0])
                for point in operation.points[1:]:
                    path.lineTo(*point)
                canvas.drawPath(path, stroke=1, fill=0)
            top -= line.down + _BETWEEN


def explained(name: str, words: Words) -> Piece:
    """A formula under its quantity's name, with what each letter stands for."""
    title = Text(words.say_one_of("quantity", name), SUBHEADING.but(before=0.0, after=0.0))
    runs: list[Run] = []
    for need in BOOK.quantities[name].needs:
        entry = BOOK.entry(need)
        unit = f" ({words.say_one_of('unit', entry.unit)})" if entry.unit else ""
        meaning = Run(f": {words.say_one_of('quantity', need)}{unit}")
        runs += [*([Run("; ")] if runs else []), *symbols(entry.symbol), meaning]
    return Column([title, Formula(name, words), Text(runs, NOTE)], before=4.0, after=6.0)


def _font(role: Role) -> str:
    return BOLD if role is Role.SYMBOL else REGULAR


def _measured(text: str, role: Role, size: float) -> float:
    return shaped_width(text, _font(role), size)


def _set(name: str, words: Words) -> tuple[Box, ...]:
    """The formula at the size at which its smallest letters are large enough."""
    word = word_of(words)
    size = SIZE * max(1.0, SMALLEST / _smallest(boxes(BOOK, name, size=SIZE, measure=_measured, word=word)))
    return boxes(BOOK, name, size=size, measure=_measured, word=word)


def _smallest(lines: tuple[Box, ...]) -> float:
    return min(each.size for line in lines for each in line.drawing if isinstance(each, Glyphs))
