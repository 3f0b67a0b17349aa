"""A formula as one line of plain text: for old browsers, alternative text and worked solutions on paper."""

from __future__ import annotations

import math
import operator
import re
from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

from generator.formula import numbers
from generator.formula.tree import (
    LOCAL_NAME,
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
    parse,
)  # fmt: skip

if TYPE_CHECKING:
    from generator.formula.book import Book

RANK = {"or": 1, "and": 2, "not": 3, "compare": 4, "+": 5, "-": 5, "*": 6, "/": 6, "negative": 7, "**": 8}
"""How tightly each sign binds; shared by every writer of the tree."""

SIGN_SHOWN = {"*": " × ", "/": " / ", "+": " + ", "-": " − "}
COMPARISON_SHOWN = {"<": "<", "<=": "≤", ">": ">", ">=": "≥", "==": "=", "!=": "≠"}
CALLS_SHOWN = {
    "whole_up": "round up", "whole_down": "round down", "interpolate": "table", "pick": "table", "sqrt": "√"
}  # fmt: skip
"""What stands for a call. Which table is read, the formula's source says: its name in the program says nothing."""
_POWERS = {"2": "²", "3": "³"}

WORDS = ("round up", "round down", "if", "otherwise", "and", "or", "not", "min", "max", "table")
"""The English words that every formula may hold; a writer in another language puts its own in their place."""
_WORD = re.compile(rf"«[^»]*»|\b(?:{'|'.join(WORDS)}|(?!atan\b){LOCAL_NAME})\b")
"""A slot, or a word. A symbol has three letters at most, so a longer name is one inside the formula, save `atan`."""

SUBSCRIPTED = re.compile(r"\b([A-Za-z]{1,3}[0-9]?)_([A-Za-z0-9]{1,3})(?![A-Za-z0-9_])")
"""A symbol with a subscript in a line of plain text; a raised number may follow."""

Leaf = Callable[[Variable], str]
Word = Callable[[str], str]
"""Gives one of `WORDS`, or a name inside a formula such as `from_one_roll`, in the reader's language."""


def english(word: str) -> str:
    """The word itself; a name inside a formula as it would be spoken."""
    return word.replace("_", " ")


def slot(name: str) -> str:
    """The place of a number that is filled in later.

    Example:
        >>> slot("depth"), bracketed(slot("depth")), bracketed("-2"), bracketed("2")
        ('«depth»', '«(depth)»', '(-2)', '2')
    """
    return f"«{name}»"


def bracketed(shown: str) -> str:
    """A variable as it stands beside a sign: a negative number gets brackets, a slot is told to give them."""
    if shown.startswith("«"):
        return f"«({shown[1:-1]})»"
    return f"({shown})" if shown.startswith(("-", "−")) else shown


def in_words(line: str, word: Word) -> str:
    """A line of plain text with its few English words in the reader's language.

    Args:
        line: made by `text`.
        word: gives its words, and the names inside a formula, in the reader's language.

    Example:
        >>> in_words("round up(a / b) if a > b, otherwise half × atan(c)", str.upper)
        'ROUND UP(a / b) IF a > b, OTHERWISE HALF × atan(c)'
    """
    return _WORD.sub(lambda match: match[0] if match[0].startswith("«") else word(match[0]), line)


def plain_text(book: Book, name: str, *, word: Word = english) -> str:
    """The formula of a quantity in symbols, its local names first: `half = h / 2; V = half × R`.

    Args:
        book: where the quantity lives.
        name: a quantity.
        word: gives its words, and the names inside the formula, in the reader's language.

    Raises:
        UnknownNameError: the book has no such quantity.
    """
    quantity = book.worked_out(name)
    formula = parse(quantity.function)

    def symbol(variable: Variable) -> str:
        return variable.name if variable.local else book.entry(variable.name).symbol

    lines = (*formula.locals, (quantity.symbol, formula.result))
    return "; ".join(in_words(f"{left} = {text(expression, symbol)}", word) for left, expression in lines)


def words_in_formulas(book: Book) -> tuple[str, ...]:
    """All that a `Word` may be asked for by the formulas of a book, with `_` for a space.

    Args:
        book: any quantities.
    """
    found: dict[str, None] = {}

    def heard(word: str) -> str:
        found[word.replace(" ", "_")] = None
        return word

    for name in book.quantities:
        plain_text(book, name, word=heard)
    return tuple(found)


