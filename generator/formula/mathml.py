"""A formula as MathML: in symbols, or with a slot where the page puts each number.

Brackets never need to stretch, because a phone may have no font for mathematics: a choice is written "a if c, otherwise
b", and rounding up is said in words.
"""

from __future__ import annotations

from html import escape
from typing import TYPE_CHECKING

from generator.formula import plain
from generator.formula.plain import Word, english
from generator.formula.registry import SYMBOL
from generator.formula.tree import Expression, Variable, parse
from generator.formula.typeset import SPACE, typeset

if TYPE_CHECKING:
    from generator.formula.book import Book


class _Markup:
    """Pieces of a formula as texts of MathML."""

    def number(self, shown: str) -> str:
        return f"<mn>{shown}</mn>"

    def letters(self, symbol: str) -> str:
        base, _, below = symbol.partition("_")
        if not below or not SYMBOL.fullmatch(symbol):
            return f"<mi>{symbol.replace('_', SPACE)}</mi>"
        kind = "mn" if below.isdigit() else "mi"
        return f"<msub><mi>{base}</mi><{kind}>{below}</{kind}></msub>"

    def said(self, text: str) -> str:
        return f"<mtext>{escape(text)}</mtext>"

    def sign(self, sign: str) -> str:
        return f"<mo>{escape(sign)}</mo>"

    def before(self, sign: str) -> str:
        return '<mo stretchy="false">|</mo>' if sign == "|" else f'<mo form="prefix">{sign}</mo>'

    def comma(self) -> str:
        return "<mo>,</mo>"

    def row(self, *parts: str) -> str:
        return parts[0] if len(parts) == 1 else f"<mrow>{''.join(parts)}</mrow>"

    def fraction(self, over: str, under: str) -> str:
        return f"<mfrac><mrow>{over}</mrow><mrow>{under}</mrow></mfrac>"

    def raised(self, base: str, power: str) -> str:
        return f"<msup><mrow>{base}</mrow><mrow>{power}</mrow></msup>"

    def fenced(self, inner: str) -> str:
        return self.row("<mo>(</mo>", inner, "<mo>)</mo>")

    def root(self, inner: str) -> str:
        # a font without a table for formulas can't stretch the sign over a fraction: brackets say how far it reaches
        return self.row("<mo>√</mo>", self.fenced(inner)) if "<mfrac" in inner else f"<msqrt>{inner}</msqrt>"


_MARKUP = _Markup()


def mathml(book: Book, name: str, *, slots: bool = False, word: Word = english) -> str:
    """The formula of a quantity as one `<math>` element, with its plain text for whoever can't see or show it.

    Args:
        book: where the quantity lives.
        name: a quantity.
        slots: whether each variable is a slot such as `«depth»` that is filled with a number later, in place of its
            symbol; `«(depth)»` wants brackets round a negative number.
        word: gives a formula's few words and inner names (`plain.Word`) in the reader's language.

    Raises:
        UnknownNameError: the book has no such quantity.
    """
    quantity = book.worked_out(name)
    formula = parse(quantity.function)

    def leaf(variable: Variable, bracket: bool) -> str:
        if slots:
            return slot(variable, bracket)
        return _MARKUP.said(word(variable.name)) if variable.local else symbol_markup(book.entry(variable.name).symbol)

    lines = [(_MARKUP.said(word(local)), expression) for local, expression in formula.locals]
    lines.append((symbol_markup(quantity.symbol), formula.result))
    rows = [
        _MARKUP.row(left, _MARKUP.sign("="), typeset(expression, _MARKUP, leaf, word)) for left, expression in lines
    ]
    cells = "".join(f'<mtr><mtd style="text-align: left">{row}</mtd></mtr>' for row in rows)
    body = rows[0] if len(rows) == 1 else f'<mtable displaystyle="true">{cells}</mtable>'
    return f'<math displaystyle="true" alttext="{escape(plain.plain_text(book, name, word=word))}">{body}</math>'


def symbol_markup(symbol: str) -> str:
    """A symbol with its subscript set low.

    Example:
        >>> symbol_markup("D_i"), symbol_markup("h")
        ('<msub><mi>D</mi><mi>i</mi></msub>', '<mi>h</mi>')
    """
    return _MARKUP.letters(symbol)


def slot(variable: Variable, bracket: bool) -> str:
    """The place of a number, for `formula.js` to fill."""
    return plain.bracketed(plain.slot(variable.name)) if bracket else plain.slot(variable.name)


def template(expression: Expression, word: Word = english) -> str:
    """MathML of an expression with slots, without the `<math>` round it.

    Args:
        expression: checked tree.
        word: as for `mathml`.
    """
    return typeset(expression, _MARKUP, slot, word)
