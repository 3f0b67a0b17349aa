"""Storage by sequent peak, by simulation and by trying every size: they agree; what a roof brings to the tank."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations.reservoir import (
    roof_inflow,
    run_tank,
    storage_by_sequent_peak,
    storage_by_simulation,
    storage_for_reliability,
)
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


def days_served(size: int, inflow: list[int], demand: list[int]) -> list[tuple[int, int]]:
    """Independent of the module: a full tank of whole litres, its record twice; asked for and given on each day."""
    level, days = size, []
    for day in range(2 * len(inflow)):
        level += inflow[day % len(inflow)]
        out = level if level < demand[day % len(inflow)] else demand[day % len(inflow)]
        level -= out
        level = size if level > size else level
        days.append((demand[day % len(inflow)], out))
    return days


seasons = st.integers(2, 12).flatmap(
    lambda steps: st.tuples(*(st.lists(st.integers(0, 9), min_size=steps, max_size=steps) for _ in range(2)))
)


@given(seasons)
def test_every_size_tried_gives_the_same_storage(season: tuple[list[int], list[int]]) -> None:
    """Inflow and demand both change from step to step; every whole size from nothing is tried by a second program."""
    inflow, demand = season
    if sum(inflow) < sum(demand):
        for storage in (storage_by_sequent_peak, storage_by_simulation):
            with pytest.raises(OutOfRangeError, match="no size of tank is enough"):
                storage(inflow, demand)
        return
    least = next(size for size in range(200) if all(asked == out for asked, out in days_served(size, inflow, demand)))
    assert storage_by_sequent_peak(inflow, demand) == least
    assert storage_by_simulation(inflow, demand) == pytest.approx(least, rel=1e-5, abs=1e-5)


@given(seasons)
def test_less_water_than_is_taken_empties_any_tank(season: tuple[list[int], list[int]]) -> None:
    """Why a number would be a lie there: even a huge tank runs dry in some year."""
    inflow, demand = season
    if sum(inflow) >= sum(demand):
        return
    huge = 3 * sum(demand)
    years = huge // (sum(demand) - sum(inflow)) + 2
    assert run_tank(huge, inflow * years, demand * years, start=huge).short_steps > 0


@given(seasons, st.integers(0, 25))
def test_shares_of_days_and_of_water_are_those_of_a_second_program(
    season: tuple[list[int], list[int]], size: int
) -> None:
    inflow, demand = season
    second = days_served(size, inflow, demand)[len(inflow) :]
    run = run_tank(size, inflow, demand)
    assert run.reliability == pytest.approx(sum(asked == out for asked, out in second) / len(second))
    assert run.share_delivered * sum(demand) == pytest.approx(sum(out for _, out in second))


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
    [
        ([1], [1, 2], "do not make one record"),
        ([], [], "do not make one record"),
        ([-1, 5], [1, 1], "0 or more"),
        ([float("nan"), 5], [1, 1], "0 or more"),
        ([1, 5], [1, float("inf")], "0 or more"),
    ],
)
def test_a_broken_record_is_refused(inflow: list[float], demand: list[float], message: str) -> None:
    with pytest.raises(OutOfRangeError, match=message):
        storage_by_sequent_peak(inflow, demand)
    with pytest.raises(OutOfRangeError, match=message):
        run_tank(1, inflow, demand)


@pytest.mark.parametrize("storage", [-1, float("nan"), float("inf")])
def test_a_tank_of_no_size_is_refused(storage: float) -> None:
    with pytest.raises(OutOfRangeError, match="from nothing to its own volume"):
        run_tank(storage, [1], [1])


# ---------------------------------------------------------------------------------------------- the roof

rains = st.lists(st.sampled_from([0.0, 0.0, 0.0, 0.5, 2.0, 7.0, 31.0]), min_size=1, max_size=30)


def test_a_roof_is_washed_once_for_each_dry_spell() -> None:
    """By hand: 40 m2, share 0.75: 30 L to a mm; 2 mm of 40 m2 are 80 L. 8 mm: 240 - 80; one dry day washes nothing."""
    brought = roof_inflow([8, 0, 8, 0, 0, 8], 40, 0.75, 2, dry_steps=2)
    assert brought == pytest.approx((160, 0, 240, 0, 0, 160))


def test_a_light_rain_goes_all_to_the_wash_and_the_next_day_finishes_it() -> None:
    """By hand: 1 mm brings 0.75 mm of the 2 mm; the next day 1.25 mm of its 6 mm are let away."""
    assert roof_inflow([1, 8], 40, 0.75, 2, dry_steps=3) == pytest.approx((0, (6 - 1.25) * 40))


@given(rains, st.floats(1, 500), st.floats(0.5, 0.95))
def test_without_a_wash_a_roof_brings_rain_times_area_times_share(rain: list[float], area: float, share: float) -> None:
    assert sum(roof_inflow(rain, area, share, 0, dry_steps=2)) == pytest.approx(sum(rain) * area * share)


@given(rains, st.floats(0, 4), st.integers(1, 5))
def test_the_wash_takes_no_more_than_once_for_each_dry_spell(rain: list[float], flush: float, dry: int) -> None:
    """Spells are counted apart from the module, in the record written as a text."""
    all_of_it = sum(rain) * 0.8 * 30
    kept = sum(roof_inflow(rain, 30, 0.8, flush, dry_steps=dry))
    text = "".join("w" if depth else "." for depth in rain)
    spells = 1 + sum(len(gap) >= dry for gap in text.strip(".").split("w"))
    assert all_of_it - spells * flush * 30 - 1e-6 <= kept <= all_of_it + 1e-6


def test_a_first_flush_asks_for_a_larger_tank() -> None:
    """By hand, 36 L a mm: 360 - 120 + 120 - 120 + 180 L are missing at the worst, and 67.5 for each of two washes."""
    rain = [0.0, 0, 0, 0, 5, 0, 0, 5, 0, 0, 0, 5, 40, 0, 0]
    need = [60.0] * len(rain)
    clean = storage_by_sequent_peak(roof_inflow(rain, 45, 0.8, 0, dry_steps=2), need)
    washed = storage_by_sequent_peak(roof_inflow(rain, 45, 0.8, 1.5, dry_steps=2), need)
    assert (clean, washed) == pytest.approx((420, 555))


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"rain": []}, "record of rain"),
        ({"rain": [1.0, -2.0]}, "nearest gauge"),
        ({"rain": [float("nan")]}, "nearest gauge"),
        ({"roof_area": 0.0}, "roof_area = 0 m2"),
        ({"runoff_coefficient": 1.2}, "runoff_coefficient = 1.2.*licensed engineer"),
        ({"first_flush_depth": -1.0}, "first_flush_depth = -1 mm"),
        ({"dry_steps": 0}, "dry_steps = 0"),
    ],
)
def test_a_roof_that_can_not_be_is_refused(change: dict[str, Any], message: str) -> None:
    good: dict[str, Any] = {
        "rain": [5.0], "roof_area": 45.0, "runoff_coefficient": 0.8, "first_flush_depth": 1.0, "dry_steps": 2,
    }  # fmt: skip
    assert roof_inflow(**good) == pytest.approx((135,))
    with pytest.raises(OutOfRangeError, match=message):
        roof_inflow(**{**good, **change})
