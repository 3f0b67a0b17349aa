"""The end of a long worked solution: few steps, the same result, and it begins from what was worked out before."""

from __future__ import annotations

import pytest

from generator.calculations import BOOK
from tests.figures.tanks import place

LONG = ("days_to_hand_over", "cost_per_litre", "build_water", "cost_of_tank")


@pytest.mark.parametrize("asked", LONG)
def test_a_long_solution_is_shortened_to_its_end(asked: str) -> None:
    values = place("hill-school")
    whole = BOOK.trace(asked, {name: values[name] for name in BOOK.needs(asked)})
    seeds, steps = BOOK.short_trace(asked, values, 6)
    assert len(steps) <= 6 < len(whole)
    assert steps[-1].name == asked
    assert steps[-1].shown == whole[-1].shown
    assert steps[-1].substituted == whole[-1].substituted
    assert all(name in BOOK.givens or name in {step.name for step in whole} for name in seeds)


def test_a_short_solution_stays_whole() -> None:
    values = place("hill-school")
    whole = BOOK.trace("ring_length", {name: values[name] for name in BOOK.needs("ring_length")})
    assert len(whole) <= 6
    seeds, steps = BOOK.short_trace("ring_length", values, 6)
    assert steps == whole
    assert all(name in BOOK.givens for name in seeds)


def test_the_last_step_is_there_even_where_only_one_is_allowed() -> None:
    _, steps = BOOK.short_trace("cost_per_litre", place("hill-school"), 1)
    assert [step.name for step in steps] == ["cost_per_litre"]
