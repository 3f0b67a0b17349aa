"""Trying again: how long a candidate waits after a try, how often they may try, and the exception that lets them."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta

from sqlalchemy import Connection, select

from generator.curriculum.models import Retest
from generator.registry.decisions import was_set_aside
from generator.registry.store import Registry, reading
from generator.registry.tables import decisions, papers, retest_exceptions, sittings


@dataclass(frozen=True, slots=True)
class Try:
    """One paper that counts as a try.

    Args:
        paper: its id.
        day: on which it was decided; before that, on which it was sat.
    """

    paper: int
    day: date


def tries_of(connection: Connection, person: int, scheme: str) -> tuple[Try, ...]:
    """A person's tries at a scheme since they last passed, in the order in which they sat.

    A paper whose decision an appeal set aside is no try; neither is one before a pass: renewing begins anew.
    """
    newest: dict[int, tuple[bool, bool, date]] = {}
    chosen = select(decisions).where(decisions.c.person == person, decisions.c.scheme == scheme)
    for row in connection.execute(chosen.order_by(decisions.c.id)):
        aside = was_set_aside(connection, row.id)
        for paper in json.loads(row.papers):
            newest[paper] = (bool(row.passed), aside, date.fromisoformat(row.decided_at[:10]))
    found: list[Try] = []
    sat = (
        select(papers.c.id, sittings.c.held_on)
        .join(sittings, sittings.c.id == papers.c.sitting)
        .where(papers.c.person == person, sittings.c.scheme == scheme)
        .order_by(sittings.c.held_on, papers.c.id)
    )
    for paper, held_on in connection.execute(sat):
        passed, aside, day = newest.get(paper, (False, False, date.fromisoformat(held_on)))
        if passed and not aside:
            found.clear()
        elif not aside:
            found.append(Try(paper, day))
    return tuple(found)


def why_not_again(connection: Connection, person: int, scheme: str, retest: Retest, day: date) -> str | None:
    """Why a person can't sit again on a day, and until when; None where they may."""
    tried = tries_of(connection, person, scheme)
    if not tried:
        return None
    if len(tried) >= retest.most:
        return f"has tried {len(tried)} times, and the scheme allows {retest.most}: no date ends that"
    free = max(each.day for each in tried) + timedelta(days=retest.wait_days)
    if day < free:
        return f"may try again from {free} on: the scheme asks to practise for {retest.wait_days} days first"
    return None


def excepted(registry: Registry) -> Mapping[int, str]:
    """Papers that were given out by a recorded exception, with its reason (empty where it was erased)."""
    with reading(registry) as connection:
        rows = connection.execute(select(retest_exceptions.c.paper, retest_exceptions.c.reason))
        return {paper: reason or "" for paper, reason in rows}
