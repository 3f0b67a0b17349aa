"""What a decision rests on beside the paper: two observers, one recheck of a critical step, oral questions, a panel.

Each of them is read from a table, and each leaves a trace: who saw what, which step was shown at the second try, how
many questions were asked aloud.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace

from generator.assessment.agreement import Agreement, agreement
from generator.assessment.blueprint import recheck_of
from generator.assessment.decision import Decision, Reason, Requirement
from generator.assessment.notes import NoAnswerError
from generator.assessment.observations import Observations, Seen
from generator.assessment.recheck import Recheck
from generator.calculations.cover import LEAST_BAR_COVER
from generator.calculations.cover_readings import LEAST_MESH_COVER
from generator.curriculum.models import OralRule, PanelRule, Practical, Scheme, TalkRule
from generator.exercises import ReadingFault, fault_said, same_name, typed_panel
from generator.exercises.readings import SPACING_TOLERANCE
from generator.problems import Column, Problem, ProblemsError, Row, read_csv
from generator.problems.plain_errors import did_you_mean
from generator.words import Words

_HAIR = 1e-9
Step = tuple[str, str, str]
"""Learner, practical, step."""


# ------------------------------------------------------------------------------------------------- two observers


def joined(
    first: Observations, second: Observations, practicals: Mapping[str, Practical], *, both: bool = False
) -> Observations:
    """What two observers saw together: where both looked at a step, both have to see it done, as in the registry.

    Where only one looked at a step, that one counts, unless it is critical and both have to.

    Args:
        first: of the first observer.
        second: of the second one.
        practicals: of the course, by id.
        both: whether a critical step that only one of them looked at is not seen.
    """
    critical = {(p.id, step.id) for p in practicals.values() for step in p.steps if step.critical}
    found: dict[Step, Seen] = {}
    for place in {**first, **second}:
        one, other = first.get(place, Seen.NOT_SEEN), second.get(place, Seen.NOT_SEEN)
        if Seen.NOT_SEEN in (one, other):
            looked = other if one is Seen.NOT_SEEN else one
            alone = both and place[1:] in critical and looked is Seen.DONE
            found[place] = Seen.NOT_SEEN if alone else looked
        else:
            found[place] = Seen.DONE if one is other is Seen.DONE else Seen.NOT_DONE
    return found


def how_alike(first: Observations, second: Observations) -> Agreement | None:
    """Percent agreement and AC1 of two observers over all that both looked at; None where that says nothing.

    Source: `agreement`.
    """
    both = [place for place in first if place in second]
    looked = [(first[p], second[p]) for p in both if Seen.NOT_SEEN not in (first[p], second[p])]
    try:
        return agreement(looked, (Seen.DONE, Seen.NOT_DONE))
    except NoAnswerError:
        return None


def unlike(first: Observations, second: Observations) -> tuple[Step, ...]:
    """The steps that one observer saw done and the other did not."""
    return tuple(sorted(p for p in first if p in second and {first[p], second[p]} == {Seen.DONE, Seen.NOT_DONE}))


# --------------------------------------------------------------------------------------- one immediate recheck


def with_recheck(
    seen: Observations, again: Observations, practicals: Mapping[str, Practical], file: str
) -> tuple[Observations, tuple[Step, ...]]:
    """What counts after the one immediate recheck of a critical step that was not done at first.

    Args:
        seen: at the first try.
        again: at the recheck.
        practicals: of the course, by id.
        file: of the recheck, for problems.

    Returns:
        What counts, and the steps that were shown at the second try: they belong into the log.

    Raises:
        ProblemsError: a recheck of a step that is not critical, was done at first, or was never looked at.
    """
    critical = {(p.id, step.id) for p in practicals.values() for step in p.steps if step.critical}
    problems: list[Problem] = []
    found, log = dict(seen), []
    for place in sorted(again):
        learner, practical, step = place
        if place[1:] not in critical:
            what = f"'{step}' of '{practical}' is no critical step, and only those are rechecked"
            problems.append(Problem(file, 0, 0, "not-critical", what, "remove the line"))
        elif seen.get(place) is not Seen.NOT_DONE:
            what = f"{learner}'s step '{step}' was not seen as 'not done' before: there is nothing to recheck"
            fix = "look at the first table, and at the day: a recheck is made at once"
            problems.append(Problem(file, 0, 0, "nothing-to-recheck", what, fix))
        else:
            found[place] = again[place]
            log.append(place)
    if problems:
        raise ProblemsError(problems)
    return found, tuple(log)


# -------------------------------------------------------------------------------------------- oral, near the cut


@dataclass(frozen=True, slots=True)
class OralResult:
    """How an oral recheck ended.

    Args:
        right: right answers.
        asked: questions asked.
        shown: whether the skill was shown.
        over: whether it ended; if not, more has to be asked.
    """

    right: int
    asked: int
    shown: bool
    over: bool


def oral_result(recheck: Recheck, answers: Sequence[bool]) -> OralResult:
    """Follow a recheck question by question, to its end or as far as was asked.

    Example:
        >>> oral_result(Recheck(0.85, 0.40, 0.025, 0.025, 20), [True] * 5)
        OralResult(right=5, asked=5, shown=True, over=True)
    """
    right = 0
    for asked, good in enumerate(answers[: recheck.most], start=1):
        right += good
        enough, too_few = recheck.limits(asked)
        if enough is not None and right >= enough:
            return OralResult(right, asked, shown=True, over=True)
        if too_few is not None and right <= too_few:
            return OralResult(right, asked, shown=False, over=True)
    return OralResult(right, len(answers), shown=False, over=len(answers) >= recheck.most)


@dataclass(frozen=True, slots=True)
class Spoken:
    """What was answered aloud, by learner.

    Args:
        near: how the recheck near the cut ended.
        talks: how each talk on a critical competency ended, by competency.
    """

    near: Mapping[str, OralResult]
    talks: Mapping[str, Mapping[str, OralResult]]


NOTHING_SPOKEN = Spoken({}, {})


def read_spoken(file: str, data: bytes, names: Sequence[str], scheme: Scheme, asked: Collection[str]) -> Spoken:
    """Read what was answered aloud, each line in the order of asking.

    Columns: `learner`, `question`, `answer` (`right` or `wrong`); for talks `competency`, empty near the cut.

    Args:
        file: how problems name it.
        data: its bytes.
        names: the class list; a learner is a name, or its number in the list.
        scheme: what it asks aloud.
        asked: the critical competencies that papers ask for.

    Raises:
        ProblemsError: what `read_csv` refuses; an unknown learner, competency or word; questions that don't count from
            1; one that was asked after the end, because asking on until it fits would turn the test round; a recheck
            or a talk that the scheme does not have.
    """
    oral = None if scheme.oral is None else recheck_of(scheme.oral)
    talk = None if scheme.talk is None else recheck_of(scheme.talk)
    answers: dict[tuple[str, str], list[bool]] = {}
    problems: list[Problem] = []
    columns = [Column("learner"), Column("question"), Column("answer"), Column("competency", False, False)]
    for row in read_csv(file, data, columns):
        name, about = _learner(row, names, problems), row["competency"]
        recheck = talk if about else oral
        word = same_name(row["answer"])
        if word not in ("right", "wrong"):
            what = f"'{row['answer']}' is neither 'right' nor 'wrong'"
            problems.append(row.problem("answer", "unknown-answer", what, "write one of the two"))
        if recheck is None:
            what = f"the scheme '{scheme.id}' has no {'talk' if about else 'oral recheck'}"
            problems.append(row.problem("question", "nothing-spoken", what, "remove the line"))
        elif about and about not in asked:
            what = f"no talk is asked for on '{about}'"
            problems.append(row.problem("competency", "unknown-competency", what, did_you_mean(about, sorted(asked))))
        elif name:
            _one_more(row, name, answers.setdefault((name, about), []), recheck, right=word == "right", found=problems)
    if problems:
        raise ProblemsError(problems)
    near: dict[str, OralResult] = {}
    talks: dict[str, dict[str, OralResult]] = {}
    for (name, about), given in answers.items():
        if about and talk is not None:
            talks.setdefault(name, {})[about] = oral_result(talk, given)
        elif oral is not None:
            near[name] = oral_result(oral, given)
    return Spoken(near, talks)


def _one_more(row: Row, name: str, given: list[bool], recheck: Recheck, *, right: bool, found: list[Problem]) -> None:
    if row["question"] != str(len(given) + 1):
        what = f"{name}'s next question is {len(given) + 1}, not '{row['question']}'"
        found.append(row.problem("question", "question-order", what, "write them in the order of asking"))
    elif oral_result(recheck, given).over:
        last = next(count for count in range(1, len(given) + 1) if oral_result(recheck, given[:count]).over)
        what = f"{name}'s recheck ended with question {last}: what is asked after that does not count"
        found.append(row.problem("question", "asked-on", what, "remove the line"))
    given.append(right)


def with_talks(decision: Decision, rule: TalkRule, results: Mapping[str, OralResult]) -> Decision:
    """The decision with the talks that were held; one that was not, or did not end, stays to come.

    Args:
        decision: by the pass rule.
        rule: of the scheme.
        results: how each talk ended, by competency.
    """
    recheck = recheck_of(rule)

    def held(reason: Reason) -> Reason:
        result = results.get(reason.subject)
        if reason.requirement is not Requirement.TALK or result is None or not result.over:
            return reason
        need = recheck.limits(result.asked)[0] or result.asked
        return Reason(Requirement.TALK, result.shown, reason.subject, result.right, need, result.asked)

    return replace(decision, reasons=tuple(map(held, decision.reasons)))


def to_talk_about(scheme: Scheme, asked: Collection[str], critical: Collection[str]) -> tuple[str, ...]:
    """The competencies that a scheme wants a talk on: the critical ones that the paper asks, in order.

    Args:
        scheme: whose exam it is.
        asked: competencies of the paper.
        critical: what the course calls critical.
    """
    return () if scheme.talk is None else tuple(sorted({*scheme.critical_competencies, *critical} & set(asked)))


def near_the_cut(decision: Decision, rule: OralRule) -> Reason | None:
    """The written part's reason where the points lie so near the cut that the recheck decides; else None."""
    written = next((r for r in decision.reasons if r.requirement is Requirement.WRITTEN), None)
    if written is None or not written.most:
        return None
    return written if written.need - rule.near <= written.have < written.need + rule.near else None


