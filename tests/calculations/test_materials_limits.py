"""Verdicts on sand, weather and wind. The printed tables stand in `tests/published`."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations.materials_limits import (
    SIEVES,
    DayAdvice,
    SandAdvice,
    SiltAdvice,
    WindAdvice,
    absolute_volume,
    drying_wind,
    fineness_modulus,
    silt_verdict,
    weather,
    zone_of,
)
from generator.formula import OutOfRangeError

GOOD = {10.0: 100, 4.75: 98, 2.36: 90, 1.18: 72, 0.6: 47, 0.3: 17, 0.15: 3}


@pytest.mark.parametrize(
    ("through", "zone"),
    [(14.4, None), (14.5, 1), (34.4, 1), (34.5, 2), (59.4, 2), (59.5, 3), (79.4, 3), (79.5, 4), (90, 4)],
)
def test_the_deciding_sieve_leaves_no_gap_between_zones(through: float, zone: int | None) -> None:
    """Derived: whole percent, half up; a finer sieve never passes more, so the two below are set to 10."""
    assert zone_of({**GOOD, 2.36: 95, 1.18: 92, 0.6: through, 0.3: 10, 0.15: 5}).zone == zone


def test_coarse_grains_are_sieved_out_before_the_mesh_stops_them() -> None:
    assert zone_of(GOOD).advice is SandAdvice.SIEVE_THE_COARSE_OUT
    sieved = {**GOOD, 4.75: 100, 2.36: 100, 1.18: 80}
    assert zone_of(sieved).advice is SandAdvice.TRY_A_PANEL


@pytest.mark.parametrize(
    ("sand", "advice"),
    [
        ({**GOOD, 0.6: 20, 0.3: 12}, SandAdvice.MIX_IN_FINER),
        ({**GOOD, 2.36: 98, 1.18: 95, 0.6: 88}, SandAdvice.MIX_IN_COARSER),
        ({**GOOD, 0.6: 10, 0.3: 8}, SandAdvice.LOOK_FOR_OTHER_SAND),
        ({**GOOD, 0.3: 40, 0.15: 20}, SandAdvice.LOOK_FOR_OTHER_SAND),
    ],
)
def test_sand_that_does_not_suit(sand: dict[float, float], advice: SandAdvice) -> None:
    assert zone_of(sand).advice is advice


def test_the_sieves_that_a_sand_misses_are_named() -> None:
    assert zone_of({**GOOD, 0.3: 40, 0.15: 20}).outside == (0.3, 0.15)
    assert zone_of(GOOD).outside == ()


@pytest.mark.parametrize(
    "sand",
    [
        {k: v for k, v in GOOD.items() if k != 0.3},
        {**GOOD, 5.0: 99},
        {**GOOD, 0.6: 101},
        {**GOOD, 0.6: -1},
        {**GOOD, 0.6: 80},
        {**GOOD, 0.15: float("nan")},
    ],
)
def test_a_sieve_test_that_nobody_can_have_read_is_refused(sand: dict[float, float]) -> None:
    with pytest.raises(OutOfRangeError):
        zone_of(sand)


@given(percents=st.lists(st.integers(0, 100), min_size=7, max_size=7))
def test_finer_sand_has_a_smaller_modulus(percents: list[int]) -> None:
    sand = dict(zip(SIEVES, sorted(percents, reverse=True), strict=True))
    finer = {sieve: min(100, percent + 5) for sieve, percent in sand.items()}
    assert 0 <= fineness_modulus(finer) <= fineness_modulus(sand) <= 6
    assert zone_of(sand).fineness_modulus == fineness_modulus(sand)


@pytest.mark.parametrize(("share", "advice"), [(0, "use"), (6, "use"), (6.01, "wash"), (25, "wash")])
def test_sand_with_more_than_six_percent_is_washed(share: float, advice: str) -> None:
    assert silt_verdict(share) is SiltAdvice(advice)


@pytest.mark.parametrize(
    ("air", "mortar", "advice"),
    [
        (4.9, None, DayAdvice.TOO_COLD), (5, None, DayAdvice.ORDINARY), (29.9, 35, DayAdvice.ORDINARY),
        (30, None, DayAdvice.WORK_EARLY_IN_SHADE), (40, 35, DayAdvice.WORK_EARLY_IN_SHADE),
        (40, 35.1, DayAdvice.COOL_THE_MIX), (40.1, 20, DayAdvice.TOO_HOT), (-5, 20, DayAdvice.TOO_COLD),
    ],
)  # fmt: skip
def test_heat_and_cold_up_to_their_limits(air: float, mortar: float | None, advice: DayAdvice) -> None:
    assert weather(air, mortar) is advice


@pytest.mark.parametrize("reading", [68, -41, float("nan")])
def test_fahrenheit_read_for_celsius_is_noticed(reading: float) -> None:
    with pytest.raises(OutOfRangeError, match="Fahrenheit"):
        weather(reading)
    with pytest.raises(OutOfRangeError, match="Fahrenheit"):
        weather(20, reading)


@pytest.mark.parametrize(
    ("rate", "advice"),
    [(0, WindAdvice.GO_ON), (0.49, WindAdvice.GO_ON), (0.5, WindAdvice.SHADE_AND_SCREEN),
     (0.99, WindAdvice.SHADE_AND_SCREEN), (1.0, WindAdvice.STOP), (3, WindAdvice.STOP)],
)  # fmt: skip
def test_work_stops_where_the_rate_is_high_and_not_where_it_is_low(rate: float, advice: WindAdvice) -> None:
    """One trade page prints "lower than 0.2 lb": a misprint, and not followed."""
    assert drying_wind(rate) is advice


@pytest.mark.parametrize("bad", [-0.1, float("nan"), float("inf")])
def test_no_reading_gets_no_verdict(bad: float) -> None:
    with pytest.raises(OutOfRangeError):
        drying_wind(bad)
    with pytest.raises(OutOfRangeError):
        silt_verdict(bad)


def test_volumes_of_nothing_are_refused() -> None:
    for parts, air in (([], 2), ([(0, 2650)], 2), ([(5, -1)], 2), ([(5, 2650)], 12)):
        with pytest.raises(OutOfRangeError):
            absolute_volume(parts, air=air)
    assert absolute_volume([(1000, 1000)]) == 1
