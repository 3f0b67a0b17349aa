"""Statistics of 100,000 learners and 60 questions, against the bare numpy sums that they need.

The baseline makes the totals, their sums and squares, the products of answers and totals, the upper and lower groups'
sums and the sort that finds them; nothing is checked and nothing is put into words.
"""

from __future__ import annotations

import time

import numpy as np

from generator.assessment.item_statistics import ItemStatistics, item_statistics
from generator.assessment.reliability import Reliability, reliability
from tests.benchmarks import Result, compare

LEARNERS, QUESTIONS, LIMIT = 100_000, 60, 2.0


def answers(learners: int = LEARNERS) -> np.ndarray:
    """Made-up answers: questions of all difficulties, learners of all masteries."""
    draw = np.random.Generator(np.random.PCG64(60))
    ability, hard = draw.normal(0, 1, (learners, 1)), np.linspace(-2, 2, QUESTIONS)
    return (draw.random((learners, QUESTIONS)) < 1 / (1 + np.exp(hard - ability))).astype(np.float64)


def ours(x: np.ndarray) -> tuple[ItemStatistics, Reliability]:
    return item_statistics(x), reliability(x)


def bare(x: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray, float]:
    """Item-total, item-rest, upper less lower, difficulty and alpha for answers without one constant column."""
    n, k = x.shape
    totals = x.sum(axis=1)
    mean = x.mean(axis=0)
    variances = np.einsum("ij,ij->j", x, x) / n - mean * mean
    covariances = x.T @ (totals - totals.mean()) / n
    whole = totals.var()
    total = covariances / np.sqrt(variances * whole)
    rest = (covariances - variances) / np.sqrt(variances * (whole - 2 * covariances + variances))
    group = int(np.floor(0.27 * n + 0.5))
    ordered = np.sort(totals)
    sums = []
    for edge, sign in ((ordered[-group], 1), (ordered[group - 1], -1)):
        beyond, on = sign * totals > sign * edge, totals == edge
        weights = beyond + on * ((group - beyond.sum()) / on.sum())
        sums.append(x.T @ weights / group)
    alpha = k / (k - 1) * (1 - variances.sum() / whole)
    return total, rest, sums[0] - sums[1], mean, float(alpha)


def results(runs: int = 5) -> list[Result]:
    """Item statistics and reliability of one large table."""
    x = answers()
    name = f"statistics of {LEARNERS:,} x {QUESTIONS}, against the bare sums"
    return [compare(name, lambda: ours(x), lambda: bare(x), LIMIT, runs, time.process_time)]


if __name__ == "__main__":
    for result in results():
        print(result)  # noqa: T201 (this is what the benchmark is for)
