"""The project's own content cut down to three modules: enough for a test of the machine, and soon built.

The whole course is looked at by the tests of content, and built once by `tests/site/test_shipped_stick.py`.
"""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import Any

import yaml

ROOT = Path(__file__).parents[1]
FOLDERS = ("course", "quizzes", "handouts")
KEPT = ("02-how-much-water", "07-frame", "09-mortar")
_IDS = frozenset(folder[3:] for folder in KEPT)


def copy_three(folder: Path) -> Path:
    """Copy the three content folders without the other modules and what belongs to those alone."""
    for name in FOLDERS:
        shutil.copytree(ROOT / name, folder / name)
    course = folder / "course" / "course.yaml"
    lines = course.read_text("utf-8").splitlines(keepends=True)
    others = {f"- {home.name}" for home in (folder / "course" / "modules").iterdir() if home.name not in KEPT}
    course.write_text("".join(line for line in lines if line.rstrip() not in others), "utf-8")
    for home in (folder / "course" / "modules").iterdir():
        if home.name not in KEPT:
            shutil.rmtree(home)
    for path in sorted((folder / "quizzes").rglob("*.yaml")) + sorted((folder / "handouts").glob("*.yaml")):
        if not _belongs(yaml.safe_load(path.read_text("utf-8"))):
            path.unlink()
            for template in path.parent.glob(f"{path.stem}.*.md"):
                template.unlink()
    for home in (folder / "course" / "modules").iterdir():
        _without_other_needs(home / "module.yaml")
    return folder


def _belongs(data: dict[str, Any]) -> bool:
    """Whether a file speaks of kept modules only."""
    return {*data.get("modules", ()), *([data["module"]] if data.get("module") else ())} <= _IDS


def _without_other_needs(path: Path) -> None:
    """A module that needs one which is not there needs it no more."""
    lines = path.read_text("utf-8").splitlines(keepends=True)
    for number, line in enumerate(lines):
        if line.startswith("needs: ["):
            kept = [name for name in yaml.safe_load(line)["needs"] if name in _IDS]
            lines[number] = f"needs: [{', '.join(kept)}]\n" if kept else ""
    path.write_text("".join(lines), "utf-8")
