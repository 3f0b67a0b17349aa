"""Finding and reading the files of the three content folders, each into its model, with all problems kept."""

from __future__ import annotations

import os
from collections.abc import Iterator
from dataclasses import dataclass, field
from fnmatch import fnmatchcase
from pathlib import Path
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError

from generator.curriculum.models import Content
from generator.curriculum.recordings import MOST_BYTES, sound_problems
from generator.curriculum.schemas import KINDS
from generator.problems import Loc, Problem, ProblemsError, YamlFile, decode, few, read_bytes, read_yaml
from generator.problems.plain_errors import problems_of

FOLDERS = ("course", "quizzes", "handouts")
_INSIDE: dict[str, tuple[tuple[str, str], ...]] = {
    "competencies": (("competency", "competencies"),),
    "bank": (("question", "questions"),),
    "module": (("caution", "cautions"),),
    "glossary": (("term", "terms"),),
    "faults": (("fault", "faults"),),
}
"""Kinds of file that hold lists of things with ids of their own: kind of thing, and the list's key."""
_ONLY_ONE = ("glossary", "faults")
"""Kinds of which a course has at most one file: kept under the kind's own name."""
_IGNORED = ("README.md", "Thumbs.db")

AnyModel = TypeVar("AnyModel", bound=BaseModel)


@dataclass(frozen=True, slots=True)
class Found:
    """One thing of the content and where it stands.

    Args:
        model: the thing.
        file: the file that holds it.
        loc: path to it inside the file.
    """

    model: Content
    file: YamlFile
    loc: Loc


@dataclass
class Reading:
    """All that was read, good or not.

    Args:
        root: folder that holds the three content folders.
        languages: the course's languages, even where another line of its file is wrong.
        course: the course file's model and place, or None where it can't be used.
        things: by kind and id, all things whose file is good.
        ids: by kind, every id that the files name, also where the rest of the file is wrong, and its place.
        unreadable: kinds of which a file could not be read at all: their ids are not known.
        texts: text of every Markdown file by its path.
        sounds: bytes of every good recording by its path.
        words: the words files by language.
        sources: bytes of every file read, by path.
        folders: folder name below `course/modules/` by module id.
        problems: everything found so far.
    """

    root: Path
    languages: tuple[str, ...] = ()
    course: Found | None = None
    things: dict[str, dict[str, Found]] = field(default_factory=dict)
    ids: dict[str, dict[str, tuple[YamlFile, Loc]]] = field(default_factory=dict)
    unreadable: set[str] = field(default_factory=set)
    texts: dict[str, str] = field(default_factory=dict)
    sounds: dict[str, bytes] = field(default_factory=dict)
    words: dict[str, YamlFile] = field(default_factory=dict)
    sources: dict[str, bytes] = field(default_factory=dict)
    folders: dict[str, str] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)

    def all(self, kind: str, model: type[AnyModel]) -> Iterator[tuple[str, AnyModel, Found]]:
        """Every good thing of a kind, with its id."""
        for name, found in self.things.get(kind, {}).items():
            if isinstance(found.model, model):
                yield name, found.model, found

    def get(self, kind: str, name: str, model: type[AnyModel]) -> AnyModel | None:
        """A good thing by its id."""
        found = self.things.get(kind, {}).get(name)
        return found.model if found is not None and isinstance(found.model, model) else None


def read(root: Path) -> Reading:
    """Read everything below `course/`, `quizzes/` and `handouts/`.

    Args:
        root: folder that holds them.
    """
    reading = Reading(root)
    paths = _walk(root)
    reading.languages = _languages(reading, paths)
    for path in paths:
        kind = next((kind for kind, (where, _) in KINDS.items() if _matches(path, where)), None)
        if kind is not None:
            _read_model(reading, path, kind)
        elif _matches(path, "course/words/*.yaml"):
            file = _read_yaml(reading, path)
            if file is not None:
                reading.words[Path(path).stem] = file
        elif _matches(path, "course/modules/*/lesson.*.md") or _matches(path, "handouts/*.md"):
            _read_text(reading, path)
        elif _matches(path, "course/modules/*/audio/*"):
            _read_sound(reading, path)
        else:
            fix = _nearest_place(path)
            reading.problems.append(Problem(path, 0, 0, "stray-file", "this file has no place in the course", fix))
    if "course/course.yaml" not in paths:
        reading.problems.append(
            Problem(
                "course/course.yaml",
                0,
                0,
                "file-missing",
                "the course file is missing",
                "write it, or check the folder",
            )
        )
    return reading


