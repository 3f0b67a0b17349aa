"""What an observer saw at a practical: the watched checklist, step by step."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from difflib import get_close_matches
from enum import StrEnum

from generator.curriculum.models import Practical
from generator.exercises import same_name
from generator.problems import Column, Problem, ProblemsError, Row, read_csv

COLUMNS = ("learner", "practical", "step", "seen")


class Seen(StrEnum):
    """What the observer saw of one step."""

    DONE = "done"
    NOT_DONE = "not done"
    NOT_SEEN = "not seen"
    """Nobody looked, or it could not be seen: the step is not shown yet."""


Observations = Mapping[tuple[str, str, str], Seen]
"""What was seen, by the learner's name as on the class list, the practical's id and the step's id."""


def read_observations(
    file: str, data: bytes, names: Sequence[str], practicals: Mapping[str, Practical]
) -> Observations:
    r"""Read a table of practical observations: columns `learner`, `practical`, `step`, `seen`.

    Args:
        file: how problems name it.
        data: its bytes.
        names: the class list, in its order; a learner is a name, or its number in the list.
        practicals: those of the course, by id.

    Returns:
        What was seen; a step without a row was not seen.

    Raises:
        ProblemsError: what `read_csv` refuses; an unknown learner, practical, step or word; two different rows for one
            step.
    """
    found: dict[tuple[str, str, str], Seen] = {}
    lines: dict[tuple[str, str, str], int] = {}
    problems: list[Problem] = []
    known = {same_name(name): name for name in names} | {str(i): name for i, name in enumerate(names, start=1)}
    for row in read_csv(file, data, [Column(name) for name in COLUMNS]):
        faults: list[Problem] = []
        learner = _one_of(row, "learner", known, faults)
        steps = (
            {step.id: step.id for step in practicals[row["practical"]].steps} if row["practical"] in practicals else {}
        )
        practical = _one_of(row, "practical", {name: name for name in practicals}, faults)
        step = _one_of(row, "step", steps, faults) if practical else ""
        seen = _one_of(row, "seen", {word.value: word.value for word in Seen}, faults)
        problems += faults
        if faults:
            continue
        place, now = (learner, practical, step), Seen(seen)
        if found.setdefault(place, now) is not now:
            what = f"step '{step}' of {learner} is '{found[place]}' in line {lines[place]}"
            problems.append(row.problem("seen", "two-observations", what, "keep the row that the observer signed"))
        lines.setdefault(place, row.line)
    if problems:
        raise ProblemsError(problems)
    return found


def _one_of(row: Row, column: str, known: Mapping[str, str], faults: list[Problem]) -> str:
    """The known thing that a cell names; where there is none, a fault is added and the text is empty."""
    text = same_name(row[column])
    if text in known:
        return known[text]
    near = get_close_matches(text, known, n=1)
    some = ", ".join(list(dict.fromkeys(known.values()))[:8])
    fix = f"did you mean '{known[near[0]]}'?" if near else f"write one of: {some}"
    faults.append(row.problem(column, f"unknown-{column}", f"unknown {column} '{row[column]}'", fix))
    return ""
