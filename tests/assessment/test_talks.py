"""Talks on critical skills: who is asked what, in which order, and what stands on the examiner's sheet."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache
from io import BytesIO

import pytest
from pypdf import PdfReader

from generator.assessment import blueprint
from generator.assessment.blueprint import needs_options, recheck_of
from generator.assessment.paper_draw import Drawn, Exam, draw_papers
from generator.assessment.paper_oral import Asked, Talk, talks
from generator.curriculum.item_words import ITEM_LANGUAGES
from generator.exercises import ChoiceItem, Person, SpokenItem, make_item
from generator.problems import RefusedError
from generator.sheets.oral import talks_pdf
from tests.assessment.exam_papers import course
from tests.assessment.test_paper_forms import pdf_texts

SECRET = b"a secret of the ridge, for tests!"
SCHEMES = ("frame-hand", "plaster-hand", "lead-mason", "trainer-observer")


def exam(scheme: str) -> Exam:
    return Exam(course().schemes[scheme], "spring", SECRET)


@cache
def drawn(scheme: str) -> Drawn:
    people = [Person("Asha", "en"), Person("Bir", "hi")]
    return draw_papers(course(), exam(scheme), people, "en", tool="test 1")


@cache
def held(scheme: str, who: int) -> tuple[Talk, ...]:
    return talks(course(), exam(scheme), drawn(scheme).record.learners[who])


def page_texts(data: bytes) -> list[str]:
    return [page.extract_text() for page in PdfReader(BytesIO(data)).pages]


@pytest.mark.parametrize("scheme", SCHEMES)
def test_every_critical_skill_has_as_many_questions_as_its_talk_may_need(scheme: str) -> None:
    rule = course().schemes[scheme]
    assert rule.talk is not None
    for who in (0, 1):
        found = held(scheme, who)
        assert [talk.competency for talk in found] == sorted(rule.critical_competencies)
        for talk in found:
            assert len(talk.questions) == rule.talk.most
            assert {asked.item.competency for asked in talk.questions} == {talk.competency}


@pytest.mark.parametrize("scheme", SCHEMES)
def test_a_question_of_the_paper_comes_after_all_others(scheme: str) -> None:
    on_paper = {item.id for item in drawn(scheme).record.learners[0].items}
    for talk in held(scheme, 0):
        once = list(dict.fromkeys(asked.item.id for asked in talk.questions))
        known = [name in on_paper for name in once]
        assert known == sorted(known)


def test_two_candidates_are_not_asked_the_same_and_one_always_is() -> None:
    first, second = held("frame-hand", 0), held("frame-hand", 1)
    assert [a.item.id for t in first for a in t.questions] != [a.item.id for t in second for a in t.questions]
    again = talks(course(), exam("frame-hand"), drawn("frame-hand").record.learners[0])
    assert [t.questions for t in again] == [t.questions for t in first]


def test_the_sheet_has_every_question_and_what_is_right_and_no_other_option() -> None:
    learner, scheme = drawn("frame-hand").record.learners[0], course().schemes["frame-hand"]
    found = held("frame-hand", 0)
    assert scheme.talk is not None
    data = talks_pdf(learner, found, recheck_of(scheme.talk), scheme, "1a2b3c4d", course())
    text = " ".join(pdf_texts(data).split())
    for talk in found:
        for each in talk.questions:
            assert not each.options
            asked = each.item.answer if isinstance(each.item, SpokenItem) else each.item
            if isinstance(asked, ChoiceItem):
                assert all(asked.options[i] in text for i in asked.right)
                assert not any(f"- {option}" in text for i, option in enumerate(asked.options) if i not in asked.right)


def test_a_scheme_without_talks_has_none() -> None:
    plain = exam("frame-hand").scheme.model_copy(update={"talk": None})
    with pytest.raises(RefusedError, match="has no talks"):
        talks(course(), Exam(plain, "spring", SECRET), drawn("frame-hand").record.learners[0])


def test_a_bank_that_can_not_keep_a_talk_going_is_told() -> None:
    """The longest talk that a rule may ask for, on a skill that has no question with drawn numbers."""
    scheme = course().schemes["frame-hand"]
    assert scheme.talk is not None
    longer = scheme.model_copy(update={"talk": scheme.talk.model_copy(update={"most": 40})})
    found = blueprint.warnings(replace(course(), schemes={scheme.id: longer}))
    assert [problem.code for problem in found] == ["talk-thin"]
    assert "'safe-steel-work'" in found[0].what
    strict = longer.model_copy(update={"status": "in-force"})
    assert "talk-thin" in {one.code for one in blueprint.check(replace(course(), schemes={scheme.id: strict}))}


def test_what_points_at_its_options_is_known_in_each_language() -> None:
    """A text of one language that points at the options would read oddly aloud; so the others have to point, too."""
    found = {one.id for one in course().questions.values() if needs_options(one)}
    assert {"mostly-fine", "ready-for-the-mesh", "signs-of-fill"} <= found
    for question in course().questions.values():
        if question.kind == "choice":
            points = {bool(ITEM_LANGUAGES[code].among.search(text)) for code, text in question.text.items()}  # type: ignore[union-attr]
            assert len(points) == 1, question.id
            turned = re.search(r"\b(which line|choose all|following|options?)\b", question.text["en"], re.IGNORECASE)
            assert not turned or question.id in found, question.id


def test_no_talk_asks_without_options_what_says_nothing_without_them() -> None:
    """In no scheme and for no candidate: others come first, and where there is no other the options are read out."""
    for scheme in course().schemes.values():
        assert scheme.talk is not None
        for number in range(2):
            for talk in held(scheme.id, number):
                for asked in talk.questions:
                    assert asked.options == needs_options(course().questions[asked.item.id])
                    assert not asked.options


def test_where_there_is_no_other_the_options_are_read_out() -> None:
    scheme, learner = course().schemes["lead-mason"], drawn("lead-mason").record.learners[0]
    assert scheme.talk is not None
    item = make_item(course().questions["mostly-fine"], "seed", course().words["en"])
    assert isinstance(item, ChoiceItem)
    talk = Talk(item.competency, (Asked(item, None, options=True),))
    data = talks_pdf(learner, [talk], recheck_of(scheme.talk), scheme, "1a2b3c4d", course())
    text = " ".join(pdf_texts(data).split())
    assert all(f"- {option}" in text for option in item.options)


def test_drawings_stand_behind_the_key_and_no_question_or_answer_beside_them() -> None:
    """The examiner holds a page up: whatever stands on it is seen. A drawing that comes again is there once."""
    scheme, learner = course().schemes["lead-mason"], drawn("lead-mason").record.learners[0]
    assert scheme.talk is not None
    found = held("lead-mason", 0)
    with_one = next(talk for talk in found for asked in talk.questions if asked.scene is not None)
    one = next(asked for asked in with_one.questions if asked.scene is not None)
    bare = replace(one, scene=None)
    for count in (1, 3):
        talk = Talk(with_one.competency, (bare,) + (one,) * count)
        pages = page_texts(talks_pdf(learner, [talk], recheck_of(scheme.talk), scheme, "1a2b3c4d", course()))
        begins = next(number for number, text in enumerate(pages) if "To look at and point at" in text)
        key, shown = "".join(pages[:begins]), "".join(pages[begins:])
        assert key.count("Show drawing 1, then ask.") == count
        assert shown.count("Drawing 1") == 1
        assert "Drawing 2" not in shown
        assert key.count("Right is:") == count + 1
        assert "Right is:" not in shown
    without = Talk(with_one.competency, (bare,))
    pages = page_texts(talks_pdf(learner, [without], recheck_of(scheme.talk), scheme, "1a2b3c4d", course()))
    assert not any("To look at and point at" in text for text in pages)
