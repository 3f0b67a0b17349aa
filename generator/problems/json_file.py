"""Reading a JSON file that the tool itself wrote once: it may be cut short, changed, or of a newer edition."""

from __future__ import annotations

import json
from typing import Any

from generator.problems.plain_errors import FORMAT
from generator.problems.problem import Problem, ProblemsError


def read_json(file: str, text: str, *, called: str, whole: str, newer: str, code: str = "not-json") -> Any:
    """What a JSON file holds, any kind of value: its model is the caller's.

    Args:
        file: how problems name it.
        text: made by `decode`.
        called: what the file is, in a problem: "the record".
        whole: what to do where it isn't whole.
        newer: what to do where a newer edition made it.
        code: of the problem that it isn't whole.

    Raises:
        ProblemsError: not JSON, or of a newer format than this edition reads.
    """
    try:
        content = json.loads(text)
    except json.JSONDecodeError as error:
        what = f"{called} is not whole JSON: {error.msg}"
        raise ProblemsError([Problem(file, error.lineno, error.colno, code, what, whole)]) from None
    except (RecursionError, ValueError):
        what = f"{called} is nested too deeply, or holds a number of thousands of digits"
        raise ProblemsError([Problem(file, 0, 0, code, what, whole)]) from None
    made = content.get("format") if isinstance(content, dict) else None
    if isinstance(made, int) and not isinstance(made, bool) and made > FORMAT:
        what = f"{called} has format {made}, and this edition reads format {FORMAT}"
        raise ProblemsError([Problem(file, 1, 1, "newer-format", what, newer)])
    return content
