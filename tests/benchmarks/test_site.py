import re

import pytest

from tests.benchmarks.bench_site import results

pytestmark = pytest.mark.long


def test_the_site_benchmark_measures_both_sides_of_a_build() -> None:
    """The ratio itself is printed by `bench`: a slow day must not fail a test."""
    for result in results(runs=1):
        assert re.search(r"site of \d+ pages", result.name)
        assert result.ours > 0
        assert result.baseline > 0
