"""Result files, lists copied by hand and double entry: what is whole is read, and everything else is named."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import pytest

from generator.assessment.paper_results import (
    LARGEST_RESULT,
    check_letters,
    checksum,
    differences,
    is_result,
    read_copied,
    read_result,
    read_results,
)
from generator.problems import ProblemsError
from tests.assessment import exam_papers as made

TWO = made.record(made.learner(), made.learner("Bir Singh", "en", 2))


def body(**more: Any) -> dict[str, Any]:
    return {
        "exam": "spring", "set": TWO.set_id, "number": 1, "name": "Asha Devi", "language": "en", "form": "screen",
        "answers": {"1": "12.5", "4": "B"}, "minutes_allowed": 90, "seconds_used": 60, "more_time": [], "opened": 1,
        "ended_by_time": False, "kept": True,
    } | more  # fmt: skip


def result(made_body: dict[str, Any] | None = None, **more: Any) -> bytes:
    inside = body() if made_body is None else made_body
    whole = {"format": 1, "kind": "exam-result", "body": inside, "checksum": checksum(inside)} | more
    return json.dumps(whole, ensure_ascii=False).encode()


def codes(read: Callable[[], object]) -> list[str]:
    with pytest.raises(ProblemsError) as refused:
        read()
    assert all(problem.file and problem.what and problem.fix for problem in refused.value.problems)
    return [problem.code for problem in refused.value.problems]


def test_a_whole_result_is_read() -> None:
    answers, results = read_results([("a.json", result()), ("b.json", result(body(number=2, name="Bir Singh")))], TWO)
    assert answers == {(1, "1"): "12.5", (1, "4"): "B", (2, "1"): "12.5", (2, "4"): "B"}
    assert [one.name for one in results] == ["Asha Devi", "Bir Singh"]


def test_the_same_result_twice_is_one() -> None:
    assert len(read_results([("a.json", result()), ("copy.json", result())], TWO)[1]) == 1


@pytest.mark.parametrize(
    ("data", "code"),
    [
        (result()[:-20], "damaged"),
        (result().replace(b"12.5", b"13.5"), "damaged"),
        (b"[" * 100_000, "damaged"),
        (b'{"a": ' + b"9" * 10_000 + b"}", "damaged"),
        (b"[]", "not-a-result"),
        (b'{"format": 1}', "not-a-result"),
        (result(format=2), "newer-format"),
        (result(format=True), "damaged"),
        (result(checksum=5), "damaged"),
        (result(kind="backup"), "not-a-result"),
        (result(body(set="deadbeef")), "foreign"),
        (result(body(number=7)), "foreign"),
        (result(body(name="Someone Else")), "foreign"),
        (result(body(answers={"99": "x"})), "foreign"),
        (result(body(answers={"1": 5})), "damaged"),
        (result(body(answers={"1": "x" * 500})), "damaged"),
        (result(body(seconds_used=-1)), "damaged"),
        (result(body(number=True)), "damaged"),
        (result({"x": 1}), "damaged"),
        (result() + b" " * LARGEST_RESULT, "file-too-large"),
        (b"\xff\xfe\x00", None),
        (b"", None),
    ],
)
def test_what_is_wrong_with_a_result_is_named(data: bytes, code: str | None) -> None:
    found = codes(lambda: read_result("r.json", data, TWO))
    assert code is None or found == [code]


def test_every_damage_of_one_letter_is_noticed() -> None:
    data = result()
    start = data.index(b'"body"')
    noticed = 0
    for place in range(start, len(data) - 30, 3):
        changed = data[:place] + bytes([data[place] ^ 1]) + data[place + 1 :]
        try:
            read_result("r.json", changed, TWO)
        except ProblemsError:
            noticed += 1
        else:
            raise AssertionError(changed)
    assert noticed > 50


def test_all_bad_files_are_named_at_once_and_two_results_of_one_person() -> None:
    files = [("a.json", b"{"), ("b.json", result()), ("c.json", result(body(opened=3))), ("d.json", b"[]")]
    assert codes(lambda: read_results(files, TWO)) == ["damaged", "two-results", "not-a-result"]


def test_a_table_and_a_result_are_told_apart() -> None:
    assert is_result(b"\xef\xbb\xbf  {}")
    assert not is_result(b"learner,question,answer\n")
    assert not is_result(b"")


def test_copied_answers_are_held_against_their_letters() -> None:
    good = check_letters(TWO.set_id, 1, "1", "12.5")
    read = read_copied("a.csv", f"learner,question,answer,check\n1,1, 12.5 ,{good.lower()}\n".encode(), TWO)
    assert read == {(1, "1"): "12.5"}
    for wrong in ("12.6", "21.5", "125", ""):
        data = f"learner,question,answer,check\n1,1,{wrong},{good}\n".encode()
        assert codes(lambda data=data: read_copied("a.csv", data, TWO)) == ["check-letters"]  # type: ignore[misc]
    other = f"learner,question,answer,check\n2,1,12.5,{good}\n".encode()
    assert codes(lambda: read_copied("a.csv", other, TWO)) == ["check-letters"]


def test_copied_answers_keep_their_lines_quotes_and_commas() -> None:
    letters = check_letters(TWO.set_id, 1, "1", '1,5 "m"')
    rows = f'learner;question;answer;check\n\n1;1;"1,5 ""m""";{letters}\n1;77;x;\n'
    with pytest.raises(ProblemsError) as refused:
        read_copied("a.csv", rows.encode(), TWO)
    assert [(problem.code, problem.line) for problem in refused.value.problems] == [("unknown-question", 4)]
    good = read_copied("a.csv", rows.rsplit("1;77", 1)[0].encode(), TWO)
    assert good == {(1, "1"): '1,5 "m"'}


def test_a_plain_table_needs_no_letters() -> None:
    assert read_copied("a.csv", b"learner,question,answer\n1,1,check me\n", TWO) == {(1, "1"): "check me"}


def test_check_letters_find_nearly_every_slip() -> None:
    missed = sum(
        check_letters("1a2b3c4d", 1, "1", str(i)) == check_letters("1a2b3c4d", 1, "1", "12.5") for i in range(2000)
    )
    assert missed <= 15  # 1 in 484


def test_two_typists_are_compared() -> None:
    first = {(1, "1"): "12.5", (1, "4"): " B ", (2, "1"): "7"}
    second = {(1, "1"): "12.6", (1, "4"): "b"}
    found = differences(TWO, first, second)
    assert [(one.learner.name, one.question, one.first, one.second) for one in found] == [
        ("Asha Devi", "1", "12.5", "12.6"),
        ("Bir Singh", "1", "7", ""),
    ]
