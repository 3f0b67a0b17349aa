"""Made-up masons: their answers are what they know, and the rule for all at once is the rule for one."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from scipy.special import bdtrc

from generator.assessment import blueprint
from generator.assessment import simulate as sim
from generator.assessment.decision import decide
from generator.assessment.observations import Seen
from generator.assessment.recheck import Recheck, outcome
from generator.curriculum import CourseContent
from generator.curriculum.models import Bank
from generator.exercises import Mark, Verdict
from generator.problems import RefusedError
from tests.assessment.small_scheme import FENCE, PRACTICALS, SCHEME

NO_CHANCE = sim.Habits(slip=0, number_guess=0, shared_mistake=0, seen_wrongly=0, overlooked=0)
PAPER = tuple(sim.Asked(name) for name in ("closing",) * 4 + ("tidying",) * 6)
WATCHED = sim.Watched(FENCE.id, FENCE.competency, tuple((step.id, step.critical) for step in FENCE.steps))
EXAM = sim.Exam(PAPER, 0.7, (WATCHED,), 0.75, ("closing",))
WRITTEN_ONLY = sim.Exam(tuple(sim.Asked("tidying") for _ in range(40)), 0.7, (), 1.0, ())


def test_the_rule_for_all_at_once_is_the_rule_for_one() -> None:
    sitting = sim.sit(EXAM, sim.Mason(0.8), 400, "rule")
    found = sim.certified(EXAM, sitting)
    assert 20 < found.sum() < 380
    for row in range(400):
        marks = [
            Mark(f"q{i}", item.competency, Verdict.RIGHT if right else Verdict.NOT_YET)
            for i, (item, right) in enumerate(zip(PAPER, sitting.right[row], strict=True))
        ]
        seen = {
            ("Asha", FENCE.id, step.id): Seen.DONE if shown else Seen.NOT_DONE
            for step, shown in zip(FENCE.steps, sitting.seen[0][row], strict=True)
        }
        assert decide(SCHEME, PRACTICALS, marks, seen, "Asha").passed == found[row]


@pytest.mark.parametrize("mastery", [0.55, 0.70, 0.85])
def test_without_shared_mistakes_a_paper_is_binomial(mastery: float) -> None:
    habits = replace(sim.HABITS, shared_mistake=0)
    found = sim.certified_share(WRITTEN_ONLY, sim.Mason(mastery), habits=habits)
    share = mastery * 0.95 + (1 - mastery) * 0.02
    assert found.share == pytest.approx(float(bdtrc(27, 40, share)), abs=0.012)
    assert found.low < found.share < found.high


def test_shared_mistakes_keep_the_mastery_and_spread_the_points() -> None:
    paper = sim.Exam(PAPER * 4, 0.7, (), 1.0, ())
    alone, shared = (
        sim.sit(paper, sim.Mason(0.6), 20_000, "spread", replace(NO_CHANCE, shared_mistake=share)).right.sum(axis=1)
        for share in (0, 0.5)
    )
    assert alone.mean() == pytest.approx(24, abs=0.3)
    assert shared.mean() == pytest.approx(24, abs=0.3)
    assert shared.std() > 2 * alone.std()


def test_who_knows_all_and_never_slips_is_certified_and_who_lacks_a_skill_is_not() -> None:
    def share(mason: sim.Mason) -> float:
        return sim.certified_share(EXAM, mason, 500, habits=NO_CHANCE).share

    assert share(sim.Mason(1.0)) == 1
    assert share(sim.Mason(0.0)) == 0
    assert EXAM.skills == ("closing", "close-a-fence/gloves", "close-a-fence/tight")
    for skill in EXAM.skills:
        assert share(sim.Mason(1.0, lacks=skill)) == 0
        assert share(sim.Mason(1.0, sure=True, lacks=skill)) == 0


def test_a_recheck_and_two_observers_do_what_chances_say() -> None:
    steps = sim.Watched("p", "x", tuple((f"s{i}", True) for i in range(5)))
    exam = sim.Exam((sim.Asked("x"),), 0.1, (steps,), 0.1, ())
    habits = replace(NO_CHANCE, slip=0.05)
    for again, tries in ((0, 1), (1, 2)):
        found = sim.certified_share(replace(exam, again=again), sim.Mason(1.0), habits=habits)
        assert found.share == pytest.approx(sim.all_steps_shown(0.95, 5, tries) * 0.95, abs=0.012)
    habits = replace(NO_CHANCE, seen_wrongly=0.2)
    one_step = replace(exam, practicals=(replace(steps, steps=(("s0", True),)),))
    for observers, again, wrong in ((1, 0, 0.2), (2, 0, 0.04), (2, 2, 0.04 + 0.96 * 0.0016)):
        lacking = sim.Mason(1.0, lacks="p/s0")
        found = sim.certified_share(replace(one_step, observers=observers, again=again), lacking, habits=habits)
        assert found.share == pytest.approx(wrong, abs=0.01)


def test_the_chance_to_be_seen_is_what_step_by_step_drawing_gives() -> None:
    """Drawn out: a slip or none, then each observer, then the recheck, twice running."""
    exam = sim.Exam((), 0.75, (), 0.8, (), observers=2, again=2)
    draw, people = np.random.default_rng(7), 200_000

    def once(*, knows: bool) -> np.ndarray:
        done = (draw.random(people) >= 0.05) & knows
        return np.all([draw.random(people) < np.where(done, 0.98, 0.05) for _ in range(2)], axis=0)

    for knows in (False, True):
        shown = once(knows=knows) | (once(knows=knows) & once(knows=knows))
        found = sim.chance_seen(exam, sim.HABITS, critical=True, knows=knows)
        assert found == pytest.approx(float(shown.mean()), abs=0.003)
    assert sim.chance_seen(exam, sim.HABITS, critical=False, knows=False) == 0.05


def test_every_try_is_a_chance_and_nobody_learns_between_two() -> None:
    exam = replace(EXAM, sittings=3)
    first, second, third = (int(t.sum()) for t in sim.tries(exam, sim.Mason(0.8), 4000, "tries"))
    assert first < second < third
    lacking = sim.Mason(1.0, sure=True, lacks="close-a-fence/tight")
    assert sim.certified_share(exam, lacking, 500, habits=NO_CHANCE).share == 0
    found = sim.certified_share(exam, sim.Mason(0.8), 4000, seed="again")
    assert found.first < found.certified


def test_a_wrong_idea_answers_the_questions_it_fits_and_guesses_at_others() -> None:
    """Nothing is known, so everyone has the one idea of the competency."""
    paper = (*(sim.Asked("a", 0.5, ("upside_down",)),) * 3, *(sim.Asked("a", 0.5),) * 3)
    habits = replace(NO_CHANCE, shared_mistake=1.0)
    right = sim.sit(sim.Exam(paper, 0.5, (), 1.0, ()), sim.Mason(0.0), 4000, "ideas", habits).right.mean(axis=0)
    assert list(right[:3]) == [0, 0, 0]
    assert right[3:] == pytest.approx([0.5] * 3, abs=0.03)


def test_a_panel_is_shown_by_who_can_and_by_luck_reading_by_reading() -> None:
    exam = sim.Exam((sim.Asked("a"),), 1.0, (), 1.0, (), panel=3)
    assert exam.skills == ("panel",)
    assert sim.certified_share(exam, sim.Mason(1.0), 4000, habits=NO_CHANCE).share == 1
    lucky = replace(NO_CHANCE, reading_by_luck=0.5)
    found = sim.certified_share(exam, sim.Mason(1.0, lacks="panel"), 8000, habits=lucky)
    assert found.share == pytest.approx(0.125, abs=0.015)


def test_near_the_cut_the_oral_recheck_decides_up_and_down() -> None:
    oral = Recheck(0.85, 0.60, 0.10, 0.10, 30)
    exam = replace(WRITTEN_ONLY, oral=oral, near=40)
    habits = replace(NO_CHANCE)
    found = sim.certified_share(exam, sim.Mason(0.75), habits=habits)
    assert found.share == pytest.approx(float(outcome(oral, 0.75).shown), abs=0.012)


def test_a_skill_that_can_be_guessed_is_shown_in_a_talk() -> None:
    paper = tuple(sim.Asked("closing", 0.5) for _ in range(3))
    exam = sim.Exam(paper, 0.6, (), 1.0, ("closing",))
    lacking = sim.Mason(1.0, lacks="closing")
    assert sim.certified_share(exam, lacking, 4000).share == pytest.approx(0.5, abs=0.04)
    helped = replace(exam, talk=Recheck(0.95, 0.03, 0.02, 0.02, 5))
    assert sim.certified_share(helped, lacking, 4000).share < 0.01
    assert sim.certified_share(helped, sim.Mason(1.0), 4000).share > 0.98


def test_the_same_seed_gives_the_same_people() -> None:
    one, other, third = (sim.sit(EXAM, sim.Mason(0.7), 50, seed) for seed in ("a", "a", "b"))
    assert np.array_equal(one.right, other.right)
    assert not np.array_equal(one.right, third.right)


def test_the_exam_is_the_schemes_own(content: CourseContent) -> None:
    """Papers as the blueprint asks, each with the questions' own chances to guess; the rule as the file has it."""
    scheme = content.schemes["lead-mason"]
    exam = sim.exam_of(content, scheme, papers=4)
    wanted = [cell.competency for cell in blueprint.slots(scheme)]
    kinds = [cell.kind for cell in blueprint.slots(scheme)]
    assert len(exam.papers) == 4
    assert len(set(exam.papers)) == 4
    for paper in exam.papers:
        assert [item.competency for item in paper] == wanted
        assert all(item.guess is None for item, kind in zip(paper, kinds, strict=True) if kind == "number")
    assert any(item.ideas for item in exam.paper)
    assert (exam.written, exam.practical, exam.observers, exam.again) == (0.75, 0.75, 2, 2)
    assert (exam.panel, exam.near, exam.sittings) == (10, 2, 3)
    assert exam.oral == Recheck(0.85, 0.60, 0.10, 0.10, 30)
    assert exam.talk == Recheck(0.95, 0.03, 0.02, 0.02, 5)
    assert set(scheme.critical_competencies) | set(scheme.critical_steps) | {"panel"} == set(exam.skills)
    with pytest.raises(RefusedError, match="has no blueprint"):
        sim.exam_of(content, scheme.model_copy(update={"blueprint": ()}))


