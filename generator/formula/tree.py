"""The checked tree of a quantity: the only place that knows Python's grammar.

A quantity is written as an ordinary Python function in a small subset: local names assigned once, then one return, over
numbers, named constants, tables and a closed list of calls. Every other form (JavaScript, MathML, plain text, boxes) is
made from the tree; whatever the forms could not show faithfully is refused here, with the way out in the message.
"""

from __future__ import annotations

import ast
import inspect
import keyword
import math
import re
import textwrap
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from typing import TypeAlias

from generator.formula.source import Constant

CALLS = frozenset({"sqrt", "exp", "log", "sin", "cos", "tan", "atan", "abs", "min", "max"}) | {
    "whole_up", "whole_down", "interpolate", "pick",
}  # fmt: skip
_SIGNS: dict[type[ast.operator], str] = {ast.Add: "+", ast.Sub: "-", ast.Mult: "*", ast.Div: "/", ast.Pow: "**"}
_COMPARISONS: dict[type[ast.cmpop], str] = {
    ast.Lt: "<", ast.LtE: "<=", ast.Gt: ">", ast.GtE: ">=", ast.Eq: "==", ast.NotEq: "!=",
}  # fmt: skip
_WAY_OUT: dict[type[ast.operator], str] = {
    ast.FloorDiv: "use whole_down(a / b)",
    ast.Mod: "use a - b * whole_down(a / b)",
}
LOCAL_NAME = "[a-z]{4,}(?:_[a-z]+)*"
"""A name inside a formula: a symbol begins with fewer letters, so that a printed line can tell the two apart."""
_JAVASCRIPT_RESERVES = frozenset(
    re.findall(
        r"\w+",
        """arguments await boolean break byte case catch char class const continue debugger default delete do double
        else enum eval export extends false final finally float for function goto if implements import in instanceof int
        interface let long native new null package private protected public return short static super switch
        synchronized this throw throws transient true try typeof undefined var void volatile while with yield""",
    )
)


class FormulaError(Exception):
    """A function that can't be a quantity; the message names file, line, function and the way out."""


@dataclass(frozen=True, slots=True)
class Number:
    """A number as the author wrote it: `2.0` stays `2.0`."""

    text: str
    value: float


@dataclass(frozen=True, slots=True)
class Variable:
    """A parameter, or a local name of the function."""

    name: str
    local: bool


@dataclass(frozen=True, slots=True)
class Named:
    """A named constant, or π (then the name is `pi` and the unit is empty)."""

    name: str
    value: float
    unit: str


@dataclass(frozen=True, slots=True)
class Table:
    """A module-level tuple of numbers."""

    name: str
    values: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Negative:
    """A sign turned round."""

    operand: Expression


@dataclass(frozen=True, slots=True)
class Binary:
    """`+ - * / **`."""

    sign: str
    left: Expression
    right: Expression


@dataclass(frozen=True, slots=True)
class Compare:
    """`a < b <= c`: one sign fewer than operands."""

    signs: tuple[str, ...]
    operands: tuple[Expression, ...]


@dataclass(frozen=True, slots=True)
class Logic:
    """`and`, `or` or `not` between comparisons."""

    sign: str
    operands: tuple[Expression, ...]


@dataclass(frozen=True, slots=True)
class Choice:
    """`yes if test else no`."""

    test: Expression
    yes: Expression
    no: Expression


@dataclass(frozen=True, slots=True)
class Call:
    """One of `CALLS`."""

    name: str
    arguments: tuple[Expression, ...]


Expression: TypeAlias = Number | Variable | Named | Table | Negative | Binary | Compare | Logic | Choice | Call


@dataclass(frozen=True, slots=True)
class Formula:
    """A whole function: what it needs, its local names in order, and its result."""

    name: str
    needs: tuple[str, ...]
    locals: tuple[tuple[str, Expression], ...]
    result: Expression


@cache
def parse(function: Callable[..., float]) -> Formula:
    """The checked tree of a function.

    Args:
        function: a plain function whose source file can be read.

    Raises:
        FormulaError: the function uses what the subset leaves out.
    """
    return _Reader(function).formula()


def definition(function: Callable[..., float]) -> ast.FunctionDef:
    """The function's syntax tree without decorators, for re-compiling it with other names in scope."""
    found = ast.parse(textwrap.dedent(inspect.getsource(function))).body[0]
    if not isinstance(found, ast.FunctionDef):
        raise FormulaError(f"{function.__name__}: a quantity is a plain function made with def")
    found.decorator_list = []
    return found


