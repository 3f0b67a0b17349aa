from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.exercises.class_list import Person
from generator.exercises.printed_set import make_set, mark_set
from generator.exercises.record import Record, from_json, to_json
from generator.problems import ProblemsError
from tests.exercises import small
from tests.exercises.small_course import course
from tests.exercises.typed import SIGNS_TYPED

PEOPLE = (Person("Asha"), Person("Bir", "hi"))


def record() -> Record:
    return make_set(course(), "pens", PEOPLE, "spring", "en", tool="test 1", book=small.BOOK)


def problems(data: bytes) -> list[str]:
    with pytest.raises(ProblemsError) as caught:
        from_json("set.json", data)
    return [str(problem) for problem in caught.value.problems]


def test_a_record_comes_back_as_it_was_written() -> None:
    made = record()
    assert from_json("set.json", to_json(made)) == made
    assert to_json(from_json("set.json", to_json(made))) == to_json(made)


def test_it_holds_all_that_marking_needs_in_plain_json() -> None:
    data = json.loads(to_json(record()))
    assert data["format"] == 1
    assert (data["course"], data["course_version"], data["module"], data["seed"]) == ("small", "0.1", "pens", "spring")
    first = data["learners"][0]["items"][0]
    assert set(first) >= {"givens", "key", "absolute", "relative", "wrong", "unit", "text"}
    assert set(data["texts"]) == {question.id for question in small.QUESTIONS} | {"a-new-pen"}
    assert len(data["formulas"]) == 64


def test_the_set_id_tells_sets_apart() -> None:
    made = record()
    other = make_set(course(), "pens", PEOPLE, "autumn", "en", tool="test 1", book=small.BOOK)
    assert len(made.set_id) == 8
    assert made.set_id == record().set_id != other.set_id


def test_a_newer_record_is_refused_in_words() -> None:
    data = json.loads(to_json(record())) | {"format": 2, "something": "new"}
    assert problems(json.dumps(data).encode()) == [
        "set.json:1:1: the record has format 2, and this edition reads format 1 "
        "(fix: mark it with the edition that printed it, or a newer one)"
    ]


@pytest.mark.parametrize(
    ("data", "part"),
    [
        (b"", "set.json:1:1: the record is not whole JSON"),
        (b'{"format": 1,\n "tool": ', "set.json:2:10: the record is not whole JSON"),
        (b"[]", "is not the record of a printed set"),
        (b"{}", "format: Field required"),
        (b'{"format": "1"}', "format: Input should be 1"),
        (b"[" * 100_000, "nested too deeply"),
        (b"9" * 5000, "set.json"),
        (b"\xff\xfe", "UTF-16"),
    ],
)
def test_a_file_that_is_no_record_is_refused_in_words(data: bytes, part: str) -> None:
    assert any(part in problem for problem in problems(data))


def test_a_record_with_a_broken_number_names_the_place() -> None:
    text = to_json(record()).decode().replace('"key": ', '"key": "x", "was": ', 1)
    assert any("learners.0.items.0.number.key" in problem for problem in problems(text.encode()))


def _changed(tree: Any, at: int, value: Any) -> tuple[Any, int]:
    """The tree with its leaf number `at` replaced, and how many leaves it has."""
    if isinstance(tree, dict | list):
        count = 0
        made: Any = {} if isinstance(tree, dict) else []
        for key, inner in tree.items() if isinstance(tree, dict) else enumerate(tree):
            new, leaves = _changed(inner, at - count, value)
            count += leaves
            if isinstance(made, dict):
                made[key] = new
            else:
                made.append(new)
        return made, count
    return (value if at == 0 else tree), 1


ALL = json.loads(to_json(make_set(course(small.ALL), "pens", PEOPLE, "f", "en", tool="test 1", book=small.BOOK)))
LEAVES = _changed(ALL["learners"], -1, None)[1]
STRANGE = [
    *(None, True, -1, 0, 7, 10**30, -1e308, 1e-320, 0.5),
    *("", "A", "up", "number", "\ud800", "<b>", [], {}, [0, 0, 0]),
]


@given(st.integers(0, LEAVES - 1), st.sampled_from(STRANGE), st.lists(st.sampled_from(SIGNS_TYPED), max_size=6))
@settings(max_examples=400)
def test_a_damaged_record_is_refused_in_words_or_marked(at: int, value: object, typed: list[str]) -> None:
    learners, _ = _changed(ALL["learners"], at, value)
    data = json.dumps({**ALL, "learners": learners}).encode("utf-8", "surrogatepass")
    try:
        found = from_json("set.json", data)
    except ProblemsError:
        return
    texts = ["".join(typed), "A", "10.25 m", "BA", "1A 2B 3C"]
    for text in texts:
        answers = {(learner.number, label): text for learner in found.learners for label, _, _ in learner.labelled()}
        assert mark_set(found, answers, small.BOOK).learners
