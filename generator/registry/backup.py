"""Backups: one file with a consistent copy of everything and the signed head of the chain; and the way back.

The copy is a SQLite file, also of a registry on a server: so every backup can be read, audited and restored anywhere.
"""

from __future__ import annotations

import errno
import hashlib
import json
import os
import secrets
import shutil
import sqlite3
import tempfile
import zipfile
import zlib
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, create_engine, insert, select, text, update

from generator.problems import RefusedError
from generator.registry.audit import Finding, findings
from generator.registry.chain import Head, canonical, stamp
from generator.registry.entry import new_entry
from generator.registry.place import database_url, is_server, shown
from generator.registry.store import PATIENCE, Registry, own_file, plain_errors, prepared, reading, write_lock
from generator.registry.tables import METADATA, counters, info

FORMAT = 1
DATA, NOTE = "registry.sqlite", "head.json"
LEAP = 1000
"""Numbers left out after a restore: those given since the backup was made are never given again."""

SignHead = Callable[[bytes], bytes]
VerifyHead = Callable[[bytes, bytes], bool]
_AT_ONCE = 5000
_PIECE = 1 << 20


@dataclass(frozen=True, slots=True)
class Backup:
    """What a backup says of itself.

    Args:
        head: the newest event in it.
        made_at: when.
        signature: over `head.json`'s words; empty where none was asked for.
    """

    head: Head
    made_at: str
    signature: bytes


def chain_head(registry: Registry) -> Head:
    """The newest event of a registry."""
    with reading(registry) as connection:
        return _head(connection)


def _head(connection: Connection) -> Head:
    own = dict(connection.execute(select(info.c.name, info.c.value)).all())
    return Head(own["id"], int(own["head_seq"]), own["head_hash"])


def backup(registry: Registry, target: Path, *, now: datetime, sign: SignHead | None = None) -> Backup:
    """Write a backup; a file of that name is replaced only when the new one is whole and on the disk.

    Others may go on writing meanwhile: the copy is of one moment.

    Args:
        registry: what.
        target: the file, best on another drive.
        now: the time.
        sign: signs the head.

    Raises:
        RefusedError: a file of that name is there and is no backup, such as the registry itself or the keys.
        MachineError: the disk said no; what was there before still is.
    """
    _may_be_replaced(target)
    folder = target.absolute().parent
    with plain_errors(str(target)):
        folder.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryDirectory(prefix=".backup-", dir=folder) as scratch:
            copy, whole = Path(scratch) / DATA, Path(scratch) / "whole"
            head = _copy(registry, copy)
            said = {
                "format": FORMAT, "registry": head.registry, "seq": head.seq, "hash": head.hash, "made_at": stamp(now),
                "data": _file_hash(copy),
            }  # fmt: skip
            signature = sign(canonical(said).encode("utf-8")) if sign is not None else b""
            own_file(whole)
            with zipfile.ZipFile(whole, "w", zipfile.ZIP_DEFLATED, compresslevel=3) as file:
                file.writestr(zipfile.ZipInfo(NOTE), canonical({**said, "signature": signature.hex()}))
                file.write(copy, DATA)
            _to_disk(whole)
            whole.replace(target)
            _to_disk(folder)
    return Backup(head, stamp(now), signature)


def _may_be_replaced(target: Path) -> None:
    with plain_errors(str(target)):
        if not target.exists():
            return
        if zipfile.is_zipfile(target):
            with zipfile.ZipFile(target) as file:
                if {NOTE, DATA} <= set(file.namelist()):
                    return
    raise RefusedError(f"'{target}' is there already and is no backup: choose another name, nothing is written over")


def read_backup(source: Path, verify: VerifyHead | None = None) -> Backup:
    """What a backup says of itself, with its data held against it.

    Args:
        source: the file.
        verify: tells whether the signature over the head is ours; without it a signature is not looked at.

    Raises:
        RefusedError: it is no backup, a newer edition's, damaged, or the signature is not ours.
        MachineError: the file can't be read.
    """
    with _unpacked(source, verify) as (made, _):
        return made


def audit_backup(source: Path, verify: VerifyHead | None = None) -> tuple[Finding, ...]:
    """Audit a backup as `audit` does a registry, without restoring it."""
    with _unpacked(source, verify) as (made, data):
        _bring_up(data)
        with _opened(data) as connection:
            return tuple(findings(connection, [made.head]))


def restore(source: Path, place: str | Path, *, now: datetime, verify: VerifyHead | None = None) -> Backup:
    """Bring a registry back from a backup, to a place that holds none.

    The numbers of certificates and tanks go on a thousand later, so that none given after the backup is given again.

    Args:
        source: the backup.
        place: a file that is not there yet, or a server's empty database.
        now: the time; not before the backup's newest event.
        verify: tells whether the signature over the head is ours.

    Raises:
        RefusedError: what `read_backup` refuses; the place is taken; the audit of the backup finds damage.
        MachineError: the disk or the server said no; nothing is left at the place.
    """
    with _unpacked(source, verify) as (made, data):
        _bring_up(data)
        with _opened(data) as connection:
            first = next(findings(connection, [made.head]), None)
        if first is not None:
            raise RefusedError(f"the backup '{source}' is damaged: {first}. Take another one")
        if is_server(place):
            _to_server(data, str(place), now)
        else:
            _to_file(data, Path(place), now)
    return made


def _bring_up(data: Path) -> None:
    """Give the data of an older edition's backup the tables of this one; the steps change no row."""
    with plain_errors(str(data)):
        prepared(data, PATIENCE).dispose()


