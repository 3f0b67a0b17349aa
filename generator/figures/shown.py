"""The numbers of a drawing as people read them: rounded and with their unit by the calculation module's own entry."""

from __future__ import annotations

from collections.abc import Mapping

from generator.calculations import BOOK
from generator.formula import Given, show, show_full
from generator.words import Words


class Hidden(dict[str, float]):
    """Numbers of a tank of which a drawing shows some only as a letter and a question mark.

    Args:
        values: numbers by name.
        letters: for each hidden name the letter that stands in its place.
    """

    def __init__(self, values: Mapping[str, float], letters: Mapping[str, str]) -> None:
        super().__init__(values)
        self.letters = dict(letters)
        self.met: list[str] = []
        """Every name that the drawing asked a text for, hidden or not."""


def shown(name: str, values: Mapping[str, float], words: Words) -> str:
    """A given as it was given, a quantity at its places, both with the unit.

    Args:
        name: of the given or quantity.
        values: numbers by name; one that is `Hidden` there comes as its letter and a question mark.
        words: language of the drawing.
    """
    entry = BOOK.entry(name)
    if isinstance(values, Hidden):
        values.met.append(name)
        if name in values.letters:
            return f"{values.letters[name]} = {words.with_unit('?', entry.unit)}"
    text = show_full(values[name]) if isinstance(entry, Given) else show(values[name], entry.places)
    return words.with_unit(text, entry.unit)
