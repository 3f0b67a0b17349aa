"""A workshop's hours: what is taught when, with an opening and an end each day, tea and a meal."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

OPENING, RECALL, CLOSING, TEA, MEAL = 15, 10, 10, 15, 60
"""Minutes: names and safety walk on the first day; safety word and what was learnt yesterday; the end of a day."""
_LONG_DAY, _SHORT_DAY = 300, 150
_STEP = 5


@dataclass(frozen=True, slots=True)
class Block:
    """Something to teach.

    Args:
        module: its id.
        kind: `talk`, `show` or `do`.
        minutes: how long.
    """

    module: str
    kind: str
    minutes: int


@dataclass(frozen=True, slots=True)
class Session:
    """A line of the programme.

    Args:
        start: minutes since midnight.
        end: minutes since midnight.
        kind: `talk`, `show`, `do`, `opening`, `recall`, `closing`, `tea`, `meal`, or `build`: work on the tank.
        module: what is taught; empty where nothing is.
    """

    start: int
    end: int
    kind: str
    module: str = ""


def minutes_of(clock: str) -> int:
    """Minutes since midnight.

    Example:
        >>> minutes_of("10:30")
        630
    """
    hours, minutes = clock.split(":")
    return 60 * int(hours) + int(minutes)


def clock_of(minutes: int) -> str:
    """A time of day.

    Example:
        >>> clock_of(630)
        '10:30'
    """
    return f"{minutes // 60:02d}:{minutes % 60:02d}"


def capacity(days: int, start: str, end: str) -> int:
    """Minutes of teaching that so many days hold.

    Example:
        >>> capacity(1, "10:00", "16:00")
        245
    """
    first, last = minutes_of(start), minutes_of(end)
    frames = [_frame(first, last, first_day=day == 0) for day in range(days)]
    return sum(piece.end - piece.start for frame in frames for piece in frame if not piece.kind)


def programme(blocks: Sequence[Block], days: int, start: str, end: str) -> tuple[tuple[Session, ...], ...]:
    """The days of a workshop; what time is left over is for the tank.

    Args:
        blocks: what is taught, in order; a block that meets a break goes on behind it.
        days: how many.
        start: hour at which a day begins.
        end: hour at which it ends.

    Raises:
        ValueError: the blocks need more time than there is.

    Example:
        >>> [day] = programme([Block("frame", "talk", 60)], 1, "10:00", "12:00")
        >>> [(clock_of(s.start), s.kind) for s in day]
        [('10:00', 'opening'), ('10:15', 'talk'), ('11:15', 'build'), ('11:50', 'closing')]
    """
    todo = [block for block in blocks if block.minutes]
    found = []
    for day in range(days):
        line: list[Session] = []
        for piece in _frame(minutes_of(start), minutes_of(end), first_day=day == 0):
            line += _filled(piece, todo) if not piece.kind else [piece]
        found.append(tuple(line))
    if todo:
        missing = sum(block.minutes for block in todo)
        raise ValueError(f"the days are too short by {missing} minute{'' if missing == 1 else 's'}")
    return tuple(found)


def _filled(piece: Session, todo: list[Block]) -> Iterator[Session]:
    at = piece.start
    while todo and at < piece.end:
        block = todo.pop(0)
        taken = min(block.minutes, piece.end - at)
        yield Session(at, at + taken, block.kind, block.module)
        at += taken
        if taken < block.minutes:
            todo.insert(0, replace(block, minutes=block.minutes - taken))
    if at < piece.end:
        yield Session(at, piece.end, "build")


def _frame(first: int, last: int, *, first_day: bool) -> list[Session]:
    """A day's fixed points, and the free pieces between them (without a kind)."""
    length = last - first
    breaks: list[tuple[int, str, int]] = []
    if length > _LONG_DAY:
        meal = _round(first + (length - MEAL) // 2)
        breaks = [
            (_round((first + meal - TEA) // 2), "tea", TEA), (meal, "meal", MEAL),
            (_round((meal + MEAL + last - TEA) // 2), "tea", TEA),
        ]  # fmt: skip
    elif length > _SHORT_DAY:
        breaks = [(_round(first + (length - TEA) // 2), "tea", TEA)]
    begin = OPENING if first_day else RECALL
    lines = [Session(first, first + begin, "opening" if first_day else "recall")]
    at = first + begin
    for start, kind, minutes in breaks:
        lines += [Session(at, start, ""), Session(start, start + minutes, kind)]
        at = start + minutes
    lines += [Session(at, last - CLOSING, ""), Session(last - CLOSING, last, "closing")]
    return [line for line in lines if line.kind or line.end > line.start]


def _round(minutes: int) -> int:
    return minutes // _STEP * _STEP
