"""`paper`: exam papers for a class list, archived in the registry; and a paper again, as it was, for an appeal."""

from __future__ import annotations

import io
import os
import re
import secrets
import sys
import zipfile
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime
from functools import cache
from pathlib import Path

import click

from generator import VERSION, registry
from generator import sheets as printed
from generator.assessment.blueprint import recheck_of
from generator.assessment.paper_draw import (
    LEAST_SECRET,
    Drawn,
    Exam,
    aids_said,
    draw_papers,
    paper_figures,
    secret_mark,
)
from generator.assessment.paper_oral import oral_questions, talks
from generator.assessment.screen_exam import ScreenPaper, screen_page
from generator.assessment.seats import read_seats
from generator.commands.course import course_at, file_bytes
from generator.commands.paper_group import Group, archived_set, group_in, looked_ahead
from generator.commands.paper_ways import FORMS, Way, in_own_language, needs_at, ways_of
from generator.commands.sheets import known_language
from generator.commands.tool import (
    ProgressLine,
    content_option,
    json_option,
    language_option,
    output_option,
    say_json,
    write_folder,
)
from generator.curriculum import CourseContent
from generator.curriculum.models import Scheme
from generator.exercises import Learner, read_class_list, same_name, to_json
from generator.problems import ExitCode, MachineError, Problem, ProblemsError, RefusedError
from generator.sheets.oral import oral_pdf, talks_pdf
from generator.sheets.paper import PrintedPaper, paper_name, paper_pdf, spoken_pdf
from generator.site.fonts import font_files

_EXAM_ID = re.compile(r"[a-z0-9][a-z0-9-]{0,59}")
_NUMBER = re.compile(r"([0-9a-f]{8})-([1-9][0-9]{0,4})")
_OWN_FILE = "exam-secret.bin"
_ZIP_TIME = (1980, 1, 1, 0, 0, 0)


@dataclass(frozen=True, slots=True)
class _Set:
    """Everything about one run.

    Args:
        course: the course.
        exam: scheme, name and secret.
        drawn: the papers.
        ways: how each learner sits, by number.
        rehearsal: whether it counts for nothing.
    """

    course: CourseContent
    exam: Exam
    drawn: Drawn
    ways: Mapping[int, Way]
    rehearsal: bool


@click.command()
@click.option("--scheme", "scheme_id", help="Whose blueprint the papers follow.")
@click.option("--for", "class_list", type=click.Path(dir_okay=False, path_type=Path), help="Class list (CSV): name.")
@click.option("--seats", type=click.Path(dir_okay=False, path_type=Path), help="Seats (CSV): learner, row, seat.")
@click.option(
    "--form", "forms", type=click.Choice(list(FORMS)), multiple=True, help="print (usual), screen, spoken; several go."
)
@click.option("--exam", "exam_id", help="Name of the exam; without it, the scheme and today's date.")
@click.option("--attempt", type=click.IntRange(1, 99), default=1, help="Which try it is for these candidates.")
@click.option(
    "--secret-file", type=click.Path(dir_okay=False, path_type=Path), help="What the numbers are drawn from; kept safe."
)
@click.option(
    "--more-time",
    "more_time",
    multiple=True,
    help="Minutes more for someone, as 'Asha Devi=30'; goes before the registry.",
)
@click.option(
    "--form-for",
    "form_for",
    multiple=True,
    help="Form of paper for someone, as 'Asha Devi=spoken'; goes before the registry.",
)
@click.option("--registry", "place", envvar="TANKSCHOOL_REGISTRY", metavar="PLACE",
              help="Registry that archives the papers: a file, or postgresql://...")  # fmt: skip
@click.option("--cohort", metavar="NAME",
              help="Cohort of the candidates in the registry; without it, the exam's name.")  # fmt: skip
@click.option("--by", envvar="TANKSCHOOL_BY", metavar="NAME",
              help="Name or number of the coordinator who gives out the papers.")  # fmt: skip
