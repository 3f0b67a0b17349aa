r"""Numbers as people type them: commas, spaces, fractions, feet and inches, Devanagari digits, unit words.

The rules, in both languages: a point is a decimal point; commas group (``1,500`` is 1500, ``1,50,000`` is 150000); a
comma before any other count of digits is a decimal comma. Where two readings stand against each other, the answer is
asked for again and never guessed. `marker.js` holds the twin of this file; the patterns use only what both languages
read alike.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum

from generator.exercises.units import BY_NAME, BY_SPELLING, converted, spelling

LONGEST = 60
"""Characters of the longest text that is read as a number at all."""
MOST_DIGITS = 15


class AskReason(StrEnum):
    """Why an answer has to be asked for again; the words are `exercise.ask.*`."""

    NOT_A_NUMBER = "not_a_number"
    TWO_READINGS = "two_readings"
    FEET = "feet"
    UNKNOWN_UNIT = "unknown_unit"
    OTHER_KIND = "other_kind"
    ONE_ONLY = "one_only"
    """More than one option was chosen where one is right."""
    NOT_ALL = "not_all"
    """Not every step or pair was placed exactly once."""
    UNKNOWN_LETTER = "unknown_letter"
    """A letter that stands at no option."""
    UNIT_MISSING = "unit_missing"
    """The unit is part of the answer, and none was given."""


@dataclass(frozen=True, slots=True)
class Parsed:
    """A number that was read.

    Args:
        value: in the unit that is asked for.
        unit: the unit word that was typed, by its declared name; None where none was.
        other: the same text with its comma taken as a decimal comma, where that can be read too.
    """

    value: float
    unit: str | None = None
    other: float | None = None


@dataclass(frozen=True, slots=True)
class Ask:
    """A text that can't be read safely as one number.

    Args:
        reason: chooses the words.
        first: slot of the words: the typed unit, or the first reading.
        second: the second reading.
    """

    reason: AskReason
    first: str = ""
    second: str = ""


@dataclass(frozen=True, slots=True)
class Blank:
    """Nothing was written."""


_SPACES = re.compile(r"[ \t\n\r\f\v\u00a0\u1680\u2000-\u200a\u2028\u2029\u202f\u205f\u3000]+")
_UNSEEN = re.compile(r"[\u200b-\u200d\u2060\ufeff\u093c]")
_BEYOND = re.compile(r"[\ud800-\udfff\U00010000-\U0010ffff]")
SIGNS = {
    "−": "-", "–": "-", "—": "-", "‐": "-", "‑": "-", "’": "'", "‘": "'", "′": "'", "”": '"', "“": '"', "″": '"',
    "⁄": "/", "∕": "/", "²": "^2", "³": "^3", "½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅓": " 1/3", "⅔": " 2/3",
    "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8",
    "\u0958": "क", "\u0959": "ख", "\u095a": "ग", "\u095b": "ज", "\u095c": "ड", "\u095d": "ढ", "\u095e": "फ",
    "\u095f": "य",
    **{chr(0x0966 + digit): str(digit) for digit in range(10)},
    **{chr(0x41 + letter): chr(0x61 + letter) for letter in range(26)},
}  # fmt: skip
_TRAILING = re.compile(r"[ .,;\u0964]+$")
_FEET_INCHES = re.compile(
    r"^([0-9]{1,6}) ?(?:'|(?:ft|foot|feet|फुट|फीट|फिट)\.?) ?[-,]? ?"
    r"([0-9]{1,2}(?:[.,][0-9]{1,6})?|[0-9]{1,2} [0-9]{1,3} ?/ ?[0-9]{1,3}|[0-9]{1,3} ?/ ?[0-9]{1,3}) ?"
    r"(?:\"|''|(?:in|inch|inches|इंच|इन्च)\.?)?$"
)
_TWO_NUMBERS = re.compile(r"^([0-9]{1,6}) ?- ?([0-9]{1,2})$")
_HYPHEN_FRACTION = re.compile(r"^([0-9]+)-([0-9]+ ?/ ?[0-9]+)")
_PARTS = re.compile(r"^([+-]?) ?([0-9.,](?:[0-9., /]*[0-9.,])?) ?(.*)$")
_FRACTION = re.compile(r"^(?:([0-9]+) )?([0-9]+) ?/ ?([0-9]+)$")
_PLAIN = re.compile(r"^(?:[0-9]+\.?[0-9]*|\.[0-9]+)$")
_GROUPED = re.compile(
    r"^(?:[1-9][0-9]{0,2}(?:,[0-9]{3})+|[1-9][0-9]?(?:,[0-9]{2})+,[0-9]{3}"
    r"|[1-9][0-9]{0,2}(?: [0-9]{3})+|[1-9][0-9]?(?: [0-9]{2})+ [0-9]{3})(?:\.[0-9]+)?$"
)
_ONE_GROUP = re.compile(r"^[0-9]+,[0-9]{3}$")
_DECIMAL_COMMA = re.compile(r"^[0-9]*,[0-9]+$")
_INCHES_AFTER_POINT = re.compile(r"^([0-9]+)[.,]([0-9]{1,2})$")
_LETTER = re.compile(r"^[a-z\u0900-\u097f%]")
_DIGIT = re.compile(r"[0-9]")


def cleaned(text: str) -> str:
    """The text with one kind of space, hyphen, quote and digit, in lower case, without what can't be seen."""
    text = "".join(SIGNS.get(letter, letter) for letter in text)
    text = _SPACES.sub(" ", _UNSEEN.sub("", text)).strip(" ")
    return _TRAILING.sub("", text[1:].strip(" ") if text.startswith("=") else text)


