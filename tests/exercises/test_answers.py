from __future__ import annotations

import pytest

from generator.exercises.answers import Answers, read_answers
from generator.exercises.class_list import Person
from generator.exercises.printed_set import make_set
from generator.problems import ProblemsError
from tests.exercises import small
from tests.exercises.small_course import course

RECORD = make_set(
    course(), "pens", (Person("Asha Devi"), Person("Bir", "hi")), "spring", "en", tool="test 1", book=small.BOOK
)
HEAD = "learner,question,answer\n"


def read(rows: str) -> Answers:
    return read_answers("answers.csv", (HEAD + rows).encode("utf-8"), RECORD)


def problems(rows: str) -> list[str]:
    with pytest.raises(ProblemsError) as caught:
        read(rows)
    return [str(problem) for problem in caught.value.problems]


def test_learners_and_questions_go_by_number_or_by_name() -> None:
    expected = {(1, "1"): "12", (2, "3"): "१४"}
    assert read("1,1,12\n2,3,१४\n") == expected
    assert read("asha  devi,wires-of-a-pen,12\nBIR,३,१४\n") == expected
    assert read("१,1,12\n2,3.,१४\n") == expected


def test_a_part_of_a_scenario_has_a_number_and_a_name_of_its_own() -> None:
    assert read("1,10,10.05\n") == read("1,a-new-pen/round,10.05\n") == {(1, "10"): "10.05"}


def test_any_text_is_an_answer() -> None:
    assert read('1,1,"twelve, or so"\n1,2,\n1,3,"0,35"\n') == {
        (1, "1"): "twelve, or so",
        (1, "2"): "",
        (1, "3"): "0,35",
    }


def test_every_fault_is_told_with_its_line_and_column() -> None:
    assert problems("1,1,12\n1,1,13\nAsha Dewi,1,1\n7,1,1\nBir,99,1\n1,1,12\n") == [
        "answers.csv:3:5: Asha Devi's question 1 has another answer, '12', in line 2 "
        "(fix: keep the one that stands on the sheet)",
        "answers.csv:4:1: no sheet was printed for 'Asha Dewi' (fix: did you mean 'Asha Devi'?)",
        "answers.csv:5:1: no sheet was printed for '7' (fix: write a name, or a number from 1 to 2)",
        "answers.csv:6:5: Bir's sheet has no question '99' (fix: its questions are 1 to 13)",
    ]


def test_ten_megabytes_of_junk_are_refused_at_once() -> None:
    with pytest.raises(ProblemsError, match=r"10\.0 MB"):
        read_answers("answers.csv", b"\x00" * 10_000_000, RECORD)