def text(expression: Expression, leaf: Leaf, outer: int = 0) -> str:
    """Plain text of an expression.

    Args:
        expression: checked tree.
        leaf: what to print for a variable: its symbol, or a number.
        outer: rank of the sign around it; brackets where it binds more tightly.

    Example:
        >>> two = Number("2", 2.0)
        >>> text(Binary("*", Binary("+", Variable("a", False), two), two), lambda v: v.name)
        '(a + 2) × 2'
    """

    def bracket(inner: str, rank: int) -> str:
        return f"({inner})" if rank < outer else inner

    match expression:
        case Number(text=written):
            return written
        case Named(name="pi"):
            return "π"
        case Named(value=value):
            return numbers.show_full(value)
        case Variable() as variable:
            shown = leaf(variable)
            return bracketed(shown) if outer else shown
        case Negative(operand=operand):
            return bracket("−" + text(operand, leaf, RANK["negative"]), RANK["negative"])
        case Binary(sign="**", left=left, right=right):
            power = text(right, leaf)
            base = text(left, leaf, RANK["**"] + 1)
            return bracket(base + _POWERS[power] if power in _POWERS else f"{base}^({power})", RANK["**"])
        case Binary(sign=sign, left=left, right=right):
            rank = RANK[sign]
            after = rank + 1 if sign in ("-", "/") else rank
            # a division inside a product keeps its brackets, so that a learner sees which pair belongs together
            if sign == "*" and isinstance(right, Binary) and right.sign == "/":
                after = rank + 1
            return bracket(text(left, leaf, rank) + SIGN_SHOWN[sign] + text(right, leaf, after), rank)
        case Compare(signs=signs, operands=operands):
            parts = [text(operands[0], leaf, RANK["compare"] + 1)]
            for sign, operand in zip(signs, operands[1:], strict=True):
                parts += [COMPARISON_SHOWN[sign], text(operand, leaf, RANK["compare"] + 1)]
            return bracket(" ".join(parts), RANK["compare"])
        case Logic(sign="not", operands=(operand,)):
            return bracket("not " + text(operand, leaf, RANK["not"]), RANK["not"])
        case Logic(sign=sign, operands=operands):
            return bracket(f" {sign} ".join(text(o, leaf, RANK[sign] + 1) for o in operands), RANK[sign])
        case Choice(test=test, yes=yes, no=no):
            return f"({text(yes, leaf)} if {text(test, leaf)}, otherwise {text(no, leaf)})"
        case Call(name=name, arguments=arguments):
            inner = ", ".join(text(argument, leaf) for argument in arguments if not isinstance(argument, Table))
            return f"{CALLS_SHOWN.get(name, name)}({inner})"
    raise TypeError(f"{expression} is not shown by itself")


def value_of(expression: Expression, scope: Mapping[str, float]) -> float:
    """The value of an expression, for the local names inside a quantity: the function keeps those to itself.

    Args:
        expression: checked tree.
        scope: values of the variables.
    """
    match expression:
        case Number(value=value) | Named(value=value):
            return value
        case Variable(name=name):
            return scope[name]
        case Negative(operand=operand):
            return -value_of(operand, scope)
        case Binary(sign=sign, left=left, right=right):
            a, b = value_of(left, scope), value_of(right, scope)
            return float(_SIGNS[sign](a, b))
        case Choice(test=test, yes=yes, no=no):
            return value_of(yes if _truth(test, scope) else no, scope)
        case Call(name=name, arguments=arguments):
            values = [a.values if isinstance(a, Table) else value_of(a, scope) for a in arguments]
            return float(_FUNCTIONS[name](*values))
    raise TypeError(f"{expression} has no value of its own")


_SIGNS: dict[str, Callable[[float, float], float]] = {
    "+": operator.add, "-": operator.sub, "*": operator.mul, "/": operator.truediv, "**": operator.pow,
}  # fmt: skip
_TESTS: dict[str, Callable[[float, float], bool]] = {
    "<": operator.lt, "<=": operator.le, ">": operator.gt, ">=": operator.ge, "==": operator.eq, "!=": operator.ne,
}  # fmt: skip
_FUNCTIONS: dict[str, Callable[..., float]] = {
    "sqrt": math.sqrt, "exp": math.exp, "log": math.log, "sin": math.sin, "cos": math.cos, "tan": math.tan,
    "atan": math.atan, "abs": abs, "min": min, "max": max, "whole_up": numbers.whole_up,
    "whole_down": numbers.whole_down, "interpolate": numbers.interpolate, "pick": numbers.pick,
}  # fmt: skip


def _truth(expression: Expression, scope: Mapping[str, float]) -> bool:
    match expression:
        case Logic(sign="not", operands=(operand,)):
            return not _truth(operand, scope)
        case Logic(sign="and", operands=operands):
            return all(_truth(operand, scope) for operand in operands)
        case Logic(operands=operands):
            return any(_truth(operand, scope) for operand in operands)
        case Compare(signs=signs, operands=operands):
            values = [value_of(operand, scope) for operand in operands]
            return all(_TESTS[s](a, b) for a, s, b in zip(values, signs, values[1:], strict=False))
    raise TypeError(f"{expression} is not a yes or no")
