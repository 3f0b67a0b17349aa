from __future__ import annotations

import pytest

from generator.exercises.class_list import Person, read_class_list
from generator.problems import ProblemsError


def read(text: str) -> tuple[Person, ...]:
    return read_class_list("class.csv", text.encode("utf-8"), ("en", "hi"))


def problems(text: str | bytes) -> list[str]:
    with pytest.raises(ProblemsError) as caught:
        read_class_list("class.csv", text if isinstance(text, bytes) else text.encode("utf-8"), ("en", "hi"))
    return [str(problem) for problem in caught.value.problems]


def test_names_and_languages_are_read_as_spreadsheets_save_them() -> None:
    expected = (Person("Asha Devi", "hi"), Person("Bir", None))
    assert read("name,language\nAsha  Devi,HI\nBir,\n") == expected
    assert read("\ufeffName;Language\r\nAsha Devi;hi\r\nBir;\r\n") == expected
    assert read("name\nआशा\n") == (Person("आशा"),)


def test_every_fault_is_told_with_its_line_and_column() -> None:
    assert problems("name,language\nAsha,hi\n asha ,\n12,en\nBir,nepali\n" + "x" * 91 + ",en\n") == [
        "class.csv:3:2: 'asha' stands already in line 2 "
        "(fix: add a village or a parent's name, so that each sheet finds its owner)",
        "class.csv:4:1: '12' is a number "
        "(fix: write a name: a number would be taken for the number printed on a sheet)",
        "class.csv:5:5: the course has no language 'nepali' (fix: write one of en, hi, or leave it empty)",
        "class.csv:6:1: the name is longer than 90 bytes (91 letters) (fix: shorten it)",
    ]


@pytest.mark.parametrize(
    ("data", "part"),
    [
        (b"", "the table is empty"),
        (b"name\n", "no rows"),
        (b"nam\nAsha\n", "did you mean 'name'?"),
        (b"\xff\xfe\x41", "UTF-16"),
        ("नाम".encode("utf-16-le"), "class.csv:"),
        (b"name\nAs\xe9\n", "not UTF-8"),
        (b"x" * 10_000_000, "10.0 MB"),
        (b"PK\x03\x04zip", "a spreadsheet or a zip file"),
    ],
)
def test_a_file_that_is_no_class_list_is_refused_in_words(data: bytes, part: str) -> None:
    assert any(part in problem for problem in problems(data))
