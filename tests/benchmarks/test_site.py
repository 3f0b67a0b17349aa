from tests.benchmarks.bench_site import results


def test_our_work_on_a_site_keeps_its_limit() -> None:
    for result in results(runs=1):
        assert "60 pages" in result.name
        assert result.good, str(result)
