"""The verdict on a leak test: limits on both sides, readings that are refused, stages, stop signs, words."""

from itertools import pairwise
from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations.leak_judgement import (
    LeakVerdict,
    Next,
    StopSign,
    after_a_stage,
    allowed_fall,
    explain_leak,
    explain_stop,
    explain_watch,
    filling_stages,
    judge_leak,
    stages_needed,
)
from generator.formula import OutOfRangeError, Status
from generator.words import Words

ROOT = Path(__file__).parents[2]


def judged(fall: float = 0.3, wet: bool = False, depth: float = 1.7, days: float = 8, step: float = 0.5) -> LeakVerdict:
    return judge_leak(fall, wet, depth, days, reading_step=step, control=True)


@pytest.mark.parametrize(
    ("fall", "depth", "passed"),
    [(1.0, 1.7, True), (1.02, 1.7, False), (1.0, 1.0, True), (0.8, 0.8, True), (0.82, 0.8, False), (0, 0.4, True)],
)
def test_one_millimetre_a_day_and_less_in_shallow_water(fall: float, depth: float, passed: bool) -> None:
    assert judged(fall, depth=depth).passed is passed


def test_a_wet_spot_fails_a_tank_that_loses_nothing_to_read() -> None:
    verdict = judged(0, wet=True)
    assert not verdict.passed
    assert verdict.advice == ("mark_wet_spots", "lower_and_repair")
    assert {row.key for row in verdict.criteria if not row.met} == {"policy", "us_specification", "dry_hand"}


def test_each_limit_stands_beside_the_course_s_own() -> None:
    """By hand, 1.7 m: 0.1 % is 1.7 mm, 0.05 % is 0.85 mm, 10 / 7 is 1.43 mm, 1700 / 500 / 7 is 0.486 mm."""
    limits = {row.key: row.limit for row in judged().criteria}
    assert limits == {
        "policy": 1.0,
        "committee_1978": pytest.approx(1.7),
        "us_specification": pytest.approx(0.85),
        "bs_5337": pytest.approx(1.4286, abs=1e-4),
        "bs_8007": pytest.approx(0.4857, abs=1e-4),
        "dry_hand": None,
    }


def test_what_is_recalled_decides_nothing() -> None:
    """At 0.6 mm a day the recalled limit is passed over, and the tank has passed."""
    verdict = judged(0.6)
    recalled = [row for row in verdict.criteria if row.source.status is Status.FROM_MEMORY]
    assert [row.met for row in recalled] == [False]
    assert verdict.passed
    assert all(row.source.status.decides for row in verdict.criteria if row.key != "bs_8007")


@given(st.floats(0, 4), st.booleans(), st.floats(0.2, 2.2), st.integers(5, 20), st.floats(0, 2))
def test_more_loss_or_a_wet_spot_never_helps(fall: float, wet: bool, depth: float, days: int, more: float) -> None:
    better = judged(fall, wet, depth, days)
    worse = judged(fall + more, True, depth, days)
    assert better.passed >= worse.passed
    assert all(one.met >= two.met for one, two in zip(better.criteria, worse.criteria, strict=True))


@given(st.floats(0, 3), st.floats(0.2, 2.2))
def test_what_passes_here_keeps_the_printed_tenth_of_a_percent(fall: float, depth: float) -> None:
    verdict = judged(fall, depth=depth)
    met = {row.key: row.met for row in verdict.criteria}
    assert met["policy"] == verdict.passed
    if verdict.passed:
        assert met["committee_1978"]
        assert met["bs_5337"]


def test_between_the_two_printed_limits_a_short_test_goes_on() -> None:
    """0.95 mm of 1.7 m is 0.056 % a day: under 0.1 %, over 0.05 %."""
    assert "go_on_reading" in judged(0.95, days=5).advice
    assert "go_on_reading" not in judged(0.95, days=8).advice
    assert "go_on_reading" not in judged(0.8, days=5).advice


