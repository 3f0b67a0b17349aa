"""Lessons and handouts: calls, blocks on lines of their own, the same in every language."""

from pathlib import Path

import pytest

from generator.curriculum import CautionBlock, ExerciseBlock, FigureBlock, FormulaBlock, Prose, WorkedBlock
from tests.curriculum.made_up import FILES, loaded, said

PLACE = "course/places/lower-pen.yaml"
LESSON = "course/modules/01-fence/lesson.en.md"
LESSON_HI = "course/modules/01-fence/lesson.hi.md"
HANDOUT = "handouts/pen-card.yaml"


def test_every_fault_of_a_lesson_has_its_place(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (
            LESSON,
            '{{ value("fence_length") }} long',
            '{{ value("fence_lenght") }} and 3.5 m long {{ figure("pen-plan") }}',
        ),
        (LESSON, '{{ caution("thorns") }}', '{{ caution("thorn") }}'),
        (LESSON, 'figure("pen-plan") }}\n', 'figure("puddle") }}\n'),
        (LESSON, 'formula("post_count")', 'formula("gap")'),
        (LESSON, 'worked("post_count")', 'worked("post_count", place="upper")'),
        (LESSON, 'exercise("posts")', 'exercise("post")'),
        (LESSON, "The end.", 'The end {{ value }} {{ val("gap") }} {{ value(gap) }} {{ 2 *'),
    ) == [
        "unknown-quantity course/modules/01-fence/lesson.en.md:3:7: unknown quantity or given "
        "'fence_lenght' (fix: did you mean 'fence_length'?)",
        "typed-number course/modules/01-fence/lesson.en.md:3:39: '3.5 m' is typed by hand (fix: ask for "
        'it: {{ value("...") }}; or, if no quantity gives it, {{ plain("3.5 m") }})',
        "block-not-alone course/modules/01-fence/lesson.en.md:3:50: 'figure' stands among words (fix: give "
        "it a line of its own, with empty lines around it)",
        "unknown-caution course/modules/01-fence/lesson.en.md:5:1: unknown caution 'thorn' (fix: did you "
        "mean 'thorns'?)",
        "unknown-figure course/modules/01-fence/lesson.en.md:7:1: unknown figure 'puddle' (fix: did you "
        "mean 'puddle-plan'?)",
        "unknown-quantity course/modules/01-fence/lesson.en.md:9:1: unknown quantity 'gap' (fix: choose "
        "one of: fence_length, post_count, puddle)",
        "unknown-place course/modules/01-fence/lesson.en.md:11:1: unknown place 'upper' (fix: choose one "
        "of: lower-pen)",
        "unknown-question course/modules/01-fence/lesson.en.md:13:1: unknown question 'post' (fix: did you "
        "mean 'posts'?)",
        "bad-call course/modules/01-fence/lesson.en.md:15:9: '{{ value }}' is no call (fix: write {{ "
        'value("name") }}, with the name in quotes)',
        "unknown-call course/modules/01-fence/lesson.en.md:15:21: 'val' can't be asked for here (fix: did "
        "you mean 'value'?)",
        "bad-call course/modules/01-fence/lesson.en.md:15:38: 'value' takes one name in quotes (fix: write "
        '{{ value("...") }})',
        "open-braces course/modules/01-fence/lesson.en.md:15:55: '{{' without its partner on the same line "
        '(fix: write the call on one line: {{ value("...") }})',
    ]


def test_languages_of_a_lesson_ask_for_the_same(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (LESSON_HI, '{{ value("fence_length") }}', '{{ value("gap") }}'),
        (LESSON_HI, '{{ exercise("posts") }}', '{{ exercise("gate") }}'),
        (LESSON_HI, '"2 मीटर"', '"दो मीटर"'),
        (LESSON_HI, "बस।", "बस। २.५ मीटर, दो मीटर"),
    ) == [
        'lesson-differs course/modules/01-fence/lesson.hi.md:0:0: {{ exercise("posts") }} stands in '
        "course/modules/01-fence/lesson.en.md and not here (fix: add it here, or remove it there)",
        'lesson-differs course/modules/01-fence/lesson.hi.md:0:0: {{ value("fence_length") }} stands in '
        "course/modules/01-fence/lesson.en.md and not here (fix: add it here, or remove it there)",
        'lesson-differs course/modules/01-fence/lesson.hi.md:3:7: {{ value("gap") }} stands only in this '
        "language (fix: remove it here, or add it to the other language)",
        'lesson-differs course/modules/01-fence/lesson.hi.md:13:1: {{ exercise("gate") }} stands only in '
        "this language (fix: remove it here, or add it to the other language)",
        "typed-number course/modules/01-fence/lesson.hi.md:15:5: '२.५ मीटर' is typed by hand (fix: ask for "
        'it: {{ value("...") }}; or, if no quantity gives it, {{ plain("२.५ मीटर") }})',
        "typed-number course/modules/01-fence/lesson.hi.md:15:15: 'दो मीटर' is typed by hand (fix: ask for "
        'it: {{ value("...") }}; or, if no quantity gives it, {{ plain("दो मीटर") }})',
    ]


