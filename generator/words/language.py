"""One language's words, numbers, plurals and units: what every page, sheet and message says."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import TypeAlias

Wording: TypeAlias = str | Mapping[str, str]
"""A plain text, or its plural forms: ``{one: ..., other: ...}``."""

FOR_ONE = "unit_for_one"
"""Family of the units that have another word after 1: `day` beside `days`. A unit that has none here has one form."""

_ONLY_ZEROS = re.compile(r"\.0+$")
_SLOT = re.compile(r"\{([a-z_]+)\}")


class MissingWordError(KeyError):
    """A word that the words file does not have, or a value that its text needs and did not get."""


def plural_form(language: str, count: float) -> str:
    """Name of the plural form that a count takes, by the Unicode plural rules.

    Args:
        language: ``en`` or ``hi``.
        count: the number shown.

    Returns:
        ``one`` or ``other``. English: only 1 is ``one``. Hindi: everything from 0 to 1 is ``one``.

    Example:
        >>> plural_form("en", 0), plural_form("hi", 0), plural_form("hi", 1.5)
        ('other', 'one', 'other')
    """
    if language == "hi":
        return "one" if 0 <= count <= 1 else "other"
    return "one" if count == 1 else "other"


def grouped(digits: str, language: str) -> str:
    """The whole digits of a number with the thousands commas of a language.

    Args:
        digits: decimal digits only.
        language: ``en`` groups by three; ``hi`` by three, then by two.

    Example:
        >>> grouped("150000", "en"), grouped("150000", "hi")
        ('150,000', '1,50,000')
    """
    head, tail = digits[:-3], digits[-3:]
    step = 2 if language == "hi" else 3
    parts: list[str] = []
    while head:
        parts.insert(0, head[-step:])
        head = head[:-step]
    return ",".join([*parts, tail])


@dataclass(frozen=True)
class Words:
    """All the words of one language.

    Args:
        language: language code, ``en`` or ``hi``.
        texts: flat mapping from dotted key (``page.home.title``) to a text or to its plural forms.
    """

    language: str
    texts: Mapping[str, Wording]

    def __contains__(self, key: object) -> bool:
        return key in self.texts

    def say(self, key: str, **values: object) -> str:
        """The text of a key with its slots filled.

        Args:
            key: dotted key, typed as a plain string so that ``check`` can see which words are in use.
            values: one for every ``{slot}`` of the text; ``count`` also chooses the plural form.

        Raises:
            MissingWordError: the key is not in the words file, or a slot got no value.
        """
        text = self.texts.get(key)
        if text is None:
            raise MissingWordError(f"{self.language}: no word '{key}'")
        if not isinstance(text, str):
            count = values.get("count")
            if not isinstance(count, int | float):
                raise MissingWordError(f"{self.language}: '{key}' has plural forms and needs a count")
            text = text[plural_form(self.language, count)]
        if "{" not in text:
            return text
        missing = [slot for slot in _SLOT.findall(text) if slot not in values]
        if missing:
            raise MissingWordError(f"{self.language}: '{key}' needs a value for {', '.join(missing)}")
        return _SLOT.sub(lambda match: str(values[match[1]]), text)

    def say_one_of(self, family: str, member: str, **values: object) -> str:
        """The text of ``family.member``, where the member is only known at run time: ``unit``, ``quantity``."""
        return self.say(f"{family}.{member}", **values)

    def family(self, prefix: str) -> Iterator[tuple[str, Wording]]:
        """All the keys and texts below a prefix, in the file's order: what a page carries with it."""
        for key, text in self.texts.items():
            if key.startswith(prefix + "."):
                yield key, text

    def number(self, shown: str) -> str:
        """A number already rounded by ``formula.show``, with the language's grouping and a true minus sign.

        Example:
            >>> Words("hi", {}).number("-150000.50")
            '−1,50,000.50'
        """
        sign, digits = ("−", shown[1:]) if shown.startswith("-") else ("", shown)
        whole, point, rest = digits.partition(".")
        return sign + grouped(whole, self.language) + point + rest

    def with_unit(self, shown: str, unit: str) -> str:
        """A rounded number and its unit as print shows them: ``1.40 m``, but ``12 m`` and not ``12.0 m``.

        Nobody on a site says "nought" behind a whole number, so a fraction of zeros is left out; the space can't break.

        Args:
            shown: text made by ``formula.show``.
            unit: unit in the form that quantities declare (``m``, ``mm``, ``m**2``, ``kg/m``); empty for a bare count.
        """
        shown = _ONLY_ZEROS.sub("", shown)
        number = self.number(shown)
        return f"{number}\u00a0{self.unit_after(shown, unit)}" if unit else number

    def unit_after(self, shown: str, unit: str) -> str:
        """The word of a unit after a rounded number, which is another one after 1 where the file has one.

        Args:
            shown: text made by ``formula.show``, or a sign in its place. In English only ``1`` is one, not ``1.0``.
            unit: as in `with_unit`.
        """
        try:
            value = float(shown)
        except ValueError:  # the sign for what is asked
            return self.say_one_of("unit", unit)
        one = plural_form(self.language, value) == "one" and (self.language == "hi" or "." not in shown)
        return self.say_one_of(FOR_ONE if one and f"{FOR_ONE}.{unit}" in self.texts else "unit", unit)
