"""Storage: what people and animals need, what spring and roof give. Sums by hand; the mistakes by their size."""

import pytest
from hypothesis import given

from generator.calculations import BOOK
from generator.calculations.storage import MEAN_YEAR, mean_fill_time
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

BY_HAND: list[Example] = [
    ("people_need", {"people": 23, "litres_each": 30}, "690.0"),  # 23 x 30
    (
        "animal_need",
        {"large_animals": 4, "litres_per_large_animal": 35, "small_animals": 26, "litres_per_small_animal": 6},
        "296.0",
    ),  # 140 + 156
    ("daily_need", {"people_need": 690, "animal_need": 296}, "986.0"),  # 690 + 296
    ("dry_season_need", {"daily_need": 986, "dry_days": 50}, "49300.0"),  # 986 x 50
    ("spring_flow", {"bucket_litres": 12, "bucket_seconds": 48}, "0.2500"),  # a quarter of a litre
    ("can_fill_time", {"can_litres": 18, "spring_flow": 0.25}, "72"),  # 18 x 4 s
    ("spring_daily_yield", {"spring_flow": 0.01, "spring_share_kept": 75}, "648.0"),  # 864 x 3/4
    ("daily_shortfall", {"daily_need": 986, "spring_daily_yield": 648}, "338.0"),  # 986 - 648
    ("storage_needed", {"daily_shortfall": 338, "dry_days": 50}, "16900.0"),  # 338 x 50
    ("storage_needed_volume", {"storage_needed": 16900}, "16.90"),  # 1000 L in 1 m3
    ("roof_yield", {"rain_depth": 320, "roof_area": 45, "runoff_coefficient": 0.75}, "10800.0"),  # 14400 x 3/4
    ("first_flush_volume", {"first_flush_depth": 1.5, "roof_area": 45}, "67.5"),  # 45 + 22.5
    (
        "roof_yield_kept", {"roof_yield": 10800, "first_flush_volume": 67.5, "first_flushes": 14}, "9855.0",
    ),  # 10800 - 945
    ("days_of_water", {"tank_litres": 8450, "daily_shortfall": 338}, "25.0"),  # 338 x 25
    (
        "filling_days", {"tank_litres": 8450, "spring_daily_yield": 1036, "daily_need": 986}, "169.0",
    ),  # 50 L are left each day
    (
        "people_served",
        {"spring_daily_yield": 648, "tank_litres": 8450, "dry_days": 50, "animal_need": 296, "litres_each": 30},
        "17",
    ),  # 648 + 169 - 296 = 521, which is 17 x 30 and 11 L
]  # fmt: skip

TANK_PART = {
    "people": 23.0, "litres_each": 22.5, "dry_days": 47.0, "large_animals": 7.0, "litres_per_large_animal": 33.0,
    "small_animals": 31.0, "litres_per_small_animal": 6.5, "bucket_litres": 7.0, "bucket_seconds": 903.0,
    "spring_share_kept": 65.0, "can_litres": 19.0, "rain_depth": 437.0, "roof_area": 53.0,
    "runoff_coefficient": 0.7, "first_flush_depth": 1.5, "first_flushes": 17.0,
}  # fmt: skip
AFTER_PART = {"days_of_water", "filling_days"}
WARN_ONLY_VALUES = [MEAN_YEAR]
PLACE = {**TANK_PART, "tank_litres": 9000.0}


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


def test_litres_in_a_minute_make_the_spring_sixty_times_as_strong() -> None:
    values: dict[str, float] = {"bucket_litres": 12, "bucket_seconds": 48}
    assert read_wrong("litres_a_minute_for_a_second", values, "spring_flow") == pytest.approx(15)
    assert read_wrong("seconds_over_litres", values, "spring_flow") == pytest.approx(4)


def test_a_spring_that_is_too_strong_by_mistake_hides_a_shortfall() -> None:
    """The mistake is carried on: nothing seems to be missing, so nobody builds."""
    assert BOOK.evaluate(PLACE, ["storage_needed"])["storage_needed"] > 20_000
    assert read_wrong("litres_a_minute_for_a_second", PLACE, "storage_needed") == 0


def test_forgotten_animals_leave_people_without() -> None:
    right, wrong = (
        BOOK.evaluate(PLACE, ["daily_need"])["daily_need"],
        read_wrong("animals_forgotten", PLACE, "daily_need"),
    )
    assert right - wrong == pytest.approx(7 * 33 + 31 * 6.5)
    assert read_wrong("goats_drink_like_cattle", PLACE, "animal_need") == pytest.approx(38 * 33)
    assert read_wrong("small_animals_forgotten", PLACE, "animal_need") == pytest.approx(231)


