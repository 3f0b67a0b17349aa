"""The pinned tables agree with the solver, and a straight line between their entries goes wrong by a stated amount."""

import numpy as np
import pytest

from generator.calculations import BOOK
from generator.calculations.factor_tables import (
    COLUMN_LOADS,
    FIELD_MOMENTS,
    FOOT_MOMENTS,
    FOOT_PUSHES,
    FOOT_SHAPES,
    HEAD_MOMENTS,
    HEADS,
    LEVELS,
    RING,
    SHAPES,
)  # fmt: skip
from generator.calculations.plates import column_slab
from generator.calculations.shell import foot_moment, foot_shear, ring_envelope
from generator.formula import interpolate

RING_ERROR = 0.011
"""Of the free tension at the foot, over shape numbers 0.05 to 270."""


def test_every_entry_of_the_ring_table_is_the_solver_s() -> None:
    table = np.array(RING).reshape(len(LEVELS), len(SHAPES))
    for column, shape in enumerate(SHAPES[1:], start=1):
        exact = np.maximum(ring_envelope(shape, np.array(LEVELS)), 0)
        assert np.abs(table[:, column] - exact).max() <= 0.00005001, shape


def test_a_very_low_wall_is_a_stiff_upright_hinged_at_its_foot() -> None:
    """Limit of statics: ring tension (1 - depth share) / 2, moment 1/6, push 1/2; the solver comes near it."""
    assert np.array(RING).reshape(len(LEVELS), len(SHAPES))[:, 0] == pytest.approx((1 - np.array(LEVELS)) / 2)
    assert ring_envelope(0.06, np.array([0.0, 0.5])) == pytest.approx([0.5, 0.25], abs=0.01)
    assert (FOOT_MOMENTS[0], FOOT_PUSHES[0]) == pytest.approx((1 / 6, 1 / 2), abs=1e-6)
    assert (foot_moment(0.06), foot_shear(0.06)) == pytest.approx((1 / 6, 1 / 2), rel=0.02)


def test_foot_and_column_entries_are_the_solver_s() -> None:
    for shape, moment, push in zip(FOOT_SHAPES[1:], FOOT_MOMENTS[1:], FOOT_PUSHES[1:], strict=True):
        assert (moment, push) == pytest.approx((foot_moment(shape), foot_shear(shape)), abs=5.1e-7)
    for head, load, top, field in zip(HEADS, COLUMN_LOADS, HEAD_MOMENTS, FIELD_MOMENTS, strict=True):
        slab = column_slab(head, "hinged")
        assert (load, top, field) == pytest.approx((slab.column_load, -slab.head_moment, slab.field_moment), abs=5.1e-7)


def test_between_entries_the_ring_share_stays_within_the_stated_error() -> None:
    share = BOOK.quantities["ring_share"].function
    depths = np.linspace(0, 1, 173)
    for shape in np.geomspace(0.06, 269, 60):
        found = np.array([share(shape, 1.0, depth) for depth in depths])
        exact = np.maximum(ring_envelope(shape, depths), 0)
        assert np.abs(found - exact).max() <= RING_ERROR, shape


def test_between_entries_foot_and_column_values_stay_within_the_stated_error() -> None:
    for shape in np.geomspace(0.06, 269, 400):
        moment, push = (interpolate(shape, FOOT_SHAPES, table) for table in (FOOT_MOMENTS, FOOT_PUSHES))
        assert -0.002 <= moment / foot_moment(shape) - 1 <= 0.006, shape
        assert -0.001 <= push / foot_shear(shape) - 1 <= 0.002, shape
    for head in np.linspace(HEADS[0], HEADS[-1], 90):
        slab = column_slab(float(head), "hinged")
        assert 0 <= interpolate(head, HEADS, HEAD_MOMENTS) / -slab.head_moment - 1 + 1e-5 <= 0.01
        assert interpolate(head, HEADS, COLUMN_LOADS) == pytest.approx(slab.column_load, rel=0.005)
        assert interpolate(head, HEADS, FIELD_MOMENTS) == pytest.approx(slab.field_moment, rel=0.01)
