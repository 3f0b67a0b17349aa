"""Benchmarks: our own work against a stated baseline in the same run, as a ratio, so that any machine can judge it."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Result:
    """One comparison.

    Args:
        name: what is compared with what.
        ours: best time of our code [s].
        baseline: best time of the baseline [s].
        limit: largest ratio that is good.
    """

    name: str
    ours: float
    baseline: float
    limit: float

    @property
    def ratio(self) -> float:
        """Our time as a multiple of the baseline's."""
        return self.ours / self.baseline

    @property
    def good(self) -> bool:
        """Whether the ratio keeps its limit."""
        return self.ratio <= self.limit

    def __str__(self) -> str:
        verdict = "good" if self.good else "TOO SLOW"
        return (
            f"{self.name}: {self.ours * 1000:.1f} ms against {self.baseline * 1000:.1f} ms = {self.ratio:.2f} "
            f"(limit {self.limit:g}): {verdict}"
        )


def compare(
    name: str,
    ours: Callable[[], object],
    baseline: Callable[[], object],
    limit: float,
    runs: int,
    clock: Callable[[], float] = time.perf_counter,
) -> Result:
    """Run both by turns, and keep the best time of each: noise only ever adds.

    Args:
        name: what is compared with what.
        ours: our work.
        baseline: the same work by other means.
        limit: largest ratio that is good.
        runs: times that each is run.
        clock: `time.process_time` for work of this process alone: what else the machine does then counts for less.
    """
    best = [float("inf"), float("inf")]
    for _ in range(runs):
        for place, work in enumerate((ours, baseline)):
            start = clock()
            work()
            best[place] = min(best[place], clock() - start)
    return Result(name, best[0], best[1], limit)
