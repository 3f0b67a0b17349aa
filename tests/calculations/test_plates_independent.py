"""Round slabs held to the plate equation solved by scipy as four first-order equations.

Load, stiffness and radius are 1; y = sagging, slope, w'' + nu w' / r, and the shear. Moments have the other sign.
"""

import numpy as np
import pytest
from scipy.integrate import solve_bvp

from generator.calculations.plates import POISSON, Edge, clamped_moments, column_slab, hinged_moments
from generator.formula import OutOfRangeError

MIDDLE = 1e-3
"""A slab without a column is followed to here; there it bends alike both ways."""


def solved(start: float, edge: Edge):  # type: ignore[no-untyped-def]
    def equations(r, y):  # type: ignore[no-untyped-def]
        curvature = y[2] - POISSON * y[1] / r
        ring = y[1] / r + POISSON * curvature
        return np.vstack([y[1], curvature, y[3] - (y[2] - ring) / r, 1 - y[3] / r])

    def ends(a, b):  # type: ignore[no-untyped-def]
        held = b[1] if edge == "fixed" else b[2]
        if start == MIDDLE:
            return np.array([a[2] - (1 + POISSON) * a[1] / start, a[3] - start / 2, b[0], held])
        return np.array([a[0], a[1], b[0], held])

    r = np.geomspace(start, 1, 1500)
    found = solve_bvp(equations, ends, r, np.zeros((4, r.size)), tol=1e-8, max_nodes=100_000)
    assert found.success
    return found.sol


@pytest.mark.parametrize(
    ("edge", "sag"), [("fixed", 1 / 64), ("hinged", (5 + POISSON) / (1 + POISSON) / 64)]
)  # fmt: skip
def test_slabs_without_a_column(edge: Edge, sag: float) -> None:
    """Also the printed sagging, q a^4 / (64 D) and (5 + nu) / (1 + nu) of it: Civil Engineering Handbook."""
    solution, closed = solved(MIDDLE, edge), clamped_moments if edge == "fixed" else hinged_moments
    assert solution(MIDDLE)[0] == pytest.approx(sag, rel=1e-4)
    peak = max(abs(value) for share in (0.0, 1.0) for value in closed(share))
    for r in np.linspace(0.01, 1, 100):
        _, slope, radial, _ = solution(r)
        ring = slope / r + POISSON * (radial - POISSON * slope / r)
        assert closed(float(r)) == pytest.approx((-radial, -ring), abs=1e-4 * peak)


@pytest.mark.parametrize("edge", ["fixed", "hinged"])
@pytest.mark.parametrize("head", [0.02, 0.05, 0.1, 0.15, 0.25, 0.35])
def test_slabs_on_a_column(head: float, edge: Edge) -> None:
    solution, slab = solved(head, edge), column_slab(head, edge)
    places = np.linspace(head, 1, 4001)
    radial = -solution(places)[2]
    peak = np.abs(radial).max()
    best = int(np.argmax(radial))
    assert slab.head_moment == pytest.approx(radial[0], abs=1e-4 * peak)
    assert slab.edge_moment == pytest.approx(radial[-1], abs=1e-4 * peak)
    assert slab.field_moment == pytest.approx(radial[best], abs=1e-4 * peak)
    assert slab.field_at == pytest.approx(places[best], abs=0.003)
    # what the outer edge bears is the shear there all round; the column bears the rest of the load
    assert slab.column_load == pytest.approx(np.pi - 2 * np.pi * solution(1.0)[3], rel=1e-4)


@pytest.mark.parametrize("head", [0.019, 0.351])
def test_a_head_out_of_the_range_is_refused(head: float) -> None:
    with pytest.raises(OutOfRangeError, match="licensed engineer"):
        column_slab(head, "hinged")
