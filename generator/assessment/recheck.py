"""The oral recheck near the cut: question after question until it is clear (Wald's sequential test, cut short)."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

Floats = NDArray[np.float64]
_HAIR = 1e-9


@dataclass(frozen=True, slots=True)
class Recheck:
    """A sequential test of a skill.

    A right answer adds ln(p1/p0), a wrong one ln((1 - p1)/(1 - p0)); at ln((1 - b)/a) or more the skill is shown, at
    ln(b/(1 - a)) or less it is not. Undecided after the last question means not shown, practise more. Never the only
    ground of a certificate. Source: Wald 1945.

    Args:
        master: p1, share right of someone who can.
        novice: p0, share right of someone who can't; below `master`.
        wrong_pass: a, chance to let a novice through.
        wrong_fail: b, chance to send a master back.
        most: questions at the most.

    Example:
        >>> Recheck(0.85, 0.40, 0.025, 0.025, 20).upper
        3.66356
    """

    master: float
    novice: float
    wrong_pass: float
    wrong_fail: float
    most: int

    def __post_init__(self) -> None:
        if not 0 < self.novice < self.master < 1:
            raise ValueError(
                f"a novice's share {self.novice:g} must be below a master's {self.master:g}, inside 0 to 1"
            )
        if not (0 < self.wrong_pass < 0.5 and 0 < self.wrong_fail < 0.5):
            raise ValueError("both chances of a wrong result must lie above 0 and below 0.5")
        if self.most < 1:
            raise ValueError("at least one question")

    @property
    def upper(self) -> float:
        """Sum from which the skill is shown."""
        return math.log((1 - self.wrong_fail) / self.wrong_pass)

    @property
    def lower(self) -> float:
        """Sum down to which it is not."""
        return math.log(self.wrong_fail / (1 - self.wrong_pass))

    @property
    def steps(self) -> tuple[float, float]:
        """What a right and a wrong answer add."""
        return math.log(self.master / self.novice), math.log((1 - self.master) / (1 - self.novice))

    def limits(self, asked: int) -> tuple[int | None, int | None]:
        """The fewest right answers that show the skill after so many questions, and the most that refuse it.

        None where no count does. This is the table that an examiner has on paper.

        Example:
            >>> Recheck(0.85, 0.40, 0.025, 0.025, 20).limits(10)
            (9, 4)
        """
        up, down = self.steps
        sums = [right * up + (asked - right) * down for right in range(asked + 1)]
        shown = next((right for right, total in enumerate(sums) if total >= self.upper - _HAIR), None)
        refused = [right for right, total in enumerate(sums) if total <= self.lower + _HAIR]
        return shown, (refused[-1] if refused else None)


@dataclass(frozen=True, slots=True, eq=False)
class Outcome:
    """Chances by the share of right answers.

    Args:
        shown: chance that the skill is shown.
        refused: chance that it is found missing.
        undecided: chance of neither after the last question.
        questions: mean number of questions asked.
    """

    shown: Floats
    refused: Floats
    undecided: Floats
    questions: Floats


def outcome(recheck: Recheck, right_share: ArrayLike) -> Outcome:
    """What a recheck does to people of a share of right answers: exact, by recursion over the counts.

    Args:
        recheck: the test.
        right_share: 0 to 1, of any shape.

    Example:
        >>> found = outcome(Recheck(0.85, 0.60, 0.10, 0.10, 30), 0.75)
        >>> float(found.shown), float(found.undecided)
        (0.4932, 0.1437)
    """
    p = np.asarray(right_share, dtype=np.float64)
    going = np.zeros((recheck.most + 1, *p.shape))
    going[0] = 1.0
    shown, refused, length = np.zeros(p.shape), np.zeros(p.shape), np.zeros(p.shape)
    for asked in range(1, recheck.most + 1):
        length += going.sum(axis=0)
        going[1:] = going[1:] * (1 - p) + going[:-1] * p
        going[0] *= 1 - p
        enough, too_few = recheck.limits(asked)
        if enough is not None:
            shown += going[enough : asked + 1].sum(axis=0)
            going[enough : asked + 1] = 0
        if too_few is not None:
            refused += going[: too_few + 1].sum(axis=0)
            going[: too_few + 1] = 0
    return Outcome(shown, refused, going.sum(axis=0), length)
