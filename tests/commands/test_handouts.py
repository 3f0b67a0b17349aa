"""Handouts by the command: listed, one kind alone, all at once, and only a changed one is made again for the stick."""

from pathlib import Path

import pytest

from generator import site
from generator.commands.build import standard_sheets
from generator.commands.course import course_at
from generator.commands.main import run
from generator.commands.tool import ProgressLine
from generator.problems import ExitCode
from tests.commands.course_copy import course_copy, tree


def test_one_kind_is_listed_alone(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["sheets", "--list", "--only", "handouts", "--language", "hi"]) == ExitCode.GOOD
    listed = capsys.readouterr().out
    assert "stick  इस टंकी की लकड़ी" in listed
    assert "ready-reckoner" in listed
    assert "close-a-ring" not in listed
    assert run(["sheets", "--list", "--only", "checklists"]) == ExitCode.GOOD
    assert "stick" not in capsys.readouterr().out


def test_all_of_a_kind_are_written_and_a_name_of_another_kind_is_refused(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(["sheets", "--only", "checklists", "--output", str(tmp_path)]) == ExitCode.GOOD
    assert all(name.endswith("-en.pdf") for name in tree(tmp_path))
    assert "sheets/close-a-ring-en.pdf" in tree(tmp_path)
    assert run(["sheets", "stick", "--only", "checklists", "--output", str(tmp_path)]) == ExitCode.USAGE
    assert "no sheet 'stick'" in capsys.readouterr().err


def test_the_stick_gets_every_handout_and_only_a_changed_one_is_made_again(tmp_path: Path) -> None:
    folder = course_copy(tmp_path / "course-copy")
    quiet = ProgressLine(quiet=True)
    course = course_at(folder)
    first = site.Products(tmp_path / "cache")
    prints = standard_sheets(course, "hi", first, quiet)
    assert {one.name for one in prints} >= set(course.handouts)
    path = folder / "handouts" / "curing-log.hi.md"
    path.write_text(path.read_text("utf-8").replace("पलस्तर से पहले लाकर रखें।", "पहले लाकर रखें।"), "utf-8")
    again = site.Products(tmp_path / "cache")
    standard_sheets(course_at(folder), "hi", again, quiet)
    assert again.made == ["sheets-curing-log-hi"]
