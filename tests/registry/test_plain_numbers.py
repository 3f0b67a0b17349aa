from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.registry.plain_numbers import EMPTY, OTHER, plain_numbers

PLAIN = re.compile(r"[0-9]{1,12}(?:\.[0-9]{1,6})?")
TYPED = st.one_of(
    st.from_regex(PLAIN, fullmatch=True),
    st.text("0123456789.", max_size=22),
    st.text("0123456789.,- mर१½\x1f\n", max_size=8),
    st.sampled_from(["", "0", "00", ".5", "5.", "1.2.3", "999999999999.999999", "4503599627370.497", "1000000000000"]),
)


def one(text: str) -> float:
    return float(text) if PLAIN.fullmatch(text) else OTHER if text else EMPTY


@given(st.lists(TYPED, max_size=40))
def test_many_at_once_are_what_each_is_alone_to_the_bit(answers: list[str]) -> None:
    assert plain_numbers(answers).tolist() == [one(text) for text in answers]


@pytest.mark.parametrize("length", range(1, 22))
def test_every_length_of_digits(length: int) -> None:
    digits = "9876543210987654321098"[:length]
    texts = [digits, *(f"{digits[:cut]}.{digits[cut:]}" for cut in range(length + 1))]
    assert plain_numbers(texts).tolist() == [one(text) for text in texts]
