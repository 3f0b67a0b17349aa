from tests.benchmarks.bench_memory import Peak


def test_the_memory_line_says_how_much_of_what_is_spare() -> None:
    line = Peak("a build", 125.0, 500.0, 1.0)
    assert line.good
    assert str(line) == "a build: 125 MB of 500 MB = 0.25 (limit 1): good"
    assert not Peak("a build", 501.0, 500.0, 1.0).good
