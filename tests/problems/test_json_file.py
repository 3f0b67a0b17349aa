"""JSON that the tool wrote once: cut short, changed, nested without end, or newer; a problem, never a traceback."""

import pytest

from generator.problems import ProblemsError
from generator.problems.json_file import read_json


def told(text: str) -> str:
    with pytest.raises(ProblemsError) as refused:
        read_json("a.json", text, called="the record", whole="take the whole file", newer="take a newer edition")
    return "; ".join(map(str, refused.value.problems))


def test_any_whole_value_is_given_back() -> None:
    for text, value in (("[1, 2]", [1, 2]), ('{"format": 1}', {"format": 1}), ('{"format": true}', {"format": True})):
        assert read_json("a.json", text, called="it", whole="", newer="") == value


def test_a_file_cut_short_is_told_where_it_ends() -> None:
    assert told('{"a":\n [1,') == (
        "a.json:2:5: the record is not whole JSON: Expecting value (fix: take the whole file)"
    )


@pytest.mark.parametrize("text", ["[" * 200_000, "9" * 10_000])
def test_nesting_and_digits_without_end_are_refused(text: str) -> None:
    what = "the record is nested too deeply, or holds a number of thousands of digits"
    assert told(text) == f"a.json:0:0: {what} (fix: take the whole file)"


def test_a_newer_format_is_refused_in_words() -> None:
    assert told('{"format": 2}') == (
        "a.json:1:1: the record has format 2, and this edition reads format 1 (fix: take a newer edition)"
    )
