import re

import pytest

from generator.figures import svg
from generator.figures.parts import shapes
from tests.benchmarks.bench_figures import by_hand, the_scene

TAGS = r"<(line|polyline|polygon|rect|circle|path|text)\b"


def test_the_baseline_writes_the_same_shapes_with_the_same_numbers() -> None:
    scene = the_scene()
    ours, bare = svg(scene, "p"), by_hand(list(shapes(scene)), scene.unit, scene.height)
    assert sorted(re.findall(TAGS, ours)) == sorted(re.findall(TAGS, bare))
    xs = [
        sorted(float(x) for x in re.findall(r'(?:x1|cx|x)="(-?[\d.]+)"', markup.split("</desc>")[-1]))
        for markup in (ours, bare)
    ]
    assert xs[0] == pytest.approx(xs[1], abs=0.0051)
    assert len(xs[0]) > 100
