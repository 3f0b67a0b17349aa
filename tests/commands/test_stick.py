"""`stick`: what arrives on a drive is what was built, or the drive is as it was and the reason is said."""

from __future__ import annotations

import errno
import hashlib
import json
import os
import shutil
from collections import namedtuple
from pathlib import Path
from typing import Any

import pytest

from generator.commands import main as entry
from generator.commands import stick as command
from generator.problems import ExitCode
from tests.commands.course_copy import tree

Usage = namedtuple("Usage", "total used free")


@pytest.fixture
def output(tmp_path: Path) -> Path:
    """A small built stick."""
    folder = tmp_path / "output"
    files = {
        "START-HERE.html": b"<!doctype html>",
        "site/en/index.html": b"home" * 999,
        "phone/tankschool-en.html": b"x",
    }
    for name, data in files.items():
        path = folder / "stick" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
    sums = "".join(f"{hashlib.sha256(data).hexdigest()}  {name}\n" for name, data in sorted(files.items()))
    (folder / "stick" / command.SUMS).write_text(sums, "ascii")
    return folder


@pytest.fixture
def drive(tmp_path: Path) -> Path:
    folder = tmp_path / "drive"
    folder.mkdir()
    (folder / "photos.jpg").write_bytes(b"not ours")
    return folder


def run(output: Path, drive: Path, *more: str) -> int:
    return entry.run(["stick", str(drive), "--output", str(output), *more])


def test_every_file_arrives_and_nothing_else_on_the_drive_is_touched(
    output: Path, drive: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(output, drive, "--json") == ExitCode.GOOD
    told = json.loads(capsys.readouterr().out)
    assert told["verified"] is True
    assert told["files"] == 4
    assert tree(drive / "tankschool") == tree(output / "stick")
    assert sorted(path.name for path in drive.iterdir()) == ["photos.jpg", "tankschool"]


def test_an_older_copy_is_replaced_whole(output: Path, drive: Path) -> None:
    (drive / "tankschool").mkdir()
    (drive / "tankschool" / "old.html").write_bytes(b"old")
    assert run(output, drive) == ExitCode.GOOD
    assert tree(drive / "tankschool") == tree(output / "stick")


def test_without_a_build_it_says_what_to_do(tmp_path: Path, drive: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(tmp_path / "nothing", drive) == ExitCode.REFUSED
    assert "run 'build' first" in capsys.readouterr().err
    assert not (drive / "tankschool").exists()


@pytest.mark.parametrize("harm", ["edited", "missing", "added"])
def test_a_stick_that_is_not_as_it_was_built_is_refused(
    output: Path, drive: Path, harm: str, capsys: pytest.CaptureFixture[str]
) -> None:
    page = output / "stick" / "site" / "en" / "index.html"
    if harm == "edited":
        page.write_bytes(b"edited")
    elif harm == "missing":
        page.unlink()
    else:
        (page.parent / "extra.html").write_bytes(b"extra")
    assert run(output, drive) == ExitCode.REFUSED
    assert "not as it was built" in capsys.readouterr().err
    assert not (drive / "tankschool").exists()


def with_old_copy(drive: Path) -> dict[str, bytes]:
    (drive / "tankschool").mkdir()
    (drive / "tankschool" / "old.html").write_bytes(b"old")
    return tree(drive)


def test_a_full_drive_is_refused_in_words_before_anything_is_written(
    output: Path, drive: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    before = with_old_copy(drive)
    monkeypatch.setattr(shutil, "disk_usage", lambda _: Usage(10**6, 10**6 - 10**5, 10**5))
    assert run(output, drive) == ExitCode.MACHINE
    assert "MB are needed" in capsys.readouterr().err
    assert tree(drive) == before


@pytest.mark.parametrize("reason", [errno.ENOSPC, errno.EROFS, errno.EACCES, errno.EIO])
def test_a_drive_that_fails_half_way_is_left_as_it_was(
    output: Path, drive: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], reason: int
) -> None:
    before = with_old_copy(drive)
    count = 0

    def failing(_: int) -> None:
        nonlocal count
        count += 1
        if count == 3:
            raise OSError(reason, os.strerror(reason))

    monkeypatch.setattr(os, "fsync", failing)
    assert run(output, drive) == ExitCode.MACHINE
    said = capsys.readouterr().err
    if reason in (errno.EROFS, errno.EACCES):
        assert "write lock" in said
    else:
        assert os.strerror(reason) in said
    assert tree(drive) == before


def test_a_drive_that_reads_back_something_else_is_called_worn_out(
    output: Path, drive: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    before = with_old_copy(drive)
    real = Path.read_bytes
    lies = str(drive / "tankschool.new")
    monkeypatch.setattr(
        Path,
        "read_bytes",
        lambda self: b"?" if str(self).startswith(lies) and self.name == "index.html" else real(self),
    )
    assert run(output, drive) == ExitCode.MACHINE
    assert "worn out" in capsys.readouterr().err
    monkeypatch.undo()
    assert tree(drive) == before


def test_the_tool_travels_with_its_libraries_and_a_note(
    output: Path, drive: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(command, "wheels", lambda folder: (folder / "click-8-py3-none-any.whl").write_bytes(b"wheel"))
    assert run(output, drive, "--with-tool") == ExitCode.GOOD
    tool = drive / "tankschool" / "tool"
    assert (tool / "wheels" / "click-8-py3-none-any.whl").read_bytes() == b"wheel"
    note = (tool / "START-THE-TOOL.txt").read_text("ascii")
    assert "tankschool.py build" in note
    assert (tool / "tankschool.py").is_file()
    assert (tool / "generator" / "commands" / "stick.py").is_file()
    assert (tool / "course" / "course.yaml").is_file()
    assert not [path for path in tool.rglob("*") if "__pycache__" in path.parts or path.suffix == ".pyc"]
    assert not (tool / "tests").exists()
    assert max(len(str(path.relative_to(drive))) for path in tool.rglob("*")) <= 160


def test_without_the_internet_the_tool_is_not_half_added(
    output: Path, drive: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    class Failed:
        returncode = 1
        stderr = "WARNING: retrying\nERROR: no route to host\n"

    monkeypatch.setattr(command.subprocess, "run", lambda *_, **__: Failed())
    assert run(output, drive, "--with-tool") == ExitCode.MACHINE
    assert "internet once): ERROR: no route to host" in capsys.readouterr().err
    assert not (drive / "tankschool").exists()


def test_the_copied_tool_installs_from_its_own_wheels(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    import tankschool

    calls: list[list[Any]] = []
    monkeypatch.setattr(tankschool.subprocess, "run", lambda command, **_: calls.append(command))
    monkeypatch.setattr(tankschool, "ROOT", tmp_path)
    tankschool.install(Path("python"), ["click"])
    (tmp_path / "wheels").mkdir()
    tankschool.install(Path("python"), ["click"])
    assert "--no-index" not in calls[0]
    assert calls[1][-4:] == ["--no-index", "--find-links", str(tmp_path / "wheels"), "click"]
