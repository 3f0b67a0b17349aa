"""Whose papers lie in a sitting: found by the number on them or by name, so many at a time."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from sqlalchemy import Connection, Select, select

from generator.exercises import same_name
from generator.registry.csv_text import unguarded
from generator.registry.tables import answers, papers, people

_AT_ONCE = 500
_LONGEST_NUMBER = 9
"""Digits; a database takes no number of any length."""


@dataclass(frozen=True, slots=True)
class Seat:
    """One paper of the sitting: its id, the number on it, whose it is, what it asks, and what is recorded already."""

    paper: int
    number: int
    name: str
    content: str
    recorded: Mapping[int, str | None]


class Seats:
    """The papers of a sitting whose candidates are known.

    They are read when they are asked for, so that a large sitting takes no more memory than a small one.

    Args:
        connection: open as long as this is used.
        sitting: its id.
    """

    def __init__(self, connection: Connection, sitting: int) -> None:
        self._connection, self._sitting = connection, sitting
        one = select(answers.c.paper).join(papers, papers.c.id == answers.c.paper).where(papers.c.sitting == sitting)
        self._answered = connection.execute(one.limit(1)).first() is not None

    def among(self, learners: Collection[str]) -> dict[str, Seat]:
        """The papers of those who are named.

        Args:
            learners: cells of the column `learner`: a paper's number, or a name.

        Returns:
            By the cell; what names nobody is missing.
        """
        numbers = {text: int(text) for text in learners if _is_number(text)}
        by_number = {seat.number: seat for seat in self._read(papers.c.number, list(dict.fromkeys(numbers.values())))}
        found = {text: by_number[number] for text, number in numbers.items() if number in by_number}
        names = {text: same_name(unguarded(text)) for text in learners if text not in found}
        keys = [name for name in dict.fromkeys(names.values()) if name]
        by_name = {same_name(seat.name): seat for seat in self._read(people.c.name_key, keys)}
        return found | {text: by_name[name] for text, name in names.items() if name in by_name}

    def everyone(self) -> dict[int, Seat]:
        """All papers by their numbers."""
        return {seat.number: seat for seat in self._seats(self._chosen())}

    def _read(self, column: Any, wanted: Sequence[object]) -> Iterator[Seat]:
        for start in range(0, len(wanted), _AT_ONCE):
            yield from self._seats(self._chosen().where(column.in_(wanted[start : start + _AT_ONCE])))

    def _chosen(self) -> Select[Any]:
        return (
            select(papers.c.id, papers.c.number, people.c.name, papers.c.content)
            .join(people, people.c.id == papers.c.person)
            .where(papers.c.sitting == self._sitting, people.c.name.is_not(None))
            .order_by(papers.c.number)
        )

    def _seats(self, chosen: Select[Any]) -> list[Seat]:
        rows = self._connection.execute(chosen).all()
        recorded = self._recorded([paper for paper, *_ in rows]) if self._answered else {}
        nothing: Mapping[int, str | None] = {}
        return [
            Seat(paper, number, name, content, recorded.get(paper, nothing)) for paper, number, name, content in rows
        ]

    def _recorded(self, wanted: Sequence[int]) -> dict[int, dict[int, str | None]]:
        found: dict[int, dict[int, str | None]] = {}
        for start in range(0, len(wanted), _AT_ONCE):
            some = wanted[start : start + _AT_ONCE]
            chosen = select(answers.c.paper, answers.c.label, answers.c.answer).where(answers.c.paper.in_(some))
            for paper, label, answer in self._connection.execute(chosen):
                found.setdefault(paper, {})[label] = answer
        return found


def _is_number(text: str) -> bool:
    """Whether a cell is the number of a paper as it is printed."""
    return text.isascii() and text.isdigit() and text[0] != "0" and len(text) <= _LONGEST_NUMBER
