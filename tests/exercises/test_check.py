from __future__ import annotations

from generator.exercises.check import check, separability_table
from tests.exercises import small
from tests.exercises.small_course import course


def told(*questions: object) -> list[str]:
    return [str(problem) for problem in check(course(questions, ()), small.BOOK)]


def test_good_questions_have_no_problem() -> None:
    assert check(course(), small.BOOK) == []


def test_a_mistake_that_gives_the_right_answer_is_a_problem() -> None:
    wide = small.ROUND.model_copy(update={"answer": "within 5 %"})
    assert told(wide) == [
        "question/round-a-pen:1:1: 0% of the numbers make a fair question: 'round_is_three_widths' gives the right "
        "answer in 100% (fix: narrow the tolerance, change the givens, drop a misconception, or ask for the step where "
        "it happens)"
    ]


def test_a_retired_question_is_left_alone() -> None:
    assert told(small.ROUND.model_copy(update={"answer": "within 5 %", "retired": True})) == []


def test_a_tolerance_that_can_not_be_read_is_a_problem() -> None:
    (problem,) = told(small.ROUND.model_copy(update={"answer": "within 5 kg"}))
    assert problem.endswith(
        "'within 5 kg': 'kg' is not a unit of the same kind as 'm' (fix: write exact, within 2 %, or within 5 mm)"
    )


def test_a_scenario_part_is_held_against_its_place() -> None:
    parts = [part.model_copy(update={"answer": "within 5 %"}) for part in small.SCENARIO.parts[:1]]
    parts.append(small.SCENARIO.parts[1].model_copy(update={"answer": "nearly"}))
    parts.append(small.SCENARIO.parts[3].model_copy(update={"misconceptions": ("no_rolls_at_all",)}))
    broken = small.SCENARIO.model_copy(update={"parts": tuple(parts)})
    told = [problem.what for problem in check(course((), (broken,)), small.BOOK)]
    assert told == [
        "'no_rolls_at_all' has no value here",
        "'the right answer' and 'round_is_three_widths' give the same number",
        "'nearly' is neither 'exact' nor 'within 2 %' nor 'within 5 mm'",
    ]


def test_a_scenario_outside_the_range_is_a_problem() -> None:
    far = course((), (small.SCENARIO,))
    far.values = lambda place: {**small.PLACE, "pen_width": 99.0}
    assert {problem.code for problem in check(far, small.BOOK)} == {"out-of-range"}


def test_the_table_has_a_line_for_each_number_question() -> None:
    lines = separability_table(course(), small.BOOK)
    assert len(lines) == 1 + len(small.NUMBERS)
    assert "round-a-pen" in lines[2]
    assert "kept 100%" in lines[2]
