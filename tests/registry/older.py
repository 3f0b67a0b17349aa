"""Registries as earlier editions left them: their own tables by the steps of then, and rows sealed with their words."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from unittest.mock import patch

from sqlalchemy import inspect, select, text

from generator.registry import Registry
from generator.registry.migrate import migrate
from generator.registry.place import database_url
from generator.registry.store import _engine, own_file, reading, write_lock
from generator.registry.tables import METADATA, info
from tests.registry.everything import fill_first, fill_ways
from tests.registry.small import Office, entropy, open_at

STEPS = ("0001", "0002_ways_in", "0003_in_force", "0004_keys_beside")
"""All steps but the newest."""
_WORDS = ("'provisional', 'in-force')", "'provisional', 'approved')")


@dataclass
class FormerOffice(Office):
    """An office that calls a scheme in force `approved`, as the first two editions did."""

    def decide(self, name: str, *arguments: object, status: str = "approved", **other: object) -> int:  # type: ignore[override]
        """Record a decision about a person."""
        return super().decide(name, *arguments, status=status, **other)  # type: ignore[arg-type]


def former_registry(folder: Path, place: Path | str, step: str) -> Office:
    """A registry at an earlier step, with rows in all of its tables; it is open, and not brought up."""
    words = ("draft", "provisional", "in-force", "approved")
    with open_at(folder / "made.sqlite") as made, patch("generator.registry.decisions.SCHEME_STATUSES", words):
        former = step < "0003"
        if former:
            _former_words(made)
        office = (FormerOffice if former else Office)(made).fill()
        fill_first(office)
        if step > "0001":
            fill_ways(office)
        opened = _at_step(place, step)
        with reading(made) as source, write_lock(opened.engine) as target:
            there = set(inspect(target).get_table_names())
            for table in METADATA.sorted_tables:
                if table.name in there:
                    rows = [dict(row) for row in source.execute(select(table)).mappings()]
                    assert rows, table.name
                    target.execute(table.insert(), rows)
                    if opened.is_server and "id" in table.c:
                        sequence = f"pg_get_serial_sequence('{table.name}', 'id')"
                        target.execute(text(f"select setval({sequence}, {len(rows)})"))
            own = {row.name: row.value for row in target.execute(select(info))}
        registry = Registry(opened.engine, opened.place, own["id"], own["code"], entropy())
        return Office(registry, office.now, dict(office.ids), office.cohort)


def _former_words(registry: Registry) -> None:
    """Let the column hold the word of then."""
    with registry.engine.begin() as connection:
        version = int(connection.execute(text("pragma schema_version")).scalar_one())
        connection.execute(text("pragma writable_schema = on"))
        change = "update sqlite_master set sql = replace(sql, :now, :then) where name = 'decisions'"
        connection.execute(text(change), dict(zip(("now", "then"), _WORDS, strict=True)))
        connection.execute(text(f"pragma schema_version = {version + 1}"))
        connection.execute(text("pragma writable_schema = off"))
    registry.engine.dispose()


def _at_step(place: Path | str, step: str) -> Registry:
    """An empty registry with the tables of a step."""
    if isinstance(place, Path):
        own_file(place)
    engine = _engine(database_url(place), 20)
    with write_lock(engine) as connection:
        migrate(connection, str(place), step)
    return Registry(engine, str(place), "", "", entropy())
