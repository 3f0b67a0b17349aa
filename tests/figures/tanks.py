"""Tanks to draw: the course's own places, and many made up from a fixed stream."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path

import yaml

from generator.calculations import BOOK
from generator.figures import FIGURES
from generator.formula import OutOfRangeError, Stream
from generator.words import Words

ROOT = Path(__file__).parents[2]
LANGUAGES = ("en", "hi")
NEEDED = tuple(dict.fromkeys(name for kind in FIGURES.values() for name in kind.needs))


@cache
def words(language: str) -> Words:
    """The course's words, read without the curriculum room."""
    texts = yaml.safe_load((ROOT / f"course/words/{language}.yaml").read_text(encoding="utf-8"))
    return Words(language, dict(_flat(texts, "")))


def _flat(texts: Mapping[str, object], before: str) -> Iterator[tuple[str, str]]:
    for key, text in texts.items():
        if isinstance(text, dict):
            yield from _flat(text, f"{before}{key}.")
        else:
            yield f"{before}{key}", str(text)


@cache
def place(name: str) -> Mapping[str, float]:
    """All numbers of a place of the course."""
    given = yaml.safe_load((ROOT / f"course/places/{name}.yaml").read_text(encoding="utf-8"))["given"]
    return BOOK.evaluate({key: float(value) for key, value in given.items()})


@cache
def made_up(count: int, key: str) -> tuple[Mapping[str, float], ...]:
    """So many tanks over the whole range of every given that a drawing needs, nothing left out but what is refused."""
    stream = Stream(f"tanks to draw: {key}")
    needs = FIGURES[key].needs
    givens = tuple(dict.fromkeys(given for name in needs for given in (BOOK.needs(name) or (name,))))
    found: list[Mapping[str, float]] = []
    while len(found) < count:
        seeds = {}
        for name in givens:
            given = BOOK.givens[name]
            steps = round((given.high - given.low) / given.step)
            seeds[name] = round(given.low + stream.below(steps + 1) * given.step, 6)
        try:
            found.append(BOOK.evaluate(seeds, needs))
        except OutOfRangeError:
            continue
    return tuple(found)
