from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.registry.conftest import servers  # noqa: F401 (a fixture)
from tests.registry.small import Office, open_at

ROOT = Path(__file__).parents[2]


class Victim:
    """The process that does the work and is killed at it.

    Args:
        process: its two pipes are open.
        place: of the registry.
    """

    def __init__(self, process: subprocess.Popen[str], place: Path) -> None:
        self._process = process
        self.place = place
        self.kept = place.parent / "kept.zip"

    def __call__(self, number: int, **how: Any) -> dict[str, Any]:
        """Do one round."""
        assert self._process.stdin
        assert self._process.stdout
        job = {"place": str(self.place), "kept": str(self.kept), "round": number, **how}
        print(json.dumps(job), file=self._process.stdin, flush=True)
        found: dict[str, Any] = json.loads(self._process.stdout.readline())
        return found


@pytest.fixture
def template(tmp_path: Path) -> Path:
    """A registry file with the office's people."""
    place = tmp_path / "template.sqlite"
    with open_at(place) as registry:
        Office(registry).fill()
    return place


@pytest.fixture
def victim(template: Path) -> Iterator[Victim]:
    """The process, with a registry of its own."""
    if not hasattr(os, "fork"):
        pytest.skip("this system has no fork, and the kills need one")
    folder = template.parent / "work"
    folder.mkdir()
    shutil.copyfile(template, folder / "registry.sqlite")
    command = [sys.executable, "-m", "tests.faults.victim"]
    with subprocess.Popen(command, cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True) as process:
        yield Victim(process, folder / "registry.sqlite")
        assert process.stdin
        process.stdin.close()
        assert process.wait(60) == 0
