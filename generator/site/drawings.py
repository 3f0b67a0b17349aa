"""Drawings that lie beside the pages: each is told once, however many pages and languages show it.

What people read, hear or press (labels, title, description, areas) stays in the page, in the page's own font; the lines
below are a picture file. A picture file knows no style sheet but its own, so it carries the few looks that it uses.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Mapping

from generator.figures import looks
from generator.problems import MachineError

FOLDER = "assets/drawings"
LEAST = 600
"""Letters below which a file of its own saves nothing: it costs a name, a sum, and room on the drive."""
_DRAWING = re.compile(
    r'(<svg viewBox="0 0 ([\d.]+) ([\d.]+)"[^<>]* class="fig"[^<>]*><title .*?</title><desc .*?</desc>)(.*?)(</svg>)',
    re.DOTALL,
)
_GROUP = re.compile(r"<g [^<>]*>.*?</g>", re.DOTALL)
_LOOK = re.compile(r'class="(fig-[a-z-]+)"')
_IMAGE = re.compile(rf'<image href="({FOLDER}/[0-9a-f]+\.svg)" width="[\d.]+" height="[\d.]+"/>')
_WRAPPED = re.compile(r"^<svg [^<>]*><style>[^<>]*</style>(.*)</svg>\n$", re.DOTALL)


def beside(page: str, files: dict[str, bytes]) -> str:
    """A page whose drawings' lines lie beside it.

    Args:
        page: with slim drawings.
        files: is given the picture files, by their path.
    """

    def apart(match: re.Match[str]) -> str:
        head, width, height, inside, end = match.groups()
        groups = _GROUP.findall(inside)
        lines = "".join(group for group in groups if not _stays(group))
        if len(lines) < LEAST or "".join(groups) != inside:
            return match[0]
        data = _file(lines, width, height)
        path = f"{FOLDER}/{hashlib.sha256(data).hexdigest()[:16]}.svg"
        files[path] = data
        rest = "".join(filter(_stays, groups))
        return f'{head}<image href="{path}" width="{width}" height="{height}"/>{rest}{end}'

    return _DRAWING.sub(apart, page)


def inside(page: str, files: Mapping[str, bytes]) -> str:
    """A page with the lines of its drawings in it again.

    Args:
        page: what `beside` gave.
        files: the site's files.

    Raises:
        MachineError: a picture is not one of ours.
    """

    def lines(match: re.Match[str]) -> str:
        found = _WRAPPED.match(files[match[1]].decode("utf-8"))
        if found is None:
            raise MachineError(f"'{match[1]}' is no drawing of this course")
        return found[1]

    return _IMAGE.sub(lines, page)


def _stays(group: str) -> bool:
    return "<text" in group or not group.startswith('<g class="fig-') or group.startswith('<g class="fig-area"')


def _file(lines: str, width: str, height: str) -> bytes:
    used = looks()
    style = "".join(used[name] for name in sorted(set(_LOOK.findall(lines))))
    head = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}" width="{width}" height="{height}">'
    return f"{head}<style>{style}</style>{lines}</svg>\n".encode()
