"""Sheets and keys of questions to spot, to hear, to choose from worked-out numbers, and with credit for steps."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from pydantic import TypeAdapter

from generator.curriculum import CourseContent
from generator.curriculum.models import Question
from generator.exercises import ChoiceItem, NumberItem, Person, Record, SpokenItem, SpotItem, make_set
from generator.sheets import key_pdf, worksheet_pdf
from generator.sheets.page import A4
from tests.exercises.small import both
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import recording

RING = {"frame_diameter": {"from": 1.8, "to": 3.4, "step": 0.1}}
QUESTIONS: list[dict[str, Any]] = [
    {"id": "cut", "kind": "number", "asks": "ring_length", "given": RING, "units": ["m", "cm"],
     "aids": ["tape", "calculator"], "rounding": {"rule": "up", "to": 0.1}, "text": both("{frame_diameter}: cut?")},
    {"id": "steps", "kind": "number", "asks": "frame_radius", "credit": ["frame_diameter"], "answer": "within 2 mm",
     "given": {"inside_diameter": 2.3, "mesh_cover": 5, "inside_mesh_thickness": 7, "bar_diameter": 8},
     "text": both("{inside_diameter} {mesh_cover} {inside_mesh_thickness} {bar_diameter}")},
    {"id": "pick", "kind": "choice", "asks": "ring_length", "given": RING, "text": both("{frame_diameter}: how far?"),
     "misconceptions": ["ring_as_three_diameters", "radius_taken_for_diameter_in_ring"]},
    {"id": "spot", "kind": "spot", "figure": "fault-shadow-cracks", "text": both("Where?"),
     "areas": [{"name": "mesh-cracks", "right": True, "why": both("Mesh shows through.")},
               {"name": "chalk-line", "why": both("Chalk washes off.")}]},
    {"id": "said", "kind": "spoken", "asks": "ring_length", "given": RING, "answer": "within 2 %",
     "text": both("It is {frame_diameter}. //\nHow far round? #")},
]  # fmt: skip
_READ: TypeAdapter[Any] = TypeAdapter(Question)


@pytest.fixture(scope="module")
def newer(content: CourseContent) -> CourseContent:
    asked = tuple(_READ.validate_python({"competency": "rings", **data}) for data in QUESTIONS)
    return replace(content, asked={**content.asked, "frame": asked}, scenarios={})


def record_of(newer: CourseContent, language: str) -> Record:
    return make_set(newer, "frame", [Person("Asha")], "s", language, tool="test 1")


@pytest.mark.parametrize("language", ["en", "hi"])
def test_every_kind_has_room_for_its_answer(newer: CourseContent, language: str) -> None:
    record, words = record_of(newer, language), newer.words[language]
    with recording() as made:
        worksheet_pdf(record, newer)
    assert faults(made, *A4) == []
    text = " ".join(made.text().split())
    cut, steps, pick, spot, said = (item for _, item, _ in record.learners[0].labelled())
    assert isinstance(cut, NumberItem)
    assert isinstance(steps, NumberItem)
    assert isinstance(pick, ChoiceItem)
    assert isinstance(spot, SpotItem)
    assert isinstance(said, SpokenItem)
    for told in (words.say("exercise.write_the_unit"), words.say_one_of("exercise.aid", "tape"), steps.steps[0].text):
        assert " ".join(told.split()) in text
    assert words.say("exercise.read_aloud") in text
    assert "//" not in text


@pytest.mark.parametrize("language", ["en", "hi"])
def test_the_key_has_the_script_and_what_each_wrong_option_means(newer: CourseContent, language: str) -> None:
    record, words = record_of(newer, language), newer.words[language]
    with recording() as made:
        key_pdf(record, newer)
    assert faults(made, *A4) == []
    text = " ".join(made.text().split())
    assert "How far round? #" in text
    assert "Chalk washes off." in text
    assert text.index("Mesh shows through.") < text.index("Chalk washes off."), "right above the wrong ones"
    assert " ".join(words.say("misconception.ring_as_three_diameters.hill").split()) in text
