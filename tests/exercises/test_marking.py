from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.exercises.items import ChoiceItem, MatchItem, NumberItem, OrderItem
from generator.exercises.make import make_item
from generator.exercises.mark import Verdict, messages
from generator.exercises.marking import mark_choice, mark_match, mark_number, mark_order
from generator.exercises.numbers import Ask, AskReason
from generator.formula import show, show_full
from tests.exercises import small

EN = small.WORDS["en"]


def item(question: object, seed: str = "marking") -> object:
    return make_item(question, seed, EN, small.BOOK)  # type: ignore[arg-type]


def number(question: object, seed: str = "marking") -> NumberItem:
    made = item(question, seed)
    assert isinstance(made, NumberItem)
    return made


@pytest.mark.parametrize(
    "question", [q for q in small.NUMBERS if q is not small.STICK], ids=lambda question: question.id
)
@given(st.integers(0, 300))
def test_the_shown_key_is_right_and_every_mistake_is_named(question: object, seed: int) -> None:
    made = number(question, str(seed))
    assert mark_number(made, made.shown_key).verdict is Verdict.RIGHT
    assert mark_number(made, f"{made.rounded:.9f}").verdict is Verdict.RIGHT
    for name, value in made.wrong.items():
        mark = mark_number(made, f"{value:.9f}")
        assert mark.verdict is Verdict.NOT_YET
        fits = made.tolerance.fits
        assert mark.misconceptions == (name, *(other for other, also in made.also.items() if fits(value, also)))
        assert mark.points == 0


def test_a_wrong_number_without_a_known_mistake_points_to_the_steps() -> None:
    mark = mark_number(number(small.WIRES), "99")
    assert (mark.verdict, mark.value, mark.misconceptions) == (Verdict.NOT_YET, 99, ())
    assert messages(mark, EN) == ("not_yet", "check each step")


def test_a_named_mistake_says_what_would_happen_on_the_hill() -> None:
    made = number(small.WIRES)
    mark = mark_number(made, show(made.wrong["gaps_counted_not_wires"], 0))
    assert messages(mark, EN) == ("not_yet", "mistake gaps_counted_not_wires", "hill gaps_counted_not_wires")


def test_a_mistake_that_the_course_has_given_up_is_passed_over_in_words() -> None:
    made = number(small.WIRES).model_copy(update={"wrong": {"an_old_mistake": 5.0}})
    mark = mark_number(made, "5")
    assert mark.misconceptions == ("an_old_mistake",)
    assert messages(mark, EN) == ("not_yet", "check each step")


def test_every_fitting_mistake_is_named() -> None:
    made = number(small.WIRES).model_copy(update={"wrong": {"one": 5.0, "two": 6.0, "three": 5.0}})
    assert mark_number(made, "5").misconceptions == ("one", "three")


def test_text_for_a_number_is_a_verdict_and_no_crash() -> None:
    mark = mark_number(number(small.WIRES), "many <script>alert(1)</script>")
    assert (mark.verdict, mark.ask) == (Verdict.ASK_BACK, Ask(AskReason.NOT_A_NUMBER))
    assert mark_number(number(small.WIRES), " ").verdict is Verdict.BLANK


def test_a_number_in_another_unit_of_the_kind_is_converted() -> None:
    made = number(small.ROUND)
    assert mark_number(made, f"{made.key * 1000:.0f} mm").verdict is Verdict.RIGHT
    assert mark_number(made, f"{made.key * 1000:.0f}").verdict is Verdict.NOT_YET
    assert mark_number(made, f"{made.key:.2f} kg").verdict is Verdict.ASK_BACK


def _volume(key: float, low: float, high: float) -> NumberItem:
    return number(small.ROUND).model_copy(
        update={"key": key, "rounded": key, "unit": "L", "low": low, "high": high, "relative": 0.01, "wrong": {}}
    )


