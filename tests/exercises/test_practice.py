from __future__ import annotations

import json
from types import SimpleNamespace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import beta, betabinom

from generator.curriculum.models import Scheme
from generator.exercises.practice import (
    DAYS,
    WINDOW,
    Answer,
    Blueprint,
    Card,
    Next,
    Pool,
    blueprint_of,
    boxes,
    mastery,
    next_card,
    points_spread,
    pool_data,
    pool_of,
    practice_script,
    read_answers_so_far,
    readiness,
    readiness_told,
    sure_above,
    told,
    why,
    within_reach,
)
from tests.exercises import small
from tests.exercises.shipped import WORDS
from tests.exercises.small_course import course

POOL = Pool(
    (
        Card("ring-1", "ring", 1),
        Card("ring-2", "ring", 2),
        Card("ring-3", "ring", 3),
        Card("mortar-1", "mortar", 1),
        Card("mortar-2", "mortar", 2),
        Card("cover-1", "cover", 1),
    ),
    {"cover": ("ring", "mortar")},
)


def row(competency: str, rights: str, day: int = 0, question: str = "") -> list[Answer]:
    """Answers as a line of r and w, one question each or one for all."""
    return [Answer(question or f"{competency}-{i}", competency, day, sign == "r") for i, sign in enumerate(rights)]


@given(st.integers(0, 40).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n))), st.sampled_from([0.6, 0.7, 0.8]))
def test_the_chance_is_that_of_the_beta_distribution(seen: tuple[int, int], cut: float) -> None:
    right, count = seen
    assert sure_above(right, count, cut) == pytest.approx(beta.sf(cut, 1 + right, 1 + count - right), abs=1e-12)


@pytest.mark.parametrize(
    ("right", "count", "above_80", "above_70"),
    [
        (8, 10, 0.3826, 0.6873), (9, 10, 0.6779, 0.8870), (16, 20, 0.4140, 0.8016), (18, 20, 0.8213, 0.9729),
        (5, 5, 0.7379, 0.8824),
    ],
)  # fmt: skip
def test_worked_values(right: int, count: int, above_80: float, above_70: float) -> None:
    assert sure_above(right, count, 0.8) == pytest.approx(above_80, abs=5e-5)
    assert sure_above(right, count) == pytest.approx(above_70, abs=5e-5)


@pytest.mark.parametrize(("count", "needed"), [(5, 5), (8, 7), (10, 9), (15, 13), (20, 16)])
def test_fewest_right_answers_that_make_ready(count: int, needed: int) -> None:
    assert mastery("a", row("a", "r" * needed + "w" * (count - needed))).state == "ready"
    assert mastery("a", row("a", "r" * (needed - 1) + "w" * (count - needed + 1))).state != "ready"


def test_states_from_nothing_to_ready() -> None:
    said = [mastery("a", row("a", rights)).state for rights in ("", "rr", "www", "rrw", "rrrw", "rrrrr")]
    assert said == ["not_started", "few", "not_yet", "not_yet", "nearly", "ready"]


def test_only_the_last_answers_count() -> None:
    found = mastery("a", row("a", "w" * 50 + "r" * WINDOW))
    assert (found.right, found.count, found.state) == (WINDOW, WINDOW, "ready")


def test_a_card_comes_back_after_growing_days_and_a_wrong_answer_starts_again() -> None:
    days, answers, day = [], [], 0
    for _ in range(7):
        answers.append(Answer("q", "a", day, right=True))
        box = boxes(answers)["q"]
        days.append(DAYS[box.box])
        day += DAYS[box.box]
    assert days == [1, 3, 7, 14, 30, 30, 30]
    answers.append(Answer("q", "a", day, right=False))
    assert boxes(answers)["q"].box == 0


def test_many_right_answers_in_one_evening_are_worth_one() -> None:
    assert boxes(row("a", "rrrrrrrr", 5, "q"))["q"].box == 0
    assert boxes([*row("a", "rrr", 5, "q"), Answer("q", "a", 6, right=True)])["q"].box == 1


def test_what_needs_others_comes_into_reach_when_these_are_nearly_there() -> None:
    assert within_reach(POOL, []) == ("ring", "mortar")
    near = [*row("ring", "rrrw"), *row("mortar", "rrrrr")]
    assert within_reach(POOL, near) == ("ring", "mortar", "cover")
    assert within_reach(POOL, [*near, *row("ring", "wwww")]) == ("ring", "mortar")


