"""Applications by experience, exceptions for trying again, rechecks of critical steps, what decisions rest on."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0002_ways_in"
down_revision = "0001"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Make the tables."""
    op.create_table(
        "decision_inputs",
        sa.Column("decision", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("inputs", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["decision"], ["decisions.id"], name=op.f("fk_decision_inputs_decision")),
        sa.PrimaryKeyConstraint("decision", name=op.f("pk_decision_inputs")),
    )
    op.create_table(
        "applications",
        sa.Column("id", sa.Integer(), autoincrement=True, nullable=False),
        sa.Column("person", sa.Integer(), nullable=False),
        sa.Column("cohort", sa.Integer(), nullable=False),
        sa.Column("scheme", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("tanks", sa.Integer(), nullable=False),
        sa.Column("witnesses", sa.Integer(), nullable=False),
        sa.Column("evidence", sa.Text(), nullable=True),
        sa.Column("filed_at", sa.Text(), nullable=False),
        sa.Column("filed_by", sa.Integer(), nullable=False),
        sa.Column("outcome", sa.Text(), nullable=True),
        sa.Column("reasons", sa.Text(), nullable=True),
        sa.Column("decided_at", sa.Text(), nullable=True),
        sa.Column("decided_by", sa.Integer(), nullable=True),
        sa.Column("exception", sa.Text(), nullable=True),
        sa.CheckConstraint("outcome in ('accepted', 'refused')", name=op.f("ck_applications_outcome")),
        sa.ForeignKeyConstraint(["cohort"], ["cohorts.id"], name=op.f("fk_applications_cohort")),
        sa.ForeignKeyConstraint(["decided_by"], ["people.id"], name=op.f("fk_applications_decided_by")),
        sa.ForeignKeyConstraint(["filed_by"], ["people.id"], name=op.f("fk_applications_filed_by")),
        sa.ForeignKeyConstraint(["person"], ["people.id"], name=op.f("fk_applications_person")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_applications")),
    )
    op.create_index(
        "uq_applications_open",
        "applications",
        ["person", "scheme"],
        unique=True,
        sqlite_where=sa.text("outcome is null"),
        postgresql_where=sa.text("outcome is null"),
    )
    op.create_table(
        "retest_exceptions",
        sa.Column("paper", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("reason", sa.Text(), nullable=True),
        sa.Column("noted_at", sa.Text(), nullable=False),
        sa.Column("noted_by", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["noted_by"], ["people.id"], name=op.f("fk_retest_exceptions_noted_by")),
        sa.ForeignKeyConstraint(["paper"], ["papers.id"], name=op.f("fk_retest_exceptions_paper")),
        sa.PrimaryKeyConstraint("paper", name=op.f("pk_retest_exceptions")),
    )
    op.create_table(
        "rechecks",
        sa.Column("id", sa.Integer(), autoincrement=True, nullable=False),
        sa.Column("cohort", sa.Integer(), nullable=False),
        sa.Column("person", sa.Integer(), nullable=False),
        sa.Column("practical", sa.Text(), nullable=False),
        sa.Column("step", sa.Text(), nullable=False),
        sa.Column("seen", sa.Text(), nullable=False),
        sa.Column("observer", sa.Integer(), nullable=False),
        sa.Column("attempt", sa.Integer(), nullable=False),
        sa.Column("observed_on", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["cohort"], ["cohorts.id"], name=op.f("fk_rechecks_cohort")),
        sa.ForeignKeyConstraint(["observer"], ["people.id"], name=op.f("fk_rechecks_observer")),
        sa.ForeignKeyConstraint(["person"], ["people.id"], name=op.f("fk_rechecks_person")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_rechecks")),
        sa.UniqueConstraint(
            "person", "practical", "step", "attempt", name=op.f("uq_rechecks_person_practical_step_attempt")
        ),
    )
