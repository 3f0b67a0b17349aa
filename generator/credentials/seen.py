"""The newest list that was ever seen on a computer, by issuer: an older one is then noticed. Text in, text out."""

from __future__ import annotations

import json
from datetime import datetime
from typing import Any

FILE = "lists-seen.json"


def newest_seen(text: str | None, identity: str) -> datetime | None:
    """The date of the newest list of an issuer; None where none is known or the memory is damaged.

    Args:
        text: what the file holds; None where there is none.
        identity: of the issuer's keys.
    """
    found = _read(text).get(identity)
    try:
        moment = datetime.fromisoformat(found) if isinstance(found, str) else None
    except ValueError:
        return None
    return moment if moment is not None and moment.tzinfo is not None else None


def remembered(text: str | None, identity: str, newest: datetime) -> str:
    """What the file should hold after a list was seen."""
    before = newest_seen(text, identity)
    kept = newest if before is None else max(before, newest)
    return (
        json.dumps({"format": 1, "seen": {**_read(text), identity: kept.isoformat()}}, indent=2, sort_keys=True) + "\n"
    )


def _read(text: str | None) -> dict[str, Any]:
    try:
        data = json.loads(text or "{}")
    except (ValueError, RecursionError):
        return {}
    seen = data.get("seen") if isinstance(data, dict) else None
    return dict(seen) if isinstance(seen, dict) else {}
