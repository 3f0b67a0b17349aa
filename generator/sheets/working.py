"""Worked solutions on paper: one line for each step, symbols with their subscripts, the result in bold."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from generator.calculations import BOOK
from generator.formula import Step
from generator.formula.plain import SUBSCRIPTED, Word, in_words
from generator.sheets.flow import Piece, Text
from generator.sheets.styles import NOTE, TIGHT
from generator.sheets.text import Run
from generator.words import Words


def worked_pieces(steps: Sequence[Step], words: Words) -> Iterator[Piece]:
    """A worked solution: above each line, in words, what it works out.

    Args:
        steps: from the book's trace.
        words: of the reader's language.
    """
    word = word_of(words)
    for step in steps:
        if step.name in BOOK.quantities:
            yield Text(words.say_one_of("quantity", step.name), NOTE.but(after=0.0, keep=True))
        formula, numbers = in_words(step.formula, word), in_words(step.substituted, word)
        line = [*symbols(in_words(step.symbol, word)), Run(" = "), *symbols(formula), Run(f" = {numbers} = ")]
        result = Run(words.with_unit(step.shown, step.unit), bold=True)
        yield Text([*line, result], TIGHT.but(indent=10.0))


def word_of(words: Words) -> Word:
    """Gives the few words that stand in formulas, in the language of the sheet."""
    return lambda english: words.say_one_of("in_formula", english.replace(" ", "_"))


def symbols(text: str) -> list[Run]:
    """A line of formula with subscripts set low.

    Example:
        >>> [run.text for run in symbols("2 × D_i + b")]
        ['2 × D', 'i', ' + b']
        >>> [run.text for run in symbols("π × R_i²")]
        ['π × R', 'i', '²']
    """
    runs: list[Run] = []
    end = 0
    for match in SUBSCRIPTED.finditer(text):
        runs += [Run(text[end : match.end(1)]), Run(match[2], subscript=True)]
        end = match.end()
    return [*runs, Run(text[end:])] if text[end:] else runs
