"""Answers as `mark` and `register` get them: tables, lists copied by hand, result files, two typists compared."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from generator.assessment.paper_results import Result, differences, is_result, read_copied, read_results
from generator.commands.course import file_bytes
from generator.exercises import Answers, Record
from generator.problems import Problem, ProblemsError


def typed_files(paths: Sequence[Path], record: Record) -> tuple[Answers, tuple[Result, ...]]:
    """The answers of all files together; a folder stands for the result files in it.

    Raises:
        ProblemsError: what is wrong with any of them; an answer that two files have differently.
    """
    files: list[Path] = []
    for path in paths:
        files += sorted(path.glob("*.json")) if path.is_dir() else [path]
    if not files:
        raise ProblemsError(
            [Problem(str(paths[0]), 0, 0, "no-results", "the folder holds no result file", "look for files '*.json'")]
        )
    data = [(str(path), file_bytes(path)) for path in files]
    answers: dict[tuple[int, str], str] = {}
    read, results = read_results([one for one in data if is_result(one[1])], record)
    problems: list[Problem] = []
    answers |= read
    for name, content in data:
        if is_result(content):
            continue
        for place, text in read_copied(name, content, record).items():
            if answers.setdefault(place, text) != text:
                what = f"paper {place[0]}, question {place[1]} has another answer in another file: '{answers[place]}'"
                problems.append(Problem(name, 0, 0, "two-answers", what, "keep the one that the candidate gave"))
    if problems:
        raise ProblemsError(problems)
    return answers, results


def same_twice(record: Record, typed: Answers, name: str, second: bytes) -> None:
    """Refuse to mark while two people who typed the same papers differ.

    Args:
        record: of the papers.
        typed: by the first one.
        name: how problems name the second table.
        second: its bytes.

    Raises:
        ProblemsError: every difference.
    """
    other = read_copied(name, second, record)
    problems = []
    for found in differences(record, typed, other):
        what = f"{found.learner.name}, question {found.question}: first '{found.first}', here '{found.second}'"
        problems.append(Problem(name, 0, 0, "typed-differently", what, "look at the sheet, and mend the wrong one"))
    if problems:
        raise ProblemsError(problems)
