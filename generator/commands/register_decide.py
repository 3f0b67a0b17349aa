"""`register cut`, `decide`: who has shown what, by which cut."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from datetime import date, timedelta
from pathlib import Path

import click

from generator.assessment import Decision, Observations, Requirement, decide, explain
from generator.assessment.decision import points_needed
from generator.assessment.paper_decision import (
    NOTHING_SPOKEN,
    panel_reason,
    read_panels,
    read_spoken,
    to_talk_about,
    with_oral,
    with_talks,
)
from generator.assessment.uncertainty import say_uncertainty, uncertainty
from generator.commands.register_common import (
    COHORT,
    FILE_IN,
    PERSON,
    SITTING,
    TEXT,
    Desk,
    job,
    known_of,
)
from generator.commands.register_ways import Ways
from generator.commands.register_workbook import table_from
from generator.curriculum import CourseContent
from generator.curriculum.models import Scheme
from generator.exercises import Mark, Verdict
from generator.problems import ExitCode, RefusedError
from generator.registry import (
    Registry,
    excepted,
    record_cut,
    record_decision,
    seen_by_name,
)
from generator.registry.listing import (
    WrittenPaper,
    candidates,
    cut_in_force,
    failed_tries,
    inputs_of,
    sitting_list,
    written_exam,
)
from generator.registry.marker import items_marker


@click.command("cut")
@click.argument("scheme")
@click.option("--written", type=click.FloatRange(0, 1, min_open=True), required=True,
              help="Least share of the written points, as 0.7.")  # fmt: skip
@click.option("--practical-share", type=click.FloatRange(0, 1, min_open=True), required=True,
              help="Least share of the practical's steps, as 0.8.")  # fmt: skip
@click.option("--judges", type=click.IntRange(1, 1000), required=True, help="How many sat on the panel.")
@click.option("--method", type=TEXT, required=True, help="How the panel came to it.")
@job
def cut_jobs(desk: Desk, scheme: str, written: float, practical_share: float, judges: int, method: str) -> int:
    """Record the cut that a local panel set for the present version of a SCHEME; decisions then go by it.

    Example: python3 tankschool.py register cut frame-hand --written 0.7 --practical-share 0.8 --judges 6 --method guess
    """
    found = _scheme(desk, scheme)
    with desk.registry() as registry:
        key = record_cut(
            registry, scheme, found.version, method=method, written=written, practical=practical_share, judges=judges,
            by=desk.by(registry), now=desk.now,
        )  # fmt: skip
    return desk.done(desk.words.say("register.done.cut", scheme=scheme, version=found.version), cut=key)


@dataclass(frozen=True, slots=True)
class _Exam:
    """What one candidate wrote in the newest sitting for the scheme."""

    sitting: int
    paper: int
    marks: tuple[Mark, ...]


@click.command("decide")
@click.argument("cohort", type=COHORT)
@click.argument("scheme")
@click.option("--sitting", "sittings", type=SITTING, multiple=True, help="Only those who sat then.")
@click.option("--person", "persons", type=PERSON, multiple=True,
              help="Only these candidates; who is named is decided on also where something is missing.")  # fmt: skip
@click.option(
    "--oral", type=FILE_IN, help="What was answered aloud (CSV: learner, question, answer; competency for talks)."
)
@click.option("--panel", type=FILE_IN, help="Readings of the sample panels (CSV: learner, readings).")
@click.option("--exception", type=TEXT, help="Why someone decides who trained them; stays in the register.")
@click.option("--dry-run", is_flag=True, help="Only say what would be decided.")
@job
def decide_jobs(
    desk: Desk,
    cohort: int,
    scheme: str,
    sittings: Sequence[int],
    persons: Sequence[int],
    oral: Path | None,
    panel: Path | None,
    exception: str | None,
    dry_run: bool,
) -> int:
    """Decide on the candidates of a COHORT by a SCHEME, from marks and observations; each decision keeps its reasons.

    The newest sitting for the scheme counts. Who has no marks or observations yet is left out, and told.

    Example: python3 tankschool.py register decide 1 frame-hand --dry-run
    """
    plain = _scheme(desk, scheme)
    if plain.status == "draft":
        raise RefusedError(f"the scheme '{scheme}' is a draft: it decides nothing")
    with desk.registry() as registry:
        by = desk.by(registry)
        names = candidates(registry, cohort)
        strange = [key for key in persons if key not in names]
        if strange:
            raise RefusedError(f"person {strange[0]} is no candidate of cohort {cohort}")
        rule = _with_cut(registry, plain)
        exams = _exams(registry, cohort, plain, sittings)
        seen = seen_by_name(registry, cohort, _both_see(desk.course, plain))
        once = seen_by_name(registry, cohort)
        alone = {place[0] for place, saw in seen.items() if saw is not once[place]}
        asked = {mark.competency for exam in exams.values() for mark in exam.marks}
        beside = _Beside(desk, plain, list(names.values()), asked, oral, panel)
        chosen, left = _chosen(names, persons, sittings, exams, plain, seen, alone)
        ways = Ways.of(registry, plain)
        chosen = ways.let_in(chosen, persons, left)
        _may_try_again(desk, registry, plain, chosen, exams)
        rows = []
        for key in chosen:
            exam = exams.get(key)
            made = beside.added(_decided(desk.course, rule, exam, seen, names[key]), names[key])
            made = ways.added(made, key)
            if key not in persons and (waits := beside.to_come(made, names[key])):
                left[key] = waits
                continue
            number = None
            need = _need(rule, exam)
            if not dry_run:
                read = () if exam is None else (exam.paper,)
                rests_on = {
                    "rule": {"written": rule.rule.written, "practical": rule.rule.practical}, "way": ways.data(key),
                    "uncertainty": _sure_data(made, need), **beside.data(names[key]),
                    **inputs_of(registry, cohort, key, read),
                }  # fmt: skip
                number = record_decision(
                    registry, cohort, key, made, scheme_status=plain.status, papers_read=read,
                    exception=exception, inputs=rests_on, by=by, now=desk.now,
                )  # fmt: skip
            rows.append({"person": key, "name": names[key], "decision": number, **decision_data(made)})
            if not desk.as_json:
                _say(desk, made, key, names[key], number, need)
    if desk.as_json:
        left_out = [{"person": key, "name": names[key], "why": why} for key, why in left.items()]
        return desk.done("", decisions=rows, left_out=left_out, kept=not dry_run, cut=rule is not plain)
    if unknown := [names[key] for key in chosen if not ways.known(key)]:
        click.echo(desk.words.say("register.no_way", names=", ".join(unknown)))
    for key, why in sorted(left.items()):
        click.echo(f"{key}  {names[key]}: {desk.words.say_one_of('register.left_out', why)}")
    if plain.status == "provisional" and rule is plain:
        click.echo(desk.words.say("register.no_cut", scheme=scheme))
    return ExitCode.GOOD


def _scheme(desk: Desk, scheme: str) -> Scheme:
    return desk.course.schemes[known_of(scheme, list(desk.course.schemes), "scheme")]


def _both_see(course: CourseContent, scheme: Scheme) -> Collection[tuple[str, str]]:
    """The steps that two observers have to see."""
    if scheme.rule.observers == 1:
        return ()
    watched = (course.practicals[name] for name in scheme.practicals)
    return {(practical.id, step.id) for practical in watched for step in practical.steps if step.critical}


def _with_cut(registry: Registry, scheme: Scheme) -> Scheme:
    """The scheme with the shares that a local panel set, where one has."""
    cut = cut_in_force(registry, scheme.id, scheme.version)
    if cut is None:
        return scheme
    rule = scheme.rule.model_copy(update={"written": cut.written, "practical": cut.practical})
    return scheme.model_copy(update={"rule": rule})


def _exams(registry: Registry, cohort: int, scheme: Scheme, named: Sequence[int]) -> Mapping[int, _Exam]:
    """What each candidate wrote in the newest sitting that was held for the scheme.

    Raises:
        RefusedError: a named sitting is another cohort's or for something else, or somebody sat again after it.
    """
    held = [row[0] for row in sitting_list(registry, cohort).rows if (row[3], row[4]) == (scheme.id, scheme.version)]
    strange = [key for key in named if key not in held]
    if strange:
        raise RefusedError(
            f"sitting {strange[0]} was not held in cohort {cohort} for version {scheme.version} of '{scheme.id}': "
            "practice decides nothing"
        )
    found: dict[int, _Exam] = {}
    for key in held:
        exam = written_exam(registry, key)
        for paper in exam.papers:
            marks = _marks(paper, exam.about) if paper.marks else ()
            found[paper.person] = _Exam(key, paper.paper, marks)
    return found


def _chosen(
    names: Mapping[int, str],
    persons: Sequence[int],
    sittings: Sequence[int],
    exams: Mapping[int, _Exam],
    scheme: Scheme,
    seen: Observations,
    alone: Collection[str],
) -> tuple[list[int], dict[int, str]]:
    """Who is decided on, and who is left out, with the reason.

    Args:
        names: the candidates.
        persons: only these, where any are named.
        sittings: only who sat then, where any are named.
        exams: what they wrote.
        scheme: by which is decided.
        seen: what the observers saw.
        alone: names of those whom one observer alone saw do a step that asks for two.
    """
    chosen: list[int] = []
    left: dict[int, str] = {}
    for key, name in names.items():
        exam = exams.get(key)
        if (persons and key not in persons) or (sittings and (exam is None or exam.sitting not in sittings)):
            continue
        watched = any(place[0] == name and place[1] in scheme.practicals for place in seen)
        why = "no_paper" if exam is None else "no_marks" if not exam.marks else "" if watched else "no_observations"
        why = why or ("one_observer" if name in alone else "")
        if why and key not in persons:
            left[key] = why
        elif exam is not None and not exam.marks:
            raise RefusedError(
                f"the paper of person {key} has no marks yet: enter what was answered first, with 'register marks "
                f"import {exam.sitting} FILE'"
            )
        else:
            chosen.append(key)
    return chosen, left


class _Beside:
    """What a scheme asks for beside paper and practical: talks, an oral recheck near the cut, and a sample panel.

    Args:
        desk: for its words.
        scheme: by which is decided.
        names: the cohort's candidates, in the order of entry.
        asked: competencies that their papers asked for.
        oral: file of what was answered aloud.
        panel: file of the panels' readings.
    """

    def __init__(
        self,
        desk: Desk,
        scheme: Scheme,
        names: list[str],
        asked: Collection[str],
        oral: Path | None,
        panel: Path | None,
    ) -> None:
        spoken = scheme.oral or scheme.talk
        for given, rule, what in ((oral, spoken, "oral recheck"), (panel, scheme.panel, "sample panel")):
            if given is not None and rule is None:
                raise RefusedError(f"the scheme '{scheme.id}' has no {what}")
        self._scheme = scheme
        self._spoken = NOTHING_SPOKEN
        self._readings: Mapping[str, Sequence[float]] = {}
        if oral is not None:
            about = to_talk_about(scheme, asked, [one.id for one in desk.course.competencies.values() if one.critical])
            with table_from(oral, "oral") as (name, data):
                self._spoken = read_spoken(name, data, names, scheme, about)
        if panel is not None and scheme.panel is not None:
            with table_from(panel, "panel") as (name, data):
                self._readings = read_panels(name, data, names, scheme.panel, desk.words)

    def added(self, decision: Decision, name: str) -> Decision:
        """The decision with all of it."""
        scheme = self._scheme
        if scheme.talk is not None:
            decision = with_talks(decision, scheme.talk, self._spoken.talks.get(name, {}))
        if scheme.oral is not None:
            decision = with_oral(decision, scheme.oral, self._spoken.near.get(name))
        if scheme.panel is not None:
            panel = panel_reason(scheme.panel, self._readings.get(name))
            decision = replace(decision, reasons=(*decision.reasons, panel))
        return decision

    def to_come(self, decision: Decision, name: str) -> str:
        """Why one who is not named is left out: what nobody asked or measured yet; else empty."""
        missing = {reason.requirement for reason in decision.reasons if not reason.most}
        if Requirement.ORAL in missing:
            return "oral_to_come"
        if Requirement.TALK in missing:
            return "talk_to_come"
        return "panel_to_come" if self._scheme.panel is not None and name not in self._readings else ""

    def data(self, name: str) -> dict[str, object]:
        """What of all this a decision rests on."""
        asked, readings = self._spoken.near.get(name), self._readings.get(name)
        return {
            "talks": {about: asdict(result) for about, result in self._spoken.talks.get(name, {}).items()},
            "oral": None if asked is None else asdict(asked),
            "panel": None if readings is None else list(readings),
        }


def _need(rule: Scheme, exam: _Exam | None) -> int | None:
    """The points that the written part asks for, whether or not an oral recheck then stood in its place."""
    return None if exam is None else points_needed(rule.rule.written, len(exam.marks))


def _sure_data(made: Decision, need: int | None) -> dict[str, object] | None:
    found = uncertainty(made, need)
    return None if found is None else {**asdict(found), "near": found.near}


def _marks(paper: WrittenPaper, about: str) -> tuple[Mark, ...]:
    """A mark for every question of the paper: one without a recorded answer counts as blank, and is never dropped."""
    key = items_marker(paper.content, about)
    missing = dict.fromkeys(set(key.labels.values()) - paper.marks.keys(), "")
    found = {label: (row["item"], row["competency"], row["verdict"], row["points"], row["most"])
             for label, row in paper.marks.items()}  # fmt: skip
    for label, row in key.mark(missing):
        if label in missing:
            found[label] = (row[0], row[1], row[3], row[4], row[5])
    return tuple(
        Mark(item, competency, Verdict(verdict), step_points=_step_points(Verdict(verdict), points), step_most=most - 1)
        for _, (item, competency, verdict, points, most) in sorted(found.items())
    )


def _step_points(verdict: Verdict, points: int) -> int:
    return 0 if verdict is Verdict.RIGHT else points - int(verdict.counts)


def _decided(course: CourseContent, rule: Scheme, exam: _Exam | None, seen: Observations, name: str) -> Decision:
    """By the rule; a sitting for the scheme asks for all of its modules, and without one none is shown."""
    critical = [competency.id for competency in course.competencies.values() if competency.critical]
    marks, modules = ((), ()) if exam is None else (exam.marks, None)
    return decide(rule, course.practicals, marks, seen, name, critical, modules)


def _may_try_again(
    desk: Desk, registry: Registry, scheme: Scheme, chosen: Sequence[int], exams: Mapping[int, _Exam]
) -> None:
    """Hold the scheme's rule of trying again against what was decided on other papers.

    Raises:
        RefusedError: too soon, or too often.
    """
    if scheme.retest is None:
        return
    before: dict[int, list[date]] = {}
    free_ones = excepted(registry)
    for key, day, papers in failed_tries(registry, scheme.id):
        if key in exams and key in chosen and exams[key].paper not in {*papers, *free_ones}:
            before.setdefault(key, []).append(date.fromisoformat(day))
    today = desk.now.date()
    for key, days in before.items():
        if len(days) >= scheme.retest.most:
            raise RefusedError(f"person {key} has tried {len(days)} times, and the scheme allows {scheme.retest.most}")
        free = max(days) + timedelta(days=scheme.retest.wait_days)
        if today < free:
            raise RefusedError(f"person {key} may try again from {free} on: the scheme asks to practise first")


def subjects(course: CourseContent, language: str) -> dict[str, str]:
    """What modules, practicals, their steps and competencies are called."""
    found = {each.id: each.text[language] for each in course.competencies.values()}
    found |= {module.id: module.title[language] for module in course.modules.values()}
    for practical in course.practicals.values():
        found[practical.id] = practical.title[language]
        found |= {f"{practical.id}/{step.id}": step.text[language] for step in practical.steps}
    return found


def _say(desk: Desk, made: Decision, person: int, name: str, number: int | None, need: int | None) -> None:
    lines = explain(made, desk.words, subjects(desk.course, desk.language))
    tail = "" if number is None else f" ({desk.words.say('register.column.decision')} {number})"
    click.echo(f"{person}  {name}: {lines[0]}{tail}")
    for line in lines[1:]:
        click.echo(f"    {line}")
    sure = uncertainty(made, need)
    if sure is not None and sure.near:
        click.echo(f"    {say_uncertainty(sure, desk.words)}")


def decision_data(made: Decision) -> dict[str, object]:
    """A decision for a program to read."""
    return {
        "scheme": made.scheme, "version": made.version, "passed": made.passed,
        "reasons": [{**asdict(reason), "requirement": str(reason.requirement)} for reason in made.reasons],
    }  # fmt: skip
