"""Spoiled files of answers, classes and results: each is read, or refused with every problem by line; never a crash."""

from __future__ import annotations

import json
import random
from collections import Counter
from collections.abc import Callable
from unicodedata import category

import pytest

from generator.assessment.paper_results import checksum, read_result
from generator.commands.class_sheets import read_people
from generator.exercises import read_answers
from generator.problems import ProblemsError
from tests.assessment import exam_papers as made

RECORD = made.record(made.learner(), made.learner("Bir Singh", "en", 2))
ANSWERS = b'learner,question,answer\nAsha Devi,1,12.5\n2,4,B\n2,1,"1,25"\nBir Singh,2,\n'
CLASS = 'name,language\nAsha Devi,hi\nBir Singh,en\nसीता कुमारी,\n"Ram, of the bend",en\n'.encode()
BODY = {
    "exam": "spring", "set": RECORD.set_id, "number": 1, "name": "Asha Devi", "language": "en", "form": "screen",
    "answers": {"1": "12.5", "4": "B"}, "minutes_allowed": 90, "seconds_used": 60, "more_time": [], "opened": 1,
    "ended_by_time": False, "kept": True,
}  # fmt: skip
RESULT = json.dumps({"format": 1, "kind": "exam-result", "body": BODY, "checksum": checksum(BODY)}).encode()
PIECES = [
    b"\x00", b"\xff\xfe", b"\xef\xbb\xbf", b"\r", b"\n\n", b",", b";", b"\t", b'"', b"=1+1", b"@SUM(A1)", b"-",
    b"1e999", b"NaN", "१२".encode(), "\u202e".encode(), "\u200d".encode(), "😀".encode(), b"<script>", b"A" * 3000,
    b"{", b"]", b"\\u0000", b"null", b"\x1a", "é".encode("latin-1"), b"learner", b"0x10", b"1/0",
]  # fmt: skip


def spoiled(data: bytes, draw: random.Random) -> bytes:
    """One to four small things go wrong: what a bad stick, a wrong program or a spiteful hand does to a file."""
    for _ in range(draw.randint(1, 4)):
        place = draw.randrange(len(data) + 1)
        end = min(len(data), place + draw.randint(0, 12))
        data = draw.choice(
            [
                data[:place] + draw.choice(PIECES) + data[end:],
                data[:place] + data[end:],
                data[:place] + data[place:end] * draw.randint(2, 5) + data[end:],
                data[:place] + bytes([draw.randrange(256)]) + data[place + 1 :],
                data[:place],
            ]
        )
    return data


def result(data: bytes) -> object:
    found = read_result("result.json", data, RECORD)
    body = json.loads(data)["body"]
    assert {**body, "checksum": checksum(body)} == {**BODY, "checksum": checksum(BODY)}  # nothing else is taken
    return found


def told(refused: ProblemsError) -> None:
    """Each problem says where, what and what to do, on one line that is fit for a terminal."""
    assert refused.problems
    for problem in refused.problems:
        assert problem.file
        assert problem.what
        assert problem.fix
        assert problem.line >= 0
        assert len(str(problem)) < 2_000, "a problem is a line, and not the file again"
        assert not {category(sign) for sign in str(problem)} & {"Cc", "Cs", "Zl", "Zp"}
        assert "\u202e" not in str(problem)


READERS: dict[str, tuple[bytes, Callable[[bytes], object]]] = {
    "answers": (ANSWERS, lambda data: read_answers("answers.csv", data, RECORD)),
    "class": (CLASS, lambda data: read_people("class.csv", data, {"en", "hi"})),
    "result": (RESULT, result),
}


@pytest.mark.parametrize(
    "count", [pytest.param(1_000, id="a thousand"), pytest.param(34_000, id="34 thousand", marks=pytest.mark.long)]
)
@pytest.mark.parametrize("kind", READERS)
def test_every_spoiled_file_is_read_or_refused_by_line(kind: str, count: int) -> None:
    """Three kinds of 34,000 are the hundred thousand; a result is taken only where it says what it said before."""
    good, read = READERS[kind]
    read(good)
    draw = random.Random(f"spoiled {kind}")  # noqa: S311 (not a secret)
    ends: Counter[str] = Counter()
    for _ in range(count):
        data = spoiled(good, draw)
        try:
            read(data)
            ends["read"] += 1
        except ProblemsError as refused:
            ends["refused"] += 1
            told(refused)
    assert ends["refused"] > count / 10
    assert ends["read"] > count / 1000
