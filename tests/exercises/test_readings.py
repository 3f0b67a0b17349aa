from __future__ import annotations

from statistics import fmean, median

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations.cover_readings import read_cover
from generator.exercises.items import ChoiceItem, NumberItem
from generator.exercises.mark import Verdict, messages
from generator.exercises.marking import mark_choice, mark_number
from generator.exercises.readings import (
    Panel,
    ReadingFault,
    draw_panel,
    fault_said,
    reading_items,
    readings_script,
    typed_panel,
)
from tests.exercises.shipped import WORDS

KINDS = [("cover", "bar"), ("cover", "mesh"), ("spacing", "bar")]
FACE = Panel("cover", "bar", 0, (9, 11, 8, 5, 12, 4.5, 13, 7))
"""Least 4.5; sum 69.5, mean 8.6875; one under 5, two at or under 5; three under 8; middle 8.5."""


def items(panel: Panel, language: str = "en") -> tuple[NumberItem, NumberItem, NumberItem, ChoiceItem]:
    least, mean, failing, verdict = reading_items(panel, "face", "cover", WORDS[language])
    assert isinstance(least, NumberItem)
    assert isinstance(mean, NumberItem)
    assert isinstance(failing, NumberItem)
    assert isinstance(verdict, ChoiceItem)
    return least, mean, failing, verdict


def test_a_face_by_hand() -> None:
    least, mean, failing, verdict = items(FACE)
    assert (least.key, mean.key, failing.key) == (4.5, 8.6875, 1)
    assert mark_number(mean, "8.7").verdict is Verdict.RIGHT
    assert mark_number(mean, "8.5").misconceptions == ("reading.middle_taken_for_mean",)
    assert mark_number(failing, "2").misconceptions == ("reading.limit_counted_as_failing",)
    assert mark_number(failing, "3").misconceptions == ("reading.aim_taken_for_limit",)
    assert mark_number(failing, "7").misconceptions == ("reading.good_ones_counted",)
    assert mark_choice(verdict, [0]).verdict is Verdict.RIGHT
    assert mark_choice(verdict, [2]).misconceptions == ("reading.mean_decides",)


def test_a_wrong_verdict_says_what_would_happen_on_the_hill() -> None:
    for language in ("en", "hi"):
        verdict = items(FACE, language)[3]
        told = messages(mark_choice(verdict, [2]), WORDS[language])
        assert told[1:] == (
            WORDS[language].say("exercise.reading.mean_decides.mistake"),
            WORDS[language].say("exercise.reading.mean_decides.hill"),
        )


def test_gaps_by_hand() -> None:
    panel = Panel("spacing", "bar", 140, (141, 150, 130, 128, 152, 139))
    widest, mean, failing, verdict = items(panel)
    assert (widest.key, mean.key, failing.key) == (152, 140, 2)
    assert mark_number(failing, "4").misconceptions == ("reading.limit_counted_as_failing", "reading.good_ones_counted")
    assert mark_number(failing, "1").misconceptions == ("reading.only_wide_ones_counted",)
    assert verdict.options[verdict.right[0]] == WORDS["en"].say("exercise.reading.verdict.too_wide")
    assert items(Panel("spacing", "bar", 140, (141, 128, 139)))[3].right == (1,)
    assert items(Panel("spacing", "bar", 140, (141, 130, 150)))[3].right == (2,)


@pytest.mark.parametrize(("kind", "steel"), KINDS)
def test_drawn_panels_are_fair_and_about_half_of_them_pass(kind: str, steel: str) -> None:
    passed = 0
    for seed in range(200):
        panel = draw_panel(kind, str(seed), steel)  # type: ignore[arg-type]
        assert panel == draw_panel(kind, str(seed), steel)  # type: ignore[arg-type]
        assert all(reading >= 0 and reading == int(reading) for reading in panel.readings)
        least, mean, failing, verdict = items(panel)
        assert mean.key == pytest.approx(fmean(panel.readings))
        assert abs(median(panel.readings) - mean.key) > 0.2
        for item in (least, mean, failing):
            assert mark_number(item, item.shown_key).verdict is Verdict.RIGHT
            for name, value in item.wrong.items():
                assert name in mark_number(item, f"{value:.6f}").misconceptions
        if kind == "cover":
            judged = read_cover(panel.readings, panel.steel)
            assert (least.key, failing.key) == (judged.least, judged.thin)
            passed += judged.passed
        else:
            off = [reading for reading in panel.readings if abs(reading - panel.planned) > 10]
            assert (least.key, failing.key) == (max(panel.readings), len(off))
            passed += not off
        assert verdict.mistakes[verdict.right[0]] == ""
        assert all(mistake for place, mistake in enumerate(verdict.mistakes) if place not in verdict.right)
    assert 70 < passed < 130


@pytest.mark.parametrize(
    ("text", "readings"),
    [
        ("8 9 10", (8, 9, 10)),
        ("8, 9.5, 10", (8, 9.5, 10)),
        ("8;9;10;", (8, 9, 10)),
        ("8\n9 \r\n\n10\n", (8, 9, 10)),
        ("८ ९ १०", (8, 9, 10)),
        ("8mm  0.9cm  10", (8, 9, 10)),
    ],
)
def test_own_readings_are_read_as_people_write_lists(text: str, readings: tuple[float, ...]) -> None:
    panel = typed_panel("cover", text)
    assert isinstance(panel, Panel)
    assert panel.readings == pytest.approx(readings)


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        ("", ReadingFault("too_few")),
        ("8 9", ReadingFault("too_few")),
        ("8 nine 10", ReadingFault("not_a_reading", 2, "nine")),
        ("8 9,5 10", ReadingFault("not_a_reading", 2, "9,5")),
        ("8 -1 10", ReadingFault("not_a_reading", 2, "-1")),
        ("8 9 1000", ReadingFault("not_a_reading", 3, "1000")),
        ("8 9 10 5kg", ReadingFault("not_a_reading", 4, "5kg")),
        ("1 " * 61, ReadingFault("too_many")),
        ("1" * 5000, ReadingFault("too_many")),
    ],
)
def test_lists_that_make_no_panel_are_told_in_words(text: str, fault: ReadingFault) -> None:
    assert typed_panel("cover", text) == fault
    for language in ("en", "hi"):
        assert fault_said(fault, WORDS[language])


@given(st.text(max_size=40) | st.text(st.sampled_from("0123456789.,; \n-mm½<"), max_size=60))
def test_no_list_raises(text: str) -> None:
    found = typed_panel("cover", text)
    if isinstance(found, Panel):
        assert len(items(found)) == 4


def test_the_script_is_old_plain_javascript() -> None:
    script = readings_script()
    for new in ("=>", "`", "let ", "const ", "class ", "</"):
        assert new not in script, new
