"""A workshop in numbers. Examples are counted by hand; properties are held to people and turns laid out one by one."""

import pytest
from hypothesis import given

from generator.calculations import BOOK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

BY_HAND: list[Example] = [
    ("learners_at_place", {"learners": 14, "work_places": 4}, "4"),  # 4 + 4 + 3 + 3
    ("turn_minutes", {"hand_minutes": 150, "learners_at_place": 4}, "38"),  # 37.5
    ("talk_share", {"talk_minutes": 25, "show_minutes": 50, "hand_minutes": 175}, "10"),  # 25 of 250
    # 7 rounds of 2 (the last with one) of 35 minutes
    ("watching_time", {"learners": 13, "watched_at_once": 2, "watch_minutes": 25, "change_minutes": 10}, "245"),
    ("step_agreement", {"steps_watched": 16, "differing_steps": 4}, "75"),  # 12 of 16
]
TANK_PART = {
    "learners": 13.0, "work_places": 4.0, "talk_minutes": 25.0, "show_minutes": 55.0, "hand_minutes": 185.0,
    "watched_at_once": 2.0, "watch_minutes": 35.0, "change_minutes": 10.0, "steps_watched": 18.0,
    "differing_steps": 3.0,
}  # fmt: skip


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


def test_mistakes_done_by_hand() -> None:
    group = {"learners": 14, "work_places": 4, "hand_minutes": 140}
    assert read_wrong("last_learner_left_over", group, "learners_at_place") == 3
    assert read_wrong("last_learner_left_over", {"learners": 3, "work_places": 4}, "learners_at_place") == 1
    assert read_wrong("work_places_shared_by_learners", group, "learners_at_place") == 1
    assert read_wrong("each_gets_all_the_time", group, "turn_minutes") == 140
    assert read_wrong("all_wait_at_one_place", group, "turn_minutes") == 10
    day = {"talk_minutes": 30, "show_minutes": 60, "hand_minutes": 210}
    assert read_wrong("talk_held_against_hands", day, "talk_share") == pytest.approx(100 / 7)
    assert read_wrong("showing_taken_for_talk", day, "talk_share") == 30
    test = {"learners": 13, "watched_at_once": 2, "watch_minutes": 25, "change_minutes": 10}
    assert read_wrong("last_round_left_out", test, "watching_time") == 210
    assert read_wrong("change_between_left_out", test, "watching_time") == 175
    sheets = {"steps_watched": 16, "differing_steps": 4}
    assert read_wrong("differing_called_agreement", sheets, "step_agreement") == 25
    assert read_wrong("differing_against_alike", sheets, "step_agreement") == pytest.approx(100 * 2 / 3)


@given(values=givens("learners", "work_places", "hand_minutes"))
def test_people_set_down_one_by_one_fill_the_places_and_the_time(values: dict[str, float]) -> None:
    """Independent: each person goes to the next place in turn; the fullest place shares the time."""
    places = [0] * int(values["work_places"])
    for person in range(int(values["learners"])):
        places[person % len(places)] += 1
    found = BOOK.evaluate(values, ["learners_at_place", "turn_minutes"])
    assert found["learners_at_place"] == max(places)
    assert found["turn_minutes"] * max(places) == pytest.approx(values["hand_minutes"])


@given(values=givens("learners", "watched_at_once", "watch_minutes", "change_minutes"))
def test_rounds_laid_out_one_after_the_other_take_the_time(values: dict[str, float]) -> None:
    waiting, minutes = int(values["learners"]), 0.0
    while waiting > 0:
        waiting -= int(values["watched_at_once"])
        minutes += values["watch_minutes"] + values["change_minutes"]
    assert BOOK.evaluate(values, ["watching_time"])["watching_time"] == minutes


@given(values=givens("steps_watched", "differing_steps"))
def test_two_sheets_compared_step_by_step_agree_as_much(values: dict[str, float]) -> None:
    steps, differing = int(values["steps_watched"]), int(values["differing_steps"])
    one, other = [True] * steps, [place >= differing for place in range(steps)]
    alike = sum(a == b for a, b in zip(one, other, strict=True))
    assert BOOK.evaluate(values, ["step_agreement"])["step_agreement"] == pytest.approx(100 * alike / steps)


def test_a_group_that_nobody_can_watch_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="learners = 41 is outside 1 to 40"):
        BOOK.evaluate({"learners": 41, "work_places": 4}, ["learners_at_place"])
