"""Whether another paper like this one would give the same result, and how often the result is right.

p0 is the chance of the same result on two papers alike; kappa = (p0 - pc) / (1 - pc) takes off what chance alone gives,
pc = P² + (1 - P)² with P the share that passes. Passing means at least the cut. All are worked out from one paper;
Huynh and Saunders 1980 put the bias of that at some 2.5 % of p0 and 10 % of kappa.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy.special import bdtrc, betainc, betaln, gammaln, ndtr, owens_t

from generator.assessment.notes import NoAnswerError
from generator.assessment.reliability import kr21

Floats = NDArray[np.float64]
WANTED_SAME = 0.85
"""Least p0 for a certificate (Subkoviak 1988, from memory): it warns and decides nothing."""


@dataclass(frozen=True, slots=True)
class Consistency:
    """Two papers alike.

    Args:
        passing: share that passes by the model.
        same: p0, chance of the same result twice.
        by_chance: pc.
        kappa: agreement beyond chance; not a number where everybody passes, or nobody.
    """

    passing: float
    same: float
    by_chance: float
    kappa: float


@dataclass(frozen=True, slots=True)
class Accuracy:
    """The result held against the true score.

    Args:
        true_pass: can, and passes.
        false_fail: can, and does not pass.
        false_pass: can't, and passes: the one that leaks.
        true_fail: can't, and does not pass.
        consistency: of two papers alike by the same model.
        length: effective number of questions.
        parameters: a, b, lowest and highest of the true scores' Beta.
    """

    true_pass: float
    false_fail: float
    false_pass: float
    true_fail: float
    consistency: Consistency
    length: int
    parameters: tuple[float, float, float, float]

    @property
    def right(self) -> float:
        """Share of right results."""
        return self.true_pass + self.true_fail


def _consistency(passing: float, same: float) -> Consistency:
    chance = passing**2 + (1 - passing) ** 2
    kappa = (same - chance) / (1 - chance) if 1 - chance > 1e-12 else math.nan
    return Consistency(passing, same, chance, kappa)


def _check_cut(cut: float, most: float) -> None:
    if not 0 < cut <= most:
        raise NoAnswerError("cut_outside", cut=f"{cut:g}", most=f"{most:g}")


def huynh_beta(questions: int, mean: float, variance: float) -> tuple[float, float]:
    """Huynh's Beta of the true scores: a = (1/KR21 - 1) M, b = -a + k/KR21 - k.

    Raises:
        NoAnswerError: KR-21 is not above 0, there is no spread, or no Beta fits: everybody has all or nothing.
    """
    value = kr21(questions, mean, variance)
    if value <= 0:
        raise NoAnswerError("no_reliability")
    a = (1 / value - 1) * mean
    b = -a + questions / value - questions
    if a <= 0 or b <= 0:
        raise NoAnswerError("no_fit")
    return a, b


def huynh(questions: int, mean: float, variance: float, cut: int) -> Consistency:
    """Beta-binomial consistency by Huynh 1976, from number of questions, mean and variance alone.

    Sums f(x, y) = C(k,x) C(k,y) B(x + y + a, 2k - x - y + b) / B(a, b) over both at least the cut and both below.

    Args:
        questions: at least 2.
        mean: of the totals, points.
        variance: of the totals, divided by n.
        cut: least points that pass, 1 to `questions`.

    Raises:
        NoAnswerError: KR-21 not above 0, no spread, or a cut outside the paper.

    Example:
        >>> found = huynh(20, 14, 16, 14)
        >>> found.same, found.kappa
        (0.800309, 0.586478)
    """
    _check_cut(cut, questions)
    a, b = huynh_beta(questions, mean, variance)
    k, x = questions, np.arange(questions + 1)
    ways = gammaln(k + 1) - gammaln(x + 1) - gammaln(k - x + 1)
    both = x[:, None] + x[None, :]
    joint = np.exp(ways[:, None] + ways[None, :] + betaln(both + a, 2 * k - both + b) - betaln(a, b))
    passing = float(joint[cut:].sum())
    return _consistency(passing, float(joint[cut:, cut:].sum() + joint[:cut, :cut].sum()))


def normal_consistency(mean: float, sd: float, value: float, cut: float) -> Consistency:
    """Normal approximation by Peng and Subkoviak 1980: z = (c - 0.5 - M)/s, p0 = 1 + 2 (Phi2(z, z; r) - Phi(z)).

    Args:
        mean: of the totals, points.
        sd: of the totals, above 0.
        value: reliability, 0 to 1.
        cut: least points that pass.

    Raises:
        NoAnswerError: no spread, or a reliability outside 0 to 1.

    Example:
        >>> normal_consistency(14, 4, 0.776316, 14).same
        0.784672
    """
    if sd <= 0:
        raise NoAnswerError("no_spread")
    if not 0 <= value <= 1:
        raise NoAnswerError("no_reliability")
    z = (cut - 0.5 - mean) / sd
    below = float(ndtr(z))
    both_below = below - 2 * float(owens_t(z, math.sqrt((1 - value) / (1 + value))))
    return _consistency(1 - below, 1 + 2 * (both_below - below))


def subkoviak(totals: ArrayLike, questions: int, value: float, cut: int) -> Consistency:
    """Subkoviak 1976: each learner's share t = r X/k + (1 - r) M/k, P = chance that Bin(k, t) reaches the cut.

    p0 is the mean of P² + (1 - P)². Shrinks hard where the reliability is low.

    Args:
        totals: points of each learner.
        questions: on the paper.
        value: reliability, 0 to 1.
        cut: least points that pass, 1 to `questions`.

    Raises:
        NoAnswerError: a reliability outside 0 to 1, a cut outside the paper, or nobody.
    """
    x = np.asarray(totals, dtype=np.float64)
    _check_cut(cut, questions)
    if not 0 <= value <= 1:
        raise NoAnswerError("no_reliability")
    if not len(x):
        raise NoAnswerError("no_answers")
    t = np.clip((value * x + (1 - value) * x.mean()) / questions, 0, 1)
    each = bdtrc(cut - 1, questions, t)
    return _consistency(float(each.mean()), float((each**2 + (1 - each) ** 2).mean()))


def effective_length(mean: float, sd: float, value: float, lowest: float, highest: float) -> float:
    """Livingston and Lewis's n* = [(M - min)(max - M) - r s²] / [s² (1 - r)], not rounded.

    Raises:
        NoAnswerError: no spread, or a reliability that is not above 0 and below 1.

    Example:
        >>> effective_length(70, 15, 0.85, 0, 100)
        56.5556
    """
    if sd <= 0:
        raise NoAnswerError("no_spread")
    if not 0 < value < 1:
        raise NoAnswerError("no_reliability" if value <= 0 else "no_fit")
    return ((mean - lowest) * (highest - mean) - value * sd**2) / (sd**2 * (1 - value))


def beta_accuracy(
    a: float, b: float, length: int, cut: int, true_cut: float, lowest: float = 0.0, highest: float = 1.0
) -> Accuracy:
    """Results of a binomial paper where true scores follow a Beta between two ends.

    p0 is exact: a polynomial times the Beta's weight, summed at Gauss-Jacobi nodes. Below the true cut the integral
    goes term by term with the incomplete beta function, or, with other ends, at the nodes of the Beta's lower flank.

    Args:
        a: of the Beta, above 0.
        b: of the Beta, above 0.
        length: effective number of questions, at least 1.
        cut: least points that pass, 1 to `length`.
        true_cut: true share from which someone can, 0 to 1.
        lowest: lowest true share.
        highest: highest true share.

    Example:
        >>> found = beta_accuracy(8, 3, 20, 14, 0.70)
        >>> found.right, found.consistency.kappa
        (0.814735, 0.45865)
    """
    _check_cut(cut, length)
    nodes, weights = _beta_nodes(a, b, length + 1)
    t = lowest + (highest - lowest) * nodes
    each = bdtrc(cut - 1, length, t)
    passing, same = float(weights @ each), float(weights @ (each**2 + (1 - each) ** 2))
    edge = min(1.0, max(0.0, (true_cut - lowest) / (highest - lowest)))
    able = 1 - float(betainc(a, b, edge))
    pass_below = _pass_below(a, b, length, cut, edge, lowest, highest)
    return Accuracy(
        passing - pass_below,
        able - (passing - pass_below),
        pass_below,
        1 - able - pass_below,
        _consistency(passing, same),
        length,
        (a, b, lowest, highest),
    )


def _pass_below(a: float, b: float, length: int, cut: int, edge: float, lowest: float, highest: float) -> float:
    """The integral of P(pass | t) over the true shares below the cut; `edge` is the cut on the Beta's own 0 to 1."""
    if edge <= 0:
        return 0.0
    if lowest == 0 and highest == 1:
        x = np.arange(cut, length + 1)
        ways = gammaln(length + 1) - gammaln(x + 1) - gammaln(length - x + 1)
        mass = np.exp(ways + betaln(x + a, length - x + b) - betaln(a, b))
        return float(mass @ betainc(x + a, length - x + b, edge))
    if edge >= 1:
        nodes, weights = _beta_nodes(a, b, length + 1)
        return float(weights @ bdtrc(cut - 1, length, lowest + (highest - lowest) * nodes))
    # s = edge v: v^(a-1) goes into the nodes, and what is left is smooth
    v, weights = _beta_nodes(a, 1.0, length + 60)
    density = weights * np.exp(a * np.log(edge) - np.log(a) - betaln(a, b) + (b - 1) * np.log1p(-edge * v))
    return float(density @ bdtrc(cut - 1, length, lowest + (highest - lowest) * edge * v))


