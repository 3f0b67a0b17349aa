"""`LICENCES.txt`: whose work travels on the stick, and under which terms, from the installed packages' own files."""

from __future__ import annotations

import re
from collections.abc import Iterator
from importlib.metadata import distribution, version
from pathlib import Path

from generator.problems import MachineError
from generator.site.mkdocs_run import theme_scripts

TRAVELLING = ("fontpkg-mukta", "mkdocs-material", "mkdocs", "reportlab")
"""Packages with a part of theirs on the stick: the font, the page theme with its search, the pages' order, the PDFs."""

_LICENCE_NAME = re.compile(r"(^|/)(LICEN[CS]E|COPYING|NOTICE|OFL)[^/]*$", re.IGNORECASE)
_BANNER = re.compile(r"/\*[!*](.*?)\*/", re.DOTALL)
_RULE = "=" * 78


def _licence_texts(package: str) -> Iterator[str]:
    seen = set()
    for file in sorted(distribution(package).files or (), key=str):
        if _LICENCE_NAME.search(file.as_posix()):
            text = Path(str(file.locate())).read_text(encoding="utf-8", errors="replace").strip()
            if text not in seen:
                seen.add(text)
                yield text


def _banners() -> Iterator[str]:
    """The notices that stand as comments in the theme's joined scripts: small libraries inside it."""
    scripts = theme_scripts()
    found = set()
    for script in [*scripts.glob("bundle.*.min.js"), *scripts.glob("workers/*.min.js"), *scripts.glob("lunr/min/*.js")]:
        for match in _BANNER.finditer(script.read_text(encoding="utf-8")):
            lines = (line.strip(" *\t") for line in match[1].splitlines())
            text = "\n".join(line for line in lines if line)
            if re.search(r"copyright|licen[cs]e", text, re.IGNORECASE):
                found.add(text)
    return iter(sorted(found))


def licences(own: str) -> bytes:
    """All the licence texts, in one file.

    Args:
        own: the licence text of this course itself.

    Raises:
        MachineError: an installed package brings no licence text.
    """
    parts = [_RULE, "This course and its program", _RULE, own.strip(), ""]
    for package in TRAVELLING:
        texts = list(_licence_texts(package))
        if not texts:
            raise MachineError(f"the installed package '{package}' brings no licence text to ship with its work")
        parts += [_RULE, f"{package} {version(package)}", _RULE, "\n\n".join(texts), ""]
    parts += [_RULE, "Small libraries joined into the page theme's scripts", _RULE, "\n\n".join(_banners()), ""]
    return "\n".join(parts).replace("\r\n", "\n").encode("utf-8")
