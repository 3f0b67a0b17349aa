"""Whether a new tank has passed its leak test, by the limits in print side by side, and what to watch while it fills.

The course passes a tank that falls at most 1 mm a day beyond its control bucket, and at most 0.1 % of its water a day,
and has no spot that wets a dry hand. That is a policy between two printed limits (0.1 % and 0.05 % of the water a day);
the other rows are shown beside it. A limit that is only recalled is shown and decides nothing.

Cautions: a failed tank is emptied slowly, not patched while full. At any stop sign lower the water, clear everybody who
is downhill, and call a licensed engineer. Nobody enters a closed tank to look for the leak.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from math import ceil, isfinite

from generator.formula import ASK, Constant, OutOfRangeError, Source, derived, from_memory, published
from generator.words import Words

PASS_FALL = Constant(1, "mm/day", derived("policy: 0.05 % a day of 2 m of water, 0.1 % a day of 1 m of water"))
PASS_SHARE = Constant(0.1, "%/day", published("joint committee report of 1978: 0.1 % of the volume in 24 hours"))
STRICT_SHARE = Constant(
    0.05, "%/day", published("US tank specification, quoted in an engineers' forum: 0.05 % in 24 h")
)
WEEK_FALL = Constant(10, "mm", published("BS 5337, quoted in a book on repairs: 10 mm in 7 days beyond evaporation"))
WEEK_SHARE = Constant(500, "", from_memory("BS 8007 practice: depth / 500 in 7 days, at most 10 mm"))
WEEK = Constant(7, "day", derived("days of a week"))
COARSEST_STEP = Constant(0.5, "mm", derived("half of what a day may lose: a coarser mark can't tell a leak from none"))
LEAST_DAYS = Constant(5, "day", published("joint committee report of 1978: read over at least 5 days"))
STAGE_RISE = Constant(0.3, "m", published("village tank manual: fill at about 300 mm a day"))
HOURS_OF_A_STAGE = Constant(24, "hour", published("village tank manual: about 300 mm a day, so a day to each stage"))
DRY_HAND = published("ACI 350.1, quoted in an engineers' forum: fails if water flows or wets a dry hand")
POLICY = derived("policy of this course: 1 mm a day, 0.1 % a day, and dry to the hand")
_HAIR = 1e-9
_MILLIMETRES = 1000
_PER_CENT = 100


class StopSign(StrEnum):
    """What stops the filling at once. Recalled from practice: a stop sign only ever stops, never clears."""

    RUNNING_LEAK = "running_leak"
    THUMBNAIL_CRACK = "thumbnail_crack"
    WIDENING_CRACK = "widening_crack"
    NEW_LEAN = "new_lean"
    BULGE = "bulge"
    NOISE = "noise"
    MUDDY_WATER = "muddy_water"


class Next(StrEnum):
    """What is done after a look round the tank."""

    STOP = "stop"
    WAIT = "wait"
    FILL = "fill"


@dataclass(frozen=True, slots=True)
class Criterion:
    """One row of the comparison.

    Args:
        key: of its words under `proving.criterion`.
        limit: largest fall that it allows [mm/day]; None if it looks only at wet spots.
        met: whether the tank keeps it.
        source: where it comes from; one from memory is shown and decides nothing.
    """

    key: str
    limit: float | None
    met: bool
    source: Source


@dataclass(frozen=True, slots=True)
class LeakVerdict:
    """The judgement of a leak test.

    Args:
        passed: whether the course lets the tank be used.
        limit: the fall that the course allows at this depth [mm/day].
        reading_error: how far off the fall of a day may be, from reading alone [mm/day].
        criteria: the limits in print beside the course's own, which stands first.
        advice: keys under `proving.advice` of what to do next, in order.
    """

    passed: bool
    limit: float
    reading_error: float
    criteria: tuple[Criterion, ...]
    advice: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class FillingStage:
    """One stage of the first filling.

    Args:
        number: from 1.
        level: water's height above the floor at the end of the stage [m].
        watch: keys under `proving.watch` of what is looked at before the next stage.
    """

    number: int
    level: float
    watch: tuple[str, ...]


_WATCH_ALWAYS = ("downhill_clear", "foot", "wet_spots", "cracks", "pipes", "ground")
_WATCH_FIRST = ("washout_shut",)
_WATCH_LAST = ("roof_edge", "overflow_runs")


def allowed_fall(water_depth: float) -> float:
    """The corrected fall that the course allows [mm/day]: 1 mm, and in shallower water 0.1 % of the depth.

    Args:
        water_depth: during the test [m], above 0.

    Raises:
        OutOfRangeError: a depth that is not above 0.

    Example:
        >>> allowed_fall(1.85), round(allowed_fall(0.6), 2)
        (1.0, 0.6)
    """
    if not (isfinite(water_depth) and water_depth > 0):
        raise OutOfRangeError(f"a leak test needs water: depth = {water_depth:g} m; {ASK}")
    return min(float(PASS_FALL), _fall_of_share(PASS_SHARE, water_depth))


def judge_leak(
    daily_fall: float, wet_spot: bool, water_depth: float, days: float, *, reading_step: float, control: bool
) -> LeakVerdict:
    """Judge a leak test by the course's limit and show the limits in print beside it.

    Args:
        daily_fall: fall of the tank beyond its control bucket [mm/day]; below 0 if the bucket fell more.
        wet_spot: whether any spot outside, at the foot or at a pipe wets a dry hand.
        water_depth: during the test [m].
        days: from the first to the last reading, at least 5.
        reading_step: smallest difference that the mark or ruler shows [mm], at most 0.5.
        control: whether a control bucket stood in the tank.

    Raises:
        OutOfRangeError: no control, a mark that is too coarse, too few days, a bucket that fell clearly more than the
            tank, or a number that is none. Then nothing is judged: the test is done again.

    Example:
        >>> verdict = judge_leak(0.64, False, 1.85, 8, reading_step=0.5, control=True)
        >>> verdict.passed, verdict.limit, verdict.advice
        (True, 1.0, ())
        >>> judge_leak(0.64, True, 1.85, 8, reading_step=0.5, control=True).advice
        ('mark_wet_spots', 'lower_and_repair')
    """
    error = _refuse_readings(daily_fall, days, reading_step, control)
    limit = allowed_fall(water_depth)
    passed = daily_fall <= limit + _HAIR and not wet_spot
    dry = not wet_spot
    week = WEEK_FALL / WEEK
    week_of_depth = min(week, water_depth * _MILLIMETRES / WEEK_SHARE / WEEK)
    rows = (
        ("policy", limit, passed, POLICY),
        _row("committee_1978", _fall_of_share(PASS_SHARE, water_depth), daily_fall, PASS_SHARE),
        _row("us_specification", _fall_of_share(STRICT_SHARE, water_depth), daily_fall, STRICT_SHARE, dry=dry),
        _row("bs_5337", week, daily_fall, WEEK_FALL),
        _row("bs_8007", week_of_depth, daily_fall, WEEK_SHARE),
        ("dry_hand", None, dry, DRY_HAND),
    )
    advice = []
    if wet_spot:
        advice.append("mark_wet_spots")
    if not passed:
        advice.append("lower_and_repair")
    if daily_fall > _fall_of_share(STRICT_SHARE, water_depth) + _HAIR and passed and days < WEEK:
        advice.append("go_on_reading")
    if abs(daily_fall - limit) <= error and dry:
        advice.append("read_again_close")
    return LeakVerdict(passed, limit, error, tuple(Criterion(*row) for row in rows), tuple(advice))


def _row(key: str, limit: float, fall: float, value: Constant, *, dry: bool = True) -> tuple[str, float, bool, Source]:
    return key, limit, fall <= limit + _HAIR and dry, value.source


def _fall_of_share(share: float, water_depth: float) -> float:
    """A share of the water a day as a fall [mm/day]: in a straight-sided tank it does not depend on the width."""
    return share / _PER_CENT * water_depth * _MILLIMETRES


def _refuse_readings(daily_fall: float, days: float, reading_step: float, control: bool) -> float:
    if not all(isfinite(value) for value in (daily_fall, days, reading_step)):
        raise OutOfRangeError(f"a reading is not a number; read again; {ASK}")
    if not control:
        raise OutOfRangeError(
            "no control bucket: evaporation can be more than any leak, so nothing can be judged; set a bucket into the "
            f"tank and read both again; {ASK}"
        )
    if not 0 < reading_step <= COARSEST_STEP + _HAIR:
        raise OutOfRangeError(
            f"a mark read to {reading_step:g} mm is too coarse, it must show 0.5 mm: use a point gauge or a tube, and "
            f"read again; {ASK}"
        )
    if days < LEAST_DAYS:
        raise OutOfRangeError(f"{days:g} days are too few to judge a leak: read for at least 5; {ASK}")
    # four readings stand in the result, each up to half a step off
    error = 4 * reading_step / 2 / days
    if daily_fall < -error - _HAIR:
        raise OutOfRangeError(
            f"the bucket fell {-daily_fall:.2g} mm a day more than the tank, which a sound test never shows: was one "
            f"in the shade, or did rain or an open inlet fill the tank? Read again; {ASK}"
        )
    return error


def stages_needed(water_depth: float) -> int:
    """Fewest stages of the first filling: at most 0.3 m each, and at least four.

    Args:
        water_depth: of the full tank [m], above 0 and at most 2.2.

    Raises:
        OutOfRangeError: a depth outside that.

    Example:
        >>> stages_needed(1.85), stages_needed(0.7)
        (7, 4)
    """
    if not 0 < water_depth <= 2.2:
        raise OutOfRangeError(f"water_depth = {water_depth:g} m is outside 0 to 2.2; {ASK}")
    return max(4, ceil(water_depth / STAGE_RISE - _HAIR))


def filling_stages(water_depth: float, stage_count: int) -> tuple[FillingStage, ...]:
    """The stages of the first filling, equal in height, and what is looked at before the next one.

    Args:
        water_depth: of the full tank [m], above 0 and at most 2.2.
        stage_count: at least `stages_needed`.

    Raises:
        OutOfRangeError: a depth outside its range, or so few stages that one rises more than 0.3 m.

    Example:
        >>> [round(stage.level, 2) for stage in filling_stages(1.0, 4)]
        [0.25, 0.5, 0.75, 1.0]
    """
    if stage_count < stages_needed(water_depth):
        raise OutOfRangeError(
            f"{stage_count} stages for {water_depth:g} m are too few: {stages_needed(water_depth)} or more, so that "
            f"trouble shows while little water stands; {ASK}"
        )
    return tuple(
        FillingStage(
            number,
            water_depth * number / stage_count,
            (_WATCH_FIRST if number == 1 else ()) + _WATCH_ALWAYS + (_WATCH_LAST if number == stage_count else ()),
        )
        for number in range(1, stage_count + 1)
    )


def after_a_stage(signs: Iterable[StopSign], hours: float) -> Next:
    """Whether to go on filling: any stop sign stops; without one, a day and a night must have passed.

    Args:
        signs: what was seen on a walk round the tank.
        hours: since the last stage was in.

    Raises:
        OutOfRangeError: hours below 0 or not a number.

    Example:
        >>> after_a_stage([], 9), after_a_stage([], 26), after_a_stage([StopSign.BULGE], 26)
        (<Next.WAIT: 'wait'>, <Next.FILL: 'fill'>, <Next.STOP: 'stop'>)
    """
    if not (isfinite(hours) and hours >= 0):
        raise OutOfRangeError(f"hours = {hours:g} is no time of waiting; {ASK}")
    if any(True for _ in signs):
        return Next.STOP
    return Next.FILL if hours >= HOURS_OF_A_STAGE else Next.WAIT


def explain_leak(verdict: LeakVerdict, words: Words) -> tuple[str, ...]:
    """The verdict in words: passed or not, each limit that is not kept, then what to do.

    Args:
        verdict: from `judge_leak`.
        words: of the reader's language.
    """
    return (
        words.say_one_of("proving.verdict", "passed" if verdict.passed else "not_yet"),
        *(words.say_one_of("proving.criterion", row.key) for row in verdict.criteria if not row.met),
        *(words.say_one_of("proving.advice", key) for key in verdict.advice),
    )


def explain_watch(stage: FillingStage, words: Words) -> tuple[str, ...]:
    """What to look at after a stage, in words.

    Args:
        stage: from `filling_stages`.
        words: of the reader's language.
    """
    return tuple(words.say_one_of("proving.watch", key) for key in stage.watch)


def explain_stop(signs: Iterable[StopSign], words: Words) -> tuple[str, ...]:
    """The stop signs in words, and what is done then.

    Args:
        signs: what was seen, or all of `StopSign` for a poster.
        words: of the reader's language.
    """
    return (*(words.say_one_of("proving.stop", sign.value) for sign in signs), words.say("proving.stop_now"))
