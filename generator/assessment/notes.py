"""What a statistic wants to say beside its number: a caution, or why there is no number at all."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

FEW_PEOPLE = 30
"""Below this many people a question's numbers are a first look. A habit of the trade of testing, not a theorem."""


@dataclass(frozen=True, slots=True)
class Note:
    """A caution in words; the words are `statistics.note.*`.

    Args:
        name: which.
        values: what the words name, by slot.
    """

    name: str
    values: tuple[tuple[str, object], ...] = ()


def note(name: str, **values: object) -> Note:
    """A caution with what it names.

    Example:
        >>> note("few_people", count=12).values
        (('count', 12),)
    """
    return Note(name, tuple(values.items()))


class NoAnswerError(Exception):
    """The data can't carry the statistic; the words are `statistics.no_answer.*`.

    Args:
        name: why.
        values: what the words name, by slot.
    """

    def __init__(self, name: str, **values: object) -> None:
        self.reason = note(name, **values)
        super().__init__(f"{name} {values}" if values else name)


def few_people(count: int) -> tuple[Note, ...]:
    """The caution about small groups, where it is due."""
    return (note("few_people", count=count),) if count < FEW_PEOPLE else ()


def joined(parts: Iterable[Iterable[Note]]) -> tuple[Note, ...]:
    """All notes once, in the order of their first use."""
    return tuple(dict.fromkeys(found for part in parts for found in part))
