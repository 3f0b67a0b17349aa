"""`mark`: marks typed answers from the record of a printed set, and applies a scheme's rule where one is named."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import click

from generator import sheets as printed
from generator.assessment import Decision, decide, explain, read_observations
from generator.commands.course import course_at, file_bytes
from generator.commands.sheets import known_language, slug
from generator.commands.tool import content_option, json_option, language_option, say_json, write_folder
from generator.curriculum import CourseContent
from generator.exercises import LearnerMarks, SetMarks, from_json, mark_set, messages, read_answers
from generator.problems import ExitCode
from generator.words import Words


@click.command()
@click.argument("record", type=click.Path(dir_okay=False, path_type=Path))
@click.argument("answers", type=click.Path(dir_okay=False, path_type=Path))
@click.option("--scheme", help="Decide by this scheme; needs --practical.")
@click.option("--practical", type=click.Path(dir_okay=False, path_type=Path), help="What the observer saw (CSV).")
@click.option(
    "--certificates", type=click.Path(file_okay=False, path_type=Path), help="Folder for the sample certificates."
)
@language_option
@content_option
@json_option
def mark(
    record: Path,
    answers: Path,
    scheme: str | None,
    practical: Path | None,
    certificates: Path | None,
    language: str,
    content: Path,
    as_json: bool,
) -> int:
    """Mark the typed ANSWERS (CSV: learner, question, answer) to a printed set, from its saved RECORD.

    With --scheme and --practical (CSV: learner, practical, step, seen; seen is done, not done or not seen) the scheme's
    rule is applied; --certificates then writes a sample certificate, unsigned and marked so, for each who passed.

    Example: python3 tankschool.py mark output/sheets/frame-1a2b3c4d/record.json answers.csv
    """
    course = course_at(content)
    language = known_language(course, language)
    words = course.words[language]
    if (scheme is None) != (practical is None):
        raise click.UsageError("A decision needs both: --scheme and --practical.")
    if scheme is not None and scheme not in course.schemes:
        raise click.UsageError(f"There is no scheme '{scheme}'. There are: {', '.join(course.schemes)}.")
    if certificates is not None and scheme is None:
        raise click.UsageError("A certificate needs a decision: --scheme and --practical.")
    printed_set = from_json(str(record), file_bytes(record))
    typed = read_answers(str(answers), file_bytes(answers), printed_set)
    marks = mark_set(printed_set, typed)
    decisions: dict[int, Decision] = {}
    if scheme is not None and practical is not None:
        decisions = _decide(course, scheme, practical, marks, printed_set.module)
    files: dict[Path, bytes] = {}
    if certificates is not None:
        folder = certificates / f"{scheme}-{printed_set.set_id}"
        found = _certificates(course, marks, decisions, language)
        files = {folder / name: data for name, data in found.items()}
        if found:
            write_folder(folder, found)
    if as_json:
        say_json(_as_data(marks, decisions, [str(path) for path in sorted(files)], words))
    else:
        _say(course, marks, decisions, words, language)
        for path in sorted(files):
            click.echo(f"  {path}")
    return ExitCode.GOOD


def _decide(course: CourseContent, scheme: str, practical: Path, marks: SetMarks, module: str) -> dict[int, Decision]:
    names = [learner.learner.name for learner in marks.learners]
    seen = read_observations(str(practical), file_bytes(practical), names, course.practicals)
    critical = [competency.id for competency in course.competencies.values() if competency.critical]
    return {
        learner.learner.number: decide(
            course.schemes[scheme],
            course.practicals,
            [found for _, found in learner.marks],
            seen,
            learner.learner.name,
            critical,
            [module],
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
