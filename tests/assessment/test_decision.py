from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.assessment import Decision, Observations, Requirement, Seen, decide, explain
from generator.exercises import Mark, Verdict
from generator.words import Words
from tests.assessment.small_scheme import FENCE, PRACTICALS, SCHEME

ALL_DONE = {("Asha", FENCE.id, step.id): Seen.DONE for step in FENCE.steps}
WORDS = Words(
    "en",
    {
        "decision.passed": "passed",
        "decision.not_yet": "not yet",
        "decision.not_asked": "{subject}: not asked",
        "decision.no_paper": "no paper",
        **{f"decision.met.{each}": "{subject} {have} of {most}, {need} needed" for each in Requirement},
        **{f"decision.not_met.{each}": "{subject} only {have} of {most}, {need} needed" for each in Requirement},
    },
)


def paper(right: int, of: int, competency: str = "setting-out") -> list[Mark]:
    return [Mark(f"q{i}", competency, Verdict.RIGHT if i < right else Verdict.NOT_YET) for i in range(of)]


def decided(written: list[Mark], observations: Observations, critical: tuple[str, ...] = ()) -> Decision:
    return decide(SCHEME, PRACTICALS, written, observations, "Asha", critical)


def missing(decision: Decision) -> list[tuple[str, str]]:
    return [(reason.requirement.value, reason.subject) for reason in decision.missing]


def test_everything_met_is_passed() -> None:
    decision = decided(paper(7, 10), ALL_DONE)
    assert decision.passed
    assert (decision.scheme, decision.version) == ("fence-hand", 2)


def test_the_written_cut_is_rounded_up_to_a_whole_point() -> None:
    assert missing(decided(paper(6, 10), ALL_DONE)) == [("written", "")]
    assert decided(paper(8, 11), ALL_DONE).passed  # 7.7 points: 8
    assert missing(decided(paper(7, 11), ALL_DONE)) == [("written", "")]


def test_a_full_paper_makes_up_for_no_critical_step() -> None:
    seen = {**ALL_DONE, ("Asha", FENCE.id, "tight"): Seen.NOT_DONE}  # 3 of 4 reach the practical share
    assert missing(decided(paper(10, 10), seen)) == [("critical_step", "close-a-fence/tight")]


def test_a_step_that_nobody_saw_is_not_shown() -> None:
    for seen in ({**ALL_DONE, ("Asha", FENCE.id, "gloves"): Seen.NOT_SEEN},
                 {key: value for key, value in ALL_DONE.items() if key[2] != "gloves"}):  # fmt: skip
        assert missing(decided(paper(10, 10), seen)) == [("critical_step", "close-a-fence/gloves")]


def test_steps_that_are_not_critical_may_be_missed_up_to_the_share() -> None:
    one = {key: value for key, value in ALL_DONE.items() if key[2] != "tidy"}
    assert decided(paper(10, 10), one).passed
    two = {key: value for key, value in one.items() if key[2] != "pegs"}
    assert missing(decided(paper(10, 10), two)) == [("practical", FENCE.id), ("critical_competency", "closing")]


def test_a_critical_competency_must_be_met_on_its_own() -> None:
    written = [*paper(9, 9), *paper(1, 2, "cover")]
    assert decided(written, ALL_DONE).passed
    assert missing(decided(written, ALL_DONE, ("cover",))) == [("critical_competency", "cover")]


def test_written_answers_do_not_stand_in_for_a_critical_practical() -> None:
    two = {key: value for key, value in ALL_DONE.items() if key[2] in ("gloves", "tight")}
    found = decided([*paper(8, 8), *paper(4, 4, "closing")], two)
    assert ("critical_competency", "closing") in missing(found)


def test_a_critical_competency_that_nothing_asks_for_is_not_met() -> None:
    scheme = SCHEME.model_copy(update={"critical_competencies": ("closing", "curing")})
    found = decide(scheme, PRACTICALS, paper(10, 10), ALL_DONE, "Asha")
    assert missing(found) == [("critical_competency", "curing")]
    assert "curing: not asked" in explain(found, WORDS, {})


def test_critical_competencies_of_other_modules_do_not_count() -> None:
    assert decided(paper(10, 10), ALL_DONE, ("roof",)).passed


def test_a_paper_of_another_module_does_not_count() -> None:
    def by(modules: list[str]) -> Decision:
        return decide(SCHEME, PRACTICALS, paper(10, 10), ALL_DONE, "Asha", modules=modules)

    assert by(["pens", "roofs"]).passed
    assert missing(by(["roofs"])) == [("module", "pens")]


def test_no_paper_is_no_pass() -> None:
    decision = decided([], ALL_DONE)
    assert missing(decision) == [("written", "")]
    assert explain(decision, WORDS, {})[1] == "no paper"


def test_observations_of_someone_else_do_not_count() -> None:
    others = {("Bir", practical, step): seen for (_, practical, step), seen in ALL_DONE.items()}
    assert not decided(paper(10, 10), others).passed


def test_the_reasons_are_said_in_words() -> None:
    texts = explain(decided(paper(6, 10), ALL_DONE), WORDS, {FENCE.id: "Close a fence", "closing": "Closing"})
    assert texts[0] == "not yet"
    assert texts[1] == " only 6 of 10, 7 needed"
    assert texts[2] == "Close a fence 4 of 4, 3 needed"
    assert texts[-1] == "Closing 4 of 4, 3 needed"


@pytest.mark.parametrize("verdict", list(Verdict))
def test_only_right_answers_earn_points(verdict: Verdict) -> None:
    assert Mark("q", "c", verdict).points == (verdict in (Verdict.RIGHT, Verdict.RIGHT_FROM_EARLIER))


@given(st.integers(0, 10), st.lists(st.booleans(), min_size=4, max_size=4), st.integers(0, 3))
def test_one_more_thing_shown_never_turns_a_pass_into_not_yet(right: int, shown: list[bool], place: int) -> None:
    def with_steps(steps: list[bool]) -> Observations:
        return {("Asha", FENCE.id, step.id): Seen.DONE for step, one in zip(FENCE.steps, steps, strict=True) if one}

    if decided(paper(right, 10), with_steps(shown)).passed:
        more = [one or i == place for i, one in enumerate(shown)]
        assert decided(paper(min(right + 1, 10), 10), with_steps(more)).passed


@given(st.integers(0, 10), st.lists(st.booleans(), min_size=4, max_size=4))
def test_the_rule_once_more_from_its_words(right: int, shown: list[bool]) -> None:
    seen = {("Asha", FENCE.id, step.id): Seen.DONE for step, one in zip(FENCE.steps, shown, strict=True) if one}
    expected = right >= 7 and sum(shown) >= 3 and shown[0] and shown[2]
    assert decided(paper(right, 10), seen).passed == expected
