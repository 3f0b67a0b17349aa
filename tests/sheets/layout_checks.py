"""What must hold on every page of every sheet, measured on what is drawn."""

from __future__ import annotations

from generator.sheets.styles import FOOT, MARGIN, SMALLEST
from tests.sheets.recorder import Recording, String

_HAIR = 0.5
"""Points that rounding may add."""


def faults(made: Recording, width: float, height: float) -> list[str]:
    """Strings that leave the margins, cross the line of their box, are too small, or lie over each other."""
    found: list[str] = []
    for string in made.strings:
        end = string.x + string.width
        if string.size < SMALLEST:
            found.append(f"{string.size} points: {string.typed}")
        if string.x < MARGIN - _HAIR or end > width - MARGIN + _HAIR:
            found.append(f"page {string.page}, {string.x:.0f} to {end:.0f} across the margin: {string.typed}")
        if not 20 < string.y < height - MARGIN:
            found.append(f"page {string.page}, {string.y:.0f} high, off the page: {string.typed}")
        for page, left, low, right, top in made.shapes:
            inside = page == string.page and left - _HAIR <= string.x < right and low <= string.y <= top
            if inside and right - left > 40 and end > right + _HAIR:
                found.append(f"page {string.page}, crosses its box by {end - right:.1f}: {string.typed}")
    for number in range(1, made.pages + 1):
        found += _overlaps([string for string in made.strings if string.page == number])
        lowest = min(low for page, _, low, _, _ in made.shapes if page == number)
        if lowest < FOOT - 12:
            found.append(f"page {number}: a shape reaches {lowest:.0f} points, into the footer")
    return found


def _overlaps(strings: list[String]) -> list[str]:
    found = []
    for place, one in enumerate(strings):
        for other in strings[place + 1 :]:
            across = min(one.x + one.width, other.x + other.width) - max(one.x, other.x)
            up = min(one.y + 0.6 * one.size, other.y + 0.6 * other.size) - max(one.y, other.y)
            if across > _HAIR and up > _HAIR:
                found.append(f"page {one.page}: '{one.typed}' lies over '{other.typed}'")
    return found
