"""The registry's clock: what to do when an entry was made with a wrong one."""

from __future__ import annotations

from datetime import datetime

from generator.problems import RefusedError
from generator.registry.people import require_role
from generator.registry.store import Registry, writing


def note_clock(registry: Registry, reason: str, *, by: int, now: datetime) -> None:
    """Note that earlier entries were made with a wrong clock, so that entries can go on from the right time.

    Without it an entry before the newest one is refused: a clock that was set back unseen could date a certificate
    before the decision that it rests on.

    Raises:
        RefusedError: no reason; `by` is no coordinator.
    """
    if not reason.strip():
        raise RefusedError("setting the registry's clock back needs a reason")
    with writing(registry, now) as entry:
        require_role(entry.connection, by, "coordinator")
        entry.event("clock.set", "registry", by, {"reason": reason.strip()}, clock_set=True)
