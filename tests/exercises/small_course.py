"""A small course around the small book: what `generator.curriculum` would hand over for it."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

from generator.problems import Problem
from tests.exercises import small


def course(questions: tuple[Any, ...] = small.QUESTIONS, scenarios: tuple[Any, ...] = (small.SCENARIO,)) -> Any:
    """A course with one module, `pens`."""
    return SimpleNamespace(
        course=SimpleNamespace(id="small", version="0.1", languages=("en", "hi")),
        questions={question.id: question for question in questions},
        questions_of=lambda module: questions if module == "pens" else (),
        scenarios={scenario.id: scenario for scenario in scenarios},
        words=small.WORDS,
        values=lambda place: small.BOOK.evaluate(small.PLACE),
        problem=lambda kind, name, loc, code, what, fix: Problem(f"{kind}/{name}", 1, 1, code, what, fix),
    )
