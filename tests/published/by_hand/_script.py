"""Short sums that do without the calculation module: how one is written down, and how a question is solved with them.

A sum is a plain function. Its parameters are names of givens or of other sums; what a question does not hand out is
worked out by the sum of that name. Nothing here may import the machine.
"""

from __future__ import annotations

import inspect
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from math import ceil, floor

PRACTICE = "hand rule, common practice, no source"
GEOMETRY = "school geometry"
BALANCE = "a balance: what goes in less what goes out"
SHARES = "adding, taking off, sharing out"


@dataclass(frozen=True)
class Sum:
    """One sum by hand and where it comes from."""

    work: Callable[..., float]
    source: str


SUMS: dict[str, Sum] = {}


def by_hand(source: str) -> Callable[[Callable[..., float]], Callable[..., float]]:
    """Enters a function under its own name; a name may be worked only once.

    Args:
        source: a document, a rule of geometry, or `PRACTICE`.
    """

    def enter(work: Callable[..., float]) -> Callable[..., float]:
        name = work.__name__
        assert name not in SUMS, f"{name} is worked twice"
        SUMS[name] = Sum(work, source)
        return work

    return enter


def solve(name: str, given: Mapping[str, float]) -> float:
    """The quantity of that name from what a question hands out."""
    if name in given:
        return given[name]
    if name not in SUMS:
        raise LookupError(f"no sum by hand for {name}: write one in tests/published/by_hand")
    work = SUMS[name].work
    return work(**{part: solve(part, given) for part in inspect.signature(work).parameters})


def up(value: float, step: float = 1) -> float:
    """The next whole step above; a hair of floating point does not make one more."""
    return ceil(value / step - 1e-6) * step


def down(value: float, step: float = 1) -> float:
    """The whole step below."""
    return floor(value / step + 1e-6) * step


def more(percent: float) -> float:
    """What a percent more is multiplied with."""
    return 1 + percent / 100
