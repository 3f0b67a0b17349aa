"""Mastery from a few answers, Wilson's interval, and the sequential recheck."""

import numpy as np
import pytest

from generator.assessment.mastery import fewest_right, mastery, wilson
from generator.assessment.recheck import Recheck, outcome
from tests.published.print_digits import printed


@pytest.mark.parametrize(
    ("right", "asked", "values"),
    [
        (8, 10, (".7500", ".3826", ".6873", ".5299", ".9212")),
        (9, 10, (".8333", ".6779", ".8870", ".6356", ".9667")),
        (16, 20, (".7727", ".4140", ".8016", ".6156", ".9012")),
        (18, 20, (".8636", ".8213", ".9729", ".7294", ".9599")),
        (34, 40, (".8333", ".7390", ".9808", ".7315", ".9170")),
        (5, 5, (".8571", ".7379", ".8824")),
    ],
)
def test_beta_binomial(right: int, asked: int, values: tuple[str, ...]) -> None:
    """Mean, sureness of .80 and of .70, 5 % and 95 %; derived."""
    at_80, at_70 = mastery(right, asked, 0.80), mastery(right, asked, 0.70)
    assert [at_80.mean, at_80.sure, at_70.sure, at_70.low, at_70.high][: len(values)] == printed(*values)


@pytest.mark.parametrize(
    ("wanted", "asked", "fewest"),
    [(0.70, asked, right) for asked, right in ((5, 5), (8, 7), (10, 9), (15, 13), (20, 16), (30, 24), (40, 31))]
    + [(0.80, 5, None), (0.80, 10, 10), (0.80, 20, 18), (0.80, 40, 35)],
)  # fmt: skip
def test_fewest_right(wanted: float, asked: int, fewest: int | None) -> None:
    """Derived: sure to .80."""
    assert fewest_right(asked, wanted, 0.80) == fewest


@pytest.mark.parametrize(("right", "asked", "low", "high"), [(81, 263, ".2553", ".3662"), (1, 29, ".0061", ".1718")])
def test_wilson(right: int, asked: int, low: str, high: str) -> None:
    """Newcombe 1998, two of its examples (cited from memory, run with an independent library)."""
    assert [float(end) for end in wilson(right, asked)] == printed(low, high)


def test_wilson_of_half_of_twenty() -> None:
    """Derived: with 20 people a difficulty of .5 lies anywhere from .30 to .70."""
    assert [float(end) for end in wilson(10, 20)] == printed("0.30", "0.70")


def test_recheck_after_a_published_rule_base() -> None:
    """Welch 1997, rule base .85 and .40 (quoted); sums derived for a = b = .025."""
    recheck = Recheck(0.85, 0.40, 0.025, 0.025, 20)
    assert recheck.upper == printed("3.66356")
    assert list(recheck.steps) == printed(".753772", "-1.386294")
    assert next(n for n in range(1, 20) if recheck.limits(n)[0] is not None) == 5
    assert next(n for n in range(1, 20) if recheck.limits(n)[1] is not None) == 3
    assert recheck.limits(5)[0] == 5
    assert recheck.limits(3)[1] == 0
    assert recheck.limits(10) == (9, 4)
    assert recheck.limits(20) == (15, 11)


def test_recheck_cut_short_at_thirty() -> None:
    """Derived by exact recursion: .85 against .60, a = b = .10."""
    recheck = Recheck(0.85, 0.60, 0.10, 0.10, 30)
    assert recheck.upper == printed("2.197225")
    assert list(recheck.steps) == printed(".348307", "-.980829")
    assert next(n for n in range(1, 30) if recheck.limits(n)[0] is not None) == 7
    found = outcome(recheck, np.array([0.60, 0.75, 0.85]))
    assert found.shown.tolist() == printed(".0813", ".4932", ".8854")
    assert found.undecided.tolist() == printed(".0441", ".1437", ".0485")
    assert found.questions.tolist() == printed("11.5", "15.9", "13.3")


@pytest.mark.parametrize(("share", "value"), [(0.95, ".7738"), (0.98, ".9039"), (0.99, ".9510")])
def test_five_critical_steps(share: float, value: str) -> None:
    """Derived: how often a good mason shows all of five steps at the first try."""
    from generator.assessment.simulate import all_steps_shown

    assert all_steps_shown(share, 5) == printed(value)