def _walk(root: Path) -> list[str]:
    """Paths of all files, sorted, with forward slashes; hidden files and READMEs are no content."""
    paths: list[str] = []
    for folder in FOLDERS:
        for where, inside, names in os.walk(root / folder):
            inside[:] = [name for name in inside if not name.startswith(".")]
            paths += [
                (Path(where) / name).relative_to(root).as_posix()
                for name in names
                if not name.startswith(".") and name not in _IGNORED
            ]
    return sorted(paths)


def _matches(path: str, pattern: str) -> bool:
    return path.count("/") == pattern.count("/") and fnmatchcase(path, pattern)


def _nearest_place(path: str) -> str:
    if path.endswith(".yml"):
        return "name it with the ending .yaml"
    if path.startswith("course/modules/"):
        return "name it module.yaml or lesson.en.md, with the language's code, and put it into the module's folder"
    return "move it out of the content folders, or check its name and folder"


def _bytes(reading: Reading, path: str) -> bytes | None:
    if path not in reading.sources:
        try:
            reading.sources[path] = read_bytes(reading.root / path, path)
        except ProblemsError as error:
            reading.problems += error.problems
            return None
    return reading.sources[path]


def _read_text(reading: Reading, path: str) -> None:
    data = _bytes(reading, path)
    try:
        if data is not None:
            reading.texts[path] = decode(path, data)
            if not reading.texts[path].strip():
                reading.problems.append(Problem(path, 0, 0, "empty-file", "the file is empty", "write its content"))
    except ProblemsError as error:
        reading.problems += error.problems
        reading.texts[path] = ""  # it is there: its absence is not another problem


def _read_sound(reading: Reading, path: str) -> None:
    try:
        data = read_bytes(reading.root / path, path, MOST_BYTES)
    except ProblemsError as error:
        reading.problems += error.problems
        return
    faults = sound_problems(path, data)
    reading.problems += faults
    if not faults:
        reading.sounds[path] = data


def _read_yaml(reading: Reading, path: str) -> YamlFile | None:
    data = _bytes(reading, path)
    try:
        return None if data is None else read_yaml(path, data)
    except ProblemsError as error:
        reading.problems += error.problems
        return None


def _languages(reading: Reading, paths: list[str]) -> tuple[str, ...]:
    """The languages that the course file names, before anything is held against them."""
    if "course/course.yaml" not in paths:
        return ()
    data = _bytes(reading, "course/course.yaml")
    try:
        value = read_yaml("course/course.yaml", data).value if data is not None else None
    except ProblemsError:
        return ()  # told when the file's turn comes
    named = value.get("languages") if isinstance(value, dict) else None
    return tuple(named) if isinstance(named, list) and all(isinstance(each, str) for each in named) else ()


def _read_model(reading: Reading, path: str, kind: str) -> None:
    file = _read_yaml(reading, path)
    if file is None:
        reading.unreadable |= {kind, *(thing for thing, _ in _INSIDE.get(kind, ()))}
        return
    model_type = KINDS[kind][1]
    try:
        model: Any = model_type.model_validate(file.value, context={"languages": reading.languages})
    except ValidationError as error:
        reading.problems += problems_of(file, model_type, error)
        model = None
    if kind == "course":
        reading.course = None if model is None else Found(model, file, ())
    reading.problems += few(path, _note_all(reading, kind, file, model))
    if kind == "module" and model is not None:
        reading.folders[model.id] = path.split("/")[2]


def _note_all(reading: Reading, kind: str, file: YamlFile, model: Any) -> Iterator[Problem]:
    """Keep the file's thing and the things inside it under their ids; tell ids that are taken."""
    if kind in _ONLY_ONE and model is not None:
        reading.things[kind] = {kind: Found(model, file, ())}
    elif kind not in ("course", "competencies", *_ONLY_ONE):
        yield from _note(reading, kind, file, (), model)
    for thing, key in _INSIDE.get(kind, ()):
        listed = file.value.get(key) if isinstance(file.value, dict) else None
        for position in range(len(listed) if isinstance(listed, list) else 0):
            inner = None if model is None else getattr(model, key)[position]
            yield from _note(reading, thing, file, (key, position), inner)


def _note(reading: Reading, kind: str, file: YamlFile, loc: Loc, model: Content | None) -> Iterator[Problem]:
    value = file.value
    for part in loc:
        value = value[part]
    name = value.get("id") if isinstance(value, dict) else None
    if not isinstance(name, str):
        return
    known = reading.ids.setdefault(kind, {})
    if name in known:
        first, place = known[name]
        line, _ = first.value_line_and_column((*place, "id"))
        what = f"the {kind} id '{name}' is already taken in {first.name}:{line}"
        yield file.value_problem((*loc, "id"), "duplicate-id", what, "choose another; an id is never used twice")
        return
    known[name] = (file, loc)
    if model is not None:
        reading.things.setdefault(kind, {})[name] = Found(model, file, loc)
