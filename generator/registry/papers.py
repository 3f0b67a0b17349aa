"""Papers: what each candidate was asked, kept so that an appeal can print it again and no later edit changes a mark.

What a paper asks is kept without a name, under its hash; the printed PDF carries a name and is kept apart, so that it
can be erased.
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, datetime
from typing import Any

from sqlalchemy import Connection, func, insert, select

from generator.curriculum.models import Retest
from generator.exercises import Record, same_name
from generator.problems import RefusedError
from generator.registry.applications import not_let_in
from generator.registry.chain import canonical, sha256
from generator.registry.cohorts import candidates_of, known_cohort, roles_in
from generator.registry.entry import Entry
from generator.registry.marking_key import packed
from generator.registry.people import known_person, require_role
from generator.registry.store import Registry, reading, writing
from generator.registry.tables import contents, marking_keys, paper_files, papers, people, retest_exceptions, sittings
from generator.registry.tries import why_not_again


@dataclass(frozen=True, slots=True)
class NewSitting:
    """One exam of a cohort.

    Args:
        cohort: its id.
        set_id: what tells sets of papers apart; printed on each of them.
        held_on: the day.
        scheme: id of the scheme that the papers are for; None for practice.
        version: the scheme's version.
        about: what the set was made from: versions, hashes of texts and formulas, seed. No name.
    """

    cohort: int
    set_id: str
    held_on: date
    scheme: str | None = None
    version: int | None = None
    about: Mapping[str, object] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class NewPaper:
    """One candidate's paper.

    Args:
        person: id.
        number: printed on it.
        language: code.
        content: what it asks, with the key: `{"format": 1, "items": [...]}`. No name.
        pdf: the printed file.
    """

    person: int
    number: int
    language: str
    content: Mapping[str, object]
    pdf: bytes | None = None


@dataclass(frozen=True, slots=True)
class Paper:
    """A paper as the archive holds it; name and PDF are None for whom nothing is kept any more."""

    id: int
    person: int
    name: str | None
    number: int
    attempt: int
    language: str
    content: str
    pdf: bytes | None


def papers_of(
    record: Record, people_by_name: Mapping[str, int], pdfs: Mapping[int, bytes] | None = None
) -> tuple[NewPaper, ...]:
    """The papers of a printed set.

    Args:
        record: of the set.
        people_by_name: ids by name as on the class list.
        pdfs: printed files by the number on them.

    Raises:
        RefusedError: a name of the record that nobody here has.
    """
    known = {same_name(name): key for name, key in people_by_name.items()}
    strangers = [learner.name for learner in record.learners if same_name(learner.name) not in known]
    if strangers:
        raise RefusedError(
            f"the set has papers for {', '.join(strangers[:5])}, who are no candidates here: read the class list first"
        )
    return tuple(
        NewPaper(
            known[same_name(learner.name)],
            learner.number,
            learner.language,
            {"format": 1, "items": [item.model_dump(mode="json") for item in learner.items]},
            (pdfs or {}).get(learner.number),
        )
        for learner in record.learners
    )


def about_set(record: Record) -> dict[str, object]:
    """What a printed set was made from, without its learners."""
    return record.model_dump(mode="json", exclude={"learners"})


def archive_set(
    registry: Registry,
    cohort: int,
    record: Record,
    *,
    held_on: date,
    by: int,
    now: datetime,
    scheme: str | None = None,
    version: int | None = None,
    pdfs: Mapping[int, bytes] | None = None,
    retest: Retest | None = None,
    exception: str | None = None,
) -> int:
    """Archive a printed set for the candidates of a cohort; see `archive_papers`."""
    with reading(registry) as connection:
        known_cohort(connection, cohort)
        by_name = {name: key for key, name in candidates_of(connection, cohort).items()}
    sitting = NewSitting(cohort, record.set_id, held_on, scheme, version, about_set(record))
    made = papers_of(record, by_name, pdfs)
    return archive_papers(registry, sitting, made, by=by, now=now, retest=retest, exception=exception)


def archive_papers(
    registry: Registry,
    sitting: NewSitting,
    made: Sequence[NewPaper],
    *,
    by: int,
    now: datetime,
    retest: Retest | None = None,
    exception: str | None = None,
) -> int:
    """Archive the papers of a sitting: all of them or none; the same again changes nothing.

    Args:
        registry: where.
        sitting: the exam.
        made: its papers.
        by: a coordinator.
        now: the time.
        retest: the scheme's rule of trying again; None where there is none.
        exception: why those may sit whom that rule lets wait; recorded with their papers, and only with theirs.

    Returns:
        The sitting's id.

    Raises:
        RefusedError: no paper; two for one person or number; a person who is no candidate of the cohort; a set of this
            id that is not the same; `by` is no coordinator; somebody has to wait, has used up the tries, or came by
            neither route (all of them are named, and until when).
    """
    if not made:
        raise RefusedError("a sitting without papers can't be archived")
    for what, seen in (("number", [p.number for p in made]), ("person", [p.person for p in made])):
        twice = next((value for value in seen if seen.count(value) > 1), None) if len(set(seen)) < len(seen) else None
        if twice is not None:
            raise RefusedError(f"two papers have the {what} {twice}")
    with writing(registry, now) as entry:
        connection = entry.connection
        require_role(connection, by, "coordinator")
        known_cohort(connection, sitting.cohort)
        texts = {paper.number: canonical(paper.content) for paper in made}
        there = connection.execute(
            select(sittings.c.id, sittings.c.about).where(
                sittings.c.cohort == sitting.cohort, sittings.c.set_id == sitting.set_id
            )
        ).first()
        if there is not None:
            _same_or_refused(connection, there, sitting, made, texts)
            return int(there.id)
        row = {
            "cohort": sitting.cohort, "set_id": sitting.set_id, "scheme": sitting.scheme, "version": sitting.version,
            "about": canonical(sitting.about), "held_on": sitting.held_on.isoformat(),
        }  # fmt: skip
        waiting = _waiting(connection, sitting, made, retest, exception)
        key = int(entry.add(sittings, row, "sitting.archived", by, body={"papers": len(made)}))
        for paper in made:
            own = _archive(entry, key, sitting, paper, texts[paper.number], by)
            if paper.person in waiting:
                noted = {"paper": own, "reason": str(exception).strip(), "noted_at": entry.at, "noted_by": by}
                entry.add(retest_exceptions, noted, "retest.excepted", by, person=paper.person)
        return key


def _waiting(
    connection: Connection,
    sitting: NewSitting,
    made: Sequence[NewPaper],
    retest: Retest | None,
    exception: str | None,
) -> set[int]:
    """Who sits only by an exception.

    Raises:
        RefusedError: there is none for them; somebody's application by experience is not accepted.
    """
    if sitting.scheme is None:
        return set()
    closed: list[str] = []
    waiting: dict[int, str] = {}
    for paper in made:
        name = known_person(connection, paper.person).name
        if (why := not_let_in(connection, paper.person, sitting.scheme)) is not None:
            closed.append(f"{name}: {why}")
        if retest is None:
            continue
        why = why_not_again(connection, paper.person, sitting.scheme, retest, sitting.held_on)
        if why is not None:
            waiting[paper.person] = f"{name} (person {paper.person}) {why}"
    if closed:
        raise RefusedError("; ".join(closed))
    if waiting and not (exception or "").strip():
        raise RefusedError(f"{'; '.join(waiting.values())}. Leave them out, or record an exception with its reason")
    return set(waiting)


def _archive(entry: Entry, sitting: int, exam: NewSitting, paper: NewPaper, text: str, by: int) -> int:
    connection = entry.connection
    known_person(connection, paper.person)
    if "candidate" not in roles_in(connection, exam.cohort, paper.person):
        raise RefusedError(f"person {paper.person} is no candidate of the cohort: enter them first")
    content = sha256(text)
    if not connection.execute(select(contents.c.hash).where(contents.c.hash == content)).first():
        connection.execute(insert(contents).values(hash=content, data=text.encode("utf-8")))
        if (key := packed(json.loads(text))) is not None:  # out of the text, whose order is its own
            connection.execute(insert(marking_keys).values(content=content, data=key))
    earlier = connection.execute(
        select(func.count())
        .select_from(papers.join(sittings, sittings.c.id == papers.c.sitting))
        .where(papers.c.person == paper.person, sittings.c.scheme == exam.scheme)
    ).scalar_one()
    row = {
        "sitting": sitting, "person": paper.person, "number": paper.number, "attempt": earlier + 1,
        "language": paper.language, "content": content,
    }  # fmt: skip
    key = entry.add(papers, row, "paper.archived", by)
    if paper.pdf is not None:
        file = {"paper": key, "pdf_hash": sha256(paper.pdf), "pdf": paper.pdf}
        entry.add(paper_files, file, "paper.printed", by, person=paper.person)
    return int(key)


def _same_or_refused(
    connection: Connection, there: Any, sitting: NewSitting, made: Sequence[NewPaper], texts: Mapping[int, str]
) -> None:
    rows = connection.execute(
        select(papers.c.number, papers.c.person, papers.c.content).where(papers.c.sitting == there.id)
    )
    before = {row.number: (row.person, row.content) for row in rows}
    again = {paper.number: (paper.person, sha256(texts[paper.number])) for paper in made}
    if there.about != canonical(sitting.about) or before != again:
        raise RefusedError(
            f"the set {sitting.set_id} is archived already, with other papers, times or forms: "
            "print a new set, with its own id, or print this one again with --reprint"
        )


def read_papers(registry: Registry, sitting: int) -> tuple[Paper, ...]:
    """The papers of a sitting, by number.

    Raises:
        RefusedError: there is no such sitting.
    """
    with reading(registry) as connection:
        known_sitting(connection, sitting)
        return tuple(
            Paper(
                row.id, row.person, row.name, row.number, row.attempt, row.language, row.data.decode("utf-8"), row.pdf
            )
            for row in connection.execute(
                select(papers, people.c.name, contents.c.data, paper_files.c.pdf)
                .join(people, people.c.id == papers.c.person)
                .join(contents, contents.c.hash == papers.c.content)
                .outerjoin(paper_files, paper_files.c.paper == papers.c.id)
                .where(papers.c.sitting == sitting)
                .order_by(papers.c.number)
            )
        )


def known_sitting(connection: Connection, sitting: int) -> Any:
    """A sitting's row.

    Raises:
        RefusedError: there is none of this id.
    """
    row = connection.execute(select(sittings).where(sittings.c.id == sitting)).first()
    if row is None:
        raise RefusedError(f"there is no sitting {sitting} in this registry")
    return row
