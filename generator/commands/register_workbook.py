"""Spreadsheets: one workbook for people, marks and observations; read as the CSV tables are, with a cell's place."""

from __future__ import annotations

import io
import re
import warnings
import zipfile
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from decimal import Decimal
from pathlib import Path
from typing import Any

from generator.commands.course import file_bytes
from generator.problems import MachineError, Problem, ProblemsError
from generator.registry import to_csv

PEOPLE, MARKS, OBSERVATIONS = "people", "marks", "observations"
COLUMNS: Mapping[str, tuple[str, ...]] = {
    PEOPLE: ("name", "language"),
    MARKS: ("learner", "question", "answer"),
    OBSERVATIONS: ("learner", "practical", "step", "seen"),
}
"""The sheets and their columns: the same as those of the CSV tables."""
WORKBOOK = b"PK\x03\x04"
"""How a workbook's file begins."""
LARGEST_FILE = 20_000_000
LARGEST_INSIDE = 200_000_000
MOST_ROWS = 200_000
_CONTROL = re.compile("[\x00-\x1f\x7f]+")


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet as CSV.

    Args:
        data: one line for each row of the sheet.
        starts: of each row, where each cell begins in its line, counted from 1.
    """

    data: bytes
    starts: Sequence[Sequence[int]]

    def cell(self, line: int, column: int) -> str:
        """The cell that a place of the CSV lies in: `B7`."""
        starts = self.starts[line - 1] if 0 < line <= len(self.starts) else ()
        place = max((i for i, start in enumerate(starts) if start <= max(column, 1)), default=0)
        return f"{_letters(place)}{line}"


@contextmanager
def table_from(path: Path, sheet: str) -> Iterator[tuple[str, bytes]]:
    """The name and the bytes of a table; within, problems of a spreadsheet get the place of its cell.

    Args:
        path: a CSV file, or a workbook that has the sheet.
        sheet: which of its sheets.

    Raises:
        ProblemsError: it can't be read; a formula, an error or a day where a text is meant; and what is raised within.
    """
    data = file_bytes(path)
    if not data.startswith(WORKBOOK):
        yield str(path), data
        return
    found = read_sheet(str(path), data, sheet)
    try:
        yield str(path), found.data
    except ProblemsError as error:
        raise ProblemsError([_placed(problem, found, sheet) for problem in error.problems]) from None


def _placed(problem: Problem, found: Sheet, sheet: str) -> Problem:
    where = f"{sheet}!{found.cell(problem.line, problem.column)}" if problem.line else sheet
    return replace(problem, file=f"{problem.file} {where}", line=0, column=0, what=_lines_are_rows(problem.what))


def _lines_are_rows(what: str) -> str:
    return re.sub(r"\bline (\d+)", r"row \1", what)


def read_sheet(file: str, data: bytes, sheet: str) -> Sheet:
    """One sheet of a workbook as CSV.

    Raises:
        ProblemsError: no workbook, too large, without the sheet; cells that hold no plain text or number.
    """
    book = _open(file, data)
    try:
        names = {name.casefold(): name for name in book.sheetnames}
        if sheet not in names:
            what = f"the workbook has no sheet '{sheet}'"
            fix = f"name it so; it has: {', '.join(book.sheetnames)[:200]}"
            raise ProblemsError([Problem(file, 0, 0, "no-sheet", what, fix)])
        return _as_csv(file, sheet, book[names[sheet]])
    finally:
        book.close()


def _open(file: str, data: bytes) -> Any:
    from openpyxl import load_workbook

    def refused(what: str) -> ProblemsError:
        return ProblemsError([Problem(file, 0, 0, "bad-workbook", what, "save it again as XLSX, or as 'CSV UTF-8'")])

    try:
        if len(data) > LARGEST_FILE:
            raise refused(f"the workbook has {len(data)} bytes, and {LARGEST_FILE} are the most")
        with zipfile.ZipFile(io.BytesIO(data)) as packed:
            if sum(part.file_size for part in packed.infolist()) > LARGEST_INSIDE:
                raise refused("the workbook is packed so densely that it can't be a class's table")
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # about parts of the file that we do not use
            return load_workbook(io.BytesIO(data), read_only=True, data_only=False, keep_links=False)
    except ProblemsError:
        raise
    except Exception as error:  # the library raises whatever its parts raise, on a file that is damaged
        raise refused(f"the workbook can't be read ({type(error).__name__})") from None


def _as_csv(file: str, sheet: str, cells: Any) -> Sheet:
    out = io.StringIO()
    starts: list[list[int]] = []
    problems: list[Problem] = []
    blank = 0
    for number, row in enumerate(cells.iter_rows(), start=1):
        if number > MOST_ROWS:
            what = f"the sheet has more than {MOST_ROWS} rows"
            raise ProblemsError([Problem(f"{file} {sheet}", 0, 0, "too-many-rows", what, "delete empty rows")])
        texts = []
        for place, cell in enumerate(row):
            text, wrong = _text_of(cell)
            texts.append(text)
            if wrong:
                where = f"{file} {sheet}!{_letters(place)}{number}"
                fix = "write it as plain text: format the column as text first, or put ' before it"
                problems.append(Problem(where, 0, 0, "not-text", wrong, fix))
        while texts and not texts[-1]:
            texts.pop()
        blank = blank + 1 if not texts else 0
        if blank > 1000:
            break  # a sheet that was formatted down to its last row
        line, places = _line(texts)
        out.write(line + "\n")
        starts.append(places)
    if problems:
        raise ProblemsError(problems[:50])
    return Sheet(out.getvalue().rstrip("\n").encode("utf-8"), starts)


def _text_of(cell: Any) -> tuple[str, str]:
    """A cell's text as it was typed, and what is wrong with it."""
    value = cell.value
    if value is None:
        return "", ""
    if cell.data_type == "f":
        return "", "a formula stands here"
    if cell.data_type == "e":
        return "", f"the spreadsheet shows an error here: {value}"
    if isinstance(value, datetime | date | time | timedelta):
        return "", f"the spreadsheet made a day or a time of what was typed: {value}"
    if isinstance(value, bool):
        return ("true" if value else "false"), ""
    if isinstance(value, float | int | Decimal):
        number = float(value)
        return (str(int(number)) if number.is_integer() and abs(number) < 1e15 else repr(round(number, 12))), ""
    return _CONTROL.sub(" ", str(value)).strip(), ""


