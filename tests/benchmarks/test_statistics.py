import pytest

from tests.benchmarks.bench_statistics import answers, bare, ours


def test_the_baseline_does_the_same_work() -> None:
    x = answers(500)
    items, paper = ours(x)
    total, rest, apart, mean, alpha = bare(x)
    assert items.item_total == pytest.approx(total)
    assert items.item_rest == pytest.approx(rest)
    assert items.discrimination == pytest.approx(apart)
    assert items.difficulty == pytest.approx(mean)
    assert paper.alpha == pytest.approx(alpha)
