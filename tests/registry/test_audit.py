"""Each kind of damage that someone with the file and no right could do is found, and named."""

# ruff: noqa: S608 (the statements are those of someone who has the file and no right)

from __future__ import annotations

import pytest
from sqlalchemy import select

from generator.registry import (
    Head,
    audit,
    chain_head,
    erase_person,
)
from generator.registry.chain import canonical, event_hash, start_of
from generator.registry.tables import events
from tests.registry.small import START, Office, rewrite

DAMAGES = [
    ("update events set body = '{}' where seq = 9", "event-changed"),
    ("update events set actor = 3 where seq = 9", "event-changed"),
    ("update events set at = '2030-01-01T00:00:00.000000Z' where seq = 9", "event-changed"),
    ("update events set hash = 'x' where seq = 9", "chain-broken"),
    ("update events set previous = 'x' where seq = 9", "chain-broken"),
    ("delete from events where seq = 9", "event-missing"),
    ("delete from events where seq = (select max(seq) from events)", "head-differs"),
    ("update info set value = '5' where name = 'head_seq'", "head-differs"),
    ("update info set value = 'x' where name = 'head_hash'", "head-differs"),
    ("update info set value = 'other' where name = 'id'", "chain-broken"),
    ("update payloads set payload = '{}' where event = 2", "payload-changed"),
    ("update payloads set salt = 'x' where event = 2", "payload-changed"),
    ("delete from payloads where event = 2", "payload-lost"),
    ("insert into payloads values (1, null, '{}', 'x')", "payload-put-in"),
    ("update people set name = 'Someone' where id = 5", "personal-changed"),
    ("update people set consent_on = '2020-01-01' where id = 6", "personal-changed"),
    ("insert into people (id, name) values (99, 'Nobody')", "personal-put-in"),
    ("delete from people where id = 4", "orphan"),
    ("delete from people where id = 4", "row-lost"),
    ("update roles set person = 5 where id = 1", "row-changed"),
    ("update roles set until = '2031-01-01' where id = 2", "state-changed"),
    ("insert into roles values (99, 5, 'coordinator', '2031-01-01', null)", "row-put-in"),
    ("delete from memberships where id = 1", "row-lost"),
    ("update cohorts set starts_on = '2020-01-01'", "row-changed"),
    ("update sittings set about = '{}'", "row-changed"),
    ("update papers set attempt = 7 where id = 1", "row-changed"),
    ("update papers set content = 'x' where id = 1", "orphan"),
    ("update contents set data = 'x' where hash = (select content from papers where id = 1)", "content-changed"),
    ("insert into contents values ('2d711642b726b04401627ca9fbac32f5c8530fb1903cc4db02258717921a4881', 'x')",
     "content-put-in"),
    ("update marking_keys set data = 'x'", "key-changed"),
    ("update paper_files set pdf = 'x'", "pdf-changed"),
    ("update paper_files set pdf_hash = 'x'", "personal-changed"),
    ("delete from paper_files", "row-lost"),
    ("update answers set verdict = 'right' where paper = 1 and label = 8", "answers-changed"),
    ("update answers set points = 5 where paper = 2 and label = 1", "answers-changed"),
    ("delete from answers where paper = 1 and label = 1", "answers-changed"),
    ("delete from batches where paper = 1", "answers-put-in"),
    ("delete from batches where paper = 1", "import-changed"),
    ("update batches set salt = null where paper = 1", "answers-changed"),
    ("update observations set seen = 'done'", "import-changed"),
    ("delete from observations where id = 1", "import-changed"),
    ("update cuts set written = 0.1", "row-changed"),
    ("update decisions set reasons = '[]' where id = 1", "row-changed"),
    ("delete from decisions where id = 1", "orphan"),
    ("update decision_inputs set inputs = '{}'", "row-changed"),
    ("delete from decision_inputs", "row-lost"),
    ("update applications set tanks = 9", "row-changed"),
    ("update applications set outcome = 'refused'", "state-changed"),
    ("update applications set exception = 'x'", "state-changed"),
    ("update applications set evidence = 'x'", "personal-changed"),
    ("update retest_exceptions set noted_at = '2020-01-01'", "row-changed"),
    ("update retest_exceptions set reason = 'x'", "personal-changed"),
    ("delete from retest_exceptions", "row-lost"),
    ("update rechecks set seen = 'not done'", "row-changed"),
    ("delete from rechecks", "row-lost"),
    ("delete from rechecks", "orphan"),
    ("update recheck_seconds set seen = 'not done'", "row-changed"),
    ("update recheck_seconds set observer = 4", "row-changed"),
    ("delete from recheck_seconds", "row-lost"),
    ("update certificates set valid_to = '2099-01-01' where serial = 1", "row-changed"),
    ("update certificates set status = 'active' where serial = 2", "state-changed"),
    ("update certificates set status = 'active' where serial = 2", "status-differs"),
    ("update certificates set printed_name = 'Someone' where serial = 1", "personal-changed"),
    ("update certificates set signed = 'x' where serial = 1", "signed-changed"),
    ("update certificates set signed = null where serial = 1", "signed-lost"),
    ("update certificates set person = 7 where serial = 1", "no-right"),
    ("update certificate_changes set becomes = 'active' where id = 3", "impossible-change"),
    ("update certificate_changes set at = '2020-01-01' where id = 3", "impossible-change"),
    ("update certificate_changes set was = 'expired' where id = 3", "impossible-change"),
    ("delete from certificate_changes where id = 2", "impossible-change"),
    ("update counters set next = 1 where name = 'C'", "number-again"),
    ("update counters set next = 1 where name = 'T'", "number-again"),
    ("update tanks set plan = '{}'", "plan-changed"),
    ("update tanks set place = 'elsewhere'", "row-changed"),
    ("update tank_people set part = 'checked' where id = 1", "row-changed"),
    ("update hold_points set verdict = 'good' where id = 1", "row-changed"),
    ("delete from hold_points where id = 1", "row-lost"),
    ("update leak_tests set drop_mm = 0", "row-changed"),
    ("update photos set sha256 = 'x'", "row-changed"),
    ("update complaints set tank = null, certificate = 'x'", "row-changed"),
    ("update complaints set closed_at = '2031-06-01'", "state-changed"),
    ("update appeals set outcome = 'set_aside'", "state-changed"),
    ("update appeals set grounds = 'x'", "personal-changed"),
    ("update complaints set about = 'all is well'", "personal-changed"),
]  # fmt: skip


