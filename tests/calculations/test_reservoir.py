"""Storage by sequent peak and by simulation: they agree, and one pass of the record is not enough."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations.reservoir import run_tank, storage_by_sequent_peak, storage_for_reliability
from generator.formula import OutOfRangeError

record = st.lists(st.integers(0, 9), min_size=2, max_size=14)


@given(record, st.integers(0, 4))
def test_sequent_peak_is_the_least_storage_that_never_runs_dry(inflow: list[int], each: int) -> None:
    """Independent: every size in whole steps is tried by running the record many times over."""
    demand = [each] * len(inflow)
    if sum(inflow) < sum(demand):
        with pytest.raises(OutOfRangeError, match="no size of tank is enough"):
            storage_by_sequent_peak(inflow, demand)
        return
    found = storage_by_sequent_peak(inflow, demand)
    never_dry = [
        size for size in range(int(found) + 3)
        if run_tank(size, inflow * 3, demand * 3, start=size).short_steps == 0
    ]  # fmt: skip
    assert never_dry[0] == found


@given(record, st.integers(0, 4), st.integers(0, 30))
def test_no_water_is_made_or_lost(inflow: list[int], each: int, storage: int) -> None:
    demand = [each] * len(inflow)
    run = run_tank(storage, inflow, demand, start=0)
    assert sum(inflow) == pytest.approx(run.share_delivered * sum(demand) + run.spilled + run.levels[-1])
    assert all(0 <= level <= storage for level in run.levels)


@given(record, st.integers(1, 4), st.integers(0, 20))
def test_a_bigger_tank_is_never_less_reliable(inflow: list[int], each: int, storage: int) -> None:
    demand = [each] * len(inflow)
    assert run_tank(storage + 1, inflow, demand).share_delivered >= run_tank(storage, inflow, demand).share_delivered


@given(record, st.integers(1, 3), st.sampled_from([0.5, 0.8, 0.9, 1.0]))
def test_storage_for_a_share_of_good_days_reaches_it_and_less_does_not(
    inflow: list[int], each: int, share: float
) -> None:
    demand = [each] * len(inflow)
    if sum(inflow) < sum(demand):
        return
    size = storage_for_reliability(inflow, demand, share)
    assert run_tank(size * 1.00001 + 1e-9, inflow, demand).reliability >= share - 1e-9
    assert size <= storage_by_sequent_peak(inflow, demand) + 1e-9


@pytest.mark.parametrize(
    ("inflow", "demand", "message"),
    [([1], [1, 2], "do not make one record"), ([], [], "do not make one record"), ([-1, 5], [1, 1], "0 or more")],
)
def test_a_broken_record_is_refused(inflow: list[float], demand: list[float], message: str) -> None:
    with pytest.raises(OutOfRangeError, match=message):
        storage_by_sequent_peak(inflow, demand)
    with pytest.raises(OutOfRangeError, match=message):
        run_tank(1, inflow, demand)
