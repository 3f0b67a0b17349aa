"""What no plan is made of is said in the reader's language, with the number that stands in the way."""

from __future__ import annotations

import re

from hypothesis import given, settings
from hypothesis import strategies as st

from generator.formula import OutOfRangeError, OutsideRangeError
from generator.plans import Bar, NoPlanError, Refusal, Wish, make_plan
from generator.plans.refused import from_calculation
from tests.figures.tanks import words

LATIN = re.compile(r"[A-Za-z]{4,}")
wishes = st.builds(
    Wish,
    litres=st.floats(500, 100_000),
    width_limit=st.none() | st.floats(1, 6),
    height_limit=st.none() | st.floats(0.5, 3),
    wished_hoops=st.none() | st.tuples(st.just(Bar(diameter=6.0, ribbed=False, length=12.0)), st.floats(0.05, 0.3)),
)


@settings(max_examples=30)
@given(wishes)
def test_a_refusal_of_a_hindi_plan_is_hindi(wish: Wish) -> None:
    found = make_plan(wish)
    if isinstance(found, Refusal):
        assert found.reason.key != "outside_module"
        assert not LATIN.search(found.reason.text(words("hi")))


def test_a_number_outside_the_course_is_called_by_its_trade_name() -> None:
    error = OutsideRangeError("hoop_spacing", 0.24, 0.05, 0.2, "m")
    said = {language: from_calculation(error).text(words(language)) for language in ("en", "hi")}
    for language, text in said.items():
        assert words(language).say_one_of("quantity", "hoop_spacing") in text
        assert "0.24 m" in text
        assert "0.2 m" in text


def test_a_reason_of_the_plan_stays_what_it_is() -> None:
    reason = NoPlanError("no_mesh")
    assert from_calculation(reason) is reason
    assert from_calculation(OutOfRangeError("3 blue moons")).text(words("en")).endswith("3 blue moons")


def test_an_angle_that_is_too_short_is_told_with_both_lengths() -> None:
    shop = Wish(9000.0).shop
    angles = tuple(angle.model_copy(update={"length": 1.0}) for angle in shop.angles)
    found = make_plan(Wish(9000.0, shop=shop.model_copy(update={"angles": angles})))
    assert isinstance(found, Refusal)
    assert found.reason.key == "bar_too_short"
    assert "a bar of 1 m" in found.reason.text(words("en"))
