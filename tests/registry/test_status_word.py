"""A registry that calls a scheme `approved` is brought up to the one word that a scheme's file says."""

from __future__ import annotations

from sqlalchemy import text

from generator.registry import audit
from generator.registry.chain import digest
from generator.registry.migrate import NEWEST
from generator.registry.tables import SEALED
from tests.registry.small import Office, open_at, scalar

_OLD, _NEW = "'provisional', 'approved')", "'provisional', 'in-force')"


def as_before(office: Office) -> None:
    """The tables, the row and its seal as the first edition had them; the chain is written anew around it."""
    with office.registry.engine.begin() as connection:
        version = int(connection.execute(text("pragma schema_version")).scalar_one())
        connection.execute(text("pragma writable_schema = on"))
        change = "update sqlite_master set sql = replace(sql, :new, :old) where name = 'decisions'"
        connection.execute(text(change), {"new": _NEW, "old": _OLD})
        connection.execute(text(f"pragma schema_version = {version + 1}"))
        connection.execute(text("pragma writable_schema = off"))
        connection.execute(text("update decisions set scheme_status = 'approved'"))
        connection.execute(text("update alembic_version set version_num = '0002_ways_in'"))


def test_the_former_word_is_changed_and_nothing_else(office: Office) -> None:
    office.decide("Asha")
    as_before(office)
    assert scalar(office.registry, "select scheme_status from decisions") == "approved"
    office.registry.engine.dispose()
    again = open_at(office.registry.place)
    assert scalar(again, "select scheme_status from decisions") == "in-force"
    assert scalar(again, "select version_num from alembic_version") == NEWEST
    assert scalar(again, "pragma integrity_check") == "ok"
    assert list(audit(again)) == []


def test_what_was_sealed_with_the_former_word_is_no_damage(office: Office) -> None:
    """And any other word is."""
    from generator.registry.audit import _seals

    row = dict.fromkeys(SEALED["decisions"], 1) | {"scheme_status": "in-force"}
    before = digest({**row, "scheme_status": "approved"}, SEALED["decisions"])
    assert before in _seals("decisions", row)
    assert before not in _seals("decisions", {**row, "scheme_status": "provisional"})
    assert digest({**row, "scheme_status": "draft"}, SEALED["decisions"]) not in _seals("decisions", row)
