from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.exercises.numbers import Ask, AskReason, Blank, Parsed, parse_number
from generator.exercises.units import UNITS
from generator.formula import Stream
from tests.exercises.typed import SIGNS_TYPED

READ = [
    # plain, grouped, decimal
    ("14", "", 14), ("१४", "", 14), ("0.225", "m", 0.225), (".5", "m", 0.5), ("12.", "", 12), ("007", "", 7),
    ("1,500", "L", 1500), ("1,50,000", "L", 150000), ("12,34,567.5", "L", 1234567.5), ("150,000", "L", 150000),
    ("1,234,567", "L", 1234567), ("१,५०,०००", "L", 150000), ("1 500", "L", 1500), ("1 50 000", "L", 150000),
    ("0,225", "m", 0.225), ("0,35", "m", 0.35), ("1,5", "m", 1.5), (",5", "m", 0.5), ("1,2345", "m", 1.2345),
    ("1500,250", "m", 1500.25), ("०,३५", "m", 0.35), ("-3", "m", -3), ("−3", "m", -3), ("+3", "m", 3), ("= 14", "", 14),
    # fractions
    ("1/2", "m", 0.5), ("1 1/2", "m", 1.5), ("1-1/2", "m", 1.5), ("1½", "m", 1.5), ("½", "m", 0.5), ("१ १/२", "m", 1.5),
    ("3/2", "m", 1.5), ("2 ¾", "inch", 2.75),
    # unit words of both languages, the asked one and others of its kind
    ("0.225 m", "m", 0.225), ("0.225m", "m", 0.225), ("225 mm", "m", 0.225), ("225 MM", "m", 0.225),
    ("225 मि॰मी॰", "m", 0.225), ("22.5 सेंटी", "m", 0.225), ("1.4 मीटर", "m", 1.4), ("1.4 मी.", "m", 1.4),
    ("8 inches", "m", 0.2032), ("2 फुट", "m", 0.6096), ("2 फ़ुट", "m", 0.6096), ("4 सूत", "inch", 0.5),
    ("750 L", "m**3", 0.75), ("0.75 m3", "L", 750), ("0.75 m³", "L", 750), ("0.75 घन मीटर", "L", 750),
    ("750 लीटर", "L", 750), ("1,500 litres", "L", 1500), ("12 kg", "kg", 12), ("12 किलो", "kg", 12),
    ("0.395 kg/m", "kg/m", 0.395), ("5.3 sq. m", "m**2", 5.3), ("14 hoops", "", 14), ("14 रिंग", "", 14),
    ("10 bags", "bag", 10), ("10 बोरी", "bag", 10), ("10 bags", "", 10), ("7 days", "day", 7), ("2 हफ्ते", "day", 14),
    # feet and inches
    ("5'6\"", "foot", 5.5), ("5' 6", "foot", 5.5), ("5 ft 6 in", "foot", 5.5), ("5 फुट 6 इंच", "foot", 5.5),
    ("5 फुट 6", "foot", 5.5), ("5-6", "foot", 5.5), ("5′6″", "m", 1.6764), ("5 ft 6 1/2 in", "m", 1.6891),
    ("5'", "foot", 5), ("6\"", "foot", 0.5), ("5.75", "foot", 5.75), ("5.0", "foot", 5), ("5", "foot", 5),
]  # fmt: skip


@pytest.mark.parametrize(("text", "unit", "value"), READ)
def test_a_typed_number_is_read(text: str, unit: str, value: float) -> None:
    read = parse_number(text, unit)
    assert isinstance(read, Parsed), read
    assert read.value == pytest.approx(value, rel=1e-12)


