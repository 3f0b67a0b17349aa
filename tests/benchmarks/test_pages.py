import pytest

from tests.benchmarks.bench_pages import results

pytestmark = pytest.mark.long


@pytest.mark.browser
def test_the_benchmark_of_pages_measures_both_sides() -> None:
    """The ratios are printed by `bench`: a slow day must not fail a test."""
    for result in results(runs=1):
        assert result.ours > 0
        assert result.baseline > 0
