"""`mark`: marks answers from the record of a printed set or exam, and applies a scheme's rule where one is named."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

import click

from generator import sheets as printed
from generator.assessment import Decision, Observations, decide, explain, read_observations
from generator.assessment.agreement import Agreement
from generator.assessment.paper_decision import (
    NOTHING_SPOKEN,
    Step,
    how_alike,
    joined,
    panel_reason,
    read_panels,
    read_spoken,
    to_talk_about,
    unlike,
    with_oral,
    with_recheck,
    with_talks,
)
from generator.assessment.paper_draw import scheme_of
from generator.assessment.paper_results import Result
from generator.commands.answer_files import same_twice, typed_files
from generator.commands.course import course_at, file_bytes
from generator.commands.sheets import known_language, slug
from generator.commands.tool import content_option, json_option, language_option, say_json, write_folder
from generator.curriculum import CourseContent
from generator.curriculum.models import Scheme
from generator.exercises import LearnerMarks, Record, SetMarks, from_json, mark_set, messages
from generator.problems import ExitCode, RefusedError
from generator.sheets.feedback import feedback_pdf
from generator.words import Words


@click.command()
@click.argument("record", type=click.Path(dir_okay=False, path_type=Path))
@click.argument("answers", type=click.Path(path_type=Path), nargs=-1, required=True)
@click.option(
    "--second", type=click.Path(dir_okay=False, path_type=Path), help="The same answers, typed by another (CSV)."
)
@click.option("--scheme", help="Decide by this scheme; needs --practical.")
@click.option(
    "--practical",
    "practicals",
    type=click.Path(dir_okay=False, path_type=Path),
    multiple=True,
    help="What an observer saw (CSV); twice for two observers.",
)
@click.option(
    "--recheck", type=click.Path(dir_okay=False, path_type=Path), help="Critical steps shown at once again (CSV)."
)
@click.option("--oral", type=click.Path(dir_okay=False, path_type=Path), help="What was answered aloud (CSV).")
@click.option("--panel", type=click.Path(dir_okay=False, path_type=Path), help="Readings of sample panels (CSV).")
@click.option("--feedback", type=click.Path(dir_okay=False, path_type=Path), help="Write feedback sheets (PDF) here.")
@click.option(
    "--certificates", type=click.Path(file_okay=False, path_type=Path), help="Folder for the sample certificates."
)
@language_option
@content_option
@json_option
def mark(
    record: Path,
    answers: Sequence[Path],
    second: Path | None,
    scheme: str | None,
    practicals: Sequence[Path],
    recheck: Path | None,
    oral: Path | None,
    panel: Path | None,
    feedback: Path | None,
    certificates: Path | None,
    language: str,
    content: Path,
    as_json: bool,
) -> int:
    """Mark ANSWERS to a printed set or exam from its saved RECORD.

    ANSWERS are a table (CSV: learner, question, answer; check where it was copied from a screen), or result files of
    the screen exam, or a folder of them. With --second every difference of two typed tables is listed, and nothing is
    marked before they agree.

    With --scheme and --practical (CSV: learner, practical, step, seen; seen is done, not done or not seen) the scheme's
    rule is applied; --certificates then writes a sample certificate, unsigned and marked so, for each who passed.
    --recheck has the same columns; --oral has learner, question, answer (right, wrong)
    and, for the talks on critical competencies, competency; --panel has learner, readings.

    Example: python3 tankschool.py mark output/sheets/frame-1a2b3c4d/record.json answers.csv
    """
    course = course_at(content)
    language = known_language(course, language)
    words = course.words[language]
    if (scheme is None) != (not practicals) or len(practicals) > 2:
        raise click.UsageError("A decision needs both: --scheme and --practical.")
    if scheme is not None and scheme not in course.schemes:
        raise click.UsageError(f"There is no scheme '{scheme}'. There are: {', '.join(course.schemes)}.")
    if certificates is not None and scheme is None:
        raise click.UsageError("A certificate needs a decision: --scheme and --practical.")
    if scheme is None and (recheck or oral or panel):
        raise click.UsageError("--recheck, --oral and --panel belong to a decision: --scheme and --practical.")
    printed_set = from_json(str(record), file_bytes(record))
    typed, results = typed_files(answers, printed_set)
    if second is not None:
        same_twice(printed_set, typed, str(second), file_bytes(second))
    marks = mark_set(printed_set, typed)
    watched = _Watched({}, None, (), ())
    decisions: dict[int, Decision] = {}
    if scheme is not None:
        rule = _usable(course.schemes[scheme], printed_set)
        names = [one.learner.name for one in marks.learners]
        watched = _watched(course, rule, practicals, recheck, names)
        decisions = _decide(course, rule, watched.seen, marks, printed_set)
        decisions = _beside(course, rule, decisions, marks, oral, panel, words)
    if feedback is not None:
        feedback.parent.mkdir(parents=True, exist_ok=True)
        feedback.write_bytes(_feedback(course, marks, decisions, printed_set.set_id))
    files: dict[Path, bytes] = {}
    if certificates is not None:
        folder = certificates / f"{scheme}-{printed_set.set_id}"
        found = _certificates(course, marks, decisions, language)
        files = {folder / name: data for name, data in found.items()}
        if found:
            write_folder(folder, found)
    if as_json:
        data = _as_data(marks, decisions, [str(path) for path in sorted(files)], words)
        say_json(data | _watched_data(watched) | {"results": [one.model_dump(mode="json") for one in results]})
    else:
        _say(course, marks, decisions, words, language)
        _say_watched(watched, results, words)
        for path in sorted(files):
            click.echo(f"  {path}")
    return ExitCode.GOOD


@dataclass(frozen=True, slots=True)
class _Watched:
    """What observers saw, how far two of them agree, where they don't, and what was shown at the second try."""

    seen: Observations
    alike: Agreement | None
    unlike: tuple[Step, ...]
    rechecked: tuple[Step, ...]