@pytest.mark.parametrize(("damage", "code"), DAMAGES)
def test_damage_is_found_and_named(full_office: Office, damage: str, code: str) -> None:
    registry = full_office.registry
    assert audit(registry) == ()
    rewrite(registry, damage)
    assert code in {finding.code for finding in audit(registry)}


@pytest.mark.parametrize("code", sorted({code for _, code in DAMAGES}))
def test_on_a_server_it_is_found_as_well(full_shared_office: Office, code: str) -> None:
    registry = full_shared_office.registry
    assert audit(registry) == ()
    damage = next(damage for damage, own in DAMAGES if own == code)
    rewrite(registry, damage)
    assert code in {finding.code for finding in audit(registry)}


def test_one_changed_letter_is_one_finding_in_words(full_office: Office) -> None:
    registry = full_office.registry
    rewrite(registry, "update tanks set place = 'Lower terrace'")
    (finding,) = audit(registry)
    assert finding.where.startswith(f"tanks:{registry.code}-T000001-")
    assert str(finding).endswith("the row was changed without an event [row-changed]")


def test_events_cut_off_at_the_end_show_by_a_signed_head(office: Office) -> None:
    """Someone who also mends the noted head is caught only by a head that was signed before."""
    registry = office.registry
    head = chain_head(registry)
    with registry.engine.connect() as connection:
        kept = connection.execute(select(events).where(events.c.seq == head.seq - 2)).one()
    rewrite(
        registry,
        "delete from memberships where id > (select max(id) - 1 from memberships)",
        f"delete from people where id = {office.ids['Cheptoo']}",
        f"delete from payloads where event > {kept.seq}",
        f"delete from events where seq > {kept.seq}",
        f"update info set value = '{kept.seq}' where name = 'head_seq'",
        f"update info set value = '{kept.hash}' where name = 'head_hash'",
    )
    assert audit(registry) == ()
    assert [finding.code for finding in audit(registry, heads=[head])] == ["head-not-on-chain"]


def test_a_whole_chain_written_anew_shows_by_a_signed_head(office: Office) -> None:
    registry = office.registry
    head = chain_head(registry)
    previous, statements = start_of(registry.id), []
    with registry.engine.connect() as connection:
        rows = [dict(row) for row in connection.execute(select(events).order_by(events.c.seq)).mappings()]
    for row in rows:
        if row["kind"] == "registry.began":
            row["body"] = canonical({"code": "XXXX"})
        row["previous"], row["hash"] = previous, event_hash(row, previous)
        new = f"body = '{row['body']}', previous = '{row['previous']}', hash = '{row['hash']}'"
        statements.append(f"update events set {new} where seq = {row['seq']}")
        previous = row["hash"]
    rewrite(registry, *statements, f"update info set value = '{previous}' where name = 'head_hash'")
    assert audit(registry) == ()
    assert [finding.code for finding in audit(registry, heads=[head])] == ["head-not-on-chain"]
    other = Head("another", 1, "x")
    assert [finding.code for finding in audit(registry, heads=[other])] == ["other-registry"]


def test_a_time_before_the_one_before_is_found(office: Office) -> None:
    """Also where the hashes were made anew for it."""
    registry = office.registry
    head = chain_head(registry)
    with registry.engine.connect() as connection:
        row = dict(connection.execute(select(events).where(events.c.seq == head.seq)).mappings().one())
    row["at"] = START.strftime("%Y-%m-%dT%H:%M:%S.%fZ")
    fresh = event_hash(row, row["previous"])
    rewrite(
        registry,
        f"update events set at = '{row['at']}', hash = '{fresh}' where seq = {head.seq}",
        f"update info set value = '{fresh}' where name = 'head_hash'",
    )
    assert [finding.code for finding in audit(registry)] == ["clock-back"]


def test_what_was_erased_by_the_rules_is_no_damage_but_more_is(full_office: Office) -> None:
    registry = full_office.registry
    erase_person(registry, full_office.ids["Bir"], by=full_office.boss, reason="own wish", now=full_office.tick())
    erase_person(registry, full_office.ids["Cheptoo"], by=full_office.boss, reason="own wish", now=full_office.tick())
    assert audit(registry) == ()
    rewrite(registry, "update answers set answer = 'x' where paper = 3 and label = 1")
    assert [finding.code for finding in audit(registry)] == ["answers-changed"]
    rewrite(registry, "update answers set answer = null", "delete from payloads where person = 5")
    assert "payload-lost" in {finding.code for finding in audit(registry)}
