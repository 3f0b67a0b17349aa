"""Two observers, one logged recheck, the oral recheck near the cut and the sample panel."""

from __future__ import annotations

from collections.abc import Callable
from itertools import product

import pytest

from generator.assessment import Decision, Reason, Requirement, Seen, decide, explain, say_reason
from generator.assessment.blueprint import recheck_of
from generator.assessment.paper_decision import (
    OralResult,
    how_alike,
    joined,
    near_the_cut,
    oral_result,
    panel_limits,
    panel_reason,
    read_panels,
    read_spoken,
    to_talk_about,
    unlike,
    with_oral,
    with_recheck,
    with_talks,
)
from generator.assessment.recheck import Recheck, outcome
from generator.curriculum.models import OralRule, PanelRule, TalkRule
from generator.exercises import Mark, Verdict
from generator.problems import ProblemsError
from tests.assessment.exam_papers import course
from tests.assessment.small_scheme import FENCE, PRACTICALS, SCHEME

WHO, WHERE = "Asha", FENCE.id
DONE, NOT, UNSEEN = Seen.DONE, Seen.NOT_DONE, Seen.NOT_SEEN
RULE = OralRule(near=2, master=0.85, novice=0.6, wrong_pass=0.1, wrong_fail=0.1, most=30)
TALK = TalkRule(master=0.95, novice=0.03, wrong_pass=0.02, wrong_fail=0.02, most=5)
WELCH = OralRule(near=2, master=0.85, novice=0.4, wrong_pass=0.025, wrong_fail=0.025, most=20)
ASKS = SCHEME.model_copy(update={"oral": WELCH, "talk": TALK})
TEST = Recheck(0.85, 0.40, 0.025, 0.025, 20)
COVER = PanelRule(kind="cover", steel="bar", readings=3, guard=1.0)


def seen(**steps: Seen) -> dict[tuple[str, str, str], Seen]:
    return {(WHO, WHERE, step): found for step, found in steps.items()}


def codes(read: Callable[[], object]) -> list[str]:
    with pytest.raises(ProblemsError) as refused:
        read()
    return [problem.code for problem in refused.value.problems]


@pytest.mark.parametrize(
    ("one", "other", "critical", "plain"),
    [
        (DONE, DONE, DONE, DONE),
        (DONE, NOT, NOT, NOT),
        (NOT, DONE, NOT, NOT),
        (NOT, NOT, NOT, NOT),
        (DONE, UNSEEN, DONE, DONE),
        (UNSEEN, NOT, NOT, NOT),
        (UNSEEN, UNSEEN, UNSEEN, UNSEEN),
    ],
)
def test_where_both_looked_both_have_to_see_it_done(one: Seen, other: Seen, critical: Seen, plain: Seen) -> None:
    found = joined(seen(gloves=one, pegs=one), seen(gloves=other, pegs=other), PRACTICALS)
    assert found == seen(gloves=critical, pegs=plain)


def test_agreement_of_observers() -> None:
    first = {(f"L{i}", WHERE, "pegs"): DONE for i in range(10)}
    second = first | {("L0", WHERE, "pegs"): NOT}
    found = how_alike(first, second)
    assert found is not None
    assert found.percent == pytest.approx(0.9)
    # by hand: pj(done) = 19/20, pe = 2 x .95 x .05 = .095; (0.9 - 0.095)/(1 - 0.095)
    assert found.ac1 == pytest.approx(0.88950, abs=1e-5)
    assert unlike(first, second) == (("L0", WHERE, "pegs"),)
    assert how_alike(first, {}) is None


def test_a_critical_step_is_shown_again_once_and_logged() -> None:
    first = seen(gloves=NOT, pegs=NOT, tight=DONE)
    found, log = with_recheck(first, seen(gloves=DONE), PRACTICALS, "again.csv")
    assert found == seen(gloves=DONE, pegs=NOT, tight=DONE)
    assert log == ((WHO, WHERE, "gloves"),)
    assert first[WHO, WHERE, "gloves"] is NOT


@pytest.mark.parametrize(("again", "code"), [("pegs", "not-critical"), ("tight", "nothing-to-recheck")])
def test_only_a_critical_step_that_was_not_done_is_rechecked(again: str, code: str) -> None:
    first = seen(gloves=NOT, pegs=NOT, tight=DONE)
    assert codes(lambda: with_recheck(first, seen(**{again: DONE}), PRACTICALS, "again.csv")) == [code]


@pytest.mark.parametrize(
    ("answers", "result"),
    [
        ([], OralResult(0, 0, shown=False, over=False)),
        ([True] * 4, OralResult(4, 4, shown=False, over=False)),
        ([True] * 5, OralResult(5, 5, shown=True, over=True)),
        ([False] * 3, OralResult(0, 3, shown=False, over=True)),
        ([True, False] * 10, OralResult(6, 12, shown=False, over=True)),  # 6 x (.753772 - 1.386294) < -3.66356
        ([True, True, False] * 6 + [True] * 2, OralResult(14, 20, shown=False, over=True)),  # never clear: cut short
    ],
)
def test_an_oral_recheck_ends_where_the_test_says(answers: list[bool], result: OralResult) -> None:
    """Five right or three wrong in a row end it: the steps of Welch's rule base."""
    assert oral_result(TEST, answers) == result


