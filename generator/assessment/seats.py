"""Who sits where: beside, before and behind each other nobody gets the same numbers."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from generator.exercises import same_name
from generator.problems import Column, Problem, ProblemsError, Row, read_csv

Seat = tuple[int, int]
"""Row, counted from the front, and seat in it, counted from one side."""
_MOST = 500


def read_seats(file: str, data: bytes, names: Sequence[str]) -> dict[str, Seat]:
    r"""Read a seat list: columns `learner`, `row`, `seat`.

    Args:
        file: how problems name it.
        data: its bytes.
        names: the class list; a learner is a name, or its number in the list.

    Raises:
        ProblemsError: what `read_csv` refuses; an unknown learner, one with two seats or none; two on one seat; a row
            or seat that is no number from 1.

    Example:
        >>> read_seats("seats.csv", b"learner,row,seat\nAsha,1,1\nBir,1,2\n", ["Asha", "Bir"])
        {'Asha': (1, 1), 'Bir': (1, 2)}
    """
    known = {same_name(name): name for name in names} | {str(i): name for i, name in enumerate(names, start=1)}
    found: dict[str, Seat] = {}
    places: dict[Seat, str] = {}
    problems: list[Problem] = []
    for row in read_csv(file, data, [Column("learner"), Column("row"), Column("seat")]):
        name = known.get(same_name(row["learner"]), "")
        if not name:
            what = f"'{row['learner']}' is not on the class list"
            problems.append(row.problem("learner", "unknown-learner", what, "write the name as it stands there"))
        numbers = [_count(row, column, problems) for column in ("row", "seat")]
        if not name or None in numbers:
            continue
        seat = (numbers[0] or 0, numbers[1] or 0)
        if name in found:
            what = f"'{name}' has a seat already"
            problems.append(row.problem("learner", "two-seats", what, "keep one of the two lines"))
        elif seat in places:
            what = f"row {seat[0]}, seat {seat[1]} is the seat of '{places[seat]}'"
            problems.append(row.problem("seat", "seat-taken", what, "give one of them another seat"))
        else:
            found[name] = seat
            places[seat] = name
    problems += [
        Problem(file, 0, 0, "no-seat", f"'{name}' has no seat", "add a line, so that neighbours are known")
        for name in names
        if name not in found and not problems
    ]
    if problems:
        raise ProblemsError(problems)
    return found


def _count(row: Row, column: str, problems: list[Problem]) -> int | None:
    text = row[column]
    if text.isascii() and text.isdigit() and len(text) <= 3 and 1 <= int(text) <= _MOST:
        return int(text)
    what = f"'{text}' is no {column}"
    problems.append(row.problem(column, "not-a-seat", what, f"write a whole number from 1 to {_MOST}"))
    return None


def neighbours(seats: Mapping[str, Seat]) -> dict[str, tuple[str, ...]]:
    """For each name those who sit beside, before and behind.

    Example:
        >>> neighbours({"Asha": (1, 1), "Bir": (1, 2), "Chanda": (2, 2), "Deva": (3, 4)})
        {'Asha': ('Bir',), 'Bir': ('Asha', 'Chanda'), 'Chanda': ('Bir',), 'Deva': ()}
    """
    at = {seat: name for name, seat in seats.items()}
    found = {}
    for name, (row, seat) in seats.items():
        around = ((row, seat - 1), (row, seat + 1), (row - 1, seat), (row + 1, seat))
        found[name] = tuple(at[place] for place in around if place in at)
    return found
