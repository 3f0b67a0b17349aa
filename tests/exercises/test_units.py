from __future__ import annotations

import pint
import pytest

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