def test_the_walk_over_answers_is_the_recheck_itself() -> None:
    """The share of shown among all rows of answers is what the exact recursion says."""
    short = Recheck(0.85, 0.40, 0.1, 0.1, 8)
    rows = [oral_result(short, list(row)).shown for row in product([True, False], repeat=8)]
    assert sum(rows) / len(rows) == pytest.approx(float(outcome(short, 0.5).shown))


def test_oral_answers_are_read_in_their_order() -> None:
    rows = "learner,question,answer\n" + "".join(f"1,{n},right\n" for n in range(1, 6))
    assert read_spoken("o.csv", rows.encode(), ["Asha"], ASKS, ["closing"]).near["Asha"].shown


@pytest.mark.parametrize(
    ("rows", "code"),
    [
        ("Zed,1,right\n", "unknown-learner"),
        ("Asha,1,maybe\n", "unknown-answer"),
        ("Asha,2,right\n", "question-order"),
        ("Asha,1,right\nAsha,1,right\n", "question-order"),
        ("".join(f"Asha,{n},wrong\n" for n in range(1, 5)), "asked-on"),
    ],
)
def test_bad_oral_answers_are_named(rows: str, code: str) -> None:
    text = f"learner,question,answer\n{rows}".encode()
    assert codes(lambda: read_spoken("o.csv", text, ["Asha"], ASKS, ["closing"])) == [code]


def test_each_line_after_the_end_says_where_the_recheck_ended() -> None:
    """Three wrong end it: also the second line too many says so, and not that it ended with the line before."""
    rows = "learner,question,answer\n" + "".join(f"Asha,{n},wrong\n" for n in range(1, 6))
    with pytest.raises(ProblemsError) as refused:
        read_spoken("o.csv", rows.encode(), ["Asha"], ASKS, ["closing"])
    told = [
        (problem.line, "Asha's recheck ended with question 3:" in problem.what) for problem in refused.value.problems
    ]
    assert told == [(5, True), (6, True)]


def test_talks_are_read_apart_from_the_recheck_and_from_each_other() -> None:
    rows = "Asha,1,right,\nAsha,1,right,closing\nAsha,1,wrong,tidying\nAsha,2,right,closing\n"
    text = f"learner,question,answer,competency\n{rows}".encode()
    found = read_spoken("o.csv", text, ["Asha"], ASKS, ["closing", "tidying"])
    assert (found.near["Asha"].asked, found.near["Asha"].over) == (1, False)
    assert found.talks["Asha"]["closing"] == OralResult(2, 2, shown=True, over=True)
    assert found.talks["Asha"]["tidying"] == OralResult(0, 1, shown=False, over=False)


@pytest.mark.parametrize(
    ("changes", "row", "code"),
    [
        ({}, "Asha,1,right,closeing", "unknown-competency"),
        ({"talk": None}, "Asha,1,right,closing", "nothing-spoken"),
        ({"oral": None}, "Asha,1,right,", "nothing-spoken"),
        ({}, "Asha,1,right,closing\nAsha,2,right,closing\nAsha,3,right,closing", "asked-on"),
    ],
)
def test_bad_talks_are_named(changes: dict[str, None], row: str, code: str) -> None:
    scheme, text = ASKS.model_copy(update=changes), f"learner,question,answer,competency\n{row}\n".encode()
    assert codes(lambda: read_spoken("o.csv", text, ["Asha"], scheme, ["closing"])) == [code]


def test_a_talk_decides_on_its_skill_in_the_place_of_the_paper() -> None:
    """All questions on paper are right; by hand the skill was shown."""
    done = seen(gloves=DONE, pegs=DONE, tight=DONE, tidy=DONE)
    marks = [Mark(f"q{turn}", "closing", Verdict.RIGHT) for turn in range(4)]
    made = decide(ASKS, PRACTICALS, marks, done, WHO)
    assert [reason.requirement for reason in made.missing] == [Requirement.TALK]
    assert made.missing[0].most == 0
    rule = TALK
    for result, passed in (
        (OralResult(2, 2, shown=True, over=True), True),
        (OralResult(0, 2, shown=False, over=True), False),
        (OralResult(1, 1, shown=False, over=False), False),
    ):
        assert with_talks(made, rule, {"closing": result}).passed is passed
    assert with_talks(made, rule, {}) == made
    wrong_on_paper = [Mark(f"q{turn}", "tidying", Verdict.RIGHT) for turn in range(6)]
    wrong_on_paper += [Mark("q9", "closing", Verdict.NOT_YET)]
    made = decide(ASKS, PRACTICALS, wrong_on_paper, done, WHO)
    assert with_talks(made, rule, {"closing": OralResult(2, 2, shown=True, over=True)}).passed
    assert to_talk_about(ASKS, {"tidying", "closing"}, ["digging"]) == ("closing",)
    assert to_talk_about(SCHEME, {"closing"}, []) == ()


