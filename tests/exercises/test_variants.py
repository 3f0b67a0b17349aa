from __future__ import annotations

import itertools
import math
from collections import Counter
from functools import cache

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.curriculum.models import NumberQuestion
from generator.exercises import draw
from generator.exercises.draw import NoVariantError, choices, recipe
from generator.exercises.variants import separability, variant, variants
from generator.formula import Stream, show
from tests.exercises import small

# every combination of these is looked at by hand, once
QUESTIONS = pytest.mark.parametrize("question", small.NUMBERS, ids=lambda question: question.id)


def test_a_range_holds_the_numbers_that_a_tape_shows() -> None:
    assert choices(small.WIRES.given["pen_height"])[:4] == (1.0, 1.1, 1.2, 1.3)
    assert len(choices(small.WIRES.given["pen_height"])) == 11
    assert choices(small.WIRES.given["wire_spacing"]) == (0.1, 0.125, 0.2, 0.25)
    assert choices(0.2) == (0.2,)


@QUESTIONS
@given(st.integers(0, 500))
def test_the_same_seed_gives_the_same_variant(question: NumberQuestion, seed: int) -> None:
    assert variant(question, f"{seed}", small.BOOK) == variant(question, f"{seed}", small.BOOK)


@QUESTIONS
@given(st.integers(0, 500))
def test_a_variant_is_the_first_fair_candidate_of_its_stream(question: NumberQuestion, seed: int) -> None:
    stream = Stream(f"{seed}|{question.id}")
    drawn = variant(question, f"{seed}", small.BOOK)
    for _ in range(200):
        candidate = {name: choices(r)[stream.below(len(choices(r)))] for name, r in question.given.items()}
        if candidate == drawn.givens:
            return
        assert not _fair_by_hand(question, candidate)
    pytest.fail("the variant is not among the first 200 candidates")


@QUESTIONS
@given(st.integers(0, 500))
def test_every_misconception_misses_the_key_and_the_others_by_more_than_twice_the_tolerance(
    question: NumberQuestion, seed: int
) -> None:
    drawn = variant(question, f"{seed}", small.BOOK)
    assert set(drawn.wrong) == set(question.misconceptions)
    assert _fair_by_hand(question, drawn.givens)
    assert drawn.key == small.BOOK.evaluate(drawn.givens, [question.asks])[question.asks]
    assert drawn.shown_key == show(drawn.key, small.BOOK.quantities[question.asks].places)


def _rounding_by_hand(question: NumberQuestion, givens: dict[str, float]) -> tuple[int, int]:
    """How many steps are rounded for print, and how many counts don't come out whole by themselves."""
    values = {**small.BOOK.evaluate(givens, [question.asks])}
    quantities = small.BOOK.quantities
    printed = sum(
        abs(float(show(value, quantities[name].places)) - value) > 1e-6
        for name, value in values.items()
        if name in quantities and name not in givens
    )
    broken = [values["pen_height"] / values["wire_spacing"]] if "wire_count" in values else []
    broken += [values["wire_length"] / 20] if "roll_count" in values else []
    return printed, sum(abs(x - round(x)) > 1e-6 for x in broken)


@cache
def _usual_rounding(question_id: str) -> tuple[int, int]:
    question = next(one for one in small.NUMBERS if one.id == question_id)
    names = list(question.given)
    grid = itertools.product(*(choices(given) for given in question.given.values()))
    candidates = [dict(zip(names, values, strict=True)) for values in grid]
    held = [candidate for candidate in candidates if _apart_by_hand(question, candidate)]
    return Counter(_rounding_by_hand(question, candidate) for candidate in held).most_common(1)[0][0]


def _fair_by_hand(question: NumberQuestion, givens: dict[str, float]) -> bool:
    """Told apart, and as hard as most."""
    held = _apart_by_hand(question, givens)
    return held and _rounding_by_hand(question, givens) == _usual_rounding(question.id)


def _apart_by_hand(question: NumberQuestion, givens: dict[str, float]) -> bool:
    """The rule once more, from its words alone."""
    asks, places = question.asks, small.BOOK.quantities[question.asks].places
    right = small.BOOK.evaluate(givens, [asks])
    by_hand = dict(givens)
    for name in right:
        if name not in givens:
            value = small.BOOK.work_out(by_hand, [name], check=False)[name]
            by_hand[name] = value if name == asks else float(show(value, small.BOOK.quantities[name].places))
    if small.BOOK.quantities[asks].unit == "" and by_hand[asks] != right[asks]:
        return False
    wrong = [small.BOOK.evaluate(givens, [asks], [name])[asks] for name in question.misconceptions]
    answers = [right[asks], by_hand[asks], *wrong]
    pairs = [(a, b) for i, a in enumerate(answers) for j, b in enumerate(answers) if i < j and (i, j) != (0, 1)]
    if question.answer == "within 1 %":
        return all(abs(a - b) > 2 * 0.01 * max(a, b) for a, b in pairs)
    return all(abs(a - b) > (2 * 0.5 * 10**-places if places else 0) + 1e-7 for a, b in pairs)


