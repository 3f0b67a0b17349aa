"""One walk over the tree for every form that sets a formula in two dimensions: MathML and the printed boxes.

The walk decides what stands where and what needs brackets; a writer decides what a piece is made of.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Protocol, TypeVar

from generator.formula import numbers, plain
from generator.formula.plain import RANK, Word
from generator.formula.tree import (
    Binary,
    Call,
    Choice,
    Compare,
    Expression,
    Logic,
    Named,
    Negative,
    Number,
    Table,
    Variable,
)  # fmt: skip

Piece = TypeVar("Piece")

SPACE = "\u00a0"
"""A space that no writer may drop."""
_SIGN = {"*": "×", "+": "+", "-": "−"}
_WORDS_OF_CALLS = {
    name: shown for name, shown in {**plain.CALLS_SHOWN, "min": "min", "max": "max"}.items() if shown in plain.WORDS
}


class Writer(Protocol[Piece]):
    """Makes the pieces of a formula."""

    def number(self, shown: str) -> Piece:
        """Digits without a sign."""

    def letters(self, symbol: str) -> Piece:
        """A symbol such as `h` or `D_i`, or the name of a function."""

    def said(self, text: str) -> Piece:
        """Words, with their spaces."""

    def sign(self, sign: str) -> Piece:
        """A sign between two pieces, with room on both sides where it is a sum, a product or a comparison."""

    def before(self, sign: str) -> Piece:
        """A sign close to the piece beside it: a minus, or the bar of an absolute value."""

    def comma(self) -> Piece:
        """A comma between two pieces."""

    def row(self, *parts: Piece) -> Piece:
        """Pieces beside each other."""

    def fraction(self, over: Piece, under: Piece) -> Piece:
        """One piece over another with a bar between."""

    def raised(self, base: Piece, power: Piece) -> Piece:
        """A power."""

    def fenced(self, inner: Piece) -> Piece:
        """A piece in round brackets."""

    def root(self, inner: Piece) -> Piece:
        """A square root."""


def typeset(
    expression: Expression,
    writer: Writer[Piece],
    leaf: Callable[[Variable, bool], Piece],
    word: Word,
    outer: int = 0,
) -> Piece:
    """An expression as a writer sets it.

    Args:
        expression: checked tree.
        writer: makes the pieces.
        leaf: a variable's piece; the second argument says that a negative number needs brackets there.
        word: gives a formula's few words and inner names (`plain.Word`) in the reader's language.
        outer: rank of the sign around it; brackets where it binds more tightly.
    """

    def inside(part: Expression, rank: int = 0) -> Piece:
        return typeset(part, writer, leaf, word, rank)

    def bracket(inner: Piece, rank: int) -> Piece:
        return writer.fenced(inner) if rank < outer else inner

    match expression:
        case Number(text=written):
            return writer.number(written)
        case Named(name="pi"):
            return writer.letters("π")
        case Named(value=value):
            return number_piece(numbers.show_full(value), writer, bracket=outer > 0)
        case Variable() as variable:
            return leaf(variable, outer > 0)
        case Negative(operand=operand):
            negative = writer.row(writer.before("−"), inside(operand, RANK["negative"] + 1))
            return bracket(negative, RANK["negative"])
        case Binary(sign="/", left=left, right=right):
            fraction = writer.fraction(inside(left), inside(right))
            return writer.fenced(fraction) if outer > RANK["**"] else fraction
        case Binary(sign="**", left=left, right=right):
            return bracket(writer.raised(inside(left, RANK["**"] + 1), inside(right)), RANK["**"])
        case Binary(sign=sign, left=left, right=right):
            rank = RANK[sign]
            after = rank + 1 if sign == "-" else rank
            return bracket(writer.row(inside(left, rank), writer.sign(_SIGN[sign]), inside(right, after)), rank)
        case Compare(signs=signs, operands=operands):
            parts = [inside(operands[0], RANK["compare"] + 1)]
            for sign, operand in zip(signs, operands[1:], strict=True):
                parts += [writer.sign(plain.COMPARISON_SHOWN[sign]), inside(operand, RANK["compare"] + 1)]
            return bracket(writer.row(*parts), RANK["compare"])
        case Logic(sign="not", operands=(operand,)):
            return bracket(writer.row(writer.said(word("not") + SPACE), inside(operand, RANK["not"])), RANK["not"])
        case Logic(sign=sign, operands=operands):
            between = writer.said(f"{SPACE}{word(sign)}{SPACE}")
            return bracket(writer.row(*_joined([inside(o, RANK[sign] + 1) for o in operands], between)), RANK[sign])
        case Choice(test=test, yes=yes, no=no):
            when = writer.said(f"{SPACE}{word('if')}{SPACE}")
            otherwise = writer.said(f",{SPACE}{word('otherwise')}{SPACE}")
            choice = writer.row(inside(yes), when, inside(test), otherwise, inside(no))
            return writer.fenced(choice) if outer else choice
        case Call(name="sqrt", arguments=(argument,)):
            return writer.root(inside(argument))
        case Call(name="abs", arguments=(argument,)):
            return writer.row(writer.before("|"), inside(argument), writer.before("|"))
        case Call(name=name, arguments=arguments):
            spelled = _WORDS_OF_CALLS.get(name)
            head = writer.said(word(spelled).replace(" ", SPACE)) if spelled else writer.letters(name)
            shown = [inside(argument) for argument in arguments if not isinstance(argument, Table)]
            return writer.row(head, writer.fenced(writer.row(*_joined(shown, writer.comma()))))
    raise TypeError(f"{expression} is not shown by itself")


def number_piece(shown: str, writer: Writer[Piece], *, bracket: bool) -> Piece:
    """A number that a person sees; brackets round a negative one where it stands beside a sign."""
    if not shown.startswith("-"):
        return writer.number(shown)
    number = writer.row(writer.before("−"), writer.number(shown[1:]))
    return writer.fenced(number) if bracket else number


def _joined(pieces: Sequence[Piece], between: Piece) -> list[Piece]:
    joined = list(pieces[:1])
    for piece in pieces[1:]:
        joined += [between, piece]
    return joined