def with_oral(decision: Decision, rule: OralRule, result: OralResult | None) -> Decision:
    """The decision with the oral recheck in the place of the written part, where the points are near the cut.

    Args:
        decision: by the pass rule.
        rule: of the scheme.
        result: how the recheck ended; None before it.
    """
    written = near_the_cut(decision, rule)
    if written is None:
        return decision
    points = f"{written.have}/{written.most}"
    enough = recheck_of(rule).limits(result.asked)[0] if result and result.asked else None
    if result is None or not result.over:
        oral = Reason(Requirement.ORAL, met=False, subject=points, have=0, need=0, most=0)
    else:
        oral = Reason(Requirement.ORAL, result.shown, points, result.right, enough or result.asked, result.asked)
    return replace(decision, reasons=tuple(oral if reason is written else reason for reason in decision.reasons))


# ------------------------------------------------------------------------------------------------- sample panel


def panel_limits(rule: PanelRule) -> tuple[float, float]:
    """Least and largest good reading [mm], the guard taken off: where nothing makes up for it, doubt counts as bad."""
    if rule.kind == "spacing":
        off = float(SPACING_TOLERANCE) - rule.guard
        return rule.planned - off, rule.planned + off
    least = float(LEAST_BAR_COVER if rule.steel == "bar" else LEAST_MESH_COVER)
    return least + rule.guard, float("inf")


