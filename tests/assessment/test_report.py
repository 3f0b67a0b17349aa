"""The report: what is changed first and why, in both languages, from small made-up groups."""

from __future__ import annotations

import json
import re

import pytest

from generator.assessment import score_files as files
from generator.assessment.analysis import Analysis, analyse
from generator.assessment.analysis_data import as_data, plain
from generator.assessment.notes import NoAnswerError
from generator.assessment.report import MOST_CHANGES, Masons, Names, Report, report
from generator.assessment.report_page import report_page
from generator.assessment.simulate import Asked, Exam, Mason, Watched, certified_share, gates
from generator.curriculum import CourseContent
from generator.figures.scene import Label
from generator.plans import sections_text
from generator.words import Words
from tests.assessment.answer_files import GROUPS, JUDGES, LETTERS, OBSERVERS, RATINGS, answer, results


@pytest.fixture(name="words", params=["en", "hi"])
def words_of_a_language(request: pytest.FixtureRequest, content: CourseContent) -> Words:
    return content.words[request.param]


def table(*rows: str, head: str = "learner,") -> files.Answers:
    """Answers of learners P0, P1 ... given as texts of 0 and 1."""
    count = len(rows[0])
    lines = [head + ",".join(f"q{i + 1}" for i in range(count))]
    lines += [f"P{i}," + ",".join(row) for i, row in enumerate(rows)]
    return files.read_scores("f", "\n".join(lines).encode())


def changes(analysis: Analysis, content: CourseContent) -> list[str]:
    return [change.name for change in report(analysis, content.words["en"]).changes]


BACKWARD = table("1110", "1110", "1100", "1000", "1001", "0001", "0001", "0001")
"""q4 is right for those who know the rest least."""


def test_a_question_that_the_best_miss_is_looked_at_first(content: CourseContent) -> None:
    told = report(analyse(BACKWARD, lambda _: 2), content.words["en"])
    assert told.changes[0].name == "key_or_question"
    assert told.changes[0].sentence == "Look at the key and the text of “q4”. Do not remove it on this alone."
    assert "0\u00a0% of them had it right" in told.changes[0].why
    assert told.cautions == ("Only 8 learners: all of this is a first look. Remove no question on this alone.",)


def test_a_wrong_key_is_seen_where_papers_differ(content: CourseContent) -> None:
    """Letters alone tell it: the strong took B, the weak took the key A; one learner had one question less."""
    rows = ["A,B,1,1,1,1"] * 3 + ["A,A,0,0,0,0"] * 3 + ["B,-,1,0,1,0"]
    text = "learner,x,y,q1,q2,q3,q4\nkey,A,A,,,,\n" + "".join(f"P{i},{row}\n" for i, row in enumerate(rows))
    found = analyse(files.read_scores("f", text.encode()))
    assert not found.same_paper
    assert found.tables is not None
    assert found.tables["y"].suspect_key
    told = report(found, content.words["en"])
    assert [change.sentence for change in told.changes if "“y”" in change.sentence]


def test_where_papers_differ_nothing_is_said_about_passing_or_length(content: CourseContent) -> None:
    found = analyse(files.joined_answers([table("1101", "0010"), table("110", "011", "100")]), lambda _: 2)
    told = report(found, content.words["en"])
    assert found.decisions is None
    assert not {"set_cut", "longer", "other_questions"} & {change.name for change in told.changes}
    text = " ".join(sections_text(told.sections(content.words["en"])).split())
    assert "The papers differ. What compares learners uses only the questions that all had: 3 of 4." in text
    assert "so nothing is said about passing" in text


def test_all_or_nothing_fits_no_model_and_says_so(content: CourseContent) -> None:
    found = analyse(table("111", "111", "000", "000"), lambda _: 2)
    assert found.decisions is not None
    text = sections_text(report(found, content.words["en"]).sections(content.words["en"]))
    assert text.count("No model of chance fits these points") >= 1
    assert found.decisions.models["normal"].same == pytest.approx(1)  # type: ignore[union-attr]