def test_guesses_follow_the_kind_of_question(content: CourseContent) -> None:
    banks: list[Bank] = list(content.banks.values())
    for question in (question for bank in banks for question in bank.questions):
        guess = sim.guess_of(question)
        assert guess is None or 0 < guess <= 0.5
        assert (guess is None) == (
            question.kind == "number" or (question.kind == "spoken" and hasattr(question, "asks"))
        )


def test_a_gate_is_met_only_if_its_whole_interval_is() -> None:
    assert sim.Gate("weak", 0.005, 0.003, 0.009, 0.01).met
    assert not sim.Gate("weak", 0.008, 0.006, 0.011, 0.01).met


def test_a_rule_is_built_up_part_by_part_to_the_whole(content: CourseContent) -> None:
    whole = sim.exam_of(content, content.schemes["frame-hand"], papers=2)
    helped = dict(sim.with_helps(whole))
    assert list(helped) == ["plain", "observers", "recheck", "talk", "oral", "retest"]
    assert helped["retest"] == whole
    plain = helped["plain"]
    assert (plain.observers, plain.again, plain.talk, plain.oral, plain.sittings) == (1, 0, None, None, 1)
    assert (helped["talk"].talk, helped["talk"].oral) == (whole.talk, None)
    assert not sim.gates(plain, people=2000).met


def test_who_knows_more_is_certified_more_often() -> None:
    rising = sim.curve(replace(EXAM, sittings=2), [0.3, 0.6, 0.8, 0.95, 1.0], people=4000)
    assert [one.share for one in rising] == sorted(one.share for one in rising)
    assert rising[0].share < 0.05 < rising[2].share < rising[-1].share
