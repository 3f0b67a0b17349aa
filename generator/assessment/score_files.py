"""Reading what `analyse` is given: results of `mark`, tables of answers, judges, ratings and observers.

Every fault is told with its line and column, all of a file at once.
"""

from __future__ import annotations

import csv
import math
import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Annotated, Literal

import numpy as np
from pydantic import BaseModel, ConfigDict, Field, ValidationError

from generator.assessment.borderline import RATINGS
from generator.assessment.scores import SPOKEN, WRITTEN, Scores
from generator.exercises import Record, Verdict, from_json, mark_typed, read_answers
from generator.exercises.items import ChoiceItem, NumberItem, SpokenItem, SpotItem
from generator.problems import Column, Problem, ProblemsError, Row, read_csv
from generator.problems.json_file import read_json
from generator.problems.problem import few
from generator.problems.text_file import decode

LARGEST = 20_000_000
"""Bytes of the largest file read."""
FORMAT = 1
_RIGHT = ("right", "right_from_earlier")
_LETTER = re.compile("[A-H]")
_LETTERS = "ABCDEFGH"
_KEY = "key"
_SIGNS = (",", ";", "\t")


# ------------------------------------------------------------------------------------------------ answers


class _Answer(BaseModel):
    model_config = ConfigDict(frozen=True)

    question: str
    item: str
    competency: str
    verdict: Literal["right", "right_from_earlier", "not_yet", "ask_back", "blank"]
    misconceptions: tuple[str, ...] = ()


class _Learner(BaseModel):
    model_config = ConfigDict(frozen=True)

    number: Annotated[int, Field(ge=1)]
    name: str
    answers: tuple[_Answer, ...]


class _Results(BaseModel):
    model_config = ConfigDict(frozen=True)

    format: Literal[1]
    learners: Annotated[tuple[_Learner, ...], Field(min_length=1)]


@dataclass(frozen=True)
class Given:
    """Drawn numbers of a question: for each of its givens one number a learner, not a number where it was not asked."""

    numbers: Mapping[str, tuple[float, ...]]


@dataclass(frozen=True)
class Answers:
    """Scores, and for each question the numbers that were drawn for it, where a record tells them."""

    scores: Scores
    givens: Mapping[str, Given]


def read_scores(file: str, data: bytes) -> Answers:
    """Read one file of results: what `mark --json` printed, or a table of answers.

    Args:
        file: how problems name it.
        data: its bytes; what starts with `{` is read as JSON.

    Raises:
        ProblemsError: everything that is wrong with it.
    """
    if data.lstrip(b"\xef\xbb\xbf \t\r\n").startswith(b"{"):
        return Answers(_from_results(_results(file, data)), {})
    return Answers(read_table(file, data), {})


def read_scores_with_record(
    file: str, data: bytes, record_file: str, record: bytes, typed_file: str = "", typed: bytes | None = None
) -> Answers:
    """The same for results of `mark`, with the record that it marked from: then the drawn numbers are known too.

    Args:
        file: how problems name the results.
        data: their bytes.
        record_file: how problems name the record.
        record: its bytes.
        typed_file: how problems name the typed answers.
        typed: their bytes, where it should be known who picked which option.

    Raises:
        ProblemsError: everything that is wrong with any of them, or the record is of another set.
    """
    results, printed = _results(file, data), from_json(record_file, record)
    scores = _from_results(results)
    people = {learner.number: learner for learner in printed.learners}
    whole = "name the record that these results were marked from"
    for learner in results.learners:
        if learner.number not in people or people[learner.number].name != learner.name:
            what = f"learner {learner.number}, {learner.name}, of '{file}' is not in this record"
            raise ProblemsError([Problem(record_file, 0, 0, "another-record", what, whole)])
    numbers: dict[str, dict[str, list[float]]] = {}
    wide = len(results.learners)
    for place, learner in enumerate(results.learners):
        keys = dict(_keyed(learner))
        for label, item, scenario in people[learner.number].labelled():
            asked = item.answer if isinstance(item, SpokenItem) else item
            if scenario is None and label in keys and isinstance(asked, NumberItem | ChoiceItem):
                for name, value in asked.givens.items():
                    row = numbers.setdefault(keys[label], {}).setdefault(name, [math.nan] * wide)
                    row[place] = value
    givens = {question: Given({name: tuple(row) for name, row in found.items()}) for question, found in numbers.items()}
    if typed is not None:
        scores = _with_options(scores, results, printed, read_answers(typed_file, typed, printed))
    return Answers(scores, givens)