class _Reader:
    def __init__(self, function: Callable[..., float]) -> None:
        lines, self.first_line = inspect.getsourcelines(function)
        self.source = textwrap.dedent("".join(lines))
        self.file = inspect.getsourcefile(function) or "?"
        self.scope = function.__globals__
        found = ast.parse(self.source).body[0]
        if not isinstance(found, ast.FunctionDef):
            raise FormulaError(f"{function.__name__}: a quantity is a plain function made with def")
        self.definition = found
        self.needs = tuple(argument.arg for argument in found.args.args)
        self.locals: list[tuple[str, Expression]] = []

    def refuse(self, node: ast.AST, why: str) -> FormulaError:
        line = self.first_line + getattr(node, "lineno", 1) - 1
        return FormulaError(f"{self.file}:{line}: {self.definition.name}(): {why}")

    def formula(self) -> Formula:
        arguments = self.definition.args
        extra = [*arguments.posonlyargs, *arguments.kwonlyargs, *filter(None, [arguments.vararg, arguments.kwarg])]
        if extra or arguments.defaults:
            raise self.refuse(self.definition, "parameters are plain names without defaults or stars")
        for name in self.needs:
            self.check_name(self.definition, name)
        body = list(self.definition.body)
        first = body[0]
        if isinstance(first, ast.Expr) and isinstance(first.value, ast.Constant) and isinstance(first.value.value, str):
            body = body[1:]
        if not body or not isinstance(body[-1], ast.Return) or body[-1].value is None:
            raise self.refuse(body[-1] if body else self.definition, "a quantity ends with one return of a value")
        for statement in body[:-1]:
            self.local(statement)
        result = self.number(body[-1].value)
        return Formula(self.definition.name, self.needs, tuple(self.locals), result)

    def local(self, statement: ast.stmt) -> None:
        if not (
            isinstance(statement, ast.Assign)
            and len(statement.targets) == 1
            and isinstance(target := statement.targets[0], ast.Name)
        ):
            kind = type(statement).__name__
            raise self.refuse(
                statement, f"{kind!r} is not allowed here; a quantity is local names followed by one return"
            )
        if target.id in self.needs or target.id in dict(self.locals):
            raise self.refuse(statement, f"'{target.id}' is assigned twice; use a new name")
        self.check_name(statement, target.id)
        if not re.fullmatch(LOCAL_NAME, target.id):
            raise self.refuse(
                statement, f"'{target.id}' could be taken for a symbol; a local name begins with four small letters"
            )
        self.locals.append((target.id, self.expression(statement.value)))

    def check_name(self, node: ast.AST, name: str) -> None:
        if name in _JAVASCRIPT_RESERVES or keyword.iskeyword(name) or name == "P":
            raise self.refuse(node, f"'{name}' is a reserved word in the page's language; use another name")

    def expression(self, node: ast.expr) -> Expression:
        match node:
            case ast.Constant(value=bool()):
                raise self.refuse(node, "True and False are not numbers; write 1 or 0")
            case ast.Constant(value=int() | float() as value):
                return Number(ast.get_source_segment(self.source, node) or repr(value), float(value))
            case ast.Name():
                return self.name(node)
            case ast.UnaryOp(op=ast.USub(), operand=operand):
                return Negative(self.number(operand))
            case ast.UnaryOp(op=ast.Not(), operand=operand):
                return Logic("not", (self.truth(operand),))
            case ast.BinOp(op=operator, left=left, right=right):
                sign = _SIGNS.get(type(operator))
                if sign is None:
                    way = _WAY_OUT.get(type(operator), "allowed: + - * / **")
                    raise self.refuse(node, f"'{ast.unparse(node)}' is not allowed in a formula; {way}")
                return Binary(sign, self.number(left), self.number(right))
            case ast.Compare(left=left, ops=operators, comparators=rest):
                signs = [_COMPARISONS.get(type(operator)) for operator in operators]
                if None in signs:
                    raise self.refuse(node, f"'{ast.unparse(node)}' is not allowed; compare with < <= > >= == !=")
                return Compare(tuple(filter(None, signs)), tuple(self.number(x) for x in [left, *rest]))
            case ast.BoolOp(op=operator, values=values):
                sign = "and" if isinstance(operator, ast.And) else "or"
                return Logic(sign, tuple(self.truth(value) for value in values))
            case ast.IfExp(test=test, body=yes, orelse=no):
                return Choice(self.truth(test), self.number(yes), self.number(no))
            case ast.Call():
                return self.call(node)
        raise self.refuse(node, f"'{ast.unparse(node)}' is not allowed in a formula")

    def number(self, node: ast.expr) -> Expression:
        found = self.expression(node)
        if isinstance(found, Compare | Logic):
            raise self.refuse(node, f"'{ast.unparse(node)}' is yes or no, not a number; write `1 if ... else 0`")
        if isinstance(found, Table):
            raise self.refuse(node, f"table '{found.name}' can only stand in interpolate() or pick()")
        return found

    def truth(self, node: ast.expr) -> Expression:
        found = self.expression(node)
        if not isinstance(found, Compare | Logic):
            raise self.refuse(node, f"'{ast.unparse(node)}' is a number; and, or, not and if need a comparison")
        return found

    def name(self, node: ast.Name) -> Expression:
        if node.id in self.needs:
            return Variable(node.id, local=False)
        if node.id in dict(self.locals):
            return Variable(node.id, local=True)
        value = self.scope.get(node.id)
        if value is math.pi:
            return Named("pi", math.pi, "")
        if isinstance(value, Constant):
            return Named(node.id, float(value), value.unit)
        if isinstance(value, tuple) and value and all(isinstance(x, int | float) for x in value):
            return Table(node.id, tuple(float(x) for x in value))
        raise self.refuse(
            node, f"'{node.id}' is neither a parameter, an earlier local name, a named constant nor a table of numbers"
        )

    def call(self, node: ast.Call) -> Expression:
        name = ast.unparse(node.func)
        if not isinstance(node.func, ast.Name) or name not in CALLS:
            raise self.refuse(node, f"{name}() cannot be called in a formula; allowed: {', '.join(sorted(CALLS))}")
        if node.keywords or any(isinstance(argument, ast.Starred) for argument in node.args):
            raise self.refuse(node, f"{name}() takes plain arguments only")
        tables = name in ("interpolate", "pick")
        arguments = tuple(self.expression(a) if tables and i else self.number(a) for i, a in enumerate(node.args))
        expected = {"interpolate": 3, "pick": 2, "min": None, "max": None}.get(name, 1)
        if (expected is not None and len(arguments) != expected) or not arguments:
            raise self.refuse(node, f"{name}() takes {expected or 'at least one'} argument(s), not {len(arguments)}")
        if tables and not all(isinstance(argument, Table) for argument in arguments[1:]):
            raise self.refuse(node, f"{name}() reads from a module-level tuple of numbers")
        return Call(name, arguments)
