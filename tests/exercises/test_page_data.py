from __future__ import annotations

import json

from generator.exercises.page_data import marker_script, page_data, question_data
from tests.exercises import small
from tests.exercises.small_course import course


def test_the_page_gets_texts_of_one_language_and_no_key() -> None:
    data = page_data(course(), "pens", "hi", small.BOOK)
    assert (data["format"], data["module"], data["language"]) == (1, "pens", "hi")
    assert list(data["questions"]) == [question.id for question in small.QUESTIONS]
    assert data["formulas"] == ["doubled_stick", "pen_round", "roll_count", "wire_count", "wire_length"]
    wires = data["questions"]["wires-of-a-pen"]
    assert wires["text"].startswith("हि")
    assert "key" not in wires
    assert json.loads(json.dumps(data, allow_nan=False)) == json.loads(json.dumps(data))


def test_a_number_question_carries_its_choices_ranges_and_steps() -> None:
    data = question_data(small.LENGTH, small.WORDS["en"], small.BOOK)
    assert data["parameters"][2] == {
        "name": "wire_spacing", "choices": (0.2,), "unit": "m", "unit_word": "m", "low": 0.05, "high": 0.5,
    }  # fmt: skip
    assert [step["name"] for step in data["steps"]][-1] == "wire_length"
    assert (data["absolute"], data["relative"], data["count"]) == (0.05, 0, False)
    assert question_data(small.WIRES, small.WORDS["en"], small.BOOK)["count"] is True


def test_the_script_is_old_plain_javascript_that_any_page_may_carry() -> None:
    script = marker_script()
    assert "</" not in script
    for new in ("=>", "`", "let ", "const ", "?.", "class ", "async ", "BigInt", "..."):
        assert new not in script, new
    assert script.rstrip().splitlines()[-1].startswith("Tankschool.marker.load({")
