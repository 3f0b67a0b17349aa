from __future__ import annotations

import numpy as np
import pytest

from generator.curriculum.models import NumberQuestion
from tests.benchmarks.bench_variants import COARSE, FINE, by_hand, ours


@pytest.mark.parametrize("question", [COARSE, FINE], ids=lambda question: question.id)
def test_the_baseline_does_the_same_work(question: NumberQuestion) -> None:
    made = ours(question, 20_000)
    givens, key, wrong = by_hand(question, 20_000)
    for name, values in givens.items():
        assert np.array_equal(values, made.givens[name])
    assert np.array_equal(key, made.key)
    for name, values in wrong.items():
        assert np.allclose(values, made.wrong[name], rtol=1e-12)
