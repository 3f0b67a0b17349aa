"""Files of answers, judges and observers: what is read, and every fault with its place, all at once."""

from __future__ import annotations

import json
from collections.abc import Callable
from contextlib import suppress

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.assessment import score_files as files
from generator.commands.mark import _as_data
from generator.curriculum import CourseContent
from generator.exercises import ChoiceItem, Person, make_set, mark_set, read_answers, to_json
from generator.problems import ProblemsError
from tests.assessment.answer_files import (
    GROUPS,
    JUDGES,
    LETTERS,
    OBSERVERS,
    RATINGS,
    TABLE,
    answer,
    results,
)


def faults(read: Callable[[str, bytes], object], data: bytes | str) -> list[str]:
    with pytest.raises(ProblemsError) as caught:
        read("f", data if isinstance(data, bytes) else data.encode())
    return [f"{problem.line}:{problem.column} {problem.code}" for problem in caught.value.problems]


def test_results_of_mark_are_read() -> None:
    data = results(
        ("Asha", [answer(1, "a", "right"), answer(2, "b", "not_yet", "half_width"), answer(3, "a", "blank")]),
        ("Bimla", [answer(1, "a", "right_from_earlier"), answer(2, "c", "ask_back")]),
    )
    found = files.read_scores("f", data).scores
    assert found.questions == ("a", "b", "a (2)", "c")
    assert np.array_equal(found.points, [[1, 0, 0, np.nan], [1, np.nan, np.nan, 0]], equal_nan=True)
    assert found.blank.tolist() == [[False, False, True, False], [False] * 4]
    assert found.mistakes == {"b": {"half_width": 1}}
    assert found.competencies["c"] == "pens"
    assert found.asked_of_all == (0,)


def test_a_table_is_read_with_forms_gaps_and_questions_not_asked() -> None:
    found = files.read_table("f", TABLE)
    assert np.array_equal(found.points, [[1, 0, 1], [0, 0, 1], [1, 1, np.nan]], equal_nan=True)
    assert found.blank[1].tolist() == [False, True, False]
    assert found.forms == ("written", "spoken", "written")
    assert found.asked_of_all == (0, 1)


def test_letters_are_held_against_the_key() -> None:
    found = files.read_table("f", LETTERS)
    assert found.learners == ("Asha", "Bimla", "Chandan")
    assert found.points.tolist() == [[1, 1], [0, 0], [1, 1]]
    assert found.options == {"gate": ("B", "C", "B"), "rope": ("A", "", "A")}
    assert found.keys == {"gate": "B", "rope": "A"}


def test_files_are_taken_together() -> None:
    one = files.read_scores("f", TABLE)
    other = files.read_scores("f", b"learner,q3,q4\nDeepak,1,0\n")
    found = files.joined_answers([one, other]).scores
    assert found.questions == ("q1", "q2", "q3", "q4")
    assert found.learners[-1] == "Deepak"
    assert np.array_equal(found.points[3], [np.nan, np.nan, 1, 0], equal_nan=True)
    assert found.forms == ("written", "spoken", "written", "written")
    assert files.joined_answers([one]) is one


def test_judges_ratings_groups_and_observers_are_read() -> None:
    judges = files.read_judges("f", JUDGES)
    assert judges.questions == ("q1", "q2", "q3")
    assert [len(names) for names, _ in judges.rounds] == [5, 5]
    assert judges.rounds[1][1][1].tolist() == [55, 65, 45]
    assert len(files.read_judges("f", b"judge,q1\na,50\nb,60\n").rounds) == 1
    assert files.read_ratings("f", RATINGS.encode()).ratings[:3] == (1, 2, 2)
    assert files.read_groups("f", GROUPS.encode()).not_yet[0] == 5
    watched = files.read_observers("f", OBSERVERS.encode())
    assert watched.observers == ("One", "Two")
    assert watched.seen[("A", "close-a-fence", "tidy")] == {"One": "done", "Two": "not done"}


