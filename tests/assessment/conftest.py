"""The course as it is shipped."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.curriculum import CourseContent, load


@pytest.fixture(scope="session")
def content() -> CourseContent:
    loaded = load(Path(__file__).parents[2])
    assert loaded.content is not None, loaded.problems
    return loaded.content
