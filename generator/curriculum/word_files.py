"""Reading `course/words/*.yaml`: every text of the interface, the same keys and slots in every language."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from itertools import islice
from typing import Any

from generator.curriculum.files import Reading
from generator.formula import Book, Given, Quantity, Status
from generator.formula.plain import words_in_formulas
from generator.problems import MOST_REPORTED, Loc, Problem, ProblemsError, YamlFile, few, read_yaml
from generator.problems.plain_errors import FORMAT, did_you_mean
from generator.words import Words
from generator.words.language import Wording

FORMS = ("one", "other")
"""Plural forms of both languages."""
_BRACES = re.compile(r"\{[^{}]*\}")
SLOT = re.compile(r"\{([a-z_]+)\}")


def read_words(reading: Reading) -> tuple[dict[str, Words], list[Problem]]:
    """The words of every language of the course, and what is wrong with their files.

    Args:
        reading: the files.
    """
    problems: list[Problem] = []
    texts: dict[str, dict[str, Wording]] = {}
    for language in reading.languages:
        path = f"course/words/{language}.yaml"
        if language in reading.words:
            texts[language], faults = _flat(reading.words[language])
            problems += faults
        elif path not in reading.sources:
            problems.append(
                Problem(path, 0, 0, "file-missing", f"the words of language '{language}' are missing", f"write {path}")
            )
    for language, file in reading.words.items():
        if reading.languages and language not in reading.languages:
            fix = did_you_mean(language, reading.languages)
            problems.append(Problem(file.name, 0, 0, "unknown-language", f"unknown language '{language}'", fix))
    for language in texts:
        problems += few(reading.words[language].name, _against_the_others(reading, texts, language))
    return {language: Words(language, found) for language, found in texts.items()}, problems


def words_of(name: str, language: str, data: bytes) -> Words:
    """The words of one language, for a command that needs nothing else of a course.

    Args:
        name: of the file.
        language: language code.
        data: the file's bytes.

    Raises:
        ProblemsError: everything that is wrong with the file by itself.
    """
    texts, problems = _flat(read_yaml(name, data))
    if problems:
        raise ProblemsError(problems)
    return Words(language, texts)


def loc_of(file: YamlFile, key: str) -> Loc:
    """Path of a dotted key inside its file; of its nearest parent where it is not there.

    A unit such as `kg/m**3` is one key, and so is `0.5`: the longest key that fits is taken at each level.
    """
    value: Any = file.value
    loc: Loc = ()
    rest = key.split(".")
    while rest and isinstance(value, dict):
        for length in range(len(rest), 0, -1):
            part = ".".join(rest[:length])
            if part in value:
                value, loc, rest = value[part], (*loc, part), rest[length:]
                break
        else:
            break
    return loc


def _flat(file: YamlFile) -> tuple[dict[str, Wording], list[Problem]]:
    """The words by dotted key, and what is wrong with the file by itself."""
    if not isinstance(file.value, dict):
        return {}, [file.problem((), "wrong-type", "the words have to be keys and values", "write 'key: text' lines")]
    found: dict[str, Wording] = {}
    return found, few(file.name, [*_format_problems(file), *islice(_flatten(file, found), MOST_REPORTED + 1)])


def _format_problems(file: YamlFile) -> Iterator[Problem]:
    version = file.value.get("format")
    if isinstance(version, int) and version > FORMAT:
        what = f"format {version} is newer than this tool reads"
        yield file.value_problem(("format",), "newer-format", what, "use a newer version of the tool")
    elif version != FORMAT:
        fix = f"write 'format: {FORMAT}' as the first line"
        yield file.problem(("format",), "wrong-value", f"the words file needs 'format: {FORMAT}'", fix)


def _flatten(file: YamlFile, found: dict[str, Wording]) -> Iterator[Problem]:
    """Fill `found` with the words by dotted key; a word that is none is kept as an empty text."""

    def walk(value: Any, loc: Loc) -> Iterator[Problem]:
        key = ".".join(map(str, loc))
        if isinstance(value, dict) and value and not set(value) & set(FORMS):
            for part, below in value.items():
                yield from walk(below, (*loc, part))
        elif isinstance(value, dict) and value:
            found[key] = {form: str(value.get(form, "")) for form in FORMS}
            yield from _form_problems(file, value, loc)
            yield from _slot_problems(file, " ".join(map(str, value.values())), loc)
        elif isinstance(value, str) and value.strip():
            found[key] = value
            yield from _slot_problems(file, value, loc)
        else:
            found[key] = ""
            what = f"the word '{key}' is no text"
            yield file.value_problem(loc, "wrong-type", what, "write a text; put a number or true in quotes")

    for part, below in file.value.items():
        if part != "format":
            yield from walk(below, (part,))


def _slot_problems(file: YamlFile, text: str, loc: Loc) -> Iterator[Problem]:
    for piece in _BRACES.findall(text):
        if not SLOT.fullmatch(piece):
            what = f"'{piece}' in the word '{'.'.join(map(str, loc))}' is no slot"
            fix = "name a slot with small Latin letters and underlines: {count}"
            yield file.value_problem(loc, "unknown-slot", what, fix)


def _form_problems(file: YamlFile, value: Mapping[str, Any], loc: Loc) -> Iterator[Problem]:
    name = ".".join(map(str, loc))
    for form, text in value.items():
        if form not in FORMS:
            yield file.problem(
                (*loc, form),
                "unknown-plural-form",
                f"unknown plural form '{form}' of '{name}'",
                did_you_mean(form, FORMS),
            )
        elif not isinstance(text, str) or not text.strip():
            yield file.value_problem(
                (*loc, form), "wrong-type", f"the form '{form}' of '{name}' is no text", "write a text"
            )
    for form in FORMS:
        if form not in value:
            yield file.problem(
                loc, "missing-plural-form", f"'{name}' lacks the plural form '{form}'", f"add a line '{form}: ...'"
            )


def slots(wording: Wording) -> frozenset[str]:
    """All the slots of a text or of its plural forms."""
    return frozenset(SLOT.findall(wording if isinstance(wording, str) else " ".join(wording.values())))


def _against_the_others(
    reading: Reading, texts: Mapping[str, Mapping[str, Wording]], language: str
) -> Iterator[Problem]:
    """Words that this language lacks, and slots that differ from those of the first language that has the word."""
    file, ours = reading.words[language], texts[language]
    for key in dict.fromkeys(key for words in texts.values() for key in words):
        first = next(other for other in texts if key in texts[other])
        there = reading.words[first].name
        if key not in ours:
            what = f"the word '{key}' is missing in language '{language}'"
            yield file.problem(loc_of(file, key), "missing-word", what, f"add it; {there} has it")
        elif first != language and ours[key] and texts[first][key] and slots(ours[key]) != slots(texts[first][key]):
            shown = [_slots_shown(ours[key]), _slots_shown(texts[first][key])]
            what = f"'{key}' has the slots {shown[0]} here and {shown[1]} in {there}"
            yield file.value_problem(loc_of(file, key), "different-slots", what, "use the same slots in every language")


def _slots_shown(wording: Wording) -> str:
    return " ".join(f"{{{slot}}}" for slot in sorted(slots(wording))) or "none"


def wanted_words(book: Book, figures: Sequence[str]) -> dict[str, tuple[str, ...]]:
    """By family, the members that the calculation module and the drawings need a word for.

    Args:
        book: the calculation module.
        figures: keys of the drawings.
    """
    entries: list[Given | Quantity] = [*book.givens.values(), *book.quantities.values()]
    return {
        "quantity": tuple(entry.name for entry in entries),
        "unit": tuple(dict.fromkeys(entry.unit for entry in entries if entry.unit)),
        "in_formula": words_in_formulas(book),
        "status": tuple(status.value for status in Status),
        "misconception": tuple(f"{name}.{part}" for name in book.misconceptions for part in ("mistake", "hill")),
        "figure": tuple(f"{key}.{part}" for key in figures for part in ("title", "description")),
    }


def coverage(reading: Reading, words: Mapping[str, Words], wanted: Mapping[str, Sequence[str]]) -> Iterator[Problem]:
    """A problem for everything that has to have a word and has none in the course's first language.

    The other languages are held against the first by `read_words`.
    """
    for language in list(words)[:1]:
        file = reading.words[language]
        for family, members in wanted.items():
            for member in members:
                key = f"{family}.{member}"
                if key not in words[language]:
                    what = f"there is no word for the {family} '{member.split('.')[0]}'"
                    yield file.problem(loc_of(file, key), "missing-word", what, f"add '{key}' in every language")
