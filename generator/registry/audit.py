"""The audit: reads a whole registry and tells every sign that something in it was changed, lost or put in by hand."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache
from typing import Any

from sqlalchemy import Connection, Table, func, select

from generator.registry.answers import batch_digest
from generator.registry.certificates import MOVES
from generator.registry.chain import Head, canonical, digest, event_hash, payload_hash, sha256, start_of
from generator.registry.entry import key_of, subject_of
from generator.registry.marking_key import is_former, packed
from generator.registry.observations import observation_rows
from generator.registry.store import Registry, reading
from generator.registry.tables import (
    FORMER_WORDS,
    METADATA,
    PERSONAL,
    SEALED,
    STATES,
    answers,
    batches,
    certificate_changes,
    certificates,
    contents,
    counters,
    decisions,
    events,
    info,
    marking_keys,
    paper_files,
    papers,
    payloads,
    people,
    tanks,
)

CLOCK_SET = "clock.set"


@dataclass(frozen=True, slots=True)
class Finding:
    """One sign of damage.

    Args:
        code: kind, for programs: `chain-broken`.
        where: the event or row.
        what: in a sentence.
    """

    code: str
    where: str
    what: str

    def __str__(self) -> str:
        return f"{self.where}: {self.what} [{self.code}]"


@dataclass(frozen=True, slots=True)
class Log:
    """What the events say, gathered once.

    Args:
        subjects: of each row: the newest seal, the newest state, and the newest event with a payload.
        bodies: of the events that audits read again, by number.
        dropped: events whose payload was erased.
        erased_papers: papers whose typed answers were erased.
        payloads: personal words by event, once they were read.
    """

    subjects: Mapping[str, Mapping[str, Any]]
    bodies: Mapping[int, tuple[str, Mapping[str, Any]]]
    dropped: frozenset[int]
    erased_papers: frozenset[int]
    payloads: dict[int, str] = field(default_factory=dict)


def audit(registry: Registry, *, heads: Sequence[Head] = ()) -> tuple[Finding, ...]:
    """Read everything and tell what does not fit: chain, payloads, seals, orphans, transitions, contents.

    Args:
        registry: where.
        heads: heads of earlier backups, whose signatures the caller has checked: each has to lie on this chain. Only
            they can show that the newest events were cut off, or that a whole registry was written anew.

    Returns:
        What was found; empty where all is well.
    """
    with reading(registry) as connection:
        return tuple(findings(connection, heads))


def findings(connection: Connection, heads: Sequence[Head] = ()) -> Iterator[Finding]:
    """The audit's findings, on an open connection."""
    subjects: dict[str, dict[str, Any]] = {}
    bodies: dict[int, tuple[str, Mapping[str, Any]]] = {}
    dropped: set[int] = set()
    erased_papers: set[int] = set()
    yield from _chain(connection, heads, subjects, bodies, dropped, erased_papers)
    log = Log(subjects, bodies, frozenset(dropped), frozenset(erased_papers))
    yield from _payloads(connection, log)
    yield from _orphans(connection)
    for name in sorted({*SEALED, *STATES, *PERSONAL}):
        yield from _rows(connection, METADATA.tables[name], log)
    yield from _transitions(connection)
    yield from _rules(connection)
    yield from _batches(connection, log)
    yield from _contents(connection)


