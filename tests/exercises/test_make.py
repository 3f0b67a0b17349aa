from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.exercises.fill import fill, rounding_said, worked
from generator.exercises.items import ChoiceItem, MatchItem, NumberItem, OrderItem
from generator.exercises.make import make_item
from tests.exercises import small


def test_the_text_shows_the_givens_as_they_are_given_with_their_units() -> None:
    givens = {"pen_height": 1.5, "wire_spacing": 0.125}
    assert fill(small.WIRES, givens, small.WORDS["en"], small.BOOK) == (
        "A pen 1.5\u00a0m high, a wire every 0.125\u00a0m. How many wires?"
    )
    assert fill(small.WIRES, givens, small.WORDS["hi"], small.BOOK).startswith("हि A pen 1.5\u00a0मीटर")


def test_a_number_item_is_filled_and_holds_its_key() -> None:
    made = make_item(small.WIRES, "asha", small.WORDS["en"], small.BOOK)
    assert isinstance(made, NumberItem)
    assert "{" not in made.text
    assert made.key == small.BOOK.evaluate(made.givens, ["wire_count"])["wire_count"]
    assert list(made.givens) == list(small.WIRES.given)


def test_the_worked_solution_ends_with_the_key() -> None:
    made = make_item(small.ROLLS, "asha", small.WORDS["en"], small.BOOK)
    assert isinstance(made, NumberItem)
    steps = worked(small.ROLLS, made.givens, small.BOOK)
    assert [step.name for step in steps][-1] == "roll_count"
    assert steps[-1].shown == made.shown_key


@pytest.mark.parametrize("question", [small.ORDER, small.MATCH], ids=lambda question: question.id)
@given(st.integers(0, 2000))
def test_left_as_it_is_shown_is_never_the_answer(question: object, seed: int) -> None:
    made = make_item(question, str(seed), small.WORDS["en"], small.BOOK)  # type: ignore[arg-type]
    assert isinstance(made, OrderItem | MatchItem)
    assert sorted(made.order) == list(range(len(made.order)))
    assert list(made.order) != sorted(made.order)


def test_every_order_of_options_is_shown_to_someone() -> None:
    orders = set()
    for seed in range(200):
        made = make_item(small.CHOICE, str(seed), small.WORDS["en"], small.BOOK)
        assert isinstance(made, ChoiceItem)
        orders.add(made.order)
    assert len(orders) == 6


def test_both_languages_draw_the_same_numbers() -> None:
    english, hindi = (make_item(small.WIRES, "bir", small.WORDS[code], small.BOOK) for code in ("en", "hi"))
    assert english.model_dump(exclude={"text"}) == hindi.model_dump(exclude={"text"})


def test_rounding_is_told_only_where_it_changes_the_number() -> None:
    item = make_item(small.CUT, "s", small.WORDS["en"], small.BOOK)
    assert isinstance(item, NumberItem)
    moved = item.model_copy(update={"exact": 9.9, "key": 10.0, "shown_key": "10.00"})
    stays = item.model_copy(update={"exact": 10.0, "key": 10.0, "shown_key": "10.00"})
    assert "9.90" in rounding_said(moved, small.WORDS["en"])
    assert rounding_said(stays, small.WORDS["en"]) == ""
