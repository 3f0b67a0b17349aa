"""Whether a question can be asked: ranges, what can be worked out, misconceptions, options."""

from pathlib import Path

from tests.curriculum.made_up import said

BANK = "quizzes/banks/fence.yaml"
PLACE = "course/places/lower-pen.yaml"
SCENARIO = "quizzes/scenarios/whole-pen.yaml"


def test_numbers_outside_their_range_and_unfair_options(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (BANK, "from: 2, to: 4, step: 0.5", "from: 0.5, to: 4.2, step: 0.5"),
        (BANK, "[0.25, 0.5]", "[0.25, 5, 7]"),
        (BANK, "- {right: true, text: {en: Out, hi: बाहर}}", "- {text: {en: In, hi: बाहर}}"),
        (BANK, "- {en: Set, hi: लगाएँ}", "- {en: dig, hi: लगाएँ}"),
        (BANK, "{en: y, hi: फ}", "{en: y, hi: प}"),
    ) == [
        "out-of-range quizzes/banks/fence.yaml:10:11: side = 0.5 m is outside 1 to 9 m, which is as far as "
        "this course goes; ask a licensed engineer before going on (fix: check the number and its unit)",
        "broken-step quizzes/banks/fence.yaml:10:27: the range of 'side' never reaches 4.2 in steps of 0.5 "
        "(fix: write 'to: 4')",
        "out-of-range quizzes/banks/fence.yaml:11:10: gap = 5 m is outside 0.1 to 1 m, which is as far as "
        "this course goes; ask a licensed engineer before going on (fix: check the number and its unit)",
        "out-of-range quizzes/banks/fence.yaml:11:10: gap = 7 m is outside 0.1 to 1 m, which is as far as "
        "this course goes; ask a licensed engineer before going on (fix: check the number and its unit)",
        "no-right-option quizzes/banks/fence.yaml:20:3: no option is right (fix: write 'right: true' below "
        "the right one)",
        "same-text-twice quizzes/banks/fence.yaml:22:17: 'In' stands here and in line 21 (fix: change or remove one)",
        "same-text-twice quizzes/banks/fence.yaml:29:10: 'dig' stands here and in line 28 (fix: change or remove one)",
        "same-text-twice quizzes/banks/fence.yaml:38:47: 'प' stands here and in line 37 (fix: change or remove one)",
    ]


def test_unknown_quantities_givens_and_misconceptions(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (BANK, "asks: post_count", "asks: posts_count"),
        (BANK, "[one_side_only]", "[one_side]"),
        (BANK, "gap: {one", "gaap: {one"),
        (BANK, "gap {gap}. How", "gap {gaap}. How"),
        (BANK, "दूरी {gap}। कितने", "दूरी {gaap}। कितने"),
        (SCENARIO, "asks: puddle,", "asks: puddel, misconceptions: [wet],"),
        (SCENARIO, "given: [side, gap, rain]", "given: [side, gap, rain, snow]"),
        (PLACE, "  rain: 20", "  rain: 20\n  sides: 4"),
    ) == [
        "unknown-quantity course/places/lower-pen.yaml:10:3: unknown quantity or given 'sides' (fix: did "
        "you mean 'side'?)",
        "unknown-quantity quizzes/banks/fence.yaml:8:9: unknown quantity 'posts_count' (fix: did you mean "
        "'post_count'?)",
        "unknown-quantity quizzes/banks/fence.yaml:11:5: unknown quantity or given 'gaap' (fix: did you mean 'gap'?)",
        "unknown-misconception quizzes/banks/fence.yaml:12:20: unknown misconception 'one_side' (fix: did "
        "you mean 'one_side_only'?)",
        "missing-slot quizzes/scenarios/whole-pen.yaml:6:12: the text in language 'en' does not name "
        "{snow} (fix: add {snow} where the learner needs it)",
        "missing-slot quizzes/scenarios/whole-pen.yaml:6:56: the text in language 'hi' does not name "
        "{snow} (fix: add {snow} where the learner needs it)",
        "unknown-quantity quizzes/scenarios/whole-pen.yaml:7:26: unknown quantity or given 'snow' (fix: "
        "choose one of: fence_length, gap, post_count, puddle, rain, side)",
        "unknown-quantity quizzes/scenarios/whole-pen.yaml:11:43: unknown quantity 'puddel' (fix: did you "
        "mean 'puddle'?)",
        "unknown-misconception quizzes/scenarios/whole-pen.yaml:11:68: unknown misconception 'wet' (fix: "
        "choose one of: one_side_only, puddle_doubled, rain_added)",
    ]


def test_an_answer_that_cannot_be_worked_out(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (BANK, "    gap: {one_of: [0.25, 0.5]}\n", ""),
        (BANK, ", a gap {gap}", ""),
        (BANK, ", दूरी {gap}", ""),
    ) == [
        "cannot-compute quizzes/banks/fence.yaml:9:3: 'post_count' can't be worked out without gap (fix: "
        "give gap, or a quantity that stands in for it)",
    ]


