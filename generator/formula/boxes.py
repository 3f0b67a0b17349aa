"""A formula laid out for paper: boxes beside and over each other, as strokes and pieces of text to draw.

Nothing is drawn here. The sheets hand in a way to measure text and draw what comes back; lengths are in the unit of the
size that was asked for (points), x to the right, y upwards from the line on which the letters stand.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from math import cos, pi, sin
from typing import TYPE_CHECKING, TypeAlias

from generator.formula.plain import Word, english
from generator.formula.registry import SYMBOL
from generator.formula.tree import Expression, Variable, parse
from generator.formula.typeset import SPACE, number_piece, typeset

if TYPE_CHECKING:
    from generator.formula.book import Book


class Role(StrEnum):
    """What a piece of text is, so that the sheets can choose a font for it."""

    SYMBOL = "symbol"
    NUMBER = "number"
    WORD = "word"
    SIGN = "sign"


Measure = Callable[[str, Role, float], float]
"""Width of a text in a role at a size."""


@dataclass(frozen=True, slots=True)
class Glyphs:
    """A text to draw from (x, y) to the right."""

    x: float
    y: float
    text: str
    role: Role
    size: float


@dataclass(frozen=True, slots=True)
class Stroke:
    """An open line through points, of a thickness: a fraction's bar, a root, a bracket."""

    points: tuple[tuple[float, float], ...]
    thickness: float


DrawingOperation: TypeAlias = Glyphs | Stroke


@dataclass(frozen=True, slots=True)
class Box:
    """A laid-out piece: how far it reaches right, above and below its line, and what to draw."""

    width: float
    up: float
    down: float
    drawing: tuple[DrawingOperation, ...]

    def moved(self, x: float, y: float) -> tuple[DrawingOperation, ...]:
        """What to draw when the piece's start of line is at (x, y)."""
        return tuple(_moved(operation, x, y) for operation in self.drawing)


def _moved(operation: DrawingOperation, x: float, y: float) -> DrawingOperation:
    if isinstance(operation, Glyphs):
        return replace(operation, x=operation.x + x, y=operation.y + y)
    return replace(operation, points=tuple((px + x, py + y) for px, py in operation.points))


def boxes(
    book: Book,
    name: str,
    *,
    size: float,
    measure: Measure,
    shown: Mapping[str, str] | None = None,
    word: Word = english,
) -> tuple[Box, ...]:
    """The formula of a quantity as boxes, one for each line: its local names first, the quantity last.

    Args:
        book: where the quantity lives.
        name: a quantity.
        size: of the letters; subscripts and powers are smaller.
        measure: width of a text.
        shown: numbers as printed, to stand in the place of symbols; it holds every name that the formula uses, local
            names too. None sets the formula in symbols.
        word: gives a formula's few words and inner names (`plain.Word`) in the reader's language.

    Raises:
        UnknownNameError: the book has no such quantity.
    """
    quantity = book.worked_out(name)
    formula = parse(quantity.function)
    writer = _Layout(size, measure)

    def leaf(variable: Variable, bracket: bool) -> Box:
        if shown is not None:
            return number_piece(shown[variable.name], writer, bracket=bracket)
        return left(variable.name) if variable.local else writer.letters(book.entry(variable.name).symbol)

    def left(local: str) -> Box:
        return writer.said(word(local))

    def line(begun: Box, expression: Expression) -> Box:
        return writer.row(begun, writer.sign("="), typeset(expression, writer, leaf, word))

    inner = (line(left(local), expression) for local, expression in formula.locals)
    return (*inner, line(writer.letters(quantity.symbol), formula.result))