def test_a_drawing_whose_numbers_the_place_does_not_know(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (LESSON, 'figure("pen-plan")', 'figure("puddle-plan", place="dry-pen")'),
        (LESSON_HI, 'figure("pen-plan")', 'figure("puddle-plan", place="dry-pen")'),
        (LESSON, 'worked("post_count")', 'worked("puddle", place="dry-pen")'),
        (LESSON_HI, 'worked("post_count")', 'worked("puddle", place="dry-pen")'),
        add={"course/places/dry-pen.yaml": FILES[PLACE].replace("lower-pen", "dry-pen").replace("  rain: 20", "")},
    ) == [
        "not-at-place course/modules/01-fence/lesson.en.md:7:1: the drawing needs 'puddle', which is not "
        "known at 'dry-pen' (fix: add rain to the givens of the place 'dry-pen')",
        "not-at-place course/modules/01-fence/lesson.en.md:11:1: 'puddle' is not known at 'dry-pen' (fix: "
        "add rain to the givens of the place 'dry-pen')",
        "not-at-place course/modules/01-fence/lesson.hi.md:7:1: the drawing needs 'puddle', which is not "
        "known at 'dry-pen' (fix: add rain to the givens of the place 'dry-pen')",
        "not-at-place course/modules/01-fence/lesson.hi.md:11:1: 'puddle' is not known at 'dry-pen' (fix: "
        "add rain to the givens of the place 'dry-pen')",
    ]


def test_a_missing_language_of_a_lesson_and_a_handout(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        drop=(
            "course/modules/01-fence/lesson.hi.md",
            "handouts/pen-card.en.md",
        ),
    ) == [
        "missing-translation course/modules/01-fence/lesson.hi.md:0:0: the text in language 'hi' is "
        "missing (fix: write it)",
        "missing-translation handouts/pen-card.en.md:0:0: the text in language 'en' is missing (fix: write it)",
    ]


def test_a_fault_in_a_handout(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (HANDOUT, "title: {en: Pen card,", "title: {en: Card of 2 kg,"),
        add={
            "handouts/pen-card.en.md": 'Posts: {{ value("post_count") }}.\n\n{{ caution("none") }}\n\n'
            '  {{ figure("pen-plan", site="x") }}\n'
        },
    ) == [
        "unknown-caution handouts/pen-card.en.md:3:1: unknown caution 'none' (fix: choose one of: thorns)",
        "bad-call handouts/pen-card.en.md:5:3: 'figure' takes no 'site' (fix: write {{ figure(\"...\", "
        'place="...") }})',
        "typed-number handouts/pen-card.yaml:5:21: '2 kg' is typed by hand (fix: ask for it: {{ "
        'value("...") }}; or, if no quantity gives it, {{ plain("2 kg") }})',
    ]


def test_a_good_lesson_is_prose_and_blocks_with_its_numbers_in_place(tmp_path: Path) -> None:
    content = loaded(tmp_path).content
    assert content is not None
    assert content.lessons["fence", "hi"] == (
        Prose("# बाड़\n\nलंबाई 18\u00a0मी॰ है। 2 मीटर दूर रहें।\n"),
        CautionBlock("thorns"),
        FigureBlock("pen-plan", "lower-pen"),
        FormulaBlock("post_count"),
        WorkedBlock("post_count", "lower-pen"),
        ExerciseBlock("posts"),
        Prose("बस।\n"),
    )
    assert content.handout_texts["pen-card", "en"] == (Prose("Posts: 36.\n"),)


def test_a_lesson_may_name_another_place(tmp_path: Path) -> None:
    content = loaded(
        tmp_path,
        (LESSON, 'value("fence_length")', 'value("fence_length", place="long-pen")'),
        (LESSON_HI, 'value("fence_length")', 'value("fence_length", place="long-pen")'),
        add={"course/places/long-pen.yaml": FILES[PLACE].replace("lower-pen", "long-pen").replace("4.5", "6")},
    ).content
    assert content is not None
    assert content.lessons["fence", "en"][0] == Prose("# The fence\n\nIt is 24\u00a0m long. Stay 2 m apart.\n")


@pytest.mark.parametrize("around", ["- {}", "> {}", "{} and more", "    {}", "\t{}"])
def test_a_block_needs_a_line_of_its_own(tmp_path: Path, around: str) -> None:
    block = '{{ caution("thorns") }}'
    codes = [line.split()[0] for line in said(tmp_path, (LESSON, block, around.format(block)))]
    assert codes == ["block-not-alone"]


def test_a_value_may_stand_more_often_in_one_language(tmp_path: Path) -> None:
    assert said(tmp_path, (LESSON, "The end.", 'Again {{ value("fence_length") }}.')) == []


def test_a_danda_right_behind_a_filled_number_reads_as_a_digit(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (LESSON, "The end.", 'Posts {{ value("post_count") }}, length {{ value("fence_length") }}.'),
        (LESSON_HI, "बस।", 'खंभे {{ value("post_count") }}। लंबाई {{ value("fence_length") }}। कुल 7।'),
    ) == [
        "danda-after-digit course/modules/01-fence/lesson.hi.md:15:6: '{{ value(\"post_count\") }}।' can be read as "
        "another digit 1 (fix: end the sentence with a word, such as the unit or नग)",
        "danda-after-digit course/modules/01-fence/lesson.hi.md:15:72: '7।' can be read as another digit 1 "
        "(fix: end the sentence with a word, such as the unit or नग)",
    ]
