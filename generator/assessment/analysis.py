"""All statistics of what was given, as numbers; how they are told lives in `report`."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from generator.assessment import consistency as con
from generator.assessment.agreement import Agreement, agreement, cohen
from generator.assessment.angoff import Round, angoff
from generator.assessment.borderline import Group, Regression, borderline_group, borderline_regression
from generator.assessment.contrasting import Contrast, contrasting_groups
from generator.assessment.distractors import DistractorTable, MistakeCount, distractors, mistake_counts
from generator.assessment.fairness import Comparison, Shrunk, adjusted, compare, shrunk_shares
from generator.assessment.item_statistics import ItemStatistics, item_statistics
from generator.assessment.mastery import wilson
from generator.assessment.notes import NoAnswerError, Note
from generator.assessment.reliability import Reliability, lord_sem, reliability
from generator.assessment.score_files import DONE, NOT_DONE, Answers, Given, Groups, Judgements, Rated, Watchings
from generator.assessment.scores import SPOKEN, WRITTEN, Scores

Floats = NDArray[np.float64]
Answer = TypeVar("Answer")


@dataclass(frozen=True, slots=True)
class Question:
    """One question in the report.

    Args:
        name: its id.
        competency: what it shows; empty where not known.
        asked: learners who had it.
        right: of them right.
        blank: of them without an answer.
        low: lower end of Wilson's 95 % interval of the share right.
        high: its upper end.
        rest: item-rest correlation; None where it is not defined or papers differ.
        group: learners in the upper and in the lower group; 0 where papers differ.
        upper: share right in the upper group.
        lower: share right in the lower group.
    """

    name: str
    competency: str
    asked: int
    right: int
    blank: int
    low: float
    high: float
    rest: float | None
    group: int
    upper: float
    lower: float

    @property
    def difficulty(self) -> float:
        """Share right, 0 to 1; 0 where nobody had it."""
        return self.right / self.asked if self.asked else 0.0


@dataclass(frozen=True, slots=True)
class Bands:
    """One template's low and high numbers of one given.

    Args:
        question: its id.
        given: name of the given.
        edge: numbers up to here are the low ones.
        comparison: low against high.
        p: its chance, allowing for all the comparisons made.
        shrunk: both shares, drawn together where there are few answers.
    """

    question: str
    given: str
    edge: float
    comparison: Comparison
    p: float
    shrunk: tuple[Shrunk, ...]


@dataclass(frozen=True, slots=True)
class Form:
    """One question, written against spoken."""

    question: str
    comparison: Comparison
    p: float


@dataclass(frozen=True, slots=True)
class Decisions:
    """Pass and fail at a cut.

    Args:
        cut: least points that pass.
        most: points of the paper.
        passed: learners at or above it.
        error: standard error at the cut, points (Lord).
        low: least points near the cut, within one standard error.
        high: most points near the cut.
        near: learners near the cut.
        models: consistency by `huynh`, `normal`, `subkoviak`; or why a model has no answer.
        accuracy: Livingston and Lewis; or why it has no answer.
    """

    cut: int
    most: int
    passed: int
    error: float
    low: int
    high: int
    near: int
    models: Mapping[str, con.Consistency | Note]
    accuracy: con.Accuracy | Note

    @property
    def same(self) -> float | None:
        """The consistency to go by: Huynh's, or the first model that has an answer."""
        found = next((model for model in self.models.values() if isinstance(model, con.Consistency)), None)
        return None if found is None else found.same


@dataclass(frozen=True, slots=True)
class Step:
    """Observers on one step of a practical."""

    practical: str
    step: str
    critical: bool
    agreement: Agreement | Note


@dataclass(frozen=True, slots=True)
class Observers:
    """Observers on everything, and step by step; Cohen's kappa where there are two."""

    names: tuple[str, ...]
    whole: Agreement | Note
    kappa: float | None
    steps: tuple[Step, ...]


@dataclass(frozen=True)
class Analysis:
    """All that could be said about what was given; None where nothing was given for it."""

    people: int = 0
    questions: tuple[Question, ...] = ()
    same_paper: bool = True
    totals: tuple[float, ...] = ()
    most: int = 0
    items: ItemStatistics | None = None
    reliability: Reliability | Note | None = None
    decisions: Decisions | None = None
    """Only where all had the same paper: on another paper the same points are another result."""
    tables: Mapping[str, DistractorTable] | None = None
    option_texts: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
    mistakes: tuple[MistakeCount, ...] = ()
    forms: tuple[Form, ...] = ()
    bands: tuple[Bands, ...] = ()
    rounds: tuple[Round, ...] = ()
    judged: tuple[str, ...] = ()
    rated: Rated | None = None
    group: Group | Note | None = None
    regression: Regression | Note | None = None
    contrast: Contrast | Note | None = None
    observers: Observers | None = None


