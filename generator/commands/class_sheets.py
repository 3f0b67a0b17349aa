"""Sheets of a class: personal worksheets with keys and marking strips, by several processes; and a workshop's pack.

Names are held against everything that could go wrong before the first sheet is made. A file holds at most 200 learners,
so that no printer chokes; each file is made by a process that keeps only its own learners in memory.
"""

from __future__ import annotations

import hashlib
import re
import unicodedata
from collections.abc import Collection, Iterable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from multiprocessing import get_context
from os import cpu_count
from pathlib import Path
from tempfile import TemporaryDirectory

import click

from generator import VERSION
from generator import sheets as printed
from generator.calculations import BOOK
from generator.commands.course import file_bytes
from generator.commands.own_tank import workshop_course
from generator.commands.tool import ProgressLine, say_json, write_folder
from generator.curriculum import CourseContent
from generator.exercises import (
    LARGEST_RECORD,
    Person,
    Record,
    asked_of,
    formulas_hash,
    from_json,
    json_pieces,
    learner_json,
    make_set,
    read_class_list,
    same_name,
    to_json,
)
from generator.problems import Column, ExitCode, Problem, ProblemsError, RefusedError, decode, few, read_csv, seen
from generator.sheets.worksheet import refuse_unprintable
from generator.sheets.workshop_file import Workshop, read_workshop
from generator.site.swap import swap_in

MOST_IN_A_FILE = 200
"""Learners."""
_ALONE = 60
"""Learners that one process prints before others have begun."""
_FORMULA = "=+-@"
"""Signs that make a spreadsheet take a cell for a formula."""
_UNSEEN = ("unseen-character", "lost-letter")
_CODE = re.compile("U\\+[0-9A-F]+")
_ACCENT = re.compile("[\u0300-\u036f]")
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
        data = _composed(decode(file, data)).encode("utf-8")
    except ProblemsError as error:
        problems += error.problems
        if any(problem.code not in _UNSEEN for problem in problems):
            raise
        data = seen(data, "_")  # what else is wrong is told as well
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
        except RefusedError as error:
            signs = ", ".join(dict.fromkeys(_CODE.findall(str(error))))
            what = f"'{name}' has signs that can't be printed: {signs}"
            problems.append(row.problem("name", "unprintable-name", what, "write it in Latin or Devanagari letters"))
    if problems:
        raise ProblemsError(few(file, sorted(problems)))
    return people


def _composed(text: str) -> str:
    """Letters and their accents as one sign each, as the font has them; some computers save them as two."""
    return unicodedata.normalize("NFC", text) if _ACCENT.search(text) else text


def write_class_set(
    course: CourseContent, class_list: Path, asked: Asked, output: Path, progress: ProgressLine,
    processes: int | None = None,
) -> list[Path]:  # fmt: skip
    """Worksheets, key, marking strips and record of a class, in a folder of their own.

    Learners are made and kept on the disk so many at a time, so that a large class takes no more memory than a small.

    Raises:
        ProblemsError: the class list, before anything is written.
        UsageError: the module asks nothing of the kind, or nobody has such a number or name.
        RefusedError: the record would be too large to mark from.
    """
    people = read_people(str(class_list), file_bytes(class_list), course.course.languages)
    words = course.words[asked.language]
    wanted = _wanted(people, asked.learners)
    progress(words.say("command.drawing", count=len(people)))

    def made() -> Iterator[Record]:
        for start in range(0, len(people), MOST_IN_A_FILE):
            yield make_set(
                course, asked.module, people[start : start + MOST_IN_A_FILE], asked.seed, asked.language,
                tool=f"tankschool {VERSION}", questions=asked.questions, competencies=asked.competencies,
                first=start + 1,
            )  # fmt: skip

    names: list[str] = []
    with TemporaryDirectory(prefix="tankschool-set-") as spool:
        kept = _kept(made(), Path(spool) / "learners")
        if not kept.asks:
            raise click.UsageError(
                f"The module '{asked.module}' asks nothing that shows {', '.join(asked.competencies)}."
            )
        if kept.size > LARGEST_RECORD:
            raise RefusedError(words.say("command.record_too_large", count=len(people)))
        set_id = kept.set_id()
        progress(words.say("command.printing", count=len(wanted)))
        folder = output / "sheets" / f"{asked.module}-{set_id}"

        def fill(fresh: Path) -> None:
            names.extend(_print_kept(kept, course, fresh, set_id, wanted, personal=asked.personal, processes=processes))
            with (fresh / "record.json").open("wb") as file:
                file.writelines(kept.pieces())
            names.append("record.json")

        swap_in(folder, fill)
    return [folder / name for name in names]


@dataclass(frozen=True, slots=True)
class _Kept:
    """A set whose learners lie in a file, one behind the other.

    Args:
        head: the record without its learners.
        file: of the learners, each as the record has it.
        ends: number and name of each learner, and where it ends in the file.
        asks: whether anybody is asked anything.
    """

    head: Record
    file: Path
    ends: tuple[tuple[int, str, int], ...]
    asks: bool

    @property
    def size(self) -> int:
        """Bytes of all learners."""
        return self.ends[-1][2] if self.ends else 0

    def learners(self, start: int = 0, end: int | None = None) -> Iterator[bytes]:
        """Learners by their place in the set."""
        at = self.ends[start - 1][2] if start else 0
        with self.file.open("rb") as file:
            file.seek(at)
            for _, _, until in self.ends[start:end]:
                yield file.read(until - at)
                at = until

    def pieces(self) -> Iterator[bytes]:
        """The whole record's file."""
        return json_pieces(self.head, self.learners())

    def set_id(self) -> str:
        """As `Record.set_id`."""
        total = hashlib.sha256()
        for piece in self.pieces():
            total.update(piece)
        return total.hexdigest()[:8]