def panel_reason(rule: PanelRule, readings: Sequence[float] | None) -> Reason:
    """Whether every reading of a sample panel is good; without readings it is not shown."""
    if not readings:
        return Reason(Requirement.PANEL, met=False, subject="", have=0, need=rule.readings, most=rule.readings)
    low, high = panel_limits(rule)
    good = sum(low - _HAIR <= reading <= high + _HAIR for reading in readings)
    return Reason(Requirement.PANEL, good == len(readings), "", good, len(readings), len(readings))


def read_panels(
    file: str, data: bytes, names: Sequence[str], rule: PanelRule, words: Words
) -> dict[str, tuple[float, ...]]:
    """Read the readings of sample panels: columns `learner`, `readings` (millimetres, with spaces between).

    Args:
        file: how problems name it.
        data: its bytes.
        names: the class list; a learner is a name, or its number in the list.
        rule: of the scheme.
        words: say what is wrong with a reading.

    Raises:
        ProblemsError: what `read_csv` refuses; an unknown learner, or one twice; what is no reading; too few of them.
    """
    found: dict[str, tuple[float, ...]] = {}
    problems: list[Problem] = []
    for row in read_csv(file, data, [Column("learner"), Column("readings")]):
        name = _learner(row, names, problems)
        panel = typed_panel(rule.kind, row["readings"], rule.steel, rule.planned)
        if isinstance(panel, ReadingFault):
            problems.append(row.problem("readings", "not-a-reading", fault_said(panel, words), "look at the sheet"))
        elif len(panel.readings) < rule.readings:
            what = f"{len(panel.readings)} readings, and the scheme asks for {rule.readings}"
            problems.append(row.problem("readings", "too-few-readings", what, "take them at all the drawn places"))
        elif name in found:
            what = f"'{name}' has readings in an earlier line"
            problems.append(row.problem("learner", "two-panels", what, "keep the line that the observer signed"))
        else:
            found[name] = panel.readings
    if problems:
        raise ProblemsError(problems)
    return found


def _learner(row: Row, names: Sequence[str], problems: list[Problem]) -> str:
    known = {same_name(name): name for name in names} | {str(i): name for i, name in enumerate(names, start=1)}
    name = known.get(same_name(row["learner"]), "")
    if not name:
        what = f"no paper was made for '{row['learner']}'"
        problems.append(row.problem("learner", "unknown-learner", what, "write the name as it stands on the paper"))
    return name
