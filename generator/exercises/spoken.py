"""Scripts that a helper reads aloud: one line a breath, with marks for pauses, pointing and reading twice."""

from __future__ import annotations

import re
from collections.abc import Iterator

MOST_WORDS = 12
"""Words of the longest line that a listener still holds."""
MOST_GIVENS = 2
"""Numbers that can be held by ear; more belong on a picture card."""
MARKS = ("/", "//", "#", "[2x]")
"""A short pause, a long one, point at the picture, read this line twice."""

_MARK = re.compile(r"(?:^| )(?://?|#|\[2x\])(?= |$)")


def script_lines(text: str) -> tuple[str, ...]:
    r"""The lines of a script, without empty ones.

    Example:
        >>> script_lines("The wall is high. /\n\n How many rings? # ")
        ('The wall is high. /', 'How many rings? #')
    """
    return tuple(line.strip(" ") for line in text.split("\n") if line.strip(" "))


def unmarked(text: str) -> str:
    """A script without its marks, as a learner may read it along; a slash inside a unit stays.

    Example:
        >>> unmarked("The bar has 2 kg/m. // [2x] How much? #")
        'The bar has 2 kg/m. How much?'
    """
    return "\n".join(re.sub(r" +", " ", _MARK.sub(" ", line)).strip(" ") for line in script_lines(text))


def script_faults(text: str) -> Iterator[str]:
    """What keeps a script from being followed by ear."""
    for line in script_lines(unmarked(text)):
        count = len(line.split(" "))
        if count > MOST_WORDS:
            yield f"the line '{line[:40]}...' has {count} words, and a listener holds {MOST_WORDS}"
