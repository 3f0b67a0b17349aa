"""The same function over numpy arrays: some nodes rewritten, other names in scope."""

from __future__ import annotations

import ast
from collections.abc import Callable, Sequence
from functools import cache, reduce
from typing import Any

import numpy as np

from generator.formula import tree

Array = np.ndarray[Any, np.dtype[np.float64]]
_EDGE = 1e-9


def _name(name: str) -> ast.Name:
    return ast.Name(name, ast.Load())


class _Vector(ast.NodeTransformer):
    """Choices, logic and chained comparisons have no meaning on arrays; their function forms have."""

    def visit_IfExp(self, node: ast.IfExp) -> ast.AST:
        self.generic_visit(node)
        return ast.Call(_name("_where"), [node.test, node.body, node.orelse], [])

    def visit_BoolOp(self, node: ast.BoolOp) -> ast.AST:
        self.generic_visit(node)
        function = "_and" if isinstance(node.op, ast.And) else "_or"
        return reduce(lambda left, right: ast.Call(_name(function), [left, right], []), node.values)

    def visit_UnaryOp(self, node: ast.UnaryOp) -> ast.AST:
        self.generic_visit(node)
        return ast.Call(_name("_not"), [node.operand], []) if isinstance(node.op, ast.Not) else node

    def visit_Compare(self, node: ast.Compare) -> ast.AST:
        self.generic_visit(node)
        operands = [node.left, *node.comparators]
        pairs = [ast.Compare(operands[i], [sign], [operands[i + 1]]) for i, sign in enumerate(node.ops)]
        joined: ast.expr = pairs[0]
        for pair in pairs[1:]:
            joined = ast.Call(_name("_and"), [joined, pair], [])
        return joined


def _interpolate(x: Array, xs: Sequence[float], ys: Sequence[float]) -> Array:
    return np.asarray(np.interp(x, xs, ys))


def _pick(index: Array, table: Sequence[float]) -> Array:
    rows = np.clip(np.floor(np.asarray(index) + _EDGE), 0, len(table) - 1).astype(int)
    return np.asarray(np.asarray(table, dtype=float)[rows])


NUMPY_NAMES: dict[str, object] = {
    "_where": np.where, "_and": np.logical_and, "_or": np.logical_or, "_not": np.logical_not,
    "sqrt": np.sqrt, "exp": np.exp, "log": np.log, "sin": np.sin, "cos": np.cos, "tan": np.tan, "atan": np.arctan,
    "abs": np.abs,
    "min": lambda *values: reduce(np.minimum, values),
    "max": lambda *values: reduce(np.maximum, values),
    "whole_up": lambda x: np.ceil(x - _EDGE),
    "whole_down": lambda x: np.floor(x + _EDGE),
    "interpolate": _interpolate,
    "pick": _pick,
}  # fmt: skip


def recompiled(function: Callable[..., float], names: dict[str, object]) -> Callable[..., Any]:
    """The function with its choices and logic as calls, and other names in scope: numpy's, or a unit library's.

    Args:
        function: a function that `tree.parse` accepts.
        names: what `_where`, `_and`, `_or`, `_not` and the allowed calls mean.
    """
    tree.parse(function)  # the same limits in every form
    definition = _Vector().visit(tree.definition(function))
    module = ast.fix_missing_locations(ast.Module([definition], []))
    scope: dict[str, Any] = {**function.__globals__, **names}
    exec(compile(module, f"<{function.__name__}>", "exec"), scope)  # noqa: S102 (our own checked source)
    made: Callable[..., Any] = scope[function.__name__]
    return made


@cache
def numpy_form(function: Callable[..., float]) -> Callable[..., Array]:
    """The function over numpy arrays of any one shape."""
    return recompiled(function, NUMPY_NAMES)
