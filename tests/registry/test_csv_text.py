from __future__ import annotations

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.problems import Column, read_csv
from generator.registry import guarded, to_csv, unguarded

texts = st.text(st.characters(exclude_categories=["Cs", "Cc"]))
risky = st.builds(lambda start, rest: start + rest, st.sampled_from("=+-@＝＋－＠' \t"), texts)


@pytest.mark.parametrize("text", ["=1+1", "+256700", "-Okello", "@sum", "\t=1", " =1", "'=1", "＝1", "－2"])
def test_what_would_start_a_formula_is_guarded(text: str) -> None:
    assert guarded(text) == "'" + text


@pytest.mark.parametrize("text", ["Asha", "a=b", "3-4", "", "'", "it's", "O'Neil"])
def test_what_would_not_is_left(text: str) -> None:
    assert guarded(text) == text == unguarded(text)


@given(texts | risky)
def test_the_guard_comes_off_again(text: str) -> None:
    assert unguarded(guarded(text)) == text


@given(st.lists(st.tuples(risky | texts, st.integers(-9, 9)), min_size=1, max_size=5))
def test_any_table_reads_back_as_the_library_writes_it(rows: list[tuple[str, int]]) -> None:
    found = list(csv.reader(io.StringIO(to_csv(["a", "b"], rows).decode("utf-8-sig"), newline="")))
    assert found == [["a", "b"], *[[guarded(text), str(number)] for text, number in rows]]


def test_our_own_reader_takes_what_was_sent() -> None:
    data = to_csv(["name", "points"], [("-Okello, junior", -3), ('the "great"', None), ("Asha\nDevi", True)])
    rows = read_csv("out.csv", data, [Column("name"), Column("points", filled=False)])
    assert [unguarded(row["name"]) for row in rows] == ["-Okello, junior", 'the "great"', "Asha\nDevi"]
    assert [row["points"] for row in rows] == ["-3", "", "yes"]
