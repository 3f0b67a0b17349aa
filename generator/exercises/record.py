"""The record of a printed set: all that marking needs, so that no later edit can change a mark."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Iterator, Mapping
from typing import Annotated, Literal

from pydantic import Field, ValidationError

from generator.exercises.items import Frozen, Item, QuestionItem, ScenarioItem
from generator.problems import Problem, ProblemsError, decode
from generator.problems.json_file import read_json

FORMAT = 1
LARGEST_RECORD = 200_000_000
"""Bytes; two thousand learners with all questions of the largest module have about three quarters of them."""
_NOBODY = '\n "learners": []'
"""In a file without learners; no text of the file can hold it, since a line end in a text is written as two signs."""


class Learner(Frozen):
    """One person's sheet: the number printed on it, and the items in the order of printing."""

    number: Annotated[int, Field(ge=1)]
    name: str
    language: str
    items: tuple[Item, ...]

    def labelled(self) -> Iterator[tuple[str, QuestionItem, ScenarioItem | None]]:
        """Every question with its printed number; a scenario's parts are numbered on, and come with their scenario."""
        number = 0
        for item in self.items:
            scenario = item if isinstance(item, ScenarioItem) else None
            for part in item.parts if isinstance(item, ScenarioItem) else (item,):
                number += 1
                yield str(number), part, scenario


class Record(Frozen):
    """A printed set.

    `texts` holds the SHA-256 of each question's source in all languages, `formulas` the one of every formula that the
    set rests on; `tool` and `course_version` say what made it; `seed`, `questions` (how many each, 0 for all) and
    `competencies` (none for all) would make it again.
    """

    format: Literal[1]
    tool: str
    course: str
    course_version: str
    module: str
    seed: str
    questions: int
    language: str
    texts: Mapping[str, str]
    formulas: str
    learners: tuple[Learner, ...]
    competencies: tuple[str, ...] = ()

    @property
    def set_id(self) -> str:
        """Eight letters and digits that are printed on every sheet of the set, and tell sets apart."""
        return hashlib.sha256(to_json(self)).hexdigest()[:8]


def to_json(record: Record) -> bytes:
    """The record as a file: the same record, the same bytes. `printed_set.js` writes the same.

    A field that came later is left out where it says nothing, so that older sets keep their printed id.
    """
    return b"".join(json_pieces(record, map(learner_json, record.learners)))


def json_pieces(head: Record, learners: Iterable[bytes]) -> Iterator[bytes]:
    """The file of a record piece by piece, so that a class of any size needs no more memory than one learner.

    Args:
        head: a record of the set; its own learners are not looked at.
        learners: each as `learner_json` writes it, in order.
    """
    data = head.model_copy(update={"learners": ()}).model_dump(mode="json")
    if not head.competencies:
        del data["competencies"]
    before, after = (json.dumps(data, ensure_ascii=False, indent=1) + "\n").split(_NOBODY)
    yield f"{before}{_NOBODY[:-1]}".encode()
    number = 0
    for number, learner in enumerate(learners, start=1):
        yield b",\n" if number > 1 else b"\n"
        yield learner
    yield f"{_NOBODY[:2] if number else ''}]{after}".encode()


def learner_json(learner: Learner) -> bytes:
    """A learner as the record's file has it, without the comma behind it."""
    text = json.dumps(learner.model_dump(mode="json"), ensure_ascii=False, indent=1)
    return "\n".join(f"  {line}" for line in text.split("\n")).encode("utf-8")


def from_json(file: str, data: bytes) -> Record:
    """Read a record.

    Args:
        file: how problems name it.
        data: its bytes.

    Raises:
        ProblemsError: not JSON, made by a newer edition, or not a record.
    """
    text = decode(file, data, LARGEST_RECORD)
    whole = "use the record as the sheets' run wrote it; it lies beside the sheets"
    newer = "mark it with the edition that printed it, or a newer one"
    content = read_json(file, text, called="the record", whole=whole, newer=newer)
    if not isinstance(content, dict):
        raise ProblemsError([Problem(file, 1, 1, "not-a-record", "the file is not the record of a printed set", whole)])
    try:
        return Record.model_validate_json(text)
    except ValidationError as error:
        faults = [
            Problem(file, 0, 0, "not-a-record", f"{'.'.join(map(str, fault['loc'])) or 'file'}: {fault['msg']}", whole)
            for fault in error.errors()[:20]
        ]
        raise ProblemsError(faults) from None