def _with_options(scores: Scores, results: _Results, printed: Record, typed: Mapping[tuple[int, str], str]) -> Scores:
    """The same scores with the options that were picked; letters count in the bank's order, not as they were shown."""
    people = {learner.number: learner for learner in printed.learners}
    picked: dict[str, list[str]] = {}
    keys: dict[str, str] = {}
    texts: dict[str, dict[str, str]] = {}
    for place, learner in enumerate(results.learners):
        named = dict(_keyed(learner))
        for label, item, _ in people[learner.number].labelled():
            asked = item.answer if isinstance(item, SpokenItem) else item
            if label not in named or not isinstance(asked, ChoiceItem | SpotItem) or asked.several:
                continue
            key = named[label]
            count = len(asked.options if isinstance(asked, ChoiceItem) else asked.areas)
            row = picked.setdefault(key, [""] * len(results.learners))
            row[place] = _option(asked, typed.get((learner.number, label), ""), count)
            keys.setdefault(key, _LETTERS[asked.right[0]])
            if isinstance(asked, ChoiceItem) and not asked.mistakes:
                texts.setdefault(key, {_LETTERS[i]: text for i, text in enumerate(asked.options)})
    return replace(scores, options={key: tuple(row) for key, row in picked.items()}, keys=keys, texts=texts)


def _option(item: ChoiceItem | SpotItem, text: str, count: int) -> str:
    """The letter of the option that a text picks: the one that would have to be the key for the text to be right."""
    for place in range(count):
        if mark_typed(item.model_copy(update={"right": (place,)}), text).verdict is Verdict.RIGHT:
            return _LETTERS[place]
    return ""


def _results(file: str, data: bytes) -> _Results:
    whole = "give what `mark ... --json` printed, saved as a file"
    newer = "use the edition that marked them, or newer"
    text = decode(file, data, LARGEST)
    read_json(file, text, called="the file of results", whole=whole, newer=newer)
    try:
        return _Results.model_validate_json(text)
    except ValidationError as error:
        faults = (
            Problem(file, 0, 0, "not-results", f"{'.'.join(map(str, fault['loc'])) or 'file'}: {fault['msg']}", whole)
            for fault in error.errors()
        )
        raise ProblemsError(few(file, faults)) from None


def _keyed(learner: _Learner) -> Iterable[tuple[str, str]]:
    """Label and key of each answer: the question's id, numbered where a paper asked it more than once."""
    times: dict[str, int] = {}
    for answer in learner.answers:
        times[answer.item] = times.get(answer.item, 0) + 1
        yield answer.question, answer.item if times[answer.item] == 1 else f"{answer.item} ({times[answer.item]})"


def _from_results(results: _Results) -> Scores:
    keys: dict[str, str] = {}
    for learner in results.learners:
        for (_, key), answer in zip(_keyed(learner), learner.answers, strict=True):
            keys.setdefault(key, answer.competency)
    place = {key: i for i, key in enumerate(keys)}
    points = np.full((len(results.learners), len(keys)), np.nan)
    blank = np.zeros(points.shape, dtype=bool)
    mistakes: dict[str, dict[str, int]] = {}
    for row, learner in enumerate(results.learners):
        for (_, key), answer in zip(_keyed(learner), learner.answers, strict=True):
            points[row, place[key]] = float(answer.verdict in _RIGHT)
            blank[row, place[key]] = answer.verdict == "blank"
            for name in answer.misconceptions if answer.verdict not in _RIGHT else ():
                counts = mistakes.setdefault(key, {})
                counts[name] = counts.get(name, 0) + 1
    names = tuple(learner.name for learner in results.learners)
    return Scores(names, tuple(keys), points, blank, competencies=keys, mistakes=mistakes)


