"""The stick: all that is carried away, in one folder that opens on any computer.

Names and paths keep to what FAT, exFAT and Windows allow, so that a copy in a deep folder still opens.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from html import escape
from pathlib import Path

from generator.problems import MachineError
from generator.site.mkdocs_run import Docs, read_files, write_files
from generator.site.progress import Progress, silent
from generator.site.swap import swap_in
from generator.words import Words

LONGEST_NAME = 40
LONGEST_PATH = 100
"""Characters. Windows stops at 260 with the drive; a stick copied into a deep folder of documents loses 100 or more."""

_RESERVED = {"con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(1, 10))}
_GOOD_NAME = re.compile(r"[a-z0-9-]+(\.[a-z0-9-]+)*")
_NAMED_BY_THE_THEME = "search_index.js"
"""Its underscore is good on every system; the page theme asks for the file by this name."""
_ASSET = re.compile(r'( (?:src|href)=")(assets/[^"]+)"')
ROOT_FILES = ("START-HERE.html", "READ-ME.txt", "LICENCES.txt", "SHA256SUMS.txt")


@dataclass(frozen=True)
class Print:
    """A PDF that travels on the stick.

    Args:
        name: file name without its ending: lower case, digits and hyphens.
        title: what it is, in its language.
        data: the PDF's bytes.
    """

    name: str
    title: str
    data: bytes = field(repr=False)


@dataclass(frozen=True)
class LanguageParts:
    """What one language brings to the stick.

    Args:
        title: the course's name.
        words: the language's words.
        site: files of the site.
        one_file: the one-file edition.
        prints: PDFs, in the order to list them.
    """

    title: str
    words: Words
    site: Docs
    one_file: bytes
    prints: tuple[Print, ...] = ()


def name_faults(paths: Iterable[str]) -> tuple[str, ...]:
    """What would break on a stick or on Windows: one sentence for each path that does."""
    faults = []
    seen: dict[str, str] = {}
    for path in sorted(paths):
        if len(path) > LONGEST_PATH:
            faults.append(f"'{path}' is longer than {LONGEST_PATH} characters")
        if seen.setdefault(path.lower(), path) != path:
            faults.append(f"'{path}' and '{seen[path.lower()]}' differ only in capital letters")
        for name in [] if path in ROOT_FILES else path.split("/"):
            good = _GOOD_NAME.fullmatch(name) and len(name) <= LONGEST_NAME and name.split(".")[0] not in _RESERVED
            if not good and name != _NAMED_BY_THE_THEME:
                faults.append(f"'{path}': '{name}' is no name for a stick")
    return tuple(faults)


def one_file_name(language: str) -> str:
    """File name of a language's one-file edition."""
    return f"tankschool-{language}.html"


def stick_files(parts: Mapping[str, LanguageParts], licences: bytes) -> dict[str, bytes]:
    """All the files of the stick by their path.

    Args:
        parts: language code -> what it brings, in the order to offer them.
        licences: content of ``LICENCES.txt``.

    Raises:
        MachineError: a name or path that would break on a stick.
    """
    together = _alike(parts)
    files = {"START-HERE.html": _start_page(parts, together), "READ-ME.txt": _read_me(parts), "LICENCES.txt": licences}
    files |= {f"site/{path}": data for path, data in together.items()}
    for language, part in parts.items():
        files |= {
            f"site/{language}/{path}": _pointing(data, together) if path.endswith(".html") else data
            for path, data in part.site.items()
            if path not in together
        }
        files[f"phone/{one_file_name(language)}"] = part.one_file
        files |= {f"pdf/{language}/{item.name}.pdf": item.data for item in part.prints}
    faults = name_faults(files)
    if faults:
        raise MachineError("; ".join(faults))
    sums = [f"{hashlib.sha256(data).hexdigest()}  {path}\n" for path, data in sorted(files.items())]
    files["SHA256SUMS.txt"] = "".join(sums).encode("ascii")
    return files


def _alike(parts: Mapping[str, LanguageParts]) -> dict[str, bytes]:
    """Looks, scripts and drawings that are the same in all languages which have them, and that more than one has."""
    found: dict[str, list[bytes]] = {}
    for part in parts.values():
        for path, data in part.site.items():
            if path.startswith("assets/"):
                found.setdefault(path, []).append(data)
    return {path: many[0] for path, many in found.items() if len(many) > 1 and all(one == many[0] for one in many)}


def _pointing(page: bytes, together: Mapping[str, bytes]) -> bytes:
    """A page that takes from beside the languages' folders what lies there."""

    def to(match: re.Match[str]) -> str:
        return f'{match[1]}{"../" if match[2] in together else ""}{match[2]}"'

    return _ASSET.sub(to, page.decode("utf-8")).encode("utf-8")


def write_stick(files: Docs, target: Path, progress: Progress = silent) -> bool:
    """Put the stick's files in place, whole or not at all.

    Args:
        files: what `stick_files` gave.
        target: the stick's folder, ``output/stick``.
        progress: told ``("stick", number of files)``.

    Returns:
        False if the folder held exactly these bytes already and was left alone.

    Raises:
        MachineError: the disk said no; what was there is as it was.
    """
    if target.is_dir() and read_files(target) == dict(files):
        return False
    swap_in(target, lambda folder: write_files(folder, files))
    progress("stick", str(len(files)))
    return True


def _read_me(parts: Mapping[str, LanguageParts]) -> bytes:
    """Plain text for whoever opens the stick with anything: ASCII, because an old editor may show nothing else."""
    texts = [part.words.say("page.stick.read_me") for part in parts.values()]
    plain = [text for text in texts if text.isascii()] or ["START-HERE.html\n"]
    lines = "\n".join(text.strip() for text in plain).splitlines()
    return ("\r\n".join(lines) + "\r\n").encode("ascii")


def _start_page(parts: Mapping[str, LanguageParts], together: Mapping[str, bytes]) -> bytes:
    sections = []
    for language, part in parts.items():
        words = part.words
        prints = "".join(
            f'<li><a href="pdf/{language}/{item.name}.pdf">{escape(item.title)}</a></li>' for item in part.prints
        )
        sections.append(
            f'<section lang="{language}"><h2>{escape(part.title)}</h2>'
            f'<p><a class="go" href="site/{language}/index.html">{escape(words.say("page.stick.open"))}</a></p>'
            f'<p><a href="phone/{one_file_name(language)}">{escape(words.say("page.stick.phone"))}</a></p>'
            + (f"<h3>{escape(words.say('page.stick.prints'))}</h3><ul>{prints}</ul>" if prints else "")
            + f"<p>{escape(words.say('page.stick.copy'))}</p></section>"
        )
    first = next(iter(parts))
    style = (_ASSETS / "start.css").read_text(encoding="utf-8")
    looks = "site" if "assets/fonts/mukta-regular.woff2" in together else f"site/{first}"
    title = " · ".join(dict.fromkeys(part.title for part in parts.values()))
    return (
        f'<!doctype html>\n<html lang="{first}"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width,initial-scale=1">'
        f'<title>{escape(title)}</title><link rel="icon" href="{looks}/assets/mark.svg">'
        f"<style>{style.replace('LOOKS', looks)}</style></head>\n<body><main>"
        f'<h1><img src="{looks}/assets/mark.svg" alt="" width="48" height="48"> Tankschool</h1>\n'
        + "\n".join(sections)
        + "</main></body></html>\n"
    ).encode("utf-8")


_ASSETS = Path(__file__).parent / "assets"
