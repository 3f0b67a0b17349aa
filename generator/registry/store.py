"""Opening a registry, and the two ways to it: a reading view, and one writer at a time.

Every failure of disk or database leaves this room as a `MachineError` in words, and every clash with a rule of the
tables as a `RefusedError`.
"""

from __future__ import annotations

import secrets
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from types import TracebackType
from typing import Any

from sqlalchemy import Connection, Engine, create_engine, event, insert, select, text
from sqlalchemy.exc import ArgumentError, IntegrityError, NoSuchModuleError, SQLAlchemyError

from generator.problems import MachineError, RefusedError
from generator.registry.chain import start_of
from generator.registry.entry import Entropy, Entry, new_entry
from generator.registry.migrate import NEWEST, current, migrate
from generator.registry.numbers import registry_code
from generator.registry.place import database_url, shown
from generator.registry.tables import counters, info

PATIENCE = 20
"""Seconds that a writer waits for another one."""

_WRITERS = 5_209_717_301
"""Any number: PostgreSQL's lock that lets one writer in at a time."""

_WORDS = (
    ("database or disk is full", "the disk is full; free some space, then do it again: nothing was half written"),
    ("disk I/O error", "the disk did not take or give the data; look at its space and health, then do it again"),
    ("locked", "another program keeps the registry busy; close it, or wait and do it again"),
    ("readonly database", "the file may not be written; look at its rights and its folder's"),
    ("unable to open", "the file can't be opened; look at the folder and its rights"),
    ("malformed", "the file is damaged; restore the newest backup"),
    ("file is not a database", "the file is no registry; look at its name"),
    ("connection", "the server does not answer; look at its address and whether it runs"),
)


@dataclass(frozen=True, slots=True)
class Registry:
    """An open registry; `close` it, or open it in a `with`.

    Args:
        engine: the database library's handle.
        place: how messages name it.
        id: sets it apart from every other registry.
        code: the letters that its numbers start with.
        entropy: gives so many random bytes.
    """

    engine: Engine
    place: str
    id: str
    code: str
    entropy: Entropy

    @property
    def is_server(self) -> bool:
        """Whether it lives on a PostgreSQL server."""
        return self.engine.dialect.name == "postgresql"

    def close(self) -> None:
        """Let go of the file or the server."""
        self.engine.dispose()

    def __enter__(self) -> Registry:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        self.close()


def open_registry(
    place: str | Path,
    *,
    now: datetime,
    entropy: Callable[[int], bytes] = secrets.token_bytes,
    patience: float = PATIENCE,
) -> Registry:
    """Open a registry, and bring its tables up to this edition; a place that holds nothing yet gets a new one.

    Args:
        place: a file (its folder is made), or `postgresql://user@server/name`.
        now: the time, with its zone.
        entropy: random bytes for salts and the registry's letters; tests hand in their own.
        patience: seconds that a writer waits for another one.

    Raises:
        RefusedError: the place lies in the project's folder; it holds something else; a newer edition made it.
        MachineError: the disk or the server said no.
    """
    with plain_errors(shown(place)):
        engine = prepared(place, patience)
        try:
            with engine.connect() as connection:
                found = _info(connection)
            if not found:
                with write_lock(engine) as connection:
                    found = _info(connection) or _begin(connection, entropy, now)
        except BaseException:
            engine.dispose()
            raise
    return Registry(engine, shown(place), found["id"], found["code"], entropy)


def prepared(place: str | Path, patience: float) -> Engine:
    """The database with the tables of this edition; a new one has no rows yet.

    Raises:
        RefusedError, MachineError: as `open_registry`.
    """
    url = database_url(place)
    with plain_errors(shown(place)):
        if url.startswith("sqlite"):
            own_file(Path(place))
        engine = _engine(url, patience)
        try:
            with engine.connect() as connection:
                step = current(connection)
            if step != NEWEST:
                with write_lock(engine) as connection:
                    migrate(connection, shown(place))
        except BaseException:
            engine.dispose()
            raise
    return engine


def own_file(path: Path) -> None:
    """Make an empty file, and its folder, where there is none: people's data that only this user may read.

    SQLite takes an empty file for a new database, and gives its side files the same rights.
    """
    path.absolute().parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    if not path.exists():
        path.touch(mode=0o600)


