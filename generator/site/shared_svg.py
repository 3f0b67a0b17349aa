"""A drawing that comes again is drawn by reference: a part of the one file carries its lines once.

Each copy keeps its own title and description, so that a screen reader tells every one of them where it stands.
"""

from __future__ import annotations

import re

_DRAWING = re.compile(r"(<svg [^<>]*?>)(<title .*?</title><desc .*?</desc>)(.*?)(</svg>)", re.DOTALL)
_TITLE = re.compile(r'<title id="([^"]+)-title">')
LEAST = 600
"""Letters below which a reference saves nothing worth its trouble."""


def share(markup: str) -> str:
    """Markup in which a drawing that stood before is a reference to where it stood.

    Args:
        markup: a part of the one file; the ids in it are unique.

    Example:
        >>> lines = '<path d="' + "M0 0h9" * 120 + '"/>'
        >>> drawn = '<svg class="fig"><title id="{0}-title">A</title><desc id="{0}-desc">B</desc>' + lines + "</svg>"
        >>> share(drawn.format("one") + drawn.format("two")).count("M0 0h9")
        120
    """
    known: dict[str, str] = {}

    def once(match: re.Match[str]) -> str:
        head, told, lines, end = match.groups()
        title = _TITLE.search(told)
        if title is None or len(lines) < LEAST or ' id="' in lines:
            return match[0]
        place = known.get(lines)
        if place is None:
            known[lines] = place = f"{title[1]}-lines"
            return f'{head}{told}<g id="{place}">{lines}</g>{end}'
        return f'{head}{told}<use href="#{place}"/>{end}'

    return _DRAWING.sub(once, markup)
