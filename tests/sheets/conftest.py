"""The course as it is shipped, and a class with the longest names that a class list lets through."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.curriculum import CourseContent, load
from generator.exercises import Person, Record, make_set

WIDEST_NAME = "W" * 90
"""90 bytes without a place to break."""
LONGEST_NAMES = (
    WIDEST_NAME,
    "क्ष्म्यां" * 3,
    "Maharajadhiraja Wimmamwaramma of the Upper Terrace beside the slow spring of the goat ford",
)


@pytest.fixture(scope="session")
def content() -> CourseContent:
    loaded = load(Path(__file__).parents[2])
    assert loaded.content is not None, loaded.problems
    return loaded.content


@pytest.fixture(scope="session")
def records(content: CourseContent) -> dict[str, Record]:
    """A set in each language: every question of the module for each of the longest names."""
    people = [Person(name) for name in LONGEST_NAMES]
    return {language: make_set(content, "frame", people, "sheets", language, tool="test") for language in ("en", "hi")}
