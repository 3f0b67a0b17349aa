"""Packing: the same text, the same letters, and fewer of them."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from generator.site.packing import as_json, packed, unpacked


@given(st.text())
def test_what_is_packed_can_be_opened_and_stands_safely_in_a_page(text: str) -> None:
    made = packed(text)
    assert unpacked(made) == text
    assert packed(text) == made
    assert not set(made) & set("<>&\"'")


def test_data_like_a_bank_of_questions_takes_a_fifth_of_the_room() -> None:
    data = as_json([{"id": f"question-{n}", "text": f"The wall is {n} m high. How many hoops?"} for n in range(900)])
    assert len(packed(data)) < len(data) / 5