def test_a_beginner_gets_an_easy_question_of_the_first_competency() -> None:
    for seed in range(20):
        assert next_card(POOL, [], 0, str(seed)) == Next("ring-1", "ring", "new", 0, 0, 0)


def test_due_comes_first_then_the_weakest_then_what_was_not_asked_for_longest() -> None:
    answers = [
        Answer("ring-1", "ring", 0, right=True),
        Answer("mortar-1", "mortar", 0, right=False),
        Answer("mortar-1", "mortar", 0, right=False),
    ]
    today, tomorrow = (next_card(POOL, answers, day, "s") for day in (0, 1))
    assert today is not None
    assert tomorrow is not None
    assert (today.question, today.reason) == ("mortar-2", "new")
    assert (tomorrow.question, tomorrow.reason, tomorrow.days) == ("mortar-1", "due", 1)
    all_mortar = [*answers, Answer("mortar-2", "mortar", 0, right=False)]
    again = next_card(POOL, all_mortar, 0, "s")
    assert again is not None
    assert (again.question, again.reason) == ("mortar-1", "weakest")
    ready = [
        *row("ring", "r" * 6, 0, "ring-1"),
        *row("mortar", "r" * 6, 0, "mortar-1"),
        *row("cover", "r" * 6, 0, "cover-1"),
    ]
    kept = next_card(POOL, ready, 0, "s")
    assert kept is not None
    assert kept.reason == "keep"
    assert kept.question not in ("ring-1", "mortar-1", "cover-1")


def test_the_harder_question_comes_when_the_learner_is_nearly_there() -> None:
    known = row("mortar", "r" * 6, 0, "mortar-1")
    nearly = [*known, *row("ring", "rrrw", 0, "other")]
    assert mastery("ring", nearly).state == "nearly"
    found = next_card(Pool(POOL.cards[:4]), nearly, 0, "s")
    assert found is not None
    assert found.question == "ring-3"


ANSWERS = st.lists(
    st.builds(
        Answer,
        st.sampled_from([card.question for card in POOL.cards]),
        st.sampled_from(["ring", "mortar", "cover"]),
        st.integers(0, 40),
        st.booleans(),
    ),
    max_size=40,
).map(lambda found: sorted(found, key=lambda answer: answer.day))


@given(ANSWERS, st.integers(40, 60), st.text(max_size=5))
def test_every_choice_is_in_reach_repeatable_and_said_in_one_sentence(
    answers: list[Answer], day: int, seed: str
) -> None:
    if any("\ud800" <= letter <= "\udfff" for letter in seed):
        return
    choice = next_card(POOL, answers, day, seed)
    assert choice == next_card(POOL, answers, day, seed)
    assert choice is not None
    assert choice.competency in within_reach(POOL, answers)
    for language, end in (("en", "."), ("hi", "।")):
        sentence = why(choice, "the ring", WORDS[language])
        assert "{" not in sentence
        assert sentence.endswith(end)
        assert sentence.count(f"{end} ") == 0


def test_an_empty_pool_has_nothing_to_ask() -> None:
    assert next_card(Pool(()), [], 0, "s") is None


@given(st.integers(0, 30), st.integers(0, 20).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n))))
def test_points_are_spread_as_the_beta_binomial_distribution(points: int, seen: tuple[int, int]) -> None:
    right, count = seen
    spread = points_spread(points, right, count)
    assert sum(spread) == pytest.approx(1)
    expected = [betabinom.pmf(k, points, 1 + right, 1 + count - right) for k in range(points + 1)]
    assert spread == pytest.approx(expected, abs=1e-10)


def test_readiness_for_a_paper_by_hand() -> None:
    """Two points of one competency after one right answer: 1/6, 1/3, 1/2; half of the points are needed."""
    found = readiness(Blueprint({"a": 2}, 0.5), row("a", "r"))
    assert found.chance == pytest.approx(1 / 3 + 1 / 2)
    assert found.expected == pytest.approx(2 / 3)
    assert found.first == ("a",)


def test_readiness_needs_the_critical_ones_too() -> None:
    answers = [*row("ring", "r" * 20), *row("cover", "rrr")]
    paper = Blueprint({"ring": 9, "cover": 1}, 0.7, ("cover",))
    assert readiness(paper, answers).state == "nearly"
    assert readiness(paper, answers).critical == ("cover",)
    assert readiness(paper, [*answers, *row("cover", "r")]).state == "ready"
    assert readiness(paper, []).state == "not_started"
    assert readiness(paper, row("ring", "wwwwww")).state == "not_yet"
    for points in ({}, {"a": 0}, {"a": 201}):
        with pytest.raises(ValueError, match="points"):
            readiness(Blueprint(points, 0.7), [])