@QUESTIONS
def test_bulk_and_single_draws_are_one_stream(question: NumberQuestion) -> None:
    many = variants(question, "one stream", 300, small.BOOK)
    first = variant(question, "one stream", small.BOOK)
    assert {name: float(values[0]) for name, values in many.givens.items()} == first.givens
    few = variants(question, "one stream", 40, small.BOOK)
    for name, values in few.givens.items():
        assert np.array_equal(values, many.givens[name][:40])
    for place in range(0, 300, 29):
        givens = {name: float(values[place]) for name, values in many.givens.items()}
        assert _fair_by_hand(question, givens)
        assert many.key[place] == pytest.approx(small.BOOK.evaluate(givens, [question.asks])[question.asks], rel=1e-12)


@QUESTIONS
def test_worked_out_once_or_for_each_candidate_gives_the_same(
    question: NumberQuestion, monkeypatch: pytest.MonkeyPatch
) -> None:
    tabled = variants(question, "both ways", 500, small.BOOK)
    monkeypatch.setattr(draw, "LARGEST_TABLE", 0)
    direct = variants(question, "both ways", 500, small.BOOK)
    assert np.array_equal(tabled.key, direct.key)
    for name, values in tabled.givens.items():
        assert np.array_equal(values, direct.givens[name])


def test_words_past_the_last_full_multiple_are_thrown_away_in_bulk_as_one_by_one() -> None:
    made = recipe(small.LENGTH, small.BOOK)
    sizes = [len(parameter.choices) for parameter in made.parameters]

    class Scripted(Stream):
        """A stream with refused words (2^32 - 1 is past every limit of 31 and 11) at chosen places."""

        def __init__(self) -> None:
            super().__init__("scripted")
            self.at = 0

        def uint32(self) -> int:
            self.at += 1
            return 2**32 - 1 if self.at in (1, 2, 5, 9, 60) else (self.at * 2654435761) % 2**32

        def words(self, count: int) -> bytes:
            return b"".join(self.uint32().to_bytes(4, "big") for _ in range(count))

    one_by_one = Scripted()
    expected = [[one_by_one.below(size) for size in sizes] for _ in range(30)]
    columns = draw.draw_columns(Scripted(), made, 30)
    assert np.array_equal(np.stack(columns, axis=1), expected)


def test_half_up_over_arrays_is_show() -> None:
    values = np.array([1.005, 2.675, 0.225, -0.125, -0.004, 15.0, 8.16814, 1e6 / 3])
    for places in range(4):
        assert [float(show(v, places)) for v in values] == pytest.approx(list(draw.half_up(values, places)), abs=1e-12)


def test_a_question_whose_mistake_gives_the_right_answer_is_refused_in_words() -> None:
    same = small.ROUND.model_copy(update={"answer": "within 5 %"})  # 3 for pi is 4.5 % off: inside twice 5 %
    with pytest.raises(NoVariantError, match=r"0% of the numbers .* 'round_is_three_widths' gives the right answer"):
        variant(same, "any", small.BOOK)
    with pytest.raises(NoVariantError, match="'round_is_three_widths' gives the right answer in 100%"):
        variants(same, "any", 10, small.BOOK)


def test_a_misconception_without_a_value_is_no_fair_target() -> None:
    endless = small.ROLLS.model_copy(update={"misconceptions": ("no_rolls_at_all",)})
    with pytest.raises(NoVariantError, match="a misconception has no value"):
        variant(endless, "any", small.BOOK)


def test_numbers_outside_a_range_are_never_drawn() -> None:
    wide = small.WIRES.model_copy(update={"given": {**small.WIRES.given, "wire_spacing": 0.7}})
    with pytest.raises(NoVariantError, match="100% of the numbers lead outside a range"):
        variant(wide, "any", small.BOOK)


def test_the_table_tells_how_often_mistakes_hide() -> None:
    row = separability(small.ROLLS, small.BOOK)
    assert row.combinations == math.prod(len(choices(r)) for r in small.ROLLS.given.values())
    assert 0 < row.kept < 1
    assert row.rounding > 0
    assert set(row.same_as_key) == set(small.ROLLS.misconceptions)
    assert set(row.same) == {("rolls_not_rounded_up", "half_width_taken")}


def test_the_table_shows_a_mistake_that_hides_half_the_time() -> None:
    heights = {"from": 1.0, "to": 1.1, "step": 0.1}  # at 0.2 m and 0.5 m: 5 or 6 gaps, and 2 or 3
    hiding = small.question(
        {
            "id": "hiding", "kind": "number", "asks": "wire_count", "misconceptions": ["spacing_in_inches"],
            "given": {"pen_height": heights, "wire_spacing": 0.2}, "answer": "within 22 %", "text": small.both(""),
        }
    )  # fmt: skip
    row = separability(hiding, small.BOOK)
    assert (row.kept, row.same_as_key["spacing_in_inches"]) == (0.5, 0.5)


def test_the_table_agrees_with_counting_by_hand() -> None:
    row = separability(small.WIRES, small.BOOK)
    heights, spacings = (choices(r) for r in small.WIRES.given.values())
    fair = [_fair_by_hand(small.WIRES, {"pen_height": h, "wire_spacing": s}) for h in heights for s in spacings]
    assert row.kept == pytest.approx(sum(fair) / len(fair))
