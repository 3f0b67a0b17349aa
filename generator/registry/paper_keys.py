"""The marking keys of a sitting's papers, read many at once; the contents behind them only where marking needs them."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache, partial

from sqlalchemy import Connection, select

from generator.problems import RefusedError
from generator.registry.marker import Marked, Marker, PaperKey
from generator.registry.marking_key import MarkingKey, packed, unpacked
from generator.registry.tables import contents, marking_keys

_KEPT = 1000
"""Keys that stay in memory; where every paper of a larger sitting asks something else, the older ones go."""
_AT_ONCE = 500


class PaperKeys:
    """Finds what marks the papers of a sitting.

    Args:
        connection: open as long as this is used.
        about: what the sitting's set was made from.
        marker: makes the key of a paper from its content.
    """

    def __init__(self, connection: Connection, about: str, marker: Marker) -> None:
        self._connection, self._about, self._marker = connection, about, marker
        self._keys: dict[str, MarkingKey] = {}
        self._whole = lru_cache(maxsize=20)(self._read)

    def fetch(self, wanted: Iterable[str]) -> None:
        """Read the keys of some contents at once; one that no edition of ours wrote is worked out of its content."""
        lacking = list(dict.fromkeys(name for name in wanted if name not in self._keys))
        if len(self._keys) + len(lacking) > _KEPT:
            self._keys.clear()
        for start in range(0, len(lacking), _AT_ONCE):
            some = lacking[start : start + _AT_ONCE]
            chosen = select(marking_keys.c.content, marking_keys.c.data).where(marking_keys.c.content.in_(some))
            for name, data in self._connection.execute(chosen):
                if (key := unpacked(data)) is not None:
                    self._keys[name] = key
            for name in some:
                if name not in self._keys:
                    self._keys[name] = self._worked_out(name)

    def of(self, content: str) -> MarkingKey:
        """The key of a content."""
        if content not in self._keys:
            self.fetch([content])
        return self._keys[content]

    def whole(self, content: str, typed: Mapping[int, str]) -> Mapping[int, str]:
        """The typed answers, with a blank one for each part that has to be marked along."""
        return self._whole(content).whole(typed)

    def by_content(self, content: str) -> partial[Sequence[Marked]]:
        """Marks answers that the key leaves to the content."""
        return partial(self._mark, content)

    def _mark(self, content: str, typed: Mapping[int, str]) -> Sequence[Marked]:
        return self._whole(content).mark(typed)

    def _text(self, content: str) -> str:
        data = self._connection.execute(select(contents.c.data).where(contents.c.hash == content)).scalar_one()
        return bytes(data).decode("utf-8")

    def _read(self, content: str) -> PaperKey:
        return self._marker(self._text(content), self._about)

    def _worked_out(self, content: str) -> MarkingKey:
        """The key of a paper that was archived before keys were kept.

        Raises:
            RefusedError: it was archived by a newer edition.
        """
        data = packed(json.loads(self._text(content)))
        key = None if data is None else unpacked(data)
        if key is None:
            self._whole(content)  # says what it has against it
            raise RefusedError(
                "a paper of this sitting can't be read by this edition: mark it with the one that made it"
            )
        return key
