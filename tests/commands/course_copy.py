"""A copy of the project's own content that a test may spoil, and a small second module beside the first."""

from pathlib import Path

from tests.three_modules import copy_three

MODULE = """\
format: 1
id: second
title: {en: A second module, hi: दूसरा भाग}
summary: {en: It is here for the tests., hi: यह जाँच के लिए है।}
place: hill-school
minutes: {talk: 5, show: 5, do: 10}
outcomes:
- competency: ring-and-diameter
  text: {en: Halve a width., hi: चौड़ाई आधी करें।}
"""
BANK = """\
format: 1
id: second
module: second
questions:
- id: half-across-again
  competency: ring-and-diameter
  kind: number
  asks: inside_radius
  given: {inside_diameter: {from: 2.0, to: 3.0, step: 0.1}}
  misconceptions: [diameter_taken_for_radius]
  text:
    en: The tank is {inside_diameter} across inside. How far is half across?
    hi: टंकी अंदर {inside_diameter} चौड़ी है। आधी चौड़ाई कितनी?
"""


def course_copy(folder: Path) -> Path:
    """Copy the content of three modules."""
    return copy_three(folder)


def with_second_module(folder: Path) -> Path:
    """A copy with one more module, so that a test can see what an edit leaves alone."""
    course_copy(folder)
    course = folder / "course" / "course.yaml"
    text = course.read_text("utf-8")
    changed = text.replace("- 09-mortar\n", "- 09-mortar\n- 08-second\n")
    assert changed != text
    course.write_text(changed, "utf-8")
    home = folder / "course" / "modules" / "08-second"
    home.mkdir()
    (home / "module.yaml").write_text(MODULE, "utf-8")
    (home / "lesson.en.md").write_text("## Half across {#half}\n\nHalve the width.\n", "utf-8")
    (home / "lesson.hi.md").write_text("## आधी चौड़ाई {#half}\n\nचौड़ाई आधी करें।\n", "utf-8")
    (folder / "quizzes" / "banks" / "second.yaml").write_text(BANK, "utf-8")
    return folder


def tree(folder: Path) -> dict[str, bytes]:
    """All files below a folder."""
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}