class _Layout:
    """Pieces of a formula as boxes. All shares are of the size of the letters."""

    ascent, descent = 0.72, 0.22
    """Of digits and brackets in common book fonts."""
    axis = 0.27
    """Height of a fraction's bar and of the middle of a minus."""
    thickness = 0.05
    gap = 0.12
    """Between a bar and what stands over or under it."""
    small, lowered_by, raised_by = 0.72, 0.16, 0.34
    tallest_bracket = 1.15
    """A piece higher than this gets drawn brackets, others the font's own."""

    def __init__(self, size: float, measure: Measure) -> None:
        self.size, self._measure = size, measure

    def _text(self, text: str, role: Role, size: float) -> Box:
        glyphs = Glyphs(0, 0, text, role, size)
        return Box(self._measure(text, role, size), self.ascent * size, self.descent * size, (glyphs,))

    def _space(self, share: float) -> Box:
        return Box(share * self.size, 0, 0, ())

    def number(self, shown: str) -> Box:
        return self._text(shown, Role.NUMBER, self.size)

    def letters(self, symbol: str) -> Box:
        base, _, below = symbol.partition("_")
        if not below or not SYMBOL.fullmatch(symbol):
            return self._text(symbol.replace("_", SPACE), Role.SYMBOL, self.size)
        role = Role.NUMBER if below.isdigit() else Role.SYMBOL
        subscript = self._text(below, role, self.small * self.size)
        return self._beside([(self._text(base, Role.SYMBOL, self.size), 0), (subscript, -self.lowered_by * self.size)])

    def said(self, text: str) -> Box:
        return self._text(text, Role.WORD, self.size)

    def sign(self, sign: str) -> Box:
        return self.row(self._space(0.22), self._text(sign, Role.SIGN, self.size), self._space(0.22))

    def before(self, sign: str) -> Box:
        return self._text(sign, Role.SIGN, self.size)

    def comma(self) -> Box:
        return self.row(self._text(",", Role.SIGN, self.size), self._space(0.25))

    def row(self, *parts: Box) -> Box:
        return self._beside([(part, 0.0) for part in parts])

    def _beside(self, parts: Sequence[tuple[Box, float]]) -> Box:
        """Pieces beside each other, each on a line of its own height."""
        x = 0.0
        drawing: list[DrawingOperation] = []
        for part, y in parts:
            drawing += part.moved(x, y)
            x += part.width
        up = max(part.up + y for part, y in parts)
        down = max(part.down - y for part, y in parts)
        return Box(x, up, down, tuple(drawing))

    def fraction(self, over: Box, under: Box) -> Box:
        side = 0.08 * self.size
        width = max(over.width, under.width) + 2 * side
        axis, gap, half = self.axis * self.size, self.gap * self.size, self.thickness * self.size / 2
        over_line = axis + half + gap + over.down
        under_line = axis - half - gap - under.up
        bar = Stroke(((0.0, axis), (width, axis)), self.thickness * self.size)
        drawing = (
            *over.moved((width - over.width) / 2, over_line),
            bar,
            *under.moved((width - under.width) / 2, under_line),
        )
        room = self._space(0.1)
        return self.row(room, Box(width, over_line + over.up, under.down - under_line, drawing), room)

    def raised(self, base: Box, power: Box) -> Box:
        little = _scaled(power, self.small)
        lift = max(self.raised_by * self.size, base.up - 0.4 * self.size)
        return self._beside([(base, 0), (little, lift)])

    def fenced(self, inner: Box) -> Box:
        if inner.up + inner.down <= self.tallest_bracket * self.size:
            return self.row(self.before("("), inner, self.before(")"))
        deep = 0.3 * self.size
        top, foot = inner.up + 0.05 * self.size, -inner.down - 0.05 * self.size
        return self.row(self._bracket(deep, top, foot, 1), inner, self._bracket(deep, top, foot, -1))

    def _bracket(self, deep: float, top: float, foot: float, side: int) -> Box:
        """A round bracket as high as what it holds; side 1 opens to the right, -1 to the left."""
        middle, half = (top + foot) / 2, (top - foot) / 2
        turns = [pi / 2 * step / 6 for step in range(-6, 7)]
        start = 0.9 * deep if side == 1 else 0.1 * deep
        points = tuple((start - side * 0.6 * deep * cos(turn), middle + half * sin(turn)) for turn in turns)
        return Box(deep, top, -foot, (Stroke(points, self.thickness * self.size),))

    def root(self, inner: Box) -> Box:
        size, half = self.size, self.thickness * self.size / 2
        hook = 0.55 * size
        top = inner.up + self.gap * size
        right = hook + inner.width + 0.08 * size
        sign = Stroke(
            (
                (0.04 * size, self.axis * size * 0.9),
                (0.16 * size, self.axis * size * 1.15),
                (0.32 * size, -inner.down),
                (hook - 0.05 * size, top),
                (right, top),
            ),
            self.thickness * size,
        )
        return Box(right + 0.06 * size, top + half, inner.down + half, (sign, *inner.moved(hook, 0)))


def _scaled(box: Box, by: float) -> Box:
    def smaller(operation: DrawingOperation) -> DrawingOperation:
        if isinstance(operation, Glyphs):
            return replace(operation, x=operation.x * by, y=operation.y * by, size=operation.size * by)
        points = tuple((x * by, y * by) for x, y in operation.points)
        return Stroke(points, operation.thickness * by)

    return Box(box.width * by, box.up * by, box.down * by, tuple(smaller(operation) for operation in box.drawing))
