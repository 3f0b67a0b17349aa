"""Sheets of a class: personal worksheets with keys and marking strips, by several processes; and a workshop's pack.

Names are held against everything that could go wrong before the first sheet is made. A file holds at most 200 learners,
so that no printer chokes; each file is made by a process that keeps only its own learners in memory.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Collection, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from multiprocessing import get_context
from os import cpu_count
from pathlib import Path

import click

from generator import VERSION, curriculum
from generator import sheets as printed
from generator.commands.course import file_bytes
from generator.commands.own_tank import workshop_course
from generator.commands.tool import ProgressLine, say_json, write_folder
from generator.curriculum import CourseContent
from generator.exercises import Person, Record, from_json, make_set, read_class_list, same_name, to_json
from generator.problems import Column, ExitCode, Problem, ProblemsError, RefusedError, few, read_csv
from generator.sheets.worksheet import refuse_unprintable
from generator.sheets.workshop_file import Workshop, read_workshop
from generator.site.swap import swap_in

MOST_IN_A_FILE = 200
"""Learners."""
_ALONE = 60
"""Learners that one process prints before others could have read the course."""
_FORMULA = "=+-@"
"""Signs that make a spreadsheet take a cell for a formula."""
_NOT_IN_A_NAME = re.compile(r"[^a-z0-9]+")
_KINDS = {"worksheets": printed.worksheet_pdf, "key": printed.key_pdf, "marking-strips": printed.strip_pdf}


@dataclass(frozen=True, slots=True)
class Asked:
    """What is printed for a class.

    Args:
        module: whose questions are asked.
        language: of those without one of their own.
        seed: any text.
        questions: how many each; 0 for all.
        competencies: only what shows these; none for all.
        learners: numbers or names of those whose sheets are printed; none for all.
        personal: whether each learner gets a file.
    """

    module: str
    language: str
    seed: str
    questions: int = 0
    competencies: Sequence[str] = ()
    learners: Sequence[str] = ()
    personal: bool = False


def slug(name: str) -> str:
    """A name as part of a file name: ASCII letters and digits; empty for a name without any.

    Example:
        >>> slug("José Núñez"), slug("सीता")
        ('jose-nunez', '')
    """
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode("ascii")
    return _NOT_IN_A_NAME.sub("-", plain.lower()).strip("-")[:20].strip("-")


def read_people(file: str, data: bytes, languages: Collection[str]) -> tuple[Person, ...]:
    """A class list whose names can all be printed.

    Args:
        file: how problems name it.
        data: its bytes.
        languages: codes that the course has.

    Raises:
        ProblemsError: what `read_class_list` refuses, cells that a spreadsheet would take for formulas, and names with
            signs that the course's font does not have: all of them, by line.
    """
    problems: list[Problem] = []
    people: tuple[Person, ...] = ()
    try:
        people = read_class_list(file, data, languages)
    except ProblemsError as error:
        problems += error.problems
    try:
        rows = read_csv(file, data, [Column("name", filled=False), Column("language", required=False, filled=False)])
    except ProblemsError:
        rows = ()  # told above
    for row in rows:
        name = row["name"]
        if name[:1] in _FORMULA and name:
            what = f"'{name[:30]}' begins like a formula of a spreadsheet"
            problems.append(row.problem("name", "formula", what, "write the name itself"))
        try:
            refuse_unprintable([name])
        except RefusedError:
            what = f"'{name}' has signs that can't be printed"
            problems.append(row.problem("name", "unprintable-name", what, "write it in Latin or Devanagari letters"))
    if problems:
        raise ProblemsError(few(file, sorted(problems)))
    return people


def write_class_set(
    course: CourseContent, class_list: Path, asked: Asked, output: Path, progress: ProgressLine
) -> list[Path]:
    """Worksheets, key, marking strips and record of a class, in a folder of their own.

    Raises:
        ProblemsError: the class list, before anything is written.
        UsageError: the module asks nothing of the kind, or nobody has such a number or name.
    """
    people = read_people(str(class_list), file_bytes(class_list), course.course.languages)
    words = course.words[asked.language]
    progress(words.say("command.drawing", count=len(people)))
    record = make_set(
        course, asked.module, people, asked.seed, asked.language, tool=f"tankschool {VERSION}",
        questions=asked.questions, competencies=asked.competencies,
    )  # fmt: skip
    if not any(learner.items for learner in record.learners):
        raise click.UsageError(f"The module '{asked.module}' asks nothing that shows {', '.join(asked.competencies)}.")
    wanted = _wanted(record, asked.learners)
    progress(words.say("command.printing", count=len(wanted)))
    folder = output / "sheets" / f"{asked.module}-{record.set_id}"
    names: list[str] = []

    def fill(fresh: Path) -> None:
        names.extend(print_set(record, course, fresh, wanted, personal=asked.personal))
        (fresh / "record.json").write_bytes(to_json(record))
        names.append("record.json")

    swap_in(folder, fill)
    return [folder / name for name in names]


def print_set(
    record: Record, course: CourseContent, folder: Path, wanted: Collection[int] = (), *, personal: bool = False,
    processes: int | None = None,
) -> list[str]:  # fmt: skip
    """Print the sheets of a set into a folder.

    Args:
        record: of the set.
        course: that it was made from.
        folder: that is there.
        wanted: numbers of the learners; none for all.
        personal: whether each learner gets a file.
        processes: how many; without it, one for each core where the class is large.

    Returns:
        Names of the files, in order.
    """
    set_id = record.set_id
    learners = [learner for learner in record.learners if not wanted or learner.number in wanted]
    size = 1 if personal else MOST_IN_A_FILE
    jobs: list[tuple[list[tuple[str, str]], bytes]] = []
    for start in range(0, len(learners), size):
        some = learners[start : start + size]
        end = ""
        if personal:
            end = "-".join(["", f"{some[0].number:03d}", *([slug(some[0].name)] if slug(some[0].name) else [])])
        elif len(learners) > size:
            end = f"-{start + 1:04d}-{start + len(some):04d}"
        part = to_json(record.model_copy(update={"learners": tuple(some)}))
        jobs += [([(kind, f"{kind}{end}.pdf")], part) for kind in _KINDS]
    many = processes if processes is not None else (cpu_count() or 1) if len(learners) > _ALONE else 1
    work = [(files, part, set_id, folder) for files, part in jobs]
    if many == 1:
        for job in work:
            _print(course, *job)
    else:
        with ProcessPoolExecutor(many, get_context("spawn"), _begin, (course.reading.root,)) as pool:
            list(pool.map(_print_here, work))
    return sorted(name for files, _ in jobs for _, name in files)


_here: list[CourseContent] = []
"""The course of a printing process."""


def _begin(root: Path) -> None:
    loaded = curriculum.load(root)
    if loaded.content is None:
        raise ProblemsError(loaded.problems)
    _here.append(loaded.content)


def _print_here(job: tuple[Sequence[tuple[str, str]], bytes, str, Path]) -> None:
    _print(_here[0], *job)


def _print(course: CourseContent, files: Sequence[tuple[str, str]], part: bytes, set_id: str, folder: Path) -> None:
    record = from_json("record", part)
    for kind, name in files:
        (folder / name).write_bytes(_KINDS[kind](record, course, set_id=set_id))


def _wanted(record: Record, asked: Sequence[str]) -> list[int]:
    """Numbers of the learners that were asked for by number or name; all where none was."""
    if not asked:
        return [learner.number for learner in record.learners]
    known = {same_name(learner.name): learner.number for learner in record.learners}
    known |= {str(learner.number): learner.number for learner in record.learners}
    strange = [name for name in asked if same_name(name) not in known]
    if strange:
        raise click.UsageError(f"Nobody on the class list has the number or name '{strange[0]}'.")
    return sorted({known[same_name(name)] for name in asked})


def write_workshop(
    course: CourseContent, file: Path, class_list: Path | None, seed: str | None, output: Path, *, as_json: bool
) -> int:
    """The pack of a workshop and each of its sheets, in a folder of their own."""
    data = file_bytes(file)
    problems: list[Problem] = []
    people: tuple[Person, ...] = ()
    found: Workshop | None = None
    try:
        found = read_workshop(str(file), data, course)
    except ProblemsError as error:
        problems += error.problems
    if class_list is not None:
        try:
            people = read_people(str(class_list), file_bytes(class_list), course.course.languages)
        except ProblemsError as error:
            problems += error.problems
    if found is not None and people and len(people) != found.file.group:
        what = f"the group has {found.file.group} learners, and the class list {len(people)} names"
        problems.append(Problem(str(class_list), 0, 0, "group-and-list", what, "make both the same"))
    if problems or found is None:
        raise ProblemsError(problems)
    words = course.words[found.language]
    if not people:
        people = tuple(Person(f"{words.say('workshop.learner')} {n}") for n in range(1, found.file.group + 1))
    seed = seed or f"{found.file.name} {found.file.dates[0]}"
    records = {
        module: make_set(
            course, module, people, seed, found.language, tool=f"tankschool {VERSION}", questions=found.file.questions
        )
        for module in found.file.modules
    }
    own = [handout.id for handout in course.handouts.values() if handout.module in found.file.modules]
    course = workshop_course(course, found, list(dict.fromkeys([*own, *found.file.handouts])))
    files = printed.Pack(found, course, records, data).files()
    for module, record in records.items():
        files[f"marking-strips-{module}.pdf"] = printed.strip_pdf(record, course)
        files[f"record-{module}.json"] = to_json(record)
    folder = output / "sheets" / f"workshop-{slug(found.file.name) or found.file.dates[0]}-{found.file.dates[0]}"
    write_folder(folder, files)
    if as_json:
        say_json({"format": 1, "files": [str(folder / name) for name in files], "seed": seed})
        return ExitCode.GOOD
    click.echo(words.say("command.wrote"))
    for name in files:
        click.echo(f"  {folder / name}")
    click.echo(words.say("command.keep_the_record"))
    return ExitCode.GOOD
