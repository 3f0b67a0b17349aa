from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.exercises.items import ChoiceItem, MatchItem, OrderItem, QuestionItem
from generator.exercises.letters import LETTERS, mark_typed
from generator.exercises.make import make_item
from generator.exercises.mark import Mark, Verdict
from generator.exercises.numbers import AskReason
from tests.exercises import small

WORDS = small.WORDS["en"]


def item(question: object) -> QuestionItem:
    return make_item(question, "letters", WORDS, small.BOOK)  # type: ignore[arg-type]


def shown(made: QuestionItem, right: list[int]) -> str:
    """The letters that stand before these options on the sheet."""
    assert isinstance(made, ChoiceItem | OrderItem | MatchItem)
    return "".join(LETTERS[made.order.index(place)] for place in right)


def test_a_letter_means_the_option_that_is_shown_there() -> None:
    made = item(small.CHOICE)
    assert isinstance(made, ChoiceItem)
    right = shown(made, [0])
    for text in (
        right,
        right.lower(),
        f" {right}. ",
        f"({right})",
        "कखग"["ABC".index(right)],
        f"{'ABC'.index(right) + 1}",
    ):
        assert mark_typed(made, text).verdict is Verdict.RIGHT, text
    assert mark_typed(made, shown(made, [1])).why == ("It snaps.",)


def test_several_letters_may_be_written_in_any_way() -> None:
    made = item(small.SEVERAL)
    a, b = shown(made, [0, 2])
    for text in (f"{a}{b}", f"{b}, {a}", f"{a} and {b}", f"{a} और {b}", f"{a}/{b}", f"{a}+{b}"):
        assert mark_typed(made, text).verdict is Verdict.RIGHT, text


def test_steps_are_read_in_the_order_written() -> None:
    made = item(small.ORDER)
    assert isinstance(made, OrderItem)
    letters = shown(made, [0, 1, 2, 3])
    for text in (letters, ", ".join(letters), " > ".join(letters), "-".join(letters.lower())):
        assert mark_typed(made, text).verdict is Verdict.RIGHT, text
    assert mark_typed(made, letters[::-1]).verdict is Verdict.NOT_YET
    assert _reason(mark_typed(made, letters[:3])) is AskReason.NOT_ALL


def test_pairs_are_read_with_or_without_their_numbers() -> None:
    made = item(small.MATCH)
    assert isinstance(made, MatchItem)
    a, b, c = shown(made, [0, 1, 2])
    for text in (f"1{a} 2{b} 3{c}", f"3-{c}, 1-{a}, 2-{b}", f"{a}{b}{c}", f"{a}, {b}, {c}", f"1={a} 2={b} 3={c}"):
        assert mark_typed(made, text).verdict is Verdict.RIGHT, text
    assert mark_typed(made, f"1{b} 2{a} 3{c}").verdict is Verdict.NOT_YET
    assert _reason(mark_typed(made, f"1{a} 2{b}")) is AskReason.NOT_ALL
    assert _reason(mark_typed(made, f"1{a} 1{b} 3{c}")) is AskReason.UNKNOWN_LETTER


@pytest.mark.parametrize("text", ["G", "Z", "the first one", "A?B", "😀", "<b>", "A" * 500, "4D"])
@pytest.mark.parametrize("question", [small.CHOICE, small.MATCH], ids=lambda question: question.id)
def test_what_stands_at_no_option_is_asked_for_again(question: object, text: str) -> None:
    assert mark_typed(item(question), text).verdict is Verdict.ASK_BACK


@given(st.text(max_size=20) | st.text(st.sampled_from("ABCDabcdकखग1234567 ,-=;>और"), max_size=12))
def test_no_text_raises(text: str) -> None:
    for question in small.ALL:
        assert isinstance(mark_typed(item(question), text, small.BOOK), Mark)


def test_blank_is_blank() -> None:
    for question in small.ALL:
        assert mark_typed(item(question), " \u00a0", small.BOOK).verdict is Verdict.BLANK


def _reason(mark: Mark) -> AskReason:
    assert mark.ask is not None
    return mark.ask.reason
