"""JSON Schema for editors: one file a kind, the same bytes each time, with the names that authors type."""

import json
from pathlib import Path

from generator.curriculum import schemas


def test_one_schema_for_each_kind_of_file(tmp_path: Path) -> None:
    written = schemas(tmp_path / "new" / "folder")
    assert [path.name for path in written] == [
        "course.schema.json",
        "competencies.schema.json",
        "module.schema.json",
        "place.schema.json",
        "glossary.schema.json",
        "faults.schema.json",
        "bank.schema.json",
        "scenario.schema.json",
        "practical.schema.json",
        "scheme.schema.json",
        "handout.schema.json",
    ]
    first = [path.read_bytes() for path in written]
    assert [path.read_bytes() for path in schemas(tmp_path / "new" / "folder")] == first


def test_the_schema_of_a_bank_knows_kinds_and_the_keys_as_typed(tmp_path: Path) -> None:
    schemas(tmp_path)
    bank = json.loads((tmp_path / "bank.schema.json").read_text(encoding="utf-8"))
    assert bank["$comment"] == "for quizzes/banks/*.yaml"
    assert bank["required"] == ["format", "id", "module", "questions"]
    assert bank["additionalProperties"] is False
    assert set(bank["$defs"]["Steps"]["properties"]) == {"from", "to", "step"}
    forms = [form["$ref"].split("/")[-1] for form in bank["properties"]["questions"]["items"]["oneOf"]]
    kinds = {bank["$defs"][form]["properties"]["kind"]["const"] for form in forms}
    assert kinds == {"number", "choice", "order", "match", "spot", "spoken"}
