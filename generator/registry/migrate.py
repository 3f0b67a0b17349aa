"""Bringing a registry's tables up to this edition, and refusing one that a newer edition made.

The steps lie in `migrations/versions/`; each runs in the transaction of the opening, so a broken one leaves no trace.
"""

from __future__ import annotations

from pathlib import Path

from sqlalchemy import Connection, inspect, text

from generator.problems import RefusedError

NEWEST = "0005_both_saw"
"""The newest step of `migrations/versions/`; the next one goes on from it, so that there is one line of steps."""
_FOLDER = Path(__file__).with_name("migrations")
_TABLE = "alembic_version"


def migrate(connection: Connection, place: str, to: str = "head") -> None:
    """Run the steps that a registry lacks.

    Args:
        connection: within a transaction that shuts out other writers.
        place: how messages name the registry.
        to: the last step; an earlier one only in tests.

    Raises:
        RefusedError: it holds a step that this edition does not know, or tables that are no registry's.
    """
    step = current(connection)
    if step == NEWEST:
        return
    if step is None and (strangers := inspect(connection).get_table_names()):
        raise RefusedError(
            f"'{place}' holds other tables ({', '.join(sorted(strangers)[:3])}) and is no registry: take another place"
        )
    # costly to import, and needed only for a new or an old registry
    from alembic.config import Config
    from alembic.runtime.environment import EnvironmentContext
    from alembic.script import ScriptDirectory

    scripts = ScriptDirectory(str(_FOLDER))
    if step is not None and step not in {script.revision for script in scripts.walk_revisions()}:
        raise RefusedError(
            f"the registry '{place}' was written by a newer edition (its tables are at step {step}, this edition knows "
            f"{NEWEST}): use that edition, or a newer one"
        )
    with EnvironmentContext(Config(), scripts, fn=lambda found, _context: scripts._upgrade_revs(to, found)) as run:
        run.configure(connection=connection)
        run.run_migrations()


def current(connection: Connection) -> str | None:
    """The step that a registry's tables are at; None for a place without any."""
    if not inspect(connection).has_table(_TABLE):
        return None
    found = connection.execute(text(f"select version_num from {_TABLE}")).scalar()  # noqa: S608 (a fixed name)
    return None if found is None else str(found)
