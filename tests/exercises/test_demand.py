from __future__ import annotations

import numpy as np
import pytest

from generator.exercises.demand import CROSSING, counted, unit_changes
from generator.exercises.draw import assess, recipe, wanted_demand
from generator.exercises.rounding import grain_fault, ruled
from generator.exercises.variants import variants
from generator.formula import Book, derived, whole_up
from tests.exercises import small

BOOK = Book()
_MADE_UP = derived("made up for a test")
BOOK.given("plank", symbol="p", unit="mm", low=1, high=99, step=1, source=_MADE_UP)
BOOK.given("wide", symbol="w", unit="m", low=1, high=9, step=0.1, source=_MADE_UP)
BOOK.given("wet", symbol="v", unit="", low=0, high=1, step=1, source=_MADE_UP)


@BOOK.quantity(symbol="P", unit="m", places=3, low=0, high=10, source=_MADE_UP)
def plank_in_metres(plank: float) -> float:
    return plank / 1000


@BOOK.quantity(symbol="n", unit="", places=0, low=0, high=9999, source=_MADE_UP)
def planks(wide: float, plank_in_metres: float) -> float:
    return whole_up(wide / plank_in_metres)


@BOOK.quantity(symbol="N", unit="", places=0, low=0, high=9999, source=_MADE_UP)
def planks_or_none(planks: float, wet: float) -> float:
    return whole_up(planks / 2) if wet > 0 else 0


def test_changes_of_unit_are_counted_along_the_way() -> None:
    assert unit_changes(BOOK, ["plank_in_metres", "planks"]) == 1
    assert unit_changes(BOOK, ["planks"]) == 0


def test_a_count_on_one_way_of_two_is_not_watched() -> None:
    assert counted(BOOK, "planks")
    assert not counted(BOOK, "planks_or_none")
    assert not counted(BOOK, "plank_in_metres")


def test_the_code_counts_printed_roundings_and_broken_counts() -> None:
    """1 m by 0.25 m comes out whole; by 0.3 m not. The pen's round and the wire's length are never even."""
    made = recipe(small.LENGTH, small.BOOK)
    heights = np.array([1.0, 1.0, 1.1])
    givens = {
        "pen_width": np.array([2.0, 2.0, 2.0]),
        "pen_height": heights,
        "wire_spacing": np.array([0.25, 0.3, 0.25]),
    }
    assert list(assess(made, givens).demand) == [2, 2 + CROSSING, 2 + CROSSING]


@pytest.mark.parametrize("question", small.NUMBERS, ids=lambda question: question.id)
def test_all_variants_ask_for_the_same_rounding(question: object) -> None:
    made = recipe(question, small.BOOK)  # type: ignore[arg-type]
    drawn = variants(question, "even", 500, small.BOOK)  # type: ignore[arg-type]
    assert set(assess(made, drawn.givens).demand) == {wanted_demand(made)}


@pytest.mark.parametrize(
    ("value", "rule", "grain", "answer"),
    [
        (2.31, "up", 0.05, 2.35), (2.35, "up", 0.05, 2.35), (2.34, "down", 0.05, 2.3), (2.325, "nearest", 0.05, 2.35),
        (-2.325, "nearest", 0.05, -2.35), (7, "up", 5, 10), (2.3456, "", 0, 2.3456),
    ],
)  # fmt: skip
def test_rounding_by_hand(value: float, rule: str, grain: float, answer: float) -> None:
    assert ruled(value, rule, grain) == pytest.approx(answer)  # type: ignore[call-overload]
    assert ruled(np.array([value]), rule, grain)[0] == pytest.approx(answer)  # type: ignore[call-overload]


def test_only_multiples_that_print_can_show() -> None:
    assert [bool(grain_fault(grain, 2)) for grain in (0.05, 0.01, 1, 0.005, 0.125, 0.033)] == [False] * 3 + [True] * 3