def test_what_everybody_and_nobody_knew(content: CourseContent) -> None:
    found = analyse(table("110", "100", "110", "100"), lambda _: 1)
    told = {change.name: change for change in report(found, content.words["en"]).changes}
    assert told["too_easy"].sentence.endswith("q1.")
    assert "q3" in told["nobody_right"].sentence
    assert "Not one of 4 learners" in told["nobody_right"].why


def test_without_a_cut_a_panel_is_asked_for_and_nothing_is_said_about_passing(content: CourseContent) -> None:
    found = analyse(BACKWARD)
    assert found.decisions is None
    assert "set_cut" in changes(found, content)
    assert "decisions" not in [chapter.section.key for chapter in report(found, content.words["en"]).chapters]


def test_the_judges_cut_is_used_where_they_judged_this_paper() -> None:
    judges = files.read_judges("f", JUDGES)
    paper = table("111", "110", "100", "000", "111", "011")
    found = analyse(paper, judges=judges)
    assert found.decisions is not None
    assert found.decisions.cut == found.rounds[-1].cut == 2
    assert analyse(BACKWARD, judges=judges).decisions is None  # four questions, three judged
    assert analyse(paper, lambda _: 3, judges).decisions.cut == 3  # type: ignore[union-attr]


def test_everybody_alike_has_no_reliability_and_says_so(content: CourseContent) -> None:
    found = analyse(table("110", "101", "011"), lambda _: 2)
    text = sections_text(report(found, content.words["en"]).sections(content.words["en"]))
    assert "Everybody has the same points, so nothing can be told apart." in text
    assert found.decisions is not None
    assert found.decisions.same is None


def test_one_question_and_one_learner_are_told_and_do_not_fail(words: Words) -> None:
    for rows in (["1"], ["1", "0"], ["10"]):
        found = analyse(table(*rows), lambda _: 1)
        assert sections_text(report(found, words).sections(words))


def test_wrong_ideas_are_told_with_what_happens_on_the_hill(content: CourseContent) -> None:
    wrong = [answer(1, "hoops", "not_yet", "spaces_counted_not_hoops"), answer(2, "laps", "right")]
    right = [answer(1, "hoops", "right"), answer(2, "laps", "not_yet")]
    data = results(("Asha", wrong), ("Bimla", wrong), ("Chandan", right), ("Deepak", right))
    found = analyse(files.read_scores("f", data), lambda _: 1)
    teach = next(change for change in report(found, content.words["en"]).changes if change.name == "teach")
    assert content.words["en"].say_one_of("misconception", "spaces_counted_not_hoops.mistake") in teach.sentence
    assert content.words["en"].say_one_of("misconception", "spaces_counted_not_hoops.hill") in teach.why
    assert "Wrong answers to “hoops”: 2; 2 of them are just this." in teach.why


def test_a_mistake_that_the_course_gave_up_stays_a_name(content: CourseContent) -> None:
    wrong = [answer(1, "a", "not_yet", "gone_long_ago"), answer(2, "b", "right")]
    found = analyse(files.read_scores("f", results(("A", wrong), ("B", wrong))), lambda _: 1)
    assert any("gone_long_ago" in change.sentence for change in report(found, content.words["en"]).changes)


def spoken(written_right: int, spoken_right: int, each: int) -> files.Answers:
    rows = [f"W{i},written,{int(i < written_right)},{i % 2}" for i in range(each)]
    rows += [f"S{i},spoken,{int(i < spoken_right)},{i % 2}" for i in range(each)]
    return files.read_scores("f", "\n".join(["learner,form,gate,rope", *rows]).encode())


