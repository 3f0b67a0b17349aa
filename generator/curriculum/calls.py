"""The calls that an author may write into a text: ``{{ value("hoop_count") }}`` and its kin.

The form is that of a call with plain texts in quotes, and nothing else: no sums, no loops, no other names. So a slip
has a line, a column and a fix, and no text can do more than ask for a number, a figure or an exercise.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from dataclasses import dataclass
from difflib import get_close_matches

IN_TEXTS = ("value", "plain")
"""Calls that leave words behind: allowed in every text."""
BLOCKS = ("figure", "caution", "formula", "worked", "exercise")
"""Calls that stand alone on a line of a lesson or handout."""
SHEET_BLOCKS = ("table", "log", "ruler", "fault", "lines", "card")
"""Calls that stand alone on a line of a handout: what only paper has."""
LINE_MARKS = {"only": True, "without": False}
"""Calls that stand anywhere on a line of a handout; the line is kept where the tank has, or has not, a quantity."""
_WITH_PLACE = ("value", "figure", "worked", "table", "ruler")
_COUNTED = {"log": "rows", "worked": "steps"}
"""The whole number that a call may take beside its name."""
_FORMS = {"lines": "lines(6)", "card": "card", "log": 'log("...", rows=20)'}
"""How a call is written that takes more, or less, than one name in quotes."""
MOST_ROWS = 80
"""Lines or rows that one call may ask for."""

_NAME = re.compile("[a-z][a-z0-9_]*")
_BRACES = re.compile(r"\{\{([^{}\n]*)\}\}")


@dataclass(frozen=True, slots=True)
class Call:
    """One call.

    Args:
        name: one of `IN_TEXTS`, `BLOCKS`, `SHEET_BLOCKS`, `LINE_MARKS`.
        argument: the text in its quotes; empty for `lines` and `card`.
        place: the place named, or None for the place of the lesson.
        start: index of its first brace.
        end: index behind its last brace.
        rows: of `log`, lines of `lines`, and the most steps of `worked` (0: as many as a page usually shows).
        rows_of: the quantity that a `log` has as many rows of, such as the days that a tank is kept wet; empty where
            its rows are typed.
    """

    name: str
    argument: str
    place: str | None
    start: int
    end: int
    rows: int = 0
    rows_of: str = ""


@dataclass(frozen=True, slots=True)
class Fault:
    """Something wrong inside a text.

    Args:
        start: index into the text.
        snippet: the piece of text that is wrong, as typed.
        code: kind of problem.
        what: what is wrong.
        fix: what to do.
    """

    start: int
    snippet: str
    code: str
    what: str
    fix: str


def calls(text: str, allowed: tuple[str, ...]) -> Iterator[Call | Fault]:
    """The calls in a text, in order, and whatever stands in double braces and is none.

    Args:
        text: Markdown, or one text of a YAML file.
        allowed: names that may be called here.

    Example:
        >>> [call.argument for call in calls('{{ value("hoop_count") }} hoops', IN_TEXTS)]
        ['hoop_count']
    """
    end = 0
    for match in _BRACES.finditer(text):
        yield from _strays(text, end, match.start())
        end = match.end()
        yield _call(match[0], match[1].strip(), match.start(), match.end(), allowed)
    yield from _strays(text, end, len(text))


def without_calls(text: str) -> str:
    """The text with each call turned into spaces, so that places stay the same."""
    return _BRACES.sub(lambda match: " " * len(match[0]), text)


def _strays(text: str, start: int, end: int) -> Iterator[Fault]:
    for match in re.finditer(r"\{\{|\}\}", text[start:end]):
        what = f"'{match[0]}' without its partner on the same line"
        yield Fault(
            start + match.start(), match[0], "open-braces", what, 'write the call on one line: {{ value("...") }}'
        )


def _call(typed: str, inside: str, start: int, end: int, allowed: tuple[str, ...]) -> Call | Fault:
    def fault(what: str, fix: str, code: str = "bad-call") -> Fault:
        return Fault(start, typed, code, what, fix)

    form = f'write {{{{ {allowed[0]}("name") }}}}'
    if inside == "card" and "card" in allowed:
        return Call("card", "", None, start, end)
    try:
        tree = ast.parse(inside, mode="eval").body
    except (SyntaxError, ValueError):
        return fault(f"'{typed}' can't be read", f"{form}, with the name in quotes")
    if not isinstance(tree, ast.Call) or not isinstance(tree.func, ast.Name):
        return fault(f"'{typed}' is no call", f"{form}, with the name in quotes")
    name = tree.func.id
    if name not in allowed:
        near = get_close_matches(name, allowed, n=1)
        if name in SHEET_BLOCKS or name in LINE_MARKS:
            fix = "only handouts hold it; here write value(...) or words"
        elif name in BLOCKS:
            fix = "only lessons and handouts hold it; here write value(...) or words"
        else:
            fix = f"did you mean '{near[0]}'?" if near else f"choose one of: {', '.join(allowed)}"
        return fault(f"'{name}' can't be asked for here", fix, "unknown-call")
    if name in ("lines", "card"):
        rows = _rows(tree.args[0]) if name == "lines" and len(tree.args) == 1 and not tree.keywords else None
        if rows is None:
            return fault(f"'{typed}' can't be read", f"write {{{{ {_FORMS[name]} }}}}{_up_to(name)}")
        return Call(name, "", None, start, end, rows)
    place: str | None = None
    rows = None
    rows_of = ""
    for keyword in tree.keywords:
        if keyword.arg is not None and keyword.arg == _COUNTED.get(name) and _rows(keyword.value) is not None:
            rows = _rows(keyword.value)
            continue
        if name == "log" and keyword.arg == "rows" and _NAME.fullmatch(_text(keyword.value) or ""):
            rows_of = _text(keyword.value) or ""
            continue
        text = _text(keyword.value)
        if keyword.arg != "place" or name not in _WITH_PLACE or text is None:
            what = f"'{name}' takes no '{keyword.arg}'" if name != "log" else f"'{typed}' can't be read"
            return fault(what, f"write {{{{ {_form(name)} }}}}{_up_to(name)}")
        place = text
    argument = _text(tree.args[0]) if len(tree.args) == 1 else None
    if argument is None or (name == "log" and rows is None and not rows_of):
        what = f"'{name}' takes one name in quotes" + (" and its rows" if name == "log" else "")
        return fault(what, f"write {{{{ {_form(name, place=False)} }}}}{_up_to(name)}")
    return Call(name, argument, place, start, end, rows or 0, rows_of)


def _form(name: str, *, place: bool = True) -> str:
    extra = ', place="..."' if place and name in _WITH_PLACE else ""
    return _FORMS.get(name, f'{name}("..."{extra})')


def _up_to(name: str) -> str:
    return f", at most {MOST_ROWS}" if name in ("lines", "log") else ""


def _rows(node: ast.expr) -> int | None:
    """A count of rows typed as a whole number."""
    if isinstance(node, ast.Constant) and type(node.value) is int and 1 <= node.value <= MOST_ROWS:
        return node.value
    return None


def _text(node: ast.expr) -> str | None:
    return node.value if isinstance(node, ast.Constant) and isinstance(node.value, str) else None
