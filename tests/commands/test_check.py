"""`check`: all problems at once, for people and for programs; the shipped content is without one."""

import json
from pathlib import Path

import pytest

from generator.commands.main import run
from generator.problems import ExitCode
from tests.commands.course_copy import course_copy
from tests.three_modules import ROOT


def test_the_shipped_content_is_without_a_problem_and_its_separability_is_shown(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert run(["check"]) == ExitCode.GOOD
    said = capsys.readouterr().out
    assert "no problems" in said
    assert "hoops-in-the-wall" in said


def test_all_problems_come_at_once_and_as_json(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    content = course_copy(tmp_path)
    bank = content / "quizzes" / "banks" / "frame.yaml"
    text = bank.read_text("utf-8")
    bank.write_text(
        text.replace("asks: hoop_count", "asks: hoop_cuont", 1).replace("format: 1", "fromat: 1", 1), "utf-8"
    )
    assert run(["check", "--content", str(content), "--json"]) == ExitCode.PROBLEMS
    rows = json.loads(capsys.readouterr().out)["problems"]
    assert {"file", "line", "column", "code", "what", "fix"} == set(rows[0])
    together = " ".join(row["what"] + row["fix"] for row in rows)
    assert "fromat" in together
    assert "format" in together


def test_schemas_are_written_for_an_editor(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["check", "--content", str(ROOT), "--schemas", str(tmp_path / "schemas")]) == ExitCode.GOOD
    written = sorted(path.name for path in (tmp_path / "schemas").iterdir())
    assert written
    assert all(json.loads((tmp_path / "schemas" / name).read_text("utf-8")) for name in written)
    assert "Wrote" in capsys.readouterr().out
