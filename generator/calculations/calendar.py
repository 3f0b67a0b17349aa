"""The build's calendar: what follows what, when each job may start, and what holds up the hand-over.

A job takes crew days, and after it a time may have to pass before the next may start (a base sets, a wall is kept wet).
Crew days fall on working days only; time that passes runs on rest days too. Jobs that rain stops lose the days that the
trainer expects to lose.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from graphlib import CycleError, TopologicalSorter

from generator.formula import OutOfRangeError, whole_up

MOST_DAYS = 400
WEEK = 7


@dataclass(frozen=True, slots=True)
class Job:
    """One job.

    Args:
        name: key of its words.
        crew_days: working days that the crew is busy, 0 for time that only passes.
        after: job -> whole days that must pass between that job's end and this one's start.
        outdoors: whether rain stops it.
    """

    name: str
    crew_days: int
    after: Mapping[str, int]
    outdoors: bool = True


@dataclass(frozen=True, slots=True)
class Slot:
    """When a job is done.

    Args:
        name: key of its words.
        start: first day, counted from 1.
        end: last day.
        decides: whether one more day here makes the whole build a day longer.
    """

    name: str
    start: int
    end: int
    decides: bool


def calendar(jobs: Sequence[Job], *, working_days: int = 6, lost_to_rain: float = 0.0) -> tuple[Slot, ...]:
    """Put the jobs on days, each as early as it may be.

    Args:
        jobs: in any order; `after` names jobs of the list.
        working_days: days worked in a week, 1 to 7; the last days of each week are rest days.
        lost_to_rain: share of outdoor days lost to rain, 0 to 0.8; the jobs grow by it. Part of a day is carried on to
            the next job, so that many short jobs lose no more than one long one.

    Returns:
        A slot for each job, in order of start, then of the list.

    Raises:
        OutOfRangeError: a share or week outside its range, an unknown job, a circle, or more than 400 days.

    Example:
        >>> [(s.name, s.start, s.end) for s in calendar([Job("base", 2, {}), Job("frame", 1, {"base": 3})])]
        [('base', 1, 2), ('frame', 6, 6)]
    """
    if not 1 <= working_days <= WEEK:
        raise OutOfRangeError(f"{working_days} working days in a week: take 1 to 7")
    if not 0 <= lost_to_rain <= 0.8:
        raise OutOfRangeError(
            f"{lost_to_rain:.0%} of the days lost to rain is no season to build in: wait for a drier one"
        )
    by_name = {job.name: job for job in jobs}
    unknown = [before for job in jobs for before in job.after if before not in by_name]
    if unknown or len(by_name) != len(jobs):
        raise OutOfRangeError(f"the calendar names a job that is not there, or one twice: {unknown or sorted(by_name)}")
    try:
        order = list(TopologicalSorter({job.name: set(job.after) for job in jobs}).static_order())
    except CycleError as error:
        raise OutOfRangeError(f"the jobs wait for each other: {' -> '.join(error.args[1])}") from None
    longer = _with_rain([by_name[name] for name in order], lost_to_rain)
    found = _place(order, by_name, longer, working_days)
    last = max((end for _, end in found.values()), default=0)
    if last > MOST_DAYS:
        raise OutOfRangeError(f"the build would take {last} days; more than {MOST_DAYS} is not one season's work")
    # rest days would hide what decides: a day's delay could vanish in one
    unbroken = {name: end for name, (_, end) in _place(order, by_name, longer, WEEK).items()}
    latest = _latest(order, by_name, longer, max(unbroken.values(), default=0))
    slots = [Slot(job.name, *found[job.name], latest[job.name] == unbroken[job.name]) for job in jobs]
    return tuple(sorted(slots, key=lambda slot: slot.start))


def _latest(order: Sequence[str], jobs: Mapping[str, Job], crew_days: Mapping[str, int], last: int) -> dict[str, int]:
    """The day on which each job must end so that the last of all ends on its day, without rest days."""
    latest = dict.fromkeys(order, last)
    for name in reversed(order):
        for before, wait in jobs[name].after.items():
            latest[before] = min(latest[before], latest[name] - crew_days[name] - wait)
    return latest


def _with_rain(jobs: Sequence[Job], lost_to_rain: float) -> dict[str, int]:
    """Crew days of each job with the days that rain takes from it."""
    found, worked, dry = {}, 0.0, 0
    for job in jobs:
        found[job.name] = job.crew_days
        if job.outdoors and job.crew_days:
            worked += job.crew_days / (1 - lost_to_rain)
            dry += job.crew_days
            late = int(whole_up(worked)) - dry
            found[job.name] += late
            dry += late
    return found


def _place(
    order: Sequence[str], jobs: Mapping[str, Job], crew_days: Mapping[str, int], working_days: int
) -> dict[str, tuple[int, int]]:
    found: dict[str, tuple[int, int]] = {}
    for name in order:
        day = 1 + max((found[before][1] + wait for before, wait in jobs[name].after.items()), default=0)
        if crew_days[name] == 0:
            found[name] = (day, day - 1)
            continue
        if working_days == WEEK:
            found[name] = (day, day + crew_days[name] - 1)
            continue
        while not _worked(day, working_days):
            day += 1
        start, left = day, crew_days[name] - 1
        while left:
            day += 1
            left -= _worked(day, working_days)
        found[name] = (start, day)
    return found


def _worked(day: int, working_days: int) -> bool:
    return (day - 1) % WEEK < working_days