def analyse(
    answers: Answers | None = None,
    cut: Callable[[int], int] | None = None,
    judges: Judgements | None = None,
    rated: Rated | None = None,
    groups: Groups | None = None,
    watched: Watchings | None = None,
    critical: frozenset[str] = frozenset(),
) -> Analysis:
    """Work out everything that the given tables can carry.

    Args:
        answers: to questions.
        cut: least points that pass, from the number of questions; the judges' last cut if nothing is given and they
            judged as many questions as the paper has.
        judges: rounds of Angoff.
        rated: a practical's ratings and points.
        groups: points of two known groups.
        watched: what several observers saw.
        critical: steps as `practical/step` that are critical.

    Raises:
        NoAnswerError: judges' rounds that can't be judged at all, such as a single judge.
    """
    rounds = tuple(angoff(names, percents) for names, percents in judges.rounds) if judges else ()
    found = _of_answers(answers, cut, rounds) if answers is not None else {}
    return Analysis(
        rounds=rounds,
        judged=judges.questions if judges else (),
        rated=rated,
        group=None if rated is None else _or_note(lambda: borderline_group(rated.ratings, rated.points)),
        regression=None if rated is None else _or_note(lambda: borderline_regression(rated.ratings, rated.points)),
        contrast=None if groups is None else _or_note(lambda: contrasting_groups(groups.able, groups.not_yet)),
        observers=None if watched is None else _observers(watched, critical),
        **found,  # type: ignore[arg-type]  # keyed by the fields' own names
    )


def _or_note(work: Callable[[], Answer]) -> Answer | Note:
    try:
        return work()
    except NoAnswerError as error:
        return error.reason


def _of_answers(answers: Answers, cut: Callable[[int], int] | None, rounds: tuple[Round, ...]) -> dict[str, object]:
    scores = answers.scores
    columns = scores.asked_of_all
    paper = scores.paper
    people = len(scores.learners)
    items = item_statistics(paper) if columns and people else None
    totals = tuple(map(float, paper.sum(axis=1)))
    decisions = None
    measured = _or_note(lambda: reliability(paper)) if columns else None
    least = cut(len(columns)) if cut is not None else None
    if least is None and rounds and rounds[-1].questions == len(columns):
        least = rounds[-1].cut
    same = len(columns) == len(scores.questions)
    if least is not None and items is not None and same and 0 < least <= len(columns):
        decisions = _decisions(paper, least, measured)
    return {
        "people": people,
        "questions": _questions(scores, items, columns),
        "same_paper": same,
        "totals": totals,
        "most": len(columns),
        "items": items,
        "reliability": measured,
        "decisions": decisions,
        "tables": _tables(scores),
        "option_texts": scores.texts,
        "mistakes": mistake_counts(scores.mistakes, _wrong(scores)),
        "forms": _forms(scores),
        "bands": _bands(scores, answers.givens),
    }


def _wrong(scores: Scores) -> dict[str, int]:
    """Wrong answers of each question; no answer is not a wrong one."""
    wrong = ((scores.points == 0) & ~scores.blank).sum(axis=0)
    return {name: int(count) for name, count in zip(scores.questions, wrong, strict=True)}


def _questions(scores: Scores, items: ItemStatistics | None, columns: tuple[int, ...]) -> tuple[Question, ...]:
    asked = (~np.isnan(scores.points)).sum(axis=0)
    right = np.nansum(scores.points, axis=0)
    low, high = wilson(right, asked)
    place = {column: i for i, column in enumerate(columns)}
    found = []
    for column, name in enumerate(scores.questions):
        at = place.get(column)
        rest = math.nan if at is None or items is None else float(items.item_rest[at])
        whole = items is not None and at is not None
        found.append(
            Question(
                name,
                scores.competencies.get(name, ""),
                int(asked[column]),
                int(right[column]),
                int(scores.blank[:, column].sum()),
                float(low[column]),
                float(high[column]),
                None if math.isnan(rest) else rest,
                items.group if whole and items else 0,
                float(items.upper[at]) if whole and items else 0.0,
                float(items.lower[at]) if whole and items else 0.0,
            )
        )
    return tuple(found)


