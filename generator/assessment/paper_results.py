"""Answers to exam papers as they come back: result files of the screen exam, lists copied by hand, and double entry.

The checksum of a result file and the check letters of a copied answer find damage and slips of the pen. They are no
seal against cheating: whoever can read this file can make them. Who watches the room does that.
"""

from __future__ import annotations

import json
import re
import unicodedata
import zlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Annotated, Any, Literal

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from generator.exercises import Answers, Learner, Record, read_answers, same_name
from generator.problems import Column, Problem, ProblemsError, decode, read_csv
from generator.problems.json_file import read_json

FORMAT = 1
LARGEST_RESULT = 1_000_000
"""Bytes; a whole result has a few thousand."""
CHECK_LETTERS = "ABCDEFGHJKMNPRSTUVWXYZ"
"""Without letters that look like digits or each other."""
_NEW = "let the exam page save the file again, or type the list that it shows"
_SPACES = re.compile("[ \u00a0]+")


class _Part(BaseModel):
    model_config = ConfigDict(frozen=True, extra="ignore", strict=True, allow_inf_nan=False)


class MoreTime(_Part):
    """Time that a supervisor added at the screen."""

    minutes: Annotated[float, Field(gt=0, le=600)]
    who: Annotated[str, Field(max_length=200)]


class Result(_Part):
    """What a screen exam saved for one candidate."""

    exam: str
    set: str
    number: int
    name: str
    language: str
    form: Literal["screen"]
    answers: Mapping[str, Annotated[str, Field(max_length=400)]]
    minutes_allowed: Annotated[float, Field(ge=0)]
    seconds_used: Annotated[float, Field(ge=0)]
    more_time: Annotated[tuple[MoreTime, ...], Field(strict=False)]
    opened: Annotated[int, Field(ge=1)]
    ended_by_time: bool
    kept: bool


@dataclass(frozen=True, slots=True)
class Difference:
    """An answer that two people typed differently.

    Args:
        learner: whose.
        question: its printed number.
        first: as the first list has it; empty where it is missing.
        second: as the second one has it.
    """

    learner: Learner
    question: str
    first: str
    second: str


def plain(text: str) -> str:
    """An answer as its check letters see it: any case, any spaces."""
    return _SPACES.sub(" ", unicodedata.normalize("NFC", text).lower()).strip(" ")


