"""100,000 damaged class lists, tables of answers and observations, result files: read whole, or refused in words."""

from __future__ import annotations

import json
import random
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any
from unicodedata import category

import pytest

from generator.assessment import Seen, read_observations
from generator.assessment.paper_results import checksum, read_copied, read_result
from generator.commands.class_sheets import read_people
from generator.exercises import Record, mark_set, same_name
from generator.problems import Problem, ProblemsError
from generator.registry.kept_record import KeptRecord
from tests.assessment.small_scheme import PRACTICALS
from tests.exercises import small as questions
from tests.registry.small import printed_set, typed_right

NAMES = ("Asha", "Bir", "Cheptoo")
PIECES: Sequence[bytes] = (
    b"", b",", b";", b"\t", b'"', b'""', b"'", b"\n", b"\r\n", b"\r", b"\x00", b"\x1b[2J", b"\xff", b"\xfe\xff",
    b"\xef\xbb\xbf", b"{", b"[", b"}" * 3, b"[" * 400, b"=HYPERLINK(1)", b"+1", b"-1", b"@x", b"1e999", b"NaN", b"-0",
    b"9" * 400, b"null", b"true", b'"__proto__":', b"<script>alert(1)</script>", "आशा".encode(), "अ्‍".encode(),
    "\u202eahsA".encode(), "\u200f".encode(), "👷🏽‍♀️".encode(), "１２".encode(), "=１".encode(), b"\xed\xa0\x80",
    b"A" * 10_000, b"learner,question,answer\n", b"name\n", b"2,1,5\n", b"Asha", b"done", b"not done",
)  # fmt: skip
"""What gets into a file by a slip, a strange keyboard, a spreadsheet, or on purpose."""
MOVING = {"Cc", "Cs", "Zl", "Zp"}
"""Signs that move the cursor of the terminal in which a problem is read."""


@cache
def record() -> Record:
    made = printed_set(NAMES)
    return KeptRecord.model_validate({**dict(made), "printed_id": made.set_id})  # works out its id once


def result_body() -> dict[str, Any]:
    learner = record().learners[0]
    return {
        "exam": "spring", "set": record().set_id, "number": 1, "name": "Asha", "language": "en", "form": "screen",
        "answers": {label: "5" for label, _, _ in learner.labelled()}, "minutes_allowed": 90, "seconds_used": 61.5,
        "more_time": [{"minutes": 5, "who": "Farida"}], "opened": 1, "ended_by_time": False, "kept": True,
    }  # fmt: skip


def whole_result() -> bytes:
    body = result_body()
    return json.dumps({"format": 1, "kind": "exam-result", "body": body, "checksum": checksum(body)}).encode()


def class_list(data: bytes) -> None:
    for person in read_people("class.csv", data, ["en", "hi"]):
        assert person.name == " ".join(person.name.split()) != ""
        assert person.language in (None, "en", "hi")


def answers(data: bytes) -> None:
    found = read_copied("answers.csv", data, record())
    labels = {learner.number: {label for label, _, _ in learner.labelled()} for learner in record().learners}
    assert all(label in labels[number] for number, label in found)
    for learner in mark_set(record(), found, questions.BOOK).learners:
        assert 0 <= learner.points <= learner.most


def observed(data: bytes) -> None:
    for (learner, practical, step), seen in read_observations("seen.csv", data, NAMES, PRACTICALS).items():
        assert learner in NAMES
        assert step in {each.id for each in PRACTICALS[practical].steps}
        assert isinstance(seen, Seen)


def result(data: bytes) -> None:
    found = read_result("1.json", data, record())
    assert same_name(found.name) == "asha"
    body = json.loads(data.decode("utf-8-sig"))["body"]
    assert {name: body[name] for name in result_body()} == result_body()  # the checksum lets no other one through


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of file: a whole one, and what reads it."""

    whole: Callable[[], bytes]
    read: Callable[[bytes], None]


KINDS = {
    "class": Kind(lambda: b"name,language\nAsha,hi\nBir,\n\"Cheptoo, of the mill\",en\n", class_list),
    "answers": Kind(lambda: typed_right(record()), answers),
    "copied": Kind(lambda: b"learner;question;answer;check\nAsha;1;5;\nBir;2;;\n", answers),
    "observations": Kind(
        lambda: b"learner,practical,step,seen\nAsha,close-a-fence,gloves,done\nBir,close-a-fence,tight,not done\n",
        observed,
    ),
    "result": Kind(whole_result, result),
}  # fmt: skip


def damaged(draw: random.Random, whole: bytes) -> bytes:
    """A file with one to six damages."""
    data = bytearray(whole)
    for _ in range(draw.choice((1, 1, 1, 2, 3, 6))):
        at, way = draw.randint(0, len(data)), draw.randrange(6)
        if way == 0:
            data[at : at + draw.choice((0, 0, 1, 4, 30))] = draw.choice(PIECES)
        elif way == 1 and data:
            data[min(at, len(data) - 1)] = draw.randrange(256)
        elif way == 2:
            del data[at:]
        elif way == 3:
            del data[at : at + draw.choice((1, 2, 10))]
        elif way == 4:
            data[at:at] = data[draw.randint(0, at) : at]
        else:
            lines = bytes(data).split(b"\n")
            draw.shuffle(lines)
            data = bytearray(b"\n".join(lines))
    return bytes(data[:60_000])


def told(kind: str, data: bytes, number: int) -> tuple[Problem, ...] | None:
    """What is said about a file; None where it was read."""
    try:
        KINDS[kind].read(data)
    except ProblemsError as error:
        return tuple(error.problems)
    except Exception as error:
        raise AssertionError(f"file {number} of kind '{kind}': {data[:300]!r}") from error
    return None


@pytest.mark.parametrize("count", [400, pytest.param(20_000, marks=pytest.mark.long)])
@pytest.mark.parametrize("kind", KINDS)
def test_no_damaged_file_ends_in_a_traceback_or_in_something_nobody_wrote(kind: str, count: int) -> None:
    draw = random.Random(f"fuzz {kind}")  # noqa: S311 (not a secret)
    whole = KINDS[kind].whole()
    KINDS[kind].read(whole)
    refused = 0
    for number in range(count):
        data = damaged(draw, whole)
        problems = told(kind, data, number)
        refused += problems is not None
        if problems is not None:
            assert problems, number
            assert all(each.what and each.fix and "Traceback" not in str(each) for each in problems), (number, data)
            assert all(len(str(each)) < 2_000 for each in problems), "a problem is a line, and not the file again"
            assert not {category(sign) for each in problems for sign in str(each)} & MOVING, (number, data)
    assert 0.1 < refused / count < 1  # both ends are met