def test_months_of_four_weeks_lose_two_days_in_thirty() -> None:
    values: dict[str, float] = {"daily_shortfall": 338, "dry_days": 60}
    assert read_wrong("months_of_four_weeks", values, "storage_needed") == pytest.approx(338 * 56)


def test_a_first_flush_is_taken_off_for_every_wash() -> None:
    values: dict[str, float] = {"roof_yield": 10800, "first_flush_volume": 67.5, "first_flushes": 14}
    assert read_wrong("first_flush_forgotten", values, "roof_yield_kept") == 10800
    assert read_wrong("roof_washed_once", values, "roof_yield_kept") == pytest.approx(10732.5)


def test_more_washing_than_rain_leaves_nothing_and_not_less() -> None:
    assert shown("roof_yield_kept", {"roof_yield": 40, "first_flush_volume": 67.5, "first_flushes": 1}) == "0.0"


def test_a_strong_spring_leaves_nothing_missing() -> None:
    values: dict[str, float] = {"daily_need": 500, "spring_daily_yield": 648, "dry_days": 80, "tank_litres": 100}
    assert shown("daily_shortfall", values) == "0.0"
    assert shown("storage_needed", values) == "0.0"
    assert shown("days_of_water", values) == "365.0"  # even the smallest tank is never emptied


def test_a_tank_never_fills_where_all_is_drawn() -> None:
    values: dict[str, float] = {"tank_litres": 100, "spring_daily_yield": 500, "daily_need": 500}
    assert shown("filling_days", values) == "365.0"


def test_without_a_spring_the_whole_need_is_stored() -> None:
    found = BOOK.evaluate({**PLACE, "spring_share_kept": 0}, ["storage_needed", "dry_season_need"])
    assert found["storage_needed"] == found["dry_season_need"]


def test_where_the_animals_drink_all_nobody_is_served() -> None:
    assert shown("people_served", {**PLACE, "animal_need": 18000}) == "0"


def test_a_spring_too_strong_for_a_bucket_is_refused_with_who_to_ask() -> None:
    with pytest.raises(OutOfRangeError, match=r"bucket_seconds = 2 s is outside 5 to 1200 s.*licensed engineer"):
        BOOK.evaluate({"bucket_litres": 20, "bucket_seconds": 2}, ["spring_flow"])


@pytest.mark.parametrize(
    ("seconds", "message"), [([], "0 timings"), ([30, 31], "2 timings are too few"), ([30, 0, 31], "above 0"),
                             ([30, float("nan"), 31], "above 0"), ([30, float("inf"), 31], "above 0")],
)  # fmt: skip
def test_too_few_or_broken_timings_are_refused(seconds: list[float], message: str) -> None:
    with pytest.raises(OutOfRangeError, match=message):
        mean_fill_time(seconds)


@given(values=givens(*TANK_PART))
def test_what_is_stored_and_what_runs_in_carry_the_place_over_the_dry_days(values: dict[str, float]) -> None:
    found = BOOK.evaluate(values, ["storage_needed", "daily_need", "spring_daily_yield", "dry_season_need"])
    comes = found["spring_daily_yield"] * values["dry_days"]
    assert found["storage_needed"] + comes >= found["dry_season_need"] * (1 - 1e-9)
    assert found["storage_needed"] == 0 or found["storage_needed"] + comes == pytest.approx(found["dry_season_need"])


@given(values=givens(*TANK_PART))
def test_the_people_served_get_their_water_and_one_more_would_not(values: dict[str, float]) -> None:
    found = BOOK.evaluate({**values, "tank_litres": 9000}, ["people_served", "spring_daily_yield", "animal_need"])
    there = found["spring_daily_yield"] + 9000 / values["dry_days"] - found["animal_need"]
    served = found["people_served"] * values["litres_each"]
    assert served <= max(there, 0) * (1 + 1e-9) + 1e-6
    assert served + values["litres_each"] > there - 1e-6


@given(values=givens("people", "litres_each", "bucket_litres", "bucket_seconds", "spring_share_kept", "dry_days"))
def test_a_tank_of_the_storage_lasts_the_dry_days(values: dict[str, float]) -> None:
    found = BOOK.evaluate({**values, "animal_need": 0}, ["storage_needed", "daily_shortfall"])
    if not 100 <= found["storage_needed"] <= 50_000:
        return
    asked = {"tank_litres": found["storage_needed"], "daily_shortfall": found["daily_shortfall"]}
    assert BOOK.evaluate(asked, ["days_of_water"])["days_of_water"] == pytest.approx(values["dry_days"])