def test_where_both_have_to_see_a_critical_step_one_alone_is_not_enough() -> None:
    found = joined(seen(tight=DONE, pegs=DONE), seen(pegs=UNSEEN), PRACTICALS, both=True)
    assert found == seen(tight=UNSEEN, pegs=DONE)


def decision(have: int, *others: Reason) -> Decision:
    written = Reason(Requirement.WRITTEN, have >= 10, "", have, 10, 16)
    return Decision("fence-hand", 2, (written, *others))


@pytest.mark.parametrize(("have", "near"), [(7, False), (8, True), (9, True), (10, True), (11, True), (12, False)])
def test_what_is_near_the_cut(have: int, near: bool) -> None:
    assert (near_the_cut(decision(have), RULE) is not None) is near


@pytest.mark.parametrize("have", [8, 9, 10, 11])
@pytest.mark.parametrize(("shown", "over"), [(True, True), (False, True), (False, False)])
def test_near_the_cut_the_oral_recheck_decides_up_and_down(have: int, shown: bool, over: bool) -> None:
    found = with_oral(decision(have), RULE, OralResult(5, 7, shown, over))
    assert found.passed is shown
    assert [reason.requirement for reason in found.reasons] == [Requirement.ORAL]
    assert found.reasons[0].subject == f"{have}/16"


@pytest.mark.parametrize("have", [3, 16])
def test_away_from_the_cut_it_changes_nothing(have: int) -> None:
    assert with_oral(decision(have), RULE, OralResult(7, 7, shown=True, over=True)) == decision(have)


def test_before_the_recheck_nobody_near_the_cut_passes() -> None:
    found = with_oral(decision(11), RULE, None)
    assert not found.passed
    for language in ("en", "hi"):
        said = explain(found, course().words[language], {})
        assert course().words[language].say("decision.oral_to_come", points="11/16") in said


def test_the_oral_recheck_makes_up_for_nothing_else() -> None:
    other = Reason(Requirement.CRITICAL_STEP, met=False, subject="a/b", have=0, need=1, most=1)
    assert not with_oral(decision(9, other), RULE, OralResult(7, 7, shown=True, over=True)).passed


def test_a_rule_with_a_clever_novice_is_refused() -> None:
    with pytest.raises(ValueError, match="novice"):
        recheck_of(RULE.model_copy(update={"novice": 0.9}))


@pytest.mark.parametrize(
    ("readings", "good", "met"),
    [((8, 9, 7), 3, True), ((8, 9, 6), 3, True), ((8, 9, 5.5), 2, False), ((30, 30, 5), 2, False)],
)
def test_one_thin_reading_is_not_made_up_for(readings: tuple[float, ...], good: int, met: bool) -> None:
    """Least cover over bars is 5 mm; the guard of 1 mm asks for 6."""
    assert panel_limits(COVER)[0] == 6
    reason = panel_reason(COVER, readings)
    assert (reason.have, reason.met) == (good, met)


def test_gaps_have_to_stay_inside_on_both_sides() -> None:
    rule = PanelRule(kind="spacing", planned=130.0, readings=3, guard=2.0)
    assert panel_limits(rule) == (122.0, 138.0)
    assert panel_reason(rule, (122, 138, 130)).met
    assert not panel_reason(rule, (121, 138, 130)).met


def test_without_readings_a_panel_is_not_shown() -> None:
    reason = panel_reason(COVER, None)
    assert not reason.met
    for language in ("en", "hi"):
        assert "0" in say_reason(reason, course().words[language], {})


def test_panels_are_read() -> None:
    found = read_panels("p.csv", b"learner,readings\n1,8 9.5 7\n", ["Asha"], COVER, course().words["en"])
    assert found == {"Asha": (8.0, 9.5, 7.0)}


@pytest.mark.parametrize(
    ("rows", "code"),
    [
        ("Zed,8 9 7\n", "unknown-learner"),
        ("Asha,8 nine 7\n", "not-a-reading"),
        ("Asha,8 9 7\nAsha,8 9 7\n", "two-panels"),
        ("Asha,8 9\n", "not-a-reading"),
    ],
)
def test_bad_panels_are_named(rows: str, code: str) -> None:
    data = f"learner,readings\n{rows}".encode()
    assert codes(lambda: read_panels("p.csv", data, ["Asha"], COVER, course().words["en"])) == [code]


def test_too_few_readings_are_named() -> None:
    rule = COVER.model_copy(update={"readings": 5})
    data = b"learner,readings\nAsha,8 9 7\n"
    assert codes(lambda: read_panels("p.csv", data, ["Asha"], rule, course().words["en"])) == ["too-few-readings"]