def _to_file(data: Path, place: Path, now: datetime) -> None:
    database_url(place)  # refuses a place inside the project
    if place.exists():
        raise RefusedError(f"'{place}' is there already: move it away first, nothing is written over")
    with plain_errors(str(place)):
        part = place.with_name(place.name + ".part")
        leftovers = [part.with_name(part.name + end) for end in ("", "-wal", "-shm")]
        for old in leftovers:
            old.unlink(missing_ok=True)
        try:
            own_file(part)
            shutil.copyfile(data, part)
            engine = prepared(part, PATIENCE)
            with write_lock(engine) as connection:
                _mark_restored(connection, now)
            engine.dispose()
            _to_disk(part)
            part.replace(place)
            _to_disk(place.absolute().parent)
        finally:
            for old in leftovers:
                old.unlink(missing_ok=True)


def _to_server(data: Path, place: str, now: datetime) -> None:
    with plain_errors(shown(place)):
        engine = prepared(place, PATIENCE)
        try:
            with write_lock(engine) as target, _opened(data) as source:
                if target.execute(select(info.c.name)).first():
                    raise RefusedError(f"the database '{shown(place)}' holds a registry: restore to an empty one")
                copy_tables(source, target)
                for table in METADATA.sorted_tables:
                    if "id" in table.c:
                        sequence = f"pg_get_serial_sequence('{table.name}', 'id')"
                        highest = f"(select coalesce(max(id), 0) + 1 from {table.name})"  # noqa: S608 (fixed names)
                        target.execute(text(f"select setval({sequence}, {highest}, false)"))
                _mark_restored(target, now)
        finally:
            engine.dispose()


def _mark_restored(connection: Connection, now: datetime) -> None:
    entry = new_entry(connection, now, secrets.token_bytes)
    connection.execute(update(counters).values(next=(counters.c.next + LEAP - 1) // LEAP * LEAP + 1))
    entry.event("registry.restored", "registry", None, {"leap": LEAP})
    entry.finish()


def copy_tables(source: Connection, target: Connection) -> None:
    """Copy all rows of all tables, parents first."""
    for table in METADATA.sorted_tables:
        order = list(table.primary_key.columns)
        rows = source.execution_options(yield_per=_AT_ONCE).execute(select(table).order_by(*order)).mappings()
        for part in rows.partitions(_AT_ONCE):
            target.execute(insert(table), [dict(row) for row in part])


def _copy(registry: Registry, copy: Path) -> Head:
    """A SQLite file with all that the registry holds at one moment; returns its head."""
    if registry.is_server:
        engine = prepared(copy, PATIENCE)
        with reading(registry) as source, write_lock(engine) as target:
            copy_tables(source, target)
        engine.dispose()
    else:
        with reading(registry) as connection:
            _head(connection)  # the view begins with the first look
            raw: Any = connection.connection.driver_connection
            target_file = sqlite3.connect(copy)
            try:
                raw.backup(target_file)
            finally:
                target_file.close()
    with _opened(copy) as connection:
        return _head(connection)


@contextmanager
def _opened(data: Path) -> Iterator[Connection]:
    """A backup's data, for reading."""
    engine = create_engine(f"sqlite:///{data}")
    try:
        with plain_errors(str(data)), engine.connect() as connection:
            yield connection
    finally:
        engine.dispose()


@contextmanager
def _unpacked(source: Path, verify: VerifyHead | None) -> Iterator[tuple[Backup, Path]]:
    """A backup's words and its data as a file of its own."""
    with plain_errors(str(source)), tempfile.TemporaryDirectory(prefix="backup-") as scratch:
        data = Path(scratch) / DATA
        try:
            with zipfile.ZipFile(source) as file:
                said = json.loads(file.read(NOTE))
                with file.open(DATA) as packed, data.open("wb") as plain:
                    shutil.copyfileobj(packed, plain, _PIECE)
        except (zipfile.BadZipFile, zlib.error, KeyError, ValueError, EOFError, NotImplementedError) as error:
            raise RefusedError(f"'{source}' is no whole backup of a registry: {error}. Take another one") from error
        except OSError as error:
            if error.errno != errno.EINVAL:
                raise
            what = "a place in it is named that no file has"
            raise RefusedError(f"'{source}' is no whole backup of a registry: {what}. Take another one") from error
        yield _checked(source, said, data, verify), data


def _checked(source: Path, said: Any, data: Path, verify: VerifyHead | None) -> Backup:
    made = said.get("format") if isinstance(said, dict) else None
    if isinstance(made, int) and made > FORMAT:
        raise RefusedError(f"'{source}' has format {made}, and this edition reads format {FORMAT}: use a newer edition")
    try:
        signature = bytes.fromhex(said.pop("signature"))
        head = Head(str(said["registry"]), int(said["seq"]), str(said["hash"]))
        found, at = str(said["data"]), str(said["made_at"])
    except (KeyError, ValueError, TypeError, AttributeError) as error:
        raise RefusedError(f"'{source}' is no whole backup of a registry: its note is damaged") from error
    if found != _file_hash(data):
        raise RefusedError(f"'{source}' is damaged: its data is not what was backed up. Take another one")
    if verify is not None and not verify(canonical(said).encode("utf-8"), signature):
        raise RefusedError(f"the signature of '{source}' is not the registry's own: somebody else made or changed it")
    return Backup(head, at, signature)


def _file_hash(path: Path) -> str:
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()


def _to_disk(path: Path) -> None:
    """Wait until a file, or a folder's list of names, is on the disk itself."""
    if path.is_dir() and os.name == "nt":
        return  # Windows keeps a folder's list by itself
    handle = os.open(path, os.O_RDONLY if path.is_dir() else os.O_RDWR)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
