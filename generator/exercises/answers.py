"""The answers that a coordinator types from the sheets."""

from __future__ import annotations

from collections.abc import Mapping
from difflib import get_close_matches

from generator.exercises.class_list import same_name
from generator.exercises.numbers import cleaned
from generator.exercises.record import Learner, Record
from generator.problems import Column, Problem, ProblemsError, Row, read_csv

LARGEST_ANSWERS = 5_000_000
"""Bytes; a class of a thousand with twenty questions has under one million."""

Answers = Mapping[tuple[int, str], str]
"""Typed texts by the learner's number and the question's printed number."""


def read_answers(file: str, data: bytes, record: Record) -> Answers:
    """Read the answers to a printed set: columns `learner`, `question`, `answer`.

    The learner is the number printed on the sheet, or the name; the question is the printed number, or its id.
    Any answer is taken as it stands: what can't be read gets a verdict later and is no problem here.

    Args:
        file: how problems name it.
        data: its bytes.
        record: of the set.

    Raises:
        ProblemsError: what `read_csv` refuses; an unknown learner or question; two different answers to one question.
    """
    columns = [Column("learner"), Column("question"), Column("answer", filled=False)]
    found: dict[tuple[int, str], str] = {}
    lines: dict[tuple[int, str], int] = {}
    problems: list[Problem] = []
    learners = {str(learner.number): learner for learner in record.learners}
    learners |= {same_name(learner.name): learner for learner in record.learners}
    labels = {learner.number: _labels(learner) for learner in record.learners}
    for row in read_csv(file, data, columns, LARGEST_ANSWERS):
        learner = learners.get(same_name(row["learner"])) or learners.get(cleaned(row["learner"]))
        if learner is None:
            problems.append(_unknown_learner(row, record))
            continue
        label = labels[learner.number].get(cleaned(row["question"]))
        if label is None:
            count = len({*labels[learner.number].values()})
            what = f"{learner.name}'s sheet has no question '{row['question']}'"
            problems.append(row.problem("question", "unknown-question", what, f"its questions are 1 to {count}"))
            continue
        place = (learner.number, label)
        if place in found and found[place] != row["answer"]:
            what = f"{learner.name}'s question {label} has another answer, '{found[place]}', in line {lines[place]}"
            problems.append(row.problem("answer", "two-answers", what, "keep the one that stands on the sheet"))
            continue
        found[place] = row["answer"]
        lines.setdefault(place, row.line)
    if problems:
        raise ProblemsError(problems)
    return found


def _labels(learner: Learner) -> dict[str, str]:
    """What may stand in the column `question`, and the printed number that it means."""
    labels: dict[str, str] = {}
    for label, item, scenario in learner.labelled():
        labels[label] = label
        labels[f"{scenario.id}/{item.id}" if scenario else item.id] = label
    return labels


def _unknown_learner(row: Row, record: Record) -> Problem:
    names = {same_name(learner.name): learner.name for learner in record.learners}
    near = get_close_matches(same_name(row["learner"]), names, n=1)
    fix = f"did you mean '{names[near[0]]}'?" if near else f"write a name, or a number from 1 to {len(record.learners)}"
    return row.problem("learner", "unknown-learner", f"no sheet was printed for '{row['learner']}'", fix)
