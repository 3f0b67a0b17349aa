"""`analyse`: statistics of papers and practicals that can be defended, and what to change first."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Any, TypeVar

import click

from generator import curriculum
from generator.assessment import score_files
from generator.assessment.analysis import Analysis
from generator.assessment.analysis import analyse as worked_out
from generator.assessment.analysis_data import as_data
from generator.assessment.notes import NoAnswerError
from generator.assessment.report import Masons, Names, Report, report
from generator.assessment.report_page import report_page
from generator.assessment.score_files import Answers
from generator.assessment.simulate import curve, exam_of, gates, least, with_helps
from generator.commands.course import file_bytes
from generator.commands.tool import content_option, json_option, language_option, say_json
from generator.curriculum import CourseContent
from generator.plans import sections_text
from generator.problems import ExitCode, Problem, ProblemsError, RefusedError
from generator.sheets.analysis import analysis_pdf
from generator.site.fonts import font_files

_FILE = click.Path(dir_okay=False, path_type=Path)
_MASTERIES = [share / 20 for share in range(6, 21)]
Read = TypeVar("Read")


@click.command()
@click.argument("results", nargs=-1, type=_FILE)
@click.option("--record", "records", multiple=True, type=_FILE,
              help="Record that a results file was marked from; one for each, in the same order.")  # fmt: skip
@click.option("--answers", "typed", multiple=True, type=_FILE,
              help="Answers that were typed for it (CSV); shows who picked what. Needs --record.")  # fmt: skip
@click.option("--cut", type=click.IntRange(min=1), help="Least points that pass.")
@click.option("--scheme", help="Take the least share of the written points from this scheme.")
@click.option("--judges", type=_FILE, help="Judges' percents (CSV: round, judge, a column for each question).")
@click.option("--ratings", type=_FILE, help="A practical (CSV: learner, rating 1 to 5, points).")
@click.option("--groups", type=_FILE, help="Two known groups (CSV: learner, group, points; able or not yet).")
@click.option("--observers", type=_FILE, help="Several observers (CSV: observer, learner, practical, step, seen).")
@click.option("--masons", is_flag=True, help="Send made-up masons through the scheme's whole rule; needs --scheme.")
@click.option("--html", type=_FILE, help="Write the report as one page to this file.")
@click.option("--pdf", type=_FILE, help="Write the report as a sheet to this file.")
@language_option
@content_option
@json_option
def analyse(
    results: tuple[Path, ...], language: str, content: Path, as_json: bool, html: Path | None, pdf: Path | None,
    **options: Any,
) -> int:  # fmt: skip
    """Tell what RESULTS say about questions, cuts and observers, and what to change first.

    RESULTS are what `mark --json` printed, or tables (CSV: learner, form if known, a column for each question; cells 1,
    0 or nothing, or letters with a row `key`). Several files are taken together.

    Example: python3 tankschool.py analyse marks.json --scheme frame-hand --html report.html
    """
    _usage(results, options)
    course = _course(content)
    if language not in course.words:
        raise click.UsageError(f"There is no language '{language}'. There are: {', '.join(course.words)}.")
    scheme = options["scheme"]
    if scheme is not None and scheme not in course.schemes:
        raise click.UsageError(f"There is no scheme '{scheme}'. There are: {', '.join(course.schemes)}.")
    analysis = _analysis(results, course, options)
    masons = _masons(course, scheme) if options["masons"] else None
    words = course.words[language]
    told = report(analysis, words, _names(course, language), masons)
    written = _write(told, course, language, html, pdf)
    if as_json:
        say_json(as_data(analysis, told, masons) | {"files": [str(path) for path in written]})
    elif written:
        click.echo(words.say("command.wrote"))
        for path in written:
            click.echo(f"  {path}")
    else:
        click.echo(sections_text(told.sections(words)), nl=False)
    return ExitCode.GOOD


def _usage(results: tuple[Path, ...], options: dict[str, Any]) -> None:
    """What does not go together."""
    if not results and not any(options[name] for name in ("judges", "ratings", "groups", "observers", "masons")):
        raise click.UsageError("Give a file of results, or --judges, --ratings, --groups, --observers or --masons.")
    if options["cut"] is not None and options["scheme"] is not None and not options["masons"]:
        raise click.UsageError("Say one of: --cut, --scheme.")
    if options["masons"] and options["scheme"] is None:
        raise click.UsageError("--masons needs a scheme to go through: --scheme NAME.")
    records, typed = options["records"], options["typed"]
    if records and len(records) != len(results):
        raise click.UsageError(f"Results: {len(results)}, records: {len(records)}. Give one record for each.")
    if typed and len(typed) != len(records):
        raise click.UsageError(f"Records: {len(records)}, typed answers: {len(typed)}. Give typed answers for each.")


def _course(content: Path) -> CourseContent:
    loaded = curriculum.load(content)
    if loaded.content is None:
        raise ProblemsError(loaded.problems)
    return loaded.content


def _analysis(results: tuple[Path, ...], course: CourseContent, options: dict[str, Any]) -> Analysis:
    """Read every file, then work out; what is wrong with any of them is told at once.

    Raises:
        ProblemsError: something is wrong with a file.
        RefusedError: judges that are no panel.
    """
    problems: list[Problem] = []
    records = options["records"] or (None,) * len(results)
    typed = options["typed"] or (None,) * len(results)
    answers = [_read(problems, partial(_answers, *files)) for files in zip(results, records, typed, strict=True)]
    judges = _table(problems, options["judges"], score_files.read_judges)
    rated = _table(problems, options["ratings"], score_files.read_ratings)
    groups = _table(problems, options["groups"], score_files.read_groups)
    watched = _table(problems, options["observers"], score_files.read_observers)
    if problems:
        raise ProblemsError(problems)
    parts = [part for part in answers if part is not None]
    cut, scheme = options["cut"], options["scheme"]
    rule: Callable[[int], int] | None = None
    if cut is not None:
        rule = partial(_fixed, cut)
    elif scheme is not None:
        rule = partial(least, course.schemes[scheme].rule.written)
    critical = frozenset(
        f"{practical.id}/{step.id}"
        for practical in course.practicals.values()
        for step in practical.steps
        if step.critical
    )
    joined = score_files.joined_answers(parts) if parts else None
    if cut is not None and joined is not None and cut > len(joined.scores.asked_of_all):
        most = len(joined.scores.asked_of_all)
        raise click.UsageError(f"--cut {cut} is more than the {most} questions that every learner had.")
    try:
        return worked_out(joined, rule, judges, rated, groups, watched, critical)
    except NoAnswerError as error:
        raise RefusedError(
            f"these judges are no panel ({error}); ask at least five who did not train the learners"
        ) from None


def _fixed(cut: int, _questions: int) -> int:
    return cut


def _answers(path: Path, record: Path | None, typed: Path | None) -> Answers:
    data = file_bytes(path)
    if record is None:
        return score_files.read_scores(str(path), data)
    texts = None if typed is None else file_bytes(typed)
    return score_files.read_scores_with_record(str(path), data, str(record), file_bytes(record), str(typed), texts)


def _read(problems: list[Problem], read: Callable[[], Read]) -> Read | None:
    try:
        return read()
    except ProblemsError as error:
        problems += error.problems
        return None


def _table(problems: list[Problem], path: Path | None, read: Callable[[str, bytes], Read]) -> Read | None:
    return None if path is None else _read(problems, lambda: read(str(path), file_bytes(path)))


def _names(course: CourseContent, language: str) -> Names:
    steps = {
        f"{practical.id}/{step.id}": step.text[language]
        for practical in course.practicals.values()
        for step in practical.steps
    }
    return Names(steps, {key.partition(".")[2]: str(text) for key, text in course.words[language].family("quantity")})


def _masons(course: CourseContent, scheme: str) -> Masons:
    helped = with_helps(exam_of(course, course.schemes[scheme]))
    return Masons(
        tuple((name, gates(each)) for name, each in helped),
        curve(helped[0][1], _MASTERIES),
        curve(helped[-1][1], _MASTERIES),
    )


def _write(told: Report, course: CourseContent, language: str, html: Path | None, pdf: Path | None) -> list[Path]:
    words = course.words[language]
    files: dict[Path, bytes] = {}
    if html is not None:
        files[html] = report_page(told, words, font_files()).encode("utf-8")
    if pdf is not None:
        files[pdf] = analysis_pdf(told, words, course.course.version)
    for path, data in files.items():
        fresh = path.with_name(f"{path.name}.part")
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            fresh.write_bytes(data)
            fresh.replace(path)
        finally:
            fresh.unlink(missing_ok=True)
    return list(files)
