"""How sure one paper is: a few questions are a sample of what someone can do, and near the cut that shows."""

from __future__ import annotations

from dataclasses import dataclass

from generator.assessment.decision import Decision, Requirement
from generator.assessment.mastery import mastery
from generator.words import Words


@dataclass(frozen=True, slots=True)
class Uncertainty:
    """What the points of a paper say about the share that someone can do.

    Args:
        have: points on paper.
        most: points that there were.
        need: points needed.
        low: the share is below this with a chance of 5 %.
        high: the share is above this with a chance of 5 %.
        sure: chance that the share reaches the cut.
    """

    have: int
    most: int
    need: int
    low: float
    high: float
    sure: float

    @property
    def near(self) -> bool:
        """Whether the cut lies inside the interval: another paper might have said the opposite."""
        return self.low <= self.need / self.most <= self.high


def uncertainty(decision: Decision, need: int | None = None) -> Uncertainty | None:
    """How sure the written part of a decision is; None where there was none.

    Source: `mastery`; each point counts as a question of its own.

    Args:
        decision: with its reasons.
        need: points needed, where an oral recheck stands in the place of the written part.

    Example:
        >>> from generator.assessment import Reason
        >>> found = uncertainty(Decision("s", 1, (Reason(Requirement.WRITTEN, True, "", 11, 10, 16),)))
        >>> found.near, round(found.sure, 2)
        (True, 0.66)
    """
    for reason in decision.reasons:
        if reason.requirement is Requirement.WRITTEN and reason.most:
            have, needed, most = reason.have, reason.need, reason.most
        elif reason.requirement is Requirement.ORAL and need is not None:
            have, most = (int(part) for part in reason.subject.split("/"))
            needed = need
        else:
            continue
        found = mastery(have, most, needed / most)
        return Uncertainty(have, most, needed, found.low, found.high, found.sure)
    return None


def say_uncertainty(found: Uncertainty, words: Words) -> str:
    """The same in a sentence."""
    return words.say(
        "decision.near" if found.near else "decision.clear",
        have=found.have,
        most=found.most,
        low=f"{100 * found.low:.0f}",
        high=f"{100 * found.high:.0f}",
        cut=f"{100 * found.need / found.most:.0f}",
        sure=f"{100 * found.sure:.0f}",
    )
