"""An entry: what one writer does in one transaction; every row that it makes or changes is sealed by an event."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import datetime
from typing import Any, TypeAlias

from sqlalchemy import Connection, Table, insert, select, update

from generator.problems import RefusedError
from generator.registry.chain import canonical, digest, event_hash, payload_hash, stamp
from generator.registry.tables import PERSONAL, SEALED, STATES, counters, events, info, payloads

Entropy: TypeAlias = Callable[[int], bytes]
Place: TypeAlias = tuple[int, str, str, bool]
_SALT = 16


class Entry:
    """Writes rows and their events. Made by `writing`, never by hand.

    Args:
        connection: within a transaction that shuts out other writers.
        now: the time of all events.
        entropy: random bytes.
        head: number, hash and time of the newest event.
    """

    def __init__(self, connection: Connection, now: datetime, entropy: Entropy, head: tuple[int, str, str]) -> None:
        self.connection = connection
        self.entropy = entropy
        self.at = stamp(now)
        self.today = self.at[:10]
        self._seq, self._hash, self._last = head
        self._changed = False

    @property
    def place(self) -> Place:
        """Where the chain stands, for `back_to`."""
        return self._seq, self._hash, self._last, self._changed

    def back_to(self, place: Place) -> None:
        """Go on from an earlier place of this entry, whose later rows and events were rolled back."""
        self._seq, self._hash, self._last, self._changed = place

    @property
    def next_event(self) -> int:
        """The number that the next event will have."""
        return self._seq + 1

    def event(
        self,
        kind: str,
        subject: str,
        actor: int | None,
        body: Mapping[str, object],
        personal: Mapping[str, object] | None = None,
        person: int | None = None,
        *,
        clock_set: bool = False,
    ) -> int:
        """Add an event to the chain.

        Args:
            kind: what happened: `certificate.issued`.
            subject: the row that it is about: `certificates:WKLP-C000012-PM`.
            actor: id of the person who did it; None for the registry itself.
            body: what is told to everyone who audits; no word about a person but the id.
            personal: what can be erased later; only its salted hash enters the chain.
            person: id of whom `personal` is about; None where the person is nobody here.
            clock_set: the one event that may be earlier than the one before it.

        Returns:
            The event's number.

        Raises:
            RefusedError: the clock stands before the newest event.
        """
        if self.at < self._last and not clock_set:
            raise RefusedError(
                f"the clock says {self.at}, and the newest entry is of {self._last}: set the clock right. "
                "If that entry was made with a wrong clock, a coordinator has to note that first"
            )
        row: dict[str, Any] = {
            "seq": self._seq + 1, "at": self.at, "kind": kind, "subject": subject, "actor": actor,
            "body": canonical(body), "personal": None,
        }  # fmt: skip
        payload = salt = ""
        if personal is not None:
            payload, salt = canonical(personal), self.entropy(_SALT).hex()
            row["personal"] = payload_hash(payload, salt)
        row |= {"previous": self._hash, "hash": event_hash(row, self._hash)}
        self.connection.execute(insert(events), row)
        if personal is not None:
            kept = {"event": row["seq"], "person": person, "payload": payload, "salt": salt}
            self.connection.execute(insert(payloads), kept)
        self._seq, self._hash, self._last = row["seq"], row["hash"], self.at
        self._changed = True
        return self._seq

    def add(
        self,
        table: Table,
        values: Mapping[str, Any],
        kind: str,
        actor: int | None,
        *,
        body: Mapping[str, object] | None = None,
        person: int | None = None,
        own: bool = False,
    ) -> Any:
        """Make a row and the event that seals it.

        Args:
            table: one of the sealed or personal tables.
            values: the row, but for a key that the database gives.
            kind: what happened.
            actor: who did it.
            body: what else the event tells.
            person: whom the row's personal columns are about.
            own: whether the row is that person's own.

        Returns:
            The row's key.
        """
        made = self.connection.execute(insert(table), dict(values))
        assert made.inserted_primary_key is not None  # noqa: S101 (an insert of one row has its key)
        key = made.inserted_primary_key[0]
        self._seal(table, key, kind, actor, dict(body or {}), key if own else person, made=True)
        return key

    def change(
        self,
        table: Table,
        key: Any,
        values: Mapping[str, Any],
        kind: str,
        actor: int | None,
        *,
        body: Mapping[str, object] | None = None,
        person: int | None = None,
    ) -> None:
        """Change a row, and say so in an event."""
        self.connection.execute(update(table).where(key_of(table) == key).values(**values))
        self._seal(table, key, kind, actor, dict(body or {}), person, made=False)

    def _seal(
        self,
        table: Table,
        key: Any,
        kind: str,
        actor: int | None,
        body: dict[str, object],
        person: int | None,
        *,
        made: bool,
    ) -> None:
        found = self.connection.execute(select(table).where(key_of(table) == key)).mappings().one()
        row = {str(name): value for name, value in found.items()}
        if made and table.name in SEALED:
            body["seal"] = digest(row, SEALED[table.name])
        if table.name in STATES:
            body["state"] = digest(row, STATES[table.name])
        personal = {name: row[name] for name in PERSONAL[table.name]} if table.name in PERSONAL else None
        self.event(kind, subject_of(table, key), actor, body, personal, person)

    def number(self, kind: str) -> int:
        """The next serial number of a kind; never given again once the transaction is kept."""
        found = self.connection.execute(
            update(counters).where(counters.c.name == kind).values(next=counters.c.next + 1).returning(counters.c.next)
        ).scalar_one()
        return int(found) - 1

    def finish(self) -> None:
        """Note the newest event as the chain's head."""
        if not self._changed:
            return
        head = {"head_seq": str(self._seq), "head_hash": self._hash, "head_at": self._last}
        for name, value in head.items():
            self.connection.execute(update(info).where(info.c.name == name).values(value=value))


def new_entry(connection: Connection, now: datetime, entropy: Entropy) -> Entry:
    """An entry that goes on from the newest event."""
    found = dict(connection.execute(select(info.c.name, info.c.value)).all())
    return Entry(connection, now, entropy, (int(found["head_seq"]), found["head_hash"], found["head_at"]))


def key_of(table: Table) -> Any:
    """The column by which rows of a table are named."""
    return next(iter(table.primary_key.columns))


def subject_of(table: Table, key: object) -> str:
    """How events name a row."""
    return f"{table.name}:{key}"