def read_table(file: str, data: bytes) -> Scores:
    """Read a table of answers: `learner`, `form` if known (written or spoken), then a column for each question.

    A cell is 1 for right, 0 for not, nothing for no answer (which scores 0 in an examination), `-` for a question that
    was not on the learner's paper. Or it is the letter picked; a row whose learner is `key` then gives the right ones.

    Raises:
        ProblemsError: everything that is wrong with it.
    """
    rows, questions = _table(file, data, ("learner",), ("form",))
    problems: list[Problem] = []
    keys: dict[str, str] = {}
    people: list[Row] = []
    for row in rows:
        if row["learner"].casefold() == _KEY:
            for name, shown in questions.items():
                if _LETTER.fullmatch(row[name].upper()):
                    keys[shown] = row[name].upper()
                elif row[name]:
                    what = f"the key '{row[name]}' is no letter"
                    problems.append(row.problem(name, "unknown-letter", what, f"write one of {_LETTERS}"))
        else:
            people.append(row)
    if not people:
        problems.append(Problem(file, 0, 0, "no-learners", "the table has no learners", "add a line for each"))
    problems += _twice(people, "learner")
    points = np.zeros((len(people), len(questions)))
    blank = np.zeros(points.shape, dtype=bool)
    picked: dict[str, list[str]] = {shown: [] for shown in questions.values() if shown in keys}
    forms: list[str] = []
    for place, row in enumerate(people):
        form = row["form"].casefold()
        if form not in ("", WRITTEN, SPOKEN):
            what = f"unknown form '{row['form']}'"
            problems.append(row.problem("form", "unknown-form", what, f"write {WRITTEN} or {SPOKEN}"))
        forms.append(form)
        for column, (name, shown) in enumerate(questions.items()):
            cell = row[name].upper()
            if shown in keys:
                picked[shown].append(cell if _LETTER.fullmatch(cell) else "")
            if cell in ("", "-"):
                points[place, column] = 0.0 if not cell else math.nan
                blank[place, column] = not cell
            elif shown in keys and _LETTER.fullmatch(cell):
                points[place, column] = float(cell == keys[shown])
            elif shown not in keys and cell in ("0", "1"):
                points[place, column] = float(cell)
            else:
                problems.append(_unknown_answer(row, name, shown in keys))
    if problems:
        raise ProblemsError(few(file, problems))
    known = tuple(form or WRITTEN for form in forms) if any(forms) else ()
    return Scores(
        tuple(row["learner"] for row in people), tuple(questions.values()), points, blank, known,
        options={shown: tuple(cells) for shown, cells in picked.items()}, keys=keys,
    )  # fmt: skip


def _unknown_answer(row: Row, name: str, lettered: bool) -> Problem:
    if lettered:
        fix = f"write one of {_LETTERS}, nothing for no answer, or - where it was not asked"
        return row.problem(name, "unknown-letter", f"the answer '{row[name]}' is no letter", fix)
    fix = "write 1, 0, nothing for no answer, or - where it was not asked; letters need a row `key`"
    return row.problem(name, "unknown-score", f"'{row[name]}' is neither 1 nor 0", fix)


def joined_answers(parts: Sequence[Answers]) -> Answers:
    """Several files as one: the same question in two of them is one question, each learner is a person of their own.

    Args:
        parts: at least one.
    """
    if len(parts) == 1:
        return parts[0]
    keys = list(dict.fromkeys(key for part in parts for key in part.scores.questions))
    place = {key: i for i, key in enumerate(keys)}
    points, blank = [], []
    forms: list[str] = []
    names: list[str] = []
    counts: dict[str, dict[str, int]] = {}
    letters: dict[str, list[str]] = {}
    right: dict[str, str] = {}
    givens: dict[str, dict[str, list[float]]] = {}
    done = 0
    for part in parts:
        scores, wide = part.scores, len(part.scores.learners)
        columns = [place[key] for key in scores.questions]
        own, empty = np.full((wide, len(keys)), np.nan), np.zeros((wide, len(keys)), dtype=bool)
        own[:, columns], empty[:, columns] = scores.points, scores.blank
        points.append(own)
        blank.append(empty)
        names += scores.learners
        forms += scores.forms or ("",) * wide
        for key, found in scores.mistakes.items():
            for name, count in found.items():
                counts.setdefault(key, {})[name] = counts.get(key, {}).get(name, 0) + count
        for key, cells in scores.options.items():
            if right.setdefault(key, scores.keys[key]) == scores.keys[key]:
                row = letters.setdefault(key, [])
                row += [""] * (done - len(row)) + list(cells)
        for key, given in part.givens.items():
            for name, numbers in given.numbers.items():
                values = givens.setdefault(key, {}).setdefault(name, [])
                values += [math.nan] * (done - len(values)) + list(numbers)
        done += wide
    known = tuple(form or WRITTEN for form in forms) if any(forms) else ()
    scores = Scores(
        tuple(names), tuple(keys), np.concatenate(points), np.concatenate(blank), known,
        {key: name for part in parts for key, name in part.scores.competencies.items()}, counts,
        {key: tuple(row + [""] * (done - len(row))) for key, row in letters.items()}, right,
        {key: shown for part in parts for key, shown in part.scores.texts.items()},
    )  # fmt: skip
    return Answers(
        scores,
        {
            key: Given({name: tuple(row + [math.nan] * (done - len(row))) for name, row in found.items()})
            for key, found in givens.items()
        },
    )


