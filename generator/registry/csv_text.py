"""CSV that goes out: no cell is taken for a formula by a spreadsheet, and what comes back in is what went out."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

_RISKY = frozenset("=+-@\t\r\n\0＝＋－＠")
_BEFORE = " '"


def guarded(text: str) -> str:
    """A text as a spreadsheet takes it for a text: a quote goes before what would start a formula.

    Example:
        >>> guarded("=1+1"), guarded("-Okello"), guarded("Asha")
        ("'=1+1", "'-Okello", 'Asha')
    """
    return "'" + text if text.lstrip(_BEFORE)[:1] in _RISKY and text.strip(_BEFORE) else text


def unguarded(text: str) -> str:
    """Takes the quote of `guarded` off again.

    Example:
        >>> unguarded("'-Okello"), unguarded("'Asha'")
        ('-Okello', "'Asha'")
    """
    return text[1:] if text.startswith("'") and guarded(text) != text else text


def to_csv(columns: Sequence[str], rows: Iterable[Sequence[object]]) -> bytes:
    r"""A table as CSV: UTF-8 with a byte-order mark, lines that end as spreadsheet programs write them.

    Numbers stay numbers; texts are guarded; None is an empty cell.

    Args:
        columns: the first line.
        rows: the others.

    Example:
        >>> to_csv(["name", "change"], [("=Asha", -3)]).decode("utf-8-sig")
        "name,change\r\n'=Asha,-3\r\n"
    """
    lines = [",".join(map(_cell, columns))]
    lines += [",".join(map(_cell, row)) for row in rows]
    return ("\r\n".join(lines) + "\r\n").encode("utf-8-sig")


def _cell(value: object) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        return str(value)
    text = guarded(str(value))
    return (
        '"' + text.replace('"', '""') + '"'
        if any(sign in text for sign in ',;"\t\r\n') or text != text.strip()
        else text
    )
