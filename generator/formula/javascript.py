"""The formulas as a script for the page: what `formula.js` loads and works out.

Nothing is evaluated in the page that was not written here: each quantity becomes one small function. The script is
plain old JavaScript, comes out in one order, and can stand inside a page's `<script>` element.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING

from generator.formula import plain
from generator.formula.mathml import template
from generator.formula.plain import RANK, Word, english
from generator.formula.registry import Misconception, Quantity
from generator.formula.tree import (
    Binary,
    Call,
    Choice,
    Compare,
    Expression,
    Formula,
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

_FROM_MATH = frozenset({"sin", "cos", "tan", "atan", "abs", "min", "max"})
_OWN = {"whole_up": "wholeUp", "whole_down": "wholeDown"}
_COMPARISON = {"==": "===", "!=": "!=="}
_CHOICE = 0.5
"""How tightly `a ? b : c` binds: less than anything in `plain.RANK`."""


def javascript(book: Book, names: Iterable[str], *, word: Word = english) -> str:
    """A classic script that loads quantities, all that they need, and the misconceptions about any of these.

    Args:
        book: where the quantities live.
        names: the quantities that the page asks for.
        word: gives a formula's few words and inner names (`plain.Word`) in the page's language.

    Returns:
        Text that follows `formula.js` in the page; the same names give the same text.

    Raises:
        UnknownNameError: the book does not have a name.
        FormulaError: a quantity that can't be shown faithfully in the page.
    """
    wanted, mistakes = _closure(book, names)
    givens = {
        name: {"symbol": given.symbol, "unit": given.unit, "low": given.low, "high": given.high, "step": given.step}
        for name, given in book.givens.items()
        if name in wanted
    }
    parts = [f'"givens": {_block({name: _json(entry) for name, entry in givens.items()})}']
    quantities = {name: _quantity(book.quantities[name], word) for name in book.quantities if name in wanted}
    parts.append(f'"quantities": {_block(quantities)}')
    wrong = {name: _misconception(book.misconceptions[name]) for name in book.misconceptions if name in mistakes}
    parts.append(f'"misconceptions": {_block(wrong)}')
    body = ",\n".join(parts)
    script = f'(function (P) {{\n"use strict";\nP.load({{\n{body}\n}});\n}}(Tankschool.formula));\n'
    # so that no text inside can end the page's script element, and no old browser meets a line end in a string
    return script.replace("</", "<\\/").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")


def _closure(book: Book, names: Iterable[str]) -> tuple[frozenset[str], frozenset[str]]:
    """The names and misconceptions that belong to these names, to those, and so on."""
    wanted = set(book.ancestors(sorted(set(names))))
    mistakes: set[str] = set()
    while True:
        found = {m.name for m in book.misconceptions.values() if m.of in wanted} - mistakes
        if not found:
            return frozenset(wanted), frozenset(mistakes)
        mistakes |= found
        needed = {need for name in found for need in book.misconceptions[name].needs}
        wanted |= set(book.ancestors(sorted(needed)))


def _quantity(quantity: Quantity, word: Word) -> str:
    formula = parse(quantity.function)
    facts = {
        "symbol": _json(quantity.symbol),
        "unit": _json(quantity.unit),
        "places": _json(quantity.places),
        "low": _json(quantity.low),
        "high": _json(quantity.high),
        "needs": _json(formula.needs),
    }
    return _object({**facts, **_functions(formula), **_templates(formula.result, word)}, formula, word)


def _misconception(misconception: Misconception) -> str:
    formula = parse(misconception.function)
    facts = {"of": _json(misconception.of), "needs": _json(formula.needs)}
    return _object({**facts, **_functions(formula)}, formula, None)


def _object(facts: Mapping[str, str], formula: Formula, word: Word | None) -> str:
    """An object of the script, its local names with it: each is a function of the needs and the locals before it."""
    inner = []
    for number, (name, expression) in enumerate(formula.locals):
        earlier = [*formula.needs, *(local for local, _ in formula.locals[:number])]
        piece = {"name": _json(name), "f": _function(earlier, expression)}
        inner.append(_inline(piece | ({"symbol": _json(word(name)), **_templates(expression, word)} if word else {})))
    return _inline({**facts, "locals": f"[{', '.join(inner)}]"})


def _functions(formula: Formula) -> dict[str, str]:
    return {"f": _function([*formula.needs, *(name for name, _ in formula.locals)], formula.result)}


def _function(parameters: Iterable[str], expression: Expression) -> str:
    return f"function ({', '.join(parameters)}) {{ return {code(expression)}; }}"


def _templates(expression: Expression, word: Word) -> dict[str, str]:
    """The formula with slots for symbols or numbers, as text and as markup."""
    line = plain.in_words(plain.text(expression, lambda variable: plain.slot(variable.name)), word)
    return {"text": _json(line), "mathml": _json(template(expression, word))}


def code(expression: Expression, outer: float = 0) -> str:
    """JavaScript of an expression; `P` is `Tankschool.formula`.

    Where JavaScript goes on with Infinity or NaN and Python refuses (a division by zero, a root of a negative number),
    a function of `P` refuses too, so that no later `min` can hide it.

    Args:
        expression: checked tree.
        outer: rank of the sign around it; brackets where it binds more tightly.

    Example:
        >>> two = Number("2.0", 2.0)
        >>> code(Binary("-", two, Binary("-", two, Variable("a", False))))
        '2 - (2 - a)'
    """

    def bracket(inner: str, rank: float) -> str:
        return f"({inner})" if rank < outer else inner

    match expression:
        case Number(value=value) | Named(value=value):
            return bracket(_number(value), RANK["negative"]) if value < 0 else _number(value)
        case Variable(name=name):
            return name
        case Table(values=values):
            return f"[{', '.join(_number(value) for value in values)}]"
        case Negative(operand=operand):
            return bracket(f"-{code(operand, RANK['negative'] + 1)}", RANK["negative"])
        case Binary(sign="**", left=left, right=right):
            return f"P.power({code(left)}, {code(right)})"
        case Binary(sign="/", left=left, right=right) if not _is_number(right):
            return f"P.over({code(left)}, {code(right)})"
        case Binary(sign=sign, left=left, right=right):
            rank = RANK[sign]
            return bracket(f"{code(left, rank)} {sign} {code(right, rank + 1)}", rank)
        case Compare(signs=signs, operands=operands):
            pairs = [
                f"{code(left, 5)} {_COMPARISON.get(sign, sign)} {code(right, 5)}"
                for left, sign, right in zip(operands, signs, operands[1:], strict=False)
            ]
            return bracket(" && ".join(pairs), RANK["and"] if len(pairs) > 1 else RANK["compare"])
        case Logic(sign="not", operands=(operand,)):
            return f"!({code(operand)})"
        case Logic(sign=sign, operands=operands):
            joined = (" && " if sign == "and" else " || ").join(code(operand, RANK[sign] + 1) for operand in operands)
            return bracket(joined, RANK[sign])
        case Choice(test=test, yes=yes, no=no):
            return bracket(f"{code(test, 1)} ? {code(yes, 1)} : {code(no, 1)}", _CHOICE)
        case Call(name=name, arguments=arguments):
            home = "Math" if name in _FROM_MATH else "P"
            return f"{home}.{_OWN.get(name, name)}({', '.join(code(argument) for argument in arguments)})"


def _is_number(expression: Expression) -> bool:
    return isinstance(expression, Number | Named) and expression.value != 0


def _number(value: float) -> str:
    """The shortest text of the same number in JavaScript.

    Example:
        >>> _number(4.0), _number(0.1), _number(1e22)
        ('4', '0.1', '1e+22')
    """
    return str(int(value)) if value == int(value) and abs(value) < 1e15 else json.dumps(value, allow_nan=False)


def _json(data: object) -> str:
    if isinstance(data, float):
        return _number(data)
    if isinstance(data, dict):
        return _inline({key: _json(value) for key, value in data.items()})
    return json.dumps(data, ensure_ascii=False, allow_nan=False)


def _inline(members: Mapping[str, str]) -> str:
    return "{" + ", ".join(f"{key}: {value}" for key, value in members.items()) + "}"


def _block(members: Mapping[str, str]) -> str:
    lines = ",\n".join(f"  {_json(key)}: {value}" for key, value in members.items())
    return f"{{\n{lines}\n}}" if lines else "{}"
