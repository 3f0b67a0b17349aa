"""A drawing beside a question must not say the answer: the same drawing stands on exam papers and in talks."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from typing import Any

import pytest

from generator.assessment.paper_draw import values_of
from generator.curriculum.models import ChoiceQuestion
from generator.figures import draw
from tests.assessment.exam_papers import course

_EMPTY = {"that", "with", "them", "this", "from", "your", "have", "what", "then"}
_SHARE, _NEW = 0.6, 2
"""Of the right option's words in the drawing, and how many of them the question has not said itself."""
_DRAWN = sorted(one.id for one in course().questions.values() if isinstance(one, ChoiceQuestion) and one.figure)


def _printed(drawn: Any) -> Iterator[str]:
    """The texts of a drawing that are seen, without the description for those who can't see it."""
    if is_dataclass(drawn):
        for field in fields(drawn):
            if field.name not in ("title", "description", "areas"):
                yield from _printed(getattr(drawn, field.name))
    elif isinstance(drawn, tuple):
        for each in drawn:
            yield from _printed(each)
    elif isinstance(drawn, str):
        yield drawn


def _words(text: str) -> set[str]:
    return {word[:5] for word in re.findall("[a-z]{4,}", text.lower())} - _EMPTY


def told(option: str, question: str, drawing: str) -> bool:
    """Whether a drawing has most of an option's words, and more of them than the question itself."""
    wanted, seen = _words(option), _words(drawing)
    return len(wanted & seen) >= _SHARE * len(wanted) and len((wanted - _words(question)) & seen) >= _NEW


@pytest.mark.parametrize("name", _DRAWN)
def test_no_drawing_says_the_right_option(name: str) -> None:
    question = course().questions[name]
    assert isinstance(question, ChoiceQuestion)
    assert question.figure
    drawing = " ".join(_printed(draw(question.figure, values_of(course(), name), course().words["en"], 1)))
    assert _words(drawing)
    for option in question.options:
        assert not (option.right and told(option.text["en"], question.text["en"], drawing))


def test_a_drawing_that_says_it_is_found() -> None:
    asked, right = "The helper goes. What will you find behind?", "Holes at the hoops, mortar on the ground"
    assert told(right, asked, "Wrong: nothing behind. Holes at the steel. Mortar falls down to the ground.")
    assert not told(right, asked, "A board behind, mortar pressed full")
