"""Three modules of the real course on a stick, built once for all tests that look at it."""

from __future__ import annotations

import tempfile
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from generator.curriculum import CourseContent, load
from generator.site import LanguageParts, Print, Products, licence_file, site_files, stick_files, write_stick
from tests.three_modules import copy_three


@dataclass(frozen=True)
class Built:
    """A built stick and what it was built from."""

    folder: Path
    content: CourseContent
    parts: dict[str, LanguageParts]
    files: dict[str, bytes]
    products: Products


_FOLDER = tempfile.TemporaryDirectory(prefix="course-stick-")
"""Removed when the tests end."""


@cache
def course() -> CourseContent:
    """Three modules of this project's course."""
    loaded = load(copy_three(Path(_FOLDER.name) / "content"))
    assert loaded.content is not None, "\n".join(map(str, loaded.problems))
    return loaded.content


@cache
def built_once() -> Built:
    """The stick that all tests share: they look at it and change nothing."""
    return build(Path(_FOLDER.name) / "built")


def build(folder: Path) -> Built:
    """The stick with one small PDF of each language, in a folder that holds the kept products, too."""
    content = course()
    products = Products(folder / "cache")
    prints = {
        language: (Print("frame-card", content.modules["frame"].title[language], b"%PDF-1.4\n%%EOF\n"),)
        for language in content.course.languages
    }
    parts = site_files(content, products, prints)
    files = stick_files(parts, licence_file("Our own terms.\n", products))
    write_stick(files, folder / "stick")
    return Built(folder / "stick", content, parts, files, products)
