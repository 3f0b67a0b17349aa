"""Reading a table that a person saved from a spreadsheet: rows with line numbers, and every fault with its place."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from difflib import get_close_matches

from generator.problems.problem import MOST_REPORTED, Problem, ProblemsError, few
from generator.problems.text_file import LIMIT, decode

_SEPARATORS = {",": "commas", ";": "semicolons", "\t": "tabs"}


@dataclass(frozen=True, slots=True)
class Column:
    """A column that a table may have.

    Args:
        name: as in the first line; capitals and spaces around it don't matter.
        required: whether the table must have it.
        filled: whether every row must have something in it.
    """

    name: str
    required: bool = True
    filled: bool = True


@dataclass(frozen=True, slots=True)
class Row:
    """One row of a table.

    Args:
        file: the table's name, for problems.
        line: where the row starts.
        cells: text by column name, trimmed; an absent column is an empty text.
        places: column of each cell's first character.
    """

    file: str
    line: int
    cells: Mapping[str, str]
    places: Mapping[str, int]

    def __getitem__(self, name: str) -> str:
        return self.cells[name]

    def problem(self, name: str, code: str, what: str, fix: str) -> Problem:
        """A problem at the cell of a column."""
        return Problem(self.file, self.line, self.places.get(name, 0), code, what, fix)


@dataclass(frozen=True, slots=True)
class _Cell:
    text: str
    line: int
    column: int


def read_csv(name: str, data: bytes, columns: Sequence[Column], limit: int = LIMIT) -> tuple[Row, ...]:
    r"""Read a table with a first line of column names.

    Commas, semicolons or tabs may part the cells, as spreadsheet programs of different countries write them; the first
    line decides. Empty lines are passed over.

    Args:
        name: how problems name the file.
        data: its bytes.
        columns: the columns that the table may have.
        limit: most bytes.

    Returns:
        The rows in the file's order; at least one.

    Raises:
        ProblemsError: what `decode` refuses; an unknown, missing or repeated column; a row with too many cells; an
            empty cell that must be filled; a quote never closed; a table without rows. All at once.

    Example:
        >>> columns = [Column("name"), Column("language", required=False)]
        >>> rows = read_csv("class.csv", b"Name;language\nAsha;hi\n", columns)
        >>> rows[0]["name"], rows[0].line
        ('Asha', 2)
    """
    return tuple(each_row(name, data, columns, limit))


def each_row(name: str, data: bytes, columns: Sequence[Column], limit: int = LIMIT) -> Iterator[Row]:
    """The rows of `read_csv` one after the other, for a table so large that they would fill the memory.

    What was made of them is of no use where a problem is raised at last.

    Args:
        name: how problems name the file.
        data: its bytes.
        columns: the columns that the table may have.
        limit: most bytes.

    Raises:
        ProblemsError: as `read_csv`.
    """
    text = decode(name, data, limit)
    table = _cells(name, text, _separator(text, columns))
    head = next(table, None)
    if head is None:
        names = ",".join(column.name for column in columns if column.required)
        raise ProblemsError(
            [Problem(name, 0, 0, "empty-file", "the table is empty", f"start it with the line '{names}'")]
        )
    order, problems = _head(name, head, columns)
    if any(problem.code == "missing-column" for problem in problems):
        deque(table, 0)  # a quote that is never closed goes before all else
        raise ProblemsError(few(name, problems))  # without the column every row would be a problem of its own
    rows = 0
    for line in table:
        row, faults = _row(name, line, order, columns)
        problems += faults
        rows += 1
        if len(problems) > MOST_REPORTED:
            deque(table, 0)
            break
        if not problems:
            yield row
    if not rows:
        problems.append(Problem(name, 1, 1, "no-rows", "the table has column names and no rows", "add a line for each"))
    if problems:
        raise ProblemsError(few(name, problems))


def _separator(text: str, columns: Sequence[Column]) -> str:
    """The sign that splits the first line into the most known names; a comma where it makes no difference."""
    first = next((line for line in text.split("\n") if line.strip()), "")
    known = {column.name for column in columns}

    def hits(sign: str) -> tuple[int, int]:
        names = [part.strip().strip('"').strip().casefold() for part in first.split(sign)]
        return len(known.intersection(names)), len(names)

    return max(_SEPARATORS, key=hits)


def _cells(name: str, text: str, separator: str) -> Iterator[list[_Cell]]:
    """The table's lines as cells; a quoted cell may hold separators, line ends and doubled quotes.

    The library's reader gives no columns, and takes a quote that is never closed for one long cell.
    """
    lines = text.split("\n")
    at = 0
    while at < len(lines):
        line, column, row = lines[at], 0, []
        start = at
        while True:
            lead = column
            while line.startswith(" ", lead):
                lead += 1
            if line[lead : lead + 1] == '"':
                content, at_line, column = _quoted(name, lines, at, lead, separator)
                row.append(_Cell(content.strip(), at + 1, lead + 1))
                at = at_line
                line = lines[at]
            else:
                end = line.find(separator, column)
                end = len(line) if end < 0 else end
                row.append(_Cell(line[column:end].strip(), at + 1, min(lead, end) + 1))
                column = end
            if column >= len(line):
                break
            column += 1
        if any(cell.text for cell in row):
            yield [_Cell(cell.text, start + 1 if cell is row[0] else cell.line, cell.column) for cell in row]
        at += 1


def _quoted(name: str, lines: Sequence[str], at: int, column: int, separator: str) -> tuple[str, int, int]:
    """Text of a quoted cell, and the line and column behind it."""
    parts: list[str] = []
    line, cursor = at, column + 1
    while True:
        end = lines[line].find('"', cursor)
        if end < 0:
            parts.append(lines[line][cursor:] + "\n")
            line, cursor = line + 1, 0
            if line == len(lines):
                what = "a quote is opened and never closed"
                raise ProblemsError(
                    [Problem(name, at + 1, column + 1, "open-quote", what, 'close it with ", or remove it')]
                )
            continue
        parts.append(lines[line][cursor:end])
        if lines[line][end + 1 : end + 2] == '"':
            parts.append('"')
            cursor = end + 2
            continue
        rest = lines[line][end + 1 :]
        gap = len(rest) - len(rest.lstrip(" "))
        if rest.strip(" ") and not rest[gap:].startswith(separator):
            what = "something stands behind the closing quote of a cell"
            raise ProblemsError(
                [Problem(name, line + 1, end + 2, "text-behind-quote", what, 'write a quote inside a cell twice: ""')]
            )
        return "".join(parts), line, end + 1 + gap


def _head(name: str, head: Sequence[_Cell], columns: Sequence[Column]) -> tuple[list[str | None], list[Problem]]:
    """The column name of each cell position (None where it is not known), and what is wrong with the first line."""
    known = [column.name for column in columns]
    order: list[str | None] = []
    problems: list[Problem] = []
    for cell in head:
        if len(problems) > MOST_REPORTED:
            break
        found = cell.text.casefold()
        if not found:
            order.append(None)
        elif found not in known:
            near = get_close_matches(found, [column for column in known if column not in order], n=1)
            fix = f"did you mean '{near[0]}'?" if near else f"remove it; the columns are {', '.join(known)}"
            problems.append(
                Problem(name, cell.line, cell.column, "unknown-column", f"unknown column '{cell.text}'", fix)
            )
            order.append(None)
        elif found in order:
            problems.append(
                Problem(
                    name,
                    cell.line,
                    cell.column,
                    "duplicate-column",
                    f"the column '{found}' stands twice",
                    "keep one of them",
                )
            )
            order.append(None)
        else:
            order.append(found)
    for column in columns:
        if column.required and column.name not in order:
            what = f"the column '{column.name}' is missing"
            problems.append(
                Problem(
                    name,
                    head[0].line,
                    1,
                    "missing-column",
                    what,
                    f"write '{column.name}' into the first line, above its cells",
                )
            )
    return order, problems


def _row(
    name: str, row: Sequence[_Cell], order: Sequence[str | None], columns: Sequence[Column]
) -> tuple[Row, list[Problem]]:
    problems: list[Problem] = []
    cells = {column.name: "" for column in columns}
    places: dict[str, int] = {}
    for cell, column in zip(row, order, strict=False):
        if column is not None:
            cells[column], places[column] = cell.text, cell.column
    extra = next((cell for cell in row[len(order) :] if cell.text), None)
    if extra is not None:
        what = f"the row has {len(row)} cells and the first line {len(order)}"
        problems.append(
            Problem(
                name,
                extra.line,
                extra.column,
                "too-many-cells",
                what,
                'put a cell that holds the separator in quotes: "a, b"',
            )
        )
    for wanted in columns:
        if wanted.filled and wanted.name in order and not cells[wanted.name]:
            what = f"'{wanted.name}' is empty"
            problems.append(
                Problem(name, row[0].line, places.get(wanted.name, 0), "empty-cell", what, "fill it, or remove the row")
            )
    return Row(name, row[0].line, cells, places), problems
