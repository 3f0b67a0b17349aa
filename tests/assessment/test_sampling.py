from __future__ import annotations

from math import comb

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from generator.assessment import sampling as s
from tests.assessment.test_reliability import reason


@given(st.integers(1, 60), st.data())
def test_a_finite_wall_by_counting(places: int, data: st.DataObject) -> None:
    bad, readings = data.draw(st.integers(0, places)), data.draw(st.integers(1, places))
    allowed = data.draw(st.integers(0, readings))
    good = sum(
        comb(bad, x) * comb(places - bad, readings - x)
        for x in range(min(allowed, bad, readings) + 1)
        if readings - x <= places - bad
    )
    assert s.accepted_of_few(places, bad, readings, allowed) == pytest.approx(good / comb(places, readings), abs=1e-9)


def test_counts_that_can_not_be_are_refused() -> None:
    with pytest.raises(ValueError, match="7 bad"):
        s.accepted_of_few(6, 7, 2, 0)
    assert reason(s.readings_of_lot, 281) == "lot_outside"
    assert reason(s.readings_of_lot, 1) == "lot_outside"


def test_worse_work_is_accepted_less_often() -> None:
    chances = s.accepted(10, 1, np.linspace(0, 1, 50))
    assert (np.diff(chances) <= 1e-12).all()


@pytest.mark.parametrize(("readings", "share", "sure"), [(10, 0.90, 0.95), (30, 0.95, 0.90)])
def test_a_factor_covers_as_often_as_it_says(readings: int, share: float, sure: float) -> None:
    draw = np.random.Generator(np.random.PCG64(8))
    made = draw.standard_normal((20_000, readings))
    mean, sd = made.mean(axis=1), made.std(axis=1, ddof=1)
    one = s.tolerance_factor(readings, share, sure)
    assert float((stats.norm.cdf(mean + one * sd) >= share).mean()) == pytest.approx(sure, abs=0.01)
    two = s.tolerance_factor_both(readings, share, sure)
    covered = stats.norm.cdf(mean + two * sd) - stats.norm.cdf(mean - two * sd)
    assert float((covered >= share).mean()) == pytest.approx(sure, abs=0.01)


def test_one_reading_over_the_limit_is_not_accepted_however_good_the_rest() -> None:
    readings = [50.0 + 0.1 * (i % 5) for i in range(40)] + [60.1]
    found = s.check_upper(readings, 60, 0.90, 0.90)
    assert found.quality > found.factor
    assert not found.accepted
    assert reason(s.check_upper, [50, 51], 60, 0.9, 0.9) == "too_few_readings"
    assert reason(s.check_upper, [50, 50, 50], 60, 0.9, 0.9) == "no_spread"


def test_the_doubt_counts_against_what_can_leak_and_for_the_mason_elsewhere() -> None:
    assert s.within_limit(61, 60, 1.5, critical=False)
    assert not s.within_limit(61.6, 60, 1.5, critical=False)
    assert not s.within_limit(59, 60, 1.5, critical=True)
    assert s.within_limit(58.5, 60, 1.5, critical=True)
