"""Cuts that must be refused, and cuts that must not move in silence."""

from __future__ import annotations

import numpy as np
import pytest

from generator.assessment.angoff import angoff
from generator.assessment.borderline import borderline_group, borderline_regression
from generator.assessment.contrasting import contrasting_groups, wrong_by_normal
from tests.assessment.test_reliability import reason


def test_a_cut_is_rounded_up_and_a_whole_one_stays() -> None:
    assert angoff(["a", "b"], [[50, 51], [50, 51]]).cut == 2
    assert angoff(["a", "b"], [[50, 50], [50, 50]]).cut == 1
    assert angoff("abc", [[10] * 10, [10] * 10, [10] * 10]).cut == 1  # ten tenths are one, not a hair more


def test_a_policy_moves_the_cut_by_errors_and_stays_on_the_paper() -> None:
    found = angoff("abc", [[60, 60, 60], [80, 80, 80], [100, 100, 100]])
    assert found.cut == 3
    assert found.mean == pytest.approx(2.4)
    assert found.error == pytest.approx(0.6 / np.sqrt(3))
    assert (found.moved(-1), found.moved(1), found.moved(9), found.moved(-9)) == (3, 3, 3, 1)


def test_few_judges_are_told_and_no_panel_is_refused() -> None:
    assert [note.name for note in angoff("abcd", [[50, 60]] * 4).notes] == ["too_few_judges"]
    assert [note.name for note in angoff("abcdefg", [[50, 60]] * 7).notes] == ["few_judges"]
    assert angoff("abcdefgh", [[50, 60]] * 8).notes == ()
    assert reason(angoff, ["a"], [[50, 60]]) == "one_judge"
    assert reason(angoff, ["a", "b"], [[50, 101], [50, 60]]) == "percent_outside"


def test_one_judge_far_from_others_who_agree_is_named() -> None:
    found = angoff("abcdef", [[50, 50]] * 5 + [[80, 80]])
    assert found.far_off == ("f",)
    assert angoff("ab", [[10, 10], [90, 90]]).far_off == ()  # nobody can say which of two is off


def test_one_question_has_no_analysis_of_variance() -> None:
    assert angoff("abc", [[50], [60], [70]]).anova is None


RATINGS = [1, 1, 2, 2, 3, 3, 4, 4, 5, 5]


def test_borderline_regression_is_refused_where_it_must_be() -> None:
    line = [9, 10, 12, 13, 15, 16, 18, 19, 21, 22]
    assert borderline_regression(RATINGS, line).value == pytest.approx(
        float(np.polyval(np.polyfit(RATINGS, line, 1), 2))
    )
    assert reason(borderline_regression, [3, 4, 5, 5], [10, 12, 14, 15]) == "nobody_weak"
    assert reason(borderline_regression, RATINGS, line[::-1]) == "slope_not_up"
    assert reason(borderline_regression, RATINGS, [10] * 10) == "slope_not_up"
    assert reason(borderline_regression, [2, 2, 2], [10, 12, 14]) == "all_rated_alike"
    assert reason(borderline_regression, [1, 5], [10, 20]) == "too_few_rated"
    assert reason(borderline_regression, RATINGS, [9, 20, 8, 19, 10, 20, 9, 21, 10, 22]) == "rating_explains_little"


def test_r2_of_just_forty_percent_is_enough() -> None:
    ratings, noise = np.array([1, 1, 5, 5]), np.array([1.0, -1.0, 1.0, -1.0])
    enough = 5 + ratings + noise * 2 * np.sqrt(0.6 / 0.4)
    assert borderline_regression(ratings, enough + ratings * 1e-6).r2 == pytest.approx(0.4, abs=1e-5)
    assert reason(borderline_regression, ratings, enough - ratings * 1e-3) == "rating_explains_little"


def test_borderline_group_needs_somebody_borderline() -> None:
    assert borderline_group([2, 2, 3], [10, 11, 15]).cut == 11
    assert reason(borderline_group, [1, 3], [10, 11]) == "nobody_borderline"


def test_contrasting_groups_weigh_a_false_pass_more() -> None:
    able, not_yet = [12, 13, 14, 15, 16, 17, 18, 19, 20, 21], [5, 6, 7, 8, 9, 10, 11, 12, 13, 14]
    mild, strict = contrasting_groups(able, not_yet, 1), contrasting_groups(able, not_yet, 5)
    assert (mild.cut, strict.cut) == (15, 15)
    assert mild.overlap == 6
    assert mild.crossing == pytest.approx(13)
    assert mild.logistic == pytest.approx(13)
    uneven = [*not_yet, 17]
    assert contrasting_groups(able, uneven, 1).cut < contrasting_groups(able, uneven, 5).cut


def test_groups_that_hardly_overlap_have_no_curve() -> None:
    found = contrasting_groups([15, 16, 17, 18], [8, 9, 10, 11])
    assert found.logistic is None
    assert found.overlap == 0
    assert found.cut == 15
    assert {note.name for note in found.notes} == {"small_groups", "hardly_overlap"}


def test_groups_that_give_no_cut() -> None:
    assert reason(contrasting_groups, [15, 16], [8, 9, 10]) == "group_too_small"
    assert reason(contrasting_groups, [8, 9, 10], [15, 16, 17]) == "groups_upside_down"
    assert contrasting_groups([15, 15, 15], [8, 9, 10]).crossing is None
    assert reason(wrong_by_normal, 12, [15, 15, 15], [8, 9, 10]) == "no_spread"


def test_the_logistic_curve_weighs_both_groups_alike() -> None:
    """Ten times as many able people of the same points move nothing."""
    able, not_yet = [11, 13, 15, 17, 19], [7, 9, 11, 13, 14]
    one, ten = contrasting_groups(able, not_yet), contrasting_groups(able * 10, not_yet)
    assert one.logistic is not None
    assert ten.logistic == pytest.approx(one.logistic)


def test_shares_sent_wrong_fall_and_rise_with_the_cut() -> None:
    low, high = (wrong_by_normal(cut, [14, 16, 18], [8, 10, 12]) for cut in (11, 15))
    assert low[0] > high[0]
    assert low[1] < high[1]