def is_blank(text: str) -> bool:
    """Whether nothing that can be seen was written."""
    return _SPACES.sub("", _UNSEEN.sub("", text)) == ""


def parse_number(text: str, unit: str = "") -> Parsed | Ask | Blank:
    """Read one number as a learner types it. Never raises, whatever the text.

    Args:
        text: anything.
        unit: the unit that is asked for, as quantities declare it; a number typed in another unit of the same kind is
            converted.

    Returns:
        The number; or why it must be asked for again; or Blank.

    Example:
        >>> parse_number("1,50,000"), parse_number("0,35 मी.", "m").value, parse_number("225 mm", "m").value
        (Parsed(value=150000.0, unit=None, other=None), 0.35, 0.225)
        >>> parse_number("5.6", "foot")
        Ask(reason=<AskReason.FEET: 'feet'>, first='5', second='6')
    """
    if is_blank(text):
        return Blank()
    if _BEYOND.search(text) or len(text) > LONGEST:
        return Ask(AskReason.NOT_A_NUMBER)
    line = cleaned(text)
    feet = _FEET_INCHES.match(line) or (_TWO_NUMBERS.match(line) if unit == "foot" else None)
    if feet:
        return _feet_and_inches(int(feet[1]), feet[2], unit)
    parts = _PARTS.match(_HYPHEN_FRACTION.sub(r"\1 \2", line))
    if not parts:
        return Ask(AskReason.NOT_A_NUMBER)
    sign, body, word = -1.0 if parts[1] == "-" else 1.0, parts[2], parts[3]
    readings = _magnitude(body)
    if readings is None:
        return Ask(AskReason.NOT_A_NUMBER)
    typed = BY_SPELLING.get(spelling(word)) if word else None
    if word and typed is None:
        named = _LETTER.match(word) and not _DIGIT.search(word)
        return Ask(AskReason.UNKNOWN_UNIT, word) if named else Ask(AskReason.NOT_A_NUMBER)
    name = unit if typed is None else typed.name
    in_feet = _INCHES_AFTER_POINT.match(body) if name == "foot" else None
    if in_feet and 1 <= int(in_feet[2]) <= 11:
        return Ask(AskReason.FEET, in_feet[1], str(int(in_feet[2])))
    values = [_in_unit(sign * reading, name, unit) for reading in readings]
    if values[0] is None:
        return Ask(AskReason.OTHER_KIND, word)
    return Parsed(values[0], None if typed is None else typed.name, values[1] if len(values) > 1 else None)


def _in_unit(value: float, typed: str, asked: str) -> float | None:
    if asked not in BY_NAME:
        return value if typed == asked else None
    return converted(value, typed, asked)


def _feet_and_inches(feet: int, text: str, unit: str) -> Parsed | Ask:
    readings = _magnitude(text)
    if readings is None or readings[0] >= 12:
        return Ask(AskReason.NOT_A_NUMBER)
    value = _in_unit(feet + readings[0] / 12, "foot", unit)
    return Ask(AskReason.OTHER_KIND, "ft") if value is None else Parsed(value, "foot")


def _magnitude(body: str) -> tuple[float, ...] | None:
    """The reading of a number without sign and unit, and behind it the other reading where there is one."""
    if len(_DIGIT.findall(body)) > MOST_DIGITS or not _DIGIT.search(body):
        return None
    fraction = _FRACTION.match(body)
    if fraction:
        return _fraction(int(fraction[1] or 0), int(fraction[2]), int(fraction[3]), mixed=bool(fraction[1]))
    if _PLAIN.match(body):
        return (float(body),)
    if _GROUPED.match(body):
        grouped = float(body.replace(",", "").replace(" ", ""))
        return (grouped, float(body.replace(",", "."))) if _ONE_GROUP.match(body) else (grouped,)
    if _DECIMAL_COMMA.match(body):
        return (float(body.replace(",", ".")),)
    return None


def _fraction(whole: int, over: int, under: int, *, mixed: bool) -> tuple[float] | None:
    """`1 1/2` and `3/2` are read; `1 3/2` and `1/0` are not."""
    if under == 0 or (mixed and over >= under):
        return None
    return (whole + over / under,)