# ------------------------------------------------------------------------------------------------- judges


@dataclass(frozen=True)
class Judgements:
    """Rounds of judging: for each its judges and their percents; and the questions' names."""

    questions: tuple[str, ...]
    rounds: tuple[tuple[tuple[str, ...], np.ndarray], ...]


def read_judges(file: str, data: bytes) -> Judgements:
    """Read judges' percents: `round` (1 or 2), `judge`, then a column for each question with 0 to 100.

    Raises:
        ProblemsError: everything that is wrong with it.
    """
    rows, questions = _table(file, data, ("judge",), ("round",))
    problems: list[Problem] = []
    by_round: dict[str, dict[str, list[float]]] = {"1": {}, "2": {}}
    for row in rows:
        number = row["round"] or "1"
        if number not in by_round:
            what = f"there is no round '{row['round']}'"
            problems.append(row.problem("round", "unknown-round", what, "write 1 or 2"))
            continue
        if row["judge"] in by_round[number]:
            what = f"'{row['judge']}' stands twice in round {number}"
            problems.append(row.problem("judge", "duplicate-judge", what, "keep one of the rows"))
        percents = [_number(row, name, 0, 100, problems) for name in questions]
        by_round[number][row["judge"]] = percents
    if not problems and by_round["2"] and not by_round["1"]:
        problems.append(Problem(file, 0, 0, "no-first-round", "there is a round 2 and no round 1", "keep both rounds"))
    if problems:
        raise ProblemsError(few(file, problems))
    rounds = tuple((tuple(found), np.array(list(found.values()))) for found in by_round.values() if found)
    return Judgements(tuple(questions.values()), rounds)


# --------------------------------------------------------------------------------------------- practicals


@dataclass(frozen=True)
class Rated:
    """Ratings 1 to 5 of the whole, and points of the checklist."""

    learners: tuple[str, ...]
    ratings: tuple[int, ...]
    points: tuple[float, ...]


def read_ratings(file: str, data: bytes) -> Rated:
    """Read a practical's `learner`, `rating` (1 clear fail to 5 very good) and `points`.

    Raises:
        ProblemsError: everything that is wrong with it.
    """
    rows = read_csv(file, data, [Column("learner"), Column("rating"), Column("points")], LARGEST)
    problems = _twice(rows, "learner")
    ratings, points = [], []
    for row in rows:
        if row["rating"] in map(str, RATINGS):
            ratings.append(int(row["rating"]))
        else:
            what, fix = f"unknown rating '{row['rating']}'", "write 1, 2, 3, 4 or 5"
            problems.append(row.problem("rating", "unknown-rating", what, fix))
        points.append(_number(row, "points", 0, 1000, problems))
    if problems:
        raise ProblemsError(few(file, problems))
    return Rated(tuple(row["learner"] for row in rows), tuple(ratings), tuple(points))


ABLE, NOT_YET = "able", "not yet"


@dataclass(frozen=True)
class Groups:
    """Points of those known to be able, and of those known not to be yet."""

    able: tuple[float, ...]
    not_yet: tuple[float, ...]


