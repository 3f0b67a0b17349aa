"""Checking built work by readings: attributes, finite walls, variables, guard bands."""

import math

import pytest
from scipy.special import chdtri, ndtri

from generator.assessment import sampling as s
from tests.published.print_digits import printed


@pytest.mark.parametrize(
    ("readings", "allowed", "values"),
    [
        (5, 0, (".7738", ".5905", ".3277", ".1681")),
        (10, 0, (".5987", ".3487", ".1074", ".0282")),
        (10, 1, (".9139", ".7361", ".3758", ".1493")),
        (20, 1, (".7358", ".3917", ".0692", ".0076")),
    ],
)
def test_operating_characteristic(readings: int, allowed: int, values: tuple[str, ...]) -> None:
    """Chance to accept at 5, 10, 20 and 30 % bad; derived."""
    assert s.accepted(readings, allowed, [0.05, 0.10, 0.20, 0.30]).tolist() == printed(*values)


def test_a_wall_of_sixty_gaps() -> None:
    """60 gaps, 6 bad, 10 measured; derived; .348678 would be the endless wall's."""
    assert [s.accepted_of_few(60, 6, 10, c) for c in (0, 1)] == printed(".317409", ".740620")
    assert float(s.accepted(10, 0, 0.1)) == printed(".348678")


def test_good_readings_in_a_row() -> None:
    """Derived: 95 % sure of at most 10 % and 5 % bad."""
    assert (s.readings_without_fault(0.10), s.readings_without_fault(0.05)) == (29, 59)


@pytest.mark.parametrize(
    ("low", "high", "letter", "count"),
    [(2, 8, "A", 2), (9, 15, "B", 3), (16, 25, "C", 5), (26, 50, "D", 8), (51, 90, "E", 13), (91, 150, "F", 20),
     (151, 280, "G", 32)],
)  # fmt: skip
def test_lot_table(low: int, high: int, letter: str, count: int) -> None:
    """ISO 2859-1, general level II, from a published chart."""
    assert s.readings_of_lot(low) == s.readings_of_lot(high) == (letter, count)


@pytest.mark.parametrize(
    ("readings", "share", "sure", "value"),
    [(10, 0.90, 0.90, "2.0657"), (10, 0.90, 0.95, "2.3546"), (10, 0.95, 0.95, "2.9110"), (5, 0.90, 0.95, "3.4066"),
     (43, 0.90, 0.99, "1.8740")],
)  # fmt: skip
def test_one_sided_factor(readings: int, share: float, sure: float, value: str) -> None:
    """Derived from the non-central t."""
    assert s.tolerance_factor(readings, share, sure) == printed(value)


def test_the_handbook_s_shortcuts() -> None:
    """NIST handbook, 43 readings, .90 at .99: the shortcuts 1.8752 (one-sided) and 2.2173, near the exact ones."""
    n, z, c = 43, float(ndtri(0.90)), float(ndtri(0.99))
    a, b = 1 - c * c / (2 * (n - 1)), z * z - c * c / n
    shortcut = (z + math.sqrt(z * z - a * b)) / a
    assert shortcut == printed("1.8752")
    assert s.tolerance_factor(n, 0.90, 0.99) == pytest.approx(shortcut, abs=0.002)
    howe = float(ndtri(0.95)) * math.sqrt((n - 1) * (1 + 1 / n) / float(chdtri(n - 1, 0.99)))
    assert howe == printed("2.2173")
    assert s.tolerance_factor_both(n, 0.90, 0.99) == pytest.approx(howe, abs=0.01)


def test_two_sided_factor_of_ten_readings() -> None:
    """Berthouex and Brown, table 21.1: 2.86 for 10 readings, .90 at .95; Howe's shortcut gives 2.838, which is low."""
    exact = s.tolerance_factor_both(10, 0.90, 0.95)
    assert exact == printed("2.86")
    howe = float(ndtri(0.95)) * math.sqrt(9 * 1.1 / float(chdtri(9, 0.95)))
    assert howe == printed("2.838")
    assert howe < exact


def test_ten_spacings_by_variables() -> None:
    """Limit 60 mm; derived."""
    found = s.check_upper([48, 52, 50, 47, 55, 51, 49, 53, 46, 54], 60, 0.90, 0.90)
    assert [found.mean, found.sd, found.quality, found.factor] == printed("50.5", "3.02765", "3.13775", "2.0657")
    assert found.accepted
    assert found.over == 0


@pytest.mark.parametrize(("reading", "value"), [(58.5, ".9332"), (59, ".8413"), (60, ".5000"), (61, ".1587")])
def test_guard_band(reading: float, value: str) -> None:
    """Idea of JCGM 106, sums derived: limit 60, standard uncertainty 1."""
    assert s.conforming(reading, 1, high=60) == printed(value)


def test_guard_bands_of_a_risk() -> None:
    """Derived: 1.645 u keeps the risk at 5 %, 2 u at 2.3 %; cover 12 to 18 at 12.6 with u 0.5."""
    assert s.guard_band(1, 0.05) == printed("1.645")
    assert 1 - s.conforming(60 - 2.0, 1, high=60) == printed(".023")
    assert s.conforming(12.6, 0.5, 12, 18) == printed(".8849")
