"""A folder is replaced whole or not at all: built beside, then swapped, and put back where the swap fails."""

from __future__ import annotations

import os
import shutil
import time
from collections.abc import Callable
from pathlib import Path

from generator.problems import MachineError

_TRIES = 5
_PAUSE = 0.2
"""Seconds. On Windows a virus scanner may hold a new file for a moment, and a held file can't be renamed."""


def _rename(source: Path, target: Path) -> None:
    for attempt in range(_TRIES):
        try:
            os.rename(source, target)  # noqa: PTH104 (tests replace this one name)
        except PermissionError:
            if attempt == _TRIES - 1:
                raise
            time.sleep(_PAUSE)
        else:
            return


def _removed(folder: Path) -> Path:
    if folder.exists():
        shutil.rmtree(folder)
    return folder


def swap_in(target: Path, build: Callable[[Path], None]) -> None:
    """Replace a folder by a new one.

    Args:
        target: the folder to replace; it need not exist yet.
        build: writes the new folder's files into the folder that it is handed. All its files must be closed when it
            returns: Windows renames no folder with an open file in it.

    Raises:
        MachineError: the disk said no; the old folder is as it was.
    """
    fresh = target.with_name(target.name + ".new")
    old = target.with_name(target.name + ".old")
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        if old.exists() and not target.exists():
            _rename(old, target)  # an earlier run was cut off between its two renames
        _removed(fresh).mkdir()
        build(fresh)
        _removed(old)
        if target.exists():
            _rename(target, old)
        try:
            _rename(fresh, target)
        except OSError:
            if old.exists():
                _rename(old, target)
            raise
    except OSError as error:
        raise MachineError(
            f"'{target}' could not be replaced and is as it was: {error.strerror or error} "
            "(close what has a file of it open, or free some room, and try again)"
        ) from error
    finally:
        shutil.rmtree(fresh, ignore_errors=True)
    # The new folder is in place; an old one that can't be removed now is removed by the next run.
    shutil.rmtree(old, ignore_errors=True)
