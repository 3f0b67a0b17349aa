"""Drawings to read: some of their numbers stand as a letter and a question mark, so that a question can ask for them.

The drawing is made with the marks in place, so its texts keep apart as in any other drawing, and it stays to scale.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from generator.figures.areas import LETTERS
from generator.figures.kinds import FIGURES
from generator.figures.scene import Scene
from generator.figures.shown import Hidden
from generator.words import Words


def shown_names(key: str, values: Mapping[str, float], words: Words) -> tuple[str, ...]:
    """Names of the numbers that a drawing shows as texts: those that it can be asked for.

    Args:
        key: name of the drawing.
        values: numbers of the tank by name.
        words: language of its texts.
    """
    noted = Hidden(values, {})
    FIGURES[key].draw(noted, words)
    return tuple(dict.fromkeys(noted.met))


def draw_asking(key: str, values: Mapping[str, float], words: Words, asked: Sequence[str]) -> Scene:
    """A drawing with a letter and a question mark in the place of some of its numbers.

    Args:
        key: name of the drawing, one of `FIGURES`.
        values: numbers of the tank by name.
        words: language of its texts.
        asked: names of the numbers to hide; the first one gets the letter A.

    Raises:
        KeyError: no drawing has this name, or a number is missing.
        ValueError: the drawing does not show such a number, or too many are asked for.
        MachineError: a text can't be shaped, printed or placed.
    """
    names = tuple(dict.fromkeys(asked))
    if not 0 < len(names) <= len(LETTERS):
        raise ValueError(f"a drawing can ask for 1 to {len(LETTERS)} numbers, not {len(names)}")
    hidden = Hidden(values, dict(zip(names, LETTERS, strict=False)))
    scene = FIGURES[key].draw(hidden, words)
    unseen = [name for name in names if name not in hidden.met]
    if unseen:
        there = ", ".join(dict.fromkeys(hidden.met)) or "none"
        raise ValueError(f"the drawing '{key}' does not show '{unseen[0]}'; it shows {there}")
    return scene
