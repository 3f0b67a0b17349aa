"""The square code on paper: as small as it can be, never finer than cheap printers and worn cameras can take."""

from __future__ import annotations

from dataclasses import dataclass

import segno

from generator.credentials.qr_fill import fill
from generator.problems import RefusedError

LARGEST_VERSION = 11
LEAST_MODULE = 0.6
"""Millimetres of one little square on paper."""
QUIET = 4
"""Empty modules on each side, as ISO/IEC 18004 asks for."""


@dataclass(frozen=True, slots=True)
class QrCode:
    """A code as data.

    Args:
        version: 1 to 11.
        matrix: rows from the top, 1 for dark; without the quiet zone.
    """

    version: int
    matrix: tuple[tuple[int, ...], ...]

    @property
    def across(self) -> int:
        """Modules from edge to edge, the quiet zone on both sides counted."""
        return len(self.matrix) + 2 * QUIET


def qr_of(text: str) -> QrCode:
    """The code of a text, at error correction M.

    Raises:
        RefusedError: the text needs a finer code than version 11.
    """
    quick = fill(text)
    if quick is not None:
        version, _, modules = quick
        return QrCode(version, tuple(map(tuple, modules.tolist())))
    try:
        made = segno.make(text, error="m", boost_error=False, micro=False)
    except (segno.DataOverflowError, ValueError):
        raise RefusedError("the text is too long for any code") from None
    version = int(made.version)
    if version > LARGEST_VERSION:
        raise RefusedError(
            f"the text needs a code of version {version}, and {LARGEST_VERSION} is the finest that prints well"
        )
    return QrCode(version, tuple(tuple(int(module & 1) for module in row) for row in made.matrix))


def module_size(code: QrCode, width: float) -> float:
    """The size of one module [mm] where the code and its quiet zone are so wide.

    Args:
        code: the code.
        width: of the code with its quiet zone [mm].

    Raises:
        RefusedError: the modules would be too fine.
    """
    size = width / code.across
    if size < LEAST_MODULE - 1e-9:
        raise RefusedError(
            f"in {width:g} mm a module is {size:.2f} mm: at least {LEAST_MODULE:g} mm, so make it "
            f"{least_width(code):.1f} mm wide"
        )
    return size


def least_width(code: QrCode) -> float:
    """The least width of a code with its quiet zone [mm]."""
    return code.across * LEAST_MODULE
