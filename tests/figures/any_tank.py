"""Tanks for one drawing: random over the whole range of every given that this drawing needs."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from generator.calculations import BOOK
from generator.formula import OutOfRangeError, Stream


@cache
def any_tanks(needs: tuple[str, ...], count: int) -> tuple[Mapping[str, float], ...]:
    """So many tanks over the whole range of each given behind a drawing's numbers; only refused ones are left out.

    Args:
        needs: names of the givens and quantities of the drawing.
        count: how many.
    """
    stream = Stream(f"any tank for {' '.join(needs)}")
    givens = tuple(dict.fromkeys(given for name in needs for given in (BOOK.needs(name) or (name,))))
    found: list[Mapping[str, float]] = []
    while len(found) < count:
        seeds = {}
        for name in givens:
            given = BOOK.givens[name]
            steps = round((given.high - given.low) / given.step)
            seeds[name] = round(given.low + stream.below(steps + 1) * given.step, 6)
        try:
            found.append(BOOK.evaluate(seeds, needs))
        except OutOfRangeError:
            continue
    return tuple(found)
