"""The same page in fewer letters: no blank lines of the theme's templates, no rows round a single sign of a formula."""

from __future__ import annotations

import re

_KEPT = re.compile(r"(<(pre|textarea|script|style)\b.*?</\2>)", re.DOTALL | re.IGNORECASE)
_SPACE = re.compile(r"[ \t\r\f]*\n\s*")
_MATH = re.compile(r"<math\b.*?</math>", re.DOTALL)
_PIECE = re.compile(r"<(/?)([a-z]+)[^<>]*?(/?)>|[^<]+")


def slim_space(page: str) -> str:
    r"""A page whose white space with line ends in it is one line end; what shows such space as it stands keeps it.

    Example:
        >>> slim_space("<p>a\n\n   <b>b</b></p><pre>c\n  d</pre>")
        '<p>a\n<b>b</b></p><pre>c\n  d</pre>'
    """
    parts = _KEPT.split(page)  # text, kept, its name, text, ...
    parts[::3] = [_SPACE.sub("\n", text) for text in parts[::3]]
    del parts[2::3]
    return "".join(parts)


def slim_math(page: str) -> str:
    """A page whose formulas have no row round a single element: it is drawn the same without.

    Example:
        >>> slim_math("<math><mfrac><mrow><mn>1</mn></mrow><mrow><mi>a</mi><mo>+</mo><mi>b</mi></mrow></mfrac></math>")
        '<math><mfrac><mn>1</mn><mrow><mi>a</mi><mo>+</mo><mi>b</mi></mrow></mfrac></math>'
    """
    return _MATH.sub(lambda math: _without_lone_rows(math[0]), page)


def _without_lone_rows(math: str) -> str:
    """Each open element keeps its start tag, its inside so far, and how many elements and texts that has."""
    open_ones: list[tuple[str, list[str], list[int]]] = [("", [], [0])]
    for piece in _PIECE.finditer(math):
        end, name, alone = piece[1], piece[2], piece[3]
        inside, count = open_ones[-1][1:]
        if name and not end and not alone:
            open_ones.append((piece[0], [], [0]))
        elif end:
            start = open_ones.pop()[0]
            whole, around = open_ones[-1][1:]
            if start == "<mrow>" and count[0] == 1 and inside[0].startswith("<"):
                whole.extend(inside)
            else:
                whole.append(f"{start}{''.join(inside)}{piece[0]}")
            around[0] += 1
        else:
            inside.append(piece[0])
            count[0] += 1
    return "".join(open_ones[0][1])
