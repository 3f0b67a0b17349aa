"""The commands speak of a course of three modules where a test file asks for it: reading all of them takes long."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.three_modules import copy_three


@pytest.fixture(scope="session")
def small_course(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Three modules of the project's content, for tests that change nothing in it."""
    return copy_three(tmp_path_factory.mktemp("three-modules"))


@pytest.fixture(scope="module", autouse=True)
def content_of_the_commands(request: pytest.FixtureRequest, small_course: Path) -> Iterator[None]:
    """A file with `SMALL_COURSE = True` runs its commands on three modules, unless a test gives `--content`."""
    if not getattr(request.module, "SMALL_COURSE", False):
        yield
        return
    os.environ["TANKSCHOOL_CONTENT"] = str(small_course)
    yield
    del os.environ["TANKSCHOOL_CONTENT"]