def read_groups(file: str, data: bytes) -> Groups:
    """Read two groups' points: `learner`, `group` (`able` or `not yet`), `points`.

    Raises:
        ProblemsError: everything that is wrong with it.
    """
    rows = read_csv(file, data, [Column("learner"), Column("group"), Column("points")], LARGEST)
    problems = _twice(rows, "learner")
    found: dict[str, list[float]] = {ABLE: [], NOT_YET: []}
    for row in rows:
        points = _number(row, "points", 0, 1000, problems)
        group = row["group"].casefold()
        if group in found:
            found[group].append(points)
        else:
            what = f"unknown group '{row['group']}'"
            problems.append(row.problem("group", "unknown-group", what, f"write {ABLE} or {NOT_YET}"))
    if problems:
        raise ProblemsError(few(file, problems))
    return Groups(tuple(found[ABLE]), tuple(found[NOT_YET]))


DONE, NOT_DONE, NOT_SEEN = "done", "not done", "not seen"


@dataclass(frozen=True)
class Watchings:
    """What each observer said of each step: by learner, practical and step, then by observer."""

    observers: tuple[str, ...]
    seen: Mapping[tuple[str, str, str], Mapping[str, str]]


def read_observers(file: str, data: bytes) -> Watchings:
    """Read several observers' rows: `observer`, `learner`, `practical`, `step`, `seen` (done, not done, not seen).

    Raises:
        ProblemsError: everything that is wrong with it.
    """
    names = ("observer", "learner", "practical", "step", "seen")
    rows = read_csv(file, data, [Column(name) for name in names], LARGEST)
    problems: list[Problem] = []
    seen: dict[tuple[str, str, str], dict[str, str]] = {}
    for row in rows:
        said = " ".join(row["seen"].casefold().split())
        if said not in (DONE, NOT_DONE, NOT_SEEN):
            what = f"unknown word '{row['seen']}'"
            fix = f"write {DONE}, {NOT_DONE} or {NOT_SEEN}"
            problems.append(row.problem("seen", "unknown-seen", what, fix))
        place = seen.setdefault((row["learner"], row["practical"], row["step"]), {})
        if place.setdefault(row["observer"], said) != said:
            what = f"{row['observer']} said two things about step '{row['step']}' of {row['learner']}"
            problems.append(row.problem("seen", "two-observations", what, "keep the row that was signed"))
    if problems:
        raise ProblemsError(few(file, problems))
    return Watchings(tuple(dict.fromkeys(row["observer"] for row in rows)), seen)


# ------------------------------------------------------------------------------------------------- shared


def _table(
    file: str, data: bytes, first: Sequence[str], optional: Sequence[str]
) -> tuple[tuple[Row, ...], dict[str, str]]:
    """Rows of a table whose other columns are questions; their names in small letters and as they were written."""
    text = decode(file, data, LARGEST)
    line = next((line for line in text.split("\n") if line.strip()), "")
    sign = max(_SIGNS, key=line.count)
    cells = [cell.strip() for cell in next(csv.reader([line], delimiter=sign, skipinitialspace=True), [])]
    fixed = {*first, *optional}
    questions = {cell.casefold(): cell for cell in cells if cell and cell.casefold() not in fixed}
    columns = [Column(name) for name in first]
    columns += [Column(name, required=False, filled=False) for name in optional]
    columns += [Column(name, filled=False) for name in questions]
    rows = read_csv(file, data, columns, LARGEST)
    if not questions:
        what = f"there is no question beside the column '{first[-1]}'"
        raise ProblemsError([Problem(file, 1, 1, "no-questions", what, "add a column for each question")])
    return rows, questions


def _twice(rows: Sequence[Row], name: str) -> list[Problem]:
    """The same person in two rows."""
    lines: dict[str, int] = {}
    problems = []
    for row in rows:
        if lines.setdefault(row[name].casefold(), row.line) != row.line:
            what = f"{row[name]} stands in line {lines[row[name].casefold()]} already"
            problems.append(row.problem(name, f"duplicate-{name}", what, "keep one row, or tell two people apart"))
    return problems


def _number(row: Row, name: str, low: float, high: float, problems: list[Problem]) -> float:
    """A cell's number, or 0 and a problem."""
    text = row[name]
    try:
        value = float(text) if re.fullmatch(r"\d+(\.\d+)?", text) else math.nan
    except ValueError:
        value = math.nan
    if not low <= value <= high:
        what = f"'{text}' is not a number from {low:g} to {high:g}" if text else f"'{name}' is empty"
        problems.append(row.problem(name, "unknown-number", what, f"write a number from {low:g} to {high:g}"))
        return 0.0
    return value
