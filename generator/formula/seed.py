"""A stream of whole numbers from a text: the same on every machine, in Python and in the page."""

from __future__ import annotations

import hashlib
import struct
from collections.abc import Sequence
from typing import TypeVar

Item = TypeVar("Item")

_WORDS_IN_BLOCK = 8
_RANGE = 1 << 32


class Stream:
    """Uniform numbers from SHA-256(seed || counter), read as big-endian unsigned 32-bit words.

    The counter is a big-endian unsigned 32-bit word that starts at 0. `formula.js` holds the twin; both are tested
    against `tests/formula/seed-vectors.json`.

    Args:
        seed: any text; its UTF-8 bytes are hashed.

    Example:
        >>> first, again = Stream("tamarisk"), Stream("tamarisk")
        >>> [first.below(6) for _ in range(5)] == [again.below(6) for _ in range(5)]
        True
    """

    def __init__(self, seed: str) -> None:
        self._start = hashlib.sha256(seed.encode("utf-8"))
        self._counter = 0
        self._block: tuple[int, ...] = ()
        self._next = 0

    def uint32(self) -> int:
        """The next word, 0 to 2^32 - 1."""
        if self._next == len(self._block):
            digest = self._start.copy()
            digest.update(struct.pack(">I", self._counter))
            self._block = struct.unpack(">8I", digest.digest())
            self._counter += 1
            self._next = 0
        word = self._block[self._next]
        self._next += 1
        return word

    def words(self, count: int) -> bytes:
        """The next words as big-endian bytes, for bulk work; continues exactly where `uint32` stopped.

        Args:
            count: number of words; 4 bytes each.
        """
        parts = [struct.pack(">I", word) for word in self._block[self._next : self._next + count]]
        left = count - len(parts)
        self._next += len(parts)
        blocks = -(-left // _WORDS_IN_BLOCK)
        for counter in range(self._counter, self._counter + blocks):
            digest = self._start.copy()
            digest.update(struct.pack(">I", counter))
            parts.append(digest.digest())
        if blocks:
            self._counter += blocks
            self._block = struct.unpack(">8I", parts[-1])
            self._next = left - (blocks - 1) * _WORDS_IN_BLOCK
        return b"".join(parts)[: 4 * count]

    def below(self, count: int) -> int:
        """A whole number from 0 to `count` - 1, each as likely: words past the last full multiple are thrown away.

        Args:
            count: 1 to 2^32.
        """
        if not 1 <= count <= _RANGE:
            raise ValueError(f"below({count}): the count runs from 1 to 2^32")
        limit = _RANGE - _RANGE % count
        while (word := self.uint32()) >= limit:
            pass
        return word % count

    def shuffle(self, items: Sequence[Item]) -> list[Item]:
        """The items in a drawn order (from the end, each changes place with one at or before it)."""
        mixed = list(items)
        for last in range(len(mixed) - 1, 0, -1):
            other = self.below(last + 1)
            mixed[last], mixed[other] = mixed[other], mixed[last]
        return mixed