def test_one_comma_group_is_fifteen_hundred_unless_only_the_decimal_could_be_meant() -> None:
    litres = _volume(1500, 1, 100000)
    assert mark_number(litres, "1,500").verdict is Verdict.RIGHT
    assert mark_number(litres, "1,700").verdict is Verdict.NOT_YET
    few = _volume(1.5, 0.5, 100)  # 1500 is outside, 1.5 inside
    assert mark_number(few, "1,500").ask == Ask(AskReason.TWO_READINGS, "1500", "1.5")
    assert mark_number(few, "1,700").verdict is Verdict.ASK_BACK
    both = _volume(1.5, 0.5, 5000)  # both inside; the decimal would be right
    assert mark_number(both, "1,500").verdict is Verdict.ASK_BACK
    assert mark_number(both, "1,700").verdict is Verdict.NOT_YET
    assert mark_number(both, "1.500").verdict is Verdict.RIGHT
    assert mark_number(both, "1,5").verdict is Verdict.RIGHT


def test_feet_typed_with_a_point_are_asked_for_again() -> None:
    made = number(small.STICK)
    whole = made.model_copy(update={"key": 11.0, "rounded": 11.0})
    assert mark_number(whole, "11").verdict is Verdict.RIGHT
    assert mark_number(whole, "11.6").ask == Ask(AskReason.FEET, "11", "6")
    assert mark_number(whole, "11'0\"").verdict is Verdict.RIGHT
    assert mark_number(whole, show_full(11 * 0.3048) + " m").verdict is Verdict.RIGHT


def choice(question: object) -> ChoiceItem:
    made = item(question)
    assert isinstance(made, ChoiceItem)
    return made


def test_one_option_is_right() -> None:
    made = choice(small.CHOICE)
    assert mark_choice(made, [0]).verdict is Verdict.RIGHT
    assert mark_choice(made, [1]).why == ("It snaps.",)
    assert mark_choice(made, []).verdict is Verdict.BLANK
    assert mark_choice(made, [0, 1]).ask == Ask(AskReason.ONE_ONLY)
    assert mark_choice(made, [7]).ask == Ask(AskReason.UNKNOWN_LETTER)
    assert mark_choice(made, [-1]).ask == Ask(AskReason.UNKNOWN_LETTER)


def test_several_options_are_right_only_together() -> None:
    made = choice(small.SEVERAL)
    assert mark_choice(made, [2, 0, 2]).verdict is Verdict.RIGHT
    assert mark_choice(made, [0]).verdict is Verdict.NOT_YET
    assert mark_choice(made, [0, 1, 2]).why == ("It snaps.",)


def test_steps_are_right_only_in_order() -> None:
    made = item(small.ORDER)
    assert isinstance(made, OrderItem)
    assert mark_order(made, [0, 1, 2, 3]).verdict is Verdict.RIGHT
    assert mark_order(made, [1, 0, 2, 3]).why == ("A post without a peg stands wrong.",)
    assert mark_order(made, []).verdict is Verdict.BLANK
    for broken in ([0, 1, 2], [0, 0, 1, 2], [0, 1, 2, 4]):
        assert mark_order(made, broken).ask == Ask(AskReason.NOT_ALL)


def test_pairs_are_right_only_together() -> None:
    made = item(small.MATCH)
    assert isinstance(made, MatchItem)
    assert mark_match(made, [0, 1, 2]).verdict is Verdict.RIGHT
    assert mark_match(made, [1, 0, 2]).why == ("A level digs no hole.",)
    assert mark_match(made, [-1, -1, -1]).verdict is Verdict.BLANK
    for broken in ([0, 1, -1], [0, 0, 1], [0, 1]):
        assert mark_match(made, broken).ask == Ask(AskReason.NOT_ALL)


def test_two_right_sides_that_read_alike_may_change_places() -> None:
    made = item(small.MATCH)
    assert isinstance(made, MatchItem)
    alike = made.model_copy(update={"right": ("hole", "hole", "post")})
    assert mark_match(alike, [1, 0, 2]).verdict is Verdict.RIGHT
