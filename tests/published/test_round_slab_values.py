"""Round slabs: printed closed forms and the table of slabs on a column.

Civil Engineering Handbook, 2nd ed., page 47-50, equations 47.72 to 47.76 (read in print); the column table is derived,
with its fixed-edge column loads and head moments equal to Table A-13 and A-17 of the Portland Cement Association's
Circular Concrete Tanks Without Prestressing to 0.001 (from memory, checked).
"""

import numpy as np
import pytest

from generator.calculations.plates import POISSON, Edge, clamped_moments, column_slab, hinged_moments

COLUMN_TABLE = [
    (0.05, "fixed", 0.839, -0.2098, -0.0589, 0.0355, 0.46),
    (0.15, "fixed", 1.007, -0.1088, -0.0490, 0.0295, 0.52),
    (0.25, "fixed", 1.200, -0.0698, -0.0393, 0.0232, 0.59),
    (0.05, "hinged", 1.320, -0.3659, 0.0, 0.0632, 0.57),
    (0.15, "hinged", 1.462, -0.1869, 0.0, 0.0520, 0.62),
    (0.25, "hinged", 1.625, -0.1172, 0.0, 0.0407, 0.67),
]


def test_a_clamped_slab_bends_most_at_its_edge() -> None:
    assert clamped_moments(1.0)[0] == pytest.approx(-1 / 8)
    assert clamped_moments(0.0)[0] == pytest.approx((1 + POISSON) / 16)


def test_a_slab_that_lies_on_its_edge_bends_most_in_the_middle() -> None:
    assert hinged_moments(0.0)[0] == pytest.approx((3 + POISSON) / 16)
    assert hinged_moments(1.0)[0] == pytest.approx(0)


def test_the_two_printings_of_the_middle_moment_agree_when_their_load_is_read_right() -> None:
    """Exam sheets give 3 W R^2 / 16 with W per square metre and 3 W / (16 pi) with the total W (Poisson's ratio 0)."""
    load, radius = 2.0, 1.5
    assert 3 * load * radius**2 / 16 == pytest.approx(3 * (load * np.pi * radius**2) / (16 * np.pi))


def test_the_public_sheet_s_coefficient_is_twice_the_plate_value() -> None:
    """0.1 q D^2 stands in a public sheet; a slab that lies on its edge has 0.05 q D^2."""
    assert hinged_moments(0.0)[0] / 4 == pytest.approx(0.05)


@pytest.mark.parametrize(("head", "edge", "column", "at_head", "at_edge", "field", "where"), COLUMN_TABLE)
def test_slab_on_a_column(
    head: float, edge: Edge, column: float, at_head: float, at_edge: float, field: float, where: float
) -> None:
    slab = column_slab(head, edge)
    assert slab.column_load == pytest.approx(column, abs=0.0006)
    assert slab.head_moment == pytest.approx(at_head, abs=0.00006)
    assert slab.edge_moment == pytest.approx(at_edge, abs=0.00006)
    assert slab.field_moment == pytest.approx(field, abs=0.00006)
    assert slab.field_at == pytest.approx(where, abs=0.006)
