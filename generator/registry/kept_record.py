"""The record of a sitting as the archive holds it: what result files, copied lists and two typists are held against."""

from __future__ import annotations

import json

from pydantic import TypeAdapter
from sqlalchemy import select

from generator.exercises import Item, Learner, Record
from generator.problems import RefusedError
from generator.registry.papers import known_sitting
from generator.registry.store import Registry, reading
from generator.registry.tables import contents, papers, people

_ITEMS: TypeAdapter[tuple[Item, ...]] = TypeAdapter(tuple[Item, ...])


class KeptRecord(Record):
    """A record out of the archive. Erased people are missing in it, so it keeps the id that was printed."""

    printed_id: str

    @property
    def set_id(self) -> str:  # noqa: D102 (as the record's own)
        return self.printed_id


def kept_record(registry: Registry, sitting: int) -> KeptRecord:
    """The record of a sitting.

    Raises:
        RefusedError: no such sitting; one that was archived without what a record says.
    """
    with reading(registry) as connection:
        row = known_sitting(connection, sitting)
        about = json.loads(row.about)
        learners = tuple(
            Learner(number=number, name=name, language=language, items=_items(data))
            for number, language, name, data in connection.execute(
                select(papers.c.number, papers.c.language, people.c.name, contents.c.data)
                .join(people, people.c.id == papers.c.person)
                .join(contents, contents.c.hash == papers.c.content)
                .where(papers.c.sitting == sitting, people.c.name.is_not(None))
                .order_by(papers.c.number)
            )
        )
    known = {name: value for name, value in about.items() if name in Record.model_fields}
    if set(Record.model_fields) - {"learners", "competencies"} - known.keys():
        raise RefusedError(f"sitting {sitting} was archived without its record: type its answers as a plain table")
    text = json.dumps({**known, "printed_id": row.set_id, "learners": []})
    return KeptRecord.model_validate_json(text).model_copy(update={"learners": learners})


def _items(data: bytes) -> tuple[Item, ...]:
    return _ITEMS.validate_json(json.dumps(json.loads(data)["items"]))
