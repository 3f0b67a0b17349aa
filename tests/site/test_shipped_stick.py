"""The whole shipped course as `build` makes it: what only shows when all modules and sheets are there. Built once."""

from __future__ import annotations

import re
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest

from generator.commands.main import run
from generator.curriculum import load
from generator.problems import ExitCode
from generator.site.mkdocs_run import read_files
from generator.site.stick import LONGEST_PATH, name_faults
from tests.site.test_measures import ROOM_OF_ONE_FILE, ROOM_OF_THE_STICK, STEPS, body, far, without_fonts

pytestmark = pytest.mark.long  # some minutes: all pages and all sheets in all languages

ROOM_OF_THE_PAGES = 19_000_000
"""Bytes: all but the sheets to print."""
ROOM_OF_THE_SHEETS = 6_000_000
"""Bytes: all PDF files of all languages."""


@pytest.fixture(scope="module")
def stick() -> Iterator[dict[str, bytes]]:
    """Files of the built stick by path."""
    with tempfile.TemporaryDirectory(prefix="shipped-stick-") as folder:
        assert run(["build", "--output", folder, "--json"]) == ExitCode.GOOD
        yield read_files(Path(folder) / "stick")


@pytest.fixture(scope="module")
def languages() -> tuple[str, ...]:
    content = load(Path(__file__).parents[2]).content
    assert content is not None
    return tuple(content.course.languages)


def test_the_stick_fits_the_smallest_drive(stick: dict[str, bytes]) -> None:
    assert sum(map(len, stick.values())) < ROOM_OF_THE_STICK


def test_pages_and_one_files_leave_room_for_the_sheets(stick: dict[str, bytes]) -> None:
    assert sum(len(data) for path, data in stick.items() if not path.startswith("pdf/")) < ROOM_OF_THE_PAGES


def test_the_sheets_to_print_fit_their_room(stick: dict[str, bytes], languages: tuple[str, ...]) -> None:
    sheets = {path: len(data) for path, data in stick.items() if path.startswith("pdf/")}
    assert all(sum(path.startswith(f"pdf/{language}/") for path in sheets) > 60 for language in languages)
    assert sum(sheets.values()) < ROOM_OF_THE_SHEETS
    assert max(sheets.values()) < ROOM_OF_THE_SHEETS / 20, "no sheet is so large that a phone waits for it"


def test_a_phone_gets_the_whole_course_in_a_file_that_it_can_open(
    stick: dict[str, bytes], languages: tuple[str, ...]
) -> None:
    for language in languages:
        assert len(without_fonts(stick[f"phone/tankschool-{language}.html"])) < ROOM_OF_ONE_FILE


def test_every_name_and_path_is_good_for_a_stick(stick: dict[str, bytes]) -> None:
    assert name_faults(stick) == ()
    assert max(map(len, stick)) <= LONGEST_PATH


def test_every_page_is_three_steps_from_home_even_without_the_menu(
    stick: dict[str, bytes], languages: tuple[str, ...]
) -> None:
    for language in languages:
        home = f"site/{language}/"
        pages = {
            path.removeprefix(home): body(data.decode("utf-8"))
            for path, data in stick.items()
            if path.startswith(home) and path.endswith(".html")
        }
        found = far(pages, "index.html")
        assert set(found) == set(pages)
        assert max(found.values()) <= STEPS
        assert len(pages) > 40


def test_every_sheet_is_one_step_from_home_and_from_the_start_page(
    stick: dict[str, bytes], languages: tuple[str, ...]
) -> None:
    start = stick["START-HERE.html"].decode("utf-8")
    for language in languages:
        sheets = {path for path in stick if path.startswith(f"pdf/{language}/")}
        home = stick[f"site/{language}/index.html"].decode("utf-8")
        assert set(re.findall(rf'href="\.\./\.\./(pdf/{language}/[^"]+)"', home)) == sheets
        assert set(re.findall(rf'href="(pdf/{language}/[^"]+)"', start)) == sheets
        assert sheets
