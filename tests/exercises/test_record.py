from __future__ import annotations

import json

import pytest

from generator.exercises.class_list import Person
from generator.exercises.printed_set import make_set
from generator.exercises.record import Record, from_json, to_json
from generator.problems import ProblemsError
from tests.exercises import small
from tests.exercises.small_course import course

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
        (b"", "set.json:1:1: the file is not whole JSON"),
        (b'{"format": 1,\n "tool": ', "set.json:2:10: the file is not whole JSON"),
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