def test_a_question_that_is_harder_to_hear_is_told_and_luck_is_not(content: CourseContent) -> None:
    apart = analyse(spoken(19, 6, 20))
    assert [form.question for form in apart.forms] == ["gate", "rope"]
    assert apart.forms[0].p < 0.01
    assert "form_apart" in changes(apart, content)
    assert "form_apart" not in changes(analyse(spoken(13, 10, 20)), content)


def test_numbers_that_are_harder_when_large_are_told(content: CourseContent) -> None:
    scores = table(*["11"] * 12, *["01"] * 12).scores
    given = files.Given({"pen_width": tuple(float(i) for i in range(24)), "fixed": (3.0,) * 24})
    found = analyse(files.Answers(scores, {"q1": given}))
    assert [(band.given, band.edge) for band in found.bands] == [("pen_width", 11.5)]
    assert found.bands[0].comparison.right == (12, 0)
    assert found.bands[0].shrunk[0].share > 0.9
    told = report(found, content.words["en"], Names(given={"pen_width": "width of the pen"}))
    assert "Give “q1” a narrower range of “width of the pen”." in [change.sentence for change in told.changes]


def test_observers_apart_are_trained_before_anybody_is_decided_on(content: CourseContent) -> None:
    rows = [
        f"{observer},L{i},p,{step},{said}"
        for i in range(10)
        for step in ("gloves", "tidy")
        for observer, said in (("One", "done"), ("Two", "done" if i % 2 else "not done"))
    ]
    watched = files.read_observers("f", "\n".join(["observer,learner,practical,step,seen", *rows]).encode())
    found = analyse(watched=watched, critical=frozenset({"p/gloves"}))
    assert changes(found, content)[:2] == ["observers_apart", "step_apart"]
    assert found.observers is not None
    assert [step.critical for step in found.observers.steps] == [True, False]
    fine = analyse(watched=files.read_observers("f", OBSERVERS.encode()))
    assert changes(fine, content) == []


def test_a_step_that_nobody_saw_is_a_gap_and_not_a_no() -> None:
    text = "observer,learner,practical,step,seen\nOne,A,p,s,done\nTwo,A,p,s,not seen\nOne,B,p,s,done\nTwo,B,p,s,done\n"
    found = analyse(watched=files.read_observers("f", text.encode()))
    assert found.observers is not None
    assert found.observers.whole.pairs == 1  # type: ignore[union-attr]


def test_ratings_that_carry_no_cut_are_refused_in_words(content: CourseContent) -> None:
    rated = files.Rated(("a", "b", "c"), (3, 4, 5), (10.0, 12.0, 14.0))
    told = report(analyse(rated=rated), content.words["en"])
    assert told.changes[0].name == "no_line"
    assert told.changes[0].why.startswith("Nobody was rated 1 or 2")


def test_one_judge_is_no_panel() -> None:
    with pytest.raises(NoAnswerError):
        analyse(judges=files.read_judges("f", b"judge,q1\nOld mason,50\n"))


def everything() -> tuple[Analysis, Masons]:
    """An analysis with every chapter."""
    both = files.joined_answers([files.read_scores("f", LETTERS), spoken(19, 6, 20), BACKWARD])
    wrong = [answer(1, "hoops", "not_yet", "spaces_counted_not_hoops")]
    both = files.joined_answers([both, files.read_scores("f", results(("A", wrong), ("B", wrong)))])
    given = {"q1": files.Given({"wall_height": tuple(float(i) for i in range(len(both.scores.learners)))})}
    found = analyse(
        BACKWARD, lambda _: 2, files.read_judges("f", JUDGES), files.read_ratings("f", RATINGS.encode()),
        files.read_groups("f", GROUPS.encode()), files.read_observers("f", OBSERVERS.encode()),
    )  # fmt: skip
    wide = analyse(files.Answers(both.scores, given))
    more = {name: getattr(wide, name) for name in ("tables", "mistakes", "forms", "bands")}
    whole = Analysis(**{name: getattr(found, name) for name in found.__dataclass_fields__} | more)
    exam = Exam((Asked("x"), Asked("x")), 0.5, (Watched("p", "x", (("s", True),)),), 0.5, ("x",))
    shares = tuple(certified_share(exam, Mason(share), 200) for share in (0.3, 0.6, 0.9))
    return whole, Masons((("plain", gates(exam, 200)), ("retest", gates(exam, 200))), shares, shares)


