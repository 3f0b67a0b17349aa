"""The first tables, and the triggers that keep what may never change or go."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None

_NEVER_CHANGED = ("events", "certificate_changes", "hold_points")
_NEVER_DELETED = ("certificates", "tanks", "decisions", "counters")


def upgrade() -> None:
    """Make the tables."""
    op.create_table(
        "cohorts",
        sa.Column("id", sa.Integer(), autoincrement=True, nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("starts_on", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_cohorts")),
        sa.UniqueConstraint("name", name=op.f("uq_cohorts_name")),
    )
    op.create_table(
        "contents",
        sa.Column("hash", sa.Text(), nullable=False),
        sa.Column("data", sa.LargeBinary(), nullable=False),
        sa.PrimaryKeyConstraint("hash", name=op.f("pk_contents")),
    )
    op.create_table(
        "counters",
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("next", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("name", name=op.f("pk_counters")),
    )
    op.create_table(
        "info",
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("value", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("name", name=op.f("pk_info")),
    )
    op.create_table(
        "people",
        sa.Column("id", sa.Integer(), autoincrement=True, nullable=False),
        sa.Column("name", sa.Text(), nullable=True),
        sa.Column("name_key", sa.Text(), nullable=True),
        sa.Column("language", sa.Text(), nullable=True),
        sa.Column("consent_on", sa.Text(), nullable=True),
        sa.Column("public_name", sa.Text(), nullable=True),
        sa.Column("accommodations", sa.Text(), nullable=True),
        sa.Column("erased_at", sa.Text(), nullable=True),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_people")),
    )
    op.create_index(op.f("ix_people_name_key"), "people", ["name_key"], unique=False)
    op.create_table(
        "cuts",
        sa.Column("id", sa.Integer(), autoincrement=True, nullable=False),
        sa.Column("scheme", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("method", sa.Text(), nullable=False),
        sa.Column("written", sa.Double(), nullable=False),
        sa.Column("practical", sa.Double(), nullable=False),
        sa.Column("judges", sa.Integer(), nullable=False),
        sa.Column("recorded_at", sa.Text(), nullable=False),
        sa.Column("recorded_by", sa.Integer(), nullable=False),
        sa.CheckConstraint("judges >= 1", name=op.f("ck_cuts_judges")),
        sa.ForeignKeyConstraint(["recorded_by"], ["people.id"], name=op.f("fk_cuts_recorded_by")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_cuts")),
    )
    op.create_table(
        "events",
        sa.Column("seq", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("at", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("subject", sa.Text(), nullable=False),
        sa.Column("actor", sa.Integer(), nullable=True),
        sa.Column("body", sa.Text(), nullable=False),
        sa.Column("personal", sa.Text(), nullable=True),
        sa.Column("previous", sa.Text(), nullable=False),
        sa.Column("hash", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["actor"], ["people.id"], name=op.f("fk_events_actor")),
        sa.PrimaryKeyConstraint("seq", name=op.f("pk_events")),
        sa.UniqueConstraint("hash", name=op.f("uq_events_hash")),
    )
    op.create_index(op.f("ix_events_subject"), "events", ["subject"], unique=False)
    op.create_table(
        "memberships",
        sa.Column("id", sa.Integer(), autoincrement=True, nullable=False),
        sa.Column("cohort", sa.Integer(), nullable=False),
        sa.Column("person", sa.Integer(), nullable=False),
        sa.Column("role", sa.Text(), nullable=False),
        sa.CheckConstraint("role in ('candidate', 'trainer', 'observer')", name=op.f("ck_memberships_role")),
        sa.ForeignKeyConstraint(["cohort"], ["cohorts.id"], name=op.f("fk_memberships_cohort")),
        sa.ForeignKeyConstraint(["person"], ["people.id"], name=op.f("fk_memberships_person")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_memberships")),
        sa.UniqueConstraint("cohort", "person", "role", name=op.f("uq_memberships_cohort_person_role")),
    )
    op.create_index(op.f("ix_memberships_person"), "memberships", ["person"], unique=False)
    op.create_table(
        "roles",
        sa.Column("id", sa.Integer(), autoincrement=True, nullable=False),
        sa.Column("person", sa.Integer(), nullable=False),
        sa.Column("role", sa.Text(), nullable=False),
        sa.Column("since", sa.Text(), nullable=False),
        sa.Column("until", sa.Text(), nullable=True),
        sa.CheckConstraint("role in ('candidate', 'trainer', 'observer', 'coordinator')", name=op.f("ck_roles_role")),
        sa.ForeignKeyConstraint(["person"], ["people.id"], name=op.f("fk_roles_person")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_roles")),
    )
    op.create_index(op.f("ix_roles_person"), "roles", ["person"], unique=False)
    op.create_table(
        "sittings",
        sa.Column("id", sa.Integer(), autoincrement=True, nullable=False),
        sa.Column("cohort", sa.Integer(), nullable=False),
        sa.Column("set_id", sa.Text(), nullable=False),
        sa.Column("scheme", sa.Text(), nullable=True),
        sa.Column("version", sa.Integer(), nullable=True),
        sa.Column("about", sa.Text(), nullable=False),
        sa.Column("held_on", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["cohort"], ["cohorts.id"], name=op.f("fk_sittings_cohort")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_sittings")),
        sa.UniqueConstraint("cohort", "set_id", name=op.f("uq_sittings_cohort_set_id")),
    )
    op.create_table(
        "tanks",
        sa.Column("number", sa.Text(), nullable=False),
        sa.Column("serial", sa.Integer(), nullable=False),
        sa.Column("place", sa.Text(), nullable=False),
        sa.Column("plan_version", sa.Text(), nullable=False),
        sa.Column("plan", sa.Text(), nullable=False),
        sa.Column("plan_hash", sa.Text(), nullable=False),
        sa.Column("volume", sa.Double(), nullable=False),
        sa.Column("wall_height", sa.Double(), nullable=False),
        sa.Column("started_on", sa.Text(), nullable=False),
        sa.Column("entered_at", sa.Text(), nullable=False),
        sa.Column("entered_by", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["entered_by"], ["people.id"], name=op.f("fk_tanks_entered_by")),
        sa.PrimaryKeyConstraint("number", name=op.f("pk_tanks")),
        sa.UniqueConstraint("serial", name=op.f("uq_tanks_serial")),
    )
    op.create_table(
        "decisions",
        sa.Column("id", sa.Integer(), autoincrement=True, nullable=False),
        sa.Column("person", sa.Integer(), nullable=False),
        sa.Column("cohort", sa.Integer(), nullable=False),
        sa.Column("scheme", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("scheme_status", sa.Text(), nullable=False),
        sa.Column("cut", sa.Integer(), nullable=True),
        sa.Column("passed", sa.Boolean(), nullable=False),
        sa.Column("reasons", sa.Text(), nullable=False),
        sa.Column("papers", sa.Text(), nullable=False),
        sa.Column("attempt", sa.Integer(), nullable=False),
        sa.Column("decided_at", sa.Text(), nullable=False),
        sa.Column("decided_by", sa.Integer(), nullable=False),
        sa.Column("exception", sa.Text(), nullable=True),
        sa.CheckConstraint(
            "scheme_status in ('draft', 'provisional', 'approved')", name=op.f("ck_decisions_scheme_status")
        ),
        sa.ForeignKeyConstraint(["cohort"], ["cohorts.id"], name=op.f("fk_decisions_cohort")),
        sa.ForeignKeyConstraint(["cut"], ["cuts.id"], name=op.f("fk_decisions_cut")),
        sa.ForeignKeyConstraint(["decided_by"], ["people.id"], name=op.f("fk_decisions_decided_by")),
        sa.ForeignKeyConstraint(["person"], ["people.id"], name=op.f("fk_decisions_person")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_decisions")),
    )
    op.create_index(op.f("ix_decisions_person"), "decisions", ["person"], unique=False)
    op.create_table(
        "hold_points",
        sa.Column("id", sa.Integer(), autoincrement=True, nullable=False),
        sa.Column("tank", sa.Text(), nullable=False),
        sa.Column("point", sa.Text(), nullable=False),
        sa.Column("verdict", sa.Text(), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.Column("signed_at", sa.Text(), nullable=False),
        sa.Column("signed_by", sa.Integer(), nullable=False),
        sa.CheckConstraint(
            "point in ('ground', 'base_steel_and_starters', 'cage_before_mortar', 'first_batch', "
            "'before_roof_pour', 'curing_day_7', 'leak_test')",
            name=op.f("ck_hold_points_point"),
        ),
        sa.CheckConstraint("verdict in ('good', 'not_good', 'does_not_apply')", name=op.f("ck_hold_points_verdict")),
        sa.ForeignKeyConstraint(["signed_by"], ["people.id"], name=op.f("fk_hold_points_signed_by")),
        sa.ForeignKeyConstraint(["tank"], ["tanks.number"], name=op.f("fk_hold_points_tank")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_hold_points")),
    )
    op.create_index(op.f("ix_hold_points_tank"), "hold_points", ["tank"], unique=False)
    op.create_table(
        "leak_tests",
        sa.Column("id", sa.Integer(), autoincrement=True, nullable=False),
        sa.Column("tank", sa.Text(), nullable=False),
        sa.Column("hours", sa.Double(), nullable=False),
        sa.Column("drop_mm", sa.Double(), nullable=False),
        sa.Column("tight", sa.Boolean(), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.Column("tested_at", sa.Text(), nullable=False),
        sa.Column("tested_by", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["tank"], ["tanks.number"], name=op.f("fk_leak_tests_tank")),
        sa.ForeignKeyConstraint(["tested_by"], ["people.id"], name=op.f("fk_leak_tests_tested_by")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_leak_tests")),
    )
    op.create_index(op.f("ix_leak_tests_tank"), "leak_tests", ["tank"], unique=False)
    op.create_table(
        "observations",
        sa.Column("id", sa.Integer(), autoincrement=True, nullable=False),
        sa.Column("event", sa.Integer(), nullable=False),
        sa.Column("cohort", sa.Integer(), nullable=False),
        sa.Column("person", sa.Integer(), nullable=False),
        sa.Column("practical", sa.Text(), nullable=False),
        sa.Column("step", sa.Text(), nullable=False),
        sa.Column("seen", sa.Text(), nullable=False),
        sa.Column("observer", sa.Integer(), nullable=False),
        sa.Column("attempt", sa.Integer(), nullable=False),
        sa.Column("observed_on", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["cohort"], ["cohorts.id"], name=op.f("fk_observations_cohort")),
        sa.ForeignKeyConstraint(["event"], ["events.seq"], name=op.f("fk_observations_event")),
        sa.ForeignKeyConstraint(["observer"], ["people.id"], name=op.f("fk_observations_observer")),
        sa.ForeignKeyConstraint(["person"], ["people.id"], name=op.f("fk_observations_person")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_observations")),
        sa.UniqueConstraint(
            "person",
            "practical",
            "step",
            "observer",
            "attempt",
            name=op.f("uq_observations_person_practical_step_observer_attempt"),
        ),
    )
    op.create_index(op.f("ix_observations_event"), "observations", ["event"], unique=False)
    op.create_table(
        "papers",
        sa.Column("id", sa.Integer(), autoincrement=True, nullable=False),
        sa.Column("sitting", sa.Integer(), nullable=False),
        sa.Column("person", sa.Integer(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("attempt", sa.Integer(), nullable=False),
        sa.Column("language", sa.Text(), nullable=False),
        sa.Column("content", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["content"], ["contents.hash"], name=op.f("fk_papers_content")),
        sa.ForeignKeyConstraint(["person"], ["people.id"], name=op.f("fk_papers_person")),
        sa.ForeignKeyConstraint(["sitting"], ["sittings.id"], name=op.f("fk_papers_sitting")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_papers")),
        sa.UniqueConstraint("sitting", "number", name=op.f("uq_papers_sitting_number")),
        sa.UniqueConstraint("sitting", "person", name=op.f("uq_papers_sitting_person")),
    )
    op.create_index(op.f("ix_papers_person"), "papers", ["person"], unique=False)
    op.create_table(
        "payloads",
        sa.Column("event", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("person", sa.Integer(), nullable=True),
        sa.Column("payload", sa.Text(), nullable=False),
        sa.Column("salt", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["event"], ["events.seq"], name=op.f("fk_payloads_event")),
        sa.ForeignKeyConstraint(["person"], ["people.id"], name=op.f("fk_payloads_person")),
        sa.PrimaryKeyConstraint("event", name=op.f("pk_payloads")),
    )
    op.create_index(op.f("ix_payloads_person"), "payloads", ["person"], unique=False)
    op.create_table(
        "photos",
        sa.Column("id", sa.Integer(), autoincrement=True, nullable=False),
        sa.Column("tank", sa.Text(), nullable=False),
        sa.Column("point", sa.Text(), nullable=True),
        sa.Column("sha256", sa.Text(), nullable=False),
        sa.Column("caption", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["tank"], ["tanks.number"], name=op.f("fk_photos_tank")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_photos")),
        sa.UniqueConstraint("tank", "sha256", name=op.f("uq_photos_tank_sha256")),
    )
    op.create_table(
        "answers",
        sa.Column("paper", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("label", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("event", sa.Integer(), nullable=False),
        sa.Column("item", sa.Text(), nullable=False),
        sa.Column("competency", sa.Text(), nullable=False),
        sa.Column("answer", sa.Text(), nullable=True),
        sa.Column("verdict", sa.Text(), nullable=False),
        sa.Column("points", sa.Integer(), nullable=False),
        sa.Column("most", sa.Integer(), nullable=False),
        sa.Column("misconceptions", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["paper"], ["papers.id"], name=op.f("fk_answers_paper")),
        sa.PrimaryKeyConstraint("paper", "label", name=op.f("pk_answers")),
        sqlite_with_rowid=False,
    )
    op.create_table(
        "appeals",
        sa.Column("id", sa.Integer(), autoincrement=True, nullable=False),
        sa.Column("decision", sa.Integer(), nullable=False),
        sa.Column("filed_at", sa.Text(), nullable=False),
        sa.Column("grounds", sa.Text(), nullable=True),
        sa.Column("outcome", sa.Text(), nullable=True),
        sa.Column("reasons", sa.Text(), nullable=True),
        sa.Column("decided_at", sa.Text(), nullable=True),
        sa.Column("decided_by", sa.Integer(), nullable=True),
        sa.CheckConstraint("outcome in ('stands', 'set_aside')", name=op.f("ck_appeals_outcome")),
        sa.ForeignKeyConstraint(["decided_by"], ["people.id"], name=op.f("fk_appeals_decided_by")),
        sa.ForeignKeyConstraint(["decision"], ["decisions.id"], name=op.f("fk_appeals_decision")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_appeals")),
    )
    op.create_index(
        "uq_appeals_open",
        "appeals",
        ["decision"],
        unique=True,
        sqlite_where=sa.text("outcome is null"),
        postgresql_where=sa.text("outcome is null"),
    )
    op.create_table(
        "batches",
        sa.Column("paper", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("event", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("answers", sa.Integer(), nullable=False),
        sa.Column("salt", sa.Text(), nullable=True),
        sa.Column("digest", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["event"], ["events.seq"], name=op.f("fk_batches_event")),
        sa.ForeignKeyConstraint(["paper"], ["papers.id"], name=op.f("fk_batches_paper")),
        sa.PrimaryKeyConstraint("paper", "event", name=op.f("pk_batches")),
    )
    op.create_index(op.f("ix_batches_event"), "batches", ["event"], unique=False)
    op.create_table(
        "certificates",
        sa.Column("number", sa.Text(), nullable=False),
        sa.Column("serial", sa.Integer(), nullable=False),
        sa.Column("person", sa.Integer(), nullable=False),
        sa.Column("decision", sa.Integer(), nullable=False),
        sa.Column("scheme", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("scope", sa.Text(), nullable=False),
        sa.Column("printed_name", sa.Text(), nullable=True),
        sa.Column("valid_from", sa.Text(), nullable=False),
        sa.Column("valid_to", sa.Text(), nullable=False),
        sa.Column("status", sa.Text(), nullable=False),
        sa.Column("signed", sa.LargeBinary(), nullable=True),
        sa.Column("signed_hash", sa.Text(), nullable=False),
        sa.Column("issued_at", sa.Text(), nullable=False),
        sa.Column("issued_by", sa.Integer(), nullable=False),
        sa.Column("renews", sa.Text(), nullable=True),
        sa.CheckConstraint(
            "status in ('active', 'suspended', 'withdrawn', 'expired', 'renewed')", name=op.f("ck_certificates_status")
        ),
        sa.ForeignKeyConstraint(["decision"], ["decisions.id"], name=op.f("fk_certificates_decision")),
        sa.ForeignKeyConstraint(["issued_by"], ["people.id"], name=op.f("fk_certificates_issued_by")),
        sa.ForeignKeyConstraint(["person"], ["people.id"], name=op.f("fk_certificates_person")),
        sa.ForeignKeyConstraint(["renews"], ["certificates.number"], name=op.f("fk_certificates_renews")),
        sa.PrimaryKeyConstraint("number", name=op.f("pk_certificates")),
        sa.UniqueConstraint("decision", name=op.f("uq_certificates_decision")),
        sa.UniqueConstraint("renews", name=op.f("uq_certificates_renews")),
        sa.UniqueConstraint("serial", name=op.f("uq_certificates_serial")),
    )
    op.create_index(
        "uq_certificates_in_force",
        "certificates",
        ["person", "scheme"],
        unique=True,
        sqlite_where=sa.text("status in ('active', 'suspended')"),
        postgresql_where=sa.text("status in ('active', 'suspended')"),
    )
    op.create_table(
        "paper_files",
        sa.Column("paper", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("pdf_hash", sa.Text(), nullable=False),
        sa.Column("pdf", sa.LargeBinary(), nullable=True),
        sa.ForeignKeyConstraint(["paper"], ["papers.id"], name=op.f("fk_paper_files_paper")),
        sa.PrimaryKeyConstraint("paper", name=op.f("pk_paper_files")),
    )
    op.create_table(
        "certificate_changes",
        sa.Column("id", sa.Integer(), autoincrement=True, nullable=False),
        sa.Column("certificate", sa.Text(), nullable=False),
        sa.Column("was", sa.Text(), nullable=True),
        sa.Column("becomes", sa.Text(), nullable=False),
        sa.Column("reason", sa.Text(), nullable=False),
        sa.Column("at", sa.Text(), nullable=False),
        sa.Column("by", sa.Integer(), nullable=False),
        sa.CheckConstraint(
            "becomes in ('active', 'suspended', 'withdrawn', 'expired', 'renewed')",
            name=op.f("ck_certificate_changes_becomes"),
        ),
        sa.ForeignKeyConstraint(["by"], ["people.id"], name=op.f("fk_certificate_changes_by")),
        sa.ForeignKeyConstraint(
            ["certificate"], ["certificates.number"], name=op.f("fk_certificate_changes_certificate")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_certificate_changes")),
    )
    op.create_index(op.f("ix_certificate_changes_certificate"), "certificate_changes", ["certificate"], unique=False)
    op.create_table(
        "complaints",
        sa.Column("id", sa.Integer(), autoincrement=True, nullable=False),
        sa.Column("tank", sa.Text(), nullable=True),
        sa.Column("certificate", sa.Text(), nullable=True),
        sa.Column("filed_at", sa.Text(), nullable=False),
        sa.Column("about", sa.Text(), nullable=True),
        sa.Column("finding", sa.Text(), nullable=True),
        sa.Column("closed_at", sa.Text(), nullable=True),
        sa.Column("closed_by", sa.Integer(), nullable=True),
        sa.CheckConstraint("tank is not null or certificate is not null", name=op.f("ck_complaints_subject")),
        sa.ForeignKeyConstraint(["certificate"], ["certificates.number"], name=op.f("fk_complaints_certificate")),
        sa.ForeignKeyConstraint(["closed_by"], ["people.id"], name=op.f("fk_complaints_closed_by")),
        sa.ForeignKeyConstraint(["tank"], ["tanks.number"], name=op.f("fk_complaints_tank")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_complaints")),
    )
    op.create_table(
        "tank_people",
        sa.Column("id", sa.Integer(), autoincrement=True, nullable=False),
        sa.Column("tank", sa.Text(), nullable=False),
        sa.Column("person", sa.Integer(), nullable=False),
        sa.Column("certificate", sa.Text(), nullable=False),
        sa.Column("part", sa.Text(), nullable=False),
        sa.CheckConstraint("part in ('built', 'checked')", name=op.f("ck_tank_people_part")),
        sa.ForeignKeyConstraint(["certificate"], ["certificates.number"], name=op.f("fk_tank_people_certificate")),
        sa.ForeignKeyConstraint(["person"], ["people.id"], name=op.f("fk_tank_people_person")),
        sa.ForeignKeyConstraint(["tank"], ["tanks.number"], name=op.f("fk_tank_people_tank")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_tank_people")),
        sa.UniqueConstraint("tank", "person", name=op.f("uq_tank_people_tank_person")),
    )
    # ### end Alembic commands ###
    for table in _NEVER_CHANGED:
        _guard(table, "update", "is never changed")
        _guard(table, "delete", "is never deleted")
    for table in _NEVER_DELETED:
        _guard(table, "delete", "is never deleted")


def _guard(table: str, deed: str, words: str) -> None:
    """A trigger that refuses a deed on a table."""
    name = f"{table}_no_{deed}"
    if op.get_bind().dialect.name == "sqlite":
        op.execute(
            f"create trigger {name} before {deed} on {table} begin select raise(abort, 'a row of {table} {words}'); end"
        )
        return
    op.execute(
        f"create function {name}() returns trigger language plpgsql as "
        f"$$ begin raise exception 'a row of {table} {words}'; end $$"
    )
    op.execute(f"create trigger {name} before {deed} on {table} for each row execute function {name}()")
    if deed == "delete":
        op.execute(f"create trigger {table}_no_truncate before truncate on {table} execute function {name}()")
