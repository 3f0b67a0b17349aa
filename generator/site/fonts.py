"""The pages' font, cut down from the installed one: Hindi shows on any laptop, whatever is installed there."""

from __future__ import annotations

import io
from collections.abc import Iterable
from functools import cache
from pathlib import Path

WEIGHTS = {"regular": "Mukta-Regular.ttf", "bold": "Mukta-SemiBold.ttf"}
"""Our name of a weight -> the file in the font package."""

_ALWAYS = (
    range(0x20, 0x7F),  # Latin letters, digits and signs
    range(0xA0, 0x100),  # half, squared, times, degree, accented letters of names
    range(0x900, 0x980),  # all Devanagari, because learners type their names
    range(0x200C, 0x200E),  # joiners that Hindi spelling needs
    range(0x2010, 0x2027),  # dashes, quotation marks, ellipsis
    (0x20B9, 0x2212, 0x221A, 0x2248, 0x2260, 0x2264, 0x2265, 0x3C0, 0x25CC),
)


def _folder() -> Path:
    import fontpkg_mukta

    return Path(fontpkg_mukta.__file__).parent / "files"


@cache
def _covered() -> frozenset[int]:
    from fontTools.ttLib import TTFont

    with TTFont(_folder() / WEIGHTS["regular"], lazy=True) as font:
        return frozenset(font.getBestCmap())


def missing_characters(texts: Iterable[str]) -> str:
    """The characters of some texts that the font lacks, sorted; white space is not counted."""
    used = {character for text in texts for character in text if not character.isspace()}
    return "".join(sorted(character for character in used if ord(character) not in _covered()))


def font_files() -> dict[str, bytes]:
    """Both weights as WOFF2 files: all that lessons, words and learners' names in English and Hindi need.

    Returns:
        ``mukta-regular.woff2`` and ``mukta-bold.woff2``; the same bytes on every run.
    """
    from fontTools import subset

    files = {}
    for weight, name in WEIGHTS.items():
        options = subset.Options()
        options.flavor = "woff2"
        options.layout_features = ["*"]
        options.hinting = False
        options.name_IDs = ["*"]  # the font's own licence stays inside it
        options.recalc_timestamp = False
        with subset.load_font(str(_folder() / name), options, lazy=False) as font:
            subsetter = subset.Subsetter(options)
            subsetter.populate(unicodes=sorted({code for codes in _ALWAYS for code in codes}))
            subsetter.subset(font)
            out = io.BytesIO()
            subset.save_font(font, out, options)
        files[f"mukta-{weight}.woff2"] = out.getvalue()
    return files
