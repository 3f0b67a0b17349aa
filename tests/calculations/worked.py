"""How a hand-worked example is held against the book, and any tank within its ranges."""

from __future__ import annotations

from hypothesis import strategies as st

from generator.calculations import BOOK
from generator.formula import show

Example = tuple[str, dict[str, float], str]
"""A quantity, what it is worked out from, and the printed result of the sum done by hand."""


def shown(name: str, values: dict[str, float]) -> str:
    """A quantity at its declared decimals."""
    return show(BOOK.evaluate(values, [name])[name], BOOK.quantities[name].places)


def read_wrong(mistake: str, values: dict[str, float], asked: str) -> float:
    """What someone with a wrong idea answers."""
    return BOOK.evaluate(values, [asked], wrong=[mistake])[asked]


def on_the_tape(name: str) -> st.SearchStrategy[float]:
    """Any value of a given that its step can show."""
    given = BOOK.givens[name]
    steps = int((given.high - given.low) / given.step + 1e-9)
    return st.integers(0, steps).map(lambda n: round(given.low + n * given.step, 6))


def givens(*names: str) -> st.SearchStrategy[dict[str, float]]:
    """Any values of some givens (of all of them, if none is named)."""
    return st.fixed_dictionaries({name: on_the_tape(name) for name in names or BOOK.givens})
