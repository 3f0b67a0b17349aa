"""`register cut`, `decide`, `decisions`, `appeal`: who has shown what, and what follows."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass
from datetime import date, timedelta
from typing import Any

import click

from generator.assessment import Decision, Observations, decide, explain
from generator.commands.register_common import (
    APPEAL,
    COHORT,
    DECISION,
    PERSON,
    SITTING,
    TEXT,
    Desk,
    job,
    known_of,
)
from generator.curriculum import CourseContent
from generator.curriculum.models import Scheme
from generator.exercises import Mark, Verdict
from generator.problems import ExitCode, RefusedError
from generator.registry import (
    Registry,
    decide_appeal,
    file_appeal,
    record_cut,
    record_decision,
    seen_by_name,
)
from generator.registry.listing import (
    WrittenPaper,
    appeal_list,
    candidates,
    cut_in_force,
    decision_list,
    sitting_list,
    written_exam,
)
from generator.registry.marker import items_marker

STATUS = {"draft": "draft", "provisional": "provisional", "in-force": "approved"}
"""What the registry calls the status that a scheme's file says."""


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
    """What one candidate wrote: all marks, the papers, the modules that they ask about."""

    marks: tuple[Mark, ...]
    papers: tuple[int, ...]
    modules: frozenset[str]


@click.command("decide")
@click.argument("cohort", type=COHORT)
@click.argument("scheme")
@click.option("--sitting", "sittings", type=SITTING, multiple=True,
              help="Sittings to count; else those of the cohort that were held for the scheme.")  # fmt: skip
@click.option("--person", "persons", type=PERSON, multiple=True, help="Only these candidates.")
@click.option("--exception", type=TEXT, help="Why someone decides who trained them; stays in the register.")
@click.option("--dry-run", is_flag=True, help="Only say what would be decided.")
@job
def decide_jobs(
    desk: Desk,
    cohort: int,
    scheme: str,
    sittings: Sequence[int],
    persons: Sequence[int],
    exception: str | None,
    dry_run: bool,
) -> int:
    """Decide on the candidates of a COHORT by a SCHEME, from marks and observations; each decision keeps its reasons.

    Example: python3 tankschool.py register decide 1 frame-hand --dry-run
    """
    plain = _scheme(desk, scheme)
    if plain.status == "draft":
        raise RefusedError(f"the scheme '{scheme}' is a draft: it decides nothing")
    with desk.registry() as registry:
        by = desk.by(registry)
        names = candidates(registry, cohort)
        chosen = {key: names[key] for key in persons if key in names} if persons else names
        if not chosen or len(chosen) < len(set(persons)):
            raise RefusedError(f"there is no such candidate in cohort {cohort}")
        rule = _with_cut(registry, plain)
        exams = _exams(desk, registry, cohort, plain, sittings)
        seen = seen_by_name(registry, cohort)
        _may_try_again(desk, registry, plain, chosen, exams)
        rows = []
        for key, name in chosen.items():
            exam = exams.get(key, _Exam((), (), frozenset()))
            made = _decided(desk.course, rule, exam, seen, name)
            number = None
            if not dry_run:
                number = record_decision(
                    registry, cohort, key, made, scheme_status=STATUS[plain.status], papers_read=exam.papers,
                    exception=exception, by=by, now=desk.now,
                )  # fmt: skip
            rows.append({"person": key, "name": name, "decision": number, **decision_data(made)})
            if not desk.as_json:
                _say(desk, made, key, name, number)
    if desk.as_json:
        return desk.done("", decisions=rows, kept=not dry_run)
    if plain.status == "provisional" and rule is plain:
        click.echo(desk.words.say("register.no_cut", scheme=scheme))
    return ExitCode.GOOD


def _scheme(desk: Desk, scheme: str) -> Scheme:
    return desk.course.schemes[known_of(scheme, list(desk.course.schemes), "scheme")]


def _with_cut(registry: Registry, scheme: Scheme) -> Scheme:
    """The scheme with the shares that a local panel set, where one has."""
    cut = cut_in_force(registry, scheme.id, scheme.version)
    if cut is None:
        return scheme
    rule = scheme.rule.model_copy(update={"written": cut.written, "practical": cut.practical})
    return scheme.model_copy(update={"rule": rule})


def _exams(desk: Desk, registry: Registry, cohort: int, scheme: Scheme, named: Sequence[int]) -> Mapping[int, _Exam]:
    """What each candidate wrote in the sittings that count."""
    held = {row[0]: row for row in sitting_list(registry, cohort).rows}
    strange = [key for key in named if key not in held]
    if strange:
        raise RefusedError(f"sitting {strange[0]} is none of cohort {cohort}")
    wanted = list(dict.fromkeys(named)) or [
        key for key, row in held.items() if (row[3], row[4]) == (scheme.id, scheme.version)
    ]
    found: dict[int, _Exam] = {}
    for key in wanted:
        exam = written_exam(registry, key)
        if (exam.scheme, exam.version) != (scheme.id, scheme.version):
            raise RefusedError(
                f"sitting {key} was not held for version {scheme.version} of '{scheme.id}': practice decides nothing"
            )
        modules = _modules(json.loads(exam.about))
        for paper in exam.papers:
            before = found.get(paper.person, _Exam((), (), frozenset()))
            if before.modules & modules:
                raise RefusedError(
                    f"person {paper.person} sat twice for the same module: say with --sitting which sitting counts"
                )
            marks, papers = (*before.marks, *_marks(paper, exam.about)), (*before.papers, paper.paper)
            found[paper.person] = _Exam(marks, papers, before.modules | modules)
    return found


