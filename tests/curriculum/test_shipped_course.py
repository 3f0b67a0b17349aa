"""The course that travels with the tool is good itself, and the tool says no word that is missing or left over."""

from pathlib import Path

from generator.curriculum import check, load

ROOT = Path(__file__).parents[2]


def test_the_shipped_course_has_no_problem() -> None:
    assert [str(problem) for problem in load(ROOT).problems] == []


def test_every_word_is_said_and_every_word_said_is_there() -> None:
    content = load(ROOT).content
    assert content is not None
    assert [str(problem) for problem in check(content)] == []


def test_every_kind_of_question_is_asked_in_the_shipped_course() -> None:
    content = load(ROOT).content
    assert content is not None
    kinds = {question.kind for question in content.questions.values()}
    assert kinds == {"number", "choice", "order", "match", "spot", "spoken"}


def test_whoever_is_sent_to_the_formula_sheet_may_use_it() -> None:
    """On an exam paper the aids say what may lie on the table."""
    content = load(ROOT).content
    assert content is not None
    sent = [one for one in content.questions.values() if "formula sheet" in one.text["en"]]
    assert sent
    assert all("formulas" in getattr(one, "aids", ()) for one in sent)
