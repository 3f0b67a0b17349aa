"""A trainer's own voice: one sound file for a card and a language, in the `audio` folder of the card's module.

The file is plain: `audio/cut-the-hoop.hi.mp3`. It travels with the pages, and inside the one-file edition, so it is
kept short.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from generator.problems import Problem

MOST_BYTES = 500_000
"""Largest recording: about half a minute of speech. All of them travel in the one file for phones."""
KINDS: Mapping[str, str] = {"mp3": "audio/mpeg", "m4a": "audio/mp4", "ogg": "audio/ogg", "wav": "audio/wav"}
"""Kind of sound by a file's ending."""

_NAME = re.compile(r"([a-z0-9]+(?:-[a-z0-9]+)*)\.([a-z]{2,3})\.([a-z0-9]+)")
_HOW = f"name it card.language.ending, as in stand-the-angles.en.mp3; endings: {', '.join(KINDS)}"


@dataclass(frozen=True, slots=True)
class Recording:
    """One recording.

    Args:
        ending: `mp3`, `m4a`, `ogg` or `wav`.
        data: the file's bytes.
    """

    ending: str
    data: bytes = field(repr=False)


def name_parts(path: str) -> tuple[str, str, str] | None:
    """Card, language and ending that a recording's file name says; None where it says something else.

    Args:
        path: path below the content folder.

    Example:
        >>> name_parts("course/modules/07-frame/audio/close-it.hi.mp3")
        ('close-it', 'hi', 'mp3')
    """
    match = _NAME.fullmatch(path.rpartition("/")[2])
    return (match[1], match[2], match[3]) if match and match[3] in KINDS else None


def sound_problems(path: str, data: bytes) -> list[Problem]:
    """A file whose name says nothing, or whose bytes are no sound of the kind that its ending says.

    Args:
        path: path below the content folder.
        data: the file's bytes.
    """
    parts = name_parts(path)
    if parts is None:
        return [Problem(path, 0, 0, "recording-name", "the name does not say which card and language this is", _HOW)]
    if not _sounds_like(parts[2], data):
        what = f"the file holds no sound of the kind '{parts[2]}'"
        return [Problem(path, 0, 0, "no-sound", what, "record it again, or give it the ending of its kind")]
    return []


def _sounds_like(ending: str, data: bytes) -> bool:
    match ending:
        case "mp3":
            return data.startswith(b"ID3") or (len(data) > 1 and data[0] == 0xFF and data[1] & 0xE0 == 0xE0)
        case "m4a":
            return data[4:8] == b"ftyp"
        case "ogg":
            return data.startswith(b"OggS")
        case _:
            return data.startswith(b"RIFF") and data[8:12] == b"WAVE"


def recordings(sounds: Mapping[str, bytes], module_of: Mapping[str, str]) -> dict[tuple[str, str, str], Recording]:
    """The recordings by module id, card id and language.

    Args:
        sounds: good recordings by path.
        module_of: module id by folder name.
    """
    found: dict[tuple[str, str, str], Recording] = {}
    for path, data in sounds.items():
        parts, folder = name_parts(path), path.split("/")[2]
        if parts is not None and folder in module_of:
            found[module_of[folder], parts[0], parts[1]] = Recording(parts[2], data)
    return found
