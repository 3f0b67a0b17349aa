"""How long work tells that it goes on: rooms never print, they call back."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeAlias

Progress: TypeAlias = Callable[[str, str], None]
"""Called with a stage (``pages``, ``fonts``, ``site``, ``one-file``, ``stick``) and what of it is done."""


def silent(stage: str, done: str) -> None:
    """A progress callback that says nothing."""
