"""The pass rule: written AND practical AND every critical step AND every critical competency. None is made up for."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from generator.assessment.observations import Observations, Seen
from generator.curriculum.models import Practical, Scheme
from generator.exercises import Mark
from generator.words import Words

_HAIR = 1e-9


class Requirement(StrEnum):
    """One of the things that all have to be met; the words are `decision.met.*` and `decision.not_met.*`."""

    ROUTE = "route"
    """Came by experience; `subject` holds the application's number and who accepted it, `have` the tanks: `4/2`."""
    MODULE = "module"
    """The written part asks for a module of the scheme."""
    WRITTEN = "written"
    PRACTICAL = "practical"
    CRITICAL_STEP = "critical_step"
    CRITICAL_COMPETENCY = "critical_competency"
    ORAL = "oral"
    """Near the cut an oral recheck stands in the place of the written part; `subject` holds the points on paper."""
    TALK = "talk"
    """The talk on a critical competency, in the place of its own questions on paper."""
    PANEL = "panel"
    """Every reading of the sample panel lies inside its limits."""


@dataclass(frozen=True, slots=True)
class Reason:
    """One requirement and how it stands.

    Args:
        requirement: which.
        met: whether it is met.
        subject: id of the module, practical, step or competency; empty for the written part's points.
        have: points or steps shown.
        need: points or steps needed.
        most: points or steps that there were.
    """

    requirement: Requirement
    met: bool
    subject: str
    have: int
    need: int
    most: int


@dataclass(frozen=True, slots=True)
class Decision:
    """The result for one person: passed only if every reason is met."""

    scheme: str
    version: int
    reasons: tuple[Reason, ...]

    @property
    def passed(self) -> bool:
        """Whether everything is met; a decision without reasons passes nobody."""
        return bool(self.reasons) and all(reason.met for reason in self.reasons)

    @property
    def missing(self) -> tuple[Reason, ...]:
        """What is not met yet."""
        return tuple(reason for reason in self.reasons if not reason.met)


def decide(
    scheme: Scheme,
    practicals: Mapping[str, Practical],
    written: Sequence[Mark],
    observations: Observations,
    learner: str,
    critical: Collection[str] = (),
    modules: Collection[str] | None = None,
) -> Decision:
    """Decide by the rule of a scheme. Nothing that was not shown counts as shown.

    A critical competency is met if its own written questions reach the written share and its own practicals the
    practical share; where neither asks for it, it is not shown, and so not met. Where the scheme has talks, the talk
    stands in the place of the competency's own questions: it is to come, and not met, until `with_talks`.

    Args:
        scheme: what the certificate requires.
        practicals: of the course, by id.
        written: the marks of one person's paper.
        observations: of everyone.
        learner: the person's name as on the class list.
        critical: competencies that the course calls critical beside those of the scheme; those count that the paper or
            the scheme's practicals touch.
        modules: those that the written part was made from: all of the scheme's have to be among them. None where the
            caller has made sure of it.

    Raises:
        KeyError: the scheme names a practical that the course does not have (`check` reports it before).
    """
    rule = scheme.rule
    watched = [practicals[name] for name in scheme.practicals]
    done = {
        practical.id: [observations.get((learner, practical.id, step.id)) is Seen.DONE for step in practical.steps]
        for practical in watched
    }
    reasons = [] if modules is None else [_module(name, name in modules) for name in scheme.modules]
    reasons.append(_share(Requirement.WRITTEN, "", (mark.points for mark in written), len(written), rule.written))
    for practical in watched:
        steps = done[practical.id]
        reasons.append(_share(Requirement.PRACTICAL, practical.id, map(int, steps), len(steps), rule.practical))
        for step, shown in zip(practical.steps, steps, strict=True):
            if step.critical:
                subject = f"{practical.id}/{step.id}"
                reasons.append(Reason(Requirement.CRITICAL_STEP, shown, subject, int(shown), 1, 1))
    touched = {mark.competency for mark in written} | {practical.competency for practical in watched}
    for name in sorted({*scheme.critical_competencies, *(name for name in critical if name in touched)}):
        asked = [mark.points for mark in written if mark.competency == name]
        seen = [int(shown) for practical in watched if practical.competency == name for shown in done[practical.id]]
        by_paper = _share(Requirement.CRITICAL_COMPETENCY, name, asked, len(asked), rule.written)
        by_hand = _share(Requirement.CRITICAL_COMPETENCY, name, seen, len(seen), rule.practical)
        if asked and scheme.talk is not None:
            reasons.append(Reason(Requirement.TALK, met=False, subject=name, have=0, need=0, most=0))
            if not seen:
                continue
            by_paper = _share(Requirement.CRITICAL_COMPETENCY, name, (), 0, rule.written)
        parts = [part for part in (by_paper, by_hand) if part.most]
        met = bool(parts) and all(part.met for part in parts)
        have, need, most = (sum(p.have for p in parts), sum(p.need for p in parts), sum(p.most for p in parts))
        reasons.append(Reason(Requirement.CRITICAL_COMPETENCY, met, name, have, need, most))
    return Decision(scheme.id, scheme.version, tuple(reasons))


def _module(name: str, asked: bool) -> Reason:
    return Reason(Requirement.MODULE, asked, name, int(asked), 1, 1)


def _share(requirement: Requirement, subject: str, points: Iterable[int], most: int, share: float) -> Reason:
    """Whether a share of the points was reached; no point at all to be had is not a pass."""
    have, need = sum(points), points_needed(share, most)
    return Reason(requirement, bool(most) and have >= need, subject, have, need, most)


def points_needed(share: float, most: int) -> int:
    """The fewest points that reach a share of those that there are; never none.

    Example:
        >>> points_needed(0.6, 16)
        10
    """
    return max(1, math.ceil(share * most - _HAIR))


def explain(decision: Decision, words: Words, subjects: Mapping[str, str]) -> tuple[str, ...]:
    """The decision in words: the result, then each reason.

    Args:
        decision: the decision.
        words: of the reader's language.
        subjects: what modules, practicals, steps (`practical/step`) and competencies are called there, by id.
    """
    head = words.say("decision.passed") if decision.passed else words.say("decision.not_yet")
    return (head, *(say_reason(reason, words, subjects) for reason in decision.reasons))


def say_reason(reason: Reason, words: Words, subjects: Mapping[str, str]) -> str:
    """One reason in a sentence."""
    slots: dict[str, object] = {
        "subject": subjects.get(reason.subject, reason.subject),
        "have": reason.have,
        "need": reason.need,
        "most": reason.most,
    }
    if reason.requirement is Requirement.ROUTE:
        application, _, person = reason.subject.partition("/")
        slots = {"have": reason.have, "need": reason.need, "application": application, "person": person}
    if reason.requirement is Requirement.ORAL and not reason.most:
        return words.say("decision.oral_to_come", points=reason.subject)
    if reason.requirement is Requirement.TALK and not reason.most:
        return words.say("decision.talk_to_come", **slots)
    if not reason.most:
        return words.say("decision.not_asked", **slots) if reason.subject else words.say("decision.no_paper")
    return words.say_one_of("decision.met" if reason.met else "decision.not_met", reason.requirement, **slots)