def _beta_nodes(a: float, b: float, count: int) -> tuple[Floats, Floats]:
    """Nodes and weights that give the mean of a polynomial under Beta(a, b), exact up to degree 2 count - 1.

    Eigenvalues of the Jacobi matrix (Golub and Welsch 1969): unlike the library's they don't overflow for large a, b.
    """
    n = np.arange(1, count, dtype=np.float64)
    whole = 2 * n + a + b - 2
    diagonal = np.empty(count)
    diagonal[0] = (a - b) / (a + b)
    diagonal[1:] = (a - b) * (a + b - 2) / (whole * (whole + 2))
    inner = n * (n + a - 1) * (n + b - 1) * (n + a + b - 2)
    if count > 1:
        inner[0] = a * b
    under = whole**2 * (whole**2 - 1)
    if count > 1:
        under[0] = (a + b) ** 2 * (a + b + 1)
    values, vectors = np.linalg.eigh(np.diag(diagonal) + np.diag(2 * np.sqrt(inner / under), -1), UPLO="L")
    return np.clip((values + 1) / 2, 0.0, 1.0), vectors[0] ** 2


def livingston_lewis(
    scores: ArrayLike, value: float, cut: float, lowest: float, highest: float, *, four: bool = False
) -> Accuracy:
    """Accuracy and consistency by Livingston and Lewis 1995, for any score, also of weighted parts.

    The scores are put on n* questions of their own; the true scores' Beta comes from their first two moments with ends
    0 and 1, or from four moments with ends of its own. A four-moment fit that gives an impossible Beta falls back to
    two. Livingston and Lewis say that results lie within one point in a hundred of the actual ones in most cases.

    Args:
        scores: of each person.
        value: reliability, above 0, below 1.
        cut: least score that passes.
        lowest: lowest possible score.
        highest: highest possible score.
        four: whether the Beta's ends are worked out too.

    Raises:
        NoAnswerError: no spread, reliability not above 0 and below 1, a cut outside the scores, or true scores that no
            Beta fits.
    """
    x = np.asarray(scores, dtype=np.float64)
    if len(x) < 2:
        raise NoAnswerError("one_person")
    mean, sd = float(x.mean()), float(x.std())
    length = max(1, math.floor(effective_length(mean, sd, value, lowest, highest) + 0.5))
    true_cut = (cut - lowest) / (highest - lowest)
    if not 0 < true_cut <= 1:
        raise NoAnswerError("cut_outside", cut=f"{cut:g}", most=f"{highest:g}")
    share = (x - lowest) / (highest - lowest)
    moments = _true_moments(share * length, length, 4 if four else 2)
    ends = (0.0, 1.0)
    found = _four_moments(moments) if four else None
    if found is None:
        a, b = _two_moments(*moments[:2])
    else:
        a, b, *rest = found
        ends = (rest[0], rest[1])
    passing_cut = max(1, math.ceil(true_cut * length - 1e-9))
    return beta_accuracy(a, b, length, passing_cut, true_cut, *ends)


