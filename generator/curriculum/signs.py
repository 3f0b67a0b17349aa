"""Slips of the pen in Hindi that change what is read: a pipe for a danda, and a danda that looks like a digit."""

from __future__ import annotations

import re
from collections.abc import Iterator

from generator.curriculum.calls import Fault, without_calls

DANDA = "।"
_PIPE_FOR_DANDA = re.compile(r"(?<=[\u0900-\u097f])\s?\|(?=\s|$)")
_DANDA_BEHIND_DIGIT = re.compile(r"[0-9\u0966-\u096f]\s?।")


def pipes_for_dandas(text: str) -> Iterator[Fault]:
    """A pipe where a danda belongs; not for Markdown, where a pipe may part the cells of a table.

    Args:
        text: a text of a YAML file.

    Example:
        >>> [fault.fix for fault in pipes_for_dandas("रिंग बाँधें |")]
        ['write ।']
    """
    for match in _PIPE_FOR_DANDA.finditer(text):
        yield Fault(match.start(), match[0], "pipe-for-danda", "a | stands where the danda । belongs", "write ।")


def dandas_behind_digits(text: str) -> Iterator[Fault]:
    """A danda right behind a digit: in print `12।` is taken for 121.

    Args:
        text: Markdown, or a text of a YAML file.

    Example:
        >>> [fault.what for fault in dandas_behind_digits("कुल 12।")]
        ["'2।' can be read as another digit 1"]
    """
    for match in _DANDA_BEHIND_DIGIT.finditer(without_calls(text)):
        yield danda_fault(match.start(), match[0])


def danda_fault(start: int, snippet: str) -> Fault:
    """The fault of a danda that follows a digit, typed or filled in."""
    what = f"'{snippet}' can be read as another digit 1"
    fix = "end the sentence with a word, such as the unit or नग"
    return Fault(start, snippet, "danda-after-digit", what, fix)