@click.option("--exception", help="Why those may sit who have to wait or used up their tries; stays in the registry.")
@click.option("--rehearsal", is_flag=True, help="Papers for trying out: marked so, and not archived.")
@click.option("--oral", "oral", multiple=True, help="Only the examiner's sheets for what someone is asked aloud.")
@click.option("--reprint", metavar="NUMBER", help="Only a paper from the archive, byte for byte: its printed number.")
@language_option
@content_option
@output_option
@json_option
def paper(
    scheme_id: str | None,
    class_list: Path | None,
    seats: Path | None,
    forms: Sequence[str],
    exam_id: str | None,
    attempt: int,
    secret_file: Path | None,
    more_time: Sequence[str],
    form_for: Sequence[str],
    place: str | None,
    cohort: str | None,
    by: str | None,
    exception: str | None,
    rehearsal: bool,
    oral: Sequence[str],
    reprint: str | None,
    language: str,
    content: Path,
    output: Path,
    as_json: bool,
) -> int:
    """Make an exam paper for everyone on a class list, each with other numbers, and archive all of them.

    Neighbours on the seat list never get the same numbers. The screen form is one file that keeps each answer in the
    browser; the spoken form is the same paper to be read aloud. What the registry knows of somebody in the cohort
    (language, more time, form) is used, unless an option says otherwise. Its first coordinator is entered by --by.

    Example: python3 tankschool.py paper --scheme frame-hand --for names.csv --by "Asha Devi" --form print --form screen
    """
    if reprint is not None:
        return _reprint(reprint, place or _default_place(), output, as_json)
    course = course_at(content)
    language = known_language(course, language)
    scheme = _scheme(course, scheme_id)
    if class_list is None:
        raise click.UsageError("Say for whom: --for names.csv.")
    if not rehearsal and by is None and not oral:
        raise click.UsageError("Say who gives the papers out: --by NAME; or --rehearsal for papers that don't count.")
    people = read_class_list(str(class_list), file_bytes(class_list), course.course.languages)
    today = date.today()  # noqa: DTZ011 (the day on the coordinator's own calendar)
    exam = Exam(scheme, _exam_name(exam_id, scheme, today), _secret(secret_file), attempt)
    names = [person.name for person in people]
    table = read_seats(str(seats), file_bytes(seats), names) if seats else None
    why = (exception or "").strip() or None
    group = Group(place or _default_place(), cohort or exam.id, cohort is not None, by or "", why)
    if not rehearsal and not oral:
        looked_ahead(group, names, datetime.now(UTC))
    known = {} if rehearsal else needs_at(place or _default_place(), cohort or exam.id)
    people = in_own_language(people, known, course.course.languages)
    chosen = list(dict.fromkeys(forms)) or ["print"]
    ways = ways_of(scheme, people, known, chosen, more_time, form_for)
    progress = ProgressLine(quiet=as_json)
    words = course.words[language]
    progress(words.say("command.drawing", count=len(people)))
    drawn = draw_papers(course, exam, people, language, tool=f"tankschool {VERSION}", seats=table)
    made = _Set(course, exam, drawn, ways, rehearsal)
    progress(words.say("command.printing", count=len(people)))
    if oral:
        if not rehearsal:
            archived_set(group, drawn.record.set_id, exam.id, datetime.now(UTC))
        files = _oral(made, oral)
    else:
        each = {learner.number: _forms(made, learner) for learner in drawn.record.learners}
        if not rehearsal:
            _archive(made, each, class_list, group, today)
        files = _files(made, each)
    progress.done()
    if not as_json:
        for learner in drawn.record.learners:
            for line in ways[learner.number].said(learner, words):
                click.echo(line)
    keep = words.say("paper.keep_oral") if oral else words.say("paper.keep_safe")
    return _write(made, files, output, words.say("command.wrote"), keep, as_json=as_json)


def _write(made: _Set, files: Mapping[str, bytes], output: Path, wrote: str, keep: str, *, as_json: bool) -> int:
    set_id = made.drawn.record.set_id
    folder = output / "papers" / f"{made.exam.scheme.id}-{set_id}{'' if 'record.json' in files else '-oral'}"
    write_folder(folder, files)
    paths = [str(folder / name) for name in files]
    if as_json:
        say_json({"format": 1, "exam": made.exam.id, "set": set_id, "archived": not made.rehearsal, "files": paths})
    else:
        click.echo(wrote)
        for path in paths:
            click.echo(f"  {path}")
        click.echo(keep)
    return ExitCode.GOOD


def _scheme(course: CourseContent, scheme_id: str | None) -> Scheme:
    if scheme_id not in course.schemes:
        raise click.UsageError(f"Say which scheme: --scheme {' or '.join(course.schemes)}.")
    scheme = course.schemes[scheme_id or ""]
    if scheme.status == "draft":
        raise RefusedError(
            f"the scheme '{scheme.id}' is a draft: it decides nothing, so there are no papers for it yet"
        )
    return scheme