def _true_moments(counts: Floats, length: int, most: int) -> list[float]:
    """Moments of the true shares: factorial moments of the counts over those of the length (Lord 1965)."""
    falling, below, found = np.ones_like(counts), 1.0, []
    for order in range(min(most, length)):
        falling = falling * (counts - order)
        below *= length - order
        found.append(float(falling.mean()) / below)
    return found


def _two_moments(mean: float, square: float = math.nan) -> tuple[float, float]:
    variance = square - mean * mean
    if not 0 < variance < mean * (1 - mean):
        raise NoAnswerError("no_fit")
    size = mean * (1 - mean) / variance - 1
    return mean * size, (1 - mean) * size


def _four_moments(moments: list[float]) -> tuple[float, float, float, float] | None:
    """Beta with ends from four raw moments (Hanson 1991); None where there is none with ends inside 0 to 1."""
    if len(moments) < 4:
        return None
    m1, m2, m3, m4 = moments
    variance = m2 - m1**2
    if variance <= 0:
        return None
    skew = (m3 - 3 * m1 * variance - m1**3) / variance**1.5
    kurtosis = (m4 - 4 * m1 * m3 + 6 * m1**2 * m2 - 3 * m1**4) / variance**2
    size = 6 * (kurtosis - skew**2 - 1) / (6 + 3 * skew**2 - 2 * kurtosis)
    under = (size + 2) ** 2 * skew**2 + 16 * (size + 1)
    if size <= 0 or under <= 0:
        return None
    lean = (size + 2) * skew / math.sqrt(under)
    a, b = size / 2 * (1 - lean), size / 2 * (1 + lean)
    if a <= 0 or b <= 0:
        return None
    width = math.sqrt(variance * (size + 1)) * size / math.sqrt(a * b)
    lowest = m1 - width * a / size
    highest = lowest + width
    return (a, b, lowest, highest) if lowest >= 0 and highest <= 1 else None
