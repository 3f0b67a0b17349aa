"""100,000 variants with their filter, against numpy written by hand for this one question.

The baseline draws from the same stream, works out the same forms with the formulas typed in by hand, and applies the
same filter. It is run for a question with few combinations, which we work out once, and for one with many, which we
work out for every candidate as the baseline does.
"""

from __future__ import annotations

import hashlib
import struct
import time

import numpy as np

from generator.curriculum.models import NumberQuestion, Steps
from generator.exercises.draw import choices, recipe, table, wanted_demand
from generator.exercises.variants import Variants, variants
from tests.benchmarks import Result, compare
from tests.exercises import small

COUNT = 100_000
LIMIT = 1.3


def with_steps(name: str, *steps: float) -> NumberQuestion:
    """`rolls-to-buy` with other steps of its three ranges."""
    given = {
        key: value.model_copy(update={"step": step})
        for (key, value), step in zip(small.ROLLS.given.items(), steps, strict=True)
        if isinstance(value, Steps)
    }
    return small.ROLLS.model_copy(update={"id": name, "given": given})


COARSE = with_steps("rolls-coarsely", 0.1, 0.1, 0.01)
"""31 x 11 x 16 combinations, as a tape and a shop give them."""
FINE = with_steps("rolls-finely", 0.01, 0.01, 0.005)
"""301 x 101 x 31 combinations: far more than a table holds."""


def by_hand(question: NumberQuestion, count: int) -> tuple[dict[str, np.ndarray], np.ndarray, dict[str, np.ndarray]]:
    """The first fair candidates of one of the two questions: givens, key and wrong answers."""
    tables = [np.array(choices(given)) for given in question.given.values()]
    prefix = hashlib.sha256(f"bench|{question.id}".encode())
    found: list[tuple[np.ndarray, ...]] = []
    have, counter, share = 0, 0, 0.99
    while have < count:
        size = int((count - have) / share) // 8 * 8 + 8
        blocks = []
        for number in range(counter, counter + size * 3 // 8):
            block = prefix.copy()
            block.update(struct.pack(">I", number))
            blocks.append(block.digest())
        counter += size * 3 // 8
        words = np.frombuffer(b"".join(blocks), dtype=">u4").astype(np.uint32).reshape(size, 3)
        assert words.max() < 2**32 - 1000  # no refused word in this seed's stream
        width, height, spacing = (tables[i][words[:, i] % np.uint32(len(tables[i]))] for i in range(3))
        ring, wires = np.pi * width, np.ceil(height / spacing - 1e-9) + 1
        length = wires * ring
        key = np.ceil(length / 20 - 1e-9)
        inside = (width >= 1 - 9e-9) & (width <= 9 + 9e-9) & (height >= 0.5 - 3e-9) & (height <= 3 + 3e-9)
        inside &= (spacing >= 0.05 - 5e-10) & (spacing <= 0.5 + 5e-10) & (ring >= 1 - 5e-8) & (ring <= 50 + 5e-8)
        inside &= (wires >= 2 - 1e-7) & (wires <= 100 + 1e-7) & (length >= 1 - 3e-6) & (length <= 3000 + 3e-6)
        inside &= (key >= 1 - 4e-7) & (key <= 400 + 4e-7)
        ring_shown = np.floor(ring * 100 + 0.5 + 1e-9) / 100
        length_shown = np.floor(wires * ring_shown * 10 + 0.5 + 1e-9) / 10
        rounded = np.ceil(length_shown / 20 - 1e-9)
        unrounded = length / 20
        half = np.ceil(wires * (ring / 2) / 20 - 1e-9)
        inside &= np.isfinite(unrounded) & np.isfinite(half) & (np.abs(rounded - key) < 0.5)
        for one, other in ((unrounded, key), (unrounded, rounded), (half, key), (half, rounded), (half, unrounded)):
            inside &= np.abs(one - other) > 2e-9 * np.maximum(np.abs(one), np.abs(other))
        length_exact = np.floor(length * 10 + 0.5 + 1e-9) / 10
        printed = 0 + (np.abs(ring_shown - ring) > 1e-9 * np.maximum(1, ring))
        printed += np.abs(length_exact - length) > 1e-9 * np.maximum(1, length)
        broken = 0 + (np.abs(height / spacing - np.rint(height / spacing)) > 1e-9)
        broken += np.abs(unrounded - np.rint(unrounded)) > 1e-9
        inside &= (printed == 2) & (broken == 2)  # as most candidates of both questions
        kept = np.flatnonzero(inside)[: count - have]
        have, share = have + len(kept), max(len(kept) / size, 0.05)
        found.append(tuple(array[kept] for array in (width, height, spacing, key, unrounded, half)))
    width, height, spacing, key, unrounded, half = (np.concatenate(arrays) for arrays in zip(*found, strict=True))
    givens = {"pen_width": width, "pen_height": height, "wire_spacing": spacing}
    return givens, key, {"rolls_not_rounded_up": unrounded, "half_width_taken": half}


def ours(question: NumberQuestion, count: int) -> Variants:
    return variants(question, "bench", count, small.BOOK)


def results(runs: int = 7) -> list[Result]:
    """Both questions: the limits of `bench`."""
    wanted_demand(recipe(FINE, small.BOOK))  # once for a question, as by hand it is known

    def tabled() -> Variants:
        table.cache_clear()  # the table is part of the work
        return ours(COARSE, COUNT)

    return [
        compare(
            "100,000 variants, few combinations, against numpy by hand",
            tabled, lambda: by_hand(COARSE, COUNT), LIMIT, runs, time.process_time,
        ),
        compare(
            "100,000 variants, many combinations, against numpy by hand",
            lambda: ours(FINE, COUNT), lambda: by_hand(FINE, COUNT), LIMIT, runs, time.process_time,
        ),
    ]  # fmt: skip


if __name__ == "__main__":
    for result in results():
        print(result)  # noqa: T201 (this is what the benchmark is for)