def _exam_name(exam_id: str | None, scheme: Scheme, today: date) -> str:
    name = exam_id or f"{scheme.id}-{today.isoformat()}"
    if not _EXAM_ID.fullmatch(name):
        raise click.UsageError("The exam's name has small letters, digits and hyphens, at most 60: --exam spring-2031.")
    return name


def _default_place() -> str:
    return str(registry.default_place(os.environ, Path.home(), sys.platform))


def _secret(file: Path | None) -> bytes:
    """The secret of this coordinator's exams; made on first use, for this user's eyes only.

    Raises:
        ProblemsError: a named file that can't be read or is too short.
    """
    path = file or Path(_default_place()).parent / _OWN_FILE
    if file is None and not path.exists():
        path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
        with os.fdopen(handle, "wb") as out:
            out.write(secrets.token_bytes(LEAST_SECRET))
    found = file_bytes(path)
    if len(found) < LEAST_SECRET:
        what = f"the secret has {len(found)} bytes and needs {LEAST_SECRET}"
        raise ProblemsError([Problem(str(path), 0, 0, "short-secret", what, "let the command make one")])
    return found


@cache
def _fonts() -> dict[str, bytes]:
    return font_files()


def _forms(made: _Set, learner: Learner) -> dict[str, bytes]:
    """The files of one paper, by name."""
    scheme, course, set_id = made.exam.scheme, made.course, made.drawn.record.set_id
    figures = paper_figures(course, made.drawn, learner)
    words, minutes = course.words[learner.language], made.ways[learner.number].minutes
    sheet = PrintedPaper(learner, figures, set_id, made.exam.id, minutes, made.rehearsal)
    found: dict[str, bytes] = {}
    for form in made.ways[learner.number].forms:
        if form == "print":
            found[FORMS[form]] = paper_pdf([sheet], scheme, course)
        elif form == "spoken":
            found[FORMS[form]] = spoken_pdf([sheet], scheme, course)
        else:
            title, aids = scheme.title[learner.language], aids_said(scheme, learner, words)
            page = ScreenPaper(learner, figures, set_id, made.exam.id, title, aids, minutes, made.rehearsal)
            found[FORMS[form]] = screen_page(page, words, _fonts()).encode("utf-8")
    return found


def packed(files: Mapping[str, bytes]) -> bytes:
    """The files of one paper as the archive keeps them: the one file as it is, several in a box of fixed bytes."""
    if len(files) == 1:
        return next(iter(files.values()))
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_STORED) as box:
        for name in sorted(files):
            box.writestr(zipfile.ZipInfo(name, _ZIP_TIME), files[name])
    return out.getvalue()


def unpacked(data: bytes) -> dict[str, bytes]:
    """What `packed` was given.

    Raises:
        MachineError: the archived file is damaged.
    """
    if data.startswith(b"%PDF"):
        return {"paper.pdf": data}
    if not data.startswith(b"PK"):
        return {FORMS["screen"]: data}
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as box:
            return {name: box.read(name) for name in box.namelist() if name in FORMS.values()}
    except zipfile.BadZipFile as error:
        raise MachineError(f"the archived paper is damaged: {error}") from None


