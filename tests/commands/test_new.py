"""`new`: a course of one's own that is good from its first minute, and nothing that was there is lost."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from generator.commands import main as entry
from generator.commands.new import starter_files
from generator.curriculum import load
from generator.problems import ExitCode
from generator.site import Products, site_files, stick_files


def test_a_new_course_is_good_and_every_command_takes_it(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    folder = tmp_path / "our course"
    assert entry.run(["new", str(folder), "--json"]) == ExitCode.GOOD
    assert json.loads(capsys.readouterr().out)["files"] == len(starter_files())
    assert entry.run(["check", "--content", str(folder)]) == ExitCode.GOOD


def test_a_new_course_reads_well_and_builds_in_all_its_languages(tmp_path: Path) -> None:
    for name, data in starter_files().items():
        path = tmp_path / "c" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
    loaded = load(tmp_path / "c")
    assert loaded.content is not None, loaded.problems
    parts = site_files(loaded.content, Products(tmp_path / "cache"), {})
    files = stick_files(parts, b"licences")
    for language in ("en", "hi"):
        assert f"site/{language}/first.html" in files
        assert "3.4" in files[f"site/{language}/first.html"].decode("utf-8")
        assert loaded.content.course.title[language] in files[f"phone/tankschool-{language}.html"].decode("utf-8")


def test_a_folder_with_anything_in_it_is_refused_and_left_alone(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "mine.txt").write_text("mine", "utf-8")
    assert entry.run(["new", str(tmp_path)]) == ExitCode.REFUSED
    assert "not empty" in capsys.readouterr().err
    assert [path.name for path in tmp_path.iterdir()] == ["mine.txt"]


def test_a_file_in_the_place_of_the_folder_is_refused(tmp_path: Path) -> None:
    file = tmp_path / "course"
    file.write_text("a file", "utf-8")
    assert entry.run(["new", str(file)]) == ExitCode.REFUSED
    assert file.read_text("utf-8") == "a file"
