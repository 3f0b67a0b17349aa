"""What helps somebody in an exam, as the registry keeps it: one text that people read, of which `paper` uses two parts.

    more time: 30; form: spoken; sits near the window

What stands before the first colon is ours, all else is a note. A text of before is one note.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from sqlalchemy import select

from generator.exercises import same_name
from generator.registry.store import Registry, reading
from generator.registry.tables import memberships, people

FORMS = ("print", "screen", "spoken")
"""The forms of a paper that somebody can need."""
MOST_MORE = 300
"""Minutes more; longer needs another day."""

_TIME = re.compile(r"more time: ([0-9]{1,3})")
_FORM = re.compile(rf"form: ({'|'.join(FORMS)})")


@dataclass(frozen=True, slots=True)
class Accommodation:
    """What helps somebody in an exam.

    Args:
        more_time: minutes more than the others, 0 to `MOST_MORE`.
        form: of the paper; empty for the form that the others get.
        note: for whoever prepares the room.
    """

    more_time: int = 0
    form: str = ""
    note: str = ""

    @property
    def text(self) -> str:
        """As it is kept.

        Example:
            >>> Accommodation(30, "spoken", "sits near the window").text
            'more time: 30; form: spoken; sits near the window'
        """
        parts = [f"more time: {self.more_time}" if self.more_time else "", f"form: {self.form}" if self.form else ""]
        return "; ".join(part for part in (*parts, self.note.strip()) if part)


def read_accommodation(text: str) -> Accommodation:
    """What was kept; a part that is none of ours is a note.

    Example:
        >>> read_accommodation("more time: 30; larger print")
        Accommodation(more_time=30, form='', note='larger print')
    """
    more_time, form, notes = 0, "", []
    for part in (piece.strip() for piece in text.split(";")):
        if (time := _TIME.fullmatch(part)) and int(time[1]) <= MOST_MORE:
            more_time = int(time[1])
        elif own := _FORM.fullmatch(part):
            form = own[1]
        elif part:
            notes.append(part)
    return Accommodation(more_time, form, "; ".join(notes))


@dataclass(frozen=True, slots=True)
class Needs:
    """What a candidate's own line says: the language that they read, and what helps them."""

    language: str | None
    help: Accommodation


def needs_of(registry: Registry, cohort: int) -> Mapping[str, Needs]:
    """What the candidates of a cohort need, by the form of their names in which two writings are equal."""
    with reading(registry) as connection:
        rows = connection.execute(
            select(people.c.name, people.c.language, people.c.accommodations)
            .join(memberships, memberships.c.person == people.c.id)
            .where(memberships.c.cohort == cohort, memberships.c.role == "candidate", people.c.name.is_not(None))
        )
        return {same_name(row.name): Needs(row.language, read_accommodation(row.accommodations or "")) for row in rows}
