"""The class list: who gets a sheet, and in which language."""

from __future__ import annotations

import unicodedata
from collections.abc import Collection
from dataclasses import dataclass

from generator.problems import Column, Problem, ProblemsError, read_csv

LONGEST_NAME = 90
"""Bytes of UTF-8 that a printed name may have."""


@dataclass(frozen=True, slots=True)
class Person:
    """Someone on the class list; `language` is None where the set's language holds."""

    name: str
    language: str | None = None


def same_name(name: str) -> str:
    """The form in which two writings of one name are equal: any case, any spaces, any way of composing letters.

    Example:
        >>> same_name(" Asha  DEVI ") == same_name("Asha Devi")
        True
    """
    return unicodedata.normalize("NFC", " ".join(name.split())).casefold()


def read_class_list(file: str, data: bytes, languages: Collection[str]) -> tuple[Person, ...]:
    r"""Read a class list: column `name`, and `language` if wanted.

    Args:
        file: how problems name the file.
        data: its bytes.
        languages: codes that the course has.

    Raises:
        ProblemsError: what `read_csv` refuses; a name twice, too long, or that is only a number; an unknown language.

    Example:
        >>> read_class_list("class.csv", b"name,language\nAsha,hi\nBir,\n", ["en", "hi"])
        (Person(name='Asha', language='hi'), Person(name='Bir', language=None))
    """
    people: list[Person] = []
    problems: list[Problem] = []
    seen: dict[str, int] = {}
    for row in read_csv(file, data, [Column("name", filled=False), Column("language", required=False, filled=False)]):
        name, language = " ".join(row["name"].split()), row["language"].casefold()
        if not name:
            problems.append(row.problem("name", "empty-cell", "'name' is empty", "fill it, or remove the row"))
            continue
        first = seen.setdefault(same_name(name), row.line)
        if first != row.line:
            fix = "add a village or a parent's name, so that each sheet finds its owner"
            problems.append(row.problem("name", "duplicate-name", f"'{name}' stands already in line {first}", fix))
        if name.isdigit():
            fix = "write a name: a number would be taken for the number printed on a sheet"
            problems.append(row.problem("name", "name-is-number", f"'{name}' is a number", fix))
        if len(name.encode("utf-8")) > LONGEST_NAME:
            what = f"the name is longer than {LONGEST_NAME} bytes ({len(name)} letters)"
            problems.append(row.problem("name", "name-too-long", what, "shorten it"))
        if language and language not in languages:
            fix = f"write one of {', '.join(languages)}, or leave it empty"
            problems.append(
                row.problem("language", "unknown-language", f"the course has no language '{language}'", fix)
            )
        people.append(Person(name, language or None))
    if problems:
        raise ProblemsError(problems)
    return tuple(people)
