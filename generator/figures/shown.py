"""The numbers of a drawing as people read them: rounded and with their unit by the calculation module's own entry."""

from __future__ import annotations

from collections.abc import Mapping

from generator.calculations import BOOK
from generator.formula import Given, show, show_full
from generator.words import Words


def shown(name: str, values: Mapping[str, float], words: Words) -> str:
    """A given as it was given, a quantity at its places, both with the unit.

    Args:
        name: of the given or quantity.
        values: numbers by name.
        words: language of the drawing.
    """
    entry = BOOK.entry(name)
    text = show_full(values[name]) if isinstance(entry, Given) else show(values[name], entry.places)
    return words.with_unit(text, entry.unit)
