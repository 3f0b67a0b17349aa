"""The baselines of the plan's benchmark do the same work; the ratios themselves are printed by `bench`."""

from __future__ import annotations

import numpy as np
import pytest

from generator.calculations import BOOK
from tests.benchmarks.bench_plan import (
    PLAN_LIMIT,
    TANKS,
    WANTED,
    by_arrays,
    by_hand,
    core_of,
    ours,
    planned,
    results,
    tanks,
)


@pytest.mark.parametrize("name", WANTED)
def test_numpy_by_hand_comes_to_the_same(name: str) -> None:
    givens = tanks(20_000)
    one, other = by_arrays(givens)[name], by_hand(givens)[name]
    assert np.isfinite(other).all()
    assert np.allclose(one, other, rtol=1e-12, atol=0)


def test_two_dozen_quantities_are_worked_out() -> None:
    assert len(BOOK.ancestors(WANTED)) - len(tanks(10)) >= 25


@pytest.mark.parametrize("litres", TANKS.values())
def test_the_core_cuts_the_plans_own_bars(litres: float) -> None:
    plan = planned(litres)
    bars = [each.cuts.bars for each in plan.bars]
    if plan.angles is not None:
        bars.append(plan.angles.cuts.bars)
    assert core_of(plan)() == tuple(bars)
    text = ours(litres)
    assert f"{litres:,.0f}" in text
    assert len(text.splitlines()) > 200


def test_the_benchmark_measures_both_sides() -> None:
    for result in results(runs=1):
        assert result.ours > 0
        assert result.baseline > 0
        assert result.limit <= PLAN_LIMIT