def _chain(
    connection: Connection,
    heads: Sequence[Head],
    subjects: dict[str, dict[str, Any]],
    bodies: dict[int, tuple[str, Mapping[str, Any]]],
    dropped: set[int],
    erased_papers: set[int],
) -> Iterator[Finding]:
    own = dict(connection.execute(select(info.c.name, info.c.value)).all())
    previous, seq, last = start_of(own.get("id", "")), 0, ""
    hashes: dict[int, str] = {}
    wanted = {head.seq for head in heads}
    for row in connection.execute(select(events).order_by(events.c.seq)).mappings():
        event = {str(name): value for name, value in row.items()}
        where = f"event {event['seq']}"
        if event["seq"] != seq + 1:
            yield Finding("event-missing", where, f"the event before it is {seq}")
        if event["previous"] != previous:
            yield Finding("chain-broken", where, "it does not go on from the event before it")
        if event["hash"] != event_hash(event, event["previous"]):
            yield Finding("event-changed", where, "its words are not those that its hash was made from")
        if event["at"] < last and event["kind"] != CLOCK_SET:
            yield Finding("clock-back", where, f"it is of {event['at']}, before the event before it")
        seq, previous, last = event["seq"], event["hash"], event["at"]
        if seq in wanted:
            hashes[seq] = previous
        body = _loaded(event["body"])
        _gather(event, body, subjects)
        if event["kind"] in ("answers.recorded", "observations.recorded"):
            bodies[seq] = (event["kind"], body)
        dropped.update(_numbers(body, "dropped"))
        erased_papers.update(_numbers(body, "papers") if event["kind"].endswith(".erased") else ())
    if own.get("head_seq") != str(seq) or own.get("head_hash") != previous:
        yield Finding("head-differs", f"event {seq}", f"the registry notes event {own.get('head_seq')} as its newest")
    for head in heads:
        if head.registry != own.get("id"):
            yield Finding("other-registry", f"event {head.seq}", "the signed head is of another registry")
        elif hashes.get(head.seq) != head.hash:
            yield Finding("head-not-on-chain", f"event {head.seq}", "a signed head does not lie on this chain")


def _loaded(body: str) -> Mapping[str, Any]:
    try:
        found = json.loads(body)
    except ValueError:
        return {}
    return found if isinstance(found, dict) else {}


def _numbers(body: Mapping[str, Any], name: str) -> list[int]:
    found = body.get(name)
    return [number for number in found if isinstance(number, int)] if isinstance(found, list) else []


def _gather(event: Mapping[str, Any], body: Mapping[str, Any], subjects: dict[str, dict[str, Any]]) -> None:
    about = subjects.setdefault(event["subject"], {})
    for name in ("seal", "state"):
        if name in body:
            about[name] = body[name]
    if event["personal"] is not None:
        about["personal"] = event["seq"]


def _payloads(connection: Connection, log: Log) -> Iterator[Finding]:
    chosen = (
        select(events.c.seq, events.c.personal, payloads.c.payload, payloads.c.salt)
        .outerjoin(payloads, payloads.c.event == events.c.seq)
        .order_by(events.c.seq)
    )
    for seq, personal, payload, salt in connection.execute(chosen):
        where = f"event {seq}"
        if payload is not None:
            log.payloads[seq] = payload
        if payload is None and personal is not None and seq not in log.dropped:
            yield Finding("payload-lost", where, "its personal words are gone, and nobody erased them")
        elif payload is not None and personal is None:
            yield Finding("payload-put-in", where, "it never had personal words")
        elif payload is not None and payload_hash(payload, salt) != personal:
            yield Finding("payload-changed", where, "its personal words are not those that were hashed")


@cache
def _orphan_queries() -> tuple[tuple[str, str, Any], ...]:
    """For each column that names a row elsewhere: where it is, what it names, and how to find what is not there."""
    found = []
    for table in METADATA.sorted_tables:
        for column in table.columns:
            for link in column.foreign_keys:
                other, parent = link.column.table.alias("parent"), link.column
                chosen = (
                    select(column)
                    .outerjoin_from(table, other, other.c[parent.name] == column)
                    .where(column.is_not(None), other.c[parent.name].is_(None))
                )
                found.append((f"{table.name}.{column.name}", parent.table.name, chosen.distinct()))
    return tuple(found)


def _orphans(connection: Connection) -> Iterator[Finding]:
    for where, named, chosen in _orphan_queries():
        for value in connection.execute(chosen).scalars():
            yield Finding("orphan", where, f"it names {named} {value}, and there is none")


def _seals(table: str, row: Mapping[str, object]) -> tuple[str, ...]:
    """What a row may have been sealed with: its present words, or those of before."""
    columns = SEALED[table]
    column, former = FORMER_WORDS.get(table, ("", {}))
    before = former.get(str(row.get(column)))
    return (digest(row, columns), *([digest({**row, column: before}, columns)] if before else []))


