"""Every question that is worked out, of every bank and scenario, solved by a short sum apart from the book."""

from __future__ import annotations

import ast
import inspect
from pathlib import Path

import pytest

from generator.curriculum import load
from generator.curriculum.models import NumberQuestion, WorkedQuestion
from generator.exercises.rounding import ruled
from generator.exercises.variants import variant
from tests.published import by_hand

ROOT = Path(__file__).parents[2]
BANKS = sorted(path.stem for path in (ROOT / "quizzes" / "banks").glob("*.yaml"))
SEEDS = [f"by hand {number}" for number in range(5)]
NEAR = 1e-6
"""Sums of many slices stand for an area, so not every digit is the same."""
LOOSER = {"tying_wire_mass": 2e-3}
"""The book takes 0.0092 kg for a metre of wire; 1.22 x 1.22 / 162 has more figures."""


@pytest.fixture(scope="module")
def content():
    loaded = load(ROOT)
    assert loaded.content is not None
    return loaded.content


def numbers(content, module: str) -> list[WorkedQuestion]:
    """Questions with a number for an answer: written, chosen among numbers, or spoken."""
    return [one for one in content.questions_of(module) if isinstance(one, WorkedQuestion) and not one.retired]


def agrees(found: float, key: float, asks: str) -> bool:
    return found == pytest.approx(key, rel=LOOSER.get(asks, NEAR))


@pytest.mark.parametrize("module", BANKS)
def test_the_key_of_every_number_question_agrees_with_a_sum_by_hand(content, module: str) -> None:
    wrong = []
    for question in numbers(content, module):
        for made in (variant(question, seed) for seed in SEEDS):
            found = by_hand.solve(question.asks, made.givens)
            if not agrees(found, made.exact, question.asks):
                wrong.append(
                    f"{question.id}: {dict(made.givens)} gives {found:g} by hand, and the key is {made.exact:g}"
                )
            if isinstance(question, NumberQuestion) and question.rounding is not None:
                told = ruled(found, question.rounding.rule, question.rounding.to)
                assert told == pytest.approx(made.key), question.id
    assert wrong == []


def test_the_parts_of_every_scenario_agree_with_sums_by_hand(content) -> None:
    wrong = []
    for scenario in content.scenarios.values():
        values = content.values(scenario.place)
        given = {name: values[name] for name in scenario.given}
        for part in scenario.parts:
            found = by_hand.solve(part.asks, given)
            if not agrees(found, values[part.asks], part.asks):
                wrong.append(f"{scenario.id}, {part.id}: {found:g} by hand, and {values[part.asks]:g} at the place")
    assert wrong == []


def test_no_bank_is_left_out(content) -> None:
    assert {one.id for module in BANKS for one in content.questions_of(module)} == {
        one.id for one in content.questions.values() if not one.retired
    }
    assert all(numbers(content, module) for module in BANKS)


def test_a_question_without_a_sum_is_noticed() -> None:
    with pytest.raises(LookupError, match="no sum by hand for weight_of_a_goat"):
        by_hand.solve("weight_of_a_goat", {"goats": 3})


def test_every_sum_says_where_it_comes_from() -> None:
    assert [name for name, one in by_hand.SUMS.items() if len(one.source.split()) < 2] == []


def test_no_sum_leans_on_the_machine() -> None:
    for topic in (*by_hand.TOPICS, inspect.getmodule(by_hand.solve)):
        tree = ast.parse(inspect.getsource(topic))
        imported = {node.module or "" for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)}
        imported |= {name.name for node in ast.walk(tree) if isinstance(node, ast.Import) for name in node.names}
        assert not any(name.split(".")[0] == "generator" for name in imported), topic.__name__


def test_every_sum_serves_a_question_or_a_scenario(content) -> None:
    served: set[str] = set()

    def walk(name: str, given: set[str]) -> None:
        if name not in given:
            served.add(name)
            for part in inspect.signature(by_hand.SUMS[name].work).parameters:
                walk(part, given)

    for module in BANKS:
        for question in numbers(content, module):
            walk(question.asks, set(question.given))
    for scenario in content.scenarios.values():
        for part in scenario.parts:
            walk(part.asks, set(scenario.given))
    assert sorted(set(by_hand.SUMS) - served) == []
