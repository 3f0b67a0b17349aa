from __future__ import annotations

import pint
import pytest

from generator.exercises.numbers import Ask, AskReason, Parsed, parse_number
from generator.exercises.units import BY_SPELLING, UNITS, converted, spelling

PLAIN = {"foot**2": "foot**2", "sut": "inch/8", "bag": "1", "": "1", "%": "1"}


@pytest.mark.parametrize("kind", sorted({unit.kind for unit in UNITS}))
def test_units_of_a_kind_turn_into_each_other_as_an_independent_library_does(kind: str) -> None:
    registry = pint.UnitRegistry()
    family = [unit for unit in UNITS if unit.kind == kind]
    for one in family:
        for other in family:
            if one.name == other.name or kind in ("count", "percent"):
                continue
            source = registry.parse_expression(PLAIN.get(one.name, one.name))
            goal = registry.parse_expression(PLAIN.get(other.name, other.name))
            expected = float((7 * source / goal).to_base_units().magnitude)
            assert converted(7, one.name, other.name) == pytest.approx(expected, rel=1e-9)


def test_no_spelling_stands_for_two_units() -> None:
    spellings = [spelling(text) for unit in UNITS for text in unit.spellings]
    assert len(spellings) == len(set(spellings)) == len(BY_SPELLING)


def test_units_of_different_kinds_do_not_turn_into_each_other() -> None:
    assert converted(1, "m", "kg") is None
    assert converted(1, "coin", "m") is None


@pytest.mark.parametrize(
    ("text", "asked", "value"),
    [
        ("90 min", "hour", 1.5), ("1.5 घंटे", "minute", 90), ("36 hrs", "day", 1.5), ("2 हफ्ते", "day", 14),
        ("45 सेकंड", "s", 45), ("0.02 L/s", "L/day", 1728), ("1,728 L/day", "L/s", 0.02),
        ("1.2 litres/minute", "L/s", 0.02),
        ("20 ली॰/मिनट", "L/day", 28_800), ("0.9 m³/day", "L/day", 900),
        ("५ मि॰मी॰/दिन", "mm/day", 5), ("5 mm a day", "mm/day", 5),
        ("40 लीटर रोज़", "L/day", 40),
    ],
)  # fmt: skip
def test_times_and_flows_are_read_in_both_languages(text: str, asked: str, value: float) -> None:
    read = parse_number(text, asked)
    assert isinstance(read, Parsed)
    assert read.value == pytest.approx(value, rel=1e-12)


@pytest.mark.parametrize(("text", "asked"), [("5 mm", "mm/day"), ("5 L", "L/day"), ("5 L/s", "m"), ("3 h", "L/hour")])
def test_a_rate_is_not_an_amount(text: str, asked: str) -> None:
    read = parse_number(text, asked)
    assert isinstance(read, Ask)
    assert read.reason is AskReason.OTHER_KIND
