"""A registry of each earlier edition, with rows in all of its tables, is brought up on a file and on a server."""

from __future__ import annotations

import itertools
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import text
from sqlalchemy.exc import IntegrityError

from generator.registry import audit, audit_backup, backup, chain_head, import_answers, restore
from generator.registry.chain import digest
from generator.registry.migrate import NEWEST
from generator.registry.tables import METADATA, SEALED
from tests.registry.everything import fill_second_look, fill_ways
from tests.registry.older import STEPS, former_registry
from tests.registry.server import new_database
from tests.registry.small import Office, open_at, scalar, small_marker, typed_right

FOLDER = Path(__file__).parents[2] / "generator/registry/migrations"
_COUNT = itertools.count(1)


@pytest.fixture(params=["file", "server"])
def place(request: pytest.FixtureRequest, tmp_path: Path) -> Path | str:
    """Where the older registry lies."""
    if request.param == "file":
        return tmp_path / "older.sqlite"
    return new_database(request.getfixturevalue("servers"), f"older_{next(_COUNT)}")


def test_every_step_but_the_newest_is_tried() -> None:
    steps = [script.revision for script in ScriptDirectory(str(FOLDER)).walk_revisions()]
    assert steps == [NEWEST, *reversed(STEPS)]


@pytest.mark.parametrize("step", STEPS)
def test_it_is_brought_up_and_goes_on(place: Path | str, step: str, tmp_path: Path) -> None:
    office = former_registry(tmp_path, place, step)
    assert scalar(office.registry, "select version_num from alembic_version") == step
    words = "approved" if step < "0003" else "in-force"
    assert scalar(office.registry, "select min(scheme_status) from decisions") == words
    head = chain_head(office.registry)
    rows = scalar(office.registry, "select count(*) from answers")
    office.registry.close()
    with open_at(place) as again:
        assert scalar(again, "select version_num from alembic_version") == NEWEST
        assert scalar(again, "select min(scheme_status) from decisions") == "in-force"
        assert scalar(again, "select count(*) from answers") == rows > 0
        assert chain_head(again) == head
        assert audit(again, heads=[head]) == ()
        with again.engine.connect() as connection:
            assert compare_metadata(MigrationContext.configure(connection), METADATA) == []
        if not again.is_server:
            assert scalar(again, "pragma integrity_check") == "ok"
        went_on(Office(again, office.now, office.ids, office.cohort), step)


def went_on(office: Office, step: str) -> None:
    """What was archived before is marked as before; new rows come after the old ones; the rules hold."""
    typed = typed_right(office.record())
    again = import_answers(
        office.registry, 1, "a.csv", typed, by=office.boss, now=office.tick(), marker=small_marker
    )  # fmt: skip
    assert (again.new, again.same) == (0, 39)
    if step == "0001":
        fill_ways(office)
    fill_second_look(office)
    office.decide("Bir", inputs={"rule": {}})
    with pytest.raises(IntegrityError), office.registry.engine.begin() as connection:
        connection.execute(text("update decisions set scheme_status = 'approved'"))
    assert audit(office.registry) == ()


@pytest.mark.parametrize("step", STEPS)
def test_a_backup_of_it_is_restored(step: str, tmp_path: Path, servers: str) -> None:
    office = former_registry(tmp_path, tmp_path / "older.sqlite", step)
    kept = tmp_path / "kept.zip"
    backup(office.registry, kept, now=office.tick())
    assert audit_backup(kept) == ()
    for place in (tmp_path / "again.sqlite", new_database(servers, f"restored_{next(_COUNT)}")):
        restore(kept, place, now=office.tick())
        with open_at(place) as again:
            assert audit(again) == ()


def test_what_was_sealed_with_the_former_word_is_no_damage() -> None:
    """And any other word is."""
    from generator.registry.audit import _seals

    row = dict.fromkeys(SEALED["decisions"], 1) | {"scheme_status": "in-force"}
    before = digest({**row, "scheme_status": "approved"}, SEALED["decisions"])
    assert before in _seals("decisions", row)
    assert before not in _seals("decisions", {**row, "scheme_status": "provisional"})
    assert digest({**row, "scheme_status": "draft"}, SEALED["decisions"]) not in _seals("decisions", row)