def _rows(connection: Connection, table: Table, log: Log) -> Iterator[Finding]:
    """Every row against the newest events about it, and every seal against its row."""
    key = key_of(table)
    unseen = {subject for subject in log.subjects if subject.partition(":")[0] == table.name}
    for found in connection.execute(select(table).order_by(key)).mappings():
        row = {str(name): value for name, value in found.items()}
        subject = subject_of(table, row[key.name])
        about = log.subjects.get(subject, {})
        unseen.discard(subject)
        if table.name in SEALED and about.get("seal") not in _seals(table.name, row):
            word = "changed" if "seal" in about else "put in"
            yield Finding(f"row-{word.replace(' ', '-')}", subject, f"the row was {word} without an event")
        if table.name in STATES and about.get("state") != digest(row, STATES[table.name]):
            yield Finding("state-changed", subject, "what changes in the row is not what the newest event says")
        if table.name in PERSONAL:
            yield from _personal(log, table, row, subject, about)
    erased = {"paper_files"}
    for subject in sorted(unseen):
        about = log.subjects[subject]
        if table.name in erased and about.get("personal") in log.dropped:
            continue
        yield Finding("row-lost", subject, "events tell of the row, and it is gone")


def _personal(
    log: Log, table: Table, row: Mapping[str, Any], subject: str, about: Mapping[str, Any]
) -> Iterator[Finding]:
    values = {name: row[name] for name in PERSONAL[table.name]}
    kept = log.payloads.get(about.get("personal", -1))
    if kept is None:
        if any(value is not None for value in values.values()):
            yield Finding("personal-put-in", subject, "the row holds words about a person that no event knows")
    elif kept != canonical(values):
        yield Finding("personal-changed", subject, "words about a person are not those of the newest event")


def _transitions(connection: Connection) -> Iterator[Finding]:
    """Each certificate's changes, one after the other."""
    allowed = {(before, after) for befores, after in MOVES.values() for before in befores}
    status: dict[str, str] = {}
    last: dict[str, str] = {}
    for row in connection.execute(select(certificate_changes).order_by(certificate_changes.c.id)):
        number, where = row.certificate, f"certificates:{row.certificate}"
        if row.was != status.get(number):
            yield Finding("impossible-change", where, f"it changes from {row.was}, and was {status.get(number)}")
        elif row.was is None and row.becomes != "active":
            yield Finding("impossible-change", where, f"it begins as {row.becomes}")
        elif row.was is not None and (row.was, row.becomes) not in allowed:
            yield Finding("impossible-change", where, f"no certificate goes from {row.was} to {row.becomes}")
        if row.at < last.get(number, ""):
            yield Finding("impossible-change", where, f"a change of {row.at} comes after one of {last[number]}")
        status[number], last[number] = row.becomes, row.at
    for number, now in connection.execute(select(certificates.c.number, certificates.c.status)):
        if status.get(number) != now:
            what = f"it is {now}, and its changes end with {status.get(number)}"
            yield Finding("status-differs", f"certificates:{number}", what)


def _rules(connection: Connection) -> Iterator[Finding]:
    """What the functions of this room would have refused."""
    chosen = (
        select(certificates, decisions.c.person.label("decided_for"), decisions.c.passed, decisions.c.scheme_status)
        .add_columns(decisions.c.cut, people.c.erased_at, decisions.c.decided_by)
        .join(decisions, decisions.c.id == certificates.c.decision)
        .join(people, people.c.id == certificates.c.person)
    )
    for row in connection.execute(chosen):
        where = f"certificates:{row.number}"
        if row.decided_for != row.person or not row.passed:
            yield Finding("no-right", where, "its decision is of someone else, or says 'not yet'")
        if row.scheme_status == "draft" or (row.scheme_status == "provisional" and row.cut is None):
            yield Finding("no-right", where, "its scheme could not issue")
        if row.decided_by == row.person:
            yield Finding("no-right", where, "its holder decided on themselves")
        if row.erased_at is None and row.signed is None:
            yield Finding("signed-lost", where, "its signed bytes are gone")
        elif row.signed is not None and sha256(row.signed) != row.signed_hash:
            yield Finding("signed-changed", where, "its signed bytes are not those that were issued")
    for kind, table in (("C", certificates), ("T", tanks)):
        highest = connection.execute(select(func.max(table.c.serial))).scalar() or 0
        coming = connection.execute(select(counters.c.next).where(counters.c.name == kind)).scalar() or 0
        if coming <= highest:
            yield Finding("number-again", f"counters:{kind}", f"the next number is {coming}, and {highest} is given")


