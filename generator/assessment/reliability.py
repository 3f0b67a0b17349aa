"""Whether the same people would get the same points on another paper like this one."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike
from scipy.special import fdtri

from generator.assessment.notes import NoAnswerError, Note, few_people, note

WANTED = 0.80
"""Reliability that a certificate's paper should reach: a habit of testing, from memory. It warns, decides nothing."""


@dataclass(frozen=True, slots=True)
class Reliability:
    """How well a paper measures.

    Args:
        people: learners.
        questions: on the paper.
        mean: mean points.
        variance: of the points, divided by n.
        alpha: coefficient alpha; for questions marked right or not, KR-20. May be below 0.
        low: lower end of Feldt's 95 % interval of alpha.
        high: its upper end.
        kr21: KR-21; None where some question gives more than one point, or it is not defined.
        sem: standard error of measurement, points.
        notes: what to keep in mind.
    """

    people: int
    questions: int
    mean: float
    variance: float
    alpha: float
    low: float
    high: float
    kr21: float | None
    sem: float
    notes: tuple[Note, ...]


def reliability(points: ArrayLike, confidence: float = 0.95) -> Reliability:
    """The reliability of a whole paper.

    Args:
        points: a row for each learner and a column for each question, nothing missing.
        confidence: of the interval, above 0, below 1.

    Raises:
        NoAnswerError: fewer than two learners or questions, or everybody has the same points.
    """
    x = np.asarray(points, dtype=np.float64)
    people, count = x.shape
    found = alpha(x)
    low, high = feldt_interval(found, people, count, confidence)
    totals = x.sum(axis=1)
    mean, variance = float(totals.mean()), float(totals.var())
    marked = bool(((x == 0) | (x == 1)).all())
    notes = list(few_people(people))
    if found < 0:
        notes.append(note("negative_alpha"))
    return Reliability(
        people, count, mean, variance, found, low, high,
        kr21(count, mean, variance) if marked else None,
        sem(math.sqrt(variance), found),
        tuple(notes),
    )  # fmt: skip


def alpha(points: ArrayLike) -> float:
    """Coefficient alpha: k/(k-1) (1 - sum of the questions' variances / variance of the totals).

    Below 0 it is told as it is: the questions work against each other. Source: Cronbach 1951.

    Raises:
        NoAnswerError: fewer than two learners or questions, or no spread in the totals.
    """
    x = np.asarray(points, dtype=np.float64)
    people, count = x.shape
    if count < 2:
        raise NoAnswerError("one_question")
    if people < 2:
        raise NoAnswerError("one_person")
    mean = x.mean(axis=0)
    variances = np.einsum("ij,ij->j", x, x) / people - mean * mean
    whole = float(x.sum(axis=1).var())
    if whole <= 1e-12:
        raise NoAnswerError("no_spread")
    return float(count / (count - 1) * (1 - variances.sum() / whole))


def kr20(points: ArrayLike) -> float:
    """KR-20: k/(k-1) (1 - sum of p q / variance of the totals), both divided by n. Source: Kuder and Richardson 1937.

    Args:
        points: 0 and 1 only.

    Raises:
        NoAnswerError: some points are neither 0 nor 1, or `alpha` has no answer.
    """
    x = np.asarray(points, dtype=np.float64)
    if not ((x == 0) | (x == 1)).all():
        raise NoAnswerError("not_right_or_wrong")
    return alpha(x)


def kr21(questions: int, mean: float, variance: float) -> float:
    """KR-21: k/(k-1) (1 - M (k - M) / (k var)); never above KR-20, and equal where all questions are as hard.

    Args:
        questions: at least 2.
        mean: of the totals, points.
        variance: of the totals, divided by n; above 0.

    Raises:
        NoAnswerError: one question, or no spread.

    Example:
        >>> kr21(20, 14, 16)
        0.776316
    """
    if questions < 2:
        raise NoAnswerError("one_question")
    if variance <= 1e-12:
        raise NoAnswerError("no_spread")
    return questions / (questions - 1) * (1 - mean * (questions - mean) / (questions * variance))


def feldt_interval(value: float, people: int, questions: int, confidence: float = 0.95) -> tuple[float, float]:
    """The interval of alpha: 1 - (1 - alpha) F, at the two tails of F with n - 1 and (n - 1)(k - 1) degrees.

    Exact where all questions measure the same thing with the same spread; very wide with 10 to 20 people, and never
    clipped. Source: Feldt 1965.

    Args:
        value: alpha.
        people: at least 2.
        questions: at least 2.
        confidence: above 0, below 1.
    """
    first, second = people - 1, (people - 1) * (questions - 1)
    tail = (1 - confidence) / 2
    low, high = (1 - (1 - value) * float(fdtri(first, second, share)) for share in (1 - tail, tail))
    return low, high


def sem(sd: float, value: float) -> float:
    """Standard error of measurement, points: sd √(1 - r), with `sd` by the same convention as `r`."""
    return sd * math.sqrt(max(0.0, 1 - value))


def lord_sem(score: float, questions: int) -> float:
    """Standard error at one score, points: √(X (k - X) / (k - 1)). Source: Lord 1955.

    Args:
        score: 0 to `questions`.
        questions: at least 2.

    Raises:
        NoAnswerError: one question.

    Example:
        >>> lord_sem(14, 20), lord_sem(28, 40)
        (2.1026, 2.9352)
    """
    if questions < 2:
        raise NoAnswerError("one_question")
    return math.sqrt(score * (questions - score) / (questions - 1))


def spearman_brown(value: float, times: float) -> float:
    """Reliability of a paper `times` as long: m r / (1 + (m - 1) r).

    Example:
        >>> spearman_brown(0.295, 6)
        0.7152
    """
    return times * value / (1 + (times - 1) * value)


def times_longer(value: float, wanted: float) -> float:
    """How many times as long the paper must be: r* (1 - r) / (r (1 - r*)).

    Args:
        value: reliability now, above 0, below 1.
        wanted: above 0, below 1.

    Raises:
        NoAnswerError: the reliability now is not above 0: more such questions help nothing.

    Example:
        >>> times_longer(0.6963, 0.80)
        1.7447
    """
    if value <= 0:
        raise NoAnswerError("no_reliability")
    return wanted * (1 - value) / (value * (1 - wanted))


def kelley(score: float, mean: float, value: float) -> float:
    """The best guess at the true score: r X + (1 - r) M. An aid to rank by, never to certify by."""
    return value * score + (1 - value) * mean
