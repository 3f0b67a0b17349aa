"""Work of people. Examples are small sums worked by hand; the printed constants are held in `tests/published`."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations import BOOK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, on_the_tape, read_wrong, shown

BY_HAND: list[Example] = [
    ("digging_days", {"excavation_volume": 3.7}, "2.3"),  # 3.7 x 0.62 = 2.294
    ("mortar_to_mix", {"wall_mortar_volume": 1.3, "mortar_waste": 9}, "1.42"),  # 1.3 x 1.09 = 1.417
    ("mixing_days", {"mortar_to_mix": 1.9}, "1.6"),  # 1.9 x 0.82 = 1.558
    ("base_labour_days", {"base_concrete_volume": 0.85}, "2.5"),  # 0.85 x 2.90 = 2.465
    ("base_mason_days", {"base_concrete_volume": 2.4}, "0.4"),  # 2.4 x 0.17 = 0.408
    ("base_pour_people", {"base_labour_days": 4.2, "hours_per_day": 6.5}, "6"),  # 4.2 x 8 / 6.5 = 5.17
    (
        "cage_steel_mass",
        {"hoop_mass": 33, "bar_count": 28, "wall_height": 1.25, "bar_mass_per_metre": 0.4}, "47",
    ),  # 33 + 28 x 1.25 x 0.4 = 33 + 14
    ("steel_fitter_days", {"cage_steel_mass": 64}, "0.6"),  # 64 / 100
    ("steel_fixing_days", {"cage_steel_mass": 64}, "1.3"),  # fitter and helper: 1.28
    (
        "mesh_tying_days", {"plaster_area_outside": 11.8, "plaster_area_inside": 11.3, "mesh_day_area": 7}, "3.3",
    ),  # 23.1 / 7
    (
        "plaster_mason_days",
        {"plaster_area_outside": 11.8, "plaster_area_inside": 11.3, "mason_day_area": 3.5}, "6.6",
    ),  # 23.1 / 3.5
    ("plaster_labour_days", {"plaster_mason_days": 6.6}, "9.9"),  # one and a half times
    ("short_day_factor", {"hours_per_day": 6.5}, "1.23"),  # 8 / 6.5 = 1.2308
    ("digging_duration", {"digging_days": 5.3, "short_day_factor": 1.2, "crew_labourers": 3}, "3"),  # 6.36 / 3 = 2.12
    (
        "cage_duration",
        {"steel_fixing_days": 1.3, "mesh_tying_days": 3.3, "short_day_factor": 1.2, "crew_masons": 2,
         "crew_labourers": 3}, "2",
    ),  # 4.6 x 1.2 / 5 = 1.104
    (
        "mason_days", {"base_mason_days": 0.3, "steel_fitter_days": 0.7, "plaster_mason_days": 6.6}, "7.6",
    ),  # 0.3 + 0.7 + 6.6
    (
        "labourer_days",
        {"digging_days": 2.3, "base_labour_days": 2.5, "steel_fitter_days": 0.7, "mesh_tying_days": 3.3,
         "plaster_labour_days": 9.9}, "18.7",
    ),  # 2.3 + 2.5 + 0.7 + 3.3 + 9.9
    ("labour_total", {"mason_days": 7.6, "labourer_days": 18.7}, "26.3"),
    (
        "days_to_hand_over",
        {"site_ready_day": 9, "cage_duration": 2, "curing_days": 20, "proving_days": 24}, "61",
    ),  # 9 + base 1 + sets 3 + 2 + two faces 2 + 20 + 24
]  # fmt: skip

TANK_PART = {"crew_labourers": 3.0, "crew_masons": 2.0, "hours_per_day": 6.5, "mesh_day_area": 7.5}
AFTER_PART = {
    "mortar_to_mix", "mixing_days", "base_labour_days", "base_mason_days", "base_pour_people", "digging_days",
    "digging_duration", "cage_steel_mass", "steel_fitter_days", "steel_fixing_days", "mesh_tying_days",
    "plaster_mason_days", "plaster_labour_days", "cage_duration", "mason_days", "labourer_days", "labour_total",
    "days_to_hand_over",
}  # fmt: skip
WARN_ONLY = {
    "mesh_day_area", "mesh_tying_days", "plaster_mason_days", "cage_duration", "mason_days", "labourer_days",
    "labour_total", "days_to_hand_over",
}  # fmt: skip


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


def test_person_days_are_not_days() -> None:
    """Derived: 6.4 person-days of digging are 2 days for four people; one person alone takes 7."""
    values = {"digging_days": 6.4, "short_day_factor": 1, "crew_labourers": 4}
    assert shown("digging_duration", values) == "2"
    assert read_wrong("person_days_taken_as_days", values, "digging_duration") == 7


def test_short_days_make_more_days_and_not_fewer() -> None:
    values = {"hours_per_day": 5}
    assert BOOK.evaluate(values, ["short_day_factor"])["short_day_factor"] == pytest.approx(1.6)
    assert read_wrong("short_day_turned_round", values, "short_day_factor") == pytest.approx(0.625)


def test_curing_left_out_promises_the_tank_weeks_too_early() -> None:
    values = {"site_ready_day": 9, "cage_duration": 2, "curing_days": 28, "proving_days": 24}
    right = BOOK.evaluate(values, ["days_to_hand_over"])["days_to_hand_over"]
    assert right - read_wrong("curing_not_counted", values, "days_to_hand_over") == 28
    assert right - read_wrong("proving_not_counted", values, "days_to_hand_over") == 24


def test_mixing_is_done_by_those_who_serve_the_masons() -> None:
    values = {"digging_days": 2, "base_labour_days": 2, "steel_fitter_days": 1, "mesh_tying_days": 3,
              "plaster_labour_days": 9, "mortar_to_mix": 2}  # fmt: skip
    assert BOOK.evaluate(values, ["labourer_days"])["labourer_days"] == pytest.approx(17)
    assert read_wrong("mixing_counted_twice", values, "labourer_days") == pytest.approx(17 + 1.64)


def test_the_water_carrier_is_a_third_of_the_hands_at_the_base() -> None:
    values = {"base_concrete_volume": 2}
    assert read_wrong("water_carrier_forgotten", values, "base_labour_days") == 4
    assert shown("base_labour_days", values) == "5.8"


@given(days=st.floats(0.1, 40), factor=st.floats(0.8, 2), people=on_the_tape("crew_labourers"))
def test_the_days_hold_the_work_and_the_last_one_is_begun(days: float, factor: float, people: float) -> None:
    values = {"digging_days": days, "short_day_factor": factor, "crew_labourers": people}
    found = BOOK.evaluate(values, ["digging_duration"])["digging_duration"]
    assert found * people >= days * factor - 1e-6
    assert (found - 1) * people < days * factor


@pytest.mark.parametrize(("name", "bad"), [("crew_labourers", 0), ("hours_per_day", 12)])
def test_no_crew_and_endless_days_are_refused(name: str, bad: float) -> None:
    values = {"digging_days": 5, "hours_per_day": 8, "crew_labourers": 3, name: bad}
    with pytest.raises(OutOfRangeError, match=name):
        BOOK.evaluate(values, ["digging_duration"])
