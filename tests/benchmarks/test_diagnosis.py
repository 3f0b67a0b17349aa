from __future__ import annotations

from generator.calculations import BOOK
from generator.exercises.items import ScenarioItem
from generator.exercises.mark import Verdict
from generator.exercises.scenario import mark_scenario
from tests.benchmarks.bench_diagnosis import hardest


def test_the_timed_answer_is_held_against_every_misconception_and_is_none_of_them() -> None:
    item, givens = hardest()
    assert len(item.wrong) >= 8
    job = ScenarioItem(id="job", title="", text="", givens=givens, parts=(item,))
    mark = mark_scenario(job, {"hardest": "98765.4321"}, BOOK)[0]
    assert (mark.verdict, mark.misconceptions) == (Verdict.NOT_YET, ())
    known = {
        name: mark_scenario(job, {"hardest": f"{value:.9f}"}, BOOK)[0].misconceptions
        for name, value in item.wrong.items()
    }
    assert sum(name in found for name, found in known.items()) >= 5  # some wrong ideas come near the right answer here