def test_a_result_within_the_reading_error_is_read_again() -> None:
    """By hand: four readings, each 0.25 mm off, over 8 days: 0.125 mm a day."""
    assert judged(0.9).reading_error == pytest.approx(0.125)
    assert "read_again_close" in judged(0.9).advice
    assert "read_again_close" not in judged(0.85).advice
    assert "read_again_close" in judged(1.1).advice


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"control": False}, "no control bucket"),
        ({"reading_step": 1.0}, "too coarse"),
        ({"reading_step": 0.0}, "too coarse"),
        ({"days": 4}, "too few"),
        ({"daily_fall": -0.6}, "read again|Read again"),
        ({"daily_fall": float("nan")}, "not a number"),
        ({"water_depth": 0.0}, "needs water"),
        ({"water_depth": float("inf")}, "needs water"),
    ],
)
def test_readings_that_prove_nothing_are_refused(change: dict[str, float], message: str) -> None:
    sound = {"daily_fall": 0.4, "wet_spot": False, "water_depth": 1.7, "days": 8, "reading_step": 0.5, "control": True}
    with pytest.raises(OutOfRangeError, match=message) as refused:
        judge_leak(**{**sound, **change})  # type: ignore[arg-type]
    assert "licensed engineer" in str(refused.value)


def test_a_bucket_that_fell_a_hair_more_is_reading_error() -> None:
    assert judged(-0.1).passed


@given(st.floats(0.05, 2.2))
def test_no_stage_rises_faster_than_print_allows(depth: float) -> None:
    count = stages_needed(depth)
    levels = [0.0, *(stage.level for stage in filling_stages(depth, count))]
    assert levels[-1] == pytest.approx(depth)
    assert all(after - before <= 0.3 + 1e-9 for before, after in pairwise(levels))
    assert count == 4 or depth / (count - 1) > 0.3
    with pytest.raises(OutOfRangeError, match="too few"):
        filling_stages(depth, count - 1)


@pytest.mark.parametrize("depth", [0, -1, 2.5, float("nan")])
def test_a_depth_that_is_no_tank_s_is_refused(depth: float) -> None:
    with pytest.raises(OutOfRangeError, match="licensed engineer"):
        stages_needed(depth)
    if depth != 2.5:
        with pytest.raises(OutOfRangeError, match="needs water"):
            allowed_fall(depth)


def test_every_stage_looks_at_the_foot_and_the_last_at_the_overflow() -> None:
    stages = filling_stages(1.6, 6)
    assert all({"foot", "downhill_clear", "pipes"} <= set(stage.watch) for stage in stages)
    assert "overflow_runs" in stages[-1].watch
    assert not any("overflow_runs" in stage.watch for stage in stages[:-1])
    assert "washout_shut" in stages[0].watch


@pytest.mark.parametrize("sign", list(StopSign))
def test_any_stop_sign_stops_however_long_one_waited(sign: StopSign) -> None:
    assert after_a_stage([sign], 400) is Next.STOP
    assert after_a_stage([sign], 0) is Next.STOP


@pytest.mark.parametrize(("hours", "then"), [(0, Next.WAIT), (23.9, Next.WAIT), (24, Next.FILL)])
def test_a_day_and_a_night_pass_between_stages(hours: float, then: Next) -> None:
    assert after_a_stage([], hours) is then


@pytest.mark.parametrize("hours", [-1, float("nan")])
def test_no_time_is_no_wait(hours: float) -> None:
    with pytest.raises(OutOfRangeError, match="no time of waiting"):
        after_a_stage([], hours)


@pytest.mark.parametrize("language", ["en", "hi"])
def test_everything_that_is_said_has_words_and_no_word_is_left_over(language: str) -> None:
    texts = yaml.safe_load((ROOT / f"course/words/{language}.yaml").read_text(encoding="utf-8"))["proving"]
    flat = {f"proving.{part}.{key}": text for part, family in texts.items() if isinstance(family, dict)
            for key, text in family.items()}  # fmt: skip
    words = Words(language, {**flat, "proving.stop_now": texts["stop_now"]})
    failed = judged(3.5, wet=True)
    assert explain_leak(failed, words) == (
        texts["verdict"]["not_yet"],
        *(texts["criterion"][row.key] for row in failed.criteria),
        *(texts["advice"][key] for key in failed.advice),
    )
    assert explain_leak(judged(0.2), words) == (texts["verdict"]["passed"],)
    assert explain_stop(StopSign, words)[-1] == texts["stop_now"]
    assert set(texts["stop"]) == {sign.value for sign in StopSign}
    assert set(texts["criterion"]) == {row.key for row in failed.criteria}
    seen = {key for stage in filling_stages(1.6, 6) for key in stage.watch}
    assert set(texts["watch"]) == seen
    assert len(explain_watch(filling_stages(1.6, 6)[0], words)) == 7
    advised = {key for verdict in (failed, judged(0.95, days=5), judged(1.0)) for key in verdict.advice}
    assert set(texts["advice"]) == advised
    assert set(texts["chlorine"]) == {"flush_first", "read_ph_again"}