def _archive(made: _Set, each: Mapping[int, Mapping[str, bytes]], class_list: Path, to: Group, today: date) -> None:
    """Archive the papers of all candidates in one transaction; the same again changes nothing.

    Raises:
        RefusedError: somebody has to wait, or has used up the tries, and there is no exception; whoever sat in another
            cohort would begin to count anew.
    """
    record, scheme, by = made.drawn.record, made.exam.scheme, to.by
    if scheme.retest is not None and made.exam.attempt > scheme.retest.most and to.exception is None:
        raise RefusedError(f"the scheme allows {scheme.retest.most} tries, and this would be try {made.exam.attempt}")
    now = datetime.now(UTC)
    with registry.open_registry(to.place, now=now) as opened:
        if registry.is_empty(opened):
            if by.isdigit():
                raise RefusedError(f"the registry '{to.place}' is new, so nobody is number {by} there: --by NAME")
            first = registry.add_person(opened, registry.NewPerson(by), by=None, now=now)
            registry.give_role(opened, first, "coordinator", by=None, now=now)
        who = registry.coordinator_called(opened, by)
        names = [learner.name for learner in record.learners]
        group = group_in(opened, to, names)
        if scheme.retest is not None and (known := registry.sat_elsewhere(opened, group, names, scheme.id)):
            others = ", ".join(f"{name} (person {key})" for name, key in known)
            raise RefusedError(
                f"somebody of this name sat for '{scheme.id}' before, in another cohort: {others}. The same person: "
                "put them into this cohort first with 'register cohorts join'. Another one: add a village to the name"
            )
        if group is None:
            group = registry.add_cohort(opened, to.cohort, starts_on=today, by=who, now=now)
        registry.import_class_list(
            opened,
            group,
            str(class_list),
            file_bytes(class_list),
            languages=made.course.course.languages,
            by=who,
            now=now,
        )
        about = registry.about_set(record) | {"exam": made.exam.id, "attempt": made.exam.attempt}
        about |= {"secret": secret_mark(made.exam.secret)}
        if own := {str(number): way.data for number, way in made.ways.items() if way.source}:
            about["accommodations"] = own  # by the paper's number, for it names nobody
        sitting = registry.NewSitting(group, record.set_id, today, scheme.id, scheme.version, about)
        files = {number: packed(found) for number, found in each.items()}
        papers = registry.papers_of(record, registry.candidates_called(opened, group), files)
        key = registry.archive_papers(
            opened, sitting, papers, by=who, now=now, retest=scheme.retest, exception=to.exception
        )
        if any(one.pdf != files[one.number] for one in registry.read_papers(opened, key)):
            raise RefusedError(
                f"the exam '{made.exam.id}' is archived with other forms of its papers: make all forms in one run, "
                "print again with --reprint, or give the exam another name"
            )


def _files(made: _Set, each: Mapping[int, Mapping[str, bytes]]) -> dict[str, bytes]:
    """What is written beside the archive: each paper, all for the printer at once, the examiner's key and record."""
    record = made.drawn.record
    files: dict[str, bytes] = {}
    for number, found in each.items():
        files |= {f"{number:03}-{name}": data for name, data in found.items()}
    sheets = [
        PrintedPaper(
            learner, paper_figures(made.course, made.drawn, learner), record.set_id, made.exam.id,
            made.ways[learner.number].minutes, made.rehearsal,
        )
        for learner in record.learners
        if "print" in made.ways[learner.number].forms
    ]  # fmt: skip
    if sheets:
        files["all-print.pdf"] = paper_pdf(sheets, made.exam.scheme, made.course)
    files["key.pdf"] = printed.key_pdf(
        record, made.course, exam=paper_name(made.exam.scheme, made.course.words[record.language])
    )
    files["record.json"] = to_json(record)
    return files


def _oral(made: _Set, names: Sequence[str]) -> dict[str, bytes]:
    """The examiner's sheets for talks on critical skills, and for the recheck near the cut."""
    scheme, record = made.exam.scheme, made.drawn.record
    known = {same_name(learner.name): learner for learner in record.learners}
    strange = [name for name in names if same_name(name) not in known]
    if strange:
        raise click.UsageError(f"'{strange[0]}' is not on the class list.")
    if scheme.oral is None and scheme.talk is None:
        raise RefusedError(f"the scheme '{scheme.id}' has no oral recheck")
    files = {}
    for name in names:
        learner = known[same_name(name)]
        about = scheme, record.set_id, made.course
        if scheme.talk is not None:
            found = talks(made.course, made.exam, learner)
            files[f"{learner.number:03}-talks.pdf"] = talks_pdf(learner, found, recheck_of(scheme.talk), *about)
        if scheme.oral is not None:
            items = oral_questions(made.course, made.exam, learner)
            files[f"{learner.number:03}-oral.pdf"] = oral_pdf(learner, items, recheck_of(scheme.oral), *about)
    return files


def _reprint(number: str, place: str, output: Path, as_json: bool) -> int:
    match = _NUMBER.fullmatch(number.strip().lower())
    if match is None:
        raise click.UsageError("A paper's number looks like 1a2b3c4d-7; it stands at its head.")
    if "://" not in place and not Path(place).exists():
        raise RefusedError(f"there is no registry at '{place}'")
    with registry.open_registry(place, now=datetime.now(UTC)) as opened:
        found = registry.find_paper(opened, match[1], int(match[2]))
    if found.pdf is None:
        raise RefusedError(f"the printed paper {number} is not kept any more; what it asked is")
    files = unpacked(found.pdf)
    folder = output / "papers" / f"reprint-{match[1]}-{match[2]}"
    write_folder(folder, files)
    paths = [str(folder / name) for name in files]
    if as_json:
        say_json({"format": 1, "files": paths})
    for path in () if as_json else paths:
        click.echo(path)
    return ExitCode.GOOD
