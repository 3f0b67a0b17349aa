"""A short marking key stands beside what a paper asks, so that marking need not read all of it.

Papers of before have none: their keys are worked out of their contents when they are marked.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0004_keys_beside"
down_revision = "0003_in_force"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Make the table."""
    op.create_table(
        "marking_keys",
        sa.Column("content", sa.Text(), nullable=False),
        sa.Column("data", sa.LargeBinary(), nullable=False),
        sa.ForeignKeyConstraint(["content"], ["contents.hash"], name=op.f("fk_marking_keys_content")),
        sa.PrimaryKeyConstraint("content", name=op.f("pk_marking_keys")),
    )
