from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.assessment.agreement import agreement, agreement_of_counts, cohen, icc
from tests.assessment.test_reliability import reason


@given(st.lists(st.sampled_from("yn"), min_size=2, max_size=30))
def test_full_agreement_is_one(said: list[str]) -> None:
    found = agreement([(word, word, word) for word in said], "yn")
    assert found.percent == 1
    assert found.ac1 == pytest.approx(1)
    assert found.error == pytest.approx(0, abs=1e-9)
    if len(set(said)) == 2:
        assert found.fleiss == pytest.approx(1)
        assert found.krippendorff == pytest.approx(1)


@given(st.lists(st.tuples(st.sampled_from("yn"), st.sampled_from("yn")), min_size=2, max_size=30))
def test_who_is_called_first_does_not_matter(said: list[tuple[str, str]]) -> None:
    one, other = agreement(said, "yn"), agreement([row[::-1] for row in said], "yn")
    assert one.ac1 == pytest.approx(other.ac1)
    assert -1 <= one.ac1 <= 1


def test_the_error_is_about_what_drawing_again_gives() -> None:
    """200 candidates drawn again and again from the same two observers."""
    draw = np.random.Generator(np.random.PCG64(5))
    truth = draw.random((600, 40)) < 0.8
    first, second = (truth ^ (draw.random(truth.shape) < 0.1) for _ in range(2))
    found = [
        agreement_of_counts(np.stack([a.astype(int) + b, 2 - a.astype(int) - b], axis=1))
        for a, b in zip(first, second, strict=True)
    ]
    assert np.std([each.ac1 for each in found]) == pytest.approx(np.mean([each.error for each in found]), rel=0.15)


def test_what_has_no_answer() -> None:
    assert reason(agreement, [("y", "y")]) == "one_category"
    assert reason(agreement, [("y", None), (None, "n")]) == "nothing_seen_twice"
    assert reason(cohen, [[10, 0], [0, 0]]) == "always_the_same"
    assert reason(icc, [[1, 2]]) == "one_person"
    assert reason(icc, [[2, 2], [2, 2]]) == "no_spread"
    assert math.isnan(agreement([("y", "y"), ("y", "y")], "yn").fleiss)


def test_few_seen_together_is_told() -> None:
    assert agreement([("y", "y")] * 9, "yn").notes[0].name == "few_seen_together"
    assert agreement([("y", "y")] * 10, "yn").notes == ()


def test_observers_who_only_differ_by_a_constant_are_consistent_and_do_not_agree() -> None:
    ratings = [[1, 3], [2, 4], [3, 5], [4, 6]]
    found = icc(ratings)
    assert found.fixed == pytest.approx(1)
    assert found.random < 0.6