def _batches(connection: Connection, log: Log) -> Iterator[Finding]:
    """Answers against the digests of their batches, those against their events; observations against theirs."""
    of_event: dict[int, list[str]] = {}
    counted: dict[int, int] = {}
    for batch in connection.execute(select(batches).order_by(batches.c.event, batches.c.paper)):
        of_event.setdefault(batch.event, []).append(batch.digest)
        counted[batch.event] = counted.get(batch.event, 0) + batch.answers
        chosen = select(answers).where(answers.c.paper == batch.paper, answers.c.event == batch.event)
        rows = [
            {str(name): value for name, value in row.items()}
            for row in connection.execute(chosen.order_by(answers.c.label)).mappings()
        ]
        where = f"papers:{batch.paper}"
        if batch.paper in log.erased_papers and batch.salt is None:
            if len(rows) != batch.answers or any(row["answer"] is not None for row in rows):
                yield Finding("answers-changed", where, "answers were added or taken out after the erasure")
        elif batch.salt is None or batch_digest(batch.salt, rows) != batch.digest:
            yield Finding("answers-changed", where, f"its answers are not those of event {batch.event}")
    strays = (
        select(answers.c.paper)
        .outerjoin(batches, (batches.c.paper == answers.c.paper) & (batches.c.event == answers.c.event))
        .where(batches.c.paper.is_(None))
    )
    for paper in connection.execute(strays.distinct()).scalars():
        yield Finding("answers-put-in", f"papers:{paper}", "answers were put in without an event")
    for seq, (kind, body) in log.bodies.items():
        if kind == "answers.recorded":
            found = {"answers": counted.get(seq, 0), "digest": sha256("\n".join(sorted(of_event.get(seq, []))))}
        else:
            rows_of = observation_rows(connection, seq)
            found = {"rows": len(rows_of), "digest": sha256(canonical(rows_of))}
        if any(body.get(name) != value for name, value in found.items()):
            yield Finding("import-changed", f"event {seq}", "what it recorded is not what is there")


def _contents(connection: Connection) -> Iterator[Finding]:
    chosen = select(contents.c.hash, contents.c.data, marking_keys.c.data).outerjoin(
        marking_keys, marking_keys.c.content == contents.c.hash
    )
    for name, data, key in connection.execute(chosen):
        if sha256(data) != name:
            yield Finding("content-changed", f"contents:{name}", "what papers asked was changed")
        elif key is not None and not is_former(key) and packed(json.loads(data)) != key:
            yield Finding("key-changed", f"marking_keys:{name}", "the key is not the one of what papers asked")
    files = select(paper_files.c.paper, paper_files.c.pdf_hash, paper_files.c.pdf)
    for paper, pdf_hash, pdf in connection.execute(files):
        if pdf is None or sha256(pdf) != pdf_hash:
            yield Finding("pdf-changed", f"paper_files:{paper}", "the printed file is not the one that was archived")
    for number, plan, plan_hash in connection.execute(select(tanks.c.number, tanks.c.plan, tanks.c.plan_hash)):
        if sha256(plan) != plan_hash:
            yield Finding("plan-changed", f"tanks:{number}", "its plan is not the one that was entered")
    used = select(papers.c.content)
    for name in connection.execute(select(contents.c.hash).where(contents.c.hash.not_in(used))).scalars():
        yield Finding("content-put-in", f"contents:{name}", "no paper asks this")
