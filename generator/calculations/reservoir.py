"""How big a tank must be when water comes and goes unevenly: sequent peak, simulation, reliability.

The rule "people x litres x dry days" is for a season without any inflow. Where a spring or rain goes on, the tank must
bridge the worst run of shortfalls. A record is run through twice: one pass misses a shortfall that starts in December
and ends in March.

References:
    .. [1] Sequent peak: K = max(0, K before + demand - inflow), volume = largest K (read at second hand; the two cycles
       are from memory and are proven here by brute force in the tests).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import chain

from generator.formula import OutOfRangeError

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
    if sum(inflow) < sum(demand) - _HAIR:
        raise OutOfRangeError(
            f"less water comes ({sum(inflow):.4g}) than is taken ({sum(demand):.4g}): no size of tank is enough; "
            "find more water or take less"
        )
    short, most = 0.0, 0.0
    for comes, goes in chain(*(zip(inflow, demand, strict=True) for _ in range(2))):
        short = max(0.0, short + goes - comes)
        most = max(most, short)
    return most


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
    if storage < 0 or (start is not None and not 0 <= start <= storage):
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
    low = 0.0
    if run_tank(low, inflow, demand).reliability >= reliability:
        return low
    for _ in range(60):
        if high - low <= 1e-6 * max(high, 1e-9):
            break
        middle = (low + high) / 2
        if run_tank(middle, inflow, demand).reliability >= reliability - _HAIR:
            high = middle
        else:
            low = middle
    return high


def _refuse(inflow: Sequence[float], demand: Sequence[float]) -> None:
    if len(inflow) != len(demand) or not inflow:
        raise OutOfRangeError(f"{len(inflow)} steps of inflow and {len(demand)} of demand do not make one record")
    if min(inflow) < 0 or min(demand) < 0:
        raise OutOfRangeError("inflow and demand are 0 or more; check the record for a minus sign")
