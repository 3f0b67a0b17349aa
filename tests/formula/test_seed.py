"""The stream of drawn numbers: pinned, even, and the same in bulk as one by one."""

import hashlib
import struct
from collections import Counter
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.formula import Stream
from tests.formula.vectors import VECTORS


@given(st.text(max_size=20), st.lists(st.integers(0, 40), max_size=6))
def test_bulk_words_continue_exactly_where_single_words_stopped(seed: str, pieces: list[int]) -> None:
    single, mixed = Stream(seed), Stream(seed)
    expected = [single.uint32() for _ in range(sum(pieces) + len(pieces))]
    found: list[int] = []
    for piece in pieces:
        found += struct.unpack(f">{piece}I", mixed.words(piece))
        found.append(mixed.uint32())
    assert found == expected


def test_the_first_words_are_the_hash_of_the_seed_and_a_counter_from_zero() -> None:
    digest = hashlib.sha256("टंकी".encode() + struct.pack(">I", 0)).digest()
    stream = Stream("टंकी")
    assert [stream.uint32() for _ in range(8)] == list(struct.unpack(">8I", digest))
    second = hashlib.sha256("टंकी".encode() + struct.pack(">I", 1)).digest()
    assert stream.uint32() == struct.unpack(">I", second[:4])[0]


def test_every_number_below_a_limit_is_as_likely_as_the_others() -> None:
    stream = Stream("fair")
    counts = Counter(stream.below(6) for _ in range(60_000))
    assert set(counts) == set(range(6))
    assert all(abs(count - 10_000) < 500 for count in counts.values())


@pytest.mark.parametrize("count", [0, -1, 2**32 + 1])
def test_an_impossible_count_is_refused(count: int) -> None:
    with pytest.raises(ValueError, match="1 to 2"):
        Stream("x").below(count)


@given(st.lists(st.integers(), max_size=12), st.text(max_size=5))
def test_a_shuffle_keeps_every_item_and_repeats_with_its_seed(items: list[int], seed: str) -> None:
    mixed = Stream(seed).shuffle(items)
    assert sorted(mixed) == sorted(items)
    assert mixed == Stream(seed).shuffle(items)


@pytest.mark.parametrize("vector", VECTORS, ids=lambda vector: vector["seed"][:12] or "nothing")
def test_drawn_numbers_are_those_that_the_page_gives_too(vector: dict[str, Any]) -> None:
    words, below = Stream(vector["seed"]), Stream(vector["seed"])
    assert [words.uint32() for _ in vector["words"]] == vector["words"]
    assert [[count, below.below(count)] for count, _ in vector["below"]] == vector["below"]
    assert Stream(vector["seed"]).shuffle(range(len(vector["shuffle"]))) == vector["shuffle"]
