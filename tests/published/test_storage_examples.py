"""Worked examples of storage: demand over dry days, rain from a roof, a spring by bucket and watch, the mass curve.

S3 is derived: roof 60 m2, runoff share 0.8, demand 2.4 m3 a month, monthly rain as below.
"""

import pytest

from generator.calculations import BOOK
from generator.calculations.reservoir import run_tank, storage_by_sequent_peak, storage_by_simulation
from generator.calculations.storage import SECONDS_IN_DAY, mean_fill_time
from generator.formula import OutOfRangeError
from tests.calculations.worked import read_wrong

RAIN = [0, 0, 10, 60, 150, 180, 120, 80, 100, 60, 10, 0]
"""mm, January to December."""


def test_s1_six_people_through_25_days() -> None:
    """Rainwater lesson, demand-side sizing: 6 people x 20 L x 25 d = 3000 L, only where rain and roof suffice."""
    values: dict[str, float] = {"people": 6, "litres_each": 20, "animal_need": 0, "dry_days": 25}
    assert BOOK.evaluate(values, ["dry_season_need"])["dry_season_need"] == pytest.approx(3000)
    assert read_wrong("one_month_for_the_dry_season", values, "dry_season_need") == pytest.approx(3600)


def test_s1_without_a_spring_the_storage_is_the_same() -> None:
    values = {"people": 6, "litres_each": 20, "animal_need": 0, "dry_days": 25, "spring_daily_yield": 0}
    assert BOOK.evaluate(values, ["storage_needed_volume"])["storage_needed_volume"] == pytest.approx(3.0)


def test_s2_rain_from_a_roof() -> None:
    """Rainwater Reservoirs above Ground Structures, GTZ/GATE 1989: 450 mm x 120 m2 x 0.9; product derived."""
    values = {"rain_depth": 450, "roof_area": 120, "runoff_coefficient": 0.9}
    assert BOOK.evaluate(values, ["roof_yield"])["roof_yield"] == pytest.approx(48_600)
    assert read_wrong("every_drop_reaches_the_tank", values, "roof_yield") == pytest.approx(54_000)


@pytest.mark.parametrize(
    ("litres", "seconds", "flow", "daily"),
    [
        (20, [25, 25, 25], 0.80, 69.1),  # FAO Training, section 3 gives the method; sums derived
        (10, [36, 40, 38], 0.263, 22.7),  # the same, mean of three timings
    ],
)
def test_springs_by_bucket_and_watch(litres: float, seconds: list[float], flow: float, daily: float) -> None:
    values = {"bucket_litres": litres, "bucket_seconds": mean_fill_time(seconds), "spring_share_kept": 100}
    found = BOOK.evaluate(values, ["spring_flow", "spring_daily_yield"])
    assert found["spring_flow"] == pytest.approx(flow, abs=5e-4)
    assert found["spring_daily_yield"] / 1000 == pytest.approx(daily, abs=0.05)
    assert float(SECONDS_IN_DAY) == 24 * 60 * 60


def test_a_can_of_20_litres_in_three_minutes_is_the_standard_s_least_flow() -> None:
    """Sphere, water supply standard 1: at most 3 minutes for 20 L, which is 6.7 L/min (derived)."""
    assert BOOK.evaluate({"can_litres": 20, "spring_flow": 6.7 / 60}, ["can_fill_time"])[
        "can_fill_time"
    ] == pytest.approx(180, rel=0.01)


@pytest.mark.parametrize(
    ("each", "uses"),
    [
        (7.5, [2.5, 2, 3]),  # Sphere standard 1, least: drink and eat, wash, cook
        (15, [3, 6, 6]),  # the same, most
        (55, [5, 3, 10, 15, 10, 12]),  # India's rural norm of 2013, as a secondary page splits it
    ],
)
def test_litres_for_a_person_are_the_sum_of_the_printed_uses(each: float, uses: list[float]) -> None:
    assert sum(uses) == pytest.approx(each)
    assert BOOK.evaluate({"people": 1, "litres_each": each}, ["people_need"])["people_need"] == pytest.approx(each)


@pytest.mark.parametrize("each", [15, 20, 40, 55])
def test_printed_norms_are_within_the_range(each: float) -> None:
    """Sphere 15, rural source 20, India 40 and then 55 L for a person in a day."""
    assert BOOK.givens["litres_each"].low <= each <= BOOK.givens["litres_each"].high


def test_s3_sequent_peak_needs_two_cycles() -> None:
    inflow = [mm / 1000 * 60 * 0.8 for mm in RAIN]
    assert sum(inflow) == pytest.approx(36.96)
    assert storage_by_sequent_peak(inflow, [2.4] * 12) == pytest.approx(11.04)


def test_s3_one_pass_is_the_known_mistake() -> None:
    short = most = 0.0
    for mm in RAIN:
        short = max(0.0, short + 2.4 - mm / 1000 * 60 * 0.8)
        most = max(most, short)
    assert most == pytest.approx(6.72)
    assert most < storage_by_sequent_peak([mm / 1000 * 60 * 0.8 for mm in RAIN], [2.4] * 12)


def test_s3_by_simulation_and_just_less_runs_dry() -> None:
    inflow = [mm / 1000 * 60 * 0.8 for mm in RAIN]
    need = [2.4] * 12
    assert storage_by_simulation(inflow, need) == pytest.approx(11.04, abs=1e-4)
    assert run_tank(11.05, inflow, need).reliability == 1
    assert run_tank(11.0, inflow, need).short_steps == 1
    assert run_tank(6.72, inflow, need).reliability < 1


def test_s3_with_more_people_has_no_size() -> None:
    """36.96 m3 come in a year: 3.08 a month are the most that can be taken."""
    inflow = [mm / 1000 * 60 * 0.8 for mm in RAIN]
    assert storage_by_sequent_peak(inflow, [3.08] * 12) > 11.04
    with pytest.raises(OutOfRangeError, match="no size of tank is enough"):
        storage_by_sequent_peak(inflow, [3.09] * 12)
