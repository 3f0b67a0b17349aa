"""A second observer says what they saw at the recheck of a critical step."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0005_both_saw"
down_revision = "0004_keys_beside"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Make the table."""
    op.create_table(
        "recheck_seconds",
        sa.Column("recheck", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("seen", sa.Text(), nullable=False),
        sa.Column("observer", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["observer"], ["people.id"], name=op.f("fk_recheck_seconds_observer")),
        sa.ForeignKeyConstraint(["recheck"], ["rechecks.id"], name=op.f("fk_recheck_seconds_recheck")),
        sa.PrimaryKeyConstraint("recheck", name=op.f("pk_recheck_seconds")),
    )
