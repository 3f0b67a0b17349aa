"""Every outcome of the course is taught, practised and assessed, and each module's work is watched by someone."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.curriculum import load
from generator.curriculum.coverage import coverage

ROOT = Path(__file__).parents[2]
LEAST_QUESTIONS = 3
"""Fewer are asked only where a certificate asks for the outcome anyway, or it comes up in a day of decisions."""


@pytest.fixture(scope="module")
def rows():
    content = load(ROOT).content
    assert content is not None
    return coverage(content, "en")


def names(found) -> list[str]:
    return [f"{one.module.id}: {one.outcome.competency}" for one in found]


def test_every_outcome_is_taught(rows) -> None:
    assert names(one for one in rows if not one.taught) == []


def test_every_outcome_is_practised(rows) -> None:
    assert names(one for one in rows if not one.practised) == []


def test_every_outcome_is_assessed(rows) -> None:
    thin = (one for one in rows if len(one.questions) < LEAST_QUESTIONS and not (one.schemes or one.parts))
    assert names(one for one in rows if not one.assessed) == names(thin) == []


def test_most_outcomes_are_shown_by_hands_that_someone_watches(rows) -> None:
    watched = [one for one in rows if one.steps]
    assert len(watched) >= 0.7 * len(rows)
    assert {one.module.id for one in watched} == {one.module.id for one in rows}


def test_a_step_that_shows_another_competency_shows_one_that_its_module_teaches() -> None:
    content = load(ROOT).content
    assert content is not None
    for practical in content.practicals.values():
        taught = {outcome.competency for outcome in content.modules[practical.module].outcomes}
        assert {step.competency for step in practical.steps} - {None} <= taught - {practical.competency}, practical.id
