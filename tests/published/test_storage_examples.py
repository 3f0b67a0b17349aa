"""Worked storage example S3, derived: roof 60 m2, runoff share 0.8, demand 2.4 m3 a month, monthly rain as below."""

import pytest

from generator.calculations.reservoir import storage_by_sequent_peak

RAIN = [0, 0, 10, 60, 150, 180, 120, 80, 100, 60, 10, 0]
"""mm, January to December."""


def test_s3_sequent_peak_needs_two_cycles() -> None:
    inflow = [mm / 1000 * 60 * 0.8 for mm in RAIN]
    assert sum(inflow) == pytest.approx(36.96)
    assert storage_by_sequent_peak(inflow, [2.4] * 12) == pytest.approx(11.04)


def test_s3_one_pass_is_the_known_mistake() -> None:
    short = most = 0.0
    for mm in RAIN:
        short = max(0.0, short + 2.4 - mm / 1000 * 60 * 0.8)
        most = max(most, short)
    assert most == pytest.approx(6.72)
    assert most < storage_by_sequent_peak([mm / 1000 * 60 * 0.8 for mm in RAIN], [2.4] * 12)
