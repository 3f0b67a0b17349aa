"""A scheme that is no longer provisional is `in-force`, as its file says, and no more `approved`.

What was sealed of a decision before holds the former word; `audit` knows it (`FORMER_WORDS`).
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0003_in_force"
down_revision = "0002_ways_in"
branch_labels = None
depends_on = None

_NAME = "ck_decisions_scheme_status"
_BEFORE = "scheme_status in ('draft', 'provisional', 'approved')"
_AFTER = "scheme_status in ('draft', 'provisional', 'in-force')"


def upgrade() -> None:
    """Change the rule of the column, then the words in it."""
    connection = op.get_bind()
    if connection.dialect.name == "sqlite":
        # SQLite can't change a rule of a table; making the table anew would drop what other tables point at
        version = int(connection.execute(sa.text("pragma schema_version")).scalar_one())
        connection.execute(sa.text("pragma writable_schema = on"))
        connection.execute(
            sa.text("update sqlite_master set sql = replace(sql, :before, :after) where name = 'decisions'"),
            {"before": _BEFORE, "after": _AFTER},
        )
        connection.execute(sa.text(f"pragma schema_version = {version + 1}"))
        connection.execute(sa.text("pragma writable_schema = off"))
    else:
        op.drop_constraint(_NAME, "decisions", type_="check")
    op.execute("update decisions set scheme_status = 'in-force' where scheme_status = 'approved'")
    if connection.dialect.name != "sqlite":
        op.create_check_constraint(op.f(_NAME), "decisions", _AFTER)
