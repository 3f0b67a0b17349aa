from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.exercises.items import ScenarioItem
from generator.exercises.make import make_scenario
from generator.exercises.mark import Mark, Verdict
from generator.exercises.scenario import mark_scenario
from tests.exercises import small
from tests.exercises.typed import SIGNS_TYPED

RIGHT, EARLIER, NOT_YET = Verdict.RIGHT, Verdict.RIGHT_FROM_EARLIER, Verdict.NOT_YET
ITEM = make_scenario(small.SCENARIO, small.PLACE, small.WORDS["en"], small.BOOK)
KEYS = {part.id: part.shown_key for part in ITEM.parts}


def verdicts(answers: dict[str, str]) -> list[Verdict]:
    return [mark.verdict for mark in marks(answers)]


def marks(answers: dict[str, str], item: ScenarioItem = ITEM) -> tuple[Mark, ...]:
    return mark_scenario(item, answers, small.BOOK)


def test_the_scenario_is_worked_out_from_its_place() -> None:
    assert ITEM.text == "3.2 m across, 1.4 m high, a wire every 0.2 m.".replace(" m", "\u00a0m")
    assert KEYS == {"round": "10.05", "wires": "8", "length": "80.4", "rolls": "5"}


def test_what_the_place_works_out_is_told_rounded_and_reckoned_with_rounded() -> None:
    """By hand: 3.2 m across is 10.0531 m round, told as 10.05; eight wires of that are 80.40 m and not 80.42."""
    changed = small.SCENARIO.model_copy(
        update={
            "given": ("pen_round", "pen_height", "wire_spacing"),
            "text": {"en": "{pen_round} round.", "hi": "{pen_round}"},
            "parts": small.SCENARIO.parts[1:3],
        }
    )
    place = {**small.PLACE, "pen_round": math.pi * 3.2}
    item = make_scenario(changed, place, small.WORDS["en"], small.BOOK)
    assert item.text == "10.05\u00a0m round."
    assert item.parts[1].key == pytest.approx(8 * 10.05)


def test_all_right_answers_are_right() -> None:
    assert verdicts(KEYS) == [RIGHT] * 4


def test_one_slip_is_counted_once() -> None:
    """Gaps counted for wires: 7. With 7 wires the length is 70.4 m and 4 rolls are enough: right from there."""
    found = marks({"round": "10.05", "wires": "7", "length": "70.4", "rolls": "4"})
    assert [mark.verdict for mark in found] == [RIGHT, NOT_YET, EARLIER, EARLIER]
    assert found[1].misconceptions == ("gaps_counted_not_wires",)
    assert [mark.points for mark in found] == [1, 0, 1, 1]


def test_a_right_answer_after_a_wrong_one_is_right() -> None:
    assert verdicts({**KEYS, "wires": "7"}) == [RIGHT, NOT_YET, RIGHT, RIGHT]


def test_blank_parts_are_worked_out_from_what_is_there() -> None:
    """Only the wires are answered, wrongly; the rolls follow from them over a length that was never written down."""
    rolls = math.ceil(2 * math.pi * 3.2 / 20)
    found = verdicts({"wires": "2", "rolls": f"{rolls}"})
    assert found == [Verdict.BLANK, NOT_YET, Verdict.BLANK, EARLIER]


def test_a_mistake_is_found_at_its_step_with_the_learners_own_numbers() -> None:
    """Round taken as 12, then half of a bag forgotten at the end: 12 x 8 = 96, 96 / 20 = 4.8."""
    found = marks({"round": "12", "wires": "8", "length": "96", "rolls": "4.8"})
    assert [mark.verdict for mark in found] == [NOT_YET, RIGHT, EARLIER, NOT_YET]
    assert found[3].misconceptions == ("rolls_not_rounded_up",)


def test_a_mistake_over_the_whole_way_is_found_where_the_steps_were_skipped() -> None:
    half = 8 * math.pi * 3.2 / 2
    found = marks({"length": f"{half:.1f}"})
    assert found[2].verdict is NOT_YET
    # four wires, as of a spacing read in inches, give the same length: both are named, the one aimed at first
    assert found[2].misconceptions == ("half_width_taken", "spacing_in_inches")


def test_an_absurd_earlier_number_is_still_carried_forward() -> None:
    assert verdicts({"round": "1000000", "wires": "8", "length": "8000000"})[:3] == [NOT_YET, RIGHT, EARLIER]


@pytest.mark.parametrize("typed", ["many", "0/0", "😀", "-5", "0", "1,2,3", "9" * 15, "5 kg", "1e400"])
def test_nothing_typed_in_one_part_stops_the_marking_of_the_others(typed: str) -> None:
    for part in KEYS:
        found = marks({**KEYS, part: typed})
        assert len(found) == 4
        assert sum(mark.verdict is RIGHT for mark in found) >= 3


def test_unknown_parts_are_passed_over() -> None:
    assert verdicts({**KEYS, "roof": "3"}) == [RIGHT] * 4


@given(st.dictionaries(st.sampled_from(sorted(KEYS)), st.lists(st.sampled_from(SIGNS_TYPED), max_size=8).map("".join)))
def test_no_answers_raise_and_no_part_is_right_from_an_earlier_one_that_is_missing(answers: dict[str, str]) -> None:
    found = marks(answers)
    assert len(found) == 4
    if not any(mark.value is not None for mark in found[:3]):
        assert found[3].verdict is not EARLIER
    assert found[0].verdict is not EARLIER
    assert found[1].verdict is not EARLIER


def test_a_part_says_what_may_be_used() -> None:
    round_first = small.SCENARIO.parts[0].model_copy(update={"aids": ("calculator",)})
    changed = small.SCENARIO.model_copy(update={"parts": (round_first, *small.SCENARIO.parts[1:])})
    item = make_scenario(changed, small.PLACE, small.WORDS["en"], small.BOOK)
    assert [part.aids for part in item.parts] == [("calculator",), (), (), ()]
