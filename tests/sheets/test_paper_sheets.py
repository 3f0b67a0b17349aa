"""The examiner's sheet for the oral recheck, and what a learner takes home to practise."""

from __future__ import annotations

from io import BytesIO

import pytest
from pypdf import PdfReader

from generator.assessment.blueprint import recheck_of
from generator.assessment.paper_draw import Exam, draw_papers
from generator.assessment.paper_oral import oral_questions
from generator.exercises import NumberItem, Person, Record, mark_set
from generator.problems import RefusedError
from generator.sheets.feedback import _one_line, feedback_pdf
from generator.sheets.oral import oral_pdf
from tests.assessment.exam_papers import course

SECRET = bytes(range(32))
SCHEME = course().schemes["frame-hand"]
EXAM = Exam(SCHEME, "spring", SECRET)


def record() -> Record:
    return draw_papers(course(), EXAM, [Person("Asha Devi"), Person("Bir Singh", "hi")], "en", tool="test").record


def words_of(data: bytes) -> str:
    return " ".join(" ".join(page.extract_text() for page in PdfReader(BytesIO(data)).pages).split())


def test_the_recheck_asks_enough_with_other_numbers_than_the_paper() -> None:
    learner = record().learners[0]
    items = oral_questions(course(), EXAM, learner)
    assert SCHEME.oral is not None
    assert len(items) == SCHEME.oral.most
    on_paper = {item.id: item for item in learner.items}
    for item in items:
        if isinstance(item, NumberItem) and item.id in on_paper:
            assert item != on_paper[item.id]
        elif not isinstance(item, NumberItem):
            assert item.id not in on_paper
    assert len({item.model_dump_json() for item in items}) == len(items)
    assert items == oral_questions(course(), EXAM, learner)
    assert items != oral_questions(course(), EXAM, record().learners[1])


def test_no_rule_no_recheck() -> None:
    bare = Exam(SCHEME.model_copy(update={"oral": None}), "spring", SECRET)
    with pytest.raises(RefusedError, match="no oral recheck"):
        oral_questions(course(), bare, record().learners[0])


def test_the_examiner_sees_what_is_right_and_when_to_stop() -> None:
    made = record()
    learner, rule = made.learners[0], SCHEME.oral
    assert rule is not None
    items = oral_questions(course(), EXAM, learner)
    test = recheck_of(rule)
    text = words_of(oral_pdf(learner, items, test, SCHEME, made.set_id, course()))
    for item in items:
        assert " ".join(item.text.split()) in text
        if isinstance(item, NumberItem):
            assert item.shown_key in text
    assert test.limits(7) == (7, 3)
    assert "7 7 3" in text
    assert f"After {rule.most} questions" in text


@pytest.mark.parametrize("right", [True, False])
def test_feedback_says_what_to_practise_and_gives_no_key(right: bool) -> None:
    made = record()
    key = {
        (1, label): item.shown_key if right else "1"
        for label, item, _ in made.learners[0].labelled()
        if isinstance(item, NumberItem)
    }
    marks = mark_set(made, key)
    text = words_of(feedback_pdf(marks.learners[:1], made.set_id, course()))
    spacing = course().competencies["bar-spacing"].text["en"]
    good, practise = text.index("What went well") if right else -1, text.index("Practise this next")
    assert (good < text.index(spacing) < practise) if right else (text.index(spacing) > practise)
    if not right:
        for _, item, _ in made.learners[0].labelled():
            if isinstance(item, NumberItem) and "." in item.shown_key:
                assert item.shown_key not in text
        assert course().modules["frame"].title["en"] in text


def test_a_verdict_leads_on_to_its_reason() -> None:
    assert _one_line(["Not yet", "Measure the ring.", "Then?"]) == "Not yet: Measure the ring. Then?"
    assert _one_line(["अभी नहीं"]) == "अभी नहीं"


def test_feedback_carries_the_decision_in_both_languages() -> None:
    made = record()
    marks = mark_set(made, {})
    pages = PdfReader(BytesIO(feedback_pdf(marks.learners, made.set_id, course(), [["Not yet."], []]))).pages
    assert "Not yet." in words_of(feedback_pdf(marks.learners, made.set_id, course(), [["Not yet."], []]))
    assert len(pages) >= 2