def _usable(scheme: Scheme, record: Record) -> Scheme:
    """The scheme, if it decides, and if an exam's papers were made for it.

    Raises:
        RefusedError: a draft; papers of another scheme or version.
    """
    if scheme.status == "draft":
        raise RefusedError(f"the scheme '{scheme.id}' is a draft and decides nothing")
    made = scheme_of(record)
    if made is not None and made != (scheme.id, scheme.version):
        raise RefusedError(
            f"the papers follow '{made[0]}', version {made[1]}, and not '{scheme.id}', version {scheme.version}"
        )
    return scheme


def _watched(
    course: CourseContent, scheme: Scheme, practicals: Sequence[Path], recheck: Path | None, names: list[str]
) -> _Watched:
    """What was seen.

    Raises:
        RefusedError: fewer tables than the scheme has observers.
    """
    if len(practicals) < scheme.rule.observers:
        raise RefusedError(f"the scheme '{scheme.id}' wants two observers: give --practical twice, once for each")
    tables = [read_observations(str(one), file_bytes(one), names, course.practicals) for one in practicals]
    first, second = tables[0], tables[1] if len(tables) > 1 else None
    both = scheme.rule.observers > 1
    seen = first if second is None else joined(first, second, course.practicals, both=both)
    log: tuple[Step, ...] = ()
    if recheck is not None:
        again = read_observations(str(recheck), file_bytes(recheck), names, course.practicals)
        seen, log = with_recheck(seen, again, course.practicals, str(recheck))
    if second is None:
        return _Watched(seen, None, (), log)
    return _Watched(seen, how_alike(first, second), unlike(first, second), log)


def _beside(
    course: CourseContent,
    scheme: Scheme,
    decisions: dict[int, Decision],
    marks: SetMarks,
    oral: Path | None,
    panel: Path | None,
    words: Words,
) -> dict[int, Decision]:
    """The decisions with talks, oral recheck and sample panel, where the scheme has them."""
    names = {learner.learner.number: learner.learner.name for learner in marks.learners}
    for file, rule, what in ((oral, scheme.oral or scheme.talk, "oral recheck"), (panel, scheme.panel, "sample panel")):
        if file is not None and rule is None:
            raise RefusedError(f"the scheme '{scheme.id}' has no {what}")
    spoken = NOTHING_SPOKEN
    if oral is not None:
        critical = [one.id for one in course.competencies.values() if one.critical]
        asked = {mark.competency for one in marks.learners for _, mark in one.marks}
        about = to_talk_about(scheme, asked, critical)
        spoken = read_spoken(str(oral), file_bytes(oral), list(names.values()), scheme, about)
    if scheme.talk is not None:
        talk = scheme.talk
        decisions = {
            number: with_talks(decision, talk, spoken.talks.get(names[number], {}))
            for number, decision in decisions.items()
        }
    if scheme.oral is not None:
        near = scheme.oral
        decisions = {
            number: with_oral(decision, near, spoken.near.get(names[number])) for number, decision in decisions.items()
        }
    if scheme.panel is not None:
        readings = {}
        if panel is not None:
            readings = read_panels(str(panel), file_bytes(panel), list(names.values()), scheme.panel, words)
        decisions = {
            number: replace(
                decision, reasons=(*decision.reasons, panel_reason(scheme.panel, readings.get(names[number])))
            )
            for number, decision in decisions.items()
        }
    return decisions


def _feedback(course: CourseContent, marks: SetMarks, decisions: Mapping[int, Decision], set_id: str) -> bytes:
    told = []
    for one in marks.learners:
        decision, language = decisions.get(one.learner.number), one.learner.language
        lines = explain(decision, course.words[language], _subjects(course, language)) if decision else ()
        told.append(lines)
    return feedback_pdf(marks.learners, set_id, course, told)


