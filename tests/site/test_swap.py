"""A folder is replaced whole or stays as it was."""

from pathlib import Path

import pytest

from generator.problems import MachineError
from generator.site import swap


def names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def put(text: str):
    return lambda folder: (folder / "page.html").write_text(text, encoding="utf-8")


def test_a_new_folder_takes_the_old_ones_place_and_leaves_nothing_beside(tmp_path: Path) -> None:
    target = tmp_path / "stick"
    swap.swap_in(target, put("first"))
    (target / "left-over.html").write_text("x", encoding="utf-8")
    swap.swap_in(target, put("second"))
    assert names(tmp_path) == ["stick"]
    assert names(target) == ["page.html"]
    assert (target / "page.html").read_text(encoding="utf-8") == "second"


def test_a_builder_that_fails_leaves_the_old_folder_and_no_rest(tmp_path: Path) -> None:
    target = tmp_path / "stick"
    swap.swap_in(target, put("first"))

    def fails(folder: Path) -> None:
        (folder / "half.html").write_text("half", encoding="utf-8")
        raise ValueError("no")

    with pytest.raises(ValueError, match="no"):
        swap.swap_in(target, fails)
    assert names(tmp_path) == ["stick"]
    assert names(target) == ["page.html"]


@pytest.mark.parametrize("which", [1, 2])
def test_a_rename_that_is_refused_leaves_the_old_folder(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, which: int
) -> None:
    """As on Windows, where a folder with an open file in it can't be renamed."""
    target = tmp_path / "stick"
    swap.swap_in(target, put("first"))
    renamed = []
    real = swap.os.rename

    def refuses(source: Path, to: Path) -> None:
        renamed.append(source)
        if len(renamed) >= which and Path(source).name != "stick.old":
            raise PermissionError(13, "in use")
        real(source, to)

    monkeypatch.setattr(swap.os, "rename", refuses)
    monkeypatch.setattr(swap, "_PAUSE", 0)
    with pytest.raises(MachineError, match=r"as it was.*try again"):
        swap.swap_in(target, put("second"))
    assert names(tmp_path) == ["stick"]
    assert (target / "page.html").read_text(encoding="utf-8") == "first"


def test_a_file_that_is_held_for_a_moment_is_waited_for(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    real = swap.os.rename
    refused = []

    def held_once(source: Path, to: Path) -> None:
        if not refused:
            refused.append(source)
            raise PermissionError(13, "in use")
        real(source, to)

    monkeypatch.setattr(swap.os, "rename", held_once)
    monkeypatch.setattr(swap, "_PAUSE", 0)
    swap.swap_in(tmp_path / "stick", put("first"))
    assert names(tmp_path) == ["stick"]


def test_a_run_cut_off_between_its_renames_is_put_right_by_the_next(tmp_path: Path) -> None:
    target = tmp_path / "stick"
    swap.swap_in(target, put("first"))
    target.rename(tmp_path / "stick.old")
    (tmp_path / "stick.new").mkdir()

    def fails(folder: Path) -> None:
        raise OSError(28, "no room")

    with pytest.raises(MachineError, match="no room"):
        swap.swap_in(target, fails)
    assert names(tmp_path) == ["stick"]
    assert (target / "page.html").read_text(encoding="utf-8") == "first"
