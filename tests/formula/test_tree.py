"""What a quantity may not hold is refused with file, line, function and the way out."""

from collections.abc import Callable
from pathlib import Path

import pytest

from generator.formula import FormulaError, parse

HEADER = """\
from math import floor, pi
from generator.formula import Constant, derived, whole_up, pick
LIMIT = Constant(2, "m", derived("made up"))
TABLE = (1.0, 2.0)
"""

REFUSED = [
    ("    for i in range(3):\n        a = i\n    return a", "'For' is not allowed here; a quantity is local names"),
    ("    return a // 2", r"'a // 2' is not allowed in a formula; use whole_down\(a / b\)"),
    ("    return a % 2", r"use a - b \* whole_down\(a / b\)"),
    ("    return round(a)", r"round\(\) cannot be called in a formula; allowed: abs, atan"),
    ("    return floor(a)", r"floor\(\) cannot be called"),
    ("    return a + bananas", "'bananas' is neither a parameter, an earlier local name, a named constant nor a table"),
    ("    return True", "True and False are not numbers"),
    ("    return a.real", "'a.real' is not allowed in a formula"),
    ("    return TABLE[0]", r"'TABLE\[0\]' is not allowed"),
    ("    return TABLE", "table 'TABLE' can only stand in interpolate"),
    ("    return a + TABLE", "table 'TABLE' can only stand in"),
    ("    return pick(a, a)", r"pick\(\) reads from a module-level tuple"),
    ("    return pick(a)", r"pick\(\) takes 2 argument"),
    ("    return max()", r"max\(\) takes at least one argument"),
    ("    return max(a, key=1)", r"max\(\) takes plain arguments only"),
    ("    return a < 2", "'a < 2' is yes or no, not a number; write `1 if"),
    ("    return 1 if a else 2", "'a' is a number; and, or, not and if need a comparison"),
    ("    return 1 if a and a > 1 else 2", "'a' is a number"),
    ("    return 2 * (a < 1)", "'a < 1' is yes or no, not a number"),
    ("    return 1 if a is a else 2", "compare with < <="),
    ("    half = 1\n    half = 2\n    return a", "'half' is assigned twice"),
    ("    b = 1\n    return a", "'b' could be taken for a symbol"),
    ("    new = a\n    return new", "'new' is a reserved word in the page's language"),
    ("    a = 1", "a quantity ends with one return of a value"),
    ("    return", "a quantity ends with one return of a value"),
]


def made(tmp_path: Path, body: str, head: str = "def f(a):") -> Callable[..., float]:
    path = tmp_path / "made_up.py"
    path.write_text(f"{HEADER}\n\n{head}\n{body}\n", encoding="utf-8")
    scope: dict[str, object] = {"__name__": "made_up"}
    exec(compile(path.read_text("utf-8"), str(path), "exec"), scope)  # noqa: S102 (the test's own text)
    function = scope["f"]
    assert callable(function)
    return function


@pytest.mark.parametrize(("body", "message"), REFUSED)
def test_what_the_forms_could_not_show_is_refused(tmp_path: Path, body: str, message: str) -> None:
    with pytest.raises(FormulaError, match=message) as refused:
        parse(made(tmp_path, body))
    assert "made_up.py:" in str(refused.value)
    assert "f()" in str(refused.value)


@pytest.mark.parametrize("head", ["def f(a=1):", "def f(*a):", "def f(a, /):", "def f(*, a):", "def f(**a):"])
def test_parameters_are_plain_names(tmp_path: Path, head: str) -> None:
    with pytest.raises(FormulaError, match="parameters are plain names"):
        parse(made(tmp_path, "    return 1", head))


def test_the_line_of_the_fault_is_named(tmp_path: Path) -> None:
    with pytest.raises(FormulaError, match=r"made_up.py:9: f\(\)"):
        parse(made(tmp_path, "    half = a\n    return half % 2"))
