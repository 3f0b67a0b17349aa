"""The cut between two groups that are known beforehand: those who can, and those who can't yet."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy.special import ndtr

from generator.assessment.notes import NoAnswerError, Note, note

Floats = NDArray[np.float64]
FALSE_PASS_WEIGHT = 2.0
"""How many good masons sent back weigh as much as one who can't and is let through: policy of this course."""
FEWEST_EACH = 3
ENOUGH_EACH = 10
LEAST_OVERLAP = 3
"""People in the stretch where both groups have points; with fewer the logistic curve stands on next to nothing."""


@dataclass(frozen=True, slots=True)
class Count:
    """What a cut would have done to these people."""

    cut: float
    false_pass: int
    false_fail: int
    loss: float


@dataclass(frozen=True, slots=True)
class Contrast:
    """Cuts between two groups.

    Args:
        table: what each cut would have done.
        cut: least points that pass by the table; of cuts alike the highest.
        crossing: where the two normal curves cross between the means; None where they don't, or a group has no spread.
        logistic: points at which both are as likely; None where the groups hardly overlap.
        overlap: people in the stretch where both groups have points.
        notes: what to keep in mind.
    """

    table: tuple[Count, ...]
    cut: float
    crossing: float | None
    logistic: float | None
    overlap: int
    notes: tuple[Note, ...]


def contrasting_groups(able: ArrayLike, not_yet: ArrayLike, weight: float = FALSE_PASS_WEIGHT) -> Contrast:
    """The cut that sends the fewest people the wrong way, with one false pass as bad as `weight` false fails.

    A logistic curve breaks down where the groups hardly overlap, which is common with ten and ten: then there is none
    and the table alone decides.

    Args:
        able: points of those known to be able.
        not_yet: points of those known not to be yet.
        weight: at least 1.

    Raises:
        NoAnswerError: fewer than three in a group, or the able ones do not have more points on average.
    """
    a, b = np.asarray(able, dtype=np.float64), np.asarray(not_yet, dtype=np.float64)
    if min(len(a), len(b)) < FEWEST_EACH:
        raise NoAnswerError("group_too_small", count=min(len(a), len(b)))
    if a.mean() <= b.mean():
        raise NoAnswerError("groups_upside_down")
    cuts = np.unique(np.concatenate([a, b, [max(a.max(), b.max()) + 1]]))
    rows = tuple(_count(float(cut), a, b, weight) for cut in cuts)
    best = min(row.loss for row in rows)
    cut = max(row.cut for row in rows if row.loss <= best + 1e-9)
    low, high = float(a.min()), float(b.max())
    overlap = int(((a >= low) & (a <= high)).sum() + ((b >= low) & (b <= high)).sum()) if low <= high else 0
    notes: list[Note] = []
    if min(len(a), len(b)) < ENOUGH_EACH:
        notes.append(note("small_groups", count=min(len(a), len(b))))
    logistic = _logistic(a, b) if overlap >= LEAST_OVERLAP else None
    if logistic is None:
        notes.append(note("hardly_overlap", count=overlap))
    return Contrast(rows, cut, _crossing(a, b), logistic, overlap, tuple(notes))


def _count(cut: float, able: Floats, not_yet: Floats, weight: float) -> Count:
    false_pass, false_fail = int((not_yet >= cut).sum()), int((able < cut).sum())
    return Count(cut, false_pass, false_fail, weight * false_pass + false_fail)


def _crossing(able: Floats, not_yet: Floats) -> float | None:
    """Where two normal densities with these means and SDs are equal, between the means."""
    m1, m2 = float(not_yet.mean()), float(able.mean())
    s1, s2 = float(not_yet.std(ddof=1)), float(able.std(ddof=1))
    if min(s1, s2) <= 0:
        return None
    if abs(s1 - s2) < 1e-9 * max(s1, s2):
        return (m1 + m2) / 2
    a = 1 / s1**2 - 1 / s2**2
    b = 2 * (m2 / s2**2 - m1 / s1**2)
    c = m1**2 / s1**2 - m2**2 / s2**2 + 2 * math.log(s1 / s2)
    under = b * b - 4 * a * c
    if under < 0:
        return None
    roots = ((-b + sign * math.sqrt(under)) / (2 * a) for sign in (1, -1))
    return next((root for root in roots if m1 <= root <= m2), None)


def _logistic(able: Floats, not_yet: Floats) -> float | None:
    """Points at which both groups are as likely, by Newton's steps; None where they don't settle.

    Each group weighs the same, however many people it has: how many able people a village has is no matter of the cut.
    """
    x = np.concatenate([able, not_yet])
    y = np.concatenate([np.ones(len(able)), np.zeros(len(not_yet))])
    w = np.concatenate([np.full(len(able), 0.5 / len(able)), np.full(len(not_yet), 0.5 / len(not_yet))])
    middle, spread = x.mean(), x.std()
    design = np.stack([np.ones_like(x), (x - middle) / spread], axis=1)
    beta = np.zeros(2)
    for _ in range(50):
        p = 1 / (1 + np.exp(-np.clip(design @ beta, -30, 30)))
        hessian = design.T @ (design * (w * p * (1 - p))[:, None])
        if abs(np.linalg.det(hessian)) < 1e-14:
            return None
        step = np.linalg.solve(hessian, design.T @ (w * (y - p)))
        beta = beta + step
        if np.abs(beta).max() > 50:
            return None
        if np.abs(step).max() < 1e-10:
            return float(middle - spread * beta[0] / beta[1]) if beta[1] > 0 else None
    return None


def wrong_by_normal(cut: float, able: ArrayLike, not_yet: ArrayLike) -> tuple[float, float]:
    """False pass and false fail that two normal curves give at a cut, each as a share of its group.

    Raises:
        NoAnswerError: a group has no spread.
    """
    a, b = np.asarray(able, dtype=np.float64), np.asarray(not_yet, dtype=np.float64)
    s1, s2 = float(b.std(ddof=1)), float(a.std(ddof=1))
    if min(s1, s2) <= 0:
        raise NoAnswerError("no_spread")
    return float(ndtr((b.mean() - cut) / s1)), float(ndtr((cut - a.mean()) / s2))