def _line(texts: Sequence[str]) -> tuple[str, list[int]]:
    """A row as a line of CSV, and where its cells begin."""
    cells, places, at = [], [], 1
    for text in texts:
        cell = '"' + text.replace('"', '""') + '"' if any(sign in text for sign in ',;"\t') else text
        cells.append(cell)
        places.append(at)
        at += len(cell) + 1
    return ",".join(cells), places


def _letters(place: int) -> str:
    """A column's letters: A for 0."""
    text = ""
    place += 1
    while place:
        place, rest = divmod(place - 1, 26)
        text = chr(65 + rest) + text
    return text


@dataclass(frozen=True, slots=True)
class Template:
    """What a template is filled with.

    Args:
        notes: lines of the sheet that explains.
        notes_title: its name.
        languages: codes that the course has.
        rows: by sheet, what stands below the column names already.
        seen: words that the column `seen` may have.
    """

    notes: Sequence[str]
    notes_title: str
    languages: Sequence[str]
    rows: Mapping[str, Sequence[Sequence[str]]]
    seen: Sequence[str]


def workbook(template: Template) -> bytes:
    """The workbook: a sheet for each table, all cells as text so that no answer becomes a day, and a sheet of notes."""
    from openpyxl import Workbook
    from openpyxl.styles import Font
    from openpyxl.worksheet.datavalidation import DataValidation

    book = Workbook()
    notes = book.active
    if notes is None:
        raise MachineError("the spreadsheet library made a workbook without a sheet")
    notes.title = template.notes_title
    for number, line in enumerate(template.notes, start=1):
        notes.cell(number, 1, line)
    notes.column_dimensions["A"].width = 100
    for sheet, columns in COLUMNS.items():
        page = book.create_sheet(sheet)
        for place, column in enumerate(columns, start=1):
            page.cell(1, place, column).font = Font(bold=True)
            page.column_dimensions[_letters(place - 1)].width = 24
        rows = template.rows.get(sheet, ())
        for number in range(2, max(len(rows), 200) + 2):
            texts = rows[number - 2] if number - 2 < len(rows) else ()
            for place in range(len(columns)):
                cell = page.cell(number, place + 1)
                cell.number_format = "@"
                if place < len(texts):
                    cell.value = texts[place]
                    cell.data_type = "s"  # a name that begins with = is a name
        page.freeze_panes = "A2"
        allowed = {PEOPLE: ("B", template.languages), OBSERVATIONS: ("D", template.seen)}.get(sheet)
        if allowed is not None:
            words = ",".join(allowed[1])
            choice = DataValidation(type="list", formula1=f'"{words}"', allow_blank=True)
            choice.add(f"{allowed[0]}2:{allowed[0]}5000")
            page.add_data_validation(choice)
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def template_csv(sheet: str, rows: Sequence[Sequence[str]]) -> bytes:
    """One table of the template as CSV that no spreadsheet takes for formulas."""
    return to_csv(COLUMNS[sheet], rows)