def _decisions(paper: Floats, cut: int, measured: Reliability | Note | None) -> Decisions:
    totals, most = paper.sum(axis=1), paper.shape[1]
    error = lord_sem(cut, most) if most > 1 else 0.0
    low, high = max(0, math.ceil(cut - error)), min(most, math.floor(cut + error))
    models: dict[str, con.Consistency | Note] = {}
    accuracy: con.Accuracy | Note = Note("no_reliability")
    if isinstance(measured, Reliability):
        known = measured
        sd = math.sqrt(known.variance)
        models = {
            "huynh": _or_note(lambda: con.huynh(most, known.mean, known.variance, cut)),
            "normal": _or_note(lambda: con.normal_consistency(known.mean, sd, known.alpha, cut)),
            "subkoviak": _or_note(lambda: con.subkoviak(totals, most, known.alpha, cut)),
        }
        accuracy = _or_note(lambda: con.livingston_lewis(totals, known.alpha, cut, 0, most))
    elif isinstance(measured, Note):
        accuracy = measured
    near = int(((totals >= low) & (totals <= high)).sum())
    return Decisions(cut, most, int((totals >= cut).sum()), error, low, high, near, models, accuracy)


def _tables(scores: Scores) -> dict[str, DistractorTable]:
    totals = np.nansum(scores.points, axis=1)
    place = {name: i for i, name in enumerate(scores.questions)}
    found = {}
    for name, letters in scores.options.items():
        had = ~np.isnan(scores.points[:, place[name]])
        picked = [letter for letter, here in zip(letters, had, strict=True) if here]
        if picked:
            most = max([scores.keys[name], *(letter for letter in picked if letter)])
            shown = [chr(code) for code in range(ord("A"), ord(max(most, "C")) + 1)]
            found[name] = distractors(picked, scores.keys[name], totals[had], shown)
    return found


def _forms(scores: Scores) -> tuple[Form, ...]:
    """Each question, written against spoken, where both were answered."""
    if not scores.forms:
        return ()
    spoken = np.array([form == SPOKEN for form in scores.forms])
    written = np.array([form == WRITTEN for form in scores.forms])
    found = []
    for column, name in enumerate(scores.questions):
        points = scores.points[:, column]
        parts = [points[group & ~np.isnan(points)] for group in (written, spoken)]
        if all(len(part) for part in parts):
            found.append((name, compare([int(part.sum()) for part in parts], [len(part) for part in parts])))
    chances = adjusted([comparison.p for _, comparison in found])
    return tuple(Form(name, comparison, p) for (name, comparison), p in zip(found, chances, strict=True))


def _bands(scores: Scores, givens: Mapping[str, Given]) -> tuple[Bands, ...]:
    """Each given of each question, split at the middle of the numbers that were drawn."""
    place = {name: i for i, name in enumerate(scores.questions)}
    found = []
    for question, given in givens.items():
        points = scores.points[:, place[question]]
        for name, row in given.numbers.items():
            numbers = np.array(row)
            used = ~np.isnan(numbers) & ~np.isnan(points)
            if len(np.unique(numbers[used])) < 2:
                continue
            edge = float(np.median(numbers[used]))
            if not (numbers[used] > edge).any():
                edge = float(np.unique(numbers[used])[-2])
            low, high = points[used & (numbers <= edge)], points[used & (numbers > edge)]
            right, asked = [int(low.sum()), int(high.sum())], [len(low), len(high)]
            found.append((question, name, edge, compare(right, asked), shrunk_shares(right, asked)))
    chances = adjusted([comparison.p for _, _, _, comparison, _ in found])
    return tuple(
        Bands(question, name, edge, comparison, p, shrunk)
        for (question, name, edge, comparison, shrunk), p in zip(found, chances, strict=True)
    )


def _observers(watched: Watchings, critical: frozenset[str]) -> Observers:
    names = watched.observers
    steps: dict[tuple[str, str], list[list[str | None]]] = {}
    for (_, practical, step), said in watched.seen.items():
        row = [said[name] if said.get(name) in (DONE, NOT_DONE) else None for name in names]
        steps.setdefault((practical, step), []).append(row)
    ratings = [row for found in steps.values() for row in found]
    kappa = None
    if len(names) == 2:
        table = [[sum(row == [a, b] for row in ratings) for b in (DONE, NOT_DONE)] for a in (DONE, NOT_DONE)]
        found = _or_note(lambda: cohen(table)) if sum(map(sum, table)) else Note("nothing_seen_twice")
        kappa = found if isinstance(found, float) else None
    return Observers(
        names,
        _or_note(lambda: agreement(ratings, (DONE, NOT_DONE))),
        kappa,
        tuple(
            Step(practical, step, f"{practical}/{step}" in critical, _seen_alike(rows))
            for (practical, step), rows in steps.items()
        ),
    )


def _seen_alike(rows: list[list[str | None]]) -> Agreement | Note:
    return _or_note(lambda: agreement(rows, (DONE, NOT_DONE)))
