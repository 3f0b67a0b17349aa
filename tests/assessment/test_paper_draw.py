"""Papers are parallel, drawn with a secret, and no two neighbours have the same numbers."""

from __future__ import annotations

import hashlib
import hmac
from collections import Counter
from dataclasses import replace

import pytest

from generator.assessment.blueprint import fits, slots
from generator.assessment.paper_draw import (
    Exam,
    draw_papers,
    draw_seed,
    exam_id,
    given_tuple,
    has_numbers,
    paper_figures,
    scheme_of,
)
from generator.assessment.seats import neighbours, read_seats
from generator.curriculum.models import OneOf, Scheme
from generator.exercises import Person, Record, from_json, same_name, to_json
from generator.problems import ProblemsError, RefusedError
from tests.assessment.exam_papers import course

SECRET = b"0123456789abcdef0123456789abcdef"
CLASS = [Person(f"Learner {letter}") for letter in "ABCDEFGHIJKL"]
SEATS = {person.name: (1 + place // 4, 1 + place % 4) for place, person in enumerate(CLASS)}


def frame_hand() -> Scheme:
    return course().schemes["frame-hand"]


def papers(people: list[Person] = CLASS, **more: object) -> Record:
    values: dict[str, object] = {"scheme": frame_hand(), "id": "spring", "secret": SECRET, "attempt": 1} | more
    seats = values.pop("seats", SEATS)
    exam = Exam(**values)  # type: ignore[arg-type]
    return draw_papers(course(), exam, people, "en", tool="test", seats=seats).record  # type: ignore[arg-type]


def test_a_seed_is_the_hmac_of_its_message() -> None:
    wanted = hmac.new(SECRET, b"spring|asha|hoops|2", hashlib.sha256).hexdigest()
    assert draw_seed(SECRET, "spring", "asha", "hoops", 2) == wanted


def test_no_two_draws_share_a_message() -> None:
    found = {
        draw_seed(SECRET, exam, who, item, attempt, again)
        for exam in ("a", "a|b", "a%7Cb")
        for who in ("b", "b|c", "c")
        for item in ("c", "c|1", "d")
        for attempt in (1, 11)
        for again in (0, 1)
    }
    assert len(found) == 3 * 3 * 3 * 2 * 2


def test_a_short_secret_is_refused() -> None:
    with pytest.raises(ValueError, match="needs 32"):
        draw_seed(b"short", "a", "b", "c", 1)


def test_every_paper_follows_the_blueprint_and_none_asks_twice() -> None:
    wanted = slots(frame_hand())
    for learner in papers().learners:
        asked = [course().questions[item.id] for item in learner.items]
        assert len({question.id for question in asked}) == len(asked)
        assert all(fits(cell, question) for cell, question in zip(wanted, asked, strict=True))


def test_papers_differ_between_candidates_secrets_exams_and_tries() -> None:
    def numbers(record: Record) -> str:
        return repr([given_tuple(item) for item in record.learners[0].items])

    first = papers()
    assert len({repr([given_tuple(i) for i in one.items]) for one in first.learners}) == len(CLASS)
    others = [papers(secret=b"x" * 32), papers(id="autumn"), papers(attempt=2)]
    assert len({numbers(record) for record in [first, *others]}) == 4


def test_the_same_exam_is_the_same_and_a_new_name_changes_no_other_paper() -> None:
    assert to_json(papers()) == to_json(papers())
    more = papers([*CLASS, Person("Zoya")], seats=None).learners[: len(CLASS)]
    assert more == papers(seats=None).learners


@pytest.mark.parametrize("secret", [bytes([i]) * 32 for i in range(6)])
def test_neighbours_never_have_the_same_numbers_or_order(secret: bytes) -> None:
    record = papers(secret=secret)
    by_name = {same_name(learner.name): learner for learner in record.learners}
    seats = {same_name(name): seat for name, seat in SEATS.items()}
    pairs = 0
    for name, near in neighbours(seats).items():
        for other in near:
            mine = {item.id: given_tuple(item) for item in by_name[name].items}
            theirs = {item.id: given_tuple(item) for item in by_name[other].items}
            assert all(mine[key] != theirs[key] for key in mine.keys() & theirs.keys())
            pairs += len(mine.keys() & theirs.keys())
    assert pairs > 100


def test_too_few_numbers_for_neighbours_is_a_problem() -> None:
    question = course().questions["round-the-ring"]
    narrow = question.model_copy(update={"given": {"frame_diameter": OneOf(one_of=(2.0,))}})
    content = course()
    small = Scheme.model_validate(
        frame_hand().model_dump()
        | {"blueprint": [{"competency": narrow.competency, "kind": "number", "count": 1}], "critical_competencies": []}
    )
    one = replace(
        content,
        asked={"frame": (narrow,)},
        banks={name: bank.model_copy(update={"questions": (narrow,)}) for name, bank in content.banks.items()},
    )
    exam = Exam(small, "spring", SECRET)
    with pytest.raises(ProblemsError) as refused:
        draw_papers(one, exam, CLASS[:2], "en", tool="t", seats={"Learner A": (1, 1), "Learner B": (2, 1)})
    assert [problem.code for problem in refused.value.problems] == ["same-numbers"]
    apart = {"Learner A": (1, 1), "Learner B": (2, 2)}
    assert draw_papers(one, exam, CLASS[:2], "en", tool="t", seats=apart).record.learners


def test_the_record_says_which_exam_and_not_the_secret() -> None:
    record = papers()
    assert scheme_of(record) == ("frame-hand", frame_hand().version)
    assert exam_id(record) == "spring"
    written = to_json(record)
    assert SECRET not in written
    assert SECRET.hex().encode() not in written
    assert from_json("r", written) == record


def test_a_practice_set_is_no_exam() -> None:
    record = papers().model_copy(update={"seed": "monday"})
    assert scheme_of(record) is None
    assert exam_id(record) == ""


def test_a_scheme_without_blueprint_makes_no_papers() -> None:
    with pytest.raises(RefusedError, match="no blueprint"):
        papers(scheme=frame_hand().model_copy(update={"blueprint": ()}))


def test_drawings_come_with_the_questions_that_have_one() -> None:
    exam = Exam(frame_hand(), "spring", SECRET)
    drawn = draw_papers(course(), exam, CLASS[:2], "en", tool="test")
    for learner in drawn.record.learners:
        labels = {label for label, item, _ in learner.labelled() if course().questions[item.id].figure}
        assert set(paper_figures(course(), drawn, learner)) == labels


def test_numbers_are_drawn_evenly() -> None:
    """Rejection sampling has no favourite: every allowed number comes up among many candidates."""
    found: Counter[float] = Counter()
    for item in (
        i for learner in papers([Person(f"N{i}") for i in range(120)], seats=None).learners for i in learner.items
    ):
        if item.id == "round-the-ring" and has_numbers(item):
            found[dict(given_tuple(item))["frame_diameter"]] += 1  # type: ignore[call-overload]
    assert len(found) >= 14
    assert max(found.values()) <= 5 * min(found.values()) + 10


@pytest.mark.parametrize(
    ("rows", "codes"),
    [
        ("Asha,1,1\nBir,1,1\n", ["seat-taken"]),
        ("Asha,1,1\nAsha,1,2\n", ["two-seats"]),
        ("Asha,1,1\nZed,1,2\n", ["unknown-learner"]),
        ("Asha,1,1\n", ["no-seat"]),
        ("Asha,0,1\nBir,1,x\n", ["not-a-seat", "not-a-seat"]),
        ("Asha,1,1\nBir,1,²\n", ["not-a-seat"]),
    ],
)
def test_bad_seats_are_named(rows: str, codes: list[str]) -> None:
    with pytest.raises(ProblemsError) as refused:
        read_seats("seats.csv", f"learner,row,seat\n{rows}".encode(), ["Asha", "Bir"])
    assert [problem.code for problem in refused.value.problems] == codes
