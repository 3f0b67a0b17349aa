import pytest

from tests.benchmarks import bench_masons as bench
from tests.benchmarks.masons_curve import MASTERIES, course, told

pytestmark = pytest.mark.long


def test_every_shipped_scheme_has_a_curve_with_intervals_and_gates_to_tell() -> None:
    for scheme in course().schemes:
        found = told(scheme)
        lines = bench.said(found)
        assert len(lines) == 2 + len(MASTERIES) + 6
        assert lines[-1].strip().startswith("retest")
        assert lines[-1].endswith("ALL MET")
        for gate in (found.gates.weak, found.gates.lacking, found.gates.strong):
            assert 0 <= gate.low <= gate.wrong <= gate.high <= 1


def test_the_baseline_draws_what_a_sitting_draws() -> None:
    assert bench.bare(bench.exam("frame-hand"), 100) > 0