def _kept(parts: Iterable[Record], file: Path) -> _Kept:
    """The parts of a set, made one after the other, as one set on the disk."""
    head: Record | None = None
    asks: frozenset[str] = frozenset()
    ends: list[tuple[int, str, int]] = []
    at, anything = 0, False
    with file.open("wb") as out:
        for part in parts:
            head = head or part.model_copy(update={"learners": ()})
            asks |= asked_of(part.learners)
            for learner in part.learners:
                at += out.write(learner_json(learner))
                ends.append((learner.number, learner.name, at))
                anything = anything or bool(learner.items)
    assert head is not None  # noqa: S101 (a class list has a name)
    return _Kept(head.model_copy(update={"formulas": formulas_hash(BOOK, asks)}), file, tuple(ends), anything)


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
    numbers = wanted or [learner.number for learner in record.learners]
    with TemporaryDirectory(prefix="tankschool-set-") as spool:
        kept = _kept([record], Path(spool) / "learners")
        return _print_kept(kept, course, folder, record.set_id, numbers, personal=personal, processes=processes)


def _print_kept(
    kept: _Kept, course: CourseContent, folder: Path, set_id: str, wanted: Collection[int], *, personal: bool,
    processes: int | None,
) -> list[str]:  # fmt: skip
    """Print the wanted learners of a set, and return the names of the files, in order."""
    asked = frozenset(wanted)
    digits = max(3, len(str(len(kept.ends))))
    places = [place for place, (number, _, _) in enumerate(kept.ends) if number in asked]
    size = 1 if personal else MOST_IN_A_FILE
    work: list[_Job] = []
    for start in range(0, len(places), size):
        some = places[start : start + size]
        end = ""
        if personal:
            number, name, _ = kept.ends[some[0]]
            end = "-".join(["", f"{number:0{digits}d}", *([slug(name)] if slug(name) else [])])
        elif len(places) > size:
            end = f"-{start + 1:04d}-{start + len(some):04d}"
        work += [_Job(kept, tuple(some), kind, folder / f"{kind}{end}.pdf", set_id) for kind in _KINDS]
    many = processes if processes is not None else (cpu_count() or 1) if len(places) > _ALONE else 1
    if many == 1:
        for job in work:
            job.print(course)
    else:
        with ProcessPoolExecutor(many, get_context("spawn"), _begin, (course, kept)) as pool:
            list(pool.map(_print_here, [(job.places, job.kind, job.file, job.set_id) for job in work]))
    return sorted(job.file.name for job in work)


@dataclass(frozen=True, slots=True)
class _Job:
    """One file to print.

    Args:
        kept: the set.
        places: of its learners in the set.
        kind: of sheet.
        file: that is written.
        set_id: of the whole set.
    """

    kept: _Kept
    places: tuple[int, ...]
    kind: str
    file: Path
    set_id: str

    def print(self, course: CourseContent) -> None:
        """Read the learners back and print their sheets."""
        some = [text for place in self.places for text in self.kept.learners(place, place + 1)]
        record = from_json("record", b"".join(json_pieces(self.kept.head, some)))
        self.file.write_bytes(_KINDS[self.kind](record, course, set_id=self.set_id))


_here: list[tuple[CourseContent, _Kept]] = []
"""The course and the set of a printing process."""


def _begin(course: CourseContent, kept: _Kept) -> None:
    _here.append((course, kept))


def _print_here(job: tuple[tuple[int, ...], str, Path, str]) -> None:
    course, kept = _here[0]
    _Job(kept, *job).print(course)


def _wanted(people: Sequence[Person], asked: Sequence[str]) -> list[int]:
    """Numbers of the learners that were asked for by number or name; all where none was."""
    if not asked:
        return list(range(1, len(people) + 1))
    known = {same_name(person.name): number for number, person in enumerate(people, start=1)}
    known |= {str(number): number for number in range(1, len(people) + 1)}
    strange = [name for name in asked if same_name(name) not in known]
    if strange:
        raise click.UsageError(f"Nobody on the class list has the number or name '{strange[0]}'.")
    return sorted({known[same_name(name)] for name in asked})


def write_workshop(
    course: CourseContent, file: Path, class_list: Path | None, seed: str | None, output: Path, language: str | None,
    *, as_json: bool,
) -> int:  # fmt: skip
    """The pack of a workshop and each of its sheets, in a folder of their own.

    Args:
        course: the course.
        file: of the workshop.
        class_list: of its learners.
        seed: any text.
        output: where the folder is made.
        language: in which it is printed, where that is not as the file says.
        as_json: whether a program reads what is told.

    Raises:
        ProblemsError: what is wrong with any of the files.
    """
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
    other = language is not None and language != found.language
    if language is not None and other:
        found = found.in_language(language)
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
    named = f"workshop-{slug(found.file.name) or found.file.dates[0]}-{found.file.dates[0]}"
    folder = output / "sheets" / (f"{named}-{found.language}" if other else named)
    write_folder(folder, files)
    if as_json:
        say_json({"format": 1, "files": [str(folder / name) for name in files], "seed": seed})
        return ExitCode.GOOD
    click.echo(words.say("command.wrote"))
    for name in files:
        click.echo(f"  {folder / name}")
    click.echo(words.say("command.keep_the_record"))
    return ExitCode.GOOD
