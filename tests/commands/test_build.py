"""`build`: the same input gives the same bytes, an edit redoes only what rests on it, a fault leaves all as it was."""

import json
from pathlib import Path

import pytest

from generator.commands.main import run
from generator.problems import ExitCode
from tests.commands.course_copy import tree, with_second_module


def built(content: Path, output: Path, capsys: pytest.CaptureFixture[str]) -> list[str]:
    """Build, and say which products had to be made."""
    capsys.readouterr()
    assert run(["build", "--content", str(content), "--output", str(output), "--json"]) == ExitCode.GOOD
    made: list[str] = json.loads(capsys.readouterr().out)["made"]
    return made


def test_a_build_again_after_an_edit_and_after_a_fault(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """One walk, because a build takes seconds: first, again, one lesson edited, one file spoilt."""
    content, output = with_second_module(tmp_path / "content"), tmp_path / "output"
    first = built(content, output, capsys)
    assert {
        "site-en",
        "site-hi",
        "one-file-en",
        "sheets-frame-en",
        "sheets-second-hi",
        "reckoner",
        "sheets-ready-reckoner-hi",
    } <= set(first)
    stick = tree(output / "stick")
    assert "START-HERE.html" in stick
    assert any(path.startswith("pdf/hi/") for path in stick)

    assert built(content, output, capsys) == []
    assert tree(output / "stick") == stick

    elsewhere = tmp_path / "another"
    built(content, elsewhere, capsys)
    assert tree(elsewhere / "stick") == stick

    lesson = content / "course" / "modules" / "08-second" / "lesson.en.md"
    lesson.write_text(lesson.read_text("utf-8") + "\nThen mark it.\n", "utf-8")
    again = built(content, output, capsys)
    assert sorted(again) == ["one-file-en", "sheets-second-en", "sheets-second-hi", "site-en"]
    changed = tree(output / "stick")
    assert {path for path in stick if path.startswith("site/hi/") and changed[path] != stick[path]} == set()
    assert all(changed[path] == stick[path] for path in stick if path.startswith("pdf/") and "second" not in path)

    before = tree(output)
    lesson.write_text('## Half {#half}\n\n{{ value("no_such_thing") }} and 12 mm.\n', "utf-8")
    assert run(["build", "--content", str(content), "--output", str(output)]) == ExitCode.PROBLEMS
    said = capsys.readouterr().err
    assert "lesson.en.md:3:" in said
    assert "no_such_thing" in said
    assert "12 mm" in said
    assert tree(output) == before


@pytest.mark.parametrize(
    ("file", "data", "message"),
    [
        ("quizzes/banks/frame.yaml", b"format: 1\nid: frame\n  module: x\n", "frame.yaml:3:"),
        ("quizzes/banks/frame.yaml", "सवाल".encode("utf-16"), "frame.yaml:1:1: "),
        ("course/course.yaml", b"\xff\xfe\x00junk" * 1000, "course.yaml:1:1: "),
        ("course/words/hi.yaml", b"x" * 10_000_000, "hi.yaml:0:0: "),
        ("course/modules/07-frame/module.yaml", b"", "module.yaml:"),
        ("course/modules/07-frame/lesson.hi.md", b"\xe0\xa4", "lesson.hi.md:1:1: "),
    ],
)
def test_a_broken_file_is_named_and_nothing_is_written(
    file: str, data: bytes, message: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    content = with_second_module(tmp_path / "content")
    (content / file).write_bytes(data)
    output = tmp_path / "output"
    assert run(["build", "--content", str(content), "--output", str(output)]) == ExitCode.PROBLEMS
    said = capsys.readouterr().err
    assert message in said
    assert "Traceback" not in said
    assert not output.exists()