def whole_report(words: Words) -> Report:
    analysis, masons = everything()
    return report(analysis, words, masons=masons)


def test_every_chapter_is_told_in_every_language(words: Words) -> None:
    told = whole_report(words)
    keys = [chapter.section.key for chapter in told.chapters]
    assert " ".join(keys) == (
        "questions paper decisions options mistakes forms numbers judges borderline groups observers masons"
    )
    assert told.changes[0].name == "scheme"
    assert len(told.changes) <= MOST_CHANGES
    text = sections_text(told.sections(words))
    assert "{" not in text
    assert "nan" not in text


def test_the_first_page_stays_short_and_says_that_there_is_more(words: Words, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("generator.assessment.report.MOST_CHANGES", 2)
    told = whole_report(words)
    assert len(told.changes) == 2
    assert words.say("analyse.more") in sections_text(told.sections(words))
    assert words.say("analyse.more") in report_page(told, words, {})


def test_the_page_needs_nothing_else_and_shows_what_people_typed_as_it_is(words: Words) -> None:
    page = report_page(whole_report(words), words, {"mukta-regular.woff2": b"font"})
    assert page.count("<svg") == page.count("</svg>") >= 5
    assert "<script" not in page
    assert not re.search(r"(?:src|href)\s*=\s*[\"']?(?!#)\w|url\((?!data:)|@import", page)
    ids = re.findall(r'\bid="([^"]+)"', page)
    assert len(ids) == len(set(ids))
    sly = table("10", "01", head="learner,").scores
    evil = files.Answers(type(sly)(sly.learners, ("<b>q</b>", "q2"), sly.points, sly.blank), {})
    shown = report_page(report(analyse(evil), words), words, {})
    assert "<b>q</b>" not in shown
    assert "&lt;b&gt;q&lt;/b&gt;" in shown


def test_the_data_is_whole_plain_and_without_what_is_no_number(content: CourseContent) -> None:
    analysis, masons = everything()
    data = as_data(analysis, report(analysis, content.words["en"], masons=masons), masons)
    text = json.dumps(data, allow_nan=False)
    assert json.loads(text)["format"] == 1
    assert data["analysis"]["rounds"][0]["cut"] == 2  # type: ignore[index]
    assert plain({"a": {"b": (1, None, True, float("inf"))}}) == {"a": {"b": [1, None, True, None]}}


def test_names_that_are_long_or_that_the_font_lacks_do_not_take_the_report_along(words: Words) -> None:
    names = ("क्ष्म्यां" * 12, "W" * 90, "\u0b95\u0bbf", "q4")  # the third is Tamil
    scores = BACKWARD.scores
    found = analyse(files.Answers(type(scores)(scores.learners, names, scores.points, scores.blank), {}))
    told = report(found, words)
    assert all(name in sections_text(told.sections(words)).replace("\n", "") for name in names[2:])
    drawn = [label.text for label in told.chapters[0].charts[0].all_elements() if isinstance(label, Label)]
    assert "3" in drawn
    assert "q4" in drawn
    assert sum(text.endswith("…") for text in drawn) == 2
    assert not any("\u094d…" in text for text in drawn)


def test_nothing_to_change_is_told(content: CourseContent, words: Words) -> None:
    fine = analyse(watched=files.read_observers("f", OBSERVERS.encode()))
    told = report(fine, words)
    assert told.changes == ()
    assert words.say("analyse.nothing_to_change") in sections_text(told.sections(words))
    assert words.say("analyse.nothing_to_change") in report_page(told, words, {})