def _info(connection: Connection) -> dict[str, str]:
    return dict(connection.execute(select(info.c.name, info.c.value)).all())


def _begin(connection: Connection, entropy: Entropy, now: datetime) -> dict[str, str]:
    """The first rows of a new registry."""
    own = entropy(16).hex()
    found = {"id": own, "code": registry_code(entropy), "head_seq": "0", "head_hash": start_of(own), "head_at": ""}
    connection.execute(insert(info), [{"name": name, "value": value} for name, value in found.items()])
    connection.execute(insert(counters), [{"name": "C", "next": 1}, {"name": "T", "next": 1}])
    entry = new_entry(connection, now, entropy)
    entry.event("registry.began", "registry", None, {"code": found["code"]})
    entry.finish()
    return found


@contextmanager
def reading(registry: Registry) -> Iterator[Connection]:
    """A view of the registry at one moment, whatever others write meanwhile."""
    with plain_errors(registry.place), registry.engine.connect() as connection:
        if registry.is_server:
            connection = connection.execution_options(isolation_level="REPEATABLE READ")
        with connection.begin():
            yield connection


@contextmanager
def writing(registry: Registry, now: datetime, *, dry_run: bool = False) -> Iterator[Entry]:
    """One writer's transaction: all that is done through the entry is kept together, or none of it.

    Args:
        registry: where.
        now: the time of all its events.
        dry_run: do everything, then keep nothing.
    """
    with plain_errors(registry.place), write_lock(registry.engine) as connection:
        entry = new_entry(connection, now, registry.entropy)
        yield entry
        if dry_run:
            connection.rollback()
        else:
            entry.finish()


@contextmanager
def write_lock(engine: Engine) -> Iterator[Connection]:
    """A transaction that no other writer can start while it lasts."""
    with engine.connect() as plain:
        connection = plain.execution_options(tankschool_writes=True)
        with connection.begin() as transaction:
            if engine.dialect.name == "postgresql":
                connection.execute(text("select pg_advisory_xact_lock(:key)"), {"key": _WRITERS})
            yield connection
            if not transaction.is_active:
                return


@contextmanager
def plain_errors(place: str) -> Iterator[None]:
    """Turns what disk and database say into the project's own errors, in words.

    Raises:
        MachineError: the disk, the file or the server failed.
        RefusedError: a rule that the tables themselves keep.
    """
    try:
        yield
    except IntegrityError as error:
        raise RefusedError(
            f"the registry '{place}' keeps its own rules, and one of them refuses this: {_said(error)}. "
            "Look at what is there already; ask whoever keeps the registry"
        ) from error
    except (ArgumentError, NoSuchModuleError) as error:
        raise MachineError(f"the registry's address '{place}' can't be read: {_said(error)}") from error
    except ModuleNotFoundError as error:
        raise MachineError(
            f"the registry '{place}': PostgreSQL needs a library that is not installed here; add it with "
            "'python -m pip install psycopg[binary]' in the tool's environment"
        ) from error
    except (SQLAlchemyError, sqlite3.Error) as error:
        raise MachineError(f"the registry '{place}': {_in_words(_said(error))}") from error
    except OSError as error:
        raise MachineError(f"the registry '{place}': {error.strerror or error}") from error


def _said(error: Exception) -> str:
    """What the database itself said: one line, without the statement and its values."""
    return str(getattr(error, "orig", None) or error).strip().split("\n")[0]


def _in_words(said: str) -> str:
    return next((f"{words} ({said})" for part, words in _WORDS if part in said), said)


def _engine(url: str, patience: float) -> Engine:
    if not url.startswith("sqlite"):
        return create_engine(url)
    engine = create_engine(url, connect_args={"timeout": patience, "check_same_thread": False})

    @event.listens_for(engine, "connect")
    def _prepare(connection: Any, _record: object) -> None:
        connection.isolation_level = None  # the library under it must not start transactions of its own
        for pragma in (
            f"busy_timeout = {int(patience * 1000)}",
            "journal_mode = WAL",
            "synchronous = FULL",
            "foreign_keys = ON",
            "secure_delete = ON",
        ):
            connection.execute(f"PRAGMA {pragma}")

    @event.listens_for(engine, "begin")
    def _start(connection: Connection) -> None:
        writes = connection.get_execution_options().get("tankschool_writes")
        connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")

    return engine
