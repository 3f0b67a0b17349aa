"""Each rule of writing an item finds what it is for, and leaves a good item alone."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.curriculum.item_bank import BANK, choice, number, problems, warned, written
from tests.curriculum.made_up import loaded

GOOD = choice("gate", "A goat stands at the gate. What do you do?", "Close it first", "Call it back", "Look away")


def test_a_good_item_has_neither_problem_nor_warning(tmp_path: Path) -> None:
    assert problems(tmp_path / "a", GOOD) == []
    assert warned(tmp_path / "b", GOOD) == []


@pytest.mark.parametrize(
    ("english", "hindi"),
    [
        ("Which post is not good?", "कैसे?"),
        ("Four gates. At which one would you never stand?", "कैसे?"),
        ("Which of them hold, except in rain?", "कैसे?"),
        ("What doesn't a goat eat?", "कैसे?"),
        ("Which post?", "चार खंभे। कौन सा ठीक नहीं है?"),
    ],
)
def test_a_question_for_what_is_not_so_is_a_problem(tmp_path: Path, english: str, hindi: str) -> None:
    turned = choice("gate", english, "First one", "Second one", "Third one", hindi=hindi)
    ((code, _),) = problems(tmp_path, turned)
    assert code == "negative-question"


@pytest.mark.parametrize(
    "stem",
    [
        "The gate does not close. What do you do?",
        "Why is the post not in the middle?",
        'Which post gets the mark "not done"?',
        "Which knot holds?",
    ],
)
def test_a_negative_elsewhere_is_none(tmp_path: Path, stem: str) -> None:
    assert problems(tmp_path, choice("gate", stem, "First one", "Second one", "Third one")) == []


@pytest.mark.parametrize("option", ["All of the above", "None of these", "Both of them.", "Neither | इनमें से कोई नहीं"])
def test_an_option_about_the_others_is_a_problem(tmp_path: Path, option: str) -> None:
    ((code, _),) = problems(tmp_path, choice("gate", "What holds?", "A post in the ground", "A loose post", option))
    assert code == "option-about-options"


def test_goats_may_be_all_of_them_in_a_longer_option(tmp_path: Path) -> None:
    options = ("In the evening, when all of them are home", "At noon, when it is hot", "Never in the rain")
    assert problems(tmp_path, choice("gate", "When do you close?", *options)) == []


def test_the_same_option_with_other_marks_is_a_problem(tmp_path: Path) -> None:
    ((code, what),) = problems(tmp_path, choice("gate", "What holds?", "Dig, then ram.", "Dig then ram", "Ram alone"))
    assert (code, what[:36]) == ("same-option", "'Dig then ram' says the same as the ")


@pytest.mark.parametrize(
    ("stem", "code"),
    [
        ("Where do you stand? And where does the goat?", "two-questions"),
        ("The best post is", "unfinished-question"),
        ("For the gate you need an", "unfinished-question"),
        ("A goat " + "that runs " * 8 + "comes home. What now?", "long-sentence"),
    ],
)
def test_a_question_is_one_whole_and_short(tmp_path: Path, stem: str, code: str) -> None:
    told = warned(tmp_path, choice("gate", stem, "First one", "Second one", "Third one"))
    assert [one for one, _ in told] == [code]


@pytest.mark.parametrize(
    ("options", "code"),
    [
        (("Yes", "No"), "not-three-options"),
        (("One side", "Two sides", "Three sides", "Four sides"), "not-three-options"),
        (("Close it.", "Call it back", "Look away"), "options-not-alike"),
        (("Close it", "call it back", "Look away"), "options-not-alike"),
        (("Close it", "Call it back with a handful of fresh leaves", "Look away"), "options-not-alike"),
        (("Rope", "Rope and wire", "A chain"), "overlapping-options"),
        (("5 to 8 posts", "7 to 10 posts", "12 to 15 posts"), "overlapping-options"),
    ],
)
def test_options_are_three_of_one_form_with_a_line_between_them(
    tmp_path: Path, options: tuple[str, ...], code: str
) -> None:
    told = warned(tmp_path, choice("gate", "What now?", *options))
    assert [one for one, _ in told] == [code]


def test_ranges_that_touch_do_not_overlap_and_several_right_ones_may_be_four(tmp_path: Path) -> None:
    ranges = choice("gate", "How many?", "5 to 8 posts", "8 to 10 posts", "10 to 12 posts")
    four = choice("fit", "What holds? Choose all.", "A post", "A rope", "A stone", "A leaf", several=True)
    assert warned(tmp_path, ranges, four) == []


def test_a_number_without_two_mistakes_is_told(tmp_path: Path) -> None:
    one = number("one", "The side is {side}, a gap {gap}. Each side takes posts. How many?")
    assert warned(tmp_path, one) == [
        ("few-misconceptions", "'one' can name fewer than two mistakes behind a wrong answer")
    ]


def test_a_course_whose_languages_can_not_be_read_is_told_that_alone(tmp_path: Path) -> None:
    half = choice("gate", "What holds?", "A post", "A rope", "A stone")
    for option in half["options"]:
        del option["text"]["hi"]
    broken = ("course/course.yaml", "languages: [en, hi]", "languages: 7")
    told = loaded(tmp_path, broken, add={BANK: written(half)}).problems
    assert told
    assert {problem.file for problem in told} == {"course/course.yaml"}


def test_a_retired_item_is_left_alone(tmp_path: Path) -> None:
    bad = choice("gate", "Which post is not good", "All of the above", "No", retired=True)
    assert problems(tmp_path / "a", bad) == []
    assert warned(tmp_path / "b", bad) == []