def _modules(about: Mapping[str, Any]) -> frozenset[str]:
    """The modules that the papers ask about, as far as they say so: one that they don't name is not shown."""
    several, one = about.get("modules"), about.get("module")
    if isinstance(several, list):
        return frozenset(map(str, several))
    return frozenset({str(one)}) if isinstance(one, str) else frozenset()


def _marks(paper: WrittenPaper, about: str) -> tuple[Mark, ...]:
    """A mark for every question of the paper: one without a recorded answer counts as blank, and is never dropped."""
    key = items_marker(paper.content, about)
    missing = dict.fromkeys(set(key.labels.values()) - paper.marks.keys(), "")
    found = {label: (row["item"], row["competency"], row["verdict"], row["points"], row["most"])
             for label, row in paper.marks.items()}  # fmt: skip
    for label, row, _ in key.mark(missing):
        if label in missing:
            found[label] = (row[0], row[1], row[3], row[4], row[5])
    return tuple(
        Mark(item, competency, Verdict(verdict), step_points=_step_points(Verdict(verdict), points), step_most=most - 1)
        for _, (item, competency, verdict, points, most) in sorted(found.items())
    )


def _step_points(verdict: Verdict, points: int) -> int:
    return 0 if verdict is Verdict.RIGHT else points - int(verdict.counts)


def _decided(course: CourseContent, rule: Scheme, exam: _Exam, seen: Observations, name: str) -> Decision:
    critical = [competency.id for competency in course.competencies.values() if competency.critical]
    return decide(rule, course.practicals, exam.marks, seen, name, critical, exam.modules)


def _may_try_again(
    desk: Desk, registry: Registry, scheme: Scheme, chosen: Mapping[int, str], exams: Mapping[int, _Exam]
) -> None:
    """Hold the scheme's rule of trying again against what was decided before.

    Raises:
        RefusedError: too soon, or too often.
    """
    retest = scheme.retest
    if retest is None:
        return
    before: dict[int, list[date]] = {}
    for row in decision_list(registry).rows:
        if row[4] == scheme.id and row[1] in chosen and not row[6]:
            before.setdefault(row[1], []).append(date.fromisoformat(row[7][:10]))
    today = desk.now.date()
    for key, days in before.items():
        earlier = [day for day in days if day != today]
        if not earlier or key not in exams:
            continue
        if len(earlier) >= retest.most:
            raise RefusedError(f"person {key} has tried {len(earlier)} times, and the scheme allows {retest.most}")
        free = max(earlier) + timedelta(days=retest.wait_days)
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


def _say(desk: Desk, made: Decision, person: int, name: str, number: int | None) -> None:
    lines = explain(made, desk.words, subjects(desk.course, desk.language))
    tail = "" if number is None else f" ({desk.words.say('register.column.decision')} {number})"
    click.echo(f"{person}  {name}: {lines[0]}{tail}")
    for line in lines[1:]:
        click.echo(f"    {line}")


def decision_data(made: Decision) -> dict[str, object]:
    """A decision for a program to read."""
    return {
        "scheme": made.scheme, "version": made.version, "passed": made.passed,
        "reasons": [{**asdict(reason), "requirement": str(reason.requirement)} for reason in made.reasons],
    }  # fmt: skip


@click.group("decisions")
def decisions_jobs() -> None:
    """See what was decided."""


@decisions_jobs.command("list")
@job
def listed(desk: Desk) -> int:
    """Show every decision with its number.

    Example: python3 tankschool.py register decisions list
    """
    with desk.registry() as registry:
        return desk.table(decision_list(registry))


@click.group("appeal")
def appeal_jobs() -> None:
    """Enter and close appeals against decisions."""


@appeal_jobs.command("file")
@click.argument("decision", type=DECISION)
@click.option("--grounds", type=TEXT, required=True, help="The candidate's own words.")
@job
def filed(desk: Desk, decision: int, grounds: str) -> int:
    """Enter a candidate's appeal against a DECISION.

    Example: python3 tankschool.py register appeal file 3 --grounds "Question 4 was not readable."
    """
    with desk.registry() as registry:
        key = file_appeal(registry, decision, grounds, by=desk.by(registry), now=desk.now)
    return desk.done(desk.words.say("register.done.appeal", appeal=key, decision=decision), appeal=key)


@appeal_jobs.command("close")
@click.argument("appeal", type=APPEAL)
@click.argument("outcome", type=click.Choice(("stands", "set_aside")))
@click.option("--reasons", type=TEXT, required=True, help="Told to the candidate.")
@click.option("--exception", type=TEXT, help="Why someone decides who trained them.")
@job
def closed(desk: Desk, appeal: int, outcome: str, reasons: str, exception: str | None) -> int:
    """Close an APPEAL: the decision stands, or is set aside. Whoever made the decision can't do it.

    Example: python3 tankschool.py register appeal close 1 stands --reasons "The question was readable." --by 2
    """
    with desk.registry() as registry:
        by = desk.by(registry)
        decide_appeal(registry, appeal, outcome, reasons, by=by, now=desk.now, exception=exception)
    return desk.done(desk.words.say("register.done.appeal_closed", appeal=appeal), appeal=appeal, outcome=outcome)


@appeal_jobs.command("list")
@job
def appeals(desk: Desk) -> int:
    """Show every appeal with its number.

    Example: python3 tankschool.py register appeal list
    """
    with desk.registry() as registry:
        return desk.table(appeal_list(registry))
