"""JSON Schema of every kind of content file, for editors that complete and underline while an author types."""

from __future__ import annotations

import json
from pathlib import Path

from pydantic import BaseModel

from generator.curriculum.models import (
    Bank,
    Competencies,
    Course,
    Handout,
    Module,
    Place,
    Practical,
    Scenario,
    Scheme,
)
from generator.curriculum.reference import FaultAlbum, Glossary

KINDS: dict[str, tuple[str, type[BaseModel]]] = {
    "course": ("course/course.yaml", Course),
    "competencies": ("course/competencies.yaml", Competencies),
    "module": ("course/modules/*/module.yaml", Module),
    "place": ("course/places/*.yaml", Place),
    "glossary": ("course/glossary.yaml", Glossary),
    "faults": ("course/faults.yaml", FaultAlbum),
    "bank": ("quizzes/banks/*.yaml", Bank),
    "scenario": ("quizzes/scenarios/*.yaml", Scenario),
    "practical": ("quizzes/practicals/*.yaml", Practical),
    "scheme": ("quizzes/schemes/*.yaml", Scheme),
    "handout": ("handouts/*.yaml", Handout),
}
"""Where each kind of file lives, and its model."""


def schemas(directory: Path) -> tuple[Path, ...]:
    """Write one JSON Schema file for each kind of content file.

    Args:
        directory: made where it does not exist.

    Returns:
        The files written, in order.
    """
    directory.mkdir(parents=True, exist_ok=True)
    written: list[Path] = []
    for kind, (where, model) in KINDS.items():
        schema = {"$schema": "https://json-schema.org/draft/2020-12/schema", "$comment": f"for {where}"}
        schema |= model.model_json_schema()
        path = directory / f"{kind}.schema.json"
        text = json.dumps(schema, ensure_ascii=False, indent=2, sort_keys=True) + "\n"
        path.write_text(text, encoding="utf-8", newline="\n")
        written.append(path)
    return tuple(written)