def check_letters(set_id: str, number: int, question: str, answer: str) -> str:
    """Two letters that show a slip in copying; `screen_exam.js` has the twin.

    Example:
        >>> check_letters("1a2b3c4d", 1, "3", "12.5") == check_letters("1a2b3c4d", 1, "3", " 12.5 ")
        True
    """
    base = len(CHECK_LETTERS)
    code = zlib.crc32(f"{set_id}|{number}|{question}|{plain(answer)}".encode()) % (base * base)
    return CHECK_LETTERS[code // base] + CHECK_LETTERS[code % base]


def is_result(data: bytes) -> bool:
    """Whether a file looks like a result file and not like a table."""
    return data.lstrip(b"\xef\xbb\xbf \t\r\n")[:1] in (b"{", b"[")


def read_results(files: Sequence[tuple[str, bytes]], record: Record) -> tuple[Answers, tuple[Result, ...]]:
    """Read the result files of an exam.

    Args:
        files: name and bytes of each.
        record: of the exam's papers.

    Raises:
        ProblemsError: everything that is wrong, with the file's name: damaged, not a result, of another exam, made by a
            newer edition, too large; two different ones of one candidate.
    """
    answers: dict[tuple[int, str], str] = {}
    results: dict[int, tuple[str, Result]] = {}
    problems: list[Problem] = []
    learners = {learner.number: learner for learner in record.learners}
    for name, data in files:
        try:
            found = read_result(name, data, record)
        except ProblemsError as error:
            problems += error.problems
            continue
        first = results.setdefault(found.number, (name, found))
        if first[1] != found:
            what = f"'{first[0]}' is another result of {learners[found.number].name}"
            problems.append(Problem(name, 0, 0, "two-results", what, "keep the one that was saved last, and say why"))
        answers |= {(found.number, label): text for label, text in found.answers.items()}
    if problems:
        raise ProblemsError(problems)
    return answers, tuple(found for _, found in results.values())


def read_result(file: str, data: bytes, record: Record) -> Result:
    """Read one result file.

    Raises:
        ProblemsError: as `read_results`.
    """

    def refuse(code: str, what: str, fix: str = _NEW) -> ProblemsError:
        return ProblemsError([Problem(file, 0, 0, code, what, fix)])

    newer = "read it with the edition that made the exam, or a newer one"
    content = read_json(
        file, decode(file, data, LARGEST_RESULT), called="the result", whole=_NEW, newer=newer, code="damaged"
    )
    if not isinstance(content, dict) or content.get("kind") != "exam-result":
        raise refuse("not-a-result", "the file is no result of a screen exam", "choose the file that the exam saved")
    made = content.get("format")
    if isinstance(made, bool) or made != FORMAT or not isinstance(content.get("body"), dict):
        raise refuse("damaged", "the result has no body of this format")
    if content.get("checksum") != checksum(content["body"]):
        raise refuse("damaged", "the checksum does not fit: something in the file was changed or lost")
    try:
        found = Result.model_validate(content["body"])
    except ValidationError as error:
        first = error.errors()[0]
        raise refuse("damaged", f"{'.'.join(map(str, first['loc']))}: {first['msg']}") from None
    learner = next((one for one in record.learners if one.number == found.number), None)
    if found.set != record.set_id or learner is None or same_name(learner.name) != same_name(found.name):
        what = f"the result is of the set {found.set}, paper {found.number} ({found.name}), and not of this exam"
        raise refuse("foreign", what, "mark it with the record of its own exam")
    strange = sorted(set(found.answers) - {label for label, _, _ in learner.labelled()})
    if strange:
        raise refuse("foreign", f"{learner.name}'s paper has no question '{strange[0]}'", "use the record of its exam")
    return found


def checksum(body: Mapping[str, Any]) -> str:
    """Eight digits over a result's body, as the exam page writes it."""
    text = json.dumps(body, ensure_ascii=False, separators=(",", ":"))
    return f"{zlib.crc32(text.encode('utf-8', 'surrogatepass')):08x}"


def read_copied(file: str, data: bytes, record: Record) -> Answers:
    """Read a table of answers: `learner`, `question`, `answer`, and `check` where it was copied from a screen's list.

    Raises:
        ProblemsError: what `read_answers` refuses; check letters that don't fit their answer.
    """
    head = data[:400].split(b"\n")[0].lower()
    if b"check" not in head:
        return read_answers(file, data, record)
    columns = [Column("learner"), Column("question"), Column("answer", filled=False), Column("check", filled=False)]
    rows = read_csv(file, data, columns)
    known = {str(one.number): one for one in record.learners} | {same_name(one.name): one for one in record.learners}
    problems = []
    lines: dict[int, str] = {}
    for row in rows:
        lines[row.line] = ",".join(
            '"' + row[name].replace('"', '""') + '"' for name in ("learner", "question", "answer")
        )
        learner = known.get(same_name(row["learner"]))
        if learner is None or not row["check"]:
            continue  # `read_answers` says what is wrong with the name
        if plain(row["check"]).upper() != check_letters(record.set_id, learner.number, row["question"], row["answer"]):
            what = f"the check letters '{row['check']}' don't fit {learner.name}'s question {row['question']}"
            fix = "compare answer and letters with the list on the screen"
            problems.append(row.problem("check", "check-letters", what, fix))
    if problems:
        raise ProblemsError(problems)
    last = max(lines, default=1)
    text = "\n".join(["learner,question,answer", *(lines.get(line, "") for line in range(2, last + 1))])
    return read_answers(file, text.encode("utf-8"), record)


def differences(record: Record, first: Answers, second: Answers) -> tuple[Difference, ...]:
    """Where two people who typed the same papers differ, apart from capitals and spaces."""
    found = []
    for learner in record.learners:
        for label, _, _ in learner.labelled():
            one, other = first.get((learner.number, label), ""), second.get((learner.number, label), "")
            if plain(one) != plain(other):
                found.append(Difference(learner, label, one, other))
    return tuple(found)
