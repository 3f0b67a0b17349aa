"""Readings of cover: the least decides, and the bound is held to the binomial itself."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binom

from generator.calculations import BOOK
from generator.calculations.cover_readings import Cover, read_cover, share_that_may_be_thin
from generator.formula import OutOfRangeError

readings = st.lists(st.integers(0, 40).map(lambda n: n / 2), min_size=1, max_size=60)


def test_a_fine_mean_does_not_save_a_thin_place() -> None:
    found = read_cover([14, 15, 13, 16, 14, 15, 4.5, 14, 15, 16])
    assert found.mean > 13
    assert (found.least, found.thin, found.verdict, found.passed) == (4.5, 1, Cover.TOO_THIN, False)


@pytest.mark.parametrize(
    ("values", "steel", "verdict"),
    [
        ([5, 9, 12], "bar", Cover.BELOW_AIM),
        ([8, 9, 12], "bar", Cover.NO_THIN_READING),
        ([4.9, 9, 12], "bar", Cover.TOO_THIN),
        ([2, 4, 5], "mesh", Cover.NO_THIN_READING),
        ([1.5, 4, 5], "mesh", Cover.TOO_THIN),
        ([3, 4, 7], "mesh", Cover.THICK_OVER_MESH),
    ],
)
def test_limits_on_their_edges(values: list[float], steel: str, verdict: Cover) -> None:
    found = read_cover(values, steel)  # type: ignore[arg-type]
    assert found.verdict is verdict
    assert found.passed is (verdict is not Cover.TOO_THIN)


@pytest.mark.parametrize("bad", [[], [7, float("nan")], [-1.0], [8, 250], [float("inf")]])
def test_what_is_no_reading_is_refused(bad: list[float]) -> None:
    with pytest.raises(OutOfRangeError, match="again"):
        read_cover(bad)


def test_steel_that_no_wall_has_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="bar or mesh"):
        read_cover([8.0], "wood")  # type: ignore[arg-type]


@pytest.mark.parametrize(("thin", "count"), [(-1, 5), (6, 5), (0, 0)])
def test_counts_that_can_not_be_are_refused(thin: int, count: int) -> None:
    with pytest.raises(OutOfRangeError, match="count again"):
        share_that_may_be_thin(thin, count)


@given(st.integers(1, 80), st.data())
def test_the_bound_is_where_so_few_thin_readings_get_rare(count: int, data: st.DataObject) -> None:
    """Independent: at the bound the chance of so few thin readings is one in twenty."""
    thin = data.draw(st.integers(0, count - 1))
    assert binom.cdf(thin, count, share_that_may_be_thin(thin, count)) == pytest.approx(0.05, rel=1e-6)
    assert share_that_may_be_thin(count, count) == 1


@given(st.integers(5, 300))
def test_readings_without_a_thin_one_agree_with_the_learner_s_formula(count: int) -> None:
    by_hand = BOOK.evaluate({"readings_taken": count}, ["thin_share_possible"])["thin_share_possible"] / 100
    assert share_that_may_be_thin(0, count) == pytest.approx(by_hand, rel=1e-9)
    assert by_hand < 3 / count  # the rule of three is a little on the safe side


@given(readings)
def test_the_least_decides_whatever_the_others_are(values: list[float]) -> None:
    found = read_cover(values)
    assert found.passed is (min(values) >= 5)
    assert found.least <= found.mean + 1e-9
    assert found.thin == sum(value < 5 for value in values)
    more = read_cover([*values, 30.0, 30.0])
    assert more.passed is found.passed
    assert more.may_be_thin <= found.may_be_thin + 1e-12


def test_the_warning_limit_covers_as_often_as_it_says() -> None:
    """Independent: of 4000 walls drawn evenly about a mean, 19 in 20 keep the limit over 95 % of their cover."""
    draw = np.random.default_rng(5)
    kept = 0
    for _ in range(4000):
        found = read_cover(np.clip(draw.normal(20, 2, 12), 0, 100))
        assert found.likely_above is not None
        kept += found.likely_above <= 20 - 1.6449 * 2
    assert kept / 4000 == pytest.approx(0.95, abs=0.012)


def test_two_readings_say_nothing_of_their_spread() -> None:
    assert read_cover([9, 10]).likely_above is None