def _say_watched(watched: _Watched, results: Sequence[Result], words: Words) -> None:
    if watched.alike is not None:
        click.echo(
            words.say(
                "paper.observers",
                percent=f"{100 * watched.alike.percent:.0f}",
                chance=f"{watched.alike.ac1:.2f}",
                error=f"{watched.alike.error:.2f}",
                count=watched.alike.pairs,
            )
        )
    for learner, practical, step in watched.unlike:
        click.echo(f"  {words.say('paper.observers_differ', learner=learner, step=f'{practical}/{step}')}")
    for learner, practical, step in watched.rechecked:
        click.echo(words.say("paper.rechecked", learner=learner, step=f"{practical}/{step}"))
    for one in results:
        for more in one.more_time:
            click.echo(words.say("paper.more_time", learner=one.name, minutes=f"{more.minutes:g}", who=more.who))


def _watched_data(watched: _Watched) -> dict[str, object]:
    alike = watched.alike
    return {
        "observers": None if alike is None else {"pairs": alike.pairs, "percent": alike.percent, "ac1": alike.ac1},
        "observers_differ": [list(step) for step in watched.unlike],
        "rechecked": [list(step) for step in watched.rechecked],
    }


def _decide(
    course: CourseContent, scheme: Scheme, seen: Observations, marks: SetMarks, record: Record
) -> dict[int, Decision]:
    critical = [competency.id for competency in course.competencies.values() if competency.critical]
    return {
        learner.learner.number: decide(
            scheme,
            course.practicals,
            [found for _, found in learner.marks],
            seen,
            learner.learner.name,
            critical,
            None if scheme_of(record) else [record.module],
        )
        for learner in marks.learners
    }


def _certificates(
    course: CourseContent, marks: SetMarks, decisions: Mapping[int, Decision], language: str
) -> dict[str, bytes]:
    files: dict[str, bytes] = {}
    for learner in marks.learners:
        decision = decisions[learner.learner.number]
        if decision.passed:
            name = learner.learner.name
            end = f"-{slug(name)}" if slug(name) else ""
            files[f"{learner.learner.number:03}{end}.pdf"] = printed.certificate_pdf(decision, name, language, course)
    return files


def _subjects(course: CourseContent, language: str) -> dict[str, str]:
    """What modules, practicals, their steps and competencies are called."""
    found = {competency.id: competency.text[language] for competency in course.competencies.values()}
    found |= {module.id: module.title[language] for module in course.modules.values()}
    for practical in course.practicals.values():
        found[practical.id] = practical.title[language]
        found |= {f"{practical.id}/{step.id}": step.text[language] for step in practical.steps}
    return found


def _say(
    course: CourseContent, marks: SetMarks, decisions: Mapping[int, Decision], words: Words, language: str
) -> None:
    if not marks.same_formulas:
        click.echo(words.say("command.formulas_changed"))
    for learner in marks.learners:
        _say_learner(learner, words)
        decision = decisions.get(learner.learner.number)
        if decision is not None:
            for line in explain(decision, words, _subjects(course, language)):
                click.echo(f"  {line}")
            click.echo(f"  {words.say('command.only_a_sample')}")


def _say_learner(learner: LearnerMarks, words: Words) -> None:
    person = learner.learner
    click.echo(f"{person.number}  {person.name}: {words.say('command.points', have=learner.points, most=learner.most)}")
    for label, found in learner.marks:
        if not found.verdict.counts:
            click.echo(f"    {label}. {' '.join(messages(found, words))}")


def _as_data(marks: SetMarks, decisions: Mapping[int, Decision], files: list[str], words: Words) -> dict[str, object]:
    return {
        "format": 1,
        "same_formulas": marks.same_formulas,
        "certificates": files,
        "learners": [
            {
                "number": learner.learner.number,
                "name": learner.learner.name,
                "points": learner.points,
                "most": learner.most,
                "answers": [
                    {
                        "question": label,
                        "item": found.item,
                        "competency": found.competency,
                        "verdict": str(found.verdict),
                        "points": found.points,
                        "misconceptions": list(found.misconceptions),
                        "reasons": list(messages(found, words)),
                    }
                    for label, found in learner.marks
                ],
                "decision": _decision_data(decisions.get(learner.learner.number)),
            }
            for learner in marks.learners
        ],
    }


def _decision_data(decision: Decision | None) -> dict[str, object] | None:
    if decision is None:
        return None
    return {
        "scheme": decision.scheme,
        "version": decision.version,
        "passed": decision.passed,
        "signed": False,
        "reasons": [
            {
                "requirement": str(reason.requirement),
                "subject": reason.subject,
                "met": reason.met,
                "have": reason.have,
                "need": reason.need,
                "most": reason.most,
            }
            for reason in decision.reasons
        ],
    }