@pytest.mark.parametrize(
    ("read", "text", "wanted"),
    [
        (files.read_table, "learner,q1,q2\nAsha,2,x\nasha,1,0\n,1,1\n", ["4:1 empty-cell"]),
        (files.read_table, "learner,q1,q2\nAsha,2,x\nasha,1,0\n", ["2:6 unknown-score", "2:8 unknown-score",
                                                                  "3:1 duplicate-learner"]),
        (files.read_table, "learner,form,q1\nAsha,sung,1\n", ["2:6 unknown-form"]),
        (files.read_table, "learner,q1\nkey,Z\nAsha,1\n", ["2:5 unknown-letter"]),
        (files.read_table, "learner,q1\nkey,B\nAsha,7\n", ["3:6 unknown-letter"]),
        (files.read_table, "learner,q1\nkey,B\n", ["0:0 no-learners"]),
        (files.read_table, "learner\nAsha\n", ["1:1 no-questions"]),
        (files.read_table, "learner,q1,Q1\nAsha,1,0\n", ["1:12 duplicate-column"]),
        (files.read_table, "name,q1\nAsha,1\n", ["1:1 missing-column"]),
        (files.read_judges, "round,judge,q1,q2\n1,a,101,\n3,b,1,1\n1,a,50,-5\n",
         ["2:5 unknown-number", "2:9 unknown-number", "3:1 unknown-round", "4:3 duplicate-judge",
          "4:8 unknown-number"]),
        (files.read_judges, "round,judge,q1\n2,a,50\n", ["0:0 no-first-round"]),
        (files.read_ratings, "learner,rating,points\nA,6,ten\nA,1,3\n",
         ["2:3 unknown-rating", "2:5 unknown-number", "3:1 duplicate-learner"]),
        (files.read_groups, "learner,group,points\nA,maybe,3\n", ["2:3 unknown-group"]),
        (files.read_observers, "observer,learner,practical,step,seen\nO,A,p,s,done\n"
         "O,A,p,s,not done\nO,A,p,t,perhaps\n",
         ["3:9 two-observations", "4:9 unknown-seen"]),
    ],
)  # fmt: skip
def test_every_fault_is_told_with_its_place(read: Callable[[str, bytes], object], text: str, wanted: list[str]) -> None:
    assert faults(read, text) == wanted


def test_results_that_are_none_are_told() -> None:
    assert faults(files.read_scores, b'{"format": 1,\n  "learners": [}') == ["2:16 not-json"]
    assert faults(files.read_scores, results(("A", []), format=2)) == ["1:1 newer-format"]
    assert faults(files.read_scores, b'{"format": 1, "learners": []}') == ["0:0 not-results"]
    wrong = results(("A", [answer(1, "a", "wonderful")]), ("B", [{"question": "1"}]))
    assert len(faults(files.read_scores, wrong)) >= 4


@given(st.binary(max_size=200))
def test_junk_is_refused_in_words_and_nothing_else(data: bytes) -> None:
    for read in (files.read_scores, files.read_judges, files.read_ratings, files.read_groups, files.read_observers):
        with suppress(ProblemsError):
            read("f", data)


@pytest.fixture(name="printed", scope="module")
def a_printed_set(content: CourseContent) -> tuple[bytes, bytes]:
    """A record of the shipped course and results as `mark --json` prints them: nobody answered anything."""
    record = make_set(content, "frame", [Person("Asha"), Person("Bimla")], "goats", "en", tool="test")
    return to_json(record), json.dumps(_as_data(mark_set(record, {}), {}, [], content.words["en"])).encode()


def test_a_record_tells_the_drawn_numbers(printed: tuple[bytes, bytes]) -> None:
    record, data = printed
    found = files.read_scores_with_record("r", data, "record", record)
    assert len(found.scores.questions) >= 30
    assert set(found.givens) <= set(found.scores.questions)
    ring = found.givens["round-the-ring"].numbers["frame_diameter"]
    assert len(ring) == 2
    assert all(1.8 <= value <= 3.4 for value in ring)


def test_typed_answers_tell_who_picked_what(content: CourseContent) -> None:
    """Options are shuffled for each learner: the letters of the report are those of the bank."""
    record = make_set(
        content, "frame", [Person(name) for name in ("Asha", "Bimla", "Chandan")], "goats", "en", tool="t"
    )
    rows = []
    for learner, wanted in zip(record.learners, (0, 1, None), strict=True):
        for label, item, _ in learner.labelled():
            if item.id == "tape-fell-inside" and wanted is not None:
                assert isinstance(item, ChoiceItem)
                rows.append(f"{learner.number},{label},{'ABC'[item.order.index(wanted)]}")
    typed = "\n".join(["learner,question,answer", *rows]).encode()
    marks = mark_set(record, read_answers("a", typed, record))
    data = json.dumps(_as_data(marks, {}, [], content.words["en"])).encode()
    found = files.read_scores_with_record("r", data, "record", to_json(record), "a", typed).scores
    assert found.options["tape-fell-inside"] == ("A", "B", "")
    assert found.keys["tape-fell-inside"] == "C"
    assert set(found.texts["tape-fell-inside"]) == {"A", "B", "C"}
    assert "order-set-the-ring" not in found.options
    with pytest.raises(ProblemsError, match="no sheet was printed"):
        files.read_scores_with_record("r", data, "record", to_json(record), "a", b"learner,question,answer\nX,1,2\n")


def test_a_record_of_another_set_is_refused(printed: tuple[bytes, bytes], content: CourseContent) -> None:
    other = to_json(make_set(content, "frame", [Person("Deepak"), Person("Esha")], "goats", "en", tool="test"))
    with pytest.raises(ProblemsError, match="is not in this record"):
        files.read_scores_with_record("r", printed[1], "record", other)