WORDS = AskReason.NOT_A_NUMBER
ASKED = [
    ("fourteen", "", WORDS), ("चौदह", "", WORDS), ("?", "", WORDS),
    ("12-14", "", WORDS), ("12 or 14", "", WORDS), ("1e3", "L", WORDS),
    ("1/0", "m", WORDS), ("1 3/2", "m", WORDS), ("1 2/2", "m", WORDS), ("1.2.3", "m", WORDS),
    ("1,50,00", "L", WORDS), ("1.500,5", "L", WORDS), ("5 6", "foot", WORDS),
    ("1, 500", "L", WORDS), ("5'13\"", "foot", WORDS), ("5²", "", WORDS),
    ("9" * 16, "L", WORDS), ("1" + " " * 70 + "m", "m", WORDS),
    ("5 😀", "", WORDS), ("nan", "m", WORDS), ("inf", "m", WORDS),
    ("5.6", "foot", AskReason.FEET), ("5,6", "foot", AskReason.FEET), ("5.10", "foot", AskReason.FEET),
    ("5.6 ft", "m", AskReason.FEET), ("५.६", "foot", AskReason.FEET),
    ("5 cubits", "m", AskReason.UNKNOWN_UNIT), ("5 हाथ", "m", AskReason.UNKNOWN_UNIT),
    ("5 kg", "m", AskReason.OTHER_KIND), ("14 m", "", AskReason.OTHER_KIND), ("5 m2", "m", AskReason.OTHER_KIND),
    ("5'6\"", "kg", AskReason.OTHER_KIND),
]  # fmt: skip


@pytest.mark.parametrize(("text", "unit", "reason"), ASKED)
def test_what_can_not_be_read_safely_is_asked_for_again(text: str, unit: str, reason: AskReason) -> None:
    read = parse_number(text, unit)
    assert isinstance(read, Ask), read
    assert read.reason is reason


@pytest.mark.parametrize("text", ["", " ", "\t\n", "\u00a0", "\u200b \ufeff"])
def test_nothing_visible_is_blank(text: str) -> None:
    assert parse_number(text, "m") == Blank()


def test_one_group_of_three_keeps_its_other_reading() -> None:
    assert parse_number("1,500") == Parsed(1500, None, 1.5)
    assert parse_number("1,500.5") == Parsed(1500.5)
    assert parse_number("0,500") == Parsed(0.5)


def test_a_unit_that_the_course_does_not_convert_is_taken_only_as_it_stands() -> None:
    assert parse_number("3", "coin") == Parsed(3)
    assert isinstance(parse_number("3 m", "coin"), Ask)


UNIT_NAMES = ["", "bag", "coin", *(unit.name for unit in UNITS)]


def test_twenty_thousand_drawn_texts_never_raise() -> None:
    stream = Stream("typed texts")
    for _ in range(20_000):
        text = "".join(SIGNS_TYPED[stream.below(len(SIGNS_TYPED))] for _ in range(stream.below(13)))
        read = parse_number(text, UNIT_NAMES[stream.below(len(UNIT_NAMES))])
        assert isinstance(read, Parsed | Ask | Blank)


@settings(max_examples=300)
@given(st.text(max_size=70), st.sampled_from(UNIT_NAMES))
def test_no_text_at_all_raises(text: str, unit: str) -> None:
    read = parse_number(text, unit)
    assert isinstance(read, Parsed | Ask | Blank)
    if isinstance(read, Parsed):
        assert abs(read.value) < 1e22


@given(st.integers(0, 10**12), st.integers(0, 3))
def test_grouping_never_changes_a_whole_number(whole: int, places: int) -> None:
    tail = "." + "0" * places if places else ""
    assert parse_number(f"{whole:,}{tail}", "L") == parse_number(f"{whole}{tail}", "L") or f"{whole:,}".count(",") == 1
    read = parse_number(f"{whole:,}{tail}", "L")
    assert isinstance(read, Parsed)
    assert read.value == whole


@given(st.decimals(min_value=0, max_value=9999, places=3))
def test_a_decimal_comma_is_read_like_a_point_wherever_it_can_not_group(number: object) -> None:
    text = f"{number}0"  # four decimals
    assert parse_number(text.replace(".", ","), "m") == parse_number(text, "m")
