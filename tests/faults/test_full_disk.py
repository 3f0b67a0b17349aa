"""A disk that fills up in the middle of the work: it is said in words, and what was told as kept is there."""

from __future__ import annotations

from pathlib import Path

import pytest
from sqlalchemy import event

from generator.problems import MachineError
from generator.registry import audit, backup, chain_head, read_backup
from tests.faults.conftest import Victim
from tests.faults.test_kills import look
from tests.registry.small import Office, open_at


@pytest.mark.parametrize("pages", range(6))
def test_a_full_database_is_said_in_words(victim: Victim, pages: int) -> None:
    victim(0)
    found = victim(1, pages=pages)
    assert not found["killed"]
    assert found["code"] == 4 or pages > 0  # one round needs few pages, and finds room in half-empty ones
    if found["code"] == 4:
        assert "the disk is full; free some space, then do it again" in found["said"].pop()[1]
    look(victim, 1, found["said"])
    assert victim(1)["code"] == 0


@pytest.mark.parametrize("kilobytes", [8, 40, 100, 200, 300, 400])
def test_a_file_that_may_not_grow_is_said_in_words(victim: Victim, kilobytes: int) -> None:
    """The side file of the database, the database, and the backup run against the limit, each in turn."""
    victim(0)
    kept = read_backup(victim.kept).head
    found = victim(1, largest_file=kilobytes * 1024)
    assert not found["killed"]
    if found["code"] == 4:
        words = found["said"].pop()[1]
        assert "disk" in words or "File too large" in words
    look(victim, 1, [line for line in found["said"] if line[0] != "points"])
    assert read_backup(victim.kept).head.seq >= kept.seq
    assert not list(victim.kept.parent.glob(".backup-*"))
    assert victim(1)["code"] == 0


def test_the_limits_above_are_met(victim: Victim) -> None:
    victim(0)
    assert victim(1, largest_file=40 * 1024)["code"] == 4


def test_an_import_that_does_not_fit_leaves_nothing(template: Path) -> None:
    """Within one process: the same connection goes on working once there is room."""
    with open_at(template) as registry:
        office = Office(registry, ids={"Meera": 1, "Asha": 5, "Bir": 6, "Cheptoo": 7}, cohort=1)
        office.tick(hours=1)

        @event.listens_for(registry.engine, "connect")
        def limit(connection: object, _record: object) -> None:
            pages = connection.execute("pragma page_count").fetchone()[0]  # type: ignore[attr-defined]
            connection.execute(f"pragma max_page_count = {pages}")  # type: ignore[attr-defined]

        registry.engine.dispose()
        head = chain_head(registry)
        said = ""
        while not said:
            try:
                office.tank()
            except MachineError as error:
                said = str(error)
        assert "the disk is full" in said
        assert audit(registry, heads=[head]) == ()
        before = chain_head(registry)
        event.remove(registry.engine, "connect", limit)
        registry.engine.dispose()
        office.tank()
        assert chain_head(registry).seq == before.seq + 1
        backup(registry, template.parent / "kept.zip", now=office.tick())