def test_misconceptions_that_do_not_touch_the_question(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (BANK, "[one_side_only]", "[rain_added, puddle_doubled]"),
    ) == [
        "cannot-compute quizzes/banks/fence.yaml:12:20: 'rain_added' needs rain, which this question does "
        "not give (fix: give it, or choose another misconception)",
        "misconception-without-effect quizzes/banks/fence.yaml:12:32: 'puddle_doubled' distorts 'puddle', "
        "which is not worked out here (fix: choose one that touches this question)",
    ]


def test_a_corner_of_the_ranges_that_leaves_the_course(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (BANK, "to: 4, step", "to: 9, step"),
    ) == [
        "out-of-range quizzes/banks/fence.yaml:9:3: with side 9, gap 0.25: fence_length = 36 m is outside "
        "4 to 32 m, which is as far as this course goes; ask a licensed engineer before going on (fix: "
        "narrow the range of a given)",
    ]


def test_ranges_that_hold_nothing_or_far_too_much(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (BANK, "side: {from: 2, to: 4, step: 0.5}", "side: {from: 4, to: 2, step: 0.5}"),
        (BANK, "gap: {one_of: [0.25, 0.5]}", "gap: {from: 0.1, to: 1, step: 0.00001}"),
    ) == [
        "empty-range quizzes/banks/fence.yaml:10:5: the range of 'side' holds no number (fix: check from, to and step)",
        "empty-range quizzes/banks/fence.yaml:11:5: the range of 'gap' holds more than 10000 numbers (fix: "
        "check from, to and step)",
    ]


def test_asking_for_what_is_given(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (BANK, "asks: post_count", "asks: fence_length"),
        (BANK, "side: {from: 2, to: 4, step: 0.5}", "fence_length: 12"),
        (BANK, "{side}", "{fence_length}"),
        (BANK, "[one_side_only]", "[]"),
    ) == [
        "asks-a-given quizzes/banks/fence.yaml:8:9: 'fence_length' is given and asked for (fix: ask for "
        "something else)",
    ]


def test_a_given_can_not_be_asked_for(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (SCENARIO, "asks: fence_length", "asks: side"),
    ) == [
        "unknown-quantity quizzes/scenarios/whole-pen.yaml:9:44: 'side' is a given: nothing is worked out "
        "(fix: choose one of: fence_length, post_count, puddle)",
    ]


def test_parts_of_a_scenario_rest_on_what_is_known(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (SCENARIO, "given: [side, gap, rain]", "given: [side, rain]"),
        (SCENARIO, ", gap {gap}", ""),
        (SCENARIO, ", दूरी {gap}", ""),
        (SCENARIO, "asks: puddle", "asks: fence_length"),
    ) == [
        "cannot-compute quizzes/scenarios/whole-pen.yaml:10:43: 'post_count' can't be worked out without "
        "gap (fix: add it to given, or ask for it in an earlier part)",
    ]


def test_misconceptions_of_a_part(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (SCENARIO, "asks: fence_length,", "asks: fence_length, misconceptions: [puddle_doubled],"),
        (SCENARIO, "asks: puddle,", "asks: puddle, misconceptions: [puddle_doubled],"),
    ) == [
        "misconception-without-effect quizzes/scenarios/whole-pen.yaml:9:75: 'puddle_doubled' distorts "
        "'puddle', which is not worked out here (fix: choose one that touches this question)",
    ]


def test_what_a_place_does_not_know(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (PLACE, "  rain: 20\n", ""),
    ) == [
        "not-at-place quizzes/scenarios/whole-pen.yaml:7:20: 'rain' is not known at 'lower-pen' (fix: add "
        "what it needs to the place's givens)",
    ]


def test_a_given_of_a_place_outside_its_range(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (PLACE, "side: 4.5", "side: 45"),
    ) == [
        "out-of-range course/places/lower-pen.yaml:7:9: side = 45 m is outside 1 to 9 m, which is as far "
        "as this course goes; ask a licensed engineer before going on (fix: check the number and its unit)",
    ]


def test_a_place_whose_numbers_lead_out_of_the_course(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (PLACE, "side: 4.5", "side: 8.5"),
    ) == [
        "out-of-range course/places/lower-pen.yaml:6:1: fence_length = 34 m is outside 4 to 32 m, which is "
        "as far as this course goes; ask a licensed engineer before going on (fix: change the numbers that "
        "lead to it)",
    ]


def test_options_right_and_wrong(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (BANK, "- {text: {en: In, hi: अंदर}}", "- {right: true, text: {en: In, hi: अंदर}}"),
    ) == [
        "no-wrong-option quizzes/banks/fence.yaml:20:3: every option is right (fix: add one that a learner "
        "could take for right)",
        "several-right-options quizzes/banks/fence.yaml:20:3: 2 options are right (fix: keep one, or write "
        "'several: true')",
    ]
