from __future__ import annotations

import numpy as np
import pytest

from generator.assessment.mastery import fewest_right, mastery, newcombe, wilson, without_guessing
from generator.assessment.recheck import Recheck, outcome

RECHECK = Recheck(0.85, 0.60, 0.10, 0.10, 30)


def by_playing(recheck: Recheck, share: float, people: int) -> tuple[float, float, float]:
    """Shown, undecided and questions asked, by playing it through with the running sum."""
    draw = np.random.Generator(np.random.PCG64(3))
    shown = undecided = asked = 0
    up, down = recheck.steps
    for answers in draw.random((people, recheck.most)) < share:
        total = 0.0
        for right in answers:
            asked += 1
            total += up if right else down
            if total >= recheck.upper or total <= recheck.lower:
                break
        shown += total >= recheck.upper
        undecided += recheck.lower < total < recheck.upper
    return shown / people, undecided / people, asked / people


@pytest.mark.parametrize("share", [0.55, 0.72, 0.90])
def test_the_recursion_is_what_playing_it_gives(share: float) -> None:
    found, played = outcome(RECHECK, share), by_playing(RECHECK, share, 4000)
    assert float(found.shown) == pytest.approx(played[0], abs=0.025)
    assert float(found.undecided) == pytest.approx(played[1], abs=0.02)
    assert float(found.questions) == pytest.approx(played[2], rel=0.05)


def test_chances_add_up_and_rise_with_the_share() -> None:
    shares = np.linspace(0, 1, 41)
    found = outcome(RECHECK, shares)
    assert found.shown + found.refused + found.undecided == pytest.approx(np.ones(41))
    assert (np.diff(found.shown) >= -1e-12).all()
    assert (found.questions <= 30).all()


def test_nothing_is_decided_too_early() -> None:
    assert RECHECK.limits(0) == (None, None)
    assert RECHECK.limits(6)[0] is None


@pytest.mark.parametrize(
    "values", [(0.6, 0.85, 0.1, 0.1, 30), (0.85, 0.6, 0.6, 0.1, 30), (0.85, 0.6, 0.1, 0.1, 0), (1.0, 0.6, 0.1, 0.1, 5)]
)
def test_a_test_that_can_not_be_is_refused(values: tuple[float, float, float, float, int]) -> None:
    with pytest.raises(ValueError, match=r"share|chances|least"):
        Recheck(*values)


def test_mastery_before_and_after_answers() -> None:
    assert mastery(0, 0, 0.7).sure == pytest.approx(0.3)
    with pytest.raises(ValueError, match="6 right of 5"):
        mastery(6, 5, 0.7)
    assert fewest_right(0, 0.7, 0.8) is None


def test_wilson_stays_inside_and_holds_the_share() -> None:
    n = np.repeat(np.arange(1, 30), 30)
    x = np.minimum(np.tile(np.arange(30), 29), n)
    low, high = wilson(x, n)
    assert ((low >= 0) & (low <= x / n + 1e-12) & (x / n <= high + 1e-12) & (high <= 1)).all()
    assert [float(end) for end in wilson(0, 0)] == pytest.approx([0, 1])


def test_guessing_taken_off_is_never_below_zero() -> None:
    assert without_guessing(0.5, 4) == pytest.approx(1 / 3)
    assert without_guessing(0.1, 4) == 0
    assert newcombe((5, 5), (10, 10))[0] == pytest.approx(-newcombe((5, 5), (10, 10))[1])
