"""How big a tank must be when water comes and goes unevenly: roof inflow, sequent peak, simulation, reliability.

The rule "people x litres x dry days" is for a season without any inflow. Where a spring or rain goes on, the tank must
bridge the worst run of shortfalls. A record is run through twice: one pass misses a shortfall that starts in December
and ends in March.

References:
    .. [1] Sequent peak: K = max(0, K before + demand - inflow), volume = largest K (read at second hand; the two cycles
       are from memory and are proven here by brute force in the tests).
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import chain
from math import isfinite

from generator.formula import ASK, OutOfRangeError

_HAIR = 1e-9


@dataclass(frozen=True, slots=True)
class Run:
    """What a tank of one size does over a record.

    Args:
        reliability: share of the steps whose whole demand was met.
        share_delivered: delivered / asked for, over the whole record.
        short_steps: number of steps with less than the demand.
        longest_short_run: most steps without enough, one after another.
        spilled: water that ran over [same unit as the inflow].
        levels: what stands in the tank at the end of each step.
    """

    reliability: float
    share_delivered: float
    short_steps: int
    longest_short_run: int
    spilled: float
    levels: tuple[float, ...]


def storage_by_sequent_peak(inflow: Sequence[float], demand: Sequence[float]) -> float:
    """Smallest storage that never runs dry, from a record that repeats itself.

    Args:
        inflow: water that comes in each step (day, month), 0 or more, in one unit of volume.
        demand: water that is taken in each step, as many steps, in the same unit.

    Returns:
        Storage in the unit of the record.

    Raises:
        OutOfRangeError: records of different length, negative numbers, or less inflow than demand over the record: then
            no size of tank is enough, and another source or a smaller demand is needed.

    Example:
        >>> storage_by_sequent_peak([0, 0, 6, 6], [2, 2, 2, 2])
        4.0
    """
    _refuse(inflow, demand)
    _refuse_too_little(inflow, demand)
    short, most = 0.0, 0.0
    for comes, goes in chain(*(zip(inflow, demand, strict=True) for _ in range(2))):
        short = max(0.0, short + goes - comes)
        most = max(most, short)
    return most


def storage_by_simulation(inflow: Sequence[float], demand: Sequence[float]) -> float:
    """Smallest storage that never runs dry, found by running tanks of different size through the record, day by day.

    The same as `storage_by_sequent_peak` by another way, to a millionth: the tests hold the two together. The tank is
    full before the first step, and the record runs twice.

    Args:
        inflow: as in `storage_by_sequent_peak`.
        demand: as in `storage_by_sequent_peak`.

    Raises:
        OutOfRangeError: as `storage_by_sequent_peak`.

    Example:
        >>> round(storage_by_simulation([0, 0, 6, 6], [2, 2, 2, 2]), 4)
        4.0
    """
    _refuse(inflow, demand)
    _refuse_too_little(inflow, demand)
    comes, goes = [*inflow, *inflow], [*demand, *demand]
    return _smallest(lambda size: run_tank(size, comes, goes, start=size).short_steps == 0, high=sum(demand))


def run_tank(storage: float, inflow: Sequence[float], demand: Sequence[float], *, start: float | None = None) -> Run:
    """Run a record through a tank of one size, step by step: first the water comes, what is too much runs over.

    Args:
        storage: usable volume, 0 or more, in the unit of the record.
        inflow: as in `storage_by_sequent_peak`.
        demand: as in `storage_by_sequent_peak`.
        start: what stands in the tank before the first step; None lets the record run once before it is counted.

    Raises:
        OutOfRangeError: records of different length, or negative numbers.

    Example:
        >>> run = run_tank(3, [0, 0, 6, 6], [2, 2, 2, 2])
        >>> run.reliability, run.short_steps
        (0.75, 1)
    """
    _refuse(inflow, demand)
    if not (isfinite(storage) and storage >= 0) or (start is not None and not 0 <= start <= storage):
        raise OutOfRangeError("a tank holds from nothing to its own volume")
    steps = list(zip(inflow, demand, strict=True))
    level = start if start is not None else storage
    if start is None:
        for comes, goes in steps:
            level = min(storage, max(0.0, level + comes - goes))
    levels: list[float] = []
    given, spilled, short, run, longest = 0.0, 0.0, 0, 0, 0
    for comes, goes in steps:
        # what is drawn in a step leaves room for what comes in the same step
        there = level + comes
        out = min(goes, there)
        level = min(storage, there - out)
        spilled += there - out - level
        given += out
        run = run + 1 if out < goes - _HAIR else 0
        short += run > 0
        longest = max(longest, run)
        levels.append(level)
    asked = sum(demand)
    return Run(
        1 - short / len(steps), given / asked if asked else 1.0, short, longest, spilled, tuple(levels)
    )  # fmt: skip


def storage_for_reliability(inflow: Sequence[float], demand: Sequence[float], reliability: float) -> float:
    """Smallest storage whose share of good steps reaches a wanted one, to a thousandth of the sequent peak.

    Args:
        inflow: as in `storage_by_sequent_peak`.
        demand: as in `storage_by_sequent_peak`.
        reliability: wanted share of steps with the whole demand, above 0 and at most 1.

    Raises:
        OutOfRangeError: as `storage_by_sequent_peak`, or a share outside its range.
    """
    if not 0 < reliability <= 1:
        raise OutOfRangeError(
            f"a share of good days of {reliability:g} can't be asked for; take more than 0, at most 1"
        )
    high = storage_by_sequent_peak(inflow, demand)
    return _smallest(lambda size: run_tank(size, inflow, demand).reliability >= reliability - _HAIR, high)


def roof_inflow(
    rain: Sequence[float],
    roof_area: float,
    runoff_coefficient: float,
    first_flush_depth: float,
    *,
    dry_steps: int,
) -> tuple[float, ...]:
    """What a roof brings to the tank on each day of a record of rain; the first water after dry days is let away.

    Args:
        rain: of each day, 0 or more [mm].
        roof_area: measured on the ground below it, above 0 [m2].
        runoff_coefficient: share of the rain that reaches the gutter's end, above 0 and at most 1 [-].
        first_flush_depth: rain that washes the roof and is let away, 0 or more, counted at the gutter's end [mm].
        dry_steps: days without rain after which the roof is dirty again, 1 or more. Before the first day it is dirty.

    Returns:
        Water of each day [L].

    Raises:
        OutOfRangeError: a number outside its range; the message names it.

    Example:
        >>> roof_inflow([0, 10, 10, 0, 0, 10], 50, 0.8, 1.0, dry_steps=2)
        (0.0, 350.0, 400.0, 0.0, 0.0, 350.0)
    """
    if not rain or not all(isfinite(depth) and depth >= 0 for depth in rain):
        raise OutOfRangeError("the record of rain needs a number of 0 or more for each day; ask the nearest gauge")
    if not (isfinite(roof_area) and roof_area > 0):
        raise OutOfRangeError(f"roof_area = {roof_area:g} m2 is not above 0; measure the roof on the ground below it")
    if not 0 < runoff_coefficient <= 1:
        raise OutOfRangeError(f"runoff_coefficient = {runoff_coefficient:g} is not above 0 and at most 1; {ASK}")
    if not (isfinite(first_flush_depth) and first_flush_depth >= 0):
        raise OutOfRangeError(f"first_flush_depth = {first_flush_depth:g} mm is not 0 or more; {ASK}")
    if dry_steps < 1:
        raise OutOfRangeError(f"dry_steps = {dry_steps} is less than 1: a roof is washed after dry days")
    brought: list[float] = []
    dirt, dry = first_flush_depth, 0
    for depth in rain:
        if depth == 0:
            dry += 1
            dirt = first_flush_depth if dry >= dry_steps else dirt
            brought.append(0.0)
            continue
        dry = 0
        arrives = depth * runoff_coefficient
        away = min(dirt, arrives)
        dirt -= away
        brought.append((arrives - away) * roof_area)
    return tuple(brought)


def _smallest(enough: Callable[[float], bool], high: float) -> float:
    """The smallest size that is enough, to a millionth of one that surely is."""
    low = 0.0
    if enough(low):
        return low
    for _ in range(60):
        if high - low <= 1e-6 * max(high, _HAIR):
            break
        middle = (low + high) / 2
        if enough(middle):
            high = middle
        else:
            low = middle
    return high


def _refuse(inflow: Sequence[float], demand: Sequence[float]) -> None:
    if len(inflow) != len(demand) or not inflow:
        raise OutOfRangeError(f"{len(inflow)} steps of inflow and {len(demand)} of demand do not make one record")
    if not all(isfinite(amount) and amount >= 0 for amount in (*inflow, *demand)):
        raise OutOfRangeError("inflow and demand are 0 or more; check the record for a minus sign or a gap")


def _refuse_too_little(inflow: Sequence[float], demand: Sequence[float]) -> None:
    if sum(inflow) < sum(demand) - _HAIR * max(1.0, sum(demand)):
        raise OutOfRangeError(
            f"less water comes ({sum(inflow):.4g}) than is taken ({sum(demand):.4g}): no size of tank is enough; "
            "find more water or take less"
        )
