import pytest

from generator.assessment import simulate as sim
from tests.benchmarks import bench_masons as bench

pytestmark = pytest.mark.long


def test_every_shipped_scheme_has_a_curve_and_gates_to_tell() -> None:
    """Told, not asserted: the plain rule of a provisional scheme may miss its gates."""
    content = bench.course()
    for scheme in content.schemes:
        exam = bench.exam(content, scheme)
        found = sim.gates(exam, people=2000)
        for gate in (found.weak, found.lacking, found.strong):
            assert 0 <= gate.low <= gate.wrong <= gate.high <= 1
        assert found.lacking.skill in exam.skills
        assert found.middle.share <= found.middle_sure.share


def test_the_baseline_draws_what_a_sitting_draws() -> None:
    exam = bench.exam(bench.course(), "frame-hand")
    assert bench.bare(exam, 100) > 0
