"""The same drawing in fewer letters: runs of dots and of lines become one path, and corners are told as steps.

Looks are left to the style sheet that lies beside the page.
Corners stay to the tenth of a unit, of which a drawing is 360 wide: a tenth of a pixel on a phone. A phone reads less
and holds a tenth of the elements.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import groupby, pairwise

from generator.figures import bare

_GROUP = re.compile(r"(<g [^<>]*?>)((?:<(?:circle|line|polygon|polyline) [^<>]*/>)+)(?=</g>)")
_PIECE = re.compile(r"<(circle|line|polygon|polyline) ([^<>]*)/>")
_DOT = re.compile(r'cx="([-\d.]+)" cy="([-\d.]+)" r="([\d.]+)"')
_LINE = re.compile(r'x1="([-\d.]+)" y1="([-\d.]+)" x2="([-\d.]+)" y2="([-\d.]+)"')
_POINTS = re.compile(r'points="([-\d., ]+)"')
_FILL = re.compile(r' fill="(#[0-9a-f]+)"')
_PARTS = 10
"""Coordinates are tenths."""


def slim(markup: str) -> str:
    """Markup with its drawings told shorter; everything else is as it was.

    Example:
        >>> slim('<g fill="none"><line x1="1" y1="2" x2="3" y2="2"/><line x1="1" y1="4" x2="3" y2="4"/></g>')
        '<g fill="none"><path d="M1 2h2m-2 2h2"/></g>'
    """
    return bare(_GROUP.sub(lambda group: group[1] + "".join(_pieces(group[1], group[2])), markup))


def _pieces(group: str, inside: str) -> Iterator[str]:
    pieces = [(piece[1], piece[2], piece[0]) for piece in _PIECE.finditer(inside)]
    fill = _FILL.search(group)
    dots = 'stroke="none"' in group and fill is not None
    for (kind, size), run in groupby(pieces, lambda piece: (piece[0], _size(piece[0], piece[1]))):
        found = list(run)
        if kind == "circle" and size and dots and fill and len(found) > 1:
            yield _dots([_numbers(_DOT, one[1])[:2] for one in found], size, fill[1])
        elif kind == "line" and size and len(found) > 1:
            yield f'<path d="{_lines([_numbers(_LINE, one[1]) for one in found])}"/>'
        else:
            for one in found:
                points = _POINTS.fullmatch(one[1])
                yield _corners(points[1], closed=kind == "polygon") if points else one[2]


def _size(kind: str, attributes: str) -> str:
    """What must be the same for pieces to go into one path; nothing for a piece that has more to it."""
    if kind == "circle":
        found = _DOT.fullmatch(attributes)
        return found[3] if found else ""
    return "line" if kind == "line" and _LINE.fullmatch(attributes) else ""


def _numbers(pattern: re.Pattern[str], attributes: str) -> tuple[int, ...]:
    found = pattern.fullmatch(attributes)
    return tuple(_parts(text) for text in found.groups()) if found else ()


def _parts(text: str) -> int:
    return round(float(text) * _PARTS)


def _said(*numbers: int) -> str:
    """Numbers as a path has them: no needless noughts, no blank where a sign parts them."""
    texts = []
    for number in numbers:
        text = f"{number / _PARTS:.1f}".removesuffix(".0")
        texts.append(re.sub(r"^(-?)0\.", r"\1.", text) if text not in ("-0", "0") else "0")
    return "".join(text if place == 0 or text.startswith("-") else f" {text}" for place, text in enumerate(texts))


def _dots(centres: list[tuple[int, ...]], radius: str, fill: str) -> str:
    path = ""
    here: tuple[int, ...] = (0, 0)
    for centre in centres:
        path += f"M{_said(*centre)}h0" if not path else f"m{_said(centre[0] - here[0], centre[1] - here[1])}h0"
        here = centre
    return f'<path stroke="{fill}" stroke-width="{2 * float(radius):g}" stroke-linecap="round" d="{path}"/>'


def _lines(ends: list[tuple[int, ...]]) -> str:
    path = ""
    here = (0, 0)
    for x1, y1, x2, y2 in ends:
        path += f"M{_said(x1, y1)}" if not path else f"m{_said(x1 - here[0], y1 - here[1])}"
        if y1 == y2:
            path += f"h{_said(x2 - x1)}"
        elif x1 == x2:
            path += f"v{_said(y2 - y1)}"
        else:
            path += f"l{_said(x2 - x1, y2 - y1)}"
        here = (x2, y2)
    return path


def _corners(points: str, *, closed: bool) -> str:
    corners = [tuple(_parts(number) for number in point.split(",")) for point in points.split()]
    steps = [corners[0], *((b[0] - a[0], b[1] - a[1]) for a, b in pairwise(corners))]
    flat = [number for step in steps for number in step]
    return f'<path d="m{_said(*flat)}{"z" if closed else ""}"/>'
