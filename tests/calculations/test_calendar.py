"""The calendar keeps every wait, works on working days only and names what decides the end."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations.calendar import Job, calendar
from generator.formula import OutOfRangeError

BUILD = [
    Job("base", 2, {}),
    Job("bend rings", 3, {}, outdoors=False),
    Job("frame", 2, {"base": 3, "bend rings": 0}),
    Job("plaster", 2, {"frame": 0}),
    Job("keep wet", 0, {"plaster": 14}),
    Job("fill", 3, {"keep wet": 0}),
]


def test_a_build_worked_by_hand() -> None:
    """Six days a week: base 1-2; 3 days pass; frame 6 and, after the rest day 7, 8; plaster 9-10; filling from 25."""
    found = {slot.name: (slot.start, slot.end) for slot in calendar(BUILD)}
    assert found["base"] == (1, 2)
    assert found["frame"] == (6, 8)
    assert found["plaster"] == (9, 10)
    assert found["fill"] == (25, 27)


def test_what_has_time_to_spare_does_not_decide() -> None:
    decides = {slot.name: slot.decides for slot in calendar(BUILD, working_days=7)}
    assert decides["base"]
    assert not decides["bend rings"]


def test_rain_makes_outdoor_jobs_longer_only() -> None:
    found = {slot.name: slot.end - slot.start + 1 for slot in calendar(BUILD, working_days=7, lost_to_rain=0.5)}
    assert found["plaster"] == 4
    assert found["bend rings"] == 3


@given(
    st.lists(st.tuples(st.integers(0, 5), st.integers(0, 9)), min_size=1, max_size=6),
    st.integers(1, 7),
    st.sampled_from([0.0, 0.2, 0.5]),
)
def test_every_wait_is_kept(chain: list[tuple[int, int]], week: int, rain: float) -> None:
    jobs = [Job(str(i), days, {str(i - 1): wait} if i else {}) for i, (days, wait) in enumerate(chain)]
    slots = {slot.name: slot for slot in calendar(jobs, working_days=week, lost_to_rain=rain)}
    for i, (days, wait) in enumerate(chain):
        slot = slots[str(i)]
        if i:
            assert slot.start > slots[str(i - 1)].end + wait or slot.start == slots[str(i - 1)].end + wait + 1
        if days:
            assert (slot.start - 1) % 7 < week
            assert slot.end - slot.start + 1 >= days


@given(
    st.lists(st.tuples(st.integers(0, 4), st.lists(st.integers(0, 6), max_size=3)), min_size=1, max_size=6), st.data()
)
def test_a_job_decides_where_one_more_day_moves_the_end(
    drawn: list[tuple[int, list[int]]], data: st.DataObject
) -> None:
    """Independent: each job is made a day longer, and the calendar made again."""
    jobs = [
        Job(str(i), days, {str(data.draw(st.integers(0, i - 1))): wait for wait in waits} if i else {})
        for i, (days, waits) in enumerate(drawn)
    ]

    def last(of: list[Job]) -> int:
        return max(slot.end for slot in calendar(of, working_days=7))

    for number, slot in enumerate(sorted(calendar(jobs, working_days=7), key=lambda slot: int(slot.name))):
        longer = [Job(job.name, job.crew_days + (i == number), job.after) for i, job in enumerate(jobs)]
        assert slot.decides == (last(longer) > last(jobs))


@pytest.mark.parametrize(
    ("jobs", "options", "message"),
    [
        (BUILD, {"working_days": 0}, "take 1 to 7"),
        (BUILD, {"lost_to_rain": 0.9}, "no season to build in"),
        ([Job("a", 1, {"b": 0})], {}, "not there"),
        ([Job("a", 1, {"b": 0}), Job("b", 1, {"a": 0})], {}, "wait for each other"),
        ([Job("a", 300, {})], {"working_days": 1}, "not one season"),
    ],
)
def test_an_impossible_calendar_is_refused(jobs: list[Job], options: dict[str, float], message: str) -> None:
    with pytest.raises(OutOfRangeError, match=message):
        calendar(jobs, **options)  # type: ignore[arg-type]