def test_readiness_is_told_in_plain_words() -> None:
    names = {"ring": "the ring", "cover": "the cover"}
    paper = Blueprint({"ring": 9, "cover": 1}, 0.7, ("cover",))
    for words in WORDS.values():
        lines = readiness_told(readiness(paper, row("ring", "rrww")), names, words)
        assert len(lines) == 3
        assert "the cover" in lines[2]
        for state in ("", "rr", "www", "rrrw", "rrrrr"):
            assert "ring" in told(mastery("ring", row("ring", state)), "ring", words)


def test_a_scheme_gives_its_blueprint() -> None:
    scheme = Scheme.model_validate(
        {
            "format": 1, "id": "pen-hand", "version": 1, "status": "draft", "title": small.both("Pen hand"),
            "scope": {"role": small.both("hand"), "largest_volume": 1.0, "largest_wall_height": 1.0,
                      "roof": small.both("none")},
            "modules": ["pens"], "practicals": ["p"], "critical_competencies": ["cover"],
            "rule": {"written": 0.75, "practical": 0.9, "cut_from": small.both("nobody")},
        }
    )  # fmt: skip
    assert blueprint_of(scheme, POOL.cards) == Blueprint({"ring": 3, "mortar": 2, "cover": 1}, 0.75, ("cover",))


GOOD = {"question": "q", "competency": "a", "day": 3, "right": True}


@pytest.mark.parametrize(
    ("data", "kept", "left"),
    [
        ([GOOD], 1, 0), (None, 0, 0), ("text", 0, 1), ({"a": 1}, 0, 1), ([GOOD, 7, None, [], "x"], 1, 4),
        ([{**GOOD, "day": -1}, {**GOOD, "day": 0.5}, {**GOOD, "day": True}, {**GOOD, "day": float("nan")}], 0, 4),
        ([{**GOOD, "right": 1}, {**GOOD, "question": None}, {**GOOD, "day": 10**400}], 0, 3),
        ([{**GOOD, "day": 4.0}], 1, 0),
    ],
)  # fmt: skip
def test_what_is_damaged_in_a_file_is_left_out(data: object, kept: int, left: int) -> None:
    good, away = read_answers_so_far(data)
    assert (len(good), away) == (kept, left)


LEAVES = st.none() | st.booleans() | st.floats() | st.text(max_size=5)
KEYS = st.sampled_from([*GOOD, "x"])


@given(st.recursive(LEAVES, lambda inner: st.lists(inner, max_size=4) | st.dictionaries(KEYS, inner, max_size=5)))
def test_no_file_raises(data: object) -> None:
    good, _ = read_answers_so_far(data)
    assert next_card(POOL, good, 5, "s") is not None


def test_the_script_is_old_plain_javascript() -> None:
    script = practice_script()
    for new in ("=>", "`", "let ", "const ", "class ", "</"):
        assert new not in script.replace("<=", ""), new
    assert json.loads(script.rstrip().splitlines()[-1].split("load(", 1)[1].removesuffix(");"))["window"] == WINDOW


def test_the_pool_of_a_course_follows_its_modules() -> None:
    def card(id_: str, competency: str) -> SimpleNamespace:
        return SimpleNamespace(id=id_, competency=competency, difficulty=2, retired=False)

    asked = {"first": (card("a", "x"), card("b", "y")), "second": (card("c", "z"), card("d", "x")), "old": ()}
    modules = {
        "first": SimpleNamespace(id="first", needs=(), retired=False),
        "second": SimpleNamespace(id="second", needs=("first",), retired=False),
        "old": SimpleNamespace(id="old", needs=(), retired=True),
    }
    content: Any = SimpleNamespace(modules=modules, questions_of=lambda name: asked[name])
    pool = pool_of(content)
    assert [card.question for card in pool.cards] == ["a", "b", "c", "d"]
    assert pool.needs == {"z": ("x", "y")}
    assert pool_of(content, ["first"]).needs == {}
    assert pool_data(pool)["cards"][0] == {"question": "a", "competency": "x", "difficulty": 2}


def test_retired_questions_are_not_practised() -> None:
    retired = small.WIRES.model_copy(update={"retired": True})
    made = course((retired, small.CHOICE), ())
    made.modules = {"pens": SimpleNamespace(id="pens", retired=False, needs=())}
    assert [card.question for card in pool_of(made).cards] == [small.CHOICE.id]
