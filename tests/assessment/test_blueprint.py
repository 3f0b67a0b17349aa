"""Schemes: what a blueprint needs of its bank, what a status asks for, and where the author is told."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator import curriculum
from generator.assessment import blueprint
from generator.curriculum.models import BlueprintCell, ChoiceQuestion, Question, Scheme
from tests.assessment.exam_papers import course
from tests.assessment.small_scheme import SCHEME, both
from tests.commands.course_copy import course_copy

FILE = Path("quizzes/schemes/frame-hand.yaml")
Spoil = Callable[[str], str]


def spoiled(folder: Path, *changes: tuple[str, str]) -> list[str]:
    """The problems of the shipped course after changes to its scheme: those of loading, or those of the blueprint."""
    home = course_copy(folder)
    path = home / FILE
    text = path.read_text("utf-8")
    for old, new in changes:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    path.write_text(text, "utf-8")
    loaded = curriculum.load(home)
    if loaded.content is None:
        return [str(problem) for problem in loaded.problems]
    return [str(problem) for problem in blueprint.check(loaded.content)]


def test_the_shipped_scheme_is_provisional_whole_and_without_a_problem() -> None:
    scheme = course().schemes["frame-hand"]
    assert scheme.status == "provisional"
    for name in ("job", "tasks", "prerequisites", "experience_route", "oral", "retest", "recertification"):
        assert getattr(scheme, name)
    assert blueprint.check(course()) == []
    critical = {
        f"{name}/{step.id}"
        for name in scheme.practicals
        for step in course().practicals[name].steps
        if step.critical
    }  # fmt: skip
    assert set(scheme.critical_steps) == critical


def test_a_scheme_of_before_still_loads() -> None:
    assert SCHEME.blueprint == ()
    assert SCHEME.oral is None
    one = replace(course(), schemes={SCHEME.id: SCHEME.model_copy(update={"practicals": ("close-a-ring",)})})
    assert blueprint.check(one) == []


THIN = ("lap, kind: choice, count: 1", "lap, kind: choice, count: 2")
"""A cell that the bank fills once, and not three times over."""


def test_a_thin_bank_is_told_and_is_no_problem_yet(tmp_path: Path) -> None:
    assert blueprint.warnings(course()) == []
    home = course_copy(tmp_path)
    path = home / FILE
    path.write_text(path.read_text("utf-8").replace(*THIN), "utf-8")
    loaded = curriculum.load(home)
    assert loaded.content is not None
    found = blueprint.warnings(loaded.content)
    assert {problem.code for problem in found} == {"blueprint-thin"}
    assert all(problem.file.endswith("frame-hand.yaml") and problem.line > 40 for problem in found)
    assert blueprint.check(loaded.content) == []


def test_a_scheme_in_force_has_to_be_filled_three_times_over(tmp_path: Path) -> None:
    found = spoiled(tmp_path, ("status: provisional", "status: in-force"), THIN)
    assert any("three times over" in problem for problem in found)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("lap, kind: choice, count: 1", "lap, kind: choice, count: 9", "fill 9 choice question(s) on 'lap'"),
        ("competency: tying, kind", "competency: tieing, kind", "unknown competency 'tieing'"),
        ("kind: order, count: 1", "kind: riddle, count: 1", "frame-hand.yaml:"),
        ("novice: 0.6", "novice: 0.9", "below a master's"),
        ("- close-a-ring/ring-is-round", "- close-a-ring/ring-is-raund", "unknown step"),
        ("- close-a-ring/ring-is-round", "- close-a-ring/clean-ground", "not in its practical"),
        ("lap, kind: number, count: 1", "lap, kind: choice, count: 1", "asks for the same"),
        ("minutes: 90", "panel: {kind: spacing}\nminutes: 90", "need the gap of the plan"),
        ("status: provisional", "status: certain", "status"),
        ("validity_years: 3", "validity_years: 0", "validity_years"),
        ("wait_days: 14, most: 3", "wait_days: 14", "most"),
    ],
)  # fmt: skip
def test_what_is_wrong_is_named_with_its_line(old: str, new: str, said: str, tmp_path: Path) -> None:
    found = spoiled(tmp_path, (old, new))
    assert any(said in problem for problem in found), found
    assert all(problem.startswith("quizzes/schemes/frame-hand.yaml:") for problem in found)
    assert all(":0:" not in problem for problem in found)


def test_a_critical_skill_that_nothing_asks_for_is_named(tmp_path: Path) -> None:
    cells = (
        ("- {competency: lap, kind: number, count: 1}\n", ""),
        ("- {competency: lap, kind: choice, count: 1}\n", ""),
    )
    assert any("'lap' is neither asked" in problem for problem in spoiled(tmp_path, *cells))


def test_a_scheme_in_force_has_to_say_everything(tmp_path: Path) -> None:
    text = (Path(__file__).parents[2] / FILE).read_text("utf-8")
    retest = next(line for line in text.splitlines(keepends=True) if line.startswith("retest"))
    found = spoiled(tmp_path, ("status: provisional", "status: in-force"), (retest, ""))
    assert any("has to say its retest" in problem for problem in found)


def test_a_draft_may_ask_for_more_than_there_is(tmp_path: Path) -> None:
    changes = (("status: provisional", "status: draft"), ("lap, kind: choice, count: 1", "lap, kind: choice, count: 9"))
    assert spoiled(tmp_path, *changes) == []


def question(number: int, competency: str, difficulty: int) -> Question:
    return ChoiceQuestion.model_validate(
        {
            "id": f"q{number}", "kind": "choice", "competency": competency, "difficulty": difficulty,
            "text": both("?"), "options": [{"text": both("a"), "right": True}, {"text": both("b")}],
        }
    )  # fmt: skip


cells = st.builds(
    BlueprintCell,
    competency=st.sampled_from(["a", "b"]),
    kind=st.sampled_from([None, "choice"]),
    difficulty=st.sampled_from([None, 1, 2]),
    count=st.just(1),
)
banks = st.lists(st.tuples(st.sampled_from(["a", "b"]), st.sampled_from([1, 2])), max_size=5)


@given(wanted=st.lists(cells, max_size=4), bank=banks)
def test_as_many_slots_are_filled_as_can_be(wanted: list[BlueprintCell], bank: list[tuple[str, int]]) -> None:
    """Held against trying everything."""
    questions = [question(number, *one) for number, one in enumerate(bank)]
    found = blueprint.fill_slots(wanted, questions)
    used = [place for place in found if place is not None]
    assert len(set(used)) == len(used)
    assert all(blueprint.fits(wanted[s], questions[p]) for s, p in enumerate(found) if p is not None)

    def best(slot: int, free: frozenset[int]) -> int:
        if slot == len(wanted):
            return 0
        tries = [1 + best(slot + 1, free - {p}) for p in free if blueprint.fits(wanted[slot], questions[p])]
        return max([best(slot + 1, free), *tries])

    assert len(used) == best(0, frozenset(range(len(questions))))


def test_a_scheme_may_allow_aids_and_have_no_limit_of_time() -> None:
    made = Scheme.model_validate(SCHEME.model_dump() | {"aids": ["tape"], "minutes": 0})
    assert made.aids == ("tape",)
