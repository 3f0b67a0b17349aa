"""Where a number comes from, and how far that can be trusted."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Status(StrEnum):
    """How well a number is founded. Only `published` and `derived` values may decide that something is safe."""

    PUBLISHED = "published"
    DERIVED = "derived"
    COMMON_PRACTICE = "common_practice"
    FROM_MEMORY = "from_memory"

    @property
    def decides(self) -> bool:
        """Whether a value of this status may decide; the others may only warn."""
        return self in (Status.PUBLISHED, Status.DERIVED)


@dataclass(frozen=True, slots=True)
class Source:
    """The place a number was taken from, and its status."""

    text: str
    status: Status


def published(document_and_place: str) -> Source:
    """A value read in print; the text names the document and the table, page or clause."""
    return Source(document_and_place, Status.PUBLISHED)


def derived(how: str) -> Source:
    """A value that follows from geometry, statics or other values; the text says how."""
    return Source(how, Status.DERIVED)


def common_practice(what: str) -> Source:
    """What the trade usually does, with no document behind it."""
    return Source(what, Status.COMMON_PRACTICE)


def from_memory(what: str) -> Source:
    """A value that is known from the trade's books but was not seen while writing."""
    return Source(what, Status.FROM_MEMORY)


class Constant(float):
    """A number with a name, a unit and a source; otherwise a plain float.

    Example:
        >>> 2 * Constant(9.81, "kN/m**3", derived("1000 kg/m3 x 9.81 m/s2"))
        19.62
    """

    unit: str
    source: Source

    def __new__(cls, value: float, unit: str, source: Source) -> Constant:
        """Make the number; a bare number is dimensionless, a factor or a limit is a Constant with its unit."""
        self = super().__new__(cls, value)
        self.unit = unit
        self.source = source
        return self

    def __reduce__(self) -> tuple[type[Constant], tuple[float, str, Source]]:
        """What makes it again in another process."""
        return Constant, (float(self), self.unit, self.source)
