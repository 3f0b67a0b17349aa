"""The jobs of a build: unbroken coats, waits that nobody shortens, seven hold points, and people that are missing."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations.build_jobs import HOLD_POINTS, BuildSizes, build_jobs, people_missing
from generator.calculations.calendar import Slot, calendar
from generator.formula import OutOfRangeError

TANK = BuildSizes(
    excavation=6.4, concrete=1.7, steel=130, mesh=31, wall_area=15.9, floor_area=6.9, roof_area=7.7, mortar=1.4,
    water_depth=1.46, curing_days=20, prop_days=8, roof=True, masons=3, labourers=4, carrying_days=3,
)  # fmt: skip
OPEN = replace(TANK, roof=False, roof_area=0)


def placed(sizes: BuildSizes, **options: float) -> dict[str, Slot]:
    return {slot.name: slot for slot in calendar(build_jobs(sizes), **options)}  # type: ignore[arg-type]


def test_days_worked_by_hand() -> None:
    """Dig 6.4 x .62 / 4 = 0.99; steel 130 x .02 / 2 / 7 = 0.19; mesh 31 / 8 / 7 = 0.55; floor 6.9 / 4 / 3 = 0.6."""
    days = {job.name: job.crew_days for job in build_jobs(TANK)}
    assert days["set_out_and_dig"] == 1
    assert days["bend_hoops"] == days["frame_and_hoops"] == days["mesh_and_fittings"] == days["floor_and_cove"] == 1
    assert days["staged_filling"] == 5  # 1.46 m at 0.30 m a day
    slow = {job.name: job.crew_days for job in build_jobs(replace(TANK, masons=1, labourers=1))}
    assert slow["set_out_and_dig"] == 4  # 3.97
    assert slow["bend_hoops"] == 1  # 2.6 person-days, half of them for bending, two people: 0.65
    assert slow["mesh_and_fittings"] == 2  # 1.94
    assert slow["floor_and_cove"] == 2  # 1.73
    assert build_jobs(TANK)[1].crew_days == 3


def test_an_open_tank_on_days_worked_by_hand() -> None:
    """Counted on fingers, seven days a week.

    Clear 1, dig 2, carried up 1-3, stone 4, steel 5, base 6, bent 7, sets 7-9, frame 10, mesh 11, coats 12 and 13,
    floor 14, wet 15-34, wash 35, filled 36-40, soaks 41-47, test 48-54, flushed 55-56, chlorine 57, stands 58, over 59.
    """
    found = {name: (slot.start, slot.end) for name, slot in placed(OPEN, working_days=7).items()}
    assert found["base_concrete"] == (6, 6)
    assert found["bend_hoops"] == (7, 7)
    assert found["frame_and_hoops"] == (10, 10)
    assert found["first_coat"] == (12, 12)
    assert found["second_face"] == (13, 13)
    assert found["finishing_wash"] == (35, 35)
    assert found["staged_filling"] == (36, 40)
    assert found["leak_test"][0] == 55
    assert found["hand_over"] == (59, 59)


def test_curing_is_counted_from_the_last_coat_which_is_the_roof() -> None:
    found = placed(TANK, working_days=7)
    assert found["finishing_wash"].start == found["roof_pour"].end + TANK.curing_days + 1
    assert found["remove_props"].start == found["roof_pour"].end + TANK.prop_days + 1
    assert found["roof_forms"].start > found["floor_and_cove"].end + 7


def test_long_props_hold_up_the_filling() -> None:
    found = placed(replace(TANK, prop_days=28), working_days=7)
    assert found["finishing_wash"].start > found["remove_props"].end >= found["roof_pour"].end + 28


@pytest.mark.parametrize("sizes", [TANK, OPEN])
def test_coats_base_and_roof_have_one_day_and_the_second_face_is_next_day(sizes: BuildSizes) -> None:
    jobs = {job.name: job for job in build_jobs(replace(sizes, wall_area=80, concrete=9))}
    one_day = {"base_concrete", "first_coat", "second_face", "roof_pour"} & set(jobs)
    assert {jobs[name].crew_days for name in one_day} == {1}
    assert jobs["second_face"].after == {"first_coat": 0}


def test_all_seven_hold_points_stand_before_what_they_guard() -> None:
    jobs = {job.name: job for job in build_jobs(TANK)}
    assert [name for name in jobs if name.startswith("hold_")] == list(HOLD_POINTS)
    assert all(jobs[name].crew_days == 0 for name in HOLD_POINTS)
    guarded = {"hold_ground": "base_stone", "hold_base_steel": "base_concrete", "hold_cage": "hold_first_batch",
               "hold_first_batch": "first_coat", "hold_roof": "roof_pour", "hold_curing": "wet_curing",
               "hold_leak_test": "flush"}  # fmt: skip
    assert all(hold in jobs[job].after for hold, job in guarded.items())
    assert {job.name for job in build_jobs(OPEN)} & set(HOLD_POINTS) == set(HOLD_POINTS) - {"hold_roof"}


@given(
    roof=st.booleans(), masons=st.integers(1, 10), labourers=st.integers(1, 20), curing=st.integers(14, 28),
    props=st.integers(7, 28), size=st.floats(0.05, 4), week=st.integers(5, 7), rain=st.sampled_from([0.0, 0.3]),
)  # fmt: skip
def test_no_calendar_shortens_a_wait_and_the_hand_over_comes_last(
    roof: bool, masons: int, labourers: int, curing: int, props: int, size: float, week: int, rain: float
) -> None:
    sizes = BuildSizes(
        6 * size, 1.7 * size, 130 * size, 31 * size, 16 * size, 7 * size, 7.5 * size if roof else 0, 1.4 * size, 1.5,
        curing, props, roof, masons, labourers, 2,
    )  # fmt: skip
    found = placed(sizes, working_days=week, lost_to_rain=rain)
    last = found["roof_pour" if roof else "floor_and_cove"].end
    assert found["frame_and_hoops"].start > found["base_concrete"].end + 3
    assert found["staged_filling"].start > last + curing
    assert found["flush"].start > found["staged_filling"].end + 14
    assert found["disinfection"].start > found["flush"].end
    assert found["hand_over"].end == max(slot.end for slot in found.values())
    assert found["hand_over"].decides


def test_waiting_decides_more_of_the_calendar_than_work() -> None:
    """Twice the crew does not bring the hand-over a tenth nearer: most days are waiting."""
    few, many = placed(TANK)["hand_over"].end, placed(replace(TANK, masons=6, labourers=8))["hand_over"].end
    assert few - many < few / 10


def test_missing_people_worked_by_hand() -> None:
    """Base 1.7 x 2.9 = 4.93: 5 labourers, 1 too few; face 15.9 / 4: 4 masons with 6 hands; roof 7.7 / 4: 2 masons."""
    assert people_missing(TANK) == {"base_concrete": (0, 1), "first_coat": (1, 2), "second_face": (1, 2)}
    assert people_missing(replace(TANK, masons=4, labourers=6)) == {}
    assert people_missing(replace(TANK, masons=1))["roof_pour"] == (1, 0)
    # a face is 15.9 of the 46.4 m2: of 40 m3 it takes 13.7 m3, which 11.24 labourers mix in a day
    assert people_missing(replace(TANK, mortar=40))["first_coat"] == (1, 8)
    assert "roof_pour" not in people_missing(replace(OPEN, masons=1, labourers=1))


@pytest.mark.parametrize(
    ("changed", "message"),
    [
        ({"curing_days": 13}, "13 days of wetting are too few"),
        ({"prop_days": 6}, "at least 7 days.*licensed engineer"),
        ({"roof_area": 0}, "give its area"),
        ({"masons": 0}, "nobody works on it alone"),
        ({"labourers": 0}, "nobody works on it alone"),
        ({"water_depth": 0}, "depth of the full tank"),
        ({"steel": -1}, "steel of -1 can't be"),
        ({"mesh": float("nan")}, "measure again"),
    ],
)
def test_a_build_that_can_not_be_is_refused(changed: dict[str, float], message: str) -> None:
    sizes = replace(TANK, **changed)  # type: ignore[arg-type]
    with pytest.raises(OutOfRangeError, match=message):
        build_jobs(sizes)
    with pytest.raises(OutOfRangeError, match=message):
        people_missing(sizes)


def test_a_cage_of_mesh_alone_is_hung_on_the_set_base_with_no_hoop_to_bend() -> None:
    jobs = {job.name: job for job in build_jobs(replace(TANK, steel=0))}
    assert not jobs.keys() & {"bend_hoops", "frame_and_hoops"}
    assert jobs["mesh_and_fittings"].after == {"base_concrete": 3}
